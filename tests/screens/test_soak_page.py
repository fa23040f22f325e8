"""The page that times a soak test, with a clock moved by hand."""

from __future__ import annotations

import datetime as dt
from collections import Counter
from contextlib import asynccontextmanager
from pathlib import Path

import pytest
from textual._styles_cache import StylesCache

from interview.garden import gate, soak_due
from interview.garden.soak import results
from interview.screens import offers, soak_watch
from interview.screens.desktop import Desktop
from interview.screens.frame import KeyLine
from interview.screens.parts import Words
from interview.screens.reminding import RemindingApp
from interview.screens.soak_page import SoakPage

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


def bar(person) -> str:
    """Return the words at the ends of the bar, as they stand on the screen."""
    said = person.app.screen.query_one("#wait")
    line = person.sees().splitlines()[said.region.y][said.region.x : said.region.right]
    assert all(word in line for word in said.text.split()), line
    return said.text


def told(person) -> str:
    """Return all that the page says, part by part: what stands beside it breaks no line."""
    parts = [part for part in person.app.screen.query(Words) if part.display]
    return " ".join(" ".join(str(part.render()).split()) for part in parts)


async def _opens(person) -> None:
    assert person.asked == "holes.1.readings"
    assert person.page == "SoakScreen"


@pytest.fixture
def timing(sit, soaking):
    """Return an opener of that garden at the page that times its test."""

    @asynccontextmanager
    async def opens(**how):
        async with sit(soaking, **how) as person:
            await _opens(person)
            yield person

    return opens


async def _reads(person, clock, water: str, **later: int) -> None:
    """Take a reading so much later."""
    clock.forward(**later)
    await person.press("r")
    await person.enters(water)


async def _asks(person) -> None:
    await person.press("escape")
    assert (person.page, person.asked) == ("QuestionScreen", "holes.1.readings")


async def test_the_time_since_the_mark_is_worked_out_anew_from_the_clock(timing, clock) -> None:
    async with timing() as person:
        clock.forward(minutes=25)
        person.app.screen.tick()
        await person.rests()
        assert person.app.screen.query_one("#elapsed").value == "0:25:00"
        assert "next 10:00 35 min" in bar(person)
        assert "○ 10:00 1:00 due" in person.sees_words()
        clock.forward(hours=2)
        person.app.screen.tick()
        await person.rests()
        assert person.app.screen.query_one("#elapsed").value == "2:25:00"
        assert bar(person) == "due 10:00 1 h 25 min ago"
        assert person.sees_words().count("○ READING DUE NOW") == 1
        assert "Never leave the hole open." in person.sees_words()


async def test_a_second_that_changes_figures_alone_lays_nothing_out_anew(timing, clock) -> None:
    async with timing() as person:
        clock.forward(minutes=25)
        person.app.screen.tick()
        await person.rests()
        page = person.app.screen
        clock.forward(seconds=1)
        page.tick()
        assert not [part for part in page.walk_children() if part._layout_required]
        await person.rests()
        assert page.query_one("#elapsed").value == "0:25:01"
        clock.forward(hours=2)
        page.tick()
        assert [part for part in page.walk_children() if part._layout_required]


async def test_the_page_has_one_clock(sit, soaking, monkeypatch) -> None:
    every, set_interval = list[float](), SoakPage.set_interval

    def noting(page, seconds, *how, **more):
        every.append(seconds)
        return set_interval(page, seconds, *how, **more)

    monkeypatch.setattr(SoakPage, "set_interval", noting)
    async with sit(soaking) as person:
        await _opens(person)
    assert every.count(1.0) == 1


async def test_a_second_looks_at_each_hole_once_and_measures_nothing_anew(
    sit, write, located, clock, monkeypatch
) -> None:
    second = {a.replace("holes.1.", "holes.2."): t for a, t in HOLE.items()}
    more = {"holes.1.another_hole": "yes"}
    garden = str(write("garden.yaml", {**located, **HOLE, **more, **second}))
    looked: list[str] = []
    measured: list[int] = []
    run, rates = soak_due.soak_run, results.soak_test

    def looks(view, now):
        looked.append(view.scope[1])
        return run(view, now)

    def measures(*args, **more):
        measured.append(1)
        return rates(*args, **more)

    async with sit(garden) as person:
        await _opens(person)
        await _reads(person, clock, "7 in", hours=1)
        await person.settles()
        for module in (soak_due, soak_watch):
            monkeypatch.setattr(module, "soak_run", looks)
        monkeypatch.setattr(results, "soak_test", measures)
        for ticks in (1, 2, 3):
            clock.forward(seconds=1)
            person.app.screen.tick()
            assert looked == [1, 2] * ticks
        assert measured == []
        assert person.app.screen.query_one("#elapsed").value == "1:00:03"
        await _reads(person, clock, "6 in", hours=1)
        assert len(measured) >= 1


