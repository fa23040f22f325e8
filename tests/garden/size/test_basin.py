"""The size of the garden."""

import math
from dataclasses import replace

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from measures import feet, ft, ft2, inch
from scipy.integrate import quad

from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.size.basin import (
    drawn,
    rain_held,
    recommended_area,
    required_area,
    rule_of_thumb_area,
    split_advised,
)
from interview.garden.size.room import fit_to_room
from interview.quantities.units import METRIC, US, magnitude, quantity


def rectangle(*args, **more):
    """Size a rectangle, as the worked gardens are."""
    return required_area(*args, shape=FloorShape.RECTANGLE, **more)


def roof_570(depth=6, side_slope=3, mid_area=132.65):
    """570 weighted square feet, an inch of rain, 4 in above the pond.

    The worked gardens are twice as long as wide at half their depth, where the area is
    ``mid_area``: so much longer is the floor.
    """
    wide, less = math.sqrt(mid_area / 2), side_slope * depth / 12
    along = (2 * wide - less) / (wide - less)
    return rectangle(ft2(570), inch(1), inch(depth), side_slope, inch(4), length_to_width=along)


def bed(length, width, depth=6.0, slope=3, freeboard=4.0):
    return Basin(ft(length), ft(width), inch(depth), slope, inch(freeboard))


def sides(basin, part):
    return [feet(getattr(basin, f"{part}_length")), feet(getattr(basin, f"{part}_width"))]


def test_the_worked_garden_for_a_roof_of_570_square_feet():
    found = roof_570()
    assert magnitude(found.mid_area, "ft**2") == pytest.approx(132.7, abs=0.05)
    assert magnitude(found.recommended, "ft**2") == 140
    assert magnitude(found.rule_of_thumb, "ft**2") == pytest.approx(95)
    assert sides(found.basin, "floor") == pytest.approx([14.79, 6.644], rel=5e-4)
    assert sides(found.basin, "edge") == pytest.approx([17.79, 9.644], rel=5e-4)
    assert sides(found.basin, "rim") == pytest.approx([19.79, 11.64], rel=5e-4)
    assert magnitude(found.basin.volume, "ft**3") == pytest.approx(66.70, abs=0.005)
    assert not found.enlarged


def test_steeper_sides_need_less_and_a_shallower_pond_more():
    steep, shallow = roof_570(6, 2, 125.79), roof_570(4, 3, 224.33)
    assert magnitude(steep.mid_area, "ft**2") == pytest.approx(125.8, abs=0.05)
    assert magnitude(shallow.mid_area, "ft**2") == pytest.approx(224.3, abs=0.05)


def test_the_worked_metric_garden():
    found = rectangle(
        quantity(62, "m**2"),
        quantity(25, "mm"),
        quantity(150, "mm"),
        3,
        quantity(100, "mm"),
        length_to_width=4.8827 / 2.2164,
        system=METRIC,
    )
    assert magnitude(found.mid_area, "m**2") == pytest.approx(14.22, abs=5e-3)
    assert magnitude(found.basin.floor_length, "m") == pytest.approx(4.883, abs=5e-4)
    assert magnitude(found.basin.floor_width, "m") == pytest.approx(2.216, abs=5e-4)
    assert magnitude(found.basin.volume, "m**3") == pytest.approx(2.143, abs=5e-4)
    assert magnitude(found.recommended, "m**2") == 15
    pegs = drawn(found, METRIC)
    assert magnitude(pegs.floor_width, "m") == pytest.approx(2.3)
    as_worked = replace(pegs, floor_length=quantity(4.9, "m"))
    held = rain_held(as_worked, quantity(62, "m**2"))
    assert magnitude(held, "mm") == pytest.approx(25.68, abs=5e-3)


