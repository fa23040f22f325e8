"""Where each fact of a plant comes from, told for every species; and care of the planting."""

import calendar
import re
from collections import Counter

from interview.garden.planting.care import SIGNS, after_storm_steps
from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.plant_sources import PLANT_SOURCES
from interview.garden.planting.provenance import (
    FACTS,
    NOT_KNOWN,
    by_standing,
    decisions,
    from_memory,
    provenance,
    rests_lines,
    standing,
)
from interview.garden.planting.record import RATING_LISTS
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.words import (
    apart_words,
    cautions,
    doubts,
    hazards,
    remarks,
    tall_words,
)
from interview.quantities.evidence import Provenance


def test_every_fact_of_every_species_has_a_source_in_words(subtests):
    for region in PlantRegion:
        with subtests.test(region=region):
            for plant in builtin_plants():
                for listed in ListRegion:
                    told = provenance(plant, region, listed)
                    assert tuple(told) == tuple(FACTS)
                    assert all(told.values()), plant.scientific_name


ALWAYS_KNOWN = {"height", "zones", "spacing", "sun", "hardiness_min", "hardiness_max"}
ALWAYS_KNOWN |= {"spread", "toxicity", "thorns"}


def test_a_fact_is_from_memory_unless_a_list_is_named_for_it():
    for plant in builtin_plants():
        for region in plant.regions:
            memory = from_memory(plant, region, ListRegion.MW)
            assert ("native" in memory) == (region not in plant.native_checked)
            for fact in ALWAYS_KNOWN:
                assert (fact in memory) == (not plant.rests(fact)), plant.scientific_name
            assert not {"standing_water", "drought", "salt", "trade"} & set(memory)


def test_every_list_that_is_named_is_known_and_so_is_every_fact():
    for plant in builtin_plants():
        for part in filter(None, plant.rests_on.split("; ")):
            fact, _, codes = part.partition(": ")
            assert fact in FACTS and codes, plant.scientific_name
            named = [one.partition(" ")[0] for one in codes.split(" + ")]
            assert set(named) <= set(PLANT_SOURCES) and len(set(named)) == len(named)


def test_what_was_read_in_a_second_copy_is_never_called_published_alone():
    plant = builtin_plants()[0]._replace(rests_on="sun: USDA; zones: WSU p. A-5; salt: STEP + EW")
    told = provenance(plant, plant.regions[0], ListRegion.MW)
    assert told["sun"] == "published, read in a second copy: USDA plant table"
    assert told["zones"] == "published: Western Washington handbook, p. A-5"
    assert told["salt"].startswith("published: Ontario") and told["salt"].endswith("of the Woods")
    assert standing(plant, "sun") == "published, read in a second copy"
    assert standing(plant, "zones") == standing(plant, "salt") == "published"
    assert standing(plant, "hardiness_max") == "from memory, not checked"
    assert standing(plant._replace(trade="", rests_on=""), "trade") == NOT_KNOWN


def test_a_region_or_a_rating_stands_only_where_a_list_gives_it_for_all(subtests):
    plant = builtin_plants()[0]
    two = (PlantRegion.MW, PlantRegion.GP)
    rated = plant.ratings[:1]
    for fact, change, stands in [
        ("native", {"regions": two, "native_checked": two}, True),
        ("native", {"regions": two, "native_checked": two[:1]}, False),
        ("native", {"regions": two[:1], "native_checked": two}, True),
        ("indicator", {"rated_by_one": (ListRegion.MW,), "rated_by_two": ()}, True),
        ("indicator", {"rated_by_one": (), "rated_by_two": (ListRegion.MW,)}, True),
        ("indicator", {"rated_by_one": (), "rated_by_two": (), "ratings": rated}, False),
        ("indicator", {"rated_by_one": (), "rated_by_two": (), "ratings": ()}, True),
    ]:
        with subtests.test(fact=fact, **change):
            said = standing(plant._replace(**change), fact)
            assert said == (Provenance.SECONDARY if stands else Provenance.MEMORY).value


def test_what_facts_rest_on_is_told_by_source_and_what_is_least_sure_last():
    plant = builtin_plants()[0]._replace(
        rests_on="sun: USDA; height: USDA; zones: WSU p. A-5", salt="", set_by=""
    )
    lines = rests_lines(plant, plant.regions[0], ListRegion.MW)
    told = dict(lines)
    second = told["published, read in a second copy: USDA plant table"]
    assert sorted(second.split(", ")) == sorted((FACTS["height"], FACTS["sun"]))
    assert FACTS["salt"] in told[NOT_KNOWN]
    sources = [source for source, _ in lines]
    grades = [("memory" in one, one == NOT_KNOWN) for one in sources]
    assert grades == sorted(grades) and {(True, False), (False, True)} <= set(grades)
    # The wetness is told for the region of the list.
    rated = provenance(plant, plant.regions[0], ListRegion.MW)["indicator"]
    assert FACTS["indicator"] in told[rated]


def test_a_hazard_that_one_list_alone_carries_says_so():
    said = "toxicity: USDA; standing_water: USDA + ALB; thorns: JEP; sun: USDA"
    plant = builtin_plants()[0]._replace(rests_on=said)
    told = provenance(plant, plant.regions[0], ListRegion.MW)
    for fact, alone in (
        ("toxicity", True), ("thorns", True), ("standing_water", False), ("sun", False),
    ):  # fmt: skip
        assert told[fact].endswith(", one list alone") == alone, fact
    bare = provenance(plant._replace(rests_on=""), plant.regions[0], ListRegion.MW)
    assert "alone" not in bare["toxicity"]