async def test_a_second_does_not_look_anew_at_what_shuts_a_hole_but_a_day_and_an_answer_do(
    timing, clock, monkeypatch
) -> None:
    looked: list[str] = []
    bars = gate.bars

    def looks(step, answers, today):
        looked.append(step.address)
        return bars(step, answers, today)

    async with timing() as person:
        monkeypatch.setattr(gate, "bars", looks)
        clock.forward(seconds=1)
        person.app.screen.tick()
        assert looked == []
        clock.forward(days=1)
        person.app.screen.tick()
        assert "holes.1.readings" in looked
        looked.clear()
        offers.offer(person.session, "mark_distance", "30 ft")
        person.app.screen.tick()
        assert "holes.1.readings" in looked


async def test_reading_now_stamps_the_moment_it_was_pressed_not_the_moment_of_enter(
    timing, clock
) -> None:
    async with timing() as person:
        clock.forward(minutes=61)
        await person.press("r")
        clock.forward(minutes=4)
        await person.enters("7 1/8")
        kept = person.session.answers.texts["holes.1.readings"]
        assert kept == "2026-05-28T10:01:00-05:00 left 7 1/8 in"
        assert "10:01 1:01 7.125 in 0.875 0.861" in person.sees_words()
        assert "Drop rate 0.86 in/h" in person.sees_words()


async def test_a_refused_reading_stays_in_its_line(timing, clock) -> None:
    async with timing() as person:
        await _reads(person, clock, "9 in", hours=1)
        assert "the water is higher than before" in told(person)
        wrong = person.app.theme_variables["stop"].upper()
        assert person.app.focused.styles.border_left[1].hex == wrong
        assert person.app.focused.value == "9 in"
        assert "holes.1.readings" not in person.session.answers.texts
        await person.press("escape")
        assert person.page == "SoakScreen"


async def test_readings_are_refilled_added_between_corrected_and_struck(timing, clock) -> None:
    async with timing() as person:
        await _reads(person, clock, "6 3/8", hours=2)
        await person.press("a")
        await person.enters("10:00 left 7 1/8")
        clock.forward(minutes=1)
        await person.press("f")
        await person.press("enter")
        await person.press("ctrl+home")
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


async def test_strike_out_takes_the_reading_just_taken_until_another_is_marked(
    timing, sit, soaking, clock
) -> None:
    async with sit(soaking) as person:

        def struck() -> list[bool]:
            kept = person.session.answers.texts["holes.1.readings"].splitlines()
            return [line.startswith("struck") for line in kept]

        await _opens(person)
        await _reads(person, clock, "7 in", hours=1)
        await _reads(person, clock, "6 in", hours=1)
        await _reads(person, clock, "5 in", hours=1)
        await person.press("x")
        assert struck() == [False, False, True]
        await person.press("x", "a")
        await person.enters("10:30 left 6 1/2")
        await person.press("x")
        assert struck() == [False, True, False, False]
        await person.press("x", "up", "x")
        assert struck() == [True, False, False, False]
        await person.press("x")
    async with timing() as person:
        await person.pilot.resize_terminal(60, 20)
        await person.press("x")
        assert struck() == [False, False, False, True]


@pytest.mark.parametrize("written", ["8:05", "20:05", "8:05 pm"])
async def test_a_time_of_the_evening_is_taken_as_a_clock_on_the_wall_shows_it(
    timing, clock, written
) -> None:
    async with timing() as person:
        await _reads(person, clock, "7 in", hours=10)
        clock.forward(hours=1, minutes=30)
        await person.press("a")
        await person.enters(f"{written} left 6 in")
        kept = person.session.answers.texts["holes.1.readings"].splitlines()
        assert kept[-1] == "2026-05-28T20:05:00-05:00 left 6 in"


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
async def test_a_reading_that_is_late_is_said_whole(timing, clock, size) -> None:
    async with timing(size=size) as person:
        clock.forward(hours=26, minutes=12)
        person.app.screen.tick()
        await person.rests()
        assert bar(person) == "due Thu 28 May 10:00 25 h 12 min ago"
        place = person.app.screen.query_one("#do_now").region
        lines = person.sees().splitlines()[place.y : place.bottom]
        said = " ".join(" ".join(one[: place.right] for one in lines).split())
        assert said == person.app.screen._run.do_now
        assert said.endswith("late is as good, because the true time is used.")


