"""Wetland indicator codes, and what the plant list makes of them.

Wording: Lichvar, R.W., The National Wetland Plant List: 2013 wetland ratings, Phytoneuron 2013-49
(1-241), 2013, as reprinted by Lake and Wetland Ecosystems.
Frequencies: National List of Vascular Plant Species that Occur in Wetlands, U.S. Fish and Wildlife
Service, Biological Report 88 (26.9), 1988. The percentages belong to the 1988 list only; lists
since 2012 use words.
"""

from interview.garden.planting.choose import choose
from interview.garden.planting.plant_list import builtin_places, builtin_plants
from interview.garden.planting.record import RATING_LISTS, Indicator, Sun
from interview.garden.planting.regions import ListRegion
from interview.garden.planting.wetness import ZoneSite, suited
from interview.garden.planting.wishes import Wishes
from interview.garden.size.zones import Zone
from interview.quantities.units import quantity

PRINTED_2013 = {
    "OBL": "Almost always occur in wetlands",
    "FACW": "Usually occur in wetlands, but may occur in non-wetlands",
    "FAC": "Occur in wetlands and non-wetlands",
    "FACU": "Usually occur in non-wetlands, but may occur in wetlands",
    "UPL": "Almost never occur in wetlands",
}

PERCENT_IN_WETLANDS_1988 = {
    "OBL": (99, 100),
    "FACW": (67, 99),
    "FAC": (34, 66),
    "FACU": (1, 33),
    "UPL": (0, 1),
}


def plain(words):
    """Bring our wording and the printed wording to one form."""
    words = words.lower().replace("occur in ", "in ").replace("non-wetlands", "elsewhere")
    return words.replace("outside wetlands", "in elsewhere").replace("in elsewhere", "elsewhere")


def test_each_code_means_what_is_printed(subtests):
    for code in PRINTED_2013:
        with subtests.test(code=code):
            ours = plain(Indicator[code].value).replace("may occur", "may").removesuffix(" alike")
            printed = plain(PRINTED_2013[code]).replace("may occur", "may")
            ours, printed = (text.replace("in them", "in wetlands") for text in (ours, printed))
            assert ours == printed


def test_there_are_no_other_codes_and_they_run_from_wet_to_dry():
    assert [one.name for one in Indicator] == list(PRINTED_2013)
    lows = [PERCENT_IN_WETLANDS_1988[one.name][0] for one in Indicator]
    assert lows == sorted(lows, reverse=True)


def test_a_drier_zone_never_takes_a_wetter_rating_than_the_zone_below_it():
    order = list(Indicator)
    wettest = [order.index(suited(zone, 6)[0]) for zone in Zone]
    driest = [order.index(suited(zone, 6)[-1]) for zone in Zone]
    assert wettest == sorted(wettest)
    assert driest == sorted(driest)


def test_every_fact_says_where_it_comes_from():
    plants = builtin_plants()
    assert len(plants) == 318
    for plant in plants:
        assert plant.indicator_status
        assert plant.indicator_source
        assert plant.rests_on or plant.native_checked or plant.rated_by_two
        assert plant.hardiness
        known = set(plant.indicator_source) <= set(RATING_LISTS)
        assert known or plant.indicator_source in (("from memory",), ("none",))


def test_a_rating_stands_under_exactly_one_heading():
    for plant in builtin_plants():
        headings = (plant.rated_by_two, plant.rated_by_one, plant.rated_upl_or_unlisted)
        told = [region for heading in headings for region in heading]
        assert len(set(told)) == len(told), plant.scientific_name
        rated = {region for region, _ in plant.ratings}
        assert set(told) <= rated, plant.scientific_name
        for region in plant.rated_upl_or_unlisted:
            assert plant.indicator(region) is Indicator.UPL


def test_how_many_ratings_stand_on_how_many_lists():
    plants = builtin_plants()
    assert sum(len(plant.ratings) for plant in plants) == 1404
    assert sum(len(plant.rated_by_two) for plant in plants) == 1039
    assert sum(len(plant.rated_upl_or_unlisted) for plant in plants) == 61
    assert sum(not plant.ratings for plant in plants) == 19


def test_the_same_species_shifts_class_by_region():
    lobelia = next(one for one in builtin_plants() if one.scientific_name == "Lobelia cardinalis")
    assert lobelia.indicator(ListRegion.MW) is Indicator.OBL
    assert lobelia.indicator(ListRegion.EMP) is Indicator.FACW
    deergrass = next(
        one for one in builtin_plants() if one.scientific_name == "Muhlenbergia rigens"
    )
    assert deergrass.indicator(ListRegion.AW) is Indicator.FAC
    assert deergrass.indicator(ListRegion.GP) is Indicator.FACU
    assert deergrass.indicator(ListRegion.WMVC) is Indicator.UPL


DRAINAGE = {"quick": 6.0, "ordinary": 24.0, "slow": 48.0}

PAIRS = sorted(
    {
        (place.plant_region, region)
        for place in builtin_places()
        if place.plant_region
        for region in place.list_regions
    },
    key=lambda pair: (pair[0].name, pair[1].name),
)

TOO_FEW_FOR_SHADE = {"GP", "MT"}
"""Plant regions whose list is too short for full shade, so that plants for part sun are let in."""


def zones_of(region, listed, sun, wet):
    hours = {Zone.FLOOR: wet, Zone.SIDE: wet / 2, Zone.RIM: 0.0}
    sites = {
        zone: ZoneSite(
            quantity(100, "ft**2"), quantity(hours[zone], "h"), quantity(hours[zone], "h")
        )
        for zone in Zone
    }
    return choose(builtin_plants(), Wishes(region, listed, sun), sites).zones


def kinds(zones):
    return [len(zone.picks) + len(zone.reserve) for zone in zones]


def test_every_region_has_a_full_set_for_quick_ordinary_and_slow_drainage(subtests):
    for sun in [Sun.FULL, Sun.PART, Sun.SHADE]:
        with subtests.test(sun=sun):
            short = set()
            for region, listed in PAIRS:
                rows = {name: zones_of(region, listed, sun, wet) for name, wet in DRAINAGE.items()}
                table = {name: kinds(zones) for name, zones in rows.items()}
                print(
                    f"{sun.value:5} {region.name} {listed.name:4}",
                    *(f"{n} {k}" for n, k in table.items()),
                )
                assert min(count for row in table.values() for count in row) >= 3, (region, listed)
                for zones in rows.values():
                    assert all(len(zone.picks) >= 3 for zone in zones), (region, listed)
                    plants = [pick.plant for zone in zones for pick in zone.picks]
                    if not all(sun in plant.sun for plant in plants):
                        short.add(region.name)
            assert short == (TOO_FEW_FOR_SHADE if sun is Sun.SHADE else set())
