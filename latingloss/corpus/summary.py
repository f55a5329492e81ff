"""Summaries: what the scored words of each work come to."""

from __future__ import annotations

from os import PathLike
from pathlib import Path
from typing import TYPE_CHECKING

from latingloss.corpus.extra import pl

if TYPE_CHECKING:
    import polars

HARD = 0.6  # a word of this difficulty or more counts as hard


def summarize(
    words: polars.DataFrame | polars.LazyFrame | str | PathLike[str], *, hard: float = HARD, hardest: int = 10
) -> polars.DataFrame:
    """Summarise scored words, or a Parquet file of them, one row a work, in the order of the works.

    Columns: words; types (distinct lemmas); difficulty as mean and quantiles (q10 .. q90); hard_share, the share of
    words of difficulty `hard` or more; guessed_share; hardest, the hardest lemmas of the lexicon, names left out,
    each by the mean over its words.

    >>> from latingloss.corpus import score
    >>> summarize(next(score([("Hymn", "Stellae lucent."), ("Psalm", "Lux lucet.")]))).select("work", "words").rows()
    [('Hymn', 2), ('Psalm', 2)]
    """
    frame = pl.scan_parquet(Path(words)) if isinstance(words, str | PathLike) else words.lazy()
    score = pl.col("difficulty")
    figures = frame.group_by("work", maintain_order=True).agg(
        pl.len().alias("words"),
        pl.col("lemma").n_unique().alias("types"),
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
