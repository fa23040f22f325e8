"""Whole gardens worked by hand, typed in as a person would and read back from the figures.

Arithmetic recomputed apart from the program; no published source. Tolerances are half a unit of
the last digit stated.
"""

from __future__ import annotations

from pathlib import Path

import numpy
import pytest

from interview.garden.size import questions as bed
from interview.garden.survey import pacing_questions as walking
from interview.quantities.units import magnitude


def near(value: float, digits: int = 0) -> object:
    """Return ``value`` with half a unit of its last stated digit as tolerance."""
    return pytest.approx(value, abs=0.5001 * 10**-digits)


def every(values: list[float], digits: int) -> list[object]:
    return [near(value, digits) for value in values]


def rates(test: dict[str, object]) -> list[float]:
    return [row["corrected"] for row in test["intervals"]]


# Soak tests


def test_an_eight_inch_round_hole_read_hourly(typed, hole, printed):
    texts = hole(
        "round",
        "8 in",
        "8 in",
        "+1h left 6 7/8 in; +2h left 5 3/4 in; +3h left 4 7/8 in; +4h left 4 1/8 in",
    )
    test = printed(typed({"units": "us"}, texts).plan)["holes"][0]
    assert test["intervals"][-1]["drop_rate_since_fill"] == near(0.9688, 4)
    assert rates(test) == every([0.2387, 0.2711, 0.2396, 0.2310], 4)
    assert test["corrected_all"] == near(0.2451, 4)
    assert test["corrected_last_three"] == near(0.2472, 4)
    assert test["corrected"] == near(0.2451, 4)


def test_the_pond_that_hole_allows_by_both_checks_and_by_the_strict_one(typed, hole, figure):
    texts = hole(
        "round",
        "8 in",
        "8 in",
        "+1h left 6 7/8 in; +2h left 5 3/4 in; +3h left 4 7/8 in; +4h left 4 1/8 in",
    )
    session = typed({"units": "us"}, texts)
    assert figure("drop_rate", session.plan) == near(1.065, 3)
    assert figure("mean_drop_rate", session.plan) == near(0.969, 3)
    assert figure("depth_by_drop", session.plan) == near(23.2, 1)
    assert figure("depth_by_corrected", session.plan) == near(11.8, 1)
    assert figure("pond_depth", session.plan) == pytest.approx(10)
    assert figure("empty_soonest", session.plan) == near(10.3, 1)
    assert figure("empty_latest", session.plan) == near(41)
    session.offer(session.jump("drain_rule"), "strict")
    assert figure("pond_depth", session.plan) == pytest.approx(5.5)


def test_a_square_metric_hole_that_was_refilled_once(typed, hole, printed):
    texts = hole(
        "square",
        "300 mm",
        "200 mm",
        "+30 min left 172 mm; +60 min left 148; +90 min left 126; +95 min refilled to 200; "
        "+125 min left 175; +155 min left 153; +185 min left 133",
    )
    test = printed(typed({"units": "metric"}, texts).plan)["holes"][0]
    assert test["mean_drop_rate"] == pytest.approx(47)
    assert rates(test) == every([16.11, 15.33, 15.58, 14.30, 13.82, 13.77], 2)
    assert test["corrected_all"] == near(14.82, 2)
    assert test["corrected_last_three"] == near(13.96, 2)
    assert 100 * test["deviation_of_last_three"] == near(2.4, 1)
    assert test["settled"] is True


ENDS = ("5", "5 1/2", "5 7/8", "6", "6 1/8", "6 1/8")


def refilled_hourly(count: int) -> str:
    """Return readings of a ten-inch hole refilled to 8 in a minute after each hourly reading."""
    lines = []
    for place, end in enumerate(ENDS[:count]):
        start = place * 61
        if place:
            lines.append(f"+{start} min refilled to 8 in")
        lines.append(f"+{start + 60} min left {end} in")
    return "\n".join(lines)


