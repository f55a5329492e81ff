"""The parallel Vulgate as numbers, for training: units, words, and what may emit which word."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from latingloss.alignment.evidence import Pair, read_pair, step_kinds
from latingloss.alignment.grammar import FUNCTION_WORDS, ending_admits, lexeme_admits
from latingloss.alignment.sequence import Array
from latingloss.alignment.units import Unit
from latingloss.building.sources import verses

Index = NDArray[np.int64]
Numbered = tuple[list[int], list[int], list[int]]  # a sentence: units, words, kinds of step
_TOKEN = re.compile(r"[^\W\d_]+(?:'[^\W\d_]+)?|\d+|[^\w\s]")
_LONGEST = 60, 90  # units, words
_BATCH = 4000  # units


@dataclass
class Vocabulary:
    """Numbers for Latin units, English words and what emits words: lexemes, and endings with a tilde before."""

    units: dict[Unit, int] = field(default_factory=dict)
    words: dict[str, int] = field(default_factory=dict)
    sources: dict[str, int] = field(default_factory=dict)

    def number(self, pair: Pair) -> Numbered:
        """Return a pair as numbers: units, words, kinds of step."""
        units = [self.units.setdefault(unit, len(self.units)) for unit in pair.units]
        words = [self.words.setdefault(word, len(self.words)) for word in pair.words]
        return units, words, step_kinds(pair)


@dataclass
class Batch:
    """Sentences with equally many units: words [sentence, word] or -1, units [sentence, unit], cells of both."""

    words: Index
    kinds: Index
    units: Index
    cells: Index  # [sentence, word, unit] number of the (unit, word) type


@dataclass
class Entries:
    """How each (unit, word) type can come about: by which source, at what odds."""

    type: Index
    parameter: Index
    odds: Array
    source_of: Index  # parameter -> source
    word_of: Index  # parameter -> word
    gloss: Array  # parameter -> 1 if the word is a gloss of the lexeme
    is_ending: NDArray[np.bool_]  # source -> whether an ending
    unit_of: Index  # type -> unit
    shares: tuple[Index, Index, Array]  # unit, source, odds: every source of every unit


def sentences(shared: Path, vocabulary: Vocabulary) -> dict[int, list[Numbered]]:
    """Return the numbered sentences by how many Latin units they have."""
    by_length: dict[int, list[Numbered]] = defaultdict(list)
    for latin, english in verses(shared):
        tokens = _TOKEN.findall(english.replace("’", "'").replace("‘", "'"))
        pair = read_pair(_TOKEN.findall(latin), tokens)
        if 0 < len(pair.units) <= _LONGEST[0] and 0 < len(pair.words) <= _LONGEST[1]:
            by_length[len(pair.units)].append(vocabulary.number(pair))
    return by_length


def batches(sentences: dict[int, list[Numbered]], width: int) -> Iterator[Batch]:
    """Yield sentences with equally many units together; `width` is the number of English words known."""
    for length, group in sorted(sentences.items()):
        group.sort(key=lambda s: len(s[1]))
        size = max(16, _BATCH // length)
        for start in range(0, len(group), size):
            part = group[start : start + size]
            longest = len(part[-1][1])
            words = np.full((len(part), longest), -1)
            kinds = np.zeros((len(part), longest), dtype=np.int64)
            for row, (_, numbers, steps) in enumerate(part):
                words[row, : len(numbers)], kinds[row, : len(steps)] = numbers, steps
            units = np.array([s[0] for s in part])
            yield Batch(words, kinds, units, units[:, None, :] * width + np.maximum(words, 0)[:, :, None])


def _unit_sources(vocabulary: Vocabulary) -> tuple[list[dict[int, float]], set[tuple[int, int]]]:
    glosses: set[tuple[int, int]] = set()
    rows = []
    for unit in vocabulary.units:
        odds: dict[int, float] = defaultdict(float)
        for reading in unit.readings:
            for name in (reading.lexeme, "~" + reading.cell):
                odds[vocabulary.sources.setdefault(name, len(vocabulary.sources))] += reading.odds
            lexeme = vocabulary.sources[reading.lexeme]
            glosses.update((lexeme, vocabulary.words[g]) for g in unit.glosses if g in vocabulary.words)
        rows.append(dict(odds))
    return rows, glosses


def _admitted(vocabulary: Vocabulary) -> NDArray[np.bool_]:
    """Return [source, word]: whether grammar lets the source be rendered by the word."""
    names = list(vocabulary.sources)
    endings = np.array([name.startswith("~") for name in names])
    admitted = np.repeat(~endings[:, None], len(vocabulary.words), axis=1)
    for word in sorted(FUNCTION_WORDS & vocabulary.words.keys()):
        column = vocabulary.words[word]
        admitted[:, column] = [
            ending_admits(name[1:], word) if name.startswith("~") else lexeme_admits(name, word) for name in names
        ]
    return admitted


def entries(types: Index, vocabulary: Vocabulary) -> Entries:
    """Return how each (unit, word) type, given as unit times width plus word, can come about."""
    rows, glosses = _unit_sources(vocabulary)
    width = len(vocabulary.words)
    counts = np.array([len(row) for row in rows])
    starts = np.concatenate([[0], np.cumsum(counts)])
    sources = np.array([s for row in rows for s in row])
    odds = np.array([p for row in rows for p in row.values()])
    repeat = counts[types // width]
    of_type = np.repeat(np.arange(len(types)), repeat)
    flat = (
        np.repeat(starts[types // width], repeat)
        + np.arange(len(of_type))
        - np.repeat(np.cumsum(repeat) - repeat, repeat)
    )
    word = types[of_type] % width
    kept = _admitted(vocabulary)[sources[flat], word]
    of_type, flat, word = of_type[kept], flat[kept], word[kept]
    parameters, parameter = np.unique(sources[flat] * width + word, return_inverse=True)
    glossed = np.isin(parameters, [s * width + w for s, w in glosses]).astype(float)
    is_ending = np.array([name.startswith("~") for name in vocabulary.sources])
    shares = np.repeat(np.arange(len(rows)), counts), sources, odds
    emitter, emitted = parameters // width, parameters % width
    return Entries(of_type, parameter, odds[flat], emitter, emitted, glossed, is_ending, types // width, shares)