async def test_the_readings_of_the_page_are_those_of_plain_lines(timing, clock, session_of) -> None:
    async with timing() as person:
        await _reads(person, clock, "7 in", hours=1)
        by_page = dict(person.session.answers.texts)
        plain = session_of(person.session.answers.without("holes.1.readings"))
        plain.jump("holes.1.readings")
        plain.offer(plain.step, "10:00 left 7")
        assert plain.answers.texts == by_page


async def test_the_bell_rings_once_for_each_reading_that_is_due(timing, clock, monkeypatch) -> None:
    async with timing() as person:
        rung = []
        monkeypatch.setattr(person.app, "bell", lambda: rung.append(clock.now))
        clock.forward(hours=1)
        person.app.screen.tick()
        person.app.screen.tick()
        assert len(rung) == 1
        await person.press("b", "1", "escape")
        await person.press("r")
        await person.enters("7 in")
        clock.forward(hours=2)
        person.app.screen.tick()
        assert len(rung) == 1


@pytest.fixture
def written(monkeypatch):
    """What is written to the terminal past the screen."""
    found: list[str] = []
    monkeypatch.setattr(RemindingApp, "write", lambda self, codes: found.append(codes))
    return found


async def test_a_due_reading_is_called_by_bell_title_and_desktop_notification(
    sit, soaking, clock, written, monkeypatch
) -> None:
    async with sit(soaking) as person:
        rung = []
        monkeypatch.setattr(person.app, "bell", lambda: rung.append(clock.now))
        person.app.desktop = Desktop.OSC_777
        await _opens(person)
        clock.forward(minutes=40)
        person.app.screen.tick()
        assert "next reading in 20 min · Rain garden interview" in written[-1]
        assert not rung
        clock.forward(minutes=20)
        person.app.screen.tick()
        told = [one for one in written if "777" in one]
        assert told == ["\x1b]777;notify;Soak test;test hole 1: Read the water.\x1b\\"]
        assert "READING DUE · Rain garden interview" in written[-1]
        assert len(rung) == 1


async def test_a_due_reading_is_called_on_every_page_and_shown_where_no_line_says_it(
    sit, soaking, clock, monkeypatch
) -> None:
    async with sit(soaking) as person:
        await _asks(person)
        await person.press("ctrl+l")
        rung = []
        monkeypatch.setattr(person.app, "bell", lambda: rung.append(clock.now))
        clock.forward(hours=1)
        person.app.remind()
        person.app.remind()
        await person.rests()
        assert len(rung) == 1
        assert person.told == "test hole 1: Read the water."


async def test_each_way_of_telling_is_switched_and_remembered(
    timing, sit, soaking, clock, written, monkeypatch
) -> None:
    async with timing() as person:
        await person.press("b")
        assert "1 on the bell" in person.sees_words()
        assert "(none here)" in person.sees_words()
        await person.press("2")
        assert "2 off a notice on this screen" in person.sees_words()
        await person.press("0")
        assert "0 all on" in person.sees_words()
        await person.press("escape")
        assert person.page == "SoakScreen"
    async with sit(soaking) as person:
        assert not person.app.reminders.any_on
        rung = []
        monkeypatch.setattr(person.app, "bell", lambda: rung.append(clock.now))
        person.app.desktop = Desktop.OSC_9
        await _opens(person)
        written.clear()
        clock.forward(hours=1)
        person.app.screen.tick()
        await person.rests()
        assert not rung and not any("DUE" in one or "]9;" in one for one in written)
        assert "○ READING DUE NOW" in person.sees_words()
        assert not person.app.screen.query_one("#due").has_class("now")
        await person.press("escape")
        assert "SOAK TEST" not in person.sees()


async def test_the_look_at_a_filling_is_called_too(sit, write, located, clock, monkeypatch) -> None:
    path = write("garden.yaml", {**located, "holes.1.hole_depth": "15 in"})
    async with sit(str(path)) as person:
        await person.goes_to("holes.1.hole_depth")
        await person.press("f3")
        await person.press("w")
        rung = []
        monkeypatch.setattr(person.app, "bell", lambda: rung.append(clock.now))
        for minutes, times in ((9, 0), (2, 1), (1, 1), (19, 2)):
            clock.forward(minutes=minutes)
            person.app.screen.tick()
            assert len(rung) == times, minutes


