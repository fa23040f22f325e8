"""How plants are weighed one against another, what is picked first, and what takes a place.

What counts for how much, and in which order, is our own choice: it is written down here once more.
"""

from dataclasses import replace
from itertools import pairwise

import pytest

from interview.garden.planting.choice import (
    Bed,
    Candidate,
    Season,
    blooms_with,
    fill,
    quality,
    seasons_of,
    substitute,
)
from interview.garden.planting.choose import bed_of, candidate
from interview.garden.planting.count import own_count, shared_counts, swarms
from interview.garden.planting.record import Indicator, PlantKind
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.sketch import _grid
from interview.garden.planting.swap import counts_of, make_changes, matching
from interview.garden.planting.wetness import ZoneSite
from interview.garden.planting.wishes import Prefer, Swap, Wishes
from interview.garden.size.zones import Zone
from interview.quantities.units import quantity

MW, HERE = PlantRegion.MW, ListRegion.MW
WISHES = Wishes(MW, HERE)
SUMMER = (7,)


@pytest.fixture
def calm(plain_plant):
    """A forb of which nothing counts for or against it, on a side under water for eight hours."""

    def make(name="Aa aa", **changes):
        usual = {
            "scientific_name": name, "common_name": name.lower(), "other_names": (), "toxic": False,
            "usda_toxicity": "", "thorny": False, "rests_on": "", "native_checked": (MW,),
            "native_caution": "", "rated_by_two": (HERE, ListRegion.AW), "rating_conflict": "",
            "trade": "", "regulated_in": (), "absent_in": (), "drought": "high", "moisture": (),
            "salt": "", "wildlife": (), "kind": PlantKind.FORB, "bloom_months": SUMMER,
            "spacing_in": 18.0, "height_max_ft": 3.0, "over_8ft": False, "hardiness": None,
            "standing_water": "high", "own": False, "set_by": "",
            "ratings": ((HERE, Indicator.FAC), (ListRegion.AW, Indicator.FAC)),
        }  # fmt: skip
        return plain_plant(**{**usual, **changes})

    return make


def test_what_counts_for_and_against_a_plant_and_for_how_much(calm):
    arid = ListRegion.AW
    side, rim, dry, wet = (Zone.SIDE, 8), (Zone.RIM, 0), (Zone.SIDE, 5), (Zone.FLOOR, 30)
    for place, region, change, more in [
        (side, HERE, {"drought": "low"}, 0), (rim, HERE, {"drought": "low"}, 1),
        (rim, HERE, {"drought": "none"}, 1), (dry, HERE, {"drought": "low"}, 1),
        (side, arid, {"drought": "low"}, 1), (wet, arid, {"drought": "low"}, 0),
        (rim, HERE, {"drought": "", "moisture": ("high",)}, 1),
        (rim, HERE, {"drought": "", "moisture": ("medium", "high")}, 0),
        (rim, arid, {"drought": "medium"}, 0.5), (dry, arid, {"drought": "medium"}, 0.5),
        (side, arid, {"drought": "medium"}, 0), (rim, HERE, {"drought": "medium"}, 0),
        (rim, arid, {"drought": "low"}, 1.5),
        (wet, HERE, {"standing_water": "low"}, 0.5), (wet, HERE, {"standing_water": "none"}, 0.5),
        (side, HERE, {"standing_water": "none"}, 0), (wet, HERE, {"standing_water": ""}, 0),
        (side, HERE, {"native_checked": ()}, 1), (side, HERE, {"own": True}, 0),
        (side, HERE, {"native_checked": (), "own": True}, 0),
        (side, HERE, {"native_caution": "MW: introduced per iowa 2001"}, 1),
        (side, HERE, {"native_caution": "NE: introduced per iowa 2001"}, 0),
        (side, HERE, {"needs_long_wet": True}, 1), (side, HERE, {"toxic": True}, 1),
        (side, HERE, {"spreads": "some"}, 0.5), (side, HERE, {"kind": PlantKind.SHRUB}, 1),
        (side, HERE, {"rated_by_two": ()}, 0.5), (side, HERE, {"rated_by_two": (), "own": True}, 0),
        (side, HERE, {"trade": "collected"}, 0.5), (side, HERE, {"trade": "unknown"}, 0.5),
        (side, HERE, {"trade": "contract"}, 0),
        (side, HERE, {"regions": (MW, PlantRegion.NE)}, -0.1),
        (side, HERE, {"rests_on": "zones: WSU p. 5"}, -0.5),
    ]:  # fmt: skip
        before = quality(calm(), *place, MW, region)
        after = quality(calm(**change), *place, MW, region)
        assert after - before == pytest.approx(more), (place, region, change)


