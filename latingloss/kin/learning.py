"""Learning the letter weights: expectation-maximisation over pairs of kin, used when the data is built."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from math import log

from latingloss.kin.letters import ALPHABET, GAP, Weights

_SMOOTHING = 0.2  # pseudo-count of every pair of letters
_START = 0.8  # probability that a letter faces itself, before anything is learned

Pair = tuple[str, str]


def learn_weights(pairs: Iterable[Pair], *, rounds: int = 8) -> Weights:
    """Return log-odds of letter pairs learned from folded (Latin stem, English stem) pairs by EM.

    Each round sums the expected counts over all alignments (forward and backward passes) and re-estimates the
    joint probabilities (Ristad and Yianilos 1998, Learning string-edit distance). Deterministic.

    >>> table = learn_weights([("porta", "port"), ("arte", "art"), ("capit", "capt")])
    >>> table["t"]["t"] > table["t"]["p"]
    True
    """
    known = [(_within(a), _within(b)) for a, b in pairs]
    symbols = [*ALPHABET, GAP]
    joint = {a: {b: _START if a == b else (1 - _START) / len(symbols) for b in symbols} for a in symbols}
    joint[GAP][GAP] = 0.0
    for _ in range(rounds):
        counts = {a: dict.fromkeys(symbols, _SMOOTHING) for a in symbols}
        counts[GAP][GAP] = 0.0
        for latin, english in known:
            _expect(latin, english, joint, counts=counts)
        total = sum(sum(row.values()) for row in counts.values())
        joint = {a: {b: n / total for b, n in row.items()} for a, row in counts.items()}
    return _log_odds(joint)


def _within(word: str) -> str:
    return "".join(c for c in word if c in ALPHABET)


def _expect(latin: str, english: str, joint: Weights, *, counts: dict[str, dict[str, float]]) -> None:
    """Add the expected number of times each pair of letters is aligned in one pair of words."""
    n, m = len(latin), len(english)
    forward = _forward(latin, english, joint)
    backward = _forward(latin[::-1], english[::-1], joint)
    whole = forward[n][m]
    for i in range(n + 1):
        for j in range(m + 1):
            here = forward[i][j] / whole
            if i < n and j < m:
                a, b = latin[i], english[j]
                counts[a][b] += here * joint[a][b] * backward[n - i - 1][m - j - 1]
            if i < n:
                counts[latin[i]][GAP] += here * joint[latin[i]][GAP] * backward[n - i - 1][m - j]
            if j < m:
                counts[GAP][english[j]] += here * joint[GAP][english[j]] * backward[n - i][m - j - 1]


def _forward(latin: str, english: str, joint: Weights) -> list[list[float]]:
    table = [[0.0] * (len(english) + 1) for _ in range(len(latin) + 1)]
    table[0][0] = 1.0
    for i in range(len(latin) + 1):
        for j in range(len(english) + 1):
            total = table[i][j]
            if i:
                total += table[i - 1][j] * joint[latin[i - 1]][GAP]
            if j:
                total += table[i][j - 1] * joint[GAP][english[j - 1]]
            if i and j:
                total += table[i - 1][j - 1] * joint[latin[i - 1]][english[j - 1]]
            table[i][j] = total
    return table


def _log_odds(joint: Weights) -> Weights:
    latin = {a: sum(joint[a].values()) for a in joint}
    english: dict[str, float] = defaultdict(float)
    for row in joint.values():
        for b, p in row.items():
            english[b] += p
    # a lost or added letter is compared with a chance pair of letters, not with a chance gap
    return {
        a: {
            b: round(log(p / (latin[a] if b == GAP else english[b] if a == GAP else latin[a] * english[b])), 3)
            for b, p in row.items()
            if p
        }
        for a, row in joint.items()
    }
