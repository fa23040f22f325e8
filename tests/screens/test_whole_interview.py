"""Whole gardens by keyboard: the same file as on plain lines, and one cut short goes on."""

from __future__ import annotations

from pathlib import Path

import pytest
import simple_way as simple
import test_pages as pages
import test_whole_path as lines
import yaml

from interview.garden import store
from interview.garden.opening import Opened, open_session
from interview.plain import interview as plain

MOST_PAGES, ROUGH_SIZE_AT = 45, 6
"""What a first-timer is asked to go through in a simple garden: a choice of ours."""
TESTS = Path(__file__).parents[1]
BY = "rain-garden-interview test"
ABROAD = {
    "garden_name": "Wiesenrand",
    "state": "no",
    "country": "other",
    "units": "metric",
    "pieces": "rectangle 9 m by 4.3 m",
    "slope_run": "3 m",
    "slope_drop": "5 cm",
    "lines_business_days": "3",
    "lines_holidays": "none",
    "lines_valid_days": "14",
    "lines_valid_kind": "calendar",
}
"""The simple garden where nothing is known of the country, on a metric tape."""
ASIDE = ("stopped_at", "written_by", "half_typed")


async def by_keyboard(person, clock, more) -> list[str]:
    """Go the whole way to the plan, page by page; return the names of the pages."""
    names = []
    while person.page == "QuestionScreen":
        place = person.session.place
        names.append(place.name)
        assert len(names) <= MOST_PAGES + bool(more), names
        assert "error in the program" not in person.sees_words()
        if place.name == "rough_size" and not more:
            assert "About 86 sq ft (46 to 150) for 1 in of rain" in person.sees_words()
        if place.name == "waiting":
            assert "First day to dig: Sat 23 May" in person.sees_words()
            clock.now = clock.now.replace(day=simple.DIG_DAY.day, hour=12)
        of_page = {key: more[key] for key in place.page.keys if key in more}
        typed = {**simple.ANSWERS.get(place.page.key, {}), **of_page}
        await pages.leave(person, typed)
    assert person.page == "PlanScreen" and person.session.place.name == "the_plan"
    await person.press("escape")
    assert "Dig day: Sat 30 May" in person.sees_words()
    return names


def kept(path: Path) -> dict:
    """Return what a file holds, but for where it was left."""
    tree = yaml.safe_load(path.read_text(encoding="utf-8"))
    return {key: held for key, held in tree.items() if key not in ASIDE}


@pytest.mark.parametrize("more", [{}, ABROAD], ids=["US", "abroad and metric"])
async def test_a_garden_by_keyboard_and_on_plain_lines_gives_the_same_file(
    sit, clock, tmp_path: Path, more
) -> None:
    clock.now = morning = clock.now.replace(day=simple.FIRST_DAY.day)
    async with sit("keys.yaml", size=(80, 24)) as person:
        names = await by_keyboard(person, clock, more)
    # Abroad the country has a page of its own.
    assert names.index("rough_size") + 1 == ROUGH_SIZE_AT + bool(more)
    clock.now = morning
    opened = open_session(str(tmp_path / "lines.yaml"), clock, BY)
    assert isinstance(opened, Opened)
    with opened.lock:
        typist = lines.Typist(opened.session, clock, more)
        assert plain.run(opened.session, typist.ask, typist.said.append)
    typed, pressed = kept(tmp_path / "lines.yaml"), kept(tmp_path / "keys.yaml")
    assert list(pressed) == list(typed)
    for section, held in typed.items():
        assert pressed[section] == held, section
    assert len(store.load(tmp_path / "keys.yaml")[0].answers.texts) > 50


async def test_a_garden_cut_short_goes_on_where_it_stopped(sit, tmp_path: Path) -> None:
    async with sit("garden.yaml") as person:
        await person.answers("Maple corner")
        await person.answers("wi")
        stopped = person.asked
        assert stopped == "surfaces.1.surface_kind"
    async with sit("garden.yaml") as person:
        assert person.asked == stopped
        assert "Maple corner" in person.sees()
    assert store.load(tmp_path / "garden.yaml")[0].answers.texts["country"] == "us"
