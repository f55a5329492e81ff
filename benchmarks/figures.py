"""Figures: what is measured, with its aim, as a Markdown table and as JSON."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from itertools import groupby
from typing import NamedTuple


class Figure(NamedTuple):
    """One measured number; `family: what` is its name, `>= 90` or `<= 2` its aim, None its value if not measured."""

    name: str
    value: float | None
    unit: str
    aim: str = ""
    note: str = ""

    @property
    def lower_is_better(self) -> bool:
        """Tell whether the aim is an upper bound."""
        return self.aim.startswith("<=")

    @property
    def reached(self) -> bool | None:
        """Tell whether the aim is met; None without an aim or a value."""
        if not self.aim or self.value is None:
            return None
        bound = float(self.aim.removeprefix("<=").removeprefix(">="))
        return self.value <= bound if self.lower_is_better else self.value >= bound


_MARKS = {True: "yes", False: "no", None: ""}


def markdown(figures: Sequence[Figure], setting: Mapping[str, str]) -> str:
    """Return the figures as Markdown: what they were measured on, then a table for each family."""
    parts = ["# Figures\n", *(f"- {key}: {value}" for key, value in setting.items())]
    for family, members in groupby(figures, key=lambda figure: figure.name.partition(": ")[0]):
        parts += [f"\n## {family}\n", "| figure | value | unit | aim | reached | note |", "|---|---:|---|---|---|---|"]
        for figure in members:
            shown = "not measured" if figure.value is None else f"{figure.value:,.10g}"
            what = figure.name.partition(": ")[2]
            cells = (what, shown, figure.unit, figure.aim, _MARKS[figure.reached], figure.note.replace("|", "\\|"))
            parts.append(f"| {' | '.join(cells)} |")
    return "\n".join(parts) + "\n"


def as_json(figures: Sequence[Figure], setting: Mapping[str, str]) -> str:
    """Return the same as JSON."""
    rows = [figure._asdict() | {"reached": figure.reached} for figure in figures]
    return json.dumps({"setting": dict(setting), "figures": rows}, ensure_ascii=False, indent=1) + "\n"
