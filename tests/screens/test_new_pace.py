"""A new calibration on the full screen: every paced length it changes is listed."""

from __future__ import annotations

import pytest


@pytest.fixture
def paced(walkers):
    """A roof that two people have paced."""
    return {
        "units": "us",
        **walkers,
        "walkers.2.another_walker": "no",
        "surfaces.1.surface_name": "south roof",
        "surfaces.1.surface_kind": "roof",
        "surfaces.1.pieces": "rectangle 16 paces by 7 paces Bob\nless rectangle 3 ft by 2 paces",
    }


async def test_the_lengths_a_new_pace_changes_are_listed_until_the_list_is_closed(
    sit, write, paced
) -> None:
    async with sit(str(write("garden.yaml", paced)), size=(80, 24)) as person:
        await person.goes_to("walkers.1.pace_line")
        await person.press(*["backspace"] * 5)
        await person.enters("60 ft")
        assert person.page == "ChangesScreen"
        said = person.says("changed_lines")
        assert "south roof, piece 1, 16 paces: was 40 ft, now 48 ft (20 % longer)" in said
        assert "south roof, piece 2, 2 paces: was 5 ft, now 6 ft (20 % longer)" in said
        assert "Bob" not in said
        assert "the area that drains here: was 830 ft², now 990 ft²" in said
        await person.press("enter")
        assert person.page == "QuestionScreen"
        # Back to where one was.
        assert person.asked == "soil_dug"


async def test_a_change_that_is_folded_stays_under_its_own_beginning(sit, write, paced) -> None:
    async with sit(str(write("garden.yaml", paced)), size=(60, 20)) as person:
        await person.goes_to("walkers.1.pace_line")
        await person.press(*["backspace"] * 5)
        await person.enters("60 ft")
        await person.settles()
        part = person.app.screen.query_one("#changed_lines")
        lines = [line.rstrip() for line in str(part.render()).split("\n")]
        assert part.size.height == len(lines) > 3
        assert {line[:2] for line in lines} == {"- ", "  "}


async def test_a_list_of_many_changes_scrolls_and_closes_by_button(sit, write, paced) -> None:
    many = "\n".join(f"rectangle {count} paces by 7 ft" for count in range(3, 33))
    path = write("garden.yaml", {**paced, "surfaces.1.pieces": many})
    async with sit(str(path), size=(80, 24)) as person:
        await person.goes_to("walkers.1.pace_line")
        await person.press(*["backspace"] * 5)
        await person.enters("60 ft")
        assert "piece 30, 32 paces: was 80 ft, now 96 ft" in person.says("changed_lines")
        await person.press("end")
        await person.settles()
        assert "piece 30" in person.sees_words()
        await person.pilot.click("#done")
        await person.rests()
        assert person.page == "QuestionScreen"


async def test_nothing_is_listed_where_no_length_changes(sit, write, paced) -> None:
    async with sit(str(write("garden.yaml", paced)), size=(80, 24)) as person:
        await person.goes_to("walkers.1.walker_name")
        await person.press(*["backspace"] * 3)
        await person.enters("Anne")
        assert person.page == "QuestionScreen"
        await person.goes_to("surfaces.1.surface_name")
        await person.enters(" 2")
        assert person.page == "QuestionScreen"


async def test_the_pace_is_said_back_when_a_walk_was_added(sit, write, paced) -> None:
    texts = {key: text for key, text in paced.items() if "pace_counts" not in key}
    async with sit(str(write("garden.yaml", texts)), size=(80, 24)) as person:
        await person.goes_to("walkers.1.pace_counts")
        for count in ("20", "20", "20"):
            await person.enters(count)
        assert "20; 20; 20: one pace is 2.5 ft" in person.says("heard")
