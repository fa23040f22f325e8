"""How a garden lies in its ground: lengths, soil and footprint against independent sums."""

from __future__ import annotations

import math
import random
from dataclasses import replace

import pytest
from shapely.geometry import Polygon
from shapely.prepared import prep

from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import (
    COMPACTION,
    Form,
    Ground,
    Lie,
    Sets,
    ground_of,
    lie_of,
    too_wide,
    wing_length,
    winged,
)
from interview.garden.form.prisms import parts
from interview.quantities.units import METRIC, quantity

FOOT_M = 0.3048


def test_a_strip_that_narrows_past_nothing_is_no_berm():
    # By hand: a line 1 ft high over a strip 0.5 - q wide, from 0 to 2 ft: 2 x 0.5 - 2² / 2.
    assert parts(0.0, 2.0, 1.0, 1.0, 0.5, -1.0) == pytest.approx((-1.0, 0.0))
    assert parts(0.0, 2.0, -1.0, -1.0, 0.5, -1.0) == pytest.approx((0.0, -1.0))
    assert parts(2.0, 2.0, 1.0, 1.0, 1.0, 0.0) == parts(2.0, 1.0, 1.0, 1.0, 1.0, 0.0) == (0, 0)
    # Two triangles of a strip 3 wide: 1 x 1 / 2 over the line and 2 x 2 / 2 under it.
    assert parts(0.0, 3.0, 1.0, -2.0, 3.0, 0.0) == pytest.approx((1.5, 6.0))
    assert parts(0.0, 3.0, -2.0, 1.0, 3.0, 0.0) == pytest.approx((1.5, 6.0))
    kidney = Basin(
        quantity(1.2, "m"), quantity(0.6, "m"), quantity(150, "mm"), 3.0, quantity(50, "mm"),
        FloorShape.KIDNEY,
    )  # fmt: skip
    level = lie_of(kidney, Ground(0.0, mulch=0.25, compost=0.0))
    assert level.form is Form.DUG_IN and level.soil.fill == 0
    # On nearly level lawn what is left of the sum, 6e-32 ft³, is no berm either.
    small = Basin(
        quantity(2, "ft"), quantity(2, "ft"), quantity(8, "in"), 3.0, quantity(2, "in"),
        FloorShape.ROUNDED,
    )  # fmt: skip
    near = Ground(0.004818840579710145, mulch=0.25, compost=0.0, top=0.5, bare_rim=True)
    assert lie_of(small, near).soil.fill == 0


def usual(
    long: float,
    wide: float,
    rim_in: float,
    fall: float,
    shape: FloorShape = FloorShape.ROUNDED,
    z: float = 2.0,
    depth_in: float = 6.0,
) -> Lie:
    """Return a bed with 3 in of mulch and 2 in of compost as it lies in its ground."""
    basin = Basin(
        quantity(long, "ft"), quantity(wide, "ft"), quantity(depth_in, "in"), z,
        quantity(rim_in, "in"), shape,
    )  # fmt: skip
    return lie_of(basin, Ground(fall, mulch=0.25, compost=1 / 6))


