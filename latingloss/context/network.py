"""The chooser: a small convolutional network over the analyser's own readings.

Every word comes in as the sum of its readings, each as likely as its prior: their endings, signs and lemmas as
vectors. Layers of dilated convolutions (Strubell, Verga, Belanger and McCallum 2017, Fast and Accurate Entity
Recognition with Iterated Dilated Convolutions) look one, two, four and eight words to either side. What comes out is
compared with the ending and the sign of each reading, and added to its prior.

Layers multiply whole numbers: vectors and weights are rounded to so few bits that every sum is exact in single
precision. Libraries of linear algebra add up in an order that depends on where a row stands and on the processor; so
the order does not show, and a sentence is read alike in any batch.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache, cached_property
from importlib.resources import as_file, files
from pathlib import Path
from typing import NamedTuple

import numpy as np

from latingloss.context.columns import Columns, Floats, Ints, Numbering, Vocabulary

DILATIONS = (1, 2, 4, 8, 1)  # how many words each layer looks to either side
_EPSILON = 1e-5  # under the root when a layer is normalised
_EXACT = 1 << 24  # whole numbers up to this are exact in single precision
_ROWS = 16  # multiplied at a time: too few for OpenBLAS to start threads, which would wait for each other
_RANGE = 8.0  # how large an entry of a normalised vector can be, all but never reached


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


class _Layer(NamedTuple):
    """A layer's weights as whole numbers, for the word before, the word itself and the word after side by side."""

    whole: Floats  # [d, 3d]
    scale: Floats  # [3d]; what a sum of products of whole numbers is worth

    @classmethod
    def rounded(cls, mixing: Floats) -> _Layer:
        """Round the weights of a layer, [3d, d], each column to its own scale."""
        size = mixing.shape[1]
        most = _most(size)
        columns = mixing.reshape(3, size, size).transpose(1, 0, 2).reshape(size, 3 * size)
        unit = np.maximum(np.abs(columns).max(axis=0), 1e-9) / most
        return cls(np.rint(columns / unit), (unit * (_RANGE / most)).astype(np.float32))

    def product(self, vectors: Floats) -> Floats:
        """Return vectors times the weights, [words, 3d]."""
        words, size = vectors.shape
        most = np.float32(_most(size))
        whole = np.zeros((-(-words // _ROWS) * _ROWS, size), np.float32)
        np.rint(vectors * (most / np.float32(_RANGE)), out=whole[:words])
        np.clip(whole, -most, most, out=whole)
        product: Floats = (whole.reshape(-1, _ROWS, size) @ self.whole).reshape(len(whole), -1)[:words]
        product *= self.scale
        return product


def _most(size: int) -> int:
    """Return the largest whole number of which `size` products can be summed exactly."""
    return int((_EXACT / size) ** 0.5)


@dataclass(frozen=True)
class Network:
    """The weights with the vocabularies that number their rows."""

    numbering: Numbering
    weights: Weights

    @cached_property
    def _layers(self) -> tuple[_Layer, ...]:
        return tuple(map(_Layer.rounded, self.weights.mixing))

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
        """Return the vector of every word: its readings, by their shares of the prior; each form is summed once."""
        w = self.weights
        _, word, form = np.unique(columns.form, return_index=True, return_inverse=True)
        readings = columns.readings[word]
        start = np.cumsum(readings) - readings
        row = np.arange(readings.sum()) + np.repeat(columns.start[word] - start, readings)
        amount = np.exp(columns.prior[row])
        vectors = w.endings[columns.ending[row]] + w.signs[columns.sign[row]] + w.lemmas[columns.lemma[row]]
        vectors *= (amount / np.repeat(np.add.reduceat(amount, start), readings))[:, None]
        total: Floats = self._normalised(np.add.reduceat(vectors, start, axis=0), 0)[form]
        return total

    def _look_around(self, columns: Columns, seen: Floats) -> Floats:
        """Return the vectors of the words once they have seen their neighbours."""
        w, size = self.weights, seen.shape[1]
        for i, (layer, distance) in enumerate(zip(self._layers, DILATIONS, strict=True)):
            product = layer.product(np.concatenate((seen, w.edge[None])))
            mixed = product[:-1, size : 2 * size] + w.offset[i]
            mixed += product[:, :size][beside(columns.sentence, -distance)]
            mixed += product[:, 2 * size :][beside(columns.sentence, distance)]
            seen = self._normalised(seen + np.maximum(mixed, 0, out=mixed), i + 1)
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