def test_a_hole_refilled_every_hour_settles_only_at_the_fifth_reading(typed, hole, printed):
    expected = [0.8412, 0.6798, 0.5653, 0.5283, 0.4918, 0.4918]
    spreads = {3: (21, False), 4: (15, False), 5: (7.0, True)}
    for count in (3, 4, 5, 6):
        texts = hole("round", "10 in", "8 in", refilled_hourly(count))
        test = printed(typed({"units": "us"}, texts).plan)["holes"][0]
        assert rates(test) == every(expected[:count], 4)
        if count in spreads:
            spread, settled = spreads[count]
            assert 100 * test["deviation_of_last_three"] == near(spread, 0 if spread > 10 else 1)
            assert test["settled"] is settled


def test_a_hole_wider_at_the_top_is_not_taken_for_a_straight_one(typed, hole, printed):
    cone = hole(
        "tapered",
        "6 in",
        "8 in",
        "+2h left 5 in",
        hole_top_width="11 in",
        hole_top_height="10 in",
    )
    straight = hole("round", "6 in", "8 in", "+2h left 5 in")
    assert rates(printed(typed({"units": "us"}, cone).plan)["holes"][0]) == [near(0.5367, 4)]
    assert rates(printed(typed({"units": "us"}, straight).plan)["holes"][0]) == [near(0.2846, 4)]


def test_a_hole_longer_than_wide_in_either_units(typed, hole, printed):
    texts = hole(
        "rectangular", "9 in", "7 in", "+90 min left 4 in", hole_length="14 in", read_as="left"
    )
    test = printed(typed({"units": "us"}, texts).plan)["holes"][0]
    assert test["shape_length"] == near(2.739, 3)
    assert rates(test) == [near(0.6724, 4)]
    assert rates(printed(typed({"units": "metric"}, texts).plan)["holes"][0]) == [near(17.08, 2)]


def test_a_narrow_hole_falls_much_faster_than_a_wide_one_in_one_soil(typed, hole, printed):
    narrow = hole("round", "4 in", "12 in", "+1h drop 3 in", read_as="drop")
    wide = hole("round", "12 in", "6 in", "+1h drop 0.7537 in", read_as="drop")
    for texts in (narrow, wide):
        test = printed(typed({"units": "us"}, texts).plan)["holes"][0]
        assert rates(test) == [near(0.2624, 4)]


def test_a_hole_that_hardly_falls_in_ten_hours_means_no_garden_here(typed, hole, printed):
    texts = hole("round", "10 in", "9.0 in", "+10h left 8.25 in")
    plan = typed({"units": "us"}, texts).plan
    test = printed(plan)["holes"][0]
    assert test["drop_rate"] == near(0.075, 3)
    assert test["corrected"] == near(0.01686, 5)
    assert plan.verdict.value == "stop"
    assert plan.size.depth.too_shallow


# Pacing and the survey


def test_a_pace_from_four_walks_of_fifty_feet(typed):
    walks = {
        "units": "us",
        "measured_by": "paces",
        "walkers.1.pace_line": "50 ft",
        "walkers.1.pace_counts": "19; 20; 19; 20",
    }
    answers = typed(walks, {"spout_distance": "16 paces"}).answers
    assert magnitude(walking.walker_pace(answers).length, "ft") == near(2.564, 3)
    assert walking.walker_pace(answers).sd_count == near(0.577, 3)
    assert magnitude(answers[bed.SPOUT_DISTANCE], "ft") == near(41.03, 2)


def test_a_pace_from_five_walks_of_twenty_metres(typed):
    walks = {
        "units": "metric",
        "measured_by": "paces",
        "walkers.1.pace_line": "20 m",
        "walkers.1.pace_counts": "26; 27; 26; 27; 26",
    }
    answers = typed(walks, {"spout_distance": "12p"}).answers
    assert magnitude(walking.walker_pace(answers).length, "m") == near(0.7576, 4)
    assert magnitude(answers[bed.SPOUT_DISTANCE], "m") == near(9.091, 3)


def test_a_paced_roof_with_a_gable_and_a_chimney_cut_out(typed, roof, printed):
    walks = {
        "units": "us",
        "measured_by": "paces",
        "walkers.1.pace_line": "50 ft",
        "walkers.1.pace_counts": "19; 20; 19; 20",
    }
    pieces = (
        "rectangle 16 paces by 7 paces",
        "triangle 14 ft by 7 ft",
        "less rectangle 2.5 ft by 4 ft",
    )
    whole = printed(typed(walks, roof(*pieces)).plan)["surfaces"][0]
    assert whole["plan"] == near(775.4, 1)
    half = printed(typed(walks, roof(*pieces, gutter_outlets="2")).plan)["surfaces"][0]
    assert half["drains_here"] == near(387.7, 1)


