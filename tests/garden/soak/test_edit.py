"""Readings added afterwards, corrected and struck; and the soak test on plain lines."""

from __future__ import annotations

import dataclasses

import pytest

from interview.garden.soak import edit as soak_edit
from interview.garden.soak.run import soak_run
from interview.plain.soak import run_lines
from interview.reading import Refused

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


def test_a_reading_added_goes_where_its_own_time_belongs(subtests, view):
    for line, place in [
        ("08:00 left 5 in", 2),
        ("06:00 left 7 in", 1),
        ("05:10 left 7 3/4 in", 0),
        ("now left 4 1/2 in", 2),
        ("+1h left 7 in", 1),
        ("06:10 refilled to 8 in", 1),
    ]:
        with subtests.test(line=line, place=place):
            lines = short(soak_edit.with_added(view, line))
            assert len(lines) == 3
            assert lines[place].split(" ", 1)[1] == line.split(" ", 1)[1]
            del lines[place]
            assert lines == ["05:30 left 7 1/2 in", "07:00 left 6 in"]


def test_a_reading_that_cannot_be_added_is_refused_and_nothing_is_lost(subtests, view):
    for line, words in [
        ("07:00 left 6 in", "the same time as reading 2"),
        ("06:00 left 7 3/4 in", "higher than before"),
        ("2026-05-28 09:30 left 5 in", "has not come yet"),
        ("2026-05-28 04:00 left 7 in", "before the start of the test"),
        ("nonsense", "Write a time and a depth"),
    ]:
        with subtests.test(line=line, words=words):
            with pytest.raises(Refused, match=words):
                soak_edit.with_added(view, line)
            assert len(soak_edit.reading_lines(view)) == 2


def test_the_first_reading_is_added_to_none(given):
    texts = {key: text for key, text in SOAKING.items() if "readings" not in key}
    view = given(texts).at("holes", 1)
    assert short(soak_edit.with_added(view, "06:00 left 7 in")) == ["06:00 left 7 in"]
    put_off = given(texts).with_text("holes.1.readings", "don't know yet").at("holes", 1)
    assert short(soak_edit.with_added(put_off, "06:00 left 7 in")) == ["06:00 left 7 in"]


def test_a_reading_before_the_test_has_begun_asks_for_its_start(given):
    """Somebody types yesterday's readings where the start of the test is not noted yet."""
    texts = {key: SOAKING[key] for key in SOAKING if "start" not in key and "readings" not in key}
    with pytest.raises(Refused, match="Say first when that was"):
        soak_edit.with_added(given(texts).at("holes", 1), "09:00 left 7 in")


def test_a_reading_is_corrected_struck_and_taken_back(view):
    assert short(soak_edit.with_corrected(view, 2, "07:10 left 6 1/8 in"))[1] == (
        "07:10 left 6 1/8 in"
    )
    struck = soak_edit.with_struck(view, 1)
    assert short(struck)[0] == "struck 05:30 left 7 1/2 in"
    again = soak_edit.with_struck(view.with_text("holes.1.readings", struck), 1)
    assert again == view.texts["holes.1.readings"]


def test_a_number_without_a_reading_is_refused(subtests, view):
    for place in [0, 3, -1]:
        with subtests.test(place=place):
            with pytest.raises(Refused, match="from 1 to 2"):
                soak_edit.with_struck(view, place)
            with pytest.raises(Refused, match="from 1 to 2"):
                soak_edit.with_corrected(view, place, "08:00 left 5 in")


# Plain lines


@pytest.fixture
def talk(talk, session_of, given, located):
    """Return a runner of plain lines from one question of the soaking hole on."""

    def run(address, *lines, **more):
        texts = {**located, **SOAKING, **{f"holes.1.{key}": text for key, text in more.items()}}
        return talk(*lines, session=session_of(given(texts)), at=address)[:2]

    return run


def test_plain_lines_say_what_is_due_and_show_the_table(talk):
    heard, _ = talk("holes.1.readings")
    assert "NOW: Read the water as soon as you can" in heard
    assert "Reading was due 07:45." in heard
    assert "since fill" in heard and "6 in" in heard and "walls" in heard
    assert ":strike 2" in heard


def test_plain_lines_add_correct_and_strike(talk):
    _, session = talk(
        "holes.1.readings", ":add 06:00 left 7 in", ":correct 2 06:05 left 7 in", ":strike 1"
    )
    lines = short(session.answers.texts["holes.1.readings"])
    assert lines == ["struck 05:30 left 7 1/2 in", "06:05 left 7 in", "07:00 left 6 in"]


def test_plain_lines_refuse_in_a_sentence_and_keep_what_there_is(subtests, talk):
    for typed, words in [
        (":strike", "number of the reading"),
        (":strike 9", "There is no reading 9."),
        (":add x", "Write a time and"),
    ]:
        with subtests.test(typed=typed, words=words):
            heard, session = talk("holes.1.readings", typed)
            assert f"! {words}" in heard or words in heard
            assert len(session.answers.texts["holes.1.readings"].splitlines()) == 2


