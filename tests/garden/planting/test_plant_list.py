"""The plant list and the list of states, and what is said of a faulty row."""

from hypothesis import given
from hypothesis import strategies as st

from interview.garden.planting.plant_list import (
    builtin_places,
    builtin_plants,
    read_places,
    read_plants,
)
from interview.garden.planting.record import Indicator, PlantKind, Sun
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.size.zones import Zone

HEAD = (
    "scientific_name,common_name,kind,regions,height_max_ft,spacing_in,sun,zones,"
    "bloom_start,bloom_end,wetland_MW,toxic,salt_tolerant\n"
)
ROW = "Carex testa,test sedge,sedge,MW;NE,2,12,full;part,floor;side,May,Jul,FACW,no,\n"


def faults_of(text):
    return [(one.line, one.column) for one in read_plants(text)[1]]


def test_the_packaged_list_reads_whole():
    assert len(builtin_plants()) == 318
    assert len(builtin_places()) == 51


def test_a_row_a_gardener_adds_is_read():
    plants, faults = read_plants(HEAD + ROW)
    assert faults == ()
    (plant,) = plants
    assert plant.kind is PlantKind.SEDGE
    assert plant.regions == (PlantRegion.MW, PlantRegion.NE)
    assert plant.sun == (Sun.FULL, Sun.PART)
    assert plant.zones == (Zone.FLOOR, Zone.SIDE)
    assert plant.bloom_months == (5, 6, 7)
    assert plant.indicator(ListRegion.MW) is Indicator.FACW
    assert plant.indicator(ListRegion.GP) is None
    assert plant.salt_tolerant is None
    assert plant.rests("zones") == ()
    assert plant.rating_standing(ListRegion.MW) == "its wetness rating is from memory"


def test_bloom_may_run_over_the_new_year():
    (plant,), _ = read_plants(HEAD + ROW.replace("May,Jul", "Nov,Feb"))
    assert plant.bloom_months == (11, 12, 1, 2)


def test_a_fault_names_its_line_and_column_and_the_row_is_left_out():
    text = HEAD + ROW + ROW.replace("testa", "altera").replace("floor;side", "floor;bank")
    plants, faults = read_plants(text)
    assert [plant.scientific_name for plant in plants] == ["Carex testa"]
    assert [(one.line, one.column) for one in faults] == [(3, "zones")]
    assert "floor, side or rim" in faults[0].sentence


def test_every_fault_of_a_row_is_found_at_once():
    bad = "Carex mala,,bush,MW,tall,500,full,floor,May,,WET,maybe,\n"
    assert {column for _, column in faults_of(HEAD + bad)} == {
        "common_name",
        "kind",
        "height_max_ft",
        "spacing_in",
        "bloom_end",
        "wetland_MW",
        "toxic",
    }


def test_a_name_given_twice_keeps_the_first():
    plants, faults = read_plants(HEAD + ROW + ROW.replace(",2,12", ",3,12"))
    assert [plant.height_max_ft for plant in plants] == [2]
    assert [(one.line, one.column) for one in faults] == [(3, "scientific_name")]


def test_a_misspelt_column_is_told_the_nearest_name():
    faults = read_plants(HEAD.replace("toxic", "toxc") + ROW)[1]
    assert faults[0].line == 1
    assert "did you mean toxic?" in faults[0].sentence


def test_a_quotation_mark_left_open_is_found_on_its_own_line():
    text = HEAD + ROW + ROW.replace("Carex testa", '"Carex open') + ROW.replace("testa", "nova")
    assert faults_of(text) == [(3, "")]


def test_blank_lines_and_a_byte_order_mark_do_no_harm():
    plants, faults = read_plants("\ufeff" + HEAD + "\r\n,,,\n" + ROW)
    assert len(plants) == 1
    assert faults == ()


def test_a_number_that_is_not_finite_is_refused():
    assert faults_of(HEAD + ROW.replace(",2,12", ",nan,inf")) == [
        (2, "height_max_ft"),
        (2, "spacing_in"),
    ]


@given(st.text(max_size=300))
def test_no_text_breaks_the_reader(text):
    read_plants(text)
    read_plants(HEAD + text)
    read_places(text)


def test_names_and_synonyms_find_a_plant():
    sweetflag = next(one for one in builtin_plants() if one.scientific_name == "Acorus americanus")
    assert sweetflag.answers_to("american  SWEETFLAG")
    assert sweetflag.answers_to("Acorus calamus var. americanus")
    assert not sweetflag.answers_to("sweet")


def test_a_region_where_a_flora_calls_it_introduced_is_known():
    sweetflag = next(one for one in builtin_plants() if one.scientific_name == "Acorus americanus")
    assert sweetflag.introduced_in(PlantRegion.NE).startswith("introduced per")
    assert sweetflag.introduced_in(PlantRegion.MW) == ""


def test_every_state_with_plants_has_a_wetland_list():
    places = {place.code: place for place in builtin_places()}
    assert places["CO"].list_regions[0] is ListRegion.GP
    assert set(places["MN"].list_regions) == {ListRegion.NCNE, ListRegion.MW, ListRegion.GP}
    without = {code for code, place in places.items() if not place.list_regions}
    assert without == {"AK", "HI"}
    assert without == {code for code, place in places.items() if place.plant_region is None}
    assert all(place.source == "from memory, not checked" for place in places.values())
