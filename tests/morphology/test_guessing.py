"""Guesses for forms outside the lexicon: never none, and never sure."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from latingloss.morphology.guessing import guesses
from latingloss.morphology.ranking import candidates


@given(st.text("abcdefghilmnopqrstuxyz", min_size=1, max_size=20))
def test_no_form_is_without_a_guess(form: str):
    found = guesses(form)
    assert found and all(g[4] >= 0 for g in found)
    assert found[-1][3] == {}  # an undeclined word is always possible


@pytest.mark.parametrize("form", ["zork", "Blorpus", "redormit", "lumbricationibus", "Tharathem", "blorperavimus"])
def test_a_guess_keeps_doubt(form: str):
    found = candidates(form)
    assert all(c.guessed for c in found)
    assert found[0].prior < 0.995  # -āvimus can hardly be anything but a perfect


def test_a_derived_reading_comes_before_those_from_the_ending_alone():
    assert guesses("redormit")[0][0].gloss and not guesses("zorkaverunt")[0][0].gloss
