"""Prints constraints for pip: the lowest versions that pyproject.toml allows of what package and notebooks import."""

import re
import tomllib
from pathlib import Path

project = tomllib.loads(Path("pyproject.toml").read_text(encoding="utf-8"))["project"]
extras = project["optional-dependencies"]
for requirement in (
    *project["dependencies"],
    *extras["corpus"],
    *extras["dask"],
    *extras["print"],
    *extras["notebook"],
):
    name, lowest = re.match(r"([\w-]+)>=([\d.]+)", requirement).groups()
    print(f"{name}=={lowest}")
