"""What the pages tell that ask nothing: the first size, the end of a day, the wait, the plan."""

from __future__ import annotations

import pytest
import simple_way as simple

from interview.garden import told_pages
from interview.garden.opening import Opened, open_session
from interview.garden.site.cautions import LOCATE
from interview.garden.verdicts import verdict
from interview.quantities.evidence import Grade

TELLING = ("rough_size", "end_of_today", "waiting", "result", "the_plan")
BY = "rain-garden-interview test"


@pytest.fixture
def at(session_of, clock):
    """Return a way to walk the simple garden to a page; returns the sitting there."""
    clock.now = clock.now.replace(month=simple.FIRST_DAY.month, day=simple.FIRST_DAY.day)

    def walked(name, session=None):
        session = session or session_of()
        assert list(simple.walk(session, clock, until=name))[-1].name == name
        return session

    return walked


def say(session, key, text):
    session.offer(session.jump(key), text)


def told(session, name):
    return told_pages.told(session, session.way.place_of(name))


# Each page in its turn


def test_each_page_that_tells_says_something_and_no_other_does(session_of, clock, at):
    session, said = session_of(), {}
    clock.now = clock.now.replace(day=simple.FIRST_DAY.day)
    for place in simple.walk(session, clock):
        if lines := told_pages.told(session, place):
            assert all(line.strip() == line and line for line in lines)
            said[place.name] = lines
    assert tuple(said) == TELLING


def test_the_first_size_waits_for_what_is_missing_and_then_has_its_numbers(plan_of, roof):
    assert told_pages.rough_size(plan_of({"units": "us"})) == [
        "A first size waits for: Kind of surface."
    ]
    said = told_pages.rough_size(plan_of({"units": "us", **roof("rectangle 30 ft by 14 ft")}))
    assert said[0].endswith("for 1 in of rain from 420 sq ft, with a 6 in pond.")
    assert said[-1].startswith("Look for room of ")


def test_the_day_ends_with_what_was_found_what_is_usual_and_what_is_due(at):
    lines = told(at("end_of_today"), "end_of_today")
    assert lines[0] == "That is all for today."
    assert "Distances: 5 fine." in lines and "Slope 1.7 %: fine." in lines
    taken = [line for line in lines if line.startswith("Taken as usual: ")]
    assert taken == [
        "Taken as usual: Rain to hold: 1 in; Share of the downspout's own water: all; Valley into "
        "this gutter: no; 4 more, which the plan lists."
    ]
    assert lines[-1] == f"Next time: {told_pages.due_now(at('end_of_today')).says}"


def test_what_was_put_off_is_told_with_how_to_find_it_out_and_five_at_most(at):
    session = at("end_of_today")
    assert told_pages.to_find_out(session) == []
    keys = ("children", "permission", "spots.1.near_spot", "spots.1.overflow_to", "roof_hazard")
    for key in (*keys, "spots.1.stands_after_rain"):
        session.put_off(session.jump(key))
    lines = told_pages.to_find_out(session)
    assert len(lines) == 5
    step = session.jump("children")
    label = step.worded(session.answers).label
    assert f"To find out: {label}. {session.find_out(step)}" in lines
    assert [line for line in told(session, "end_of_today") if line in lines] == lines


def test_the_day_is_over_only_while_nothing_is_left_of_it(subtests, at, clock):
    """What changed since is told: a spot that stops, lines not asked for, a later day."""
    session = at("end_of_today")
    for key, text, day, head, last in (
        (
            "lines_requested",
            "not_yet",
            0,
            "Not all of the first day's work is done yet.",
            "Today: ask for",
        ),
        ("lines_requested", "asked", 0, "That is all for today.", "Next time: While you wait"),
        (
            "spots.1.slope_drop",
            "18 in",
            0,
            "Not all of the first day's work is done yet.",
            "STOP here: slope 15",
        ),
        ("spots.1.slope_drop", "2 in", 0, "That is all for today.", "Next time: While you wait"),
        ("lines_asked_on", "2026-05-19", 0, "That is all for today.", "Next time: While you wait"),
        ("private_lines", "none", 1, "The first day's work is done.", "Now: While you wait"),
    ):
        with subtests.test(key=key, text=text, day=day):
            say(session, key, text)
            clock.now = clock.now.replace(day=simple.FIRST_DAY.day + day)
            lines = told(session, "end_of_today")
            assert lines[0] == head
            assert lines[-1].startswith(last)


