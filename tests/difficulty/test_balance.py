"""The statistics that the figures on frequency domains and on the balance of the score are made with."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from benchmarks.balance import explained
from benchmarks.domains import spearman

pairs = st.lists(st.tuples(st.integers(-50, 50), st.integers(-50, 50)), min_size=5, max_size=30).filter(
    lambda rows: all(len({row[side] for row in rows}) > 1 for side in (0, 1))
)


def test_spearman_by_hand():
    """Spearman (1904): 1 - 6 sum d^2 / (n (n^2 - 1)) without ties; here d = 2, 0, 1, 1, 4."""
    assert spearman([1, 2, 3, 4, 5], [2, 1, 3, 6, 0.5]) == pytest.approx(1 - 6 * 22 / (5 * 24))


@given(pairs)
def test_ranks_alone_count(rows):
    one, other = zip(*rows, strict=True)
    assert spearman(one, other) == pytest.approx(spearman([x**3 for x in one], [2 * y + 1 for y in other]))


@given(pairs)
def test_one_cause_explains_the_square_of_its_correlation(rows):
    one, other = (np.array(side, dtype=float) for side in zip(*rows, strict=True))
    assert explained(one, other[None]) == pytest.approx(np.corrcoef(one, other)[0, 1] ** 2, abs=1e-9)
