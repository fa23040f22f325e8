"""Looking over every answer, and the plan to read, check and take outside."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from interview.screens.help import OF_A_PAGE, folded_keys
from interview.screens.keys import PAGES
from interview.screens.plan import write_sheet
from interview.sheet.page import page_html
from interview.sheet.report import plan_text


async def test_review_searches_jumps_and_edits(sit, write) -> None:
    path = write("oak.yaml", {"garden_name": "Oak", "rain_depth": "1 in"})
    async with sit(str(path)) as person:
        await person.press("ctrl+g")
        await person.enters("rain hold")
        assert person.asked == "rain_depth"
        await person.press("backspace", "backspace", "backspace", "backspace")
        await person.enters("1.25")
        assert person.session.answers.texts["rain_depth"] == "1.25 in"


async def test_the_words_of_a_question_find_it_and_words_of_none_are_told(sit, write) -> None:
    async with sit(str(write("garden.yaml", {"garden_name": "here"}))) as person:
        await person.press("ctrl+g")
        await person.types("what do you call this")
        assert "Name of the garden" in person.sees()
        assert "pages done" in person.says("counted")
        await person.types(" zzz")
        assert "No question or answer has these words." in person.says("counted")
        await person.press("enter")
        assert "No question or answer has these words." in person.says("counted")


async def test_a_title_that_begins_with_what_is_searched_for_comes_first(sit, write) -> None:
    path = write("oak.yaml", {"country": "us"})
    async with sit(str(path)) as person:
        for typed, found in (("State", "state"), ("slope", "slope_run"), ("road", "road_salt")):
            await person.press("ctrl+g")
            await person.types(typed)
            rows = person.sees().splitlines()[4:8]
            await person.press("enter")
            assert person.asked.rpartition(".")[2] == found, rows


async def test_whoever_quits_at_a_question_gone_to_comes_back_to_it(sit, write) -> None:
    known = {"garden_name": "Oak", "units": "us", "country": "uk", "rain_depth": "1 in"}
    path = write("oak.yaml", known)
    before = path.read_text(encoding="utf-8")
    async with sit(str(path)) as person:
        assert person.asked == "has_rain_record"
        await person.press("ctrl+q")
    assert path.read_text(encoding="utf-8") == before
    async with sit(str(path)) as person:
        await person.goes_to("children")
        await person.press("ctrl+q")
    async with sit(str(path)) as person:
        assert person.asked == "children"


async def test_times_are_shown_as_people_write_them_and_read_back_the_same(
    sit, sample, clock
) -> None:
    clock.forward(hours=9)
    path = sample("halfway_soak_test.yaml")
    raw = re.compile(r"\d{4}-\d\d-\d\dT")
    async with sit(path, size=(160, 60)) as person:
        before = dict(person.session.answers.texts)
        await person.press("escape")
        await person.goes_to("holes.1.first_fill_start")
        await person.press("ctrl+g")
        await person.types("hole")
        assert "First soaking: filled (test hole 1): Thu 28 May, 08:00" in person.sees_words()
        assert "Readings (test hole 1): Thu 28 May, 16:00 left 7 1/8 in" in person.sees_words()
        assert "hole is dug (test hole 1): Thursday 28 May 2026" in person.sees_words()
        assert not raw.search(person.sees())
        await person.press("escape")
        for _ in range(6):
            assert not raw.search(person.sees()), person.asked
            await person.press("enter")
        assert person.session.answers.texts == before
        await person.goes_to("holes.1.test_start")
        assert person.app.focused.value == "2026-05-28 15:00"
        await person.press("ctrl+n")
        assert person.app.focused.value == "2026-05-28 18:00"


async def test_a_time_is_found_by_its_figures_in_the_file(sit, sample) -> None:
    async with sit(sample("halfway_soak_test.yaml")) as person:
        await person.press("escape")
        await person.press("ctrl+g")
        await person.enters("2026-05-28T14:30")
        assert person.asked == "holes.1.second_fill_empty"


async def test_answers_set_aside_are_marked_and_stay(sit, write) -> None:
    path = write("oak.yaml", {"country": "us", "state": "wi"})
    async with sit(str(path)) as person:
        await person.goes_to("country")
        await person.press("2", "enter")
        await person.press("enter")
        assert person.session.answers.texts["country"] == "canada"
        await person.press("ctrl+g")
        await person.types("state wisc")
        assert "State: Wisconsin [set aside: does not apply now]" in person.sees_words()
        await person.press("enter")
        assert person.page == "ReviewScreen"
        assert person.session.answers.texts["state"] == "wi"


async def test_an_answer_is_taken_away_only_after_a_question(sit, write) -> None:
    path = write("oak.yaml", {"garden_name": "Oak"})
    async with sit(str(path)) as person:
        for answer, left in (("enter", True), ("y", False)):
            await person.press("ctrl+g")
            await person.types("garden_name")
            await person.press("f7")
            await person.rests()
            assert person.page == "Ask"
            await person.press(answer)
            assert ("garden_name" in person.session.answers.texts) is left
            await person.press("escape")


async def test_a_whole_item_is_removed_and_those_after_it_move_up(sit, write) -> None:
    spots = {
        "spots.1.spot_name": "front",
        "spots.1.another_spot": "yes",
        "spots.2.spot_name": "back",
    }
    path = write("oak.yaml", spots)
    async with sit(str(path)) as person:
        await person.press("ctrl+g")
        await person.types("spots.1.spot_name")
        await person.clicks("remove this whole item")
        await person.rests()
        assert "Remove spot 1 with all its answers?" in person.sees_words()
        await person.press("y")
        assert person.session.answers.texts == {"spots.1.spot_name": "back"}


async def test_the_next_open_question_is_one_key_away(sit, write) -> None:
    path = write("oak.yaml", {"garden_name": "Oak", "units": "us"})
    async with sit(str(path)) as person:
        await person.press("escape")
        await person.press("ctrl+g")
        await person.press("ctrl+g")
        assert person.asked == "state"


async def test_the_plan_is_shown_with_the_working_of_its_figures(
    sit, write, clock, finished
) -> None:
    clock.forward(days=30)
    path = write("oak.yaml", finished)
    async with sit(str(path), size=(100, 30)) as person:
        await person.press("ctrl+l")
        await person.app.workers.wait_for_complete()
        await person.rests()
        assert "At a glance" in person.sees() and "water stands" in person.sees()
        await person.press("ctrl+o")
        await person.settles()
        await person.press("down", "down", "down")
        assert "how:" in person.sees()
        assert "source:" in person.sees()


async def test_the_sheet_is_written_beside_the_answers_and_never_over_anything(
    sit, write, tmp_path: Path
) -> None:
    path = write("oak.yaml", {"garden_name": "Oak"})
    async with sit(str(path)) as person:
        await person.press("ctrl+l")
        await person.app.workers.wait_for_complete()
        await person.press("ctrl+s")
        await person.press("ctrl+s")
        await person.settles()
        # Said once, over the plan.
        assert "The sheet is in" in person.says("lead") and not person.told
    page = (tmp_path / "oak_plan.html").read_text(encoding="utf-8")
    assert page.startswith("<!doctype html>") and "<h1>Oak</h1>" in page
    assert (tmp_path / "oak_plan-2.html").exists()


async def test_the_yard_card_is_one_key_away_and_its_place_stays_on_the_page(
    sit, write, tmp_path: Path
) -> None:
    path = write("oak.yaml", {"garden_name": "Oak"})
    async with sit(str(path)) as person:
        await person.press("ctrl+l")
        await person.app.workers.wait_for_complete()
        await person.press("c")
        await person.settles()
        lead = str(person.app.screen.query_one("#lead").render())
        assert "oak-card.txt" in lead and "lp or lpr" in lead
        await person.press("ctrl+s")
        await person.settles()
        lead = str(person.app.screen.query_one("#lead").render())
        assert "oak_plan.html" in lead and "browser" in lead
    assert (tmp_path / "oak-card.txt").read_text(encoding="utf-8").startswith("YARD CARD: Oak")


async def test_the_shopping_list_is_one_key_away_as_the_printed_pages_say(
    sit, sample, tmp_path: Path
) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.press("ctrl+l")
        await person.settles()
        assert "J on the page of the plan" in page_html(person.session.plan)
        await person.press("j")
        await person.settles()
        lead = str(person.app.screen.query_one("#lead").render())
        assert "finished_us-jobs.txt" in lead and "shopping list" in lead
    written = (tmp_path / "finished_us-jobs.txt").read_text(encoding="utf-8")
    for part in ("\nDIGGING -", "\nLEVELS BEFORE PLANTING -", "\nSHOPPING LIST -"):
        assert part in written


async def test_what_was_written_is_said_to_be_old_once_an_answer_has_changed(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.press("ctrl+l")
        await person.settles()
        await person.press("c", "j")
        await person.settles()
        await person.press("f5", "escape")
        await person.settles()
        assert "finished_us-jobs.txt" in person.says("lead") and "lp or lpr" in person.says("lead")
        # Another plant is chosen: neither page has it.
        for keys in (("f5",), ("enter",), ("down", "enter"), ("escape",)):
            await person.press(*keys)
            await person.settles()
        lead = person.says("lead")
        assert lead.startswith("Older than your last change: the yard card in ")
        assert "the job list in " in lead and lead.endswith("Write it anew.")
        await person.press("j")
        await person.settles()
        await person.press("f5", "escape")
        await person.settles()
        lead = person.says("lead")
        assert "yard card" in lead and "job list" not in lead


def test_a_sheet_in_a_folder_that_takes_none_is_an_error_that_is_told(tmp_path: Path) -> None:
    with pytest.raises(OSError):
        write_sheet(tmp_path / "nowhere" / "oak.yaml", "plan")


async def test_the_sheet_of_76_columns_is_not_wrapped_again_in_a_window_of_80(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.press("ctrl+l")
        await person.settles()
        text = plan_text(person.session.plan)
        assert max(len(line) for line in text.splitlines()) > 72
        shown = person.app.screen.query_one("#sheet > .drawn").text.splitlines()
        # Beside the drawings and the titles, which are shown otherwise, it is the text itself.
        told = [line for line in text.splitlines() if line.startswith("- ")]
        assert [line for line in shown if line.startswith("- ")] == told


async def test_every_page_of_the_plan_is_one_key_away_and_leads_back(sit, write) -> None:
    async with sit(str(write("oak.yaml", {"garden_name": "Oak"}))) as person:
        await person.press("ctrl+l")
        for key, page in {"f3": "GardenScreen", "f4": "TryOutScreen", "f5": "PlantsScreen"}.items():
            await person.press(key)
            assert person.page == page
            await person.settles()
            await person.press("escape")
            assert person.page == "PlanScreen"
            await person.settles()


async def test_the_page_of_keys_names_the_keys_of_every_page(sit) -> None:
    async with sit("garden.yaml", size=(100, 60)) as person:
        await person.press("f1")
        for words in ("F3 the pieces", "F4 try other sizes", "F5 the plants", "H the next hole"):
            assert words in person.sees_words()


async def test_in_a_large_window_the_answers_stand_under_each_other(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(100, 45)) as person:
        await person.press("ctrl+g")
        await person.rests()
        rows = person.sees().splitlines()
        at = next(place for place, row in enumerate(rows) if "Pieces of the surface" in row)
        # What is folded too.
        assert rows[at].index("rectangle") == len(rows[at + 1]) - len(rows[at + 1].lstrip())
        places = {
            next(row for row in rows if f" {label}: " in row).index(said)
            for label, said in (("State", "Minnesota"), ("Rain to hold", "1 in"))
        }
        assert len(places) == 1


async def test_a_folded_line_of_the_working_goes_on_under_its_own_beginning(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(60, 20)) as person:
        await person.press("ctrl+l")
        await person.settles()
        await person.press("ctrl+o")
        await person.settles()
        first, *rest = str(person.app.screen.query_one("#working_text").render()).splitlines()
        assert first.startswith("First day to dig") and len(rest) > 4
        assert all(line.startswith("  ") for line in rest)


async def test_an_answer_is_gone_to_from_the_plan(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.press("ctrl+l")
        await person.press("ctrl+g")
        await person.enters("rain hold")
        assert person.asked == "rain_depth" and person.page == "QuestionScreen"


async def test_the_plan_is_leafed_through_while_the_keys_at_the_foot_are_gone_to(
    sit, sample
) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.press("ctrl+l")
        await person.settles()
        sheet = person.app.screen.query_one("#sheet")
        await person.press("tab", "pagedown")
        assert sheet.scroll_y > 0 and person.app.focused is not sheet
        await person.press("pageup")
        assert sheet.scroll_y == 0


async def test_the_keys_of_the_page_one_comes_from_are_told_first(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.press("ctrl+l")
        await person.press("f1")
        assert "The plan (^L):" in person.sees()
        for key in ("escape", "escape", "f4", "f1"):
            await person.press(key)
        assert "Trying sizes out (F4):" in person.sees() and "The plan (^L):" not in person.sees()


def test_every_part_that_leads_the_keys_of_a_page_is_there() -> None:
    for page, lead in OF_A_PAGE.items():
        assert page in PAGES and folded_keys(76, page).startswith(lead), page
