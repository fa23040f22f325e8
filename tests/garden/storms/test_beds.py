"""Several beds: shared water, and beds one below the other."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from measures import cubic, inches
from scipy.integrate import solve_ivp

from interview.garden.form.basin import Basin
from interview.garden.pond.hyetographs import StormShape, again, storm
from interview.garden.pond.routing import route
from interview.garden.size.basin import rain_held, required_area
from interview.garden.storms.beds import beds_of
from interview.quantities.units import magnitude, quantity


def basin(length=15, width=7, depth=6, slope=3, freeboard=4):
    return Basin(
        quantity(length, "ft"), quantity(width, "ft"), quantity(depth, "in"), slope,
        quantity(freeboard, "in"),
    )  # fmt: skip


def made(count, in_series, area=570, rate=0.25, **size):
    one = basin(**size)
    return beds_of(
        one.stage, quantity(area, "ft**2"), one.rim_area, quantity(rate, "in/h"), count, in_series
    )


def rain(inches, shape=StormShape.TRIANGLE, hours=6):
    return storm(shape, quantity(inches, "in"), quantity(hours, "h"))


STORMS = {
    "shape": st.sampled_from(list(StormShape)),
    "fall": st.floats(0.05, 5),
    "hours": st.floats(0.5, 24),
    "rate": st.floats(0.02, 4),
    "count": st.integers(2, 4),
    "area": st.floats(100, 3000),
}


@pytest.mark.parametrize("in_series", [False, True])
def test_one_bed_is_just_the_garden(in_series):
    alone = made(1, in_series)
    assert not alone.in_series
    found = alone.route(rain(1.5))
    direct = route(alone.pool, rain(1.5))
    assert found.wettest == direct
    assert found.share_caught == direct.share_caught
    assert found.spill_volume == direct.spill_volume


@pytest.mark.parametrize("in_series", [False, True])
def test_the_row_of_a_storm_is_of_the_wettest_bed_and_what_leaves_the_garden(in_series):
    found = made(2, in_series).route(rain(3))
    row, wettest = found.row, found.wettest
    assert (row.rain, row.peak) == (quantity(3, "in"), wettest.peak)
    assert row.hours_on_floor == wettest.hours_on_floor
    assert 0 < cubic(row.spill_volume) == pytest.approx(cubic(found.spill_volume))
    caught = 1 - cubic(found.spill_volume) / cubic(found.inflow_volume)
    assert row.share_caught == pytest.approx(caught)


def test_two_beds_side_by_side_for_twice_the_roof_do_as_one_for_one():
    one, two = made(1, False, 570).route(rain(2)), made(2, False, 1140).route(rain(2))
    assert two.share_caught == pytest.approx(one.share_caught)
    assert magnitude(two.spill_volume, "ft**3") == pytest.approx(
        2 * magnitude(one.spill_volume, "ft**3")
    )
    assert magnitude(two.wettest.hours_on_floor, "h") == pytest.approx(
        magnitude(one.wettest.hours_on_floor, "h")
    )


def test_beds_in_a_row_hold_the_rain_that_beds_side_by_side_hold():
    """With no time to soak, the rows spill above the same rain: two beds hold twice the water."""
    held = inches(rain_held(basin(), quantity(570 / 2, "ft**2")))
    for in_series in (False, True):
        beds = made(2, in_series, rate=1e-6)
        burst = 0.01
        below = beds.route(rain(held * 0.9999, StormShape.UNIFORM, burst))
        above = beds.route(rain(held * 1.001, StormShape.UNIFORM, burst))
        assert below.share_caught == pytest.approx(1, abs=1e-9)
        assert above.share_caught < 1 - 1e-5


def test_the_first_bed_of_a_row_is_the_wettest():
    found = made(3, True).route(rain(2.5))
    peaks = [inches(bed.peak) for bed in found.beds]
    wet = [magnitude(bed.hours_on_floor, "h") for bed in found.beds]
    assert peaks == sorted(peaks, reverse=True)
    assert wet == sorted(wet, reverse=True)
    assert wet[0] > wet[-1]


def test_a_bed_below_gets_only_its_own_rain_while_the_first_is_not_full():
    found = made(2, True).route(rain(0.75))
    first, second = found.beds
    assert cubic(first.spill_volume) == 0
    own = magnitude(basin().rim_area, "ft**2")
    assert cubic(second.inflow_volume) == pytest.approx(0.75 / 12 * own)


@settings(max_examples=60, deadline=None)
@given(**STORMS)
def test_no_water_is_lost_in_a_row(shape, fall, hours, rate, count, area):
    beds = made(count, True, area, rate)
    for one in (rain(fall, shape, hours), again(rain(fall, shape, hours))):
        found = beds.route(one)
        came = cubic(found.inflow_volume)
        own = magnitude(beds.pool.inside, "ft**2")
        assert came == pytest.approx(inches(one.rain) / 12 * (area + count * own), rel=1e-9)
        soaked = sum(cubic(bed.soaked_volume) for bed in found.beds)
        assert came == pytest.approx(soaked + cubic(found.spill_volume), rel=1e-6, abs=1e-9)
        assert all(bed.pieces[-1].last_depth < 1e-9 for bed in found.beds)
        assert -1e-9 <= found.share_caught <= 1 + 1e-9


@settings(max_examples=25, deadline=None)
@given(**{**STORMS, "count": st.just(2), "rate": st.floats(0.1, 2)})
@example(StormShape.TRIANGLE, 2.5, 6.0, 0.25, 2, 570.0)
@example(StormShape.UNIFORM, 3.0, 3.0, 0.5, 2, 900.0)
def test_two_beds_in_a_row_agree_with_a_general_solver(shape, fall, hours, rate, count, area):
    beds = made(2, True, area, rate)
    falls = rain(fall, shape, hours)
    found = beds.route(falls)
    spilled = march(beds, falls, rate)
    came = cubic(found.inflow_volume)
    assert cubic(found.spill_volume) == pytest.approx(spilled, abs=2e-3 * came)


def march(beds, falls, rate):
    """Depths and spill of two beds by a stiff solver, each brim smoothed over a hair; in feet.

    Floor 15 x 7 ft, sides 3:1: the area is 105 + 132 h + 36 h^2.
    """
    full, rate, hair = 0.5, rate / 12, 1e-4
    sends = magnitude(beds.pool.sending_area, "ft**2")
    own = magnitude(beds.pool.inside, "ft**2")

    def area(depth):
        return 105 + 132 * depth + 36 * depth**2

    def leaves(depth, comes):
        over = min(1.0, max(0.0, (depth - full) / hair + 1))
        return over * max(0.0, comes - rate * area(depth))

    def change(intensity):
        def of(time, state):
            one, two, _ = state
            wet = intensity(time) / 12
            soak = [rate * area(d) * min(1.0, max(0.0, d / hair)) for d in (one, two)]
            first = sends * wet
            spill = leaves(one, first)
            second = own * wet + spill
            last = leaves(two, second)
            return [
                (first - soak[0] - spill) / area(one), (second - soak[1] - last) / area(two), last
            ]  # fmt: skip

        return of

    state = [0.0, 0.0, 0.0]
    for span in falls.spans:
        long = span.end - span.start

        def intensity(time, span=span, long=long):
            return span.first + (span.last - span.first) * (time - span.start) / long

        done = solve_ivp(
            change(intensity),
            (span.start, span.end),
            state,
            method="LSODA",
            rtol=1e-6,
            atol=1e-8,
            max_step=long / 40,
        )
        state = done.y[:, -1]
    return float(state[2])


def test_required_beds_hold_the_rain_together():
    """Each of three beds is sized for a third of the roof."""
    one = required_area(
        quantity(1200 / 3, "ft**2"), quantity(1, "in"), quantity(6, "in"), 3, quantity(4, "in")
    ).basin
    volume = 3 * magnitude(one.volume, "ft**3")
    caught = (1200 + 3 * magnitude(one.rim_area, "ft**2")) / 12
    assert volume == pytest.approx(caught)


@pytest.mark.parametrize("count", [0, 5])
def test_a_garden_has_from_one_to_four_beds(count):
    with pytest.raises(ValueError, match="from 1 to 4 beds"):
        made(count, False)
