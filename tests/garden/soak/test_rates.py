"""The soak test: drop rate, corrected rate, settling, and what to do next."""

import math
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from interview.garden.soak.hole import Hole, HoleShape, corrected_rate
from interview.garden.soak.rates import Band, Trend, soak_test, soil_band
from interview.garden.soak.readings import (
    ALREADY_EMPTY,
    EMPTY_NOTE,
    HolesRule,
    Reading,
    advice,
    combine,
    intervals,
)
from interview.quantities.units import magnitude, quantity


def inches(number):
    return quantity(number, "in")


def hours(number):
    return quantity(number, "h")


def in_h(value):
    return magnitude(value, "in/h")


def mm_h(value):
    return magnitude(value, "mm/h")


def round_hole(width):
    return Hole(HoleShape.ROUND, inches(width))


def hourly(hole, start, depths, **more):
    readings = [Reading(hours(hour), inches(depth)) for hour, depth in enumerate(depths, 1)]
    return soak_test(hole, inches(start), readings, **more)


def refilled_hourly(ends):
    readings = [
        Reading(hours(hour), inches(end), refilled_to=inches(8)) for hour, end in enumerate(ends, 1)
    ]
    return soak_test(round_hole(10), inches(8), readings)


@pytest.fixture
def eight_inch():
    """Round 8 in hole read every hour for four hours."""
    return hourly(round_hole(8), 8, [6.875, 5.75, 4.875, 4.125])


@pytest.fixture
def square():
    """Square 300 mm hole, two fills; the last five minutes of the first were not read."""
    first = [(30, 172), (60, 148), (90, 126)]
    second = [(125, 175), (155, 153), (185, 133)]
    readings = [Reading(quantity(t, "min"), quantity(d, "mm")) for t, d in first]
    readings.append(Reading(quantity(95, "min"), None, refilled_to=quantity(200, "mm")))
    readings += [Reading(quantity(t, "min"), quantity(d, "mm")) for t, d in second]
    hole = Hole(HoleShape.SQUARE, quantity(300, "mm"))
    return soak_test(hole, quantity(200, "mm"), readings)


def test_a_round_hole_gives_the_worked_rates(eight_inch):
    rates = [in_h(row.corrected) for row in eight_inch.intervals]
    assert rates == pytest.approx([0.2387, 0.2711, 0.2396, 0.2310], abs=5e-5)
    assert in_h(eight_inch.intervals[-1].drop_rate_since_fill) == pytest.approx(0.9688, abs=5e-5)
    assert in_h(eight_inch.mean_drop_rate) == pytest.approx(0.9688, abs=5e-5)
    assert in_h(eight_inch.drop_rate) == pytest.approx(1.0651, abs=5e-5)
    assert in_h(eight_inch.corrected_all) == pytest.approx(0.2451, abs=5e-5)
    assert in_h(eight_inch.corrected_last_three) == pytest.approx(0.2472, abs=5e-5)
    assert eight_inch.corrected == eight_inch.corrected_all
    assert eight_inch.settled
    assert eight_inch.deviation == pytest.approx(0.0965, abs=5e-5)
    assert eight_inch.band is Band.WELL_DRAINING


def test_the_standard_error_takes_in_the_ruler_and_the_width(eight_inch):
    assert in_h(eight_inch.standard_error) == pytest.approx(0.009528, rel=5e-4)
    exact_width = hourly(
        round_hole(8), 8, [6.875, 5.75, 4.875, 4.125], width_error=quantity(0, "in")
    )
    assert in_h(exact_width.standard_error) == pytest.approx(0.006909, rel=5e-4)


def test_the_errors_of_both_widths_of_a_rectangle_add_by_their_squares():
    """Law of propagation of uncertainty, GUM (JCGM 100:2008), equation 10; slopes by hand."""
    a, b, high, low, time = 9.0, 14.0, 7.0, 4.0, 1.5
    length = a * b / (2 * (a + b))
    along = math.log((high + length) / (low + length)) / time
    along += length * (1 / (high + length) - 1 / (low + length)) / time
    parts = [along * one**2 / (2 * (a + b) ** 2) * 0.5 / math.sqrt(3) for one in (b, a)]
    hole = Hole(HoleShape.RECTANGULAR, inches(a), inches(b))
    reading = [Reading(hours(time), inches(low))]
    found = soak_test(hole, inches(high), reading, reading_error=inches(0))
    assert in_h(found.standard_error) == pytest.approx(math.hypot(*parts), rel=1e-6)


