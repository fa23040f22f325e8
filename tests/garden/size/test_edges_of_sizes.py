"""What a size is refused for, and where the least and the largest floor lie."""

import math

import pytest
from measures import feet, ft, ft2, inch, mm, quantity

from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.size.basin import exact_width, required_area, smallest, unit_floor
from interview.garden.size.room import fit_to_room, shaped_to_room
from interview.quantities.units import METRIC, magnitude


@pytest.mark.parametrize(
    ("slope", "long"),
    [(-1, 2), (math.inf, 2), (math.nan, 2), (3, 0), (3, -1), (3, math.inf), (3, math.nan)],
)
def test_a_slope_or_a_form_that_is_no_number_is_refused(slope, long):
    with pytest.raises(ValueError, match="plain numbers over zero"):
        required_area(ft2(500), inch(1), inch(6), slope, inch(2), length_to_width=long)


@pytest.mark.parametrize("z", [0.5, 3.0])
def test_sides_that_hold_more_than_comes_need_no_floor(z):
    """Corners alone hold 4 z^2 d^3 / 3: 0.33 and 12 cubic feet, of which next to none comes."""
    unit = unit_floor(FloorShape.RECTANGLE, 2.0)
    assert exact_width(unit, 0.001, 0.01, 1.0, z, 0.0) == 0
    assert exact_width(unit, 1e4, 0.01, 1.0, z, 0.0) > 1


def test_a_floor_of_two_hundred_feet_is_found_and_none_without_end():
    bed = Basin(ft(2), ft(2), inch(6), 3, inch(2), FloorShape.RECTANGLE)

    def wide(least):
        enough = lambda one: feet(one.floor_width) >= least - 1e-9  # noqa: E731
        return feet(smallest(bed, enough, length_to_width=1.0).floor_width)

    assert wide(200) == pytest.approx(200)
    with pytest.raises(ValueError, match=r"[a-z]\.$"):
        wide(math.inf)


@pytest.mark.parametrize("start", [None, ft(2), ft(9), ft(40)])
def test_the_smallest_is_found_from_wherever_the_search_begins(start):
    bed = Basin(ft(2), ft(2), inch(6), 3, inch(2), FloorShape.RECTANGLE)
    for least in (2.0, 2.5, 7.5, 11.5, 39.5):
        enough = lambda one, least=least: feet(one.floor_width) >= least - 1e-9  # noqa: E731
        found = smallest(bed, enough, length_to_width=1.5, start=start)
        assert feet(found.floor_width) == pytest.approx(max(least, feet(start or ft(0))))


def test_in_meters_the_narrowest_floor_is_600_millimeters():
    """Sides of 2:1 and 200 mm deep take 800 mm of a room 1.405 m wide: 605 mm are left."""
    bed = Basin(mm(2000), mm(1000), mm(150), 2, mm(50), FloorShape.RECTANGLE)
    room = (quantity(6, "m"), quantity(1.405, "m"))
    found = shaped_to_room(bed, room, lambda one: True, METRIC)
    assert found is not None
    assert magnitude(found.floor_width, "mm") == pytest.approx(600)


def test_next_to_no_water_in_meters_makes_a_floor_of_600_millimeters():
    found = required_area(
        quantity(0.5, "m**2"), mm(10), mm(150), 2, mm(50), length_to_width=2.0, system=METRIC
    )
    assert magnitude(found.basin.floor_width, "mm") == pytest.approx(600)


@pytest.mark.parametrize(("slope", "steeper"), [(3.0, True), (2.0, False)])
def test_a_room_too_small_asks_for_steeper_sides_where_there_are_any(slope, steeper):
    """Sides of 2:1 are the steepest that are told of."""
    bed = Basin(ft(4), ft(4), inch(6), slope, inch(2), FloorShape.RECTANGLE)
    with pytest.raises(ValueError, match="find more room") as refused:
        fit_to_room(ft(3), ft(3), bed)
    assert ("steeper sides" in str(refused.value)) is steeper
