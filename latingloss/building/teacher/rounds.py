"""The teacher's weights and how they score: log-linear, in rounds, each seeing what the round before believed.

Round by round every reading gets a score from its prior, its tag, and what the readings around it are likely to
be; a softmax over each word's readings gives the next belief. That is mean-field inference in a conditional
random field whose weights are learned for each round.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from latingloss.building.teacher.evidence import LEVELS, SIGN_SLOTS, SLOTS, Evidence
from latingloss.building.teacher.traits import CLASSES, COARSE, EDGE
from latingloss.context.columns import Columns, Floats
from latingloss.context.network import softmax

AGREEMENTS = len(CLASSES) ** 2 * LEVELS


class Round(NamedTuple):
    """Weights of one round; shapes in brackets."""

    prior: Floats  # [1]
    tag: Floats  # [tags]
    near: Floats  # [len(SIGN_SLOTS), tags, signs + 1]; the last sign is the edge of the sentence
    coarse: Floats  # [len(SIGN_SLOTS), COARSE, COARSE]
    agree: Floats  # [len(SLOTS), AGREEMENTS]

    @classmethod
    def zeros(cls, tags: int, signs: int) -> Round:
        """Return a round that trusts the prior alone."""
        return cls(
            np.ones(1, np.float32),
            np.zeros(tags, np.float32),
            np.zeros((len(SIGN_SLOTS), tags, signs + 1), np.float32),
            np.zeros((len(SIGN_SLOTS), len(COARSE), len(COARSE)), np.float32),
            np.zeros((len(SLOTS), AGREEMENTS), np.float32),
        )


def scores(columns: Columns, evidence: Evidence, weights: Round, *, belief: Floats) -> Floats:
    """Return the score of every reading, given what is believed of the others."""
    traits = evidence.traits
    total: Floats = weights.prior[0] * columns.prior + weights.tag[traits.tag]
    for k, slot in enumerate(SLOTS):
        pairs = evidence.pairs[slot]
        value = weights.agree[k][pairs.agreement]
        if slot in SIGN_SLOTS:
            near, coarse = weights.near[SIGN_SLOTS.index(slot)], weights.coarse[SIGN_SLOTS.index(slot)]
            value = value + near[traits.tag[pairs.row], columns.sign[pairs.other]]
            value += coarse[traits.coarse[pairs.row], traits.coarse[pairs.other]]
            edge = evidence.edges[slot]
            total[edge] += near[traits.tag[edge], -1] + coarse[traits.coarse[edge], EDGE]
        total += np.bincount(pairs.row, value * belief[pairs.other], minlength=len(total)).astype(np.float32)
    return total


def believe(columns: Columns, evidence: Evidence, rounds: tuple[Round, ...]) -> Floats:
    """Return what the rounds believe of every reading of a batch."""
    belief = softmax(columns, columns.prior)
    for weights in rounds:
        belief = softmax(columns, scores(columns, evidence, weights, belief=belief))
    return belief
