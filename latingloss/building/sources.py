"""Readers of the sources that shipped numbers are learned from: the parallel Vulgate and the learn treebanks."""

from __future__ import annotations

import gzip
import re
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

WORD = re.compile(r"[^\W\d_]+")
LEARN = ("circse-train", "circse-dev", "llct-dev")


class GoldWord(NamedTuple):
    """One word of a treebank: its printed token, and which of the token's words it is."""

    surface: str
    part: int
    form: str
    lemma: str
    upos: str
    features: dict[str, str]


def verses(shared: Path) -> Iterator[tuple[str, str]]:
    """Yield the Latin and the English of every verse, in the file's order."""
    with gzip.open(shared / "corpora" / "vulgate-cpdv.tsv.gz", "rt", encoding="utf-8") as lines:
        for line in lines:
            _, _, _, latin, english = line.rstrip("\n").split("\t")
            yield latin, english


def gold_sentences(path: Path) -> Iterator[list[GoldWord]]:
    """Yield the sentences of a CoNLL-U file as words, punctuation included."""
    sentence: list[GoldWord] = []
    span, surface = (0, -1), ""
    with gzip.open(path, "rt", encoding="utf-8") as lines:
        for line in lines:
            cells = line.rstrip("\n").split("\t")
            if len(cells) < 10:
                if line == "\n" and sentence:
                    yield sentence
                    sentence, span = [], (0, -1)
                continue
            if "-" in cells[0]:
                first, last = map(int, cells[0].split("-"))
                span, surface = (first, last), cells[1]
            elif "." not in cells[0]:
                inside = span[0] <= int(cells[0]) <= span[1]
                features = dict(pair.split("=", 1) for pair in cells[5].split("|")) if cells[5] != "_" else {}
                part = int(cells[0]) - span[0] if inside else 0
                printed = surface if inside else cells[1]
                sentence.append(GoldWord(printed, part, cells[1], cells[2], cells[3], features))
    if sentence:
        yield sentence


def learn_sentences(shared: Path) -> Iterator[list[GoldWord]]:
    """Yield the sentences of the treebanks that may be learned from (CC BY-SA)."""
    for name in LEARN:
        yield from gold_sentences(shared / "treebanks" / "learn" / f"{name}.conllu.gz")