def test_how_far_a_rating_is_from_the_best_of_its_zone(calm):
    """The wetter a zone is the wetter the rating; classes from OBL to UPL, half a class between."""
    for zone, hours, best in [
        (Zone.FLOOR, 5.9, 3), (Zone.FLOOR, 6, 1.5), (Zone.FLOOR, 12, 1.5), (Zone.FLOOR, 12.1, 1),
        (Zone.FLOOR, 24 * 1.1, 1), (Zone.FLOOR, 27, 0.5), (Zone.SIDE, 5.9, 3), (Zone.SIDE, 6, 2),
        (Zone.SIDE, 40, 2), (Zone.RIM, 0, 3.5), (Zone.RIM, 40, 3.5),
    ]:  # fmt: skip
        for place, rated in enumerate((*Indicator, None)):
            where = HERE if rated else ListRegion.GP
            plant = calm(ratings=((where, rated or Indicator.FAC),))
            # Of a floor that is wet for long the calm plant stands what there is to stand.
            found = quality(plant, zone, hours, MW, HERE)
            assert found == pytest.approx(abs(place - best) - 0.1), (zone, hours, rated)
    own = calm(own=True, ratings=())
    assert quality(own, Zone.RIM, 0, MW, HERE) == pytest.approx(-0.1)
    rated = own._replace(any_rating=Indicator.OBL)
    assert quality(rated, Zone.RIM, 0, MW, HERE) == pytest.approx(3.5 - 0.1)


def test_road_salt_and_what_is_wanted_first_count_twice_a_class(calm):
    bed = bed_of(Zone.SIDE, ZoneSite(quantity(90, "ft**2"), quantity(8, "h")))
    salty = WISHES._replace(road_salt=True)
    liked = WISHES._replace(prefer=frozenset(Prefer))
    for wishes, change, more in [
        (WISHES, {"salt": "high"}, 0), (salty, {}, 0), (salty, {"salt": "low"}, 0),
        (salty, {"salt": "medium"}, -2), (salty, {"salt": "high"}, -2),
        (salty, {"salt": "none"}, 1), (liked, {"trade": "routine"}, -2),
        (liked, {"wildlife": ("bees", "birds")}, -4),
        (WISHES, {"wildlife": ("bees", "birds")}, 0), (salty, {"toxic": True}, 1),
    ]:  # fmt: skip
        plain = candidate(calm(), WISHES, bed).quality
        assert candidate(calm(**change), wishes, bed).quality - plain == pytest.approx(more), change


def test_the_seasons_of_a_plant_are_half_a_year_on_in_the_south(calm):
    names = {Season.SPRING: (3, 4, 5), Season.SUMMER: (6, 7, 8), Season.AUTUMN: (9, 10, 11)}
    south = {Season.SPRING: (9, 10, 11), Season.SUMMER: (12, 1, 2), Season.AUTUMN: (3, 4, 5)}
    for southern, told in ((False, names), (True, south)):
        for month in range(1, 13):
            found = seasons_of(calm(bloom_months=(month,), southern=southern))
            assert found == {one for one, months in told.items() if month in months}, month
    assert seasons_of(calm(kind=PlantKind.FERN)) == frozenset()


def bed(zone=Zone.SIDE, area=200.0, places=80, hours=8.0):
    return Bed(zone, area, places, hours)


def of(plant, worth=0.0, **more):
    return Candidate(plant, "", worth, **more)


def names(bed):
    return [one.plant.scientific_name for one in bed.picked]


