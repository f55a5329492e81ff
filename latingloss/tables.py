"""Reads the text tables shipped in `latingloss/data`, the one door to them."""

from __future__ import annotations

import gc
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import cache, wraps
from importlib.resources import files
from typing import TypeVar

from latingloss.errors import DataError

_Built = TypeVar("_Built")


@contextmanager
def collector_paused() -> Iterator[None]:
    """Keep the garbage collector from looking for cycles while many objects are made that have none.

    It would look through all of them again and again as they grow in number, which takes as long as making them.
    """
    running = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if running:
            gc.enable()


def built_once(build: Callable[[], _Built]) -> Callable[[], _Built]:
    """Cache what a function builds from tables, the garbage collector paused while it does.

    >>> @built_once
    ... def bases() -> set[str]:
    ...     return {row[0] for row in read_table("paradigms/nominals.tsv")}
    >>> "1" in bases(), bases() is bases()
    (True, True)
    """

    @cache
    @wraps(build)
    def once() -> _Built:
        with collector_paused():
            return build()

    return once


def read_table(name: str) -> list[list[str]]:
    """Return the rows of a shipped tab-separated table, header left out, short rows padded.

    `name` is relative to `latingloss/data`, with forward slashes. Raises `DataError` naming file and line
    when a row has more cells than the header.

    >>> read_table("paradigms/nominals.tsv")[0][:4]
    ['1', '', 'a', 'ae/āī/ās']
    """
    text = (files("latingloss") / "data" / name).read_text(encoding="utf-8")
    header, *lines = text.split("\n")
    width = header.count("\t") + 1
    rows = [line.split("\t") for line in lines if line]
    if any(len(cells) != width for cells in rows):
        for number, line in enumerate(lines, 2):
            if (count := line.count("\t") + 1) > width:
                raise DataError(f"data/{name}, line {number}: {count} cells where the header has {width}")
        for cells in rows:
            cells.extend([""] * (width - len(cells)))
    return rows
