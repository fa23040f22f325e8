"""Storms through ponds of many shapes, against values worked independently.

The cells of the table were worked by hand and independently of the program: by a general solver of
high order (DOP853) that stops at every full and empty pond. The closed forms are worked beside
each check.
"""

import math
from itertools import pairwise

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from measures import hours
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq

from interview.garden.form.basin import Basin
from interview.garden.pond import pool as balance
from interview.garden.pond.hyetographs import (
    StormShape,
    again,
    storm,
    triangle_storm,
    type_ii_storm,
    uniform_storm,
)
from interview.garden.pond.pool import FlowSpan, pieces_of, pool
from interview.garden.pond.routing import route
from interview.garden.pond.stage import ROUND_CORNERS, SQUARE_CORNERS, StageCurve
from interview.quantities.units import magnitude, quantity


def square(long, wide):
    return long * wide, 2 * (long + wide), SQUARE_CORNERS


def rounded(long, wide):
    a, r = long - wide, wide / 2
    return a * wide + math.pi * r**2, 2 * a + 2 * math.pi * r, ROUND_CORNERS


def oval(long, wide):
    a, b = long / 2, wide / 2
    round_it, _ = quad(lambda t: math.hypot(a * math.sin(t), b * math.cos(t)), 0, math.pi / 2)
    return math.pi * a * b, 4 * round_it, ROUND_CORNERS


US, SI = ("ft", "in", "in/h", 1.0), ("m", "mm", "mm/h", 25.0)

GARDENS = {
    # outline, side, full pond, rim above it, weighted area, rate, units; V and the area inside
    "G1": (square(15, 7), 3, 6, 4, 570, 0.25, US, 70.50, 240.0),
    "G2": (square(14.5, 6.5), 3, 6, 6, 482.29489, 0.24510317, US, 64.375, 256.25),
    "G3": (square(4.7, 2.2), 3, 150, 150, 54.362637, 13.961651, SI, 2.05725, 26.00),
    "G4": (rounded(14, 7), 2, 6, 2, 482.29489, 0.24510317, US, 53.264, 141.06),
    "G5": (rounded(5, 2.5), 2, 6, 1, 76, 0.25, US, 9.3165, 30.431),
    "G6": (rounded(36, 18), 2, 6, 3, 2850, 0.5, US, 312.895, 724.36),
    "G7": (rounded(8, 4), 3, 6, 2, 482.29489, 7.9, US, 23.174, 82.266),
    "G8": (oval(4.8, 2.4), 2, 150, 50, 54.362637, 13.961651, SI, 1.6329, 14.201),
}
# Deepest pond, hours wet, hours over half the full depth, spill: of T1, T2, U1.5 and II1.5.
WORKED = {
    "G1": [
        (4.6820, 24.211, 9.309, 0),
        (6, 29.729, 15.694, 45.984),
        (6, 30.000, 15.864, 11.958),
        (4.9161, 32.118, 15.244, 0),
    ],
    "G2": [
        (4.7089, 24.708, 9.577, 0),
        (6, 30.215, 15.945, 42.047),
        (6, 30.480, 16.127, 11.040),
        (4.9497, 32.693, 15.584, 0),
    ],
    "G3": [
        (89.734, 11.333, 2.850, 0),
        (150, 16.149, 8.737, 0.82459),
        (138.120, 15.893, 7.833, 0),
        (101.471, 13.482, 4.767, 0),
    ],
    "G4": [
        (4.7058, 24.682, 9.502, 0),
        (6, 30.213, 15.915, 37.258),
        (6, 30.480, 16.042, 11.020),
        (4.9358, 31.995, 15.871, 0),
    ],
    "G5": [
        (4.8033, 24.730, 9.950, 0),
        (6, 29.739, 15.785, 5.8221),
        (6, 30.000, 16.080, 1.3625),
        (5.0678, 33.270, 15.432, 0),
    ],
    "G6": [
        (3.2946, 11.465, 1.950, 0),
        (6, 17.424, 9.282, 134.27),
        (5.6037, 17.207, 8.160, 0),
        (3.7639, 13.970, 4.545, 0),
    ],
    "G7": [
        (0, 0, 0, 0),
        (2.1180, 3.041, 0, 0),
        (0, 0, 0, 0),
        (4.3573, 1.292, 0.355, 0),
    ],
    "G8": [
        (94.629, 11.699, 3.325, 0),
        (150, 16.177, 8.804, 0.90404),
        (150, 16.744, 8.793, 0.01110),
        (106.593, 14.011, 5.497, 0),
    ],
}
FLOOR_ONLY = {"G1": (4.9230, 30.711), "G2": (4.9576, 31.830), "G5": (5.1704, 38.034)}


