"""The picture beside a question: where it stands, and that it follows what is typed."""

from __future__ import annotations

import re
import threading
from itertools import pairwise

import pytest

from interview.garden import live_picture as garden_picture
from interview.screens import after_typing
from interview.screens.lists import Choices
from interview.screens.live import LivePicture
from interview.screens.preview import Preview

SIZES = [(60, 20), (80, 24), (100, 30), (160, 45)]
ADDRESSES = {
    "spots.1.near_spot": "lie within about 200 ft",
    "spots.1.tree_distance": "trunk of the tree",
    "spots.1.slope_run": "Stretch a level string",
    "spots.1.overflow_to": "extra water go",
    "room_length": "Lay a hose",
    "surfaces.1.pieces": "this side of the roof",
    "surfaces.1.gutter_outlets": "downspout",
    "holes.1.hole_depth": "How deep is the test hole",
    "holes.1.hole_left": "left the hole",
    "holes.1.readings": "water",
    "floor_length": "will you make the floor",
    "rain_depth": "rain should the garden hold",
    "permission": "own ground",
    "usual_plants": "",
}
"""A page of each kind with some of its words: ticks, lengths, lists, choices, readings, rows."""


def picture(person) -> LivePicture:
    return person.app.screen.query_one(LivePicture)


def overlapping(person) -> list[str]:
    """Return the parts of the page that lie over one another, or out of their box."""
    screen = person.app.screen
    body, said = screen.query_one("#body").region, []
    boxes = ("left", "live", "plan_so_far")
    regions = {one: screen.query_one(f"#{one}") for one in boxes}
    there = {name: one.region for name, one in regions.items() if one.region.area}
    for name, region in there.items():
        if not body.contains_region(region):
            said.append(f"{name} {region} leaves the body {body}")
        said += [
            f"{name} lies over {other}"
            for other, over in there.items()
            if other > name and region.overlaps(over)
        ]
    asking = screen.query_one("#asking")
    parts = list(asking.children)
    rows = [one.virtual_region for one in parts if one.display and one.virtual_region.area]
    for above, below in pairwise(rows):
        if above.bottom > below.y:
            said.append(f"{above} lies over {below}")
    wide = [one for one in parts if one.display and one.region.right > asking.region.right]
    return said + [f"{one.id} is cut off at the right" for one in wide]


@pytest.mark.parametrize("size", SIZES, ids=str)
async def test_nothing_of_a_page_is_cut_off_or_lies_over_another_part(sit, sample, size) -> None:
    async with sit(sample("finished_us.yaml"), size=size) as person:
        said = []
        for address, asked in ADDRESSES.items():
            await person.app.screen._go(address)
            await person.rests()
            said += [f"{address}: {one}" for one in overlapping(person)]
            if asked and asked not in " ".join(str(person.says("asked")).split()):
                said.append(f"{address}: the question is not seen")
            focused = person.app.focused
            seen = person.app.screen.find_widget(focused)
            if not seen.region.intersection(seen.clip).area:
                said.append(f"{address}: the focus is not seen")
        assert not said, "\n".join(said)


@pytest.mark.parametrize(
    ("size", "column", "box"),
    [((80, 24), 42, (36, 11)), ((100, 30), 48, (50, 17)), ((160, 45), 66, (92, 31))],
    ids=str,
)
async def test_the_picture_stands_beside_the_question_and_the_plan_under_it(
    sit, sample, size, column, box
) -> None:
    async with sit(sample("finished_us.yaml"), size=size) as person:
        await person.goes_to("spots.1.tree_distance")
        await person.rests()
        screen, shown = person.app.screen, picture(person)
        assert screen.query_one("#left").region.right == column
        assert tuple(shown.size) == box and shown.region.x == column + 1
        plan = screen.query_one("#plan_so_far")
        assert plan.region.y == shown.region.bottom and plan.size.height >= 4
        assert "25 ft ✓" in shown.text and "9 ft ▲" in shown.text
        assert len(shown.strips) == shown.size.height


async def test_there_is_none_in_a_small_window_nor_beside_its_rows_and_it_comes_back(
    sit, sample
) -> None:
    async with sit(sample("finished_us.yaml"), size=(60, 20)) as person:
        await person.goes_to("spots.1.tree_distance")
        assert not picture(person).display
        await person.pilot.resize_terminal(80, 24)
        await person.rests()
        assert "25 ft ✓" in picture(person).text and picture(person).region.area
        await person.app.screen._go("usual_plants")
        await person.rests()
        assert not picture(person).display
        assert person.app.screen.query_one("#left").size.width > 70


