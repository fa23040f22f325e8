"""How much of the rain runs off."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.garden.survey.runoff import (
    Cover,
    HydrologicGroup,
    LawnSurface,
    RunoffMethod,
    curve_number,
    runoff_depth,
    runoff_share,
)
from interview.quantities.units import magnitude, quantity

INCH = quantity(1, "in")


def test_lawn_sends_nothing_from_an_inch_on_the_open_soils(subtests):
    for group, rain, some in [
        ("A", 1.0, False),
        ("B", 1.0, False),
        ("C", 1.0, True),
        ("D", 1.0, True),
        ("B", 2.0, True),
    ]:
        with subtests.test(group=group, rain=rain, some=some):
            share = runoff_share(
                LawnSurface.LAWN, quantity(rain, "in"), group=HydrologicGroup(group)
            )
            assert (share > 0) is some


def test_an_unknown_soil_counts_as_the_tightest():
    assert runoff_share(LawnSurface.LAWN, INCH) == runoff_share(
        LawnSurface.LAWN, INCH, group=HydrologicGroup.D
    )


def test_by_curve_number_a_roof_sends_a_little_less_than_by_coefficient():
    share = runoff_share(LawnSurface.ROOF, INCH, method=RunoffMethod.CURVE_NUMBER)
    assert share == pytest.approx(0.7909, abs=5e-5)
    assert runoff_share(LawnSurface.LAWN, quantity(0, "in")) == 0


def test_the_share_is_what_runs_off_over_what_falls():
    """By hand: number 74 keeps 3.5135 in; of 2 in (2 - 0.7027)² / (2 + 2.8108) run off."""
    share = runoff_share(LawnSurface.LAWN, quantity(2, "in"), group=HydrologicGroup.C)
    assert share == pytest.approx((2 - 0.702703) ** 2 / (2 + 2.810811) / 2, rel=1e-5)
    # Number 1 keeps 990 in: of 300, 102² / 1092.
    most = runoff_depth(quantity(300, "in"), 1)
    assert magnitude(most, "in") == pytest.approx(102**2 / 1092)


def test_poor_lawn_sends_more_than_good_lawn():
    rain, group = quantity(2, "in"), HydrologicGroup.C
    good = runoff_share(LawnSurface.LAWN, rain, group=group)
    assert runoff_share(LawnSurface.LAWN, rain, group=group, cover=Cover.LAWN_POOR) > good


@given(st.floats(0, 10), st.sampled_from(Cover), st.sampled_from(HydrologicGroup))
def test_no_more_runs_off_than_fell(rain, cover, group):
    depth = runoff_depth(quantity(rain, "in"), curve_number(cover, group))
    assert 0 <= magnitude(depth, "in") <= rain


@given(st.floats(0.1, 10), st.floats(30, 100))
def test_units_do_not_matter_to_runoff(rain, number):
    us = runoff_depth(quantity(rain, "in"), number)
    si = runoff_depth(quantity(25.4 * rain, "mm"), number)
    assert magnitude(si, "mm") == pytest.approx(25.4 * magnitude(us, "in"), rel=1e-9, abs=1e-9)


def test_rain_and_curve_numbers_that_cannot_be_are_refused(subtests):
    for rain in (-1, float("inf"), float("nan")):
        with subtests.test(rain=rain), pytest.raises(ValueError, match="less than zero"):
            runoff_depth(quantity(rain, "in"), 80)
    for number in (0, -1, 101):
        with subtests.test(number=number), pytest.raises(ValueError, match="curve number"):
            runoff_depth(INCH, number)


def test_all_rain_runs_off_at_a_curve_number_of_a_hundred():
    """TR-55, equations 2-3 and 2-4: the storage is then nothing, and Q = P."""
    assert magnitude(runoff_depth(INCH, 100), "in") == 1
