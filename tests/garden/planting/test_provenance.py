"""Where each fact of a plant comes from, told for every species; and care of the planting."""

from dataclasses import replace

from interview.garden.planting.care import SIGNS, after_storm_steps
from interview.garden.planting.plant_list import builtin_plants
from interview.garden.planting.provenance import FACTS, from_memory, provenance
from interview.garden.planting.record import RATING_LISTS, ListRegion, PlantRegion
from interview.garden.planting.words import cautions, doubts, hazards, remarks
from interview.quantities.evidence import Provenance


def test_every_fact_of_every_species_has_a_source_in_words(subtests):
    for region in PlantRegion:
        with subtests.test(region=region):
            for plant in builtin_plants():
                for listed in ListRegion:
                    told = provenance(plant, region, listed)
                    assert tuple(told) == FACTS
                    assert all(told.values()), plant.scientific_name


def test_a_fact_is_from_memory_unless_the_list_says_it_was_verified():
    for plant in builtin_plants():
        for region in plant.regions:
            memory = from_memory(plant, region, ListRegion.MW)
            assert {"spacing", "sun", "hardiness", "hazards"} <= set(memory)
            for fact in ("height", "bloom"):
                assert (fact in memory) != (fact in plant.verified_fields), plant.scientific_name
            assert ("native" in memory) == (region not in plant.native_checked)
            assert ("zones" in memory) == ("zones" not in plant.verified_fields)


def test_a_rating_two_lists_agree_on_names_the_lists():
    plant = next(one for one in builtin_plants() if one.well_rated(ListRegion.MW))
    told = provenance(plant, plant.regions[0], ListRegion.MW)["indicator"]
    assert told.startswith("two or more lists agree")
    assert all(code in told for code in plant.indicator_source)
    assert all(code in RATING_LISTS for code in plant.indicator_source)


def test_an_own_plant_is_the_gardeners_word_for_every_fact():
    plant = replace(
        builtin_plants()[0],
        own=True,
        zone_source="mine",
        hardiness_source="mine",
        verified_fields=(),
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
    plant = replace(builtin_plants()[0], remarks="self-seeds; toxic if eaten", toxic=True)
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