def test_the_worked_garden_as_drawn():
    basin = bed(15, 7)
    assert magnitude(drawn(roof_570()).floor_width, "ft") == 7
    assert magnitude(basin.volume, "ft**3") == pytest.approx(70.5)
    assert magnitude(basin.rim_area, "ft**2") == pytest.approx(240)
    assert magnitude(basin.mid_area, "ft**2") == pytest.approx(140.25)
    assert magnitude(rain_held(basin, ft2(570)), "in") == pytest.approx(1.044, abs=5e-4)


def test_a_room_of_16_by_11_feet_holds_what_was_worked():
    basin = fit_to_room(ft(16), ft(11), bed(3, 3))
    assert sides(basin, "floor") == pytest.approx([11, 6], abs=0.006)
    assert sides(basin, "rim") == pytest.approx([16, 11], abs=0.006)
    assert magnitude(basin.volume, "ft**3") == pytest.approx(47.25, rel=2e-3)
    assert magnitude(rain_held(basin, ft2(570)), "in") == pytest.approx(0.7601, rel=2e-3)


def test_a_room_narrower_than_its_slopes_is_refused():
    with pytest.raises(ValueError, match="too narrow"):
        fit_to_room(ft(16), ft(6.9), bed(3, 3))
    assert fit_to_room(ft(16), ft(7), bed(3, 3))


def test_a_pond_no_deeper_than_the_rain_is_refused():
    with pytest.raises(ValueError, match="deeper than the rain"):
        required_area(ft2(570), inch(6), inch(6), 3, inch(4))


def test_a_garden_with_next_to_no_water_is_made_wide_enough_to_dig():
    with pytest.raises(ValueError, match="add one first"):
        required_area(ft2(0), inch(1), inch(6), 3, inch(4))
    slopes_alone = required_area(ft2(0.1), inch(0.3), inch(10), 3, inch(0))
    assert slopes_alone.enlarged
    assert sides(slopes_alone.basin, "floor") == [4, 2]
    small = required_area(ft2(20), inch(1), inch(6), 3, inch(4))
    assert small.enlarged
    assert min(sides(drawn(small), "floor")) == 2


@pytest.mark.parametrize(
    "change",
    [
        {"floor_width": ft(0)},
        {"depth": ft(-1)},
        {"side_slope": -1},
        {"freeboard": ft(-1)},
        {"floor_length": ft(float("nan"))},
    ],
)
def test_a_basin_that_cannot_be_is_refused(change):
    given_sizes = {
        "floor_length": ft(10),
        "floor_width": ft(5),
        "depth": ft(0.5),
        "side_slope": 3,
        "freeboard": ft(0.5),
    }
    with pytest.raises(ValueError, match=r"[a-z]\.$"):
        Basin(**{**given_sizes, **change})


def test_heights_outside_the_basin_are_refused():
    basin = drawn(roof_570())
    with pytest.raises(ValueError, match="between the floor and the rim"):
        basin.area_at(inch(10.1))
    with pytest.raises(ValueError, match="between the floor and the rim"):
        basin.volume_to(inch(-1))


def test_large_gardens_are_to_be_split():
    assert not split_advised(ft2(300))
    assert split_advised(ft2(300.1))


def test_areas_are_recommended_upward():
    assert magnitude(recommended_area(ft2(132.7)), "ft**2") == 140
    assert magnitude(recommended_area(ft2(140)), "ft**2") == 140


BASINS = {
    "length": st.floats(2, 60),
    "width": st.floats(2, 40),
    "depth": st.floats(1, 18),
    "slope": st.floats(0, 5),
    "freeboard": st.floats(0, 12),
}


@given(**BASINS)
def test_the_volume_is_the_sum_of_its_level_slices(length, width, depth, slope, freeboard):
    basin = Basin(ft(length), ft(width), inch(depth), slope, inch(freeboard))
    total, _ = quad(lambda h: magnitude(basin.area_at(ft(h)), "ft**2"), 0, depth / 12)
    assert magnitude(basin.volume, "ft**3") == pytest.approx(total, rel=1e-8)


