"""A full set of kinds in every region, by sun and soil, for the answers most people give.

The table is printed: kinds on the floor, the side and the rim, and those left to swap.
"""

from interview.garden.planting.choose import KeepOut, Wishes, ZoneSite, choose
from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.record import ListRegion, PlantRegion, Sun
from interview.garden.size.zones import Zone
from interview.quantities.units import quantity

SOILS = {"quick": 6.0, "ordinary": 24.0, "slow": 36.0}
"""Hours of water on the floor in the storm held; twice that when it comes again next day."""
PLACES = {
    "MW": ("NCNE", 5),
    "GP": ("GP", 5),
    "NE": ("NCNE", 6),
    "SE": ("AGCP", 8),
    "PN": ("WMVC", 8),
    "CA": ("AW", 9),
    "MT": ("WMVC", 5),
}
"""For each region of plants one of its wetland lists, and a usual zone of hardiness."""


def sites(wet):
    hours = {Zone.FLOOR: wet, Zone.SIDE: wet / 2, Zone.RIM: 0.0}
    return {
        zone: ZoneSite(quantity(100, "ft**2"), quantity(h, "h"), quantity(2 * h, "h"), "next day")
        for zone, h in hours.items()
    }


def test_every_region_sun_and_soil_has_three_kinds_in_each_zone_with_usual_wishes(subtests):
    for region, (listed, hardy) in PLACES.items():
        for sun in Sun:
            row = []
            for soil, wet in SOILS.items():
                wishes = Wishes(
                    PlantRegion[region],
                    ListRegion[listed],
                    sun,
                    floor_height=quantity(5, "ft"),
                    rim_height=quantity(3, "ft"),
                    keep_out=frozenset({KeepOut.TOXIC, KeepOut.AGGRESSIVE, KeepOut.LARGE}),
                    hardiness_zone=hardy,
                )
                plan = choose(builtin_plants(), wishes, sites(wet))
                picked = [[pick.plant for pick in zone.picks] for zone in plan.zones]
                left = sum(len(zone.reserve) for zone in plan.zones)
                row.append(f"{soil} {'+'.join(str(len(one)) for one in picked)} of {left}")
                with subtests.test(region=region, sun=sun.value, soil=soil):
                    assert all(len(one) >= 3 for one in picked)
                    plants = [plant for zone in picked for plant in zone]
                    assert not any(plant.aggressive or plant.toxic for plant in plants)
                    assert all(plant.hardiness[0] <= hardy for plant in plants)
            print(f"{region} {listed:4} zone {hardy} {sun.value:5}", *row, sep="  ")


def test_southern_florida_has_three_kinds_in_each_zone_with_usual_wishes(subtests):
    # Zone 10a is the usual one of the state by its ZIP codes (USDA map of 2023).
    for soil, wet in SOILS.items():
        wishes = Wishes(
            PlantRegion.SE,
            ListRegion.AGCP,
            Sun.FULL,
            floor_height=quantity(5, "ft"),
            rim_height=quantity(3, "ft"),
            keep_out=frozenset({KeepOut.AGGRESSIVE, KeepOut.LARGE}),
            hardiness_zone=10,
        )
        plan = choose(builtin_plants(), wishes, sites(wet))
        with subtests.test(soil=soil):
            assert all(len(zone.picks) >= 3 for zone in plan.zones)
