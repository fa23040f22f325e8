"""The start page and the mending page."""

from __future__ import annotations

import re
from itertools import pairwise
from pathlib import Path

import pytest

from interview.answers_file import recent
from interview.drawing.words import column_width
from interview.garden import invented
from interview.garden.site.cautions import LOCATE
from interview.screens.banner import Banner
from interview.screens.cards import badge_columns, card
from interview.screens.shelf import shelf, summary
from interview.screens.welcome import INVENTED_WORDS, VISITS
from interview.screens.words import stage_shares


async def test_a_new_garden_needs_only_enter_and_gets_a_free_name(sit, tmp_path: Path) -> None:
    (tmp_path / "rain_garden.yaml").write_text("something: else\n")
    async with sit() as person:
        await person.press("enter")
        await person.answers("Maple corner")
    assert (tmp_path / "rain_garden.yaml").read_text() == "something: else\n"
    assert "Maple corner" in (tmp_path / "rain_garden-2.yaml").read_text()


async def test_gardens_at_hand_are_listed_with_how_far_they_are_and_what_is_due(
    sit, write, tmp_path: Path
) -> None:
    asked = {"lines_requested": "asked", "lines_asked_on": "2026-05-27"}
    write("oak.yaml", {"garden_name": "Oak [b]street", **asked})
    (tmp_path / "notes.yaml").write_text("milk: 2\n")
    async with sit() as person:
        seen = person.sees_words()
        assert "Oak [b]street" in seen
        assert re.search(r"\d+ of \d+ pages", seen)
        assert "pages to a first size." in seen
        assert "notes.yaml" not in seen
        await person.press("enter")
        assert person.page == "QuestionScreen"
        assert person.door.opened.path.name == "oak.yaml"


def test_a_running_soak_test_stands_first_with_the_time_of_its_reading(
    write, located, clock, tmp_path: Path
) -> None:
    start = {
        "holes.1.hole_depth": "15 in",
        "holes.1.water_at_mark": "8 in",
        "holes.1.test_start": "8:45 am",
    }
    write("a.yaml", {"garden_name": "Ash"})
    write("b.yaml", {"garden_name": "Birch", **located, **start})
    first, second = shelf(tmp_path, [], clock.now)
    assert (first.name, first.due) == ("Birch", "Reading due 09:45.")
    assert second.due.endswith("pages to a first size.")


def test_a_garden_used_lately_is_offered_from_another_folder(write, clock, tmp_path: Path) -> None:
    path = write("oak.yaml", {"garden_name": "Oak"})
    other = tmp_path / "elsewhere"
    other.mkdir()
    recent.remember(path)
    recent.remember(tmp_path / "gone.yaml")
    assert [one.path for one in shelf(other, recent.recent(), clock.now)] == [path]


def test_files_that_cannot_be_read_are_listed_as_such(clock, write, tmp_path: Path) -> None:
    path = write("oak.yaml", {"garden_name": "Oak"})
    path.write_text(path.read_text().replace("garden_name:", "garden_name: [", 1))
    [one] = shelf(tmp_path, [], clock.now)
    assert one.faulty and one.how_far == "cannot be read"


async def test_faults_are_listed_by_line_before_anything_is_done(sit, write) -> None:
    path = write("oak.yaml", {"garden_name": "Oak", "units": "us"})
    text = path.read_text().replace("units: us", "unitz: us")
    path.write_text(text)
    async with sit(str(path)) as person:
        assert person.page == "MendScreen"
        seen = person.sees_words()
        assert "The file has not been touched." in seen
        assert "unitz" in seen and "Did you mean units?" in seen and "line " in seen
        heading, lead = (person.app.screen.query_one(name) for name in ("#mending", "#lead"))
        assert heading.content_region.x == lead.content_region.x
        path.write_text(text.replace("unitz", "units"))
        await person.press("l")
        assert person.page == "QuestionScreen"
        assert person.session.answers.texts["units"] == "us"


async def test_one_may_go_on_with_what_can_be_read_or_leave(sit, write) -> None:
    path = write("oak.yaml", {"garden_name": "Oak", "rain_depth": "1 in"})
    text = path.read_text().replace("rain_depth: 1 in", "rain_depth: 99 in")
    path.write_text(text)
    async with sit(str(path)) as person:
        await person.press("escape")
        assert person.page == "WelcomeScreen"
        assert path.read_text() == text
        await person.press("up", "enter")
        assert person.page == "MendScreen"
        await person.press("g")
        await person.goes_to("rain_depth")
        assert "too large" in person.sees_words()
        assert stage_shares(person.session, "start")[0].word == "needs attention"


