"""Cold start: what a user waits for the first time, stage by stage, each run in a new process."""

from __future__ import annotations

from collections.abc import Iterator

from benchmarks.figures import Figure
from benchmarks.fresh import median_of
from benchmarks.sources import Sources

_RUNS, _QUICK_RUNS = 5, 1
_LINES = 11  # of the bundled demo: 59 words in 9 passages

_IMPORT = """
before = memory_mb(); t = perf_counter()
import latingloss
print(json.dumps({"seconds": perf_counter() - t, "memory": memory_mb(), "added": memory_mb() - before}))
"""
_TABLES = """
import latingloss
from latingloss.morphology import analyze
before = memory_mb(); t, used = perf_counter(), process_time()
latingloss.analyze("rosa")
print(json.dumps({"seconds": perf_counter() - t, "cpu": process_time() - used, "added": memory_mb() - before}))
"""
_ANNOTATE = f"""
from importlib.resources import files
demo = files("latingloss") / "data" / "demo"
def part(name):
    return "\\n".join((demo / name).read_text(encoding="utf-8").split("\\n")[:{_LINES}])
texts = [part(name) for name in sys.argv[1:]]
t = perf_counter()
import latingloss
document = latingloss.annotate(*texts)
cold, cpu = perf_counter() - t, process_time()
warm = []
for _ in range(20):
    t = perf_counter()
    latingloss.annotate(*texts)
    warm.append(perf_counter() - t)
words = sum(bool(token.words) for passage in document.passages for token in passage.tokens)
print(json.dumps({{"words": words, "cold": cold, "warm": sorted(warm)[10], "memory": memory_mb(), "cpu": cpu}}))
"""


def cold(sources: Sources) -> Iterator[Figure]:
    """Yield import, loading of the tables, and the first and a later `annotate`; medians of five processes."""
    runs = _QUICK_RUNS if sources.quick else _RUNS
    found = median_of(runs, _IMPORT)
    yield Figure("cold start: import, time", _ms(found["seconds"]), "ms", "<= 150")
    note = f"peak of the process; Python itself has {found['memory'] - found['added']:.0f} of them"
    yield Figure("cold start: import, memory", round(found["memory"], 1), "MB", "<= 40", note)
    found = median_of(runs, _TABLES)
    note = f"the first `analyze` after its import: lexicon, endings, statistics; CPU time {_ms(found['cpu'])} ms"
    yield Figure("cold start: tables, time", _ms(found["seconds"]), "ms", "<= 250", note)
    yield Figure("cold start: tables, memory", round(found["added"], 1), "MB", "<= 60")
    for name, texts in (("Latin alone", ["evening.la.txt"]), ("with English", ["evening.la.txt", "evening.en.txt"])):
        found = median_of(runs, _ANNOTATE, *texts)
        note = f"import and first `annotate` of {found['words']:.0f} words; CPU time {_ms(found['cpu'])} ms"
        yield Figure(f"cold start: {name}, first text", _ms(found["cold"]), "ms", "<= 700", note)
        yield Figure(f"cold start: {name}, same text again", _ms(found["warm"]), "ms", "<= 20", "median of 20")
        yield Figure(f"cold start: {name}, memory", round(found["memory"], 1), "MB")


def _ms(seconds: float) -> float:
    return round(1000 * seconds, 1)
