"""Pieces of a surface, added and cut out."""

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from measures import ft, square_feet

from interview.garden.survey.outlines import Offsets, SidesRound
from interview.garden.survey.pacing import calibrate, paced
from interview.garden.survey.pieces import (
    Piece,
    PitchGiven,
    RoofPitch,
    own_error,
    pace_slopes,
    plan_area,
    plan_length,
    side_error,
    taped,
)
from interview.garden.survey.shapes import (
    Rectangle,
    RightTriangle,
    ThreeSides,
    Trapezoid,
    TrapezoidSides,
    Triangle,
    circle,
    half_circle,
)
from interview.quantities.spread import TAPE_ERROR_IN
from interview.quantities.units import magnitude, quantity

side = st.floats(0.5, 200)


def m(number):
    return quantity(number, "m")


def test_a_paced_rectangle_a_triangle_and_a_cut_out():
    pace = calibrate(ft(50), [19, 20, 19, 20])
    long, wide = paced(16, pace), paced(7, pace)
    errors = (side_error(long), side_error(wide))
    roof = Piece(Rectangle(long.length, wide.length), errors=errors)
    hip = Piece(Triangle(ft(14), ft(7)))
    porch = Piece(Rectangle(ft(2.5), ft(4)), cut=True)
    assert square_feet(roof.area) == pytest.approx(736.4, abs=0.05)
    assert square_feet(hip.area) == pytest.approx(49)
    assert square_feet(plan_area([roof, hip, porch])) == pytest.approx(775.4, abs=0.05)
    assert roof.relative_error == pytest.approx(0.07441, rel=5e-4)
    assert hip.relative_error == pytest.approx(0.01331, rel=5e-4)


def test_a_trapezoid_and_a_triangle_of_three_sides_in_meters():
    trapezoid = Trapezoid(m(8.4), m(5.2), m(3.1)).area
    triangle = ThreeSides(m(5.5), m(4.8), m(3.9)).area
    assert magnitude(trapezoid, "m**2") == pytest.approx(21.08)
    assert magnitude(triangle, "m**2") == pytest.approx(9.144, abs=5e-4)


def test_the_plan_under_a_sloping_length():
    assert magnitude(plan_length(ft(12.5), RoofPitch(6)), "ft") == pytest.approx(11.18, abs=5e-3)
    steep = RoofPitch(35, PitchGiven.DEGREES)
    assert magnitude(plan_length(m(4.2), steep), "m") == pytest.approx(3.440, abs=5e-4)


def test_the_three_ways_to_give_a_pitch_agree():
    rise = RoofPitch(12)
    assert RoofPitch(45, PitchGiven.DEGREES).factor == pytest.approx(rise.factor)
    assert RoofPitch(100, PitchGiven.PERCENT).factor == pytest.approx(rise.factor)
    assert RoofPitch(0).factor == RoofPitch(0, PitchGiven.DEGREES).factor == 1
    half = RoofPitch(0.5, PitchGiven.DEGREES)
    assert half.factor == pytest.approx(1 / math.cos(math.radians(0.5)))
    assert RoofPitch(24).factor == pytest.approx(math.sqrt(5))


def test_an_impossible_pitch_is_refused(subtests):
    for number, way in [
        (25, PitchGiven.RISE_IN_12),
        (-1, PitchGiven.RISE_IN_12),
        (64, PitchGiven.DEGREES),
        (135, PitchGiven.DEGREES),
        (201, PitchGiven.PERCENT),
        (math.nan, PitchGiven.PERCENT),
    ]:
        with (
            subtests.test(number=number, way=way),
            pytest.raises(ValueError, match="24 in 12"),
        ):
            RoofPitch(number, way)


def test_offsets_from_a_line():
    offsets = tuple(ft(y) for y in (0, 4.5, 6, 6.5, 5.5, 3, 0))
    assert square_feet(Offsets(ft(3), offsets).area) == pytest.approx(76.5)
    three = Offsets(ft(3), (ft(2), ft(5), ft(4)))
    assert square_feet(three.area) == pytest.approx(24)
    # By hand: the spacing in full, then 3 x 2 / 2, 3 x 5 and 3 x 4 / 2 of the 24.
    assert three.elasticities == pytest.approx((1, 3 / 24, 15 / 24, 6 / 24))
    # Ends of nothing carry no error: that of the spacing, and of the 5 ft that are all the area.
    tape = TAPE_ERROR_IN / 12
    gable = Piece(Offsets(ft(3), (ft(0), ft(5), ft(0))))
    assert gable.relative_error == pytest.approx(math.hypot(tape / 3, tape / 5))


def test_an_ell_walked_round_is_two_rectangles():
    left, right = quantity(90, "degree"), quantity(-90, "degree")
    ell = SidesRound(tuple(ft(x) for x in (20, 8, 12, 6, 8, 14)), (left, left, right, left, left))
    assert square_feet(ell.area) == pytest.approx(20 * 8 + 8 * 6)


