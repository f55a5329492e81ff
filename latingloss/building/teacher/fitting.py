"""Fit the teacher's rounds to gold readings by AdaGrad (Duchi, Hazan and Singer 2011)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from latingloss.building.lessons import Lesson
from latingloss.building.teacher.evidence import SIGN_SLOTS, SLOTS, Evidence
from latingloss.building.teacher.rounds import AGREEMENTS, Round, scores
from latingloss.building.teacher.traits import EDGE
from latingloss.context.columns import Floats, Ints
from latingloss.context.network import softmax

EPOCHS, RATE, DECAY, FOLDS = 8, 0.12, 1e-4, 2


class Sizes(NamedTuple):
    """How many tags and signs there are."""

    tags: int
    signs: int


class _Studied(NamedTuple):
    """A lesson with its pairs of readings, and what is believed before the round."""

    lesson: Lesson
    evidence: Evidence
    belief: Floats


def _gradient(studied: _Studied, weights: Round, error: Floats) -> Round:
    c, traits, belief = studied.lesson.columns, studied.evidence.traits, studied.belief
    near, coarse, agree = (np.zeros_like(w) for w in (weights.near, weights.coarse, weights.agree))
    for k, slot in enumerate(SLOTS):
        pairs, edge = studied.evidence.pairs[slot], studied.evidence.edges[slot]
        value = error[pairs.row] * belief[pairs.other]
        agree[k] = np.bincount(pairs.agreement, value, minlength=AGREEMENTS)
        if slot in SIGN_SLOTS:
            n = SIGN_SLOTS.index(slot)
            _add(near[n], (traits.tag[pairs.row], c.sign[pairs.other]), value)
            _add(near[n], (traits.tag[edge], np.full_like(edge, near.shape[2] - 1)), error[edge])
            _add(coarse[n], (traits.coarse[pairs.row], traits.coarse[pairs.other]), value)
            _add(coarse[n], (traits.coarse[edge], np.full_like(edge, EDGE)), error[edge])
    return Round(
        np.array([np.dot(error, c.prior)], np.float32),
        np.bincount(traits.tag, error, minlength=len(weights.tag)).astype(np.float32),
        near,
        coarse,
        agree,
    )


def _add(table: Floats, at: tuple[Ints, Ints], value: Floats) -> None:
    """Add values to the cells of a table that two columns of indices name."""
    flat = table.reshape(-1)
    index = at[0].astype(np.int64) * table.shape[1] + at[1]
    flat += np.bincount(index, value, minlength=len(flat)).astype(np.float32)


def _fit(studied: Sequence[_Studied], sizes: Sizes) -> Round:
    """Return one round's weights, fitted to the lessons given what is believed before the round."""
    weights = Round.zeros(*sizes)
    weights.prior[0] = 0.8
    squares = Round(*(np.full_like(w, 1e-2) for w in weights))
    order = np.random.default_rng(1)
    for _ in range(EPOCHS):
        for i in order.permutation(len(studied)):
            lesson, evidence, belief = studied[i]
            p = softmax(lesson.columns, scores(lesson.columns, evidence, weights, belief=belief))
            gradient = _gradient(studied[i], weights, ((p - lesson.target) * lesson.weight).astype(np.float32))
            words = float(lesson.weight.sum()) / 3  # a word has about three readings
            for w, g, s in zip(weights, gradient, squares, strict=True):
                g += DECAY * words * w
                s += g * g
                w -= RATE * g / np.sqrt(s)
    return weights


def fit_rounds(lessons: Sequence[Lesson], evidence: Sequence[Evidence], sizes: Sizes) -> tuple[Round, Round]:
    """Return both rounds.

    The beliefs that teach the second come from first rounds that have not seen the sentence (stacking, Wolpert
    1992), so that it learns how far the first can be trusted.
    """
    studied = [_Studied(x, e, softmax(x.columns, x.columns.prior)) for x, e in zip(lessons, evidence, strict=True)]
    first = _fit(studied, sizes)
    fresh = list(studied)
    for fold in range(FOLDS):
        weights = _fit([x for i, x in enumerate(studied) if i % FOLDS != fold], sizes)
        for i in range(fold, len(studied), FOLDS):
            lesson, found, belief = studied[i]
            belief = softmax(lesson.columns, scores(lesson.columns, found, weights, belief=belief))
            fresh[i] = studied[i]._replace(belief=belief)
    return first, _fit(fresh, sizes)
