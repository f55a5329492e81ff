"""Rescoring: other weights or frequencies for words that were scored before, from the columns that they have."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeVar

import polars

from latingloss.corpus.extra import pl
from latingloss.corpus.schema import PARTS
from latingloss.difficulty.frequency import PRIOR_WORDS, Frequencies
from latingloss.difficulty.score import SPREAD, Weight, checked_weights
from latingloss.text.orthography import printed

Frame = TypeVar("Frame", polars.DataFrame, polars.LazyFrame)


def rescore(
    words: Frame, *, weights: Mapping[str, Weight] | None = None, frequencies: Frequencies | None = None
) -> Frame:
    """Return scored words with `zipf` and `difficulty` by other frequencies or weights; the other columns stay.

    `words` have the columns of `SCHEMA`, in memory or not (`polars.scan_parquet`); nothing is read again but them.
    `weights` are those that `fit_weights` learned, the shipped ones if None; `frequencies` those of a domain or of
    texts of one's own, as the words have them if None. Raises `OptionError` if a part has no weight.

    >>> from latingloss.corpus import score
    >>> words = next(score([("Ode", "Thalamus vacat.")]))
    >>> classical = rescore(words, frequencies=Frequencies.classical())
    >>> classical["zipf"][0] > words["zipf"][0], classical["difficulty"][0] < words["difficulty"][0]
    (True, True)
    """
    table = checked_weights(weights)
    found = words if frequencies is None else _counted(words, frequencies)
    total = pl.sum_horizontal(
        pl.lit(table[part].weight) * (pl.col(column) - table[part].mean) / table[part].deviation
        for part, column in PARTS.items()
    )
    return found.with_columns((1 / (1 + (-SPREAD * total).exp())).cast(pl.Float32).alias("difficulty"))


def _counted(words: Frame, frequencies: Frequencies) -> Frame:
    """Return the words with `zipf` by other frequencies; see `Frequencies.zipf`."""
    rows = [(printed(lemma), upos, float(count)) for (lemma, upos), count in frequencies.counts.items()]
    counts = pl.DataFrame(rows, schema=["lemma", "upos", "own"], orient="row").unique(["lemma", "upos"], keep="first")
    general = PRIOR_WORDS * 10 ** (pl.col("zipf").cast(pl.Float64) - 9)
    zipf = ((pl.col("own").fill_null(0) + general) / (frequencies.words + PRIOR_WORDS)).log10() + 9
    joined = words.lazy().join(counts.lazy(), on=["lemma", "upos"], how="left", maintain_order="left")
    found = joined.with_columns(zipf.cast(pl.Float32).alias("zipf")).drop("own")
    return found if isinstance(words, pl.LazyFrame) else found.collect()