# Worked independently on a grid of the ground (numpy), lengths by hand. Floor, freeboard in, slope;
# area inside, floor below the lawn in, rule, crest to toe in, toe to toe along and across,
# soil cut, berm tamped, left over.
WORKED = [
    (5, 2.5, 1, 0.0, 30.4, 7.00, Sets.LAWN, 0.0, 7.3, 4.8, 21.2, 0.0, 21.2),
    (5, 2.5, 2, 0.05, 33.9, 5.70, Sets.UPHILL, 4.35, 10.5, 7.25, 20.3, 5.0, 14.8),
    (14, 7, 1, 0.0, 133.8, 7.00, Sets.LAWN, 0.0, 16.3, 9.3, 112.0, 0.0, 112.0),
    (14, 7, 2, 0.0507, 141.1, 2.93, Sets.UPHILL, 7.65, 20.3, 12.6, 91.6, 23.3, 65.7),
    (14, 7, 2, 0.11, 163.0, 3.04, Sets.BERM, 12.0, 19.5, 15.0, 133.0, 29.1, 100.0),
    (20, 10, 2, 0.05, 252.7, 1.20, Sets.UPHILL, 9.65, 26.8, 16.1, 159.0, 45.4, 108.0),
    (35, 17.5, 1, 0.0, 656.0, 7.00, Sets.LAWN, 0.0, 37.3, 19.8, 606.0, 0.0, 606.0),
    (35, 17.5, 3, 0.05, 704.2, 0.30, Sets.BERM, 12.0, 42.0, 25.0, 543.0, 98.0, 433.0),
    (35, 17.5, 3, 0.11, 886.1, 4.26, Sets.BERM, 12.0, 40.8, 28.9, 1311.0, 53.0, 1252.0),
]


@pytest.mark.parametrize("row", WORKED, ids=lambda row: f"{row[0]}x{row[1]} ft at {row[3]:.2%}")
def test_a_bed_lies_in_its_ground_as_worked_out_independently(row: tuple[float, ...]) -> None:
    long, wide, rim, fall, inside, below, sets, toe, along, across, cut, fill, left = row
    lie = usual(long, wide, rim, fall)
    assert lie.sets is sets
    assert lie.floor_below * 12 == pytest.approx(below, abs=0.006)
    assert lie.crest_to_toe * 12 == pytest.approx(toe, abs=0.006)
    assert lie.inside_area == pytest.approx(inside, abs=0.5)
    assert lie.footprint_length == pytest.approx(along, abs=0.06)
    assert lie.footprint_width == pytest.approx(across, abs=0.06)
    assert lie.soil.cut == pytest.approx(cut, rel=5e-3)
    assert lie.soil.fill == pytest.approx(fill, rel=1e-2, abs=0.05)
    assert lie.soil.left_over == pytest.approx(left, rel=5e-3)


def test_a_metric_oval_lies_as_worked_out_independently() -> None:
    basin = Basin(
        quantity(5, "m"), quantity(2.5, "m"), quantity(150, "mm"), 2, quantity(50, "mm"),
        FloorShape.OVAL,
    )  # fmt: skip
    ground = Ground(0.0462, 0.075 / FOOT_M, 0.05 / FOOT_M, top=0.3 / FOOT_M,
                    highest_berm=0.3 / FOOT_M)  # fmt: skip
    lie = lie_of(basin, ground)
    assert lie.floor_below * FOOT_M * 1000 == pytest.approx(66.0, abs=0.1)
    assert lie.crest_to_toe * FOOT_M * 1000 == pytest.approx(193, abs=0.5)
    assert lie.footprint_length * FOOT_M == pytest.approx(6.9, abs=0.02)
    assert lie.footprint_width * FOOT_M == pytest.approx(4.2, abs=0.03)


def test_wings_dig_less_and_leave_less_soil() -> None:
    lie = usual(14, 7, 2, 0.0507)
    wings = winged(lie)
    assert wings is not None
    # Worked by hand: 6 (1 - 2 x 0.0507) - 0.0507 x 84 = 1.13 in; 2 in / 0.0507 = 3.3 ft.
    assert wings.floor_below * 12 == pytest.approx(1.13, abs=0.006)
    assert wing_length(lie) == pytest.approx(3.29, abs=0.01)
    assert wings.crest_to_toe * 12 == pytest.approx(9.8, abs=0.05)
    # Without the soil of the wings themselves.
    assert wings.soil.left_over == pytest.approx(27, abs=1)
    assert winged(usual(14, 7, 1, 0.0)) is None


