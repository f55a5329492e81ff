"""Weights from ratings: how much each part of difficulty counts for the readers who rated words."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from latingloss.difficulty.score import SPREAD, Weight, difficulty
from latingloss.errors import OptionError, TextError, UnknownLemmaError
from latingloss.morphology.ranking import Candidate, candidates
from latingloss.text.orthography import plain, printed

_RIDGE = 1.0  # pull towards 0, worth one more rating for each weight
_NEAREST = 0.02  # how near to 0 and 1 a rating is taken to come, since the map from the sum never reaches them
_FEWEST = 10

Ratings = Mapping[tuple[str, str], float]


class Fit(NamedTuple):
    """What ratings taught: weights to pass to `Reader`, and how far to trust them."""

    weights: dict[str, Weight]
    r2: float  # share of the variance of the ratings, on the scale of the sum, that the parts explain
    errors: dict[str, float]  # standard error of each weight
    words: int  # how many ratings there were


def fit_weights(ratings: Ratings) -> Fit:
    """Fit the weights of the parts to ratings of words: (form, lemma) to a number from 0 easy to 1 hard.

    Ridge regression (Hoerl and Kennard 1970) of the ratings, mapped back to the sum, on the standardised parts; a
    `mean` in the weights is then the value at which a part adds nothing. Raises `OptionError` if a rating is not from
    0 to 1, `TextError` for fewer than 10 ratings, and `UnknownLemmaError` if a form is none of its lemma.

    >>> from latingloss.morphology.lexicon import lexemes
    >>> nouns = [x.spelled for x in lexemes() if x.upos == "NOUN"][::400]
    >>> fit = fit_weights({(noun, noun): min(1.0, len(noun) / 15) for noun in nouns})
    >>> max(fit.weights, key=lambda part: fit.weights[part].weight), fit.r2 > 0.8
    ('length', True)
    """
    if len(ratings) < _FEWEST:
        raise TextError(
            f"{len(ratings)} ratings; give at least {_FEWEST}, of words of different lengths and frequencies"
        )
    for word, rating in ratings.items():
        if not 0 <= rating <= 1:
            raise OptionError(f"the rating of {word} is {rating}; ratings go from 0, easy, to 1, hard")
    found = [difficulty(form, _reading(form, lemma)).parts for form, lemma in ratings]
    names: list[str] = [part.name for part in found[0]]
    values = np.array([[part.value for part in parts] for parts in found])
    rated = np.clip(np.array(list(ratings.values()), dtype=float), _NEAREST, 1 - _NEAREST)
    sums = np.log(rated / (1 - rated)) / SPREAD
    means, deviations = values.mean(axis=0), np.maximum(values.std(axis=0), 1e-9)
    slopes, errors, r2 = _ridge((values - means) / deviations, sums - sums.mean())
    largest = int(np.argmax(np.abs(slopes)))  # this part takes up what the ratings are above or below one half
    if slopes[largest]:
        means[largest] -= sums.mean() * deviations[largest] / slopes[largest]
    table = zip(means.tolist(), deviations.tolist(), slopes.tolist(), strict=True)
    weights = {name: Weight(*numbers) for name, numbers in zip(names, table, strict=True)}
    return Fit(weights, r2, dict(zip(names, errors.tolist(), strict=True)), len(ratings))


def _ridge(x: NDArray[np.float64], y: NDArray[np.float64]) -> tuple[NDArray[np.float64], NDArray[np.float64], float]:
    """Return slopes, their standard errors and the explained variance; columns of `x` and `y` have mean 0."""
    gram = x.T @ x
    inverse = np.linalg.inv(gram + _RIDGE * np.eye(x.shape[1]))
    slopes = inverse @ x.T @ y
    left = y - x @ slopes
    noise = left @ left / max(1, len(y) - x.shape[1] - 1)
    errors = np.sqrt(noise * np.diag(inverse @ gram @ inverse))
    total = float(y @ y)
    return slopes, errors, 1 - float(left @ left) / total if total else 0.0


def _reading(form: str, lemma: str) -> Candidate:
    """Return the likeliest reading of a form that is of the lemma, written with or without vowel lengths."""
    readings = candidates(form)
    of_lemma = [c for c in readings if lemma in (printed(c.lexeme.lemma), c.lexeme.lemma)]
    of_lemma = of_lemma or [c for c in readings if plain(c.lexeme.spelled) == plain(lemma)]
    if not of_lemma:
        known = ", ".join(dict.fromkeys(printed(c.lexeme.lemma) for c in readings))
        raise UnknownLemmaError(f"{form!r} is no form of {lemma!r}; it may be of {known}")
    return of_lemma[0]