def test_every_fact_of_every_plant_counts_once():
    for fact, count in by_standing(builtin_plants()).items():
        assert sum(count.values()) == len(builtin_plants()), fact


def test_what_was_decided_by_hand_is_what_the_list_holds(subtests):
    by_name = {one.scientific_name: one for one in builtin_plants()}
    held = {
        "sun": lambda one: ";".join(sun.value for sun in one.sun),
        "zones": lambda one: ";".join(zone.value for zone in one.zones),
        "hardiness_min": lambda one: str(one.hardiness[0]),
        "hardiness_max": lambda one: str(one.hardiness[1]),
        "spacing_in": lambda one: f"{one.spacing_in:g}",
        "height_max_ft": lambda one: f"{one.height_max_ft:g}",
        "regions": lambda one: ";".join(region.name for region in one.regions),
        "toxic": lambda one: "yes" if one.toxic else "no",
        "spreads": lambda one: one.spreads,
        "standing_water": lambda one: one.standing_water,
        "flower_color": lambda one: one.flower_color,
        "trade": lambda one: one.trade,
        "drought": lambda one: one.drought,
        "salt": lambda one: one.salt,
        "regulated_in": lambda one: ";".join(one.regulated_in),
        "scientific_name": lambda one: one.scientific_name,
        "bloom": lambda one: f"{month(one.bloom_months[0])} to {month(one.bloom_months[-1])}",
    }
    for one in decisions():
        with subtests.test(one=one):
            assert one.published and one.why
            # It is told in metric gardens too.
            assert not re.search(r"\d (?:ft|in)\b", one.why)
            if one.field != "copies":
                assert held[one.field](by_name[one.scientific_name]) == one.kept
    fields = Counter(one.field for one in decisions())
    assert fields["copies"] == 22 and fields["toxic"] == 14 and fields["scientific_name"] == 6
    assert fields["sun"] >= 5 and fields["zones"] >= 22 and fields["spreads"] >= 25


def month(number):
    return calendar.month_abbr[number]


def test_a_plant_answers_to_the_name_that_the_usda_accepts():
    for one in decisions():
        if one.field == "scientific_name":
            plant = next(p for p in builtin_plants() if p.scientific_name == one.kept)
            assert plant.answers_to(one.published.removeprefix("USDA "))


def test_a_rating_two_lists_agree_on_names_the_lists():
    plant = next(one for one in builtin_plants() if one.well_rated(ListRegion.MW))
    told = provenance(plant, plant.regions[0], ListRegion.MW)["indicator"]
    assert told.startswith("two or more lists agree")
    assert all(code in told for code in plant.indicator_source)
    assert all(code in RATING_LISTS for code in plant.indicator_source)


def test_an_own_plant_is_the_gardeners_word_for_every_fact():
    plant = builtin_plants()[0]._replace(
        own=True,
        zone_source="mine",
        hardiness_source="mine",
    )
    assert from_memory(plant, None, None) == []
    assert set(provenance(plant, None, None).values()) == {"mine", "your own plant file"}


def test_every_toxic_thorny_or_aggressive_plant_carries_a_hazard():
    for plant in builtin_plants():
        marked = plant.toxic or plant.thorny or plant.aggressive
        severe = plant.usda_toxicity not in ("", "none")
        assert bool(hazards(plant)) == (marked or severe), plant.scientific_name
        said = cautions(plant, plant.regions[0], ListRegion.MW)
        assert said[: len(hazards(plant))] == hazards(plant)
        assert all(one.endswith(".") for one in said)


def test_a_remark_is_told_once_and_not_where_a_mark_has_said_it():
    for plant in builtin_plants():
        said = " ".join(cautions(plant, plant.regions[0], ListRegion.MW))
        if remarks(plant):
            assert said.count(f"The list remarks: {remarks(plant)}.") == 1
        else:
            assert "remarks" not in said
    plant = builtin_plants()[0]._replace(remarks="self-seeds; toxic if eaten", toxic=True)
    assert remarks(plant) == ""


def test_a_plant_all_well_known_has_no_doubts():
    plant = next(
        one
        for one in builtin_plants()
        if one.well_rated(ListRegion.MW)
        and PlantRegion.MW in one.native_checked
        and not one.native_caution
        and one.spreads == "no"
        and not (one.over_8ft or one.needs_long_wet or remarks(one))
    )
    assert doubts(plant, PlantRegion.MW, ListRegion.MW) == ()


def test_heights_and_distances_are_told_in_either_unit():
    plant = builtin_plants()[0]._replace(height_max_ft=4.0)
    assert (tall_words(plant, False), tall_words(plant, True)) == ("4 ft", "1.2 m")
    assert (apart_words(18, False), apart_words(18, True)) == ("18 in", "46 cm")


def test_drowned_and_parched_are_told_apart_and_moved_opposite_ways():
    by_name = {sign.trouble: sign for sign in SIGNS}
    assert "higher" in by_name["Drowned"].remedy and "lower" in by_name["Parched"].remedy
    assert all(sign.source.standing is Provenance.MEMORY for sign in SIGNS)


def test_the_remedies_after_a_storm_follow_the_hours_water_stands():
    steps = after_storm_steps()
    assert [said for said, _ in steps] == [
        "gone within 24 h",
        "gone in 24 to 48 h",
        "gone in 48 to 72 h",
        "still there after 72 h",
    ]
    assert len({change for _, change in steps}) == 4
    assert steps[0][1] == "Good: nothing to do."
