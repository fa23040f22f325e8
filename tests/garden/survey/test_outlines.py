"""The corners that shapes are drawn by, and how near a wrong measure may come to a right one."""

import math
from itertools import pairwise

import pytest
from measures import ft, ft2, inch, square_feet
from shapely import LinearRing

from interview.garden.survey.catchment import CALIBRATION, Surface, catchment
from interview.garden.survey.outlines import Offsets, SidesRound
from interview.garden.survey.pacing import calibrate, paced
from interview.garden.survey.pieces import Piece, PitchGiven, RoofPitch, plan_area, side_error
from interview.garden.survey.runoff import runoff_depth
from interview.garden.survey.shapes import (
    CirclePart,
    Rectangle,
    RightTriangle,
    ThreeSides,
    TrapezoidSides,
    Triangle,
    circle,
)
from interview.quantities.units import magnitude, quantity


def degrees(number):
    return quantity(number, "degree")


def walked(corners):
    """Return the walk round these corners, beginning with the first side, by bearings."""
    ahead = [*corners[1:], corners[0]]
    steps = [complex(*b) - complex(*a) for a, b in zip(corners, ahead, strict=True)]
    bearings = [math.degrees(math.atan2(one.imag, one.real)) for one in steps]
    turns = (degrees(after - before) for before, after in pairwise(bearings))
    return SidesRound(tuple(ft(abs(one)) for one in steps), tuple(turns))


@pytest.mark.parametrize(
    ("shape", "corners"),
    [
        (Triangle(ft(6), ft(4)), [(0, 0), (6, 0), (3, 4)]),
        (RightTriangle(ft(6), ft(4)), [(0, 0), (6, 0), (0, 4)]),
        (Offsets(ft(5), (ft(3), ft(4), ft(1))), [(0, 0), (10, 0), (10, 1), (5, 4), (0, 3)]),
        (Offsets(ft(5), (ft(0), ft(4), ft(1))), [(0, 0), (10, 0), (10, 1), (5, 4)]),
        (Offsets(ft(5), (ft(3), ft(4), ft(0))), [(0, 0), (10, 0), (5, 4), (0, 3)]),
        (Offsets(ft(5), (ft(0), ft(4), ft(0))), [(0, 0), (10, 0), (5, 4)]),
        (Offsets(ft(5), (ft(3), ft(0), ft(2))), [(0, 0), (10, 0), (10, 2), (5, 0), (0, 3)]),
        (walked([(0, 0), (8, 0), (8, 3), (2, 6)]), [(0, 0), (8, 0), (8, 3), (2, 6)]),
        (walked([(0, 0), (8, 0), (8, -3), (2, -6)]), [(0, 0), (8, 0), (8, -3), (2, -6)]),
    ],
)
def test_a_shape_is_drawn_by_its_corners(shape, corners):
    assert [point for one in shape.outline("ft") for point in one] == pytest.approx(
        [point for one in corners for point in one], abs=1e-12
    )


def test_a_gap_is_shared_out_along_the_way_from_where_the_walk_began():
    """The compass rule by hand: 0.4 ft over 40.4 ft of way, by the way to each corner."""
    walk = SidesRound((ft(10), ft(10), ft(10.4), ft(10)), (degrees(90),) * 3)
    found = walk.outline("ft")
    by = 0.4 / 40.4
    hand = [(0, 0), (10 + 10 * by, 0), (10 + 20 * by, 10), (-0.4 + 30.4 * by, 10)]
    assert [x for x, _ in found] == pytest.approx([x for x, _ in hand])
    assert [y for _, y in found] == pytest.approx([y for _, y in hand], abs=1e-12)


@pytest.mark.parametrize(
    ("angle", "corners"),
    [(5, 4 + 1), (45, 10 + 1), (180, 37 + 1), (180.2, 38 + 1), (182.5, 38 + 1), (359, 73 + 1)],
)
def test_a_slice_is_drawn_from_its_middle_by_a_corner_each_five_degrees(angle, corners):
    middle, *rim = CirclePart(ft(10), degrees(angle)).outline("ft")
    assert middle == (0, 0)
    assert len(rim) + 1 == corners
    assert all(math.hypot(*one) == pytest.approx(5) for one in rim)
    assert rim[0] == (5, 0)
    turned = math.degrees(math.atan2(rim[-1][1], rim[-1][0])) % 360
    assert turned == pytest.approx(angle)


