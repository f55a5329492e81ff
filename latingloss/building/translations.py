"""Builds `data/alignment`: which English words render which Latin lexemes and endings, learned from the Vulgate.

Two hidden Markov models, English from Latin and Latin from English, are trained side by side by expectation
maximisation on the 35,838 verse pairs of the parallel Vulgate (public domain); what a lexeme is rendered by is
counted where both agree (Liang, Taskar and Klein 2006), rare words are held back by a sparse prior (variational
Bayes), and the glosses of the lexicon count as one link each. Deterministic; about two minutes:

    python -m latingloss.building.translations ../shared latingloss/data/alignment
"""

from __future__ import annotations

import sys
from collections import defaultdict
from dataclasses import dataclass
from pathlib import Path

import numpy as np

from latingloss.alignment.sequence import REACH, Array, Posteriors, posteriors, transitions
from latingloss.alignment.translations import LEXEME_SHARE
from latingloss.building.parallel import Batch, Entries, Index, Vocabulary, batches, entries, sentences

ROUNDS = 8
MIXED_ROUNDS = 2  # the first ones, in which position plays no part (IBM Model 1)
SPARSE = 0.1  # pseudo-count of the prior
LEAST = 0.1  # expected links that are worth shipping


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


def _start(ways: Entries, corpus: list[Batch], vocabulary: Vocabulary) -> Model:
    words = np.bincount(np.concatenate([b.words[b.words >= 0] for b in corpus]), minlength=len(vocabulary.words))
    units = np.bincount(np.concatenate([b.units.ravel() for b in corpus]), minlength=len(vocabulary.units))
    jumps = np.ones((8, 2 * REACH + 1))
    jumps[:, REACH - 1 : REACH + 3] = 1.5, 4, 4, 2
    lexical = ~ways.is_ending[ways.source_of]
    return Model(
        1 / np.bincount(ways.source_of)[ways.source_of],
        lexical / np.maximum(1, np.bincount(ways.word_of, lexical))[ways.word_of],
        np.where(ways.is_ending, 0.3, LEXEME_SHARE),
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


def _by_type(ways: Entries, chance: Array) -> Array:
    """Return for every (unit, word) type the sum over its ways of their odds times a chance."""
    return np.asarray(np.bincount(ways.type, ways.odds * chance, len(ways.unit_of)), dtype=np.float64)


def _expect(model: Model, ways: Entries, corpus: list[Batch], *, mixed: bool) -> tuple[Counts, Array]:
    """Run both models over the corpus; return counts and the emission of every (unit, word) type."""
    types = len(ways.unit_of)
    source = ways.source_of[ways.parameter]
    emission = _by_type(ways, model.weight[source] * model.to_english[ways.parameter]) + 1e-9
    backward = _by_type(ways, model.to_latin[ways.parameter]) + 1e-12
    counts = Counts(
        np.zeros(types),
        np.zeros(types),
        np.zeros(len(model.alone)),
        np.zeros(len(model.alone_latin)),
        np.zeros_like(model.jumps),
        np.zeros_like(model.jumps_latin),
    )
    for b in corpus:
        real = b.words >= 0
        present = real[:, :, None]
        english, latin = _both(model, b, [chance[b.cells] * present for chance in (emission, backward)], mixed=mixed)
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


def _both(model: Model, b: Batch, chances: list[Array], *, mixed: bool) -> tuple[Posteriors, Posteriors]:
    emission, backward = chances
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


def _ending_shares(links: Array, ways: Entries, forward: Array) -> Array:
    """Return for each ending what share of the words linked to its units it emitted itself."""
    unit, source, odds = ways.shares
    linked = np.bincount(ways.unit_of, forward)
    sources = len(ways.is_ending)
    around = np.bincount(source, odds * linked[unit], sources)
    own = np.bincount(ways.source_of, links, sources)
    return np.asarray(np.clip(own / np.maximum(around, 1e-9), 0.01, 0.85))


def _maximise(model: Model, ways: Entries, found: tuple[Counts, Array], *, mixed: bool) -> tuple[Model, Array]:
    """Return the next model and the expected links of every parameter."""
    counts, emission = found
    source = ways.source_of[ways.parameter]
    part = ways.odds * model.weight[source] * model.to_english[ways.parameter] / emission[ways.type]
    by_ending = ways.is_ending[source]
    part *= np.where(by_ending, counts.forward[ways.type], counts.agreed[ways.type])
    links: Array = np.bincount(ways.parameter, part, len(ways.source_of)).astype(float)
    lexical = ~ways.is_ending[ways.source_of]
    believed = links + ways.gloss
    to_english = _sparse(believed, ways.source_of)
    to_latin = _sparse((links + 0.3 * ways.gloss) * lexical + 1e-9, ways.word_of) * lexical
    weight = np.where(ways.is_ending, _ending_shares(links, ways, counts.forward), LEXEME_SHARE)
    smooth = [(c + 0.5) / (c + 0.5).sum() for c in (counts.alone, counts.alone_latin)]
    jumps, jumps_latin = model.jumps, model.jumps_latin
    if not mixed:
        jumps, jumps_latin = ((j + 1) / (j + 1).sum(1, keepdims=True) for j in (counts.jumps, counts.jumps_latin))
    linked = counts.forward.sum()
    apart = float(np.clip(counts.alone.sum() / (counts.alone.sum() + linked), 0.03, 0.12))
    per_unit = np.bincount(ways.unit_of, counts.agreed, len(counts.alone_latin)) + counts.alone_latin
    apart_latin = float(np.clip(counts.alone_latin.sum() / per_unit.sum(), 0.05, 0.3))
    return Model(to_english, to_latin, weight, smooth[0], smooth[1], jumps, jumps_latin, (apart, apart_latin)), links


def learn(shared: Path) -> tuple[Vocabulary, Entries, Model, Array, Array]:
    """Train on the parallel Vulgate; return what was learned, the links of every parameter and every word's uses."""
    vocabulary = Vocabulary()
    corpus = list(batches(sentences(shared, vocabulary), len(vocabulary.words)))
    types, cells = np.unique(np.concatenate([b.cells.ravel() for b in corpus]), return_inverse=True)
    end = 0
    for b in corpus:
        start, end = end, end + b.cells.size
        b.cells = cells[start:end].reshape(b.cells.shape)
    ways = entries(types, vocabulary)
    model = _start(ways, corpus, vocabulary)
    uses = model.alone
    for number in range(ROUNDS):
        mixed = number < MIXED_ROUNDS
        found = _expect(model, ways, corpus, mixed=mixed)
        model, links = _maximise(model, ways, found, mixed=mixed)
        print(f"round {number}: log-likelihood {found[0].likelihood:.0f}", flush=True)
    return vocabulary, ways, model, links, uses


def _write(path: Path, header: str, rows: list[str]) -> None:
    path.write_text("\n".join([header, *rows]) + "\n", encoding="utf-8")


def build(shared: Path, target: Path) -> None:
    """Write the tables of `data/alignment`."""
    vocabulary, ways, model, links, uses = learn(shared)
    words, sources = list(vocabulary.words), list(vocabulary.sources)
    kept = np.flatnonzero(links > LEAST)
    by_source: dict[int, list[tuple[float, str]]] = defaultdict(list)
    of_word: dict[int, float] = defaultdict(float)
    for k in kept.tolist():
        source, word = int(ways.source_of[k]), int(ways.word_of[k])
        by_source[source].append((-float(links[k]), words[word]))
        if not ways.is_ending[source]:
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
