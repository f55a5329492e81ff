"""Frequency domains: how well each ranks the lemmas of texts that were not counted."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence

import numpy as np
from numpy.typing import NDArray

from benchmarks.figures import Figure
from benchmarks.sources import Sources
from latingloss.building.sources import gold_sentences
from latingloss.building.statistics import gold_counts
from latingloss.difficulty.frequency import Frequencies, lexeme_zipf
from latingloss.morphology.lexicon import Lexeme, lexemes

_LEAST = 2  # uses of a lexeme that is ranked; one use says little


def figures(sources: Sources) -> Iterator[Figure]:
    """Yield the rank correlation of each domain with the counts of Perseus train, classical texts for the most part."""
    counts = gold_counts(gold_sentences(sources.treebank("perseus-train")))[0]
    met = [(lexeme, n) for lexeme in lexemes() if (n := counts[lexeme.lemma, lexeme.upos]) >= _LEAST]
    domains: dict[str, Callable[[Lexeme], float]] = {
        "church": Frequencies.church().zipf,
        "classical": Frequencies.classical().zipf,
        "all that is counted": lexeme_zipf,
    }
    for name, zipf in domains.items():
        rho = spearman([zipf(lexeme) for lexeme, _ in met], [n for _, n in met])
        note = f"Spearman's rho, {len(met):,} lexemes met {_LEAST} times or more; measured only"
        yield Figure(f"domains: {name}, rank correlation with Perseus train", round(rho, 3), "rho", note=note)


def spearman(one: Sequence[float], other: Sequence[float]) -> float:
    """Return the rank correlation of two series, equal values sharing the mean of their ranks.

    >>> spearman([1, 2, 3, 3], [10, 20, 30, 30]), round(spearman([1, 2, 3], [2, 1, 0]), 6)
    (1.0, -1.0)
    """
    return float(np.corrcoef(_ranks(one), _ranks(other))[0, 1])


def _ranks(values: Sequence[float]) -> NDArray[np.float64]:
    _, place, times = np.unique(np.asarray(values), return_inverse=True, return_counts=True)
    ranks: NDArray[np.float64] = (np.cumsum(times) - (times - 1) / 2)[place]
    return ranks
