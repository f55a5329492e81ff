"""How far guesses at words outside the lexicon can be trusted: rare words of the learn treebanks, hidden from it.

What the signs are worth is fitted anew without a third of the lemmas, which are then guessed.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from math import exp
from zlib import crc32

from benchmarks.calibration import calibration_error
from benchmarks.figures import Figure
from benchmarks.sources import Sources
from latingloss.building.guesses import Hidden, blind, cell, fit, treebank_words, vulgate_words
from latingloss.building.matching import lemma_key
from latingloss.morphology.guessing import Signs

_FOLDS = 3


def figures(sources: Sources) -> Iterator[Figure]:
    """Yield how often the likeliest guess is right, and the calibration of its probability."""
    words = list(treebank_words(sources.shared))
    lessons = words + list(vulgate_words(sources.shared))
    said: list[float] = []
    right: list[tuple[bool, bool]] = []
    for fold in range(_FOLDS):
        seen = [w for w in lessons if _fold(w) != fold]
        worth = [fit([w for w in seen if w.form[0].isupper() == upper]) for upper in (False, True)]
        for word in (w for w in words if _fold(w) == fold):
            probability, hits = _guessed(word, worth[word.form[0].isupper()])
            said.append(probability)
            right.append(hits)
    both = [lemma and ending for lemma, ending in right]
    name, note = "guesses: hidden rare words", f"{len(words):,} words, {_FOLDS} parts by lemma, each guessed without it"
    yield Figure(f"{name}, lemma", round(100 * sum(lemma for lemma, _ in right) / len(right), 1), "%", note=note)
    yield Figure(f"{name}, CNP", round(100 * sum(ending for _, ending in right) / len(right), 1), "%", note=note)
    note = "of the likeliest lemma with case, number and person, 10 bins"
    yield Figure(f"{name}, calibration error", round(calibration_error(said, both), 3), "0..1", "<= 0.06", note)


def _fold(word: Hidden) -> int:
    return crc32(word.lemma.encode()) % _FOLDS


def _guessed(word: Hidden, worth: Signs) -> tuple[float, tuple[bool, bool]]:
    """Return the probability of the likeliest lemma and ending, and whether each is right."""
    odds: Counter[tuple[str, tuple[str | None, ...]]] = Counter()
    none = 0.0
    for guess in blind(word):
        value = exp(sum(worth.get(sign, 0.0) * much for sign, much in guess.signs.items()))
        if guess.upos == "X":
            none += value
        else:
            odds[lemma_key(guess.lexeme.lemma), cell(guess.features)] += value
    (lemma, ending), value = odds.most_common(1)[0]
    return value / (sum(odds.values()) + none), (lemma == word.lemma, ending == word.cell)
