"""Fit what the signs of an English rendering are worth for each kind of ending.

The verses have no gold readings: the target is what the Latin model believes, and the fit finds the signs that go
with each ending in thousands of verses. The believed readings and the signs then correct each other once.
"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

import numpy as np

from latingloss.alignment.rendering import word_odds
from latingloss.building import grammar
from latingloss.building.examples import Verse
from latingloss.building.grammar import Vocabularies
from latingloss.context.columns import Columns, Floats, Ints, Types, lay_out
from latingloss.context.network import softmax
from latingloss.context.tags import english_tag

EPOCHS, RATE, DECAY, BATCH = 4, 0.1, 1e-3, 200
WORD_ODDS = 0.6  # worth of the linked words' log odds, to start from
_LEAST = 0.05  # weights nearer to 0 are left out of the table


class Rendered(NamedTuple):
    """A batch of verses with what their English shows."""

    columns: Columns
    row: Ints  # of each pair of reading and sign
    sign: Ints
    tag: Ints  # [rows] english_tag of each reading
    odds: Floats  # [rows] how well the linked words render the lexeme


class SignWeights(NamedTuple):
    """What is learned."""

    prior: Floats  # [1]
    odds: Floats  # [1]
    signs: Floats  # [tags, signs]


def render(verses: Sequence[Verse], types: Types, names: Vocabularies) -> list[Rendered]:
    """Lay verses out in batches with their signs."""
    return [_rendered(verses[k : k + BATCH], types, names) for k in range(0, len(verses), BATCH)]


def _rendered(verses: Sequence[Verse], types: Types, names: Vocabularies) -> Rendered:
    columns = lay_out([v.forms for v in verses], types)
    signs = [[names.signs.id(s) for s in word] for v in verses for word in v.signs]
    count = np.fromiter((len(word) for word in signs), np.int32, len(signs))
    flat = np.fromiter((s for word in signs for s in word), np.int32)
    start = (np.cumsum(count) - count).astype(np.int32)
    width = count[columns.word]
    row = np.repeat(np.arange(len(columns.word), dtype=np.int32), width)
    step = np.arange(len(row), dtype=np.int32) - np.repeat(np.cumsum(width) - width, width).astype(np.int32)
    sign = flat[np.repeat(start[columns.word], width) + step]
    tags, odds = [], []
    for verse in verses:
        for form, words in zip(verse.forms, verse.linked, strict=True):
            for candidate in types.readings(form):
                tags.append(names.tags.id(english_tag(candidate)))
                odds.append(word_odds(candidate.lexeme, words))
    return Rendered(columns, row, sign, np.array(tags, np.int32), np.array(odds, np.float32))


def evidence(batch: Rendered, weights: SignWeights) -> Floats:
    """Return what the English adds to the score of every reading."""
    value = weights.signs[batch.tag[batch.row], batch.sign]
    total: Floats = np.bincount(batch.row, value, minlength=len(batch.tag)).astype(np.float32)
    total += weights.odds[0] * batch.odds
    return total


def grammar_signs(names: Vocabularies) -> SignWeights:
    """Return the weights to start from, before anything is learned."""
    return SignWeights(np.ones(1, np.float32), np.full(1, WORD_ODDS, np.float32), grammar.weights(names))


def fit_signs(batches: Sequence[Rendered], targets: Sequence[Floats], names: Vocabularies) -> SignWeights:
    """Return the weights with which prior and English come nearest to the targets, not far from the grammar's."""
    start = grammar_signs(names)
    shape = start.signs.shape
    weights = SignWeights(*(w.copy() for w in start))
    squares = SignWeights(*(np.full_like(w, 1e-2) for w in weights))
    order = np.random.default_rng(3)
    for _ in range(EPOCHS):
        for i in order.permutation(len(batches)):
            b, c = batches[i], batches[i].columns
            error = softmax(c, weights.prior[0] * c.prior + evidence(b, weights)) - targets[i]
            index = b.tag[b.row].astype(np.int64) * shape[1] + b.sign
            gradient = SignWeights(
                np.array([np.dot(error, c.prior)], np.float32),
                np.array([np.dot(error, b.odds)], np.float32),
                np.bincount(index, error[b.row], minlength=shape[0] * shape[1]).astype(np.float32).reshape(shape),
            )
            for w, g, s, w0 in zip(weights, gradient, squares, start, strict=True):
                g += DECAY * c.words * (w - w0)
                s += g * g
                w -= RATE * g / np.sqrt(s)
    return weights


def save_signs(weights: SignWeights, names: Vocabularies, path: Path, *, trust: float) -> None:
    """Write the weights as a text table, multiplied by how far they are trusted."""
    lines = ["tag\tsign\tweight", f"<word>\t<odds>\t{trust * weights.odds[0]:.3f}"]
    for t, s in sorted(zip(*np.nonzero(np.abs(weights.signs) >= _LEAST), strict=True)):
        lines.append(f"{names.tags.names[t]}\t{names.signs.names[s]}\t{trust * weights.signs[t, s]:.2f}")
    path.write_text("\n".join(lines) + "\n", encoding="utf-8")
