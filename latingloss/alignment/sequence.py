"""A hidden Markov model over word positions, for a batch of sentences: posteriors and expected jumps.

Each observed word comes from one state (a word of the other language) or from nowhere; the state it comes from
depends on the state before (Vogel, Ney and Tillmann 1996). A word from nowhere leaves the state where it was
(Och and Ney 2003).
"""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
REACH = 12  # jumps farther than this count alike


class Posteriors(NamedTuple):
    """What the model says of a batch."""

    links: Array  # [sentence, observed word, state]
    jumps: Array  # expected counts [class, jump], zero unless asked for
    likelihood: float  # log of the probability of the observed words


@cache
def _distances(states: int) -> NDArray[np.int64]:
    steps = np.arange(states)
    return np.asarray(np.clip(steps[None, :] - steps[:, None], -REACH, REACH) + REACH)


def transitions(jumps: Array, states: int) -> Array:
    """Return [class, from, to] probabilities of moving between `states` states."""
    moves = jumps[:, _distances(states)]
    return np.asarray(moves / moves.sum(2, keepdims=True))


def posteriors(
    emission: Array, nowhere: Array, moves: Array, *, kinds: NDArray[np.int64], count: bool = False
) -> Posteriors:
    """Run forward and backward over a batch.

    `emission` [sentence, word, state] and `nowhere` [sentence, word] are probabilities of the observed words, the
    latter times the probability of coming from nowhere; a padded word has emission 0 and nowhere 1. `moves` is
    [class, from, to] and `kinds` [sentence, word] the class of the step to each word.
    """
    batch, words, states = emission.shape
    alpha = np.empty((words, batch, states))
    real = np.empty_like(alpha)
    scale = np.empty((words, batch))
    before = np.full((batch, states), 1.0 / states)
    for j in range(words):
        reached = np.matmul(before[:, None, :], moves[kinds[:, j]])[:, 0] if j else before
        real[j] = reached * emission[:, j]
        both = real[j] + nowhere[:, j, None] * before
        scale[j] = both.sum(1)
        before = alpha[j] = both / scale[j][:, None]
    beta = np.ones((batch, states))
    links = np.empty((words, batch, states))
    jumps = np.zeros((len(moves), 2 * REACH + 1))
    for j in range(words - 1, -1, -1):
        links[j] = real[j] * beta / scale[j][:, None]
        if not j:
            break
        ahead = beta * emission[:, j] / scale[j][:, None]
        step = moves[kinds[:, j]]
        if count:
            pairs = alpha[j - 1][:, :, None] * step * ahead[:, None, :]
            where = kinds[:, j, None, None] * (2 * REACH + 1) + _distances(states)[None]
            jumps += np.bincount(where.ravel(), pairs.ravel(), jumps.size).reshape(jumps.shape)
        beta = np.matmul(step, ahead[:, :, None])[:, :, 0] + (nowhere[:, j] / scale[j])[:, None] * beta
    return Posteriors(links.transpose(1, 0, 2), jumps, float(np.log(scale).sum()))
