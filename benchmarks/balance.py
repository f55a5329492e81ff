"""Whether the score of difficulty is balanced as the effects are that it was set after: correlations with its parts.

This checks the prior against the studies named in `latingloss.difficulty.score`, not against readers of Latin. A score
that is made of its parts goes with them more closely than any reader's difficulty does; what can be compared is how
much the parts weigh beside one another.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from benchmarks.figures import Figure
from benchmarks.sources import Sources
from latingloss.building.difficulty import types
from latingloss.corpus.schema import PARTS

# British Council, Knowledge-based Vocabulary Lists: difficulty of English words for Spanish and German speakers
_PUBLISHED = {"frequency": "-.375 / -.374", "length": ".334 / .347", "cognate": ".236 / .355 (likeness, sign turned)"}


def figures(sources: Sources) -> Iterator[Figure]:
    """Yield r of the score with each part over the types of the Vulgate, and the variance that kinship adds."""
    if sources.quick:
        return
    found = types(sources.shared)
    score = found["difficulty"].to_numpy().astype(float)
    parts = {part: found[column].to_numpy().astype(float) for part, column in PARTS.items()}
    for part, values in parts.items():
        published = _PUBLISHED.get(part)
        note = (
            f"over {len(found):,} types; published for other languages: {published}" if published else "no study known"
        )
        yield Figure(
            f"balance: {part}, r with the score", round(float(np.corrcoef(score, values)[0, 1]), 3), "r", note=note
        )
    without = explained(score, np.stack([parts["frequency"], parts["length"]]))
    whole = explained(score, np.stack([parts["frequency"], parts["length"], parts["cognate"]]))
    yield Figure("balance: variance explained by frequency and length", round(without, 3), "R2", note=".172 / .177")
    yield Figure("balance: variance explained with kinship too", round(whole, 3), "R2", note=".294 / .348")
    share = (whole - without) / whole
    note = "share of the explained variance that kinship adds; published .41 / .49"
    yield Figure("balance: share of kinship", round(share, 3), "share", note=note)


def explained(outcome: NDArray[np.float64], causes: NDArray[np.float64]) -> float:
    """Return the share of the variance of an outcome that a sum of causes (causes x cases) explains.

    >>> round(explained(np.array([1.0, 3.0, 5.0, 6.0]), np.array([[0.0, 1.0, 2.0, 2.5]])), 6)
    1.0
    """
    rows = np.vstack([causes, np.ones(causes.shape[1])]).T
    left = outcome - rows @ np.linalg.lstsq(rows, outcome, rcond=None)[0]
    return float(1 - left.var() / outcome.var())
