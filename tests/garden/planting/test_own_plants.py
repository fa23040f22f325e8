"""The gardener's own plant file: what is read, how it joins the packaged list, and its faults."""

import csv
import io
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.garden.planting.choose import choose
from interview.garden.planting.plant_list import (
    OWN_LIMIT,
    builtin_plants,
    read_own_plants,
    read_plants,
    with_own,
)
from interview.garden.planting.record import Indicator, Sun
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.wetness import ZoneSite, fits_after
from interview.garden.planting.wishes import Wishes
from interview.garden.planting.words import cautions, doubts, hazards
from interview.garden.size.zones import Zone
from interview.quantities.units import magnitude, quantity

HEAD = "scientific_name,common_name,kind,sun,zones,height_max_m,spacing_cm"
ROW = "Hortus novus,new herb,forb,full;part,floor;side,0.9,45"
SAMPLE = Path(__file__).parents[3] / "sample_answers" / "own_plants.csv"


def read(*lines, head=HEAD):
    return read_own_plants("\n".join((head, *lines)) + "\n")


def only(*lines, head=HEAD):
    (plant,), faults = read(*lines, head=head)
    assert faults == ()
    return plant


def faults(*lines, head=HEAD):
    return [(one.line, one.column) for one in read(*lines, head=head)[1]]


def garden():
    hours = {Zone.FLOOR: 20.0, Zone.SIDE: 10.0, Zone.RIM: 0.0}
    return {
        zone: ZoneSite(quantity(90, "ft**2"), quantity(hours[zone], "h"), quantity(30, "h"), "once")
        for zone in Zone
    }


def test_the_example_file_reads_whole():
    plants, wrong = read_own_plants(SAMPLE.read_text(encoding="utf-8"))
    assert wrong == ()
    assert len(plants) >= 10
    assert all(plant.own for plant in plants)


def test_a_row_in_metres_and_centimetres():
    plant = only(ROW)
    assert magnitude(plant.height, "m") == pytest.approx(0.9)
    assert magnitude(plant.spacing, "cm") == pytest.approx(45)
    assert plant.own and plant.regions == () and plant.ratings == ()
    assert plant.zone_source == plant.hardiness_source == "your own plant file"


def test_a_row_in_feet_and_inches():
    head = HEAD.replace("_m,", "_ft,").replace("_cm", "_in")
    plant = only(ROW.replace("0.9,45", "3,18"), head=head)
    assert (plant.height_max_ft, plant.spacing_in) == (3, 18)


def test_a_size_in_neither_unit_is_a_fault():
    assert faults(ROW.replace("0.9,45", ",")) == [(2, "height_max_ft"), (2, "spacing_in")]
    assert faults("Hortus novus,new herb,forb,full,floor", head=HEAD.rpartition(",h")[0]) == [
        (2, "height_max_ft"),
        (2, "spacing_in"),
    ]


def test_a_fault_is_told_by_line_and_column_and_its_row_left_out(subtests):
    for bad, column in [
        ("0.9,45|tall,45", "height_max_m"),
        ("0.9,45|90,45", "height_max_m"),
        ("0.9,45|0.9,4500", "spacing_cm"),
        ("forb|flower", "kind"),
        ("full;part|sunny", "sun"),
        ("floor;side|bottom", "zones"),
        ("new herb|", "common_name"),
        ("Hortus novus|", "scientific_name"),
    ]:
        with subtests.test(bad=bad, column=column):
            old, new = bad.split("|")
            good = ROW.replace("novus", "bonus")
            plants, wrong = read(good, ROW.replace(old, new))
            assert [plant.scientific_name for plant in plants] == ["Hortus bonus"]
            assert [(one.line, one.column) for one in wrong] == [(3, column)]
            assert wrong[0].sentence.endswith(".")


def test_comments_and_blank_lines_keep_the_numbers_of_the_lines():
    plants, wrong = read_own_plants(f'# mine, "all"\n\n{HEAD}\n  # more\n{ROW}\n{ROW[1:]}x\n')
    assert len(plants) == 1
    assert [(one.line, one.column) for one in wrong] == [(6, "spacing_cm")]


