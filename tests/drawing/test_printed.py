"""Materials and plants in print: black carries all, tints are light, every mark is its own."""

from __future__ import annotations

import re
import subprocess
import sys
import xml.etree.ElementTree as ET
from collections import Counter

import pytest

from interview.drawing.printed import HATCHES, MATERIALS, MOST_INK, sprig
from interview.drawing.scale import Dimension
from interview.drawing.scene import (
    Drawing,
    Hatch,
    Ink,
    Key,
    Label,
    Material,
    Path,
    Sprig,
    Stroke,
    box,
    filled,
    polygon,
)
from interview.drawing.vector import inline, svg, with_legend
from interview.garden.planting import laid_out

BOX = ((0.0, 0.0), (20.0, 0.0), (20.0, 9.0), (0.0, 9.0))
SVG = "{http://www.w3.org/2000/svg}"


def drawing(*shapes, **more):
    return Drawing("T", "words", shapes, **more)


def test_no_tint_takes_more_ink_than_a_line_may_be_lost_in():
    for material, fill in MATERIALS.items():
        if fill.tint:
            red, green, blue = (int(fill.tint[at : at + 2], 16) for at in (1, 3, 5))
            assert 1 - min(red, green, blue) / 255 <= MOST_INK, material


def test_materials_that_meet_differ_by_their_marks_and_not_by_tint_alone():
    marked = [Material.ROOF, Material.STONE, Material.MULCH, Material.BERM, Material.COMPOST,
              Material.WATER]  # fmt: skip
    marks = [MATERIALS[one].marks for one in marked] + [one.marks for one in HATCHES.values()]
    assert all(marks)
    assert len({MATERIALS[one].marks for one in marked}) == len(marked)


def test_each_kind_of_plant_has_a_shape_of_its_own():
    chars = [*dict.fromkeys(laid_out._MARKS.values()), *laid_out._FLOWERS]
    assert len({sprig(one) for one in chars}) == len(chars)


def test_only_black_white_and_tints_are_printed_whatever_the_ink_of_a_line():
    lines = [Path(BOX, Stroke.SOLID, ink=ink) for ink in Ink]
    page = svg(drawing(*(filled(BOX, one) for one in Material), *lines), 120)
    inks = set(re.findall(r'(?:fill|stroke)="([^"]+)"', page))
    tints = {fill.tint for fill in MATERIALS.values()}
    named = {f"url(#{one.name.lower()})" for one in Material}
    assert inks <= {"none", "black", "white"} | tints | named
    assert set(re.findall(r'stroke="([^"]+)"', page)) <= {"none", "black", "white"}


@pytest.mark.parametrize("start", [0.0, 6.0, 17.0])
@pytest.mark.parametrize("upright", [False, True])
def test_the_words_of_a_dimension_line_stay_on_the_drawing(start, upright):
    one = Dimension(start / (1 + upright), start / (1 + upright) + 2, "abcdeghnopqu 01234", upright)
    page, _ = with_legend(drawing(polygon(box(0, 0, 20, 9))), 120, "x", 1.0, (one, one))
    assert page.count(one.words) == 2
    wide, high = (float(x) for x in re.search(r'viewBox="0 0 ([\d.]+) ([\d.]+)"', page).groups())
    # No letter of it is wider than 0.556 of its size (Adobe Font Metrics of Helvetica, 1990).
    long = 0.556 * 3.5 * len(one.words)
    for x, y, anchor in re.findall(
        r'<text x="([-\d.]+)" y="([-\d.]+)" text-anchor="(\w+)" font-size="3.5"', page
    ):
        left = float(x) - {"start": 0, "middle": long / 2, "end": long}[anchor]
        ends = (-left - long, -left) if upright else (left, left + long)
        assert min(ends) >= -0.1 and max(ends) <= (high if upright else wide) + 0.1
        assert 0 < float(y) < (wide if upright else high)


def test_the_ground_of_a_painting_is_not_printed():
    plain = drawing(polygon(box(0, 0, 20, 9)))
    on_lawn = drawing(polygon(box(0, 0, 20, 9)), ground=Material.LAWN)
    assert svg(on_lawn, 100) == svg(plain, 100)


def test_a_later_material_lies_on_an_earlier_one():
    page = svg(drawing(filled(BOX, Material.SIDE), filled(BOX, Material.STONE)), 100)
    assert page.index(f'fill="{MATERIALS[Material.SIDE].tint}"') < page.index('"url(#stone)"')


def test_a_letter_stands_once_for_its_kind_on_a_plant_of_it():
    plants = [Sprig(x / 4, y / 4, "ab"[x % 2], "✿", "blue") for x in range(80) for y in range(36)]
    labels = [Label("a", 4, 4, optional=True), Label("b", 4.25, 4, optional=True)]
    page = inline(drawing(polygon(box(0, 0, 20, 9)), *plants, *labels), 120, "x")
    assert Counter(re.findall(r">([ab])</text>", page)) == {"a": 1, "b": 1}
    circles = re.findall(r'<circle cx="([\d.]+)" cy="([\d.]+)" r="1.75"', page)
    (x0, y0), (x1, y1) = [tuple(map(float, one)) for one in circles]
    assert ((x0 - x1) ** 2 + (y0 - y1) ** 2) ** 0.5 > 3.5


def test_no_plant_is_printed_on_stone():
    stone = filled(((8.0, 0.0), (12.0, 0.0), (12.0, 9.0), (8.0, 9.0)), Material.STONE)
    inside = Sprig(10, 4, "a", "✿", "blue")
    outside = Sprig(3, 4, "a", "✿", "blue")
    page = inline(drawing(polygon(box(0, 0, 20, 9)), stone, inside, outside), 120, "x")
    assert page.count("<g transform") == 1


def test_two_drawings_on_one_page_share_no_name_and_define_what_they_use():
    one = drawing(filled(BOX, Material.BERM), polygon(box(0, 0, 20, 9)))
    page = inline(one, 100, "first") + inline(one, 100, "second")
    tree = ET.fromstring(f'<all xmlns="http://www.w3.org/2000/svg">{page}</all>')
    ids = Counter(node.get("id") for node in tree.iter() if node.get("id"))
    assert max(ids.values()) == 1
    assert set(re.findall(r"url\(#([^)]+)\)", page)) <= set(ids)
    first = tree.find(f"{SVG}svg")
    assert first.get("role") == "img" and first.get("aria-labelledby") == "first-title"


def test_the_legend_apart_shows_the_pattern_that_the_drawing_has():
    keys = (Key(Hatch.FILL, "berm", Material.BERM), Key(Stroke.DASHED, "old ground"))
    one = drawing(Path(BOX, None, True, Hatch.FILL, Material.BERM), keys=keys)
    page, legend = with_legend(one, 100, "x")
    assert [words for _, words in legend] == ["berm", "old ground"]
    assert "url(#x-berm)" in legend[0][0] and 'id="x-berm"' in page
    assert "stroke-dasharray" in legend[1][0]
    assert "berm" not in "".join(re.findall(r"<text.*?</text>", page))


def test_print_too_narrow_is_refused_inline_too():
    with pytest.raises(ValueError, match="at least 40 mm"):
        inline(drawing(polygon(box(0, 0, 1, 1))), 20, "x")


def test_a_drawing_for_print_loads_nothing_of_the_network() -> None:
    script = "import sys, interview.drawing.vector; print(*sys.modules)"
    done = subprocess.run(
        [sys.executable, "-c", script], capture_output=True, text=True, check=True
    )
    assert not {"urllib.request", "http.client", "email.message"} & set(done.stdout.split())
