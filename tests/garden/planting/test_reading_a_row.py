"""What each cell of a plant list becomes, and how far its numbers may go."""

import pytest

from interview.garden.planting import plant_list
from interview.garden.planting.plant_list import (
    OWN_LIMIT,
    UNSAID,
    builtin_plants,
    read_own_plants,
    read_places,
    read_plants,
)
from interview.garden.planting.record import Indicator, PlantKind, Sun
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.size.zones import Zone

CELLS = {
    "scientific_name": "Carex testa", "common_name": "test sedge", "kind": "sedge",
    "regions": "MW", "height_max_ft": "2", "spacing_in": "12", "sun": "full", "zones": "floor",
}  # fmt: skip


def text_of(*rows):
    names = list(dict.fromkeys(name for row in rows for name in row))
    lines = [",".join(row.get(name, "") for name in names) for row in rows]
    return "\n".join((",".join(names), *lines)) + "\n"


def read(own=False, **cells):
    return (read_own_plants if own else read_plants)(text_of(CELLS | cells))


def plant_of(own=False, **cells):
    (plant,), faults = read(own, **cells)
    assert faults == ()
    return plant


def fault_of(own=False, **cells):
    plants, faults = read(own, **cells)
    assert plants == () and len(faults) == 1, faults
    return faults[0].column, faults[0].sentence


def test_every_cell_of_a_row_is_kept():
    told = {
        "other_names": "sedge;reed", "native_checked": "MW", "native_caution": "MW: introduced",
        "height_min_ft": "1", "bloom_start": "april", "bloom_end": "June", "wetland_MW": "FACW",
        "indicator_status": "sure", "indicator_source": "EPA16;CO20", "rated_by_two": "MW",
        "rated_by_one": "GP", "rated_upl_or_unlisted": "NCNE", "rating_conflict": "MW: x",
        "hardiness_min": "3", "hardiness_max": "9", "toxic": "yes", "usda_toxicity": "slight",
        "spreads": "some", "thorny": "yes", "over_8ft": "yes", "needs_long_wet": "yes",
        "remarks": "sharp", "standing_water": "high", "moisture": "low;high", "drought": "low",
        "salt": "medium", "flower_color": "green", "trade": "routine", "wildlife": "bees;birds",
        "absent_in": "IA;OH", "regulated_in": "WI", "rests_on": "sun: USDA",
    }  # fmt: skip
    plant = plant_of(**told)
    two = (PlantRegion.MW,)
    assert plant[:10] == (
        "Carex testa", "test sedge", ("sedge", "reed"), PlantKind.SEDGE, two, two,
        "MW: introduced", 1, 2, 12,
    )  # fmt: skip
    assert plant.sun == (Sun.FULL,) and plant.zones == (Zone.FLOOR,)
    assert plant.bloom_months == (4, 5, 6)
    assert plant.ratings == ((ListRegion.MW, Indicator.FACW),)
    assert (plant.indicator_status, plant.indicator_source) == ("sure", ("EPA16", "CO20"))
    lists = (plant.rated_by_two, plant.rated_by_one, plant.rated_upl_or_unlisted)
    assert lists == ((ListRegion.MW,), (ListRegion.GP,), (ListRegion.NCNE,))
    assert plant.rating_conflict == "MW: x" and plant.hardiness == (3, 9)
    assert plant.toxic and plant.thorny and plant.over_8ft and plant.needs_long_wet
    assert (plant.usda_toxicity, plant.spreads, plant.remarks) == ("slight", "some", "sharp")
    assert (plant.standing_water, plant.moisture) == ("high", ("low", "high"))
    assert (plant.drought, plant.salt, plant.flower_color) == ("low", "medium", "green")
    assert (plant.trade, plant.wildlife) == ("routine", ("bees", "birds"))
    assert (plant.absent_in, plant.regulated_in) == (("IA", "OH"), ("WI",))
    assert plant.rests_on == "sun: USDA" and not plant.own
    mine = plant_of(True, **told)
    assert mine == plant._replace(
        own=True, rests_on="", zone_source="your own plant file",
        hardiness_source="your own plant file",
    )  # fmt: skip


def test_an_empty_cell_says_nothing():
    plant = plant_of()
    assert (plant.indicator_status, plant.indicator_source) == (UNSAID, ())
    assert (plant.zone_source, plant.hardiness_source, plant.salt) == ("", "", "")
    assert plant.height_min_ft == 2 and plant.bloom_months == () and plant.hardiness is None
    mine = plant_of(True, zone_source="a shop", hardiness_source="a label")
    assert (mine.indicator_status, mine.indicator_source) == (
        "your own plant file", ("your own plant file",),
    )  # fmt: skip
    assert (mine.zone_source, mine.hardiness_source, mine.salt) == ("a shop", "a label", "")
    # Of the packaged list these columns say nothing.
    other = plant_of(zone_source="a shop", hardiness_source="a label")
    assert (other.zone_source, other.hardiness_source) == ("", "")


def test_a_list_of_version_0_1_says_salt_with_yes_and_no():
    assert plant_of(salt_tolerant="yes").salt == "medium"
    assert plant_of(salt_tolerant="no").salt == "none"
    assert plant_of(salt_tolerant="no", salt="high").salt == "high"


