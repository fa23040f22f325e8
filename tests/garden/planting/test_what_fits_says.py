"""What is said of a plant and a zone by the hours under water, and where a rating is looked up."""

import pytest

from interview.garden.planting.record import Indicator
from interview.garden.planting.regions import ListRegion
from interview.garden.planting.wetness import (
    dry_ground,
    fits_after,
    planting_zones,
    rating,
    suited,
)
from interview.garden.size.zones import Zone
from interview.garden.storms.wet_zones import ZoneHours
from interview.quantities.units import quantity

MW = ListRegion.MW


def said(plant, zone, wet, region=MW, worst=0.0, when="", ok=False):
    fit = fits_after(plant, zone, wet, region, worst, when)
    assert fit.ok is ok, fit.why
    return fit.why


@pytest.mark.parametrize(
    ("wet", "words"),
    [
        (0, "The side stays above the water, which"),
        (0.04, "The side stays above the water, which"),
        (0.05, "The side is under water for less than an hour, which"),
        (0.9, "The side is under water for less than an hour, which"),
        (1, "The side is under water about 1 h, which"),
        (7.6, "The side is under water about 8 h, which"),
    ],
)
def test_hours_under_water_are_told_in_words_that_are_true(plain_plant, wet, words):
    assert said(plain_plant(), Zone.SIDE, wet, ok=True).startswith(words)


def test_a_plant_fits_where_it_is_listed_or_on_dry_ground_of_the_floor(plain_plant):
    """A floor that is dry ground takes plants of any zone, a side those of the rim too."""
    for zones, zone, wet, worst, ok in [
        ((Zone.RIM,), Zone.FLOOR, 5, 0, True), ((Zone.SIDE,), Zone.FLOOR, 5, 0, True),
        ((Zone.RIM,), Zone.FLOOR, 6, 0, False), ((Zone.RIM,), Zone.FLOOR, 5, 49, False),
        ((Zone.RIM,), Zone.SIDE, 5, 0, True), ((Zone.FLOOR,), Zone.SIDE, 5, 0, False),
        ((Zone.FLOOR,), Zone.RIM, 0, 0, False), ((Zone.FLOOR, Zone.RIM), Zone.SIDE, 5, 0, True),
    ]:  # fmt: skip
        plant = plain_plant(Indicator.FAC, zones=zones)
        fit = fits_after(plant, zone, wet, MW, worst, "once")
        assert fit.ok is ok, (zones, zone, wet, worst, fit.why)
    plant = plain_plant(zones=(Zone.FLOOR, Zone.SIDE))
    assert said(plant, Zone.RIM, 0) == "The list gives it to the floor and side, not the rim."


def test_a_plant_without_a_rating_here_says_where(plain_plant):
    elsewhere = plain_plant(ratings=((ListRegion.GP, Indicator.FAC),))
    where = f" ({MW.value})"
    assert said(elsewhere, Zone.SIDE, 8) == f"It has no wetness rating in your region{where}."
    assert said(elsewhere, Zone.SIDE, 8, None) == "It has no wetness rating in your region."


def test_ratings_are_of_ones_own_region_and_one_of_ones_own_file_goes_for_any(plain_plant):
    rated = plain_plant(ratings=((ListRegion.GP, Indicator.OBL), (MW, Indicator.FACU)))
    assert rating(rated, MW) is Indicator.FACU
    assert rating(rated, ListRegion.GP) is Indicator.OBL
    assert rating(rated, ListRegion.AW) is None
    assert rating(rated, None) is None
    own = rated._replace(own=True, any_rating=Indicator.FAC)
    for region, want in [
        (MW, Indicator.FACU),
        (ListRegion.AW, Indicator.FAC),
        (None, Indicator.FAC),
    ]:
        assert rating(own, region) is want
    nowhere = plain_plant(None)
    assert rating(nowhere, MW) is rating(nowhere, None) is Indicator.UPL
    assert rating(nowhere._replace(own=True), MW) is None


