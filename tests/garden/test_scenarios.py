"""Trying out other depths, rains and shapes: what follows, and what would be kept."""

from __future__ import annotations

import re

import pytest

from interview.garden.form.choices import FloorShape
from interview.garden.place import questions as start
from interview.garden.scenarios import (
    LEVERS,
    WATCHED,
    Worth,
    changed,
    followed,
    keep,
    tried_plan,
    turn_of,
)
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.answered import floor_shape
from interview.quantities.units import magnitude

BY_LABEL = {lever.label: lever for lever in LEVERS}


@pytest.fixture
def plan(plan_of, sized, level_spot):
    return plan_of({**sized, **level_spot})


@pytest.fixture
def metric(plan_of, sized, level_spot):
    return plan_of({**sized, **level_spot, "units": "metric"})


def moved(plan, label, steps):
    return tried_plan(plan, BY_LABEL[label].moved(plan, steps))


def rows(kept, tried):
    return {row.label: row for row in followed(kept, tried)}


def test_every_lever_says_what_is_in_force(plan):
    shown = {lever.label: lever.shown(plan) for lever in LEVERS}
    # The floor needed is 7.474 ft wide, worked by hand in test_worked_cases, and pegged by 1/2 ft.
    assert shown == {
        "Deepest pond": "6 in",
        "Rain to hold": "1 in",
        "How large": "usual",
        "Shape": "rounded",
        "Side slope": "3 : 1",
        "Floor length": "15 ft",
        "Floor width": "7.5 ft",
        "Rim above pond": "4 in",
        "Rule for the depth": "both",
        "Length to width": "2 : 1",
        "Number of beds": "1",
        "Compost worked in": "yes",
        "Depth of compost": "2 in",
        "Depth of mulch": "3 in",
    }


def test_a_lever_moves_only_its_own_answer_or_nothing(subtests, plan_of, sized, level_spot):
    for units in ["us", "metric"]:
        for steps in [1, -1, 3, -3]:
            for lever in LEVERS:
                with subtests.test(lever=lever, steps=steps, units=units):
                    plan = plan_of({**sized, **level_spot, "units": units})
                    tried = lever.moved(plan, steps)
                    moved = set(changed(plan.answers, tried))
                    # A floor that is tried out says its shape too, which else would change.
                    if lever.question in (bed.FLOOR_LENGTH, bed.FLOOR_WIDTH):
                        assert floor_shape(tried) is FloorShape.ROUNDED
                        moved -= {shaping.FLOOR_SHAPE.key}
                    assert moved <= {lever.question.key}
                    assert tried.fault(lever.question) is None


def test_a_step_down_and_up_again_changes_nothing_that_follows(plan):
    down = moved(plan, "Rain to hold", -1)
    assert down.answers[start.RAIN_DEPTH].to("in").m == pytest.approx(0.9)
    again = moved(down, "Rain to hold", 1)
    assert [row.change for row in followed(plan, again)] == [""] * len(WATCHED)


def test_less_rain_needs_less_garden_and_the_change_is_said(plan):
    found = rows(plan, moved(plan, "Rain to hold", -2))
    assert found["Recommended area"].kept == "140 ft²"
    assert found["Recommended area"].change.startswith("-")
    assert found["Rain it holds"].change.startswith("-")
    assert found["Depth of the pond"].change == ""


def test_a_shallower_pond_needs_more_garden_and_is_empty_sooner(plan):
    found = rows(plan, moved(plan, "Deepest pond", -2))
    assert found["Depth of the pond"].tried == "5 in"
    assert found["Depth of the pond"].change == "-1 in"
    assert found["Recommended area"].change.startswith("+")
    assert found["Time to empty, at the corrected rate"].change.startswith("-")


