"""What a model learns from: sentences, with what each reading should be believed."""

from __future__ import annotations

from typing import NamedTuple

from latingloss.context.columns import Columns, Floats


class Lesson(NamedTuple):
    """A batch of sentences with what each reading should be believed, and how much each word counts."""

    columns: Columns
    target: Floats  # [rows]; sums to 1 over a word
    weight: Floats  # [rows]; 0 for words without a target
