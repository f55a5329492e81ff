"""The built-in engine: one shared by many threads reads as one alone, and a batch reads as its sentences."""

import random
import sys
from concurrent.futures import ThreadPoolExecutor
from threading import Barrier

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import latingloss
from latingloss.engines import builtin
from latingloss.engines.builtin import BuiltInEngine
from latingloss.morphology import ranking
from latingloss.morphology.lexicon import lexemes

SENTENCES = [
    str.split("Vesper venit et stella prima lucet"),
    str.split("Domus patrisque mei janua clausa est"),
    str.split("Sine gratia homo in urbe magna ambulat"),
    [],
    str.split("xyzzyq Qwrtz λόγος"),
    str.split("viden satin mecum nobiscum"),
    str.split("Puer puellae rosam dat"),
]
MANY = [[x.lemma.partition("#")[0]] for x in lexemes()[1000:13000:300]]  # of every part of the lexicon
THREADS = 16


@pytest.fixture
def restless():
    """Let threads take turns every few microseconds, and forget readings, so that a race shows."""
    before = sys.getswitchinterval()
    sys.setswitchinterval(1e-6)
    ranking._known.cache_clear()
    yield
    sys.setswitchinterval(before)


def at_once(task):
    """Run a task in every thread, all starting together."""
    barrier = Barrier(THREADS)

    def run(number):
        barrier.wait()
        return task(number)

    with ThreadPoolExecutor(THREADS) as pool:
        return list(pool.map(run, range(THREADS)))


@pytest.fixture(scope="module")
def alone():
    """What an engine of its own says of each sentence."""
    return [BuiltInEngine().read([sentence])[0] for sentence in SENTENCES + MANY]


def read_in_own_order(engine, number):
    """Read every sentence, each thread in another order, and return what was found in the common order."""
    sentences = list(enumerate(SENTENCES + MANY))
    random.Random(number).shuffle(sentences)
    found = {i: engine.read([sentence])[0] for i, sentence in sentences}
    return [found[i] for i in sorted(found)]


def test_sixteen_threads_give_what_one_gives(alone, restless):
    shared = BuiltInEngine()
    assert all(found == alone for found in at_once(lambda number: read_in_own_order(shared, number)))


def test_a_table_begun_anew_while_others_read_changes_nothing(alone, restless, monkeypatch):
    monkeypatch.setattr(builtin, "_MOST_TYPES", 5)
    shared = BuiltInEngine()
    assert all(found == alone for found in at_once(lambda number: read_in_own_order(shared, number)))


def test_sixteen_threads_may_share_an_annotator(restless):
    latin, english = (
        "Stella lucet,\net noctis vigiles cantant.",
        "The star shines,\nand the watchmen of the night sing.",
    )
    alone = latingloss.Annotator().annotate(latin, english)
    shared = latingloss.Annotator()
    assert all(found == alone for found in at_once(lambda _: shared.annotate(latin, english)))


@settings(max_examples=25)
@given(st.lists(st.sampled_from(SENTENCES), max_size=8))
def test_a_batch_reads_as_its_sentences(batch):
    engine = BuiltInEngine()
    together = engine.read(batch)
    assert len(together) == len(batch)
    for sentence, found in zip(batch, together, strict=True):
        assert len(found) == len(sentence)
        for token, single in zip(found, engine.read([sentence])[0], strict=True):
            assert [c.form for c in token] == [c.form for c in single]
            for choice, other in zip(token, single, strict=True):
                assert choice.readings[0][0] == other.readings[0][0]
                assert [p for _, p in choice.readings] == pytest.approx([p for _, p in other.readings], abs=1e-5)


@settings(max_examples=25)
@given(st.lists(st.lists(st.text(st.characters(), min_size=1, max_size=12), max_size=6), max_size=4))
def test_every_word_has_readings_that_sum_to_1_best_first(sentences):
    for sentence, found in zip(sentences, BuiltInEngine().read(sentences), strict=True):
        assert len(found) == len(sentence)
        for choice in (c for token in found for c in token):
            chances = [p for _, p in choice.readings]
            assert sum(chances) == pytest.approx(1, abs=1e-4)
            assert chances == sorted(chances, reverse=True)


def test_nothing_to_read():
    assert BuiltInEngine().read([]) == []
    assert BuiltInEngine().read([[], []]) == [[], []]
