"""The short way: what stands on which page, and an invented simple garden walked along it."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import pytest
import simple_way as simple

from interview.asking import path
from interview.asking.path import places
from interview.asking.question import UNKNOWN_TEXT, Status
from interview.asking.way import Standing
from interview.garden.form.choices import FloorShape
from interview.garden.path import OFF_PATH, OPTIONAL, PATH, SAFETY
from interview.garden.stages import GROUPS, QUESTIONS, STAGES, new_answers
from interview.garden.store import load
from interview.garden.told_pages import end_of_today
from interview.reading import Refused
from interview.sheet.figures_file import figures_text

FOLDER = Path(__file__).parents[2] / "sample_answers"
MOST_PAGES, ROUGH_SIZE_AT, MOST_TYPED = 45, 6, 50
"""What a first-timer is asked to go through in a simple garden: a choice of ours."""


@pytest.fixture
def begun(session_of, clock):
    """Return a sitting that begins on the day the simple garden does."""
    day = simple.FIRST_DAY
    clock.now = clock.now.replace(month=day.month, day=day.day)
    return session_of


def key_places():
    return {key: place for place, key in enumerate(key for page in PATH for key in page.keys)}


def test_every_question_stands_on_one_page_or_is_left_off_with_a_reason():
    on = [key for page in PATH for key in page.keys]
    assert len(on) == len(set(on))
    assert set(on) | set(OFF_PATH) == set(QUESTIONS)
    assert not set(on) & set(OFF_PATH)
    assert all(OFF_PATH.values())


def test_the_names_of_pages_are_their_own_and_their_stages_are_of_the_strip():
    names = [page.key for page in PATH]
    assert len(names) == len(set(names))
    assert all(name.replace("_", "").isalnum() and name == name.lower() for name in names)
    for page in PATH:
        assert page.key not in QUESTIONS or page.key in page.keys, page.key
    assert {page.stage for page in PATH} == {stage.key for stage in STAGES}


def test_a_page_asks_about_one_item_and_holds_few_rows(subtests):
    for page in PATH:
        with subtests.test(page=page.key):
            assert {QUESTIONS[key].group for key in page.keys} <= {"", page.group}
            assert len(page.usual) <= 8
            assert page.keys or page.tells


def test_few_boxes_are_put_at_a_time(subtests, chance, given, session_of):
    for seed in range(4):
        session = session_of(filled(seed, chance, given))
        for place in session.way.places:
            if place.page.tells != "timer":
                with subtests.test(seed=seed, place=place.name):
                    assert len(session.way.boxes(place)) <= 3


def filled(seed, chance, given):
    """Return a garden with nearly every question answered by chance."""
    luck, answers = chance(seed), given()
    for _ in range(3):
        for step in path.steps(answers):
            if step.address in answers.texts:
                continue
            view, text = step.view(answers), luck.text(step, answers)
            try:
                kept = step.question.take(text, view).kept
            except (Refused, Exception):
                continue
            answers = answers.with_text(step.address, kept)
    return answers


def test_no_safety_question_is_a_row_or_is_offered(subtests, chance, given, session_of):
    rows = {key for page in PATH for key in page.usual + page.more}
    assert set(QUESTIONS) >= SAFETY and not rows & SAFETY and not OPTIONAL & SAFETY
    for seed in range(4):
        session = session_of(filled(seed, chance, given))
        for step in path.steps(session.answers):
            if step.question.key in SAFETY:
                with subtests.test(seed=seed, key=step.question.key):
                    assert session.offered(step) is None


def test_what_can_hurt_is_named_a_safety_question():
    # Written here by itself: what a wrong guess at can hurt somebody, or break a rule.
    hurts = """
        near_spot basement_distance slab_distance property_line_distance septic_distance
        well_distance pavement_distance retaining_wall_distance tree_distance slope_crest_distance
        water_distance septic_uphill stands_after_rain unstable_ground contamination overflow_to
        children permission rules_checked roof_hazard lines_requested lines_answered
        lines_finished_on private_lines mark_distance wet_season_depth rock_depth hole_smell
        hole_seeps hole_left
    """
    assert set(hurts.split()) <= SAFETY
    boxes = {key for page in PATH for key in page.asked}
    assert set(hurts.split()) <= boxes


def test_no_distance_is_asked_before_there_is_an_outline_to_measure_from():
    at = key_places()
    outline = max(at["room_length"], at["room_width"])
    distances = [key for key in at if key.endswith("_distance")]
    assert len(distances) > 10
    assert all(at[key] > outline for key in distances)


def test_nothing_is_asked_of_the_hole_before_the_lines(begun):
    at = key_places()
    last = max(at[key] for key in at if key.startswith(("lines_", "mark_", "private_")))
    assert all(at[key] > last for key in at if QUESTIONS[key].digs)


def test_a_simple_garden_sees_its_first_size_soon_and_its_plan_within_45_pages(begun, clock):
    session = begun()
    seen = [place.name for place in simple.walk(session, clock)]
    assert seen.index("rough_size") + 1 == ROUGH_SIZE_AT
    assert seen[-1] == "the_plan" and len(seen) <= MOST_PAGES
    assert len(seen) == len(set(seen))
    assert sum(len(one) for one in simple.ANSWERS.values()) <= MOST_TYPED
    assert session.plan.verdict.value == "good"
    assert session.plan.size.garden.floor_length.m > 0
    assert [one.word for one in session.way.progress()] == ["done"] * len(STAGES)
    assert session.forward() is None and session.place.name == "the_plan"


def test_every_answer_of_the_simple_garden_is_typed_where_it_is_put(begun, clock):
    session, pages = begun(), dict(simple.ANSWERS)
    for place in simple.walk(session, clock):
        pages.pop(place.page.key, None)
    assert pages == {}


def test_taking_what_is_usual_stores_no_answer_and_changes_no_figure(begun, clock):
    session = begun()
    for place in simple.walk(session, clock, until="usual_plants"):
        assert place
    before = session.answers.texts
    zoned = session.plan.with_answers(session.answers.with_text("hardiness_zone", "4b"))
    session.take()
    assert session.taken[-1] == "usual_plants"
    # The zone of the state is no default, so it is kept as the words that were shown.
    assert session.answers.texts == {**before, "hardiness_zone": "4b"}
    assert figures_text(session.plan) == figures_text(zoned)
    later = session.answers.with_text("children", "yes")
    assert later[QUESTIONS["keep_out"]] != session.answers[QUESTIONS["keep_out"]]


def test_the_floor_taken_by_enter_is_the_bed_that_was_shown(begun, clock):
    session = begun()
    for place in simple.walk(session, clock, until="peg_out"):
        assert place
    # On a metric tape, where a rectangle would be narrower by a step.
    session.offer(session.jump("units"), "metric")
    session.go_to("peg_out")
    shown = session.plan.size.garden
    length, width = session.boxes()
    # However long it is pegged, the width is still that of the bed that was worked out.
    for words in ("3 m", session.offered(length), "12 m"):
        assert session.offered(width, {length.address: words}) == session.offered(width)
    session.take()
    pegged = session.plan.size.garden
    assert pegged.shape is shown.shape is FloorShape.ROUNDED
    assert session.answers.texts["floor_shape"] == "rounded"
    for side in ("floor_length", "floor_width"):
        assert abs(getattr(pegged, side) - getattr(shown, side)).to("in").m < 1
    # Of a floor pegged before any shape was shown nothing is said.
    early = begun()
    early.go_to("peg_out")
    early.take({"floor_length": "14 ft", "floor_width": "7 ft"})
    assert "floor_shape" not in early.answers.texts
    early.go_to("usual_bed")
    early.take()
    early.go_to("peg_out")
    early.take({"floor_width": "8 ft"})
    assert "floor_shape" not in early.answers.texts


def test_no_floor_or_dig_day_is_asked_for_before_a_size_can_be_offered(session_of, given, subtests):
    report = {"rate_from": "report", "known_rate": "1 in/h"}
    put_off = {"holes.1.readings": "don't know yet"}
    for known in ({}, report, put_off, {"floor_width": "7 ft"}):
        with subtests.test(known=known):
            session = session_of(new_answers({"garden_name": "Elm", **known}))
            asked = {one.name for one in session.way.places} & {"peg_out", "dig_day"}
            assert asked == ({"peg_out", "dig_day"} if known else set())
    # They can be gone to all the same, but nobody comes back to one.
    session = session_of(given(garden_name="Elm"))
    assert session.go_to("floor_length").name == "peg_out"
    session._stopped = "floor_length"
    assert session.start().name == "place"


def test_a_row_that_is_changed_is_an_answer(begun):
    session = begun()
    session.go_to("rough_size")
    session.take({"rain_depth": "1.5"})
    assert session.answers.texts["rain_depth"] == "1.5 in"
    assert session.taken == ["rough_size"]


def test_a_finished_file_of_an_earlier_version_asks_for_nothing_anew(session_of, subtests):
    for name, left in [
        ("finished_us", []),
        ("finished_metric", []),
        ("usual_us", ["soil_feel", "usual_bed", "usual_plants"]),
    ]:
        with subtests.test(name=name):
            loaded, _ = load(FOLDER / f"{name}.yaml")
            assert loaded.troubles == [] and loaded.taken == []
            way = session_of(loaded.answers).way
            assert [one.name for one in way.places if way.is_open(one)] == left
            assert not [one for one in way.places if way.standing(one) is Standing.FAULTY]


def test_a_taken_page_comes_back_only_for_a_row_that_is_new(session_of, given):
    session = session_of(given(country="us", state="vt"))
    session.go_to("usual_plants")
    session.take()
    assert session.way.standing(session.place) is Standing.DONE
    # Vermont lies in one wetland list, Pennsylvania in several (Corps of Engineers, 2020).
    session.offer(session.jump("state"), "pa")
    place = session.way.place_of("usual_plants")
    assert session.way.standing(place) is Standing.UNTAKEN
    assert [one.question.key for one in session.way.fresh(place)] == ["wetland_list_region"]
    session.go_to("usual_plants")
    session.take()
    assert session.taken == ["usual_plants"]
    assert session.way.standing(session.place) is Standing.DONE


def test_what_may_be_skipped_is_put_by_once_and_is_in_no_list(session_of, given):
    session = session_of(given())
    session.go_to("slope")
    session.take({"spots.1.slope_run": "10 ft", "spots.1.slope_drop": "2 in"})
    assert session.answers.texts["spots.1.downhill_direction"] == UNKNOWN_TEXT
    assert session.way.standing(session.place) is Standing.DONE
    assert session.put_off_list() == []
    without = session.answers.without("spots.1.downhill_direction")
    way = session_of(without).way
    assert way.standing(way.place_of("slope")) is Standing.DONE
    assert way.standing(way.place_of("dig_day")) is Standing.OPEN


def test_what_was_put_off_comes_back_as_a_short_list(session_of, given):
    session = session_of(given({"private_lines": "not_found", "lines_requested": "asked"}))
    for key in ("spots.1.near_spot", "permission", "children", "spots.1.overflow_to"):
        if step := session.jump(key):
            session.put_off(step)
    session.offer(session.jump("rules_checked"), "pending")
    listed = [one.address for one in session.put_off_list()]
    assert listed == ["spots.1.near_spot", "spots.1.overflow_to", "children", "permission",
                      "rules_checked"]  # fmt: skip
    session.offer(session.jump("children"), "no")
    assert session.put_off_list()[-1].address == "private_lines"


def test_a_second_item_follows_the_page_that_asks_for_it(given, session_of):
    answers = given({"surfaces.1.surface_kind": "roof", "surfaces.1.another_surface": "yes"})
    names = [place.name for place in places(answers)]
    at = names.index("another_surface")
    assert names[at + 1 : at + 3] == ["water_from.2", "roof_size.2"]
    assert names.index("after_rain") == names.index("another_surface.2") + 1
    assert names.index("usual_roofs.2") == names.index("usual_roofs") + 1


def test_only_the_chosen_spot_is_asked_what_lies_below(given):
    spots = {"spots.1.spot_name": "a", "spots.1.another_spot": "yes", "spots.2.spot_name": "b"}
    for chosen, name in [("1", "below"), ("2", "below.2")]:
        answers = given({**spots, "chosen_spot": chosen})
        found = [one.name for one in places(answers) if one.page.key in ("below", "sun_hours")]
        assert found == [name, name.replace("below", "sun_hours")]
        # Whatever is gone to is found, and what was answered of the other spot still counts.
        assert path.place_of("spots.1.wet_season_depth", answers).number == 1
        assert "spots.1.wet_season_depth" in {one.address for one in path.steps(answers)}


def test_every_question_can_be_gone_to(chance, given, session_of, subtests):
    for seed in range(3):
        session = session_of(filled(seed, chance, given))
        for step in path.steps(session.answers):
            if step.question.key not in OFF_PATH:
                with subtests.test(seed=seed, address=step.address):
                    place = session.go_to(step.address)
                    assert place is not None and step.question.key in place.page.keys
                    assert session.step.address == step.address
        assert session.jump("holes.1.hard_digging") or session.answers.texts["rate_from"]


def test_with_every_question_each_is_walked_one_by_one_in_the_same_order(session_of, given):
    session = session_of(given())
    session.every_question = True
    seen = []
    place = session.start()
    while place is not None and len(seen) < 200:
        assert len(session.boxes()) == 1 and not session.rows()
        seen.append(session.step.address)
        if session.shut(session.step):
            break
        session.put_off(session.step)
        place = session.forward()
    steps = [one.address for one in path.steps(session.answers)]
    assert seen[:-1] == [one for one in steps if one in seen[:-1]]
    assert {"rain_depth", "units", "spots.1.spot_name"} <= set(seen)


@pytest.mark.parametrize(
    ("requested", "last"),
    [("not_yet", "Today: ask for the lines"), ("asked", "Next time: While you wait: ")],
)
def test_what_is_still_due_today_is_not_said_to_be_for_the_next_time(begun, clock, requested, last):
    session = begun()
    for place in simple.walk(session, clock, until="end_of_today"):
        assert place
    session.offer(session.jump("lines_requested"), requested)
    assert end_of_today(session)[-1].startswith(last)


def test_every_group_is_asked_for_another_on_the_path():
    on = {key for page in PATH for key in page.keys}
    assert {group.another.key for group in GROUPS.values()} <= on


@pytest.mark.parametrize("state", ["open", "shut", "not asked", "stale"])
def test_no_page_that_digs_is_open_while_digging_is_shut(state, given, located, session_of, clock):
    texts = dict(located)
    if state == "not asked":
        texts = {"lines_requested": "not_yet"}
    if state == "shut":
        texts["lines_answered"] = "no"
    if state == "stale":
        clock.now += dt.timedelta(days=60)
    session = session_of(given(texts))
    way = session.way
    digs = [
        one
        for one in way.places
        if way.is_open(one) and any(QUESTIONS[key].digs for key in one.page.keys)
        and any(step.question.digs and way.status(step) is Status.OPEN and not session.shut(step)
                for step in way.wanted(one) + way.untaken(one))
    ]  # fmt: skip
    assert bool(digs) == (state == "open")
    for one in way.places:
        if one.page.key == "hole":
            assert (way.standing(one) is Standing.SHUT) == (state != "open")
