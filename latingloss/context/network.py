"""The chooser: a small convolutional network over the analyser's own readings.

Every word comes in as the sum of its readings, each as likely as its prior: their endings, signs and lemmas as
vectors. Layers of dilated convolutions (Strubell, Verga, Belanger and McCallum 2017, Fast and Accurate Entity
Recognition with Iterated Dilated Convolutions) look one, two, four and eight words to either side. What comes out is
compared with the ending and the sign of each reading, and added to its prior.
"""

from __future__ import annotations

from functools import cache
from importlib.resources import as_file, files
from pathlib import Path
from typing import NamedTuple

import numpy as np

from latingloss.context.columns import Columns, Floats, Ints, Numbering, Vocabulary

DILATIONS = (1, 2, 4, 8, 1)  # how many words each layer looks to either side
_EPSILON = 1e-5  # under the root when a layer is normalised


class Weights(NamedTuple):
    """What is learned; shapes in brackets, d is the size of a vector."""

    prior: Floats  # [1]
    endings: Floats  # [endings, d]
    signs: Floats  # [signs, d]
    lemmas: Floats  # [lemmas, d]
    edge: Floats  # [d]; what stands beyond the ends of a sentence
    mixing: Floats  # [layers, 3d, d]; from before, the word itself and after
    offset: Floats  # [layers, d]
    gain: Floats  # [layers + 2, d]; of the input, each layer, the output
    shift: Floats  # [layers + 2, d]
    endings_out: Floats  # [endings, d]
    signs_out: Floats  # [signs, d]


def softmax(columns: Columns, score: Floats) -> Floats:
    """Return probabilities of the readings of each word from their scores."""
    if not len(score):
        return score
    top = np.maximum.reduceat(score, columns.start)
    return shares(columns, np.exp(score - top[columns.word]))


def shares(columns: Columns, amount: Floats) -> Floats:
    """Return amounts of the readings of each word as shares that sum to 1."""
    return (amount / np.add.reduceat(amount, columns.start)[columns.word]).astype(np.float32)


def beside(sentence: Ints, distance: int) -> Ints:
    """Return for every word the word at a distance in its sentence, or else the number of words."""
    words = len(sentence)
    target = np.arange(words, dtype=np.int32) + np.int32(distance)
    inside = (target >= 0) & (target < words)
    inside &= sentence[np.where(inside, target, 0)] == sentence
    return np.where(inside, target, words).astype(np.int32)


def _product(rows: Floats, matrix: Floats) -> Floats:
    """Return rows times a matrix, the same for a row in whatever batch it comes.

    Libraries of linear algebra add up in an order that depends on where a row stands; summed in double precision and
    rounded, the order no longer shows.
    """
    product: Floats = (rows.astype(np.float64) @ matrix.astype(np.float64)).astype(np.float32)
    return product


class Network(NamedTuple):
    """The weights with the vocabularies that number their rows."""

    numbering: Numbering
    weights: Weights

    def believe(self, columns: Columns) -> Floats:
        """Return the probability of every reading of a batch."""
        return softmax(columns, self.scores(columns))

    def scores(self, columns: Columns) -> Floats:
        """Return the score of every reading of a batch."""
        if not columns.words:
            return columns.prior
        w = self.weights
        seen = self._look_around(columns, self._inputs(columns))
        wanted = w.endings_out[columns.ending] + w.signs_out[columns.sign]
        fit: Floats = np.einsum("rd,rd->r", np.repeat(seen, columns.readings, axis=0), wanted)
        fit += w.prior[0] * columns.prior
        return fit

    def _inputs(self, columns: Columns) -> Floats:
        """Return the vector of every word: its readings, by their shares of the prior."""
        w = self.weights
        vectors = w.endings[columns.ending] + w.signs[columns.sign] + w.lemmas[columns.lemma]
        vectors *= softmax(columns, columns.prior)[:, None]
        total: Floats = np.add.reduceat(vectors, columns.start, axis=0)
        return total

    def _look_around(self, columns: Columns, inputs: Floats) -> Floats:
        """Return the vectors of the words once they have seen their neighbours."""
        w = self.weights
        seen = self._normalised(inputs, 0)
        for layer, distance in enumerate(DILATIONS):
            edged = np.concatenate((seen, w.edge[None]))
            before, after = edged[beside(columns.sentence, -distance)], edged[beside(columns.sentence, distance)]
            mixed = _product(np.concatenate((before, seen, after), axis=1), w.mixing[layer]) + w.offset[layer]
            seen = self._normalised(seen + np.maximum(mixed, 0, out=mixed), layer + 1)
        return self._normalised(seen, len(DILATIONS) + 1)

    def _normalised(self, vectors: Floats, layer: int) -> Floats:
        """Layer normalisation (Ba, Kiros and Hinton 2016)."""
        centred: Floats = vectors - vectors.mean(axis=1, keepdims=True)
        square = np.einsum("wd,wd->w", centred, centred)[:, None] / np.float32(vectors.shape[1])
        centred *= self.weights.gain[layer] / np.sqrt(square + np.float32(_EPSILON))
        centred += self.weights.shift[layer]
        return centred

    def save(self, path: Path) -> None:
        """Write the network as a compressed numpy archive in half precision."""
        names = {f"names.{k}": np.frombuffer("\n".join(v.names).encode(), np.uint8) for k, v in self._named()}
        values = {name: values.astype(np.float16) for name, values in self.weights._asdict().items()}
        part = path.with_name("part-" + path.name)  # a reader never meets half a file
        np.savez_compressed(part, **names, **values)  # type: ignore[arg-type]
        part.replace(path)

    def _named(self) -> list[tuple[str, Vocabulary]]:
        return list(self.numbering._asdict().items())

    @classmethod
    def load(cls, path: Path) -> Network:
        """Read a network that `save` wrote."""
        with np.load(path, allow_pickle=False) as archive:
            names = (bytes(archive[f"names.{k}"]).decode().split("\n") for k in Numbering._fields)
            numbering = Numbering(*(Vocabulary(n) for n in names))
            return cls(numbering, Weights(*(archive[k].astype(np.float32) for k in Weights._fields)))


@cache
def shipped() -> Network:
    """Return the network that comes with latingloss."""
    with as_file(files("latingloss") / "data" / "context" / "network.npz") as path:
        return Network.load(path)
