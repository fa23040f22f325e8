"""What the plan says while the size is settled: the room, the floor offered, the depth allowed."""

import datetime as dt

import pytest

from interview.asking.long_work import HowFar, heard_by
from interview.garden.pictures import pond_pictures
from interview.garden.session import Session
from interview.garden.summary import so_far
from interview.plain.interview import run
from interview.quantities.units import magnitude
from interview.sheet.report import plan_text


def lines(plan):
    return {line.label: line.value for line in so_far(plan)}


# The room


def test_a_room_that_is_too_small_is_told_at_once_with_the_way_out(plan_of, sized):
    said = lines(plan_of({**sized, "room_length": "16 ft", "room_width": "11 ft"}))["Room"]
    # Worked by hand: a floor of 11 by 6 ft with round ends, 41.1 ft³ for 570 + 150 ft².
    assert said == "TOO SMALL. It holds 0.68 in of the 1 in of rain; there are options."
    tiny = lines(plan_of({**sized, "room_length": "3 ft", "room_width": "3 ft"}))["Room"]
    assert tiny.startswith("TOO SMALL. The room is too narrow")


def test_what_is_told_of_a_small_room_is_of_the_garden_that_is_drawn(plan_of, sized):
    small = {**sized, "room_length": "16 ft", "room_width": "11 ft"}
    own = {"floor_length": "8 ft", "floor_width": "4 ft"}
    plan = plan_of({**small, **own})
    found, told = {one.key: one for one in plan.findings}, lines(plan)
    held = told["Rain it holds"].removesuffix(" in")
    assert told["Room"].startswith(f"TOO SMALL. It holds {held} in of the 1 in of rain")
    assert found["room"].change == "The plan draws the floor you chose."
    assert f"holds {held} in of rain" in found["rain_held"].said
    # A generous garden is held against its own rain: one and a quarter of what was asked.
    generous = plan_of({**small, "how_large": "generous"})
    said = {one.key: one for one in generous.findings}["rain_held"].said
    assert said.endswith("of what a generous garden is to hold.")
    assert "of the 1.25 in of rain" in lines(generous)["Room"]


def test_a_room_that_is_large_enough_is_not_spoken_of(plan_of, sized):
    for room in ({}, {"room_length": "40 ft", "room_width": "30 ft"}, {"room_length": "9 ft"}):
        assert "Room" not in lines(plan_of({**sized, **room}))


def test_a_long_narrow_room_takes_a_long_narrow_garden(plan_of, sized, figure):
    plan = plan_of({**sized, "room_length": "40 ft", "room_width": "10 ft"})
    assert not plan.size.too_big and "Room" not in lines(plan)
    assert magnitude(plan.size.garden.rim_width, "ft") <= 10
    assert figure("rain_held", plan) >= 1
    assert plan.size.size_governed_by == "the rain to hold, in the shape of the room"


def test_a_room_that_takes_all_but_the_rounding_up_is_not_too_small(plan_of, sized):
    """The floor needed is rounded up to half a foot, so one a hair smaller still holds the rain."""
    square = {**sized, "length_to_width": "1:1"}
    sides = [magnitude(one, "in") - 0.05 for one in plan_of(square).size.over_all]
    tight = {"room_length": f"{sides[0]:.4f} in", "room_width": f"{sides[1]:.4f} in"}
    plan = plan_of({**square, **tight})
    assert magnitude(plan.size.rain_held, "in") > 1
    assert "Room" not in lines(plan) and "room" not in {one.key for one in plan.findings}
    assert plan.size.size_governed_by == "the room"


# The floor


@pytest.fixture
def session_of(given, keeper, clock):
    def make(texts):
        return Session(given(texts), keeper, clock)

    return make


def test_the_floor_worked_out_is_the_value_for_enter(session_of, sized, level_spot):
    session = session_of({**sized, **level_spot})
    for key, text in (("floor_length", "15 ft"), ("floor_width", "7 ft 6 in")):
        step = session.jump(key)
        assert session.offered(step) == text
        assert f"{text}" in session.find_out(step)
        session.offer(step, "")
        assert session.answers.texts[key] == text
    assert session.plan.size.size_governed_by == "the rain to hold"
    session.offer(session.jump("floor_length"), "18 ft")
    assert session.plan.size.size_governed_by == "the floor you chose"


def test_a_floor_put_off_is_not_said_to_be_taken_by_enter(session_of, sized, level_spot):
    session = session_of({**sized, **level_spot})
    step = session.jump("floor_length")
    session.put_off(step)
    assert "worked out 15 ft by 7 ft 6 in" in session.find_out(step)
    assert "Enter" not in session.find_out(step)


def test_a_metric_floor_is_offered_in_metres(session_of, sized):
    session = session_of({**sized, "units": "metric"})
    assert session.offered(session.jump("floor_width")).endswith(" m")


def test_without_a_size_nothing_is_offered_for_the_floor(session_of):
    session = session_of({"units": "us"})
    assert session.offered(session.jump("floor_length")) is None


def test_the_depth_of_the_floor_is_told_in_numbers(session_of, sized, level_spot):
    hole = {"holes.1.hole_name": "one"}
    before = session_of({"units": "us", **hole})
    steps = [step for step in _steps(before) if step.question.key == "floor_depth"]
    assert "take 15 in" in before.find_out(steps[0])
    known = session_of({**sized, **level_spot, **hole})
    assert "at the uphill edge" in known.find_out(steps[0])


