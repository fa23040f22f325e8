"""The question page: refusals, going back and forth, what is half typed, and small windows."""

from __future__ import annotations

from pathlib import Path

import pytest
from textual.widgets import Input

from interview.screens.lists import PAUSE_SECONDS, Choices


async def test_a_refused_answer_stays_in_the_field_with_the_reason_under_it(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("rain_depth")
        await person.enters("99 in")
        assert person.asked == "rain_depth"
        assert "too large" in person.sees_words()
        assert isinstance(person.app.focused, Input)
        assert person.app.focused.value == "99 in"
        assert "rain_depth" not in person.session.answers.texts


@pytest.mark.parametrize("size", [(80, 24), (60, 20)])
async def test_a_refused_field_shows_it_at_its_border_until_it_is_typed_into(sit, size) -> None:
    async with sit("garden.yaml", size=size) as person:
        wrong = person.app.theme_variables["stop"].upper()

        def border() -> str:
            return person.app.screen.query_one("#entry").styles.border_left[1].hex

        await person.goes_to("rain_depth")
        assert border() != wrong
        await person.enters("99 in")
        assert border() == wrong
        await person.press("backspace")
        assert border() != wrong


async def test_a_fresh_list_of_choices_shows_that_it_has_the_focus(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("soil_dug")
        row = next(line for line in person.sees().splitlines() if "1 sandy" in line)
        assert "█▹1 sandy" in row and person.app.screen.query_one(Choices).marked is None
        await person.press("tab")
        row = next(line for line in person.sees().splitlines() if "1 sandy" in line)
        assert "█" not in row


async def test_the_cursor_of_a_fresh_list_is_there_and_enter_alone_takes_nothing(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("lines_requested")
        field = person.app.screen.query_one(Choices)
        assert "▹1 not yet" in person.sees() and field.highlighted == 0
        await person.press("enter", "enter")
        assert "lines_requested" not in person.session.answers.texts
        assert "Choose one first" in person.says("heard")
        await person.press("down")
        assert "▸1 not yet" in person.sees()
        await person.press("down")
        assert "▸2 yes, I have asked" in person.sees()
        await person.press("enter")
        assert person.session.answers.texts["lines_requested"] == "asked"


async def test_none_of_these_is_a_row_and_no_tick_is_no_answer(sit) -> None:
    async with sit("garden.yaml") as person:
        for key in ("near_spot", "contamination"):
            address = f"spots.1.{key}"
            await person.goes_to(address)
            assert "tick the last row" in person.says("hint")
            await person.press("enter")
            assert person.asked == address and address not in person.session.answers.texts
            assert "Choose each one that is there, or none of these" in person.says("heard")
            await person.press("home", "space", "end", "space")
            assert "[x] none of these" in person.sees() and person.sees().count("[x]") == 1
            await person.press("home", "space")
            assert "[x] none of these" not in person.sees()
            await person.press("end", "space", "enter")
            assert person.session.answers.texts[address] == "none"


async def test_an_answer_is_said_back_while_it_is_typed_and_errors_wait_for_enter(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("rain_depth")
        await person.types("1.5")
        assert "I read this as 1 1/2 in" in person.sees_words()
        await person.types("zz")
        assert "I read this as" not in person.sees()
        assert person.app.screen.query_one("#heard").display is False


async def test_enter_alone_takes_the_default_that_is_shown(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("rain_depth")
        assert "Enter alone takes 1 in" in person.sees()
        await person.press("enter")
        assert person.session.answers.texts["rain_depth"] == "1 in"


async def test_back_shows_the_answer_given_and_enter_goes_forward_again(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.answers("Maple corner")
        await person.press("escape")
        assert person.asked == "garden_name"
        assert isinstance(person.app.focused, Input)
        assert person.app.focused.value == "Maple corner"
        await person.press("enter")
        assert person.asked == "state"
        await person.press("ctrl+b", "enter")


async def test_keys_typed_ahead_of_the_screen_never_answer_the_next_question(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.press(*"Oak", "enter", "ctrl+u", *"metric", "enter", "enter")
        assert person.session.answers.texts == {"garden_name": "Oak"}
        assert person.asked == "state"


async def test_back_at_the_first_question_stays_there_and_says_so(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.press("escape")
        assert person.asked == "garden_name"
        assert "This is the first question." in person.told


async def test_a_choice_is_not_made_beforehand_and_enter_alone_asks_for_one(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("soil_dug")
        await person.press("enter")
        assert person.asked == "soil_dug"
        assert "Choose one first" in person.sees_words()
        await person.press("c")
        await person.press("enter")
        assert person.session.answers.texts["soil_dug"] == "clay"
        await person.goes_to("soil_dug")
        assert "✓ your answer" in person.sees()


async def test_a_word_that_begins_no_choice_marks_none_and_takes_nothing(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("permission")
        await person.press(*"minnesota")
        assert "No choice begins with “mi" in person.says("heard")
        asked = person.asked
        field = person.app.screen.query_one(Choices)
        assert field.marked is None
        await person.press("enter")
        assert person.asked == asked and "permission" not in person.session.answers.texts
        await person.press("backspace", "m")
        assert person.says("heard") == "" and field.marked is not None


async def test_letters_jump_within_a_long_list(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.answers("Maple corner")
        assert person.asked == "state" and "Not in the US: type no." in person.sees_words()
        await person.press(*"wisconsin")
        assert "▸Wisconsin" in person.sees()
        await person.press("enter")
        place = {"state": "wi", "country": "us", "units": "us"}
        assert person.session.answers.texts == {"garden_name": "Maple corner", **place}
        assert person.asked == "surfaces.1.surface_kind"


async def test_no_typed_for_the_state_asks_for_the_country_and_its_units(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.answers("Maple corner")
        await person.press(*"no")
        assert "▸not in the United States" in person.sees()
        await person.press("enter")
        assert person.asked == "country" and "Units shown: Enter takes meters" in person.sees()
        await person.press("4", "enter")
        assert person.asked == "units"
        await person.press("enter")
        land = {"country": "australia", "units": "metric"}
        assert person.session.answers.texts == {"garden_name": "Maple corner", **land}
        assert person.asked == "surfaces.1.surface_kind"


async def test_what_is_half_typed_is_still_there_after_the_plan_the_keys_and_a_jump(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.types("Map")
        pages = {"ctrl+l": "PlanScreen", "f1": "HelpScreen", "ctrl+g": "ReviewScreen"}
        for key, page in pages.items():
            await person.press(key)
            assert person.page == page
            await person.press("escape")
            assert person.app.focused.value == "Map"  # type: ignore[union-attr]
        await person.goes_to("rain_depth")
        await person.goes_to("garden_name")
        assert person.app.focused.value == "Map"  # type: ignore[union-attr]
        assert "garden_name" not in person.session.answers.texts


async def test_dont_know_yet_is_kept_and_goes_on_with_how_to_find_out(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.press("ctrl+t")
        assert person.session.answers.texts["garden_name"] == "don't know yet"
        assert person.asked == "state"
        assert "To find out: Any short name will do" in person.told


async def test_dont_know_yet_takes_the_place_of_an_answer_only_after_a_question(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.answers("Maple corner")
        await person.press("escape")
        for answer, text in (("enter", "Maple corner"), ("y", "don't know yet")):
            await person.press("ctrl+t")
            assert "in the place of your answer" in person.sees_words()
            await person.press(answer)
            assert person.session.answers.texts["garden_name"] == text
        assert person.asked == "state"


async def test_why_and_how_to_find_out_open_and_close(sit) -> None:
    async with sit("garden.yaml", size=(100, 30)) as person:
        await person.press("ctrl+y")
        assert "Why: The name heads your plan" in person.sees_words()
        await person.press("ctrl+o")
        assert "How to find out: Any short name" in person.sees_words()
        await person.press("ctrl+o")
        assert "How to find out: Any" not in person.sees_words()


async def test_the_stage_strip_says_in_words_how_far_each_stage_is(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.answers("Maple corner")
        strip = person.sees().splitlines()[1]
        for name in ("◆ Start", "○ Siting", "✕ Soak test", "○ Survey", "○ Size", "○ Plants"):
            assert name in strip
        assert "Maple corner · Start · 2 of 7" in person.sees()
        await person.pilot.resize_terminal(140, 30)
        await person.rests()
        assert "◆ Start 1/7" in person.sees() and "✕ Soak test shut" in person.sees()


async def test_the_soak_stage_is_shut_until_the_lines_are_answered_and_then_opens(
    sit, located
) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("holes.1.hole_depth")
        assert "SHUT:" in person.sees()
        assert not person.app.screen.query("#field")
        await person.press("enter")
        assert person.asked != "holes.1.hole_depth"
        for address, text in located.items():
            person.session.jump(address)
            person.session.offer(person.session.step, text)
        await person.goes_to("holes.1.hole_depth")
        assert "SHUT:" not in person.sees()
        assert "CAUTION: Dig only gently, by hand, within 2 ft" in person.sees_words()
        await person.enters("15")
        assert person.asked == "holes.1.hole_dug_on"
        assert "test hole 1" in person.sees()
        await person.press("enter")
        assert person.session.answers.texts["holes.1.hole_depth"] == "15 in"


async def test_several_pasted_lines_are_refused_in_one_line_and_taken_in_a_list(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.pastes("Maple\ncorner")
        assert person.app.focused.value == ""  # type: ignore[union-attr]
        assert "more than one line" in person.told
        await person.pastes("x" * 500)
        assert person.app.focused.value == ""  # type: ignore[union-attr]
        await person.goes_to("favourites")
        await person.pastes("blue flag\nsedge")
        await person.press("enter")
        assert person.session.answers.texts["favourites"] == "blue flag\nsedge"


async def test_a_line_of_a_list_can_be_changed_and_taken_out(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("favourites")
        await person.enters("flag")
        await person.enters("sedge")
        await person.press("up")
        await person.press("enter")
        await person.press("backspace")
        await person.press("enter")
        await person.press("up")
        await person.press("up")
        await person.press("delete")
        await person.press("tab")
        await person.press("enter")
        assert person.session.answers.texts["favourites"] == "sedg"


async def test_now_writes_this_moment_into_the_field_of_a_time(sit, located) -> None:
    async with sit("garden.yaml") as person:
        for address, text in {**located, "holes.1.hole_depth": "15 in"}.items():
            person.session.jump(address)
            person.session.offer(person.session.step, text)
        await person.goes_to("holes.1.test_start")
        await person.press("ctrl+n")
        assert "Thursday 28 May 2026 09:00" in person.says("heard")
        await person.press("enter")
        assert person.session.answers.texts["holes.1.test_start"] == "2026-05-28T09:00:00-05:00"


async def test_a_name_that_looks_like_markup_is_shown_as_it_was_typed(sit) -> None:
    name = "[red]Bed[/] [@click=app.exit]x"
    async with sit("garden.yaml") as person:
        await person.enters(name)
        assert name in person.sees()
        await person.press("ctrl+g")
        assert name in person.sees()
        await person.press("escape")
        await person.press("ctrl+l")
        await person.settles()
        assert name in person.sees_words()


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
async def test_everything_that_matters_fits_a_small_window(sit, size: tuple[int, int]) -> None:
    async with sit("garden.yaml", size=size) as person:
        for address in ("lines_requested", "near_spot", "water_by", "notes"):
            await person.goes_to(f"spots.1.{address}" if address == "near_spot" else address)
            seen = person.sees_words()
            question = person.session.step.question
            assert question.text in seen
            assert question.caution in seen
            assert "Enter go on Esc back ^T don't know" in seen
            assert "F1 help ^Q quit" in seen


async def test_too_small_a_window_asks_for_more_room_and_keeps_what_is_typed(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.types("Maple")
        await person.pilot.resize_terminal(30, 10)
        await person.rests()
        assert "Make the window larger." in person.sees_words()
        await person.pilot.resize_terminal(80, 24)
        await person.rests()
        await person.enters(" corner")
        assert person.session.answers.texts["garden_name"] == "Maple corner"


async def test_the_reason_stands_under_the_hint_where_it_fits_and_gives_way_where_not(sit) -> None:
    async with sit("garden.yaml", size=(100, 30)) as person:
        await person.goes_to("rain_depth")
        assert "Why: It sets the size." in person.sees_words()
        await person.press("ctrl+y")
        assert person.sees_words().count("Why: It sets the size.") == 1
        await person.press("ctrl+y")
        await person.goes_to("spots.1.near_spot")
        assert "Why:" in person.sees_words()
        await person.pilot.resize_terminal(60, 20)
        await person.rests()
        assert "Why:" not in person.sees_words()
        assert person.session.step.question.text in person.sees_words()


async def test_the_picture_of_a_question_comes_with_how_to_find_out(sit, write) -> None:
    names = {"surfaces.1.surface_name": "roof", "surfaces.1.surface_kind": "roof"}
    async with sit(str(write("garden.yaml", names)), size=(100, 45)) as person:
        await person.goes_to("surfaces.1.surface_basis")
        await person.press("ctrl+o")
        assert "level: this is what the rain falls on" in person.sees_words()


async def test_further_pages_are_reached_with_the_mouse_in_a_small_window(sit) -> None:
    async with sit("garden.yaml", size=(60, 20)) as person:
        for word, page in (
            ("plants", "PlantsScreen"),
            ("try sizes", "TryOutScreen"),
            ("plan", "PlanScreen"),
        ):
            await person.clicks(word)
            await person.settles()
            assert person.page == page
            await person.clicks("leave" if page == "TryOutScreen" else "back")
        await person.clicks("why")
        assert "Why: The name heads your plan" in person.says("aside")


async def test_a_plant_that_is_not_in_the_list_is_told_at_once_and_kept(sit) -> None:
    async with sit("garden.yaml", size=(100, 30)) as person:
        await person.goes_to("favourites")
        await person.enters("swamp milkwede")
        assert "“swamp milkwede” is not in the plant list." in person.says("heard")
        assert "swamp milkweed" in person.says("heard")
        await person.enters("cardinal flower")
        assert "is not in the plant list" not in person.says("heard")
        await person.pastes("qqq\nrrr")
        assert "“rrr” is not in the plant list" in person.says("heard")
        await person.press("enter")
        kept = "swamp milkwede\ncardinal flower\nqqq\nrrr"
        assert person.session.answers.texts["favourites"] == kept
        await person.goes_to("favourites")
        assert "“swamp milkwede” is not in the plant list." in person.says("heard")


async def test_the_columns_of_the_rainfall_file_are_shown_and_enter_finds_them(
    sit, tmp_path
) -> None:
    (tmp_path / "rain.csv").write_text("date,rain_in,snow\n2020-05-01,0.4,0\n")
    texts = {"has_rain_record": "yes", "rain_record": "rain.csv", "rain_record_unit": "in"}
    async with sit("garden.yaml") as person:
        for address, text in texts.items():
            person.session.jump(address)
            person.session.offer(person.session.step, text)
        await person.goes_to("rain_date_column")
        assert "The file's columns: 1 date, 2 rain_in, 3 snow." in person.sees_words()
        assert "By its name it is 1 date." in person.sees_words()
        await person.press("enter")
        await person.goes_to("rain_depth_column")
        assert "By its name it is 2 rain_in." in person.sees_words()
        await person.enters("1")
        assert "Column 1 is given for the date and for the rain" in person.told
        await person.goes_to("rain_date_column")
        await person.press("ctrl+u")
        await person.enters("1")
        assert "This does not fit “Rain column" in person.sees_words()
        await person.press("enter")
        await person.goes_to("rain_depth_column")
        await person.press("ctrl+u")
        await person.enters("1")
        assert "gave for the date. Write the one that holds the rain." in person.sees_words()
        assert person.asked == "rain_depth_column"


async def test_a_refusal_leaves_the_question_over_a_long_list_in_sight(sit, write) -> None:
    async with sit(str(write("garden.yaml", {"country": "us"}))) as person:
        await person.goes_to("state")
        assert "Which state is the garden in?" in person.sees_words()
        await person.press("enter")
        await person.settles()
        for said in ("Which state is the garden in?", "Choose one first", "▹Alabama"):
            assert said in person.sees_words()


async def test_a_state_is_found_by_its_two_letters_or_by_its_name(sit, write) -> None:
    async with sit(str(write("garden.yaml", {"country": "us", "state": "wi"}))) as person:
        await person.goes_to("state")
        field = person.app.screen.query_one(Choices)
        for typed, key in (("mn", "mn"), ("ar", "ar"), ("ari", "az"), ("ma", "ma"), ("mai", "me")):
            field._begun = ""
            await person.press(*typed)
            assert field._keys[field.marked] == key, typed


@pytest.mark.parametrize("size", [(60, 20), (80, 24)])
async def test_the_texture_is_asked_in_two_short_lists_that_are_seen_whole(
    sit, sample, size
) -> None:
    path = Path(sample("halfway_soak_test.yaml"))
    whole = path.read_text(encoding="utf-8")
    path.write_text(whole.replace("      ribbon: short_gritty\n", ""), encoding="utf-8")
    async with sit(str(path), size=size) as person:
        while person.page != "QuestionScreen":
            await person.press("escape")
        await person.goes_to("holes.1.ribbon")
        assert "5 a ribbon over 2 in" in person.sees_words()
        assert "gritty" not in person.sees_words()
        await person.press("4")
        for one in ("5 a ribbon over 2 in", "How does it feel?", "1 gritty", "3 neither gritty"):
            assert one in person.sees_words()
        await person.press("enter")
        await person.press("enter")
        assert "Choose one of these." in person.sees_words()
        assert person.asked == "holes.1.ribbon"
        await person.press("2")
        # What is half chosen is still there after another page.
        await person.press("f1", "escape", "enter")
        assert person.session.answers.texts["holes.1.ribbon"] == "medium_smooth"
        await person.goes_to("holes.1.ribbon")
        assert "2 smooth, like flour ✓ your answer" in person.sees_words()
        await person.press("1", "enter")
        assert person.session.answers.texts["holes.1.ribbon"] == "falls_apart"


async def test_a_name_of_two_words_goes_to_that_choice_and_to_no_other(sit, subtests) -> None:
    async with sit("garden.yaml") as person:
        for address, said in (
            ("state", ("South Carolina", "West Virginia", "South Dakota", "New York", "Virginia")),
            ("spots.1.downhill_direction", ("south", "southeast", "north", "northwest", "west")),
        ):
            await person.goes_to(address)
            field = person.app.screen.query_one(Choices)
            for words in said:
                with subtests.test(words):
                    field._begun = ""
                    await person.press(*words)
                    assert field.marked is not None and field._labels[field.marked] == words.lower()


async def test_a_letter_after_a_pause_goes_on_with_a_word_or_begins_another(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("state")
        field = person.app.screen.query_one(Choices)
        for words, said in (("south dako", "south dakota"), ("ohio", "ohio"), ("sm", "maine")):
            field._begun = ""
            for letter in words:
                field._typed_at -= PAUSE_SECONDS + 1
                await person.press(letter if letter != " " else "space")
            assert field.marked is not None and field._labels[field.marked] == said


async def test_words_that_mean_a_choice_are_taken_as_on_plain_lines(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("spots.1.stands_after_rain")
        await person.press(*"sometimes")
        assert "I read this as a few times a year." in person.says("heard")
        await person.press("enter")
        assert person.session.answers.texts["spots.1.stands_after_rain"] == "few"
        await person.goes_to("state")
        await person.press(*"New Zealand")
        assert "I read this as not in the United States." in person.says("heard")
        await person.press(*"xx", "enter")
        assert '"new zealandxx" is not on the list' in person.says("heard")
        assert "state" not in person.session.answers.texts


async def test_a_reading_typed_where_a_choice_is_asked_for_is_no_choice(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("spots.1.stands_after_rain")
        await person.press(*"10:00 left 3 in", "enter")
        assert '"0:00 left 3 in" is not on the list' in person.says("heard")
        assert "spots.1.stands_after_rain" not in person.session.answers.texts
        # One figure after another goes from row to row.
        await person.press("backspace", *"13")
        assert person.app.screen.query_one(Choices).marked == 2


async def test_escape_closes_the_help_that_is_open_and_a_drawing_in_it_is_whole(sit, write) -> None:
    write("garden.yaml", {"country": "us", "surfaces.1.surface_kind": "roof"})
    async with sit("garden.yaml") as person:
        await person.goes_to("surfaces.1.pieces")
        await person.enters("30 x 14")
        await person.settles()
        await person.press("ctrl+o")
        await person.settles()
        assert "+--------+                     +--------+....." in person.sees()
        await person.press("escape")
        assert person.asked == "surfaces.1.pieces"
        assert "How to find out" not in person.says("aside")


async def test_f10_asks_every_question_from_here_on_and_says_so(sit, write) -> None:
    write("garden.yaml", {"country": "us", "state": "oh", "units": "us", "garden_name": "Gate"})
    async with sit("garden.yaml") as person:
        await person.goes_to("rain_depth")
        for said, page in (("Every question will be asked", 1), ("The short way", 0)):
            await person.press("f10")
            assert said in person.told
            assert person.session.every_question == bool(page)
        await person.press("f10")
        await person.enters("1 in")
        assert person.asked == "has_rain_record"