def test_the_errors_of_both_widths_of_a_taper_add_by_their_squares():
    """The same law; the slopes by central differences of the rate, which has a test of its own."""

    def rate(bottom, top):
        hole = Hole(
            HoleShape.TAPERED, inches(bottom), top_width=inches(top), taper_height=inches(7)
        )
        return in_h(corrected_rate(hole, inches(8), inches(5), hours(2))), hole

    parts = [
        (rate(*(w + by for w, by in zip((6, 11), move, strict=True)))[0] - rate(
            *(w - by for w, by in zip((6, 11), move, strict=True)))[0]) / 2e-3
        for move in ((1e-3, 0), (0, 1e-3))
    ]  # fmt: skip
    reading = [Reading(hours(2), inches(5))]
    found = soak_test(rate(6, 11)[1], inches(8), reading, reading_error=inches(0))
    by_hand = math.hypot(*parts) * 0.5 / math.sqrt(3)
    assert in_h(found.standard_error) == pytest.approx(by_hand, rel=1e-5)


def test_the_error_is_that_of_the_readings_whose_rate_is_taken():
    """Of five readings that slow, the rate and its error are those of the last three."""
    slowing = hourly(round_hole(8), 8, [6.5, 5.3, 4.4, 3.7, 3.1])
    last = hourly(round_hole(8), 5.3, [4.4, 3.7, 3.1])
    assert in_h(slowing.corrected) == pytest.approx(in_h(last.corrected))
    assert in_h(slowing.standard_error) == pytest.approx(in_h(last.standard_error))


def test_rates_are_told_apart_by_the_error_of_the_least_sure():
    """A quarter of an hour, an hour, an hour: by one reading, f = L ln((a + L) / (b + L)) / t."""
    readings = [
        Reading(hours(time), inches(depth), refilled_to=inches(8))
        for time, depth in ((0.25, 7.75), (1.25, 7.25), (2.25, 7.25))
    ]
    found = soak_test(round_hole(8), inches(8), readings)
    # 0.203 in/h and two of 0.156: the first is good to 0.083, each of the others to 0.021.
    assert found.deviation == pytest.approx(0.181, abs=1e-3)
    assert found.settled_by_ruler


def test_a_square_hole_with_two_fills_gives_the_worked_rates(square):
    rates = [mm_h(row.corrected) for row in square.intervals]
    assert rates == pytest.approx([16.11, 15.33, 15.58, 14.30, 13.82, 13.77], abs=5e-3)
    assert mm_h(square.mean_drop_rate) == pytest.approx(47)
    assert mm_h(square.corrected_all) == pytest.approx(14.82, abs=5e-3)
    assert mm_h(square.corrected_last_three) == pytest.approx(13.96, abs=5e-3)
    assert square.corrected == square.corrected_last_three
    assert square.deviation == pytest.approx(0.024, abs=5e-4)


def test_the_drop_since_the_fill_starts_again_at_a_refill(square):
    since = [mm_h(row.drop_rate_since_fill) for row in square.intervals]
    assert since == pytest.approx([56, 52, 74 / 1.5, 50, 47, 67 / 1.5])
    assert mm_h(square.drop_rate) == pytest.approx(sum(since) / 6)


def test_a_slowing_test_settles_only_at_the_fifth_reading():
    ends = [5, 5.5, 5.875, 6, 6.125, 6.125]
    whole = refilled_hourly(ends)
    rates = [in_h(row.corrected) for row in whole.intervals]
    assert rates == pytest.approx([0.8412, 0.6798, 0.5653, 0.5283, 0.4918, 0.4918], abs=5e-5)
    third, fourth, fifth = (refilled_hourly(ends[:count]) for count in (3, 4, 5))
    assert third.deviation == pytest.approx(0.21, abs=5e-3)
    assert fourth.deviation == pytest.approx(0.15, abs=5e-4)
    assert fifth.deviation == pytest.approx(0.070, abs=5e-4)
    assert [third.settled, fourth.settled, fifth.settled] == [False, False, True]
    assert third.trend is fourth.trend is Trend.FALLING
    assert third.still_wetting
    assert fifth.trend is Trend.STEADY