def _steps(session):
    from interview.asking import route

    return route.steps(session.answers)


# The depth


@pytest.mark.parametrize(("engineer", "deep"), [(None, 12), ("no", 12), ("yes", 14)])
def test_over_twelve_inches_only_with_an_engineers_word(plan_of, sized, engineer, deep):
    texts = {**sized, "known_rate": "2 in/h", "deepest_pond": "14 in"}
    if engineer:
        texts["engineer_says_deeper"] = engineer
    plan = plan_of(texts)
    assert magnitude(plan.size.depth.depth, "in") == pytest.approx(deep)
    found = {finding.key for finding in plan.findings}
    assert ("pond_and_engineer" in found) == (deep == 12)


# Either side of one percent


def at(plan_of, sized, level_spot, drop):
    return plan_of(
        {**sized, **level_spot, "spots.1.slope_run": "10 ft", "spots.1.slope_drop": drop}
    )


def test_level_ground_needs_no_berm_and_falling_ground_one(plan_of, sized, level_spot):
    for drop, berm in (("0", False), ("1.19 in", False), ("1.21 in", True), ("6 in", True)):
        plan = at(plan_of, sized, level_spot, drop)
        sheet = " ".join(plan_text(plan).split())
        assert "Dig the floor level" in sheet
        assert ("Build the berm" in sheet) is berm
        assert ("the lawn is the rim" in sheet) is not berm
        keys = {one.key: one.grade.value for one in plan.findings}
        assert keys["berm_soil"] == keys["berm_height"] == "good"


def test_the_ground_is_dug_alike_on_either_side_of_one_percent(plan_of, sized, level_spot, figure):
    below, above = (at(plan_of, sized, level_spot, drop) for drop in ("1.19 in", "1.21 in"))
    # Worked by hand: 10 in less 0.3 in for the sides and 0.9 in for the width of the floor.
    assert figure("downhill_floor_depth", above) == pytest.approx(
        figure("downhill_floor_depth", below), abs=1.25
    )
    assert figure("soil_dug_total", above) == pytest.approx(
        figure("soil_dug_total", below), rel=0.25
    )


# Beds in a row


def test_lists_of_several_beds_tell_what_each_takes_and_what_all_take(plan_of, sized, level_spot):
    plan = plan_of({**sized, **level_spot, "beds": "2", "state": "mn", "country": "us"})
    sheet = " ".join(plan_text(plan).split())
    amounts = {item.name: item.amount for item in plan.earth.shopping}
    for name in ("mulch", "compost", "stone"):
        assert f"[ ] {name}:" in sheet
    assert sheet.count("for all the beds,") == 3
    mulch = magnitude(amounts["mulch"], "ft**3") / 2
    assert mulch == pytest.approx(magnitude(plan.size.inside, "ft**2") / 4)
    for zone in plan.planting.chosen.zones:
        for pick in zone.picks:
            assert f"buy {2 * pick.count} for the 2 beds" in sheet


def test_each_bed_of_a_row_has_its_chart(plan_of, sized, level_spot):
    texts = {**sized, **level_spot, "beds": "3"}
    row = plan_of({**texts, "beds_how": "in_a_row", "rain_depth": "1.2 in"})
    titles = [chart.title for chart in pond_pictures(row)]
    assert titles == [f"POND DEPTH in the storm, bed {place} of 3" for place in (1, 2, 3)]
    assert "runs over to the bed below" in pond_pictures(row)[0].notes[0]
    sheet = plan_text(row)
    assert all(title in sheet for title in titles)
    side = plan_of({**texts, "beds_how": "side_by_side"})
    assert [chart.title for chart in pond_pictures(side)] == ["POND DEPTH in the storm"]


# Long records


@pytest.fixture
def long_record(sized, tmp_path):
    first = dt.date(1980, 1, 1)
    rows = [f"{first + dt.timedelta(days=n)},{(0, 0.4, 0)[n % 3]}" for n in range(9000)]
    (tmp_path / "rain.csv").write_text("date,rain\n" + "\n".join(rows) + "\n")
    return {
        **sized,
        "has_rain_record": "yes",
        "rain_record": "rain.csv",
        "rain_record_unit": "in",
    }


def test_a_long_record_says_how_far_it_is(plan_of, long_record):
    heard: list[HowFar] = []
    with heard_by(heard.append):
        _ = plan_of(long_record).storms.real_years
    assert [one.words for one in heard if one.what.startswith("Reading")][:2] == [
        "Reading the rainfall file: 22 %",
        "Reading the rainfall file: 44 %",
    ]
    assert sum(one.what.startswith("Carrying") for one in heard) == 9


def test_who_hears_of_a_sum_may_stop_it(plan_of, long_record):
    class Enough(Exception):
        pass

    def stop(far):
        raise Enough

    plan = plan_of(long_record)
    with pytest.raises(Enough), heard_by(stop):
        _ = plan.storms.real_years
    assert plan.storms.real_years.days == 9000


def test_plain_lines_say_how_far_a_long_record_is(given, keeper, clock, long_record, tmp_path):
    from interview.garden.opening import text_opener

    session = Session(given(long_record), keeper, clock, "", text_opener(tmp_path))
    typed = iter([":plan", ":quit"])
    said: list[str] = []
    run(session, lambda _: next(typed), said.append)
    assert any("Carrying the rain of the record through the garden: 0 %" in one for one in said)
