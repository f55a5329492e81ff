"""Train the chooser: `python -m latingloss.building.chooser ../shared`.

1. Fit both rounds to the learn treebanks.
2. Read the verses with them; right after a preposition, keep to the case that it takes.
3. Correct what is believed by the signs of the English, worth at first what any grammar says; fit their worth to the
   corrected belief, and correct again.
4. Fit both rounds anew, to the treebanks and to the verses as now believed, a little surer.

A second pass, and fitting the signs again after step 4, were tried: they only confirm the model in its errors. The
numbers below were chosen by looking at the development figures of the check treebanks, which are therefore not blind.
Deterministic; three minutes.
"""

from __future__ import annotations

import sys
from pathlib import Path

import numpy as np

from latingloss.building.examples import BATCH, Verse, read_verses, treebank_lessons
from latingloss.building.fitting import Lesson, Sizes, fit_rounds
from latingloss.building.grammar import Vocabularies
from latingloss.building.rendering import Rendered, SignWeights, evidence, fit_signs, grammar_signs, render, save_signs
from latingloss.context.columns import Columns, Floats, Types, Vocabulary, lay_out
from latingloss.context.evidence import Kinds, pairs_at
from latingloss.context.model import LEAST, Evidence, Model, Round, scores, shares, softmax

OUT = Path(__file__).parents[1] / "data" / "context"
TREEBANKS = (("circse-train", 1.0), ("circse-dev", 1.0), ("llct-dev", 0.3))  # charters confuse their cases
VERSE_WEIGHT = 0.25
EVERY = 2  # of the verses
TRUST = 1.4  # in the English signs
SURER = 1.6  # power to which beliefs in verses are raised before they teach
_AGAINST_PREPOSITION = 0.02


def believe(columns: Columns, found: Evidence, rounds: tuple[Round, ...]) -> Floats:
    """Return what the rounds believe of every reading of a batch."""
    belief = softmax(columns, columns.prior)
    for weights in rounds:
        belief = softmax(columns, scores(columns, found, weights, belief=belief))
    return belief


def keep_to_prepositions(columns: Columns, belief: Floats) -> Floats:
    """Lower the belief in readings that a sure preposition right before does not allow."""
    pairs, _ = pairs_at(columns, -1, Kinds.of_batch(columns))
    governed = columns.governed[pairs.other]
    sure = (governed > 0) & (belief[pairs.other] > 0.9) & (columns.case[pairs.row] > 0)
    against = pairs.row[sure & (((governed >> columns.case[pairs.row]) & 1) == 0)]
    kept = belief.copy()
    kept[against] *= _AGAINST_PREPOSITION
    return shares(columns, kept)


def train(shared: Path, out: Path) -> None:
    """Train and write `model.npz` and `english.tsv`."""
    types = Types(Vocabulary(growing=True), Vocabulary(growing=True), Vocabulary(growing=True))
    lessons: list[Lesson] = []
    for name, weight in TREEBANKS:
        lessons += treebank_lessons(shared / "treebanks" / "learn" / f"{name}.conllu.gz", types, weight=weight)
    verses = read_verses(shared, types, every=EVERY)
    names = Vocabularies(Vocabulary(growing=True), Vocabulary(growing=True))
    batches = render(verses, types, names)
    found = [Evidence.of(b.columns) for b in batches]
    sizes = Sizes(len(types.tags), len(types.neighbours), len(types.memory))
    rounds = fit_rounds(lessons, sizes)
    beliefs = [
        keep_to_prepositions(b.columns, believe(b.columns, e, rounds)) for b, e in zip(batches, found, strict=True)
    ]
    signs = fit_signs(batches, _corrected(batches, beliefs, grammar_signs(names)), names)
    save_signs(signs, names, out / "english.tsv", trust=TRUST)
    targets = [_surer(b.columns, q) for b, q in zip(batches, _corrected(batches, beliefs, signs), strict=True)]
    rounds = fit_rounds(lessons + _verse_lessons(verses, types, targets), sizes)
    forgetful(Model(types.tags, types.neighbours, types.memory, rounds)).save(out / "model.npz")


def forgetful(model: Model) -> Model:
    """Return the model without the remembered readings that weigh nothing, seven in eight."""
    weighs = np.max([np.abs(weights.memory) for weights in model.rounds], axis=0) > LEAST
    kept = np.flatnonzero(weighs | (np.arange(len(weighs)) < 2))  # the first two names stand for none
    names = Vocabulary([model.memory.names[i] for i in kept])
    return model._replace(
        memory=names, rounds=tuple(weights._replace(memory=weights.memory[kept]) for weights in model.rounds)
    )


def _corrected(batches: list[Rendered], beliefs: list[Floats], signs: SignWeights) -> list[Floats]:
    """Return the beliefs with what the English adds."""
    return [
        keep_to_prepositions(b.columns, softmax(b.columns, np.log(q + 1e-9) + TRUST * evidence(b, signs)))
        for b, q in zip(batches, beliefs, strict=True)
    ]


def _surer(columns: Columns, belief: Floats) -> Floats:
    """Return a belief with its differences enlarged."""
    return shares(columns, belief**SURER)


def _verse_lessons(verses: list[Verse], types: Types, beliefs: list[Floats]) -> list[Lesson]:
    """Verses as lessons, in small batches; the beliefs come in the verses' order."""
    believed = np.concatenate(beliefs)
    lessons, at = [], 0
    for k in range(0, len(verses), BATCH):
        columns = lay_out([v.forms for v in verses[k : k + BATCH]], types)
        target = believed[at : at + len(columns.word)]
        at += len(columns.word)
        lessons.append(Lesson(columns, Evidence.of(columns), target, np.full(len(target), VERSE_WEIGHT, np.float32)))
    return lessons


if __name__ == "__main__":
    train(Path(sys.argv[1]), OUT)
