"""Columns of readings: every distinct form is analysed once, and sentences become arrays of ids.

A `Types` table grows with the forms it meets. `Columns` lays a batch of sentences out as flat arrays, one row a
candidate reading, which the chooser scores without a loop over words.
"""

from __future__ import annotations

from array import array
from collections.abc import Sequence
from math import log
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from latingloss.context.tags import tag_of
from latingloss.morphology.ranking import Candidate, candidates

Ints = NDArray[np.int32]
Floats = NDArray[np.float32]

UNKNOWN = "<unknown>"


class Vocabulary:
    """Names to numbers; unknown names are 0, or new ones while growing."""

    def __init__(self, names: Sequence[str] = (), *, growing: bool = False) -> None:
        self.names = list(names) or [UNKNOWN]
        self._ids = {name: i for i, name in enumerate(self.names)}
        self._growing = growing

    def __len__(self) -> int:
        return len(self.names)

    def id(self, name: str) -> int:
        """Return the number of a name."""
        found = self._ids.get(name)
        if found is None:
            if not self._growing:
                return 0
            found = self._ids[name] = len(self.names)
            self.names.append(name)
        return found


class Numbering(NamedTuple):
    """The vocabularies that number what is seen of a reading."""

    endings: Vocabulary
    signs: Vocabulary
    lemmas: Vocabulary

    @classmethod
    def growing(cls) -> Numbering:
        """Return vocabularies that take in whatever they meet."""
        return cls(*(Vocabulary(growing=True) for _ in cls._fields))


class Types:
    """The forms met so far, each with the numbers of its candidate readings.

    Rows are parallel arrays, one entry a reading; `first` and `count` say which belong to a form.
    """

    def __init__(self, numbering: Numbering) -> None:
        self.numbering = numbering
        self.forms: list[str] = []
        self._given: dict[int, tuple[Candidate, ...]] = {}
        self._ids: dict[str, int] = {}
        self._rows, self._priors, self._first = array("i"), array("f"), array("i")
        self._frozen: tuple[Ints, Floats, Ints, Ints] | None = None

    def id(self, form: str) -> int:
        """Return the number of a form, analysing it when it is new."""
        found = self._ids.get(form)
        if found is None:
            found = self._ids[form] = self._add(form, candidates(form))
        return found

    def add(self, form: str, readings: tuple[Candidate, ...]) -> int:
        """Return a new number for a form that has these readings and no others."""
        number = self._add(form, readings)
        self._given[number] = readings
        return number

    def readings(self, number: int) -> tuple[Candidate, ...]:
        """Return the readings of a form; they are found again, as to keep those of unknown words takes room."""
        return self._given.get(number) or candidates(self.forms[number])

    def _add(self, form: str, readings: tuple[Candidate, ...]) -> int:
        endings, signs, lemmas = self.numbering
        number = len(self.forms)
        self.forms.append(form)
        self._first.append(len(self._priors))
        for reading in readings:
            named = tag_of(reading)
            self._rows.extend((endings.id(named.ending), signs.id(named.sign), lemmas.id(reading.lexeme.lemma)))
            self._priors.append(log(max(reading.prior, 1e-9)))
        self._frozen = None
        return number

    def arrays(self) -> tuple[Ints, Floats, Ints, Ints]:
        """Return rows (readings x numbering), log priors, and first row and count for each form."""
        if self._frozen is None:
            rows = np.array(self._rows).reshape(-1, len(Numbering._fields))
            first = np.array(self._first)
            count = np.diff(np.append(first, len(rows))).astype(np.int32)
            self._frozen = rows, np.array(self._priors), first, count
        return self._frozen


class Columns(NamedTuple):
    """A batch of sentences as flat arrays."""

    readings: Ints  # how many each word has
    start: Ints  # first row of each word
    word: Ints  # word of each row
    sentence: Ints  # sentence of each word
    form: Ints  # number of each word among the types
    reading: Ints  # number of each row among the types' rows
    prior: Floats  # log prior of each row
    ending: Ints
    sign: Ints
    lemma: Ints

    @property
    def words(self) -> int:
        """Number of words in the batch."""
        return len(self.readings)


def lay_out(sentences: Sequence[Sequence[int] | Ints], types: Types) -> Columns:
    """Return the columns of a batch of sentences given as numbers of forms."""
    rows, priors, first, count = types.arrays()
    ids = np.concatenate([np.asarray(s, np.int32) for s in sentences] or [np.zeros(0, np.int32)])
    lengths = np.fromiter((len(s) for s in sentences), np.int32)
    n = count[ids] if len(ids) else np.zeros(0, np.int32)
    start = np.concatenate(([0], np.cumsum(n)))[:-1].astype(np.int32) if len(ids) else np.zeros(0, np.int32)
    word = np.repeat(np.arange(len(ids), dtype=np.int32), n)
    row = np.arange(len(word), dtype=np.int32) - start[word] + first[ids][word] if len(ids) else word
    picked = rows[row]
    return Columns(
        n,
        start,
        word,
        np.repeat(np.arange(len(lengths), dtype=np.int32), lengths),
        ids,
        row,
        priors[row],
        *(np.ascontiguousarray(picked[:, k]) for k in range(len(Numbering._fields))),
    )
