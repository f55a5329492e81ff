"""Sources: texts by name, or files read piece by piece, so that memory stays flat."""

from __future__ import annotations

import gzip
from collections.abc import Iterable, Iterator
from os import PathLike
from pathlib import Path
from typing import NamedTuple, TextIO

from latingloss.errors import FormatError, InputTypeError

_PIECE_CHARACTERS = 1 << 17

Source = tuple[str, str] | PathLike[str]  # a work's name and its text, or a file


class Piece(NamedTuple):
    """A part of a work that can be read by itself; `start` is its offset in the text it is cut from."""

    work: str
    text: str
    start: int


def pieces(texts: Iterable[Source] | PathLike[str]) -> Iterator[Piece]:
    """Yield the pieces of all texts in order; texts with one name after another are one work.

    A file is UTF-8 text, gzip-compressed if its name ends in `.gz`; its work is named after it. A long file is cut
    between lines. Raises `FormatError` naming a file that is not UTF-8, `InputTypeError` for other sources.

    >>> list(pieces([("Hymn", "Lux lucet.")]))
    [Piece(work='Hymn', text='Lux lucet.', start=0)]
    """
    for text in [texts] if isinstance(texts, PathLike) else texts:
        if isinstance(text, PathLike):
            yield from _file_pieces(Path(text))
        elif isinstance(text, tuple) and len(text) == 2 and all(isinstance(part, str) for part in text):
            yield Piece(*text, 0)
        else:
            raise InputTypeError(f"got {text!r:.60}; a text is a pair (work, text), a file is a pathlib.Path")


def _file_pieces(path: Path) -> Iterator[Piece]:
    work = path.name.removesuffix(".gz").rpartition(".")[0] or path.name
    start = 0
    try:
        with _opened(path) as file:
            for text in _cut(file):
                yield Piece(work, text, start)
                start += len(text)
    except UnicodeDecodeError as error:
        raise FormatError(f"{path}: not UTF-8 text ({error.reason}); convert it first") from error
    except (gzip.BadGzipFile, EOFError) as error:
        raise FormatError(f"{path}: not a whole gzip file: {error}") from error


def _opened(path: Path) -> TextIO:
    if path.suffix == ".gz":
        return gzip.open(path, "rt", encoding="utf-8-sig", newline="")
    return open(path, encoding="utf-8-sig", newline="")


def _cut(file: TextIO) -> Iterator[str]:
    """Cut a file between lines, not where a word is broken off; every piece of a cut file has two lines or more.

    (A text of one line is read as prose, so a last line must not become a text of its own.)
    """
    held = ""
    lines: list[str] = []
    length = printed = 0
    for line in file:
        lines.append(line)
        length += len(line)
        printed += not line.isspace()
        if length >= _PIECE_CHARACTERS and printed >= 2 and not line.rstrip().endswith(("-", "‐", "\u00ad")):
            if held:
                yield held
            held, lines, length, printed = "".join(lines), [], 0, 0
    rest = "".join(lines)
    if held and printed >= 2:
        yield held
        held = ""
    if held or rest:
        yield held + rest
