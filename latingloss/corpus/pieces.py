"""Pieces: parts of works that can be read by themselves, so that memory stays flat."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from latingloss.document import Passage
from latingloss.text.lines import lines

PIECE_CHARACTERS = 1 << 17


class Given(NamedTuple):
    """Passages and tokens as a file marks them; offsets are in the piece's text."""

    passages: tuple[int, ...]  # where each starts
    tokens: tuple[tuple[str, int, bool], ...]  # text, where it starts, whether it is a word


class Piece(NamedTuple):
    """A part of a work: `start` is its offset in the text it is cut from, `first` the number of its first passage."""

    work: str
    text: str
    start: int = 0
    first: int = 0
    given: Given | None = None

    @property
    def passages(self) -> int:
        """Number of its passages."""
        return len(self.given.passages) if self.given else len(lines(self.text))


def given_piece(work: str, source: str, passages: Sequence[Passage], *, before: int = 0) -> Piece:
    """Return passages of a document, one after another, as a piece; `before` characters came before the source."""
    start, end = passages[0].start, passages[-1].end
    tokens = tuple((t.text, t.start - start, t.kind == "word") for passage in passages for t in passage.tokens)
    given = Given(tuple(passage.start - start for passage in passages), tokens)
    return Piece(work, source[start:end], before + start, given=given)
