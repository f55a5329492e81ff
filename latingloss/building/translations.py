"""Builds `data/alignment`: which English words render which Latin lexemes and endings, learned from the Vulgate.

Two hidden Markov models, English from Latin and Latin from English, are trained side by side by expectation
maximisation on the 35,838 verse pairs of the parallel Vulgate (public domain); what a lexeme is rendered by is
counted where both agree (Liang, Taskar and Klein 2006), rare words are held back by a sparse prior (variational
Bayes), and the glosses of the lexicon count as one link each. Deterministic; about two minutes:

    python -m latingloss.building.translations ../shared latingloss/data/alignment
"""

from __future__ import annotations

import re
import sys
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from latingloss.alignment.evidence import Pair, read_pair, step_kinds
from latingloss.alignment.grammar import FUNCTION_WORDS, ending_admits, lexeme_admits
from latingloss.alignment.sequence import REACH, Array, Posteriors, posteriors, transitions
from latingloss.alignment.translations import LEXEME_SHARE
from latingloss.alignment.units import Unit
from latingloss.building.sources import verses

Index = NDArray[np.int64]
ROUNDS = 8
MIXED_ROUNDS = 2  # the first ones, in which position plays no part (IBM Model 1)
SPARSE = 0.1  # pseudo-count of the prior
LEAST = 0.1  # expected links that are worth shipping
_TOKEN = re.compile(r"[^\W\d_]+(?:'[^\W\d_]+)?|\d+|[^\w\s]")
_LONGEST = 60, 90  # units, words


@dataclass
class Vocabulary:
    """Numbers for Latin units, English words and what emits words: lexemes, and endings with a tilde before."""

    units: dict[Unit, int] = field(default_factory=dict)
    words: dict[str, int] = field(default_factory=dict)
    sources: dict[str, int] = field(default_factory=dict)

    def number(self, pair: Pair) -> tuple[list[int], list[int], list[int]]:
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


def _sentences(shared: Path, vocabulary: Vocabulary) -> dict[int, list[tuple[list[int], list[int], list[int]]]]:
    by_length: dict[int, list[tuple[list[int], list[int], list[int]]]] = defaultdict(list)
    for latin, english in verses(shared):
        tokens = _TOKEN.findall(english.replace("’", "'").replace("‘", "'"))
        pair = read_pair(_TOKEN.findall(latin), tokens)
        if 0 < len(pair.units) <= _LONGEST[0] and 0 < len(pair.words) <= _LONGEST[1]:
            by_length[len(pair.units)].append(vocabulary.number(pair))
    return by_length


