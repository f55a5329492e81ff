"""Files: compressed or not, decoded line by line, and no larger than allowed."""

from __future__ import annotations

import bz2
import gzip
import lzma
import zlib
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import IO, BinaryIO, cast

from latingloss.errors import FormatError

MOST_BYTES = 1 << 30  # of one file when unpacked: about 150 million words
_LONGEST_LINE = 1 << 24  # bytes

_OPENERS: dict[str, Callable[[BinaryIO], object]] = {".gz": gzip.open, ".bz2": bz2.open, ".xz": lzma.open}
_PACKED = frozenset((".zip", ".zst", ".7z", ".rar", ".tar", ".tgz", ".lz4"))


def bare_name(path: Path) -> str:
    """Return a file's name without the suffix of its compression.

    >>> bare_name(Path("psalms.txt.gz")), bare_name(Path("psalms.txt"))
    ('psalms.txt', 'psalms.txt')
    """
    return path.stem if path.suffix.lower() in _OPENERS else path.name


class TextFile:
    """The lines of a UTF-8 file, `.gz`, `.bz2` or `.xz` or not compressed; iterate it once.

    Lines end at `\\n`, which they keep; a byte-order mark is left out. `line` is the number of the last line read,
    from 1, `read` how many bytes of the file as it lies on disk have been read. Raises `FormatError` naming file and
    line if it cannot be read, is not UTF-8, or unpacks to more than `most_bytes`: a small file may unpack to more
    than any machine holds.
    """

    def __init__(self, path: Path, *, most_bytes: int = MOST_BYTES) -> None:
        self.path, self.line, self.read = path, 0, 0
        self._most_bytes = most_bytes

    def __iter__(self) -> Iterator[str]:
        suffix = self.path.suffix.lower()
        if suffix in _PACKED:
            raise self.error(f"{suffix} is not unpacked here; unpack it, or compress its files with gzip")
        try:
            with open(self.path, "rb") as raw, _unpacked(raw, suffix) as file:
                yield from self._lines(file, raw)
        except (OSError, EOFError, zlib.error, lzma.LZMAError) as error:
            reason = error.strerror.lower() if isinstance(error, OSError) and error.strerror else str(error)
            raise self.error(f"cannot be read: {reason}") from error

    def _lines(self, file: IO[bytes], raw: BinaryIO) -> Iterator[str]:
        unpacked = 0
        while data := file.readline(_LONGEST_LINE + 1):
            self.line += 1
            unpacked += len(data)
            if len(data) > _LONGEST_LINE:
                raise self.error(f"longer than {_LONGEST_LINE:,} bytes; break it into lines")
            if unpacked > self._most_bytes:
                raise self.error(f"more than {self._most_bytes:,} bytes; cut the file, or raise most_bytes")
            self.read = raw.tell()
            try:
                text = data.decode("utf-8")
            except UnicodeDecodeError as error:
                raise self.error(f"byte {error.start + 1} is not UTF-8; convert the file to UTF-8") from error
            yield text.removeprefix("\ufeff") if self.line == 1 else text

    def error(self, reason: str) -> FormatError:
        """Return an error that names the file and the line last read."""
        where = f"{self.path}, line {self.line}" if self.line else str(self.path)
        return FormatError(f"{where}: {reason}")


def _unpacked(raw: BinaryIO, suffix: str) -> IO[bytes]:
    return cast(IO[bytes], _OPENERS[suffix](raw)) if suffix in _OPENERS else raw
