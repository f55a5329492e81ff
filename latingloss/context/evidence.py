"""What the words around say for each reading: pairs of readings at a distance, and how they agree."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from latingloss.context.columns import Columns, Ints
from latingloss.context.tags import CLASSES

NEAR = (-3, -2, -1, 1, 2, 3)  # distances at which a neighbour's sign counts
FAR = (-6, -5, -4, -3, -2, -1, 1, 2, 3, 4, 5, 6)  # distances at which agreement counts
LEVELS = 4  # how two readings agree: not, in part, in case and number, in gender too
_FIN = CLASSES.index("FIN")
_ADP = CLASSES.index("ADP")


class Pairs(NamedTuple):
    """Readings of a word paired with readings of a word at one distance."""

    row: Ints  # the reading looked at
    other: Ints  # the neighbour's reading
    agreement: Ints  # class of row x class of other x level, as one number


def pairs_at(columns: Columns, distance: int) -> tuple[Pairs, Ints]:
    """Return the pairs at a distance, and the rows whose neighbour there is outside the sentence."""
    n = columns.words
    words = np.arange(n, dtype=np.int32)
    target = words + distance
    inside = (target >= 0) & (target < n)
    safe = np.where(inside, target, 0)
    inside &= columns.sentence[safe] == columns.sentence if n else inside
    edge = np.flatnonzero(~inside[columns.word]).astype(np.int32)
    rows = np.flatnonzero(inside[columns.word]).astype(np.int32)
    neighbour = target[columns.word[rows]]
    width = columns.readings[neighbour]
    row = np.repeat(rows, width)
    first = np.repeat(columns.start[neighbour], width)
    step = np.arange(len(row), dtype=np.int32) - np.repeat(np.cumsum(width) - width, width).astype(np.int32)
    other = (first + step).astype(np.int32)
    return Pairs(row, other, _agreement(columns, row, other)), edge


def _agreement(columns: Columns, row: Ints, other: Ints) -> Ints:
    kind, kind2 = columns.kind[row], columns.kind[other]
    nominal = (kind > 0) & (kind < _FIN) & (kind2 > 0) & (kind2 < _FIN)
    case, number = columns.case[row] == columns.case[other], columns.number[row] == columns.number[other]
    gender = (columns.gender[row] & columns.gender[other]) != 0
    level = np.where(nominal, case * (1 + number * (1 + gender)), 0)
    verb = (kind == _FIN) | (kind2 == _FIN)
    subject = ((columns.case[row] == 1) | (columns.case[other] == 1)) & (kind != kind2)
    person = np.maximum(columns.person[row], columns.person[other])
    third = (person == 3) | (np.minimum(columns.person[row], columns.person[other]) == person)
    level = np.where(verb & subject, 1 + number + (number & third), level)
    for adposition, noun, is_adposition in ((other, row, kind2 == _ADP), (row, other, kind == _ADP)):
        governed, case = columns.governed[adposition], columns.case[noun]
        taken = (governed >> case) & 1
        level = np.where(is_adposition & (case > 0), np.where(taken > 0, 1, 2 + (governed == 0)), level)
    return (((kind * len(CLASSES)) + kind2) * LEVELS + level).astype(np.int32)
