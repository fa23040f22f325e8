"""What a shut page offers: for every reason a numbered way that opens it, or the day it opens."""

from __future__ import annotations

import datetime as dt
import random
from collections import Counter

import pytest

from interview.asking import route
from interview.asking.question import UNKNOWN_TEXT
from interview.garden import gate
from interview.garden.soak import hole_questions as digging
from interview.garden.stages import new_answers

TODAY = dt.date(2026, 5, 28)
DEPTH, SEEPS = "holes.1.hole_depth", "holes.1.hole_seeps"
DUG = {"holes.1.hole_dug_on": "2026-05-27", DEPTH: "20 in"}
STEEP = {"spots.1.slope_run": "10 ft", "spots.1.slope_drop": "18 in"}
LEARN = "holes.1.test_to_learn"


@pytest.fixture
def ways_of(given, located):
    """Return a reader of the ways out of one question, with ``texts`` said beside the marks."""

    def read(texts, address=DEPTH, today=TODAY, start=None):
        answers = given(located if start is None else start)
        for key, text in texts.items():
            answers = answers.without(key) if text is None else answers.with_text(key, text)
        step = route.step_at(address, answers)
        return answers, gate.ways_out(step, answers, today)

    return read


def addresses(ways):
    return [way.address for way in ways if way.address]


# Why it is shut: what was said, what the first ways lead to, and what opens it.
OPENED = {
    "not asked for a day": ({"lines_asked_on": UNKNOWN_TEXT}, ["lines_asked_on"], "2026-05-20"),
    "owner silent": ({"lines_answered": "no"}, ["lines_answered"], "yes"),
    "finish before the request": (
        {"lines_asked_on": "2026-05-21", "lines_finished_on": "2026-05-20"},
        ["lines_finished_on", "lines_asked_on"], "2026-05-22"),
    "finish still to come": (
        {"lines_finished_on": "2026-05-30"}, ["lines_finished_on", "lines_asked_on"], "2026-05-22"),
    "private lines": ({"private_lines": "not_found"}, ["private_lines"], "kept_clear"),
    "wait not known": (
        {"country": "us", "state": "ak", "lines_business_days": None}, ["lines_business_days"],
        "3"),
    "holidays not known": ({"country": "uk", "lines_holidays": None}, ["lines_holidays"], "none"),
    "marks end before the wait": ({"lines_valid_days": "1", "lines_valid_kind": "from_request"},
        ["lines_valid_days", "lines_business_days"], "20"),
    "distance of the mark open": ({"mark_distance": None}, ["mark_distance"], "30 ft"),
    "pollution": ({"spots.1.contamination": "fuel"},
        ["spots.1.soil_lab", "spots.1.contamination", "spots.1.another_spot"], "clear"),
    "spot too steep": (STEEP, ["spots.1.slope_drop", "spots.1.another_spot", LEARN], "6 in"),
    "spot by a bank": (
        {"spots.1.near_spot": "slope_crest", "spots.1.slope_crest_distance": "10 ft"},
        ["spots.1.slope_crest_distance", "spots.1.another_spot"], "60 ft"),
    "not your ground": ({"permission": "no"}, ["permission", "spots.1.another_spot"], "written"),
}  # fmt: skip


@pytest.mark.parametrize("why", OPENED)
def test_the_first_way_leads_to_the_answer_that_opens_the_page(why, ways_of):
    texts, wanted, mended = OPENED[why]
    answers, ways = ways_of(texts)
    assert gate.shut(route.step_at(DEPTH, answers), answers, TODAY)
    assert addresses(ways) == wanted
    opened = answers.with_text(wanted[0], mended)
    assert gate.shut(route.step_at(DEPTH, opened), opened, TODAY) == []


def test_nothing_asked_yet_leads_to_asking(ways_of):
    _, ways = ways_of({}, start={})
    assert [(way.label, way.address) for way in ways] == [
        ("Ask for the lines to be marked", "lines_requested")
    ]


def test_a_wait_tells_its_day_and_lets_the_days_be_put_right(ways_of):
    early = dt.date(2026, 5, 25)
    _, ways = ways_of({}, today=early)
    assert (ways[0].address, ways[0].opens) == (None, dt.date(2026, 5, 26))
    assert addresses(ways) == ["lines_asked_on", "lines_business_days", "lines_holidays"]
    answers, _ = ways_of({})
    assert gate.shut(route.step_at(DEPTH, answers), answers, ways[0].opens) == []