def test_what_takes_a_place_is_likest_in_what_comes_first(calm):
    gone = calm("Gone", bloom_months=(4, 7))
    usual = {"bloom_months": (4, 7)}
    crowd = {"spacing_in": 100.0}
    ranks = [
        ({}, {"makeshift": "x"}), ({"kind": PlantKind.SEDGE}, {}), ({}, {"elsewhere": True}),
        ("there", {}), (crowd, {}), ({"bloom_months": (4,)}, {}), ({"thorny": True}, {}),
        ({"kind": PlantKind.SHRUB}, {}), ({}, {"quality": 1.0}),
    ]  # fmt: skip
    for at, (plant, mark) in enumerate(ranks):
        # The better one is worse in all that comes after.
        worse = {}
        marks = {}
        for later, more in ranks[at + 1 :]:
            if later != "there":
                worse |= later
            marks |= more
        there = any(later == "there" for later, _ in ranks[at + 1 :])
        # A kind that differs in structure differs in kind too.
        if at == 1:
            worse["kind"] = PlantKind.FORB
        good = of(calm("Z good", **(usual | worse)))._replace(**marks)
        bad = of(calm("A bad", **(usual | (plant if plant != "there" else {}))))._replace(**mark)
        one = bed(area=100)
        one.candidates = [bad, good]
        one.picked = [of(gone)]
        stands = bed(Zone.RIM)
        stands.picked = [of(bad.plant)] if plant == "there" else [of(good.plant)] if there else []
        found = substitute(gone, one, [one, stands])
        assert found is good, (at, plant, mark)
    alone = bed()
    assert substitute(gone, alone, [alone]) is None


def test_a_plant_crowds_a_place_that_is_smaller_than_it_needs(calm):
    """Two of 48 in need 27.7 sq ft: in 40 sq ft one kind has room, beside another it has not."""
    wide, narrow = calm("A wide", spacing_in=48.0), calm("B narrow")
    for picked, best in [((), wide), (("Gone",), wide), (("Gone", "Other"), narrow)]:
        one = bed(area=40.0)
        one.candidates = [of(wide), of(narrow)]
        one.picked = [of(calm(name)) for name in picked]
        found = substitute(calm("Gone"), one, [one])
        assert found is not None and found.plant == best, picked


def test_the_months_of_a_grass_do_not_count(calm):
    grass = calm(kind=PlantKind.SEDGE, bloom_months=(5,))
    assert blooms_with(grass, calm(bloom_months=(9,)))
    assert not blooms_with(calm(bloom_months=(5,)), calm(bloom_months=(9,)))
    assert blooms_with(calm(bloom_months=()), calm(bloom_months=(9,)))


def test_a_grass_comes_first_and_one_shrub_before_more_flowers(calm):
    one = bed(places=24)
    one.candidates = [
        of(calm("Forb"), 5), of(calm("Shrub two", kind=PlantKind.SHRUB), 1),
        of(calm("Shrub", kind=PlantKind.SHRUB), 0), of(calm("Sedge", kind=PlantKind.SEDGE), 9),
    ]  # fmt: skip
    fill([one], frozenset())
    assert names(one) == ["Sedge", "Shrub", "Forb"]


def test_a_kind_that_would_swarm_comes_after_larger_ones(calm):
    """In 80 sq ft stand more than 30 of any that is set 18 in apart or nearer."""
    large = calm("Large", spacing_in=24.0)
    for small, first in [
        (calm("Small", spacing_in=17.0), "Large"), (calm("Small", spacing_in=18.0), "Small"),
        (calm("Small", spacing_in=6.0, set_by="plugs"), "Small"),
    ]:  # fmt: skip
        one = bed(area=240.0, places=24)
        one.candidates = [of(large, 1), of(small)]
        fill([one], frozenset())
        assert names(one)[0] == first


def test_thirty_plants_of_a_kind_are_not_too_many(calm):
    """A plant at 12 in takes 0.866 sq ft."""
    plant = calm(spacing_in=12.0)
    assert not swarms(plant, 30 * 0.866) and swarms(plant, 30.1 * 0.866)


