"""How deep the pond may be."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.garden.soak.depth import DepthRule, Governs, pond_depth
from interview.garden.soak.hole import Hole, HoleShape
from interview.garden.soak.rates import soak_test
from interview.garden.soak.readings import Reading
from interview.quantities.units import METRIC, magnitude, quantity


def inches(value):
    return magnitude(value, "in")


def rate(number):
    return quantity(number, "in/h")


@pytest.fixture
def eight_inch():
    """Round 8 in hole: 8, 6 7/8, 5 3/4, 4 7/8, 4 1/8 in at the full hours."""
    readings = [
        Reading(quantity(hour, "h"), quantity(depth, "in"))
        for hour, depth in enumerate([6.875, 5.75, 4.875, 4.125], 1)
    ]
    hole = Hole(HoleShape.ROUND, quantity(8, "in"))
    return soak_test(hole, quantity(8, "in"), readings)


def test_both_rules_leave_the_cap_to_govern_the_worked_hole(eight_inch):
    found = pond_depth(eight_inch.lower_drop_rate, eight_inch.corrected)
    # All the drop over all the time, 3 7/8 in over 4 h, is lower than the average since the fill.
    assert inches(found.drop_limit) == pytest.approx(24 * 3.875 / 4)
    assert inches(found.corrected_limit) == pytest.approx(11.8, abs=0.05)
    assert inches(found.depth) == 10
    assert found.governs is Governs.CAP
    assert magnitude(found.soonest_empty, "h") == pytest.approx(10 / (3.875 / 4))
    assert magnitude(found.latest_empty, "h") == pytest.approx(41, abs=0.5)
    assert not found.caution


def test_the_strict_rule_halves_the_worked_hole(eight_inch):
    found = pond_depth(eight_inch.drop_rate, eight_inch.corrected, rule=DepthRule.STRICT)
    assert inches(found.depth) == 5.5
    assert found.governs is Governs.CORRECTED_RATE


def test_the_custom_alone_carries_a_caution_where_the_bottom_does_not_agree():
    custom = pond_depth(rate(0.4), rate(0.1), rule=DepthRule.CUSTOM)
    assert inches(custom.depth) == 9.5
    assert custom.governs is Governs.DROP_RATE
    assert custom.caution
    both = pond_depth(rate(0.4), rate(0.1))
    assert inches(both.depth) == 4.5
    assert not both.caution
    assert not pond_depth(rate(0.4), rate(0.25), rule=DepthRule.CUSTOM).caution


def test_a_very_slow_hole_has_no_garden():
    found = pond_depth(rate(0.075), rate(0.01686))
    assert found.too_shallow
    assert inches(found.depth) == 0.5


def test_under_three_inches_is_too_shallow(subtests):
    for corrected, depth, too_shallow in [
        (3.0 / 48, 3.0, False),
        (2.99 / 48, 2.5, True),
        (3.49 / 48, 3.0, False),
    ]:
        with subtests.test(corrected=corrected, depth=depth, too_shallow=too_shallow):
            found = pond_depth(rate(1), rate(corrected))
            assert inches(found.depth) == depth
            assert found.too_shallow is too_shallow


def test_a_wish_for_less_than_three_inches_is_no_fault_of_the_soil():
    for drop, corrected, cap, refuses in [
        (1, 1, 2, False),
        (0.4, 1, 10, False),
        (1, 0.05, 10, True),
    ]:
        found = pond_depth(rate(drop), rate(corrected), cap=quantity(cap, "in"))
        assert found.soil_refuses is refuses


def test_metric_depths_go_down_to_whole_centimeters():
    found = pond_depth(
        quantity(25, "mm/h"),
        quantity(2.6, "mm/h"),
        cap=quantity(250, "mm"),
        step=METRIC,
    )
    assert magnitude(found.depth, "mm") == pytest.approx(120)
    assert magnitude(found.limit, "mm") == pytest.approx(124.8)


def test_soil_that_takes_nothing_gives_no_depth_and_no_time():
    found = pond_depth(rate(0), rate(0))
    assert inches(found.depth) == 0
    assert magnitude(found.latest_empty, "h") == 0
    custom = pond_depth(rate(0.5), rate(0), rule=DepthRule.CUSTOM)
    assert math.isinf(magnitude(custom.latest_empty, "h"))
    assert custom.caution


@given(st.floats(0, 3), st.floats(0, 1), st.floats(0.5, 18), st.sampled_from(DepthRule))
def test_the_depth_never_passes_a_limit_in_force(q, f, cap, rule):
    found = pond_depth(rate(q), rate(f), rule=rule, cap=quantity(cap, "in"))
    depth = inches(found.depth) - 1e-8
    assert depth <= cap
    assert rule is DepthRule.STRICT or depth <= q * 24
    assert rule is DepthRule.CUSTOM or depth <= f * (24 if rule is DepthRule.STRICT else 48)
    assert inches(found.limit) - inches(found.depth) < 0.5 + 1e-8