def made(name):
    (floor, outline, corners), z, deep, rim, served, rate, units, _, _ = GARDENS[name]
    far, short, speed, _ = units
    stage = StageCurve(
        quantity(floor, f"{far}**2"), quantity(outline, far), corners, z, quantity(deep, short)
    )
    inside = stage.area_at(quantity(deep + rim, short))
    return pool(stage, quantity(served, f"{far}**2"), inside, quantity(rate, speed))


def storms(name):
    unit, rain = GARDENS[name][6][1], GARDENS[name][6][3]
    return (
        triangle_storm(quantity(rain, unit)),
        triangle_storm(quantity(2 * rain, unit)),
        uniform_storm(quantity(1.5 * rain, unit)),
        type_ii_storm(quantity(1.5 * rain, unit)),
    )


@pytest.mark.parametrize("name", GARDENS)
def test_the_curve_holds_what_was_worked(name):
    far = GARDENS[name][6][0]
    volume, inside = GARDENS[name][7:]
    garden = made(name)
    assert magnitude(garden.stage.volume, f"{far}**3") == pytest.approx(volume, rel=2e-5)
    assert magnitude(garden.inside, f"{far}**2") == pytest.approx(inside, rel=2e-5)


@pytest.mark.parametrize("name", GARDENS)
@pytest.mark.parametrize("place", range(4))
def test_a_storm_does_what_was_worked(name, place):
    far, short, _, _ = GARDENS[name][6]
    found = route(made(name), storms(name)[place])
    half = quantity(GARDENS[name][2] / 2, short)
    peak, wet, over, spill = WORKED[name][place]
    assert magnitude(found.peak, short) == pytest.approx(peak, rel=2e-5)
    assert hours(found.hours_on_floor) == pytest.approx(wet, abs=6e-4)
    assert hours(found.time_above(half)) == pytest.approx(over, abs=6e-4)
    spilled = magnitude(found.spill_volume, f"{far}**3")
    assert spilled == pytest.approx(spill, rel=5e-5, abs=3e-6)


@pytest.mark.parametrize("name", FLOOR_ONLY)
def test_the_floor_alone_takes_as_long_as_was_worked(name):
    peak, wet = FLOOR_ONLY[name]
    found = route(made(name), storms(name)[0], floor_only=True)
    assert magnitude(found.peak, "in") == pytest.approx(peak, abs=6e-5)
    assert hours(found.hours_on_floor) == pytest.approx(wet, abs=6e-4)


# Closed forms


def test_where_nothing_soaks_the_pond_is_as_deep_as_its_water():
    """0.8 in on 570 and 240 sq ft are 54 cubic feet; h (105 + 66 h + 12 h^2) = 54 at 4.8492 in."""
    tight = Basin(
        quantity(15, "ft"), quantity(7, "ft"), quantity(6, "in"), 3, quantity(4, "in")
    )  # fmt: skip
    garden = pool(tight.stage, quantity(570, "ft**2"), tight.rim_area, quantity(1e-9, "in/h"))
    found = route(garden, triangle_storm(quantity(0.8, "in")))
    assert magnitude(found.inflow_volume, "ft**3") == pytest.approx(54)
    root = brentq(lambda h: h * (105 + 66 * h + 12 * h**2) - 54, 0, 1, xtol=1e-13)
    assert root * 12 == pytest.approx(4.8492, abs=5e-5)
    assert magnitude(found.peak, "in") == pytest.approx(root * 12, abs=1e-6)


def test_a_full_pond_without_rain_is_gone_in_depth_over_rate():
    garden = made("G1")
    for bed, worked in ((garden.bare, 24.0), (garden.floor_only, 32.2286)):
        pieces = list(pieces_of(bed, [FlowSpan(0, 100, 0, 0)], bed.full))
        assert sum(piece.hours_above(0) for piece in pieces) == pytest.approx(worked, abs=5e-5)
        assert sum(piece.soaked for piece in pieces) == pytest.approx(70.5)
    assert hours(garden.hours_to_empty_by_floor) == pytest.approx(70.5 / (0.25 / 12 * 105))


def test_a_pond_that_soaks_by_its_floor_loses_the_same_volume_every_hour():
    bed = made("G1").floor_only
    (piece, _) = pieces_of(bed, [FlowSpan(0, 100, 0, 0)], bed.full)
    for time in (0.3, 5.0, 17.77, 32.0):
        left = bed.volume(piece.depth_at(time))
        assert left == pytest.approx(70.5 - time * 0.25 / 12 * 105, abs=1e-5)
    cut = list(pieces_of(bed, [FlowSpan(0, 10, 0, 0), FlowSpan(10, 100, 0, 0)], bed.full))
    assert cut[-2].end == pytest.approx(piece.end)


