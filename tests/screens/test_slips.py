"""The ordinary slips of somebody who sits down at it for the first time."""

from __future__ import annotations

import pytest
from textual.widgets import Input

from interview.screens.app import STOPS, Door, InterviewApp
from interview.screens.lists import Items
from interview.screens.welcome import LOOKING, OpeningScreen, WelcomeScreen
from interview.screens.words import WAITED_FOR

OHIO = {"garden_name": "Gate", "country": "us", "state": "oh", "units": "us"}


@pytest.mark.parametrize("address", ["garden_name", "soil_dug"])
async def test_ctrl_c_says_which_key_stops_the_program(sit, write, address: str) -> None:
    write("garden.yaml", OHIO)
    async with sit("garden.yaml") as person:
        await person.goes_to(address)
        await person.press("ctrl+c")
        assert person.told == STOPS


async def test_ctrl_c_copies_what_is_selected_and_says_nothing(sit, write) -> None:
    write("garden.yaml", OHIO)
    async with sit("garden.yaml") as person:
        await person.goes_to("garden_name")
        person.app.screen.query_one(Input).select_all()
        await person.press("ctrl+c")
        assert person.told == "" and person.app.clipboard == "Gate"


async def test_a_line_taken_out_of_a_list_stays_out_after_another_page_was_looked_at(
    sit, write
) -> None:
    write("garden.yaml", {**OHIO, "surfaces.1.surface_kind": "roof"})
    async with sit("garden.yaml") as person:
        await person.goes_to("surfaces.1.pieces")
        await person.enters("28 x 14")
        await person.enters("12 m by 8 ft")
        for key in ("up", "delete", "f1", "escape", "ctrl+l", "escape"):
            await person.press(key)
        assert person.app.screen.query_one(Items).lines == ["28 x 14"]
        await person.press("f3")
        assert person.session.answers.texts["surfaces.1.pieces"] == "rectangle 28 ft, 14 ft"


async def test_a_choice_half_given_before_the_program_ended_is_taken_with_its_page(
    sit, write
) -> None:
    write("garden.yaml", OHIO)
    async with sit("garden.yaml") as person:
        await person.goes_to("spots.1.overflow_to")
        await person.press("1", "enter")
        await person.types("2")
        await person.press("ctrl+q")
    async with sit("garden.yaml") as person:
        assert person.asked == "spots.1.overflow_building_distance"
        await person.enters("5")
        await person.enters("30")
        texts = person.session.answers.texts
        assert texts["spots.1.overflow_to"] == "own_lawn"
        assert texts["spots.1.overflow_building_distance"] == "25 ft"


async def test_what_was_half_given_is_taken_after_another_page_was_gone_to(sit, write) -> None:
    write("garden.yaml", OHIO)
    async with sit("garden.yaml") as person:
        await person.goes_to("spots.1.slope_run")
        await person.enters("12")
        await person.goes_to("soil_dug")
        await person.goes_to("spots.1.slope_drop")
        await person.enters("4")
        await person.press("enter")
        assert person.session.answers.texts["spots.1.slope_run"] == "12 ft"


async def test_what_is_put_off_is_not_shown_as_if_it_were_answered(sit, write) -> None:
    write("garden.yaml", OHIO)
    async with sit("garden.yaml") as person:
        await person.goes_to("spots.1.wet_season_depth")
        await person.types("4")
        await person.press("ctrl+t")
        assert "Depth to wet-season water: don't know yet" in person.says("before")


async def test_dunno_at_a_list_of_choices_is_dont_know_yet(sit, write) -> None:
    write("garden.yaml", OHIO)
    async with sit("garden.yaml") as person:
        await person.goes_to("soil_dug")
        await person.press(*"mud", "enter")
        assert '"mud" is not on the list' in person.says("heard")
        await person.goes_to("garden_name")
        await person.goes_to("soil_dug")
        await person.press(*"don't know")
        assert person.says("heard") == "I read this as don't know yet."
        await person.press("enter")
        assert person.session.answers.texts["soil_dug"] == "don't know yet"
        assert person.asked != "soil_dug"


async def test_what_is_wrong_stays_while_no_way_on_is_chosen(sit, write) -> None:
    write("garden.yaml", {**OHIO, "spots.1.near_spot": "basement"})
    async with sit("garden.yaml") as person:
        await person.goes_to("spots.1.basement_distance")
        await person.enters("8 ft")
        await person.press("enter")
        assert "8 ft, 10 ft needed" in person.says("heard")
        assert "Choose one of these first." in person.says("heard")
        # It is said once beside it.
        await person.settles()
        assert person.sees_words().count("too near.") == 1


async def test_a_draft_of_another_question_keeps_nobody_from_what_is_due(sit, write) -> None:
    write("garden.yaml", OHIO)
    async with sit("garden.yaml") as person:
        await person.goes_to("soil_dug")
        assert person.app.screen._untouched is False
        person.session.drafts["rain_depth"] = "1."
        person.app.screen._began_at = "soil_dug"
        assert person.app.screen._untouched
        person.session.drafts["soil_dug"] = "clay"
        assert not person.app.screen._untouched


async def test_why_an_answer_was_refused_goes_with_what_was_wrong(sit, write) -> None:
    write("garden.yaml", OHIO)
    async with sit("garden.yaml") as person:
        await person.goes_to("rain_depth")
        await person.enters("99 in")
        await person.press("ctrl+u")
        assert person.says("heard") == ""
        await person.goes_to("soil_dug")
        await person.press("enter")
        assert "Choose one first" in person.says("heard")
        await person.press("2")
        assert person.says("heard") == ""


