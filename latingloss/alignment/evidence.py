"""A pair of sentences as the aligner sees it, and how strongly each two words are believed to translate each other."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from latingloss.alignment.grammar import FUNCTION_WORDS
from latingloss.alignment.sequence import Array, posteriors, transitions
from latingloss.alignment.translations import alone, jumps, renderings, share
from latingloss.alignment.units import Unit, chosen_units, english_key, units
from latingloss.morphology.ranking import Candidate

ALONE_ENGLISH = 0.1  # how often an English word renders nothing in the Latin
ALONE_LATIN = 0.06
_FREE = 1.0  # how often any word may render nothing, compared with words that often do: renderings are free
_FLOOR = 1e-7


@dataclass
class Pair:
    """A Latin and an English sentence without their punctuation; `links` are decided step by step."""

    units: list[Unit] = field(default_factory=list)
    latin: list[int] = field(default_factory=list)  # unit -> Latin token
    words: list[str] = field(default_factory=list)  # base forms
    printed: list[str] = field(default_factory=list)  # in lower case
    english: list[int] = field(default_factory=list)  # word -> English token
    breaks: list[bool] = field(default_factory=list)  # whether punctuation stands before the word
    belief: Array = field(default_factory=lambda: np.zeros((0, 0)))  # [word, unit] probability of a link
    links: list[set[int]] = field(default_factory=list)  # word -> units

    def is_function(self, word: int) -> bool:
        """Tell whether an English word is one of grammar."""
        return self.words[word] in FUNCTION_WORDS

    def unit_of(self, word: int) -> int | None:
        """Return the unit that a word is linked to, the first if there are two."""
        return min(self.links[word], default=None)


def read_pair(
    latin: Sequence[str], english: Sequence[str], *, readings: Sequence[Sequence[Candidate]] | None = None
) -> Pair:
    """Return the pair with its words analysed and its links not yet believed."""
    pair = Pair()
    for i, form in enumerate(latin):
        if any(c.isalpha() for c in form):
            chosen = readings[i] if readings is not None else ()
            for unit in chosen_units(form, chosen) if chosen else units(form):
                pair.units.append(unit)
                pair.latin.append(i)
    pending = True
    for j, token in enumerate(english):
        if token[:1].isalnum():
            pair.words.append(english_key(token))
            pair.printed.append(token.lower())
            pair.english.append(j)
            pair.breaks.append(pending)
            pending = False
        elif token != "-":
            pending = True
    return pair


def step_kinds(pair: Pair) -> list[int]:
    """Return the class of the step to each English word: after a break or not, from and to a word of grammar or not."""
    grammatical = [pair.is_function(j) for j in range(len(pair.words))]
    return [4 * pair.breaks[j] + 2 * (j > 0 and grammatical[j - 1]) + grammatical[j] for j in range(len(grammatical))]


def _emissions(pair: Pair) -> tuple[Array, Array]:
    tables = [renderings(unit) for unit in pair.units]
    forward = np.empty((len(pair.words), len(pair.units)))
    backward = np.empty_like(forward)
    nothing = (0.0, 0.0)
    for j, word in enumerate(pair.words):
        usual = 0.0 if word in FUNCTION_WORDS else share(word)
        for i, (table, left) in enumerate(tables):
            p, q = table.get(word, nothing)
            forward[j, i] = p + left * usual + _FLOOR
            backward[j, i] = q + left * 1e-3 * (usual > 0) + _FLOOR
    return forward, backward


def believe(pair: Pair) -> None:
    """Set the pair's beliefs: the mean of what the models of both directions say."""
    forward, backward = _emissions(pair)
    learned = jumps()
    words, count = forward.shape
    english = posteriors(
        forward[None] * (1 - ALONE_ENGLISH),
        ALONE_ENGLISH * np.array([[max(alone(word), _FREE * share(word)) for word in pair.words]]),
        transitions(learned.english, count),
        kinds=np.array([step_kinds(pair)]),
    )
    latin = posteriors(
        backward.T[None] * (1 - ALONE_LATIN),
        np.full((1, count), ALONE_LATIN * 1e-3),
        transitions(learned.latin, words),
        kinds=np.zeros((1, count), dtype=np.int64),
    )
    trust = np.array([0.25 if word in FUNCTION_WORDS else 0.5 for word in pair.words])[:, None]
    pair.belief = (1 - trust) * english.links[0] + trust * latin.links[0].T