def test_flowers_are_added_for_a_season_that_lacks_them_as_far_as_there_is_room(calm):
    fern = {"kind": PlantKind.FERN, "bloom_months": ()}
    spring = [of(calm(f"Spring {n}", bloom_months=(4,)), makeshift="x") for n in range(4)]
    one = bed(places=80)
    one.candidates = [*(of(calm(f"Fern {n}", **fern)) for n in range(5)), *spring]
    fill([one], frozenset({Season.SPRING}))
    # Five kinds first, and two more at the most.
    assert len(names(one)) == 7 and names(one)[5:] == ["Spring 0", "Spring 1"]
    other = bed(places=80)
    other.candidates = [of(calm(f"Fern {n}", **fern)) for n in range(7)]
    other.candidates += [of(calm("Summer"), makeshift="x")]
    fill([other], frozenset({Season.SPRING}))
    assert len(names(other)) == 5


def test_kinds_of_one_spacing_add_up_whatever_comes_before(calm):
    area = quantity(100, "ft**2")
    one, two = calm(spacing_in=12.0), calm(spacing_in=24.0)
    # 100 / 2 / 0.866 = 57.7, and of the wider 14.4 more: 58, and 73 less 58.
    assert shared_counts([one, two], area) == (58, 15)
    assert own_count(two, 50.0) == 15


def judge(worth):
    """Judge by a table: the worth of a plant in a zone, what speaks against it, and if it dies."""

    def found(plant, one):
        number, against, dies = worth.get((plant.scientific_name, one.zone), (0.0, "", False))
        return Candidate(plant, "fits", number, against=against, unsuited=dies)

    return found


def changed(beds, plants, wishes=WISHES, **worth):
    table = {
        (name.replace("_", " "), zone): how
        for name, many in worth.items()
        for zone, how in many.items()
    }
    return make_changes(beds, plants, wishes, judge(table))


def test_every_swap_tells_what_it_could_not_do(calm):
    one = bed()
    one.picked = [of(calm("Aa aa"))]
    plants = [calm("Aa aa"), calm("Bb bb")]
    wishes = WISHES._replace(swaps=(Swap("xx"), Swap("yy"), Swap("Bb bb", "Aa aa")))
    homeless, notes = changed([one], plants, wishes)
    assert homeless == [] and len(notes) == 3
    assert "xx" in notes[0] and "yy" in notes[1] and "Bb bb" in notes[2]


def test_without_ground_no_favourite_is_called_homeless(calm):
    wishes = WISHES._replace(favourites=("Aa aa",))
    assert changed([], [calm("Aa aa")], wishes) == ([], [])
    dies = {Zone.SIDE: (0.0, "too wet", True)}
    assert changed([bed()], [calm("Aa aa")], wishes, Aa_aa=dies)[0] == [calm("Aa aa")]


def test_a_scientific_name_comes_before_another_name(calm):
    synonym, exact = calm("Bb bb", other_names=("Aa aa",)), calm("Aa aa")
    assert matching([synonym, exact], " aa aa ") == [exact]
    assert matching([synonym], "Aa aa") == [synonym] and matching([synonym], "") == []


def test_the_first_of_two_of_one_name_takes_the_place(calm):
    one = bed()
    first, second = (calm(name, common_name="reed") for name in ("Bb bb", "Cc cc"))
    one.picked = [of(calm("Aa aa"))]
    wishes = WISHES._replace(swaps=(Swap("Aa aa", "reed"),))
    changed([one], [calm("Aa aa"), first, second], wishes)
    assert names(one) == ["Bb bb"] and one.picked[0].favourite


def test_a_swap_to_a_plant_that_stands_there_already_takes_another(calm):
    one = bed()
    one.picked = [of(calm("Aa aa")), of(calm("Bb bb"))]
    one.candidates = [of(calm("Cc cc"))]
    wishes = WISHES._replace(swaps=(Swap("Aa aa", "Bb bb"),))
    plants = [calm(name) for name in ("Aa aa", "Bb bb", "Cc cc")]
    assert changed([one], plants, wishes) == ([], [])
    assert names(one) == ["Cc cc", "Bb bb"]