ROWS = {
    "rough_size": "25 ft 6 in",
    "end_of_today": "25 ft ✓",
    "usual_roofs": "17 ft 11 1/2 in",
    "usual_test": "09:00",
    "result": "15 in deep",
    "usual_bed": "crest +12 in",
    "usual_plants": "water in",
    "the_plan": "over all 25 ft 3 in",
}
"""Pages of rows, each with words that only its picture has or tells the size of."""


async def test_in_a_wide_window_rows_have_the_whole_height_for_their_picture(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(160, 45)) as person:
        for name, words in ROWS.items():
            await person.app.screen._go(name)
            await person.rests()
            shown = picture(person)
            assert words in shown.text and not overlapping(person), name
            assert shown.size.height == person.app.screen.query_one("#body").size.height
            assert len(shown.strips) <= shown.size.height
        # Under a sky the ground goes on to the foot of the picture.
        await person.app.screen._go("usual_bed")
        await person.rests()
        rows = picture(person).strips
        sky, soil = (rows[at]._segments[0].style.bgcolor.triplet for at in (1, -1))
        assert sky.blue > sky.red and soil.red > soil.blue


async def test_the_picture_follows_what_is_typed_and_nothing_is_kept(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.goes_to("spots.1.tree_distance")
        await person.press("ctrl+u")
        await person.types("8 ft")
        assert "tree 8 ft ▲" in picture(person).text
        await person.press("ctrl+u")
        await person.types("31 ft")
        assert "tree 31 ft ✓" in picture(person).text
        assert person.session.answers.texts["spots.1.tree_distance"] == "25 ft"
        await person.goes_to("spots.1.slope_drop")
        await person.press("ctrl+u")
        assert "5.1 %" not in person.says("preview")
        await person.types("27 in")
        # With 9 in the other way round, 18 in of the 180 in of the string.
        assert "10 % ▲" in picture(person).text


async def test_pieces_are_drawn_as_their_line_is_typed(sit, write) -> None:
    texts = {"surfaces.1.surface_kind": "roof", "surfaces.1.gutter_outlets": "1"}
    async with sit(str(write("garden.yaml", texts)), size=(120, 40)) as person:
        await person.goes_to("surfaces.1.pieces")
        assert "how long?" in picture(person).text
        await person.types("rectangle 33 ft by 17 ft")
        assert "33 ft" in picture(person).text and "how long?" not in picture(person).text
        assert "surfaces.1.pieces" not in person.session.answers.texts


async def test_of_what_is_typed_while_one_is_drawn_the_last_alone_is_drawn(
    sit, sample, monkeypatch
) -> None:
    gate, drawn, draw = threading.Event(), list[str](), garden_picture.live_picture
    keys = threading.get_ident()

    def waiting(plan, place, step):
        assert threading.get_ident() != keys
        gate.wait(20)
        drawn.append(plan.answers.texts["spots.1.tree_distance"])
        return draw(plan, place, step)

    async with sit(sample("finished_us.yaml")) as person:
        await person.goes_to("spots.1.tree_distance")
        await person.rests()
        monkeypatch.setattr(garden_picture, "live_picture", waiting)
        shown = picture(person)
        for text in ("11 ft", "12 ft", "13 ft", "14 ft"):
            shown.follow({"spots.1.tree_distance": text})
        gate.set()
        await person.settles()
        assert drawn == ["11 ft", "14 ft"]
        assert "14 ft" in shown.text


@pytest.mark.parametrize("part", [LivePicture, Preview])
async def test_what_is_drawn_and_told_of_the_words_waits_until_typing_rests(
    sit, sample, monkeypatch, part
) -> None:
    begun: list[str] = []
    async with sit(sample("finished_us.yaml")) as person:
        await person.goes_to("spots.1.tree_distance")
        await person.rests()
        shown = person.app.screen.query_one(part)
        monkeypatch.setattr(after_typing, "TYPING_RESTS", 3600.0)
        monkeypatch.setattr(part, "_begin", lambda self: begun.append("begun"))
        await person.press("backspace", "1")
        assert not begun and shown._rest is not None
        # What follows when the time is over.
        shown._rest._callback()
        await person.rests()
        assert begun == ["begun"]


async def test_a_hole_that_is_shut_is_not_pictured(sit) -> None:
    async with sit("garden.yaml", size=(160, 45)) as person:
        await person.app.screen._go("holes.1.hole_depth")
        await person.rests()
        assert "SHUT:" in person.sees() and not picture(person).display


async def test_a_long_caution_leaves_a_picture_its_place_and_takes_the_edges_of_the_field(
    sit, sample
) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        for address, words in {
            "holes.1.hole_depth": "15 in deep",
            "surfaces.1.pieces": "41 ft",
        }.items():
            await person.app.screen._go(address)
            await person.rests()
            asking = person.app.screen.query_one("#asking")
            assert words in picture(person).text and not overlapping(person)
            assert asking.max_scroll_y == 0 and person.app.focused.size.height == 1
        await person.goes_to("spots.1.tree_distance")
        assert person.app.focused.region.height == 3


async def test_with_no_color_the_picture_is_drawn_by_characters(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(160, 45)) as person:
        person.app.no_color = True
        await person.goes_to("spots.1.tree_distance")
        await person.rests()
        shown = picture(person)
        assert "tree 25 ft ✓" in shown.text
        assert all(part.style.color is None for strip in shown.strips for part in strip)
        assert not set("▀▄█▌▐▗▖▝▘") & set(shown.text)
        # On the ground of the page, whatever the terminal behind it has.
        grounds = {part.style.bgcolor for y in range(20) for part in shown.render_line(y)}
        assert grounds == {person.app.screen.query_one("#asking").rich_style.bgcolor}


async def test_a_verdict_is_a_badge_on_its_color_and_its_sentence(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.goes_to("spots.1.tree_distance")
        await person.press("ctrl+u")
        await person.types("8 ft")
        assert person.says("preview") == "▲ TOO NEAR 8 ft, 18 ft needed."
        look = person.app.theme_variables["look"]
        styles = [
            part.style
            for strip in person.app.screen._compositor.render_strips()
            for part in strip
            if part.text.strip() == "▲ TOO NEAR"
        ]
        assert styles and styles[0].bgcolor.get_truecolor().hex == look.lower()


async def test_the_stage_is_listed_beside_its_question_where_there_is_room(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(160, 45)) as person:
        await person.goes_to("spots.1.tree_distance")
        await person.rests()
        said = str(person.app.screen.query_one("#stage_list").said)
        assert "This stage" in said and "How to find out:" in person.says("how")
        here = [line for line in said.splitlines() if "◆" in line]
        assert len(here) == 1 and "Distance to the trunk of the tree" in here[0]
        assert any("✓ Distance to the property line" in one and "9 ft" in one
                   for one in said.splitlines())  # fmt: skip
        assert person.app.screen.query_one("#asking").max_scroll_y == 0
        before = said
        await person.press("ctrl+u")
        await person.types("8 ft")
        assert str(person.app.screen.query_one("#stage_list").said) == before
        assert person.app.screen.query_one("#asking").max_scroll_y == 0


async def test_the_hours_of_a_stage_are_not_cut_off_its_list(sit, sample) -> None:
    async with sit(sample("finished_us.yaml"), size=(160, 45)) as person:
        await person.goes_to("holes.1.hole_width")
        await person.rests()
        said = str(person.app.screen.query_one("#stage_list").said).splitlines()
        hours = [line for line in said if "First soaking" in line or "Timed test" in line]
        assert hours and all(re.search(r"\b[A-Z][a-z]{2} \d+ May \d\d:\d\d$", one) for one in hours)


async def test_the_ways_on_keep_the_picture_and_stand_under_their_verdict(sit, sample) -> None:
    async with sit(sample("finished_us.yaml")) as person:
        await person.goes_to("spots.1.basement_distance")
        await person.press("ctrl+u")
        await person.enters("8 ft")
        screen, shown = person.app.screen, picture(person)
        heard, ways = screen.query_one("#heard"), screen.query_one(Choices)
        assert heard.region.bottom < ways.region.y and not overlapping(person)
        assert "house 8 ft ■" in shown.text and len(shown.strips) == shown.size.height
        await person.press("escape")
        await person.types("x")
        await person.press("enter")
        assert screen.query_one("#slot").region.bottom <= heard.region.y
