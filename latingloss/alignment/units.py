"""What the aligner sees of a word: a Latin form's lexemes and cells with their odds, an English word's key.

A printed word with an enclitic is two units, the enclitic first, as English orders them: `filiique` is `que` and
`filii`, `mecum` is `cum` and `me`.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, cached_property, lru_cache
from typing import NamedTuple

from latingloss.english.words import base_forms
from latingloss.morphology.enclitics import split
from latingloss.morphology.endings import Features
from latingloss.morphology.lexicon import Lexeme
from latingloss.morphology.ranking import Candidate, candidates
from latingloss.text.orthography import plain

_CLAUSE_FOR = "for:"  # at the head of a clause it is the conjunction
_KINDS = {
    "NOUN": "noun", "PROPN": "noun", "ADJ": "adj", "NUM": "adj", "PRON": "pron", "DET": "pron", "ADP": "adp",
    "CCONJ": "conj", "SCONJ": "conj",
}  # fmt: skip


class Reading(NamedTuple):
    """A lexeme and a cell that a form may have."""

    lexeme: str
    cell: str
    upos: str
    features: Features
    odds: float


@dataclass(frozen=True, eq=False)
class Unit:
    """A Latin word, host or enclitic, as the aligner sees it."""

    form: str
    readings: tuple[Reading, ...]
    glosses: tuple[str, ...]

    @cached_property
    def kinds(self) -> dict[str, float]:
        """The odds that it is a noun, adj, pron, part (participle, gerund, gerundive), verb, adp, conj or adv."""
        odds: dict[str, float] = defaultdict(float)
        for reading in self.readings:
            odds[_kind(reading)] += reading.odds
        return dict(odds)

    def is_kind(self, *kinds: str, odds: float = 0.4) -> bool:
        """Tell whether it is one of these kinds with at least these odds."""
        return sum(self.kinds.get(kind, 0.0) for kind in kinds) >= odds

    def has_case(self, case: str) -> float:
        """Return the odds that it is in a case."""
        return sum(r.odds for r in self.readings if r.features.get("Case") == case)


def _kind(reading: Reading) -> str:
    if form := reading.features.get("VerbForm"):
        return "part" if form in ("Part", "Ger", "Gdv") else "verb"
    return _KINDS.get(reading.upos, "adv")


def lexeme_key(lexeme: Lexeme) -> str:
    """Return the name under which a lexeme's translations are kept: plain lemma and part of speech."""
    upos = {"PROPN": "NOUN", "AUX": "VERB", "DET": "PRON"}.get(lexeme.upos, lexeme.upos)
    return f"{plain(lexeme.spelled)}.{upos}"


def cell(upos: str, features: Features) -> str:
    """Return what an ending says to English: case and number of a nominal; mood, tense and person of a verb."""
    form = features.get("VerbForm", "")
    if form == "Fin":
        names = ("Mood", "Tense", "Aspect", "Person", "Number")
        return " ".join(["fin", *(features.get(n, "-") for n in names), features.get("Voice", "-")])
    if form == "Part":
        return " ".join(["part", features.get("Aspect", "-"), features.get("Case", "-")])
    if form:
        return f"{form} {features.get('Voice', features.get('Case', '-'))}"
    if "Case" in features:
        kind = {"PROPN": "name", "NOUN": "noun", "ADJ": "adj"}.get(upos, "pron")
        degree = features.get("Degree", "Pos")
        return " ".join([kind, features["Case"], features.get("Number", "-"), "" if degree == "Pos" else degree])
    return upos


@cache
def _gloss_keys(text: str) -> tuple[str, ...]:
    words = [w for part in text.split("; ") for w in part.replace("-", " ").split()]
    return tuple(dict.fromkeys(english_key(w) for w in words if any(c.isalpha() for c in w)))


@lru_cache(maxsize=100_000)
def english_key(word: str) -> str:
    """Return the one base form under which an English word is counted."""
    return _CLAUSE_FOR if word == "For" else base_forms(word)[0]


def _unit(form: str, found: Sequence[Candidate]) -> Unit:
    odds: dict[tuple[str, str], float] = defaultdict(float)
    example: dict[tuple[str, str], Candidate] = {}
    glosses: list[str] = []
    total = sum(c.prior for c in found) or 1.0
    for c in found:
        key = f"{plain(form)}.?" if c.guessed else lexeme_key(c.lexeme)
        name = key, cell(c.upos, c.features)
        odds[name] += c.prior / total
        example.setdefault(name, c)
        glosses += _gloss_keys(c.lexeme.gloss)
        glosses += _gloss_keys(c.lexeme.church)
    readings = tuple(
        Reading(key, name, example[key, name].upos, example[key, name].features, p) for (key, name), p in odds.items()
    )
    return Unit(form, readings, tuple(dict.fromkeys(glosses)))


@lru_cache(maxsize=20_000)
def units(form: str) -> tuple[Unit, ...]:
    """Return a printed Latin form as units, the enclitic first; all its readings count, by their priors."""
    host, enclitic = split(form) or (form, "")
    return (*([_unit(enclitic, candidates(enclitic))] if enclitic else []), _unit(host, candidates(host)))


def chosen_units(form: str, chosen: Sequence[Candidate]) -> tuple[Unit, ...]:
    """Return a printed form as units of which the host has only the readings given."""
    *enclitic, host = units(form)
    return (*enclitic, _unit(host.form, chosen))
