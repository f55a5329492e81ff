"""The folder of checks and corpora, and the scoring tools in it: imported from there, so that none is copied."""

from __future__ import annotations

import gzip
from functools import cache
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path
from types import ModuleType
from typing import Any, NamedTuple

TREEBANKS = ("proiel-dev", "perseus-train", "udante-dev", "ittb-dev")
_QUICK_SENTENCES, _QUICK_VERSES = 200, 2000

Sentence = list[tuple[str, list[list[str]]]]  # tokens as printed, each with its words' CoNLL-U columns


class Sources(NamedTuple):
    """Where the checks lie, and whether a part of them is enough for now."""

    shared: Path
    quick: bool = False

    def check(self, name: str) -> str:
        """Return the path of a file of single-word checks."""
        return str(self.shared / "checks" / name)

    def treebank(self, name: str) -> Path:
        """Return the path of a check treebank."""
        return self.shared / "treebanks" / "check" / f"{name}.conllu.gz"

    @property
    def corpus(self) -> Path:
        """The path of the Vulgate with its English."""
        return self.shared / "corpora" / "vulgate-cpdv.tsv.gz"


@cache
def tool(sources: Sources, name: str) -> ModuleType:
    """Import a scoring tool, `treebank`, `alignment` or `words`, from the folder given."""
    path = sources.shared / "tools" / f"score_{name}.py"
    spec = spec_from_file_location(path.stem, path)
    if spec is None or spec.loader is None or not path.is_file():
        raise SystemExit(f"{path} is not there; give the folder of checks and corpora with --shared")
    module = module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


@cache
def sentences(sources: Sources, name: str) -> list[Sentence]:
    """Return the sentences of a check treebank, as its scoring tool reads them."""
    found = [sentence for _, sentence in tool(sources, "treebank").sentences(sources.treebank(name))]
    return found[:_QUICK_SENTENCES] if sources.quick else found


@cache
def scored(sources: Sources, name: str) -> dict[str, Any]:
    """Return what the scoring tool says of a check treebank, in Latin alone."""
    found: dict[str, Any] = tool(sources, "treebank").score(sentences(sources, name))
    return found


@cache
def verses(sources: Sources) -> list[tuple[str, str, str]]:
    """Return the verses of the Vulgate: book, Latin, English."""
    with gzip.open(sources.corpus, "rt", encoding="utf8") as lines:
        rows = [line.rstrip("\n").split("\t") for line in lines]
    found = [(book, latin, english) for book, _, _, latin, english in rows]
    return found[:_QUICK_VERSES] if sources.quick else found
