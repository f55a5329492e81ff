"""The web server of the notebooks under load: 10,000 short requests on loopback, then more at once than it takes.

`python -m benchmarks.load` (wants the extra `notebook`; Linux). Texts are eight words of the lexicon at random: in the
first part all are new, in the second each is one of fifty.
"""

from __future__ import annotations

import argparse
import json
import random
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Iterator, Sequence
from concurrent.futures import ThreadPoolExecutor
from contextlib import closing, contextmanager
from functools import partial
from http.client import HTTPConnection
from pathlib import Path
from typing import NamedTuple

from latingloss.morphology.lexicon import lexemes
from latingloss.text.orthography import without_lengths

_PORT = 8765
_CLIENTS, _CROWD = 4, 64  # connections
_WORDS = 8


class Answer(NamedTuple):
    """How long a request took, in seconds, and its HTTP status."""

    seconds: float
    status: int


@contextmanager
def _server() -> Iterator[int]:
    """Run the server in a process of its own; yield the number of that."""
    folder = Path(__file__).parents[1] / "notebooks"
    command = [sys.executable, "-m", "uvicorn", "quiz_api:app", "--port", str(_PORT), "--log-level", "error"]
    process = subprocess.Popen(command, cwd=folder)
    try:
        for _ in range(300):
            try:
                _ask(["lux"])
                break
            except ConnectionRefusedError:
                time.sleep(0.1)
        yield process.pid
    finally:
        process.terminate()
        process.wait()


def _ask(texts: Sequence[str]) -> list[Answer]:
    """Ask for texts one after another over one connection."""
    answers = []
    with closing(HTTPConnection("127.0.0.1", _PORT, timeout=30)) as connection:
        for text in texts:
            start = time.perf_counter()
            connection.request("POST", "/annotate", json.dumps({"latin": text}), {"Content-Type": "application/json"})
            response = connection.getresponse()
            response.read()
            answers.append(Answer(time.perf_counter() - start, response.status))
    return answers


def _all(texts: Sequence[str], clients: int) -> list[Answer]:
    with ThreadPoolExecutor(clients) as threads:
        parts = threads.map(_ask, (texts[i::clients] for i in range(clients)))
        return [answer for part in parts for answer in part]


def _memory(process: int) -> int:
    """Return the memory that a process holds, in MiB."""
    status = Path(f"/proc/{process}/status").read_text()
    return int(status.partition("VmRSS:")[2].split()[0]) >> 10


def _row(name: str, answers: Sequence[Answer], process: int) -> str:
    took = sorted(answer.seconds * 1000 for answer in answers)
    served = Counter(answer.status for answer in answers)
    middle, late = took[len(took) // 2], took[len(took) * 99 // 100]
    said = ", ".join(f"{count:,} of {status}" for status, count in sorted(served.items()))
    return f"| {name} | {said} | {middle:.1f} | {late:.1f} | {took[-1]:.1f} | {_memory(process)} |"


def figures(number: int) -> Iterator[str]:
    """Yield the lines of a table: answers, median, 99th of a hundred and longest in ms, memory after it in MiB."""
    chance = random.Random(20261125)
    words = sorted({without_lengths(lexeme.spelled) for lexeme in lexemes()})
    text = partial(chance.choices, words, k=_WORDS)
    new = [" ".join(text()) for _ in range(number // 2)]
    known = chance.choices(new[:50], k=number // 2)
    yield "| texts | answers | p50, ms | p99, ms | longest, ms | memory, MiB |"
    yield "|---|---|---:|---:|---:|---:|"
    with _server() as process:
        yield _row("first, alone", _ask(new[:1]), process)
        for part in range(2):
            half = new[part * len(new) // 2 : (part + 1) * len(new) // 2]
            yield _row(f"new, {'first' if part == 0 else 'second'} half", _all(half, _CLIENTS), process)
        yield _row("known", _all(known, _CLIENTS), process)
        yield _row(f"{_CROWD} at once", _all(known[:2_000], _CROWD), process)


if __name__ == "__main__":
    parser = argparse.ArgumentParser(prog="python -m benchmarks.load", description=__doc__)
    parser.add_argument("--requests", type=int, default=10_000)
    for line in figures(parser.parse_args().requests):
        print(line, flush=True)
