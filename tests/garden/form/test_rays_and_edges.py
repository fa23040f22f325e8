"""How many rays a floor has and what each stands for; the edges of what a basin may be."""

import math

import pytest
from measures import feet, ft, inch, quantity
from scipy.optimize import brentq

from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground, Sets, lie_of
from interview.garden.form.outline import Outline
from interview.garden.form.prisms import parts
from interview.garden.pond.roots import part_from, root

RECTANGLE, ROUNDED, OVAL, KIDNEY = (
    FloorShape.RECTANGLE, FloorShape.ROUNDED, FloorShape.OVAL, FloorShape.KIDNEY,
)  # fmt: skip


@pytest.mark.parametrize(
    ("shape", "long", "wide", "rays"),
    [
        # Each half circle in 48 parts, each half of a square corner in 8; a side along the contour
        # by its two ends, one up the slope in 24 parts.
        (OVAL, 12, 6, 2 * 48 + 1),
        (ROUNDED, 12, 6, 2 * (48 + 1) + 2 * 2),
        (ROUNDED, 6, 12, 2 * (48 + 1) + 2 * (24 + 1)),
        (RECTANGLE, 12, 6, 8 * (8 + 1) + 2 * 2 + 2 * (24 + 1)),
    ],
)
def test_an_edge_is_cut_into_as_many_rays_as_its_soil_needs(shape, long, wide, rays):
    assert len(Outline(shape, long, wide).rays) == rays


def test_a_bend_of_hardly_a_turn_is_cut_into_four():
    """6.2 x 6 ft bent to 100 ft: both bends turn by 0.002, the ends by a half circle."""
    bed = Outline(KIDNEY, 6.2, 6, bend=100.0)
    assert len(bed.rays) == 2 * (48 + 1) + 2 * (4 + 1)


@pytest.mark.parametrize(
    ("shape", "field", "first", "last"),
    [(ROUNDED, "width", 0, 48), (ROUNDED, "spread", 0, 48), (RECTANGLE, "spread", 0, 8),
     (RECTANGLE, "width", 9, 33), (OVAL, "spread", 0, 96)],
)  # fmt: skip
def test_the_first_and_the_last_ray_of_a_stretch_stand_for_half(shape, field, first, last):
    rays = [getattr(ray, field) for ray in Outline(shape, 6, 6).rays[first : last + 1]]
    assert rays[1:-1] == pytest.approx([rays[1]] * (len(rays) - 2))
    assert (rays[0], rays[-1]) == pytest.approx((rays[1] / 2, rays[1] / 2))
    assert rays[1] > 0


@pytest.mark.parametrize(
    ("long", "wide"),
    [(0, 5), (5, 0), (math.inf, 5), (5, math.inf), (math.nan, 5), (5, math.nan), (-1, 5)],
)
@pytest.mark.parametrize("shape", [RECTANGLE, ROUNDED, OVAL])
def test_a_floor_that_cannot_be_is_refused(shape, long, wide):
    with pytest.raises(ValueError, match="longer and wider"):
        Outline(shape, long, wide)


def test_a_kidney_wider_than_long_by_half_a_foot_is_refused():
    with pytest.raises(ValueError, match="longer than wide"):
        Outline(KIDNEY, 5, 5.5)


def test_a_bend_is_taken_as_it_is_given_in_any_unit():
    def bed(**bend):
        return Basin(ft(14), ft(6), inch(6), 3, inch(2), KIDNEY, **bend).outline

    assert bed(bend=quantity(3.048, "m")).radius_of_bend == pytest.approx(10)
    assert bed().radius_of_bend == pytest.approx(14 * 2 / 3)


@pytest.mark.parametrize("z", [-0.1, math.inf, math.nan])
def test_sides_that_cannot_be_are_refused(z):
    with pytest.raises(ValueError, match="lean inward"):
        Basin(ft(14), ft(6), inch(6), z, inch(2))