def test_whoever_comes_back_to_the_end_of_a_day_is_not_told_that_it_ends(at, session_of, clock):
    answers = at("end_of_today").answers
    session = session_of(answers, stopped_at="end_of_today")
    session.start()
    lines = told(session, "end_of_today")
    assert lines[0] == "The last visit ended here." and lines[-1].startswith("Now: While you wait")


def test_the_end_of_the_day_tells_stops_before_the_size_and_asks_for_the_marks(at):
    session = at("end_of_today")
    say(session, "spots.1.slope_drop", "18 in")
    say(session, "lines_requested", "not_yet")
    lines = told(session, "end_of_today")
    assert lines[1].startswith("STOP: ") and "15 %" in lines[1]
    assert lines.index(next(one for one in lines if one.startswith("About "))) > 1
    assert [one for one in lines if one.startswith("The marks are not asked for yet. ")]


@pytest.mark.parametrize(
    ("today", "changes", "first"),
    [
        ((5, 20), {}, "First day to dig: Sat 23 May, if all owners have answered by then."),
        ((5, 23), {}, "The wait is over. Digging opens once every owner has answered."),
        ((5, 20), {"lines_asked_on": None}, "The first day to dig is not known yet."),
    ],
    ids=["waiting", "over", "no day"],
)
def test_the_wait_tells_its_day_and_always_the_caution(at, clock, today, changes, first):
    session = at("waiting")
    for key, text in changes.items():
        if text is None:
            session.clear(session.jump(key))
    clock.now = clock.now.replace(month=today[0], day=today[1])
    lines = told_pages.waiting(session)
    assert lines[0] == first
    assert lines[-1] == LOCATE
    # The day is told once, and what must be done besides.
    assert not any("wait until" in line for line in lines)
    assert ("Not all owners" in lines[1]) == ("lines_asked_on" not in changes)


def test_waiting_says_what_else_shuts_digging_and_what_can_be_found_out(at):
    session = at("waiting")
    assert "Nothing else to do today." in told_pages.waiting(session)
    say(session, "private_lines", "not_found")
    lines = told_pages.waiting(session)
    assert "Nothing else to do today." not in lines
    assert any(line.startswith("Where your own buried lines") for line in lines)
    assert any(line.startswith("To find out: Private lines. ") for line in lines)


def test_a_result_is_the_verdict_of_the_readings_or_what_they_wait_for(at):
    assert told_pages.result(at("hole_shape").plan)[0].startswith("No rate yet.")
    session = at("result")
    step = session.jump("holes.1.readings")
    assert told_pages.result(session.plan) == [verdict(session.plan, step).line]
    assert told_pages.result(session.plan)[0].startswith("Water drops 1 in/h: pond 10 in")


def test_the_plan_is_told_in_a_sentence_with_what_stands_against_it_and_its_day(at):
    session = at("the_plan")
    lines = told_pages.the_plan(session)
    assert lines[0].startswith("A garden ") and lines[-1] == "Dig day: Sat 30 May."
    for key, text in (
        ("spots.1.unstable_ground", "slides"),
        ("spots.1.basement_distance", "3 ft"),
        ("spots.1.pavement_distance", "1 ft"),
        ("spots.1.property_line_distance", "1 ft"),
    ):
        say(session, key, text)
    against = [one for one in session.plan.findings if one.grade is not Grade.GOOD]
    assert len(against) > told_pages.MOST_PROBLEMS
    lines = told_pages.the_plan(session)
    grades = [line.split(":")[0] for line in lines if line.split(":")[0] in ("STOP", "FIX")]
    assert len(grades) == told_pages.MOST_PROBLEMS and grades[0] == "STOP"
    assert grades == sorted(grades, reverse=True)
    assert f"And {len(against) - told_pages.MOST_PROBLEMS} more in the plan." in lines


def test_the_plan_says_that_levels_read_are_to_be_typed_in(at):
    session = at("the_plan")
    typed = "Levels: go on, and type in what you read."
    assert typed not in told_pages.the_plan(session)
    say(session, "levels_read", "yes")
    assert told_pages.the_plan(session)[-1] == typed
    say(session, "floor_readings", "8 in")
    assert typed not in told_pages.the_plan(session)


