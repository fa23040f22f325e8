"""What the levels as dug mean: on both sides of each limit, and in the words of the plan."""

from __future__ import annotations

import pytest

from interview.asking import route
from interview.garden.summary import waiting
from interview.garden.verdicts import verdict
from interview.quantities.evidence import Grade

READ = {
    "levels_read": "yes",
    "floor_cover": "finished",
    "floor_readings": "8 in; 8 in; 8 in",
    "notch_reading": "2 in",
    "rim_reading": "0 in",
    "inlet_reading": "0 in",
}
"""A garden dug as planned: a pond of 6 in under a rim of 2 in, read from the string."""


@pytest.fixture
def built(plan_of, sized, level_spot):
    """Return a maker of the plan of an invented sloping garden whose levels were read.

    An answer of nothing is left out.
    """

    def make(**texts):
        sloping = {"spots.1.slope_run": "10 ft", "spots.1.slope_drop": "6 in"}
        usual = {"freeboard": "2 in", "deepest_pond": "6 in", "children": "no"}
        every = {**sized, **level_spot, **sloping, **usual, **READ, **texts}
        return plan_of({key: text for key, text in every.items() if text is not None})

    return make


def found(plan, key):
    return next((one for one in plan.findings if one.key == key), None)


def test_a_garden_dug_as_planned_holds_what_was_planned(built, figure):
    plan = built()
    assert figure("built_volume", plan) == pytest.approx(figure("pond_volume", plan))
    assert figure("built_share", plan) == pytest.approx(100)
    assert figure("built_rain_held", plan) == pytest.approx(figure("rain_held", plan))
    assert figure("built_empty", plan) == pytest.approx(figure("empty_latest", plan))
    assert figure("built_depth", plan) == pytest.approx(6)
    assert figure("built_rim", plan) == pytest.approx(2)
    for key in ("built_depth", "built_level", "built_rim", "built_inlet"):
        one = found(plan, key)
        assert one.grade is Grade.GOOD and not one.change, key


def test_what_a_bed_holds_as_dug_follows_from_its_readings(built, figure):
    plan = built(floor_readings="7 in; 8 in; 7.5 in", side_slope="2:1")

    def value(key):
        return figure(key, plan)

    # By the formula beside each: on average 5.5 in deep, sides of 2 to 1.
    h, z = 5.5 / 12, 2
    held = value("floor_area") * h + value("floor_perimeter") * z * h**2 / 2
    held += value("corners") * z**2 * h**3 / 3
    assert value("built_volume") == pytest.approx(held)
    assert value("built_share") == pytest.approx(100 * held / value("pond_volume"))
    sends = value("weighted_area") + value("inside_area")
    assert value("built_rain_held") == pytest.approx(12 * held / sends)
    # The lowest place is 8 in down, 6 in under the notch.
    assert value("built_empty") == pytest.approx(6 / value("corrected_rate"))
    assert value("built_floor_spread") == pytest.approx(1)


def test_a_pond_half_an_inch_off_is_as_planned_and_more_is_to_be_mended(built):
    # Level within half an inch: common practice, no source.
    near = found(built(floor_readings="7.5 in"), "built_depth")
    assert near.grade is Grade.GOOD and not near.change
    high = found(built(floor_readings="7.4 in"), "built_depth")
    assert high.grade is Grade.FIX
    assert high.change == "The floor is 1/2 in too high: dig it that much deeper."


def test_a_floor_over_the_place_where_it_spills_holds_nothing_and_says_by_how_much(built, figure):
    for notch, said in (("8 in", "lies as high as the place"), ("10 in", "lies 2 in above the")):
        plan = built(notch_reading=notch)
        one = found(plan, "built_depth")
        assert one.grade is Grade.FIX and said in one.said and "holds no water" in one.said
        assert figure("built_volume", plan) == 0 and figure("built_empty", plan) == 0