async def test_a_file_that_cannot_be_read_at_all_is_shown_and_read_again_once_mended(
    sit, write
) -> None:
    path = write("oak.yaml", {"garden_name": "Oak"})
    whole = path.read_text()
    path.write_text(whole.replace("garden_name: Oak", "garden_name: Oak\n  garden_name: Elm"))
    async with sit() as person:
        await person.press("up", "enter")
        assert person.page == "MendScreen"
        assert "is here twice" in person.sees_words()
        await person.press("g")
        assert person.page == "MendScreen"
        path.write_text(whole)
        await person.press("l")
        assert person.page == "QuestionScreen"


async def test_a_garden_open_elsewhere_is_refused_in_words(sit, write) -> None:
    path = write("oak.yaml", {"garden_name": "Oak"})
    async with sit(str(path)), sit() as person:
        await person.press("enter")
        assert person.page == "WelcomeScreen"
        # Its color alone would not tell it from what stands around it.
        assert person.says("trouble").startswith("■ NOT OPENED: ")
        assert "is already open in another session" in person.sees_words()


async def test_a_lock_another_computer_left_is_asked_about(sit, write) -> None:
    path = write("oak.yaml", {"garden_name": "Oak"})
    lock = path.with_name(".oak.yaml.lock")
    note = "pid: 4\nhost: somewhere-else\nuser: ann\nsince: noon\n"
    lock.write_text(note)
    async with sit() as person:
        await person.press("enter")
        assert person.page == "Ask"
        seen = person.sees_words()
        assert "somewhere-else since noon" in seen and ".oak.yaml.lock" in seen
        await person.press("enter")
        assert person.page == "WelcomeScreen" and lock.read_text() == note
        await person.press("enter")
        await person.press("y")
        assert person.page == "QuestionScreen"
        assert person.session.answers.texts["garden_name"] == "Oak"
        assert "somewhere-else" not in lock.read_text()
    assert not lock.exists()


async def test_the_file_is_named_at_the_start_on_every_question_and_whole_under_f1(
    sit, tmp_path: Path
) -> None:
    (tmp_path / "rain_garden.yaml").write_text("something: else\n")
    async with sit() as person:
        assert "Begin a new garden (kept in rain_garden-2.yaml)" in person.sees_words()
        await person.press("f1")
        assert "".join(str(tmp_path / "rain_garden-2.yaml").split()) in "".join(
            person.says("where").split()
        )
        await person.press("escape")
        await person.press("enter")
        top = person.sees().splitlines()[0].rstrip()
        assert top.endswith("rain_garden-2.yaml    ✓ No change")
        await person.press("f1")
        assert str(tmp_path / "rain_garden-2.yaml") in person.says("where")


@pytest.mark.parametrize(("width", "named"), [(60, False), (80, False), (100, True)])
async def test_a_long_name_of_a_file_is_cut_in_its_middle_and_gives_way_first(
    sit, width: int, named: bool
) -> None:
    name = "the_rain_garden_of_aunt_rosemary.yaml"
    async with sit(name, size=(width, 24)) as person:
        await person.enters("Aunt Rosemary's corner by the old maple")
        await person.settles()
        top = person.sees().splitlines()[0]
        assert ("the_rain_g…mary.yaml" in top) is named
        assert "Start · 2 of 7" in top


SIZES = [(60, 20), (80, 24), (100, 30), (160, 45)]


