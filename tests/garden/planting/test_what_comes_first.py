"""Which of the plants that suit a zone come first: natives, and what will do well unwatered."""

import pytest

from interview.garden.planting.choose import choose, why_plant
from interview.garden.planting.plant_list import builtin_places, builtin_plants
from interview.garden.planting.record import Indicator
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.wetness import ZoneSite
from interview.garden.planting.wishes import Wishes
from interview.garden.size.zones import Zone
from interview.quantities.units import quantity

MW = Wishes(PlantRegion.MW, ListRegion.MW)


def garden(floor=0.0, side=0.0, rim=0.0, wet=24.0):
    areas = {Zone.FLOOR: (floor, wet), Zone.SIDE: (side, wet / 2), Zone.RIM: (rim, 0.0)}
    return {
        zone: ZoneSite(quantity(area, "ft**2"), quantity(hours, "h"))
        for zone, (area, hours) in areas.items()
    }


def test_a_plant_from_elsewhere_is_taken_only_where_no_native_is_left(plain_plant):
    native = plain_plant(scientific_name="Zzz native", bloom_months=(7,))
    others = [
        plain_plant(
            scientific_name=f"Aaa {n}",
            regions=(PlantRegion.PN,),
            native_checked=(PlantRegion.MW,),
            bloom_months=(5, 6, 7, 8, 9),
        )
        for n in range(3)
    ]
    wider = MW._replace(natives_only=False)
    first = choose([native, *others], wider, garden(floor=5)).zones[0]
    assert first.picks[0].plant == native


def test_a_plant_of_ponds_comes_after_one_that_stands_a_dry_week(plain_plant):
    pond = plain_plant(Indicator.OBL, scientific_name="Aaa pond", needs_long_wet=True)
    meadow = plain_plant(Indicator.OBL, scientific_name="Bbb meadow")
    plan = choose([pond, meadow], MW, garden(floor=5, wet=46.0))
    assert [pick.plant for pick in plan.zones[0].picks] == [meadow]


def test_a_kind_that_takes_too_many_to_fill_its_share_comes_after_larger_ones(plain_plant):
    tiny = [plain_plant(scientific_name=f"Aaa {n}", spacing_in=9.0) for n in range(6)]
    large = [plain_plant(scientific_name=f"Bbb {n}", spacing_in=18.0) for n in range(6)]
    plan = choose([*tiny, *large], MW, garden(floor=80))
    assert {pick.plant.spacing_in for pick in plan.zones[0].picks} == {18.0}
    small = choose([*tiny, *large], MW, garden(floor=20))
    assert {pick.plant.spacing_in for pick in small.zones[0].picks} == {9.0}


def test_in_the_arid_west_what_stands_drought_comes_first(subtests, plain_plant):
    floor, rim = garden(floor=5, wet=10.0), garden(rim=5)
    cases = [(floor, Indicator.FACW, "low"), (rim, Indicator.FACU, "medium")]
    for ground, rated, drought in cases:
        for listed, first in ((ListRegion.AW, "Bbb"), (ListRegion.MW, "Aaa")):
            plants = [
                plain_plant(scientific_name=name, drought=stands, ratings=((listed, rated),))
                for name, stands in (("Aaa", drought), ("Bbb", "high"))
            ]
            plan = choose(plants, MW._replace(list_region=listed), ground)
            with subtests.test(drought=drought, listed=listed):
                (pick,) = (one for zone in plan.zones for one in zone.picks)
                assert pick.plant.scientific_name == first


def test_a_plant_that_is_not_wild_in_the_state_is_left_out_or_comes_last(plain_plant):
    iowa = next(one for one in builtin_places() if one.code == "IA")
    missing = plain_plant(scientific_name="Aaa", absent_in=("IA", "WI"))
    wild = plain_plant(scientific_name="Bbb", absent_in=("WI",), toxic=True)
    here = MW._replace(place=iowa)
    plan = choose([missing, wild], here, garden(floor=15))
    assert [pick.plant for pick in plan.zones[0].picks] == [wild]
    assert "does not grow wild in Iowa" in why_plant("Aaa", plan, [missing, wild], here)[0]
    wider = choose([missing, wild], here._replace(natives_only=False), garden(floor=15))
    assert [pick.plant for pick in wider.zones[0].picks] == [wild, missing]


def test_a_state_where_a_plant_is_not_wild_lies_in_a_region_where_it_is():
    region = {one.code: one.plant_region for one in builtin_places()}
    marked = [one for one in builtin_plants() if one.absent_in]
    assert len(marked) > 80
    for plant in marked:
        assert all(region[code] in plant.regions for code in plant.absent_in), plant
        for home in plant.regions:
            codes = {code for code, named in region.items() if named is home}
            assert codes - set(plant.absent_in), f"{plant.scientific_name} {home}"


@pytest.mark.parametrize(
    ("name", "codes"),
    [
        # Ranges known to the trade; from memory.
        ("Fothergilla gardenii", "NC SC GA"),
        ("Amsonia hubrichtii", "AR"),
        ("Eryngium yuccifolium", "IL MO KS"),
        ("Sidalcea hendersonii", "WA OR"),
        ("Geum triflorum", "MN WI ND"),
    ],
)
def test_a_plant_is_offered_where_it_is_best_known(name, codes):
    plant = next(one for one in builtin_plants() if one.scientific_name == name)
    assert not set(codes.split()) & set(plant.absent_in)
