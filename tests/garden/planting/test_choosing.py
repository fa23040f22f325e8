"""Hours under water, which plants suit a zone, counts, and the proposed planting."""

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.garden.planting import choose as choosing
from interview.garden.planting.care import CARE, WHEN_TO_PLANT, after_storm
from interview.garden.planting.choice import Season, quality
from interview.garden.planting.choose import choose, why_plant
from interview.garden.planting.count import (
    crowds,
    drifts,
    fewest,
    own_count,
    plant_count,
    shared_counts,
    swarms,
)
from interview.garden.planting.plant_list import MONTHS, builtin_places, builtin_plants
from interview.garden.planting.record import Indicator, PlantKind, Sun
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.wetness import ZoneSite, fits, planting_zones
from interview.garden.planting.wishes import KeepOut, Prefer, Wishes
from interview.garden.size.zones import Zone
from interview.garden.storms.wet_zones import zone_hours
from interview.quantities.evidence import Grade
from interview.quantities.units import magnitude, quantity

MW = Wishes(PlantRegion.MW, ListRegion.MW)


def q(number, unit):
    return quantity(number, unit)


def hours(number):
    return quantity(number, "h")


def garden(floor=105.0, side=75.0, rim=60.0, wet=24.0):
    return {
        Zone.FLOOR: ZoneSite(q(floor, "ft**2"), hours(wet)),
        Zone.SIDE: ZoneSite(q(side, "ft**2"), hours(wet / 2)),
        Zone.RIM: ZoneSite(q(rim, "ft**2"), hours(0)),
    }


def fit(plant, zone, wet):
    return fits(plant, zone, hours(wet), ListRegion.MW).ok


def test_the_floor_is_wet_longest_and_the_rim_never():
    wet = zone_hours(q(6, "in"), q(0.25, "in/h"))
    assert magnitude(wet.floor, "h") == pytest.approx(24)
    assert magnitude(wet.side, "h") == pytest.approx(12)
    assert magnitude(wet.rim, "h") == 0


def test_hours_may_be_asked_for_other_heights():
    wet = zone_hours(q(150, "mm"), q(5, "mm/h"), side_height=q(100, "mm"), rim_height=q(0, "m"))
    assert magnitude(wet.side, "h") == pytest.approx(10)
    assert magnitude(wet.rim, "h") == pytest.approx(30)


def test_hours_refuse_what_cannot_be(subtests):
    for depth, rate in [(-1, 1), (6, 0), (6, -1), (math.nan, 1), (6, math.nan), (math.inf, 1)]:
        with (
            subtests.test(depth=depth, rate=rate),
            pytest.raises(ValueError, match="Give a"),
        ):
            zone_hours(q(depth, "in"), q(rate, "in/h"))


def test_each_rating_suits_its_own_zones(subtests, plain_plant):
    for indicator, floor, side, rim in [
        (Indicator.OBL, True, False, False),
        (Indicator.FACW, True, True, False),
        (Indicator.FAC, True, True, True),
        (Indicator.FACU, False, True, True),
        (Indicator.UPL, False, False, True),
    ]:
        with subtests.test(indicator=indicator, floor=floor, side=side, rim=rim):
            plant = plain_plant(indicator)
            assert fit(plant, Zone.FLOOR, 24) is floor
            assert fit(plant, Zone.SIDE, 12) is side
            assert fit(plant, Zone.RIM, 0) is rim


def test_a_rating_suits_up_to_its_limit_and_not_past_it(subtests, plain_plant):
    for indicator, zone, longest in [
        (Indicator.FACU, Zone.FLOOR, 12),
        (Indicator.FAC, Zone.FLOOR, 24),
        (Indicator.FACW, Zone.FLOOR, 72),
        (Indicator.OBL, Zone.FLOOR, 72),
        (Indicator.FACU, Zone.SIDE, 12),
        (Indicator.FAC, Zone.SIDE, 48),
        (Indicator.FACW, Zone.SIDE, 72),
        (Indicator.UPL, Zone.RIM, 6),
        (Indicator.FAC, Zone.RIM, 24),
    ]:
        with subtests.test(indicator=indicator, zone=zone, longest=longest):
            plant = plain_plant(indicator)
            # A tenth more is within what the hours are known to.
            assert fit(plant, zone, longest * 1.1)
            assert not fit(plant, zone, longest * 1.1 + 0.1)


