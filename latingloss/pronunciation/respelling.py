"""Respelling for English readers: plain ASCII, syllables joined by hyphens, the stressed one in capitals.

Vowels: ah (father), eh (met), ee (see), oh (go), oo (moon); in classical also ay (long e, as in say), ih (short i, as
in sit), o (short o, as in pot), ew (y, as French u). Diphthongs: ow (cow), ye or eye (ae), oy (oe, boy), ehw, ooy.
Consonants: g always as in go, s as in see, ch as in church, j as in jam, ny as in canyon, ts as in cats, dz as in adze,
sh as in ship, y as in yes; r is rolled. What church pronunciation only holds long between vowels (gn, sc, ti, z) is
written once; doubled letters are both written: `BEHL-loom`. Common practice, after the Liber usualis (1961), preface.
A letter of another alphabet becomes its nearest ASCII letters, or `?`.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from itertools import pairwise

_SHARED = {
    "t͡ʃ": "ch", "d͡ʒ": "j", "t͡s": "ts", "d͡z": "dz", "ʃ": "sh", "ɲ": "ny", "ɡ": "g", "ʷ": "w", "ʰ": "",
    "j": "y", "i̯": "y", "u̯": "w", "au̯": "ow", "eu̯": "ehw", "ui̯": "ooy", "ei̯": "ay", "oi̯": "oy", "oe̯": "oy",
    "a": "ah", "aː": "ah", "e": "eh", "eː": "ay", "iː": "ee", "oː": "oh", "u": "oo", "uː": "oo", "y": "ew", "yː": "ew",
    "ae̯": "ye", "ai̯": "ye", "^ae̯": "eye", "^ai̯": "eye", "^": "",
}  # fmt: skip
_SPELLED = {
    "ecclesiastical": _SHARED | {"i": "ee", "o": "oh"},
    "classical": _SHARED | {"i": "ih", "o": "o"},
}
_PHONE = re.compile("|".join(sorted(map(re.escape, _SPELLED["classical"]), key=len, reverse=True)) + "|.", re.DOTALL)
_HELD_LONG = (("ʃ", "ʃ"), ("ɲ", "ɲ"), ("t", "t͡s"), ("d", "d͡z"))


def respell(spoken: Sequence[str], tradition: str, *, stress: int) -> str:
    """Return the respelling of spoken syllables, given as broad IPA.

    >>> respell(["kae̯", "lum"], "classical", stress=0), respell(["ɡrat", "t͡si", "a"], "ecclesiastical", stress=0)
    ('KYE-loom', 'GRAH-tsee-ah')
    """
    table = _SPELLED[tradition]
    single = [_without_held(before, behind) for before, behind in pairwise(spoken)]
    parts = [_respell_syllable(syllable, table) for syllable in (*single, spoken[-1])]
    parts[stress] = parts[stress].upper()
    return "-".join(parts)


def build_up_steps(respelling: str) -> tuple[str, ...]:
    """Return a respelling grown from its end, one syllable more each time.

    >>> build_up_steps("GRAH-tsee-ah")
    ('ah', 'tsee-ah', 'GRAH-tsee-ah')
    """
    parts = respelling.split("-")
    return tuple("-".join(parts[start:]) for start in reversed(range(len(parts))))


def _without_held(syllable: str, behind: str) -> str:
    held = any(syllable.endswith(end) and behind.startswith(start) for end, start in _HELD_LONG)
    return syllable[:-1] if held else syllable


def _respell_syllable(syllable: str, table: dict[str, str]) -> str:
    phones = _PHONE.findall("^" + syllable)
    return "".join(table[phone] if phone in table else _ascii(phone) for phone in phones)


def _ascii(letter: str) -> str:
    if letter.isascii():
        return letter
    plain = unicodedata.normalize("NFKD", letter.casefold()).encode("ascii", "ignore").decode()
    return plain or ("" if unicodedata.combining(letter) else "?")
