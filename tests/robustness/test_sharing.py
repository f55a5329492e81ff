"""Threads, processes and runs: what is annotated does not depend on who annotates it, or what else has been."""

from __future__ import annotations

import copy
import os
import pickle
import subprocess
import sys
from concurrent.futures import ProcessPoolExecutor, ThreadPoolExecutor
from hashlib import sha256
from multiprocessing import get_context
from threading import Barrier

import pytest

import latingloss
from latingloss.formats import schema

LATIN = "Nox venit,\net stellae noctis lucent.\n\nVigilate, xyzzyani, populusque gaudeat."
ENGLISH = "Night comes,\nand the stars of the night shine.\n\nWatch, and let the people rejoice."
_THREADS = 16
_CODE = f"""
import latingloss
from hashlib import sha256
document = latingloss.annotate({LATIN!r}, {ENGLISH!r})
said = document.model_dump_json() + repr(latingloss.analyze("noctis")) + repr(latingloss.relatives("nox"))
print(sha256(said.encode()).hexdigest())
"""


def digest(text: str = LATIN) -> str:
    return sha256(schema.write(latingloss.annotate(text, ENGLISH)).encode()).hexdigest()


def test_sixteen_threads_that_ask_at_once_get_what_one_gets() -> None:
    """Annotation, analysis, inflection, relatives, sounds: through the public names, which share all tables."""
    asks = (
        lambda: latingloss.annotate(LATIN, ENGLISH),
        lambda: latingloss.analyze("noctibus"),
        lambda: latingloss.inflect("vigilō"),
        lambda: latingloss.relatives("stēlla"),
        lambda: latingloss.pronounce("vigilate"),
    )
    alone = [ask() for ask in asks]
    barrier = Barrier(_THREADS)

    def ask_all(number: int) -> list[object]:
        barrier.wait()
        order = [(number + i) % len(asks) for i in range(len(asks))]
        found = {i: asks[i]() for i in order}
        return [found[i] for i in sorted(found)]

    with ThreadPoolExecutor(_THREADS) as pool:
        assert all(found == alone for found in pool.map(ask_all, range(_THREADS)))


def test_a_document_can_be_pickled_and_copied() -> None:
    document = latingloss.annotate(LATIN, ENGLISH)
    for protocol in range(2, pickle.HIGHEST_PROTOCOL + 1):
        assert pickle.loads(pickle.dumps(document, protocol)) == document
    assert copy.deepcopy(document) == document
    assert pickle.loads(pickle.dumps(latingloss.inflect("nox"))) == latingloss.inflect("nox")


@pytest.mark.filterwarnings("default:.*multi-threaded, use of fork:DeprecationWarning")  # Python 3.12 and later
@pytest.mark.parametrize("start", ["fork", "spawn"])
def test_workers_give_what_their_parent_gives(start: str) -> None:
    texts = [LATIN, LATIN.upper(), "Lux"]
    here = [digest(text) for text in texts]  # its tables are loaded when the children are made
    with ProcessPoolExecutor(2, mp_context=get_context(start)) as pool:
        assert list(pool.map(digest, texts)) == here


def test_runs_do_not_depend_on_the_seed_of_hashes() -> None:
    seen = {
        subprocess.run(
            [sys.executable, "-c", _CODE],
            env=os.environ | {"PYTHONHASHSEED": value},
            capture_output=True, text=True, check=True,
        ).stdout
        for value in ("1", "4711")
    }  # fmt: skip
    assert len(seen) == 1 and len(seen.pop().strip()) == 64


def test_what_was_annotated_before_changes_nothing() -> None:
    fresh = latingloss.Annotator().annotate(LATIN, ENGLISH)
    used = latingloss.Annotator()
    for text in ("Xyzzyani lucent", "POPULUSQUE", "Nox\u0301 " * 50):
        used.annotate(text)
    assert used.annotate(LATIN, ENGLISH) == fresh


def test_no_setting_of_the_process_is_changed() -> None:
    """Locale, warnings, random numbers, signals and the recursion limit are the program's that uses the library."""
    code = (
        "import locale, random, signal, sys, warnings, gc, csv\n"
        "import numpy\n"
        "def state():\n"
        "    return (locale.setlocale(locale.LC_ALL), list(warnings.filters), random.getstate(), gc.isenabled(),\n"
        "            signal.getsignal(signal.SIGINT), sys.getrecursionlimit(), csv.field_size_limit(),\n"
        "            repr(numpy.random.get_state()), numpy.geterr(), sys.stdout, sys.excepthook)\n"
        "import latingloss\n"
        "import simplemma, lemminflect, pydantic\n"
        "before = state()\n"
        f"latingloss.annotate({LATIN!r}, {ENGLISH!r})\n"
        "latingloss.pronounce('nox'); latingloss.relatives('nox')\n"
        "after = state()\n"
        "print([i for i, (a, b) in enumerate(zip(before, after)) if a != b])\n"
    )
    found = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert found.stdout == "[]\n"
