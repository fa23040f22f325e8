"""What the first page says of a garden in every state, and where Enter leads; invented gardens."""

from __future__ import annotations

import datetime as dt
import re
import textwrap
from contextlib import suppress

import pytest

from interview.asking import path, route
from interview.asking.question import UNKNOWN_TEXT
from interview.garden.dig_window import dig_window
from interview.garden.due import due
from interview.garden.due_keys import FIRST_SIZE, MUSTS, PLAN_PAGES, STORM, leads_from, put_off
from interview.garden.due_words import MEND_PAGE, PLAN_PAGE, WAITING_PAGE, GardenState
from interview.garden.figures import BY_KEY, find
from interview.garden.panel import panel_lines
from interview.garden.stages import QUESTIONS, new_answers, question_at
from interview.reading import Refused

ROUGH = "About 110 sq ft"
PANEL_COLUMNS = 60
FIRST = {
    "garden_name": "Willow end",
    "country": "us",
    "state": "wi",
    "units": "us",
    "surfaces.1.surface_name": "house roof",
    "surfaces.1.surface_kind": "roof",
    "surfaces.1.gutter_outlets": "1",
    "surfaces.1.pieces": "rectangle 20 ft by 30 ft",
    "soil_dug": "loam",
}
YARD = {
    **FIRST,
    "surfaces.1.another_surface": "no",
    "spots.1.stands_after_rain": "never",
    "spots.1.near_spot": "none",
    "spots.1.slope_run": "10 ft",
    "spots.1.slope_drop": "3 in",
    "spots.1.overflow_to": "own_lawn",
    "spots.1.overflow_building_distance": "40 ft",
    "spots.1.overflow_line_distance": "30 ft",
    "spots.1.unstable_ground": "none",
    "spots.1.contamination": "none",
    "room_length": "30 ft",
    "room_width": "17 ft",
    "spout_distance": "15 ft",
    "children": "yes",
    "permission": "own",
    "rules_checked": "not_needed",
    "roof_hazard": "no",
}
ASKED = {**YARD, "lines_requested": "asked", "lines_asked_on": "2026-05-20"}
KNOWN = {
    **ASKED,
    "lines_business_days": "3",
    "lines_holidays": "none",
    "spots.1.wet_season_depth": "100 in",
    "spots.1.rock_depth": "100 in",
    "spots.1.sun_hours": "6",
    "private_lines": "none",
}
CLEAR = {
    **KNOWN,
    "lines_answered": "yes",
    "lines_finished_on": "2026-05-22",
    "lines_valid_days": "10",
    "lines_valid_kind": "working",
    "mark_distance": "30 ft",
}
DUG = {**CLEAR, "holes.1.hole_dug_on": "2026-05-27", "holes.1.hole_depth": "20 in"}
SHAPED = {
    **DUG,
    "holes.1.hole_smell": "earth",
    "holes.1.hole_seeps": "no",
    "holes.1.hole_shape": "round",
    "holes.1.hole_width": "8 in",
}
FILLED = {**SHAPED, "holes.1.first_fill_start": "2026-05-28 08:10"}
BEGUN = {
    **SHAPED,
    "holes.1.first_fill_start": "2026-05-27 12:00",
    "holes.1.first_fill_empty": "2026-05-27 14:00",
    "holes.1.second_fill_start": "2026-05-27 14:10",
    "holes.1.second_fill_empty": "2026-05-27 18:00",
    "holes.1.water_at_mark": "8 in",
    "holes.1.test_start": "2026-05-28 08:10",
}
TIMED = {
    **BEGUN,
    "holes.1.test_start": "2026-05-27 09:00",
    "holes.1.first_fill_start": "2026-05-27 01:00",
    "holes.1.first_fill_empty": "2026-05-27 03:00",
    "holes.1.second_fill_start": "2026-05-27 03:10",
    "holes.1.second_fill_empty": "2026-05-27 08:00",
    "holes.1.readings": "\n".join(f"+{hour}h left {8 - hour / 2} in" for hour in range(1, 8)),
}
TESTED = {**TIMED, "holes.1.hole_left": "filled"}
PEGGED = {**TESTED, "floor_length": "16 ft", "floor_width": "7 ft"}
PLANNED = {**PEGGED, "dig_day": "2026-06-05"}
ALL_TAKEN = ("usual_bed", "usual_plants")


