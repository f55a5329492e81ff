"""Work on corpora of any size, done in a process of its own by `scaling`."""

from __future__ import annotations

import gzip
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from itertools import count
from multiprocessing import get_context
from pathlib import Path
from tempfile import TemporaryDirectory
from time import perf_counter

import latingloss
from latingloss.text.tokens import tokenize, tokenize_english

_VERSES_A_TEXT = 500


def score(source: str, most_words: int, workers: int) -> dict[str, float]:
    """Score so many words to Parquet; return the number of words and seconds."""
    from latingloss.corpus import write_parts

    with TemporaryDirectory() as folder:
        done = write_parts(_texts(source, most_words), folder, workers=workers)
    return {"words": done.words, "seconds": done.seconds}


def _texts(source: str, most_words: int) -> Iterator[tuple[str, str]]:
    """Yield the Vulgate over and over, with fresh spellings mixed in from the second time on."""
    verses = [latin for latin, _ in _verses(source)]
    words = 0
    for copy in count():
        for first in range(0, len(verses), _VERSES_A_TEXT):
            block = verses[first : first + _VERSES_A_TEXT]
            if copy:
                block = [_respelled(verse, first + i, copy) if i % 5 == 0 else verse for i, verse in enumerate(block)]
            words += sum(verse.count(" ") + 1 for verse in block)
            yield f"copy {copy}", "\n".join(block)
            if words >= most_words:
                return


def _respelled(verse: str, number: int, copy: int) -> str:
    """Return a verse with two letters more in its middle word."""
    words = verse.split(" ")
    middle = len(words) // 2
    if (word := words[middle]).isalpha():
        words[middle] = word[:3] + "aeiou"[copy % 5] + "bcdlmnrst"[number % 9] + word[3:]
    return " ".join(words)


def align(source: str, most_pairs: int, workers: int) -> dict[str, float]:
    """Align verses with their renderings; return pairs, links, seconds, and the largest process in MB."""
    pairs = list(_verses(source))[:most_pairs]
    start = perf_counter()
    with ProcessPoolExecutor(workers, get_context("spawn")) as pool:
        found = list(pool.map(_links, pairs, chunksize=200))
    seconds, half = perf_counter() - start, len(found) // 2
    return {
        "pairs": len(pairs), "links": sum(links for links, _ in found), "seconds": seconds,
        "half": max(memory for _, memory in found[:half]), "memory": max(memory for _, memory in found),
    }  # fmt: skip


def _links(pair: tuple[str, str]) -> tuple[int, float]:
    """Return the number of links of a verse, and the peak of this process in MB."""
    latin, english = pair
    tokens = [t.text for t in tokenize(latin)], [t.text for t in tokenize_english(english)]
    status = Path("/proc/self/status").read_text(encoding="ascii").splitlines()
    peak = next(int(line.split()[1]) for line in status if line.startswith("VmHWM"))
    return len(latingloss.align(*tokens)), peak / 1024


def _verses(source: str) -> Iterator[tuple[str, str]]:
    with gzip.open(source, "rt", encoding="utf8") as lines:
        for line in lines:
            _, _, _, latin, english = line.rstrip("\n").split("\t")
            yield latin, english