def test_a_line_that_begins_at_nought_lies_wholly_on_one_side():
    assert parts(0.0, 1.0, 0.0, -1.0, 1.0, 0.0) == pytest.approx((0.0, 0.5))
    assert parts(0.0, 1.0, 0.0, 1.0, 1.0, 0.0) == pytest.approx((0.5, 0.0))
    assert parts(0.0, 1.0, -1.0, 0.0, 1.0, 0.0) == pytest.approx((0.0, 0.5))


@pytest.mark.parametrize(
    ("shape", "long", "wide", "deep", "rim"),
    [(ROUNDED, 4, 2, 3, 4), (RECTANGLE, 14, 8, 8, 2), (OVAL, 15, 7, 8, 4), (ROUNDED, 14, 7, 6, 2)],
)
def test_the_berm_is_as_high_as_its_crest_over_the_ground_at_its_toe(shape, long, wide, deep, rim):
    """Where a face falling 1 in 3 from the outer edge of the top meets ground falling 12 %."""
    ground = Ground(0.12)
    lie = lie_of(Basin(ft(long), ft(wide), inch(deep), 3, inch(rim), shape), ground)
    height = (deep + rim) / 12
    edge = 3 * height + 1

    def over(out):
        return height - (out - edge) / 3 - (lie.floor_below - 0.12 * out)

    toe = brentq(over, edge, 100)
    assert lie.crest_to_toe == pytest.approx(height - (lie.floor_below - 0.12 * toe))


def test_a_floor_as_deep_as_a_rule_asks_is_no_deeper_where_a_little_soil_is_left():
    """11 x 3 ft on 8 %, a pond of 6 in with no rim: the lawn uphill stands as high as the crest."""
    bed = Basin(ft(11), ft(3), inch(6), 2, inch(0), ROUNDED)
    lie = lie_of(bed, Ground(0.08, top=0.5))
    assert lie.sets is Sets.UPHILL
    assert lie.floor_below == pytest.approx(0.5 * (1 - 2 * 0.08) - 3 * 0.08)
    assert 0 < lie.soil.left_over < 1


def test_a_soil_that_sets_the_depth_leaves_just_none():
    lie = lie_of(Basin(ft(4), ft(2), inch(3), 3, inch(4), ROUNDED), Ground(0.12))
    assert lie.sets is Sets.SOIL
    exact = brentq(lambda below: lie.at_depth(below).soil.left_over, 0, 2, xtol=1e-14)
    assert lie.floor_below == pytest.approx(exact, abs=1e-9)
    assert feet(ft(lie.soil.left_over)) == pytest.approx(0, abs=1e-8)


@pytest.mark.parametrize(
    ("sum_at", "low", "high"),
    [
        (lambda x: x**3 - 2, 0.0, 2.0),
        (lambda x: 2 - x**3, 0.0, 2.0),
        (lambda x: math.exp(x) - 5, -1.0, 3.0),
        (lambda x: x - 1, 1.0, 3.0),
        (lambda x: x - 3, 1.0, 3.0),
        (math.atan, -1.0, 30.0),
    ],
)
def test_a_root_is_that_of_scipy_in_a_few_looks(sum_at, low, high):
    looked = []
    found = root(lambda x: (looked.append(x), sum_at(x))[1], low, high)
    assert found == pytest.approx(brentq(sum_at, low, high, xtol=1e-15), rel=1e-13, abs=1e-13)
    assert len(looked) <= 21
    assert all(low <= x <= high for x in looked)
    looked.clear()
    near = root(lambda x: (looked.append(x), sum_at(x))[1], low, high, 0.01)
    assert abs(sum_at(near)) <= 0.01
    assert near == looked[-1] or len(looked) == 2
    assert all(abs(sum_at(x)) > 0.01 for x in looked[2:-1])


def test_what_begins_to_hold_is_found_to_the_last_bits_of_one():
    assert part_from(lambda part: part >= 1 / 3) == pytest.approx(1 / 3, abs=2**-47)
    assert part_from(lambda part: True) == 0
    assert part_from(lambda part: False) == 1