def test_what_is_on_no_list_says_so_and_ones_own_does_not(plain_plant):
    unlisted = plain_plant(None)
    assert said(unlisted, Zone.RIM, 0, ok=True).endswith("(on no wetland list: dry ground).")
    for plant in (
        plain_plant(Indicator.UPL),
        unlisted._replace(own=True, any_rating=Indicator.UPL),
    ):
        assert said(plant, Zone.RIM, 0, ok=True).endswith("(UPL: almost never in wetlands).")
    own = plain_plant(None, own=True)
    assert said(own, Zone.FLOOR, 8, ok=True) == "Your own plant file gives it to the floor."


def test_what_needs_wet_soil_is_refused_where_it_dries_in_a_day_or_in_hours(plain_plant):
    plant = plain_plant(Indicator.FACW, needs_long_wet=True)
    assert said(plant, Zone.FLOOR, 20).endswith("; this floor dries within a day.")
    assert said(plant, Zone.SIDE, 4).endswith("; this side dries within a few hours.")
    assert "which suits it" in said(plant, Zone.FLOOR, 27, ok=True)


def test_too_wet_and_too_dry_are_told_apart(plain_plant):
    for indicator, zone, wet, trouble in [
        (Indicator.UPL, Zone.FLOOR, 20, "too wet"), (Indicator.FACU, Zone.FLOOR, 20, "too wet"),
        (Indicator.OBL, Zone.RIM, 0, "too dry"), (Indicator.OBL, Zone.SIDE, 8, "too dry"),
        (Indicator.FACW, Zone.FLOOR, 3, "too dry"),
    ]:  # fmt: skip
        assert trouble in said(plain_plant(indicator), zone, wet), (indicator, zone)


def test_roots_without_air_are_told_of_the_longest_time_they_stand_in_water(plain_plant):
    plant = plain_plant(Indicator.FACW, standing_water="none")
    start = "The floor is under water"
    tail = "; its roots do not stand soil without air, so it is given 24 h."
    for wet, worst, when, told in [
        (30, 0, "", "about 30 h"), (30, 30, "once", "about 30 h"),
        (20, 30, "once", "for 30 h once"), (20, 30, "", "for 30 h"),
    ]:  # fmt: skip
        assert said(plant, Zone.FLOOR, wet, MW, worst, when) == f"{start} {told}{tail}"
    badly = plant._replace(standing_water="low")
    assert "stand badly soil without air, so it is given 48 h" in said(badly, Zone.FLOOR, 55)
    assert "suits" in said(badly, Zone.FLOOR, 50, ok=True)


def test_a_worst_case_that_drowns_a_plant_is_told_with_its_time(plain_plant):
    plant = plain_plant(Indicator.FAC)
    assert said(plant, Zone.SIDE, 8, MW, 60, "") == (
        "The side is under water for 60 h; it stands about 48 h "
        "(FAC: in wetlands and elsewhere alike)."
    )


def test_a_worst_case_keeps_a_zone_from_being_dry_ground():
    """FAC stands 48 h: a floor that is wet longer now and then is planted as a wet one."""
    dry = (Indicator.FAC, Indicator.FACU, Indicator.UPL)
    assert dry_ground(Zone.FLOOR, 5) and suited(Zone.FLOOR, 5) == dry
    assert dry_ground(Zone.FLOOR, 5, 48) and not dry_ground(Zone.FLOOR, 5, 49)
    assert suited(Zone.FLOOR, 5, 49) == tuple(Indicator)[:4]


def test_a_floor_that_is_wet_for_long_now_and_then_takes_plants_of_wet_ground(plain_plant):
    plant = plain_plant(Indicator.FACW)
    assert said(plant, Zone.FLOOR, 5).endswith(
        "too dry for it (FACW: usually in wetlands, but may occur elsewhere)."
    )
    assert "suits it" in said(plant, Zone.FLOOR, 5, MW, 60, "once", ok=True)


def test_three_areas_are_needed_and_each_zone_has_its_own():
    wet = ZoneHours(*(quantity(one, "h") for one in (20, 8, 0)))
    sites = planting_zones(*(quantity(one, "ft**2") for one in (100, 150, 210)), wet)
    assert [round(one.area.magnitude) for one in sites.values()] == [100, 50, 60]
    assert [one.worst_hours for one in sites.values()] == [20, 8, 0]