def test_settled_means_within_ten_percent_of_the_mean(subtests):
    for apart, settled in [(0.099, True), (0.101, False), (0.111, False)]:
        with subtests.test(apart=apart, settled=settled):
            depth, depths = 8.0, []
            for rate in (0.2 * (1 + apart), 0.2, 0.2 * (1 - apart)):
                depth = (depth + 2) * math.exp(-rate / 2) - 2
                depths.append(depth)
            found = hourly(round_hole(8), 8, depths, reading_error=inches(1 / 100))
            assert found.deviation == pytest.approx(apart)
            assert found.settled is settled
            assert found.trend is (Trend.STEADY if settled else Trend.FALLING)
            depth, depths = 8.0, []
            for rate in (0.2 * (1 - apart), 0.2, 0.2 * (1 + apart)):
                depth = (depth + 2) * math.exp(-rate / 2) - 2
                depths.append(depth)
            found = hourly(round_hole(8), 8, depths, reading_error=inches(1 / 100))
            assert found.trend is (Trend.STEADY if settled else Trend.RISING)
            rising = hourly(round_hole(8), 8, [7.9, 7.6, 7.0])
            assert rising.trend is Trend.RISING


def test_a_tapered_hole_gives_the_worked_rate():
    hole = Hole(HoleShape.TAPERED, inches(6), top_width=inches(11), taper_height=inches(10))
    assert in_h(corrected_rate(hole, inches(8), inches(5), hours(2))) == pytest.approx(
        0.5367, abs=5e-5
    )
    upright = corrected_rate(round_hole(6), inches(8), inches(5), hours(2))
    assert in_h(upright) == pytest.approx(0.2846, abs=5e-5)


def test_a_rectangular_hole_gives_the_worked_rate():
    hole = Hole(HoleShape.RECTANGULAR, inches(9), inches(14))
    assert magnitude(hole.shape_length, "in") == pytest.approx(2.739, abs=5e-4)
    rate = corrected_rate(hole, inches(7), inches(4), hours(1.5))
    assert in_h(rate) == pytest.approx(0.6724, abs=5e-5)
    assert mm_h(rate) == pytest.approx(17.08, abs=5e-3)


def test_a_narrow_hole_falls_far_faster_than_a_wide_one_in_the_same_soil():
    rate = in_h(corrected_rate(round_hole(4), inches(12), inches(9), hours(1)))
    assert rate == pytest.approx(0.2624, abs=5e-5)
    wide = 3.0
    end = (6 + wide) * math.exp(-rate / wide) - wide
    assert 6 - end == pytest.approx(0.7537, abs=5e-5)
    assert in_h(corrected_rate(round_hole(12), inches(6), inches(end), hours(1))) == pytest.approx(
        rate
    )


def test_water_that_stands_still_has_a_rate_of_nothing_and_cannot_rise():
    assert in_h(corrected_rate(round_hole(8), inches(7), inches(7), hours(1))) == 0
    emptied = corrected_rate(round_hole(8), inches(8), inches(0), hours(1))
    assert in_h(emptied) == pytest.approx(2 * math.log(10 / 2))
    with pytest.raises(ValueError, match="cannot rise"):
        corrected_rate(round_hole(8), inches(7), inches(7.01), hours(1))
    with pytest.raises(ValueError, match="more than zero"):
        corrected_rate(round_hole(8), inches(7), inches(6), hours(0))


def test_a_very_slow_hole_gives_the_worked_rates():
    test = soak_test(round_hole(10), inches(9), [Reading(hours(10), inches(8.25))])
    assert in_h(test.drop_rate) == pytest.approx(0.075)
    assert in_h(test.corrected) == pytest.approx(0.01686, abs=5e-6)
    assert test.band is Band.MARGINAL
    assert test.trend is Trend.TOO_FEW
    assert test.deviation is None


