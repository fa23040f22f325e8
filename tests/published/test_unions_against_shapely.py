"""Unions of pieces and cut-outs, and outlines walked round, against Shapely (GEOS)."""

import itertools
import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from measures import ft, square_feet
from shapely import Polygon, unary_union
from shapely.affinity import rotate, scale, translate

from interview.garden.survey.outlines import SidesRound
from interview.garden.survey.pieces import Piece, plan_area
from interview.garden.survey.shapes import (
    CirclePart,
    Rectangle,
    RightTriangle,
    ThreeSides,
    Trapezoid,
    TrapezoidSides,
    Triangle,
    circle,
)
from interview.quantities.units import quantity

size = st.floats(4, 60)
turn = st.floats(0, 360)


def four_sides(long, part, height, lean):
    short = long * part
    left = (long - short) * lean
    right = long - short - left
    return TrapezoidSides(
        ft(long), ft(short), ft(math.hypot(left, height)), ft(math.hypot(right, height))
    )


straight = st.one_of(
    st.builds(lambda a, b: Rectangle(ft(a), ft(b)), size, size),
    st.builds(lambda a, b: Triangle(ft(a), ft(b)), size, size),
    st.builds(lambda a, b: RightTriangle(ft(a), ft(b)), size, size),
    st.builds(lambda a: ThreeSides(ft(a), ft(a * 0.8), ft(a * 0.9)), size),
    st.builds(lambda a, b, h: Trapezoid(ft(a), ft(b), ft(h)), size, size, size),
    st.builds(four_sides, size, st.floats(0.1, 0.9), size, st.floats(-0.5, 1.5)),
    st.builds(
        lambda a, b: SidesRound(
            (ft(a), ft(b), ft(a / 2), ft(b), ft(a / 2), ft(2 * b)),
            tuple(quantity(t, "degree") for t in (90, 90, -90, 90, 90)),
        ),
        size,
        size,
    ),
)
round_ones = st.one_of(
    st.builds(lambda d: circle(ft(d)), size),
    st.builds(lambda d, a: CirclePart(ft(d), quantity(a, "degree")), size, st.floats(30, 350)),
)


def drawn(shape):
    return Polygon(shape.outline("ft"))


def laid(shape, left, turned):
    outline = rotate(drawn(shape), turned)
    return translate(outline, left - outline.bounds[0], -outline.bounds[1])


@given(straight)
def test_every_straight_shape_has_the_area_of_its_outline(shape):
    outline = drawn(shape)
    assert outline.is_valid
    assert outline.area == pytest.approx(square_feet(shape.area), rel=1e-9)


@given(st.lists(st.tuples(straight, turn, st.booleans()), min_size=1, max_size=6))
def test_pieces_and_cut_outs_laid_without_overlap(several):
    """Each piece lies turned any way; a cut-out is the same shape, half as large, within it."""
    left, outlines, holes, pieces = 0.0, [], [], []
    for shape, turned, cut in several:
        outline = laid(shape, left, turned)
        left = outline.bounds[2] + 1
        outlines.append(outline)
        pieces.append(Piece(shape))
        if cut:
            corner = outline.representative_point()
            hole = scale(outline, 0.25, 0.25, origin=corner)
            assume(outline.contains(hole))
            holes.append(hole)
            quarter = (
                type(shape)(*(value / 4 for value in shape.lengths))
                if not isinstance(shape, SidesRound)
                else SidesRound(tuple(value / 4 for value in shape.sides), shape.turns)
            )
            pieces.append(Piece(quarter, cut=True))
    ground = unary_union(outlines).difference(unary_union(holes)).area
    assert square_feet(plan_area(pieces)) == pytest.approx(ground, rel=1e-9)


@given(st.lists(st.tuples(round_ones, turn), min_size=1, max_size=4))
def test_round_pieces_add_up_to_their_drawing_within_its_straight_pieces(several):
    left, outlines = 0.0, []
    for shape, turned in several:
        outline = laid(shape, left, turned)
        left = outline.bounds[2] + 1
        outlines.append(outline)
    found = square_feet(plan_area(Piece(shape) for shape, _ in several))
    assert unary_union(outlines).area == pytest.approx(found, rel=0.02)