def test_a_request_day_still_to_come_tells_when_its_wait_ends(given, located):
    # As a file holds it, which is read without a clock.
    answers = new_answers({**located, "lines_asked_on": "2026-06-01", "lines_finished_on": ""})
    answers = answers.without("lines_finished_on")
    ways = gate.ways_out(route.step_at(DEPTH, answers), answers, TODAY)
    assert ways[0].opens == dt.date(2026, 6, 5)
    assert addresses(ways)[0] == "lines_asked_on"


def test_stale_marks_lead_to_a_new_request(ways_of):
    _, ways = ways_of({}, today=dt.date(2026, 6, 8))
    assert [(way.label, way.address) for way in ways] == [
        ("Ask for new marks, then give the day you asked", "lines_asked_on")
    ]


def test_a_mark_too_near_is_left_by_moving_the_hose_and_then_measuring(ways_of):
    answers, ways = ways_of({"mark_distance": "1 ft"})
    assert addresses(ways) == ["room_length", "mark_distance"]
    assert [way.prepares for way in ways] == [True, False]
    # The hose alone opens nothing.
    moved = answers.with_text("room_length", "20 ft")
    assert gate.shut(route.step_at(DEPTH, moved), moved, TODAY)


def test_a_hole_of_a_day_to_come_opens_on_it(ways_of):
    answers, ways = ways_of({"holes.1.hole_dug_on": "2026-06-01"})
    assert (ways[0].address, ways[0].opens) == (None, dt.date(2026, 6, 1))
    assert addresses(ways) == ["holes.1.hole_dug_on"]
    assert gate.shut(route.step_at(DEPTH, answers), answers, ways[0].opens) == []


def test_where_only_the_kept_day_fails_and_nothing_was_measured_the_hole_is_dug_today(ways_of):
    answers, ways = ways_of({"holes.1.hole_dug_on": "2026-05-21"})
    assert gate.shut(route.step_at(DEPTH, answers), answers, TODAY) == []
    assert [way.label.split(":")[0] for way in ways] == ["Not dug yet", "Dug then"]
    assert "look for damage" in ways[1].label.lower() and "fill it" in ways[1].label
    assert {way.address for way in ways} == {DEPTH}


def test_where_both_days_fail_the_day_can_be_changed_too(ways_of):
    late = dt.date(2026, 6, 8)
    _, ways = ways_of({"holes.1.hole_dug_on": "2026-05-21"}, today=late)
    assert addresses(ways) == ["lines_asked_on", "holes.1.hole_dug_on"]


def test_a_hole_dug_on_a_day_that_was_shut_leads_to_its_day(ways_of):
    _, ways = ways_of({**DUG, "holes.1.hole_dug_on": "2026-05-21"}, SEEPS)
    assert addresses(ways)[0] == "holes.1.hole_dug_on"


def test_a_smell_tells_whom_to_call_before_all_else(subtests, ways_of):
    for smell, whom in (
        ("gas", "gas utility"),
        ("fuel", "health department"),
        ("sewage", "health department"),
    ):
        with subtests.test(smell=smell):
            _, ways = ways_of({**DUG, "holes.1.hole_smell": smell}, SEEPS)
            assert whom in ways[0].label and ways[0].address is None
            assert addresses(ways) == ["holes.1.hole_smell", "holes.1.another_hole"]


def test_a_hole_not_cleared_leads_to_saying_so_again_or_to_another_hole(ways_of):
    late = {"lines_asked_on": "2026-05-28", "lines_finished_on": None, **DUG}
    _, ways = ways_of({**late, "holes.1.hole_cleared": "no"}, SEEPS)
    assert addresses(ways) == ["holes.1.hole_cleared", "holes.1.another_hole"]
    _, ways = ways_of(late, SEEPS)
    assert addresses(ways) == ["holes.1.hole_cleared", "holes.1.hole_dug_on"]


# A spot that stops a garden


def test_a_spot_that_stops_a_garden_shuts_the_hole_until_it_is_dug_only_to_learn(ways_of):
    for text, is_shut in ((None, True), ("no", True), (UNKNOWN_TEXT, True), ("yes", False)):
        answers, _ = ways_of({**STEEP, LEARN: text})
        assert bool(gate.shut(route.step_at(DEPTH, answers), answers, TODAY)) == is_shut


def test_a_hole_dug_already_stays_open_at_such_a_spot_and_asks_nothing_more(ways_of):
    answers, _ = ways_of({**STEEP, **DUG})
    assert gate.shut(route.step_at(SEEPS, answers), answers, TODAY) == []
    assert LEARN not in [step.address for step in route.steps(answers)]


def test_a_hole_dug_to_learn_keeps_its_word_and_stays_open(ways_of):
    answers, _ = ways_of({**STEEP, LEARN: "yes", **DUG})
    assert route.set_aside(answers) == []
    assert gate.shut(route.step_at(SEEPS, answers), answers, TODAY) == []


