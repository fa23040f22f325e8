"""Readings added afterwards, corrected and struck; and the soak test on plain lines."""

from __future__ import annotations

import pytest

from interview import plain
from interview.plain_soak import run_lines
from interview.reading import Refused
from interview.soak import edit as soak_edit
from interview.soak.run import soak_run

SOAKING = {
    "units": "us",
    "holes.1.hole_dug_on": "2026-05-27",
    "holes.1.hole_depth": "20 in",
    "holes.1.hole_shape": "round",
    "holes.1.hole_width": "8 in",
    "holes.1.soaked_already": "yes",
    "holes.1.water_at_mark": "8 in",
    "holes.1.test_start": "2026-05-28 05:00",
    "holes.1.readings": "05:30 left 7 1/2 in; 07:00 left 6 in",
}


@pytest.fixture
def view(given):
    return given(SOAKING).at("holes", 1)


def short(text: str) -> list[str]:
    """Return the readings as time and words."""
    return [line.replace("2026-05-28T", "").replace(":00-05:00", "") for line in text.splitlines()]


@pytest.mark.parametrize(
    ("line", "place"),
    [
        ("08:00 left 5 in", 2),
        ("06:00 left 7 in", 1),
        ("05:10 left 7 3/4 in", 0),
        ("now left 4 1/2 in", 2),
        ("+1h left 7 in", 1),
        ("06:10 refilled to 8 in", 1),
    ],
)
def test_a_reading_added_goes_where_its_own_time_belongs(view, line, place):
    lines = short(soak_edit.with_added(view, line))
    assert len(lines) == 3
    assert lines[place].split(" ", 1)[1] == line.split(" ", 1)[1]
    assert [one for i, one in enumerate(lines) if i != place] == ["05:30 left 7 1/2 in",
                                                                  "07:00 left 6 in"]  # fmt: skip


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("07:00 left 6 in", "the same as that of reading 2"),
        ("06:00 left 7 3/4 in", "higher than before"),
        ("2026-05-28 09:30 left 5 in", "still to come"),
        ("2026-05-28 04:00 left 7 in", "before the start of the test"),
        ("nonsense", "A time and a depth"),
    ],
)
def test_a_reading_that_cannot_be_added_is_refused_and_nothing_is_lost(view, line, words):
    with pytest.raises(Refused, match=words):
        soak_edit.with_added(view, line)
    assert len(soak_edit.reading_lines(view)) == 2


def test_the_first_reading_is_added_to_none(given):
    texts = {key: text for key, text in SOAKING.items() if "readings" not in key}
    view = given(texts).at("holes", 1)
    assert short(soak_edit.with_added(view, "06:00 left 7 in")) == ["06:00 left 7 in"]
    put_off = given(texts).with_text("holes.1.readings", "don't know yet").at("holes", 1)
    assert short(soak_edit.with_added(put_off, "06:00 left 7 in")) == ["06:00 left 7 in"]


def test_a_reading_is_corrected_struck_and_taken_back(view):
    assert short(soak_edit.with_corrected(view, 2, "07:10 left 6 1/8 in"))[1] == (
        "07:10 left 6 1/8 in"
    )
    struck = soak_edit.with_struck(view, 1)
    assert short(struck)[0] == "struck 05:30 left 7 1/2 in"
    again = soak_edit.with_struck(view.with_text("holes.1.readings", struck), 1)
    assert again == view.texts["holes.1.readings"]


@pytest.mark.parametrize("place", [0, 3, -1])
def test_a_number_without_a_reading_is_refused(view, place):
    with pytest.raises(Refused, match="there are 2"):
        soak_edit.with_struck(view, place)
    with pytest.raises(Refused, match="there are 2"):
        soak_edit.with_corrected(view, place, "08:00 left 5 in")


# Plain lines


@pytest.fixture
def talk(session_of, given, located):
    """Return a runner of plain lines from one question of the soaking hole on."""

    def run(address, *lines, **more):
        texts = {**located, **SOAKING, **{f"holes.1.{key}": text for key, text in more.items()}}
        session, said, left = session_of(given(texts)), [], list(lines)
        session.jump(address)

        def ask(_prompt):
            if not left:
                raise EOFError
            return left.pop(0)

        plain.run(session, ask, said.append)
        return "\n".join(said), session

    return run


def test_plain_lines_say_what_is_due_and_show_the_table(talk):
    heard, _ = talk("holes.1.readings")
    assert "NOW: Read the water as soon as you can" in heard
    assert "Reading due since 07:45, 1 h 15 min ago." in heard
    assert "since fill" in heard and "6 in" in heard and "walls" in heard
    assert ":strike 2" in heard


def test_plain_lines_add_correct_and_strike(talk):
    _, session = talk(
        "holes.1.readings", ":add 06:00 left 7 in", ":correct 2 06:05 left 7 in", ":strike 1"
    )
    lines = short(session.answers.texts["holes.1.readings"])
    assert lines == ["struck 05:30 left 7 1/2 in", "06:05 left 7 in", "07:00 left 6 in"]


@pytest.mark.parametrize(
    ("typed", "words"),
    [(":strike", "number of the reading"), (":strike 9", "there are 2"), (":add x", "A time and")],
)
def test_plain_lines_refuse_in_a_sentence_and_keep_what_there_is(talk, typed, words):
    heard, session = talk("holes.1.readings", typed)
    assert f"! {words}" in heard or words in heard
    assert len(session.answers.texts["holes.1.readings"].splitlines()) == 2


def test_the_commands_about_readings_are_none_of_another_question(talk):
    heard, session = talk("holes.1.water_at_mark", ":strike 1")
    assert "struck" not in session.answers.texts["holes.1.readings"]
    assert heard.count(":quit ") == 2


def test_other_questions_of_the_hole_say_nothing_of_the_run(talk):
    heard, _ = talk("holes.1.ruler_mark")
    assert "NOW:" not in heard


def test_the_lines_of_a_run_fit_the_paper(view, clock):
    more = view.with_text("holes.1.readings", soak_edit.with_struck(view, 1))
    lines = list(run_lines(soak_run(more.at("holes", 1), clock.now), False))
    assert max(map(len, lines)) <= 76
    assert any("struck out" in line for line in lines)
