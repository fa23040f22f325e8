"""Swaps, favourites, wishes and their reasons: what changes in a planting, and what stays."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from interview.garden.planting import choice, swap
from interview.garden.planting.choice import Bed, Candidate, Season, substitute
from interview.garden.planting.choose import choose, suited_to, why_plant
from interview.garden.planting.count import plant_count, shared_counts
from interview.garden.planting.plant_list import builtin_places, builtin_plants
from interview.garden.planting.record import (
    FLORAS,
    Indicator,
    PlantKind,
    Sun,
    introduced_at,
    introduced_in_state,
)
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.stock import PlantSize, apart, at_size, sown
from interview.garden.planting.swap import stranger
from interview.garden.planting.wetness import (
    LONGEST_HOURS,
    STANDS_HOURS,
    ZoneSite,
    chosen_from,
    fits_after,
    planting_zones,
    suited,
)
from interview.garden.planting.wishes import KeepOut, Swap, Wishes, objection, read_swap
from interview.garden.size.zones import Zone
from interview.garden.storms.wet_zones import ZoneHours
from interview.quantities.units import METRIC, US, magnitude, quantity

MW = Wishes(PlantRegion.MW, ListRegion.MW)


def garden(floor=105.0, side=75.0, rim=60.0, wet=24.0, longest=None):
    hours = {Zone.FLOOR: wet, Zone.SIDE: wet / 2, Zone.RIM: 0.0}
    areas = {Zone.FLOOR: floor, Zone.SIDE: side, Zone.RIM: rim}
    worst = None if longest is None else quantity(longest, "h")
    return {
        zone: ZoneSite(quantity(areas[zone], "ft**2"), quantity(hours[zone], "h"), worst, "once")
        for zone in Zone
    }


def planted(plan):
    return [
        (zone.zone, pick.plant.scientific_name, pick.count)
        for zone in plan.zones
        for pick in zone.picks
    ]


def named(name):
    return next(one for one in builtin_plants() if one.scientific_name == name)


BASE = choose(builtin_plants(), MW, garden())
ALL_PICKS = [pick.plant for zone in BASE.zones for pick in zone.picks]


def test_swapping_one_plant_leaves_every_other_and_its_count_unchanged(subtests):
    for gone in ALL_PICKS:
        with subtests.test(gone=gone):
            plan = choose(builtin_plants(), MW._replace(swaps=(Swap(gone.common_name),)), garden())
            before, after = planted(BASE), planted(plan)
            assert len(after) == len(before)
            for old, new in zip(before, after, strict=True):
                if old[1] == gone.scientific_name:
                    assert new[0] is old[0] and new[1] != old[1] and new[2] >= 1
                else:
                    assert new == old
            assert gone not in [plant for zone in plan.zones for plant in zone.reserve]


def test_a_swap_takes_structure_for_structure():
    for zone in BASE.zones:
        grass = next(pick.plant for pick in zone.picks if pick.plant.grasslike)
        plan = choose(builtin_plants(), MW._replace(swaps=(Swap(grass.common_name),)), garden())
        same = next(one for one in plan.zones if one.zone is zone.zone)
        assert any(pick.plant.grasslike for pick in same.picks)


def test_a_zone_whose_grass_was_swapped_out_is_not_said_to_have_none_in_the_list():
    floor = BASE.zones[0]
    flowers = [one.common_name for one in floor.reserve if not one.grasslike]
    grasses = [pick.plant.common_name for pick in floor.picks if pick.plant.grasslike]
    swaps = tuple(Swap(grass, flower) for grass, flower in zip(grasses, flowers, strict=False))
    plan = choose(builtin_plants(), MW._replace(swaps=swaps), garden())
    assert not any(pick.plant.grasslike for pick in plan.zones[0].picks)
    assert "No grass, sedge or rush is chosen for the floor." in plan.notes


def test_a_plant_that_is_asked_for_and_swapped_out_is_told_as_such():
    asked = next(one for one in builtin_plants() if one not in ALL_PICKS and one.regions)
    wishes = MW._replace(
        favourites=(asked.common_name,), swaps=(Swap(asked.common_name, "leadplant"),)
    )
    notes = " ".join(choose(builtin_plants(), wishes, garden()).notes)
    assert f"“{asked.common_name}” is asked for and swapped out" in notes
    assert "is not in the planting" not in notes


def test_a_rush_gives_way_to_a_sedge_before_the_best_of_flowers():
    plants = {plant.kind: plant for plant in builtin_plants() if plant.zones[0] is Zone.FLOOR}
    bed = Bed(Zone.FLOOR, 200.0, 100, 20.0)
    bed.candidates = [
        Candidate(plants[PlantKind.FORB], "", 0.0),
        Candidate(plants[PlantKind.SEDGE], "", 9.0),
    ]
    assert substitute(plants[PlantKind.RUSH], bed, [bed]).plant.kind is PlantKind.SEDGE
    assert substitute(plants[PlantKind.FERN], bed, [bed]).plant.kind is PlantKind.FORB


def test_what_is_put_in_is_the_likest_in_each_way_before_the_next(subtests):
    """By the order that is told: each way decides over all the ways below it."""
    gone = next(
        one for one in builtin_plants()
        if one.kind is PlantKind.FORB and one.bloom_months == (6, 7, 8) and not one.thorny
    )  # fmt: skip
    like = gone._replace(spreads="no", spacing_in=18.0)
    plain, other = like._replace(scientific_name="Aa aa"), like._replace(scientific_name="Bb bb")
    elsewhere = Bed(Zone.SIDE, 90.0, 40, 10.0, picked=[Candidate(other, "", 0.0)])

    # Two kinds stand in 40 ft² here, so that each has 20: what wants 5 ft does not fit.
    def rivals():
        yield "in the garden", other, {}
        yield "crowds", other._replace(scientific_name="Cc cc", spacing_in=60.0), {}
        yield "season", other._replace(scientific_name="Cc cc", bloom_months=(4,)), {}
        yield "spreads", other._replace(scientific_name="Cc cc", spreads="yes"), {}
        yield "thorny", other._replace(scientific_name="Cc cc", thorny=True), {}
        yield "kind", other._replace(scientific_name="Cc cc", kind=PlantKind.FERN), {}
        yield "makeshift", other._replace(scientific_name="Cc cc"), {"makeshift": "second best"}
        yield "far", other._replace(scientific_name="Cc cc"), {"elsewhere": True}

    for why, rival, more in rivals():
        with subtests.test(why=why):
            bed = Bed(Zone.FLOOR, 40.0, 20, 20.0)
            bed.picked = [Candidate(gone, "", 0.0), Candidate(ALL_PICKS[0], "", 0.0)]
            bed.candidates = [Candidate(rival, "", 0.0, **more), Candidate(plain, "", 9.0)]
            assert substitute(gone, bed, [bed, elsewhere]).plant == plain
            bed.candidates[1] = Candidate(ALL_PICKS[0], "", 0.0)
            assert substitute(gone, bed, [bed, elsewhere]).plant == rival


def test_what_is_picked_next_keeps_the_balance_before_its_own_merits(subtests):
    """Beside a sedge and a shrub a forb of the season is wanted; each fault outweighs quality."""
    sedge, shrub, forb = (
        next(one for one in builtin_plants() if one.kind is kind)
        for kind in (PlantKind.SEDGE, PlantKind.SHRUB, PlantKind.FORB)
    )
    plain = {"spreads": "no", "thorny": False, "bloom_months": (7,), "spacing_in": 18.0}
    wanted = forb._replace(scientific_name="Bb bb", set_by="", **plain)
    elsewhere = wanted._replace(scientific_name="Cc cc")
    for fault, change, more in [
        ("makeshift", {}, {"makeshift": "second best"}),
        ("a second sedge", {"kind": PlantKind.SEDGE}, {}),
        ("far", {}, {"elsewhere": True}),
        ("in the garden", {"scientific_name": "Cc cc"}, {}),
        ("crowds", {"spacing_in": 60.0}, {}),
        ("spreads", {"spreads": "yes"}, {}),
        ("thorny", {"thorny": True}, {}),
        ("a second shrub", {"kind": PlantKind.SHRUB}, {}),
        ("swarms", {"spacing_in": 4.0}, {}),
        ("out of season", {"bloom_months": (4,)}, {}),
    ]:
        with subtests.test(fault=fault):
            rival = wanted._replace(**{"scientific_name": "Aa aa", **change})
            bed = Bed(Zone.FLOOR, 60.0, 20, 20.0)
            bed.picked = [Candidate(sedge, "", 0.0), Candidate(shrub, "", 0.0)]
            other = Bed(Zone.SIDE, 60.0, 20, 9.0, picked=[Candidate(elsewhere, "", 0.0)])
            bed.candidates = [Candidate(rival, "", 0.0, **more), Candidate(wanted, "", 9.0)]
            choice._take_best(bed, bed.candidates, [bed, other], frozenset({Season.SUMMER}))
            assert [one.plant for one in bed.picked] == [sedge, shrub, wanted]
            assert [one.plant for one in bed.candidates] == [rival]


def test_without_a_swap_the_kinds_share_the_ground_as_ever():
    plan = choose(builtin_plants(), MW, garden(97, 61, 43))
    for zone in plan.zones:
        shared = shared_counts([pick.plant for pick in zone.picks], zone.site.area)
        assert [pick.count for pick in zone.picks] == list(shared)


def test_one_plant_is_swapped_for_the_one_that_is_named():
    gone = BASE.zones[0].picks[-1].plant
    wanted = named("Chelone glabra")
    plan = choose(
        builtin_plants(), MW._replace(swaps=(Swap(gone.common_name, "Chelone glabra"),)), garden()
    )
    pick = plan.zones[0].picks[-1]
    assert pick.plant == wanted and pick.favourite
    assert pick.role == f"in place of {gone.common_name}"
    changed = [
        pair for pair in zip(planted(BASE), planted(plan), strict=True) if pair[0] != pair[1]
    ]
    assert len(changed) == sum(gone is plant for plant in ALL_PICKS)


def test_a_named_plant_that_would_drown_or_parch_is_not_put_in_and_the_plan_says_why():
    gone = BASE.zones[0].picks[-1].plant
    plan = choose(
        builtin_plants(), MW._replace(swaps=(Swap(gone.common_name, "leadplant"),)), garden()
    )
    assert "Amorpha canescens" not in [name for _, name, _ in planted(plan)]
    assert any(note.startswith("Leadplant has no place on the floor.") for note in plan.notes)
    assert gone.scientific_name not in [
        name for zone, name, _ in planted(plan) if zone is Zone.FLOOR
    ]


def test_a_favourite_takes_the_place_of_a_plant_that_was_left_out():
    gone = BASE.zones[0].picks[-1].plant
    wishes = MW._replace(swaps=(Swap(gone.common_name),), favourites=("Chelone glabra",))
    plan = choose(builtin_plants(), wishes, garden())
    pick = plan.zones[0].picks[-1]
    assert pick.plant.scientific_name == "Chelone glabra" and pick.favourite
    assert pick.role == f"in place of {gone.common_name}"
    assert pick.plant not in plan.zones[0].reserve
    rest = [one for one in planted(plan) if one[1] != "Chelone glabra"]
    assert rest == [one for one in planted(BASE) if one[1] != gone.scientific_name]


def test_a_favourite_that_can_grow_in_no_zone_is_not_placed_and_each_zone_says_why():
    wishes = MW._replace(favourites=("leadplant",), sun=Sun.SHADE)
    plan = choose(builtin_plants(), wishes, garden())
    assert [plant.scientific_name for plant in plan.homeless] == ["Amorpha canescens"]
    said = why_plant("leadplant", plan, builtin_plants(), wishes)
    assert [line.split(":")[0] for line in said] == ["Floor", "Side", "Rim"]
    assert "not the floor" in said[0] and "wants full sun" in said[2]


def test_a_favourite_already_proposed_stays_where_it_is():
    name = BASE.zones[1].picks[0].plant.common_name
    plan = choose(builtin_plants(), MW._replace(favourites=(name,)), garden())
    assert planted(plan) == planted(BASE)
    assert plan.zones[1].picks[0].role == "you asked for it"


def test_a_swap_the_list_does_not_know_is_said_and_changes_nothing():
    plan = choose(builtin_plants(), MW._replace(swaps=(Swap("swamp milkwed"),)), garden())
    assert planted(plan) == planted(BASE)
    assert "“swamp milkwed” is not in the plant list: did you mean swamp milkweed?" in plan.notes


def test_a_swap_says_what_it_could_not_do_and_nothing_else(subtests):
    def notes(*swaps):
        return choose(builtin_plants(), MW._replace(swaps=swaps), garden()).notes

    gone = BASE.zones[0].picks[-1].plant.common_name
    absent = next(one.scientific_name for one in builtin_plants() if one not in ALL_PICKS)
    strange = "“xyzzy” is not in the plant list: look up how wet it likes to be."
    unmoved = f"“{absent}” is not in the planting, so nothing was swapped for it."
    before = notes()
    for swaps, more in [
        ((Swap(gone),), ()),
        ((Swap(gone, "Chelone glabra"),), ()),
        ((Swap(gone, "xyzzy"),), (strange,)),
        ((Swap("xyzzy"),), (strange,)),
        ((Swap(absent),), ()),
        ((Swap(absent, "Chelone glabra"),), (unmoved,)),
    ]:
        with subtests.test(swaps=swaps):
            assert notes(*swaps) == (*before, *more)


def test_a_plant_answers_to_both_parts_of_a_name_with_brackets():
    plant = builtin_plants()[0]._replace(
        scientific_name="Aa aa", common_name="blue rush (marsh reed)", other_names=()
    )
    for name in ("Blue rush", "marsh reed", "aa  AA", "blue rush (marsh reed)"):
        assert plant.answers_to(name), name
    assert not plant.answers_to("rush")
    plain = plant._replace(common_name="blue rush")
    assert plain.answers_to("blue rush") and not plain.answers_to("")


def test_what_goes_against_the_wishes_is_told_by_zone_and_by_whose_the_plant_is(subtests):
    calm = ALL_PICKS[0]._replace(height_max_ft=4.0, spreads="no", toxic=False, thorny=False)
    hard = calm._replace(spreads="yes")
    tall = "It grows to 4 ft (1.2 m), taller than you want here."
    spreads = "It spreads hard: it is planted only where you ask for it by name."
    three, five = quantity(3, "ft"), quantity(5, "ft")
    for plant, zone, change, said in [
        (calm, Zone.FLOOR, {"floor_height": three, "rim_height": five}, tall),
        (calm, Zone.RIM, {"floor_height": three, "rim_height": five}, ""),
        (calm, Zone.RIM, {"floor_height": five, "rim_height": three}, tall),
        (calm, Zone.SIDE, {"floor_height": quantity(4, "ft")}, ""),
        (hard, Zone.SIDE, {}, spreads),
        (hard._replace(own=True), Zone.SIDE, {}, ""),
        (hard._replace(own=True), Zone.SIDE, {"keep_out": {KeepOut.AGGRESSIVE}}, spreads),
        (calm, Zone.SIDE, {"keep_out": {KeepOut.AGGRESSIVE}}, ""),
    ]:
        with subtests.test(zone=zone, **change, own=plant.own):
            assert objection(plant, zone, MW._replace(**change)) == said


def test_plants_of_one_size_are_set_alike_but_for_shrubs(subtests):
    forb, shrub = (
        next(one for one in builtin_plants() if one.kind is kind)
        for kind in (PlantKind.FORB, PlantKind.SHRUB)
    )
    assert at_size((forb, shrub), PlantSize.KINDS) == (forb, shrub)
    for size in set(PlantSize) - {PlantSize.KINDS}:
        for system in (US, METRIC):
            with subtests.test(size=size, system=system):
                small, large = at_size((forb, shrub), size, system)
                assert large == shrub
                assert small.spacing_in == pytest.approx(magnitude(apart(size, system), "in"))
                assert small.set_by and small._replace(spacing_in=0, set_by="") == forb._replace(
                    spacing_in=0, set_by=""
                )


def test_what_suits_a_zone_is_the_same_at_any_distance(subtests):
    swaps, kept = (Swap("closed bottle gentian"),), ("cardinal flower",)
    for wishes in (MW._replace(swaps=swaps, favourites=kept), MW._replace(sun=Sun.SHADE)):
        suited = suited_to(builtin_plants(), wishes, garden())
        for size in PlantSize:
            plants, now = at_size(builtin_plants(), size), wishes._replace(sown=sown(size))
            with subtests.test(size=size):
                assert choose(plants, now, garden(), suited) == choose(plants, now, garden())
    # The distances are those of the plants given, though what suits was found of others.
    pots = at_size(builtin_plants(), PlantSize.LARGE_POT)
    of_pots, of_kinds = (
        choose(one, MW, garden(), suited_to(pots, MW, garden())).total
        for one in (pots, builtin_plants())
    )
    assert of_pots == choose(pots, MW, garden()).total
    assert of_kinds == choose(builtin_plants(), MW, garden()).total != of_pots


def test_the_nearest_name_is_offered_a_scientific_one_as_it_is_written():
    plants = builtin_plants()
    assert stranger("asclepias  incarnatta", plants).endswith("did you mean Asclepias incarnata?")
    assert stranger("swamp milkwed", plants).endswith("did you mean swamp milkweed?")
    assert stranger("xyzzy", plants).endswith("look up how wet it likes to be.")


def test_a_favourite_more_is_one_kind_more_or_takes_the_place_of_the_last_that_is_none():
    def bed(places, favourites):
        made = Bed(Zone.FLOOR, 200.0, places, 20.0)
        made.picked = [
            Candidate(plant, "", 0.0, favourite=at in favourites)
            for at, plant in enumerate(builtin_plants()[:7])
        ]
        return made

    new = Candidate(builtin_plants()[10], "", 0.0)
    # Seven kinds, five and two more, are the most; a bed of 12 plants has room for six.
    for places, kinds, favourites, taken in [
        (100, 7, (), 6), (100, 7, (6,), 5), (100, 7, range(7), None), (100, 6, (), None),
        (12, 6, (), 5), (14, 6, (), None),
    ]:  # fmt: skip
        one = bed(places, favourites)
        del one.picked[kinds:]
        one.candidates = [new]
        before = [pick.plant for pick in one.picked]
        swap._join(new, one)
        after = [pick.plant for pick in one.picked]
        if taken is None:
            assert after == [*before, new.plant] and not one.candidates
        else:
            assert after == [*before[:taken], new.plant, *before[taken + 1 :]]
            assert [gone.plant for gone in one.candidates] == [before[taken]]
        assert one.picked[after.index(new.plant)].favourite


def test_a_plant_is_in_bloom_in_the_seasons_it_flowers():
    for season in Season:
        flowering = BASE.in_bloom(season)
        assert len(set(flowering)) == len(flowering)
        months = {Season.SPRING: {3, 4, 5}, Season.SUMMER: {6, 7, 8}, Season.AUTUMN: {9, 10, 11}}
        for plant in dict.fromkeys(ALL_PICKS):
            showy = plant.kind in (PlantKind.FORB, PlantKind.SHRUB)
            blooms = showy and not months[season].isdisjoint(plant.bloom_months)
            assert (plant in flowering) == blooms, (season, plant.scientific_name)


def test_a_swap_of_a_plant_that_is_not_there_is_said():
    swap = Swap("Asclepias incarnata", "Iris versicolor")
    plan = choose(builtin_plants(), MW._replace(keep_out=frozenset(), swaps=(swap,)), garden())
    if "Asclepias incarnata" not in [name for _, name, _ in planted(BASE)]:
        assert any("not in the planting" in note for note in plan.notes)
        assert planted(plan) == planted(BASE)


@settings(max_examples=15, deadline=None)
@given(st.lists(st.sampled_from(ALL_PICKS), max_size=4, unique=True), st.floats(20, 400))
def test_swaps_never_lose_a_place_or_bring_back_what_was_left_out(gone, floor):
    site = garden(floor=floor)
    base = choose(builtin_plants(), MW, site)
    swaps = tuple(Swap(plant.scientific_name) for plant in gone)
    plan = choose(builtin_plants(), MW._replace(swaps=swaps), site)
    assert len(planted(plan)) == len(planted(base))
    names = {plant.scientific_name for plant in gone}
    assert names.isdisjoint(name for _, name, _ in planted(plan))
    for zone in plan.zones:
        here = {pick.plant.scientific_name for pick in zone.picks}
        assert len(here) == len(zone.picks)
        assert here.isdisjoint(plant.scientific_name for plant in zone.reserve)
    kept = [one for one in planted(base) if one[1] not in names]
    assert all(one in planted(plan) for one in kept)


def test_a_swap_reads_this_for_that(subtests):
    for words, out, into in [
        ("swamp verbena", "swamp verbena", ""),
        ("swamp verbena for blue flag", "swamp verbena", "blue flag"),
        ("  A  FOR  B  ", "A", "B"),
        ("a for b for c", "a", "b for c"),
        ("forget-me-not", "forget-me-not", ""),
    ]:
        with subtests.test(words=words, out=out, into=into):
            assert read_swap(words) == Swap(out, into)


def test_why_says_in_place_in_reserve_left_out_and_not_native():
    said = why_plant(BASE.zones[0].picks[0].plant.common_name, BASE, builtin_plants(), MW)
    assert "planted." in said[0]
    reserve = BASE.zones[0].reserve[0].scientific_name
    assert "would do as well" in why_plant(reserve, BASE, builtin_plants(), MW)[0]
    assert why_plant("no such plant at all", BASE, builtin_plants(), MW)[0].startswith("“no such")
    abroad = next(one for one in builtin_plants() if PlantRegion.MW not in one.regions)
    assert all(
        "not" in line for line in why_plant(abroad.scientific_name, BASE, builtin_plants(), MW)
    )
    gone = BASE.zones[0].picks[0].plant.scientific_name
    wishes = MW._replace(swaps=(Swap(gone),))
    plan = choose(builtin_plants(), wishes, garden())
    assert why_plant(gone, plan, builtin_plants(), wishes)[0] == "Floor: You left it out."


def test_every_flora_of_the_list_has_a_place_and_its_states_are_states():
    codes = {place.code for place in builtin_places()}
    for plant in builtin_plants():
        for part in filter(None, plant.native_caution.split(" | ")):
            for flora in part.partition(": ")[2].removeprefix("introduced per ").split(", "):
                assert flora in FLORAS, flora
    assert all(code in codes for _, states in FLORAS.values() for code in states)


def test_a_plant_that_a_flora_of_ones_own_state_calls_introduced_is_left_out():
    minnesota = next(place for place in builtin_places() if place.code == "MN")
    iowa = next(place for place in builtin_places() if place.code == "IA")
    plant = named("Penstemon digitalis")
    assert introduced_in_state(plant, minnesota) and not introduced_in_state(plant, iowa)
    assert not introduced_in_state(plant, None)
    assert introduced_at(plant, PlantRegion.MW) == ("Minnesota", "Wisconsin")
    here = MW._replace(place=minnesota, swaps=())
    plan = choose(builtin_plants(), here, garden())
    assert plant not in [one for zone in plan.zones for one in zone.reserve]
    why = why_plant(plant.scientific_name, plan, builtin_plants(), here)
    assert "A plant list of Minnesota calls it introduced, not native." in why[1]
    wider = choose(builtin_plants(), here._replace(natives_only=False), garden())
    offered = [
        one for zone in wider.zones for one in (*zone.reserve, *(p.plant for p in zone.picks))
    ]
    assert plant in offered


def test_elsewhere_it_is_a_caution_in_the_names_of_places():
    wishes = MW._replace(favourites=("Penstemon digitalis",))
    plan = choose(builtin_plants(), wishes, garden())
    (mine,) = [p for zone in plan.zones for p in zone.picks if p.favourite]
    assert "Plant lists of Minnesota and Wisconsin call it introduced, not native." in mine.cautions
    assert not any("southcentral" in said or "2007" in said for said in mine.cautions)


def test_a_hardiness_zone_leaves_out_what_is_not_hardy_and_says_how_that_is_known():
    cold = MW._replace(hardiness_zone=3)
    plan = choose(builtin_plants(), cold, garden())
    offered = [
        one for zone in plan.zones for one in (*zone.reserve, *(p.plant for p in zone.picks))
    ]
    assert offered and all(one.hardiness[0] <= 3 for one in offered)
    colder = MW._replace(hardiness_zone=2)
    nothing = choose(builtin_plants(), colder, garden())
    why = why_plant("Verbena hastata", nothing, builtin_plants(), colder)
    assert "grows in zone 3 and warmer (from memory), and you are in zone 2" in why[0]
    why = why_plant("Iris virginica", plan, builtin_plants(), cold)
    assert "zone 5 and warmer (by a list read in a second copy), and you are in zone 3" in why[0]
    hot = MW._replace(hardiness_zone=11)
    why = why_plant("Verbena hastata", choose(builtin_plants(), hot, garden()), ALL_PICKS, hot)
    assert "grows in zone 8 and colder (from memory), and you are in zone 11" in why[0]


def test_a_plant_that_would_not_live_through_the_worst_case_is_left_out():
    plant = named("Zizia aurea")._replace(
        zones=tuple(Zone), ratings=((ListRegion.MW, Indicator.FAC),)
    )
    # Within a tenth of the 48 h the hours are known no better.
    ok = fits_after(plant, Zone.FLOOR, 20, ListRegion.MW, 52, "once")
    bad = fits_after(plant, Zone.FLOOR, 20, ListRegion.MW, 53, "once")
    assert ok.ok and not bad.ok
    assert "under water for 53 h once; it stands about 48 h" in bad.why


def test_a_worst_case_no_plant_stands_rules_out_only_those_that_stand_less():
    for zone in Zone:
        left = chosen_from(zone, 5, 500)
        assert left == tuple(
            code for code in suited(zone, 5, 500) if STANDS_HOURS.value[code] >= LONGEST_HOURS.value
        )
    plan = choose(builtin_plants(), MW, garden(longest=500))
    assert plan.zones[0].picks
    assert {one.key for one in plan.findings} >= {"worst_floor"}


def test_the_longest_case_is_kept_with_each_zone():
    def hours(*each):
        return ZoneHours(*(quantity(one, "h") for one in each))

    sites = planting_zones(
        quantity(100, "ft**2"),
        quantity(150, "ft**2"),
        quantity(200, "ft**2"),
        hours(20, 8, 0),
        [("again", hours(44, 8, 1)), ("record", hours(30, 60, 2))],
    )
    assert [sites[zone].longest_when for zone in Zone] == ["again", "record", "record"]
    assert [sites[zone].worst_hours for zone in Zone] == [44, 60, 2]


def test_in_shade_plants_for_part_sun_come_last_and_say_so():
    plains = Wishes(PlantRegion.GP, ListRegion.GP, Sun.SHADE)
    plan = choose(builtin_plants(), plains, garden(wet=6))
    picks = [pick for zone in plan.zones for pick in zone.picks]
    assert {Sun.SHADE in pick.plant.sun for pick in picks} == {True, False}
    for pick in picks:
        assert (Sun.SHADE in pick.plant.sun) != bool(pick.makeshift)
        assert not pick.makeshift or pick.makeshift in pick.cautions


@settings(max_examples=20, deadline=None)
@given(st.floats(0, 300), st.floats(0, 200), st.floats(0, 200), st.floats(0, 60))
def test_the_kinds_of_a_zone_fill_it_as_their_spacing_asks(floor, side, rim, wet):
    plan = choose(builtin_plants(), MW, garden(floor, side, rim, wet))
    for zone in plan.zones:
        for pick in zone.picks:
            share = quantity(magnitude(zone.site.area, "ft**2") / len(zone.picks), "ft**2")
            assert abs(pick.count - plant_count(share, pick.plant.spacing)) <= 2
