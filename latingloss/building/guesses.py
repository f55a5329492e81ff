"""Fit what the signs of a guess are worth: `python -m latingloss.building.guesses ../shared`.

Rare words stand for those that the lexicon does not have: each is guessed as if it were unknown, and the guesses with
its lemma, case, number and person are right; if there are none, those with its case, number and person; if there are
none of these either, that none is (the reading as X). The words are those of
rare lemmas of the learn treebanks, and forms of the Vulgate that can only be of one lexeme, a rare one, shared out
over its readings. A log-linear model is fitted by AdaGrad (Duchi, Hazan and Singer 2011). Writes
`data/statistics/guesses.tsv`.
"""

from __future__ import annotations

import sys
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import NamedTuple

import numpy as np

from latingloss.building.matching import lemma_key
from latingloss.building.sources import GoldWord, learn_sentences
from latingloss.building.statistics import vulgate_forms
from latingloss.morphology.analysis import analyses
from latingloss.morphology.endings import Features
from latingloss.morphology.guessing import Guess, Signs, possible
from latingloss.morphology.lexicon import find
from latingloss.morphology.ranking import Candidate, candidates

OUT = Path(__file__).parents[1] / "data" / "statistics" / "guesses.tsv"
RARE = 2  # occurrences
_UNSEEN = ("PUNCT", "SYM", "NUM")
_VULGATE = 0.2  # how much a form of the Vulgate counts beside one with a gold reading; a judgement
_STEPS, _RATE, _DECAY = 200, 0.5, 1.0
_START = {"cell": 1.0, "derived cell": 1.0}  # as if endings were as common among new words as among all

Cell = tuple[str | None, ...]  # case, number, person


class Hidden(NamedTuple):
    """A form to be guessed with the reading that it has, and how much it counts."""

    form: str
    lemma: str  # as `lemma_key` gives it
    upos: str
    cell: Cell
    weight: float = 1.0


def cell(features: Features) -> Cell:
    """Return what a guess must get right beside the lemma."""
    return tuple(features.get(name) for name in ("Case", "Number", "Person"))


def of_gold(word: GoldWord) -> Hidden:
    """Return a treebank's word to be guessed; only verbs are asked for a person."""
    verbal = word.upos in ("VERB", "AUX")
    asked = {k: v for k, v in word.features.items() if verbal or k != "Person"}
    return Hidden(word.form, lemma_key(word.lemma), "VERB" if verbal else word.upos, cell(asked))


def treebank_words(shared: Path) -> Iterator[Hidden]:
    """Yield the words of rare lemmas in the learn treebanks, each form once."""
    words = [w for s in learn_sentences(shared) for w in s if w.upos not in _UNSEEN and w.form.isalpha()]
    counts = Counter(lemma_key(w.lemma) for w in words)
    first = {w.form: w for w in reversed(words) if counts[lemma_key(w.lemma)] <= RARE}
    yield from map(of_gold, first.values())


def vulgate_words(shared: Path) -> Iterator[Hidden]:
    """Yield the readings of forms of the Vulgate that can only be of one rare lexeme, names left out."""
    forms: Counter[str] = Counter()
    for met, n in vulgate_forms(shared).items():
        forms[met.form] += 0 if met.capital else n
    counts: Counter[str] = Counter()
    alone: dict[str, tuple[Candidate, ...]] = {}
    for form, n in forms.items():
        found = candidates(form) if n and len({a.lexeme for a in analyses(form)}) == 1 else ()
        if found and found[0].upos != "PROPN":
            alone[form] = found
            counts[found[0].lexeme.lemma] += n
    for form, found in alone.items():
        if counts[found[0].lexeme.lemma] <= RARE:
            for c in found:
                yield Hidden(form, lemma_key(c.lexeme.lemma), c.upos, cell(c.features), _VULGATE * c.prior)


def is_right(guess: Guess, word: Hidden) -> bool:
    """Tell whether a guess has the word's lemma, case, number and person; the reading as X never has."""
    return has_cell(guess, word) and lemma_key(guess.lexeme.lemma) == word.lemma


def has_cell(guess: Guess, word: Hidden) -> bool:
    """Tell whether a guess has the word's case, number and person; the reading as X never has."""
    return guess.upos != "X" and cell(guess.features) == word.cell


def blind(word: Hidden) -> list[Guess]:
    """Return the guesses for a word as they would be if the lexicon did not have its lemma."""
    found = possible(word.form)
    return [g for g in found if lemma_key(g.lexeme.lemma) != word.lemma or g.lexeme not in find(g.lexeme.lemma)]


def _right(found: Sequence[Guess], word: Hidden) -> list[bool]:
    """Return which guesses are to be taught; of those that are right, those of the part of speech if there are any."""
    for fits in (is_right, has_cell):
        right = [fits(guess, word) for guess in found]
        alike = [r and g.upos == word.upos for r, g in zip(right, found, strict=True)]
        if any(right):
            return alike if any(alike) else right
    return [guess.upos == "X" for guess in found]


def fit(words: Sequence[Hidden]) -> Signs:
    """Return what each sign is worth: the logarithm of the odds that it adds."""
    found = [blind(word) for word in words]
    names = sorted({sign for group in found for guess in group for sign in guess.signs})
    number = {name: i for i, name in enumerate(names)}
    much = np.zeros((sum(map(len, found)), len(names)))
    for row, guess in enumerate(guess for group in found for guess in group):
        for sign, value in guess.signs.items():
            much[row, number[sign]] = value
    word = np.repeat(np.arange(len(words)), [len(group) for group in found])
    right = np.array([r for group, w in zip(found, words, strict=True) for r in _right(group, w)])
    weight = np.array([w.weight for w in words])[word]
    start = np.array([_START.get(name, 0.0) for name in names])
    worth, squares = start.copy(), np.full(len(names), 1e-9)
    for _ in range(_STEPS):
        odds = np.exp(much @ worth)
        belief = odds / np.bincount(word, odds)[word]
        target = belief * right / np.bincount(word, belief * right)[word]
        gradient = (weight * (target - belief)) @ much - _DECAY * (worth - start)
        squares += gradient**2
        worth += _RATE * gradient / np.sqrt(squares)
    return dict(zip(names, worth.tolist(), strict=True))


def main(shared: Path) -> None:
    """Write the table."""
    words = [*treebank_words(shared), *vulgate_words(shared)]
    small, capital = (fit([w for w in words if w.form[0].isupper() == upper]) for upper in (False, True))
    worths: dict[str, list[float]] = defaultdict(list)
    for sign in sorted(small | capital):
        worths[sign] = [side.get(sign, _START.get(sign, 0.0)) for side in (small, capital)]
    lines = [f"{sign}\t{a:.2f}\t{b:.2f}" for sign, (a, b) in worths.items()]
    OUT.write_text("sign\tsmall\tcapital\n" + "\n".join(lines) + "\n", encoding="utf-8")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
