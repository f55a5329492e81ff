"""Columns: what is laid out is what the analyser said, word by word, in any batch."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from latingloss.context.columns import Columns, Numbering, Types, Vocabulary, lay_out
from latingloss.context.tags import tag_of
from latingloss.morphology.ranking import candidates

FORMS = str.split("vesper venit et stella prima lucet rosae templum sine gratia xyzzyq Roma amandi duo")
sentences = st.lists(st.lists(st.sampled_from(FORMS), max_size=6), max_size=5)


def growing() -> Types:
    return Types(Numbering.growing())


def laid(batch: list[list[str]], types: Types) -> Columns:
    return lay_out([[types.id(form) for form in sentence] for sentence in batch], types)


def test_names_are_numbered_once():
    names = Vocabulary(growing=True)
    first = names.id("a")
    assert (names.id("a"), names.id("b"), len(names)) == (first, first + 1, first + 2)
    assert names.names[first] == "a"


def test_a_name_unknown_to_a_closed_vocabulary_is_0():
    names = Vocabulary(["<unknown>", "a"])
    assert (names.id("a"), names.id("b"), len(names)) == (1, 0, 2)


@settings(max_examples=30)
@given(sentences)
def test_a_row_for_every_reading_of_every_word(batch):
    types = growing()
    columns = laid(batch, types)
    flat = [form for sentence in batch for form in sentence]
    assert columns.words == len(flat)
    assert columns.readings.tolist() == [len(candidates(form)) for form in flat]
    assert columns.start.tolist() == np.concatenate(([0], np.cumsum(columns.readings)))[:-1].tolist() if flat else True
    assert columns.sentence.tolist() == [s for s, sentence in enumerate(batch) for _ in sentence]
    readings = [(w, reading) for w, form in enumerate(flat) for reading in candidates(form)]
    assert columns.word.tolist() == [w for w, _ in readings]
    every = [r for form in range(len(types.forms)) for r in types.readings(form)]
    assert [every[i] for i in columns.reading] == [r for _, r in readings]
    endings, signs, lemmas = types.numbering
    assert [endings.names[i] for i in columns.ending] == [tag_of(r).ending for _, r in readings]
    assert [signs.names[i] for i in columns.sign] == [tag_of(r).sign for _, r in readings]
    assert [lemmas.names[i] for i in columns.lemma] == [r.lexeme.lemma for _, r in readings]
    assert np.exp(columns.prior) == pytest.approx([max(r.prior, 1e-9) for _, r in readings], rel=1e-3)


@settings(max_examples=30)
@given(sentences)
def test_a_batch_is_its_sentences_one_after_another(batch):
    types = growing()
    whole = laid(batch, types)
    parts = [laid([sentence], types) for sentence in batch]
    for name in Columns._fields:
        if name not in ("start", "word", "sentence"):
            together = [x for part in parts for x in getattr(part, name).tolist()]
            assert getattr(whole, name).tolist() == together


def test_forms_met_later_do_not_change_what_was_laid_out():
    types = growing()
    before = laid([FORMS[:3]], types)
    laid([FORMS[3:]], types)
    after = laid([FORMS[:3]], types)
    assert all(np.array_equal(a, b) for a, b in zip(before, after, strict=True))


def test_nothing_is_laid_out_as_nothing():
    for batch in ([], [[]], [[], []]):
        columns = laid(batch, growing())
        assert columns.words == 0 and all(len(column) == 0 for column in columns)
