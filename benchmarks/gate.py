"""The gate: no accuracy figure may fall behind the baseline by more than 0.3 points; times are left out."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from pathlib import Path

from benchmarks.figures import Figure

BASELINE = Path(__file__).with_name("baseline.json")
GATED = ("treebanks", "alignment", "words", "coverage")
TOLERANCE_POINTS = 0.3


def read_baseline() -> dict[str, float]:
    """Return the baseline: names of figures and their values."""
    values: dict[str, float] = json.loads(BASELINE.read_text(encoding="utf-8"))
    return values


def write_baseline(figures: Iterable[Figure]) -> None:
    """Make these figures the baseline."""
    values = {figure.name: figure.value for figure in figures}
    BASELINE.write_text(json.dumps(values, ensure_ascii=False, indent=1) + "\n", encoding="utf-8")


def regressions(figures: Iterable[Figure], baseline: Mapping[str, float]) -> list[str]:
    """Return a line for every figure of the baseline that is worse now, or that is not measured any more."""
    now = {figure.name: figure for figure in figures}
    lines = []
    for name, before in baseline.items():
        figure = now.get(name)
        if figure is None or figure.value is None:
            lines.append(f"{name}: {before} before, not measured now")
            continue
        loss = figure.value - before if figure.lower_is_better else before - figure.value
        if loss > TOLERANCE_POINTS + 1e-9:
            lines.append(f"{name}: {figure.value} {figure.unit}, {before} before")
    return lines
