"""The letters of a word as written: case folded, with length marks, stress mark and diaeresis read off them."""

from __future__ import annotations

import re
import unicodedata
from typing import NamedTuple

from latingloss.errors import TextError

LONG, SHORT, EITHER, UNWRITTEN = "-", "u", "±", " "
_LENGTH_MARKS = {"\u0304": LONG, "\u0302": LONG, "\u0306": SHORT}  # macron, circumflex, breve
_ACUTE, _DIAERESIS = "\u0301", "\u0308"
_VOWELS = frozenset("aeiouyæœ")
_LATIN = frozenset("abcdefghijklmnopqrstuvwxyzæœ")
FOREIGN = "?"
_MACRONS = "āēīōūȳ"
_LETTERS_ONLY = re.compile(f"[a-zA-Zæœ{_MACRONS}{_MACRONS.upper()}]+")
_WITHOUT_MACRON = str.maketrans(_MACRONS, "aeiouy")
_STANDS_BY_ITSELF = str.maketrans(_MACRONS, "AEIOUY")


class Spelling(NamedTuple):
    """One word, letter by letter; `letters`, `pattern` and `lengths` run side by side."""

    letters: tuple[str, ...]  # lower case, composed, without length marks
    pattern: str  # plain letters; a capital is a vowel that stands by itself; FOREIGN for other alphabets
    lengths: str  # LONG, SHORT, EITHER or UNWRITTEN
    accent: int  # index of the letter with an acute, -1 without one
    foreign: bool  # has a letter or mark outside Latin spelling


class _Letter(NamedTuple):
    text: str
    plain: str
    length: str
    accented: bool
    foreign: bool


def read_spelling(word: str) -> Spelling:
    """Read the letters and marks of one word; whatever is neither is left out.

    Raises TextError if there is no letter, or if white space parts the letters of several words.

    >>> read_spelling("Gāius").pattern, read_spelling("poëta").letters
    ('gAius', ('p', 'o', 'ë', 't', 'a'))
    """
    if _LETTERS_ONLY.fullmatch(word):
        return _plainly(word.lower())
    if len(word.split()) > 1:
        raise TextError(f"{word!r} is more than one word: pronounce takes one at a time, so split it at the spaces")
    letters = [_read_letter(cluster) for cluster in _clusters(word)]
    if not letters:
        raise TextError(f"{word!r} has no letter to pronounce: give one Latin word")
    accents = [index for index, letter in enumerate(letters) if letter.accented]
    return Spelling(
        letters=tuple(letter.text for letter in letters),
        pattern="".join(letter.plain for letter in letters),
        lengths="".join(letter.length for letter in letters),
        accent=accents[-1] if accents else -1,
        foreign=any(letter.foreign for letter in letters),
    )


def has_letters(word: str) -> bool:
    """Tell whether there is a letter to pronounce; modifier letters such as ʰ are none.

    >>> has_letters("lux"), has_letters("ʰ"), has_letters("…")
    (True, False, False)
    """
    return _LETTERS_ONLY.fullmatch(word) is not None or bool(_clusters(word))


def _plainly(word: str) -> Spelling:
    """Read a word of Latin letters with no marks but macrons, all at once for speed."""
    return Spelling(
        letters=tuple(word.translate(_WITHOUT_MACRON)),
        pattern=word.translate(_STANDS_BY_ITSELF),
        lengths="".join(LONG if c in _MACRONS else UNWRITTEN for c in word),
        accent=-1,
        foreign=False,
    )


def _clusters(word: str) -> list[str]:
    """Return each letter with the combining marks behind it."""
    clusters: list[str] = []
    composed = unicodedata.normalize("NFC", word)
    after_letter = False
    for character in unicodedata.normalize("NFC", composed.lower()):
        if character.isalpha() and unicodedata.category(character) != "Lm":  # Lm: signs such as ˈ and ʼ
            clusters.append(character)
            after_letter = True
        elif unicodedata.category(character)[0] != "M":
            after_letter = False
        elif after_letter:
            clusters[-1] += character
    return clusters


def _read_letter(cluster: str) -> _Letter:
    if cluster in _LATIN:  # the common case, kept short for speed
        return _Letter(cluster, cluster, UNWRITTEN, False, False)
    decomposed = unicodedata.normalize("NFD", cluster)
    base, marks = decomposed[0], decomposed[1:]
    if base not in _LATIN:
        return _Letter(cluster, FOREIGN, UNWRITTEN, False, True)
    length_marks = _LENGTH_MARKS if base in _VOWELS else {}
    kept = [mark for mark in marks if mark not in length_marks]
    lengths = {length_marks[mark] for mark in marks if mark in length_marks}
    length = EITHER if len(lengths) > 1 else min(lengths, default=UNWRITTEN)
    # A vowel with a length mark or a diaeresis, and an i with an acute, is never half of a diphthong or a consonant.
    alone = base in _VOWELS and (bool(lengths) or _DIAERESIS in kept or (base == "i" and _ACUTE in kept))
    return _Letter(
        text=unicodedata.normalize("NFC", base + "".join(kept)),
        plain=base.upper() if alone else base,
        length=length,
        accented=_ACUTE in kept,
        foreign=not set(kept) <= {_ACUTE, _DIAERESIS},
    )
