"""Pieces: parts of works that can be read by themselves, so that memory stays flat."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from latingloss.document import Passage
from latingloss.tables import collector_paused
from latingloss.text.lines import lines

PIECE_CHARACTERS = 1 << 17


class Piece(NamedTuple):
    """A part of a work: `start` is its offset in the text it is cut from, `first` the number of its first passage."""

    work: str
    text: str
    start: int = 0
    first: int = 0
    passages: tuple[int, ...] | None = None  # where each starts in the text, as marked or as `lines` finds them
    tokens: tuple[tuple[str, int, bool], ...] | None = None  # as marked: text, where it starts, whether it is a word

    def in_passages(self) -> Piece:
        """Return the piece with its passages found, if none are marked."""
        if self.passages is not None:
            return self
        with collector_paused():
            return self._replace(passages=tuple(line.start for line in lines(self.text)))


def given_piece(work: str, source: str, passages: Sequence[Passage], *, before: int = 0) -> Piece:
    """Return passages of a document, one after another, as a piece; `before` characters came before the source."""
    start, end = passages[0].start, passages[-1].end
    tokens = tuple((t.text, t.start - start, t.kind == "word") for passage in passages for t in passage.tokens)
    starts = tuple(passage.start - start for passage in passages)
    return Piece(work, source[start:end], before + start, passages=starts, tokens=tokens)
