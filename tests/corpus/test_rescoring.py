"""Words scored again, from their columns alone, are scored as they would have been at first."""

from __future__ import annotations

import pytest

from latingloss import Reader
from latingloss.difficulty.frequency import Frequencies
from latingloss.difficulty.score import Weight, shipped_weights
from latingloss.errors import OptionError
from latingloss.morphology.ranking import candidates

pl = pytest.importorskip("polars", reason="needs the extra corpus")
pytest.importorskip("pyarrow", reason="needs the extra corpus")

from latingloss.corpus import rescore, score  # noqa: E402

TEXT = "Thalamus vacat, discipuli vigilant; monstrum xyzzyq praetergreditur. Jesus abiit."
WEIGHTS = {part: weight._replace(weight=0.1 * i) for i, (part, weight) in enumerate(shipped_weights().items())}


@pytest.fixture(scope="module")
def words():
    return pl.concat(score([("a", TEXT)], context=False))


def test_nothing_new_gives_the_same(words):
    again = rescore(words)
    assert again.columns == words.columns and again.schema == words.schema
    assert again["difficulty"].to_list() == pytest.approx(words["difficulty"].to_list(), abs=1e-6)
    assert again.drop("difficulty").equals(words.drop("difficulty"))


@pytest.mark.parametrize("weights", [None, WEIGHTS])
@pytest.mark.parametrize("frequencies", [None, Frequencies.classical(), Frequencies.counted([TEXT])])
def test_a_corpus_is_scored_as_a_reader_scores_words(words, weights, frequencies):
    reader = Reader(weights=weights, frequencies=frequencies)
    again = rescore(words, weights=weights, frequencies=frequencies)
    for row in again.iter_rows(named=True):
        own = reader.difficulty(row["form"], candidates(row["form"])[0])
        assert row["difficulty"] == pytest.approx(own.score, abs=3e-3), row["form"]
        assert row["zipf"] == pytest.approx(own.parts[0].value, abs=1e-3)


def test_a_table_on_the_disk_need_not_be_loaded(words):
    lazy = rescore(words.lazy(), frequencies=Frequencies.church())
    assert isinstance(lazy, pl.LazyFrame)
    assert lazy.collect().equals(rescore(words, frequencies=Frequencies.church()))


def test_every_part_needs_a_weight(words):
    with pytest.raises(OptionError, match="shape"):
        rescore(words, weights={part: Weight(0, 1, 1) for part in shipped_weights() if part != "shape"})