def test_a_floor_an_inch_high_says_how_much_less_it_holds(built, figure):
    plan = built(floor_readings="7 in")
    one = found(plan, "built_depth")
    lost = 100 - figure("built_share", plan)
    assert 15 < lost < 25
    assert "5 in deep, not 6 in: it holds" in one.said and f"{lost:.0f} % less" in one.said
    assert "1 in too high" in one.change and "notch" not in one.change


def test_a_notch_too_low_is_told_from_a_floor_too_high_by_the_string_alone(built):
    low = found(built(notch_reading="3 in"), "built_depth")
    assert low.change == "The notch is 1 in too low: raise its sill that much."
    both = found(built(notch_reading="2.5 in", floor_readings="7.5 in"), "built_depth")
    assert "floor is 1/2 in too high" in both.change and "notch is 1/2 in too low" in both.change
    other = found(built(notch_reading="3 in", levels_from="other"), "built_depth")
    assert other.change == (
        "Dig the floor 1 in deeper, or raise the notch where the rim stands high enough."
    )


def test_a_floor_and_a_notch_off_by_the_same_leave_the_pond_as_it_was(built, figure):
    plan = built(notch_reading="3 in", floor_readings="9 in")
    assert figure("built_share", plan) == pytest.approx(100)
    assert found(plan, "built_depth").grade is Grade.GOOD


def test_a_deeper_pond_may_stay_while_it_is_gone_in_time(built):
    # 48 h: the Royal Horticultural Society. At 0.25 in/h that is 12 in.
    deeper = found(built(floor_readings="7 in", notch_reading="0 in"), "built_depth")
    assert deeper.grade is Grade.GOOD and deeper.change.startswith("You may keep it so.")
    near, past = (
        found(built(floor_readings=one, notch_reading="0 in"), "built_depth")
        for one in ("12 in", "12.1 in")
    )
    assert near.grade is Grade.GOOD and past.grade is Grade.FIX
    assert past.limit == "gone in 48 h"
    assert "floor is 4 in too low" in past.change and "notch is 2 in too high" in past.change


def test_a_deeper_pond_is_kept_from_small_children(built):
    deeper = {"floor_readings": "8.6 in", "children": "yes"}
    assert found(built(**deeper), "built_depth").grade is Grade.FIX
    assert found(built(**deeper | {"children": "no"}), "built_depth").grade is Grade.GOOD


def test_a_pond_over_a_foot_deep_asks_for_an_engineer(built):
    fast = {"known_rate": "2 in/h", "floor_readings": "14.1 in"}
    assert found(built(**fast), "built_depth").limit == "12 in (300 mm) without an engineer's word"
    assert found(built(**fast | {"floor_readings": "14 in"}), "built_depth").grade is Grade.GOOD


def test_a_floor_is_level_within_half_an_inch(built):
    level = found(built(floor_readings="8.25 in; 7.75 in; 8 in"), "built_level")
    assert level.grade is Grade.GOOD and "1/2 in apart" in level.said
    uneven = found(built(floor_readings="8.3 in; 7.75 in; 8 in"), "built_level")
    assert uneven.grade is Grade.FIX
    assert found(built(floor_readings="8 in"), "built_level") is None


def test_a_rim_at_the_notch_or_below_it_spills_there(built, figure):
    low = built(rim_reading="3 in")
    one = found(low, "built_rim")
    assert one.grade is Grade.FIX and "lowest 1 in below the notch" in one.said
    assert one.change.endswith("until it stands 2 in above the notch.")
    assert figure("built_rim", low) == pytest.approx(-1)
    assert figure("built_depth", low) == pytest.approx(5)
    assert found(low, "built_depth").change.startswith("Raise the rim first")
    level = found(built(rim_reading="2 in"), "built_rim")
    assert level.grade is Grade.FIX and "no higher than the notch" in level.said


def test_a_rim_under_the_peak_flow_is_run_over_in_the_hardest_rain(built):
    head = 12 * built().earth.notch.head.to("ft").magnitude
    assert 0.5 < head < 2
    for over, grade in ((head + 0.01, Grade.GOOD), (head - 0.01, Grade.FIX)):
        assert found(built(rim_reading=f"{2 - over:.4f} in"), "built_rim").grade is grade
    assert found(built(rim_reading=None), "built_rim") is None