async def test_a_due_reading_is_told_in_the_page_and_lies_over_nothing(timing, clock) -> None:
    async with timing() as person:
        clock.forward(hours=1)
        person.app.screen.tick()
        await person.rests()
        assert person.app.screen.query_one("#due").has_class("now")
        assert "○ READING DUE NOW" in person.sees_words()
        assert bar(person) == "due 10:00 now"
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
        assert person.says("since") == "since the start at 16:00 now 17:00"
        assert "17:00 1:00 7 in" in seen
        assert person.says("told") == (
            "Times are this computer's, UTC+2; the file has them as UTC-5."
        )


async def test_the_chart_stands_beside_the_table_and_takes_the_page_by_a_key(timing, clock) -> None:
    async with timing() as person:
        await _reads(person, clock, "7 in", hours=1)
        page = person.app.screen
        assert page.query_one("#chart").display and "drop" in person.sees()
        assert "WATER LEFT" not in person.sees()
        await person.press("p")
        assert "WATER LEFT in the test hole" in person.sees()
        assert "drop " not in person.sees()
        await person.press("p")
        assert "after" in person.sees() and "WATER LEFT" not in person.sees()
        await person.pilot.resize_terminal(60, 20)
        await person.rests()
        assert not page.query_one("#chart").display and "after" in person.sees()
        await person.press("p")
        assert "WATER LEFT" in person.sees() and "after" not in person.sees()


async def test_the_soaking_before_the_test_is_timed_with_one_key(
    sit, write, located, clock
) -> None:
    path = write("garden.yaml", {**located, "holes.1.hole_depth": "15 in"})
    async with sit(str(path)) as person:
        await person.goes_to("holes.1.hole_depth")
        await person.press("f3")
        assert person.page == "SoakScreen"
        assert "fill the hole with water to soak the soil" in person.says("do_now")
        for minutes in (30, 1, 40, 1):
            await person.press("w")
            clock.forward(minutes=minutes)
            person.app.screen.tick()
            await person.rests()
        assert "to the fill level and note the time" in person.says("do_now")
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
        await _opens(person)
        assert person.says("others") == "H goes on to: test hole 2: reading in 1 h 00 min."
        await person.press("h")
        assert "Soak test: test hole 2" in person.sees()
        await _reads(person, clock, "6 in", hours=1)
        await person.press("h")
        assert "Soak test: test hole 1" in person.sees()
        assert "holes.1.readings" not in person.session.answers.texts
        assert person.session.answers.texts["holes.2.readings"].endswith("left 6 in")


async def test_a_clock_set_back_is_said_in_words_and_nothing_is_lost(timing, clock) -> None:
    async with timing() as person:
        clock.forward(hours=-3)
        person.app.screen.tick()
        await person.rests()
        assert "correct it" in person.sees_words()
        assert person.says("since") == "The start was at 09:00, but it is 06:00 now."
        assert person.app.screen.query_one("#elapsed").value == "0:00:00"


async def test_the_test_is_started_with_one_key_where_it_has_no_start_yet(
    sit, write, located, clock
) -> None:
    texts = {a: t for a, t in HOLE.items() if a != "holes.1.test_start"}
    path = write("garden.yaml", {**located, **texts})
    async with sit(str(path)) as person:
        await person.goes_to("holes.1.readings")
        await person.press("ctrl+n")
        assert person.says("since") == "The timed test has not begun."
        await person.press("s")
        assert person.session.answers.texts["holes.1.test_start"] == "2026-05-28T09:00:00-05:00"
        await _reads(person, clock, "7 in", hours=1)
        await person.press("escape")
        assert "Thu 28 May, 10:00 left 7 in" in person.sees()


async def test_times_noted_while_the_clock_was_ahead_are_set_back_by_one_key(timing, clock) -> None:
    """The clock was an hour ahead until it was set right after the first reading."""
    async with timing() as person:
        await _reads(person, clock, "7 1/8", hours=1)
        clock.forward(minutes=30 - 60)
        person.app.screen.tick()
        await person.rests()
        assert "reading 1 is noted for later, up to 10:00. Nothing is lost" in person.sees_words()
        await person.press("x", "x")
        assert "struck" not in person.sees_words()
        await person.press("r")
        await person.enters("6 3/4")
        assert "How far ahead was the clock? Enter alone: 1 h." in person.sees_words()
        assert "then this reading is kept" in person.sees_words()
        await person.press("enter")
        texts = person.session.answers.texts
        assert texts["holes.1.test_start"] == "2026-05-28T08:00:00-05:00"
        assert texts["holes.1.readings"].splitlines() == [
            "2026-05-28T09:00:00-05:00 left 7 1/8 in",
            "2026-05-28T09:30:00-05:00 left 6 3/4 in",
        ]


