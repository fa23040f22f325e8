"""The options where the garden does not fit: told with their numbers, and taken with Enter."""

from __future__ import annotations

import pytest

from interview.screens.garden import NOTHING
from interview.screens.ways_page import WaysScreen
from interview.sheet.size import ways_shown


@pytest.fixture
def small(write):
    """A garden of an invented yard whose room is too small, its floor pegged out."""

    def make(texts):
        room = {"room_length": "16 ft", "room_width": "11 ft"}
        pegged = {"floor_shape": "rounded", "floor_length": "6 ft", "floor_width": "3 ft"}
        return str(write("garden.yaml", {**texts, **room, **pegged}))

    return make


async def test_an_option_is_taken_with_enter_and_the_floor_asked_anew(sit, small, sized) -> None:
    async with sit(small(sized)) as person:
        await person.goes_to("room_length")
        await person.press("f9")
        await person.settles()
        ways = ways_shown(person.session.plan)
        assert person.page == "WaysScreen" and ways[0].label in person.sees_words()
        place = next(at for at, one in enumerate(ways) if one.label.startswith("Steeper sides"))
        await person.press(*["down"] * place, "enter")
        texts = person.session.answers.texts
        assert texts["side_slope"] == "2:1" and "floor_length" not in texts
        assert person.asked == "floor_length"
        assert "2:1" in person.told and "(was 6 ft)" in person.told


async def test_what_no_answer_does_is_told_and_the_page_stays(sit, small, sized) -> None:
    async with sit(small(sized)) as person:
        await person.goes_to("room_length")
        await person.press("f9")
        await person.settles()
        ways = ways_shown(person.session.plan)
        place = next(at for at, one in enumerate(ways) if one.takes is None)
        await person.press(*["down"] * place, "enter")
        assert person.page == "WaysScreen" and "lead part of the water" in person.told


async def test_what_is_not_measured_yet_is_not_said_to_fit(sit, write) -> None:
    async with sit(str(write("garden.yaml", {"garden_name": "Gate", "state": "oh"}))) as person:
        person.app.push_screen(WaysScreen(person.session))
        await person.settles()
        assert "This waits for an answer: " in person.sees_words()
        assert NOTHING not in person.sees_words()


async def test_a_garden_that_fits_needs_no_option(sit, write, sized) -> None:
    async with sit(str(write("garden.yaml", sized))) as person:
        person.app.push_screen(WaysScreen(person.session))
        await person.settles()
        assert NOTHING in person.sees_words()
