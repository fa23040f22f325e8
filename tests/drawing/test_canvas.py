"""Drawings in cells and in print."""

import re
import xml.etree.ElementTree as ET
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from interview.drawing.canvas import cells
from interview.drawing.front import front
from interview.drawing.grid import Look, draw
from interview.drawing.layout import lay_out
from interview.drawing.paint import paint
from interview.drawing.scene import (
    Drawing,
    Hatch,
    Key,
    Label,
    LabelSpot,
    Mark,
    Path,
    Stroke,
    Symbol,
    box,
    line,
    polygon,
)
from interview.drawing.vector import CELL_MM, FONT_MM, svg
from interview.drawing.words import column_width, cut_to, wrapped

SVG = "{http://www.w3.org/2000/svg}"


def drawing(*shapes, title="T", **more):
    return Drawing(title, "words for the ear", shapes, **more)


def joined(lines):
    return " ".join(" ".join(lines).split())


def test_a_rectangle_keeps_its_proportions_to_a_cell(subtests):
    for wide, high in [(20.0, 12.0), (3.0, 9.0), (7.0, 7.0)]:
        for rows in [12, 24, 60]:
            for columns in [20, 40, 56, 76, 120]:
                with subtests.test(columns=columns, rows=rows, wide=wide, high=high):
                    lines = cells(drawing(polygon(box(0, 0, wide, high))), columns, rows)
                    top = next(line for line in lines if "┌" in line)
                    across = top.index("┐") - top.index("┌")
                    down = next(i for i, line in enumerate(lines) if "└" in line) - lines.index(top)
                    # Each end of each side is off by half a cell at most.
                    assert abs(across / wide - 2 * down / high) <= 1 / wide + 2 / high
                    # It is as large as will go.
                    assert across >= columns - 2 or down >= rows - 3


@pytest.mark.parametrize("rows", [3, 5, 6])
def test_a_picture_alone_is_whole_in_few_rows(rows):
    lines = cells(drawing(polygon(box(0, 0, 20, 12)), title=""), 40, rows)
    assert len(lines) <= rows
    assert lines[0].lstrip()[0] == "┌" and lines[-1].lstrip()[0] == "└"