def wetted_over_area(hole_shape, sizes, depth):
    """Wet soil over water surface, from first principles."""
    if hole_shape is HoleShape.ROUND:
        radius = sizes[0] / 2
        return (math.pi * radius**2 + 2 * math.pi * radius * depth) / (math.pi * radius**2)
    if hole_shape is HoleShape.SQUARE:
        return (sizes[0] ** 2 + 4 * sizes[0] * depth) / sizes[0] ** 2
    if hole_shape is HoleShape.RECTANGULAR:
        a, b = sizes
        return (a * b + 2 * (a + b) * depth) / (a * b)
    bottom, top, height = sizes
    lean = (top - bottom) / 2 / height
    radius = bottom / 2 + lean * depth
    slant = depth * math.sqrt(1 + lean**2)
    wall = math.pi * (bottom / 2 + radius) * slant
    return (math.pi * (bottom / 2) ** 2 + wall) / (math.pi * radius**2)


@settings(max_examples=40, deadline=None)
@given(
    shape=st.sampled_from(HoleShape),
    width=st.floats(4, 20),
    other=st.floats(4, 20),
    height=st.floats(8, 20),
    start=st.floats(3, 12),
    rate=st.floats(0.01, 2),
    time=st.floats(0.1, 3),
)
def test_the_rate_put_into_a_numerical_fall_comes_back_out(
    shape, width, other, height, start, rate, time
):
    sizes = {
        HoleShape.ROUND: (width,),
        HoleShape.SQUARE: (width,),
        HoleShape.RECTANGULAR: (width, other),
        HoleShape.TAPERED: (width, width + other / 2, height),
    }[shape]
    hole = {
        HoleShape.ROUND: lambda: Hole(shape, inches(width)),
        HoleShape.SQUARE: lambda: Hole(shape, inches(width)),
        HoleShape.RECTANGULAR: lambda: Hole(shape, inches(width), inches(other)),
        HoleShape.TAPERED: lambda: Hole(
            shape,
            inches(width),
            top_width=inches(width + other / 2),
            taper_height=inches(height),
        ),
    }[shape]()
    fall = solve_ivp(
        lambda _, depth: [-rate * wetted_over_area(shape, sizes, depth[0])],
        (0, time),
        [start],
        rtol=1e-10,
        atol=1e-12,
    )
    end = fall.y[0][-1]
    if end <= 0:
        return
    found = corrected_rate(hole, inches(start), inches(end), hours(time))
    assert in_h(found) == pytest.approx(rate, rel=1e-6)


def test_a_taper_of_nothing_is_a_round_hole():
    hole = Hole(HoleShape.TAPERED, inches(8), top_width=inches(8), taper_height=inches(10))
    tapered = hourly(hole, 8, [6.875, 5.75, 4.875, 4.125])
    upright = hourly(round_hole(8), 8, [6.875, 5.75, 4.875, 4.125])
    assert in_h(tapered.corrected) == pytest.approx(in_h(upright.corrected), rel=1e-9)
    assert tapered.side_share == pytest.approx(upright.side_share, rel=1e-9)


FALLS = st.lists(st.floats(0.05, 0.9), min_size=2, max_size=6)


@given(FALLS, st.floats(5, 14))
def test_units_do_not_matter(falls, width):
    depth, readings, metric = 8.0, [], []
    for hour, fall in enumerate(falls, 1):
        depth -= fall
        readings.append(Reading(hours(hour), inches(depth)))
        metric.append(Reading(quantity(60 * hour, "min"), quantity(25.4 * depth, "mm")))
    us = soak_test(round_hole(width), inches(8), readings)
    si = soak_test(
        Hole(HoleShape.ROUND, quantity(25.4 * width, "mm")), quantity(203.2, "mm"), metric
    )
    assert in_h(si.corrected) == pytest.approx(in_h(us.corrected), rel=1e-9)
    assert in_h(si.drop_rate) == pytest.approx(in_h(us.drop_rate), rel=1e-9)
    assert in_h(si.standard_error) == pytest.approx(in_h(us.standard_error), rel=1e-4)
    assert si.deviation == us.deviation or si.deviation == pytest.approx(us.deviation, abs=1e-9)


@given(FALLS, st.floats(5, 14), st.floats(0.2, 5))
def test_scaling_every_length_scales_the_rate(falls, width, scale):
    depth, small, large = 8.0, [], []
    for hour, fall in enumerate(falls, 1):
        depth -= fall
        small.append(Reading(hours(hour), inches(depth)))
        large.append(Reading(hours(hour), inches(depth * scale)))
    one = soak_test(round_hole(width), inches(8), small)
    other = soak_test(round_hole(width * scale), inches(8 * scale), large)
    assert in_h(other.corrected) == pytest.approx(scale * in_h(one.corrected), rel=1e-9)
    assert other.side_share == pytest.approx(one.side_share, rel=1e-9)