def steep(texts):
    return {**texts, "spots.1.slope_drop": "18 in"}


# The state; what was said; month, day and hour; what is said; where Enter leads.
ROWS = {
    GardenState.NEW: (
        {}, (5, 28, 9), "Today, no digging: measure the roof, find the spot. About 40 minutes.",
        "garden_name"),
    GardenState.FIRST_SIZE: (
        {"garden_name": "Willow end", "units": "us"}, (5, 28, 9), "4 pages to a first size.",
        "country"),
    GardenState.SPOT: (
        {key: text for key, text in YARD.items() if key != "spots.1.overflow_to"}, (5, 28, 9),
        "About 110 sq ft. Next: Where overflow goes.", "spots.1.overflow_to"),
    GardenState.NOT_ASKED: (YARD, (5, 28, 9),
        "Today: ask for the lines to be marked. 811 is free. Outline 30 ft by 17 ft.",
        "lines_requested"),
    GardenState.WHILE_WAITING: (
        ASKED, (5, 21, 9), "While you wait: 4 things to find out.", "private_lines"),
    GardenState.WAITING: (
        KNOWN, (5, 21, 9), "Digging opens Tue 26 May at the earliest. Nothing to do today.",
        "waiting"),
    GardenState.MAY_OPEN: (
        KNOWN, (5, 26, 9), "Digging may open today: have all owners answered?", "lines_answered"),
    GardenState.PRIVATE: ({**CLEAR, "private_lines": "not_found"}, (5, 28, 9),
        "One thing keeps digging shut: your own lines.", "private_lines"),
    GardenState.MARKS: (
        {**KNOWN, "lines_answered": "yes"}, (5, 27, 9), "Marks are in. Measure to the nearest.",
        "lines_finished_on"),
    GardenState.TOO_NEAR: ({**CLEAR, "mark_distance": "1 ft"}, (5, 28, 9),
        "A mark is too near. Move the garden, measure again.", "holes.1.hole_depth"),
    GardenState.MAY_DIG: (
        CLEAR, (5, 28, 9), "You may dig today. Marks good to Fri 5 Jun.", "holes.1.hole_depth"),
    GardenState.STALE: (
        CLEAR, (6, 9, 9), "Marks went stale 5 Jun. Ask for new ones: 811.", "lines_asked_on"),
    GardenState.HOLE: (
        DUG, (5, 28, 9), "Next: Smell of the hole. Is the hole covered?", "holes.1.hole_smell"),
    GardenState.SOAKING: (
        FILLED, (5, 28, 9), "Water in since 08:10. Look about 09:10.", "holes.1.first_fill_empty"),
    GardenState.TIMING: (BEGUN, (5, 28, 8.2), "Reading due 08:31.", "holes.1.readings"),
    GardenState.LEAVE_HOLE: (TIMED, (5, 28, 9), "How have you left the hole?", "holes.1.hole_left"),
    GardenState.SMELL: ({**DUG, "holes.1.hole_smell": "gas"}, (5, 28, 9),
        "STOP: the hole smells of gas. Stay away, call.", "holes.1.hole_seeps"),
    GardenState.STOP: (
        steep(CLEAR), (5, 28, 9), "STOP here: slope 15 %. Move, or try another spot.",
        "spots.1.slope_drop"),
    GardenState.TESTED: (TESTED, (5, 28, 9), "Plan day: 5 pages, indoors. ", "usual_bed"),
    GardenState.PLANNED: (PLANNED, (5, 28, 9), "Plan ready. Dig day Fri 5 Jun.", "the_plan"),
    GardenState.RENEW: (
        {**PLANNED, "dig_day": "2026-06-20"}, (5, 28, 9), "Ask for new marks by Mon 15 Jun.",
        "lines_asked_on"),
    GardenState.STORM: (
        PLANNED, (6, 19, 9), "Has a storm come? How did the garden do?", "storm_seen"),
    GardenState.FAULTS: (
        {**CLEAR, "room_width": "wide", "room_length": "long", "children": "perhaps"}, (5, 28, 9),
        "3 lines of the file need mending.", "mend"),
    GardenState.SHUT: (
        {**CLEAR, "lines_valid_days": "1", "lines_valid_kind": "from_request"}, (5, 28, 9),
        "Digging is shut. The marks are taken as good until Thu 21 May 2026 and the wait ends "
        "on Tue 26 May 2026: write how long they stay good by your ticket.", "lines_valid_days"),
}  # fmt: skip


