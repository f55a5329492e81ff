"""How sure a link is, as a probability."""

from __future__ import annotations

from bisect import bisect_right

from latingloss.alignment.evidence import Pair

# Belief and the share of links so believed that two annotators also made, a rising line through the 870 links of
# the 50 hand-aligned pairs (alignment-dev); lowered a little at the foot, where there are few.
_BELIEFS = (0.0, 0.3, 0.6, 0.8, 0.95, 1.0)
_SHARES = (0.75, 0.82, 0.86, 0.95, 0.965, 0.99)


def calibrated(belief: float) -> float:
    """Return the probability that a link believed so much is right.

    >>> calibrated(0.0), calibrated(0.7) < calibrated(0.9), calibrated(1.0)
    (0.75, True, 0.99)
    """
    right = min(bisect_right(_BELIEFS, belief), len(_BELIEFS) - 1)
    left = right - 1
    part = (belief - _BELIEFS[left]) / (_BELIEFS[right] - _BELIEFS[left])
    return min(_SHARES[-1], _SHARES[left] + part * (_SHARES[right] - _SHARES[left]))


def confidence(pair: Pair, word: int, unit: int) -> float:
    """Return the probability that a decided link is right.

    A word of grammar is believed as much as the content word whose Latin it joined, if that is more.
    """
    beliefs = [float(pair.belief[word, unit])]
    beliefs += [
        float(pair.belief[j, unit]) for j, units in enumerate(pair.links) if unit in units and not pair.is_function(j)
    ]
    return calibrated(max(beliefs))
