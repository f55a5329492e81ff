"""Tables: texts in the cells of Parquet, CSV, TSV or JSON Lines, a text a row, read some rows at a time."""

from __future__ import annotations

import csv
import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from os import PathLike
from pathlib import Path

from latingloss.corpus.extra import pa
from latingloss.corpus.files import TextFile
from latingloss.corpus.pieces import Piece
from latingloss.errors import FormatError
from latingloss.text.checking import MOST_CHARACTERS

_ROWS = 256  # read at a time


@dataclass(frozen=True)
class Table:
    """A file with a text a row, and the names of the columns that have the text and the name of its work.

    Rows of one work after another count their passages on; a row whose text is null or empty is left out. With
    `work=None` the file is one work, named after it.

    >>> Table("verses.csv", text="latin", work="book").text
    'latin'
    """

    path: str | PathLike[str]
    text: str = "text"
    work: str | None = "work"


_Row = tuple[object, object]  # text, work


def read_rows(file: TextFile, work: str, columns: Table) -> Iterator[Piece]:
    """Yield each row of a CSV, TSV (by the file's name) or JSON Lines file as a piece."""
    name = file.path.name.lower()
    rows = _json_rows(file, columns) if ".json" in name or ".ndjson" in name else _csv_rows(file, columns)
    for text, of in rows:
        if text is not None and not isinstance(text, str):
            raise file.error(f"column {columns.text!r} has {text!r:.40}; a text is a string")
        if text:
            yield Piece(work if of is None else str(of), text)


def read_parquet(path: Path, work: str, columns: Table) -> Iterator[Piece]:
    """Yield each row of a Parquet file as a piece."""
    from pyarrow.parquet import ParquetFile

    try:
        with ParquetFile(path) as file:
            _check(columns, file.schema_arrow.names, str(path))
            names = [name for name in (columns.text, columns.work) if name]
            for batch in file.iter_batches(_ROWS, columns=names):
                works = batch.column(columns.work).to_pylist() if columns.work else [None] * len(batch)
                texts = batch.column(columns.text).cast(pa.string()).to_pylist()
                yield from (Piece(work if w is None else str(w), t) for t, w in zip(texts, works, strict=True) if t)
    except (pa.ArrowException, OSError, UnicodeDecodeError) as error:  # the last for names that are not UTF-8
        raise FormatError(f"{path}: cannot be read as Parquet: {error}") from error


def _csv_rows(file: TextFile, columns: Table) -> Iterator[_Row]:
    csv.field_size_limit(max(csv.field_size_limit(), MOST_CHARACTERS))  # a whole work may stand in a cell
    rows = csv.reader(file, delimiter="\t" if ".tsv" in file.path.name.lower() else ",", strict=True)
    try:
        header = next(rows, [])
        _check(columns, header, str(file.path))
        text = header.index(columns.text)
        work = header.index(columns.work) if columns.work else None
        for cells in rows:
            if cells and len(cells) != len(header):
                raise file.error(f"{len(cells)} cells where the header has {len(header)}")
            if cells:
                yield cells[text], cells[work] if work is not None else None
    except csv.Error as error:
        raise file.error(str(error)) from error


def _json_rows(file: TextFile, columns: Table) -> Iterator[_Row]:
    for line in file:
        if line.isspace():
            continue
        try:
            row = json.loads(line)
        except (ValueError, RecursionError) as error:
            raise file.error(f"not JSON: {error}") from error
        if not isinstance(row, dict):
            raise file.error("not a JSON object; give one with named values a line")
        _check(columns, list(row), f"{file.path}, line {file.line}")
        yield row[columns.text], row[columns.work] if columns.work else None


def _check(columns: Table, names: Sequence[str], where: str) -> None:
    for name in (columns.text, columns.work):
        if name is not None and name not in names:
            there = ", ".join(map(repr, names)) or "none"
            raise FormatError(f"{where}: no column {name!r}, only {there}; give Table(path, text=..., work=...)")
