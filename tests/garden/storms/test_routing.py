"""Storms through the garden."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from measures import cubic, depth_at, fallen_by, h, hours, inch, inches, intensity_at
from scipy.integrate import quad

from interview.garden.form.basin import Basin
from interview.garden.pond.hyetographs import (
    StormShape,
    again,
    storm,
    triangle_storm,
    type_ii_storm,
    uniform_storm,
)
from interview.garden.pond.pool import Pool, pool
from interview.garden.pond.routing import caught, route
from interview.garden.pond.stage import StageCurve
from interview.garden.size.basin import drawn, rain_held, required_area
from interview.quantities.units import magnitude, quantity


def pooled(basin, area, rate):
    return pool(basin.stage, quantity(area, "ft**2"), basin.rim_area, quantity(rate, "in/h"))


@pytest.fixture
def garden():
    """Floor 15 x 7 ft, 6 in deep, sides 3:1, 4 in above, 570 ft2, taking 0.25 in/h."""
    basin = Basin(quantity(15, "ft"), quantity(7, "ft"), inch(6), 3, inch(4))
    return pooled(basin, 570, 0.25)


def test_the_pool_of_the_worked_garden(garden):
    assert magnitude(garden.sending_area, "ft**2") == pytest.approx(810)
    assert cubic(garden.stage.volume) == pytest.approx(70.5)
    assert inches(garden.rain_held) == pytest.approx(1.044, abs=5e-4)


def test_an_inch_in_a_triangle_stays_below_the_brim(garden):
    """Worked independently, as all the numbers of this garden: by a general solver."""
    found = route(garden, triangle_storm(inch(1)))
    assert inches(found.peak) == pytest.approx(4.6820, abs=5e-5)
    assert cubic(found.spill_volume) == 0
    assert found.share_caught == 1
    assert hours(found.hours_on_floor) == pytest.approx(24.211, abs=5e-4)


def test_an_inch_and_a_half_in_a_triangle_runs_over(garden):
    found = route(garden, triangle_storm(inch(1.5)))
    assert inches(found.peak) == pytest.approx(6, abs=1e-12)
    assert cubic(found.spill_volume) == pytest.approx(13.066, abs=5e-4)
    assert found.share_caught == pytest.approx(0.8710, abs=5e-5)
    assert hours(found.hours_on_floor) == pytest.approx(29.639, abs=5e-4)


@pytest.mark.parametrize(("rain", "share"), [(2, 0.6594), (3, 0.4439)])
def test_larger_triangles_are_caught_in_part(garden, rain, share):
    found = route(garden, triangle_storm(inch(rain)))
    assert found.share_caught == pytest.approx(share, abs=5e-5)


@pytest.mark.parametrize(("rain", "spill"), [(1.5, 11.958), (2, 44.652)])
def test_even_rain_spills_as_worked(garden, rain, spill):
    found = route(garden, uniform_storm(inch(rain)))
    assert cubic(found.spill_volume) == pytest.approx(spill, abs=5e-4)


def test_the_same_storm_a_day_later_finds_what_the_first_left(garden):
    # Nine tenths of an inch are gone in less than a day, so the second is like the first.
    twice = route(garden, again(triangle_storm(inch(0.9))))
    once = route(garden, triangle_storm(inch(0.9)))
    assert inches(twice.peak) == pytest.approx(inches(once.peak))
    assert cubic(twice.spill_volume) == 0
    assert hours(twice.hours_on_floor) == pytest.approx(2 * hours(once.hours_on_floor))
    assert cubic(twice.inflow_volume) == pytest.approx(2 * cubic(once.inflow_volume))
    # Half a day later it is not gone, and the second runs over.
    sooner = route(garden, again(triangle_storm(inch(1)), h(12)))
    assert cubic(sooner.spill_volume) > 0
    with pytest.raises(ValueError, match="after the first one is over"):
        again(triangle_storm(inch(1)), h(5))


def test_a_type_ii_storm_peaks_just_before_noon(garden):
    storm_ii = type_ii_storm(inch(2))
    assert fallen_by(storm_ii, 24) == pytest.approx(2)
    assert fallen_by(storm_ii, 11.875) == pytest.approx(2 * 0.510)
    assert intensity_at(storm_ii, 11.8) == pytest.approx(2 * 0.306 * 4)
    # One day follows the other at once, with nothing between them.
    assert len(again(storm_ii).spans) == 2 * len(storm_ii.spans)
    assert hours(again(triangle_storm(inch(1), h(6)), h(10)).duration) == 16
    twice = route(garden, again(storm_ii))
    once = route(garden, storm_ii)
    assert cubic(twice.spill_volume) > 2 * cubic(once.spill_volume) - 1e-9


def test_a_sprinkle_never_stands(garden):
    found = route(garden, uniform_storm(inch(0.19), h(6)))
    assert inches(found.peak) == 0
    assert hours(found.hours_on_floor) == 0
    assert found.share_caught == 1
    assert hours(found.empty_at) == 0
    assert route(garden, uniform_storm(inch(0))).share_caught == 1
    # 0.99 cubic feet in five minutes: two thirds of it run over a pond that holds a third.
    spill = quantity(0.66, "ft**3")
    assert caught(quantity(0.99, "ft**3"), spill) == pytest.approx(1 / 3)
    quick = route(garden, uniform_storm(inch(0.02), h(0.01)))
    assert hours(quick.empty_at) == pytest.approx(hours(quick.hours_on_floor))
    assert 0 < hours(quick.empty_at) < 1


def test_hours_at_a_height_fall_from_the_floor_to_the_brim(garden):
    found = route(garden, triangle_storm(inch(1.5)))
    above = [hours(found.time_above(inch(height))) for height in (0, 2, 4, 6, 6.01)]
    assert above == sorted(above, reverse=True)
    assert above[0] == hours(found.hours_on_floor)
    assert above[-1] == 0
    # Two inches take eight hours to fall at a quarter inch an hour, and the rest to rise.
    assert 8 < above[0] - above[1] < 11
    # The edge of the full pond is under water while it runs over.
    assert 0 < above[3] < 6


def test_the_chart_points_lie_on_the_line(garden):
    found = route(garden, triangle_storm(inch(1.5)))
    points = found.breakpoints(between=4)
    for time, depth in points:
        assert inches(depth_at(found, hours(time))) == pytest.approx(inches(depth), abs=1e-9)
    curved = [piece for piece in found.pieces if len(piece.times) > 2]
    assert 0 < len(curved) < len(found.pieces)
    assert len(points) == len(found.pieces) + 4 * len(curved) + 1
    times = [hours(time) for time, _ in points]
    assert times == sorted(times)
    assert times[-1] == pytest.approx(hours(found.empty_at))


@pytest.mark.parametrize(
    ("served", "inside", "rate"),
    [(0, 0, 0.25), (-1, 10, 0.25), (10, -1, 0.25), (5, 6, 0), (5, 6, -1)],
)
def test_a_pool_that_cannot_be_is_refused(garden, served, inside, rate):
    with pytest.raises(ValueError, match=r"[a-z]\.$"):
        Pool(
            garden.stage,
            quantity(served, "ft**2"),
            quantity(inside, "ft**2"),
            quantity(rate, "in/h"),
        )


def test_storms_that_cannot_be_are_refused():
    with pytest.raises(ValueError, match="below zero"):
        uniform_storm(inch(-1))
    with pytest.raises(ValueError, match="more than zero hours"):
        triangle_storm(inch(1), h(0))


@given(st.sampled_from(StormShape), st.floats(0.1, 4), st.floats(0.5, 24))
def test_all_the_rain_falls(shape, rain, duration):
    made = storm(shape, inch(rain), h(duration))
    assert hours(made.duration) == pytest.approx(24 if shape is StormShape.TYPE_II else duration)
    assert sum(span.fall for span in made.spans) == pytest.approx(rain)
    assert fallen_by(made, hours(made.duration)) == pytest.approx(rain)
    points = [point for span in made.spans for point in (span.start, span.end)]
    total, _ = quad(
        lambda time: intensity_at(made, time),
        0,
        hours(made.duration),
        points=sorted(set(points)),
        limit=200,
    )
    assert total == pytest.approx(rain, rel=1e-6)


@settings(deadline=None)
@given(
    shape=st.sampled_from(StormShape),
    rain=st.floats(0.3, 1.5),
    area=st.floats(200, 2000),
    depth=st.floats(3, 10),
    rate=st.floats(0.01, 2),
)
def test_a_garden_that_holds_a_rain_does_not_spill_at_it(shape, rain, area, depth, rate):
    found = required_area(quantity(area, "ft**2"), inch(rain), inch(depth), 3, inch(4))
    basin = drawn(found)
    full = pooled(basin, area, rate)
    assert inches(full.rain_held) == pytest.approx(
        inches(rain_held(basin, quantity(area, "ft**2")))
    )
    assert cubic(route(full, storm(shape, inch(rain))).spill_volume) == 0
    exact = pooled(found.basin, area, rate)
    assert cubic(route(exact, storm(shape, inch(rain))).spill_volume) == pytest.approx(0, abs=1e-9)


@settings(deadline=None)
@given(st.sampled_from(StormShape), st.floats(0.2, 3), st.floats(100, 2000), st.floats(0.05, 2))
def test_units_do_not_matter_to_storms(shape, rain, served, rate):
    foot = 0.3048
    us = Pool(
        StageCurve(quantity(105, "ft**2"), quantity(44, "ft"), 4, 3, inch(6)),
        quantity(served, "ft**2"),
        quantity(240, "ft**2"),
        quantity(rate, "in/h"),
    )
    si = Pool(
        StageCurve(
            quantity(105 * foot**2, "m**2"), quantity(44 * foot, "m"), 4, 3, quantity(152.4, "mm")
        ),
        quantity(served * foot**2, "m**2"),
        quantity(240 * foot**2, "m**2"),
        quantity(rate * 25.4, "mm/h"),
    )
    one = route(us, storm(shape, inch(rain)))
    other = route(si, storm(shape, quantity(25.4 * rain, "mm"), quantity(360, "min")))
    assert inches(other.peak) == pytest.approx(inches(one.peak), abs=1e-9)
    assert cubic(other.spill_volume) == pytest.approx(cubic(one.spill_volume), abs=1e-7)
    assert hours(other.hours_on_floor) == pytest.approx(hours(one.hours_on_floor), abs=1e-6)
