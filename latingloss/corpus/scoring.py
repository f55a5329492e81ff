"""Scoring: texts in, columns out, one row a word, a batch at a time.

Nothing is made for a single word but its token; all else is looked up by number in tables that hold every
distinct form once.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from os import PathLike
from pathlib import Path
from threading import local
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from latingloss.context.network import shipped
from latingloss.corpus.batches import Batch, batches, runs
from latingloss.corpus.extra import pa, pl
from latingloss.corpus.files import MOST_BYTES
from latingloss.corpus.forms import Forms, Words
from latingloss.corpus.pieces import Piece
from latingloss.corpus.schema import FEATURES, PARTS, SCHEMA
from latingloss.corpus.sources import BadFile, Corpus, Texts

if TYPE_CHECKING:
    import polars
    import pyarrow

_ROWS_A_GROUP = 1 << 17
_MEASURED = (*PARTS.values(), "syllables", "difficulty", "guessed")  # columns that are as the tables have them
_MOST_PRINTS = 80_000  # of words, kept before the tables are begun anew, so that memory stays flat


def score(
    texts: Texts, *, context: bool = True, on_bad_file: BadFile | None = None, most_bytes: int = MOST_BYTES
) -> Iterator[polars.DataFrame]:
    """Score every word of a corpus; yield data frames of the columns of `SCHEMA`, in the order of the texts.

    `texts` are pairs (work, text), paths of files, folders or patterns (`Path("psalms/*.txt.gz")`), and `Table`s, in
    any mixture; see `latingloss.corpus.sources.Corpus` for the formats. They are read one after another, and memory
    stays flat however long they are. Rows do not depend on how they fall into batches. A file that cannot be read
    raises `FormatError` with its name and line; with `on_bad_file` it is left out and this is called with the error.
    `most_bytes` is what one file may unpack to. Without `context` each word has the likeliest reading of its form,
    which is wrong more often, but quicker.

    >>> frame = next(score([("Hymn", "Stellae lucent.")]))
    >>> frame.select("form", "lemma", "case", "person").rows()
    [('Stellae', 'stēlla', 'Nom', None), ('lucent', 'lūceō', None, 3)]
    """
    for batch in score_batches(texts, context=context, on_bad_file=on_bad_file, most_bytes=most_bytes):
        frame = pl.from_arrow(batch)
        assert isinstance(frame, pl.DataFrame)
        yield frame


def score_batches(
    texts: Texts, *, context: bool = True, on_bad_file: BadFile | None = None, most_bytes: int = MOST_BYTES
) -> Iterator[pyarrow.RecordBatch]:
    """Score as `score` does, but yield Arrow record batches."""
    return score_pieces(Corpus(texts, on_bad_file=on_bad_file, most_bytes=most_bytes), context=context)


def score_pieces(pieces: Iterable[Piece], *, context: bool = True) -> Iterator[pyarrow.RecordBatch]:
    """Score pieces of texts; yield Arrow record batches of the columns of `SCHEMA`."""
    for some in runs(pieces):
        forms = _tables()
        for batch in batches(some, forms.chunks):
            yield _columns(batch, forms.read(batch.print, batch.place, context=context), forms)


class _Kept(local):
    """The tables of a thread, kept from one call to the next; they are not safe to share."""

    forms: Forms | None = None


_kept = _Kept()


def _tables() -> Forms:
    """Return the tables of this thread, new ones when the old have grown too large."""
    if _kept.forms is None or len(_kept.forms) > _MOST_PRINTS:
        _kept.forms = Forms(shipped())
    return _kept.forms


def write_parquet(
    texts: Texts, path: str | PathLike[str], *, context: bool = True, on_bad_file: BadFile | None = None,
    most_bytes: int = MOST_BYTES,
) -> int:  # fmt: skip
    """Score a corpus into one Parquet file with the columns of `SCHEMA`; return the number of words.

    Takes what `score` takes. Until it is whole the file has `.part` behind its name. For processes, progress and
    going on after a stop, see `write_parts`.
    """
    from pyarrow.parquet import ParquetWriter

    unfinished = Path(f"{path}.part")
    words = 0
    with ParquetWriter(unfinished, SCHEMA, compression="zstd") as writer:
        scored = score_batches(texts, context=context, on_bad_file=on_bad_file, most_bytes=most_bytes)
        for group in _groups(scored):
            writer.write_table(group, row_group_size=group.num_rows)
            words += group.num_rows
    unfinished.replace(path)
    return words


def _groups(batches: Iterator[pyarrow.RecordBatch]) -> Iterator[pyarrow.Table]:
    """Join batches into tables large enough to be row groups."""
    held: list[pyarrow.RecordBatch] = []
    rows = 0
    for batch in batches:
        held.append(batch)
        rows += batch.num_rows
        if rows >= _ROWS_A_GROUP:
            yield pa.Table.from_batches(held, SCHEMA)
            held, rows = [], 0
    if held:
        yield pa.Table.from_batches(held, SCHEMA)


def _columns(batch: Batch, words: Words, forms: Forms) -> pyarrow.RecordBatch:
    """Lay words out as Arrow columns."""
    token, reading = words.token, words.reading
    columns = {
        "work": _named(batch.works, batch.work[token]),
        "passage": pa.array(batch.passage[token].astype(np.int32)),
        "token": pa.array(batch.token[token].astype(np.int32)),
        "start": pa.array(batch.start[token]),
        "end": pa.array(batch.start[token] + words.letters),
        "form": _named(forms.forms, words.form),
        "lemma": _named(forms.lemmas.names, reading["lemma"]),
        "upos": _named(forms.upos.names, reading["upos"]),
        "confidence": pa.array(words.confidence),
        "relative": _named([*forms.relatives.names, None], reading["relative"]),  # -1 is none
    } | {name: pa.array(reading[name]) for name in _MEASURED}
    sets, code = [dict(features) for features in forms.features], reading["features"]
    for column, name in FEATURES.items():
        kind = SCHEMA.field(column).type
        values = [features.get(name) for features in sets]
        columns[column] = pa.array(values, pa.string()).cast(kind).take(pa.array(code))
    return pa.RecordBatch.from_arrays([columns[name] for name in SCHEMA.names], schema=SCHEMA)


def _named(names: Sequence[str | None], codes: NDArray[np.integer]) -> pyarrow.Array:
    """Return the names of codes as strings; only the names met are turned into Arrow."""
    met = np.zeros(len(names), np.int32)
    met[codes] = 1
    where = np.flatnonzero(met)
    met[where] = np.arange(len(where), dtype=np.int32)
    return pa.array([names[code] for code in where.tolist()], pa.string()).take(pa.array(met[codes]))