async def test_a_reading_that_waits_for_a_shift_is_not_lost_when_the_shift_is_left(
    timing, sit, soaking, clock
) -> None:
    async with timing() as person:
        await _reads(person, clock, "7 1/8", hours=1)
        await _reads(person, clock, "6 3/4", minutes=-30)
        await person.enters("nonsense")
        assert "Write how long in digits" in person.sees_words()
        await person.press("escape")
        assert person.app.focused.value == "6 3/4"
        await person.press("escape")
        assert person.session.answers.texts["holes.1.test_start"] == "2026-05-28T09:00:00-05:00"
    async with sit(soaking) as person:
        assert person.page == "SoakScreen" and "move the noted times back" in person.sees_words()


async def test_the_depth_at_the_mark_is_asked_where_it_is_needed(
    sit, write, located, clock
) -> None:
    lacks = ("holes.1.test_start", "holes.1.water_at_mark")
    path = write("garden.yaml", {**located, **{a: t for a, t in HOLE.items() if a not in lacks}})
    async with sit(str(path)) as person:
        await person.goes_to("holes.1.readings")
        await person.press("f3")
        await person.press("s")
        assert "How deep is the water at the fill level?" in person.sees_words()
        await person.press("escape")
        assert told(person).count("Say how deep the water is at the fill level") == 1
        await _reads(person, clock, "20 in", hours=1)
        assert "cannot be deeper than the hole" in person.sees_words()
        await person.press(*["backspace"] * 5)
        await person.enters("8 in")
        clock.forward(minutes=3)
        assert "Reading at 10:00:00. How deep is the water now?" in person.sees_words()
        await person.enters("7 in")
        assert person.session.answers.texts["holes.1.readings"] == (
            "2026-05-28T10:00:00-05:00 left 7 in"
        )


async def test_escape_closes_the_chart_before_the_page(timing, clock) -> None:
    async with timing() as person:
        await _reads(person, clock, "7 in", hours=1)
        await person.press("p", "escape")
        assert person.page == "SoakScreen" and "WATER LEFT" not in person.sees()
        await person.press("escape")
        assert person.page == "QuestionScreen"


async def test_the_meaning_of_the_result_is_one_key_away(sit, soaking, clock) -> None:
    async with sit(soaking, size=(100, 45)) as person:
        await _opens(person)
        await _reads(person, clock, "7 in", hours=1)
        await person.press("m")
        seen = person.sees_words()
        for said in ("walls all round", "(the corrected rate)", "Check 2", "Too few readings"):
            assert said in seen, said
        await person.press("escape")
        assert person.page == "SoakScreen"


@pytest.mark.parametrize("size", [(80, 24), (100, 30), (160, 45), (60, 20)])
async def test_the_keys_at_the_foot_fit_and_next_hole_is_there_only_where_there_is_one(
    sit, write, located, clock, size
) -> None:
    path = write("garden.yaml", {**located, **HOLE})
    async with sit(str(path), size=size) as person:
        await _opens(person)
        clock.forward(hours=1)
        await person.press("r")
        foot = " ".join(person.sees().splitlines()[-1].split())
        assert foot == "Enter keep Esc close the line F1 help ^Q quit"
        await person.enters("7 in")
        foot = person.sees().splitlines()[-1].strip()
        assert foot.startswith("Enter correct  Esc back  R reading")
        assert foot.endswith("F1 help  ^Q quit") and len(foot) <= size[0] - 1
        assert "next hole" not in [one.word for one in person.app.screen.query_one(KeyLine).offers]
    second = {a.replace("holes.1.", "holes.2."): t for a, t in HOLE.items()}
    path = write("two.yaml", {**located, **HOLE, "holes.1.another_hole": "yes", **second})
    async with sit(str(path), size=size) as person:
        await _opens(person)
        await person.clicks("next hole")
        assert "test hole 2" in person.sees().splitlines()[0]


