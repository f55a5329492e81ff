"""The arithmetic of the scaling benchmark."""

from __future__ import annotations

from pathlib import Path

import pytest

from benchmarks.figures import Figure
from benchmarks.scaling import exponent, plot


def test_the_exponent_of_a_power_law() -> None:
    assert exponent([(n, 3 * n**1.25) for n in (10, 100, 2000)]) == pytest.approx(1.25)


def test_the_plot_is_svg(tmp_path: Path) -> None:
    pytest.importorskip("matplotlib", reason="needs matplotlib")
    runs = [Figure(f"scaling: {n:,} words, one process", n / 1000, "s") for n in (300_000, 600_000)]
    plot(runs, tmp_path / "scaling.svg")
    assert "<svg" in (tmp_path / "scaling.svg").read_text(encoding="utf-8")
