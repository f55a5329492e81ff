"""Aligning the letters of a Latin and an English word, with weights learned from words known to be kin.

A weight is a log-odds: how much likelier two letters are to face each other in kin than in chance pairs. `c` and
`c` is strong evidence, `t` and `d` is weak, `t` and `g` is evidence against. Words that English borrowed keep
their letters; native cousins of one Indo-European root changed them by rule (p f, d t, c h), so they have weights
of their own.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from latingloss.tables import read_table

GAP = "-"
ALPHABET = "abcdefghilmnoprstuxz"
Weights = Mapping[str, Mapping[str, float]]  # Latin letter or GAP -> English letter or GAP -> log-odds


@cache
def weights(kind: str = "borrowed") -> Weights:
    """Return the shipped weights, natural-log odds: for words `borrowed` from Latin, or for `cousins` of one root.

    >>> borrowed, cousins = weights(), weights("cousins")
    >>> borrowed["t"]["t"] > borrowed["t"]["d"] > borrowed["t"]["g"], cousins["p"]["f"] > borrowed["p"]["f"]
    (True, True)
    """
    table: dict[str, dict[str, float]] = {}
    for latin, english, *odds in read_table("kin/letter_weights.tsv"):
        table.setdefault(latin, {})[english] = float(odds[kind == "cousins"])
    return table


def self_score(word: str, table: Weights) -> float:
    """Return the score of a folded word aligned with itself, the highest it can get."""
    return sum(table[c][c] for c in word)


def alignment_scores(latin: str, english: str, table: Weights) -> list[list[float]]:
    """Return the score of the best alignment of every beginning of one word with every beginning of another.

    The score of the first m letters with the first n stands in row m, place n; 0 is the empty beginning.

    It is the sum of the weights; higher is more alike. Both words are folded (`correspondences.letters`). Time is
    proportional to the product of the lengths.

    >>> port, part = (alignment_scores("port", english, weights())[-1][-1] for english in ("port", "part"))
    >>> port > part > 0
    True
    """
    inserted = table[GAP]
    added = [inserted[c] for c in english]
    row = [0.0]
    for weight in added:
        row.append(row[-1] + weight)
    rows = [row]
    for letter in latin:
        facing = table[letter]
        lost = facing[GAP]
        diagonal = row[0]
        left = diagonal + lost
        new = [left]
        for c, weight, above in zip(english, added, row[1:], strict=True):
            best = diagonal + facing[c]
            if above + lost > best:
                best = above + lost
            if left + weight > best:
                best = left + weight
            diagonal = above
            left = best
            new.append(best)
        row = new
        rows.append(row)
    return rows
