"""Train the network (`latingloss.context.network`) with PyTorch, on one processor, so that it comes out alike.

Words lose the vector of their lemma now and then, and vectors lose parts (dropout, Srivastava et al. 2014), so that
endings are learned before words. Adam with decoupled decay (Loshchilov and Hutter 2019); the rate rises for a while
and falls by a cosine.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import cos, pi
from typing import Any, NamedTuple

import numpy as np
import torch
from torch import Tensor, nn
from torch.nn import functional

from latingloss.building.lessons import Lesson
from latingloss.context.columns import Floats, Ints, Numbering, Vocabulary
from latingloss.context.network import DILATIONS, Network, Weights, beside, softmax

SIZE = 64  # of a vector
EPOCHS, RATE, WARM_UP, DECAY = 5, 3e-3, 200, 1e-2
DROPOUT, LEMMA_DROPOUT = 0.2, 0.3
LEAST_MET = 5  # times that a lemma must be met to have a vector


class _Batch(NamedTuple):
    """A lesson as tensors."""

    word: Tensor
    start: Tensor
    beside: list[tuple[Tensor, Tensor]]  # for each layer: the words before and after
    prior: Tensor
    share: Tensor  # of the prior
    ending: Tensor
    sign: Tensor
    lemma: Tensor
    target: Tensor
    weight: Tensor


class _Chooser(nn.Module):
    """The network to be trained; `Network` says what it computes."""

    def __init__(self, numbering: Numbering) -> None:
        super().__init__()
        self.endings, self.signs, self.lemmas = (nn.Embedding(len(v), SIZE) for v in numbering[:3])
        for table, deviation in ((self.endings, 0.3), (self.signs, 0.3), (self.lemmas, 0.1)):
            nn.init.normal_(table.weight, std=deviation)
        self.mixing = nn.ModuleList(nn.Linear(3 * SIZE, SIZE) for _ in DILATIONS)
        self.norms = nn.ModuleList(nn.LayerNorm(SIZE) for _ in range(len(DILATIONS) + 2))
        self.edge = nn.Parameter(torch.zeros(SIZE))
        self.endings_out, self.signs_out = (
            nn.Embedding(len(numbering.endings), SIZE),
            nn.Embedding(len(numbering.signs), SIZE),
        )
        nn.init.normal_(self.endings_out.weight, std=0.02)
        nn.init.zeros_(self.signs_out.weight)
        self.prior = nn.Parameter(torch.ones(1))

    def forward(self, batch: _Batch) -> Tensor:
        def summed(table: nn.Embedding, numbers: Tensor) -> Tensor:
            weight = table.weight
            return functional.embedding_bag(numbers, weight, batch.start, mode="sum", per_sample_weights=batch.share)

        lemmas = summed(self.lemmas, batch.lemma)
        if self.training:
            lemmas = lemmas * (torch.rand(len(lemmas), 1) > LEMMA_DROPOUT)
        seen = self.norms[0](summed(self.endings, batch.ending) + summed(self.signs, batch.sign) + lemmas)
        seen = self._dropped(seen)
        for (before, after), mixing, norm in zip(batch.beside, self.mixing, list(self.norms)[1:-1], strict=True):
            edged = torch.cat([seen, self.edge[None]])
            mixed = functional.relu(mixing(torch.cat([edged[before], seen, edged[after]], 1)))
            seen = norm(seen + self._dropped(mixed))
        seen = self.norms[-1](seen)
        wanted = self.endings_out(batch.ending) + self.signs_out(batch.sign)
        fit = (seen[batch.word] * wanted).sum(1)
        scores: Tensor = self.prior * batch.prior + fit
        return scores

    def _dropped(self, values: Tensor) -> Tensor:
        return functional.dropout(values, DROPOUT, self.training)

    def weights(self) -> Weights:
        """Return what was learned."""
        found: dict[str, Any] = {
            name: getattr(self, name).weight for name in ("endings", "signs", "lemmas", "endings_out", "signs_out")
        }
        found |= {"prior": self.prior, "edge": self.edge}
        found["mixing"] = torch.stack([layer.weight.T for layer in self.mixing])
        found["offset"] = torch.stack([layer.bias for layer in self.mixing])
        found["gain"] = torch.stack([norm.weight for norm in self.norms])
        found["shift"] = torch.stack([norm.bias for norm in self.norms])
        return Weights(**{name: values.detach().numpy().astype(np.float32) for name, values in found.items()})


def train_network(lessons: Sequence[Lesson], numbering: Numbering) -> Network:
    """Return the network that the lessons teach."""
    torch.manual_seed(1)
    torch.set_num_threads(1)
    torch.use_deterministic_algorithms(True)
    kept = _common(lessons, numbering)
    batches = [_batch(lesson, kept) for lesson in lessons]
    chooser = _Chooser(numbering)
    adam = torch.optim.AdamW(chooser.parameters(), lr=RATE, weight_decay=DECAY)
    rates = torch.optim.lr_scheduler.LambdaLR(adam, _rate(EPOCHS * len(batches)))
    for batch in _shuffled(batches):
        adam.zero_grad()
        _loss(chooser(batch), batch).backward()
        nn.utils.clip_grad_norm_(chooser.parameters(), 1.0)
        adam.step()
        rates.step()
    return _without_rare(Network(numbering, chooser.weights()), kept)


def _shuffled(batches: list[_Batch]) -> Iterator[_Batch]:
    order = np.random.default_rng(1)
    for _ in range(EPOCHS):
        for i in order.permutation(len(batches)):
            yield batches[i]


def _rate(steps: int) -> Any:
    return lambda step: min(1.0, step / WARM_UP) * (0.5 * (1 + cos(pi * min(1.0, step / steps))) + 0.01)


def _loss(scores: Tensor, batch: _Batch) -> Tensor:
    """Cross entropy of the readings of each word, weighed, a word's mean."""
    words = len(batch.start)
    top = torch.full((words,), -1e9).scatter_reduce(0, batch.word, scores, "amax")
    amount = torch.exp(scores - top[batch.word])
    share = amount / torch.zeros(words).index_add(0, batch.word, amount)[batch.word]
    return -(batch.target * batch.weight * torch.log(share + 1e-9)).sum() / words


