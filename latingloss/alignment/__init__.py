"""Which English words render which Latin word."""

from __future__ import annotations

from collections.abc import Sequence

from latingloss.alignment.attachment import attach
from latingloss.alignment.evidence import Pair, believe, read_pair
from latingloss.document import Link
from latingloss.morphology.ranking import Candidate

__all__ = ["align"]

_CONTENT = 0.3  # belief from which a content word is linked
_GRAMMAR = 0.5


def align(
    latin_tokens: Sequence[str],
    english_tokens: Sequence[str],
    *,
    readings: Sequence[Sequence[Candidate]] | None = None,
) -> tuple[Link, ...]:
    """Link each Latin token to the English tokens that render it, in the order of the Latin.

    Tokens are as printed; punctuation is never linked, and a word without a counterpart has no link. `readings`
    gives for each Latin token the readings to believe (of the host, where there is an enclitic); without it all
    readings count by their priors. `Link.confidence` is the probability that the link is right.

    >>> [(k.latin, k.english) for k in align(["Laudate", "Dominum"], ["Praise", "the", "Lord"])]
    [(0, 0), (1, 1), (1, 2)]
    """
    pair = read_pair(latin_tokens, english_tokens, readings=readings)
    if not pair.units or not pair.words:
        return ()
    believe(pair)
    _decide(pair)
    attach(pair)
    found = {
        (pair.latin[i], pair.english[j]): float(min(1.0, pair.belief[j, i]))
        for j, units in enumerate(pair.links)
        for i in units
    }
    return tuple(Link(latin=i, english=j, confidence=found[i, j]) for i, j in sorted(found))


def _decide(pair: Pair) -> None:
    best = pair.belief.argmax(1).tolist()
    for j, i in enumerate(best):
        least = _GRAMMAR if pair.is_function(j) else _CONTENT
        pair.links.append({i} if pair.belief[j, i] > least else set())
