"""A garden sized for a rain holds just that rain; its volume is the prismoid of its levels."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from interview.garden.earth.earthwork import average_end_area, prismoidal
from interview.garden.pond.hyetographs import StormShape, storm
from interview.garden.pond.pool import pool
from interview.garden.pond.routing import route
from interview.garden.size.basin import Basin, fit_to_area, fit_to_room, rain_held, required_area
from interview.quantities.units import magnitude, quantity

SHAPES = {
    "length": st.floats(2, 60),
    "width": st.floats(2, 40),
    "depth": st.floats(2, 18),
    "slope": st.floats(0, 6),
}


def inch(number):
    return quantity(number, "in")


def basin(length, width, depth, slope, freeboard=4.0):
    return Basin(quantity(length, "ft"), quantity(width, "ft"), inch(depth), slope, inch(freeboard))


@settings(max_examples=60, deadline=None)
@given(rain=st.floats(0.3, 1.5), area=st.floats(400, 3000), depth=st.floats(4, 10))
def test_a_burst_of_the_rain_held_stays_and_a_little_more_runs_over(rain, area, depth):
    """So short a rain leaves no time to soak: the storage alone is tried."""
    wanted = required_area(quantity(area, "ft**2"), inch(rain), inch(depth), 3, inch(4))
    if wanted.enlarged:
        return
    served = quantity(area, "ft**2")
    assert magnitude(rain_held(wanted.basin, served), "in") == pytest.approx(rain, rel=1e-9)
    garden = wanted.basin
    full = pool(garden.stage, served, garden.rim_area, quantity(1e-6, "in/h"))

    def spilled(part):
        burst = storm(StormShape.UNIFORM, inch(rain * part), quantity(0.001, "h"))
        return magnitude(route(full, burst).spill_volume, "ft**3")

    assert spilled(1 - 1e-6) == 0
    more = 1e-3
    over = magnitude(full.sending_area, "ft**2") * rain / 12 * more
    assert spilled(1 + more) == pytest.approx(over, rel=1e-2)


@settings(max_examples=80, deadline=None)
@given(**SHAPES)
def test_the_pond_is_a_prismoid_and_average_ends_overstate_it(length, width, depth, slope):
    garden = basin(length, width, depth, slope)
    ends = (garden.floor_area, garden.edge_area)
    exact = prismoidal(ends[0], garden.mid_area, ends[1], garden.depth)
    mean = average_end_area(*ends, garden.depth)
    volume = magnitude(garden.volume, "ft**3")
    assert magnitude(exact, "ft**3") == pytest.approx(volume, rel=1e-9)
    high = magnitude(garden.depth, "ft")
    # The mean of the ends is over by z^2 d^3 times 2/3, from the corners alone.
    assert magnitude(mean, "ft**3") - volume == pytest.approx(
        2 / 3 * slope**2 * high**3, rel=1e-6, abs=1e-9
    )


@settings(max_examples=80, deadline=None)
@given(**SHAPES, freeboard=st.floats(2, 8))
def test_a_room_of_an_area_is_filled_to_its_rim(length, width, depth, slope, freeboard):
    wanted = basin(length, width, depth, slope, freeboard)
    room = wanted.rim_area
    along = magnitude(wanted.mid_length, "ft") / magnitude(wanted.mid_width, "ft")
    found = fit_to_area(room, inch(depth), slope, inch(freeboard), length_to_width=along)
    assert magnitude(found.rim_area, "ft**2") == pytest.approx(magnitude(room, "ft**2"), rel=1e-9)
    assert magnitude(found.floor_length, "ft") == pytest.approx(length, rel=1e-6)
    assert magnitude(found.floor_width, "ft") == pytest.approx(width, rel=1e-6)


def test_a_room_too_small_for_its_sides_is_refused():
    with pytest.raises(ValueError, match="find more room"):
        fit_to_area(quantity(30, "ft**2"), inch(6), 3, inch(4))
    with pytest.raises(ValueError, match="more than zero"):
        fit_to_area(quantity(0, "ft**2"), inch(6), 3, inch(4))
    with pytest.raises(ValueError, match="longer than zero"):
        fit_to_room(quantity(0, "ft"), quantity(9, "ft"), inch(6), 3, inch(4))
