"""What is told of one plant: its hazards, doubts and names, and how sure each is."""

import pytest

from interview.garden.planting.plant_list import builtin_places
from interview.garden.planting.provenance import decided, decisions, provenance
from interview.garden.planting.record import introduced_at, introduced_in_state
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.stock import PlantSize, apart, sown
from interview.garden.planting.wishes import NOT_NATIVE, Sun, Wishes, makeshift, unsuited
from interview.garden.planting.words import (
    cautions,
    doubts,
    hazard_names,
    hazards,
    home_doubts,
    plain_remark,
    salt_note,
    short_name,
    tall_words,
    unless_read,
)
from interview.garden.size.zones import Zone
from interview.quantities.units import METRIC, magnitude

MW, NE = PlantRegion.MW, PlantRegion.NE
MEMORY = " (from memory)"


@pytest.fixture
def calm(plain_plant):
    """A plant of which there is nothing to say."""

    def make(**changes):
        nothing = {
            "toxic": False, "usda_toxicity": "", "thorny": False, "remarks": "", "rests_on": "",
            "native_checked": (MW,), "native_caution": "", "rated_by_two": (ListRegion.MW,),
            "rated_by_one": (), "rated_upl_or_unlisted": (), "rating_conflict": "", "trade": "",
            "regulated_in": (), "over_8ft": False, "own": False, "common_name": "test herb",
        }  # fmt: skip
        return plain_plant(**{**nothing, **changes})

    return make


def test_nothing_is_said_of_a_plant_of_which_there_is_nothing_to_say(calm):
    assert cautions(calm(), MW, ListRegion.MW) == ()
    assert hazard_names(calm()) == "" and plain_remark(calm()) == ""


def test_a_short_name_leaves_the_brackets_out(calm):
    assert short_name(calm()) == "test herb"
    assert short_name(calm(common_name="blue rush (marsh reed) (old)")) == "blue rush"


def test_a_hazard_is_from_memory_unless_it_was_read_or_is_ones_own(calm):
    for change, fact, start in [
        ({"toxic": True}, "toxicity", "Can harm people or pets if eaten or touched"),
        ({"spreads": "yes"}, "spread", "Spreads hard and can crowd out its neighbors"),
    ]:
        for more, known in [
            ({}, MEMORY), ({"own": True}, ""), ({"rests_on": f"{fact}: USDA"}, ""),
            ({"rests_on": "sun: USDA"}, MEMORY),
        ]:  # fmt: skip
            plant = calm(**change, **more)
            assert hazards(plant) == (f"{start}{known}.",)
            assert unless_read(plant, fact) == known
    assert hazards(calm(thorny=True)) == (f"Thorny or sharp{MEMORY}.",)
    assert hazards(calm(thorny=True, own=True)) == ("Thorny or sharp.",)
    assert hazards(calm(usda_toxicity="slight")) == (
        "The USDA plant table calls its toxicity slight.",
    )
    assert hazards(calm(usda_toxicity="none")) == ()


def test_a_remark_of_a_dangerous_plant_is_a_hazard_and_of_any_other_a_doubt(calm):
    told = "The list remarks: sap burns."
    for mark in ({"toxic": True}, {"thorny": True}, {"spreads": "yes"}):
        plant = calm(remarks="sap burns", **mark)
        assert hazards(plant)[-1] == told and plain_remark(plant) == ""
        mine = plant._replace(own=True)
        assert "Your plant file remarks: sap burns." not in hazards(mine)
        assert plain_remark(mine) == "Your plant file remarks: sap burns."
    plain = calm(remarks="sap burns")
    assert hazards(plain) == () and doubts(plain, MW, ListRegion.MW) == (told,)


def test_a_rating_that_stands_on_little_is_told_as_a_sentence(calm):
    for change, told in [
        ({"rated_by_two": ()}, "Its wetness rating is from memory."),
        (
            {"rated_by_two": (), "rated_by_one": (ListRegion.MW,)},
            "One list gives its wetness rating.",
        ),
        ({"rating_conflict": "GP: a | MW: b"}, "Lists disagree on its wetness rating."),
        ({"rating_conflict": "GP: a"}, ""),
        ({"rated_by_two": (), "own": True}, ""),
    ]:
        assert doubts(calm(**change), MW, ListRegion.MW) == ((told,) if told else ())
    own = "its wetness is your own plant file's word"
    assert calm(own=True).rating_standing(ListRegion.MW) == own
    assert calm().rating_standing(None) == own


def test_how_native_it_is_is_told_by_the_lists_that_doubt_it(calm):
    names = ("iowa 2001", "ohio 2014", "indiana 2019")
    for count, told in [
        (1, "A plant list of Iowa calls it introduced, not native."),
        (2, "Plant lists of Iowa and Ohio call it introduced, not native."),
        (3, "Plant lists of Iowa, Ohio and Indiana call it introduced, not native."),
    ]:
        here = f"MW: introduced per {', '.join(names[:count])}"
        plant = calm(native_caution=f"NE: introduced per maine new brunswick 2018 | {here}")
        assert home_doubts(plant, MW) == [told]
        assert introduced_at(plant, NE) == ("Maine",) and introduced_at(plant, None) == ()
    strange = calm(native_caution="MW: introduced per a flora: of 1900")
    assert introduced_at(strange, MW) == ("a flora: of 1900",)
    assert home_doubts(calm(regions=(NE,)), MW) == [NOT_NATIVE]
    memory = "That it is native in your region is from memory."
    assert home_doubts(calm(native_checked=()), MW) == [memory]
    assert home_doubts(calm(native_checked=(), own=True), MW) == []


