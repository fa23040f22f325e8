"""A full set of kinds in every region, by sun and soil, for the answers most people give.

The table is printed: kinds on the floor, the side and the rim, how many different ones, and those
left to swap.
"""

import pytest

from interview.garden.planting.choice import WANTED_KINDS
from interview.garden.planting.choose import choose
from interview.garden.planting.plant_list import builtin_places, builtin_plants
from interview.garden.planting.record import Sun
from interview.garden.planting.regions import ListRegion
from interview.garden.planting.wetness import ZoneSite
from interview.garden.planting.wishes import WARM_FALLBACK, KeepOut, Wishes
from interview.garden.size.zones import Zone
from interview.quantities.units import quantity

SOILS = {"quick": 6.0, "ordinary": 24.0, "slow": 36.0}
"""Hours of water on the floor in the storm held; twice that when it comes again next day."""
PLACES = (
    ("MN", "NCNE"),
    ("KS", "GP"),
    ("TX", "AW"),
    ("NY", "NCNE"),
    ("GA", "AGCP"),
    ("FL", "AGCP"),
    ("WA", "WMVC"),
    ("CA", "AW"),
    ("CO", "WMVC"),
    ("UT", "AW"),
    ("AZ", "AW"),
)
"""A state of each region of plants or more, the hottest among them, and one of its wetland lists.

Its usual hardiness zone is that of most of its ZIP codes (USDA map of 2023).
"""
FEWEST_ALL_TOLD = 7


def sites(wet):
    hours = {Zone.FLOOR: wet, Zone.SIDE: wet / 2, Zone.RIM: 0.0}
    return {
        zone: ZoneSite(quantity(100, "ft**2"), quantity(h, "h"), quantity(2 * h, "h"), "next day")
        for zone, h in hours.items()
    }


def at(code):
    return next(one for one in builtin_places() if one.code == code)


def usual(place, listed, sun):
    return Wishes(
        place.plant_region,
        ListRegion[listed],
        sun,
        floor_height=quantity(5, "ft"),
        rim_height=quantity(3, "ft"),
        keep_out=frozenset({KeepOut.TOXIC, KeepOut.AGGRESSIVE, KeepOut.LARGE}),
        hardiness_zone=int(place.zone_common[:-1]),
        place=place,
    )


@pytest.mark.parametrize(("code", "listed"), PLACES)
def test_every_region_sun_and_soil_has_a_full_set_with_usual_wishes(subtests, code, listed):
    place = at(code)
    hardy = int(place.zone_common[:-1])
    for sun in Sun:
        row = []
        for soil, wet in SOILS.items():
            plan = choose(builtin_plants(), usual(place, listed, sun), sites(wet))
            picks = [pick for zone in plan.zones for pick in zone.picks]
            plants = {pick.plant for pick in picks}
            counts = "+".join(str(len(zone.picks)) for zone in plan.zones)
            left = sum(len(zone.reserve) for zone in plan.zones)
            row.append(f"{soil} {counts} = {len(plants)} kinds, {left} left")
            with subtests.test(sun=sun.value, soil=soil):
                assert all(len(zone.picks) >= WANTED_KINDS.value for zone in plan.zones)
                assert len(plants) >= FEWEST_ALL_TOLD
                assert not any(plant.aggressive or plant.toxic for plant in plants)
                for pick in picks:
                    coldest, warmest = pick.plant.hardiness
                    assert coldest <= hardy and (hardy <= warmest or _from_memory(pick, hardy))
        print(f"{code} {place.plant_region.name} {listed:4} {place.zone_common:3} {sun.value:5}",
              *row, sep="  ")  # fmt: skip


def _from_memory(pick, hardy):
    """Tell whether a plant of a colder zone is said to be one, by a limit that is from memory."""
    near = pick.plant.hardiness[1] == hardy - 1 and not pick.plant.rests("hardiness_max")
    return near and WARM_FALLBACK in pick.makeshift and WARM_FALLBACK in " ".join(pick.cautions)


def test_a_warmest_zone_is_eased_by_one_where_too_few_kinds_are_left():
    """Florida in part sun: the side and the rim had one kind each that stand zone 10."""
    wishes = usual(at("FL"), "AGCP", Sun.PART)
    eased = {
        pick.plant.scientific_name
        for zone in choose(builtin_plants(), wishes, sites(6)).zones
        for pick in zone.picks
        if pick.makeshift
    }
    assert eased
    # Where a source, not memory, says how warm it may be, nothing is eased.
    published = tuple(
        one._replace(rests_on=f"{one.rests_on}; hardiness_max: MSD") for one in builtin_plants()
    )
    plan = choose(published, wishes, sites(6))
    assert not any(pick.makeshift for zone in plan.zones for pick in zone.picks)
    farther = choose(builtin_plants(), wishes._replace(hardiness_zone=11), sites(6))
    picks = [pick for zone in farther.zones for pick in zone.picks]
    assert all(pick.plant.hardiness[1] >= 10 for pick in picks)
