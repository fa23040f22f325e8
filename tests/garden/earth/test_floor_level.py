"""How deep the floor lies: one rule from level ground to a steep slope."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from interview.garden.earth.earthwork import SlopedBasin, cut_and_fill
from interview.garden.earth.floor_level import Sets, floor_level
from interview.garden.earth.ground import ground_cut
from interview.garden.earth.level_berm import level_berm, level_fill
from interview.quantities.units import magnitude, quantity


def basin(slope=5.0, length=15.0, width=6.0, depth=6.0, freeboard=4.0):
    return SlopedBasin(
        quantity(length, "ft"),
        quantity(width, "ft"),
        quantity(slope, "percent"),
        quantity(depth, "in"),
        quantity(freeboard, "in"),
    )


def mulch(garden, inches=3.0):
    floor = magnitude(garden.length, "ft") * magnitude(garden.width, "ft")
    return quantity(floor * inches / 12, "ft**3")


def level(garden):
    return floor_level(garden, mulch(garden))


def inches(value):
    return magnitude(value, "in")


def test_on_flat_ground_the_full_pond_stands_at_the_lawn():
    found = level(basin(0))
    assert inches(found.depth) == pytest.approx(6)
    assert found.sets is Sets.UPHILL
    assert inches(found.most) == pytest.approx(6)


def test_a_rim_too_high_for_its_soil_does_not_put_the_overflow_under_the_lawn():
    garden = basin(0, freeboard=8)
    found = level(garden)
    assert found.sets is Sets.OVERFLOW
    assert inches(found.depth) == pytest.approx(6)
    assert inches(found.by_level_berm) > 6
    assert magnitude(level_berm(garden, found.depth, mulch(garden)).lacking, "ft**3") > 0


def test_on_five_percent_the_berm_downhill_sets_the_depth():
    found = level(basin(5))
    assert found.sets is Sets.BERM
    assert inches(found.depth) == pytest.approx(3.655, abs=5e-4)


def test_a_gentle_slope_is_dug_for_a_berm_level_all_round():
    garden = basin(2, length=14.5, width=6.5, freeboard=6)
    found = level(garden)
    assert found.sets is Sets.ALL_ROUND
    berm = level_berm(garden, found.depth, mulch(garden))
    cut = magnitude(berm.cut, "ft**3") + magnitude(mulch(garden), "ft**3")
    assert 0.9 * cut == pytest.approx(magnitude(berm.fill, "ft**3"), rel=1e-3)


gardens = st.builds(
    basin,
    slope=st.floats(0, 12),
    length=st.floats(6, 30),
    width=st.floats(3, 12),
    depth=st.floats(3, 12),
    freeboard=st.floats(2, 8),
)


@settings(max_examples=25, deadline=None)
@given(gardens, st.floats(0, 12))
def test_a_little_more_slope_changes_little(garden, slope):
    before, after = (
        level(basin(s, 12, 6, inches(garden.pond_depth), inches(garden.freeboard)))
        for s in (slope, slope + 0.01)
    )
    assert inches(after.depth) == pytest.approx(inches(before.depth), abs=0.06)


@settings(max_examples=25, deadline=None)
@given(gardens)
def test_the_full_pond_is_held_uphill_and_leaves_downhill(garden):
    found = level(garden)
    fall = magnitude(garden.slope, "percent") / 100
    width, pond = inches(garden.width), inches(garden.pond_depth)
    rim = pond + inches(garden.freeboard)
    uphill = (inches(found.depth) + fall * width) / (1 - 3 * fall)
    assert uphill >= pond - 1e-6
    assert inches(found.depth) - fall * 3 * rim <= pond + 1e-6


@settings(max_examples=25, deadline=None)
@given(gardens)
def test_the_digging_makes_the_berm_unless_the_overflow_forbids_it(garden):
    found = level(garden)
    berm = level_berm(garden, found.depth, mulch(garden))
    lacking = magnitude(berm.lacking, "ft**3")
    if found.sets is not Sets.OVERFLOW:
        assert lacking <= 1e-3 * magnitude(berm.fill, "ft**3")
    spare = magnitude(berm.spare, "ft**3")
    dug = magnitude(berm.cut, "ft**3") + magnitude(mulch(garden), "ft**3")
    made = magnitude(berm.fill, "ft**3") / 0.9
    assert dug + lacking == pytest.approx(made + spare, rel=1e-9)


@pytest.mark.parametrize("slope", [0, 1, 5, 10])
def test_the_level_berm_agrees_with_a_survey_by_a_fine_grid(slope):
    section = basin(slope).section()
    depth = 0.4
    y = np.linspace(-30, section.width + 30, 1500)
    x = np.linspace(-30, section.length + 30, 1500)
    across, down = np.meshgrid(x, y)
    aside = np.maximum(np.maximum(-across, across - section.length), 0)
    along = np.maximum(np.maximum(-down, down - section.width), 0)
    crest = section.inner * section.height
    inside = np.maximum(aside, along)
    out = np.hypot(np.maximum(0, aside - crest), np.maximum(0, along - crest)) - section.top
    bank = np.where(
        inside <= crest, inside / section.inner, section.height - np.maximum(0, out) / section.outer
    )
    ground = depth + section.fall * (section.width - down)
    cell = (x[1] - x[0]) * (y[1] - y[0])
    fill = np.maximum(0, bank - ground).sum() * cell
    cut = np.maximum(0, ground - inside / section.inner).sum() * cell
    assert level_fill(section, depth) == pytest.approx(fill, rel=0.01)
    assert ground_cut(section, depth) == pytest.approx(cut, rel=0.01)


def test_a_fixed_depth_is_taken_as_it_is():
    garden = basin(0)
    work = cut_and_fill(garden, level(garden).depth)
    assert inches(work.berm_height) == pytest.approx(4)
