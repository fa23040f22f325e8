"""The keys at the foot of every page: whole, one to a place, and all of them under F1."""

from __future__ import annotations

import re

import pytest

from interview.screens.help import KEYS
from interview.screens.parts import KeyLine

SIZES = [(80, 24), (60, 20)]


def keys_at_the_foot(person) -> list[str]:
    """Return each key and its words as the foot shows them, once it is known that all fit."""
    line = person.app.screen.query_one(KeyLine)
    shown = str(line.render())
    width, height = person.app.size
    assert len(shown) <= line.content_size.width <= width
    assert person.sees().splitlines()[height - 1].strip() == shown
    found = []
    for key, what, _ in line._keys or line._of_the_page():
        if f"{key} {what}" in shown:
            found.append(f"{key} {what}")
            shown = shown.replace(f"{key} {what}", "", 1)
    assert not shown.strip(), f"cut: {shown}"
    return found


NAMES = {"esc": "Escape", "←": "left", "→": "right"}


def in_words(key: str) -> str:
    """Return a key as the page of keys names it."""
    return NAMES.get(key) or (f"Ctrl+{key[1:].upper()}" if key[0] == "^" else key.upper())


def check(person, page: str) -> None:
    assert person.page == page
    found = keys_at_the_foot(person)
    assert "f1 Keys" in found or page == "HelpScreen"
    assert any(one.startswith("esc ") for one in found) or page == "WelcomeScreen"
    for key, what, _ in person.app.screen.query_one(KeyLine)._of_the_page():
        assert re.search(rf"(^|\W){re.escape(in_words(key))}(\W|$)", KEYS), (key, what)


@pytest.mark.parametrize("size", SIZES)
async def test_every_page_shows_whole_keys_alone_and_f1_has_the_rest(
    sit, sample, size: tuple[int, int]
) -> None:
    path = sample("finished_us.yaml")
    async with sit(path, size=size) as person:
        check(person, "QuestionScreen")
        for key, page in (
            ("ctrl+g", "ReviewScreen"),
            ("f1", "HelpScreen"),
            ("f3", "GardenScreen"),
            ("f4", "TryOutScreen"),
            ("f5", "PlantsScreen"),
        ):
            await person.press(key)
            await person.settles()
            check(person, page)
            await person.press("escape")
        await person.goes_to("surfaces.1.pieces")
        await person.press("f3")
        check(person, "PiecesScreen")
        await person.press("a")
        check(person, "PieceForm")
        await person.press("escape")
        await person.press("escape")
        await person.goes_to("holes.1.readings")
        await person.press("f3")
        check(person, "SoakScreen")
        await person.press("escape")
        await person.press("ctrl+l")
        await person.settles()
        check(person, "PlanScreen")
        await person.press("w")
        check(person, "WorkingScreen")


@pytest.mark.parametrize("size", SIZES)
async def test_the_first_pages_show_whole_keys_too(sit, sample, size: tuple[int, int]) -> None:
    path = sample("faulty_values.yaml")
    async with sit(path, size=size) as person:
        check(person, "MendScreen")
        await person.press("escape")
        await person.settles()
        check(person, "WelcomeScreen")


async def test_a_key_at_the_foot_is_pressed_with_the_mouse_as_well(sit) -> None:
    async with sit("garden.yaml") as person:
        foot = str(person.app.screen.query_one(KeyLine).render())
        await person.pilot.click("#keyline", offset=(foot.index("^l") + 2, 0))
        await person.settles()
        assert person.page == "PlanScreen"
        foot = str(person.app.screen.query_one(KeyLine).render())
        await person.pilot.click("#keyline", offset=(foot.index("Working") + 2, 0))
        await person.rests()
        assert person.page == "WorkingScreen"
