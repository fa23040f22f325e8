"""A limit forgives the last bits of a float, however large it is, and no measure beside it."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.quantities.guards import not_negative, positive, reaches, within
from interview.quantities.units import quantity

LIMITS = st.floats(-1e6, 1e6)


@given(LIMITS)
def test_a_number_at_its_limit_both_reaches_it_and_is_within_it(limit):
    for last in (math.nextafter(limit, -math.inf), limit, math.nextafter(limit, math.inf)):
        assert reaches(last, limit) and within(last, limit)
    beside = 1e-6 * max(1.0, abs(limit))
    assert not reaches(limit - beside, limit) and reaches(limit + beside, limit)
    assert not within(limit + beside, limit) and within(limit - beside, limit)


def test_what_is_written_in_two_units_is_at_the_same_limit():
    # A foot is 0.3048 m exactly: NIST Special Publication 811, appendix B.
    assert reaches(3048 / 0.3048, 10_000) and within(3048 / 0.3048, 10_000)


def test_nothing_is_not_negative_and_not_positive(subtests):
    assert not_negative(quantity(0, "ft"), "in", "No.") == 0
    assert positive(quantity(1, "ft"), "in", "No.") == pytest.approx(12)
    for number, refuse in [(0, positive), (-1, positive), (-1, not_negative),
                           (math.nan, not_negative), (math.inf, positive)]:  # fmt: skip
        with subtests.test(number=number), pytest.raises(ValueError, match="No"):
            refuse(quantity(number, "ft"), "in", "No.")
