"""Forms: every distinct print is cut and analysed once, every reading that is chosen is scored once.

What a batch of words needs is then gathered by number, without a loop over words.
"""

from __future__ import annotations

from array import array
from collections.abc import Iterator
from itertools import pairwise
from typing import Any, NamedTuple

import numpy as np
from numpy.typing import NDArray

from latingloss.context.columns import Ints, Types, lay_out
from latingloss.context.network import Network
from latingloss.corpus.chunks import Chunks, Longs
from latingloss.corpus.schema import PARTS
from latingloss.difficulty.frequency import lexeme_zipf
from latingloss.difficulty.score import SPREAD, nearest_english, shipped_weights
from latingloss.difficulty.shape import clusters, crowding, letters_changed, ways_to_read
from latingloss.engines.builtin import sense_order, word_parts
from latingloss.pronunciation import syllable_count
from latingloss.tables import collector_paused
from latingloss.text.orthography import plain, printed

ROW = np.dtype(
    [("lemma", "i4"), ("upos", "i2"), ("features", "i4"), ("guessed", "?"), ("zipf", "f4"), ("letters", "i2"),
     ("syllables", "i2"), ("cognate_distance", "f4"), ("relative", "i4"), ("changed", "f4"), ("clusters", "i2"),
     ("readings", "i2"), ("difficulty", "f4"), ("known", "?")]
)  # fmt: skip
Rows = NDArray[np.void]
WORDS_AT_ONCE = 1536


class Names:
    """Strings by number, each once."""

    def __init__(self) -> None:
        self.names: list[str] = []
        self._numbers: dict[str, int] = {}

    def number(self, name: str) -> int:
        """Return the number of a name, a new one if it is new."""
        found = self._numbers.get(name)
        if found is None:
            found = self._numbers[name] = len(self.names)
            self.names.append(name)
        return found


class _Prints(dict[str, int]):
    """Numbers of printed words; a new one is cut into its words."""

    def __init__(self, types: Types) -> None:
        super().__init__()
        self._types = types
        self._rows = array("i")

    def __missing__(self, text: str) -> int:
        parts = word_parts(text)
        first, second = self._types.id(parts[0]), self._types.id(parts[1]) if len(parts) > 1 else -1
        self._rows.extend((first, second, sense_order([parts])[0] != (0, 0), len(text)))
        number = self[text] = len(self)
        return number

    def rows(self) -> Ints:
        """Return a row each: type, type of the enclitic or -1, whether the enclitic is read first, length."""
        return np.array(self._rows).reshape(-1, 4)


class Words(NamedTuple):
    """The words of a batch, in the order of print."""

    token: Ints  # number of the token that each belongs to
    letters: Ints  # length of that token
    form: Ints  # number in `Forms.forms`
    reading: Rows
    confidence: NDArray[np.float32]