def test_a_bed_too_wide_for_its_slope_is_told_and_a_narrower_one_is_not() -> None:
    assert too_wide(usual(35, 17.5, 3, 0.11))
    narrow = usual(19, 5, 2, 0.11)
    assert not too_wide(narrow)
    # Worked independently: cut 120 ft³, 12.4 in deep uphill where the 14 by 7 ft floor has 15.7.
    assert narrow.soil.cut == pytest.approx(120, abs=0.5)
    assert narrow.uphill_cut * 12 == pytest.approx(12.4, abs=0.05)
    assert usual(14, 7, 2, 0.11).uphill_cut * 12 == pytest.approx(15.7, abs=0.05)


def test_the_notch_needs_a_swale_only_where_the_lawn_lies_over_it() -> None:
    # At 1 % the lawn is over the notch for about 6 ft, at 2 % nowhere: worked by hand.
    assert usual(14, 7, 2, 0.01).swale == pytest.approx(6, abs=0.01)
    assert usual(14, 7, 2, 0.02).swale == 0
    assert usual(14, 7, 1, 0.0).swale == 0


def test_form_follows_the_slope() -> None:
    assert usual(14, 7, 1, 0.0).form is Form.DUG_IN
    assert usual(5, 2.5, 2, 0.02).form is Form.LOW_BANK
    assert usual(14, 7, 2, 0.05).form is Form.BERM


def random_lies(count: int) -> list[Lie]:
    rng = random.Random(11)
    found = []
    while len(found) < count:
        shape = rng.choice([FloorShape.ROUNDED, FloorShape.RECTANGLE, FloorShape.OVAL,
                            FloorShape.KIDNEY])  # fmt: skip
        wide = rng.uniform(2, 12)
        long = wide * rng.uniform(1.3, 4)
        fall = rng.choice([0.0, rng.uniform(0.01, 0.13)])
        z = rng.choice([1.5, 2.0, 3.0])
        lie = usual(long, wide, rng.choice([2, 3, 6]), fall, shape, z, rng.choice([4, 6, 8]))
        found.append(lie)
    return found


def grid_sums(lie: Lie, cells: int) -> tuple[float, float, float]:
    """Sum cut, fill and footprint of the same garden over a grid of the ground.

    The distance to the floor is shapely's (an outside reference), so only round corners; of square
    ones it is the larger of the two distances to the sides.
    """
    from shapely import contains_xy, distance, points

    ring = Polygon(lie.outline.line_at(0.0))
    low_x, low_y, high_x, high_y = Polygon(lie.footprint).bounds
    step_x, step_y = (high_x - low_x + 0.2) / cells, (high_y - low_y + 0.2) / cells
    xs = [low_x - 0.1 + (n + 0.5) * step_x for n in range(cells) for _ in range(cells)]
    ys = [low_y - 0.1 + (n + 0.5) * step_y for _ in range(cells) for n in range(cells)]
    if lie.outline.shape is FloorShape.RECTANGLE:
        a, w = lie.outline.length / 2, lie.outline.width
        far = [max(0.0, abs(x) - a, y - w, -y) for x, y in zip(xs, ys, strict=True)]
    else:
        within = contains_xy(ring, xs, ys)
        away = distance(ring.exterior, points(xs, ys))
        far = [0.0 if there else d for there, d in zip(within, away, strict=True)]
    ground, edge, height = lie.ground, lie.berm_edge, lie.height
    cut = fill = covered = 0.0
    for q, y in zip(far, ys, strict=True):
        high = lie.floor_below + ground.fall * y
        outer = height if q <= edge else height - (q - edge) / ground.outer
        hull = max(high, outer)
        inside = q / lie.side_slope < hull
        made = hull
        if inside:
            made = q / lie.side_slope - ground.mulch - (ground.compost if q <= 0 else 0.0)
        # Beyond the crest nothing is dug, and level ground is its own rim.
        if lie.ground.level and q > lie.crest:
            continue
        cut += max(0.0, high - made)
        fill += max(0.0, made - high) if outer > high else 0.0
        covered += 1.0 if abs(made - high) > 1e-9 else 0.0
    cell = step_x * step_y
    return cut * cell, fill * cell, covered * cell