def test_a_plant_that_needs_long_wet_is_left_out_of_a_floor_dry_within_a_day(plain_plant):
    plant = plain_plant(Indicator.OBL, needs_long_wet=True)
    assert not fit(plant, Zone.FLOOR, 6)
    assert not fit(plant, Zone.FLOOR, 24)
    assert fit(plant, Zone.FLOOR, 30)


def test_only_the_gardeners_own_region_counts(plain_plant):
    plant = plain_plant(ratings=((ListRegion.GP, Indicator.FACW),))
    found = fits(plant, Zone.FLOOR, hours(24), ListRegion.MW)
    assert not found.ok
    assert "no wetness rating in your region" in found.why
    assert fits(plant, Zone.FLOOR, hours(24), ListRegion.GP).ok


def test_a_plant_on_no_list_is_taken_for_dry_ground(plain_plant):
    plant = plain_plant(None)
    assert fit(plant, Zone.RIM, 0)
    assert not fit(plant, Zone.SIDE, 6)


def test_the_zones_of_the_list_are_kept_to(plain_plant):
    found = fits(plain_plant(zones=(Zone.RIM,)), Zone.SIDE, hours(6), ListRegion.MW)
    assert not found.ok
    assert found.why == "The list gives it to the rim, not the side."


def test_a_refusal_says_too_wet_or_too_dry(plain_plant):
    wet = fits(plain_plant(Indicator.UPL), Zone.FLOOR, hours(24), ListRegion.MW)
    dry = fits(plain_plant(Indicator.OBL), Zone.RIM, hours(0), ListRegion.MW)
    assert "too wet for it" in wet.why
    assert "too dry for it" in dry.why


def test_zone_areas_are_the_rings_between_the_edges():
    sites = planting_zones(
        q(105, "ft**2"), q(180, "ft**2"), q(240, "ft**2"), zone_hours(q(6, "in"), q(1, "in/h"))
    )
    assert [magnitude(sites[zone].area, "ft**2") for zone in Zone] == pytest.approx([105, 75, 60])
    wet = zone_hours(q(6, "in"), q(1, "in/h"))
    for edges in [(200, 180, 240), (105, 250, 240), (-1, 180, 240)]:
        with pytest.raises(ValueError, match="no smaller"):
            planting_zones(*(q(one, "ft**2") for one in edges), wet)
    for edges in [(0, 0.5, 0.5), (100, 100, 100 - 1e-9), (100, 100 - 1e-9, 200)]:
        sites = planting_zones(*(q(one, "ft**2") for one in edges), wet)
        assert min(magnitude(site.area, "ft**2") for site in sites.values()) == 0


areas = st.floats(min_value=0, max_value=5000)
steps = st.floats(min_value=0.25, max_value=10)


@given(areas, steps)
def test_a_count_does_not_depend_on_the_unit(area, spacing):
    ground, apart = q(area, "ft**2"), q(spacing, "ft")
    metric = plant_count(ground.to("m**2"), apart.to("mm"))
    assert plant_count(ground, apart) == metric


@given(areas, areas, steps)
def test_more_ground_never_takes_fewer_plants(one, other, spacing):
    small, large = sorted((one, other))
    counts = [plant_count(q(area, "ft**2"), q(spacing, "ft")) for area in (small, large)]
    assert counts[0] <= counts[1]


@given(st.floats(min_value=0.01, max_value=5000), steps)
def test_the_count_fills_the_ground_with_no_whole_plant_to_spare(area, spacing):
    count = plant_count(q(area, "ft**2"), q(spacing, "ft"))
    each = 0.866 * spacing**2
    assert count * each >= area * (1 - 1e-6)
    assert (count - 1) * each < area


@given(st.integers(1, 5), st.floats(min_value=40, max_value=1000))
def test_kinds_of_one_spacing_share_the_whole_count(kinds, area):
    plants = [builtin_plants()[0]._replace(spacing_in=18.0)] * kinds
    total = plant_count(q(area, "ft**2"), q(18, "in"))
    counts = shared_counts(plants, q(area, "ft**2"))
    assert sum(counts) == total
    assert max(counts) - min(counts) <= 1