@given(st.floats(0.5, 7.5), st.floats(0.05, 0.95), st.floats(0.05, 0.95))
def test_splitting_an_interval_leaves_the_mean_unchanged(fall, time_part, fall_part):
    end = Reading(hours(4), inches(8 - fall))
    between = Reading(hours(4 * time_part), inches(8 - fall * fall_part))
    whole = soak_test(round_hole(8), inches(8), [end])
    split = soak_test(round_hole(8), inches(8), [between, end])
    assert in_h(split.corrected_all) == pytest.approx(in_h(whole.corrected_all), rel=1e-9)
    assert in_h(split.mean_drop_rate) == pytest.approx(in_h(whole.mean_drop_rate), rel=1e-9)
    assert in_h(split.standard_error) == pytest.approx(in_h(whole.standard_error), rel=1e-6)


@given(st.permutations(range(5)))
def test_readings_typed_in_another_order_are_refused(order):
    readings = [Reading(hours(hour), inches(8 - 0.7 * hour)) for hour in range(1, 6)]
    shuffled = [readings[place] for place in order]
    if list(order) == sorted(order):
        assert soak_test(round_hole(8), inches(8), shuffled).intervals
        return
    with pytest.raises(ValueError, match="must be later"):
        soak_test(round_hole(8), inches(8), shuffled)


def test_one_long_reading_tells_enough_of_a_slow_hole(subtests):
    for long, fall, told in [(6, 3, True), (5.9, 1, False), (6, 3.1, False), (10, 0.75, True)]:
        with subtests.test(long=long, fall=fall, told=told):
            rows = intervals(round_hole(8), inches(8), [Reading(hours(long), inches(8 - fall))])
            assert advice(rows).slow_told is told
    looks = [Reading(hours(4), inches(7)), Reading(hours(8), inches(6))]
    assert not advice(intervals(round_hole(8), inches(8), looks)).slow_told


def test_a_rate_still_falling_beyond_the_error_of_the_ruler_is_not_settled():
    """Each step is within the ruler's error, and so are the last three; the sum of six is not.

    Worked by hand for a round hole of 8 in: an hour from depth a to b gives 2 ln((a + 2)/(b + 2)),
    uncertain by 2 (0.125/sqrt 3) sqrt(1/(a + 2)^2 + 1/(b + 2)^2), both in in/h.
    """
    depths = [8, 7.125, 6.375, 5.75, 5.25, 4.75, 4.375]
    rates, errors = [], []
    for a, b in pairwise(depths):
        rates.append(2 * math.log((a + 2) / (b + 2)))
        errors.append(2 * 0.125 / math.sqrt(3) * math.hypot(1 / (a + 2), 1 / (b + 2)))
    blur = 2 * max(errors)
    assert all(abs(one - two) < blur for one, two in pairwise(rates))
    assert max(rates[-3:]) - min(rates[-3:]) < blur < max(rates) - min(rates)
    whole = hourly(round_hole(8), 8, depths[1:])
    assert whole.deviation > 0.1
    assert whole.trend is Trend.FALLING and whole.still_wetting and not whole.settled
    late = soak_test(
        round_hole(8),
        inches(depths[3]),
        [Reading(hours(at), inches(depth)) for at, depth in enumerate(depths[4:], 1)],
    )
    assert late.settled and late.settled_by_ruler and not late.still_wetting


def test_rates_apart_beyond_the_ruler_with_no_way_go_up_and_down():
    found = refilled_hourly([6, 5, 6, 5, 6])
    assert found.trend is Trend.UP_AND_DOWN
    assert refilled_hourly([7, 6.5, 6, 5.5, 5]).trend is Trend.RISING
    assert not found.settled and not found.still_wetting


def test_the_share_that_leaves_by_the_sides_makes_up_the_fall(eight_inch):
    bottom = in_h(eight_inch.corrected_all) * 4
    assert 1 - eight_inch.side_share == pytest.approx(bottom / (8 - 4.125))
    little = hourly(round_hole(8), 8, [7.5])
    assert 1 - little.side_share == pytest.approx(in_h(little.corrected) / 0.5)


