"""Aligning the letters of a Latin and an English word, with weights learned from words known to be kin.

A weight is a log-odds: how much likelier two letters are to face each other in kin than in chance pairs. `c` and
`c` is strong evidence, `i` and `e` a little, `t` and `d` hardly any, `t` and `g` is evidence against.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from latingloss.tables import read_table

GAP = "-"
ALPHABET = "abcdefghilmnoprstuxz"
Weights = Mapping[str, Mapping[str, float]]  # Latin letter or GAP -> English letter or GAP -> log-odds


@cache
def weights() -> Weights:
    """Return the shipped weights, natural-log odds, of `data/kin/letter_weights.tsv`.

    >>> weights()["t"]["t"] > weights()["t"]["d"] > weights()["t"]["g"]
    True
    """
    table: dict[str, dict[str, float]] = {}
    for latin, english, weight in read_table("kin/letter_weights.tsv"):
        table.setdefault(latin, {})[english] = float(weight)
    return table


def self_score(word: str, table: Weights) -> float:
    """Return the score of a folded word aligned with itself, the highest it can get."""
    return sum(table[c][c] for c in word if c in table)


def best_scores(latin: str, english: str, table: Weights) -> list[float]:
    """Return the score of the best alignment of `latin` with every beginning of `english`, shortest first.

    Both are folded (`correspondences.letters`); letters outside the alphabet are skipped. Time is proportional
    to the product of the lengths.
    """
    inserted = table[GAP]
    columns = [c for c in english if c in inserted]
    row = [0.0]
    for c in columns:
        row.append(row[-1] + inserted[c])
    for letter in latin:
        facing = table.get(letter)
        if facing is None:
            continue
        lost = facing[GAP]
        diagonal = row[0]
        left = diagonal + lost
        new = [left]
        for j, c in enumerate(columns, 1):
            above = row[j]
            best = diagonal + facing[c]
            if above + lost > best:
                best = above + lost
            if left + inserted[c] > best:
                best = left + inserted[c]
            diagonal = above
            left = best
            new.append(best)
        row = new
    return row