async def test_a_reading_typed_on_the_question_page_is_kept_where_it_belongs(
    sit, soaking, clock
) -> None:
    async with sit(soaking) as person:
        await _asks(person)
        clock.forward(hours=3)
        await person.enters("11:00 left 6 1/4 in")
        await person.enters("10:00, left 7")
        assert "Cover the hole" in person.sees_words() or "Read the water" in person.sees_words()
        await person.enters("4 in")
        assert "Write the time first, such as 10:30, left 4 in." in person.says("heard")
        assert person.app.focused.value == "4 in"
        assert person.session.answers.texts["holes.1.readings"].splitlines() == [
            "2026-05-28T10:00:00-05:00 left 7 in",
            "2026-05-28T11:00:00-05:00 left 6 1/4 in",
        ]
        await person.press(*["backspace"] * 4)
        await person.press("enter")
        assert person.page == "SoakScreen"


async def test_a_reading_typed_before_the_test_has_a_start_asks_for_it_and_stays(
    sit, write, located, clock
) -> None:
    soaked = {key: text for key, text in HOLE.items() if "test_start" not in key}
    async with sit(str(write("early.yaml", {**located, **soaked}))) as person:
        await person.goes_to("holes.1.readings")
        assert "It leads you through both fillings" in told(person)
        await person.enters("8 am 7 in")
        assert "Say first when that was." in person.says("heard")
        assert person.asked == "holes.1.test_start"
        await person.enters("7 am")
        while person.asked != "holes.1.readings":
            await person.press("ctrl+t")
        assert person.app.focused.value == "8 am 7 in"
        await person.press("enter")
        assert "08:00:00-05:00 left 7 in" in person.session.answers.texts["holes.1.readings"]


async def test_a_reading_typed_before_the_depth_at_the_mark_is_known_asks_for_that(
    sit, write, located, clock
) -> None:
    texts = {key: text for key, text in HOLE.items() if "water_at_mark" not in key}
    async with sit(str(write("early.yaml", {**located, **texts}))) as person:
        await person.goes_to("holes.1.readings")
        clock.forward(minutes=30)
        await person.enters("now left 7 in")
        assert "how deep the water is at the fill level" in person.says("heard")
        assert person.asked == "holes.1.water_at_mark"


async def test_whoever_soaks_the_hole_only_once_goes_on_to_the_test(
    sit, write, located, clock
) -> None:
    once = {
        "holes.1.hole_depth": "15 in",
        "holes.1.first_fill_start": "2026-05-28 05:00",
        "holes.1.first_fill_empty": "2026-05-28 06:00",
    }
    async with sit(str(write("once.yaml", {**located, **once}))) as person:
        await person.goes_to("holes.1.second_fill_start")
        await person.press("ctrl+t")
        assert person.asked == "holes.1.water_at_mark"


async def test_enter_goes_on_from_the_readings_once_there_are_enough(sit, soaking, clock) -> None:
    async with sit(soaking) as person:
        await _asks(person)
        clock.forward(minutes=20)
        await person.enters("now left 4 in")
        assert "one or two such readings are enough" in person.sees_words()
        await person.press("enter")
        assert person.asked == "holes.1.hole_left"


async def test_several_readings_pasted_are_kept_up_to_the_first_that_cannot_be(
    sit, soaking, clock
) -> None:
    async with sit(soaking) as person:
        await _asks(person)
        clock.forward(hours=4)
        await person.pastes("10:00 left 7\n11:00 left 6\n12:00 left 9\n13:00 left 4")
        assert "the water is higher than before" in person.says("heard")
        assert person.app.focused.value == "12:00 left 9"
        assert len(person.session.answers.texts["holes.1.readings"].splitlines()) == 2


async def test_readings_put_off_are_passed_with_enter(sit, soaking, clock) -> None:
    async with sit(soaking) as person:
        await _asks(person)
        await person.enters("don't know")
        assert person.asked == "holes.1.hole_left"
        await person.press("escape")
        assert person.asked == "holes.1.readings"
        await person.press("enter")
        assert person.asked == "holes.1.hole_left"


async def test_whoever_comes_back_to_a_running_test_comes_back_to_its_readings(
    timing, clock
) -> None:
    async with timing() as person:
        await _reads(person, clock, "7 in", hours=1)
    clock.forward(hours=12)
    async with timing() as person:
        assert bar(person).startswith("due 10:45 ")
        assert person.app.screen.query_one("#elapsed").value == "13:00:00"