@given(st.integers(0, 200))
def test_drifts_hold_every_plant_once(count):
    groups = drifts(count)
    assert sum(groups) == count
    assert all(size in (7, 5, 3, 1, 2, 4) for size in groups)
    if count >= 5:
        assert min(groups) >= 2
    assert sum(size not in (7, 5, 3) for size in groups) <= 1


def test_groups_of_seven_five_and_three_leave_no_plant_alone(subtests):
    for count, groups in [
        (4, (4,)),
        (5, (5,)),
        (6, (3, 3)),
        (8, (5, 3)),
        (9, (5, 4)),
        (10, (7, 3)),
    ]:
        with subtests.test(count=count):
            assert drifts(count) == groups


def test_a_kind_fills_its_own_share_with_as_many_as_the_equation_says(subtests):
    """At 2 ft a plant has 0.866 x 2 x 2 = 3.464 square feet, and 100 take 29: ACES, step 6."""
    forb, shrub = (
        next(one for one in builtin_plants() if one.kind is kind)._replace(spacing_in=24.0)
        for kind in (PlantKind.FORB, PlantKind.SHRUB)
    )
    for share, forbs, shrubs in [(0, 0, 0), (1, 2, 1), (6.928, 2, 2), (6.93, 3, 3), (100, 29, 29)]:
        with subtests.test(share=share):
            assert (own_count(forb, share), own_count(shrub, share)) == (forbs, shrubs)
    assert shared_counts([forb, shrub], q(0, "ft**2")) == (0, 0)
    # Two forbs need 6.928 square feet, one shrub half of that; thirty need 103.92.
    assert [crowds(forb, area) for area in (6.92, 6.928, 6.93)] == [True, False, False]
    assert [crowds(shrub, area) for area in (3.46, 3.464)] == [True, False]
    assert [swarms(forb, area) for area in (103.9, 103.93)] == [False, True]


def picked(plan):
    return [pick for zone in plan.zones for pick in zone.picks]


def test_a_planting_is_balanced():
    plan = choose(builtin_plants(), MW, garden())
    for zone in plan.zones:
        assert len(zone.picks) >= 3
        assert any(pick.plant.grasslike for pick in zone.picks)
        assert all(pick.count >= fewest(pick.plant) for pick in zone.picks)
        assert all(zone.zone in pick.plant.zones for pick in zone.picks)
    assert all(len(plan.in_bloom(season)) >= 3 for season in Season)
    assert plan.findings == ()
    assert plan.total == sum(pick.count for pick in picked(plan))


def test_kinds_are_added_for_a_season_that_lacks_flowers(plain_plant):
    early = [plain_plant(scientific_name=f"Aaa {n}", bloom_months=(5, 6)) for n in range(4)]
    late = [plain_plant(scientific_name=f"Bbb {n}", bloom_months=(9,)) for n in range(4)]
    bare = garden(floor=24, side=0, rim=0)
    plan = choose([*early, *late], MW, bare)
    assert [len(plan.in_bloom(season)) for season in Season] == [3, 3, 3]
    unasked = choose([*early, *late], MW._replace(bloom=frozenset({Season.SPRING})), bare)
    assert len(picked(unasked)) == 3
    assert unasked.zones[0].picks[0].plant.bloom_months == (5, 6)


def test_the_same_wishes_give_the_same_planting_whatever_the_order_of_the_list():
    plan = choose(builtin_plants(), MW, garden())
    again = choose(tuple(reversed(builtin_plants())), MW, garden())
    assert [zone.picks for zone in plan.zones] == [zone.picks for zone in again.zones]


def test_a_plant_is_scored_only_where_nothing_speaks_against_it(monkeypatch) -> None:
    scored: list[str] = []

    def noting(plant, *others):
        scored.append(plant.scientific_name)
        return quality(plant, *others)

    monkeypatch.setattr(choosing, "quality", noting)
    plan = choose(builtin_plants(), MW, garden())
    taken = [one.plant.scientific_name for zone in plan.zones for one in zone.picks]
    taken += [one.scientific_name for zone in plan.zones for one in zone.reserve]
    assert sorted(scored) == sorted(taken)


