"""How the chosen readings hang together: what governs a word, what it agrees with, whose it is.

No parse: each word looks for the nearest partner that its reading allows, within its clause. What is found is
given as evidence for the explanations; what is not found is left out.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from latingloss.morphology.ranking import Candidate

_CLAUSE_BREAKS = frozenset(".?!;:")
_REACH = 5  # words between partners
_NOMINAL = frozenset(("NOUN", "PROPN", "ADJ", "DET", "PRON", "NUM"))
_AGREEING = frozenset(("ADJ", "DET", "NUM"))


class Partner(NamedTuple):
    """A word that another is related to: as printed, and its reading."""

    text: str
    reading: Candidate


class Relations(NamedTuple):
    """What was found for one word."""

    preposition: Partner | None = None
    agrees_with: Partner | None = None
    owner: Partner | None = None  # for a genitive: the noun that it belongs to
    verb: Partner | None = None  # whose subject or object it is
    subject: Partner | None = None  # for a verb
    auxiliary: Partner | None = None  # for a participle: its form of sum; for sum: its participle
    conjunction: Partner | None = None  # for a subjunctive


class _Word(NamedTuple):
    token: int
    part: int
    text: str
    reading: Candidate
    clause: int

    @property
    def case(self) -> str:
        return self.reading.features.get("Case", "")

    @property
    def number(self) -> str:
        return self.reading.features.get("Number", "")

    @property
    def finite(self) -> bool:
        return self.reading.features.get("VerbForm") == "Fin"

    def genders(self) -> set[str]:
        return set(self.reading.features.get("Gender", "Fem,Masc,Neut").split(","))


def relations(chosen: Sequence[tuple[Candidate, ...]], texts: Sequence[str]) -> list[tuple[Relations, ...]]:
    """Return for each token's words what they are related to; `chosen` has the readings, empty for punctuation."""
    words = _words(chosen, texts)
    by_place = {(w.token, w.part): _related(words, k) for k, w in enumerate(words)}
    return [tuple(by_place[t, p] for p in range(len(parts))) for t, parts in enumerate(chosen)]


def _words(chosen: Sequence[tuple[Candidate, ...]], texts: Sequence[str]) -> list[_Word]:
    words, clause = [], 0
    for t, (parts, text) in enumerate(zip(chosen, texts, strict=True)):
        clause += not parts and text[:1] in _CLAUSE_BREAKS
        found = [_Word(t, p, text, reading, clause) for p, reading in enumerate(parts)]
        words += reversed(found) if len(found) == 2 and found[1].reading.upos == "CCONJ" else found
    return words


def _related(words: list[_Word], k: int) -> Relations:
    word = words[k]
    features = word.reading.features
    found: dict[str, Partner | None] = {}
    if word.case and word.reading.upos != "ADP":
        found["preposition"] = _preposition(words, k) if word.case in ("Acc", "Abl") else None
        if word.reading.upos in _AGREEING or features.get("VerbForm") in ("Part", "Gdv"):
            found["agrees_with"] = _nearest(words, k, lambda w: _agrees(word, w))
        if features.get("VerbForm") == "Part":
            found["auxiliary"] = _nearest(words, k, lambda w: w.finite and w.reading.lexeme.lemma == "sum", reach=3)
        if word.case == "Gen":
            found["owner"] = _owner(words, k)
        elif not found.get("preposition") and not found.get("agrees_with"):
            found["verb"] = _verb_of(words, k)
    elif word.finite:
        found["subject"] = _nearest(words, k, lambda w: _is_subject(w, word), reach=8)
        if word.reading.lexeme.lemma == "sum":
            found["auxiliary"] = _nearest(
                words, k, lambda w: w.reading.features.get("VerbForm") in ("Part", "Gdv") and w.case == "Nom", reach=3
            )
        if features.get("Mood") == "Sub":
            found["conjunction"] = _nearest(words, k, lambda w: w.reading.upos == "SCONJ", reach=10, after=False)
    return Relations(**found)


def _partner(word: _Word) -> Partner:
    return Partner(word.text, word.reading)


def _nearest(words: list[_Word], k: int, fits, *, reach: int = _REACH, after: bool = True) -> Partner | None:  # type: ignore[no-untyped-def]
    """The nearest word of the clause that fits; at the same distance the one before wins."""
    for distance in range(1, reach + 1):
        for j in (k - distance, k + distance) if after else (k - distance,):
            if 0 <= j < len(words) and words[j].clause == words[k].clause and fits(words[j]):
                return _partner(words[j])
    return None


def _preposition(words: list[_Word], k: int) -> Partner | None:
    """The preposition that governs a word: before it, nothing between but what belongs to the phrase."""
    case = words[k].case
    for j in range(k - 1, max(-1, k - _REACH - 1), -1):
        other = words[j]
        if other.clause != words[k].clause or other.finite:
            return None
        if other.reading.upos == "ADP":
            wanted = {"acc": "Acc", "abl": "Abl"}
            governed = {wanted.get(g, "") for g in other.reading.lexeme.governs.split("/")}
            return _partner(other) if case in governed or governed == {""} else None
        if other.case not in ("", case, "Gen"):
            return None
    return None


def _agrees(word: _Word, other: _Word) -> bool:
    noun = other.reading.upos in ("NOUN", "PROPN") or (word.reading.upos == "DET" and other.reading.upos == "ADJ")
    return noun and other.case == word.case and other.number == word.number and bool(word.genders() & other.genders())


def _owner(words: list[_Word], k: int) -> Partner | None:
    """The noun a genitive belongs to: the nearest one before, else the nearest after, not itself genitive."""
    for step in (-1, 1):
        for distance in range(1, 4):
            j = k + step * distance
            if not 0 <= j < len(words) or words[j].clause != words[k].clause or words[j].finite:
                break
            other = words[j]
            if other.reading.upos in ("NOUN", "PROPN") and other.case != "Gen":
                return _partner(other)
    return None


def _is_subject(word: _Word, verb: _Word) -> bool:
    if word.case != "Nom" or word.reading.upos not in _NOMINAL:
        return False
    person = word.reading.features.get("Person", "3") if word.reading.upos == "PRON" else "3"
    return word.number == verb.number and person == verb.reading.features.get("Person")


def _verb_of(words: list[_Word], k: int) -> Partner | None:
    """The verb whose subject, object or dative a word is."""
    word = words[k]
    if word.case == "Nom":
        return _nearest(words, k, lambda w: w.finite and _is_subject(word, w), reach=8)
    if word.case == "Acc":
        active = lambda w: "VerbForm" in w.reading.features and _takes_object(w)  # noqa: E731
        return _nearest(words, k, active, reach=8)
    if word.case in ("Dat", "Abl"):
        wanted = word.case.lower()
        return _nearest(words, k, lambda w: "VerbForm" in w.reading.features and wanted in w.reading.lexeme.governs, reach=6)
    return None


def _takes_object(word: _Word) -> bool:
    features = word.reading.features
    deponent = word.reading.lexeme.deponent
    return (features.get("Voice") == "Act" or deponent) and word.reading.lexeme.lemma != "sum"
