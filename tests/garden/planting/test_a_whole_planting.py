"""What a proposed planting finds, notes and tells of each plant, of lists made for it."""

import pytest

from interview.garden.planting.choice import Bed, Candidate, Season
from interview.garden.planting.choose import (
    Pick,
    candidate,
    choose,
    is_dry,
    notes_of,
    thin_findings,
    wet_findings,
    why_plant,
)
from interview.garden.planting.record import Indicator, PlantKind, Sun
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.wetness import ZoneSite
from interview.garden.planting.wishes import SHADE_FALLBACK, Wishes
from interview.garden.planting.words import (
    DRY_GROUND,
    DRY_NOTES,
    ELSEWHERE,
    FROM_MEMORY,
    GUIDANCE,
    OWN_ONLY,
)
from interview.garden.size.zones import Zone
from interview.quantities.evidence import Grade
from interview.quantities.units import quantity

MW, HERE = PlantRegion.MW, ListRegion.MW
WISHES = Wishes(MW, HERE)


def site(area=90.0, hours=8.0, longest=None, when="once"):
    worst = None if longest is None else quantity(longest, "h")
    return ZoneSite(quantity(area, "ft**2"), quantity(hours, "h"), worst, when)


@pytest.fixture
def forb(plain_plant):
    """A flower of summer that every zone takes, by its name."""

    def make(name, **changes):
        usual = {
            "scientific_name": name, "common_name": name.lower(), "other_names": (),
            "native_checked": (MW,), "native_caution": "", "kind": PlantKind.FORB, "toxic": False,
            "bloom_months": (7,), "thorny": False, "usda_toxicity": "", "spacing_in": 18.0,
            "hardiness": None, "regulated_in": (), "absent_in": (), "remarks": "", "trade": "",
            "rated_by_two": (HERE,), "rating_conflict": "", "over_8ft": False, "salt": "",
            "height_max_ft": 3.0,
        }  # fmt: skip
        return plain_plant(**{**usual, **changes})

    return make


def sites(**more):
    return {zone: site(**more) for zone in Zone}


def test_long_water_is_to_be_mended_and_a_rare_worst_case_to_be_lived_with():
    """The Royal Horticultural Society gives 48 h, Monterey Bay 72 h at the most."""
    for hours, longest, keys in [
        (48, None, []), (49, None, ["wet_floor"]), (100, None, ["wet_floor"]), (20, 72, []),
        (20, 73, ["worst_floor"]), (60, 100, ["wet_floor", "worst_floor"]),
    ]:  # fmt: skip
        found = wet_findings({Zone.FLOOR: site(hours=hours, longest=longest)})
        assert [one.key for one in found] == keys, (hours, longest)
        for one in found:
            mend = one.key.startswith("wet")
            assert one.grade is (Grade.FIX if mend else Grade.GOOD)
            assert ("pond shallower" if mend else "replace those that drowned") in one.change
            assert one.limit == ("48 h" if mend else "72 h")


def bed(zone, *plants, kept=()):
    one = Bed(zone, 90.0, 20, 8.0)
    one.picked = [Candidate(plant, "", 0.0) for plant in plants]
    one.candidates = [Candidate(plant, "", 0.0) for plant in kept]
    return one


def test_a_zone_of_fewer_than_three_kinds_says_what_to_allow(forb):
    three = [forb(name) for name in ("Aa", "Bb", "Cc")]
    (found,) = thin_findings([bed(Zone.RIM, *three), bed(Zone.SIDE, *three[:2])])
    assert found.key == "few_kinds_side" and found.grade is Grade.FIX
    assert found.said.endswith(": 2.") and found.limit == "3 kinds"
    assert found.change.startswith("Allow taller plants")
    tiny = bed(Zone.SIDE, *three[:1])
    tiny.places = 3
    assert thin_findings([tiny]) == ()