@pytest.mark.parametrize(("columns", "rows"), [(60, 6), (80, 6), (100, 8), (160, 16)])
def test_the_first_picture_has_a_roof_and_a_full_pond_in_characters_too(columns, rows):
    lines = cells(front(rows), columns, rows)
    wall = next(at for at, one in enumerate(lines) if "██" in one)
    assert "──" in lines[wall - 1][: columns // 5]
    assert any("~~~~" in one for one in lines[wall:])
    painted = paint(front(rows), columns, rows).picture
    # Paint shows the water by its color, ripples apart.
    assert not any("~~" in "".join(cell.char for cell in row) for row in painted)


def test_sides_of_one_kind_join_where_they_meet():
    shown = "".join(cells(drawing(polygon(box(0, 0, 8, 4)), line(4, 0, 4, 4)), 20, 10))
    assert "┬" in shown and "┴" in shown


def test_labels_at_one_point_never_share_a_cell():
    labels = [Label(f"label number {n}", 5, 5) for n in range(12)]
    layout = lay_out(drawing(polygon(box(0, 0, 10, 10)), *labels), 40, 24, Look())
    spots = [
        (column, text.row)
        for text in layout.texts
        for column in range(text.column, text.column + text.columns)
    ]
    assert len(spots) == len(set(spots))
    shown = joined(cells(drawing(polygon(box(0, 0, 10, 10)), *labels), 40, 24))
    assert all(label.text in shown for label in labels)
    assert "(a)" in shown


def test_a_label_never_covers_a_line():
    labels = [Label("right on the side", 0, 1.5), Label("on the top", 5, 3)]
    layout = lay_out(drawing(polygon(box(0, 0, 10, 3)), *labels), 60, 20, Look())
    assert len(layout.texts) == 2
    for text in layout.texts:
        for column in range(text.column, text.column + text.columns):
            assert (column, text.row) not in layout.grid.ink


def test_a_label_outside_the_drawing_gets_room_outside():
    sides = {
        LabelSpot.ABOVE: (5, 3),
        LabelSpot.LEFT: (0, 1),
        LabelSpot.RIGHT: (10, 1),
        LabelSpot.BELOW: (5, 0),
    }
    labels = [Label(f"so {place.value}", *at, place) for place, at in sides.items()]
    lines = cells(drawing(polygon(box(0, 0, 10, 3)), *labels), 60, 20)
    assert lines[1].strip() == "so above"
    assert lines[-1].strip() == "so below"
    middle = next(line for line in lines if "so left" in line)
    assert re.fullmatch(r"so left │ +│ so right", middle)


def test_a_label_kept_in_its_box_goes_to_the_legend_when_the_box_is_small():
    small = Label("much too long for it", 0.5, 0.5, within=(0, 0, 1, 1))
    shown = cells(drawing(polygon(box(0, 0, 1, 1)), line(0, -1, 20, -1), small), 60, 20)
    assert "(a) much too long for it" in shown


def test_a_label_of_its_own_marker_keeps_it_in_the_legend():
    small = Label("[7] much too long", 0.5, 0.5, within=(0, 0, 1, 1), marker="[7]")
    shown = cells(drawing(polygon(box(0, 0, 1, 1)), line(0, -1, 20, -1), small), 60, 20)
    assert "[7] much too long" in shown


def test_a_hatch_lies_inside_its_outline():
    square = polygon(((0, 0), (10, 0), (10, 5), (0, 5)), Stroke.SOLID, Hatch.CUT)
    lines = cells(drawing(square), 30, 20)[1:]
    inner = [line for line in lines if "╱" in line]
    assert inner and all(re.fullmatch("│╱+│", line) for line in inner)


def test_a_hatch_follows_a_slanted_side():
    corner = polygon(((0, 0), (10, 0), (0, 5)), None, Hatch.FILL)
    lines = cells(drawing(corner), 41, 30)[1:]
    long = [line.count("░") for line in lines]
    # The last line is the edge itself.
    assert long[:-1] == sorted(long[:-1]) and long[0] <= 2 < 30 < long[-2]


def test_points_and_arrows_are_shown():
    one = drawing(Mark(0, 0), Mark(10, 4), Label("north", 5, 2, arrow=(1, 1)))
    assert "●" in joined(cells(one, 40, 12)) and "↗ north" in joined(cells(one, 40, 12))


def test_a_curve_is_of_dots_or_stars():
    curve = Path(((0, 0), (3, 4), (9, 5)), Stroke.CURVE)
    assert any("⠀" < char <= "⣿" for char in joined(cells(drawing(curve), 40, 12)))
    assert "*" in joined(cells(drawing(curve), 40, 12, braille=False))
    slanted = joined(cells(drawing(line(0, 0, 9, 5)), 40, 12, braille=False))
    assert not any("⠀" <= char <= "⣿" for char in slanted)


def test_text_that_a_person_typed_cannot_break_the_picture():
    nasty = '<b>\x1b[31m & "roof" \n\t 屋根\u202e'
    one = drawing(polygon(box(0, 0, 9, 4)), Label(nasty, 4, 2), title=nasty)
    for braille in (False, True):
        lines = cells(one, 50, 16, braille)
        assert all(column_width(line) <= 50 for line in lines)
        assert not any(ord(char) < 32 or char == "\u202e" for line in lines for char in line)
    tree = ET.fromstring(svg(one, 100))
    assert "<b>" in tree.find(f"{SVG}title").text


def test_print_says_what_it_is_for_those_who_listen():
    tree = ET.fromstring(svg(drawing(polygon(box(0, 0, 9, 4))), 100))
    assert tree.get("role") == "img"
    assert tree.find(f"{SVG}title").text == "T"
    assert tree.find(f"{SVG}desc").text == "words for the ear"
    text = svg(drawing(polygon(box(0, 0, 9, 4))), 100)
    assert "http" not in text.replace("http://www.w3.org/2000/svg", "")
    assert set(re.findall(r'(?:fill|stroke)="([^"]+)"', text)) <= {"none", "black", "white"} | {
        f"url(#hatch-{hatch.name.lower()})" for hatch in Hatch
    }


def test_print_keeps_proportions_exactly():
    tree = ET.fromstring(svg(drawing(polygon(box(0, 0, 20, 12))), 180))
    points = [
        tuple(map(float, point.split(",")))
        for point in tree.find(f"{SVG}polygon").get("points").split()
    ]
    wide = max(x for x, _ in points) - min(x for x, _ in points)
    high = max(y for _, y in points) - min(y for _, y in points)
    assert wide / high == pytest.approx(20 / 12, rel=1e-3)


def test_print_too_small_to_read_is_refused():
    with pytest.raises(ValueError, match="at least 40 mm"):
        svg(drawing(polygon(box(0, 0, 1, 1))), 20)


numbers = st.floats(-1e4, 1e4, allow_nan=False)
points = st.tuples(numbers, numbers)
shapes = st.one_of(
    st.builds(
        Path,
        st.lists(points, min_size=2, max_size=6).map(tuple),
        st.sampled_from(Stroke),
        st.booleans(),
        st.sampled_from([None, *Hatch]),
    ),
    st.builds(Mark, numbers, numbers, st.sampled_from(Symbol)),
    st.builds(
        lambda *parts: Label(*parts),  # what is left out stays so: a marker is a few letters
        st.text(max_size=30),
        numbers,
        numbers,
        st.sampled_from(LabelSpot),
        st.tuples(st.integers(-9, 9), st.integers(-3, 3)),
        st.none(),
        st.just(()),
        st.sampled_from([None, (0.0, 1.0), (1.0, -1.0)]),
    ),
)


@settings(max_examples=60, deadline=None)
@given(
    st.lists(shapes, max_size=8).map(tuple),
    st.integers(12, 130),
    st.integers(1, 50),
    st.booleans(),
    st.booleans(),
)
def test_any_drawing_fits_its_columns_and_parses(some, columns, rows, braille, proportional):
    keys = (Key(Stroke.HEAVY, "a rim " * 9), Key(Hatch.MULCH, "mulch"))
    one = drawing(*some, keys=keys, proportional=proportional, notes=("a note " * 12,))
    lines = cells(one, columns, rows, braille)
    assert all(column_width(line) <= columns for line in lines)
    check_print(svg(one, 60 + columns))


def check_print(text):
    """Every text lies in the view box, a letter taken as wide as is kept for it."""
    tree = ET.fromstring(text)
    _, _, wide, high = map(float, tree.get("viewBox").split())
    for node in tree.iter(f"{SVG}text"):
        size = column_width(node.text or "") * CELL_MM
        x, y, anchor = float(node.get("x")), float(node.get("y")), node.get("text-anchor")
        left = x - {"start": 0, "middle": size / 2, "end": size}[anchor]
        assert left >= -0.01 and left + size <= wide + 0.01, node.text
        assert FONT_MM * 0.7 <= y <= high - 0.2 * FONT_MM, node.text


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.floats(0, 20), st.floats(0, 9)), min_size=2, max_size=14))
def test_printed_labels_never_overlap(spots):
    labels = [Label(f"label {n}", x, y) for n, (x, y) in enumerate(spots)]
    one = drawing(Mark(0, 0), Mark(20, 9), *labels)
    tree = ET.fromstring(svg(one, 90))
    boxes = [
        (float(node.get("x")), float(node.get("y")), column_width(node.text) * CELL_MM)
        for node in tree.iter(f"{SVG}text")
        if node.get("paint-order")
    ]
    for (x0, y0, wide0), (x1, y1, wide1) in combinations(boxes, 2):
        apart = abs(x0 - x1) - (wide0 + wide1) / 2
        assert apart > -0.02 or abs(y0 - y1) > 2 * CELL_MM - 0.02


@given(st.text(max_size=60), st.integers(1, 30))
def test_wrapped_text_loses_no_letter(text, columns):
    tidy = " ".join(text.split())
    lines = wrapped(tidy, max(columns, 2))
    assert all(column_width(line) <= max(columns, 2) for line in lines)
    assert "".join("".join(lines).split()) == "".join(tidy.split())
    assert cut_to("one two", 5) == ("one", "two")


def test_the_picture_of_a_frame_is_the_same_each_time():
    one = drawing(polygon(box(0, 0, 9, 4)), Label("x", 1, 1), Label("y", 1, 1))
    assert cells(one, 50, 16) == cells(one, 50, 16)
    layout = lay_out(one, 50, 16, Look())
    assert draw(one, layout.frame, Look()).ink == layout.grid.ink