@pytest.mark.parametrize(
    ("units", "side", "pitch", "plan", "digits"),
    [
        ("us", "12.5 ft by 1 ft", "6 in 12", 11.18, 2),
        ("metric", "4.2 m by 1 m", "35 deg", 3.440, 3),
    ],
)
def test_a_length_along_the_roof_is_taken_to_the_level(
    typed, roof, printed, units, side, pitch, plan, digits
):
    texts = roof(f"rectangle {side}", surface_basis="slope", surface_pitch=pitch)
    assert printed(typed({"units": units}, texts).plan)["surfaces"][0]["plan"] == near(plan, digits)


@pytest.mark.parametrize(
    ("piece", "area", "digits"),
    [
        ("trapezoid 8.4, 5.2, height 3.1", 21.08, 2),
        ("triangle sides 5.5 m, 4.8 m, 3.9 m", 9.144, 3),
    ],
)
def test_metric_pieces_with_slanted_sides(typed, roof, printed, piece, area, digits):
    plan = typed({"units": "metric"}, roof(piece)).plan
    assert printed(plan)["surfaces"][0]["plan"] == near(area, digits)


def test_a_slope_from_two_readings_of_the_level(typed, figure):
    texts = {
        "units": "us",
        "spots.1.slope_run": "15 ft",
        "spots.1.slope_drop": "9 1/4 in",
        "spots.1.slope_drop_turned": "9 in",
    }
    assert figure("slope", typed(texts).plan) == near(5.069, 3)


# Size


# The floor, W wide and 2 W long, is the root of a (d - P) W^2 + c z (d^2 / 2 - P H) W +
# k z^2 (d^3 / 3 - P H^2) - P S = 0, H = d + b, in feet. With square corners a = 2, c = 6, k = 4:
# 0.83333 W^2 + W - 48.0833 = 0, so W = 7.0197. With round ends a = 1 + pi / 4, c = 2 + pi,
# k = pi: 0.74392 W^2 + 0.85693 W - 47.9581 = 0, so W = 7.4738. The area at half depth is
# a W^2 + c W z d / 2 + k (z d / 2)^2, the volume a W^2 d + c W z d^2 / 2 + k z^2 d^3 / 3.
@pytest.mark.parametrize(
    ("shape", "area", "floor", "volume"),
    [
        ("rectangle", 132.39, (14.04, 7.020), 66.57),
        ("rounded", 130.32, (14.95, 7.474), 65.45),
    ],
)
def test_the_garden_for_six_hundred_feet_of_roof(typed, sized, figure, shape, area, floor, volume):
    plan = typed(sized, {"floor_shape": shape}).plan
    assert figure("weighted_area", plan) == pytest.approx(570)
    assert figure("pond_depth", plan) == pytest.approx(6)
    # The custom takes the roof's own area; the weighted area would give 95, and 114 with the
    # rain that falls on the garden itself.
    assert figure("rule_of_thumb_area", plan) == pytest.approx(100)
    assert magnitude(plan.size.hand_check, "ft**2") == pytest.approx(114)
    assert figure("mid_area", plan) == near(area, 2)
    assert figure("needed_floor_length", plan) == near(floor[0], 2)
    assert figure("needed_floor_width", plan) == near(floor[1], 3)
    assert figure("needed_volume", plan) == near(volume, 2)
    assert figure("recommended_area", plan) == pytest.approx(140)
    needed = plan.size.required.basin
    edges = (needed.edge_length, needed.edge_width, needed.rim_length, needed.rim_width)
    # 3 ft more in the full pond, 2 x 3 x 6 in, and 5 ft more at the rim, 2 x 3 x 10 in.
    assert [magnitude(one, "ft") for one in edges] == [
        near(floor[0] + 3, 2),
        near(floor[1] + 3, 3),
        near(floor[0] + 5, 2),
        near(floor[1] + 5, 3),
    ]


