"""A garden sized for a rain holds just that rain; its volume is the prismoid of its levels."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from measures import inch

from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.pond.hyetographs import StormShape, storm
from interview.garden.pond.pool import pool
from interview.garden.pond.routing import route
from interview.garden.size.basin import rain_held, required_area
from interview.quantities.units import magnitude, quantity

SHAPES = {
    "length": st.floats(2, 60),
    "width": st.floats(2, 40),
    "depth": st.floats(2, 18),
    "slope": st.floats(0, 6),
}


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
    bed = wanted.basin
    full = pool(bed.stage, served, bed.rim_area, quantity(1e-6, "in/h"))

    def spilled(part):
        burst = storm(StormShape.UNIFORM, inch(rain * part), quantity(0.001, "h"))
        return magnitude(route(full, burst).spill_volume, "ft**3")

    assert spilled(1 - 1e-6) == pytest.approx(0, abs=1e-4)
    more = 1e-3
    came = (area + magnitude(bed.rim_area, "ft**2")) * rain / 12
    assert spilled(1 + more) == pytest.approx(came * more, rel=1e-2)


@settings(max_examples=80, deadline=None)
@given(**SHAPES)
def test_the_pond_is_the_prismoid_of_its_floor_middle_and_edge(length, width, depth, slope):
    """The prismoidal rule of earthwork: exact for sides of one slope (common practice)."""
    for shape in (FloorShape.RECTANGLE, FloorShape.ROUNDED, FloorShape.OVAL):
        garden = replace(basin(length, width, depth, slope), shape=shape)
        ends = magnitude(garden.floor_area + garden.edge_area, "ft**2")
        middle = magnitude(garden.mid_area, "ft**2")
        exact = (ends + 4 * middle) / 6 * depth / 12
        assert magnitude(garden.volume, "ft**3") == pytest.approx(exact, rel=1e-9)
