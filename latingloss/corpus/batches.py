"""Batches: the word tokens of whole passages, gathered from pieces of texts, as columns."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from latingloss.corpus.pieces import Given, Piece
from latingloss.tables import collector_paused
from latingloss.text.lines import lines
from latingloss.text.tokens import tokenize

TOKENS_A_BATCH = 1 << 15


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
        self.works: list[str] = []
        self.length = 0
        self.passages: list[tuple[int, int, int, int]] = []  # start, to take from offsets, number in work, work
        self.starts: list[int] = []  # of all tokens
        self.words: list[int] = []  # which of them are words
        self.texts: list[str] = []  # of the words

    def add(self, piece: Piece) -> None:
        """Lay a piece on."""
        if not self.works or self.works[-1] != piece.work:
            self.works.append(piece.work)
        given = piece.given or _cut(piece.text)
        base, work, numbers = self.length, len(self.works) - 1, range(piece.first, piece.first + len(given.passages))
        offset = base - piece.start
        self.passages += [(base + at, offset, i, work) for i, at in zip(numbers, given.passages, strict=True)]
        self.words += [i for i, (_, _, word) in enumerate(given.tokens, len(self.starts)) if word]
        self.texts += [text for text, _, word in given.tokens if word]
        self.starts += [base + start for _, start, _ in given.tokens]
        self.length += len(piece.text)

    def batches(self) -> Iterator[Batch]:
        """Yield the words in batches of whole passages."""
        if not self.words:
            return
        passages, starts, words = np.array(self.passages), np.array(self.starts), np.array(self.words)
        place = np.searchsorted(passages[:, 0], starts[words], side="right") - 1
        first = np.searchsorted(starts, passages[:, 0])
        for part in _parted(np.flatnonzero(np.diff(place, prepend=-1)), len(words)):
            lies, texts = passages[place[part]], self.texts[part]
            start = starts[words[part]] - lies[:, 1]
            yield Batch(
                texts, start, start + np.fromiter(map(len, texts), np.int64, len(texts)),
                words[part] - first[place[part]], lies[:, 2], lies[:, 3], place[part].astype(np.int32), self.works,
            )  # fmt: skip


def _cut(text: str) -> Given:
    return Given(
        tuple(line.start for line in lines(text)),
        tuple((text, start, kind == "word") for text, start, _, kind in tokenize(text)),
    )


def _parted(new: NDArray[np.int64], words: int) -> Iterator[slice]:
    """Cut the words where a passage begins (`new`, ascending), as soon as a part has the batch's size."""
    first = 0
    while first < words:
        at = int(np.searchsorted(new, first + TOKENS_A_BATCH))
        last = int(new[at]) if at < len(new) else words
        yield slice(first, last)
        first = last


def batches(pieces: Iterable[Piece]) -> Iterator[Batch]:
    """Yield the words of all pieces in order."""
    gathered = _Gathered()
    for piece in pieces:
        with collector_paused():
            gathered.add(piece)
        if len(gathered.starts) >= TOKENS_A_BATCH:
            yield from gathered.batches()
            gathered = _Gathered()
    yield from gathered.batches()
