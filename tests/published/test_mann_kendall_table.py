"""Probabilities of the Mann-Kendall score.

Gilbert, Statistical Methods for Environmental Pollution Monitoring, Van Nostrand Reinhold, 1987,
Table A18 (after Kendall): the chance that the score of n values in no order is S or more, three
figures. From memory, not checked against the page; every row is also counted here over all orders.
"""

from itertools import permutations

import pytest
from scipy.stats import kendalltau

from interview.garden.soak.mann_kendall import downward

ROWS = [
    (4, 0, 0.625),
    (4, 2, 0.375),
    (4, 4, 0.167),
    (4, 6, 0.042),
    (5, 4, 0.242),
    (5, 6, 0.117),
    (5, 8, 0.042),
    (5, 10, 0.0083),
    (6, 9, 0.068),
    (6, 11, 0.028),
    (7, 13, 0.035),
]


def with_score(count, score):
    """Return values in an order that has ``score`` more falls than rises."""
    for order in permutations(range(count)):
        if downward(order).score == -score:
            return order
    raise AssertionError


@pytest.mark.parametrize(("count", "score", "chance"), ROWS)
def test_the_chance_of_a_score_is_as_in_the_table(count, score, chance):
    found = downward(with_score(count, score))
    assert found.chance == pytest.approx(chance, abs=5e-4)


@pytest.mark.parametrize("values", [(3, 1, 2, 2), (5, 4, 4, 3, 3), (1, 1, 2, 3), (2, 2, 2, 2)])
def test_equal_values_are_counted_as_orders_that_look_alike(values):
    score = downward(values).score
    scores = [downward(order).score for order in permutations(values)]
    share = sum(one <= score for one in scores) / len(scores)
    assert downward(values).chance == pytest.approx(share)


@pytest.mark.parametrize(
    "values", [(9, 8, 7, 5, 6, 4), (1, 2, 3, 4), (6, 5, 7, 3, 2, 4, 1, 0), (4, 3, 2, 1, 5)]
)
def test_the_chance_agrees_with_another_library(values):
    order = range(len(values))
    other = kendalltau(order, values, method="exact", alternative="less")
    assert downward(values).chance == pytest.approx(other.pvalue)


def test_a_steady_fall_needs_four_values_to_be_told():
    assert not downward((3, 2, 1)).told
    assert not downward((3, 2, 1)).falling
    assert downward((4, 3, 2, 1)).falling
    assert not downward((4, 3, 1, 2)).falling
    assert not downward((2.0, 2.0, 2.0, 2.0)).falling


def test_no_value_is_refused():
    with pytest.raises(ValueError, match="reading first"):
        downward(())