def test_what_left_a_tapered_hole_is_the_frustum_between_the_levels():
    """A cone cut off is pi h / 3 (R^2 + R r + r^2): mensuration, any handbook."""
    hole = Hole(HoleShape.TAPERED, inches(6), top_width=inches(11), taper_height=inches(10))
    test = soak_test(hole, inches(8), [Reading(hours(2), inches(5))])
    low, high = 3 + 2.5 * 5 / 10, 3 + 2.5 * 8 / 10
    left = math.pi * 3 / 3 * (low**2 + low * high + high**2)
    bottom = in_h(test.corrected) * 2 * math.pi * 3**2
    assert test.side_share == pytest.approx(1 - bottom / left)


def test_a_hole_found_empty_is_left_out_and_said_so():
    readings = [Reading(hours(1), inches(5), refilled_to=inches(8))]
    plain = soak_test(round_hole(8), inches(8), readings)
    empty = soak_test(round_hole(8), inches(8), [*readings, Reading(hours(5), None, emptied=True)])
    assert in_h(empty.corrected) == in_h(plain.corrected)
    assert empty.notes == (EMPTY_NOTE,)
    assert empty.intervals[-1].found_empty
    assert in_h(empty.intervals[-1].corrected) > 0


def test_a_depth_of_zero_is_a_hole_found_empty():
    with pytest.raises(ValueError, match="empty at every reading"):
        soak_test(round_hole(8), inches(8), [Reading(hours(1), inches(0))])


def test_the_moment_a_hole_emptied_makes_its_interval_count():
    reading = Reading(hours(3), inches(0), emptied=True, emptied_at=hours(0.5))
    test = soak_test(round_hole(8), inches(8), [reading])
    assert in_h(test.drop_rate) == pytest.approx(16)
    assert in_h(test.corrected) == pytest.approx(2 / 0.5 * math.log(10 / 2))
    assert test.advice.enough_early


def test_reading_on_past_an_empty_hole_adds_nothing():
    readings = [Reading(hours(1), inches(3)), Reading(hours(2), inches(0))]
    more = [*readings, Reading(hours(3), inches(0))]
    rows = intervals(round_hole(8), inches(8), more)
    assert [row.why_not for row in rows] == ["", EMPTY_NOTE, ALREADY_EMPTY]
    assert soak_test(round_hole(8), inches(8), more).corrected == (
        soak_test(round_hole(8), inches(8), readings).corrected
    )


def test_a_spoiled_interval_is_left_out_and_starts_the_fall_again():
    readings = [
        Reading(hours(1), inches(7)),
        Reading(hours(2), inches(7.5), spoiled="It rained."),
        Reading(hours(3), inches(6.5)),
    ]
    test = soak_test(round_hole(8), inches(8), readings)
    assert [row.valid for row in test.intervals] == [True, False, True]
    assert [row.corrected is None for row in test.intervals] == [False, True, False]
    assert magnitude(test.intervals[1].depth_after, "in") == pytest.approx(7.5)
    assert in_h(test.drop_rate) == pytest.approx(1)
    assert in_h(test.mean_drop_rate) == pytest.approx(1)
    assert test.notes == ("It rained.",)


def test_water_that_does_not_fall_gives_nothing_and_is_slow():
    test = hourly(round_hole(8), 8, [8, 8, 8])
    assert in_h(test.corrected) == 0
    assert test.band is Band.NO_FALL
    assert test.side_share == 0
    assert test.settled and test.deviation == 0
    assert test.advice.slow_branch
    assert magnitude(test.advice.next_interval, "h") == 1


def test_a_fall_too_small_for_the_ruler_is_no_fall():
    assert hourly(round_hole(8), 8, [7.9]).band is Band.NO_FALL
    assert hourly(round_hole(8), 8, [7.875]).band is not Band.NO_FALL


