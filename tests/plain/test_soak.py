"""A soak test under way on plain lines: told on coming back, and no reading of it is lost."""

from __future__ import annotations

import re

import pytest

from interview.garden.summary import waiting_text
from interview.plain import soak
from interview.sheet import report

READINGS = "holes.1.readings"
KEPT = ["2026-05-27T11:00:00-05:00 left 7 in", "2026-05-27T12:00:00-05:00 left 6 in"]


@pytest.fixture
def running(session_of, given, hole, clock):
    """A session come back to at 13:00: two readings are kept, the next was due at 12:45."""
    clock.now = clock.now.replace(day=27, hour=13)
    texts = hole("round", "8 in", "8 in", "+1h left 7 in; +2h left 6 in", read_as="left")
    return session_of(given(texts, garden_name="Maple corner", units="us"))


@pytest.fixture
def talk(talk):
    """Return a runner: it types lines into a session and returns what was said."""
    return lambda session, *lines: talk(*lines, session=session)[0]


def kept(session) -> list[str]:
    return session.answers.texts[READINGS].splitlines()


def test_a_new_reading_is_added_to_those_kept(talk, running):
    heard = talk(running, "12:50 left 5.5", "")
    assert "= reading 3: Wed 27 May, 12:50 left 5.5 in" in heard
    assert kept(running) == [*KEPT, "2026-05-27T12:50:00-05:00 left 5.5 in"]


def test_a_wrong_reading_is_refused_alone_and_a_command_is_carried_out(talk, running):
    heard = talk(running, "12:30 left 5.5", "12:50 leff 5", ":why", "12:50 left 5", "")
    assert "! Reading 4: " in heard
    assert "Six readings or more show" in heard
    assert [line[11:] for line in kept(running)[2:]] == [
        "12:30:00-05:00 left 5.5 in",
        "12:50:00-05:00 left 5 in",
    ]


def test_the_time_of_a_reading_is_that_of_its_line_not_of_the_end_of_the_list(talk, running, clock):
    wait = lambda: clock.forward(minutes=30)  # noqa: E731
    talk(running, "now left 5.5", wait, "now left 5", wait, "")
    assert [line[:16] for line in kept(running)[2:]] == ["2026-05-27T13:00", "2026-05-27T13:30"]


def test_each_reading_is_followed_by_what_is_due_and_the_rates(talk, running, clock):
    heard = talk(running, "now left 5.5").partition("= reading 3")[2]
    assert "NOW: Cover the hole and take the next reading at" in heard
    assert "So far: drop rate" in heard and "corrected" in heard


def test_readings_typed_in_afterward_are_not_each_told_the_same(talk, running, clock):
    clock.forward(hours=30)
    times = ("12:20", "12:40", "13:00")
    heard = talk(running, *(f"2026-05-27 {at} left {5 - n / 2}" for n, at in enumerate(times)), "")
    told = " ".join(heard.split())
    assert told.count("= reading ") == 3 and told.count("So far: ") == 3
    assert told.count("Read the water as soon as you can") <= 2
    assert told.count("The hole may be empty") <= 2
    assert re.search(r"= reading 4: [^=]*readings so far|= reading 4: [^=]*agree", told)


def test_coming_back_to_a_test_under_way_tells_it_first_and_stands_at_its_readings(talk, running):
    running.jump("rain_depth")
    heard = talk(running)
    assert heard.startswith("Maple corner: ")
    told, _, rest = heard.partition("== ")
    assert "!! Soak test, test hole 1: Read the water as soon as you can" in told
    assert "It was due at 12:45." in " ".join(told.split())
    assert rest.partition("==\n")[2].startswith("Take a reading about every hour")
    assert running.step.address == READINGS


def test_after_the_reading_one_is_asked_how_the_hole_is_left(talk, running):
    running.jump("rain_depth")
    talk(running, "12:50 left 5.5", "")
    assert running.step.address == "holes.1.hole_left"


