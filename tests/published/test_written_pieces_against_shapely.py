"""Pieces as they are written, in any unit, against outlines laid by Shapely (GEOS).

Each outline is built here by itself, from the same numbers, and not from what the program draws.
"""

from __future__ import annotations

import datetime as dt
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Point, Polygon, box, unary_union
from shapely.affinity import rotate, translate

from interview.garden.stages import new_answers
from interview.garden.survey.piece_lines import SHAPES
from interview.garden.survey.pieces import plan_area
from interview.garden.survey.surface_questions import PIECES
from interview.garden.survey.written_pieces import piece_of
from interview.quantities.units import magnitude

FT = {"ft": 1.0, "m": 1 / 0.3048, "cm": 1 / 30.48, "in": 1 / 12, "yd": 3.0}
side = st.integers(30, 300).map(lambda tenths: tenths / 10)
unit = st.sampled_from(sorted(FT))
ROUND = 5e-4
"""Shapely draws circles with straight pieces."""


def written(feet: float, name: str) -> str:
    return f"{feet / FT[name]:.6f} {name}"


def rectangle(a, b, c, u, v):
    return f"rectangle {written(a, u)} by {written(b, v)}", Polygon(
        [(0, 0), (a, 0), (a, b), (0, b)]
    )


def triangle(a, b, c, u, v):
    return f"triangle {written(a, u)} by {written(b, v)}", Polygon([(0, 0), (a, 0), (c, b)])


def three_sides(a, b, c, u, v):
    turn = 0.3 + 2.4 * c / 30
    x, y = b * math.cos(turn), b * math.sin(turn)
    third = math.dist((a, 0), (x, y))
    line = f"triangle sides {written(a, u)}, {written(b, v)}, {written(third, u)}"
    return line, Polygon([(0, 0), (a, 0), (x, y)])


def trapezoid(a, b, c, u, v):
    line = f"trapezoid {written(a, u)}, {written(b, v)}, height {written(c, u)}"
    return line, Polygon([(0, 0), (a, 0), (b + 1, c), (1, c)])


def trapezoid_sides(a, b, c, u, v):
    long, short = a + 2, a * 0.6
    slants = math.hypot(1, c), math.hypot(long - short - 1, c)
    sides = [written(one, u) for one in (long, short, *slants)]
    line = f"trapezoid sides {', '.join(sides)}"
    return line, Polygon([(0, 0), (long, 0), (short + 1, c), (1, c)])


def circle(a, b, c, u, v):
    return f"circle across {written(a, u)}", Point(0, 0).buffer(a / 2, quad_segs=64)


def half_circle(a, b, c, u, v):
    whole = Point(0, 0).buffer(a / 2, quad_segs=64)
    return f"half circle across {written(a, u)}", whole & Polygon(
        [(-a, 0), (a, 0), (a, a), (-a, a)]
    )


def quarter_circle(a, b, c, u, v):
    whole = Point(0, 0).buffer(a, quad_segs=64)
    return f"quarter circle radius {written(a, u)}", whole & Polygon(
        [(0, 0), (a, 0), (a, a), (0, a)]
    )


def circle_part(a, b, c, u, v):
    whole = Point(0, 0).buffer(a / 2, quad_segs=64)
    tip = (a * math.cos(math.radians(60)), a * math.sin(math.radians(60)))
    return f"circle part {written(a, u)}, 60 deg", whole & Polygon([(0, 0), (a, 0), tip])


def offsets(a, b, c, u, v):
    line = f"offsets {written(4, u)}, 0 ft, {written(a, v)}, {written(b, u)}, {written(c, v)}"
    return line, Polygon([(0, 0), (12, 0), (12, c), (8, b), (4, a)])


def walked_round(a, b, c, u, v):
    sides = (a + b, "left", c, "left", b, "right", a, "left", a, "left", c + a)
    words = (one if isinstance(one, str) else written(one, u) for one in sides)
    return f"round {' '.join(words)}", Polygon(
        [(0, 0), (a + b, 0), (a + b, c), (a, c), (a, c + a), (0, c + a)]
    )


MAKERS = {
    "rectangle": rectangle,
    "triangle": triangle,
    "three sides": three_sides,
    "trapezoid": trapezoid,
    "trapezoid sides": trapezoid_sides,
    "circle": circle,
    "half circle": half_circle,
    "quarter circle": quarter_circle,
    "circle part": circle_part,
    "offsets": offsets,
    "round": walked_round,
}
VIEW = new_answers({"units": "us"}, dt.datetime(2026, 6, 1, tzinfo=dt.UTC))


def area_of(lines):
    value = PIECES.read("\n".join(lines), VIEW.at("surfaces", 1))
    return magnitude(plan_area(piece_of(line) for line in value), "ft**2")


def test_every_shape_that_can_be_written_is_checked():
    assert set(MAKERS) == set(SHAPES)


@pytest.mark.parametrize("shape", MAKERS)
@given(a=side, b=side, c=side, u=unit, v=unit)
def test_a_written_shape_has_the_area_of_its_outline(shape, a, b, c, u, v):
    line, outline = MAKERS[shape](a, b, c, u, v)
    assert outline.is_valid
    assert area_of([line]) == pytest.approx(outline.area, rel=ROUND)


@given(
    st.lists(
        st.tuples(st.sampled_from(sorted(MAKERS)), side, side, side, unit, st.integers(0, 359)),
        min_size=1,
        max_size=7,
    ),
    st.data(),
)
def test_written_pieces_less_a_hole_in_each_are_the_union_less_the_holes(several, data):
    lines, bodies, holes, left = [], [], [], 0.0
    for shape, a, b, c, u, turned in several:
        line, outline = MAKERS[shape](a, b, c, u, u)
        laid = rotate(outline, turned)
        laid = translate(laid, left - laid.bounds[0], 0)
        left = laid.bounds[2] + 1
        bodies.append(laid)
        lines.append(line)
        if data.draw(st.booleans()):
            middle = laid.representative_point()
            wide = 0.5 * middle.distance(laid.boundary)
            x, y = middle.x - wide, middle.y - wide
            holes.append(box(x, y, x + 2 * wide, y + 2 * wide))
            lines.append(f"less rectangle {written(2 * wide, u)} by {written(2 * wide, u)}")
    ground = unary_union(bodies).difference(unary_union(holes)).area
    assert area_of(lines) == pytest.approx(ground, rel=3 * ROUND)
