"""The keys at the foot of every page: one order, one notation, one meaning, all under F1."""

from __future__ import annotations

import importlib
import pkgutil
import re
from collections import defaultdict

import pytest
from textual.binding import Binding
from textual.dom import DOMNode

from interview import screens
from interview.screens.frame import KeyLine, StageStrip
from interview.screens.help import KEYS
from interview.screens.keys import ALWAYS, PAGES
from interview.screens.page import Page

SIZES = [(80, 24), (60, 20)]


def is_letter(key: str) -> bool:
    """Tell whether a key is a letter, with or without Ctrl, or a function key."""
    return bool(re.fullmatch(r"(ctrl\+)?[a-z]|f\d+", key))


def test_no_letter_has_two_meanings():
    meanings = defaultdict(set)
    for one in (*ALWAYS, *(key for page in PAGES.values() for key in page)):
        for key in filter(is_letter, one.keys.split(",")):
            meanings[key].add(one.means or one.word)
    assert len(meanings) > 30
    twice = {key: found for key, found in meanings.items() if len(found) != 1}
    assert not twice, twice


def test_no_page_has_one_key_for_two_things():
    for name, page in PAGES.items():
        keys = [key for one in (*page, *ALWAYS) for key in one.keys.split(",") if one.bound]
        again = {key for key in keys if keys.count(key) > 1}
        assert again <= {"f1"}, (name, again)


def test_every_letter_a_page_listens_for_is_in_the_table_of_keys():
    known = {key for page in PAGES.values() for one in page for key in one.keys.split(",")}
    known |= {key for one in ALWAYS for key in one.keys.split(",")} | {"f2"}
    pages = set()
    for module in pkgutil.iter_modules(screens.__path__):
        for part in vars(importlib.import_module(f"interview.screens.{module.name}")).values():
            if not (isinstance(part, type) and issubclass(part, DOMNode)):
                continue
            if not part.__module__.startswith("interview.screens"):
                continue
            pages |= {part.KEYS} if issubclass(part, Page) else set()
            for one in vars(part).get("BINDINGS", ()):
                assert isinstance(one, Binding)
                letters = set(filter(is_letter, one.key.split(",")))
                assert letters <= known, (part, letters - known)
    assert pages - {""} <= PAGES.keys()
    assert len(pages) > 10


def check(person, page: str) -> None:
    """See that the key line shows whole keys in their order, and that F1 has every one."""
    assert person.page == page
    line = person.app.screen.query_one(KeyLine)
    width, height = person.app.size
    foot = person.sees().splitlines()[height - 1]
    said = [one.text for one in line.shown]
    assert foot.rstrip().endswith("F1 help  ^Q quit"), foot
    places = [foot.index(one) for one in said]
    assert places == sorted(places) and len(foot) <= width
    # Nothing else stands there: no key is cut.
    rest = foot
    for one in said:
        rest = rest.replace(one, "", 1)
    assert not rest.strip(" ▸"), f"cut: {rest}"
    order = [one.action for one in PAGES[person.app.screen.KEYS]]
    actions = [one.action for one in line.offers][: -len(ALWAYS)]
    assert actions == sorted(actions, key=order.index)
    back = [one.shown for one in line.offers if one.shown == "Esc"]
    assert back or page == "WelcomeScreen"
    for one in line.offers:
        assert re.search(rf"(^|\W){re.escape(one.shown)}(\W|$)", KEYS), one
    assert person.app.screen.query_one(StageStrip).region.y == 1


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
        await person.press("ctrl+o")
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
    async with sit("garden.yaml", size=(60, 20)) as person:
        await person.clicks("plan")
        await person.settles()
        assert person.page == "PlanScreen"
        await person.clicks("working")
        assert person.page == "WorkingScreen"
        await person.clicks("help")
        assert person.page == "HelpScreen"


async def test_a_key_at_the_foot_is_reached_with_tab_and_pressed_with_enter(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.press("shift+tab")
        line = person.app.screen.query_one(KeyLine)
        assert person.app.focused is line
        assert person.sees().splitlines()[-1].startswith("▸Enter go on")
        names = [one.word for one in line.shown]
        await person.press(*["right"] * names.index("go to"))
        assert "▸^G go to" in person.sees()
        await person.press("enter")
        assert person.page == "ReviewScreen"
        await person.press("escape")
        await person.press("end", "enter")
        assert person.app._exit


async def test_a_click_on_a_key_leaves_the_focus_where_one_types(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.clicks("why")
        await person.types("Oak")
        assert person.app.focused.value == "Oak"
