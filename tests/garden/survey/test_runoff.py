"""How much of the rain runs off."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.garden.soak.texture import Texture
from interview.garden.survey.runoff import (
    Cover,
    DrainingSurface,
    HydrologicGroup,
    LawnSurface,
    RunoffMethod,
    curve_number,
    group_of_rate,
    group_of_texture,
    runoff_depth,
    runoff_share,
    weighted_area,
)
from interview.quantities.units import magnitude, quantity

INCH = quantity(1, "in")


def square_feet(number):
    return quantity(number, "ft**2")


def test_the_weighted_area_is_area_times_share_times_coefficient():
    yard = [
        DrainingSurface(LawnSurface.ROOF, square_feet(775.4), 0.5),
        DrainingSurface(LawnSurface.PAVED, square_feet(120)),
        DrainingSurface(LawnSurface.GRAVEL, square_feet(100)),
        DrainingSurface(LawnSurface.COMPACTED, square_feet(40), 0.5),
    ]
    expected = 775.4 * 0.5 * 0.95 + 120 * 0.95 + 100 * 0.25 + 20 * 0.25
    assert magnitude(weighted_area(yard, INCH), "ft**2") == pytest.approx(expected)


def test_a_local_coefficient_replaces_the_usual_one():
    drive = DrainingSurface(LawnSurface.GRAVEL, square_feet(100), local_coefficient=0.7)
    assert magnitude(weighted_area([drive], INCH), "ft**2") == pytest.approx(70)


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


def test_the_tested_rate_names_the_soil_group(subtests):
    for rate, group in [(0.31, "A"), (0.30, "B"), (0.15, "C"), (0.05, "D"), (0.0, "D")]:
        with subtests.test(rate=rate, group=group):
            assert group_of_rate(quantity(rate, "in/h")) is HydrologicGroup(group)


def test_the_texture_names_the_soil_group(subtests):
    for texture, group in [
        (Texture.SANDY_LOAM, "A"),
        (Texture.LOAM, "B"),
        (Texture.SANDY_CLAY_LOAM, "C"),
        (Texture.CLAY_LOAM, "D"),
        (Texture.CLAY, "D"),
    ]:
        with subtests.test(texture=texture, group=group):
            assert group_of_texture(texture) is HydrologicGroup(group)


def test_surfaces_that_cannot_be_are_refused(subtests):
    for wrong in [
        DrainingSurface(LawnSurface.ROOF, square_feet(-1)),
        DrainingSurface(LawnSurface.ROOF, square_feet(10), share=1.1),
        DrainingSurface(LawnSurface.ROOF, square_feet(10), local_coefficient=1.2),
    ]:
        with subtests.test(wrong=wrong), pytest.raises(ValueError, match=r"[a-z01]\.$"):
            weighted_area([wrong], INCH)


def test_rain_and_curve_numbers_that_cannot_be_are_refused():
    with pytest.raises(ValueError, match="less than zero"):
        runoff_depth(quantity(-1, "in"), 80)
    with pytest.raises(ValueError, match="curve number"):
        runoff_depth(INCH, 101)