def test_a_small_gap_is_shared_out_and_a_large_one_refused():
    left = (quantity(90, "degree"),) * 3
    near = SidesRound((ft(20), ft(10), ft(19.6), ft(10)), left)
    assert square_feet(near.area) == pytest.approx(198, rel=0.01)
    with pytest.raises(ValueError, match=r"come back.*15 % of the way"):
        SidesRound((ft(20), ft(10), ft(12), ft(10)), left)


def test_a_figure_eight_is_refused():
    corners = [(0, 0), (10, 0), (2, 12), (8, 12)]
    ahead = [*corners[1:], corners[0]]
    heads = [
        math.degrees(math.atan2(y1 - y0, x1 - x0))
        for (x0, y0), (x1, y1) in zip(corners, ahead, strict=True)
    ]
    sides = tuple(ft(math.dist(a, b)) for a, b in zip(corners, ahead, strict=True))
    turns = tuple(quantity(b - a, "degree") for a, b in itertools.pairwise(heads))
    with pytest.raises(ValueError, match="cross"):
        SidesRound(sides, turns)


def test_three_sides_that_do_not_meet_are_refused(subtests):
    for sides in [(10, 4, 5), (4, 5, 9), (1, 1, 2)]:
        with subtests.test(sides=sides), pytest.raises(ValueError, match="no triangle"):
            ThreeSides(*(ft(x) for x in sides))


def test_a_side_that_is_no_length_is_refused(subtests):
    for bad in [0.0, -3.0, math.nan, math.inf]:
        with subtests.test(bad=bad):
            for make in (
                lambda x: Rectangle(x, ft(3)),
                lambda x: Triangle(ft(3), x),
                lambda x: ThreeSides(ft(3), x, ft(3)),
                lambda x: circle(x),
                lambda x: Offsets(x, (ft(1), ft(2))),
            ):
                with pytest.raises(ValueError, match="more than zero"):
                    make(ft(bad))
            with pytest.raises(ValueError, match="trapezoid"):
                Trapezoid(ft(3), ft(bad), ft(3))


def test_a_cut_out_as_big_as_the_rest_is_refused():
    roof = Piece(Rectangle(ft(10), ft(4)))
    with pytest.raises(ValueError, match="cut-out"):
        plan_area([roof, Piece(Rectangle(ft(8), ft(5)), cut=True)])
    with pytest.raises(ValueError, match="cut-out"):
        plan_area([roof, Piece(Rectangle(ft(3), ft(3)), cut=True, count=5)])
    with pytest.raises(ValueError, match="Add a piece"):
        plan_area([Piece(Rectangle(ft(3), ft(3)), cut=True)])


def test_pieces_alike_are_counted():
    step = Rectangle(ft(3), ft(1))
    assert square_feet(plan_area([Piece(step, count=4)])) == pytest.approx(12)
    with pytest.raises(ValueError, match="at least one"):
        Piece(step, count=0)


def test_a_measure_without_its_error_is_refused():
    with pytest.raises(ValueError, match="own error"):
        Piece(Rectangle(ft(3), ft(1)), errors=(taped(),))


@given(side, side, side)
def test_the_error_of_a_trapezoid_follows_its_derivatives(a, b, height):
    piece = Piece(Trapezoid(ft(a), ft(b), ft(height)))
    inch = 1 / 12
    expected = math.hypot(height / 2 * inch, height / 2 * inch, (a + b) / 2 * inch)
    assert square_feet(own_error([piece])) == pytest.approx(expected, rel=1e-5)


@given(side, side)
def test_units_do_not_matter(a, b):
    in_feet = Piece(Rectangle(ft(a), ft(b)))
    in_meters = Piece(Rectangle(m(a * 0.3048), m(b * 0.3048)))
    assert square_feet(in_feet.area) == pytest.approx(square_feet(in_meters.area))
    assert in_feet.relative_error == pytest.approx(in_meters.relative_error)


@given(st.permutations([5.5, 4.8, 3.9]))
def test_the_order_of_the_sides_does_not_matter(sides):
    area = ThreeSides(*(m(x) for x in sides)).area
    assert magnitude(area, "m**2") == pytest.approx(9.144, abs=5e-4)


@given(side, side, st.floats(0.1, 10))
def test_area_grows_with_the_square_of_the_scale(a, b, scale):
    for shape in (Rectangle, Triangle, RightTriangle):
        small = square_feet(shape(ft(a), ft(b)).area)
        big = square_feet(shape(ft(a * scale), ft(b * scale)).area)
        assert big == pytest.approx(small * scale**2)


def test_two_half_circles_make_one():
    assert square_feet(half_circle(ft(8)).area) * 2 == pytest.approx(
        square_feet(circle(ft(8)).area)
    )
    assert square_feet(circle(ft(8)).area) == pytest.approx(math.pi * 16)


def test_a_trapezoid_by_its_four_sides():
    even = TrapezoidSides(ft(16), ft(10), ft(5), ft(5))
    assert square_feet(even.area) == pytest.approx(13 * 4)
    turned = TrapezoidSides(ft(10), ft(16), ft(5), ft(5))
    assert square_feet(turned.area) == pytest.approx(13 * 4)
    square_corner = TrapezoidSides(ft(16), ft(13), ft(4), ft(5))
    assert square_feet(square_corner.area) == pytest.approx(14.5 * 4)