async def test_whoever_comes_back_to_a_filling_that_drains_comes_back_to_it(
    sit, write, located, clock
) -> None:
    filled = {"holes.1.hole_depth": "15 in", "holes.1.first_fill_start": "now"}
    path = write("garden.yaml", {**located, **filled})
    clock.forward(minutes=45)
    async with sit(str(path)) as person:
        assert (person.page, person.asked) == ("SoakScreen", "holes.1.first_fill_empty")
        assert "Let it drain; look again at 10:00" in person.sees_words()
        await person.press("escape")
        assert "When was the hole empty again?" in person.sees_words()


async def test_the_page_works_in_a_window_of_sixty_by_twenty(sit, soaking, clock) -> None:
    async with sit(soaking, size=(60, 20)) as person:
        await _opens(person)
        await _reads(person, clock, "7 in", hours=1)
        seen = person.sees_words()
        assert person.says("since") == "since the start at 09:00 now 10:00"
        for said in ("CAUTION", "at 09:00", "10:00 1:00 7 in",
                     "○ 10:45 1:45 due", "R reading", "Esc back"):  # fmt: skip
            assert said in seen, said
        assert bar(person) == "next 10:45 45 min"
        clock.forward(minutes=46)
        await person.press("r")
        seen = person.sees_words()
        for said in ("How deep is the water now?", "READING DUE", "10:00 1:00 7 in", "Enter keep"):
            assert said in seen, said
        await person.enters("9 in")
        assert "the water is higher than before" in told(person)


WORDS = ("caution", "since", "due", "do_now", "verdict", "meaning", "and_then", "told", "others")
SIZES = [(60, 20), (80, 24), (100, 30), (160, 45)]
READINGS = "\n".join(f"{9 + h}:00 left {8 - h / 2} in" for h in range(1, 7))
NOT_DUG = {a: t for a, t in HOLE.items() if a == "holes.1.hole_name"}
SOAKING = {"holes.1.hole_depth": "15 in", "holes.1.first_fill_start": "now"}
STATES = {
    "not dug": (NOT_DUG, {}, "Dig the test hole to where the garden's floor will be"),
    "soaking": (SOAKING, {"minutes": 20}, "Let it drain; look again at 09:30"),
    "timing": (HOLE, {"minutes": 20}, "take the first reading at 10:00"),
    "due": (HOLE, {"minutes": 61}, "○ READING DUE NOW Read the water now."),
    "overdue": (HOLE, {"hours": 30}, "○ READING DUE NOW Read the water as soon as you can"),
    "enough": (HOLE, {"hours": 7}, "so you have enough readings: fill in the hole or cover it"),
    "clock set back": (HOLE, {}, "If the clock is wrong now, correct it"),
}


def shown(person, name: str):
    """Return the part of a widget that is on the screen, and all of it."""
    place = person.app.screen.find_widget(person.app.screen.query_one(f"#{name}"))
    return place.region.intersection(place.clip), place.region


def is_shown(person, name: str) -> bool:
    part = person.app.screen.query_one(f"#{name}")
    return all(one.display for one in part.ancestors_with_self)


@pytest.mark.parametrize("state", STATES)
async def test_in_every_state_and_window_the_page_is_whole_and_says_how_things_stand(
    sit, write, located, clock, state, subtests
) -> None:
    texts, later, said = STATES[state]
    path = str(write("garden.yaml", {**located, **texts}))
    clock.forward(**later)
    async with sit(path) as person:
        if person.page != "SoakScreen":
            await person.goes_to("holes.1.readings")
            await person.press("f3")
        if state == "enough":
            await person.press("a")
            for line in READINGS.splitlines():
                await person.enters(line)
                await person.press("a")
            await person.press("escape")
        if state == "clock set back":
            await _reads(person, clock, "7 in", hours=1)
            clock.forward(hours=-3)
        assert person.page == "SoakScreen"
        for size in SIZES:
            await person.pilot.resize_terminal(*size)
            await person.rests()
            person.app.screen.tick()
            await person.rests()
            with subtests.test(state=state, size=size):
                words = " ".join(person.says(one) for one in WORDS if is_shown(person, one))
                assert said in words
                assert "CAUTION Never leave the hole open" in words
                assert words.count("READING DUE") == (state in ("due", "overdue"))
                parts = [one for one in (*WORDS, "elapsed", "wait") if is_shown(person, one)]
                parts += [one for one in ("hole", "chart", "next") if is_shown(person, one)]
                regions = []
                for name in parts:
                    seen, whole = shown(person, name)
                    cut_small = size[0] < 80 and name in ("meaning", "and_then", "told", "others")
                    assert seen == whole or cut_small, (name, seen, whole)
                    regions.append((name, seen))
                for at, (name, one) in enumerate(regions):
                    for other_name, other in regions[:at]:
                        assert not one.intersection(other).area, (name, other_name)
                both = {"hole", "chart"} & set(parts)
                wide = size[0] >= 80
                assert ("hole" in both) == wide
                # A clock set back is told at such length that it takes the room of the chart.
                charted = state not in ("not dug", "soaking", "clock set back")
                assert ("chart" in both) == (wide and charted) or state == "clock set back"