def test_every_plant_of_the_region_is_picked_held_in_reserve_or_out_for_a_reason():
    plan = choose(builtin_plants(), MW, garden())
    region = {one.scientific_name for one in builtin_plants() if PlantRegion.MW in one.regions}
    for place, zone in enumerate(plan.zones):
        taken = [one.scientific_name for one in (*(p.plant for p in zone.picks), *zone.reserve)]
        assert len(set(taken)) == len(taken) and set(taken) <= region
        for name in region - set(taken):
            said = why_plant(name, plan, builtin_plants(), MW)[place]
            # What would do as well is held in reserve; anything else has what speaks against it.
            assert said.endswith(".") and "do as well" not in said, said


def test_the_sun_at_the_bed_is_kept_to(subtests):
    for sun in Sun:
        with subtests.test(sun=sun):
            plan = choose(builtin_plants(), MW._replace(sun=sun), garden())
            assert picked(plan)
            assert all(sun in pick.plant.sun for pick in picked(plan))


def test_heights_are_kept_to_on_floor_and_rim():
    wishes = MW._replace(floor_height=q(1.2, "m"), rim_height=q(2, "ft"))
    plan = choose(builtin_plants(), wishes, garden())
    tallest = {zone.zone: max(p.plant.height_max_ft for p in zone.picks) for zone in plan.zones}
    assert tallest[Zone.FLOOR] <= 1.2 / 0.3048
    assert tallest[Zone.SIDE] <= 1.2 / 0.3048
    assert tallest[Zone.RIM] <= 2


@pytest.mark.parametrize(
    ("mark", "bad"),
    [
        (KeepOut.TOXIC, lambda plant: plant.toxic),
        (KeepOut.THORNY, lambda plant: plant.thorny),
        (KeepOut.LARGE, lambda plant: plant.over_8ft),
    ],
)
def test_what_is_kept_out_is_neither_picked_nor_in_reserve(mark, bad):
    usual = choose(builtin_plants(), MW, garden())
    plan = choose(builtin_plants(), MW._replace(keep_out=frozenset({mark})), garden())

    def offered(each):
        return [p.plant for p in picked(each)] + [p for zone in each.zones for p in zone.reserve]

    assert any(bad(plant) for plant in offered(usual))
    assert not any(bad(plant) for plant in offered(plan))


def test_natives_only_keeps_to_the_region_unless_told_otherwise():
    offered = choose(builtin_plants(), MW, garden()).zones[0].reserve
    wider = choose(builtin_plants(), MW._replace(natives_only=False), garden()).zones[0].reserve
    assert all(PlantRegion.MW in plant.regions for plant in offered)
    assert any(PlantRegion.MW not in plant.regions for plant in wider)


def test_a_favourite_is_kept_with_what_speaks_against_it():
    wishes = MW._replace(
        rim_height=q(1, "ft"), floor_height=q(1, "ft"), favourites=("Swamp Milkweed",)
    )
    plan = choose(builtin_plants(), wishes, garden())
    (mine,) = [pick for pick in picked(plan) if pick.favourite]
    assert mine.plant.scientific_name == "Asclepias incarnata"
    assert mine.why == "You asked for it."
    assert "taller than you want here" in mine.cautions[0]
    without = choose(builtin_plants(), wishes._replace(favourites=()), garden())
    assert mine.plant not in [pick.plant for pick in picked(without)]


def test_a_favourite_the_list_does_not_know_is_named_with_the_nearest():
    plan = choose(builtin_plants(), MW._replace(favourites=("swamp milkwed",)), garden())
    assert "“swamp milkwed” is not in the plant list: did you mean swamp milkweed?" in plan.notes


def test_no_kind_but_a_shrub_stands_alone_in_a_small_garden():
    for floor in (0.5, 3, 6, 10, 20, 40):
        plan = choose(builtin_plants(), MW, garden(floor, floor, floor))
        assert all(pick.count >= 2 or pick.plant.kind is PlantKind.SHRUB for pick in picked(plan))
        assert picked(plan)


