"""Drawings in color: what is filled, with what, and what stands on it."""

import pytest

from interview.drawing.canvas import cells
from interview.drawing.paint import Tone, paint
from interview.drawing.scene import (
    Drawing,
    Hatch,
    Ink,
    Key,
    Label,
    LabelSpot,
    Mark,
    Material,
    Path,
    Sprig,
    Stroke,
    filled,
    line,
)

LOWER = {char: eighths / 8 for eighths, char in enumerate(" ▁▂▃▄▅▆▇█")}
QUARTERS = {char: bits.bit_count() / 4 for bits, char in enumerate(" ▗▖▄▝▐▞▟▘▚▌▙▀▜▛█")}


def box(left, bottom, right, top):
    return ((left, bottom), (right, bottom), (right, top), (left, top))


def drawing(*shapes, **more):
    return Drawing("T", "words for the ear", shapes, **more)


def material(tint):
    return tint.material if isinstance(tint, Tone) else None


def covered(picture, wanted):
    """Cells of one material, parts of cells by the block that fills them."""
    total = 0.0
    for row in picture:
        for cell in row:
            part = {**QUARTERS, **LOWER}.get(cell.char, 0.0)
            if material(cell.back) is wanted:
                total += 1 - (part if isinstance(cell.fore, Tone) and not cell.fore.texture else 0)
            if material(cell.fore) is wanted and not cell.fore.texture:
                total += part
    return total


@pytest.mark.parametrize("columns", [30, 48, 78, 92])
def test_an_area_takes_its_share_of_the_cells(columns):
    lawn = filled(box(0, 0, 40, 20), Material.LAWN)
    pond = filled(((8, 5), (30, 5), (34, 10), (30, 16), (8, 16), (5, 10)), Material.WATER)
    picture = paint(drawing(lawn, pond), columns, 60).picture
    # By the shoelace formula: 22 by 11, and two triangles of 11 by 3 and 11 by 4. A cell is twice
    # as tall as wide, and the picture ends in the middle of its first and last cells.
    cell = 40 / (columns - 1)
    assert covered(picture, Material.WATER) == pytest.approx(280.5 / (2 * cell**2), rel=0.03)


def test_a_level_is_true_to_an_eighth_of_a_cell():
    hole = filled(box(0, -2, 20, 12), Material.HOLE)
    for eighths in range(81):
        # A whole number is the middle of a cell: a half is its edge.
        water = filled(box(0, 0.5, 20, 0.5 + eighths / 8), Material.WATER)
        picture = paint(drawing(hole, water, ground=Material.HOLE), 41, 16).picture
        depth = sum(covered([[row[10]]], Material.WATER) for row in picture)
        assert depth == pytest.approx(eighths / 8, abs=1e-9)


def test_the_later_area_lies_on_the_earlier_one():
    under, over = filled(box(0, 0, 9, 9), Material.SOIL), filled(box(3, 3, 6, 6), Material.STONE)
    assert covered(paint(drawing(under, over), 20, 20).picture, Material.STONE) > 0
    assert covered(paint(drawing(over, under), 20, 20).picture, Material.STONE) == 0


def test_words_stand_on_plain_ground_with_a_blank_at_either_side():
    lawn = filled(box(0, 0, 40, 20), Material.LAWN)
    picture = paint(drawing(lawn, Label("the pond", 20, 10, ink=Ink.WATER)), 60, 30).picture
    row = next(row for row in picture if "the pond" in "".join(cell.char for cell in row))
    at = "".join(cell.char for cell in row).index("the pond")
    for cell in row[at - 1 : at + 9]:
        assert cell.back is None
    assert {cell.fore for cell in row[at : at + 8]} == {Ink.WATER}
    assert row[at - 2].back is not None and row[at + 9].back is not None


def test_the_ground_of_a_scene_goes_on_to_the_ends_of_its_picture():
    sky, soil = Material.SKY, filled(box(0, 0, 30, 8), Material.SOIL)
    shapes = (soil, line(0, 12, 30, 12), Label("long words to the left", 0, 4, LabelSpot.LEFT))
    picture = paint(drawing(*shapes, ground=sky), 70, 24).picture
    assert all(cell.back is not None or cell.fore is Ink.TEXT for cell in picture[0])
    assert {material(cell.back) for cell in picture[-1]} == {Material.SOIL}


def test_a_border_is_drawn_only_where_nothing_is_painted():
    edge = Path(box(0, 0, 20, 10), Stroke.SOLID, True, material=Material.FLOOR, border=True)
    one = drawing(edge, keys=(Key(Stroke.SOLID, "the floor"),))
    assert "┌" in "\n".join(cells(one, 40, 20))
    painting = paint(one, 60, 20)
    assert not any(cell.char in "┌─│" for row in painting.picture for cell in row)
    assert not painting.legend
    assert "the floor" in "\n".join(cells(one, 40, 20))


def test_a_legend_shows_the_material_itself():
    one = drawing(
        filled(box(0, 0, 20, 10), Material.BERM),
        keys=(Key(Hatch.FILL, "berm", Material.BERM),),
    )
    (row,) = paint(one, 60, 20).legend
    assert [material(cell.back) for cell in row[:3]] == [Material.BERM] * 3