def test_what_could_not_take_a_place_is_told_of_each_zone(calm):
    beds = [bed(Zone.SIDE), bed(Zone.RIM)]
    for each in beds:
        each.picked = [of(calm("Aa aa"))]
        each.candidates = [of(calm("Cc cc"))]
    wishes = WISHES._replace(swaps=(Swap("Aa aa", "Bb bb"),))
    plants = [calm(name) for name in ("Aa aa", "Bb bb", "Cc cc")]
    dry = {zone: (0.0, "Too dry.", True) for zone in Zone}
    _, notes = changed(beds, plants, wishes, Bb_bb=dry)
    told = "Bb bb has no place on the {}. Too dry."
    assert notes == [told.format("side"), told.format("rim")]
    assert [names(each) for each in beds] == [["Cc cc"], ["Cc cc"]]


def test_a_swap_to_a_name_that_is_not_known_says_so_and_takes_another(calm):
    one = bed()
    one.picked, one.candidates = [of(calm("Aa aa"))], [of(calm("Bb bb"))]
    wishes = WISHES._replace(swaps=(Swap("Aa aa", "Bb bbb"),))
    _, (note,) = changed([one], [calm("Aa aa"), calm("Bb bb")], wishes)
    assert note == "“Bb bbb” is not in the plant list: did you mean Bb bb?"
    assert names(one) == ["Bb bb"] and not one.picked[0].favourite


def test_a_plant_asked_for_and_swapped_out_is_told_though_others_have_its_name(calm):
    wishes = WISHES._replace(swaps=(Swap("reed"),), favourites=("Bb bb",))
    plants = [calm("Aa aa", common_name="reed"), calm("Bb bb", common_name="reed")]
    _, (note,) = changed([bed()], plants, wishes)
    assert "asked for and swapped out" in note


def test_a_favourite_goes_where_nothing_speaks_against_it_and_then_where_it_does_best(calm):
    wishes = WISHES._replace(favourites=("Aa aa",))
    for side, rim, where in [
        ((1.0, "", False), (0.5, "", False), Zone.RIM),
        ((0.5, "", False), (1.0, "", False), Zone.SIDE),
        ((0.0, "tall", False), (1.0, "", False), Zone.RIM),
        ((1.0, "", False), (0.0, "tall", False), Zone.SIDE),
        ((1.0, "tall", False), (0.0, "wet", True), Zone.SIDE),
    ]:  # fmt: skip
        beds = [bed(Zone.SIDE), bed(Zone.RIM)]
        changed(beds, [calm("Aa aa")], wishes, Aa_aa={Zone.SIDE: side, Zone.RIM: rim})
        assert [one.zone for one in beds if names(one)] == [where], (side, rim)


def test_what_was_swapped_in_fills_the_share_of_a_kind(calm):
    """100 sq ft for two kinds, 50 each: at 12 in 57.7, at 24 in 14.4; at 18 in 25.7."""
    one = bed(area=100.0)
    old, other, new = calm("Aa", spacing_in=12.0), calm("Bb", spacing_in=24.0), calm("Cc")
    one.picked = [of(old), of(other)]
    assert counts_of(one) == (58, 15)
    one.picked = [of(new, instead_of=old), of(other)]
    assert counts_of(one) == (26, 15)
    one.picked = [of(new, instead_of=old)]
    # Alone it has all of the ground: 51.3.
    assert counts_of(one) == (52,)
    assert counts_of(replace(one, picked=[])) == ()


@pytest.mark.parametrize("count", [1, 5, 36, 40, 150, 250, 430])
@pytest.mark.parametrize("shape", [0.05, 1, 3, 400])
def test_neighbors_in_the_row_of_plants_are_neighbors_in_the_sketch(count, shape):
    """There and back in bands: from one plant to the next it is never far, in a band or over."""
    plants = "".join(chr(0x4E00 + n) for n in range(count))
    rows = _grid(plants, shape)
    assert all(row == row.rstrip() for row in rows)
    at = {
        row[column]: (line, column // 2)
        for line, row in enumerate(rows)
        for column in range(0, len(row), 2)
    }
    assert set(plants) <= set(at)
    for one, two in pairwise(plants):
        (y0, x0), (y1, x1) = at[one], at[two]
        assert abs(x1 - x0) <= 1 and abs(y1 - y0) <= 3, (one, two)