def test_nobody_digs_to_learn_by_a_bank_a_slide_a_septic_system_or_a_well(subtests, ways_of):
    for texts in (
        {"spots.1.near_spot": "slope_crest", "spots.1.slope_crest_distance": "10 ft"},
        {"spots.1.unstable_ground": "slides"},
        {"spots.1.unstable_ground": "karst"},
        {"spots.1.near_spot": "septic", "spots.1.septic_distance": "30 ft"},
        {"spots.1.near_spot": "well", "spots.1.well_distance": "30 ft"},
        {"spots.1.overflow_to": "bank"},
        {"spots.1.contamination": "dump"},
        {"permission": "no"},
    ):
        with subtests.test(texts=texts):
            # Beside a stop that alone would allow it, and with a word given for it before.
            answers, ways = ways_of({**STEEP, **texts, LEARN: "yes"})
            assert gate.shut(route.step_at(DEPTH, answers), answers, TODAY)
            assert LEARN not in addresses(ways)


def test_a_depth_that_only_a_shallower_garden_clears_shuts_no_hole(ways_of):
    # 2 ft (SITING) below the least pond of 3 in.
    for depth, is_shut in (("26 in", True), ("27 in", False)):
        answers, _ = ways_of({"spots.1.wet_season_depth": depth})
        assert bool(gate.shut(route.step_at(DEPTH, answers), answers, TODAY)) == is_shut


def test_another_spot_that_is_chosen_opens_the_hole(ways_of):
    answers, _ = ways_of({**STEEP, "spots.2.stands_after_rain": "never", "chosen_spot": "2"})
    assert gate.shut(route.step_at(DEPTH, answers), answers, TODAY) == []


def test_asking_to_learn_is_no_default_and_digs_nothing_itself(given):
    assert digging.TEST_TO_LEARN.default(given()) is None
    assert not digging.TEST_TO_LEARN.digs


# Over random states

WORDS = {
    "lines_requested": ("asked", "asked", "asked", "not_yet"),
    "lines_asked_on": ("2026-05-20", "2026-05-20", "2026-05-27", "2026-04-01", "2026-06-03", None),
    "lines_business_days": ("3", None),
    "lines_holidays": ("none", None),
    "lines_answered": ("yes", "yes", "no", UNKNOWN_TEXT),
    "lines_finished_on": ("2026-05-22", "2026-05-30", "2026-05-10", None),
    "lines_valid_days": ("10", "1", None),
    "private_lines": ("none", "kept_clear", "not_found", None),
    "mark_distance": ("30 ft", "30 ft", "1 ft", "9 paces", None),
    "country": ("us", "uk"),
    "state": ("wi", "ak", None),
    "permission": ("own", "own", "no"),
    "spots.1.slope_run": ("10 ft",),
    "spots.1.slope_drop": ("2 in", "2 in", "18 in"),
    "spots.1.unstable_ground": ("none", "none", "slides", None),
    "spots.1.contamination": ("none", "none", "fuel"),
    "spots.1.soil_lab": ("clear", "above", None),
    "spots.1.another_spot": ("no", "yes"),
    "holes.1.hole_dug_on": ("2026-05-21", "2026-05-27", "2026-05-28", "2026-06-02", None),
    "holes.1.hole_depth": ("20 in", UNKNOWN_TEXT, None),
    "holes.1.hole_cleared": ("yes", "no", None),
    "holes.1.hole_smell": ("earth", "earth", "gas", None),
    LEARN: ("yes", "no", None),
}


def some_garden(luck):
    texts = {key: luck.choice(words) for key, words in WORDS.items()}
    return new_answers({key: text for key, text in texts.items() if text is not None})


def test_every_shut_page_offers_a_way_that_can_be_gone_or_a_day():
    luck, seen = random.Random(11), Counter()
    for _ in range(300):
        answers = some_garden(luck)
        asked = {step.address: step for step in route.steps(answers)}
        for step in asked.values():
            if step.question.group != "holes" or not (said := gate.shut(step, answers, TODAY)):
                continue
            ways = gate.ways_out(step, answers, TODAY)
            assert any(way.address or way.opens for way in ways), (step.address, said)
            for way in ways:
                assert way.label and (way.opens is None or way.opens > TODAY), way
                if way.address:
                    assert not gate.shut(asked[way.address], answers, TODAY), way
            assert len({way.address for way in ways if way.address}) == len(addresses(ways))
            seen[said[0].split()[0]] += 1
    assert len(seen) > 8, seen
