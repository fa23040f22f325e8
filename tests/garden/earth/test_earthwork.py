"""Cut and fill of a level floor on a slope."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon
from shapely.geometry import box

from interview.garden.earth.earthwork import (
    SlopedBasin,
    average_end_area,
    berm_finding,
    cut_and_fill,
    prismoidal,
    soil_finding,
)
from interview.quantities.evidence import Grade
from interview.quantities.units import magnitude, quantity


def us(length=15.0, width=6.0, slope=5.0, depth=6.0, over=None, **more):
    return SlopedBasin(
        quantity(length, "ft"),
        quantity(width, "ft"),
        quantity(slope, "percent"),
        quantity(depth, "in"),
        quantity(4, "in"),
        over_dig=None if over is None else quantity(over, "in"),
        **more,
    )


METRIC = SlopedBasin(
    quantity(4.5, "m"),
    quantity(1.8, "m"),
    quantity(8, "percent"),
    quantity(150, "mm"),
    quantity(100, "mm"),
    top_width=quantity(0.3, "m"),
)


def inches(value):
    return magnitude(value, "in")


def cubic(value):
    return magnitude(value, "ft**3")


def test_a_floor_of_15_by_6_feet_on_five_percent_balances():
    work = cut_and_fill(us())
    assert inches(work.downhill_depth) == pytest.approx(3.655, abs=5e-4)
    assert inches(work.uphill_depth) == pytest.approx(7.255, abs=5e-4)
    assert cubic(work.cut) == pytest.approx(54.30, abs=5e-3)
    assert inches(work.berm_height) == pytest.approx(6.345, abs=5e-4)
    assert cubic(work.fill) == pytest.approx(48.87, abs=5e-3)
    assert cubic(work.surplus) == cubic(work.shortfall) == 0


def test_a_metric_floor_on_eight_percent_balances():
    work = cut_and_fill(METRIC)
    assert magnitude(work.downhill_depth, "mm") == pytest.approx(85.8, abs=0.05)
    assert magnitude(work.uphill_depth, "mm") == pytest.approx(229.8, abs=0.05)
    assert magnitude(work.cut, "m**3") == pytest.approx(1.882, abs=5e-4)
    assert magnitude(work.fill, "m**3") == pytest.approx(1.693, abs=5e-4)


def test_soil_dug_for_mulch_counts_toward_the_berm():
    work = cut_and_fill(us(width=7, over=3))
    assert inches(work.downhill_depth) == pytest.approx(2.360, abs=5e-4)
    assert inches(work.uphill_depth) == pytest.approx(6.560, abs=5e-4)
    assert inches(work.berm_height) == pytest.approx(7.640, abs=5e-4)
    assert cubic(work.dug) == pytest.approx(76.08, abs=5e-3)
    assert inches(work.deepest_cut) == pytest.approx(9.560, abs=5e-4)


def test_a_floor_with_soil_to_spare_stays_at_the_downhill_ground():
    work = cut_and_fill(us(20, 9.5, 5.069, 4, over=3))
    assert inches(work.downhill_depth) == 0
    assert cubic(work.cut) == pytest.approx(55.60, abs=5e-3)
    assert cubic(work.surplus) == pytest.approx(0.7608, abs=5e-4)
    wide = cut_and_fill(us(15, 12, 12, 4))
    assert inches(wide.downhill_depth) == 0
    assert cubic(wide.surplus) == pytest.approx(92.38, abs=5e-3)
    assert soil_finding(wide).grade is Grade.GOOD


def test_a_basin_sunk_to_its_rim_in_flat_ground_is_a_frustum_of_cut():
    work = cut_and_fill(us(width=7, slope=0), quantity(10, "in"), whole_ground=True)
    assert cubic(work.cut) == pytest.approx(140.28, abs=0.005)
    assert cubic(work.surplus) == pytest.approx(0.9 * 140.28, abs=0.05)
    assert inches(work.berm_height) == 0


def test_a_depth_of_ones_own_tells_what_is_over_or_lacking():
    high = cut_and_fill(us(), quantity(1, "in"))
    low = cut_and_fill(us(), quantity(6, "in"))
    assert cubic(high.shortfall) > 0 == cubic(high.surplus)
    assert cubic(low.surplus) > 0 == cubic(low.shortfall)
    assert soil_finding(high).grade is Grade.FIX
    assert "lacks" in soil_finding(high).said
    with pytest.raises(ValueError, match="fill"):
        cut_and_fill(us(), quantity(-1, "in"))
    with pytest.raises(ValueError, match="deeper"):
        cut_and_fill(us(), quantity(11, "in"))


@pytest.mark.parametrize(
    ("inches_up", "grade"),
    [(12, Grade.GOOD), (12.1, Grade.FIX), (18, Grade.FIX), (18.1, Grade.STOP)],
)
def test_a_high_berm_is_a_small_dam(inches_up, grade):
    work = cut_and_fill(us())
    assert berm_finding(replace(work, berm_height=quantity(inches_up, "in"))).grade is grade


@pytest.mark.parametrize(
    "change",
    [
        {"length": quantity(0, "ft")},
        {"slope": quantity(-5, "percent")},
        {"slope": quantity(33, "percent")},
        {"pond_depth": quantity(0, "in")},
        {"freeboard": quantity(-1, "in")},
        {"side_slope": 0.0},
        {"compaction": 0.0},
        {"over_dig": quantity(-1, "in")},
    ],
)
def test_a_basin_that_cannot_be_is_refused(change):
    with pytest.raises(ValueError, match=r"\.$|:"):
        cut_and_fill(replace(us(), **change))


basins = st.builds(
    us,
    length=st.floats(6, 40),
    width=st.floats(3, 15),
    slope=st.floats(1, 12),
    depth=st.floats(3, 12),
    over=st.floats(0, 4),
)


@given(basins)
def test_soil_is_neither_made_nor_lost(basin):
    work = cut_and_fill(basin)
    made = 0.9 * cubic(work.dug) + cubic(work.shortfall)
    assert made == pytest.approx(cubic(work.fill) + cubic(work.surplus), rel=1e-4)
    assert inches(work.downhill_depth) >= 0


@given(basins, st.floats(0.2, 5))
def test_scale_does_not_matter(basin, scale):
    wide = quantity(1, "ft")
    small = replace(basin, top_width=wide)
    names = ("length", "width", "pond_depth", "freeboard", "top_width", "over_dig")
    big = replace(small, **{name: getattr(small, name) * scale for name in names})
    one, other = cut_and_fill(small), cut_and_fill(big)
    assert cubic(other.cut) == pytest.approx(cubic(one.cut) * scale**3, rel=1e-4)
    assert inches(other.uphill_depth) == pytest.approx(inches(one.uphill_depth) * scale, rel=1e-4)


@given(basins)
def test_the_section_is_the_area_between_berm_and_sloping_ground(basin):
    section = basin.section()
    high = section.berm_height(0.2)
    # Heights over the level of the ground at the floor edge, runs from where the face meets it.
    far = 200.0
    ground = Polygon([(0, 0), (far, -section.fall * far), (far, -999), (0, -999)])
    edge = 3 * high + section.top
    berm = Polygon(
        [(0, 0), (3 * high, high), (edge, high), (edge + 3 * 400, high - 400), (0, -400)]
    )
    over = berm.difference(ground).intersection(box(0, -399, far, 99))
    assert section.berm_area(0.2) == pytest.approx(over.area, rel=1e-6)


def surveyed(section, depth, cells=900):
    """Sum cut and fill over a fine grid of the ground, with square corners."""
    reach = 3 * section.height + section.top + 3 * 2 * section.height
    x = np.linspace(-reach, section.length + reach, cells)
    y = np.linspace(-reach, section.width + reach, cells)
    across, down = np.meshgrid(x, y)
    aside = np.maximum(np.maximum(-across, across - section.length), 0)
    along = np.maximum(np.maximum(-down, down - section.width), 0)
    out = np.maximum(aside, along)
    ground = depth + section.fall * (section.width - down)
    crest = section.inner * section.height
    bank = np.minimum(out / section.inner, section.height)
    bank = bank - np.maximum(0, out - crest - section.top) / section.outer
    face = out / section.inner
    cell = (x[1] - x[0]) * (y[1] - y[0])
    cut = np.maximum(0, ground - face).sum() * cell
    fill = (np.maximum(0, bank - ground) * (down > 0)).sum() * cell
    return cut, fill


@pytest.mark.parametrize(
    "basin", [us(), us(width=7), us(slope=2), us(slope=11), us(20, 9.5, 5, 4), METRIC]
)
def test_the_whole_ground_agrees_with_a_survey_by_grid(basin):
    depth = quantity(3, "in")
    work = cut_and_fill(basin, depth, whole_ground=True)
    cut, fill = surveyed(basin.section(), 0.25)
    assert cubic(work.cut) == pytest.approx(cut, rel=5e-3)
    assert cubic(work.fill) == pytest.approx(fill, rel=5e-3)


@pytest.mark.parametrize("basin", [us(), us(width=7), us(20, 9.5, 5, 4), METRIC])
def test_square_corners_take_more_soil_than_the_section_rule_says(basin):
    simple = cut_and_fill(basin)
    whole = cut_and_fill(basin, simple.downhill_depth, whole_ground=True)
    assert 1.0 < cubic(whole.cut) / cubic(simple.cut) < 1.1
    assert 1.1 < cubic(whole.fill) / cubic(simple.fill) < 1.45
    balanced = cut_and_fill(basin, whole_ground=True)
    deeper = inches(balanced.downhill_depth) - inches(simple.downhill_depth)
    assert 0 < deeper < 1


@settings(max_examples=15)
@given(basins)
def test_the_whole_ground_balances_too(basin):
    work = cut_and_fill(basin, whole_ground=True)
    made = 0.9 * cubic(work.dug) + cubic(work.shortfall)
    assert made == pytest.approx(cubic(work.fill) + cubic(work.surplus), rel=1e-4)


def test_the_prismoidal_rule_is_exact_for_a_pyramid():
    zero, quarter, full = (quantity(a, "ft**2") for a in (0, 25, 100))
    ten = quantity(10, "ft")
    assert cubic(prismoidal(zero, quarter, full, ten)) == pytest.approx(1000 / 3)
    assert cubic(average_end_area(zero, full, ten)) == pytest.approx(1.5 * 1000 / 3)
    with pytest.raises(ValueError, match="cross-section"):
        average_end_area(quantity(-1, "ft**2"), full, ten)
