"""Train the chooser: `python -m latingloss.building.chooser ../shared`.

1. Fit the teacher, a log-linear model that knows what agreement is, to the learn treebanks.
2. Let it read the verses; right after a preposition, keep to the case that it takes.
3. Correct what it believes by the signs of the English, worth at first what any grammar says; fit their worth to the
   corrected belief, and correct again.
4. Train the network on the treebanks and on the verses as now believed, a little surer.

The numbers below were chosen by looking at the development figures of the check treebanks, which are therefore not
blind. Deterministic; five minutes.
"""

from __future__ import annotations

import sys
from collections.abc import Sequence
from pathlib import Path

import numpy as np

from latingloss.building.examples import Verse, read_verses, treebank_lessons
from latingloss.building.grammar import Vocabularies
from latingloss.building.lessons import Lesson
from latingloss.building.network import train_network
from latingloss.building.rendering import Rendered, SignWeights, evidence, fit_signs, grammar_signs, render, save_signs
from latingloss.building.teacher.evidence import Evidence
from latingloss.building.teacher.fitting import Sizes, fit_rounds
from latingloss.building.teacher.rounds import believe
from latingloss.building.teacher.traits import TraitTable
from latingloss.context.columns import Columns, Floats, Numbering, Types, Vocabulary, lay_out
from latingloss.context.network import shares, softmax

OUT = Path(__file__).parents[1] / "data" / "context"
TREEBANKS = (("circse-train", 1.0), ("circse-dev", 1.0), ("llct-dev", 0.3))  # charters confuse their cases
VERSE_WEIGHT = 0.25
TRUST = 1.4  # of the teacher in the English signs
KNOWN = 1.2  # trust where the network has read already: it has learned some of what they say
SURER = 1.6  # power to which beliefs in verses are raised before they teach
_WORDS_A_LESSON = 700
_AGAINST_PREPOSITION = 0.02


def train(shared: Path, out: Path) -> None:
    """Train and write `network.npz` and `english.tsv`."""
    types = Types(Numbering.growing())
    lessons: list[Lesson] = []
    for name, weight in TREEBANKS:
        lessons += treebank_lessons(shared / "treebanks" / "learn" / f"{name}.conllu.gz", types, weight=weight)
    verses = read_verses(shared, types)
    names = Vocabularies(Vocabulary(growing=True), Vocabulary(growing=True))
    batches = render(verses, types, names)
    beliefs = _taught(lessons, batches, types)
    signs = fit_signs(batches, _corrected(batches, beliefs, grammar_signs(names)), names)
    save_signs(signs, names, out / "english.tsv", trust=KNOWN)
    targets = [_surer(b.columns, q) for b, q in zip(batches, _corrected(batches, beliefs, signs), strict=True)]
    train_network(lessons + _verse_lessons(verses, types, targets), types.numbering).save(out / "network.npz")


def _taught(lessons: Sequence[Lesson], batches: Sequence[Rendered], types: Types) -> list[Floats]:
    """Return what the teacher believes of the verses."""
    table = TraitTable(types)
    studied = [Evidence.of(x.columns, table.of(x.columns)) for x in lessons]
    found = [Evidence.of(b.columns, table.of(b.columns)) for b in batches]
    sizes = Sizes(len(table.tags), len(types.numbering.signs))
    rounds = fit_rounds(lessons, studied, sizes)
    return [
        keep_to_prepositions(b.columns, e, believe(b.columns, e, rounds)) for b, e in zip(batches, found, strict=True)
    ]


def keep_to_prepositions(columns: Columns, found: Evidence, belief: Floats) -> Floats:
    """Lower the belief in readings that a sure preposition right before does not allow."""
    pairs, traits = found.pairs[-1], found.traits
    governed = traits.governed[pairs.other]
    sure = (governed > 0) & (belief[pairs.other] > 0.9) & (traits.case[pairs.row] > 0)
    against = pairs.row[sure & (((governed >> traits.case[pairs.row]) & 1) == 0)]
    kept = belief.copy()
    kept[against] *= _AGAINST_PREPOSITION
    return shares(columns, kept)


def _corrected(batches: Sequence[Rendered], beliefs: Sequence[Floats], signs: SignWeights) -> list[Floats]:
    """Return the beliefs with what the English adds."""
    return [
        softmax(b.columns, np.log(q + 1e-9) + TRUST * evidence(b, signs)) for b, q in zip(batches, beliefs, strict=True)
    ]


def _surer(columns: Columns, belief: Floats) -> Floats:
    """Return a belief with its differences enlarged."""
    return shares(columns, belief**SURER)


def _verse_lessons(verses: Sequence[Verse], types: Types, beliefs: Sequence[Floats]) -> list[Lesson]:
    """Verses as lessons, shuffled into small batches; the beliefs come in the verses' order."""
    _, _, _, count = types.arrays()
    rows = np.cumsum([0] + [int(count[list(v.forms)].sum()) for v in verses])
    believed = np.concatenate(beliefs)
    lessons: list[Lesson] = []
    held: list[int] = []
    words = 0
    for v in np.random.default_rng(1).permutation(len(verses)).tolist():
        held.append(v)
        words += len(verses[v].forms)
        if words >= _WORDS_A_LESSON:
            lessons.append(_lesson(held, verses, types, believed=believed, rows=rows.tolist()))
            held, words = [], 0
    return lessons


def _lesson(held: list[int], verses: Sequence[Verse], types: Types, *, believed: Floats, rows: list[int]) -> Lesson:
    columns = lay_out([verses[v].forms for v in held], types)
    target = np.concatenate([believed[rows[v] : rows[v + 1]] for v in held])
    return Lesson(columns, target, np.full(len(target), VERSE_WEIGHT, np.float32))


if __name__ == "__main__":
    train(Path(sys.argv[1]), OUT)
