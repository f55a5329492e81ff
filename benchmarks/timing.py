"""Clocks: wall time, which a user waits, and the time of the processor, which other work on the machine spares."""

from __future__ import annotations

from collections.abc import Callable
from time import perf_counter, process_time
from typing import NamedTuple, TypeVar

Result = TypeVar("Result")


class Spent(NamedTuple):
    """Seconds that something took."""

    wall: float
    cpu: float

    def note(self, done: str) -> str:
        """Say what was done, and both times."""
        return f"{done}; {self.wall:.2f} s, {self.cpu:.2f} s of the processor"


def timed(work: Callable[[], Result]) -> tuple[Result, Spent]:
    """Return what a piece of work returns, and what it took."""
    wall, cpu = perf_counter(), process_time()
    result = work()
    return result, Spent(perf_counter() - wall, process_time() - cpu)