def test_readings_that_cannot_be_right_are_refused_in_plain_words(subtests):
    for readings, words in [
        ([Reading(hours(0), inches(7))], "Reading 1 must be later"),
        ([Reading(hours(math.inf), inches(7))], "Reading 1 must be later"),
        ([Reading(hours(2), inches(7)), Reading(hours(2), inches(6))], "Reading 2 must be later"),
        ([Reading(hours(1), inches(9))], "deeper than before"),
        ([Reading(hours(1), inches(-1))], "more than all the water"),
        ([Reading(hours(1), None)], "no depth of water"),
        ([Reading(hours(1), inches(0.5), emptied=True)], "both empty and a depth"),
        ([Reading(hours(1), inches(6), refilled_to=inches(5))], "deeper than before"),
        ([Reading(hours(1), None, refilled_to=inches(0))], "deeper than before"),
        ([Reading(hours(1), inches(0), emptied_at=hours(2))], "must have become empty"),
        (
            [Reading(hours(1), inches(3)), Reading(hours(2), inches(0), emptied_at=hours(1))],
            "must have become empty",
        ),
        ([Reading(hours(1), inches(0)), Reading(hours(2), inches(1))], "deeper than before"),
        ([], "no usable reading"),
    ]:
        with (
            subtests.test(readings=readings, words=words),
            pytest.raises(ValueError, match=words),
        ):
            soak_test(round_hole(8), inches(8), readings)


def test_a_test_needs_water_at_the_start(subtests):
    for depth in [0, -1, math.nan, math.inf]:
        with (
            subtests.test(depth=depth),
            pytest.raises(ValueError, match="Fill the hole first"),
        ):
            intervals(round_hole(8), inches(depth), [])


def test_a_little_water_is_water():
    readings = [Reading(hours(1), inches(0.5), refilled_to=inches(0.75))]
    (row,) = intervals(round_hole(0.9), inches(0.9), readings)
    assert magnitude(row.drop, "in") == pytest.approx(0.4)


def test_a_hole_needs_its_measurements():
    tapered = {"top_width": inches(9), "taper_height": inches(8)}
    for shape, wide, more in [
        (HoleShape.ROUND, 0, {}), (HoleShape.ROUND, math.inf, {}), (HoleShape.TAPERED, 0, tapered),
    ]:  # fmt: skip
        with pytest.raises(ValueError, match="wider than zero"):
            Hole(shape, inches(wide), **more)
    with pytest.raises(ValueError, match="one more measurement"):
        Hole(HoleShape.RECTANGULAR, inches(8))
    with pytest.raises(ValueError, match="one more measurement"):
        Hole(HoleShape.TAPERED, inches(8), top_width=inches(9))


def test_a_hole_that_would_close_up_under_water_is_refused():
    hole = Hole(HoleShape.TAPERED, inches(8), top_width=inches(4), taper_height=inches(4))
    with pytest.raises(ValueError, match="would close"):
        soak_test(hole, inches(9), [Reading(hours(1), inches(8))])
    with pytest.raises(ValueError, match="told at the start"):
        intervals(hole, inches(8), [])
    with pytest.raises(ValueError, match="told at reading 1"):
        intervals(hole, inches(7), [Reading(hours(1), inches(6), refilled_to=inches(8))])


def test_a_last_digit_neither_raises_the_water_nor_refuses_a_refill():
    readings = [
        Reading(hours(1), inches(8 + 1e-10)),
        Reading(hours(2), inches(6), refilled_to=inches(6)),
    ]
    first, second = intervals(round_hole(8), inches(8), readings)
    assert magnitude(first.drop, "in") == 0
    assert magnitude(second.drop, "in") == pytest.approx(2)


def test_the_band_is_that_of_the_rate_which_allows_the_shallower_pond(subtests):
    for drop, corrected, band in [
        # By hand: the drop over 24 h and the corrected rate over 48 h, the lesser in inches.
        (6.0, 1.0, Band.VERY_FAST),
        (5.99, 1.0, Band.WELL_DRAINING),
        (6.0, 0.1, Band.WORKABLE),
        (1.0, 10 / 48, Band.WELL_DRAINING),
        (1.0, 9.99 / 48, Band.WORKABLE),
        (10 / 24, 0.4, Band.WELL_DRAINING),
        (9.9 / 24, 0.4, Band.WORKABLE),
        (1.0, 3 / 48, Band.WORKABLE),
        (1.0, 2.99 / 48, Band.MARGINAL),
        (0.01, 0.01, Band.MARGINAL),
        (0.0, 0.0, Band.NO_FALL),
    ]:
        with subtests.test(drop=drop, corrected=corrected, band=band):
            assert soil_band(quantity(drop, "in/h"), quantity(corrected, "in/h")) is band