def test_even_rain_fills_the_pond_by_the_closed_form():
    """t = -h/f + Q/f x the integral of dh / (Q - f A); an inch in 6 h stands 4.60291 in deep."""
    flow, rate = 810 / 12 / 6, 0.25 / 12

    def time(h):
        part, _ = quad(lambda x: 1 / (flow - rate * (105 + 132 * x + 36 * x**2)), 0, h)
        return -h / rate + flow / rate * part

    depth = brentq(lambda h: time(h) - 6, 0.1, 0.5, xtol=1e-13)
    assert 12 * depth == pytest.approx(4.60291, abs=5e-6)
    found = route(made("G1"), uniform_storm(quantity(1, "in")))
    assert magnitude(found.peak, "ft") == pytest.approx(depth, abs=1e-8)
    assert hours(found.hours_on_floor) == pytest.approx(24.4117, abs=5e-5)
    assert hours(found.hours_on_floor) == pytest.approx(6 + depth / rate, abs=1e-6)


# Any garden and storm, by a general solver


def marched(bed, spans, level):
    """Return depth, spill, soaked, peak and hours over ``level`` by a solver that stops at limits.

    ``bed`` holds the terms of the area, the full depth, the rate and whether the floor alone soaks;
    all in feet and hours.
    """
    (floor, widening, bend), full, rate, floor_only = bed

    def area(h):
        return floor + widening * h + bend * h * h

    def soak(h):
        return rate * (floor if floor_only else area(max(h, 0.0)))

    depth = spill = soaked = peak = over = 0.0
    for start, stop, first, last in spans:
        now = start
        steady = abs(last - first) < 1e-15

        def flow(t, start=start, stop=stop, first=first, last=last):
            return first + (last - first) * (t - start) / (stop - start)

        def until(limit, now, start=start, stop=stop, first=first, last=last, steady=steady):
            if steady:
                return stop
            when = start + (limit - first) * (stop - start) / (last - first)
            return when if now < when < stop else stop

        while stop - now > 1e-9:
            comes, least, most = flow(now), soak(0.0), soak(full)
            empty = depth <= 1e-13 and (comes < least - 1e-13 or (last <= first and comes <= least))
            brim = depth >= full - 1e-13 and (
                comes > most + 1e-13 or (last >= first and comes >= most)
            )
            if empty or brim:
                end = until(least if empty else most, now)
                if (empty and last <= first) or (brim and last >= first):
                    end = stop
                came = (comes + flow(end)) / 2 * (end - now)
                gone = came if empty else most * (end - now)
                depth = 0.0 if empty else full
                soaked, spill = soaked + gone, spill + came - gone
                over += (end - now) * (depth > level)
                # A hair past the turn, where rounding cannot hold it back.
                peak, now = max(peak, depth), min(stop, end + 1e-9)
                continue
            low = lambda t, y: y[0]  # noqa: E731
            high = lambda t, y: y[0] - full  # noqa: E731
            turn = lambda t, y, flow=flow: flow(t) - soak(y[0])  # noqa: E731
            cross = lambda t, y: y[0] - level  # noqa: E731
            low.terminal = high.terminal = True
            low.direction, high.direction = -1, 1
            ends = [stop]
            while ends:
                done = solve_ivp(
                    lambda t, y, flow=flow: [
                        (flow(t) - soak(y[0])) / area(max(y[0], 0.0)), soak(y[0])
                    ],
                    (now, ends[0]),
                    [depth, 0.0],
                    method="DOP853",
                    events=[low, high, turn, cross],
                    rtol=1e-11,
                    atol=1e-13,
                    max_step=(stop - start) / 8,
                    dense_output=True,
                )  # fmt: skip
                # A brim that is passed up and down again within one step shows at the turn alone.
                turned = zip(done.t_events[2], done.y_events[2], strict=True)
                ends = [t for t, y in turned if y[0] > full + 1e-12 and t < done.t[-1]]
            points = [now, *sorted(done.t_events[3]), done.t[-1]]
            for one, other in pairwise(points):
                over += (other - one) * (done.sol((one + other) / 2)[0] > level)
            turns = [y[0] for y in done.y_events[2]]
            peak = max([peak, *turns, *done.y[0]])
            soaked += done.y[1][-1]
            depth = min(max(done.y[0][-1], 0.0), full)
            now = max(done.t[-1], now + 1e-9)
    return depth, spill, soaked, min(peak, full), over