class Forms:
    """The prints, forms and readings met so far, for one network."""

    def __init__(self, network: Network) -> None:
        self._network = network
        self.lemmas, self.upos, self.relatives = Names(), Names(), Names()
        self.features: dict[tuple[tuple[str, str], ...], int] = {}  # sets of features, by number
        self._types = Types(network.numbering)
        self._prints = _Prints(self._types)
        self.chunks = Chunks(self._prints.__getitem__)
        self._rows = np.zeros(1024, ROW)

    @property
    def forms(self) -> list[str]:
        """The forms of words, by number."""
        return self._types.forms

    def __len__(self) -> int:
        return len(self._prints)

    def read(self, prints: Longs, passage: Ints, *, context: bool = True) -> Words:
        """Choose a reading for the words of printed words, given the passage (ascending) of each.

        Without regard to `context` it is the likeliest one of the form.
        """
        with collector_paused():
            return self._read(self._prints.rows()[prints], passage, context=context)

    def _read(self, cut: Ints, passage: Ints, *, context: bool) -> Words:
        width = 1 + (cut[:, 1] >= 0)
        token = np.repeat(np.arange(len(cut), dtype=np.int32), width)
        start = np.cumsum(width) - width
        form = np.empty(len(token), np.int32)
        form[start] = cut[:, 0]
        form[start[width > 1] + 1] = cut[width > 1, 1]
        sense = np.arange(len(token))
        moved = start[cut[:, 2] > 0]
        sense[moved], sense[moved + 1] = moved + 1, moved
        row, confidence = self._choose(form[sense], passage[token]) if context else self._likeliest(form[sense])
        chosen = np.empty_like(row)
        chosen[sense] = row
        certain = np.empty_like(confidence)
        certain[sense] = confidence
        return Words(token, cut[token, 3], form, self._scored(chosen), certain)

    def _likeliest(self, form: Ints) -> tuple[Ints, NDArray[np.float32]]:
        """Return the likeliest row of each word by itself, and its probability; the first of each form."""
        _, prior, first, _ = self._types.arrays()
        row = first[form]
        return row, np.exp(prior[row])

    def _choose(self, form: Ints, passage: Ints) -> tuple[Ints, NDArray[np.float32]]:
        """Return the likeliest row of each word, and its probability."""
        rows, tops = [], []
        for part in _whole(passage):
            ends = np.flatnonzero(np.diff(passage[part])) + 1
            columns = lay_out(np.split(form[part], ends), self._types)
            belief = self._network.believe(columns)
            top = np.maximum.reduceat(belief, columns.start)
            likeliest = np.flatnonzero(belief == top[columns.word])
            _, first = np.unique(columns.word[likeliest], return_index=True)
            rows.append(likeliest[first].astype(np.int32) - columns.start)
            tops.append(top)
        return self._types.arrays()[2][form] + np.concatenate(rows), np.concatenate(tops)

    def _scored(self, row: Ints) -> Rows:
        """Return the readings of rows, scoring those not chosen before."""
        if (need := int(row.max()) + 1) > len(self._rows):
            self._rows = np.concatenate((self._rows, np.zeros(2 * need - len(self._rows), ROW)))
        new = np.unique(row[~self._rows["known"][row]])
        if len(new):
            first = self._types.arrays()[2]
            form = np.searchsorted(first, new, side="right") - 1
            self._rows[new] = np.array(
                [self._values(f, r) for f, r in zip(form.tolist(), (new - first[form]).tolist(), strict=True)], ROW
            )
            self._rows["difficulty"][new] = _difficulty(self._rows[new])
        return self._rows[row]

    def _values(self, form: int, reading: int) -> tuple[Any, ...]:
        text, readings = self.forms[form], self._types.readings(form)
        candidate = readings[reading]
        lemma = candidate.lexeme.lemma
        distance, relative = nearest_english(candidate.lexeme)
        return (
            self.lemmas.number(printed(lemma)), self.upos.number(candidate.upos),
            self.features.setdefault(tuple(candidate.features.items()), len(self.features)), candidate.guessed,
            lexeme_zipf(candidate.lexeme), len(plain(text)), syllable_count(candidate.form),
            distance, self.relatives.number(relative) if relative else -1,
            letters_changed(plain(text), lemma), crowding(clusters(candidate.form)),
            ways_to_read(readings), 0.0, True,
        )  # fmt: skip


def _whole(passage: Ints) -> Iterator[slice]:
    """Cut words into slices of whole passages, so small that the arrays of one stay in the processor's cache."""
    starts = np.flatnonzero(np.diff(passage, prepend=-1)).tolist()
    first = 0
    for start, end in pairwise([*starts, len(passage)]):
        if end - first > WORDS_AT_ONCE and start > first:
            yield slice(first, start)
            first = start
    yield slice(first, len(passage))


def _difficulty(rows: Rows) -> NDArray[np.float32]:
    """Return the scores of readings: `latingloss.difficulty.score` over columns."""
    weights = shipped_weights()
    total = sum(
        weights[part].weight * (rows[column] - weights[part].mean) / weights[part].deviation
        for part, column in PARTS.items()
    )
    return (1 / (1 + np.exp(-SPREAD * total))).astype(np.float32)