def test_a_whole_circle_is_drawn_by_its_rim_alone():
    rim = circle(ft(10)).outline("ft")
    assert len(rim) == 72
    assert all(math.hypot(*one) == pytest.approx(5) for one in rim)
    assert LinearRing(rim).is_simple


@pytest.mark.parametrize("angle", [0, -5, 360.5, math.nan])
def test_an_angle_that_no_slice_has_is_refused(angle):
    with pytest.raises(ValueError, match="angle"):
        CirclePart(ft(10), degrees(angle))


def test_the_thinnest_slice_has_an_area():
    assert square_feet(CirclePart(ft(10), degrees(0.5)).area) == pytest.approx(25 * math.pi / 720)


@pytest.mark.parametrize("far", [(), (3,), (-1, 3), (3, -1), (0, 0)])
def test_offsets_that_make_no_outline_are_refused(far):
    with pytest.raises(ValueError, match="Give two or more offsets"):
        Offsets(ft(2), tuple(map(ft, far)))


def test_the_weights_of_offsets_are_how_the_area_grows_with_each():
    """One part in a million more of each length alone."""
    lengths, more = (3.0, 2.0, 4.0, 0.0, 5.0, 1.0), 1e-6

    def area(spacing, *far):
        return square_feet(Offsets(ft(spacing), tuple(map(ft, far))).area)

    found = Offsets(ft(3), tuple(map(ft, lengths[1:]))).elasticities
    for place, weight in enumerate(found):
        grown = [one * (1 + more * (at == place)) for at, one in enumerate(lengths)]
        assert weight == pytest.approx((area(*grown) / area(*lengths) - 1) / more, abs=1e-5)


@pytest.mark.parametrize(("sides", "turns"), [(2, 1), (4, 2), (4, 4), (3, 3)])
def test_a_walk_needs_a_turn_between_each_two_of_three_sides_or_more(sides, turns):
    with pytest.raises(ValueError, match="Give three or more sides"):
        SidesRound((ft(5),) * sides, (degrees(90),) * turns)


@pytest.mark.parametrize("size", [0.2, 1.0, 30.0])
@pytest.mark.parametrize("begins", range(7))
def test_a_notch_may_come_near_the_side_across_but_not_to_it(size, begins):
    """Shapely holds what comes near for a simple ring; the side across runs up by 1 in 6."""

    def notched(over):
        corners = [(0, 0), (6, 1), (6, 4), (4, 4), (3, 0.5 + over), (2, 4), (0, 4)]
        return [(x * size, y * size) for x, y in corners[begins:] + corners[:begins]]

    for over in (1.0, 1e-6):
        assert LinearRing(notched(over)).is_simple
        walked(notched(over))
    for over in (0.0, 4e-9, -0.5, -3.0):
        with pytest.raises(ValueError, match="cross each other"):
            walked(notched(over))


def test_a_walk_as_flat_as_floats_tell_has_no_area():
    with pytest.raises(ValueError, match="cross each other"):
        walked([(0, 0), (40, 0), (70, 6e-8)])
    assert square_feet(walked([(0, 0), (40, 0), (70, 6e-3)]).area) == pytest.approx(0.12, rel=1e-6)


def test_the_gap_of_a_small_walk_may_be_as_wide_as_its_tape_and_turns_explain():
    """Twice the root of the squares: four sides by an inch, three turns of 2 degrees by where they
    swing the end to, which is 1, 1.414 and 1 ft away."""
    swung = math.radians(2)

    def closes(gap):
        SidesRound((ft(1), ft(1), ft(1), ft(1 + gap)), (degrees(90),) * 3)

    gap = 0.0
    for _ in range(20):
        far = (math.hypot(1, gap), math.hypot(1, 1 + gap), 1 + gap)
        gap = 2 * math.hypot(*[1 / 12] * 4, *(swung * one for one in far))
    closes(gap * 0.99)
    with pytest.raises(ValueError, match="do not come back"):
        closes(gap * 1.01)


