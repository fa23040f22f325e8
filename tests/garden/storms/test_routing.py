"""Storms through the garden."""

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from interview.garden.storms.routing import (
    Pool,
    StormShape,
    again,
    ladder,
    pool,
    route,
    storm,
    triangle_storm,
    type_ii_storm,
    uniform_storm,
)
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from interview.garden.size.basin import Basin, drawn, rain_held, required_area
from interview.quantities.units import METRIC, magnitude, quantity


def inch(number):
    return quantity(number, "in")


def inches(value):
    return magnitude(value, "in")


def hours(value):
    return magnitude(value, "h")


def h(number):
    return quantity(number, "h")


@pytest.fixture
def garden():
    """Floor 15 x 7 ft, 6 in deep, sides 3:1, 4 in above, 570 ft2, taking 0.25 in/h."""
    basin = Basin(quantity(15, "ft"), quantity(7, "ft"), inch(6), 3, inch(4))
    return pool(basin, quantity(570, "ft**2"), quantity(0.25, "in/h"))


def test_the_pool_of_the_worked_garden(garden):
    assert garden.gain == pytest.approx(5.775, abs=5e-4)
    assert inches(garden.full_depth) == pytest.approx(6.032, abs=5e-4)
    assert inches(garden.rain_held) == pytest.approx(1.044, abs=5e-4)


def test_an_inch_in_a_triangle_stays_below_the_brim(garden):
    found = route(garden, triangle_storm(inch(1)))
    assert inches(found.peak) == pytest.approx(4.373, abs=5e-4)
    assert inches(found.spill) == 0
    assert found.share_caught == 1
    assert hours(found.hours_on_floor) == pytest.approx(22.91, abs=5e-3)


def test_an_inch_and_a_half_in_a_triangle_runs_over(garden):
    found = route(garden, triangle_storm(inch(1.5)))
    assert found.peak == garden.full_depth
    assert inches(found.spill) == pytest.approx(1.196, abs=5e-4)
    assert magnitude(found.spill_volume, "ft**3") == pytest.approx(13.98, abs=5e-3)
    assert found.share_caught == pytest.approx(0.862, abs=5e-4)
    assert hours(found.hours_on_floor) == pytest.approx(29.74, abs=5e-3)


@pytest.mark.parametrize(("rain", "share"), [(2, 0.648), (3, 0.433)])
def test_larger_triangles_are_caught_in_part(garden, rain, share):
    found = route(garden, triangle_storm(inch(rain)))
    assert found.share_caught == pytest.approx(share, abs=5e-4)


@pytest.mark.parametrize(("rain", "spill"), [(1.5, 1.131), (2, 4.019)])
def test_even_rain_spills_as_worked(garden, rain, spill):
    assert inches(route(garden, uniform_storm(inch(rain))).spill) == pytest.approx(spill, abs=5e-4)


def test_the_ladder_climbs(garden):
    rows = ladder(garden)
    assert [inches(row.rain) for row in rows] == [0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 3]
    assert [row.share_caught for row in rows] == sorted(
        (row.share_caught for row in rows), reverse=True
    )
    assert rows[5].spill == route(garden, triangle_storm(inch(1.5))).spill
    metric = ladder(garden, system=METRIC, shape=StormShape.UNIFORM)
    assert [magnitude(row.rain, "mm") for row in metric] == [5, 10, 15, 20, 25, 30, 40, 60, 75]
    chosen = ladder(garden, rains=[inch(0.9)], duration=h(3))
    assert chosen[0].peak == route(garden, triangle_storm(inch(0.9), h(3))).peak


def test_the_same_storm_a_day_later_finds_what_the_first_left(garden):
    # An inch is gone in less than a day after it began, so the second is like the first.
    twice = route(garden, again(triangle_storm(inch(1))))
    once = route(garden, triangle_storm(inch(1)))
    assert inches(twice.peak) == pytest.approx(inches(once.peak))
    assert inches(twice.spill) == 0
    assert hours(twice.hours_on_floor) == pytest.approx(2 * hours(once.hours_on_floor))
    assert inches(twice.inflow) == pytest.approx(2 * inches(once.inflow))
    # Half a day later it is not gone, and the second runs over.
    sooner = route(garden, again(triangle_storm(inch(1)), h(12)))
    assert inches(sooner.spill) > 0
    with pytest.raises(ValueError, match="after the first one is over"):
        again(triangle_storm(inch(1)), h(5))