def test_a_missing_column_is_one_fault_of_the_first_line():
    assert faults(ROW, ROW, head=HEAD.replace("zones", "zone")) == [(1, "zones"), (1, "zone")]


@pytest.mark.parametrize("mark", [";", "|"])
def test_cells_parted_by_other_marks_are_told_to_use_commas(mark):
    ((line, column),) = faults(ROW, head=HEAD.replace(",", mark))
    assert (line, column) == (1, "")
    assert (
        "save the list as CSV with commas" in read(ROW, head=HEAD.replace(",", mark))[1][0].sentence
    )


def test_an_empty_file_says_what_it_needs(subtests):
    for text in ["", "\n\n", "# only a comment\n", "\ufeff"]:
        with subtests.test(text=text):
            plants, wrong = read_own_plants(text)
            assert plants == ()
            assert [one.sentence for one in wrong] == [
                "The list is empty; its first line must name the columns."
            ]


def test_a_file_too_long_for_a_list_is_refused():
    plants, wrong = read_own_plants("x" * (OWN_LIMIT + 1))
    assert plants == () and len(wrong) == 1


def test_the_packaged_columns_are_known_in_an_own_file_but_not_the_other_way_round():
    assert faults(ROW + ",MW,4,8", head=HEAD + ",regions,hardiness_min,hardiness_max") == []
    text = f"{HEAD},regions,height_max_ft,spacing_in\n{ROW},MW,3,18\n"
    assert "height_max_m" in {one.column for one in read_plants(text)[1]}


def test_an_own_row_replaces_the_packaged_row_of_that_species_or_of_its_older_name():
    own, _ = read(ROW.replace("Hortus novus", "asclepias INCARNATA"))
    joined = with_own(builtin_plants(), own)
    assert len(joined) == len(builtin_plants())
    assert [one.own for one in joined if one.answers_to("Asclepias incarnata")] == [True]
    older, _ = read(ROW.replace("Hortus novus", "Photinia pyrifolia"))
    assert not any(
        one.answers_to("Aronia arbutifolia") for one in with_own(builtin_plants(), older)
    )


def test_an_own_plant_without_a_rating_is_trusted_in_its_zones():
    plant = only(ROW)
    for region in (None, ListRegion.MW):
        assert fits_after(plant, Zone.FLOOR, 20, region, 70).ok
        assert not fits_after(plant, Zone.RIM, 0, region).ok
        assert not fits_after(plant, Zone.FLOOR, 80, region).ok


def test_one_rating_for_any_place_gives_way_to_that_of_the_region():
    plant = only(ROW + ",UPL,FACW", head=HEAD + ",wetland_any,wetland_MW")
    assert plant.any_rating is Indicator.UPL
    assert fits_after(plant, Zone.FLOOR, 20, ListRegion.MW).ok
    assert not fits_after(plant, Zone.FLOOR, 20, ListRegion.GP).ok
    assert not fits_after(plant, Zone.FLOOR, 20, None).ok


def test_own_plants_are_chosen_where_the_packaged_list_has_none():
    plants, _ = read_own_plants(SAMPLE.read_text(encoding="utf-8"))
    plan = choose(with_own(builtin_plants(), plants), Wishes(None, None), garden())
    picks = [pick.plant for zone in plan.zones for pick in zone.picks]
    assert picks and all(plant.own for plant in picks)
    assert all(any(p.plant.grasslike for p in zone.picks) for zone in plan.zones)
    assert "every kind named is of your own file" in plan.notes[0]


def test_own_plants_without_a_region_are_at_home_and_others_keep_to_theirs():
    here = only(ROW)
    away = here._replace(regions=(PlantRegion.CA,))
    assert here.at_home(PlantRegion.MW) and here.at_home(None)
    assert away.at_home(PlantRegion.CA) and not away.at_home(PlantRegion.MW)


WORDS = st.text("abcdefghij klm-'é", min_size=1, max_size=20).map(str.strip).filter(bool)


