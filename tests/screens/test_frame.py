"""The frame of every page: the strip of the stages, the saved slot, the line of notices."""

from __future__ import annotations

import datetime as dt

import pytest
from textual.app import App

from interview.screens.frame import Notice, StageStrip, TopLine, Weight
from interview.screens.help import HelpScreen
from interview.screens.saver import SaveReport, SaveState
from interview.screens.words import STAGE_NAMES, StageShare, stage_shares

NAMES = list(STAGE_NAMES.values())


def strip_row(person) -> str:
    return person.sees().splitlines()[1]


def test_every_stage_has_a_short_name():
    from interview.garden.stages import STAGES

    assert [stage.key for stage in STAGES] == list(STAGE_NAMES)
    told = "Start, Siting, Soak test, Survey, Size, Plants, Review"
    assert ", ".join(STAGE_NAMES.values()) == told


@pytest.mark.parametrize("width", [60, 66, 80, 120, 160])
async def test_all_seven_stages_are_named_in_any_usual_window(sit, sample, width: int) -> None:
    async with sit(sample("finished_us.yaml"), size=(width, 24)) as person:
        row = strip_row(person)
        assert all(name in row for name in NAMES), row
        assert [row.index(name) for name in NAMES] == sorted(row.index(name) for name in NAMES)


async def test_the_narrowest_window_names_the_stage_one_is_in(sit) -> None:
    async with sit("garden.yaml", size=(40, 14)) as person:
        await person.goes_to("deepest_pond")
        assert strip_row(person).split() == ["○S", "○S", "✕S", "○S", "◆Size", "○P", "○R"]


@pytest.mark.parametrize("width", [60, 80, 160])
async def test_a_stage_is_filled_as_far_as_it_is_answered(sit, sample, width: int) -> None:
    async with sit(sample("halfway_soak_test.yaml"), size=(width, 24)) as person:
        await person.press("escape")
        strip = person.app.screen.query_one(StageStrip)
        shares = {one.stage.key: one for one in person.session.way.progress()}
        filled = 0
        for one, (key, name) in zip(strip._stages, STAGE_NAMES.items(), strict=True):
            assert (one.name, one.done, one.total) == (name, shares[key].done, shares[key].total)
        for segment in strip.render_line(0):
            ground = segment.style.bgcolor.get_truecolor() if segment.style else None
            if ground and ground.hex == person.app.theme_variables["filled"].lower():
                filled += len(segment.text)
        cells = strip.content_size.width - len(NAMES) + 1
        share = sum(one.done / one.total for one in shares.values()) / len(NAMES)
        # Cells are as wide as their names ask for, so the whole is near the mean alone.
        assert abs(filled / cells - share) < 0.15


def test_a_stage_of_which_one_question_is_left_is_not_full_and_one_begun_not_empty():
    strip = StageStrip
    few = StageShare("Start", "in progress", 1, 200)
    most = StageShare("Start", "in progress", 199, 200)
    assert (strip.filled(few, 10), strip.filled(most, 10)) == (1, 9)
    assert strip.filled(StageShare("Start", "done", 5, 5), 10) == 10
    assert strip.filled(StageShare("Start", "not started", 0, 0), 10) == 0


async def test_every_page_has_the_strip_and_before_a_garden_all_is_to_come(sit) -> None:
    async with sit() as person:
        assert person.page == "WelcomeScreen"
        assert [one.mark for one in stage_shares(None, "")] == ["○"] * 7
        assert all(f"○ {name}" in strip_row(person) for name in NAMES)


async def test_what_is_said_stays_until_the_next_key_and_a_warning_until_enter(sit) -> None:
    async with sit("garden.yaml") as person:
        page = person.app.screen
        rows = person.sees().splitlines()
        page.tell("This is said.")
        await person.rests()
        assert person.sees().splitlines()[-2].strip() == "This is said."
        # It stands where nothing else stood, and no row above it moved.
        assert person.sees().splitlines()[:-2] == rows[:-2] and not rows[-2].strip()
        await person.press("x")
        assert person.told == ""
        page.warn("Look here.")
        await person.press("x", "y")
        assert "▲ Look here." in person.sees()
        await person.press("enter")
        assert person.told == ""


async def test_a_long_notice_is_shown_whole_and_lies_over_nothing(sit) -> None:
    async with sit("garden.yaml", size=(60, 20)) as person:
        said = "The first thing is this. " * 6
        person.app.tell(said, Weight.WARNING)
        await person.rests()
        assert said.strip() in person.sees_words()
        notice = person.app.screen.query_one(Notice).region
        body = person.app.screen.query_one("#body").region
        assert body.bottom <= notice.y


