"""Accuracy on the check treebanks and of alignment: what the scoring tools of the shared folder say."""

from __future__ import annotations

import contextlib
import io
import json
import sys
from collections.abc import Iterator
from pathlib import Path
from types import ModuleType
from typing import Any
from unittest.mock import patch

from benchmarks.figures import Figure
from benchmarks.sources import TREEBANKS, Sources, scored, tool

_MEASURES = ("lemma", "Case", "Number", "Person", "CNP", "oracle", "words")
# what the project's issues ask for
_AIMS = {
    ("proiel-dev", "lemma"): 95, ("perseus-train", "lemma"): 91, ("ittb-dev", "lemma"): 94, ("proiel-dev", "CNP"): 90,
    ("perseus-train", "CNP"): 84, ("ittb-dev", "CNP"): 88, ("proiel-dev", "Case"): 92, ("proiel-dev", "oracle"): 98.5,
    ("perseus-train", "oracle"): 97,
}  # fmt: skip


def treebanks(sources: Sources) -> Iterator[Figure]:
    """Yield the rates on every check treebank, Latin alone, and what English adds on the New Testament."""
    for name in TREEBANKS:
        rates = scored(sources, name)
        for measure in _MEASURES:
            aim = _AIMS.get((name, measure))
            yield Figure(f"treebanks: {name}, {measure}", rates[measure], "%", f">= {aim}" if aim else "")
    if not sources.quick:
        found = new_testament(sources)
        for key, wanted in (("latin_only", ""), ("with_english", ">= 95")):
            title = f"treebanks: proiel-dev, New Testament {key.replace('_', ' ')}, CNP"
            yield Figure(title, found[key]["CNP"], "%", wanted)


def new_testament(sources: Sources) -> Any:
    """Return the rates on the New Testament part of PROIEL dev, Latin alone and with the English."""
    return said(tool(sources, "treebank"), sources.treebank("proiel-dev"), "--english", str(sources.corpus))


def alignment(sources: Sources) -> Iterator[Figure]:
    """Yield the alignment error rate on the pairs linked by hand, and how fast pairs are aligned."""
    found = said(tool(sources, "alignment"), sources.shared / "gold" / "alignment-dev.jsonl")
    for group, name in (("all", "all"), ("v", "verses"), ("p", "prayers")):
        aim = "<= 9" if group == "all" else "<= 10"
        yield Figure(f"alignment: {name}, error rate", found[group]["AER"], "%", aim)
        yield Figure(f"alignment: {name}, precision", found[group]["precision"], "%", ">= 88")
        yield Figure(f"alignment: {name}, recall", found[group]["recall"], "%", ">= 88")


def said(module: ModuleType, path: Path, *options: str) -> Any:
    """Run a tool's own `main`, for what no function of it returns, and read what it prints."""
    out = io.StringIO()
    with patch.object(sys, "argv", [module.__name__, str(path), *options]), contextlib.redirect_stdout(out):
        module.main()
    return json.loads(out.getvalue())
