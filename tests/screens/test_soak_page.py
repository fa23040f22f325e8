"""The page that times a soak test, with a clock moved by hand."""

from __future__ import annotations

import datetime as dt

import pytest

HOLE = {
    "holes.1.hole_depth": "15 in",
    "holes.1.floor_depth": "10 in",
    "holes.1.hole_smell": "earth",
    "holes.1.hole_seeps": "no",
    "holes.1.hole_shape": "round",
    "holes.1.hole_width": "8 in",
    "holes.1.soaked_already": "yes",
    "holes.1.water_at_mark": "8 in",
    "holes.1.test_start": "now",
    "holes.1.read_as": "left",
}


@pytest.fixture
def soaking(write, located) -> str:
    """A garden whose water stood at the mark at nine."""
    return str(write("garden.yaml", {**located, **HOLE}))


async def _opens(person) -> None:
    assert person.asked == "holes.1.readings"
    await person.press("ctrl+n")
    assert person.page == "SoakScreen"


async def test_the_time_since_the_mark_is_worked_out_anew_from_the_clock(
    sit, soaking, clock
) -> None:
    async with sit(soaking) as person:
        await _opens(person)
        clock.forward(minutes=25)
        person.app.screen.tick()
        await person.pilot.pause()
        assert person.app.screen.query_one("#elapsed").value == "0:25:00"
        assert "Next reading at 10:00, in 35 min." in person.sees_words()
        clock.forward(hours=2)
        person.app.screen.tick()
        await person.pilot.pause()
        assert person.app.screen.query_one("#elapsed").value == "2:25:00"
        assert "Reading due since 10:00, 1 h 25 min ago." in person.sees_words()
        assert "Never leave the hole open." in person.sees_words()


async def test_reading_now_stamps_the_moment_it_was_pressed_not_the_moment_of_enter(
    sit, soaking, clock
) -> None:
    async with sit(soaking) as person:
        await _opens(person)
        clock.forward(minutes=61)
        await person.press("r")
        clock.forward(minutes=4)
        await person.enters("7 1/8")
        kept = person.session.answers.texts["holes.1.readings"]
        assert kept == "2026-05-28T10:01:00-05:00 left 7 1/8 in"
        assert "10:01 1:01 7.125 in 0.875 0.861" in person.sees_words()
        assert "Drop rate 0.86 in/h" in person.sees_words()


async def test_a_refused_reading_stays_in_its_line(sit, soaking, clock) -> None:
    async with sit(soaking) as person:
        await _opens(person)
        clock.forward(hours=1)
        await person.press("r")
        await person.enters("9 in")
        assert "the water is higher than before" in person.sees_words()
        assert person.app.focused.value == "9 in"
        assert "holes.1.readings" not in person.session.answers.texts
        await person.press("escape")
        assert person.page == "SoakScreen"


async def test_readings_are_refilled_added_between_corrected_and_struck(
    sit, soaking, clock
) -> None:
    async with sit(soaking) as person:
        await _opens(person)
        clock.forward(hours=2)
        await person.press("r")
        await person.enters("6 3/8")
        await person.press("a")
        await person.enters("10:00 left 7 1/8")
        clock.forward(minutes=1)
        await person.press("f")
        await person.press("enter")
        await person.press("home")
        await person.press("enter")
        await person.press("end")
        await person.press(*["backspace"] * len("1/8 in"))
        await person.enters("in")
        await person.press("x")
        assert person.session.answers.texts["holes.1.readings"].splitlines() == [
            "struck 2026-05-28T10:00:00-05:00 left 7 in",
            "2026-05-28T11:00:00-05:00 left 6 3/8 in",
            "2026-05-28T11:01:00-05:00 refilled to 8 in",
        ]
        assert "struck 10:00" in person.sees_words()
        await person.press("x")
        assert "struck" not in person.session.answers.texts["holes.1.readings"]


async def test_the_readings_of_the_page_are_those_of_plain_lines(
    sit, soaking, clock, session_of
) -> None:
    async with sit(soaking) as person:
        await _opens(person)
        clock.forward(hours=1)
        await person.press("r")
        await person.enters("7 in")
        by_page = dict(person.session.answers.texts)
        plain = session_of(person.session.answers.without("holes.1.readings"))
        plain.jump("holes.1.readings")
        plain.offer(plain.step, "10:00 left 7")
        assert plain.answers.texts == by_page


async def test_the_bell_rings_once_for_each_reading_that_is_due(
    sit, soaking, clock, monkeypatch
) -> None:
    async with sit(soaking) as person:
        await _opens(person)
        rung = []
        monkeypatch.setattr(person.app, "bell", lambda: rung.append(clock.now))
        clock.forward(hours=1)
        person.app.screen.tick()
        person.app.screen.tick()
        assert len(rung) == 1
        await person.press("b")
        await person.press("r")
        await person.enters("7 in")
        clock.forward(hours=2)
        person.app.screen.tick()
        assert len(rung) == 1


async def test_a_due_reading_is_told_in_the_page_and_lies_over_nothing(sit, soaking, clock) -> None:
    async with sit(soaking) as person:
        await _opens(person)
        clock.forward(hours=1)
        person.app.screen.tick()
        await person.pilot.pause()
        assert person.app.screen.query_one("#due").has_class("now")
        assert "Reading due now (10:00)." in person.sees_words()
        await person.press("escape")
        await person.goes_to("garden_name")
        assert "SOAK TEST, test hole 1: Reading due now (10:00)." in person.sees_words()
        assert not person.told