def test_an_empty_garden_has_a_page_for_everything(session_of):
    session = session_of()
    assert told_pages.told(session, session.start()) == []
    assert told_pages.the_plan(session)[0].startswith("The marks are not asked for yet. ")
    assert told_pages.waiting(session)[0] == "The first day to dig is not known yet."
    assert told_pages.result(session.plan)[0].startswith("No rate yet.")


# What is said of one answer, and what is taken


@pytest.mark.parametrize(
    ("address", "said"),
    [
        ("lines_asked_on", "First day to dig: Sat 23 May."),
        ("lines_business_days", "First day to dig: Sat 23 May."),
        ("lines_finished_on", ""),
        ("children", ""),
    ],
)
def test_an_answer_about_the_request_says_the_first_day_to_dig(at, address, said):
    session = at("waiting")
    step = session.jump(address)
    assert (told_pages.said_at_once(session.plan, step) if step else "") == said


def test_the_first_day_to_dig_is_told_until_it_has_come(at, clock):
    session = at("waiting")
    for day, is_told in ((22, True), (23, False)):
        clock.now = clock.now.replace(day=day)
        say(session, "lines_ticket", f"T-{day}")
        step = session.jump("lines_asked_on")
        assert bool(told_pages.said_at_once(session.plan, step)) == is_told


def test_the_day_the_marks_were_finished_says_how_long_they_are_good(at):
    session = at("marks")
    finished = session.jump("lines_finished_on")
    assert told_pages.said_at_once(session.plan, finished) == "Marks good to Tue 2 Jun."
    # Once the wait is over its day is no news.
    assert told_pages.said_at_once(session.plan, session.jump("lines_asked_on")) == ""


def test_only_rows_that_were_left_as_they_are_count_as_taken(at):
    session = at("end_of_today")
    before = told_pages.taken_as_usual(session)
    assert before[0] == "Rain to hold: 1 in" and len(before) == len(set(before))
    say(session, "rain_depth", "1.5 in")
    assert told_pages.taken_as_usual(session) == before[1:]
    assert told_pages.taken_as_usual(at("after_rain"))[0] == "Rain to hold: 1 in"
    assert told_pages.taken_as_usual(at("soil_feel")) == []


def test_a_page_is_named_by_its_title_and_off_the_path_by_nothing(at):
    session = at("hole_shape")
    assert told_pages.title(session, session.jump("spots.1.overflow_to")) == "Overflow"
    assert told_pages.title(session, session.jump("holes.1.hard_digging")) == ""


# Another country, and the file


def test_nothing_of_feet_or_of_the_service_of_another_country_is_told(session_of, given, roof):
    texts = {**roof("rectangle 9 m by 4.3 m"), "lines_requested": "asked"}
    session = session_of(given({"country": "uk", "units": "metric", **texts}))
    said = " ".join(
        [
            *told_pages.waiting(session),
            *told_pages.end_of_today(session),
            *told_pages.rough_size(session.plan),
        ]
    )
    assert "811" not in said and " ft" not in said and " in)" not in said
    assert "m²" in said and "mm pond" in said


@pytest.mark.parametrize("name", ["end_of_today", "waiting", "the_plan"])
def test_a_garden_opened_again_tells_the_same(at, name, clock, tmp_path):
    path = str(tmp_path / "garden.yaml")
    opened = open_session(path, clock, BY)
    assert isinstance(opened, Opened)
    with opened.lock:
        before = told(at(name, opened.session), name)
        assert opened.session.save()
    again = open_session(path, clock, BY)
    assert isinstance(again, Opened)
    with again.lock:
        assert told(again.session, name) == before


def test_what_is_usual_is_told_by_the_labels_one_reads(session_of):
    session = session_of()
    for key, usual, told in (
        ("keep_out", "toxic, large", "poisonous or irritating, over 8 ft (2.4 m) tall"),
        ("bloom", "spring, summer, autumn", "spring, summer, fall"),
        ("local_rules", "none", "none"),
        ("water_by", "channel", "an open channel with stone"),
        ("garden_name", "toxic, large", "toxic, large"),
    ):
        assert told_pages.usual_words(session, session.jump(key), usual) == told, key