@pytest.mark.parametrize("size", [(60, 20), (80, 24), (100, 30), (160, 45)])
async def test_a_second_repaints_the_clock_and_the_bar_alone(
    timing, clock, size, monkeypatch
) -> None:
    async with timing(size=size) as person:
        await _reads(person, clock, "7 in", hours=1)
        clock.forward(minutes=5)
        page = person.app.screen
        page.tick()
        person.door.saver.settle(10)
        await person.settles()
        painted: list[str] = []
        sent: list[int] = []
        paint, display = StylesCache.render_line, person.app._display
        owners = {id(one._styles_cache): one.id for one in page.walk_children()}

        def paints(self, *args, **more):
            # Of the rows that need no paint the last strip is kept.
            painted.append(owners.get(id(self), ""))
            return paint(self, *args, **more)

        def displays(screen, update):
            if update is not None:
                sent.append(len(update.render_segments(person.app.console).encode()))
            display(screen, update)

        monkeypatch.setattr(StylesCache, "render_line", paints)
        monkeypatch.setattr(person.app, "_display", displays)
        ticks = 50
        for _ in range(ticks):
            clock.forward(seconds=1)
            page.tick()
            await person.rests()
        rows = Counter(painted)
        assert rows.keys() <= {"elapsed", "wait"}, rows
        # The digit of the seconds each time, that of the tens five times; the bar now and then.
        digits = page.query_one("#elapsed").rows
        assert digits * ticks <= rows["elapsed"] <= digits * (ticks + 5)
        assert rows.get("wait", 0) <= ticks / 2
        assert sum(sent) / ticks <= 1000 and max(sent) <= 2000, sent
        painted.clear()
        clock.forward(minutes=30)
        page.tick()
        await person.rests()
        assert {"elapsed", "wait", "since"} <= set(painted)


async def test_an_old_test_is_reached_from_its_result_and_from_the_plan(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.press("escape")
        assert person.page == "QuestionScreen"
        await person.goes_to("holes.1.hole_counts")
        await person.press("escape")
        assert "F3 shows the readings and their plot." in person.sees()
        await person.press("f3")
        assert person.page == "SoakScreen"
        await person.press("escape", "ctrl+l", "h")
        assert person.page == "SoakScreen"
        await person.press("escape")
        assert person.page == "PlanScreen"


async def test_no_test_is_offered_where_none_has_begun(sit, write) -> None:
    async with sit(str(write("oak.yaml", {"garden_name": "Oak"}))) as person:
        await person.press("ctrl+l", "h")
        assert person.page == "PlanScreen" and "soak test" not in person.sees().splitlines()[-1]


async def test_enter_leads_on_from_the_readings_once_the_timing_page_was_seen(
    sit, sample, clock
) -> None:
    clock.now = clock.now.replace(hour=17, minute=30)
    async with sit(sample("halfway_soak_test.yaml")) as person:
        assert person.page == "SoakScreen"
        await person.press("escape")
        assert person.asked == "holes.1.readings" and "Enter goes on" in person.told
        await person.press("f3")
        await person.press("escape")
        await person.press("enter")
        assert person.page == "QuestionScreen" and person.asked == "holes.1.hole_left"
        # Come back to, it is timed first.
        await person.goes_to("holes.1.readings")
        await person.press("enter")
        assert person.page == "SoakScreen"


async def test_without_a_reading_enter_says_what_is_missing_and_opens_no_page_twice(
    sit, sample, tmp_path
) -> None:
    file = tmp_path / "none.yaml"
    text = Path(sample("halfway_soak_test.yaml")).read_text()
    file.write_text(text[: text.index("      readings:")] + "end_of_answers: true\n")
    async with sit("none.yaml") as person:
        if person.page != "SoakScreen":
            await person.goes_to("holes.1.readings")
            await person.press("enter")
        assert person.page == "SoakScreen"
        await person.press("escape")
        await person.press("enter")
        assert person.page == "QuestionScreen" and "Nothing was written" in person.says("heard")
