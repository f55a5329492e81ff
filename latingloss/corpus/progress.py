"""Progress: how far a corpus is scored, how fast, and how long the rest will take."""

from __future__ import annotations

import sys
from typing import NamedTuple


class Progress(NamedTuple):
    """How far scoring is, in this call; parts finished by an earlier one are not counted as words."""

    words: int
    seconds: float
    share: float | None  # of the whole corpus, 0..1; None if its size is not known
    found: float = 0.0  # share that was finished before

    @property
    def rate(self) -> float:
        """Words a second."""
        return self.words / self.seconds if self.seconds else 0.0

    @property
    def seconds_left(self) -> float | None:
        """Seconds that the rest will take at this rate; None if it cannot be told."""
        if self.share is None or self.share <= self.found:
            return None
        return self.seconds * (1 - self.share) / (self.share - self.found)

    def __str__(self) -> str:
        """Return it in words.

        >>> str(Progress(600_000, 6.0, 0.25))
        '25%, 600,000 words, 100,000 words/s, 0:18 left'
        """
        share = "" if self.share is None else f"{self.share:.0%}, "
        left = self.seconds_left
        time = "" if left is None else f", {left // 60:.0f}:{left % 60:02.0f} left"
        return f"{share}{self.words:,} words, {self.rate:,.0f} words/s{time}"


def show(progress: Progress) -> None:
    """Write progress to standard error, over what it wrote before; give it to `write_parts`.

    >>> show(Progress(1_000, 1.0, None))
    """
    end = "\n" if progress.share == 1 else ""
    sys.stderr.write(f"\r{progress!s:<72}{end}")
    sys.stderr.flush()
