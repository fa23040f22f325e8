"""What a garden holds as it was dug, against shapes that other libraries and formulas know."""

from __future__ import annotations

import math

import pytest
from shapely.geometry import LineString, box

from interview.garden.afterwards.as_built import AsBuilt, Levels, above
from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.quantities.units import magnitude, quantity

ROUND = 512
"""Points that shapely takes for a quarter of a circle."""


def inches(value):
    return quantity(value, "in")


def levels(*floor, cover=0.0, notch=0.0, rim=None, inlet=None):
    return Levels(
        tuple(inches(one) for one in floor),
        inches(cover),
        inches(notch),
        None if rim is None else inches(rim),
        None if inlet is None else inches(inlet),
    )


def bed(long=15.0, wide=7.0, slope=3.0, shape=FloorShape.RECTANGLE):
    feet = (quantity(one, "ft") for one in (long, wide))
    return Basin(*feet, inches(6.0), slope, inches(4.0), shape).stage


def prism(areas, height):
    """The prismoidal formula, exact for a solid whose area changes as a square of the height."""
    bottom, middle, top = areas
    return height / 6 * (bottom + 4 * middle + top)


def test_a_floor_an_inch_high_holds_the_frustum_of_five_inches():
    # Sides of a rectangle 3 out for 1 up, by the prismoidal formula.
    dug = AsBuilt(levels(11.0, notch=6.0), bed())
    at = [(15 + 6 * h) * (7 + 6 * h) for h in (0, 2.5 / 12, 5 / 12)]
    assert magnitude(dug.depth, "in") == pytest.approx(5)
    assert magnitude(dug.volume, "ft**3") == pytest.approx(prism(at, 5 / 12))
    full = prism([(15 + 6 * h) * (7 + 6 * h) for h in (0, 3 / 12, 6 / 12)], 6 / 12)
    assert dug.share == pytest.approx(prism(at, 5 / 12) / full)
    assert magnitude(dug.shallower, "in") == pytest.approx(1)


def test_round_ends_hold_what_shapely_grows_them_to(subtests):
    middle = LineString([(-3.5, 0), (3.5, 0)])
    for deep in (2.0, 5.0, 7.5):
        with subtests.test(deep=deep):
            dug = AsBuilt(levels(4 + deep, notch=4.0), bed(14.0, 7.0, 2.0, FloorShape.ROUNDED))
            areas = [
                middle.buffer(3.5 + 2 * h, quad_segs=ROUND).area for h in (0, deep / 24, deep / 12)
            ]
            assert magnitude(dug.volume, "ft**3") == pytest.approx(
                prism(areas, deep / 12), rel=1e-5
            )


def test_an_uneven_floor_holds_the_mean_of_its_points():
    # A floor with upright sides, sloping by 2 in: a wedge under a level box, by shapely.
    floor = quantity(15.0, "ft"), quantity(7.0, "ft")
    upright = Basin(*floor, inches(6.0), 0.0, inches(4.0)).stage
    dug = AsBuilt(levels(11.0, 12.0, 13.0, notch=6.0), upright)
    section = box(0, 0, 15, 5 / 12).area + 15 * (2 / 12) / 2
    assert magnitude(dug.volume, "ft**3") == pytest.approx(section * 7)
    assert magnitude(dug.deepest, "in") == pytest.approx(7)
    assert magnitude(dug.levels.floor_spread, "in") == pytest.approx(2)
    # 7 in over the lowest point, at a quarter of an inch an hour.
    hours = dug.hours_to_empty(quantity(0.25, "in/h"))
    assert magnitude(hours, "h") == pytest.approx(28)


def test_only_differences_count_so_any_level_line_will_do():
    one = AsBuilt(levels(12.0, 11.5, notch=6.0, rim=1.0, inlet=5.0), bed())
    two = AsBuilt(levels(-8.0, -8.5, notch=-14.0, rim=-19.0, inlet=-15.0), bed())
    assert magnitude(one.volume, "ft**3") == pytest.approx(magnitude(two.volume, "ft**3"))
    rims = [magnitude(above(each.levels.rim, each.levels.notch), "in") for each in (one, two)]
    assert rims == pytest.approx([5, 5])


def test_what_is_still_to_lie_on_the_floor_takes_its_room():
    bare = AsBuilt(levels(17.0, cover=5.0, notch=6.0), bed())
    done = AsBuilt(levels(12.0, notch=6.0), bed())
    assert magnitude(bare.volume, "ft**3") == pytest.approx(magnitude(done.volume, "ft**3"))
    assert bare.share == pytest.approx(1)


def test_the_deepest_water_stands_over_the_lowest_point_and_what_lies_on_it():
    # Dug 18 in under the notch at the lowest, of which 5 in are mulch and compost.
    dug = AsBuilt(levels(22.0, 24.0, cover=5.0, notch=6.0), bed())
    assert magnitude(dug.deepest, "in") == pytest.approx(13)
    foot = AsBuilt(levels(18.0, notch=6.0), bed())
    assert magnitude(foot.hours_to_empty(quantity(0.5, "in/h")), "h") == pytest.approx(24)


def test_it_holds_no_more_than_to_the_lowest_place_of_the_rim():
    low = AsBuilt(levels(12.0, notch=6.0, rim=8.0), bed())
    assert low.levels.over_rim and magnitude(low.depth, "in") == pytest.approx(4)
    high = AsBuilt(levels(12.0, notch=6.0, rim=5.9), bed())
    assert not high.levels.over_rim and magnitude(high.depth, "in") == pytest.approx(6)
    assert not levels(12.0, notch=6.0, rim=6.0).over_rim


def test_a_floor_at_the_notch_holds_nothing_and_is_empty_at_once():
    dug = AsBuilt(levels(5.0, notch=6.0), bed())
    assert magnitude(dug.volume, "ft**3") == 0 and dug.share == 0
    assert magnitude(dug.hours_to_empty(quantity(0.25, "in/h")), "h") == 0
    one = AsBuilt(levels(7.0, notch=6.0), bed())
    assert magnitude(one.hours_to_empty(quantity(0.0, "in/h")), "h") == math.inf


def test_the_rain_it_holds_fills_it_from_all_that_sends_water():
    dug = AsBuilt(levels(12.0, notch=6.0), bed())
    # 70.5 ft3 (the planned frustum, see above) over 810 ft2 is 1.0444 in.
    held = dug.rain_held(quantity(810.0, "ft**2"))
    assert magnitude(held, "in") == pytest.approx(70.5 / 810 * 12)


@pytest.mark.parametrize("wrong", [{"cover": -1.0}, {"notch": math.nan}, {"rim": math.inf}])
def test_readings_that_cannot_be_are_refused(wrong):
    with pytest.raises(ValueError):
        levels(12.0, **wrong)


def test_a_floor_that_was_not_read_is_refused():
    with pytest.raises(ValueError, match="Read the floor"):
        levels()