@pytest.mark.parametrize(
    ("change", "area"),
    # By the same balance with z = 2, and with d = 4 in.
    [
        ({"side_slope": "2:1"}, 124.43),
        ({"deepest_pond": "4 in"}, 220.29),
        ({"side_slope": "2:1", "floor_shape": "rectangle"}, 125.68),
        ({"deepest_pond": "4 in", "floor_shape": "rectangle"}, 224.07),
    ],
)
def test_steeper_sides_save_room_and_a_shallow_pond_needs_it(typed, sized, figure, change, area):
    assert figure("mid_area", typed(sized, change).plan) == near(area, 2)


@pytest.fixture
def sized_metric(roof) -> dict[str, str]:
    """Answers for 62 square metres of weighted roof, 25 mm of rain, a pond of 150 mm."""
    return {
        "units": "metric",
        "rain_depth": "25 mm",
        "rate_from": "report",
        "known_rate": "6.5 mm/h",
        **roof("rectangle 10 m by 6.526316 m"),
        "deepest_pond": "150 mm",
        "side_slope": "3:1",
        "length_to_width": "2:1",
        "freeboard": "100 mm",
    }


# By the same balance in meters: d 0.15, P 0.025, H 0.25, S 62.
@pytest.mark.parametrize(
    ("shape", "area", "floor", "volume", "advised"),
    [
        ("rectangle", 14.20, (4.658, 2.329), 2.139, 15),
        ("rounded", 14.00, (4.957, 2.479), 2.107, 14),
    ],
)
def test_the_garden_for_sixty_two_square_metres(
    typed, sized_metric, figure, shape, area, floor, volume, advised
):
    plan = typed(sized_metric, {"floor_shape": shape}).plan
    assert figure("weighted_area", plan) == near(62.00, 2)
    assert figure("mid_area", plan) == near(area, 2)
    assert figure("needed_floor_length", plan) == near(floor[0], 3)
    assert figure("needed_floor_width", plan) == near(floor[1], 3)
    assert figure("needed_volume", plan) == near(volume, 3)
    assert figure("recommended_area", plan) == pytest.approx(advised)


def test_a_metric_garden_in_level_lawn_has_a_rim_of_25_mm(typed, sized_metric, figure):
    texts = {key: text for key, text in sized_metric.items() if key != "freeboard"}
    level = {"spots.1.slope_run": "5 m", "spots.1.slope_drop": "0 mm"}
    plan = typed(texts, level).plan
    # The floor lies the pond of 150 mm and its rim of 25 mm below the lawn.
    assert figure("downhill_floor_depth", plan) == near(175, 1)


PEGGED = {"floor_length": "15 ft", "floor_width": "7 ft"}


def test_the_garden_as_pegged_out_holds_a_little_more(typed, sized, figure):
    plan = typed(sized, PEGGED).plan
    assert figure("pond_volume", plan) == near(70.5, 1)
    assert figure("rim_area", plan) == near(240)
    assert figure("mid_area_drawn", plan) == near(140.2, 1)
    assert figure("rain_held", plan) == near(1.044, 3)


# A rim of 16 x 11 ft leaves a floor of 11 x 6 ft. With square corners it holds
# 0.5 (66 + 1.5 x 17 + 4 / 3 x 2.25) = 47.25 ft^3, of what drains here and of 176 ft^2. With round
# ends the floor has 30 + 9 pi = 58.27 ft^2 and 10 + 6 pi = 28.85 ft round it: 29.14 + 10.82 + 1.18
# = 41.13 ft^3, and the rim 58.27 + 72.12 + 6.25 pi = 150.03 ft^2.
@pytest.mark.parametrize(
    ("shape", "volume", "held"), [("rectangle", 47.25, 0.7601), ("rounded", 41.13, 0.6855)]
)
def test_a_short_room_holds_part_of_the_rain(typed, sized, figure, shape, volume, held):
    room = {"room_length": "16 ft", "room_width": "11 ft", "floor_shape": shape}
    plan = typed(sized, room).plan
    # The largest floor is sought to 0.005 ft, and never over the room.
    assert 0 <= 11 - figure("floor_length_drawn", plan) < 0.005
    assert 0 <= 6 - figure("floor_width_drawn", plan) < 0.005
    assert figure("pond_volume", plan) == pytest.approx(volume, abs=0.05)
    assert figure("rain_held", plan) == pytest.approx(held, abs=0.0007)
    assert any(one.key == "room" for one in plan.findings)