def test_soil_that_is_faster_through_its_bottom_is_never_called_worse(subtests):
    for drop in [25.0, 20.0, 12.0]:
        with subtests.test(drop=drop):
            bands = list(Band)
            found = [
                bands.index(soil_band(quantity(drop, "mm/h"), quantity(rate, "mm/h")))
                for rate in (0.5, 1.6, 5.2, 5.8, 6.7, 9.0)
            ]
            assert found == sorted(found, reverse=True)


def test_one_very_fast_reading_is_enough(subtests):
    for depths, enough in [([1.9], True), ([2.1], False), ([1.9, 0.9], False)]:
        with subtests.test(depths=depths, enough=enough):
            assert hourly(round_hole(8), 8, depths).advice.enough_early is enough


def test_a_hole_found_empty_can_show_that_the_soil_is_fast():
    rows = intervals(round_hole(8), inches(8), [Reading(hours(1), None, emptied=True)])
    assert advice(rows).enough_early
    assert not advice(rows).slow_branch


def test_the_slow_branch_opens_on_no_fall_in_an_hour_or_little_by_three(subtests):
    for depths, slow in [
        ([8], True),
        ([7.99], False),
        ([7.99, 7.98, 7.76], True),
        ([7.9, 7.8, 7.75], False),
        ([7.9, 7.8], False),
    ]:
        with subtests.test(depths=depths, slow=slow):
            assert hourly(round_hole(8), 8, depths).advice.slow_branch is slow


def test_the_next_reading_comes_after_three_quarters_of_an_inch(subtests):
    for fall, minutes in [(0.5, 60), (0.75, 60), (0.9, 50), (1.5, 30), (3, 15), (7.5, 6)]:
        with subtests.test(fall=fall, minutes=minutes):
            test = hourly(round_hole(8), 8, [8 - fall])
            assert magnitude(test.advice.next_interval, "min") == pytest.approx(minutes)


def test_the_next_reading_is_never_sooner_than_five_minutes():
    rows = intervals(round_hole(8), inches(8), [Reading(quantity(5, "min"), inches(1))])
    assert magnitude(advice(rows).next_interval, "min") == pytest.approx(5)
    assert magnitude(advice(()).next_interval, "h") == 1


class Rated:
    """A stand-in for a finished test hole."""

    def __init__(self, drop, corrected):
        self.drop_rate = quantity(drop, "in/h")
        self.mean_drop_rate = quantity(0.9 * drop, "in/h")
        self.lower_drop_rate = self.mean_drop_rate
        self.corrected = quantity(corrected, "in/h")


def test_the_slower_of_two_holes_governs():
    both = combine([Rated(1.2, 0.30), Rated(0.8, 0.20)])
    assert both.rule is HolesRule.SLOWEST
    assert in_h(both.corrected) == pytest.approx(0.20)
    assert in_h(both.drop_rate) == pytest.approx(0.8)
    assert in_h(both.mean_drop_rate) == in_h(both.lower_drop_rate) == pytest.approx(0.72)
    assert both.spread == pytest.approx(1.5)


def test_the_middle_value_governs_three_or_more_holes():
    three = combine([Rated(1, 0.31), Rated(2, 0.22), Rated(3, 0.27)])
    assert three.rule is HolesRule.MIDDLE
    assert in_h(three.corrected) == pytest.approx(0.27)
    assert in_h(three.drop_rate) == pytest.approx(2)
    four = combine([Rated(1, 0.1), Rated(1, 0.2), Rated(1, 0.4), Rated(1, 0.9)])
    assert in_h(four.corrected) == pytest.approx(0.3)


def test_one_hole_stands_for_itself_and_none_is_refused(eight_inch):
    only = combine([eight_inch])
    assert only.corrected == eight_inch.corrected
    assert only.spread == 1
    assert math.isinf(combine([Rated(1, 0.0), Rated(1, 0.3)]).spread)
    assert combine([Rated(0, 0.0), Rated(0, 0.0)]).spread == 1
    with pytest.raises(ValueError, match="one soak test first"):
        combine([])