def test_what_floats_leave_of_a_triangle_or_a_trapezoid_is_none():
    with pytest.raises(ValueError, match="make no triangle"):
        ThreeSides(ft(100), ft(60), ft(40 + 5e-8))
    assert square_feet(ThreeSides(ft(100), ft(60), ft(40.01)).area) == pytest.approx(
        math.sqrt(100.005 * 0.005 * 40.005 * 59.995)  # Heron
    )
    with pytest.raises(ValueError, match="both parallel sides of one length"):
        TrapezoidSides(ft(100 + 5e-8), ft(100), ft(20), ft(20))
    along = math.sqrt(400 - 1e-7)
    with pytest.raises(ValueError, match="make no trapezoid"):
        TrapezoidSides(ft(30), ft(20), ft(20), ft(math.sqrt(500 - 20 * along)))


@pytest.mark.parametrize(
    ("number", "given"),
    [(-1, "DEGREES"), (63.5, "DEGREES"), (90, "DEGREES"), (90.5, "DEGREES"), (181, "DEGREES"),
     (-179, "DEGREES"), (-0.1, "PERCENT"), (200.1, "PERCENT"), (24.1, "RISE_IN_12"),
     (math.nan, "PERCENT"), (math.inf, "DEGREES")],
)  # fmt: skip
def test_a_pitch_that_no_roof_has_is_refused(number, given):
    with pytest.raises(ValueError, match="from 0 to 24 in 12"):
        RoofPitch(number, PitchGiven[given])


@pytest.mark.parametrize(("number", "given"), [(24, "RISE_IN_12"), (200, "PERCENT")])
def test_the_steepest_pitch_is_the_root_of_five(number, given):
    assert RoofPitch(number, PitchGiven[given]).factor == pytest.approx(math.sqrt(5))
    steepest = RoofPitch(math.degrees(math.atan(2)), PitchGiven.DEGREES)
    assert steepest.factor == pytest.approx(math.sqrt(5))


def test_a_surface_has_some_level_length():
    with pytest.raises(ValueError, match="level length"):
        Surface("roof", "roof", 0.95, plan=ft2(100), level=0)


def test_a_cut_out_of_less_than_a_square_foot_is_a_cut_out():
    found = plan_area(
        [Piece(Rectangle(ft(1), ft(1))), Piece(Rectangle(ft(0.5), ft(0.5)), cut=True)]
    )
    assert square_feet(found) == pytest.approx(0.75)


def test_two_surfaces_paced_by_one_walker_move_together_with_that_pace():
    """Squares of 10 and 6 ft a side, half running off: for a part more of pace each area grows by
    twice that part; the counts themselves are off each on its own."""
    pace = calibrate(ft(50), [20, 20, 20])
    surfaces, own = [], []
    for name, count in (("one", 4), ("other", 2.4)):
        side = paced(count, pace)
        square = Piece(Rectangle(side.length, side.length), errors=(side_error(side),) * 2)
        surfaces.append(Surface(name, "roof", 0.5, (square,)))
        long = 2.5 * count
        own.append(0.5 * math.sqrt(2) * long * magnitude(side.own_error, "ft"))
    together = 0.5 * 2 * (100 + 36) * pace.relative_error
    found = catchment(surfaces, pace)
    assert magnitude(found.weighted, "ft**2") == pytest.approx((100 + 36) / 2)
    total = math.hypot(*own, together)
    assert magnitude(found.standard_error, "ft**2") == pytest.approx(total)
    assert found.shares[CALIBRATION] == pytest.approx(together**2 / total**2)


def test_the_steps_of_a_walk_of_one_length_are_told_to_a_pace():
    """Counts that agree are each good to a pace: 1 / root 12, and by the root of three walks."""
    assert calibrate(ft(10), [1, 1, 1]).length == ft(10)
    pace = calibrate(ft(50), [20, 20, 20])
    assert pace.relative_error == pytest.approx(1 / math.sqrt(12) / 20 / math.sqrt(3))
    own = paced(80, pace).own_error
    hand = 2.5 * math.sqrt(1 / 12 + 1 / 12 * 80 / 20)
    assert magnitude(own, "ft") == pytest.approx(hand)


def test_no_rain_on_a_surface_that_holds_none_runs_off_as_nothing():
    assert runoff_depth(inch(0), 100) == inch(0)
