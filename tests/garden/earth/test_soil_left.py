"""What the soil that is dug comes to, and the ways to carry off less."""

import math

import pytest

from interview.garden.earth.results import BANK
from interview.garden.figures import BY_KEY, find
from interview.garden.size import questions as bed
from interview.quantities.units import magnitude, quantity
from interview.sheet.report import plan_text


@pytest.fixture
def planned(plan_of, sized, level_spot):
    def make(**more):
        return plan_of({**sized, **level_spot, "spots.1.slope_drop": "6 in", **more})

    return make


@pytest.fixture
def value(figure):
    def get(plan, key):
        return figure(key, plan)

    return get


def test_the_berm_is_built_a_tenth_high_of_soil_that_settles_to_nine_tenths(planned, value):
    plan = planned()
    fill = value(plan, "berm_soil")
    assert value(plan, "berm_bank_soil") == pytest.approx(fill / 0.9)
    assert value(plan, "berm_built") == pytest.approx(1.1 * fill)
    # On the day it lies no denser than it lay: the tenth asks for no more soil than the settled.
    assert value(plan, "berm_built") < value(plan, "berm_bank_soil")
    assert value(plan, "soil_dug_total") == pytest.approx(
        value(plan, "soil_spare") + value(plan, "berm_bank_soil")
    )


def test_each_way_to_carry_off_less_is_less_and_both_are_least(planned, value):
    plan = planned()
    keys = ("soil_spare", "soil_spare_bare", "soil_spare_thin", "soil_spare_thin_bare")
    spare, bare, thin, both = (value(plan, key) for key in keys)
    assert both < min(bare, thin) and max(bare, thin) < spare
    # Worked by hand: the compost's room is 2 in under the floor alone.
    assert spare - bare == pytest.approx(value(plan, "floor_area") * 2 / 12, rel=1e-3)
    winged = value(plan, "soil_spare_winged")
    assert winged < spare
    sheet = plan_text(plan)
    assert "Left over with both" in sheet and "Soil left over with wings" in sheet
    thinnest = planned(mulch_depth="2 in", amend="no")
    for key in keys[1:]:
        assert value(thinnest, key) == "no less"
    assert "Less is left over" in " ".join(sheet.split())
    outside = " ".join(plan_text(thinnest).split("THE WORK\n")[0].split())
    assert "Left over without compost" not in outside


@pytest.mark.parametrize("system", ["us", "metric"])
def test_a_low_bank_elsewhere_takes_all_that_is_left(planned, system):
    plan = planned(units=system, rain_depth="1 in")
    (high, unit), (top, _) = BANK[system]
    h, t = (magnitude(quantity(one, unit), "ft") for one in (high, top))
    # A trapezoid: its top, and its foot 3 h wider on either side.
    section = h * (t + t + 6 * h) / 2
    tamped = magnitude(plan.earth.left_over, "ft**3") * 0.9
    assert magnitude(plan.earth.bank_elsewhere, "ft") * section == pytest.approx(tamped)
    way = planned(units=system, rain_depth="1 in", water_by="channel", spout_distance="20 ft")
    carried = magnitude(way.earth.carried_off, "ft**3") / 1.25
    assert carried > magnitude(plan.earth.left_over, "ft**3") + 14
    bank = magnitude(way.earth.bank_elsewhere, "ft")
    assert bank * section == pytest.approx(0.9 * carried)


def test_sod_is_lifted_from_all_and_laid_where_no_mulch_lies(planned, value):
    plan = planned()
    lifted, laid = value(plan, "sod_lifted"), value(plan, "sod_laid")
    assert lifted == pytest.approx(value(plan, "footprint_area"))
    assert laid == pytest.approx(lifted - value(plan, "inside_area"))
    two = planned(beds="2")
    assert value(two, "sod_lifted") == pytest.approx(2 * value(two, "footprint_area"))


def test_a_lean_garden_has_mulch_to_the_full_pond_and_sod_above(planned, value):
    lean = planned(how_large="lean")
    pond = lean.size.garden.edge_area
    assert value(lean, "mulched_area") == pytest.approx(magnitude(pond, "ft**2"))
    deep = magnitude(lean.answers[bed.MULCH_DEPTH], "ft")
    assert value(lean, "mulch_volume") == pytest.approx(magnitude(pond, "ft**2") * deep)
    assert value(lean, "mulched_area") < value(lean, "inside_area")
    assert "above it lay lifted sod" in " ".join(plan_text(lean).split())
    usual = planned()
    assert value(usual, "mulched_area") == pytest.approx(value(usual, "inside_area"))
    assert "above it lay lifted sod" not in " ".join(plan_text(usual).split())


def test_the_soil_of_a_channel_is_carried_off_too(planned, value):
    plan = planned(spout_distance="20 ft", water_by="channel")
    # Worked by hand: 20 x 1 1/2 x 1/2 ft.
    assert value(plan, "channel_soil") == pytest.approx(15)
    loose = 1.25 * (value(plan, "soil_spare") + 15)
    assert value(plan, "soil_carried_off") == pytest.approx(loose)
    assert value(plan, "barrows_off") == math.ceil(loose / 3 - 1e-9)


def test_the_sheet_has_the_berm_roughened_covered_and_a_tenth_high(planned):
    flat = " ".join(plan_text(planned()).split())
    for said in ("Roughen the ground under it", "a tenth higher", "until it is green"):
        assert said in flat, said


def test_every_line_of_the_list_is_a_figure(planned, value):
    plan = planned(spout_distance="12 ft", water_by="channel")
    for item in plan.earth.shopping:
        key = item.name.replace(" ", "_")
        if item.pieces is not None:
            assert value(plan, f"{key}_pieces") == item.pieces
            continue
        assert value(plan, f"{key}_volume") == pytest.approx(magnitude(item.amount, "ft**3"))
        assert value(plan, f"{key}_bought") == pytest.approx(magnitude(item.buy, "yd**3"))
        assert value(plan, f"{key}_bags") == item.bags
    parts = ("stone_inlet", "stone_apron", "stone_channel")
    assert value(plan, "stone_volume") == pytest.approx(sum(value(plan, key) for key in parts))
    assert value(plan, "stone_channel") == pytest.approx(9)
    assert value(plan, "spouts_here") == value(plan, "elbow_pieces") == 1
    assert value(plan, "pipe_pieces") == "none"


def test_the_loose_soil_is_told_so_finely_that_its_barrows_come_out_of_it(subtests, planned, value):
    for width in ("6 ft", "6.5 ft", "7 ft", "7.5 ft", "8 ft"):
        plan = planned(floor_length="15 ft", floor_width=width)
        for heap, loads in (("soil_loose", "barrow_loads"), ("soil_carried_off", "barrows_off")):
            with subtests.test(width=width, heap=heap):
                told = float(find(BY_KEY[heap], plan).shown(plan.metric).split()[0])
                # A barrow of 3 ft³; a quarter of a load is less than a reader would ask about.
                assert abs(told - value(plan, heap)) / 3 < 0.25
                assert abs(told / 3 - value(plan, loads)) < 1.25
