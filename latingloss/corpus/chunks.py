"""Chunks: what stands between white space; each distinct one is cut into tokens once.

Only what depends on its surroundings (numerals, V. and R., words broken off at a hyphen) is cut where it stands.
"""

from __future__ import annotations

from array import array
from collections.abc import Callable, Iterator, Sequence
from functools import cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from latingloss.text.tokens import HYPHENS, Cutter, Span, stands_alone, tokenize

_DEPENDS = -1
_NOTHING = 0  # a chunk that the one before it has taken in
_NO_WORD = -1
_BEYOND = 0x3001  # behind the last character that is white space

Longs = NDArray[np.int64]


class Tokens(NamedTuple):
    """The tokens of a text, an entry each."""

    start: Longs
    print: Longs  # number of the print, -1 for all but words


class Chunks(dict[str, int]):
    """Chunks met so far, by number; `number_of` gives the number of the print of a word."""

    def __init__(self, number_of: Callable[[str], int]) -> None:
        super().__init__()
        self._number_of = number_of
        self._in_place: dict[tuple[tuple[str, int, str], ...], int] = {}
        self._count, self._first = array("q", [0]), array("q", [0])
        self._offset, self._print = array("q", [0]), array("q", [_NO_WORD])

    def __missing__(self, chunk: str) -> int:
        number = self[chunk] = self._add(tokenize(chunk), 0) if stands_alone(chunk) else _DEPENDS
        return number

    def cut(self, text: str) -> Tokens:
        """Cut a text into tokens, as `tokenize` does."""
        chunks = text.split()
        starts = _starts(text)
        numbers = np.fromiter(map(self.__getitem__, chunks), np.int64, len(chunks))
        if (depends := np.flatnonzero(numbers == _DEPENDS)).size:
            for chunk, number in self._cut_in_place(text, starts, depends.tolist()):
                numbers[chunk] = number
        count, first = _taken(self._count, numbers), _taken(self._first, numbers)
        token = np.arange(count.sum()) + np.repeat(first - (np.cumsum(count) - count), count)
        return Tokens(np.repeat(starts, count) + _taken(self._offset, token), _taken(self._print, token))

    def given(self, tokens: Sequence[tuple[str, int, bool]]) -> Tokens:
        """Return tokens that are marked: text, where it starts, and whether it is a word."""
        numbers = (self._number_of(text) if word else _NO_WORD for text, _, word in tokens)
        return Tokens(
            np.fromiter((start for _, start, _ in tokens), np.int64, len(tokens)),
            np.fromiter(numbers, np.int64, len(tokens)),
        )

    def _cut_in_place(self, text: str, starts: Longs, depends: list[int]) -> Iterator[tuple[int, int]]:
        """Yield the numbers of chunks that depend on their surroundings; one broken off takes the next with it."""
        cutter, ends, done = Cutter(text), [*starts[1:].tolist(), len(text)], -1
        for chunk in depends:
            if chunk <= done:
                continue
            done = chunk
            while done + 1 < len(starts) and text[starts[done] : ends[done]].rstrip()[-1] in HYPHENS:
                done += 1
                yield done, _NOTHING
            start = int(starts[chunk])
            spans = cutter.tokens(start, ends[done])
            way = tuple((span.text, span.start - start, span.kind) for span in spans)
            if way not in self._in_place:
                self._in_place[way] = self._add(spans, start)
            yield chunk, self._in_place[way]

    def _add(self, spans: list[Span], start: int) -> int:
        """Return a new number for a chunk at `start` that is cut into these tokens."""
        self._count.append(len(spans))
        self._first.append(len(self._offset))
        for span in spans:
            self._offset.append(span.start - start)
            self._print.append(self._number_of(span.text) if span.kind == "word" else _NO_WORD)
        return len(self._count) - 1


def _taken(values: array[int], places: Longs) -> Longs:
    taken: Longs = np.frombuffer(values, np.int64)[places]
    return taken


@cache
def _white() -> NDArray[np.bool_]:
    return np.array([*(chr(code).isspace() for code in range(_BEYOND)), False])


def _starts(text: str) -> Longs:
    """Return where each chunk of a text starts."""
    codes = np.frombuffer(text.encode("utf-32-le", "surrogatepass"), "<u4")
    white = _white()[np.minimum(codes, _BEYOND)]
    return np.flatnonzero(~white & np.concatenate((np.ones(1, bool), white))[: len(white)])