async def test_the_times_of_another_zone_are_shown_by_this_computers_clock_and_said_so(
    sit, soaking, clock
) -> None:
    clock.now = clock.now.astimezone(dt.timezone(dt.timedelta(hours=2)))
    clock.forward(hours=1)
    async with sit(soaking, size=(100, 30)) as person:
        await _opens(person)
        await person.press("r")
        await person.enters("7 in")
        seen = person.sees_words()
        assert "since the mark at 16:00; now 17:00:00" in seen
        assert "17:00 1:00 7 in" in seen
        assert "Times are this computer's, UTC+2; the file has them as UTC-5." in seen


async def test_the_chart_takes_the_tables_place_by_a_key_and_stands_under_it_where_it_fits(
    sit, soaking, clock
) -> None:
    async with sit(soaking) as person:
        await _opens(person)
        clock.forward(hours=1)
        await person.press("r")
        await person.enters("7 in")
        assert "WATER LEFT" not in person.sees()
        await person.press("c")
        assert "WATER LEFT in the test hole" in person.sees()
        assert "since fill" not in person.sees()
        await person.press("c")
        assert "since fill" in person.sees()
        await person.pilot.resize_terminal(120, 45)
        await person.pilot.pause()
        assert "WATER LEFT" in person.sees() and "since fill" in person.sees()


async def test_the_soaking_before_the_test_is_timed_with_one_key(
    sit, write, located, clock
) -> None:
    path = write("garden.yaml", {**located, "holes.1.hole_depth": "15 in"})
    async with sit(str(path)) as person:
        await person.goes_to("holes.1.hole_depth")
        await person.press("f3")
        assert person.page == "SoakScreen"
        assert "fill the hole with water for the first soaking" in person.sees_words()
        for minutes in (30, 1, 40, 1):
            await person.press("w")
            clock.forward(minutes=minutes)
            person.app.screen.tick()
            await person.pilot.pause()
        assert "fill to the mark and note the time" in person.sees_words()
        texts = person.session.answers.texts
        ends = ("first_fill_start", "first_fill_empty", "second_fill_start", "second_fill_empty")
        fills = [texts[f"holes.1.{end}"] for end in ends]
        assert [text[11:16] for text in fills] == ["09:00", "09:30", "09:31", "10:11"]
        await person.press("s")
        assert texts.keys() < person.session.answers.texts.keys()


async def test_one_key_goes_on_to_the_next_hole_with_its_own_readings(
    sit, write, located, clock
) -> None:
    second = {a.replace("holes.1.", "holes.2."): t for a, t in HOLE.items()}
    more = {"holes.1.another_hole": "yes"}
    path = write("garden.yaml", {**located, **HOLE, **more, **second})
    async with sit(str(path)) as person:
        await person.goes_to("holes.1.readings")
        await person.press("f3")
        assert "H goes on to: test hole 2: reading in 1 h 00 min." in person.sees_words()
        await person.press("h")
        assert "Soak test: test hole 2" in person.sees()
        clock.forward(hours=1)
        await person.press("r")
        await person.enters("6 in")
        await person.press("h")
        assert "Soak test: test hole 1" in person.sees()
        assert "holes.1.readings" not in person.session.answers.texts
        assert person.session.answers.texts["holes.2.readings"].endswith("left 6 in")


async def test_a_clock_set_back_is_said_in_words_and_nothing_is_lost(sit, soaking, clock) -> None:
    async with sit(soaking) as person:
        await _opens(person)
        clock.forward(hours=-3)
        person.app.screen.tick()
        await person.pilot.pause()
        assert "set the clock right" in person.sees_words()
        assert "The mark was at 09:00, but it is 06:00 now." in person.sees_words()
        assert person.app.screen.query_one("#elapsed").value == "0:00:00"


async def test_the_test_is_started_with_one_key_where_it_has_no_start_yet(
    sit, write, located, clock
) -> None:
    texts = {a: t for a, t in HOLE.items() if a != "holes.1.test_start"}
    path = write("garden.yaml", {**located, **texts})
    async with sit(str(path)) as person:
        await person.goes_to("holes.1.readings")
        await person.press("ctrl+n")
        assert "The timed test has not begun." in person.sees_words()
        await person.press("s")
        assert person.session.answers.texts["holes.1.test_start"] == "2026-05-28T09:00:00-05:00"
        clock.forward(hours=1)
        await person.press("r")
        await person.enters("7 in")
        await person.press("escape")
        assert "2026-05-28T10:00:00-05:00 left 7 in" in person.sees()


async def test_whoever_comes_back_to_a_running_test_comes_back_to_its_readings(
    sit, soaking, clock
) -> None:
    async with sit(soaking) as person:
        await _opens(person)
        clock.forward(hours=1)
        await person.press("r")
        await person.enters("7 in")
    clock.forward(hours=12)
    async with sit(soaking) as person:
        await _opens(person)
        assert "Reading due since 10:45" in person.sees_words()
        assert person.app.screen.query_one("#elapsed").value == "13:00:00"


async def test_the_page_works_in_a_window_of_sixty_by_twenty(sit, soaking, clock) -> None:
    async with sit(soaking, size=(60, 20)) as person:
        await _opens(person)
        clock.forward(hours=1)
        await person.press("r")
        await person.enters("7 in")
        seen = person.sees_words()
        assert "CAUTION" in seen and "10:00" in seen and "Reading now" in seen