def test_a_zone_without_ground_gets_no_plants():
    plan = choose(builtin_plants(), MW, garden(side=0))
    assert plan.zones[1].picks == ()
    assert plan.findings == ()


def test_a_sliver_left_by_rounding_is_not_planted():
    plan = choose(builtin_plants(), MW, garden(side=1e-12))
    assert plan.zones[1].picks == ()


def test_nothing_is_put_where_water_stands_over_three_days():
    plan = choose(builtin_plants(), MW, garden(wet=80))
    assert plan.zones[0].picks == ()
    found = {one.key: one for one in plan.findings}
    assert found["wet_floor"].grade is Grade.FIX
    assert "few_kinds_floor" in found


def test_a_floor_at_the_two_day_limit_is_not_called_too_wet():
    assert choose(builtin_plants(), MW, garden(wet=48)).findings == ()
    assert choose(builtin_plants(), MW, garden(wet=48.5)).findings != ()


def test_outside_the_list_no_plant_is_named_but_each_zone_is_described():
    plan = choose(builtin_plants(), Wishes(None, None), garden())
    assert picked(plan) == []
    assert len(plan.zones) == 3
    assert all(len(zone.guidance.traits) >= 3 for zone in plan.zones)
    assert [zone.places for zone in plan.zones] == [54, 39, 31]
    assert "no kinds are named" in plan.notes[0]


def test_road_salt_prefers_plants_known_to_stand_it_and_names_the_others(plain_plant):
    hardy = plain_plant(scientific_name="Zzz salsa", salt="medium")
    others = [plain_plant(scientific_name=f"Aaa {n}", salt="") for n in range(9)]
    bare = garden(floor=4, side=0, rim=0)
    usual = choose([*others, hardy], MW, bare)
    salted = choose([*others, hardy], MW._replace(road_salt=True), bare)
    assert hardy not in [pick.plant for pick in picked(usual)]
    assert [pick.plant for pick in picked(salted)] == [hardy]
    assert any(note.startswith("All these stand some salt") for note in salted.notes)
    tender = choose(others, MW._replace(road_salt=True), bare)
    name = picked(tender)[0].plant.common_name
    assert any(note.startswith(f"Not known to stand road salt: {name}") for note in tender.notes)
    worst = others[0]._replace(scientific_name="Aaa", salt="none")
    salted = choose([worst, *others], MW._replace(road_salt=True), bare)
    assert worst not in [pick.plant for pick in picked(salted)]


def test_roots_that_stand_no_air_badly_cut_down_the_hours(subtests, plain_plant):
    # The hours are a choice of this project; the degrees are those of the USDA plant table.
    for degree, longest in [("none", 24), ("low", 48), ("medium", 72), ("high", 72), ("", 72)]:
        with subtests.test(degree=degree):
            plant = plain_plant(Indicator.FACW, standing_water=degree, rests_on="")
            assert fit(plant, Zone.FLOOR, longest * 1.1)
            assert not fit(plant, Zone.FLOOR, longest * 1.1 + 0.1)
            tabled = plant._replace(rests_on="zones: WSU p. A-5")
            assert fit(tabled, Zone.FLOOR, 72)
    plant = plain_plant(Indicator.FACW, standing_water="none", rests_on="")
    why = fits(plant, Zone.FLOOR, hours(30), ListRegion.MW).why
    assert "about 30 h; its roots do not stand soil without air, so it is given 24 h" in why


def test_what_spreads_hard_is_planted_only_where_it_is_asked_for_by_name():
    hard = [one for one in builtin_plants() if one.aggressive and PlantRegion.MW in one.regions]
    assert len(hard) > 10
    plan = choose(builtin_plants(), MW._replace(keep_out=frozenset()), garden())
    offered = [*(p.plant for p in picked(plan)), *(p for zone in plan.zones for p in zone.reserve)]
    assert not any(plant.aggressive for plant in offered)
    wished = choose(builtin_plants(), MW._replace(favourites=("Spartina pectinata",)), garden())
    mine = next(pick for pick in picked(wished) if pick.favourite)
    assert mine.plant.scientific_name == "Spartina pectinata"
    assert "It spreads hard" in mine.against


