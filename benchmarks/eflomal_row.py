"""eflomal (Östling and Tiedemann 2016) at the same pairs: trained in this run on every verse and the pairs themselves.

It sees lower-case forms, and both directions are kept where either has a link beside one that both have; no lemma, no
grammar, no gloss. Install it with `pip install eflomal`; it is compiled on the way.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path
from tempfile import TemporaryDirectory
from types import SimpleNamespace
from typing import Any
from unittest.mock import patch

import latingloss
from benchmarks.accuracy import said
from benchmarks.figures import Figure
from benchmarks.sources import Sources, tool
from benchmarks.timing import timed
from latingloss.building.sources import verses
from latingloss.text.orthography import plain
from latingloss.text.tokens import tokenize, tokenize_english

_NAME = "others: eflomal, alignment error rate"
Links = set[tuple[int, int]]


def eflomal_row(sources: Sources) -> Iterator[Figure]:
    """Yield eflomal's error rate on the pairs linked by hand, and the time it takes to learn the verses."""
    if not find_spec("eflomal") or sources.quick:
        note = "left out of a quick run" if sources.quick else "not installed: pip install eflomal"
        yield Figure(_NAME, None, "%", note=note)
        return
    gold = sources.shared / "gold" / "alignment-dev.jsonl"
    pairs = [json.loads(line) for line in gold.read_text(encoding="utf-8").splitlines()]
    found, spent = timed(lambda: _trained(sources, pairs))
    given = {_key(p["latin"], p["english"]): links for p, links in zip(pairs, found, strict=True)}

    def align(latin: list[str], english: list[str]) -> list[SimpleNamespace]:
        return [SimpleNamespace(latin=i, english=j) for i, j in given[_key(latin, english)]]

    with patch.object(latingloss, "align", align):  # the name the scoring tool calls
        rate = said(tool(sources, "alignment"), gold)["all"]["AER"]
    yield Figure(_NAME, rate, "%", note=spent.note("learning all verses and the pairs, both directions"))


def _key(latin: list[str], english: list[str]) -> str:
    return json.dumps([latin, english])


def _trained(sources: Sources, pairs: list[dict[str, Any]]) -> list[Links]:
    from eflomal import Aligner

    texts = [(p["latin"], p["english"]) for p in pairs]
    texts += [([t.text for t in tokenize(x)], [t.text for t in tokenize_english(y)]) for x, y in verses(sources.shared)]
    with TemporaryDirectory() as folder:
        names = [str(Path(folder) / name) for name in ("forward", "reverse")]
        sides = [[" ".join(map(_seen, side)) + "\n" for side in column] for column in zip(*texts, strict=True)]
        Aligner().align(sides[0], sides[1], links_filename_fwd=names[0], links_filename_rev=names[1])
        forward, reverse = (list(map(_links, Path(name).read_text(encoding="utf-8").splitlines())) for name in names)
    return [_grown(a, b) for a, b, _ in zip(forward, reverse, pairs, strict=False)]


def _seen(word: str) -> str:
    return plain(word).replace(" ", "") or word


def _links(line: str) -> Links:
    return {(int(i), int(j)) for i, _, j in (pair.partition("-") for pair in line.split())}


def _grown(forward: Links, reverse: Links) -> Links:
    """Return the links of both directions, and step by step those of either beside one already there."""
    found, either = forward & reverse, forward | reverse
    while True:
        beside = {(i, j) for i, j in either - found if any(abs(i - a) <= 1 and abs(j - b) <= 1 for a, b in found)}
        if not beside:
            return found
        found |= beside
