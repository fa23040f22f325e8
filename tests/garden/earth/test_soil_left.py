"""What the soil that is dug comes to, and the ways to carry off less."""

import math

import pytest

from interview.garden.earth.results import BANK
from interview.garden.figures import BY_KEY, find
from interview.garden.size import questions as bed
from interview.quantities.evidence import Grade
from interview.quantities.units import magnitude, quantity
from interview.sheet.report import outside_text, plan_text


@pytest.fixture
def planned(plan_of, sized, level_spot):
    def make(**more):
        sloping = {"state": "mn", "country": "us", "spots.1.slope_drop": "6 in"}
        return plan_of({**sized, **level_spot, **sloping, **more})

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
    # Each is what is left over of the garden that is laid so.
    assert thin == value(planned(mulch_depth="2 in"), "soil_spare")
    assert both == value(planned(mulch_depth="2 in", amend="no"), "soil_spare")
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


def test_the_way_to_carry_off_less_names_no_layer_that_there_is_not(subtests, planned):
    both = {"mulch_depth": "3 in", "amend": "yes"}
    for texts, said in (
        (both, "With 2 in of mulch and no compost about"),
        (both | {"mulch_depth": "0 in"}, "With no compost about"),
        (both | {"amend": "no"}, "With 2 in of mulch about"),
    ):
        with subtests.test(said):
            found = next(one for one in planned(**texts).findings if one.key == "berm_soil")
            assert said in found.change


@pytest.mark.parametrize("system", ["us", "metric"])
def test_a_low_bank_elsewhere_takes_all_that_is_left(planned, value, system):
    plan = planned(units=system, rain_depth="1 in")
    (high, unit), (top, _) = BANK[system]
    h, t = (magnitude(quantity(one, unit), "ft") for one in (high, top))
    # A trapezoid: its top, and its foot 3 h wider on either side.
    section = h * (t + t + 6 * h) / 2
    tamped = magnitude(plan.earth.left_over, "ft**3") * 0.9
    shown = 1.0 if system == "us" else 0.3048
    assert value(plan, "bank_elsewhere") / shown * section == pytest.approx(tamped)
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


def test_the_water_of_two_downspouts_digs_two_channels_and_off_paving_one(planned, value):
    for outlets, many in (("1", 1), ("2", 2)):
        spouts = {"surfaces.1.gutter_outlets": "2", "surfaces.1.outlets_here": outlets}
        plan = planned(spout_distance="20 ft", water_by="channel", **spouts)
        assert value(plan, "stone_channel") == pytest.approx(15 * many)
        assert value(plan, "channel_soil") == pytest.approx(15 * many)
        # Worked by hand: a quarter of a cubic yard an hour.
        assert value(plan, "way_hours_slow") == pytest.approx(15 * many / 27 / 0.25)
    paved = planned(
        spout_distance="20 ft", water_by="channel", **{"surfaces.1.surface_kind": "paved"}
    )
    assert value(paved, "spouts_here") == 0
    assert value(paved, "stone_channel") == pytest.approx(15)


NO_FALL = {"water_by": "pipe", "spout_distance": "20 ft", "spout_fall": "2 in"}
TOO_MUCH = {"water_by": "pipe", "spout_distance": "20 ft", "spout_fall": "40 in",
            "surfaces.1.pieces": "rectangle 300 ft by 60 ft"}  # fmt: skip


@pytest.mark.parametrize("texts", [NO_FALL, TOO_MUCH])
def test_where_no_pipe_can_be_the_channel_in_its_place_is_counted_and_told(planned, value, texts):
    plan = planned(**texts)
    assert value(plan, "stone_channel") == pytest.approx(15)
    assert value(plan, "channel_soil") == pytest.approx(15)
    assert value(plan, "way_hours_slow") == pytest.approx(15 / 27 / 0.25)
    assert value(plan, "pipe_pieces") == "none" and value(plan, "splash_stone_pieces") == 1
    found = {one.key: one for one in plan.findings}
    told = found["pipe_fall"] if texts is NO_FALL else found["pipe_flow"]
    assert told.grade is Grade.FIX and told.change == "Use a grass or stone channel."
    assert ("pipe_fall" in found) != ("pipe_flow" in found)
    for text in (plan_text(plan), outside_text(plan)):
        said = " ".join(text.split())
        assert "of this plan are for the stone channel; one of grass takes none" in said
        assert "Dig the channel, falling all the way, and line it" in said
        assert "and the channel from the downspout: washed" in said
        assert "[ ] pipe" not in said
    # With fall enough, and a roof that a pipe carries, the pipe is counted and no channel.
    piped = planned(water_by="pipe", spout_distance="20 ft", spout_fall="40 in")
    assert value(piped, "stone_channel") == "none" and value(piped, "pipe_pieces") == 2
    assert "for the stone channel" not in " ".join(plan_text(piped).split())


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
