"""The pieces of a surface, drawn."""

import math
import xml.etree.ElementTree as ET
from itertools import combinations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from measures import ft
from shapely.geometry import Polygon

from interview.drawing.canvas import cells
from interview.drawing.scene import Hatch, LabelSpot, Stroke
from interview.drawing.vector import svg
from interview.drawing.words import column_width
from interview.garden.survey import outlines, shapes
from interview.garden.survey.drawing import surface_drawing
from interview.garden.survey.piece_layout import Placed, fits_in, lay_pieces, lie_over
from interview.garden.survey.pieces import Piece, plan_area
from interview.quantities.units import magnitude, quantity


def degrees(number):
    return quantity(number, "degree")


def joined(lines):
    return " ".join(" ".join(lines).split())


def box(long, wide, cut=False, count=1):
    return Piece(shapes.Rectangle(ft(long), ft(wide)), cut, count)


def polygon_of(spot):
    return Polygon(spot.corners)


sizes = st.floats(0.5, 80).map(ft)
any_shape = st.one_of(
    st.builds(shapes.Rectangle, sizes, sizes),
    st.builds(shapes.Triangle, sizes, sizes),
    st.builds(shapes.RightTriangle, sizes, sizes),
    st.builds(
        lambda a, b, part: shapes.ThreeSides(
            ft(a), ft(b), ft(abs(a - b) + part * (a + b - abs(a - b)))
        ),
        st.floats(1, 60), st.floats(1, 60), st.floats(0.1, 0.9),
    ),
    st.builds(shapes.Trapezoid, sizes, sizes, sizes),
    st.builds(shapes.circle, sizes),
    st.builds(shapes.half_circle, sizes),
    st.builds(shapes.CirclePart, sizes, st.floats(5, 359).map(degrees)),
    st.builds(
        outlines.Offsets,
        st.floats(1, 9).map(ft),
        st.lists(st.floats(1, 20).map(ft), min_size=2, max_size=7).map(tuple),
    ),
)  # fmt: skip
bodies = st.builds(Piece, any_shape, st.just(False), st.integers(1, 3))
holes = st.builds(Piece, any_shape, st.just(True), st.integers(1, 2))


def yards(some):
    try:
        plan_area(some)
    except ValueError:
        assume(False)
    return some


def test_sides_are_labelled_and_the_area_told():
    shown = joined(cells(surface_drawing([box(30, 20)], name="Garage roof"), 76, 24))
    for words in (
        "Garage roof: 600 ft²",
        "30 ft",
        "20 ft",
        "[1] 600 ft²",
        "All of it drains here.",
    ):
        assert words in shown
    assert "scale:" in shown


def test_the_part_that_drains_here_is_told_in_words():
    half = surface_drawing([box(30, 20)], share=0.5)
    assert "50 % of it drains here: 300 ft² of 600 ft²." in joined(cells(half, 76, 24))
    none = surface_drawing([box(30, 20)], share=0)
    assert "None of it drains here." in joined(cells(none, 76, 24))
    with pytest.raises(ValueError, match="100 percent"):
        surface_drawing([box(30, 20)], share=1.2)


def test_a_cut_out_is_hatched_inside_what_it_is_cut_from():
    pieces = [box(30, 20), box(6, 5, cut=True)]
    body, hole = lay_pieces(pieces, "ft")
    assert hole.host == 1
    assert polygon_of(body).contains(polygon_of(hole))
    lines = cells(surface_drawing(pieces), 76, 30)
    assert "[2] cut out" in joined(lines)
    assert any("╱" in line for line in lines)


def test_two_cut_outs_in_one_piece_do_not_overlap():
    pieces = [box(30, 20), box(10, 8, cut=True), box(10, 8, cut=True)]
    body, one, two = lay_pieces(pieces, "ft")
    assert one.host == two.host == 1
    assert polygon_of(one).intersection(polygon_of(two)).area == pytest.approx(0)
    assert polygon_of(body).covers(polygon_of(one)) and polygon_of(body).covers(polygon_of(two))