def test_a_type_ii_storm_peaks_just_before_noon(garden):
    storm_ii = type_ii_storm(inch(2))
    assert inches(storm_ii.fallen_by(h(24))) == pytest.approx(2)
    assert inches(storm_ii.fallen_by(h(11.875))) == pytest.approx(2 * 0.510)
    assert magnitude(storm_ii.intensity_at(h(11.8)), "in/h") == pytest.approx(2 * 0.306 * 4)
    twice = route(garden, again(storm_ii))
    assert inches(twice.spill) > 2 * inches(route(garden, storm_ii).spill) - 1e-9


def test_a_sprinkle_never_stands(garden):
    found = route(garden, uniform_storm(inch(0.25), h(6)))
    assert inches(found.peak) == 0
    assert hours(found.hours_on_floor) == 0
    assert found.share_caught == 1
    assert route(garden, uniform_storm(inch(0))).share_caught == 1


def test_hours_at_a_height_fall_from_the_floor_to_the_brim(garden):
    found = route(garden, triangle_storm(inch(1.5)))
    above = [hours(found.time_above(inch(height))) for height in (0, 2, 4, 6.0, 6.04)]
    assert above == sorted(above, reverse=True)
    assert above[0] == hours(found.hours_on_floor)
    assert above[-1] == 0
    # Two inches take eight hours to fall at a quarter inch an hour, and about two to rise.
    assert above[0] - above[1] == pytest.approx(8 + 2.04, abs=0.01)


def test_the_chart_points_lie_on_the_line(garden):
    found = route(garden, triangle_storm(inch(1.5)))
    for time, depth in found.breakpoints(between=4):
        assert inches(found.depth_at(time)) == pytest.approx(inches(depth), abs=1e-9)
    times = [hours(time) for time, _ in found.breakpoints(between=4)]
    assert times == sorted(times)
    assert times[-1] == pytest.approx(hours(found.empty_at))
    assert inches(found.depth_at(h(400))) == 0


def test_the_account_can_be_cut_short(garden):
    whole = route(garden, triangle_storm(inch(1.5)))
    for until in (2.0, 6.0, 10.0, 100.0):
        part = route(garden, triangle_storm(inch(1.5)), until=h(until))
        assert inches(part.standing) == pytest.approx(inches(whole.depth_at(h(until))), abs=1e-9)
    with pytest.raises(ValueError, match="after the rain began"):
        route(garden, triangle_storm(inch(1)), until=h(0))


@pytest.mark.parametrize(
    ("gain", "full", "rate"), [(0, 6, 0.25), (5, 0, 0.25), (5, 6, 0), (5, 6, -1)]
)
def test_a_pool_that_cannot_be_is_refused(gain, full, rate):
    with pytest.raises(ValueError, match=r"[a-z]\.$"):
        Pool(gain, inch(full), quantity(rate, "in/h"), quantity(100, "ft**2"))


def test_storms_that_cannot_be_are_refused():
    with pytest.raises(ValueError, match="less than zero"):
        uniform_storm(inch(-1))
    with pytest.raises(ValueError, match="longer than no time"):
        triangle_storm(inch(1), h(0))


@given(st.sampled_from(StormShape), st.floats(0.1, 4), st.floats(0.5, 24))
def test_all_the_rain_falls(shape, rain, duration):
    made = storm(shape, inch(rain), h(duration))
    assert sum(span.fall for span in made.spans) == pytest.approx(rain)
    assert inches(made.fallen_by(made.duration)) == pytest.approx(rain)
    points = [point for span in made.spans for point in (span.start, span.end)]
    total, _ = quad(
        lambda time: magnitude(made.intensity_at(h(time)), "in/h"),
        0,
        hours(made.duration),
        points=sorted(set(points)),
        limit=200,
    )
    assert total == pytest.approx(rain, rel=1e-6)


def march(gain, full, rate, spans, end):
    """The balance by a general solver, one span and one state at a time: depth, spill, soaked."""
    depth = spill = soaked = 0.0
    deepest = 0.0
    for start, stop, first, last in [*spans, (spans[-1][1], end, 0.0, 0.0)]:
        time = start

        def rain(at, start=start, stop=stop, first=first, last=last):
            return gain * (first + (last - first) * (at - start) / (stop - start))

        def net(at, rain=rain):
            return rain(at) - rate

        while stop - time > 1e-12:
            resting = (depth <= 1e-11 and net((time + stop) / 2) <= 0 and net(time) <= 1e-12) or (
                depth <= 1e-11 and net(time) < -1e-12
            )
            brimming = depth >= full - 1e-11 and (
                net(time) > 1e-12 or (net(time) >= -1e-12 and net((time + stop) / 2) > 0)
            )
            if resting or brimming:
                until = stop
                if net(time) * net(stop) < 0:
                    until = brentq(net, time, stop, xtol=1e-14)
                came, _ = quad(rain, time, until)
                if resting:
                    depth, soaked = 0.0, soaked + came
                else:
                    depth = full
                    soaked += rate * (until - time)
                    spill += came - rate * (until - time)
                time = max(until, time + 1e-12)
                continue
            # Up to where the pond turns, so that no brief dip to the floor is stepped over.
            turns = brentq(net, time, stop, xtol=1e-14) if net(time) * net(stop) < 0 else stop
            part = turns if turns > time + 1e-12 else stop
            low = lambda at, y: y[0]  # noqa: E731
            high = lambda at, y: y[0] - full  # noqa: E731
            turn = lambda at, y, net=net: net(at)  # noqa: E731
            low.terminal = high.terminal = True
            low.direction, high.direction = -1, 1
            done = solve_ivp(
                lambda at, y, net=net: [net(at)],
                (time, part),
                [depth],
                events=[low, high, turn],
                rtol=1e-10,
                atol=1e-12,
                max_step=(stop - start) / 8,
            )
            soaked += rate * (done.t[-1] - time)
            time, depth = done.t[-1], min(max(done.y[0][-1], 0.0), full)
            deepest = max([deepest, *done.y[0], *(y[0] for y in done.y_events[2])])
        deepest = max(deepest, depth)
    return depth, spill, soaked, min(deepest, full)