def test_coming_back_to_a_soaking_that_drains_stands_at_its_question(talk, session_of, given, hole):
    texts = hole("round", "8 in", "8 in", "+1h left 7 in", first_fill_start="2026-05-28 08:00")
    kept = {key: text for key, text in texts.items() if "readings" not in key}
    del kept["holes.1.test_start"]
    session = session_of(given(kept))
    session.jump("rain_depth")
    heard = talk(session)
    assert "Let it drain; look again at" in heard.partition("== ")[0]
    assert session.step.address == "holes.1.first_fill_empty"


def test_the_readings_are_reached_by_their_name_alone(talk, running):
    for name in ("readings", "Readings", READINGS):
        running.jump("rain_depth")
        talk(running, ":go units", f":go {name}")
        assert running.step.address == READINGS


def test_a_reading_that_comes_due_is_told_once_at_whatever_question(talk, running, clock):
    heard = talk(
        running,
        "now left 5.5",
        ":go rain_depth",
        lambda: clock.forward(minutes=90),
        ":why",
        ":why",
    )
    said = " ".join(heard.partition("How much rain")[2].split())
    assert said.count("!! Soak test, test hole 1: Read the water") == 1
    assert ":go holes.1.readings takes you there." in said


def test_what_is_waited_for_begins_with_a_test_under_way(running, talk):
    said = " ".join(waiting_text(running.plan).split())
    assert said.startswith(
        "The plan still waits for: - Soak test, test hole 1: Read the water as soon as you can"
    )
    assert "(holes.1.readings)" in said


def test_do_next_begins_with_a_test_under_way(running):
    sheet = " ".join(report.plan_text(running.plan).split())
    assert "DO NEXT ------- 1. Soak test, test hole 1: Read the water as soon as you can" in sheet


def test_a_filling_gone_at_the_time_it_was_made_is_doubted(talk, session_of, given, located):
    start = "2026-05-28 08:00"
    session = session_of(
        given({**located, "holes.1.hole_dug_on": "2026-05-28", "holes.1.first_fill_start": start})
    )
    heard = talk(session, ":go first_fill_empty", start)
    assert "! That is the time the hole was filled." in heard
    assert "holes.1.first_fill_empty" not in session.answers.texts
    talk(session, ":go first_fill_empty", start)
    assert session.answers.texts["holes.1.first_fill_empty"] == "2026-05-28T08:00:00-05:00"


def test_what_is_seen_beside_the_hole_is_noted_in_a_word(talk, running, clock):
    heard = talk(running, "5 1/2 in", lambda: clock.forward(minutes=30), "gone", "")
    assert [line[:16] for line in kept(running)[2:]] == ["2026-05-27T13:00", "2026-05-27T13:30"]
    assert kept(running)[2].endswith("left 5 1/2 in") and kept(running)[3].endswith("empty")
    assert "= reading 4" in heard


def test_the_fillings_and_the_mark_are_noted_in_a_word(talk, session_of, given, located, clock):
    texts = {**located, "holes.1.hole_dug_on": "2026-05-28", "holes.1.hole_depth": "20 in"}
    session = session_of(given(texts))
    wait = lambda: clock.forward(minutes=40)  # noqa: E731
    typed = ("filled", wait, "empty", "filled", wait, "gone", "mark 8 in", "filled")
    talk(session, ":go first_fill_start", *typed)
    at = [session.answers.texts.get(f"holes.1.{key}", "")[11:16] for key in MOMENTS]
    assert at == ["09:00", "09:40", "09:40", "10:20", "10:20"]
    assert session.answers.texts["holes.1.water_at_mark"] == "8 in"


MOMENTS = (
    "first_fill_start", "first_fill_empty", "second_fill_start", "second_fill_empty", "test_start",
)  # fmt: skip


def test_the_commands_beside_the_readings_are_told_in_the_units_of_the_garden(
    session_of, given, hole
):
    for units, deep in (("us", "left 6 in"), ("metric", "left 150 mm")):
        texts = hole("round", "8 in", "8 in", "+1h left 7 in; +2h left 6 in")
        session = session_of(given({**texts, "units": units}))
        said: list[str] = []
        soak.say_run(session, session.jump("holes.1.readings"), said.append)
        assert f"10:15 {deep} " in "\n".join(said)
