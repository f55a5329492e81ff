"""How common each lexeme and each kind of ending is: the odds of a reading before any context.

Counts come from the learn treebanks and, by expectation maximisation, from the Vulgate (see
`latingloss.building.statistics`). A lexeme never met still has a small count.
"""

from __future__ import annotations

from functools import cache, lru_cache

from latingloss.morphology.endings import Features
from latingloss.morphology.lexicon import Lexeme, lexemes
from latingloss.tables import built_once, read_table

_UNSEEN_LEXEME = 0.3
_UNSEEN_CELL = 0.5


def cell_name(upos: str, features: Features) -> str:
    """Return the name under which cells are counted: part of speech and what its ending says, gender left out.

    >>> cell_name("NOUN", {"Case": "Gen", "Gender": "Fem", "Number": "Sing"})
    'NOUN Sing Gen'
    """
    names = ("VerbForm", "Mood", "Tense", "Aspect", "Voice", "Person", "Number", "Case", "Degree")
    shown = [features[n] for n in names if n in features and features[n] not in ("Fin", "Pos")]
    return " ".join([{"AUX": "VERB", "PROPN": "NOUN"}.get(upos, upos), *shown])


@built_once
def _lexeme_counts() -> dict[tuple[str, str], float]:
    return {(lemma, upos): float(count) for lemma, upos, count in read_table("statistics/lexemes.tsv")}


@built_once
def _cell_counts() -> dict[str, float]:
    return {name: float(count) for name, count in read_table("statistics/cells.tsv")}


def lexeme_count(lexeme: Lexeme) -> float:
    """Return about how often a lexeme occurs in the 650,000 words counted."""
    return _lexeme_counts().get((lexeme.lemma, lexeme.upos), 0.0) + _UNSEEN_LEXEME


@built_once
def _lexeme_weights() -> tuple[float, ...]:
    return tuple(lexeme_count(lexeme) for lexeme in lexemes())


@cache
def cell_count(name: str) -> float:
    """Return about how often a kind of ending (see `cell_name`) occurs in the words counted."""
    return _cell_counts().get(name, 0.0) + _UNSEEN_CELL


def weight(lexeme: int, features: Features) -> float:
    """Return the unnormalised prior of a reading: how common its lexeme is, times how common its ending.

    `lexeme` is an index in `lexemes()`.
    """
    upos = "VERB" if "VerbForm" in features else lexemes()[lexeme].upos
    return _lexeme_weights()[lexeme] * _cell_share(upos, tuple(features.items()))


@lru_cache(maxsize=20_000)
def _cell_share(upos: str, features: tuple[tuple[str, str], ...]) -> float:
    """Return how common a kind of ending is among the words of its part of speech."""
    return cell_count(cell_name(upos, dict(features))) / cell_count(upos if upos not in ("AUX", "PROPN") else "VERB")