def _batches(sentences: dict[int, list[tuple[list[int], list[int], list[int]]]], width: int) -> Iterator[Batch]:
    for length, group in sorted(sentences.items()):
        group.sort(key=lambda s: len(s[1]))
        size = max(16, 4000 // length)
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


def _entries(types: Index, vocabulary: Vocabulary) -> Entries:
    rows, glosses = _unit_sources(vocabulary)
    width = len(vocabulary.words)
    counts = np.array([len(row) for row in rows])
    starts = np.concatenate([[0], np.cumsum(counts)])
    sources = np.array([s for row in rows for s in row])
    odds = np.array([p for row in rows for p in row.values()])
    repeat = counts[types // width]
    of_type = np.repeat(np.arange(len(types)), repeat)
    flat = np.repeat(starts[types // width], repeat) + np.arange(len(of_type)) - np.repeat(
        np.cumsum(repeat) - repeat, repeat
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


@dataclass
class Model:
    """What one round of expectation maximisation needs of the last."""

    to_english: Array  # P(word | source), by parameter
    to_latin: Array  # P(lexeme | word), by parameter; 0 for endings
    weight: Array  # by source: what share of a unit's words it emits
    alone: Array  # by word: probability among the words that render nothing
    alone_latin: Array  # by unit
    jumps: Array
    jumps_latin: Array
    apart: tuple[float, float] = (0.06, 0.15)  # share of words, and of units, that render nothing


def _digamma(x: Array) -> Array:
    result = np.zeros_like(x)
    for shift in range(6):
        result -= 1 / (x + shift)
    x = x + 6
    return np.asarray(result + np.log(x) - 1 / (2 * x) - 1 / (12 * x**2) + 1 / (120 * x**4))


def _start(entries: Entries, batches: list[Batch], vocabulary: Vocabulary) -> Model:
    words = np.bincount(np.concatenate([b.words[b.words >= 0] for b in batches]), minlength=len(vocabulary.words))
    units = np.bincount(np.concatenate([b.units.ravel() for b in batches]), minlength=len(vocabulary.units))
    jumps = np.ones((8, 2 * REACH + 1))
    jumps[:, REACH - 1 : REACH + 3] = 1.5, 4, 4, 2
    lexical = ~entries.is_ending[entries.source_of]
    return Model(
        1 / np.bincount(entries.source_of)[entries.source_of],
        lexical / np.maximum(1, np.bincount(entries.word_of, lexical))[entries.word_of],
        np.where(entries.is_ending, 0.3, LEXEME_SHARE),
        words / words.sum(),
        units / units.sum(),
        jumps,
        jumps[:1].copy(),
    )


@dataclass
class Counts:
    """Expected counts of one round."""

    forward: Array  # by (unit, word) type: links in the model of English from Latin
    agreed: Array  # the same, as far as the other model agrees
    alone: Array
    alone_latin: Array
    jumps: Array
    jumps_latin: Array
    likelihood: float = 0.0


def _expect(model: Model, entries: Entries, batches: list[Batch], *, mixed: bool) -> tuple[Counts, Array]:
    """Run both models over the corpus; return counts and the emission of every (unit, word) type."""
    types = int(max(b.cells.max() for b in batches)) + 1
    source = entries.source_of[entries.parameter]
    emission = np.bincount(
        entries.type, entries.odds * (model.weight[source] * model.to_english[entries.parameter]), types
    )
    backward = np.bincount(entries.type, entries.odds * model.to_latin[entries.parameter], types) + 1e-12
    emission += 1e-9
    sizes = len(model.alone), len(model.alone_latin)
    counts = Counts(
        np.zeros(types), np.zeros(types), *map(np.zeros, sizes), np.zeros_like(model.jumps), np.zeros_like(model.jumps_latin)
    )
    for b in batches:
        real = b.words >= 0
        english, latin = _both(model, b, emission[b.cells] * real[:, :, None], backward[b.cells] * real[:, :, None], mixed)
        cells, forward, agreeing = b.cells.ravel(), english.links, latin.links.transpose(0, 2, 1)
        agreed = (forward + agreeing) / 2 if mixed else forward * np.sqrt(agreeing)
        counts.forward += np.bincount(cells, forward.ravel(), types)
        counts.agreed += np.bincount(cells, agreed.ravel(), types)
        np.add.at(counts.alone, np.maximum(b.words, 0).ravel(), ((1 - forward.sum(2)) * real).ravel())
        np.add.at(counts.alone_latin, b.units.ravel(), (1 - agreeing.sum(1)).ravel())
        counts.jumps += english.jumps
        counts.jumps_latin += latin.jumps
        counts.likelihood += english.likelihood
    return counts, emission


def _both(model: Model, b: Batch, emission: Array, backward: Array, mixed: bool) -> tuple[Posteriors, Posteriors]:
    words, units = emission.shape[1:]
    apart, apart_latin = model.apart
    flat = [np.full((len(j), n, n), 1 / n) for j, n in ((model.jumps, units), (model.jumps_latin, words))]
    moves, moves_latin = flat if mixed else (transitions(model.jumps, units), transitions(model.jumps_latin, words))
    nowhere = np.where(b.words >= 0, apart * model.alone[np.maximum(b.words, 0)], 1.0)
    english = posteriors(emission * (1 - apart), nowhere, moves, kinds=b.kinds, count=not mixed)
    latin = posteriors(
        backward.transpose(0, 2, 1) * (1 - apart_latin),
        apart_latin * model.alone_latin[b.units],
        moves_latin,
        kinds=np.zeros(b.units.shape, dtype=np.int64),
        count=not mixed,
    )
    return english, latin


def _sparse(counts: Array, group: Index) -> Array:
    """Return counts as shares of their group, small ones held back (Johnson 2007)."""
    size, total = np.bincount(group), np.bincount(group, counts)
    return np.asarray(np.exp(_digamma(counts + SPARSE) - _digamma(total + SPARSE * size + 1e-9)[group]))


def _ending_shares(links: Array, entries: Entries, forward: Array) -> Array:
    """Return for each ending what share of the words linked to its units it emitted itself."""
    unit, source, odds = entries.shares
    linked = np.bincount(entries.unit_of, forward)
    sources = len(entries.is_ending)
    around = np.bincount(source, odds * linked[unit], sources)
    own = np.bincount(entries.source_of, links, sources)
    return np.asarray(np.clip(own / np.maximum(around, 1e-9), 0.01, 0.85))


def _maximise(model: Model, entries: Entries, found: tuple[Counts, Array], *, mixed: bool) -> tuple[Model, Array]:
    """Return the next model and the expected links of every parameter."""
    counts, emission = found
    source = entries.source_of[entries.parameter]
    part = entries.odds * model.weight[source] * model.to_english[entries.parameter] / emission[entries.type]
    by_ending = entries.is_ending[source]
    part *= np.where(by_ending, counts.forward[entries.type], counts.agreed[entries.type])
    links = np.bincount(entries.parameter, part, len(entries.source_of))
    lexical = ~entries.is_ending[entries.source_of]
    believed = links + entries.gloss
    to_english = _sparse(believed, entries.source_of)
    to_latin = _sparse((links + 0.3 * entries.gloss) * lexical + 1e-9, entries.word_of) * lexical
    weight = np.where(entries.is_ending, _ending_shares(links, entries, counts.forward), LEXEME_SHARE)
    smooth = [(c + 0.5) / (c + 0.5).sum() for c in (counts.alone, counts.alone_latin)]
    jumps, jumps_latin = model.jumps, model.jumps_latin
    if not mixed:
        jumps, jumps_latin = ((j + 1) / (j + 1).sum(1, keepdims=True) for j in (counts.jumps, counts.jumps_latin))
    linked = counts.forward.sum()
    apart = float(np.clip(counts.alone.sum() / (counts.alone.sum() + linked), 0.03, 0.12))
    per_unit = np.bincount(entries.unit_of, counts.agreed, len(counts.alone_latin)) + counts.alone_latin
    apart_latin = float(np.clip(counts.alone_latin.sum() / per_unit.sum(), 0.05, 0.3))
    return Model(to_english, to_latin, weight, smooth[0], smooth[1], jumps, jumps_latin, (apart, apart_latin)), links


def learn(shared: Path) -> tuple[Vocabulary, Entries, Model, Array, Array]:
    """Train on the parallel Vulgate; return what was learned, the links of every parameter and every word's uses."""
    vocabulary = Vocabulary()
    sentences = _sentences(shared, vocabulary)
    batches = list(_batches(sentences, len(vocabulary.words)))
    types, cells = np.unique(np.concatenate([b.cells.ravel() for b in batches]), return_inverse=True)
    end = 0
    for b in batches:
        start, end = end, end + b.cells.size
        b.cells = cells[start:end].reshape(b.cells.shape)
    entries = _entries(types, vocabulary)
    model = _start(entries, batches, vocabulary)
    uses = model.alone
    for number in range(ROUNDS):
        mixed = number < MIXED_ROUNDS
        found = _expect(model, entries, batches, mixed=mixed)
        model, links = _maximise(model, entries, found, mixed=mixed)
        print(f"round {number}: log-likelihood {found[0].likelihood:.0f}", flush=True)
    return vocabulary, entries, model, links, uses


def _write(path: Path, header: str, rows: list[str]) -> None:
    path.write_text("\n".join([header, *rows]) + "\n", encoding="utf-8")


def build(shared: Path, target: Path) -> None:
    """Write the tables of `data/alignment`."""
    vocabulary, entries, model, links, uses = learn(shared)
    words, sources = list(vocabulary.words), list(vocabulary.sources)
    kept = np.flatnonzero(links > LEAST)
    by_source: dict[int, list[tuple[float, str]]] = defaultdict(list)
    of_word: dict[int, float] = defaultdict(float)
    for k in kept.tolist():
        source, word = int(entries.source_of[k]), int(entries.word_of[k])
        by_source[source].append((-float(links[k]), words[word]))
        if not entries.is_ending[source]:
            of_word[word] += float(links[k])
    rows = [
        f"{sources[s]}\t{model.weight[s]:.3f}\t" + " ".join(f"{word} {-count:.4g}" for count, word in sorted(found))
        for s, found in by_source.items()
    ]
    target.mkdir(exist_ok=True)
    _write(target / "translations.tsv", "source\tweight\tlinks", sorted(rows))
    rows = [f"{w}\t{of_word[k]:.4g}\t{model.alone[k]:.3g}\t{uses[k]:.3g}" for k, w in enumerate(words)]
    _write(target / "words.tsv", "word\tlinks\talone\tshare", sorted(rows))
    sides = (("english", model.jumps), ("latin", model.jumps_latin))
    rows = [f"{side}\t{k}\t" + " ".join(f"{p:.4f}" for p in row) for side, t in sides for k, row in enumerate(t)]
    _write(target / "jumps.tsv", "side\tkind\tprobabilities", rows)


if __name__ == "__main__":
    build(Path(sys.argv[1]), Path(sys.argv[2]))
