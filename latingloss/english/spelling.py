"""How English spells its endings: cities, hopped, dying, nobler (rules that any grammar of English prints)."""

from __future__ import annotations

import re

_SHORT = re.compile("(?:[^aeiou]|^qu|[^q]u)*[aeiou][bdfgklmnprtz]")  # hop, ship: one short vowel, one consonant
_VOWELS = "aeiou"


def _doubled(word: str) -> str:
    return word + word[-1] if _SHORT.fullmatch(word) and word[-2:-1] in _VOWELS else word


def _without_y(word: str) -> str:
    return word[:-1] + "i" if word.endswith("y") and word[-2:-1] not in _VOWELS else word


def with_s(word: str) -> str:
    """Return a word with the ending -s of plurals and of the third person.

    >>> with_s("city"), with_s("church"), with_s("day")
    ('cities', 'churches', 'days')
    """
    if word.endswith(("s", "x", "z", "ch", "sh")):
        return word + "es"
    stem = _without_y(word)
    return stem + ("s" if stem == word else "es")


def with_ed(word: str) -> str:
    """Return a verb with the ending -ed: `with_ed("hop")` is `hopped`."""
    return word + "d" if word.endswith("e") else _doubled(_without_y(word)) + "ed"


def with_ing(word: str) -> str:
    """Return a verb with the ending -ing: `with_ing("die")` is `dying`."""
    if word.endswith("ie"):
        return word[:-2] + "ying"
    if word.endswith("e") and word[-2:-1] not in ("e", "o", "y", ""):
        return word[:-1] + "ing"
    return _doubled(word) + "ing"


def with_er(word: str, ending: str = "er") -> str:
    """Return an adjective with -er or -est: `with_er("holy", "est")` is `holiest`."""
    return (word[:-1] if word.endswith("e") else _doubled(_without_y(word))) + ending


def with_ly(word: str) -> str:
    """Return the adverb of an adjective: `with_ly("gentle")` is `gently`.

    >>> with_ly("happy"), with_ly("public"), with_ly("true"), with_ly("dull")
    ('happily', 'publicly', 'truly', 'dully')
    """
    if word.endswith("le") and word[-3:-2] not in _VOWELS:
        return word[:-1] + "y"
    if word in ("true", "due", "whole"):
        return word[:-1] + "ly"
    if word.endswith("ic") and word != "public":
        return word + "ally"
    return word + "y" if word.endswith("ll") else _without_y(word) + "ly"


def without_endings(word: str) -> list[str]:
    """Return what a word may be without a regular ending, the word itself included.

    >>> without_endings("cities")
    ['cities', 'citie', 'citi', 'city']
    """
    found = [word]
    for ending in ("s", "es", "ed", "d", "ing", "er", "r", "est", "st"):
        if word.endswith(ending) and len(word) > len(ending) + 1:
            stem = word[: -len(ending)]
            found += [stem, stem + "e"] if ending == "ing" else [stem]
            if stem.endswith("i"):
                found.append(stem[:-1] + "y")
            if stem.endswith("y") and ending == "ing":
                found.append(stem[:-1] + "ie")
            if stem[-1:] == stem[-2:-1]:
                found.append(stem[:-1])
    return list(dict.fromkeys(found))