async def test_no_page_lays_a_notice_over_itself(sit) -> None:
    async with sit("garden.yaml") as person:
        person.app.notify("Something")
        await person.rests()
        assert person.told == "Something"
        assert not person.app._notifications


async def test_a_failed_save_is_told_on_every_page(sit, monkeypatch) -> None:
    from interview.asking.keeping import NotKept

    async with sit("garden.yaml") as person:
        assert "✓ No change" in person.sees().splitlines()[0]
        keeper = person.door.opened.keeper

        def fail(answers, stopped_at: str) -> None:
            raise NotKept("The disk is full.")

        monkeypatch.setattr(keeper, "keep", fail)
        await person.answers("Maple corner")
        person.door.saver.settle(10)
        for key in ("ctrl+g", "f3", "f4", "f5", "ctrl+l"):
            await person.press(key)
            await person.settles()
            assert "■ NOT SAVED" in person.sees().splitlines()[0]
            assert "NOT SAVED: The disk is full." in person.sees_words()
            await person.press("escape")
        assert "^R save again" in person.sees()


async def test_nothing_in_the_first_line_moves_while_answers_are_saved(sit) -> None:
    at = dt.datetime(2026, 5, 28, 9)
    reports = [SaveReport(SaveState.NOTHING), SaveReport(SaveState.SAVING)]
    reports += [SaveReport(SaveState.SAVED, at), SaveReport(SaveState.FAILED)]
    async with sit("garden.yaml", size=(60, 20)) as person:
        line = person.app.screen.query_one(TopLine)
        lefts, rights = set(), []
        for report in reports:
            line.show("The long garden at the back", ["Start · 2 of 5"], report, "garden.yaml")
            row = str(line.render())
            lefts.add(row[:40])
            rights.append(row[45:].strip())
        assert len(lefts) == 1
        assert rights == ["✓ No change", "Saving…", "✓ Saved 09:00", "■ NOT SAVED"]


async def test_a_save_that_ends_while_a_page_is_being_opened_harms_nothing(sit) -> None:
    async with sit("garden.yaml") as person:
        page = HelpScreen("kept here")
        # Textual counts a page as mounted before it has made its parts.
        page._is_mounted = True
        with person.app._context():
            page.show_saved()
            page.show_frame()
            page.show_keys()


@pytest.mark.parametrize("part", ["top", "strip", "unsaved", "keyline"])
async def test_a_save_that_ends_while_a_page_goes_harms_nothing(sit, part: str) -> None:
    async with sit("garden.yaml") as person:
        page = person.app.screen
        await page.query_one(f"#{part}").remove()
        page.show_frame()


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
async def test_every_list_has_a_row_one_is_at_from_the_start(sit, sample, size) -> None:
    async with sit(sample("finished_us.yaml"), size=size) as person:
        for keys in (("ctrl+g",), ("f4",), ("f5",), ("ctrl+l", "ctrl+o")):
            for key in keys:
                await person.press(key)
                await person.settles()
            rows = [row for row in person.sees().splitlines() if row.strip().startswith("▸")]
            assert len(rows) == 1, keys
            for _ in keys:
                await person.press("escape")


async def test_with_no_color_the_filled_part_is_underlined(sit, sample, monkeypatch) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        strip = person.app.screen.query_one(StageStrip)
        assert not any(one.style and one.style.underline for one in strip.render_line(0))
        person.app.no_color = True
        strip.refresh()
        await person.rests()
        assert any(one.style and one.style.underline for one in strip.render_line(0))


async def test_a_page_that_is_covered_paints_nothing_and_has_the_new_room_when_it_is_back(
    sit, sample, monkeypatch
) -> None:
    sent: list[str] = []
    display = App._display

    def displays(self, screen, update) -> None:
        if update is not None and self.session:
            sent.append(screen.id or type(screen).__name__)
        display(self, screen, update)

    async with sit(sample("finished_us.yaml"), size=(120, 40)) as person:
        below = person.app.screen
        await person.press("f1")
        await person.settles()
        assert isinstance(person.app.screen, HelpScreen)
        monkeypatch.setattr(App, "_display", displays)
        below.query_one(TopLine).refresh()
        below._on_timer_update()
        await person.rests()
        assert sent == []
        await person.pilot.resize_terminal(60, 20)
        await person.press("escape")
        await person.settles()
        assert person.app.screen is below and below.has_class("narrow", "low")
        assert all(len(row) <= 60 for row in person.sees().splitlines())
