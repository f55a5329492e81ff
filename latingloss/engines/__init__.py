"""Engines choose the reading of every word; all follow one protocol, one file each, imported on use."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple, Protocol

from latingloss.morphology.ranking import Candidate


class Choice(NamedTuple):
    """One parsed word: its form as written, and its readings with probabilities that sum to 1, best first."""

    form: str
    readings: tuple[tuple[Candidate, float], ...]


TokenChoices = tuple[Choice, ...]  # host, then enclitic


class Engine(Protocol):
    """Sentences of word tokens in, readings with probabilities out."""

    name: str

    def read(self, sentences: Sequence[Sequence[str]]) -> list[list[TokenChoices]]:
        """Return for every token of every sentence its words with their readings."""
        ...