# Storms


def row(printed_plan, shape: str, rain: float) -> dict[str, float]:
    return next(one for one in printed_plan["storms"][shape] if one["rain"] == pytest.approx(rain))


def test_six_hour_storms_that_rise_and_fall(typed, sized, figure, printed):
    plan = typed(sized, PEGGED, {"storm_hours": "6 h", "storm_shape": "triangle"}).plan
    assert figure("sending_area", plan) == near(810, 6)
    assert figure("storm_peak", plan) == near(4.682, 3)
    assert figure("storm_spill", plan) == 0
    assert figure("storm_hours_on_floor", plan) == near(24.21, 2)
    assert figure("storm_hours_floor_only", plan) == near(30.71, 2)
    assert figure("emptying_floor_only", plan) == near(32.23, 2)
    assert figure("caught_at_one_and_a_half", plan) == near(87.1, 1)
    assert figure("caught_at_twice", plan) == near(65.9, 1)
    listed = printed(plan)
    larger = row(listed, "triangle", 1.5)
    assert larger["spill_volume"] == near(13.07, 2)
    assert larger["hours_on_floor"] == near(29.64, 2)
    assert 100 * row(listed, "triangle", 3)["share_caught"] == near(44.4, 1)


def test_the_same_storms_with_even_rain_spill_less(typed, sized, printed):
    listed = printed(typed(sized, PEGGED).plan)
    assert row(listed, "uniform", 1.5)["spill_volume"] == near(11.96, 2)
    assert row(listed, "uniform", 2)["spill_volume"] == near(44.65, 2)


DAYS = (0, 0.30, 0.05, 1.40, 0.80, 0, 0, 2.10, 0.15, 0, 0.60, 1.10)


def through_the_days(hours: float, rate: float) -> tuple[float, float, float]:
    """Return inflow and spill in cubic feet and the longest wet hours; each rain even at first."""
    depth = inflow = spill = wet = longest = 0.0
    step = 1 / 600
    for rain in DAYS:
        for tick in range(round(24 / step)):
            falls = 810 / 12 * rain / hours if tick * step < hours - 1e-9 else 0.0
            area = 105 + 132 * depth + 36 * depth**2
            depth = max(0.0, depth + (falls / area - rate / 12) * step)
            inflow += falls * step
            if depth > 0.5:
                spill += (depth - 0.5) * 180
                depth = 0.5
            wet = wet + step if depth > 0 else 0.0
            longest = max(longest, wet)
    return inflow, spill, longest


def test_twelve_days_of_a_rainfall_file(typed, sized, figure, tmp_path: Path):
    lines = [f"2026-04-{day:02},{rain}" for day, rain in enumerate(DAYS, 1)]
    (tmp_path / "rain.csv").write_text("date,depth\n" + "\n".join(lines) + "\n")
    record = {"has_rain_record": "yes", "rain_record": "rain.csv", "rain_record_unit": "in"}
    plan = typed(sized, PEGGED, record, {"storm_hours": "30 min"}).plan
    inflow, spill, longest = through_the_days(0.5, 0.25)
    assert inflow == near(438.75, 2)
    assert figure("record_share_held", plan) == pytest.approx(100 * (1 - spill / inflow), abs=0.1)
    assert figure("record_longest_wet", plan) == pytest.approx(longest, abs=0.05)
    assert figure("record_missing_days", plan) == 0
    (tmp_path / "rain.csv").write_text("date,depth\n" + "\n".join(lines[:4] + lines[7:]) + "\n")
    assert figure("record_missing_days", typed(sized, PEGGED, record).plan) == 3
    # With all of a day's rain at once it would be less; half an hour of soaking makes it more.
    assert 76 < figure("record_share_held", plan) < 79


# Earth, overflow, and the wait


