"""The examples of the README and for contributors run as they stand."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

TOP = Path(__file__).parents[1]
BLOCKS = {
    f"{page} {number}": block
    for page in ("README", "DEVELOPERS")
    for number, block in enumerate(
        re.findall(r"```python\n(.*?)```", (TOP / f"{page}.md").read_text(encoding="utf-8"), re.DOTALL), 1
    )
}


@pytest.mark.parametrize("name", BLOCKS)
def test_example(name: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    if "corpus" in BLOCKS[name]:
        pytest.importorskip("polars")
        pytest.importorskip("pyarrow")
    exec(compile(BLOCKS[name], name, "exec"), {"__name__": "example"})