def test_a_regulated_plant_is_offered_nowhere_in_the_state_that_regulates_it(subtests):
    states = {one.code: one for one in builtin_places()}
    for plant in (one for one in builtin_plants() if one.regulated_in):
        for code in plant.regulated_in:
            with subtests.test(plant=plant.scientific_name, state=code):
                state = states[code]
                here = Wishes(
                    state.plant_region,
                    state.list_regions[0],
                    natives_only=False,
                    favourites=(plant.scientific_name,),
                    place=state,
                )
                plan = choose(builtin_plants(), here, garden())
                offered = [p.plant for p in picked(plan)]
                offered += [one for zone in plan.zones for one in zone.reserve]
                assert plant not in offered and plan.homeless == (plant,)
                why = " ".join(why_plant(plant.scientific_name, plan, builtin_plants(), here))
                assert f"noxious weeds of {state.name} named it in 2015" in why
                elsewhere = here._replace(place=states["ND"])
                assert plant in [
                    p.plant for p in picked(choose(builtin_plants(), elsewhere, garden()))
                ]


def test_the_months_of_a_job_are_counted_from_the_month_of_planting():
    weeds = [task for task in CARE if "weeds" in task.task]
    assert [task.months(10) for task in weeds] == [[10, 11, 12], [1, 2, 3, 4, 5, 6, 7, 8, 9]]
    assert all(len(task.months(4)) == len(task.since_planting) for task in CARE)


def test_what_the_season_decides_is_told_by_frost_and_growth_and_by_no_month():
    seasonal = {task.task: task.when for task in CARE if not task.since_planting}
    assert len(seasonal) == 3
    assert "after the last frost" in seasonal["Top up the mulch to 2 to 3 inches (50 to 75 mm)."]
    for words in (*seasonal.values(), WHEN_TO_PLANT):
        assert not re.search(rf"\b({'|'.join(MONTHS)})", words)
    assert "last frost" in WHEN_TO_PLANT and "This program has no dates of frost" in WHEN_TO_PLANT


def test_the_remedy_follows_the_hours_water_stood(subtests):
    for stood, key, grade in [
        (0, "drained", Grade.GOOD),
        (24, "drained", Grade.GOOD),
        (48, "drained", Grade.GOOD),
        (48.1, "drained_slowly", Grade.FIX),
        (72, "drained_slowly", Grade.FIX),
        (72.1, "drained_too_slowly", Grade.FIX),
    ]:
        with subtests.test(stood=stood, key=key, grade=grade):
            found = after_storm(hours(stood))
            assert (found.key, found.grade) == (key, grade)
            good, near = grade is Grade.GOOD, 24 < stood <= 48
            assert found.brief.line.startswith("Fine:" if good else "TOO LONG:")
            assert found.brief.near is near


def test_what_to_do_changes_past_a_day():
    assert after_storm(hours(24)).change == ""
    assert "time the next storm" in after_storm(hours(25)).change
    assert "silt" in after_storm(hours(60)).change
    assert "Dig out" in after_storm(hours(100)).change


def test_a_wish_puts_first_what_the_lists_say_of_a_plant(subtests, plain_plant):
    plain = {"wildlife": (), "trade": ""}
    others = [plain_plant(scientific_name=f"Aaa {n}", **plain) for n in range(9)]
    bare = garden(floor=4, side=0, rim=0)
    for wish, facts in [
        (Prefer.INSECTS, {"wildlife": ("caterpillars",)}),
        (Prefer.BIRDS, {"wildlife": ("hummingbirds",)}),
        (Prefer.TRADE, {"trade": "listed"}),
    ]:
        with subtests.test(wish=wish):
            wanted = plain_plant(scientific_name="Zzz amata", **{**plain, **facts})
            usual = choose([*others, wanted], MW, bare)
            wished = choose([*others, wanted], MW._replace(prefer=frozenset({wish})), bare)
            assert wanted not in [pick.plant for pick in picked(usual)]
            assert [pick.plant for pick in picked(wished)] == [wanted]
            assert not any(one.met_by(others[0]) for one in Prefer)
