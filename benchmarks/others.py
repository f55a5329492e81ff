"""Other programs at the same work on the same machine in the same run, and how latingloss compares with them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from importlib import import_module
from importlib.util import find_spec
from unittest.mock import patch

import latingloss
from benchmarks.eflomal_row import eflomal_row
from benchmarks.figures import Figure
from benchmarks.gold import wanted
from benchmarks.sources import Sources, scored, sentences, tool
from benchmarks.timing import timed
from latingloss.engines import Engine
from latingloss.engines.builtin import BuiltInEngine
from latingloss.engines.combined import CombinedEngine
from latingloss.pipeline import Annotator

_TREEBANK = "proiel-dev"
# what is compared: a first pass over a text counts for the aims, a second is told too
_COLUMNS, _DOCUMENTS = "speed: corpus to Parquet", "speed: annotate_tokens"
_WAYS = {
    _COLUMNS: "over columns", f"{_COLUMNS}, again": "over columns, again", _DOCUMENTS: "through Document objects",
    f"{_DOCUMENTS}, again": "through Document objects, again",
}  # fmt: skip


def others(sources: Sources, measured: Sequence[Figure]) -> Iterator[Figure]:
    """Yield the figures of simplemma and Stanza on the gold words of proiel-dev, and ratios to those `measured`."""
    yield from _simplemma(sources, measured)
    if find_spec("stanza"):
        yield from _stanza(sources, measured)
    else:
        yield Figure("others: Stanza", None, "", note='Stanza is not installed: pip install "latingloss[stanza]"')
    yield from eflomal_row(sources)


def _ratios(name: str, rate: float, measured: Sequence[Figure], aims: Mapping[str, str]) -> Iterator[Figure]:
    for figure in measured:
        if figure.name in _WAYS and figure.value is not None:
            note = f"{figure.value:,.0f} against {rate:,.0f} words a second of the processor's time"
            ratio = float(f"{figure.value / rate:.3g}")
            title = f"others: latingloss {_WAYS[figure.name]} / {name}"
            yield Figure(title, ratio, "x", aims.get(figure.name, ""), note)


def _gold_words(sources: Sources) -> list[list[list[str]]]:
    return [[columns for _, words in sentence for columns in words] for sentence in sentences(sources, _TREEBANK)]


def _counted(columns: list[str]) -> bool:
    return columns[3] not in ("PUNCT", "SYM", "X")


def _simplemma(sources: Sources, measured: Sequence[Figure]) -> Iterator[Figure]:
    import simplemma

    key = tool(sources, "treebank").key
    gold = [columns for sentence in _gold_words(sources) for columns in sentence if _counted(columns)]
    simplemma.lemmatize("rosa", lang="la")  # loads its table
    lemmas, spent = timed(lambda: [simplemma.lemmatize(columns[1], lang="la") for columns in gold])
    right = sum(key(lemma) == key(columns[2]) for lemma, columns in zip(lemmas, gold, strict=True))
    yield Figure(f"others: simplemma, {_TREEBANK}, lemma", round(100 * right / len(gold), 2), "%")
    rate = len(gold) / spent.cpu
    yield Figure("others: simplemma, speed", round(rate), "words/s", note=spent.note("lemmas alone, out of context"))
    yield from _ratios("simplemma", rate, measured, {})


def _stanza(sources: Sources, measured: Sequence[Figure]) -> Iterator[Figure]:
    from latingloss.engines.stanza import StanzaEngine

    import_module("torch").set_num_threads(1)
    key = tool(sources, "treebank").key
    engine = StanzaEngine(model_dir=sources.shared / "models" / "stanza-la")
    gold = _gold_words(sources)
    words = [[columns[1] for columns in sentence] for sentence in gold]
    tagged, spent = timed(lambda: list(engine.tag(words)))
    pairs = [pair for rows, tags in zip(gold, tagged, strict=True) for pair in zip(rows, tags, strict=True)]
    lemma = [key(tag.lemma) == key(columns[2]) for columns, tag in pairs if _counted(columns)]
    cnp = [
        all(tag.features.get(name) == value for name, value in want.items())
        for columns, tag in pairs
        if (want := wanted(columns))
    ]
    for measure, hits in (("lemma", lemma), ("CNP", cnp)):
        yield Figure(f"others: Stanza alone, {_TREEBANK}, {measure}", round(100 * sum(hits) / len(hits), 2), "%")
    rate = len(pairs) / spent.cpu
    yield Figure(
        "others: Stanza alone, speed", round(rate), "words/s", note=spent.note("one thread, model loaded, proiel-dev")
    )
    yield from _ratios("Stanza", rate, measured, {_COLUMNS: ">= 30", _DOCUMENTS: ">= 8"})
    alone = {"Stanza as engine": _rates(sources, engine), "built-in": scored(sources, _TREEBANK)}
    both = _rates(sources, CombinedEngine(BuiltInEngine(), engine))
    for measure in ("lemma", "CNP"):
        yield Figure(f"others: Stanza as engine, {_TREEBANK}, {measure}", alone["Stanza as engine"][measure], "%")
    for measure in ("lemma", "CNP"):
        best = max(alone, key=lambda name: alone[name][measure])
        note = f"the better of its parts, {best}: {alone[best][measure]}"
        title = f"others: built-in and Stanza combined, {_TREEBANK}, {measure}"
        yield Figure(title, both[measure], "%", f">= {alone[best][measure]}", note)


def _rates(sources: Sources, engine: Engine) -> dict[str, float]:
    with patch.object(latingloss, "annotate_tokens", Annotator(engine).annotate_tokens):  # what the scoring tool calls
        rates: dict[str, float] = tool(sources, "treebank").score(sentences(sources, _TREEBANK))
    return rates