def test_a_cut_out_as_wide_as_its_piece_still_lies_in_it():
    _, hole = lay_pieces([box(30, 20), box(30, 3, cut=True)], "ft")
    assert hole.host == 1


def test_a_cut_out_that_fits_nowhere_lies_beside_with_its_sides():
    pieces = [box(30, 4), box(5, 8, cut=True)]
    _, hole = lay_pieces(pieces, "ft")
    assert hole.host is None
    shown = joined(cells(surface_drawing(pieces), 76, 30))
    assert "5 ft" in shown and "8 ft" in shown


def test_a_cut_out_does_not_hang_over_the_notch_of_a_bent_outline():
    ell = outlines.SidesRound(
        tuple(ft(n) for n in (20, 4, 16, 16, 4, 20)),
        tuple(degrees(n) for n in (90, 90, -90, 90, 90)),
    )
    body, hole = lay_pieces([Piece(ell), box(3, 3, cut=True)], "ft")
    assert hole.host == 1
    assert polygon_of(body).buffer(1e-6).contains(polygon_of(hole))


def test_a_cut_out_across_a_gap_does_not_fit():
    jaws = ((0, 0), (10, 0), (10, 6), (5.1, 6), (5.1, 1), (4.9, 1), (4.9, 6), (0, 6))
    assert fits_in(((1, 2), (4, 2), (4, 5), (1, 5)), jaws)
    assert not fits_in(((1, 2), (9, 2), (9, 5), (1, 5)), jaws)


def test_a_placed_piece_lies_where_it_was_put():
    (spot,) = lay_pieces([Placed(box(6, 4), ft(3), ft(2), 90)], "ft")
    assert spot.box == pytest.approx((3, 2, 7, 8))


def test_the_area_does_not_depend_on_where_pieces_lie():
    pieces = [box(30, 20), box(6, 5, cut=True), box(10, 10)]
    moved = [Placed(piece, ft(7 * n), ft(-3 * n), 25.0 * n) for n, piece in enumerate(pieces, 1)]
    titles = {surface_drawing(list(some)).title for some in (pieces, moved, pieces[::-1])}
    assert titles == {"SURFACE: 670 ft²"}


def test_turned_sides_keep_their_length():
    piece = Piece(shapes.ThreeSides(ft(30), ft(20), ft(24)))
    (spot,) = lay_pieces([Placed(piece, ft(0), ft(0), 37.0)], "ft")
    a, b, c = spot.corners
    assert [math.dist(a, b), math.dist(c, a), math.dist(b, c)] == pytest.approx([30, 20, 24])


def test_the_three_sides_of_a_triangle_are_written_at_their_own_sides():
    piece = Piece(shapes.ThreeSides(ft(30), ft(20), ft(24)))
    drawing = surface_drawing([piece])
    (spot,) = lay_pieces([piece], "ft")
    at = {label.text: (label.x, label.y) for label in drawing.labels}
    a, b, c = spot.corners
    for words, (p, q) in {"30 ft": (a, b), "20 ft": (a, c), "24 ft": (b, c)}.items():
        assert at[words] == pytest.approx(((p[0] + q[0]) / 2, (p[1] + q[1]) / 2))


def test_a_metric_surface_is_in_metres():
    shown = joined(cells(surface_drawing([box(30, 20)], metric=True), 76, 24))
    assert "9.14 m" in shown and "6.1 m" in shown and "55.7 m²" in shown and "ft" not in shown


def test_several_pieces_alike_are_drawn_once_and_counted():
    shown = joined(cells(surface_drawing([box(10, 10, count=3)]), 76, 24))
    assert "100 ft² each, 3 times" in shown
    assert "SURFACE: 300 ft²" in shown


def test_north_is_shown_where_it_is_known():
    assert "north" not in joined(cells(surface_drawing([box(9, 9)]), 76, 24))
    assert "→ north" in joined(cells(surface_drawing([box(9, 9)], north=90.0), 76, 24))