@settings(max_examples=60, deadline=None)
@example(StormShape.TRIANGLE, 1.9, 2.0, 3.58984375, 7.0, 0.28420356259371937, 24.0, 1.0)
@given(
    shape=st.sampled_from([StormShape.UNIFORM, StormShape.TRIANGLE, StormShape.TYPE_II]),
    rain=st.floats(0.1, 4),
    duration=st.floats(0.5, 24),
    gain=st.floats(1.5, 12),
    full=st.floats(2, 12),
    rate=st.floats(0.02, 3),
    later=st.sampled_from([None, 24.0, 30.0]),
    after=st.floats(0.5, 20),
)
def test_routing_agrees_with_a_general_solver_and_loses_no_water(
    shape, rain, duration, gain, full, rate, later, after
):
    made = storm(shape, inch(rain), h(duration))
    if later is not None:
        made = again(made, h(later))
    end = hours(made.duration) + after
    garden = Pool(gain, inch(full), quantity(rate, "in/h"), quantity(100, "ft**2"))
    found = route(garden, made, until=h(end))
    spans = [(span.start, span.end, span.first, span.last) for span in made.spans]
    depth, spill, soaked, deepest = march(gain, full, rate, spans, end)
    assert inches(found.standing) == pytest.approx(depth, abs=1e-6)
    assert inches(found.spill) == pytest.approx(spill, abs=1e-6)
    assert inches(found.soaked) == pytest.approx(soaked, abs=1e-6)
    assert inches(found.peak) == pytest.approx(deepest, abs=1e-6)
    came = gain * sum(span.fall for span in made.spans)
    out = inches(found.soaked) + inches(found.spill) + inches(found.standing)
    assert out == pytest.approx(came, rel=1e-9)
    whole = route(garden, made)
    assert inches(whole.standing) == pytest.approx(0, abs=1e-9)
    assert inches(whole.soaked) + inches(whole.spill) == pytest.approx(came, rel=1e-9)
    assert inches(whole.spill) == pytest.approx(inches(found.spill), abs=1e-9)


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
    full = pool(basin, quantity(area, "ft**2"), quantity(rate, "in/h"))
    assert inches(full.rain_held) == pytest.approx(
        inches(rain_held(basin, quantity(area, "ft**2")))
    )
    assert inches(route(full, storm(shape, inch(rain))).spill) == 0
    exact = pool(found.basin, quantity(area, "ft**2"), quantity(rate, "in/h"))
    assert inches(route(exact, storm(shape, inch(rain))).spill) == pytest.approx(0, abs=1e-9)


@settings(deadline=None)
@given(st.sampled_from(StormShape), st.floats(0.2, 3), st.floats(1.5, 10), st.floats(0.05, 2))
def test_units_do_not_matter_to_storms(shape, rain, gain, rate):
    us = Pool(gain, inch(6), quantity(rate, "in/h"), quantity(100, "ft**2"))
    si = Pool(
        gain,
        quantity(152.4, "mm"),
        quantity(rate * 25.4, "mm/h"),
        quantity(100 * 0.3048**2, "m**2"),
    )
    one = route(us, storm(shape, inch(rain)))
    other = route(si, storm(shape, quantity(25.4 * rain, "mm"), quantity(360, "min")))
    assert inches(other.peak) == pytest.approx(inches(one.peak), abs=1e-9)
    assert inches(other.spill) == pytest.approx(inches(one.spill), abs=1e-9)
    assert hours(other.hours_on_floor) == pytest.approx(hours(one.hours_on_floor), abs=1e-6)