def rows_of(person) -> list[str]:
    return person.sees().splitlines()


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_a_newcomer_sees_the_picture_the_caution_and_two_ways_on(sit, size) -> None:
    async with sit(size=size) as person:
        await person.settles()
        rows, seen = rows_of(person), person.sees_words()
        banner = person.app.screen.query_one(Banner)
        assert len(banner.text.splitlines()) == banner.size.height
        # A flower, and the bank of soil in blocks.
        assert "✿" in banner.text and set("▄▟█") & set(banner.text)
        assert banner.text.splitlines()[0].strip() in rows[banner.region.y]
        assert f"CAUTION: {LOCATE}" in seen
        assert "+ Begin a new garden (kept in rain_garden.yaml)" in seen
        assert f"» Try an invented garden {INVENTED_WORDS}" in seen
        assert [row.strip()[:3] for row in rows if "▸" in row] == ["▸+ "]
        parts = [part.region for part in person.app.screen.query("#banner, #lead, #caution")]
        parts.append(person.app.screen.query_one("#gardens").region)
        assert all(one.bottom <= other.y for one, other in pairwise(parts))


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_a_card_tells_the_whole_of_its_garden_in_any_window(
    sit, sample, clock, size, tmp_path: Path
) -> None:
    sample("finished_us.yaml")
    for name in ("own_plants.csv", "usual_us.yaml", "finished_metric.yaml"):
        (tmp_path / name).unlink()
    clock.forward(hours=9)
    async with sit(size=size) as person:
        await person.settles()
        gardens = person.app.screen._gardens
        # What is due stands first, what cannot be read last.
        assert gardens[0].path.name == "halfway_soak_test.yaml"
        assert all(one.faulty for one in gardens[3:])
        width = person.app.screen._columns
        for one in gardens:
            told = str(card(one, width, badge_columns(gardens)))
            assert all(column_width(row) <= width for row in told.splitlines())
            words = " ".join(told.split())
            assert one.due in words and one.name in words and one.path.name in words
            assert f"{one.badge}".strip() in words and one.how_far in words
        seen = person.sees_words()
        first = gardens[0]
        assert all(said in seen for said in (first.name, first.due, first.how_far, "○ DUE NOW"))
        assert f"{first.name}: {first.due}" in person.told
        assert next(row for row in rows_of(person) if "▸" in row).startswith(" ▸Clay street")


@pytest.mark.parametrize(
    ("name", "hours", "badge"),
    [
        ("halfway_soak_test.yaml", 0, "▲ LOOK"),  # the clock is behind what is noted
        ("halfway_soak_test.yaml", 8.5, "○ DUE 18:00"),
        ("halfway_soak_test.yaml", 9, "○ DUE NOW"),
        ("finished_us.yaml", 0, "✓ PLAN DONE"),
        ("not_here.yaml", 0, "■ STOP"),
        ("faulty_values.yaml", 0, "■ FIX"),
        ("faulty_twice.yaml", 0, "■ FIX"),
    ],
)
def test_the_badge_of_a_garden_says_its_state(sample, clock, name, hours, badge) -> None:
    clock.forward(hours=hours)
    assert str(summary(Path(sample(name)), clock.now).badge).strip() == badge


def test_the_bar_is_as_full_as_pages_are_done(sample, clock) -> None:
    for name in ("halfway_soak_test.yaml", "finished_us.yaml"):
        one = summary(Path(sample(name)), clock.now)
        row = str(card(one, 77)).splitlines()[0]
        full, bar = row.count("━"), row.count("━") + row.count("─")
        assert full == bar * one.done // one.total and bar > 8
        assert (full == bar) == (one.done == one.total)


async def test_the_invented_garden_is_opened_as_a_copy_and_said_to_be_invented(
    sit, tmp_path: Path
) -> None:
    async with sit() as person:
        await person.settles()
        await person.press("down", "enter")
        await person.settles()
        assert person.door.opened.path.name == "invented_garden.yaml"
        assert person.session.answers.texts["garden_name"] == "Maple corner"
        assert "This garden is invented" in person.told
    assert (tmp_path / "invented_rain.csv").is_file()


async def test_a_folder_that_takes_no_file_is_told_in_a_sentence(sit, monkeypatch) -> None:
    def full(folder: Path) -> Path:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(invented, "copied", full)
    async with sit() as person:
        await person.settles()
        await person.press("down", "enter")
        await person.settles()
        assert person.page == "WelcomeScreen"
        assert "Start from another folder." in person.sees_words()


async def test_a_window_that_changes_keeps_the_row_one_is_at(sit, write) -> None:
    write("oak.yaml", {"garden_name": "Oak"})
    async with sit() as person:
        await person.settles()
        await person.press("down")
        at = [row for row in rows_of(person) if "▸" in row]
        await person.pilot.resize_terminal(60, 20)
        await person.settles()
        assert "Begin a new garden" in at[0]
        assert "Begin a new garden" in next(row for row in rows_of(person) if "▸" in row)
        assert all(column_width(row) <= 60 for row in rows_of(person))


@pytest.mark.parametrize("size", [(80, 24), (160, 45)])
async def test_a_newcomer_sees_in_a_large_window_what_is_asked_of_the_days(sit, size) -> None:
    async with sit(size=size) as person:
        await person.settles()
        told = "About an hour of typing over four visits" in person.sees()
        assert told == (size == (160, 45))
        if told:
            assert [one for one in VISITS if one[0] not in person.sees()] == []
