"""Scaling: time and memory of the corpus room with words and processes; all verse pairs aligned.

A larger corpus also has more words that were never met before, so the Vulgate is taken over and over with fresh
spellings mixed in (`grown`).
"""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from math import log
from pathlib import Path
from typing import NamedTuple

from benchmarks.figures import Figure
from benchmarks.fresh import fresh
from benchmarks.sources import Sources

_SIZES, _QUICK_SIZES = (300_000, 600_000, 1_200_000, 2_400_000), (20_000, 40_000)
_LARGE, _QUICK_LARGE = 10_000_000, 80_000
_PAIRS, _QUICK_PAIRS = 1_000_000, 2_000
_WORK = """
from benchmarks import grown
work, source, size, workers = sys.argv[1], sys.argv[2], int(sys.argv[3]), int(sys.argv[4])
found = getattr(grown, work)(source, size, workers)
print(json.dumps({"memory": memory_mb()} | found))
"""


class Scored(NamedTuple):
    """One run: words scored, seconds, and the peak of the process that was called in MB."""

    words: float
    seconds: float
    memory: float


def scaling(sources: Sources) -> Iterator[Figure]:
    """Yield time by words, what a second process brings, memory of a large corpus, and alignment of all verses."""
    runs = [_scored(sources, size, workers=1) for size in (_QUICK_SIZES if sources.quick else _SIZES)]
    for run in runs:
        yield Figure(f"scaling: {run.words:,.0f} words, one process", round(run.seconds, 2), "s")
    note = "of the number of words, fitted to the times above; below 1 as known forms are not analysed again"
    slope = exponent([(run.words, run.seconds) for run in runs])
    yield Figure("scaling: exponent", round(slope, 3), "", "" if sources.quick else "<= 1.05", note)
    large, two = (_scored(sources, _QUICK_LARGE if sources.quick else _LARGE, workers=n) for n in (1, 2))
    note = f"{two.words:,.0f} words in {two.seconds:.1f} s, start included; {os.cpu_count()} cores"
    yield Figure("scaling: two processes / one", round(large.seconds / two.seconds, 2), "x", ">= 1.8", note)
    note = (
        f"{large.words:,.0f} words, one process, {large.seconds:.0f} s; {runs[-1].memory:.0f} MB with the size before"
    )
    yield Figure("scaling: memory of a large corpus", round(large.memory), "MB", "<= 600", note)
    yield from _alignment(sources)


def exponent(points: Sequence[tuple[float, float]]) -> float:
    """Return the slope of the line fitted to the logarithms of points by least squares."""
    x, y = ([log(point[i]) for point in points] for i in (0, 1))
    mean_x, mean_y = sum(x) / len(x), sum(y) / len(y)
    together = sum((a - mean_x) * (b - mean_y) for a, b in zip(x, y, strict=True))
    return together / sum((a - mean_x) ** 2 for a in x)


def _scored(sources: Sources, words: int, *, workers: int) -> Scored:
    return Scored(**fresh(_WORK, "score", str(sources.corpus), str(words), str(workers)))


def _alignment(sources: Sources) -> Iterator[Figure]:
    most = _QUICK_PAIRS if sources.quick else _PAIRS
    found = fresh(_WORK, "align", str(sources.corpus), str(most), "2")
    note = f"{found['pairs']:,.0f} verse pairs, {found['links']:,.0f} links, two processes, loading included"
    yield Figure("scaling: verse pairs aligned, time", round(found["seconds"], 1), "s", "<= 180", note)
    note = f"peak of the larger process; {found['half']:.0f} MB after half of the pairs"
    yield Figure("scaling: verse pairs aligned, memory", round(found["memory"]), "MB", "", note)


def plot(figures: Sequence[Figure], path: Path) -> None:
    """Draw seconds against words, on logarithmic axes, as SVG; needs matplotlib."""
    import matplotlib

    matplotlib.use("svg")
    from matplotlib import pyplot

    runs = [f for f in figures if f.name.startswith("scaling: ") and f.name.endswith("one process")]
    words = [int(f.name.split()[1].replace(",", "")) for f in runs]
    drawing, axes = pyplot.subplots(figsize=(5, 3.5), layout="constrained")
    axes.loglog(words, [f.value for f in runs], "o-", color="#1f4e79")
    axes.set(xlabel="words", ylabel="seconds, one process", title="Scoring a corpus to Parquet")
    axes.grid(which="both", alpha=0.3)
    drawing.savefig(path)
    pyplot.close(drawing)
