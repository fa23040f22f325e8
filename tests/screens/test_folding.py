"""Text is folded once, to the window: no line breaks in its middle and again at its end."""

from __future__ import annotations

from itertools import takewhile

import pytest

from interview.garden.summary import folded_to
from interview.screens.help import KEYS, folded_keys, keys_shown
from interview.screens.parts import Press
from interview.screens.picture import Drawn
from interview.sheet.report import plan_text

SIZES = [(60, 20), (80, 24)]


def lines_of(person, name: str) -> list[str]:
    """Return the text of a part of the page as it is broken into lines."""
    part = person.app.screen.query_one(name).query("*").last()
    if isinstance(part, Drawn):
        return part.text.splitlines()
    width = part.size.width
    text = [line.rstrip() for line in str(part.render()).split("\n")]
    assert part.size.height == len(text), "a line is broken once more by the window"
    assert all(len(line) <= width for line in text)
    return text


@pytest.mark.parametrize("size", SIZES)
async def test_the_sheet_is_folded_to_the_window_and_anew_when_it_changes(
    sit, sample, size
) -> None:
    async with sit(sample("finished_us.yaml"), size=size) as person:
        await person.press("ctrl+l")
        await person.settles()
        text = lines_of(person, "#sheet")
        words = [line for line in text if "survey, a permit" in line]
        assert len(words) == 1 and len(words[0]) <= size[0] - 2
        await person.pilot.resize_terminal(100, 40)
        await person.settles()
        room = person.app.screen.query_one("#sheet").scrollable_content_region.width
        assert room >= 75
        with folded_to(room):
            sheet = plan_text(person.session.plan).splitlines()
        told = [line for line in sheet if line.startswith("- ")]
        assert [line for line in lines_of(person, "#sheet") if line.startswith("- ")] == told


@pytest.mark.parametrize("size", SIZES)
async def test_the_keys_stand_under_their_own_beginning(sit, size) -> None:
    async with sit("garden.yaml", size=size) as person:
        await person.press("f1")
        text = lines_of(person, "#keys")
        assert " ".join(" ".join(text).split()) == " ".join(KEYS.split())
        begun = text.index(next(one for one in text if one.startswith("F3 ")))
        under = text[begun + 1]
        assert under.startswith(" " * 11) and under[11] != " "


@pytest.mark.parametrize("columns", [52, 76])
def test_each_key_of_the_help_is_in_the_ink_of_keys(columns) -> None:
    shown = keys_shown(folded_keys(columns))
    inked = [shown.plain[one.start : one.end] for one in shown.spans if "$due" in str(one.style)]
    assert {"Enter", "^T", "F10", "R", "Page keys", "up, down", "← →", "…"} <= set(inked)
    assert all(len(one) < 10 and one == one.strip() for one in inked)
    heads = [shown.plain[one.start : one.end] for one in shown.spans if "$text" in str(one.style)]
    assert "The plan (^L):" in heads and not [one for one in heads if one.startswith("Enter")]


@pytest.mark.parametrize("size", SIZES)
async def test_the_meaning_of_a_soak_test_is_folded_to_the_window(sit, sample, size) -> None:
    async with sit(sample("finished_us.yaml"), size=size) as person:
        await person.goes_to("holes.1.readings")
        await person.press("f3")
        await person.press("m")
        assert person.page == "SoakMeaning"
        words = person.app.screen.query_one("#keys").query("*").last()
        long = [line for line in str(words.render()).split("\n") if len(line) > words.size.width]
        assert all("  " in line.strip() for line in long), "only a table may be wider"


@pytest.mark.parametrize("size", SIZES)
async def test_every_button_of_every_page_is_seen_whole(sit, sample, size) -> None:
    async with sit(sample("finished_us.yaml"), size=size) as person:
        for key in ("ctrl+g", "f3", "f4", "f5", "ctrl+l"):
            await person.press(key)
            await person.settles()
            shown = person.sees()
            for button in person.app.screen.query(Press):
                if button.display and button.parent.display:
                    assert str(button.label).strip() in shown, (person.page, button.label)
            await person.press("escape")


@pytest.mark.parametrize("size", SIZES)
async def test_an_answer_that_is_folded_stays_under_its_own_beginning(sit, sample, size) -> None:
    async with sit(sample("finished_us.yaml"), size=size) as person:
        await person.press("ctrl+g")
        await person.types("readings")
        for _ in range(2):
            rows = person.sees().splitlines()
            at = next(place for place, row in enumerate(rows) if "Readings (" in row)
            begins = rows[at].index("Readings")
            folded = list(takewhile(lambda row: "How readings" not in row, rows[at + 1 :]))
            assert folded and all(len(row) - len(row.lstrip()) == begins + 2 for row in folded), (
                folded
            )
            whole = " ".join(" ".join(rows[at : at + 5]).split())
            assert "Thu 28 May, 12:00 left 4 1/8 in" in whole
            await person.pilot.resize_terminal(size[0] + 7, size[1])
            await person.settles()


@pytest.mark.parametrize("columns", [46, 56, 76])
def test_no_line_of_the_keys_falls_to_the_left_of_what_it_goes_on_with(columns) -> None:
    whole = set(KEYS.splitlines())
    margin = 0
    for line in folded_keys(columns).splitlines():
        indent = len(line) - len(line.lstrip())
        begins = line in whole or any(one.lstrip().startswith(line.strip()) for one in whole)
        part = any(line.strip() and f"    {line.strip()}" in f"   {one}" for one in whole)
        if not (begins or part):
            assert indent > margin, line
        else:
            margin = indent


async def test_a_list_stands_a_window_narrower_than_its_rows(sit):
    async with sit("garden.yaml", (100, 30)) as person:
        await person.settles()
        await person.enters("Elm lane")
        await person.settles()
        assert person.asked == "state"
        for columns in range(12, 0, -1):
            await person.pilot.resize_terminal(columns, 10)
            await person.settles()
        await person.pilot.resize_terminal(100, 30)
        await person.settles()
        assert person.asked == "state"