async def test_a_length_in_paces_says_why_the_pace_is_asked_for_next(sit, write) -> None:
    write("garden.yaml", {**OHIO, "room_length": "22 ft"})
    async with sit("garden.yaml") as person:
        await person.goes_to("room_width")
        await person.enters("5 paces")
        assert person.asked == "walkers.1.walker_name"
        assert WAITED_FOR in person.told


async def test_a_piece_added_is_said_back_with_the_area_that_shows_a_wrong_unit(sit, write) -> None:
    write("garden.yaml", {**OHIO, "surfaces.1.surface_kind": "roof"})
    async with sit("garden.yaml") as person:
        await person.goes_to("surfaces.1.pieces")
        await person.enters("28 x 14")
        # 28 times 14.
        assert person.says("heard") == (
            "I read this as rectangle 28 ft, 14 ft. Plan area so far: 392 ft²."
        )
        await person.enters("12 m by 8 ft")
        # And 12 / 0.3048 times 8.
        assert "12 m by 8 ft. Plan area so far: 707 ft²." in person.says("heard")


@pytest.mark.parametrize(
    ("address", "kept", "typed", "then"),
    [("rain_depth", "2 cm", "1", "1 in"), ("garden_name", "Gate", "way", "Gateway")],
)
async def test_a_figure_typed_anew_takes_the_place_of_the_one_kept_and_a_name_goes_on(
    sit, write, address: str, kept: str, typed: str, then: str
) -> None:
    write("garden.yaml", {**OHIO, address: kept})
    async with sit("garden.yaml") as person:
        await person.goes_to(address)
        await person.enters(typed)
        assert person.session.answers.texts[address] == then


async def test_what_is_half_typed_is_gone_on_with_when_it_comes_back(sit, write) -> None:
    write("garden.yaml", {**OHIO, "rain_depth": "2 cm"})
    async with sit("garden.yaml") as person:
        await person.goes_to("rain_depth")
        await person.types("1.")
        await person.press("ctrl+q")
    async with sit("garden.yaml") as person:
        await person.enters("5")
        assert person.session.answers.texts["rain_depth"] == "1.5 in"


async def test_a_garden_named_on_the_command_line_is_said_to_be_opened(
    sit, write, monkeypatch, clock
) -> None:
    monkeypatch.setattr(InterviewApp, "_begin", lambda _: None)
    app = InterviewApp(Door(clock, "test"), "oak.yaml")
    async with app.run_test(size=(80, 24)):
        assert isinstance(app.screen, OpeningScreen)
        assert _looking(app.screen) == "Opening oak.yaml…"


def _looking(page: WelcomeScreen | OpeningScreen) -> str:
    return "\n".join(str(one.render()) for one in page.query(".looking") if one.display)


async def test_the_first_page_says_that_gardens_are_looked_for_until_they_are_listed(
    sit, write, monkeypatch
) -> None:
    write("garden.yaml", OHIO)
    seen: list[str] = []
    offer = WelcomeScreen.offer

    def told(page: WelcomeScreen, *offered) -> None:
        seen.append(_looking(page))
        offer(page, *offered)

    monkeypatch.setattr(WelcomeScreen, "offer", told)
    async with sit() as person:
        assert seen == [LOOKING]
        await person.settles()
        assert LOOKING not in person.sees_words() and "Gate" in person.sees_words()


async def test_enter_alone_on_yes_or_no_says_to_choose_as_on_every_list(sit, write) -> None:
    write("garden.yaml", OHIO)
    async with sit("garden.yaml") as person:
        await person.goes_to("children")
        await person.press("enter")
        assert "Choose one first" in person.says("heard")
        assert person.asked == "children"


async def test_a_letter_goes_to_a_row_of_a_list_of_ticks_and_ticks_nothing(sit, write) -> None:
    write("garden.yaml", OHIO)
    async with sit("garden.yaml") as person:
        await person.goes_to("spots.1.near_spot")
        await person.press("t")
        assert "▸[ ] the top of a bank" in person.sees()
        await person.press("n", "space")
        assert "▸[x] none of these" in person.sees()
        await person.press("enter")
        assert person.session.answers.texts["spots.1.near_spot"] == "none"


async def test_a_field_that_is_emptied_takes_what_it_says_that_enter_takes(sit, write) -> None:
    write("garden.yaml", {**OHIO, "beds": "3"})
    async with sit("garden.yaml") as person:
        await person.goes_to("beds")
        field = person.app.screen.query_one(Input)
        await person.press("ctrl+u")
        assert (field.value, field.placeholder) == ("", "Enter alone takes 1")
        await person.press("enter")
        assert person.session.answers.text_at("beds") == "1"


async def test_a_ticket_typed_with_the_day_of_a_later_request_is_kept_with_it(
    sit, write, located
) -> None:
    write("garden.yaml", located)
    async with sit("garden.yaml") as person:
        await person.goes_to("lines_asked_on")
        await person.enters("2026-05-27")
        await person.press("ctrl+u")
        await person.enters("Z-99")
        # Why it comes back to the day is told, and stays told.
        assert person.asked == "lines_asked_on"
        assert "That is a later request" in person.says("heard")
        await person.press("enter")
        await person.press("enter")
        texts = person.session.answers.texts
        assert (texts["lines_asked_on"], texts["lines_ticket"]) == ("2026-05-27", "Z-99")
        assert "lines_answered" not in texts