OUTLINES = {"square": square, "rounded": rounded, "oval": oval}


@settings(max_examples=60, deadline=None)
@given(
    outline=st.sampled_from(sorted(OUTLINES)),
    wide=st.floats(2, 20),
    stretch=st.floats(1, 4),
    z=st.floats(0, 5),
    deep=st.floats(2, 12),
    served=st.floats(0, 4000),
    rate=st.floats(0.02, 10),
    shape=st.sampled_from(StormShape),
    rain=st.floats(0.1, 4),
    long=st.floats(0.5, 24),
    twice=st.booleans(),
    floor_only=st.booleans(),
)
@example(
    "rounded",
    2.0,
    3.21875,
    1.72265625,
    12.0,
    1634.0,
    4.40625,
    StormShape.TRIANGLE,
    0.35,
    5.46875,
    False,
    True,
)  # full for less than a step of the solver
def test_any_pond_agrees_with_a_general_solver(
    outline, wide, stretch, z, deep, served, rate, shape, rain, long, twice, floor_only
):
    floor, around, corners = OUTLINES[outline](wide * stretch, wide)
    stage = StageCurve(
        quantity(floor, "ft**2"), quantity(around, "ft"), corners, z, quantity(deep, "in")
    )
    inside = stage.area_at(quantity(deep + 3, "in"))
    garden = pool(stage, quantity(served, "ft**2"), inside, quantity(rate, "in/h"))
    falls = storm(shape, quantity(rain, "in"), quantity(long, "h"))
    falls = again(falls) if twice else falls
    found = route(garden, falls, floor_only=floor_only)
    full, level = deep / 12, deep / 24
    by = (served + magnitude(inside, "ft**2")) / 12
    spans = [(one.start, one.end, by * one.first, by * one.last) for one in falls.spans]
    terms = (floor, around * z, corners * z**2)
    most = full * (terms[0] + full * (terms[1] / 2 + full * terms[2] / 3))
    # A little longer than the full pond takes by its floor alone.
    end = hours(falls.duration) + 1.01 * most / (floor * rate / 12)
    spans.append((hours(falls.duration), end, 0.0, 0.0))
    depth, spill, soaked, peak, over = marched((terms, full, rate / 12, floor_only), spans, level)
    came = by * sum(one.fall for one in falls.spans)
    water = came * 1e-6 + 1e-9
    assert magnitude(found.spill_volume, "ft**3") == pytest.approx(spill, abs=water)
    assert magnitude(found.soaked_volume, "ft**3") == pytest.approx(soaked, abs=2 * water)
    assert magnitude(found.peak, "ft") == pytest.approx(peak, abs=2e-6)
    assert depth == pytest.approx(0, abs=1e-9)
    assert magnitude(found.inflow_volume, "ft**3") == pytest.approx(came)
    gone = magnitude(found.soaked_volume, "ft**3") + magnitude(found.spill_volume, "ft**3")
    assert gone == pytest.approx(came, rel=1e-6, abs=1e-9)
    above = hours(found.time_above(quantity(level, "ft")))
    # A pond that just grazes the level turns a hair of depth into minutes.
    assert above == pytest.approx(over, abs=1e-3 if abs(peak - level) > 1e-3 else 0.5)


GARDEN = {
    "name": st.sampled_from(sorted(GARDENS)),
    "shape": st.sampled_from(StormShape),
    "rain": st.floats(0.05, 4),
}


@settings(max_examples=60, deadline=None)
@given(**GARDEN, more=st.floats(0, 2))
def test_more_rain_never_makes_a_lower_pond_or_less_spill(name, shape, rain, more):
    garden = made(name)
    less, larger = (
        route(garden, storm(shape, quantity(fall, "in"))) for fall in (rain, rain + more)
    )
    assert magnitude(larger.peak, "in") >= magnitude(less.peak, "in") - 1e-6
    spilled = magnitude(larger.spill_volume, "ft**3")
    assert spilled >= magnitude(less.spill_volume, "ft**3") - 1e-6
    assert hours(larger.hours_on_floor) >= hours(less.hours_on_floor) - 1e-6


@settings(max_examples=60, deadline=None)
@given(**GARDEN)
def test_the_floor_alone_is_never_quicker(name, shape, rain):
    garden, falls = made(name), storm(shape, quantity(rain, "in"))
    wetted, floor = route(garden, falls), route(garden, falls, floor_only=True)
    assert hours(floor.hours_on_floor) >= hours(wetted.hours_on_floor) - 1e-6
    assert magnitude(floor.peak, "in") >= magnitude(wetted.peak, "in") - 1e-6
    spilled = magnitude(floor.spill_volume, "ft**3")
    assert spilled >= magnitude(wetted.spill_volume, "ft**3") - 1e-6


