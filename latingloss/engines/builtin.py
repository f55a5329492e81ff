"""The default engine: the analyser's readings, weighed by the network."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from threading import Lock

from latingloss.context.columns import Types, lay_out
from latingloss.context.network import Network, shipped
from latingloss.engines import Choice, Narrowing, TokenChoices
from latingloss.morphology.enclitics import split
from latingloss.morphology.ranking import candidates
from latingloss.text.tokens import word_text

_MOST_TYPES = 400_000  # distinct forms kept before the table is begun anew
_BATCH = 1_500  # words laid out at a time


class BuiltInEngine:
    """Chooses readings by itself, with nothing but numpy and the shipped network.

    One engine may be shared by threads.
    """

    name = "built-in"

    def __init__(self, network: Network | None = None) -> None:
        self._network = network or shipped()
        self._lock = Lock()
        self._types = self._new_types()

    def _new_types(self) -> Types:
        return Types(self._network.numbering)

    def read(self, sentences: Sequence[Sequence[str]]) -> list[list[TokenChoices]]:
        """Return for every token of every sentence its words with their readings."""
        return self.read_narrowed(sentences, {})

    def read_narrowed(self, sentences: Sequence[Sequence[str]], narrow: Narrowing) -> list[list[TokenChoices]]:
        """Read as `read` does, the readings of some words narrowed before their neighbours are looked at."""
        out: list[list[TokenChoices]] = []
        for first, last in _batches(sentences):
            here = {(s - first, t, w): keep for (s, t, w), keep in narrow.items() if first <= s < last}
            out += self._read_batch(sentences[first:last], here)
        return out

    def _read_batch(self, sentences: Sequence[Sequence[str]], narrow: Narrowing) -> list[list[TokenChoices]]:
        parts = [[word_parts(token) for token in sentence] for sentence in sentences]
        order = [sense_order(sentence) for sentence in parts]
        with self._lock:
            if len(self._types.forms) > _MOST_TYPES:
                self._types = self._new_types()
            types = self._new_types() if narrow else self._types  # what is narrowed is for this text alone
            ids = [[types.id(parts[s][t][w]) for t, w in places] for s, places in enumerate(order)]
            for (s, t, w), keep in narrow.items():
                form = parts[s][t][w]
                ids[s][order[s].index((t, w))] = types.add(form, keep(candidates(form)))
            columns = lay_out(ids, types)
        belief = self._network.believe(columns).tolist()
        out: list[list[TokenChoices]] = []
        starts = iter(columns.start.tolist())
        for s, places in enumerate(order):
            found: dict[tuple[int, int], Choice] = {}
            for (t, w), number in zip(places, ids[s], strict=True):
                start = next(starts)
                readings = types.readings(number)
                weighed = zip(readings, belief[start : start + len(readings)], strict=True)
                found[t, w] = Choice(parts[s][t][w], tuple(sorted(weighed, key=lambda pair: -pair[1])))
            out.append([tuple(found[t, w] for w in range(len(token))) for t, token in enumerate(parts[s])])
        return out


def _batches(sentences: Sequence[Sequence[str]]) -> Iterator[tuple[int, int]]:
    """Yield ranges of sentences that hold about `_BATCH` words each, so that memory stays flat."""
    first, words = 0, 0
    for i, sentence in enumerate(sentences):
        words += len(sentence)
        if words >= _BATCH or i + 1 == len(sentences):
            yield first, i + 1
            first, words = i + 1, 0


def word_parts(token: str) -> tuple[str, ...]:
    """Return the words of a printed token: one, or host and enclitic."""
    text = word_text(token)
    return split(text) or (text,)


def sense_order(sentence: Sequence[tuple[str, ...]]) -> list[tuple[int, int]]:
    """Return the places (token, word) in the chooser's order: an enclitic conjunction before its host."""
    order: list[tuple[int, int]] = []
    for t, parts in enumerate(sentence):
        places = [(t, w) for w in range(len(parts))]
        order += reversed(places) if len(parts) == 2 and parts[1].lower() in ("que", "ve", "ue") else places
    return order