def test_soil_and_footprint_agree_with_a_grid_of_the_ground_on_a_hundred_gardens() -> None:
    faults = []
    for lie in random_lies(100):
        cut, fill, covered = grid_sums(lie, 70)
        for name, got, wanted, slack in (
            ("cut", lie.soil.cut, cut, 0.02),
            ("fill", lie.soil.fill, fill, 0.04),
            ("footprint", lie.footprint_area, covered, 0.03),
        ):
            if abs(got - wanted) > slack * wanted + 0.5:
                faults.append((name, got, wanted, lie.outline.shape, lie.ground.fall))
    assert not faults


def test_the_footprint_holds_the_line_inside_and_that_holds_the_floor() -> None:
    faults = []
    for lie in random_lies(60):
        foot = prep(Polygon(lie.footprint).buffer(1e-6))
        line = prep(Polygon(lie.inside_line).buffer(1e-6))
        if not (foot.contains(Polygon(lie.inside_line)) and line.contains(
            Polygon(lie.outline.line_at(0.0))
        )):  # fmt: skip
            faults.append(lie)
        if not lie.footprint_area >= lie.inside_area >= lie.outline.area:
            faults.append(lie)
    assert not faults


def test_the_soil_dug_always_makes_the_berm_and_the_berm_is_never_too_high() -> None:
    faults = []
    for lie in random_lies(60):
        enough = COMPACTION.value * lie.soil.cut >= lie.soil.fill * (1 - 1e-6)
        if not enough or lie.crest_to_toe > 1 + 1e-9 or lie.floor_below < 0:
            faults.append(lie)
        # Where the lawn uphill set the depth, it stands as high as the crest.
        if lie.sets is Sets.UPHILL and abs(lie.uphill_cut - lie.height) > 1e-9:
            faults.append(lie)
    assert not faults


def test_a_bed_scaled_whole_keeps_its_form() -> None:
    for lie in random_lies(20):
        ground = replace(
            lie.ground,
            mulch=lie.ground.mulch * 2,
            compost=lie.ground.compost * 2,
            top=lie.ground.top * 2,
            highest_berm=lie.ground.highest_berm * 2,
        )
        basin = Basin(
            quantity(lie.outline.length * 2, "ft"), quantity(lie.outline.width * 2, "ft"),
            quantity(lie.depth * 2, "ft"), lie.side_slope, quantity(lie.freeboard * 2, "ft"),
            lie.outline.shape,
        )  # fmt: skip
        twice = lie_of(basin, ground)
        assert twice.soil.cut == pytest.approx(8 * lie.soil.cut, rel=1e-6)
        assert twice.crest_to_toe == pytest.approx(2 * lie.crest_to_toe, rel=1e-9, abs=1e-9)
        assert twice.footprint_area == pytest.approx(4 * lie.footprint_area, rel=1e-6)


def test_ground_that_no_berm_can_meet_is_refused_in_a_sentence() -> None:
    with pytest.raises(ValueError, match="as steep as the sides"):
        usual(10, 5, 2, 0.33)
    with pytest.raises(ValueError, match="measure down the hill"):
        Ground(1.0)
    for wrong in ({"mulch": -0.1}, {"compost": -0.1}, {"top": -0.1}):
        with pytest.raises(ValueError, match="less than nothing"):
            Ground(0.05, **wrong)
    with pytest.raises(ValueError, match="as steep as the sides"):
        usual(10, 5, 2, 0.1, z=10)
    assert Ground(0.00995).level and not Ground(0.01).level
    assert math.isfinite(usual(10, 5, 2, 0.31).soil.cut)


def test_where_the_lawn_is_the_rim_nothing_is_built_outside_it() -> None:
    lie = usual(14, 7, 1, 0.008)
    assert lie.crest_to_toe == lie.beyond_crest == 0
    assert lie.footprint == lie.inside_line
    assert lie.soil.fill == pytest.approx(0)


