"""Weights learned from ratings: known ones are found again, bad ratings refused."""

import random
from math import exp

import numpy as np
import pytest

from latingloss.difficulty.fitting import fit_weights
from latingloss.difficulty.reader import Reader
from latingloss.difficulty.score import SPREAD, difficulty
from latingloss.errors import OptionError, TextError, UnknownLemmaError
from latingloss.morphology.lexicon import lexemes
from latingloss.morphology.ranking import candidates

TRUE = {"frequency": -0.5, "length": 0.2, "cognate": 0.4, "shape": 0.1, "clusters": 0.1, "readings": 0.2}
DRAWN = random.Random(11).sample([x for x in lexemes() if x.upos in ("NOUN", "VERB", "ADJ")], 500)
WORDS = sorted({(x.spelled, candidates(x.spelled)[0].lexeme.spelled) for x in DRAWN})


@pytest.fixture(scope="module")
def rated():
    """Ratings made by known weights on standardised parts, a constant added."""
    values = np.array([[p.value for p in difficulty(f, candidates(f)[0]).parts] for f, _ in WORDS])
    sums = 0.3 + ((values - values.mean(axis=0)) / values.std(axis=0)) @ np.array(list(TRUE.values()))
    return {word: 1 / (1 + exp(-SPREAD * s)) for word, s in zip(WORDS, sums.tolist(), strict=True)}


def test_known_weights_are_found_again(rated):
    fit = fit_weights(rated)
    assert fit.words == len(rated) and fit.r2 > 0.98
    for name, weight in TRUE.items():
        assert fit.weights[name].weight == pytest.approx(weight, abs=0.03)


def test_scores_by_the_fitted_weights_are_the_ratings(rated):
    reader = Reader(weights=fit_weights(rated).weights)
    off = [abs(reader.difficulty(f, candidates(f)[0]).score - rating) for (f, _), rating in rated.items()]
    assert sum(off) / len(off) < 0.02


def test_standard_errors_cover_the_truth_and_shrink(rated):
    noise = np.random.default_rng(5)
    noisy = {w: float(np.clip(r + noise.normal(0, 0.15), 0, 1)) for w, r in rated.items()}
    fit, fewer = fit_weights(noisy), fit_weights(dict(list(noisy.items())[:80]))
    assert fit.r2 < 0.95
    assert all(0 < fit.errors[name] < fewer.errors[name] for name in TRUE)
    lengths = fit.weights["length"].weight / fit.errors["length"], fit.weights["shape"].weight / fit.errors["shape"]
    assert min(lengths) > 2  # both parts matter, and the fit is sure of it


def test_ratings_without_a_cause_explain_nothing(rated):
    blind = random.Random(3)
    assert fit_weights({word: blind.random() for word in rated}).r2 < 0.05


def test_equal_ratings_are_given_back():
    fit = fit_weights(dict.fromkeys(WORDS[:40], 0.5))
    assert all(weight.weight == 0 for weight in fit.weights.values())


def test_bad_ratings_are_refused():
    good = dict.fromkeys(WORDS[:20], 0.5)
    with pytest.raises(TextError, match="at least 10"):
        fit_weights({})
    with pytest.raises(OptionError, match="from 0"):
        fit_weights(good | {("nox", "nox"): 5})
    with pytest.raises(UnknownLemmaError, match="no form of"):
        fit_weights(good | {("noctem", "lūx"): 0.5})
