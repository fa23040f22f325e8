"""The page of the plan: whole at every size, its first look, its parts and its pictures."""

import datetime as dt
import re
from pathlib import Path

import pytest

from interview.garden.opening import plan_of
from interview.garden.overview import overview
from interview.garden.pictures import planted_picture
from interview.garden.store import load
from interview.garden.summary import folded_to
from interview.screens.finale import Finale
from interview.screens.palette import PALETTES
from interview.screens.picture import alone, painted
from interview.sheet import next_steps
from interview.sheet.common import drawings_apart
from interview.sheet.report import plan_text

SAMPLES = Path(__file__).parents[2] / "sample_answers"
MAY = dt.datetime.fromisoformat("2026-05-30T09:00:00-05:00")
BLOCKS = set("▀▄▌▐▗▖▝▘")
SIZES = [(56, 14), (76, 18), (96, 24), (128, 39)]


def made(columns):
    answers = load(SAMPLES / "finished_us.yaml")[0].answers
    plan = plan_of(answers, SAMPLES, MAY)
    with folded_to(columns), drawings_apart() as drawings:
        sheet = plan_text(plan)
    steps = tuple(next_steps.steps(plan))
    return plan, Finale(overview(plan), planted_picture(plan), sheet, drawings, steps)


@pytest.mark.parametrize("palette", [*PALETTES, None], ids=lambda one: one.name if one else "none")
def test_the_first_look_is_whole_in_every_palette(palette):
    _, finale = made(76)
    rows = [strip.text for strip in finale(76, 18, palette)]
    assert all(len(row) <= 76 for row in rows[:40])
    first = "\n".join(rows[:40])
    wanted = "FIX; Some things must be changed; Digging open until 9 June; water in; overflow"
    for words in (*wanted.split("; "), "of 12 % at most", "What was found", "things are in order"):
        assert words in first, words


def test_with_no_color_every_picture_is_drawn_by_characters():
    # Painted, an area would be half blocks without a color: nothing is seen of it.
    plan, finale = made(76)
    above = planted_picture(plan)
    for make in (finale, painted(above), alone(lambda _: above)):
        drawn = make(76, 18, None)
        shown = set("".join(strip.text for strip in drawn))
        assert any("\u2801" <= char <= "\u28ff" for char in shown), "no outline"
        assert not BLOCKS & shown
        assert all(part.style.color is None for strip in drawn for part in strip)


@pytest.mark.parametrize("size", SIZES)
def test_every_part_of_the_sheet_can_be_gone_to(size):
    _, finale = made(min(76, size[0]))
    rows = [strip.text for strip in finale(*size, PALETTES[0])]
    assert set(finale.titles) <= set(finale.places)
    for title in finale.titles[1:]:
        assert rows[finale.places[title]].strip() == title
        assert set(rows[finale.places[title] + 1].strip()) == {"─"}
    assert finale.titles[:2] == ["At a glance", "Do next"]


@pytest.mark.parametrize("size", SIZES)
def test_the_drawings_of_the_sheet_stand_in_their_places(size):
    _, finale = made(min(76, size[0]))
    text = "\n".join(strip.text for strip in finale(*size, PALETTES[0]))
    assert "drawing 1" not in text
    for title in ("PLAN of the garden", "SECTION along the slope", "POND DEPTH in the storm"):
        assert title in text


def test_no_line_of_the_sheet_is_lost():
    plan, finale = made(76)
    shown = {strip.text.rstrip() for strip in finale(76, 18, PALETTES[0])}
    told = [line for line in plan_text(plan).splitlines() if line.startswith(("- ", "[", "1. "))]
    assert told and not [line for line in told if line not in shown]


async def test_a_part_chosen_at_the_side_is_gone_to(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(120, 40)) as person:
        await person.press("ctrl+l")
        await person.settles()
        assert "Shopping list" in person.sees()
        person.app.screen.query_one("#sections").focus()
        await person.press("down", "down", "enter")
        await person.settles()
        sheet = person.app.screen.query_one("#sheet")
        assert sheet.scroll_offset.y > 0 and person.app.focused is sheet
        assert "In short" in person.sees().splitlines()[3]


@pytest.mark.parametrize("size", SIZES)
def test_no_row_of_the_plan_is_wider_than_its_window(size):
    _, finale = made(min(76, size[0]))
    for palette in (PALETTES[0], None):
        assert not [one.text for one in finale(*size, palette) if one.cell_length > size[0]]


def test_in_a_common_window_the_first_look_has_the_first_finding_in_sight():
    _, finale = made(76)
    seen = "\n".join(strip.text for strip in finale(78, 19, PALETTES[0])[:19])
    assert "of 12 % at most" in seen and "north end: sandy loam by feel" in seen


def test_with_no_color_no_list_of_letters_parts_the_picture_from_what_was_found():
    for size in ((56, 14), (76, 18)):
        _, finale = made(min(76, size[0]))
        rows = [strip.text for strip in finale(*size, None)]
        first = rows[: next(at for at, row in enumerate(rows) if row.startswith("What was found"))]
        assert not [row for row in first if re.match(r"\([a-z]\) ", row)]
        assert "water in" in " ".join(first) and "overflow" in " ".join(first)


def test_what_is_to_be_done_next_stands_whole_beside_a_large_picture():
    plan, finale = made(76)
    first, *_ = next_steps.steps(plan)
    for size, there in (((128, 39), True), ((76, 18), False)):
        rows = [strip.text for strip in finale(*size, PALETTES[0])]
        above = rows[: next(at for at, row in enumerate(rows) if row.startswith("What was found"))]
        aside = " ".join(row[size[0] - 29 :].strip() for row in above)
        assert ("Do next" in aside) == there, size
        assert (f"1 {first}" in " ".join(aside.split())) == there
        assert all(len(row) <= size[0] for row in rows)


@pytest.mark.parametrize("size", [(76, 18), (130, 37)])
def test_the_figures_beside_the_picture_stand_under_each_other(size):
    plan, finale = made(size[0])
    rows = [strip.text for strip in finale(*size, PALETTES[0])]
    places = set()
    for one in overview(plan).measures:
        row = next(row for row in rows if f"{one.label}  " in row and one.value in row)
        places.add(row.index(one.value, row.index(f"{one.label}  ")))
    assert len(places) == 1
