"""Engines choose the reading of every word; all follow one protocol, one file each, imported on use."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple, Protocol, runtime_checkable

from latingloss.errors import InputTypeError
from latingloss.morphology.ranking import Candidate, Weighed


class Choice(NamedTuple):
    """One parsed word: its form as written, and its readings with probabilities that sum to 1, best first."""

    form: str
    readings: Weighed


TokenChoices = tuple[Choice, ...]  # host, then enclitic


class Engine(Protocol):
    """Sentences of word tokens in, readings with probabilities out."""

    name: str

    def read(self, sentences: Sequence[Sequence[str]]) -> list[list[TokenChoices]]:
        """Return for every token of every sentence its words with their readings."""
        ...


def check_engine(engine: object, name: str) -> None:
    """Raise `InputTypeError` for what is no engine; `name` is that of the argument."""
    if not callable(getattr(engine, "read", None)):
        raise InputTypeError(f"{name} is a {type(engine).__name__} without a method read; see latingloss.engines")


# what is left of a word's readings, with priors; keyed by sentence, token and word (0 host, 1 enclitic)
Narrowing = Mapping[tuple[int, int, int], Callable[[Sequence[Candidate]], tuple[Candidate, ...]]]


@runtime_checkable
class NarrowingEngine(Protocol):
    """An engine that can be told beforehand which readings some words may have, so that their neighbours profit."""

    def read_narrowed(self, sentences: Sequence[Sequence[str]], narrow: Narrowing) -> list[list[TokenChoices]]:
        """Read as `Engine.read` does, choosing among what `narrow` leaves of the readings of the words it names."""
        ...


def read_narrowed(engine: Engine, sentences: Sequence[Sequence[str]], narrow: Narrowing) -> list[list[TokenChoices]]:
    """Read with any engine; what one that cannot be told beforehand has found is narrowed afterwards."""
    if not narrow:
        return engine.read(sentences)
    if isinstance(engine, NarrowingEngine):
        return engine.read_narrowed(sentences, narrow)
    found = engine.read(sentences)
    for (s, t, w), keep in narrow.items():
        words = list(found[s][t])
        if w < len(words):
            left = keep([c._replace(prior=p) for c, p in words[w].readings])
            words[w] = words[w]._replace(readings=by_prior(left))
            found[s][t] = tuple(words)
    return found


def by_prior(readings: Sequence[Candidate]) -> Weighed:
    """Return readings with their priors as probabilities that sum to 1, best first."""
    total = sum(c.prior for c in readings)
    weighed = [(c, c.prior / total if total else 1 / len(readings)) for c in readings]
    return tuple(sorted(weighed, key=lambda pair: -pair[1]))