def test_an_inlet_below_the_notch_stands_in_the_full_pond(built):
    assert found(built(inlet_reading="2 in"), "built_inlet").grade is Grade.GOOD
    low = found(built(inlet_reading="3 in"), "built_inlet")
    assert low.grade is Grade.FIX and "1 in below the notch" in low.said
    assert found(built(inlet_reading=None), "built_inlet") is None


def test_bare_soil_counts_with_its_compost_and_mulch_to_come(built, figure):
    laid = {"mulch_depth": "3 in", "amend": "yes", "compost_depth": "2 in"}
    for cover, reading in (("bare", "13 in"), ("compost", "11 in"), ("finished", "8 in")):
        plan = built(**laid, floor_cover=cover, floor_readings=reading)
        assert figure("built_depth", plan) == pytest.approx(6), cover
    none = built(mulch_depth="3 in", amend="no", floor_cover="bare", floor_readings="11 in")
    assert figure("built_depth", none) == pytest.approx(6)


def test_a_garden_whose_levels_are_not_read_waits_for_none_of_them(built):
    for texts in ({"levels_read": "no"}, {"floor_readings": None}):
        plan = built(**texts)
        assert not [one for one in plan.findings if one.key.startswith("built_")]
        assert not [key for _, key, _ in waiting(plan) if key in READ]
    asked = {step.address for step in route.steps(built(levels_read="no").answers)}
    assert "levels_read" in asked and not asked & (set(READ) - {"levels_read"})


def test_a_notch_above_its_place_is_read_in_metric_too(built):
    plan = built(units="metric", notch_reading="80 mm", floor_readings="203 mm")
    one = found(plan, "built_depth")
    assert one.grade is Grade.FIX and "mm too low" in one.change and " in " not in one.change


def test_what_a_reading_means_is_told_at_once(built):
    for address, texts, key in (
        ("floor_readings", {"floor_readings": "7 in"}, "built_depth"),
        ("notch_reading", {"notch_reading": "3 in"}, "built_depth"),
        ("rim_reading", {"rim_reading": "3 in"}, "built_rim"),
        ("inlet_reading", {"inlet_reading": "3 in"}, "built_inlet"),
    ):
        plan = built(**texts)
        step = next(one for one in route.steps(plan.answers) if one.address == address)
        told = verdict(plan, step)
        assert told is not None and (told.key, told.grade) == (key, Grade.FIX), address


def test_the_page_of_the_levels_is_on_nobodys_way_until_they_are_read(session_of, built):
    for answer, there in (("no", False), ("yes", True)):
        session = session_of(built(levels_read=answer).answers)
        names = {place.name for place in session.way.places}
        assert ({"levels", "levels_round"} <= names) == there
        assert there or not {"levels", "levels_round"} & names


SECOND = {
    "beds": "2",
    "floor_cover_2": "finished",
    "floor_readings_2": "7 in; 7 in",
    "notch_reading_2": "2 in",
    "rim_reading_2": "0 in",
    "inlet_reading_2": "0 in",
}
"""A second bed with a floor an inch too high."""


def test_the_levels_of_the_floor_are_put_before_the_row_that_enter_takes_with_them(
    session_of, built
):
    fresh = dict.fromkeys(READ) | {"levels_read": "yes"}
    session = session_of(built(**fresh).answers)
    session.go_to("levels_read")
    session.take({"levels_read": "yes"})
    session.begin_at("the_plan")
    while session.place.name != "levels":
        session.forward()
    assert session.step.address == "floor_cover"


