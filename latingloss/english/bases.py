"""Base forms of English words: what `cities`, `sent` and `hath` are forms of."""

from __future__ import annotations

import re
from functools import lru_cache

from latingloss.english.vocabulary import forms, listed_bases

_ARCHAIC_PAST = {
    "begat": "beget", "spake": "speak", "brake": "break", "bare": "bear", "sware": "swear", "clave": "cleave",
    "wrought": "work", "drave": "drive", "gat": "get", "holpen": "help", "shew": "show", "shewed": "show",
    "shewn": "show", "sat": "sit", "slew": "slay", "besought": "beseech", "art": "be", "wast": "be", "wert": "be",
    "hath": "have", "hast": "have", "hadst": "have", "doth": "do", "dost": "do", "didst": "do", "saith": "say",
    "wilt": "will", "shalt": "shall", "canst": "can", "couldst": "can", "could": "can",
}  # fmt: skip


_OLD_PLURALS = {"oxen": "ox", "brethren": "brother", "kine": "cow", "cherubim": "cherub", "seraphim": "seraph"}


@lru_cache(maxsize=10_000)
def bases(word: str, upos: str) -> tuple[str, ...]:
    """Return the possible base forms of an English word as VERB, NOUN or ADJ; empty if it is none.

    Archaic verb forms are known: hath, spake, crieth, lovest. A name keeps its capital.

    >>> bases("saw", "VERB"), bases("crieth", "VERB"), bases("cities", "NOUN"), bases("city", "VERB")
    (('see', 'saw'), ('cry',), ('city',), ())
    """
    if upos == "NOUN" and word in _OLD_PLURALS:
        return (_OLD_PLURALS[word],)
    if upos == "VERB" and word in _ARCHAIC_PAST:
        return (_ARCHAIC_PAST[word],)
    low = word.lower()
    found = listed_bases(low, upos)
    if found is None and upos == "VERB" and (old := _without_old_ending(low)):
        return old
    if found is None:
        found = _unlisted(low, upos, common=word == low and word.isalpha())
    return found if word == low else tuple(b.capitalize() for b in found)


def _without_old_ending(word: str) -> tuple[str, ...]:
    """Undo -est and -eth: `criest`, `sitteth`."""
    ending = re.fullmatch("(.+?)(?:e?st|e?th)", word) if len(word) > 4 else None
    if not ending:
        return ()
    stem = ending[1]
    undoubled = stem[:-1] if stem[-2:-1] == stem[-1:] else stem
    tries = (stem, stem + "e", undoubled, re.sub("i$", "y", stem))
    return next(((t,) for t in tries if listed_bases(t, "VERB") and forms(t, "VERB")), listed_bases(stem, "VERB") or ())


def _unlisted(word: str, upos: str, *, common: bool) -> tuple[str, ...]:
    """A name, or a `common` word so rare that LemmInflect is asked; `Jews` is taken for the plural it looks like."""
    plural = re.fullmatch("(.*(?:ite|[^aeious]))s", word) if upos == "NOUN" else None
    if common:
        from lemminflect import getAllLemmas

        listed = getAllLemmas(word)
        if listed or not plural:
            return tuple(listed.get(upos, ()))
    return (plural[1],) if plural else ()


def base(word: str, upos: str) -> str:
    """Return the likeliest base form of an English word, the word itself if it has none.

    >>> base("sent", "VERB"), base("hath", "VERB"), base("children", "NOUN")
    ('send', 'have', 'child')
    """
    return next(iter(bases(word, upos)), word)
