"""Sources: texts by name, files, folders and tables, as pieces in order."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace
from glob import glob, has_magic
from os import PathLike
from pathlib import Path
from typing import NamedTuple

from latingloss.corpus import plain
from latingloss.corpus.files import MOST_BYTES, TextFile, bare_name
from latingloss.corpus.marked import read_conllu, read_tei
from latingloss.corpus.pieces import Piece
from latingloss.corpus.table import Table, read_parquet, read_rows
from latingloss.errors import FormatError, InputTypeError

Source = tuple[str, str] | PathLike[str] | Table  # a work's name and its text; a file, folder or glob; a table
Texts = Iterable[Source] | PathLike[str] | Table
BadFile = Callable[[FormatError], None]

_MARKED = {".conllu": read_conllu, ".xml": read_tei, ".tei": read_tei}
_TABLES = frozenset((".csv", ".tsv", ".jsonl", ".ndjson", ".parquet"))
_KNOWN = frozenset((".txt", *_MARKED, *_TABLES))


class _File(NamedTuple):
    path: Path
    work: str
    columns: Table


class Corpus:
    """The pieces of all texts in order; iterate it once.

    A text is a pair (work, text) or a path. The suffix of a file tells how it is read: `.conllu`, `.xml` or `.tei`
    (TEI P5), `.csv`, `.tsv`, `.jsonl`, `.ndjson`, `.parquet`, all else as plain text; `.gz`, `.bz2` or `.xz` may
    follow, and what is left of the name is the work's. Of a folder the files with these suffixes or `.txt` are taken,
    of a path with `*`, `?` or `[` those that match, in the order of their names, each work named by its place below
    the folder. `Table` names columns. Texts with one name after another are one work.

    `on_bad_file`, if given, is called for each file that cannot be read, which is then left out; every file is read
    through once before, so that none of a bad one is used. Without it the `FormatError` is raised. `most_bytes` is
    what one file may unpack to. Raises `InputTypeError` for other sources.

    >>> list(Corpus([("Hymn", "Lux lucet.\\nNox abit."), ("Hymn", "Sol oritur.")]))[1]
    Piece(work='Hymn', text='Sol oritur.', start=0, first=2, passages=(0,), tokens=None)
    """

    def __init__(self, texts: Texts, *, on_bad_file: BadFile | None = None, most_bytes: int = MOST_BYTES) -> None:
        self._texts = [texts] if isinstance(texts, PathLike | Table) else texts
        self._on_bad_file, self._most_bytes = on_bad_file, most_bytes
        self._before, self._file = 0, None
        self.bytes = sum(map(_size, self._texts)) if isinstance(self._texts, Sequence) else None

    _file: TextFile | None
    bytes: int | None  # of all texts, if they are a list: what `read` will come to

    @property
    def read(self) -> int:
        """Number of bytes of files and characters of texts read so far."""
        return self._before + (self._file.read if self._file else 0)

    def __iter__(self) -> Iterator[Piece]:
        work, number = None, 0
        for found in self._pieces():
            piece = found.in_passages()
            number = number if piece.work == work else 0
            work = piece.work
            yield piece._replace(first=number)
            number += len(piece.passages or ())

    def _pieces(self) -> Iterator[Piece]:
        for source in self._texts:
            if not isinstance(source, PathLike | Table):
                piece = Piece(*_pair(source))
                self._before += len(piece.text)
                yield piece
                continue
            for file in self._found(source):
                yield from self._file_pieces(file)
                self._before, self._file = self._before + file.path.stat().st_size, None

    def _found(self, source: PathLike[str] | Table) -> list[_File]:
        try:
            return _files(source)
        except FormatError as error:
            self._bad(error)
            return []

    def _file_pieces(self, file: _File) -> Iterator[Piece]:
        if self._on_bad_file:
            try:
                for _ in self._read(file):
                    pass
            except FormatError as error:
                self._bad(error)
                return
        yield from self._read(file)

    def _bad(self, error: FormatError) -> None:
        if not self._on_bad_file:
            raise error
        self._on_bad_file(error)

    def _read(self, file: _File) -> Iterator[Piece]:
        suffix = Path(bare_name(file.path)).suffix.lower()
        if suffix == ".parquet":
            return read_parquet(file.path, file.work, file.columns)
        self._file = TextFile(file.path, most_bytes=self._most_bytes)
        if suffix in _TABLES:
            return read_rows(self._file, file.work, file.columns)
        return _MARKED.get(suffix, plain.read)(self._file, file.work)


def _pair(source: object) -> tuple[str, str]:
    if isinstance(source, tuple) and len(source) == 2 and all(isinstance(part, str) for part in source):
        return source
    raise InputTypeError(f"got {source!r:.60}; a text is a pair (work, text), a file is a pathlib.Path or a Table")


def _files(source: PathLike[str] | Table) -> list[_File]:
    """Return the files of a path: itself, those of a folder, or those that match a pattern."""
    columns = source if isinstance(source, Table) else Table(source)
    path = Path(columns.path)
    if path.is_dir():
        found, root = sorted(p for p in path.rglob("*") if _is_text(p.relative_to(path)) and p.is_file()), path
        if not found:
            raise FormatError(f"{path}: no file in it ends in {', '.join(sorted(_KNOWN))}")
    elif has_magic(str(path)) and not path.exists():
        root = next(parent for parent in path.parents if not has_magic(str(parent)))
        found = [Path(name) for name in sorted(glob(str(path), recursive=True)) if Path(name).is_file()]
        if not found:
            raise FormatError(f"{path}: no file matches")
    elif path.is_file():
        found, root = [path], path.parent
    else:
        raise FormatError(f"{path}: no such file; give the path of a file or folder")
    return [_File(p, _work(p.relative_to(root)), replace(columns, path=p)) for p in found]


def _is_text(path: Path) -> bool:
    hidden = any(part.startswith(".") for part in path.parts)
    return not hidden and Path(bare_name(path)).suffix.lower() in _KNOWN


def _work(path: Path) -> str:
    name = bare_name(path)
    return path.with_name(Path(name).stem).as_posix()


def _size(source: Source) -> int:
    """Return about how much there is to read of a source; none of one that will turn out bad."""
    if isinstance(source, PathLike | Table):
        try:
            return sum(file.path.stat().st_size for file in _files(source))
        except (FormatError, OSError):
            return 0
    return len(_pair(source)[1])