@settings(max_examples=60, deadline=None)
@given(st.lists(st.one_of(bodies, holes), min_size=1, max_size=7).map(yards))
def test_pieces_laid_out_never_overlap(pieces):
    spots = lay_pieces(pieces, "ft")
    assert spots == lay_pieces(pieces, "ft")
    for one, two in combinations(spots, 2):
        # A drawn outline that crosses itself is mended before it is compared.
        a, b = polygon_of(one).buffer(0), polygon_of(two).buffer(0)
        if one.host == two.number or two.host == one.number:
            inner, outer = (a, b) if one.host == two.number else (b, a)
            assert inner.difference(outer.buffer(1e-3)).area == pytest.approx(0, abs=1e-6)
        else:
            assert a.intersection(b).area <= 1e-6


@settings(max_examples=25, deadline=None)
@given(
    st.lists(st.one_of(bodies, holes), min_size=1, max_size=6).map(yards),
    st.integers(40, 100),
    st.booleans(),
    st.booleans(),
    st.floats(0, 1),
)
def test_any_surface_can_be_drawn(pieces, columns, metric, braille, share):
    drawing = surface_drawing(pieces, metric, "The neighbour's <shed>", share, 30.0)
    lines = cells(drawing, columns, 24, braille)
    assert all(column_width(line) <= columns for line in lines)
    shown = "".join("".join(cells(drawing, columns, 24)).split())
    for label in drawing.labels:
        assert "".join(label.text.split()) in shown, label.text
    ET.fromstring(svg(drawing, 170))


@given(st.lists(bodies, min_size=1, max_size=4))
def test_outlines_are_drawn_to_one_scale(pieces):
    solid = [s for s in surface_drawing(pieces).shapes if getattr(s, "closed", False)]
    assert all(shape.stroke is Stroke.SOLID for shape in solid)
    for shape, piece in zip(solid, pieces, strict=True):
        area = magnitude(piece.shape.area, "ft**2")
        if isinstance(piece.shape, shapes.CirclePart):
            assert Polygon(shape.points).area == pytest.approx(area, rel=0.05)
        else:
            assert Polygon(shape.points).area == pytest.approx(area, rel=1e-6)


def test_a_trapezoid_by_its_four_sides_has_each_written_at_its_side():
    piece = Piece(shapes.TrapezoidSides(ft(16), ft(10), ft(4), ft(5.3852)))
    drawing = surface_drawing([piece])
    assert "trapezoid 16 ft and 10 ft, slants 4 ft" in drawing.description
    lines = cells(drawing, 76, 24, braille=False)
    left = [line for line in lines if "4 ft" in line and "16 ft" not in line]
    assert left and left[0].index("4 ft") < max(map(len, lines)) / 2


def hatches(drawing):
    return [shape.hatch for shape in drawing.shapes if getattr(shape, "hatch", None)]


def test_what_drains_here_is_shaded_and_what_is_cut_out_is_not():
    drawing = surface_drawing([box(30, 20), box(10, 10, cut=True)])
    assert hatches(drawing) == [Hatch.DRAINS, Hatch.CUT]
    lines = cells(drawing, 76, 30)
    rows = [line for line in lines if "╱╱" in line]
    assert rows and all("·" in line.split("╱")[0] for line in rows)
    assert all("·" not in part for line in rows for part in line.split("│")[2:3])
    page = svg(drawing, 170)
    assert page.index("url(#hatch-drains)") < page.index("url(#hatch-cut)")
    # The cut-out is cleared before it is hatched.
    cleared = page.index('fill="white" stroke="none"', page.index("url(#hatch-drains)"))
    assert cleared < page.index("url(#hatch-cut)")


def test_a_part_is_a_bar_as_long_as_it_is_large(subtests):
    for share in [0, 0.04, 0.25, 0.5, 0.97]:
        with subtests.test(share=share):
            drawing = surface_drawing([box(30, 20)], share=share)
            assert hatches(drawing) == []
            ends = {
                stroke: [x for s in drawing.shapes if getattr(s, "stroke", None) is stroke
                         for x, _ in s.points]
                for stroke in (Stroke.BAR, Stroke.DOTTED)
            }  # fmt: skip
            filled = max(ends[Stroke.BAR]) - min(ends[Stroke.BAR]) if share else 0.0
            assert filled == pytest.approx(30 * share)
            assert max(ends[Stroke.DOTTED]) - min(ends[Stroke.DOTTED]) == pytest.approx(
                30 * (1 - share)
            )
            assert any(
                key.sample is Stroke.BAR and "not where" in key.words for key in drawing.keys
            )