def test_a_longer_floor_holds_more_rain(plan):
    tried = moved(plan, "Floor length", 2)
    assert tried.answers.text(bed.FLOOR_LENGTH) == "16 ft"
    found = rows(plan, tried)
    # By hand, 16 x 7.5 ft with round ends: A 107.93, P 40.56, so V 107.93 / 2 + 40.56 x 0.375 +
    # 1.18 = 70.35 ft3, of 570 ft2 and the rim's 107.93 + 101.40 + 19.63: 1.06 in for 1.00 in.
    assert floor_shape(tried.answers) is floor_shape(plan.answers) is FloorShape.ROUNDED
    assert magnitude(tried.size.rain_held, "in") == pytest.approx(1.0567, abs=2e-4)
    # Told with two digits and rounded down, that is no change yet; a foot more is one.
    assert found["Rain it holds"].change == ""
    assert rows(plan, moved(plan, "Floor length", 4))["Rain it holds"].change == "+0.1 in"
    assert found["What decides the size"].change == "changed"


def test_a_value_between_steps_goes_to_the_next_step_first(plan_of, sized):
    plan = plan_of({**sized, "rain_depth": "0.97 in"})
    assert moved(plan, "Rain to hold", 1).answers.text(start.RAIN_DEPTH) == "1 in"
    assert moved(plan, "Rain to hold", -1).answers.text(start.RAIN_DEPTH) == "0.9 in"
    assert moved(plan, "Rain to hold", 2).answers.text(start.RAIN_DEPTH) == "1.1 in"
    assert moved(plan, "Rain to hold", -2).answers.text(start.RAIN_DEPTH) == "0.8 in"


def test_a_lever_stops_at_its_limit(plan):
    assert moved(plan, "Deepest pond", 100).answers == plan.answers
    assert moved(plan, "Side slope", -40).answers == plan.answers
    assert moved(plan, "Number of beds", -1).answers == plan.answers


def test_a_choice_goes_round(plan):
    once = moved(plan, "Rule for the depth", 1)
    assert once.answers[bed.DRAIN_RULE] == "strict"
    assert moved(once, "Rule for the depth", 2).answers[bed.DRAIN_RULE] == "both"
    assert moved(plan, "Compost worked in", 1).answers[bed.AMEND] is False


def test_an_outline_of_ones_own_is_left_where_it_is(plan):
    lever = BY_LABEL["Shape"]
    own = tried_plan(plan, plan.answers.with_text("floor_shape", "own"))
    assert lever.moved(own, 1) == own.answers
    assert moved(plan, "Shape", 1).answers[shaping.FLOOR_SHAPE] == "oval"


def test_metric_levers_move_in_metric_steps(metric):
    assert moved(metric, "Rain to hold", -1).answers.text(start.RAIN_DEPTH) == "25 mm"
    assert moved(metric, "Deepest pond", -1).answers.text(bed.DEEPEST_POND) == "140 mm"


def test_a_lever_can_be_put_back(plan):
    tried = moved(moved(plan, "Floor length", 2), "Rain to hold", 1)
    back = tried_plan(plan, BY_LABEL["Floor length"].reset(plan, tried))
    assert changed(plan.answers, back.answers) == {"rain_depth": "1.1 in"}
    assert BY_LABEL["Rain to hold"].reset(plan, back) == plan.answers


def test_what_is_kept_is_what_was_changed_in_the_order_of_the_questions(plan):
    tried = moved(moved(plan, "Side slope", -1), "Rain to hold", 1)
    assert list(keep(plan.answers, tried.answers).items()) == [
        ("rain_depth", "1.1 in"),
        ("side_slope", "2.5:1"),
    ]
    assert keep(plan.answers, plan.answers) == {}


def test_nothing_is_saved_until_it_is_kept(session_of, keeper, plan):
    session = session_of(plan.answers)
    tried = tried_plan(session.plan, BY_LABEL["Rain to hold"].moved(session.plan, 2))
    followed(session.plan, tried)
    assert keeper.saves == []
    assert session.plan.answers.text(start.RAIN_DEPTH) == "1 in"
    for address, text in keep(session.plan.answers, tried.answers).items():
        step = session.jump(address)
        session.offer(step, text)
    assert keeper.saves[-1][0]["rain_depth"] == "1.2 in"


