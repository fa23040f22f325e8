"""The pages of the short way by keyboard: boxes, rows, verdicts, what is only told."""

from __future__ import annotations

from pathlib import Path

import pytest
import simple_way as simple
from textual.widgets import Input

from interview.screens.badge import told
from interview.screens.usual_rows import UsualRows

ROOF = {
    "garden_name": "Willow end",
    "country": "us",
    "state": "wi",
    "units": "us",
    "surfaces.1.surface_kind": "roof",
    "surfaces.1.gutter_outlets": "1",
    "surfaces.1.pieces": "rectangle 30 ft by 14 ft",
    "soil_dug": "loam",
}
"""An invented garden up to its first size."""
HOSE = {"room_length": "30 ft", "room_width": "16 ft", "spots.1.near_spot": "basement"}
BASEMENT = "spots.1.basement_distance"


def rows(person) -> UsualRows:
    return person.app.screen.query_one(UsualRows)


async def go(person, name: str) -> None:
    """Go to a page by its name in the list of all of them."""
    await person.press("ctrl+g")
    await person.enters(name)
    assert person.session.place.name == name


async def leave(person, typed: dict[str, str]) -> None:
    """Fill the page on the screen in, box by box, and leave it."""
    place = person.session.place
    if place.name == "timer":
        for key in simple.ANSWERS["timer"]:
            await person.goes_to(f"holes.1.{key}")
            await person.answers(typed[key])
        return
    while person.page == "QuestionScreen" and person.session.place == place:
        key = person.asked.rpartition(".")[2]
        before = (person.asked, dict(person.session.answers.texts), list(person.session.taken))
        if key in typed and not person.app.screen.query(UsualRows):
            await person.answers(typed[key])
        else:
            await person.press("enter")
        after = (person.asked, dict(person.session.answers.texts), list(person.session.taken))
        assert after != before or person.session.place != place, person.sees()


async def test_the_boxes_of_a_page_are_kept_together_or_not_at_all(sit, write) -> None:
    async with sit(str(write("garden.yaml", ROOF))) as person:
        await person.goes_to("spots.1.slope_run")
        await person.enters("10 ft")
        assert person.asked == "spots.1.slope_drop"
        assert "Length of the slope string: 10 ft" in person.sees()
        assert "Downhill is toward: Enter skips" in person.sees()
        assert "spots.1.slope_run" not in person.session.answers.texts
        await person.enters("much")
        assert "amiss" in person.app.screen.field.classes
        assert person.app.focused.value == "much"
        await person.press("shift+tab")
        assert person.asked == "spots.1.slope_run" and person.app.focused.value == "10 ft"
        await person.press("tab")
        await person.press("ctrl+u")
        await person.types("2 in")
        # By the length that is typed above and not kept yet.
        assert person.says("preview") == "✓ GOOD 1.7 %: fine, up to 8 %."
        await person.press("enter")
        assert person.asked == "spots.1.downhill_direction"
        await person.press("enter")
        texts = person.session.answers.texts
        assert texts["spots.1.slope_run"] == "10 ft" and texts["spots.1.slope_drop"] == "2 in"
        assert "1.7 %: fine, up to 8 %." in person.told


async def test_an_empty_box_that_must_be_answered_is_refused_where_it_stands(sit, write) -> None:
    async with sit(str(write("garden.yaml", ROOF))) as person:
        await person.goes_to("spots.1.slope_run")
        await person.press("enter")
        assert person.asked == "spots.1.slope_run"
        assert "Nothing was written" in person.says("heard")


async def test_a_box_that_another_one_opens_is_seen_at_once(sit) -> None:
    async with sit("garden.yaml") as person:
        await person.goes_to("surfaces.1.surface_kind")
        assert "Downspouts" not in person.says("after")
        await person.press("1")
        assert "Downspouts on this gutter" in person.says("after")
        await person.press("3")
        assert "Downspouts" not in person.says("after")


async def test_enter_takes_a_usual_page_whole_and_stores_nothing(sit, write) -> None:
    async with sit(str(write("garden.yaml", ROOF))) as person:
        assert person.session.place.name == "rough_size"
        assert rows(person).marked is None
        assert "1 Rain to hold 1 in" in person.sees_words()
        # A single further row is shown at once.
        assert "2 Daily rainfall record no" in person.sees_words()
        said = "The usual for the rest. Enter takes all; a number or an arrow, then Enter, changes"
        assert said in person.sees_words()
        assert not person.app.screen.query_one("#plan_so_far").display
        await person.press("enter")
        assert person.session.place.name == "another_surface"
        assert person.session.taken == ["rough_size"]
        assert "rain_depth" not in person.session.answers.texts


async def test_a_row_that_waits_for_a_box_says_so_and_fills_with_it(sit, write) -> None:
    asked = {"country": "us", "state": "mn", "lines_requested": "asked"}
    async with sit(str(write("garden.yaml", asked))) as person:
        await person.goes_to("lines_asked_on")
        assert "waiting time: once the day you asked is given" in person.says("after")
        assert "needs an answer" not in person.sees()
        await person.types("2026-05-21")
        assert "Holidays in the waiting time: Monday 25 May 2026" in person.says("after")