def test_four_sides_that_make_no_trapezoid_are_refused(subtests):
    for sides, said in [
        ((16, 10, 3, 3), "no trapezoid"),
        ((16, 10, 1, 9), "no trapezoid"),
        ((10, 10, 5, 5), "how far apart"),
        ((16, 10, 0, 5), "more than zero"),
    ]:
        with subtests.test(sides=sides, said=said), pytest.raises(ValueError, match=said):
            TrapezoidSides(*(ft(x) for x in sides))


@given(side, side, st.floats(0.1, 10))
def test_four_sides_grow_with_the_square_of_the_scale(long, height, scale):
    sides = (long, long * 0.6, math.hypot(height, long * 0.1), math.hypot(height, long * 0.3))
    small = square_feet(TrapezoidSides(*(ft(x) for x in sides)).area)
    big = square_feet(TrapezoidSides(*(ft(x * scale) for x in sides)).area)
    assert small == pytest.approx(0.8 * long * height, rel=1e-6)
    assert big == pytest.approx(small * scale**2, rel=1e-9)


SQUARE_TURNS = (quantity(90, "degree"),) * 3


def test_a_gap_within_the_measuring_error_closes_and_one_beyond_it_does_not():
    """By tape the ends of 20, 10, 20, 10 ft may miss by two standard errors: 2.2 ft."""
    assert SidesRound((ft(20), ft(10), ft(18), ft(10)), SQUARE_TURNS).area
    with pytest.raises(ValueError, match="come back"):
        SidesRound((ft(10), ft(20), ft(10), ft(12)), SQUARE_TURNS)
    with pytest.raises(ValueError, match=r"\.$"):
        SidesRound((ft(4), ft(4)), (quantity(180, "degree"),))
    with pytest.raises(ValueError, match="come back"):
        SidesRound((ft(20), ft(10), ft(17.6), ft(10)), SQUARE_TURNS)


def test_a_gap_is_shared_out_in_proportion_to_the_way_walked():
    """By hand: a gap of 2 ft in 58 ft moves the corners by 20/58, 30/58 and 48/58 of it."""
    gapped = SidesRound((ft(20), ft(10), ft(18), ft(10)), SQUARE_TURNS)
    below, above = 20 - 2 * 20 / 58, (20 - 2 * 30 / 58) - (2 - 2 * 48 / 58)
    assert square_feet(gapped.area) == pytest.approx((below + above) / 2 * 10)


def test_a_gap_that_rough_paces_explain_is_closed():
    sides = (ft(20), ft(10), ft(17.6), ft(10))
    rough = (ft(1),) * 4
    assert SidesRound(sides, SQUARE_TURNS, rough).area
    with pytest.raises(ValueError, match="its own error"):
        SidesRound(sides, SQUARE_TURNS, rough[:3])


def test_an_outline_that_touches_itself_is_refused():
    """Two squares that share a corner: walked round, the way passes that corner twice."""
    turns = (90, -90, 90, 90, 90, -90, 90)
    with pytest.raises(ValueError, match="cross"):
        SidesRound((ft(10),) * 8, tuple(quantity(turn, "degree") for turn in turns))


def test_an_outline_that_folds_back_on_itself_is_refused():
    turns = (90, 90, 180, -90)
    with pytest.raises(ValueError, match="cross"):
        SidesRound(
            tuple(ft(x) for x in (10, 5, 12, 2, 5)), tuple(quantity(t, "degree") for t in turns)
        )


@given(st.permutations(range(4)), st.floats(0.05, 20))
def test_pieces_in_any_order_and_unit_make_the_same_plan(order, scale):
    made = [
        Piece(Rectangle(ft(20 * scale), ft(10 * scale))),
        Piece(Triangle(m(6 * scale), m(3 * scale))),
        Piece(circle(ft(4 * scale)), cut=True),
        Piece(Trapezoid(m(3 * scale), ft(6 * scale), ft(5 * scale)), count=2),
    ]
    expected = sum(square_feet(piece.area) for piece in made)
    assert square_feet(plan_area([made[n] for n in order])) == pytest.approx(expected)


def test_each_walker_moves_only_the_lengths_that_walker_paced():
    ann, bob = calibrate(ft(50), [19, 20, 19, 20]), calibrate(ft(50), [22, 23, 22])
    long, wide = paced(16, ann), paced(7, bob)
    piece = Piece(
        Rectangle(long.length, wide.length),
        errors=(side_error(long, "Ann"), side_error(wide, "Bob")),
    )
    assert piece.pace_powers == pytest.approx({"Ann": 1.0, "Bob": 1.0})
    slopes = pace_slopes([piece, Piece(Rectangle(ft(3), ft(4)))])
    assert {who: square_feet(s) for who, s in slopes.items()} == pytest.approx(
        {"Ann": square_feet(piece.area), "Bob": square_feet(piece.area)}
    )
