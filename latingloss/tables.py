"""Reads the text tables shipped in `latingloss/data`, the one door to them."""

from __future__ import annotations

from importlib.resources import files

from latingloss.errors import DataError


def read_table(name: str) -> list[list[str]]:
    """Return the rows of a shipped tab-separated table, header left out, short rows padded.

    `name` is relative to `latingloss/data`, with forward slashes. Raises `DataError` naming file and line
    when a row has more cells than the header.

    >>> read_table("paradigms/nominals.tsv")[0][:4]
    ['1', '', 'a', 'ae/āī/ās']
    """
    text = (files("latingloss") / "data" / name).read_text(encoding="utf-8")
    lines = text.split("\n")
    width = lines[0].count("\t") + 1
    rows = []
    for number, line in enumerate(lines[1:], 2):
        if not line:
            continue
        cells = line.split("\t")
        if len(cells) > width:
            raise DataError(f"data/{name}, line {number}: {len(cells)} cells where the header has {width}")
        cells.extend([""] * (width - len(cells)))
        rows.append(cells)
    return rows
