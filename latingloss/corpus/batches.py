"""Batches: the word tokens of whole passages, gathered from pieces of texts, as columns."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from latingloss.corpus.sources import Piece
from latingloss.text.lines import lines
from latingloss.text.tokens import Span, tokenize

TOKENS_A_BATCH = 1 << 16


class Batch(NamedTuple):
    """Word tokens of some passages; one entry a token."""

    text: list[str]
    start: NDArray[np.int64]
    end: NDArray[np.int64]
    token: NDArray[np.int64]  # number in its passage
    passage: NDArray[np.int64]  # number in its work
    work: NDArray[np.int64]  # number in `works`
    place: NDArray[np.int32]  # passage, ascending over the whole batch
    works: list[str]


class _Gathered:
    """Pieces laid end to end, their passages known by where they start."""

    def __init__(self) -> None:
        self.spans: list[Span] = []
        self.works: list[str] = []
        self.length = 0
        self.passages: list[tuple[int, int, int, int]] = []  # start, to take from offsets, number in work, work

    def add(self, piece: Piece, number: int) -> int:
        """Lay a piece on, its passages numbered from `number`; return the next number."""
        if not self.works or self.works[-1] != piece.work:
            self.works.append(piece.work)
        base, work = self.length, len(self.works) - 1
        found = lines(piece.text)
        self.passages += [(base + x.start, base - piece.start, number + i, work) for i, x in enumerate(found)]
        self.spans += tokenize(piece.text, offset=base)
        self.length += len(piece.text)
        return number + len(found)

    def batches(self) -> Iterator[Batch]:
        """Yield the words in batches of whole passages."""
        if not self.spans:
            return
        texts, starts, ends, kinds = zip(*self.spans, strict=True)
        passages = np.array(self.passages, np.int64)
        start = np.array(starts, np.int64)
        place = np.searchsorted(passages[:, 0], start, side="right") - 1
        token = np.arange(len(start)) - np.searchsorted(start, passages[:, 0])[place]
        words = np.flatnonzero([kind == "word" for kind in kinds])
        new = np.flatnonzero(np.diff(place[words], prepend=-1))
        for part in _parted(words, new):
            lies = passages[place[part]]
            yield Batch(
                [texts[i] for i in part.tolist()], start[part] - lies[:, 1], np.array(ends)[part] - lies[:, 1],
                token[part], lies[:, 2], lies[:, 3], place[part].astype(np.int32), self.works,
            )  # fmt: skip


def _parted(words: NDArray[np.int64], new: NDArray[np.int64]) -> Iterator[NDArray[np.int64]]:
    """Cut the words where a passage begins (`new`), as near as can be to the batch's size."""
    first = 0
    while first < len(words):
        after = new[new > first]
        fitting = after[after <= first + TOKENS_A_BATCH]
        last = (
            len(words)
            if len(words) - first <= TOKENS_A_BATCH or not len(after)
            else (fitting[-1] if len(fitting) else after[0])
        )
        yield words[first:last]
        first = int(last)


def batches(pieces: Iterable[Piece]) -> Iterator[Batch]:
    """Yield the words of all pieces in order; pieces of one work after another count their passages on."""
    gathered, work, number = _Gathered(), None, 0
    for piece in pieces:
        number = gathered.add(piece, number if piece.work == work else 0)
        work = piece.work
        if len(gathered.spans) >= TOKENS_A_BATCH:
            yield from gathered.batches()
            gathered = _Gathered()
    yield from gathered.batches()