def test_where_an_answer_is_lacking_the_lever_and_the_figures_say_so(plan_of):
    plan = plan_of({"units": "us"})
    assert BY_LABEL["Floor length"].shown(plan) == "not known yet"
    assert BY_LABEL["Floor length"].moved(plan, 1) == plan.answers
    assert {row.kept for row in followed(plan, plan)} >= {"not known yet"}


def shown_number(said):
    """Return the number that a value is shown as; feet and inches in feet."""
    feet = re.fullmatch(r"(?:([\d.]+) ft)?(?: ?([\d.]+))??(?: ?(\d+)/(\d+))?(?: in)?", said)
    if " ft" in said and feet:
        whole, inches, up, low = feet.groups()
        part = float(inches or 0) + (float(up) / float(low) if up else 0.0)
        return float(whole or 0) + part / 12
    return float(re.match(r"[^\d]?([\d.]+)", said)[1])


UNITS = {"us": ("in", "ft", "ft²", "ft³", "yd³"), "metric": ("mm", "m", "m²", "m³")}


@pytest.mark.parametrize("units", ["us", "metric"])
def test_every_change_has_its_unit_and_is_that_of_what_is_shown(
    subtests, plan_of, sized, level_spot, units
):
    plan = plan_of({**sized, **level_spot, "units": units, "prices": "mulch $38 per yd3"})
    seen = set()
    for label, steps in (("Rain to hold", 3), ("Deepest pond", -2), ("Side slope", 2)):
        for row in followed(plan, moved(plan, label, steps)):
            if row.change[:1] not in ("+", "-"):
                assert row.change == ("changed" if row.kept != row.tried else "")
                continue
            with subtests.test(row=row.label, lever=label):
                by = row.change[1:]
                words = (*UNITS[units], "h", "points", "loads", "plants", "point", "load", "plant")
                assert by.startswith("$") or by.split()[-1] in words
                far = shown_number(row.tried) - shown_number(row.kept)
                assert shown_number(by) == pytest.approx(abs(far), abs=1e-6)
                assert (row.change[0] == "+") is (far > 0)
                seen.add(by.split()[-1])
    assert len(seen) > 6


def test_what_is_not_seen_to_change_is_no_change(plan):
    for row in followed(plan, moved(plan, "Rain to hold", 1)):
        assert bool(row.change) is (row.kept != row.tried), row


def test_more_rain_held_is_better_and_more_soil_to_dig_is_worse(plan):
    found = rows(plan, moved(plan, "Floor length", 4))
    assert found["Rain it holds"].turn is Worth.BETTER
    assert found["All the soil to dig, as it lies"].turn is Worth.WORSE
    assert found["Wheelbarrow loads"].turn is Worth.WORSE
    assert found["Caught of a storm twice as large"].turn is Worth.BETTER
    assert found["Recommended area"].turn is None
    assert found["Plants to buy"].turn is None
    back = rows(plan, moved(plan, "Floor length", -2))
    assert back["Rain it holds"].turn is Worth.WORSE
    assert back["Wheelbarrow loads"].turn is Worth.BETTER


def test_of_two_different_storms_neither_is_the_better(plan):
    found = rows(plan, moved(plan, "Rain to hold", 5))
    assert found["Caught of a storm twice as large"].turn is None
    assert found["Hours of water on the floor in the storm held"].turn is None
    assert found["Rain it holds"].turn is Worth.BETTER


def test_up_is_better_only_where_more_is_better():
    assert turn_of(True, more=True, less=False) is Worth.BETTER
    assert turn_of(False, more=True, less=False) is Worth.WORSE
    assert turn_of(True, more=False, less=True) is Worth.WORSE
    assert turn_of(False, more=False, less=True) is Worth.BETTER
    assert turn_of(None, more=True, less=False) is turn_of(True, more=False, less=False) is None