def test_each_of_two_beds_is_held_against_the_plan_by_its_own_levels(built, figure):
    plan = built(**SECOND)
    one, two = found(plan, "built_depth"), found(plan, "built_depth_2")
    assert one.grade is Grade.GOOD and one.said.startswith("Bed 1: as dug the pond is 6 in deep")
    assert two.grade is Grade.FIX and two.said.startswith("Bed 2: as dug the pond is 5 in deep")
    assert two.change == "The floor is 1 in too high: dig it that much deeper."
    assert found(plan, "built_rim_2").grade is Grade.GOOD
    turned = built(**SECOND | {"floor_readings": "7 in", "floor_readings_2": "8 in; 8 in"})
    assert found(turned, "built_depth").grade is Grade.FIX
    assert found(turned, "built_depth_2").grade is Grade.GOOD
    # The figures of one bed stay those of the first, as they were before there were more.
    assert figure("built_depth", plan) == pytest.approx(6)
    assert figure("built_depth", turned) == pytest.approx(5)


def test_all_beds_together_hold_the_sum_of_what_each_holds(built, figure):
    plan = built(**SECOND)
    each = figure("pond_volume", plan)
    short = figure("built_volume", built(**SECOND | {"floor_readings": "7 in"}))
    assert short < 0.9 * each
    assert figure("built_all_volume", plan) == pytest.approx(each + short)
    assert figure("built_all_share", plan) == pytest.approx(100 * (each + short) / (2 * each))
    alone = built()
    assert figure("built_all_volume", alone) == pytest.approx(figure("built_volume", alone))


def test_a_bed_that_is_not_read_yet_holds_up_no_other(built, summary_of_waits):
    plan = built(**SECOND | {"floor_readings_2": None})
    assert found(plan, "built_depth") is not None and found(plan, "built_depth_2") is None
    other = built(**SECOND | {"floor_readings": None})
    assert found(other, "built_depth") is None and found(other, "built_depth_2") is not None
    assert not summary_of_waits(plan) and not summary_of_waits(other)


@pytest.fixture
def summary_of_waits():
    """Return a teller of the readings that a plan waits for."""
    keys = {*READ, *SECOND} - {"beds"}
    return lambda plan: [key for _, key, _ in waiting(plan) if key in keys]


def test_a_reading_of_the_second_bed_is_told_at_once(built):
    for key, told_by in (
        ("floor_readings_2", "built_depth_2"),
        ("notch_reading_2", "built_depth_2"),
        ("rim_reading_2", "built_rim_2"),
    ):
        texts = {"notch_reading_2": "3 in"} if key == "notch_reading_2" else {}
        texts |= {"rim_reading_2": "3 in"} if key == "rim_reading_2" else {}
        plan = built(**SECOND | texts)
        step = next(one for one in route.steps(plan.answers) if one.address == key)
        told = verdict(plan, step)
        assert told is not None and (told.key, told.grade) == (told_by, Grade.FIX), key


def test_the_first_bed_is_named_only_where_there_are_more(built):
    for texts, begins in (({}, "How far below"), (SECOND, "Bed 1: how far below")):
        plan = built(**texts)
        step = next(one for one in route.steps(plan.answers) if one.address == "floor_readings")
        assert step.worded(plan.answers).text.startswith(begins)


def test_the_pages_of_each_bed_follow_one_another(session_of, built):
    for beds, last in (("1", "levels_round"), ("2", "levels_round_2"), ("4", "levels_round_4")):
        session = session_of(built(beds=beds).answers)
        names = [place.name for place in session.way.places if place.name.startswith("levels")]
        assert names[-1] == last and len(names) == 2 * int(beds)


def test_a_floor_that_is_not_level_is_told_before_the_notch_is_read(built):
    # More than half an inch: common practice, no source.
    started = built(notch_reading=None, rim_reading=None, floor_readings="8 in; 9 in")
    step = next(one for one in route.steps(started.answers) if one.address == "floor_readings")
    told = verdict(started, step)
    assert told.key == "built_level" and told.grade is Grade.FIX and "1 in apart" in told.line
    level = built(notch_reading=None, rim_reading=None, floor_readings="8 in; 8 1/2 in")
    assert verdict(level, step).grade is Grade.GOOD
    assert found(level, "built_depth") is None
    several = built(beds="2", floor_readings_2="8 in; 9 in")
    assert found(several, "built_level_2").said.startswith("Bed 2: the floor is not level")
