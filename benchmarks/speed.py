"""Speed on one core: words, forms and pairs in a second of the processor's time, all its threads together.

Rates go by the processor's time, so that they hold on a machine with other work too; notes give wall time.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from importlib.util import find_spec
from tempfile import TemporaryDirectory

import latingloss
from benchmarks.coverage import vulgate_forms
from benchmarks.figures import Figure
from benchmarks.fresh import fresh
from benchmarks.sources import Sources, sentences, verses
from benchmarks.timing import Spent, timed
from latingloss.text.tokens import tokenize, tokenize_english

_VERSES = 500  # for what is too slow for all of them

_ANALYZE = """
import latingloss
forms = sys.stdin.read().split()
latingloss.analyze("rosa")
wall, cpu = perf_counter(), process_time()
for form in forms:
    latingloss.analyze(form)
print(json.dumps({"wall": perf_counter() - wall, "cpu": process_time() - cpu, "memory": memory_mb()}))
"""
_TOKENS = """
import latingloss
sentences = json.load(sys.stdin)
latingloss.annotate("Rosa.")
found = {}
for name in ("first", "again"):
    wall, cpu = perf_counter(), process_time()
    latingloss.annotate_tokens(sentences)
    found |= {f"{name} wall": perf_counter() - wall, f"{name} cpu": process_time() - cpu}
print(json.dumps(found))
"""
_TEXTS = """
import latingloss
texts = json.load(sys.stdin)
found = {}
for name in ("first", "again"):
    wall, cpu = perf_counter(), process_time()
    latingloss.annotate(*texts)
    found |= {f"{name} wall": perf_counter() - wall, f"{name} cpu": process_time() - cpu}
print(json.dumps(found))
"""
_CORPUS = """
import gzip
from latingloss.corpus import write_parquet
source, most, folder = sys.argv[1], int(sys.argv[2]), sys.argv[3]
works = {}
with gzip.open(source, "rt", encoding="utf8") as lines:
    for line, _ in zip(lines, range(most)):
        book, _, _, latin, _ = line.split("\\t")
        works.setdefault(book, []).append(latin)
texts = [(book, "\\n".join(verses)) for book, verses in works.items()]
found = {}
for name in ("first", "again", "alone"):
    wall, cpu = perf_counter(), process_time()
    found["words"] = write_parquet(texts, f"{folder}/words.parquet", context=name != "alone")
    found |= {f"{name} wall": perf_counter() - wall, f"{name} cpu": process_time() - cpu}
print(json.dumps(found | {"memory": memory_mb()}))
"""


def speed(sources: Sources) -> Iterator[Figure]:
    """Yield the speed of each way through the package, the columns of `latingloss.corpus` last."""
    yield from _tokens(sources)
    yield from _documents(sources)
    yield from _analysis(sources)
    yield _alignment(sources)
    yield from _corpus(sources)


def _rate(name: str, count: float, unit: str, spent: Spent, *, aim: str = "", note: str = "") -> Figure:
    return Figure(f"speed: {name}", round(count / spent.cpu), unit, aim, note)


def _passes(found: dict[str, float], *names: str) -> list[Spent]:
    """Return what each named pass over a text took."""
    return [Spent(found[f"{name} wall"], found[f"{name} cpu"]) for name in names]


def _tokens(sources: Sources) -> Iterator[Figure]:
    tokens = [[text for text, _ in sentence] for sentence in sentences(sources, "proiel-dev")]
    first, again = _passes(fresh(_TOKENS, given=json.dumps(tokens)), "first", "again")
    count = sum(map(len, tokens))
    note = first.note("Document objects, proiel-dev in a new process, tables loaded, every form new")
    yield _rate("annotate_tokens", count, "tokens/s", first, note=note)
    yield _rate("annotate_tokens, again", count, "tokens/s", again, note=again.note("the same a second time"))


def _documents(sources: Sources) -> Iterator[Figure]:
    chosen = verses(sources)[:_VERSES]
    latin, english = "\n".join(v[1] for v in chosen), "\n".join(v[2] for v in chosen)
    words = sum(token.kind == "word" for token in tokenize(latin))
    for name, texts in (("Latin alone", (latin,)), ("with English", (latin, english))):
        _, spent = _passes(fresh(_TEXTS, given=json.dumps(texts)), "first", "again")
        note = spent.note(f"Document objects, {len(chosen)} verses of the Vulgate as one text, forms seen before")
        yield _rate(f"annotate, {name}", words, "words/s", spent, note=note)


def _analysis(sources: Sources) -> Iterator[Figure]:
    forms = list(vulgate_forms(sources))
    found = fresh(_ANALYZE, given="\n".join(forms))
    spent = Spent(found["wall"], found["cpu"])
    note = spent.note(f"all {len(forms):,} distinct forms of the Vulgate once, {found['memory']:.0f} MB at most")
    yield Figure("speed: analyze, time for all forms", round(spent.wall, 2), "s", "<= 2", note)
    yield _rate("analyze", len(forms), "forms/s", spent)


def _alignment(sources: Sources) -> Figure:
    pairs = [
        ([token.text for token in tokenize(latin)], [token.text for token in tokenize_english(english)])
        for _, latin, english in verses(sources)[-_VERSES:]
    ]
    _, spent = timed(lambda: [latingloss.align(*pair) for pair in pairs])
    note = spent.note(f"the last {len(pairs)} verses of the Vulgate, analysis of their words included")
    return _rate("align", len(pairs), "pairs/s", spent, aim=">= 300", note=note)


def _corpus(sources: Sources) -> Iterator[Figure]:
    if not (find_spec("polars") and find_spec("pyarrow")):
        reason = "the extra `corpus` is not installed"
        yield Figure("speed: corpus to Parquet", None, "words/s", "", reason)
        return
    with TemporaryDirectory() as folder:
        found = fresh(_CORPUS, str(sources.corpus), str(len(verses(sources))), folder)
    first, again, alone = _passes(found, "first", "again", "alone")
    note = f"{found['words']:,} words of the Vulgate, readings chosen in context, in a new process"
    yield Figure("speed: corpus to Parquet, time", round(first.wall, 2), "s", "" if sources.quick else "<= 8", note)
    note = first.note("loading and the analysis of every form included")
    yield _rate("corpus to Parquet", found["words"], "words/s", first, note=note)
    note = again.note("the same texts a second time")
    yield _rate("corpus to Parquet, again", found["words"], "words/s", again, aim=">= 100000", note=note)
    note = alone.note("the same once more, each form in its likeliest reading")
    yield _rate("corpus to Parquet, without context", found["words"], "words/s", alone, aim=">= 250000", note=note)
    yield Figure("speed: corpus to Parquet, memory", round(found["memory"]), "MB", "<= 600", "peak of the process")
