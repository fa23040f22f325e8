"""A floor that dries within hours is planted as dry ground."""

from __future__ import annotations

import pytest

from interview.garden.planting.choose import Wishes, choose
from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.record import Indicator, ListRegion, PlantRegion, Sun
from interview.garden.planting.wetness import ZoneSite, chosen_from, fits_after, rating, suited
from interview.garden.planting.words import DRY_FLOOR_NOTE
from interview.garden.size.zones import Zone
from interview.quantities.units import quantity

WET = {Indicator.OBL, Indicator.FACW}
DRY = {Indicator.FAC, Indicator.FACU, Indicator.UPL}


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
    assert DRY_FLOOR_NOTE in dry.notes
    assert "No plants that want wet roots." in dry.zones[0].guidance.traits
    wet = plan(20)
    assert DRY_FLOOR_NOTE not in wet.notes
    assert {rating(pick.plant, ListRegion.GP) for pick in wet.zones[0].picks} & WET


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
