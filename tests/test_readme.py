"""The README's examples run as they stand."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

README = Path(__file__).parents[1] / "README.md"
BLOCKS = re.findall(r"```python\n(.*?)```", README.read_text(encoding="utf-8"), re.DOTALL)


@pytest.mark.parametrize("number", range(len(BLOCKS)))
def test_example(number: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    if "corpus" in BLOCKS[number]:
        pytest.importorskip("polars")
        pytest.importorskip("pyarrow")
    exec(compile(BLOCKS[number], f"README example {number + 1}", "exec"), {"__name__": "example"})
