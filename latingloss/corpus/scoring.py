"""Scoring: texts in, columns out, one row a word, a batch at a time.

Nothing is made for a single word but its token; all else is looked up by number in tables that hold every
distinct form once.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from os import PathLike
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from latingloss.context.model import shipped
from latingloss.context.tags import CASES, NUMBERS
from latingloss.corpus.batches import Batch, batches
from latingloss.corpus.extra import pa, pl
from latingloss.corpus.forms import Forms, Words
from latingloss.corpus.sources import Source, pieces

if TYPE_CHECKING:
    import polars
    import pyarrow

_ROWS_A_GROUP = 1 << 17
_MOST_PRINTS = 80_000  # kept before the tables are begun anew, so that memory stays flat

_FIELDS = (
    ("work", pa.string(), "name given to the text, or the file's"),
    ("passage", pa.int32(), "number in the work, from 0: a line, or a sentence of a text on one line"),
    ("token", pa.int32(), "number in the passage, from 0, marks and numerals counted"),
    ("start", pa.int64(), "offset in the text, in characters"),
    ("end", pa.int64(), "offset behind the last character; an enclitic has its token's offsets"),
    ("form", pa.string(), "the word as printed"),
    ("lemma", pa.string(), "dictionary form with vowel lengths; homographs carry #1, #2"),
    ("upos", pa.string(), "part of speech, a Universal Dependencies tag"),
    ("case", pa.string(), "UD value; null if none"),
    ("number", pa.string(), "UD value; null if none"),
    ("person", pa.int8(), "1, 2, 3; null if none"),
    ("confidence", pa.float32(), "probability of the reading in its context"),
    ("zipf", pa.float32(), "how common the lemma is: log10 of uses in 10^9 words"),
    ("letters", pa.int16(), "of the form"),
    ("syllables", pa.int16(), "of the form"),
    (
        "cognate_distance",
        pa.float32(),
        "from the nearest English relative: 0 same .. 1 nothing in common, or none known",
    ),
    ("relative", pa.string(), "the nearest English relative that a reader knows; null if none"),
    ("difficulty", pa.float32(), "0 easy .. 1 hard"),
    ("guessed", pa.bool_(), "true if the lemma is not in the lexicon"),
)
SCHEMA = pa.schema([pa.field(name, kind, metadata={"description": text}) for name, kind, text in _FIELDS])


def score(texts: Iterable[Source] | PathLike[str]) -> Iterator[polars.DataFrame]:
    """Score every word of a corpus; yield data frames of the columns of `SCHEMA`, in the order of the texts.

    `texts` are pairs of work and text, or paths of UTF-8 files (`.gz` too), in any mixture; they are read one
    after another, and memory stays flat however long they are. Rows do not depend on how they fall into batches.

    >>> frame = next(score([("Hymn", "Stellae lucent.")]))
    >>> frame.select("form", "lemma", "case", "person").rows()
    [('Stellae', 'stēlla', 'Nom', None), ('lucent', 'lūceō', None, 3)]
    """
    for batch in score_batches(texts):
        frame = pl.from_arrow(batch)
        assert isinstance(frame, pl.DataFrame)
        yield frame


def score_batches(texts: Iterable[Source] | PathLike[str]) -> Iterator[pyarrow.RecordBatch]:
    """Score as `score` does, but yield Arrow record batches."""
    forms = Forms(shipped())
    for batch in batches(pieces(texts)):
        if len(forms) > _MOST_PRINTS:
            forms = Forms(shipped())
        yield _columns(batch, forms.read(batch.text, batch.place), forms)


def write_parquet(texts: Iterable[Source] | PathLike[str], path: str | PathLike[str]) -> int:
    """Score a corpus into one Parquet file with the columns of `SCHEMA`; return the number of words.

    Until it is whole the file has `.part` behind its name.
    """
    from pyarrow.parquet import ParquetWriter

    unfinished = Path(f"{path}.part")
    words = 0
    with ParquetWriter(unfinished, SCHEMA, compression="zstd") as writer:
        for group in _groups(score_batches(texts)):
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
    """Lay words out as Arrow columns; a code of -1, or of the empty name, is null."""
    token, reading = words.token, words.reading
    person = reading["person"]
    columns = {
        "work": _named(batch.works, batch.work[token]),
        "passage": pa.array(batch.passage[token].astype(np.int32)),
        "token": pa.array(batch.token[token].astype(np.int32)),
        "start": pa.array(batch.start[token]),
        "end": pa.array(batch.end[token]),
        "form": _named(forms.forms.names, words.form),
        "lemma": _named(forms.lemmas.names, reading["lemma"]),
        "upos": _named(forms.upos.names, reading["upos"]),
        "case": _named(CASES, reading["case"], none=0),
        "number": _named(NUMBERS, reading["number"], none=0),
        "person": pa.array(person, mask=person == 0),
        "confidence": pa.array(words.confidence),
        "cognate_distance": pa.array(reading["distance"]),
        "relative": _named(forms.relatives.names, reading["relative"], none=-1),
    } | {name: pa.array(reading[name]) for name in ("zipf", "letters", "syllables", "difficulty", "guessed")}
    return pa.RecordBatch.from_arrays([columns[name] for name in SCHEMA.names], schema=SCHEMA)


def _named(names: Sequence[str], codes: NDArray[np.integer], *, none: int | None = None) -> pyarrow.Array:
    """Return the names of codes as strings; only the names met are turned into Arrow."""
    met, where = np.unique(codes, return_inverse=True)
    values = pa.array([None if code == none else names[code] for code in met.tolist()], pa.string())
    return values.take(pa.array(where))