@pytest.fixture
def due_of(plan_of, clock):
    def kept(texts):
        answers = new_answers({}, clock.now)
        for address, text in texts.items():
            question, number = question_at(address)
            view = answers.at(question.group, number) if number else answers
            with suppress(Refused):
                text = question.kind.settle(text, view)
            answers = answers.with_text(address, text)
        return answers

    def look(texts, when=(5, 28, 9), taken=()):
        month, day, hour = when
        minutes = round(hour * 60)
        clock.now = clock.now.replace(month=month, day=day, hour=minutes // 60, minute=minutes % 60)
        plan = plan_of(kept(texts))
        return plan, due(plan, ROUGH, taken)

    return look


@pytest.mark.parametrize("state", GardenState, ids=lambda state: state.name)
def test_every_state_says_its_sentence_and_where_enter_leads(state, due_of):
    texts, when, says, target = ROWS[state]
    plan, found = due_of(texts, when)
    if state is GardenState.TESTED:
        says += f"A {find(BY_KEY['work_area'], plan).shown(False)} pond."
    taken = ALL_TAKEN if state in (GardenState.PLANNED, GardenState.RENEW) else ()
    found = due_of(texts, when, taken)[1]
    assert (found.state, found.says, found.target) == (state, says, target)
    assert found.short == state.value


@pytest.mark.parametrize("state", GardenState, ids=lambda state: state.name)
def test_the_panel_has_at_most_ten_lines_and_waits_for_nothing(state, due_of):
    texts, when, _, _ = ROWS[state]
    plan, found = due_of(texts, when)
    told = panel_lines(plan, found, f"{ROUGH} (63–280)")
    folded = [line for one in told for line in textwrap.wrap(one, PANEL_COLUMNS)]
    assert 1 <= len(folded) <= 10 and "" not in told, folded
    assert not any("waits for" in one or "fault" in one for one in told), told
    digging = [one for one in told if one.startswith("Digging: ")]
    assert not any(":" in one.partition(".")[0].partition(": ")[2] for one in digging), digging


def test_whatever_was_answered_enter_leads_to_a_question_that_is_asked_or_a_page(
    chance, plan_of, given, clock
):
    seen = set()
    for seed in range(8):
        plan = plan_of(chance(seed).answers(given()))
        asked = {step.address for step in route.steps(plan.answers)}
        found = due(plan, ROUGH)
        assert found.target in asked | {MEND_PAGE, PLAN_PAGE, WAITING_PAGE}, found
        assert set(found.keys) <= asked and found.says and panel_lines(plan, found, ROUGH)
        seen.add(found.state)
    assert len(seen) > 1


def test_what_is_more_pressing_goes_first(due_of):
    texts = {**steep(BEGUN), "children": "perhaps"}
    assert due_of(texts)[1].state is GardenState.TIMING
    assert due_of({**texts, "holes.1.hole_smell": "fuel"})[1].state is GardenState.SMELL
    stopped = {**steep(CLEAR), "children": "perhaps"}
    assert due_of(stopped, (6, 9, 9))[1].state is GardenState.STOP
    assert due_of({**CLEAR, "children": "perhaps"}, (6, 9, 9))[1].state is GardenState.FAULTS
    assert (
        due_of({**CLEAR, "spots.1.overflow_to": UNKNOWN_TEXT}, (6, 9, 9))[1].state
        is GardenState.STALE
    )


def test_a_stop_gives_way_to_a_test_that_is_made_only_to_learn(due_of):
    learn = {"holes.1.test_to_learn": "yes"}
    assert due_of({**steep(CLEAR), **learn})[1].state is GardenState.MAY_DIG
    # Once the rate is known it stops again: no garden can be made here.
    assert due_of({**steep(TESTED), **learn})[1].state is GardenState.STOP


def test_marks_asked_for_anew_for_the_dig_day_are_told_as_the_first_ones(due_of, subtests):
    gone = ("lines_answered", "lines_finished_on", "mark_distance")
    texts = {key: text for key, text in PLANNED.items() if key not in gone}
    texts = {**texts, "lines_asked_on": "2026-06-10", "dig_day": "2026-06-20"}
    texts["holes.1.hole_cleared"] = "yes"
    answered = {**texts, "lines_answered": "yes", "lines_finished_on": "2026-06-15"}
    undecided = {key: text for key, text in texts.items() if key != "dig_day"}
    for said, when, taken, state in (
        (texts, (6, 11, 9), ALL_TAKEN, GardenState.WAITING),
        (texts, (6, 17, 9), ALL_TAKEN, GardenState.MAY_OPEN),
        (answered, (6, 17, 9), ALL_TAKEN, GardenState.MARKS),
        ({**answered, "mark_distance": "30 ft"}, (6, 17, 9), ALL_TAKEN, GardenState.PLANNED),
        # While the plan is made there is something to do.
        (undecided, (6, 11, 9), (), GardenState.TESTED),
        # A garden that is dug waits for no marks.
        (texts, (6, 21, 9), ALL_TAKEN, GardenState.PLANNED),
    ):
        with subtests.test(state=state, when=when):
            found = due_of(said, when, taken)[1]
            assert found.state is state
            if state is GardenState.TESTED:
                # It leads to that page, and not to the marks, which are open before it.
                assert leads_from(found, ["lines_answered"]) and found.target == "usual_bed"
    assert not leads_from(due_of(TESTED)[1], ["beds"])


def test_a_reading_that_is_late_was_due(due_of):
    assert due_of(BEGUN, (5, 28, 9.5))[1].says == "Reading was due 08:31."


def test_while_things_were_put_off_the_wait_is_not_idle(due_of):
    texts = {**KNOWN, "private_lines": "not_found", "rules_checked": "pending"}
    said = due_of(texts, (5, 21, 9))[1].says
    assert said.endswith("Until then: 2 things to find out.")


def test_a_second_hole_waits_for_good_marks_again(due_of):
    texts = {**TESTED, "holes.1.another_hole": "yes"}
    assert due_of(texts)[1].state is GardenState.MAY_DIG
    assert due_of(texts)[1].target == "holes.2.hole_depth"


def test_abroad_no_number_of_another_country_is_told(due_of):
    texts = {key: text for key, text in YARD.items() if key != "state"}
    assert "811" not in due_of({**texts, "country": "uk"})[1].says


def test_every_key_is_a_question_and_only_one_of_the_plan_day_is_a_must():
    named = MUSTS.union(STORM, *FIRST_SIZE, *PLAN_PAGES.values())
    assert named <= set(QUESTIONS), named - set(QUESTIONS)


# When to dig


def test_the_window_tells_the_first_day_the_last_and_when_to_ask_again(given, located):
    answers = given({"country": "us", "state": "wi", **located, "dig_day": "2026-06-20"})
    window = dig_window(answers, dt.date(2026, 5, 28))
    assert (window.first, window.good_until) == (dt.date(2026, 5, 26), dt.date(2026, 6, 5))
    assert not window.covered
    # Asked on Monday the 15th: Tuesday, Wednesday and Thursday are full business days; Friday the
    # 19th is Juneteenth (5 USC 6103) and may be dug on already. A day later it would be the 23rd.
    assert window.ask_by == dt.date(2026, 6, 15)


def test_a_dig_day_within_the_marks_is_covered(given, located):
    for day, covered in (("2026-05-26", True), ("2026-06-05", True), ("2026-06-06", False)):
        answers = given({**located, "dig_day": day})
        assert dig_window(answers, dt.date(2026, 5, 20)).covered == covered


def test_before_the_request_the_window_is_that_of_asking_today(given):
    answers = given({"country": "us", "state": "wi"})
    assert dig_window(answers, dt.date(2026, 5, 20)).first == dt.date(2026, 5, 27)
    assert dig_window(given({"country": "uk"}), dt.date(2026, 5, 20)).first is None


# What was put off


def test_what_was_put_off_is_told_in_order_with_how_to_find_it_out(due_of):
    texts = {
        **CLEAR,
        "private_lines": "not_found",
        "rules_checked": "not_checked",
        "children": UNKNOWN_TEXT,
        "notes": UNKNOWN_TEXT,
        "mulch_depth": UNKNOWN_TEXT,
    }
    plan, _ = due_of(texts)
    found = put_off(plan.answers)
    assert [one.address for one in found] == ["private_lines", "children", "rules_checked"]
    assert all(one.label and one.how for one in found)


def test_five_at_most_are_told(due_of):
    texts = {key: UNKNOWN_TEXT for key in YARD}
    assert len(put_off(due_of(texts)[0].answers)) == 5


# The panel


def test_the_panel_tells_what_the_stage_has_found(due_of):
    for state, lines in {
        GardenState.FIRST_SIZE: ["Next: how big the roof is, then a first size."],
        GardenState.SPOT: [
            f"{ROUGH} (63–280)",
            "Distances: 2 fine",
            "Slope 2.5 %: fine",
            "Next: Where overflow goes",
        ],
        GardenState.WAITING: ["First day to dig: Tue 26 May, if all owners have answered"],
        GardenState.TIMING: ["Timer: 0:02 h", "Next reading at 08:31, in 20 min."],
    }.items():
        texts, when, _, _ = ROWS[state]
        plan, found = due_of(texts, when)
        told = panel_lines(plan, found, f"{ROUGH} (63–280)")
        assert [one for one in lines if one not in told] == []
        assert told[0] == lines[0]
    texts, when, _, _ = ROWS[GardenState.PLANNED]
    plan, found = due_of(texts, when, ALL_TAKEN)
    told = panel_lines(plan, found)
    assert re.match(
        r"A garden \d.* ft.* by \d.* over all, with a flat floor of .* by .*; it does the work of "
        r"a \d+ ft² pond\.$",
        told[0],
    )
    assert re.match(r"Pond [\d /]+ in, holds .* of rain, empty in ", told[1])


def test_a_distance_too_near_leads_the_panel(due_of):
    texts = {**CLEAR, "spots.1.near_spot": "pavement", "spots.1.pavement_distance": "1 ft"}
    plan, found = due_of(texts)
    assert panel_lines(plan, found)[0].startswith("TOO NEAR: The garden is 1 ft from")


def test_the_panel_names_what_comes_after_the_page_one_stands_on(plan_of, subtests):
    """``here`` is what the page asks for; it is never told as what is next."""
    spot = {key: text for key, text in YARD.items() if not key.startswith("spots.1.overflow")}
    hole = {key: text for key, text in SHAPED.items() if key not in ("holes.1.hole_smell",)}
    overflow = tuple(one for one in YARD if one.startswith("spots.1.overflow"))
    roof, last = ("surfaces.1.pieces",), ("rules_checked",)
    for texts, here, said in (
        (spot, (), "Next: Where overflow goes"),
        ({**spot, "rules_checked": None}, overflow, "Next: Permits"),
        ({**YARD, "rules_checked": None}, last, "Today: ask for the lines to be marked. 811"),
        ({**hole, "holes.1.hole_seeps": None}, ("holes.1.hole_smell",), "Next: Water"),
        ({**PLANNED, "soil_dug": None}, ("soil_dug",), "Plan day"),
        ({"garden_name": "Willow end"}, (), "Next: how big the roof is, then a first size."),
        ({"garden_name": "Willow end"}, roof, "Next: a first size."),
    ):
        with subtests.test(here=here, said=said):
            plan = plan_of({one: text for one, text in texts.items() if text is not None})
            found = due(plan, ROUGH, order=path.steps, here=here)
            told = panel_lines(plan, found, ROUGH, here)
            assert any(one.startswith(said) for one in told), told