def test_a_plant_is_a_mark_in_its_color_or_a_letter():
    bed = filled(box(0, 0, 20, 10), Material.FLOOR)
    one = drawing(bed, Sprig(10, 5, "k", "✿", "gold"))
    found = [cell for row in paint(one, 40, 20).picture for cell in row if cell.char == "✿"]
    assert [(cell.fore, material(cell.back)) for cell in found] == [("gold", Material.FLOOR)]
    assert sum(row.count("k") for row in cells(one, 40, 20)) == 1


def test_no_plant_stands_on_stone_or_on_a_line():
    stone = filled(box(0, 0, 20, 10), Material.STONE)
    painted = paint(drawing(stone, Sprig(10, 5, "k", "✿", "gold")), 40, 20)
    assert not any(cell.char == "✿" for row in painted.picture for cell in row)
    crossed = drawing(line(0, 5, 20, 5), Sprig(10, 5, "k", "✿", "gold"))
    assert not any("k" in row for row in cells(crossed, 40, 20))


def test_a_line_on_a_material_keeps_what_it_stands_on():
    pond = filled(box(0, 0, 20, 10), Material.WATER)
    picture = paint(drawing(pond, line(2, 5, 18, 5), Mark(10, 8)), 40, 20).picture
    lines = [cell for row in picture for cell in row if cell.char == "─"]
    assert lines and {material(cell.back) for cell in lines} == {Material.WATER}


def test_the_same_drawing_is_painted_alike_each_time():
    soil = drawing(filled(box(0, 0, 40, 20), Material.SOIL))
    assert paint(soil, 60, 30) == paint.__wrapped__(soil, 60, 30)


@pytest.mark.parametrize("columns", range(14, 44, 3))
def test_no_corner_of_a_rectangle_stands_out(columns):
    outline = filled(((0, 0), (41, 0), (41, 18), (0, 18)), Material.ROOF)
    far = Label("far", 60, 30)
    drawing = Drawing("", "A roof.", (outline, far))
    rows = paint(drawing, columns, 14).picture
    full = {
        (place, at): cell
        for place, row in enumerate(rows)
        for at, cell in enumerate(row)
        if Tone in (type(cell.fore), type(cell.back))
    }
    high = sorted({place for place, _ in full})
    wide = sorted({at for _, at in full})
    middle_row, middle_column = high[len(high) // 2], wide[len(wide) // 2]
    # What shows in the row of a corner shows in the middle of that side too.
    for place, at in full:
        assert (place, middle_column) in full, (place, at)
        assert (middle_row, at) in full, (place, at)
        if place in (high[0], high[-1]) and at in (wide[0], wide[-1]):
            corner, edge = full[place, at].char, full[place, middle_column].char
            assert corner in " ▗▖▝▘▐▌" or corner == edge, (corner, edge)
            upright = full[middle_row, at].char
            assert not (upright in "▐▌" and corner in "▁▂▃▄▅▆▇▀▔"), (upright, corner)


def test_a_word_without_room_is_written_in_brief_before_it_is_a_letter():
    bed = filled(((0, 0), (20, 0), (20, 10), (0, 10)), Material.FLOOR)
    box = (4.0, 5.0, 12.0, 5.0)
    for brief, told in (("pond 6 in", "pond 6 in"), ("", "(a)")):
        words = Label("a pond of 6 in, its edge dry by noon", 8.0, 5.0, within=box, brief=brief)
        shown = paint(Drawing("", "", (bed, words)), 64, 40)
        rows = ["".join(cell.char for cell in row) for row in shown.picture]
        assert any(told in row for row in rows), rows
        assert bool(shown.legend) == (not brief)


def test_two_words_in_a_row_are_told_apart():
    bed = filled(((0, 0), (30, 0), (30, 10), (0, 10)), Material.FLOOR)
    words = (Label("floor", 15.0, 5.0), Label("side", 17.0, 5.0))
    rows = paint(Drawing("", "", (bed, *words)), 64, 24).picture
    told = ["".join(cell.char for cell in row) for row in rows]
    assert not [row for row in told if "floor side" in row or "side floor" in row], told


def test_words_at_an_edge_keep_a_blank_at_either_end():
    bed = filled(box(0, 0, 30, 10), Material.FLOOR)
    words = Label("6 ft wide", 0.0, 5.0, LabelSpot.LEFT), Label("9 ft", 30.0, 5.0, LabelSpot.RIGHT)
    rows = paint(Drawing("", "", (bed, *words)), 64, 24).picture
    told = next(
        row for row in ("".join(cell.char for cell in row) for row in rows) if "6 ft wide" in row
    )
    assert told.startswith(" 6 ft wide ") and told.rstrip().endswith(" 9 ft") and told[-1] == " "


def test_letters_may_stand_nearer_than_words():
    bed = filled(box(0, 0, 30, 10), Material.FLOOR)
    letters = tuple(Label(one, 15.0 + at, 5.0) for at, one in enumerate("abcd"))
    rows = paint(Drawing("", "", (bed, *letters)), 64, 24).picture
    seen = {cell.char for row in rows for cell in row}
    assert set("abcd") <= seen
