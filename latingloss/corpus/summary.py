"""Summaries: what the scored words of each work come to."""

from __future__ import annotations

from heapq import nlargest
from os import PathLike
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from latingloss.corpus.extra import pl
from latingloss.difficulty.frequency import lexeme_zipf
from latingloss.morphology.lexicon import lexemes

if TYPE_CHECKING:
    import polars

HARD = 0.5  # a word of this difficulty or more counts as hard: harder than the average word of a vocabulary
_KNOWN = (500, 1000, 2000)  # commonest lemmas that a reader may know


def summarize(
    words: polars.DataFrame | polars.LazyFrame | str | PathLike[str], *, hard: float = HARD, hardest: int = 10
) -> polars.DataFrame:
    """Summarise scored words, a Parquet file of them, or a folder of such files, one row a work, in their order.

    Columns: words; types (distinct lemmas); coverage_500, coverage_1000 and coverage_2000, the share of words whose
    lemma is among so many that are commonest in the texts that latingloss counted, names included; difficulty as mean
    and quantiles (q10 .. q90); hard_share, the share of words of difficulty `hard` or more; guessed_share; hardest,
    the hardest lemmas of the lexicon, names left out, each by the mean over its words.

    >>> from latingloss.corpus import score
    >>> summarize(next(score([("Hymn", "Stellae lucent."), ("Psalm", "Lux lucet.")]))).select("work", "words").rows()
    [('Hymn', 2), ('Psalm', 2)]
    """
    frame = _scan(Path(words)) if isinstance(words, str | PathLike) else words.lazy()
    score = pl.col("difficulty")
    figures = frame.group_by("work", maintain_order=True).agg(
        pl.len().alias("words"),
        pl.col("lemma").n_unique().alias("types"),
        *((pl.col("zipf") >= least).mean().alias(f"coverage_{n}") for n, least in _least_zipf().items()),
        score.mean().alias("mean"),
        *(score.quantile(q / 100).alias(f"q{q}") for q in (10, 25, 50, 75, 90)),
        (score >= hard).mean().alias("hard_share"),
        pl.col("guessed").mean().alias("guessed_share"),
    )
    by_lemma = (
        frame.filter(~pl.col("guessed") & (pl.col("upos") != "PROPN"))
        .group_by("work", "lemma")
        .agg(score.mean())
        .sort("difficulty", "lemma", descending=[True, False])
        .group_by("work", maintain_order=True)
        .agg(pl.col("lemma").head(hardest).alias("hardest"))
    )
    return figures.join(by_lemma, on="work", how="left", maintain_order="left").collect()


def _scan(path: Path) -> polars.LazyFrame:
    return pl.scan_parquet(path / "*.parquet" if path.is_dir() else path)


def _least_zipf() -> dict[int, float]:
    """Return the Zipf value that each number of commonest lemmas reach."""
    ranked = nlargest(max(_KNOWN), map(lexeme_zipf, lexemes()))
    return {n: float(np.float32(ranked[n - 1])) for n in _KNOWN}  # as the column holds it