@pytest.mark.parametrize("keys", [("1",), ("down",)])
async def test_a_row_is_opened_in_place_and_comes_back_to_the_list(sit, write, keys) -> None:
    async with sit(str(write("garden.yaml", ROOF))) as person:
        await person.press(*keys)
        assert "Enter opens “Rain to hold”" in person.says("hint")
        await person.press("enter")
        assert isinstance(person.app.focused, Input)
        await person.enters("1.5 in")
        assert person.session.answers.texts["rain_depth"] == "1.5 in"
        assert person.session.place.name == "rough_size" and rows(person).marked is None
        assert "1 Rain to hold 1 1/2 in" in person.sees_words()
        assert "for 1.5 in of rain" in person.says("told")


async def test_the_further_rows_are_shown_by_the_last_one_and_numbered_on(sit, write) -> None:
    async with sit(str(write("garden.yaml", ROOF))) as person:
        await go(person, "usual_bed")
        assert "9  10 more…" in person.sees()
        await person.press("9", "enter")
        assert len(rows(person).rows) == 18
        await person.press("1", "2")
        assert rows(person).marked == 11
        await person.press("1", "9")
        assert rows(person).marked == 8


async def test_a_good_verdict_is_told_on_the_next_page(sit, write) -> None:
    async with sit(str(write("garden.yaml", {**ROOF, **HOSE}))) as person:
        await go(person, "basement_distance")
        await person.types("14 ft 6 in")
        assert person.says("preview") == "▲ NEAR 14 ft 6 in; 10 ft needed, 20 ft cautious."
        await person.press("enter")
        assert person.asked != BASEMENT
        assert "Fine: 14 ft 6 in; 10 ft needed, 20 ft cautious." in person.told


async def test_a_verdict_that_stays_wants_a_way_chosen(sit, write) -> None:
    async with sit(str(write("garden.yaml", {**ROOF, **HOSE}))) as person:
        await go(person, "basement_distance")
        preview = person.app.screen.query_one("#preview")
        await person.types("8 ft")
        assert person.says("preview") == "■ TOO NEAR 8 ft, 10 ft needed."
        assert "refused" in preview.classes
        await person.press("ctrl+u")
        await person.types("12 ft")
        assert person.says("preview").startswith("▲ NEAR 12 ft")
        assert "refused" not in preview.classes
        await person.press("ctrl+u")
        await person.enters("8 ft")
        assert person.asked == BASEMENT
        assert person.says("heard") == "■ TOO NEAR 8 ft, 10 ft needed."
        assert "refused" in person.app.screen.query_one("#heard").classes
        seen = person.sees_words()
        assert "1 Move the hose 2 ft, measure again" in seen
        assert "2 Try another spot" in seen and "3 Keep it: the plan will say so" in seen
        await person.press("enter")
        assert "Choose one of these first." in person.says("heard")
        await person.press("1", "enter")
        assert person.asked == BASEMENT and person.app.focused.value == "8 ft"
        await person.press("enter")
        assert person.asked != BASEMENT
        await person.goes_to(BASEMENT)
        await person.press("ctrl+u")
        await person.enters("7 ft")
        await person.press("1", "enter")
        # What is measured anew takes the place of what was too near.
        await person.enters("6 ft")
        assert person.session.answers.texts[BASEMENT] == "6 ft"
        await person.press("1", "enter")
        await person.enters("7 ft")
        await person.press("3", "enter")
        assert person.asked != BASEMENT
        assert person.session.answers.texts[BASEMENT] == "7 ft"


async def test_what_was_put_off_is_on_the_pages_that_tell_and_a_number_goes_there(
    sit, write
) -> None:
    path = write("garden.yaml", {**ROOF, "permission": "don't know yet"})
    async with sit(str(path)) as person:
        await go(person, "end_of_today")
        row = next(one for one in rows(person).rows if one.goes)
        assert row.label == "To find out: Right to dig here"
        number = rows(person).rows.index(row) + 1
        await person.press(str(number), "enter")
        assert person.asked == "permission"


async def test_every_question_may_be_asked_by_itself(sit, write) -> None:
    async with sit(str(write("garden.yaml", ROOF))) as person:
        await person.press("ctrl+g", "f10")
        assert "Every question will be asked" in person.told
        await person.enters("rain_depth")
        await person.press("enter")
        assert person.session.answers.texts["rain_depth"] == "1 in"
        await person.press("ctrl+g", "f10", "escape")
        assert not person.session.every_question


async def test_the_start_page_asks_every_question_of_a_garden_opened_from_it(sit) -> None:
    async with sit() as person:
        assert "Today, no digging: measure the roof, find the spot." in person.sees_words()
        await person.press("f10")
        assert "Every question will be asked" in person.told
        await person.press("enter")
        assert person.session.every_question


