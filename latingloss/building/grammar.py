"""What any grammar says of English signs, as weights to start from: of, to, with, O; before and after the verb.

Common practice, no source: every school grammar sets the Latin cases beside these English words (Bennett 1918,
sections 163-231, gives the senses). The sizes are a judgement; the fit moves away from them only as far as the
verses insist.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from latingloss.context.columns import Floats, Vocabulary

_CASES: dict[str, dict[str, float]] = {
    "has of": {"Gen": 2.0},
    "has to": {"Dat": 2.0, "Abl": -0.5},
    "has unto": {"Dat": 2.0, "Abl": -0.5},
    "has for": {"Dat": 1.5},
    "has with": {"Abl": 1.5},
    "has by": {"Abl": 1.5},
    "has from": {"Abl": 1.5},
    "has in": {"Abl": 1.0},
    "has on": {"Abl": 1.0},
    "has at": {"Abl": 1.0},
    "has than": {"Abl": 1.0},
    "has o": {"Voc": 5.0},
    "has oh": {"Voc": 5.0},
    "called": {"Voc": 3.0},
    "without preposition": {"Abl": -1.0, "Gen": -0.5},
    "has why": {"Acc": 2.0},
    "before verb": {"Nom": 0.8, "Acc": -0.4},
    "after verb": {"Acc": 0.8, "Nom": -0.8},
    "after be": {"Nom": 0.6, "Acc": -0.6},
    "other of": {"Gen": 0.5, "Nom": -0.5},
    "opens": {"Nom": 0.3},
}
_SUBJECTS = tuple(f"has {word}" for word in ("i", "we", "he", "she", "they", "thou"))
_OBJECTS = tuple(f"has {word}" for word in ("me", "us", "him", "them", "thee"))
_PLURAL = ("has we", "has they", "has us", "has them")
_NUMBERED = {"has those": "Plur", "has these": "Plur", "has themselves": "Plur", "has ourselves": "Plur",
             "has yourselves": "Plur", "has himself": "Sing", "has herself": "Sing", "has itself": "Sing"}  # fmt: skip
_VERBAL = _SUBJECTS + tuple(f"has {word}" for word in ("am", "will", "shall", "let", "did", "do", "does", "had"))
_NUMBERS = {"-s": {"Plur": 1.0}, "bare": {"Sing": 0.6}}
_PERSONS = {"i": ("1Sing",), "we": ("1Plur",), "thou": ("2Sing",), "ye": ("2Plur",), "you": ("2Sing", "2Plur"),
            "he": ("3Sing",), "she": ("3Sing",), "it": ("3Sing",), "they": ("3Plur",)}  # fmt: skip
_MOODS = {  # sign -> beginnings of verb tags it speaks for
    "has let": ("VSub",), "has may": ("VSub",), "has might": ("VSub",), "has will": ("VIndFut",),
    "has shall": ("VIndFut",), "has had": ("VIndPqp", "VSubPqp"), "has have": ("VIndPastP",), "has has": ("VIndPastP",),
    "has do": ("VIndPres",), "has does": ("VIndPres",), "has did": ("VIndPast",),
    "-s": ("VIndPres", "VIndFutPA"), "-eth": ("VIndPres",), "-ed": ("VIndPast",), "changed": ("VIndPast",),
    "-ing": ("Part", "Ger"),
}  # fmt: skip
_ADVERBS = {"-ly": 1.0, "could have -ly": -1.0}
_PREPOSITIONS = tuple(f"has {w}" for w in ("with", "by", "from", "in", "on", "at", "into", "about", "through", "of"))
_CONJUNCTIONS = tuple(f"has {w}" for w in ("when", "while", "if", "that", "as", "so"))
_RELATIVES = ("has who", "has which", "has whom", "has whose", "has what", "has whatever", "has whoever")


class Vocabularies(NamedTuple):
    """Numbers of the tags that English can show, and of its signs."""

    tags: Vocabulary
    signs: Vocabulary


def weight(tag: str, sign: str) -> float:
    """Return the weight of a sign for an ending, both by name (see `english_tag`, `english_signs`).

    >>> weight("noun GenSing", "has of"), weight("noun GenSing", "has to")
    (2.0, 0.0)
    """
    kind, _, rest = tag.partition(" ")
    if sign == "without will":
        return -1.5 if kind in ("VIndFutA", "VIndFutP") else 0.0
    moody = 1.2 if kind.startswith(_MOODS.get(sign, ("-",))) else 0.0
    if sign == "opens bare" and kind.startswith(("V", "Inf")):  # come, save us, have mercy
        return 2.5 if kind.startswith("VImp") else -1.0
    if kind.startswith("V"):
        word = sign.removeprefix("has ").removeprefix("own ").removeprefix("other ")
        persons = _PERSONS.get(word, ())
        return moody + (1.0 if rest in persons else -0.5 if persons else 0.0)
    if kind in ("ADV", "ADJ") and sign in _ADVERBS:
        return _ADVERBS[sign] if kind == "ADV" else -_ADVERBS[sign]
    if kind.startswith("Inf"):
        return 1.0 if sign == "has to" else 0.0
    if sign in _PREPOSITIONS + _CONJUNCTIONS and kind in ("ADP", "SCONJ"):
        return 1.5 if (kind == "ADP") == (sign in _PREPOSITIONS) else -1.5
    if sign in _RELATIVES and kind in ("ADV", "SCONJ"):
        return -1.5
    if kind == "pronoun" and sign in _NUMBERED:
        return 1.5 if rest[3:] == _NUMBERED[sign] else -1.5
    if kind == "ADV" and sign == "called":  # kind Father: not kindly
        return -2.0
    if kind in ("ADJ", "pronoun") and rest[:3] == "Voc" and sign == "called":  # with whoever is
        return 5.0
    if kind == "pronoun" and rest[:3] == "Voc" and sign not in ("has o", "has oh"):
        return -0.5
    if kind == "pronoun" and sign == "has thus":  # haec dicit: thus says
        return 4.0 if rest == "AccPlur" else 0.0
    if kind == "pronoun" and sign in _SUBJECTS + _OBJECTS:
        fits = (rest[:3] == "Nom") == (sign in _SUBJECTS)
        return (1.5 if fits else -1.5) + (0.5 if (rest[3:] == "Plur") == (sign in _PLURAL) else -1.5)
    if kind in ("noun", "ADJ") and sign in _VERBAL:
        return -1.0
    by_case = _CASES.get(sign, {}).get(rest[:3], 0.0)
    return moody + by_case + (_NUMBERS.get(sign, {}).get(rest[3:], 0.0) if kind == "noun" else 0.0)


def weights(names: Vocabularies) -> Floats:
    """Return the weights of all signs for all tags that have numbers."""
    return np.array([[weight(t, s) for s in names.signs.names] for t in names.tags.names], np.float32)
