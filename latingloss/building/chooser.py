"""Train the chooser: `python -m latingloss.building.chooser ../shared`.

Reads the learn treebanks only. Each round is a log-linear model fitted by AdaGrad (Duchi, Hazan and Singer 2011)
to the gold readings; the beliefs that train a later round come from models that have not seen the sentence
(stacking, Wolpert 1992), so that it learns how far the earlier one can be trusted. Deterministic.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import NamedTuple

import numpy as np

from latingloss.building.matching import gold_reading
from latingloss.building.sources import GoldWord, learn_sentences
from latingloss.context.columns import Columns, Floats, Ints, Types, Vocabulary, lay_out
from latingloss.context.evidence import FAR, NEAR
from latingloss.context.tags import COARSE, EDGE
from latingloss.context.model import AGREEMENTS, Evidence, Model, Round, scores, softmax

OUT = Path(__file__).parents[1] / "data" / "context" / "model.npz"
ROUNDS, EPOCHS, FOLDS, BATCH = 2, 12, 4, 40
RATE, DECAY = 0.12, 1e-4


class Example(NamedTuple):
    """A sentence as numbers of forms, with the gold reading of each word or -1."""

    forms: tuple[int, ...]
    gold: tuple[int, ...]


def chain(words: list[GoldWord]) -> list[GoldWord]:
    """Put an enclitic conjunction before its host, where the sense has it: populusque, que populus."""
    out: list[GoldWord] = []
    for word in words:
        if word.part and word.form.lower() in ("que", "ve", "ue") and out:
            out.insert(len(out) - 1, word)
        else:
            out.append(word)
    return out


def examples(shared: Path, types: Types) -> list[Example]:
    """Return the learn treebanks as examples."""
    found = []
    for sentence in learn_sentences(shared):
        words = chain([w for w in sentence if w.upos not in ("PUNCT", "SYM") and any(c.isalpha() for c in w.form)])
        ids = [types.id(w.form) for w in words]
        gold = [gold_reading(types.candidates[i], w) for i, w in zip(ids, words, strict=True)]
        if ids:
            found.append(Example(tuple(ids), tuple(-1 if g is None else g for g in gold)))
    return found


class Batch(NamedTuple):
    """Columns and evidence of some sentences, and the row of each gold reading."""

    columns: Columns
    evidence: Evidence
    gold: Ints  # rows
    counted: Ints  # words with a gold reading


def batches(sentences: list[Example], types: Types) -> list[Batch]:
    """Lay examples out in batches."""
    out = []
    for i in range(0, len(sentences), BATCH):
        part = sentences[i : i + BATCH]
        columns = lay_out([s.forms for s in part], types)
        gold = np.array([g for s in part for g in s.gold], np.int32)
        counted = np.flatnonzero(gold >= 0).astype(np.int32)
        out.append(Batch(columns, Evidence.of(columns), columns.start[counted] + gold[counted], counted))
    return out


def _gradient(batch: Batch, error: Floats, belief: Floats, weights: Round) -> Round:
    c = batch.columns
    near = np.zeros_like(weights.near)
    coarse = np.zeros_like(weights.coarse)
    agree = np.zeros_like(weights.agree)
    signs = weights.near.shape[2]
    for k, distance in enumerate(FAR):
        pairs = batch.evidence.pairs[distance]
        value = error[pairs.row] * belief[pairs.other]
        agree[k] = np.bincount(pairs.agreement, value, minlength=AGREEMENTS)
        if distance in NEAR:
            flat = near[NEAR.index(distance)].reshape(-1)
            index = c.tag[pairs.row].astype(np.int64) * signs + c.sign[pairs.other]
            flat += np.bincount(index, value, minlength=len(flat)).astype(np.float32)
            edge = batch.evidence.edges[distance]
            flat += np.bincount(c.tag[edge].astype(np.int64) * signs + 1, error[edge], minlength=len(flat)).astype(np.float32)
            flat = coarse[NEAR.index(distance)].reshape(-1)
            index = c.coarse[pairs.row] * len(COARSE) + c.coarse[pairs.other]
            flat += np.bincount(index, value, minlength=len(flat)).astype(np.float32)
            flat += np.bincount(c.coarse[edge] * len(COARSE) + EDGE, error[edge], minlength=len(flat)).astype(np.float32)
    return Round(
        np.array([np.dot(error, c.prior)], np.float32),
        np.bincount(c.tag, error, minlength=len(weights.tag)).astype(np.float32),
        np.bincount(c.remembered, error, minlength=len(weights.memory)).astype(np.float32),
        near,
        coarse,
        agree,
    )


def fit(data: list[Batch], beliefs: list[Floats], sizes: tuple[int, int, int]) -> Round:
    """Fit one round's weights."""
    weights = Round.zeros(*sizes)
    weights.prior[0] = 0.8
    squares = Round(*(np.full_like(w, 1e-2) for w in weights))
    order = np.random.default_rng(1)
    for _ in range(EPOCHS):
        for i in order.permutation(len(data)):
            batch = data[i]
            p = softmax(batch.columns, scores(batch.columns, batch.evidence, weights, beliefs[i]))
            error = np.zeros(len(p), np.float32)
            counted = np.zeros(batch.columns.words, bool)
            counted[batch.counted] = True
            error[:] = np.where(counted[batch.columns.word], p, 0.0)
            error[batch.gold] -= 1.0
            gradient = _gradient(batch, error, beliefs[i], weights)
            for w, g, s in zip(weights, gradient, squares, strict=True):
                g += DECAY * len(batch.counted) * w
                s += g * g
                w -= RATE * g / np.sqrt(s)
        weights.memory[0] = 0.0
    return weights


def train(sentences: list[Example], types: Types) -> Model:
    """Return a model of all rounds fitted to the sentences."""
    order = np.random.default_rng(0).permutation(len(sentences))
    sentences = [sentences[i] for i in order]
    data = batches(sentences, types)
    sizes = (len(types.tags), len(types.neighbours), len(types.memory))
    beliefs = [softmax(b.columns, b.columns.prior) for b in data]
    rounds: list[Round] = []
    for number in range(ROUNDS):
        rounds.append(fit(data, beliefs, sizes))
        if number + 1 < ROUNDS:
            fresh = [b for b in beliefs]
            for fold in range(FOLDS):
                held = [i for i in range(len(data)) if i % FOLDS == fold]
                seen = [i for i in range(len(data)) if i % FOLDS != fold]
                weights = fit([data[i] for i in seen], [beliefs[i] for i in seen], sizes)
                for i in held:
                    fresh[i] = softmax(data[i].columns, scores(data[i].columns, data[i].evidence, weights, beliefs[i]))
            beliefs = fresh
    return Model(types.tags, types.neighbours, types.memory, tuple(rounds))


def main(shared: Path) -> None:
    """Train on all learn treebanks and write the model."""
    types = Types(Vocabulary(growing=True), Vocabulary(growing=True), Vocabulary(growing=True))
    sentences = examples(shared, types)
    OUT.parent.mkdir(exist_ok=True)
    train(sentences, types).save(OUT)


if __name__ == "__main__":
    main(Path(sys.argv[1]))
