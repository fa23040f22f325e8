"""Coming back to a garden on plain lines: one stands where the garden waits, and it is said."""

from __future__ import annotations

from contextlib import suppress

import pytest
from test_due import ROWS

from interview.garden.due_words import GardenState as State
from interview.garden.stages import new_answers, question_at
from interview.reading import Refused

TAKEN = ("rough_size", "usual_roofs", "end_of_today", "ticket", "answered", "usual_test", "result")
BED = ("usual_bed", "usual_plants")
HELD = {"holes.1.floor_depth": "11 in"}
BACK = (
    (State.NEW, "name", "What do you call this garden?"),
    (State.FIRST_SIZE, "place", "Which state is the garden in?"),
    (State.SPOT, "overflow", "where will the extra water go?"),
    (State.NOT_ASKED, "ask_for_marks", "Have you asked for the buried lines"),
    (State.WHILE_WAITING, "private_lines", "buried lines of your own"),
    (State.WAITING, "waiting", "First day to dig: Tue 26 May, if all owners"),
    (State.MAY_OPEN, "answered", "Has every owner on the ticket"),
    (State.PRIVATE, "private_lines", "kept: maybe, I have not found out; Enter keeps it"),
    (State.MARKS, "answered", "On which day did the last owner answer?"),
    (State.TOO_NEAR, "hole", "1 Move the hose, and measure its room"),
    (State.MAY_DIG, "hole", "How deep is the hole?"),
    (State.STALE, "ticket", "On which day did you ask for the marks?"),
    (State.HOLE, "smell", "How does the hole smell?"),
    (State.SOAKING, "timer", "When was the hole empty again?"),
    (State.TIMING, "timer", "Take a reading about every hour"),
    (State.LEAVE_HOLE, "hole_left", "How have you left the hole?"),
    (State.SMELL, "seeping", "1 Go away from it and call the gas utility"),
    (State.STOP, "slope", "1 Measure it again 2 Try another spot 3 Keep it"),
    (State.TESTED, "usual_bed", "The usual for the bed:"),
    (State.PLANNED, "the_plan", "Plan ready. Dig day Fri 5 Jun."),
    (State.RENEW, "ticket", "On which day did you ask for the marks?"),
    (State.STORM, "the_plan", "have you seen it through a storm?"),
    (State.FAULTS, "outline", "How long may the garden be?"),
    (State.SHUT, "answered", "For how many days do the marks stay good?"),
)
"""The state, the page that is come back to, and what is read there."""


def garden_in(state, clock):
    """Return the answers of a garden in a state, and the usual pages taken, on its day."""
    texts, (month, day, hour), _, _ = ROWS[state]
    minute = round(hour % 1 * 60)
    clock.now = clock.now.replace(month=month, day=day, hour=int(hour), minute=minute)
    answers = new_answers({}, clock.now)
    floor = HELD if "holes.1.hole_depth" in texts else {}
    for address, text in {**texts, **floor}.items():
        question, number = question_at(address)
        view = answers.at(question.group, number) if number else answers
        with suppress(Refused):
            text = question.kind.settle(text, view)
        answers = answers.with_text(address, text)
    planned = (State.PLANNED, State.RENEW, State.STORM)
    return answers, [*TAKEN, *(BED if state in planned else ())]


@pytest.fixture
def left(session_of, clock):
    """Return a garden that was left in a state, on the day it is come back to."""

    def make(state, at=""):
        answers, taken = garden_in(state, clock)
        session = session_of(answers, stopped_at=at)
        session.taken[:] = taken
        session.start()
        return session, ROWS[state][2]

    return make


@pytest.mark.parametrize("at", ["", "the_plan"])
def test_one_comes_back_to_where_the_garden_waits(left, talk, subtests, at):
    for state, page, read in BACK:
        if at and state in (State.NEW, State.FIRST_SIZE):
            continue  # no plan was seen yet
        with subtests.test(state=state.name):
            session, says = left(state, at)
            heard, session, _ = talk(session=session)
            said = " ".join(heard.split())
            assert session.place.name == page and read in said
            # What names a page is told with the title of the path.
            assert state in (State.SPOT, State.HOLE) or says.strip() in said


def test_whoever_waited_is_asked_for_the_owners_once_the_wait_is_over(left, talk, session_of):
    for state, page, read in (
        (State.MAY_OPEN, "answered", "Has every owner on the ticket"),
        (State.WAITING, "waiting", "Nothing else to do today."),
    ):
        session, _ = left(state)
        session = session_of(session.answers, stopped_at="spots.1.sun_hours")
        session.taken[:] = TAKEN
        session.start()
        heard, session, _ = talk(session=session)
        assert session.place.name == page and read in " ".join(heard.split())
        assert ("Nothing else to do" in heard) == (state is State.WAITING)


def test_a_time_that_is_kept_is_read_as_one_says_it(left, talk):
    session, _ = left(State.TESTED)
    heard, _, _ = talk(session=session, at="first_fill_empty")
    assert "kept: Wed 27 May, 03:00" in heard and "T03:00" not in heard
    heard, _, _ = talk("", session=session, at="hole_depth")
    assert "kept: Wednesday 27 May 2026" in heard and "kept: 2026" not in heard


def test_the_ways_on_from_a_stop_are_taken_or_left_by_whoever_comes_back(left, talk):
    session, _ = left(State.STOP)
    _, session, _ = talk("1", "10 ft", "4 in", "", session=session)
    assert session.answers.texts["spots.1.slope_drop"] == "4 in"
    session, _ = left(State.STOP)
    _, session, _ = talk("3", session=session)
    assert session.place.name != "slope"
