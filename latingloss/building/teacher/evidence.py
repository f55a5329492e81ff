"""What the words around say for each reading: pairs of readings at a distance, and how they agree."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from latingloss.building.teacher.traits import CLASSES, Traits
from latingloss.context.columns import Columns, Ints
from latingloss.context.network import beside

NEAR = (-3, -2, -1, 1, 2, 3)  # distances at which a neighbour's sign counts
FAR = (-6, -5, -4, -3, -2, -1, 1, 2, 3, 4, 5, 6)  # distances at which agreement counts
VERBS = ("verb after", "verb before")  # the nearest finite verb on either side, however far within reach
Slot = int | str  # where another word stands, seen from a word: a distance, or one of VERBS
SIGN_SLOTS: tuple[Slot, ...] = (*NEAR, *VERBS)
SLOTS: tuple[Slot, ...] = (*FAR, *VERBS)
_VERB_REACH = 15  # words
LEVELS = 4  # how two readings agree: not, in part, in case and number, in gender too
_FIN = CLASSES.index("FIN")
_ADP = CLASSES.index("ADP")


class Pairs(NamedTuple):
    """Readings of a word paired with readings of the word in one slot."""

    row: Ints  # the reading looked at
    other: Ints  # the neighbour's reading
    agreement: Ints  # class of row x class of other x level, as one number


class Kinds(NamedTuple):
    """The distinct attributes of a batch's readings, and how each two of them agree."""

    of: Ints  # kind of each row
    agreement: Ints  # [kind of row, kind of other]

    @classmethod
    def of_traits(cls, traits: Traits) -> Kinds:
        """Find the kinds: a few hundred, so that agreement is worked out for them and not for every pair."""
        code = np.zeros(len(traits.tag), np.int64)
        for trait in (traits.kind, traits.case, traits.number, traits.gender, traits.person, traits.governed):
            code = code * 1024 + trait
        _, first, of = np.unique(code, return_index=True, return_inverse=True)
        row, other = (part.reshape(-1).astype(np.int32) for part in np.meshgrid(first, first, indexing="ij"))
        return cls(of.astype(np.int32), _agreement(traits, row, other).reshape(len(first), len(first)))


class Evidence(NamedTuple):
    """Pairs in every slot, found once for a batch, and the rows whose slot is empty or outside the sentence."""

    traits: Traits
    pairs: dict[Slot, Pairs]
    edges: dict[Slot, Ints]

    @classmethod
    def of(cls, columns: Columns, traits: Traits) -> Evidence:
        """Find the pairs of a batch."""
        kinds = Kinds.of_traits(traits)
        found = {slot: _pairs_at(columns, traits, slot, kinds=kinds) for slot in SLOTS}
        return cls(traits, {d: p for d, (p, _) in found.items()}, {d: e for d, (_, e) in found.items()})


def _pairs_at(columns: Columns, traits: Traits, slot: Slot, *, kinds: Kinds) -> tuple[Pairs, Ints]:
    n = columns.words
    if isinstance(slot, int):
        target = beside(columns.sentence, slot)
    else:
        target = _verbs(columns, traits, after=slot == VERBS[0])
        target = np.where(columns.sentence[target % max(n, 1)] == columns.sentence, target, n) if n else target
    inside = target < n
    edge = np.flatnonzero(~inside[columns.word]).astype(np.int32)
    rows = np.flatnonzero(inside[columns.word]).astype(np.int32)
    neighbour = target[columns.word[rows]]
    width = columns.readings[neighbour]
    row = np.repeat(rows, width)
    first = np.repeat(columns.start[neighbour], width)
    step = np.arange(len(row), dtype=np.int32) - np.repeat(np.cumsum(width) - width, width).astype(np.int32)
    other = (first + step).astype(np.int32)
    return Pairs(row, other, kinds.agreement[kinds.of[row], kinds.of[other]]), edge


def _verbs(columns: Columns, traits: Traits, *, after: bool) -> Ints:
    """Return for every word the nearest likely finite verb after or before it, or else the number of words."""
    if not columns.words:
        return np.zeros(0, np.int32)
    words = np.arange(columns.words, dtype=np.int32)
    likeliest = columns.prior >= np.maximum.reduceat(columns.prior, columns.start)[columns.word]
    verbs = np.unique(columns.word[likeliest & (traits.kind == _FIN)])
    found = np.append(verbs, -1)[
        np.searchsorted(verbs, words, side="right") if after else np.searchsorted(verbs, words) - 1
    ]
    near = (found >= 0) & (np.abs(found - words) <= _VERB_REACH)
    return np.where(near, found, columns.words).astype(np.int32)


def _agreement(traits: Traits, row: Ints, other: Ints) -> Ints:
    kind, kind2 = traits.kind[row], traits.kind[other]
    nominal = (kind > 0) & (kind < _FIN) & (kind2 > 0) & (kind2 < _FIN)
    case, number = traits.case[row] == traits.case[other], traits.number[row] == traits.number[other]
    gender = (traits.gender[row] & traits.gender[other]) != 0
    level = np.where(nominal, case * (1 + number * (1 + gender)), 0)
    verb = (kind == _FIN) | (kind2 == _FIN)
    subject = ((traits.case[row] == 1) | (traits.case[other] == 1)) & (kind != kind2)
    person = np.maximum(traits.person[row], traits.person[other])
    third = (person == 3) | (np.minimum(traits.person[row], traits.person[other]) == person)
    level = np.where(verb & subject, 1 + number + (number & third), level)
    for adposition, noun, is_adposition in ((other, row, kind2 == _ADP), (row, other, kind == _ADP)):
        governed, case = traits.governed[adposition], traits.case[noun]
        taken = (governed >> case) & 1
        level = np.where(is_adposition & (case > 0), np.where(taken > 0, 1, 2 + (governed == 0)), level)
    return (((kind * len(CLASSES)) + kind2) * LEVELS + level).astype(np.int32)
