"""Batches: the words of whole passages, gathered from pieces of texts, as columns."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from latingloss.corpus.chunks import Chunks, Longs, Tokens
from latingloss.corpus.pieces import Piece
from latingloss.tables import collector_paused

TOKENS_A_BATCH = 1 << 15
CHARACTERS_AT_ONCE = 1 << 18  # gathered before they are cut into batches


class Batch(NamedTuple):
    """Word tokens of some passages; one entry a token."""

    print: Longs  # number of what is printed
    start: Longs
    token: Longs  # number in its passage
    passage: Longs  # number in its work
    work: Longs  # number in `works`
    place: NDArray[np.int32]  # passage, ascending over the whole batch
    works: list[str]


class _Gathered:
    """Pieces laid end to end, their passages known by where they start."""

    def __init__(self, chunks: Chunks) -> None:
        self._chunks = chunks
        self._works: list[str] = []
        self._length = 0
        self._passages: list[Longs] = []  # start, what to take from offsets, number in work, work; a row each
        self._tokens: list[Tokens] = []

    def add(self, piece: Piece) -> None:
        """Lay a piece on."""
        if not self._works or self._works[-1] != piece.work:
            self._works.append(piece.work)
        starts = np.array(piece.in_passages().passages, np.int64)
        numbers, base = np.arange(piece.first, piece.first + len(starts)), self._length
        alike = np.full((2, len(starts)), [[base - piece.start], [len(self._works) - 1]])
        self._passages.append(np.column_stack((base + starts, alike[0], numbers, alike[1])))
        tokens = self._chunks.cut(piece.text) if piece.tokens is None else self._chunks.given(piece.tokens)
        self._tokens.append(tokens._replace(start=base + tokens.start))
        self._length += len(piece.text)

    def batches(self) -> Iterator[Batch]:
        """Yield the words in batches of whole passages."""
        if not self._tokens:
            return
        starts, prints = (np.concatenate(parts) for parts in zip(*self._tokens, strict=True))
        passages, words = np.concatenate(self._passages), np.flatnonzero(prints >= 0)
        place = np.searchsorted(passages[:, 0], starts[words], side="right") - 1
        first = np.searchsorted(starts, passages[:, 0])
        for part in _parted(np.flatnonzero(np.diff(place, prepend=-1)), len(words)):
            lies = passages[place[part]]
            yield Batch(
                prints[words[part]], starts[words[part]] - lies[:, 1], words[part] - first[place[part]],
                lies[:, 2], lies[:, 3], place[part].astype(np.int32), self._works,
            )  # fmt: skip


def _parted(new: NDArray[np.int64], words: int) -> Iterator[slice]:
    """Cut the words where a passage begins (`new`, ascending), as soon as a part has the batch's size."""
    first = 0
    while first < words:
        at = int(np.searchsorted(new, first + TOKENS_A_BATCH))
        last = int(new[at]) if at < len(new) else words
        yield slice(first, last)
        first = last


def runs(pieces: Iterable[Piece]) -> Iterator[list[Piece]]:
    """Yield the pieces some at a time, in order."""
    held, length = list[Piece](), 0
    for piece in pieces:
        held.append(piece)
        length += len(piece.text)
        if length >= CHARACTERS_AT_ONCE:
            yield held
            held, length = [], 0
    if held:
        yield held


def batches(pieces: Iterable[Piece], chunks: Chunks) -> Iterator[Batch]:
    """Yield the words of some pieces in order."""
    gathered = _Gathered(chunks)
    with collector_paused():
        for piece in pieces:
            gathered.add(piece)
    yield from gathered.batches()