def test_seasons_that_lack_flowers_are_noted_where_they_are_wanted(forb):
    summer = [forb(name) for name in ("Aa", "Bb", "Cc")]
    spring = [forb(name, bloom_months=(4,)) for name in ("Dd", "Ee")]
    sedge = forb("Ff", kind=PlantKind.SEDGE)
    full = [bed(Zone.SIDE, *summer, *spring, sedge)]
    told = "Kinds in flower in {}: {}; three is the aim."
    lacking = (told.format("spring", 2), told.format("autumn", 0))
    assert notes_of((), WISHES, full) == (FROM_MEMORY, *lacking)
    only = WISHES._replace(bloom=frozenset({Season.SPRING, Season.SUMMER}))
    assert notes_of((), only, full) == (FROM_MEMORY, lacking[0])
    abroad = only._replace(region=None, bloom=frozenset())
    assert notes_of((), abroad, full) == (OWN_ONLY, FROM_MEMORY)


def test_a_zone_without_a_grass_is_noted_and_whether_the_list_has_one(forb):
    calm = WISHES._replace(bloom=frozenset())
    sedge, one = forb("Ff", kind=PlantKind.SEDGE), forb("Aa")
    for made, note in [
        (bed(Zone.SIDE), None), (bed(Zone.SIDE, one, sedge), None), (bed(Zone.SIDE, sedge), None),
        (bed(Zone.SIDE, one), "No grass, sedge or rush in the list suits the side."),
        (bed(Zone.RIM, one, kept=(one, sedge)), "No grass, sedge or rush is chosen for the rim."),
        (bed(Zone.RIM, one, kept=(one,)), "No grass, sedge or rush in the list suits the rim."),
    ]:  # fmt: skip
        assert notes_of((), calm, [made]) == (FROM_MEMORY, *([note] if note else []))


def test_what_a_plant_is_there_for(forb):
    sedge, one = forb("Ff", kind=PlantKind.SEDGE), forb("Aa")
    for plant, more, role in [
        (one, {}, ""), (sedge, {}, "for structure"), (one, {"favourite": True}, "you asked for it"),
        (sedge, {"favourite": True}, "you asked for it"), (one, {"instead_of": one}, ""),
        (one, {"instead_of": sedge}, "in place of ff"),
        (one, {"instead_of": sedge, "favourite": True}, "in place of ff"),
    ]:  # fmt: skip
        assert Pick(plant, 3, "", (), **more).role == role


def test_ground_for_one_plant_is_planted_with_one_kind(forb):
    plan = choose([forb("Aa"), forb("Bb")], WISHES, {Zone.SIDE: site(area=1.5)})
    assert [len(zone.picks) for zone in plan.zones] == [1]
    bare = choose([forb("Aa")], WISHES, {Zone.SIDE: site(area=0)})
    assert bare.zones[0].picks == () and bare.total == 0
    assert why_plant("Aa", bare, [forb("Aa")], WISHES) == ("Side: There is no ground to plant.",)


def test_no_kind_is_named_where_region_or_list_is_not_known(forb):
    for wishes in (WISHES._replace(list_region=None), WISHES._replace(region=None)):
        plan = choose([forb("Aa")], wishes, sites())
        assert plan.notes == (ELSEWHERE,) and plan.total == 0
        mine = forb("Own", own=True, regions=(), any_rating=Indicator.FAC, ratings=())
        plan = choose([forb("Aa"), mine], wishes._replace(natives_only=False), sites())
        assert {pick.plant for zone in plan.zones for pick in zone.picks} == {mine}
        assert not any(zone.reserve for zone in plan.zones)


def test_a_plant_that_would_drown_says_when(forb):
    zone = {Zone.SIDE: site(longest=60, when="when it rains again")}
    plants = [forb("Aa", ratings=((HERE, Indicator.FACU),)), forb("Bb")]
    plan = choose(plants, WISHES, zone)
    (said,) = why_plant("Bb", plan, plants, WISHES)
    assert "for 60 h when it rains again; it stands about 48 h" in said


