"""Word stacks shared out into rows, for the formats that cannot let them flow."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from latingloss.sheets.passages import Piece, Stack


def rows_of(stacks: Sequence[Stack], width: int) -> Iterator[list[Stack]]:
    """Yield rows of stacks, each at most `width` characters wide by the longest line of each stack.

    >>> from latingloss.sheets.passages import Column, Piece
    >>> stacks = [Stack((Column("latin", (Piece("lux"),)),), joined=False)] * 3
    >>> [len(row) for row in rows_of(stacks, 12)]
    [2, 1]
    """
    row: list[Stack] = []
    used = 0
    for stack in stacks:
        needed = width_of(stack)
        if row and used + needed > width:
            yield row
            row, used = [], 0
        row.append(stack)
        used += needed
    if row:
        yield row


def width_of(stack: Stack) -> int:
    """Return how many characters wide a stack is, with its numbers and the space after it."""
    return 3 + max((sum(map(_width, line.pieces)) for line in stack.lines), default=0)


def _width(piece: Piece) -> int:
    return len(piece.text) + len(", ".join(map(str, piece.numbers)))
