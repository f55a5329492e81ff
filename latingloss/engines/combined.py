"""Two engines as one: the first's belief, moved by what the second adds to the priors that both share."""

from __future__ import annotations

from collections.abc import Sequence
from math import log

from latingloss.engines import Choice, Engine, Narrowing, TokenChoices, check_engine, read_narrowed
from latingloss.errors import InputTypeError, OptionError
from latingloss.morphology.ranking import Candidate, Weighed, by_score

# What the votes of the small Stanza model in ../shared are worth beside the built-in engine: of the weights tried, the
# best mean over CIRCSE train, CIRCSE dev and LLCT dev of case, number and person. Both engines learnt from these.
WEIGHT = 0.1
_LEAST = 1e-9  # probability of a reading that the second engine does not have

_Key = tuple[str, str, str, tuple[tuple[str, str], ...]]


class CombinedEngine:
    """Chooses readings by two engines: a log-linear mixture over the readings of the first.

    A reading's score is its log-probability in `first`, plus `weight` times how far its log-probability in `second`
    stands above its prior: 0 leaves the first as it is, 1 trusts the votes of both alike. One may be shared by
    threads if its parts may. Raises `InputTypeError` for engines without `read`, `OptionError` for a weight
    outside 0..1.

    >>> from latingloss.engines.builtin import BuiltInEngine
    >>> twice = CombinedEngine(BuiltInEngine(), BuiltInEngine())
    >>> twice.name, twice.read([["stellae", "lucent"]])[0][0][0].readings[0][0].features["Case"]
    ('built-in + built-in', 'Nom')
    """

    def __init__(self, first: Engine, second: Engine, *, weight: float = WEIGHT) -> None:
        for name, engine in (("first", first), ("second", second)):
            check_engine(engine, name)
        if isinstance(weight, bool) or not isinstance(weight, int | float):
            raise InputTypeError(f"weight must be a number, not {type(weight).__name__}")
        if not 0 <= weight <= 1:
            raise OptionError(f"weight is {weight}; give 0 (the first engine alone) to 1")
        self.name = f"{first.name} + {second.name}"
        self._first, self._second, self._weight = first, second, weight

    def read(self, sentences: Sequence[Sequence[str]]) -> list[list[TokenChoices]]:
        """Return for every token of every sentence its words with their readings."""
        return self.read_narrowed(sentences, {})

    def read_narrowed(self, sentences: Sequence[Sequence[str]], narrow: Narrowing) -> list[list[TokenChoices]]:
        """Read as `read` does, the readings of some words narrowed in both engines."""
        first, second = (read_narrowed(engine, sentences, narrow) for engine in (self._first, self._second))
        return [
            [self._token(one, other) for one, other in zip(ones, others, strict=True)]
            for ones, others in zip(first, second, strict=True)
        ]

    def _token(self, one: TokenChoices, other: TokenChoices) -> TokenChoices:
        """Mix the words of a token; where the second engine cuts it otherwise, the first's stand."""
        if [choice.form for choice in one] != [choice.form for choice in other]:
            return one
        return tuple(Choice(a.form, self._mixed(a, b)) for a, b in zip(one, other, strict=True))

    def _mixed(self, one: Choice, other: Choice) -> Weighed:
        votes = {_key(candidate): p for candidate, p in other.readings}
        scores = [
            log(max(p, _LEAST)) + self._weight * (log(max(votes.get(_key(c), 0), _LEAST)) - log(max(c.prior, _LEAST)))
            for c, p in one.readings
        ]
        return by_score([c for c, _ in one.readings], scores)


def _key(candidate: Candidate) -> _Key:
    features = tuple(sorted(candidate.features.items()))
    return candidate.lexeme.lemma, candidate.form, candidate.upos, features