# The curve


@given(st.floats(2, 30), st.floats(2, 20), st.floats(0, 5), st.floats(1, 12), st.floats(0, 1))
def test_the_curve_of_a_basin_is_its_area_and_its_volume(long, wide, z, deep, part):
    basin = Basin(
        quantity(long, "ft"), quantity(wide, "ft"), quantity(deep, "in"), z, quantity(3, "in")
    )  # fmt: skip
    height = quantity(deep * part, "in")
    stage = basin.stage
    area = magnitude(basin.area_at(height), "ft**2")
    assert magnitude(stage.area_at(height), "ft**2") == pytest.approx(area)
    assert magnitude(stage.volume_to(height), "ft**3") == pytest.approx(
        magnitude(basin.volume_to(height), "ft**3")
    )


def test_a_kidney_has_the_curve_of_its_middle_line_straightened():
    """A 15 x 7.5 ft rounded floor, 2:1, 6 in: worked 100.429, 38.562, 142.132 and 60.378."""
    floor, around, corners = rounded(15, 7.5)
    assert (floor, around) == (pytest.approx(100.429, abs=5e-4), pytest.approx(38.562, abs=5e-4))
    stage = StageCurve(
        quantity(floor, "ft**2"), quantity(around, "ft"), corners, 2, quantity(6, "in")
    )  # fmt: skip
    assert magnitude(stage.area_at(stage.depth), "ft**2") == pytest.approx(142.132, abs=5e-4)
    assert magnitude(stage.volume, "ft**3") == pytest.approx(60.378, abs=5e-4)


@pytest.mark.parametrize(
    ("floor", "around", "z", "deep"),
    [(0, 10, 3, 6), (10, 0, 3, 6), (10, 13, -1, 6), (10, 13, 3, 0), (10, 13, math.inf, 6)],
)
def test_a_curve_that_cannot_be_is_refused(floor, around, z, deep):
    with pytest.raises(ValueError, match=r"[a-z]\.$"):
        StageCurve(quantity(floor, "ft**2"), quantity(around, "ft"), 4, z, quantity(deep, "in"))


def test_a_part_too_short_to_divide_is_taken_whole():
    bed = made("G1").bare
    end = math.nextafter(6.0, 7.0)
    pieces = list(pieces_of(bed, [FlowSpan(0, 6, 9, 9), FlowSpan(6, end, 9, 8)]))
    assert pieces[-1].end == end
    assert pieces[-1].last_depth == pytest.approx(pieces[0].last_depth)


@pytest.mark.parametrize(
    ("depth", "flow", "slope", "limit", "step"),
    [(0.2, 900, 50, 0.5, 0.25), (0.01, 2, -40, 0.0, 0.25), (0.49, 30, -3, 0.5, 1)],
)
def test_when_a_pond_is_full_or_empty_is_found_in_a_few_looks(
    depth, flow, slope, limit, step, monkeypatch
):
    bed, looked = balance.BarePool(105.0, 132.0, 36.0, 0.5, 0.0208), []
    rule = balance._runge_kutta
    exact = brentq(lambda t: rule(bed, depth, flow, slope, t)[0] - limit, 0, step, xtol=1e-15)
    monkeypatch.setattr(
        balance, "_runge_kutta", lambda *given: (looked.append(given), rule(*given))[1]
    )
    assert balance._reach(bed, depth, flow, slope, step, limit) == pytest.approx(exact, rel=1e-12)
    assert len(looked) <= 11  # by halving it takes one for each bit


@pytest.mark.parametrize(
    ("linear", "square", "cube"), [(1, -1, -0.2), (1, -1, 0), (-0.6, 1, 0.3), (0.4, -1.5, 0.5)]
)
def test_the_depth_turns_where_its_cubic_does(linear, square, cube):
    """Where the slope of the cubic is nought: a bracketed root (scipy)."""
    slope = lambda part: linear + part * (2 * square + part * 3 * cube)  # noqa: E731
    part = brentq(slope, 0, 1, xtol=1e-15)
    long, depth = 2.5, 0.1
    last = depth + linear + square + cube
    time, height = balance._turn(long, depth, last, slope(0) / long, slope(1) / long)
    assert time == pytest.approx(long * part)
    assert height == pytest.approx(depth + part * (linear + part * (square + part * cube)))
