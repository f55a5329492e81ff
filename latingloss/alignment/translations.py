"""How likely an English word renders a Latin lexeme or its ending: the shipped counts and the odds made of them.

The counts are expected numbers of links between lexemes (or endings, by their cells) and English base forms in the
35,838 verse pairs of the parallel Vulgate; `latingloss.building.translations` makes them.
"""

from __future__ import annotations

from collections import defaultdict
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from latingloss.alignment.grammar import is_open, lexeme_admits
from latingloss.alignment.sequence import Array
from latingloss.alignment.units import Unit
from latingloss.tables import built_once, read_table

_DOUBT = 0.5  # links added to every count of a lexeme or word that go to none of its translations
_GLOSS = 0.5  # links that a gloss of the lexicon is worth
LEXEME_SHARE = 0.6  # of an inflected word's English, what its lexeme says rather than its ending


class Jumps(NamedTuple):
    """How far apart the words are that neighbouring words come from; [class, jump]."""

    english: Array
    latin: Array


@built_once
def _packed() -> dict[str, tuple[float, str]]:
    rows = read_table("alignment/translations.tsv")
    return {source: (float(weight), links) for source, weight, links in rows}


@lru_cache(maxsize=50_000)
def translations_of(source: str) -> tuple[float, float, dict[str, float]]:
    """Return the weight of a lexeme or cell, its number of links, and the English words linked to it, with counts."""
    weight, packed = _packed().get(source, (0.3, ""))
    cells = packed.split(" ") if packed else []
    links = {word: float(count) for word, count in zip(cells[::2], cells[1::2], strict=True)}
    return weight, sum(links.values()), links


class _Word(NamedTuple):
    links: float  # expected links to lexemes
    alone: float  # probability among the words that render no Latin word
    share: float  # of all words


_RARE = _Word(0.0, 1e-6, 1e-6)


@built_once
def _words() -> dict[str, _Word]:
    return {word: _Word(*map(float, row)) for word, *row in read_table("alignment/words.tsv")}


def links_of(word: str) -> float:
    """Return how many links to lexemes an English word has."""
    return _words().get(word, _RARE).links


def alone(word: str) -> float:
    """Return the probability of an English word among those that render no Latin word."""
    return _words().get(word, _RARE).alone


def share(word: str) -> float:
    """Return the probability of an English word among all."""
    return _words().get(word, _RARE).share


@built_once
def jumps() -> Jumps:
    """Return the learned jump distributions of both directions."""
    rows = read_table("alignment/jumps.tsv")
    values = {
        side: np.array([[float(x) for x in r[2].split(" ")] for r in rows if r[0] == side])
        for side in ("english", "latin")
    }
    return Jumps(values["english"], values["latin"])


@lru_cache(maxsize=20_000)
def renderings(unit: Unit) -> tuple[dict[str, tuple[float, float]], float]:
    """Return for each English word P(word | unit) and P(unit | word), and the share left for words never met.

    The second probability is up to the unit's own frequency. Words never met as a rendering are not in the table.
    """
    to_english: dict[str, float] = defaultdict(float)
    to_latin: dict[str, float] = defaultdict(float)
    left = 0.0
    for reading in unit.readings:
        weight, total, links = translations_of("~" + reading.cell)
        for word, count in links.items():
            to_english[word] += reading.odds * weight * count / (total + _DOUBT)
        _, total, links = translations_of(reading.lexeme)
        known = total + _DOUBT + (_GLOSS if unit.glosses else 0.0)
        for word in {*links, *unit.glosses}:
            if not lexeme_admits(reading.lexeme, word):
                continue
            count, glossed = links.get(word, 0.0), _GLOSS if word in unit.glosses else 0.0
            to_english[word] += reading.odds * LEXEME_SHARE * (count + glossed) / known
            to_latin[word] += reading.odds * (count + glossed / 2) / (links_of(word) + 2 * _DOUBT)
        if is_open(reading.lexeme):
            left += reading.odds * LEXEME_SHARE * _DOUBT / known
    return {word: (p, to_latin.get(word, 0.0)) for word, p in to_english.items()}, left
