"""The interview on plain lines, typed through from beginning to end."""

from __future__ import annotations

import pytest

from interview import plain, route
from interview.model import UNKNOWN_TEXT


class Typist:
    """Types prepared lines and keeps what is said."""

    def __init__(self, *lines: str) -> None:
        self.lines = list(lines)
        self.said: list[str] = []

    def ask(self, prompt: str) -> str:
        if not self.lines:
            raise EOFError
        return self.lines.pop(0)

    @property
    def heard(self) -> str:
        return "\n".join(self.said)


@pytest.fixture
def talk(session_of):
    """Return a runner: it types lines into a session and returns what was said and the session."""

    def run(*lines: str, session=None):
        typist = Typist(*lines)
        session = session or session_of()
        finished = plain.run(session, typist.ask, typist.said.append)
        return typist.heard, session, finished

    return run


def test_each_answer_is_said_back_and_the_next_question_comes(talk):
    heard, session, finished = talk("Maple corner", "us", "us")
    assert not finished
    assert "= Maple corner" in heard and "= feet and inches" in heard
    assert session.answers.texts == {"garden_name": "Maple corner", "units": "us", "country": "us"}
    assert session.step.address == "state"


def test_a_refused_answer_is_explained_and_the_question_waits(talk):
    heard, session, _ = talk("x", "furlongs", "us")
    assert '! "furlongs" is not on the list.' in heard
    assert heard.count("[units]") == 1
    assert session.answers.texts["units"] == "us"


def test_an_empty_line_takes_the_value_offered(talk, session_of):
    session = session_of()
    session.jump("rain_depth")
    heard, session, _ = talk("", session=session)
    assert "Enter alone takes: 1 in" in heard
    assert session.answers.texts["rain_depth"] == "1 in"


def test_an_empty_line_where_nothing_is_offered_is_refused(talk):
    heard, session, _ = talk("", "x")
    assert "! Nothing was written." in heard
    assert session.answers.texts == {"garden_name": "x"}


def test_an_empty_line_at_an_answered_question_keeps_it(talk):
    heard, session, _ = talk("x", ":back", "", "metric")
    assert "kept: x" in heard
    assert session.answers.texts == {"garden_name": "x", "units": "metric"}


def test_a_list_ends_with_an_empty_line(talk, session_of):
    session = session_of()
    session.offer(session.jump("lines_requested"), "asked")
    session.jump("lines_holidays")
    talk("2026-05-25", "2026-07-03", "", session=session)
    assert session.answers.texts["lines_holidays"] == "2026-05-25\n2026-07-03"


def test_skipping_keeps_that_it_is_not_known_and_says_how_to_find_out(talk):
    heard, session, _ = talk("x", ":skip", "us")
    assert f"= {UNKNOWN_TEXT}. To find out: Look at your tape measure." in heard
    assert session.answers.texts["units"] == UNKNOWN_TEXT


@pytest.mark.parametrize(
    ("command", "words"),
    [
        (":why", "The name heads your plan"),
        (":how", "Any short name will do"),
        (":help", "  :skip"),
        (":what", "  :skip"),
        (":plan", "RAIN GARDEN PLAN"),
        (":waiting", "The plan still waits for"),
        (":list", "  garden_name: "),
        (":go nowhere", "There is no question 'nowhere'"),
        (":go state", "There is no question 'state' that applies now"),
        (":remove", "not part of a list"),
    ],
)
def test_the_commands_answer_and_stay_at_the_question(talk, command, words):
    heard, session, _ = talk(command)
    assert words in heard.partition("[garden_name]")[2]
    assert session.step.address == "garden_name"
    assert session.answers.texts == {}


def test_going_to_a_question_and_clearing_it(talk):
    _, session, _ = talk("x", ":go rain_depth", "2 in", ":go rain_depth", ":clear", ":quit")
    assert session.answers.texts == {"garden_name": "x"}
    assert session.step.address == "rain_depth"


def test_a_whole_item_may_be_removed(talk, session_of):
    session = session_of()
    session.offer(session.jump("surfaces.1.surface_name"), "roof")
    session.jump("surfaces.1.surface_name")
    talk(":remove", session=session)
    assert session.answers.texts == {}


def test_what_does_not_apply_is_listed_as_set_aside(talk, given, session_of):
    answers = given({"country": "us", "state": "vt"}).with_text("country", "uk")
    heard, _, _ = talk(":list", session=session_of(answers))
    assert "state: vt (set aside: does not apply now)" in heard


def test_what_is_shut_is_said_at_its_question(talk, session_of):
    session = session_of()
    session.jump("holes.1.hole_depth")
    heard, session, _ = talk("20 in", session=session)
    assert "SHUT: You have not yet asked" in heard
    assert "holes.1.hole_depth" not in session.answers.texts


def test_a_failed_save_is_told_at_once(talk, keeper):
    keeper.refuses = "The disk is full."
    heard, _, _ = talk("x")
    assert "! NOT SAVED: The disk is full." in heard


def test_skipping_everything_reaches_the_end_and_the_plan(talk):
    heard, session, finished = talk(*[":skip"] * 300)
    assert finished
    assert "That was the last question." in heard
    assert "Not asked yet, from 'Depth of the hole' on:" in heard
    assert "RAIN GARDEN PLAN" in heard
    assert all(session.shut(step) for step in route.open_steps(session.answers))


def test_a_whole_garden_can_be_typed_on_plain_lines(
    talk, session_of, located, level_spot, roof, clock
):
    answers = {
        "garden_name": "Maple corner", "units": "us", "country": "us", "state": "Vermont",
        **located, **level_spot, "children": "no",
        "permission": "own", "rules_checked": "not_needed",
        "holes.1.hole_dug_on": "2026-05-27", "holes.1.hole_depth": "20 in",
        "holes.1.floor_depth": "10 in", "holes.1.hole_smell": "earth", "holes.1.hole_seeps": "no",
        "holes.1.hole_shape": "round", "holes.1.hole_width": "8 in",
        "holes.1.soaked_already": "yes",
        "holes.1.water_at_mark": "8 in", "holes.1.test_start": "2026-05-27 10:00",
        "holes.1.read_as": "left",
        "holes.1.readings": "+1h left 6 7/8 in; +2h left 5 3/4 in; +3h left 4 7/8 in",
        "holes.1.hole_left": "covered",
        **roof("rectangle 20 ft by 30 ft"),
        "spout_distance": "20 ft", "spout_fall": "6 in",
    }  # fmt: skip
    typist = Typist()
    session = session_of()

    def ask(prompt: str) -> str:
        if prompt == ". ":
            return ""
        default = session.step.question.default(session.step.view(session.answers))
        return answers.get(session.step.address) or ("" if default else ":skip")

    assert plain.run(session, ask, typist.said.append)
    plan = session.plan
    assert plan.verdict.value in ("good", "fix")
    assert "  ! " not in typist.heard
    assert plan.garden and plan.planting.total > 0


def test_no_line_said_holds_a_bare_control_character(talk):
    heard, _, _ = talk("x", ":plan", ":list", ":quit")
    assert all(char.isprintable() or char == "\n" for char in heard)
