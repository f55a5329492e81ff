"""The chooser's weights and how they score: log-linear, in rounds, each seeing what the round before believed.

Round by round every reading gets a score from its prior, its tag, and what the readings around it are likely to
be; a softmax over each word's readings gives the next belief. That is mean-field inference in a conditional
random field whose weights are learned for each round.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import as_file, files
from pathlib import Path
from typing import NamedTuple

import numpy as np

from latingloss.context.columns import Columns, Floats, Ints, Vocabulary
from latingloss.context.evidence import LEVELS, SIGN_SLOTS, SLOTS, Kinds, Pairs, Slot, pairs_at
from latingloss.context.tags import CLASSES, COARSE, EDGE

LEAST = 0.02  # weights nearer to 0 are not kept
AGREEMENTS = len(CLASSES) ** 2 * LEVELS


class Round(NamedTuple):
    """Weights of one round; shapes in brackets."""

    prior: Floats  # [1]
    tag: Floats  # [tags]
    memory: Floats  # [remembered readings]
    near: Floats  # [len(SIGN_SLOTS), tags, signs]
    coarse: Floats  # [len(SIGN_SLOTS), COARSE, COARSE]
    agree: Floats  # [len(SLOTS), AGREEMENTS]

    @classmethod
    def zeros(cls, tags: int, signs: int, memory: int) -> Round:
        """Return a round that trusts the prior alone."""
        return cls(
            np.ones(1, np.float32),
            np.zeros(tags, np.float32),
            np.zeros(memory, np.float32),
            np.zeros((len(SIGN_SLOTS), tags, signs), np.float32),
            np.zeros((len(SIGN_SLOTS), len(COARSE), len(COARSE)), np.float32),
            np.zeros((len(SLOTS), AGREEMENTS), np.float32),
        )


class Evidence(NamedTuple):
    """Pairs in every slot, found once for a batch and used in every round."""

    pairs: dict[Slot, Pairs]
    edges: dict[Slot, Ints]

    @classmethod
    def of(cls, columns: Columns) -> Evidence:
        """Find the pairs of a batch."""
        kinds = Kinds.of_batch(columns)
        found = {slot: pairs_at(columns, slot, kinds) for slot in SLOTS}
        return cls({d: p for d, (p, _) in found.items()}, {d: e for d, (_, e) in found.items()})


def softmax(columns: Columns, score: Floats) -> Floats:
    """Return probabilities of the readings of each word from their scores."""
    if not len(score):
        return score
    top = np.maximum.reduceat(score, columns.start)
    return shares(columns, np.exp(score - top[columns.word]))


def shares(columns: Columns, amount: Floats) -> Floats:
    """Return amounts of the readings of each word as shares that sum to 1."""
    return (amount / np.add.reduceat(amount, columns.start)[columns.word]).astype(np.float32)


def scores(columns: Columns, evidence: Evidence, weights: Round, *, belief: Floats) -> Floats:
    """Return the score of every reading, given what is believed of the others."""
    total: Floats = weights.prior[0] * columns.prior + weights.tag[columns.tag] + weights.memory[columns.remembered]
    for k, slot in enumerate(SLOTS):
        pairs = evidence.pairs[slot]
        value = weights.agree[k][pairs.agreement]
        if slot in SIGN_SLOTS:
            near, coarse = weights.near[SIGN_SLOTS.index(slot)], weights.coarse[SIGN_SLOTS.index(slot)]
            value = value + near[columns.tag[pairs.row], columns.sign[pairs.other]]
            value += coarse[columns.coarse[pairs.row], columns.coarse[pairs.other]]
            edge = evidence.edges[slot]
            total[edge] += near[columns.tag[edge], 1] + coarse[columns.coarse[edge], EDGE]
        total += np.bincount(pairs.row, value * belief[pairs.other], minlength=len(total)).astype(np.float32)
    return total


class Model(NamedTuple):
    """Weights of all rounds with the vocabularies that number their rows and columns."""

    tags: Vocabulary
    signs: Vocabulary
    memory: Vocabulary
    rounds: tuple[Round, ...]

    def believe(self, columns: Columns) -> Floats:
        """Return the probability of every reading of a batch."""
        evidence = Evidence.of(columns)
        belief = softmax(columns, columns.prior)
        for weights in self.rounds:
            belief = softmax(columns, scores(columns, evidence, weights, belief=belief))
        return belief

    def save(self, path: Path) -> None:
        """Write the model as a compressed numpy archive; weights are kept sparse, in half precision."""
        arrays: dict[str, np.ndarray] = {
            name: np.frombuffer("\n".join(v.names).encode(), np.uint8)
            for name, v in (("tags", self.tags), ("signs", self.signs), ("memory", self.memory))
        }
        for i, weights in enumerate(self.rounds):
            for name, values in weights._asdict().items():
                flat = values.reshape(-1)
                where = np.flatnonzero(np.abs(flat) > LEAST)
                arrays[f"{i}.{name}.at"] = np.diff(where, prepend=0).astype(np.uint32)
                arrays[f"{i}.{name}"] = flat[where].astype(np.float16)
        part = path.with_name("part-" + path.name)  # a reader never meets half a file
        np.savez_compressed(part, **arrays)  # type: ignore[arg-type]
        part.replace(path)

    @classmethod
    def load(cls, path: Path) -> Model:
        """Read a model that `save` wrote."""
        with np.load(path, allow_pickle=False) as archive:
            names = {k: bytes(archive[k]).decode().split("\n") for k in ("tags", "signs", "memory")}
            vocabularies = [Vocabulary(names[k]) for k in ("tags", "signs", "memory")]
            rounds: list[Round] = []
            while f"{len(rounds)}.tag" in archive:
                weights = Round.zeros(*(len(v) for v in vocabularies))
                for name, values in weights._asdict().items():
                    flat = values.reshape(-1)
                    flat[:] = 0
                    flat[np.cumsum(archive[f"{len(rounds)}.{name}.at"])] = archive[f"{len(rounds)}.{name}"]
                rounds.append(weights)
        return cls(vocabularies[0], vocabularies[1], vocabularies[2], tuple(rounds))


@cache
def shipped() -> Model:
    """Return the model that comes with latingloss."""
    with as_file(files("latingloss") / "data" / "context" / "model.npz") as path:
        return Model.load(path)