def test_the_commands_about_readings_are_none_of_another_question(talk):
    heard, session = talk("garden_name", ":go holes.1.water_at_mark", ":strike 1", ":help")
    assert "struck" not in session.answers.texts["holes.1.readings"]
    assert heard.count(":quit ") == 2
    assert heard.count(":strike 2 ") == 1


def test_other_questions_of_the_hole_say_nothing_of_the_run(talk):
    heard, _ = talk("garden_name", ":go holes.1.ruler_mark")
    assert "NOW:" not in heard.partition("[holes.1.ruler_mark]")[2]


def test_the_lines_of_a_run_fit_the_paper(view, clock):
    more = view.with_text("holes.1.readings", soak_edit.with_struck(view, 1))
    lines = list(run_lines(soak_run(more.at("holes", 1), clock.now), False))
    assert max(map(len, lines)) <= 76
    assert any("struck out" in line for line in lines)


# A clock that was wrong


def noted(view) -> dict[str, str]:
    return {
        address.rsplit(".", 1)[1]: text[11:16] if "\n" not in text else " ".join(short(text))
        for address, text in view.items()
    }


def test_every_time_of_the_hole_is_set_back_and_elapsed_times_stay(view, clock):
    assert noted(soak_edit.with_shift(view, "1 h")) == {
        "test_start": "04:00",
        "readings": "04:30 left 7 1/2 in 06:00 left 6 in",
    }
    before = soak_run(view, clock.now).test
    for words in ("1 h 30 min ahead", "90 min", "20 min behind", "1:30 fast", "2 h slow"):
        moved = soak_edit.with_shift(view, words)
        after = view
        for address, text in moved.items():
            after = after.with_text(address, text)
        assert soak_run(after.at("holes", 1), clock.now).test.corrected == before.corrected


def test_only_the_readings_from_one_on_are_set_back_where_that_is_said(view):
    assert noted(soak_edit.with_shift(view, "1 h from 2")) == {
        "readings": "05:30 left 7 1/2 in 06:00 left 6 in"
    }


def test_a_shift_that_cannot_be_understood_is_refused(subtests, view):
    for words, said in [
        ("", "how far the clock was off"),
        ("soon", "digits"),
        ("3", "min"),
        ("1 h from 3", "from 1 to 2"),
        ("900 days", "off by that much"),
        ("0 min", "off by that much"),
    ]:
        with subtests.test(words=words, said=said), pytest.raises(Refused, match=said):
            soak_edit.with_shift(view, words)


@pytest.fixture
def ahead(view, clock):
    """The same hole after a clock two hours ahead was set right: it is half past five."""
    clock.forward(hours=-3.5)
    return dataclasses.replace(view, now=clock.now, _values={})


def test_readings_noted_while_the_clock_was_ahead_block_no_other_edit(ahead):
    assert soak_edit.suggested_shift(ahead, ahead.now) == "2 h"
    assert short(soak_edit.with_added(ahead, "05:10 left 7 3/4 in"))[0] == "05:10 left 7 3/4 in"
    assert "struck" in soak_edit.with_struck(ahead, 1)
    assert short(soak_edit.with_corrected(ahead, 2, "2026-05-28 07:00 left 6 1/4 in"))[1] == (
        "07:00 left 6 1/4 in"
    )
    assert len(soak_run(ahead, ahead.now).rows) == 2


def test_a_new_time_that_is_still_to_come_is_refused_all_the_same(ahead):
    with pytest.raises(Refused, match="has not come yet"):
        soak_edit.with_corrected(ahead, 2, "2026-05-28 07:01 left 6 in")


def test_a_reading_of_now_waits_until_the_noted_times_are_set_back(ahead):
    with pytest.raises(soak_edit.NotedAhead, match="Move them back first"):
        soak_edit.with_added(ahead, "now left 5 in")


def test_the_readings_that_lie_ahead_are_named_with_what_to_do(ahead):
    found = soak_run(ahead, ahead.now)
    assert "reading 2 is noted for later, up to 07:00. Nothing is lost." in found.do_now
    assert "correct it" in found.do_now and ":shift on plain lines" in found.do_now


def test_a_shift_is_kept_whole_or_not_at_all(session_of, given, located, clock):
    session = session_of(given({**located, **SOAKING}))
    step = session.jump("holes.1.readings")
    wanted = soak_edit.with_shift(step.view(session.answers), "5 h behind")
    with pytest.raises(Refused, match="has not come yet"):
        session.offer_together(wanted)
    assert session.answers.texts["holes.1.test_start"].startswith("2026-05-28T05:00")
    session.offer_together(soak_edit.with_shift(step.view(session.answers), "1 h behind"))
    assert session.answers.texts["holes.1.test_start"].startswith("2026-05-28T06:00")


def test_plain_lines_shift_the_times(talk):
    heard, session = talk("holes.1.readings", ":shift 1 h", ":shift soon")
    assert "the times are moved" in heard and "digits" in heard
    assert short(session.answers.texts["holes.1.readings"])[0] == "04:30 left 7 1/2 in"
