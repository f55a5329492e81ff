"""Fit the chooser's rounds to targets, gold or believed, by AdaGrad (Duchi, Hazan and Singer 2011)."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from latingloss.context.columns import Columns, Floats, Ints
from latingloss.context.evidence import SIGN_SLOTS, SLOTS
from latingloss.context.model import AGREEMENTS, Evidence, Round, scores, softmax
from latingloss.context.tags import EDGE

EPOCHS, RATE, DECAY, FOLDS = 8, 0.12, 1e-4, 2


class Lesson(NamedTuple):
    """A batch of sentences with what each reading should be believed, and how much each word counts."""

    columns: Columns
    evidence: Evidence
    target: Floats  # [rows]; sums to 1 over a word
    weight: Floats  # [rows]; 0 for words without a target


class Sizes(NamedTuple):
    """How many tags, signs and remembered readings there are."""

    tags: int
    signs: int
    memory: int


def _gradient(lesson: Lesson, weights: Round, *, error: Floats, belief: Floats) -> Round:
    c = lesson.columns
    near, coarse, agree = (np.zeros_like(w) for w in (weights.near, weights.coarse, weights.agree))
    for k, slot in enumerate(SLOTS):
        pairs, edge = lesson.evidence.pairs[slot], lesson.evidence.edges[slot]
        value = error[pairs.row] * belief[pairs.other]
        agree[k] = np.bincount(pairs.agreement, value, minlength=AGREEMENTS)
        if slot in SIGN_SLOTS:
            n = SIGN_SLOTS.index(slot)
            _add(near[n], (c.tag[pairs.row], c.sign[pairs.other]), value)
            _add(near[n], (c.tag[edge], np.ones_like(edge)), error[edge])
            _add(coarse[n], (c.coarse[pairs.row], c.coarse[pairs.other]), value)
            _add(coarse[n], (c.coarse[edge], np.full_like(edge, EDGE)), error[edge])
    return Round(
        np.array([np.dot(error, c.prior)], np.float32),
        np.bincount(c.tag, error, minlength=len(weights.tag)).astype(np.float32),
        np.bincount(c.remembered, error, minlength=len(weights.memory)).astype(np.float32),
        near,
        coarse,
        agree,
    )


def _add(table: Floats, at: tuple[Ints, Ints], value: Floats) -> None:
    """Add values to the cells of a table that two columns of indices name."""
    flat = table.reshape(-1)
    index = at[0].astype(np.int64) * table.shape[1] + at[1]
    flat += np.bincount(index, value, minlength=len(flat)).astype(np.float32)


def fit(lessons: Sequence[Lesson], beliefs: Sequence[Floats], sizes: Sizes) -> Round:
    """Return one round's weights, fitted to the lessons given what is believed before the round."""
    weights = Round.zeros(*sizes)
    weights.prior[0] = 0.8
    squares = Round(*(np.full_like(w, 1e-2) for w in weights))
    order = np.random.default_rng(1)
    for _ in range(EPOCHS):
        for i in order.permutation(len(lessons)):
            lesson = lessons[i]
            p = softmax(lesson.columns, scores(lesson.columns, lesson.evidence, weights, belief=beliefs[i]))
            error = ((p - lesson.target) * lesson.weight).astype(np.float32)
            gradient = _gradient(lesson, weights, error=error, belief=beliefs[i])
            words = float(lesson.weight.sum()) / 3  # a word has about three readings
            for w, g, s in zip(weights, gradient, squares, strict=True):
                g += DECAY * words * w
                s += g * g
                w -= RATE * g / np.sqrt(s)
    weights.memory[0] = 0.0  # what stands for every reading not remembered says nothing
    return weights


def fit_rounds(lessons: Sequence[Lesson], sizes: Sizes) -> tuple[Round, Round]:
    """Return both rounds.

    The beliefs that teach the second come from first rounds that have not seen the sentence (stacking, Wolpert
    1992), so that it learns how far the first can be trusted.
    """
    beliefs = [softmax(x.columns, x.columns.prior) for x in lessons]
    first = fit(lessons, beliefs, sizes)
    fresh = list(beliefs)
    for fold in range(FOLDS):
        seen = [i for i in range(len(lessons)) if i % FOLDS != fold]
        weights = fit([lessons[i] for i in seen], [beliefs[i] for i in seen], sizes)
        for i in range(fold, len(lessons), FOLDS):
            columns = lessons[i].columns
            fresh[i] = softmax(columns, scores(columns, lessons[i].evidence, weights, belief=beliefs[i]))
    return first, fit(lessons, fresh, sizes)