@pytest.mark.parametrize(
    ("column", "low", "high"),
    [
        ("height_max_ft", 0.1, 60), ("spacing_in", 3, 240), ("hardiness_min", 1, 13),
        ("hardiness_max", 1, 13),
    ],
)  # fmt: skip
def test_a_number_may_go_as_far_as_is_said_and_no_farther(column, low, high):
    """Our own bounds: USDA zones 1 to 13, no plant above a small tree, none nearer than a hand."""
    others = {"hardiness_min": "1", "hardiness_max": "13"}
    for good in (low, high):
        plant = plant_of(**(others | {column: f"{good}"}))
        found = dict(zip(("hardiness_min", "hardiness_max"), plant.hardiness, strict=True))
        assert found.get(column, getattr(plant, column, None)) == good
    for bad in (low * 0.99, high * 1.01):
        said = f"Write a number from {low:g} to {high:g} for {column}."
        assert fault_of(**(others | {column: f"{bad}"})) == (column, said)


def test_the_least_height_is_bounded_and_no_more_than_the_greatest():
    assert plant_of(height_max_ft="60", height_min_ft="60").height_min_ft == 60
    assert fault_of(height_max_ft="60", height_min_ft="60.5") == (
        "height_min_ft", "Write a number from 0.1 to 60 for height_min_ft.",
    )  # fmt: skip
    assert fault_of(height_min_ft="2.1") == (
        "height_min_ft", "Make height_min_ft no more than the greatest height.",
    )  # fmt: skip


def test_hardiness_needs_both_ends_the_colder_first():
    assert plant_of(hardiness_min="7", hardiness_max="7").hardiness == (7, 7)
    assert plant_of(hardiness_min="4").hardiness is None
    assert plant_of(hardiness_max="4").hardiness is None
    assert fault_of(hardiness_min="8", hardiness_max="7") == (
        "hardiness_min", "Write the colder zone first: the smaller number.",
    )  # fmt: skip


def test_what_grows_over_8_ft_is_so_by_its_height_or_by_what_the_row_says():
    assert not plant_of(height_max_ft="8").over_8ft
    assert plant_of(height_max_ft="8.1").over_8ft
    assert plant_of(height_max_ft="5", over_8ft="yes").over_8ft


def test_a_strange_word_is_told_with_those_that_are_known():
    for column, cell, start in [
        ("moisture", "wet", "Write low, medium or high for moisture, not “wet”."),
        ("wildlife", "bees;cats", "Write bees, butterflies, "),
        ("kind", "bush", "Write forb, shrub, grass, sedge, rush or fern for kind, not “bush”."),
        ("wetland_MW", "wet", "Write OBL, FACW, FAC, FACU or UPL for wetland_MW, not “wet”."),
        ("bloom_end", "Augst", "Write a month such as May for bloom_start"),
    ]:
        found, said = fault_of(**{column: cell})
        assert said.startswith(start)
        assert found == ("bloom_start" if column == "bloom_end" else column)


def test_a_place_has_one_rating_the_first():
    assert plant_of(wetland_MW="FAC;UPL").ratings == ((ListRegion.MW, Indicator.FAC),)


def test_a_row_that_is_cut_short_lacks_its_name():
    short = text_of({name: CELLS[name] for name in sorted(CELLS, reverse=True)})
    cut = short.replace(",".join(sorted(CELLS, reverse=True)), "").strip()
    assert cut
    head = [*(name for name in CELLS if name != "scientific_name"), "scientific_name"]
    row = ",".join(CELLS[name] for name in head[:-1])
    plants, faults = read_plants(f"{','.join(head)}\n{row}\n")
    assert plants == ()
    assert [(one.line, one.column) for one in faults] == [(2, "scientific_name")]


def test_a_file_of_the_most_characters_is_read_and_one_more_is_too_many():
    rows = text_of(CELLS)
    full = rows + "#" * (OWN_LIMIT - len(rows))
    assert len(read_own_plants(full)[0]) == 1
    assert read_own_plants(full + "#") == (
        (), ((1, "", "This is too long for a plant list; keep the plants you need."),),
    )  # fmt: skip


def test_a_damaged_packaged_list_is_refused_by_its_first_fault(monkeypatch):
    damaged = text_of(CELLS, CELLS | {"sun": "moon"}, CELLS | {"zones": "bank"})
    monkeypatch.setattr(plant_list, "_packaged", lambda name: damaged)
    with pytest.raises(ValueError, match=r"^Line 3 of the packaged list is damaged\. Write full"):
        builtin_plants.__wrapped__()
    monkeypatch.setattr(plant_list, "_packaged", lambda name: text_of(CELLS))
    assert [one.common_name for one in builtin_plants.__wrapped__()] == ["test sedge"]


def test_a_state_is_kept_with_what_its_lists_rest_on():
    head = "code,name,plant_region,list_regions,source,lists_source,lists_standing,zone_common"
    (place,), faults = read_places(f"{head}\nxx,Nowhere,MW,MW;GP,,a list,published,5b\n")
    assert faults == ()
    assert (place.code, place.name, place.source) == ("XX", "Nowhere", UNSAID)
    assert place.plant_region is PlantRegion.MW
    assert place.list_regions == (ListRegion.MW, ListRegion.GP)
    assert str(place.lists_source) == "a list" and place.zone_common == "5b"