@given(
    WORDS,
    WORDS,
    st.lists(st.sampled_from(Sun), min_size=1, unique=True),
    st.lists(st.sampled_from(Zone), min_size=1, unique=True),
    st.floats(0.04, 18),
    st.floats(8, 600),
)
def test_a_row_written_by_a_spreadsheet_reads_back(name, common, sun, zones, tall, apart):
    out = io.StringIO()
    rows = csv.writer(out, quoting=csv.QUOTE_ALL)
    rows.writerow(HEAD.split(","))
    suns, places = (";".join(one.value for one in each) for each in (sun, zones))
    rows.writerow([name, common, "sedge", suns, places, f"{tall:.6f}", f"{apart:.6f}"])
    (plant,), wrong = read_own_plants(out.getvalue())
    assert wrong == ()
    assert plant.answers_to(name) and plant.answers_to(common)
    assert set(plant.sun) == set(sun) and set(plant.zones) == set(zones)
    assert magnitude(plant.height, "m") == pytest.approx(tall, abs=1e-5)
    assert magnitude(plant.spacing, "cm") == pytest.approx(apart, abs=1e-5)


@given(st.text(max_size=400))
def test_no_text_breaks_the_reader_and_every_fault_has_a_line_of_the_file(text):
    for whole in (text, f"{HEAD}\n{text}", f"# note\n{HEAD}\n{ROW}\n{text}"):
        plants, wrong = read_own_plants(whole)
        lines = len(whole.splitlines()) + 1
        assert all(1 <= one.line <= lines and one.sentence for one in wrong)
        assert all(plant.own and plant.zones and plant.sun for plant in plants)


@given(st.data())
def test_spoiling_one_cell_never_spoils_another_row(data):
    rows = [ROW.replace("novus", name) for name in ("primus", "secundus", "tertius")]
    which = data.draw(st.integers(0, 2))
    cells = rows[which].split(",")
    cells[data.draw(st.integers(0, len(cells) - 1))] = data.draw(st.text("abc123;!", max_size=8))
    rows[which] = ",".join(cells)
    plants, wrong = read(*rows)
    names = {plant.scientific_name for plant in plants}
    others = {f"Hortus {n}" for n in ("primus", "secundus", "tertius")}
    assert len(names & others) >= 2
    assert {one.line for one in wrong} <= {which + 2}


# However large


def test_a_first_line_of_very_many_columns_is_refused_at_once():
    assert read(ROW, head=HEAD + ",more" * 100_000)[0] == ()
    (fault,) = read(ROW, head=HEAD + ",more" * 100_000)[1]
    assert fault.sentence == "The first line names 100,007 columns; 200 are read."


def test_a_cell_far_too_long_costs_its_line_alone():
    plants, wrong = read(ROW, ROW.replace("novus", "n" * 1001), ROW.replace("novus", "alter"))
    assert [plant.scientific_name for plant in plants] == ["Hortus novus", "Hortus alter"]
    assert [(one.line, one.sentence) for one in wrong] == [
        (3, "A cell of this line has more than 1000 characters; shorten it.")
    ]


def test_a_cell_of_many_strange_words_is_one_fault_and_told_in_short():
    strange = ";".join(["full", *(f"{'w' * 50}{place}" for place in range(18))])
    (fault,) = read(ROW.replace("full;part", strange))[1]
    assert fault.sentence == f"Write full, part or shade for sun, not “{'w' * 40}”."


def test_a_list_of_more_lines_than_are_read_is_read_to_there_and_says_so():
    lines = [ROW.replace("novus", f"n{place}").replace(",0.9", ",1") for place in range(10_100)]
    plants, wrong = read(*lines)
    assert len(plants) == 10_000
    assert [(one.line, one.column) for one in wrong] == [(10_002, "")]
    assert wrong[0].sentence.startswith("The list has more than 10,000 lines")


# Remarks


def test_a_remark_of_ones_own_is_told_as_such_and_is_no_caution(subtests):
    for marks in ["", "toxic", "thorny", "spreads"]:
        with subtests.test(marks=marks):
            head = f"{HEAD},remarks" + f",{marks}" * bool(marks)
            plant = only(f"{ROW},smells of honey" + ",yes" * bool(marks), head=head)
            remark = "Your plant file remarks: smells of honey."
            assert remark not in hazards(plant)
            assert len(hazards(plant)) == bool(marks)
            assert doubts(plant, None, None).count(remark) == 1
            assert cautions(plant, None, None).count(remark) == 1