async def test_whoever_comes_back_is_told_what_is_due(sit, write) -> None:
    texts = {**ROOF, "surfaces.1.another_surface": "no", "spots.1.stands_after_rain": "never"}
    async with sit(str(write("garden.yaml", texts))) as person:
        await person.settles()
        assert person.told.startswith("About 86 sq ft.") and "Next: " in person.told


@pytest.mark.parametrize(
    "name",
    ["water_from", "rough_size", "usual_roofs", "end_of_today", "ticket", "usual_bed", "overflow"],
)
async def test_a_page_is_whole_in_the_smallest_usual_window(sit, write, name: str) -> None:
    path = write("garden.yaml", {**ROOF, **HOSE, "lines_requested": "asked"})
    async with sit(str(path), size=(60, 20)) as person:
        await go(person, name)
        await person.rests()
        seen = person.sees().splitlines()
        assert all(len(line) <= 60 for line in seen)
        assert seen[-1].rstrip().endswith("F1 help  ^Q quit")
        asking = person.app.screen.query_one("#asking")
        focused = person.app.focused
        assert focused is not None and focused.region.intersection(asking.region).height > 0
        for part in ("hint", "after", "before"):
            said = person.app.screen.query_one(f"#{part}")
            if said.display and asking.max_scroll_y == 0:
                assert asking.region.contains_region(said.region), part


async def test_the_columns_of_a_file_just_named_are_shown_and_asked_once(
    sit, tmp_path: Path
) -> None:
    (tmp_path / "odd.csv").write_text("when;wet\n2020-01-01;1.0\n2020-01-02;0.2\n")
    async with sit("garden.yaml") as person:
        person.session.offer(person.session.jump("has_rain_record"), "yes")
        await person.goes_to("rain_record")
        await person.enters("odd.csv")
        await person.press("1", "enter")
        assert person.asked == "rain_date_column"
        asked = person.says("asked")
        assert "when" in asked and "wet" in asked
        around = person.says("before") + person.says("after")
        assert around.count("Rain column of the rainfall file") == 1
        assert "by its name" not in around
        assert "Date column of the rainfall file" not in around


def test_a_verdict_that_a_page_tells_stands_on_a_badge_in_its_color():
    said = told(["About 86 sq ft.", "FIX: mend it.", "TOO NEAR: 8 ft.", "Go on."], apart=False)
    assert said.plain.splitlines() == [
        "About 86 sq ft.", " ▲ FIX  Mend it.", " ■ TOO NEAR  8 ft.", "Go on.",
    ]  # fmt: skip
    styles = {said.plain[one.start : one.end]: str(one.style) for one in said.spans}
    assert styles["About 86 sq ft."] == "bold"
    assert styles["Mend it."] == "bold $look" and styles["8 ft."] == "bold $stop"
    assert told(["One.", "Two."], apart=True).plain == "One.\n\nTwo."


async def test_what_stops_a_spot_has_the_color_of_a_stop_beside_the_question(sit, write) -> None:
    async with sit(str(write("garden.yaml", {**ROOF, **HOSE, BASEMENT: "8 ft"}))) as person:
        await person.settles()
        beside = person.app.screen.query_one("#plan_lines").render()
        assert " ■ STOP  The garden is 8 ft from" in beside.plain
        badge = next(one for one in beside.spans if "STOP" in beside.plain[one.start : one.end])
        assert str(badge.style) == "bold $ground on $stop"


async def test_the_caution_of_a_page_that_tells_is_marked_as_every_other(sit, write) -> None:
    asked = {**ROOF, **HOSE, "lines_requested": "asked", "lines_asked_on": "2026-05-27"}
    async with sit(str(write("garden.yaml", asked))) as person:
        await go(person, "waiting")
        assert person.says("caution").startswith("CAUTION: Do not dig, not even the test hole")
        assert "Do not dig" not in person.says("told")


async def test_in_a_large_window_a_page_that_tells_lists_its_stage_too(sit, write) -> None:
    path = write("garden.yaml", {**ROOF, **HOSE})
    async with sit(str(path), size=(160, 45)) as person:
        await go(person, "end_of_today")
        listed = str(person.app.screen.query_one("#stage_list").render())
        assert "◆ End of today" in listed and "○ Where overflow goes" in person.sees()
        # A stage of one page says no more than the page does.
        await go(person, "usual_bed")
        assert not person.says("stage_list")


async def test_a_page_that_tells_is_laid_out_anew_for_another_window(sit, write) -> None:
    told = {}
    async with sit(str(write("garden.yaml", {**ROOF, **HOSE}))) as person:
        await go(person, "end_of_today")
        for size in ((80, 24), (100, 30), (80, 24)):
            await person.pilot.resize_terminal(*size)
            await person.settles()
            said = str(person.app.screen.query_one("#told").render())
            assert said == told.setdefault(size, said)
    assert "\n\n" not in told[80, 24] and "\n\n" in told[100, 30]