def test_others_come_in_only_where_fewer_than_three_suit(forb):
    shade = WISHES._replace(sun=Sun.SHADE)
    shady = [forb(name, sun=(Sun.SHADE,)) for name in ("Aa", "Bb", "Cc")]
    bright = forb("Dd", sun=(Sun.PART,))
    for kinds, more in [(3, False), (2, True)]:
        plan = choose([*shady[:kinds], bright], shade, {Zone.SIDE: site()})
        (zone,) = plan.zones
        picked = {pick.plant: pick.makeshift for pick in zone.picks}
        assert (bright in picked or bright in zone.reserve) is more
        assert not more or picked[bright] == SHADE_FALLBACK


def test_the_others_that_would_do_are_told_best_first(forb):
    worse = {"Bb": {"toxic": True, "rated_by_two": ()}, "Cc": {"toxic": True}, "Dd": {}}
    plants = [forb(name, **more) for name, more in worse.items()]
    plants += [forb(f"A{n}", bloom_months=(4, 7, 9)) for n in range(5)]
    (zone,) = choose(plants, WISHES, {Zone.SIDE: site(area=60)}).zones
    rest = [one.scientific_name for one in zone.reserve]
    assert [name for name in rest if name in worse] == ["Dd", "Cc", "Bb"]


def test_what_is_sown_is_counted_by_no_plant(forb):
    wishes = WISHES._replace(sown=frozenset({Zone.RIM}))
    plants = [forb(name) for name in ("Aa", "Bb")]
    plan = choose(plants, wishes, sites())
    for zone in plan.zones:
        sown = zone.zone is Zone.RIM
        assert zone.sown is sown and len(zone.picks) == 2
        assert all((pick.count == 0) is sown for pick in zone.picks)
        # 90 sq ft at 18 in in shifted rows: 90 / (0.866 x 2.25) = 46.2.
        assert zone.places == (0 if sown else 47)
    said = why_plant("Aa", plan, plants, wishes)
    assert said[2].startswith("Rim: Sown. ") and said[0].startswith(f"Floor: {47 // 2 + 1} planted")
    absent = why_plant("Cc", plan, [*plants, forb("Cc")], wishes)
    assert absent[2].startswith("Rim: It would do as well")


def test_a_plant_says_why_and_what_speaks_against_it(forb):
    tall = forb("Aa", height_max_ft=6.0)
    wishes = WISHES._replace(floor_height=quantity(3, "ft"), favourites=("Aa",))
    plan = choose([tall, forb("Bb")], wishes, {Zone.SIDE: site()})
    picks = {pick.plant.scientific_name: pick for pick in plan.zones[0].picks}
    against = "It grows to 6 ft (1.8 m), taller than you want here."
    assert (picks["Aa"].why, picks["Aa"].against) == ("You asked for it.", against)
    assert picks["Aa"].cautions[0] == against
    fits = candidate(forb("Bb"), wishes, Bed(Zone.SIDE, 90, 20, 8.0)).why
    assert (picks["Bb"].why, picks["Bb"].against) == (fits, "") and "suits it" in fits
    (mine,) = why_plant("Aa", plan, [tall], wishes)
    assert mine == f"Side: {picks['Aa'].count} planted. You asked for it. {against}"
    (other,) = why_plant("Bb", plan, [forb("Bb")], wishes)
    assert other == f"Side: {picks['Bb'].count} planted. {fits}"


def test_a_floor_that_dries_in_hours_has_the_guidance_of_dry_ground(forb):
    for hours, longest, dry in [(5, None, True), (5, 48, True), (5, 60, False), (6, None, False)]:
        here = site(hours=hours, longest=longest)
        assert is_dry(Zone.FLOOR, here) is dry
        plan = choose([forb("Aa")], WISHES, {Zone.FLOOR: here})
        assert plan.zones[0].guidance == (DRY_GROUND if dry else GUIDANCE[Zone.FLOOR])
        assert (DRY_NOTES[Zone.FLOOR] in plan.notes) is dry
