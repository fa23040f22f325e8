"""Plan areas against Shapely, an independent geometry library (GEOS), on random outlines."""

import itertools
import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from measures import ft, square_feet
from shapely import Polygon, unary_union
from shapely.affinity import translate

from interview.garden.survey.outlines import Offsets, SidesRound
from interview.garden.survey.pieces import Piece, plan_area
from interview.garden.survey.shapes import (
    CirclePart,
    Rectangle,
    RightTriangle,
    ThreeSides,
    Trapezoid,
    Triangle,
)
from interview.quantities.units import magnitude, quantity

size = st.floats(1, 60)


def triangle(a, b, angle):
    c = math.sqrt(a * a + b * b - 2 * a * b * math.cos(angle))
    return ThreeSides(ft(a), ft(b), ft(c))


shapes = st.one_of(
    st.builds(lambda a, b: Rectangle(ft(a), ft(b)), size, size),
    st.builds(lambda a, b: Triangle(ft(a), ft(b)), size, size),
    st.builds(lambda a, b: RightTriangle(ft(a), ft(b)), size, size),
    st.builds(triangle, size, size, st.floats(0.2, 2.9)),
    st.builds(lambda a, b, h: Trapezoid(ft(a), ft(b), ft(h)), size, size, size),
    st.builds(
        lambda w, ys: Offsets(ft(w), tuple(ft(y) for y in ys)),
        st.floats(1, 10),
        st.lists(st.floats(0.5, 30), min_size=2, max_size=8),
    ),
)


def drawn(shape):
    return Polygon(shape.outline("ft"))


@given(shapes)
def test_the_drawing_of_a_shape_has_its_area(shape):
    assert drawn(shape).is_valid
    assert drawn(shape).area == pytest.approx(square_feet(shape.area), rel=1e-9)


@given(shapes)
def test_the_drawing_may_be_in_any_unit(shape):
    meters = Polygon(shape.outline("m")).area
    assert meters == pytest.approx(magnitude(shape.area, "m**2"), rel=1e-9)


@given(size, st.floats(20, 360))
def test_a_part_of_a_circle_is_drawn_with_straight_pieces(across, degrees):
    part = CirclePart(ft(across), quantity(degrees, "degree"))
    assert drawn(part).area == pytest.approx(square_feet(part.area), rel=0.02)
    assert drawn(part).area < square_feet(part.area)


@given(st.lists(shapes, min_size=1, max_size=5))
def test_pieces_laid_side_by_side_add_up(several):
    laid = []
    for place, shape in enumerate(several):
        outline = drawn(shape)
        left = outline.bounds[0]
        laid.append(translate(outline, 1000 * place - left))
    whole = unary_union(laid).area
    found = plan_area(Piece(shape) for shape in several)
    assert square_feet(found) == pytest.approx(whole, rel=1e-9)
    reverse = plan_area(Piece(shape) for shape in reversed(several))
    assert square_feet(reverse) == pytest.approx(square_feet(found), rel=1e-12)


@given(st.floats(10, 60), st.floats(10, 60), st.floats(0.05, 0.45), st.floats(0.05, 0.45))
def test_cut_outs_inside_are_taken_away(long, wide, first, second):
    porch = Rectangle(ft(long * first), ft(wide * first))
    dormer = Triangle(ft(long * second), ft(wide * second))
    ground = drawn(Rectangle(ft(long), ft(wide)))
    corner = translate(drawn(dormer), long * (1 - second), wide * (1 - second))
    left = ground.difference(drawn(porch)).difference(corner).area
    pieces = [
        Piece(Rectangle(ft(long), ft(wide))),
        Piece(porch, cut=True),
        Piece(dormer, cut=True),
    ]
    assert square_feet(plan_area(pieces)) == pytest.approx(left, rel=1e-9)


@given(st.lists(st.tuples(st.floats(0.1, 1), st.floats(3, 40)), min_size=3, max_size=9))
def test_an_outline_walked_round_has_the_area_of_its_corners(steps):
    total = sum(step for step, _ in steps)
    turn, corners = 0.0, []
    for step, reach in steps:
        turn += 2 * math.pi * step / total
        corners.append((reach * math.cos(turn), reach * math.sin(turn)))
    outline = Polygon(corners)
    assume(outline.is_valid and outline.area > 5)
    ahead = [*corners[1:], corners[0]]
    sides = [math.dist(a, b) for a, b in zip(corners, ahead, strict=True)]
    assume(min(sides) > 0.5)
    heads = [math.atan2(b[1] - a[1], b[0] - a[0]) for a, b in zip(corners, ahead, strict=True)]
    turns = [math.degrees(b - a) for a, b in itertools.pairwise(heads)]
    walked = SidesRound(
        tuple(ft(side) for side in sides), tuple(quantity(t, "degree") for t in turns)
    )
    assert square_feet(walked.area) == pytest.approx(outline.area, rel=1e-6)
    assert drawn(walked).area == pytest.approx(outline.area, rel=1e-6)
