"""A floor or a side that dries within hours is planted as dry ground."""

from __future__ import annotations

import pytest

from interview.garden.planting.choice import quality
from interview.garden.planting.choose import choose
from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.record import Indicator, Sun
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.wetness import ZoneSite, chosen_from, fits_after, rating, suited
from interview.garden.planting.wishes import Wishes
from interview.garden.planting.words import DRY_NOTES
from interview.garden.size.zones import Zone
from interview.quantities.units import quantity

WET = {Indicator.OBL, Indicator.FACW}
UPL = Indicator.UPL
DRY = {Indicator.FAC, Indicator.FACU, UPL}


@pytest.mark.parametrize(("hours", "dry"), [(0, True), (1.4, True), (5.9, True), (6, False)])
def test_a_floor_under_water_for_less_than_six_hours_takes_no_plants_of_wet_ground(hours, dry):
    # The hours are a choice of this project.
    assert set(suited(Zone.FLOOR, hours)) & WET == (set() if dry else WET)
    if dry:
        assert set(suited(Zone.FLOOR, hours)) == DRY
        assert suited(Zone.FLOOR, hours) == suited(Zone.RIM, hours)


def test_a_floor_that_is_wet_for_days_now_and_then_is_no_dry_ground():
    assert set(chosen_from(Zone.FLOOR, 2, 60)) == WET
    assert set(chosen_from(Zone.FLOOR, 2, 12)) == DRY
    assert set(chosen_from(Zone.FLOOR, 2, 20)) == DRY - {Indicator.UPL}


def test_plants_listed_for_the_rim_may_stand_on_a_dry_floor():
    yarrow = next(one for one in builtin_plants() if one.common_name == "common yarrow")
    assert Zone.FLOOR not in yarrow.zones
    assert fits_after(yarrow, Zone.FLOOR, 2, ListRegion.GP).ok
    wet = fits_after(yarrow, Zone.FLOOR, 7, ListRegion.GP)
    assert not wet.ok and "not the floor" in wet.why


def plan(hours):
    site = ZoneSite(quantity(60, "ft**2"), quantity(hours, "h"))
    wishes = Wishes(
        region=PlantRegion.GP,
        list_region=ListRegion.GP,
        sun=Sun.FULL,
        floor_height=quantity(4, "ft"),
        rim_height=quantity(3, "ft"),
    )
    return choose(builtin_plants(), wishes, {Zone.FLOOR: site})


def test_the_planting_of_fast_soil_is_of_dry_ground_and_says_so():
    dry = plan(1.4)
    ratings = {rating(pick.plant, ListRegion.GP) for pick in dry.zones[0].picks}
    assert ratings and ratings <= DRY
    assert DRY_NOTES[Zone.FLOOR] in dry.notes
    assert "No plants that want wet roots." in dry.zones[0].guidance.traits
    wet = plan(20)
    assert DRY_NOTES[Zone.FLOOR] not in wet.notes
    assert {rating(pick.plant, ListRegion.GP) for pick in wet.zones[0].picks} & WET


# The side


@pytest.mark.parametrize(("hours", "dry"), [(0.5, True), (5.9, True), (6, False), (8.6, False)])
def test_a_side_under_water_for_less_than_six_hours_takes_no_plants_of_wet_ground(hours, dry):
    assert set(suited(Zone.SIDE, hours)) == (DRY if dry else {Indicator.FACW, *DRY} - {UPL})


def test_a_side_that_is_wet_for_days_now_and_then_is_no_dry_ground():
    assert Indicator.FACW in chosen_from(Zone.SIDE, 2, 60)
    assert Indicator.FACW not in chosen_from(Zone.SIDE, 2, 40)


def side_plan(hours, **more):
    site = ZoneSite(quantity(60, "ft**2"), quantity(hours, "h"))
    wishes = Wishes(region=PlantRegion.MW, list_region=ListRegion.MW, **more)
    return choose(builtin_plants(), wishes, {Zone.SIDE: site})


def test_a_dry_side_is_planted_with_plants_of_side_and_rim_that_need_no_wet_soil():
    dry, wet = side_plan(2), side_plan(9)
    assert DRY_NOTES[Zone.SIDE] in dry.notes and DRY_NOTES[Zone.SIDE] not in wet.notes
    offered = [*(pick.plant for pick in dry.zones[0].picks), *dry.zones[0].reserve]
    assert {rating(one, ListRegion.MW) for one in offered} == DRY
    assert all({Zone.SIDE, Zone.RIM} & set(one.zones) for one in offered)
    assert not any(one.needs_long_wet for one in offered)
    assert WET & {rating(one, ListRegion.MW) for one in wet.zones[0].reserve}


def test_on_dry_ground_plants_that_stand_drought_badly_come_later():
    plant = next(one for one in builtin_plants() if one.scientific_name == "Rudbeckia hirta")

    def score(drought, hours):
        told = plant._replace(drought=drought, moisture=())
        return quality(told, Zone.SIDE, hours, PlantRegion.MW, ListRegion.MW)

    for worse in ("none", "low"):
        assert score(worse, 2) > score("medium", 2) == score("high", 2) == score("", 2)
        assert score(worse, 9) == score("high", 9)
    picked = [pick.plant.drought for pick in side_plan(2).zones[0].picks]
    assert picked and not {"none", "low"} & set(picked)


def found_at(plan, key):
    return next((one for one in plan.findings if one.key == key), None)


def test_soil_that_is_too_fast_is_to_be_mended_first(plan_of, sized):
    # Over 8.3 in/h measured must be amended: Minnesota Stormwater Manual, Design infiltration
    # rates, web page.
    assert found_at(plan_of({**sized, "known_rate": "8.3 in/h"}), "soil_too_fast") is None
    found = found_at(plan_of({**sized, "known_rate": "8.4 in/h"}), "soil_too_fast")
    assert "8.4 in/h" in found.said and found.change.startswith("Improve it first")


def test_a_berm_of_sand_asks_for_other_soil(plan_of, sized, level_spot):
    # Rain Garden Handbook for Western Washington, 2013, p. 39.
    slope = {**sized, **level_spot, "spots.1.slope_drop": "6 in"}
    assert found_at(plan_of({**slope, "soil_dug": "loam"}), "berm_sand") is None
    found = found_at(plan_of({**slope, "soil_dug": "sand"}), "berm_sand")
    assert "silt or clay soil for the berm" in found.change
    level = {**sized, **level_spot, "soil_dug": "sand"}
    assert found_at(plan_of(level), "berm_sand") is None


def test_drought_counts_on_the_rim_and_standing_water_on_a_floor_wet_for_long():
    plant = next(one for one in builtin_plants() if one.scientific_name == "Rudbeckia hirta")

    def score(zone, hours, **facts):
        told = plant._replace(**{"drought": "", "moisture": (), "standing_water": "", **facts})
        return quality(told, zone, hours, PlantRegion.MW, ListRegion.MW)

    assert score(Zone.RIM, 0, drought="low") > score(Zone.RIM, 0, drought="high")
    # Where no list tells how it stands drought, it is taken by the water it wants.
    assert score(Zone.RIM, 0, moisture=("high",)) > score(Zone.RIM, 0, moisture=("medium",))
    assert score(Zone.RIM, 0, moisture=("high",), drought="medium") == score(Zone.RIM, 0)
    assert score(Zone.FLOOR, 40, standing_water="low") > score(Zone.FLOOR, 40)
    assert score(Zone.FLOOR, 20, standing_water="low") == score(Zone.FLOOR, 20)
    assert score(Zone.FLOOR, 20, trade="unknown") > score(Zone.FLOOR, 20, trade="contract")