def test_nothing_is_marked_where_the_share_is_not_known():
    drawing = surface_drawing([box(30, 20)], share=None)
    assert hatches(drawing) == [] and drawing.keys == ()
    assert "not known yet" in drawing.description


def test_the_way_of_the_water_is_told():
    drawing = surface_drawing([box(30, 20)], share=0.5, way=["Half: one of two like sides."])
    assert "Half: one of two like sides." in drawing.notes
    assert "one of two like sides" in drawing.description


def test_a_side_against_another_piece_is_written_at_the_side_that_is_free():
    ell = [Placed(box(30, 14), ft(0), ft(0)), Placed(box(10, 9), ft(30), ft(0))]
    drawing = surface_drawing(ell)
    at = {label.text: (label.x, label.y) for label in drawing.labels}
    assert at["14 ft"] == pytest.approx((0, 7))
    assert at["9 ft"] == pytest.approx((40, 4.5))


def test_the_number_of_a_piece_never_stands_in_a_cut_out():
    pieces = [Placed(box(12, 10), ft(0), ft(0)), Placed(box(8, 5, cut=True), ft(3), ft(3))]
    lines = cells(surface_drawing(pieces), 76, 18)
    rows = [line for line in lines if "╱" in line]
    assert rows and not any("[1]" in line.split("╱")[1] for line in rows if line.count("╱") > 1)
    assert any("[2]" in line for line in rows)


def test_pieces_laid_over_each_other_are_told():
    def notes(x):
        placed = [Placed(box(30, 14), ft(0), ft(0)), Placed(box(10, 9), ft(x), ft(0))]
        return surface_drawing(placed).notes

    assert any("Pieces 1 and 2 lie over each other" in note for note in notes(25))
    assert not any("lie over" in note for note in notes(30))
    assert not any("lie over" in note for note in surface_drawing([box(9, 9), box(9, 9)]).notes)


sides = st.floats(2, 30)


@settings(max_examples=60, deadline=None)
@given(sides, sides, sides, sides, st.floats(0, 360), st.floats(-20, 20))
def test_lying_over_agrees_with_shapely_away_from_touching(a, b, c, d, turned, x):
    one, other = lay_pieces(
        [Placed(box(a, b), ft(0), ft(0)), Placed(box(c, d), ft(x), ft(1), turned)], "ft"
    )
    shared = polygon_of(one).intersection(polygon_of(other)).area
    told = lie_over(one.corners, other.corners)
    small = min(polygon_of(one).area, polygon_of(other).area)
    assume(shared == 0 or shared > 0.2 * small)
    assert told == (shared > 0)


def test_the_name_of_a_piece_stands_on_its_shading():
    rows = cells(surface_drawing([box(30, 20)]), 76, 24)
    assert any(row.startswith("│··") and "·[1] 600 ft²·" in row for row in rows)


def test_the_words_of_a_small_piece_stand_around_it():
    triangle = Piece(shapes.Triangle(ft(14), ft(7)))
    pieces = [box(41, 18), triangle, box(2.5, 4, cut=True)]
    drawing = surface_drawing(pieces)
    _, small, cut = lay_pieces(pieces, "ft")
    assert cut.host == small.number
    _, _, right, top = small.box
    for words in ("[2] 49 ft²", "7 ft", "[3] cut out"):
        label = next(one for one in drawing.labels if one.text.startswith(words))
        beside = label.place is LabelSpot.RIGHT and label.x >= right
        above = label.place is LabelSpot.ABOVE and label.y >= top
        assert beside or above, words
    # A piece that is large beside the others holds its name.
    name = next(one for one in drawing.labels if one.text.startswith("[1]"))
    assert name.place is LabelSpot.CENTER