def test_a_berm_reaches_beyond_its_crest_as_far_as_its_line_does() -> None:
    lie = usual(14, 7, 1, 0.06)
    apart = [math.dist(*pair) for pair in zip(lie.footprint, lie.inside_line, strict=True)]
    assert lie.beyond_crest == pytest.approx(max(apart))
    assert min(apart) == 0 and lie.beyond_crest > lie.ground.top


def test_the_ground_is_read_in_feet() -> None:
    slope, mulch, top = quantity(5, "percent"), quantity(3, "in"), quantity(18, "in")
    bare = ground_of(slope, mulch, None, top)
    assert bare == Ground(0.05, mulch=0.25, compost=0.0, top=1.5, highest_berm=1.0)
    metric = ground_of(slope, mulch, quantity(6, "in"), top, bare_rim=True, system=METRIC)
    assert metric.highest_berm == pytest.approx(0.3 / FOOT_M)
    assert replace(metric, highest_berm=1.0) == Ground(0.05, 0.25, 0.5, top=1.5, bare_rim=True)


def test_a_level_bed_is_dug_by_its_depth_its_rim_and_what_goes_in() -> None:
    """By hand: 6 in of pond, 1 in of rim, 3 in of mulch and 2 in of compost."""
    assert usual(14, 7, 1, 0.0).deepest_dig == pytest.approx(12 / 12)


def test_the_soil_sets_no_more_depth_than_its_berm_takes() -> None:
    """Winged, this bed would have more berm than soil: a hair less deep is not enough."""
    bed = Basin(
        quantity(14, "ft"), quantity(7, "ft"), quantity(6, "in"), 2.0, quantity(6, "in"),
        FloorShape.KIDNEY,
    )  # fmt: skip
    lie = winged(lie_of(bed, Ground(0.012)))
    assert lie.sets is Sets.SOIL
    assert 0 <= lie.soil.left_over < 1e-3
    assert lie.at_depth(lie.floor_below - 0.01).soil.left_over < -0.1


def test_a_rim_left_bare_is_dug_less_deep_by_its_mulch() -> None:
    """By hand: 3 in of mulch between the full pond, 12 in from the floor, and the rim, 16 in."""
    lie = usual(14, 7, 2, 0.0)
    bare = replace(lie, ground=replace(lie.ground, bare_rim=True))
    ring = lie.outline.area_at(16 / 12) - lie.outline.area_at(1.0)
    assert lie.soil.cut - bare.soil.cut == pytest.approx(0.25 * ring)


def test_a_rim_at_the_full_pond_leaves_nothing_to_wing() -> None:
    lie = usual(14, 7, 0, 0.03)
    assert lie.sets is Sets.UPHILL and winged(lie) is None


def test_a_bed_is_too_wide_by_its_rise_or_by_the_cut_uphill() -> None:
    rises, cuts, neither = usual(20, 10.5, 1, 0.1), usual(14, 7, 6, 0.12), usual(14, 7, 1, 0.04)
    assert rises.floor_rise > 1 >= cuts.floor_rise
    assert cuts.uphill_cut > 1.5 > neither.uphill_cut
    flat = replace(rises, floor_below=0.0)
    assert flat.uphill_cut < 1.5
    assert [too_wide(one) for one in (rises, flat, cuts, neither)] == [True, True, True, False]


def test_no_soil_is_left_in_a_berm_by_rounding():
    nearly_level = Ground(0.22 / 27.6, mulch=75 / 304.8, compost=75 / 304.8, bare_rim=True)
    bed = Basin(
        quantity(3.3, "m"), quantity(1.1, "m"), quantity(150, "mm"), 5.0, quantity(100, "mm")
    )
    assert lie_of(bed, nearly_level).soil.fill == 0
