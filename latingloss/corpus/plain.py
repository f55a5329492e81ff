"""Plain text, cut between lines into pieces."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from latingloss.corpus import pieces
from latingloss.corpus.files import TextFile
from latingloss.corpus.pieces import Piece
from latingloss.text.tokens import HYPHENS


def read(file: TextFile, work: str) -> Iterator[Piece]:
    """Yield the pieces of a text file."""
    start = 0
    for text in _cut(file):
        yield Piece(work, text, start)
        start += len(text)


def _cut(file: Iterable[str]) -> Iterator[str]:
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
        if length >= pieces.PIECE_CHARACTERS and printed >= 2 and not line.rstrip().endswith(tuple(HYPHENS)):
            if held:
                yield held
            held, lines, length, printed = "".join(lines), [], 0, 0
    rest = "".join(lines)
    if held and printed >= 2:
        yield held
        held = ""
    if held or rest:
        yield held + rest