@given(size, size, st.floats(0.1, 0.9), st.floats(0.1, 0.9))
def test_an_ell_is_two_rectangles_or_one_less_its_corner_or_a_walk_round(a, b, p, q):
    two = [Piece(Rectangle(ft(a), ft(b * q))), Piece(Rectangle(ft(a * p), ft(b * (1 - q))))]
    less = [
        Piece(Rectangle(ft(a), ft(b))),
        Piece(Rectangle(ft(a * (1 - p)), ft(b * (1 - q))), cut=True),
    ]
    walk = SidesRound(
        (ft(a), ft(b * q), ft(a * (1 - p)), ft(b * (1 - q)), ft(a * p), ft(b)),
        tuple(quantity(t, "degree") for t in (90, 90, -90, 90, 90)),
    )
    corner = Polygon([(0, 0), (a, 0), (a, b * q), (a * p, b * q), (a * p, b), (0, b)])
    for found in (plan_area(two), plan_area(less), walk.area):
        assert square_feet(found) == pytest.approx(corner.area, rel=1e-9)


def test_a_tee_and_a_u_fall_out_of_pieces():
    tee = unary_union([Polygon([(0, 8), (20, 8), (20, 14), (0, 14)]),
                       Polygon([(7, 0), (13, 0), (13, 8), (7, 8)])])  # fmt: skip
    found = plan_area([Piece(Rectangle(ft(20), ft(6))), Piece(Rectangle(ft(6), ft(8)))])
    assert square_feet(found) == pytest.approx(tee.area)
    u = Polygon([(0, 0), (20, 0), (20, 14), (14, 14), (14, 5), (6, 5), (6, 14), (0, 14)])
    found = plan_area([Piece(Rectangle(ft(20), ft(14))), Piece(Rectangle(ft(8), ft(9)), cut=True)])
    assert square_feet(found) == pytest.approx(u.area)


def walk_of(corners):
    """Return the sides and turns of a closed outline by its corners."""
    ahead = [*corners[1:], corners[0]]
    sides = [math.dist(a, b) for a, b in zip(corners, ahead, strict=True)]
    heads = [
        math.degrees(math.atan2(b[1] - a[1], b[0] - a[0]))
        for a, b in zip(corners, ahead, strict=True)
    ]
    turns = [b - a for a, b in itertools.pairwise(heads)]
    return tuple(map(ft, sides)), tuple(quantity(t, "degree") for t in turns)


corner = st.tuples(st.integers(0, 7), st.integers(0, 7))


@given(st.lists(corner, min_size=4, max_size=8, unique=True))
def test_an_outline_is_refused_where_it_is_no_simple_polygon(corners):
    outline = Polygon(corners)
    sides, turns = walk_of(corners)
    if outline.is_valid and outline.area > 0:
        assert square_feet(SidesRound(sides, turns).area) == pytest.approx(outline.area, rel=1e-6)
    else:
        with pytest.raises(ValueError, match="cross"):
            SidesRound(sides, turns)


steps = st.lists(st.integers(-6, 6).filter(bool), min_size=2, max_size=5)


@given(steps, steps)
def test_square_turns_left_and_right_make_the_polygon_that_shapely_sees(across, along):
    count = min(len(across), len(along))
    xs, ys = across[: count - 1], along[: count - 1]
    xs, ys = [*xs, -sum(xs)], [*ys, -sum(ys)]
    assume(all(xs) and all(ys))
    corners, x, y = [], 0, 0
    for dx, dy in zip(xs, ys, strict=True):
        corners += [(x, y), (x + dx, y)]
        x, y = x + dx, y + dy
    sides, turns = walk_of(corners)
    outline = Polygon(corners)
    if outline.is_valid:
        assert square_feet(SidesRound(sides, turns).area) == pytest.approx(outline.area, rel=1e-9)
    else:
        with pytest.raises(ValueError, match="cross"):
            SidesRound(sides, turns)
