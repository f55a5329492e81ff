"""Which syllable is stressed, and whether the spelling is enough to know.

A written acute decides (church books print it in words of three syllables or more). Otherwise the last syllable but
one is stressed if it is heavy or the word has only two, and the one before it if not: Bennett, New Latin Grammar
(1918), sections 5-6; Allen, Vox Latina (1978), on accent.

Where the length that decides is not written, the ending is looked up in `data/sounds_endings.tsv`, and the longest one
that fits decides; a vowel that none fits counts as short. There `finals` is what the ending adds to the stem, A, B and
C being the lists below; `certain` is yes if the ending has no common exception; rows of inflection and word formation
follow Bennett, parts II and IV, the others are common practice. Endings in two vowels are exceptions to the rule that
a vowel before a vowel is short.
"""

from __future__ import annotations

import re
from functools import lru_cache
from typing import NamedTuple

from latingloss.errors import DataError
from latingloss.pronunciation.sounds import GLIDES, VOWELS
from latingloss.pronunciation.spelling import EITHER, LONG, SHORT, Spelling
from latingloss.tables import read_table

_FINALS = {"A": "us a um o ae am as os i is e", "B": "us a um o ae am as os", "C": "is i em e es um"}
_FULL_SOUNDS = str.maketrans({"ᵉ": "e", "ᵘ": "u", "ⁱ": "i", "ʷ": "u", "ʰ": "h", "j": "i", "æ": "ae", "œ": "oe"})
_DIPHTHONG = re.compile(f"[{GLIDES}æœÆŒ]")
_NUCLEUS = re.compile(f"[{VOWELS}]")
_GREEK = re.compile("[yYzkʰ]")
# What leaves the syllable before it open: nothing, one consonant but x and z, or a stop or f with l or r.
_LIGHT = re.compile("(?:[^xzj]?[ʰʷ]?|(?:[bcdfgpt])ʰ?[lr]ʰ?)")


class Stress(NamedTuple):
    """The stressed syllable, from 0, and whether the spelling or a rule settles it."""

    syllable: int
    certain: bool


def find_stress(spelling: Spelling, sounds: str, starts: tuple[int, ...], *, enclitic: int = 0) -> Stress:
    """Return the stress of a word; `enclitic` is the number of letters of -que, -ne or -ve at its end, if any.

    The syllable before an enclitic is stressed: Allen and Greenough, New Latin Grammar (1903), section 12 a.

    >>> from latingloss.pronunciation.spelling import read_spelling
    >>> find_stress(read_spelling("amāmus"), "amAmus", (0, 1, 3))
    Stress(syllable=1, certain=True)
    """
    count = len(starts)
    if spelling.accent >= 0:
        return Stress(sum(start <= spelling.accent for start in starts) - 1, True)
    if enclitic and count > 1:
        return Stress(max(0, sum(start < len(sounds) - enclitic for start in starts) - 1), True)
    if count < 3:
        return Stress(0, bool(_NUCLEUS.search(sounds)) and not spelling.foreign)
    heavy, certain = _weigh_penult(spelling, sounds)
    return Stress(count - 2 if heavy else count - 3, certain and not spelling.foreign)


def _weigh_penult(spelling: Spelling, sounds: str) -> tuple[bool, bool]:
    """Return whether the last syllable but one is heavy, and whether that is certain."""
    nucleus, final = [match.start() for match in _NUCLEUS.finditer(sounds)][-2:]
    length = spelling.lengths[nucleus]
    behind = sounds[nucleus + 1 : final]
    if length == LONG or _DIPHTHONG.search(sounds[nucleus:final]) or not _LIGHT.fullmatch(behind):
        return True, True
    if length in (SHORT, EITHER):
        return length == EITHER, length == SHORT
    if LONG in spelling.lengths:  # the writer marks long vowels, so this one is short
        return False, True
    # A vowel before a vowel is short by rule, and the table holds exceptions only; Greek words are not bound by it.
    return _ending_length(sounds.lower().translate(_FULL_SOUNDS)) or (False, not behind and not _GREEK.search(sounds))


def _ending_length(plain: str) -> tuple[bool, bool] | None:
    table = ending_table()
    return next((table[plain[start:]] for start in range(len(plain)) if plain[start:] in table), None)


@lru_cache(maxsize=1)
def ending_table() -> dict[str, tuple[bool, bool]]:
    """Return, for every ending of the table, whether the last vowel but one is long and whether that is certain."""
    table: dict[str, tuple[bool, bool]] = {}
    for stem, finals, penult, certain, _source in read_table("sounds_endings.tsv"):
        if penult not in ("long", "short") or certain not in ("yes", "no"):
            raise DataError(f"data/sounds_endings.tsv, ending {stem!r}: penult is long or short, certain is yes or no")
        for final in " ".join(_FINALS.get(part, part) for part in finals.split()).split():
            table.setdefault(stem + final, (penult == "long", certain == "yes"))
    return table