def _common(lessons: Sequence[Lesson], numbering: Numbering) -> Floats:
    """Return 1 for each lemma that is met often enough, 0 for the others and for the first, which stands for them."""
    met = np.zeros(len(numbering.lemmas))
    for lesson in lessons:
        met += np.bincount(lesson.columns.lemma, minlength=len(met))
    met[0] = 0
    return (met >= LEAST_MET).astype(np.float32)


def _batch(lesson: Lesson, kept: Floats) -> _Batch:
    columns = lesson.columns

    def tensor(numbers: Ints) -> Tensor:
        return torch.from_numpy(numbers.astype(np.int64))

    sides = [[tensor(beside(columns.sentence, side * d)) for side in (-1, 1)] for d in DILATIONS]
    return _Batch(
        tensor(columns.word),
        tensor(columns.start),
        [(before, after) for before, after in sides],
        torch.from_numpy(columns.prior),
        torch.from_numpy(softmax(columns, columns.prior)),
        tensor(columns.ending),
        tensor(columns.sign),
        tensor(np.where(kept[columns.lemma] > 0, columns.lemma, 0)),
        torch.from_numpy(lesson.target),
        torch.from_numpy(lesson.weight),
    )


def _without_rare(network: Network, kept: Floats) -> Network:
    """Return the network without the lemmas that were too rare; the first stands for them."""
    numbering, weights = network.numbering, network.weights
    rows = np.concatenate(([0], np.flatnonzero(kept)))
    lemmas = Vocabulary([numbering.lemmas.names[i] for i in rows])
    return Network(numbering._replace(lemmas=lemmas), weights._replace(lemmas=weights.lemmas[rows]))
