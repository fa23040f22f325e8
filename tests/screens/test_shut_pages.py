"""A shut page says why, names the answer to change, and one key goes there and comes back."""

from __future__ import annotations

import pytest

from interview.screens import words

DEPTH = "holes.1.hole_depth"
SEEPS = "holes.1.hole_seeps"
NONE_SHUT = "Nothing is shut here that an answer would open."


def tell(person, texts):
    """Put answers into the session beside the screen."""
    answers = person.session._answers
    for address, text in texts.items():
        answers = answers.with_text(address, text)
    person.session._keep(answers)


@pytest.mark.parametrize(
    ("texts", "why", "address"),
    [
        (
            {"lines_requested": "not_yet"},
            "You have not yet asked for the buried lines",
            "lines_requested",
        ),
        ({"lines_valid_days": "2"}, "good only until", "lines_asked_on"),
        (
            {"holes.1.hole_smell": "gas"},
            "smells of gas. Stop, stay away from it, and call",
            "holes.1.hole_smell",
        ),
        (
            {"mark_distance": "1 ft"},
            "A mark is within 2 ft of where you will dig. Move the hole and the garden",
            "mark_distance",
        ),
        (
            {"private_lines": "not_found"},
            "Where your own buried lines run is not known",
            "private_lines",
        ),
        (
            {"spots.1.contamination": "fuel"},
            "do not dig and do not soak water in",
            "spots.1.soil_lab",
        ),
    ],
    ids=["not asked", "stale", "smell", "too near", "private", "polluted"],
)
async def test_f6_goes_to_the_answer_and_comes_back(sit, located, texts, why, address) -> None:
    async with sit("garden.yaml") as person:
        tell(person, {**located, **texts})
        await person.goes_to(SEEPS)
        assert person.says("shut").startswith("SHUT:") and why in person.says("shut")
        await person.press("f6")
        assert person.asked == address
        assert "Then back to “Water seeping into the hole”" in person.told
        await person.press("f6")
        assert person.asked == SEEPS


async def test_an_answer_given_on_the_way_leads_back_to_the_page_and_opens_it(sit, located) -> None:
    async with sit("garden.yaml") as person:
        tell(person, {**located, "private_lines": "not_found"})
        await person.goes_to(DEPTH)
        assert "SHUT:" in person.sees()
        await person.press("f6")
        await person.answers("none")
        assert person.asked == DEPTH
        assert "SHUT:" not in person.sees()
        await person.press("f6")
        assert NONE_SHUT in person.told


async def test_escape_on_the_way_comes_back_to_the_shut_page(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to(DEPTH)
        await person.press("f6")
        assert person.asked == "lines_requested"
        await person.press("escape")
        assert person.asked == DEPTH


async def test_a_click_on_the_key_line_does_what_the_key_does(sit) -> None:
    async with sit("garden.yaml", size=(100, 30)) as person:
        await person.goes_to(DEPTH)
        await person.clicks("open it")
        assert person.asked == "lines_requested"


async def test_a_day_that_was_shut_is_told_beside_the_depth(sit, located) -> None:
    async with sit("garden.yaml", size=(100, 30)) as person:
        tell(person, {**located, "holes.1.hole_dug_on": "2026-05-21"})
        await person.goes_to(DEPTH)
        assert "SHUT:" not in person.sees()
        assert "CAUTION: You named Thu 21 May" in person.sees_words()
        await person.enters("15 in")
        await person.press("enter")
        assert person.session.answers.texts["holes.1.hole_dug_on"] == "2026-05-28"


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
async def test_the_reason_and_the_key_are_seen_on_a_small_screen(sit, located, size) -> None:
    async with sit("garden.yaml", size=size) as person:
        tell(person, {**located, "mark_distance": "1 ft"})
        await person.goes_to(DEPTH)
        assert "A mark is within 2 ft" in person.sees_words()
        assert "1 Move the hose, and measure its room and distances again" in person.sees_words()
        assert "2 Measure to the nearest mark" in person.sees_words()
        assert "Enter alone:" in person.sees_words()


async def test_the_number_of_a_way_goes_there_and_its_answer_leads_back(sit, located) -> None:
    async with sit("garden.yaml") as person:
        tell(person, {**located, "private_lines": "not_found"})
        await person.goes_to(DEPTH)
        await person.press("1", "enter")
        assert person.asked == "private_lines"
        await person.answers("none")
        assert person.asked == DEPTH and "SHUT:" not in person.sees()


async def test_enter_alone_on_a_shut_page_goes_on_with_what_is_open(sit, located) -> None:
    async with sit("garden.yaml") as person:
        tell(person, {**located, "private_lines": "not_found"})
        await person.goes_to(DEPTH)
        await person.press("enter")
        place = person.session.place
        assert place is not None and person.asked != DEPTH
        assert not person.session.shut(person.session.step)


def test_at_the_end_what_is_shut_is_named_as_on_plain_lines(session_of, given) -> None:
    said = words.at_the_end(session_of(given(garden_name="Elm", country="us", state="mn")))
    assert "from 'Depth of the hole' on: You have not yet asked" in said