CASES = {
    "area": st.floats(100, 3000),
    "rain": st.floats(0.25, 2),
    "depth": st.floats(3, 12),
    "slope": st.floats(0, 4),
    "freeboard": st.floats(0, 8),
    "long": st.floats(1, 4),
}


@given(**CASES)
def test_the_required_basin_holds_exactly_the_rain(area, rain, depth, slope, freeboard, long):
    assume(depth > 1.2 * rain)
    found = required_area(
        ft2(area), inch(rain), inch(depth), slope, inch(freeboard), length_to_width=long
    )
    assume(not found.enlarged)
    assert magnitude(rain_held(found.basin, ft2(area)), "in") == pytest.approx(rain, rel=1e-9)
    floor_length, floor_width = sides(found.basin, "floor")
    assert floor_length / floor_width == pytest.approx(long)


@given(**CASES, system=st.sampled_from([US, METRIC]))
def test_what_is_drawn_never_holds_less_than_the_rain(
    area, rain, depth, slope, freeboard, long, system
):
    assume(depth > 1.05 * rain)
    found = required_area(
        ft2(area), inch(rain), inch(depth), slope, inch(freeboard), length_to_width=long
    )
    basin = drawn(found, system)
    assert magnitude(rain_held(basin, ft2(area)), "in") >= rain * (1 - 1e-8)
    step, unit = (0.5, "ft") if system == US else (100, "mm")
    for side in (basin.floor_length, basin.floor_width):
        steps = magnitude(side, unit) / step
        assert steps == pytest.approx(round(steps), abs=1e-6)
        assert magnitude(side, "ft") >= 1.9685 - 1e-6


@given(**CASES, more=st.floats(1.01, 1.5))
def test_area_grows_with_roof_and_rain_and_falls_with_depth(
    area, rain, depth, slope, freeboard, long, more
):
    assume(depth > 1.2 * rain * more)

    def size(roof, fall, pond):
        found = required_area(
            ft2(roof), inch(fall), inch(pond), slope, inch(freeboard), length_to_width=long
        )
        assume(not found.enlarged)
        return magnitude(found.mid_area, "ft**2")

    base = size(area, rain, depth)
    assert size(area * more, rain, depth) > base
    assert size(area, rain * more, depth) > base
    # With no sides to grow, more depth can only mean less area.
    flat = required_area(ft2(area), inch(rain), inch(depth), 0, inch(freeboard))
    deeper = required_area(ft2(area), inch(rain), inch(depth * more), 0, inch(freeboard))
    assume(not deeper.enlarged)
    assert magnitude(deeper.mid_area, "ft**2") < magnitude(flat.mid_area, "ft**2")


@given(depth=st.floats(3, 9), more=st.floats(1.05, 1.4))
def test_a_usual_garden_shrinks_as_it_is_made_deeper(depth, more):
    shallow, deep = roof_570(depth), roof_570(depth * more)
    assert deep.mid_area < shallow.mid_area


@given(**CASES)
def test_units_do_not_matter_to_size(area, rain, depth, slope, freeboard, long):
    assume(depth > 1.2 * rain)
    us = required_area(
        ft2(area), inch(rain), inch(depth), slope, inch(freeboard), length_to_width=long
    )
    si = required_area(
        quantity(area * 0.3048**2, "m**2"),
        quantity(rain * 25.4, "mm"),
        quantity(depth * 2.54, "cm"),
        slope,
        quantity(freeboard * 0.0254, "m"),
        length_to_width=long,
    )
    assert magnitude(si.mid_area, "ft**2") == pytest.approx(
        magnitude(us.mid_area, "ft**2"), rel=1e-9
    )


def test_the_rule_of_thumb_is_a_tenth_at_ten_inches():
    assert magnitude(rule_of_thumb_area(ft2(900), inch(1), inch(10)), "ft**2") == pytest.approx(90)