def soil(long, wide, fall, below, high, top, made_room):
    """Sum the soil dug and the berm over a grid: a rectangle with sides of 3:1, in one length.

    ``made_room`` is what is dug below the finished floor and below its sides.
    """
    cell, reach = long / 400, 14 * high
    x = numpy.arange(-reach + cell / 2, long + reach, cell)[None, :]
    y = numpy.arange(-reach + cell / 2, wide + reach, cell)[:, None]
    beside = numpy.maximum(numpy.maximum(-x, x - long), numpy.maximum(-y, y - wide))
    lawn, q = below + fall * y + 0 * x, numpy.maximum(beside, 0)
    berm = numpy.minimum(high, high - (q - 3 * high - top) / 3)
    side = q / 3 < numpy.maximum(lawn, high)
    dug = q / 3 - numpy.where(q > 0, made_room[1], made_room[0])
    built = numpy.where(side, dug, numpy.maximum(berm, lawn))
    return (
        numpy.maximum(lawn - built, 0).sum() * cell**2,
        numpy.maximum(built - lawn, 0).sum() * cell**2,
    )


def test_cut_and_berm_on_a_five_percent_slope(typed, sized, figure):
    floor = {
        "spots.1.slope_run": "15 ft",
        "spots.1.slope_drop": "9 in",
        "berm_top": "1 ft",
        "floor_length": "15 ft",
        "floor_width": "6 ft",
    }
    plan = typed(sized, floor).plan
    # The lawn uphill as high as the crest: 10 in (1 - 3 x 0.05) - 0.05 x 72 in.
    assert figure("downhill_floor_depth", plan) == near(4.9, 3)
    assert figure("uphill_floor_depth", plan) == near(8.5, 3)
    assert figure("uphill_lawn", plan) == near(10, 3)
    # (10 - 4.9 + 0.05 x (30 + 12)) / (1 - 3 x 0.05)
    assert figure("crest_to_toe", plan) == near(8.471, 3)
    # 5 in are dug below the floor for mulch and compost, 3 in below the sides for mulch.
    cut, fill = soil(15, 6, 0.05, 4.9 / 12, 10 / 12, 1, (5 / 12, 3 / 12))
    assert figure("soil_cut", plan) == pytest.approx(cut, rel=3e-3)
    assert figure("berm_soil", plan) == pytest.approx(fill, rel=5e-3)
    assert figure("soil_spare", plan) == pytest.approx(cut - fill / 0.9, rel=5e-3)


def test_cut_and_berm_on_an_eight_percent_slope_in_metric(typed, sized_metric, figure):
    floor = {
        "spots.1.slope_run": "5 m",
        "spots.1.slope_drop": "400 mm",
        "berm_top": "300 mm",
        "floor_length": "4.5 m",
        "floor_width": "1.8 m",
    }
    plan = typed(sized_metric, floor).plan
    # The lawn uphill would ask for 250 (1 - 0.24) - 144 = 46 mm, a berm of 300 mm for
    # 250 + 0.08 x (750 + 300) - 300 (1 - 0.24).
    assert figure("downhill_floor_depth", plan) == near(106, 1)
    assert figure("uphill_floor_depth", plan) == near(250, 1)
    assert figure("crest_to_toe", plan) == near(300, 1)
    cut, fill = soil(4.5, 1.8, 0.08, 0.106, 0.25, 0.3, (0.125, 0.075))
    assert figure("soil_cut", plan) == pytest.approx(cut, rel=3e-3)
    assert figure("berm_soil", plan) == pytest.approx(fill, rel=5e-3)


def test_the_flow_from_a_roof_in_the_hardest_rain(typed, sized, figure):
    plan = typed(sized, {"peak_intensity": "7 in/h"}).plan
    assert figure("catchment_flow", plan) == near(0.09236, 5)


@pytest.mark.parametrize(("holidays", "first"), [("none", "26"), ("2026-05-25", "27")])
def test_the_first_day_to_dig_skips_the_weekend_and_a_holiday(typed, figure, holidays, first):
    texts = {
        "lines_requested": "asked",
        "lines_asked_on": "2026-05-20",
        "lines_business_days": "3",
        "lines_holidays": holidays,
    }
    good = {"lines_answered": "yes", "lines_valid_days": "10", "lines_valid_kind": "calendar"}
    plan = typed(texts, good).plan
    assert figure("earliest_dig_day", plan) == f"2026-05-{first}"
    assert figure("marks_stale_after", plan) == "2026-05-30"