def test_a_state_named_by_a_flora_of_any_part_is_found(calm):
    states = {one.code: one for one in builtin_places()}
    plant = calm(
        native_caution="NE: introduced per maine new brunswick 2018 | "
        "MW: introduced per iowa 2001, x: y"
    )
    assert [code for code in states if introduced_in_state(plant, states[code])] == ["IA", "ME"]


def test_plants_not_known_to_stand_salt_are_named_once(calm):
    hardy, shy = calm(salt="high"), calm(salt="none", common_name="shy herb (weed)")
    unknown = calm(salt="", common_name="odd herb")
    assert salt_note([hardy, calm(salt="medium")]).startswith("All these stand some salt")
    assert salt_note([hardy, shy, unknown, shy]).startswith(
        "Not known to stand road salt: shy herb, odd herb. "
    )


def test_names_in_brackets_are_names_by_themselves(calm):
    plant = calm(scientific_name="A b", other_names=(), common_name="reed (marsh rush (old))")
    assert plant.names == {"a b", "reed (marsh rush (old))", "reed", "marsh rush (old"}
    assert calm(scientific_name="A b", other_names=()).names == {"a b", "test herb"}
    assert calm(rests_on="zones: WSU: p. 5 + USDA; sun: ALB").rests("zones") == (
        "WSU: p. 5",
        "USDA",
    )


def test_ones_own_plant_rests_on_ones_own_file_or_on_the_size_it_is_set_at(calm):
    own = calm(own=True, zone_source="a", hardiness_source="b")
    told = provenance(own, MW, ListRegion.MW)
    assert (told["zones"], told["hardiness_min"], told["hardiness_max"]) == ("a", "b", "b")
    assert told["spacing"] == told["sun"] == "your own plant file"
    set_by = provenance(own._replace(set_by="plugs"), MW, ListRegion.MW)
    assert set_by == told | {"spacing": "plugs"}


def test_where_a_rating_and_a_home_come_from(calm):
    listed = calm(indicator_source=("EPA16", "from memory"))
    agree = "two or more lists agree on its wetness rating"
    assert provenance(listed, MW, ListRegion.MW)["indicator"] == f"{agree}: EPA16"
    assert provenance(calm(indicator_source=()), MW, ListRegion.MW)["indicator"] == agree
    shaky = calm(indicator_source=("EPA16",), rated_by_two=())
    assert provenance(shaky, MW, ListRegion.MW)["indicator"] == "its wetness rating is from memory"
    home = provenance(listed, MW, ListRegion.MW)["native"]
    assert home == f"a published flora of the region {MW.value}"


def test_what_was_decided_by_hand_is_told_of_the_plant_it_was_decided_of(calm):
    every = decisions()
    assert every and all(all(one[:2]) for one in every)
    name = every[0].scientific_name
    found = decided(calm(scientific_name=name))
    assert found == tuple(one for one in every if name in one)
    assert decided(calm(scientific_name="Nihil nullum")) == ()


def test_seed_is_sown_on_the_rim_alone_and_kinds_stand_as_far_apart_as_is_usual():
    """Low Impact Development Center: one-gallon perennials 18 in; our metric number is rounded."""
    assert sown(PlantSize.SEED) == {Zone.RIM}
    assert not any(sown(size) for size in set(PlantSize) - {PlantSize.SEED})
    assert magnitude(apart(PlantSize.KINDS), "in") == pytest.approx(18)
    assert magnitude(apart(PlantSize.KINDS, METRIC), "in") == pytest.approx(18)
    assert magnitude(apart(PlantSize.LARGE_POT, METRIC), "mm") == pytest.approx(450)


def test_winters_and_summers_a_plant_does_not_stand_are_told_by_whose_word(calm):
    here = Wishes(MW, ListRegion.MW)
    for zone, own, told in [
        (4, False, ""), (8, False, ""), (3, False, "zone 4 and warmer (from memory)"),
        (9, False, "zone 8 and colder (from memory)"),
        (3, True, "zone 4 and warmer (by your own file)"),
    ]:  # fmt: skip
        plant = calm(hardiness=(4, 8), own=own)
        said = unsuited(plant, here._replace(hardiness_zone=zone))
        assert said == (f"It grows in {told}, and you are in zone {zone}." if told else "")


def test_a_plant_of_ones_own_warmest_zone_is_no_makeshift(calm):
    plant = calm(hardiness=(4, 8), sun=(Sun.FULL,))
    here = Wishes(MW, ListRegion.MW)
    assert makeshift(plant, here._replace(hardiness_zone=8)) == ""
    assert "next colder zone" in makeshift(plant, here._replace(hardiness_zone=9))
    assert makeshift(plant._replace(own=True), here._replace(hardiness_zone=9)) == ""


def test_a_height_is_told_in_the_units_of_the_garden(calm):
    plant = calm(height_max_ft=4.5)
    assert (tall_words(plant, False), tall_words(plant, True)) == ("4.5 ft", "1.4 m")
