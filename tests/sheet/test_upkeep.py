"""What the sheet says beyond the plants: on dig day, of the levels, each year, and whom to call."""

from __future__ import annotations

import re

import pytest

from interview.asking import lands
from interview.garden.afterwards import advice
from interview.garden.afterwards import levels_questions as asked
from interview.quantities.evidence import Provenance
from interview.sheet.card import card_text
from interview.sheet.report import outside_text, plan_text
from interview.sheet.worksheet import worksheet

EVERY = (
    *advice.WHILE_DIGGING,
    *advice.BEFORE_PLANTING,
    *advice.EVERY_YEAR,
    *advice.CALL,
)
READ = {
    "levels_read": "yes",
    "floor_cover": "finished",
    "floor_readings": "7 in; 7.5 in",
    "notch_reading": "2 in",
}


def flat(text):
    return " ".join(text.split())


def part(sheet, title):
    """Return one part of the sheet, from its heading to the next."""
    below = sheet.split(f"\n{title}\n{'-' * len(title)}\n")[1]
    return re.split(r"\n[A-Z ,]+\n-{4,}\n", below)[0]


@pytest.fixture
def sheet(plan_of, sized, level_spot):
    def make(**texts):
        sloping = {"spots.1.slope_run": "10 ft", "spots.1.slope_drop": "6 in", "freeboard": "2 in"}
        return plan_text(plan_of({**sized, **level_spot, **sloping, **texts}))

    return make


def test_every_matter_stands_in_its_part_and_every_sentence_on_the_sheet(sheet):
    text = sheet()
    for title, matters in (
        ("MET WHILE DIGGING", advice.WHILE_DIGGING),
        ("LEVELS BEFORE PLANTING", advice.BEFORE_PLANTING),
        ("EVERY YEAR", advice.EVERY_YEAR),
        ("WHEN TO CALL SOMEBODY", advice.CALL),
    ):
        told = flat(part(text, title))
        for one in matters:
            assert f"- {one.topic}: " in told
            said = [lands.tell(sentence, lands.US, False) for sentence, _ in one.says]
            assert all(flat(sentence) in told for sentence in said), one.topic


def test_what_is_taken_outside_says_how_the_rest_of_it_is_printed(plan_of, sized, level_spot):
    text = outside_text(plan_of({**sized, **level_spot}))
    assert "LEVELS BEFORE PLANTING" in text and "--working" in text
    # The list of sources is in the whole plan alone, so no mark leads to it.
    assert "[c]" not in text and "[o]" not in text


def test_the_matters_a_practitioner_asks_for_are_there():
    topics = " ".join(one.topic for one in EVERY).casefold()
    for word in (
        "roots", "water", "plants in", "mosquitoes", "silt", "overflow", "winter", "frozen",
        "salt", "soak test",
    ):  # fmt: skip
        assert word in topics, word


def test_each_sentence_has_a_source_or_says_that_it_has_none():
    for one in EVERY:
        for sentence, source in one.says:
            standing = (Provenance.PRACTICE, Provenance.OURS)
            assert bool(source.title) == (source.standing not in standing), sentence


def test_the_days_of_a_mosquito_are_longer_than_a_pond_may_stand(sheet):
    # Rutgers FS1175: hatched in 24 to 48 h, 7 to 12 days in the water; WSU: 4 days at the soonest.
    told = flat(part(sheet(), "EVERY YEAR"))
    assert "in a day or two" in told and "7 to 12 days" in told and "after 4 days" in told
    assert 48 < 4 * 24


def test_a_garden_without_a_size_tells_none_of_it(plan_of):
    text = plan_text(plan_of({}))
    assert "Tree roots" not in text and "Mosquitoes" not in text


def test_sheet_card_and_worksheet_have_the_same_blanks_by_the_same_names(
    plan_of, sized, level_spot
):
    plan = plan_of({**sized, **level_spot})
    before = flat(part(plan_text(plan), "LEVELS BEFORE PLANTING"))
    card, blank = flat(card_text(plan)), worksheet()
    for one in asked.READINGS:
        assert f"{one.label}: ____" in before
        assert re.search(rf"{one.label}:? ____", card), one.label
        assert f"\n{one.key}\n" in blank


def test_levels_that_were_read_stand_beside_the_planned_ones(sheet):
    told = part(sheet(**READ), "LEVELS BEFORE PLANTING")
    assert re.search(r"Floor found: +7 in; 7 1/2 in +planned: 8 in down", told)
    assert re.search(r"Notch found: +2 in +planned: 2 in down", told)
    assert re.search(r"Inlet found: +____", told)
    assert re.search(r"Pond as dug, from the floor to where it spills: +5 1/4 in", told)
    assert "Water held as dug" not in part(sheet(), "LEVELS BEFORE PLANTING")


def test_five_readings_of_a_floor_stay_apart_from_what_was_planned(sheet):
    five = {"floor_readings": "11 in; 10 1/2 in; 11 1/4 in; 11 in; 10 1/2 in"}
    told = flat(part(sheet(**READ | five), "LEVELS BEFORE PLANTING"))
    assert "11 in; 10 1/2 in; 11 1/4 in; 11 in; 10 1/2 in planned: 8 in down" in told


def test_a_twentieth_more_than_planned_is_not_told_as_all_of_it(sheet):
    # Floor and notch 1/4 in off in a pond of 6 in: a twentieth, by V = A d.
    told = flat(part(sheet(**READ | {"floor_readings": "8 1/4 in"}), "LEVELS BEFORE PLANTING"))
    share = int(re.search(r"a part of what was planned: (\d+) %", told)[1])
    assert 104 <= share <= 106


def test_a_floor_read_before_its_mulch_is_held_against_so_much_more(sheet):
    told = part(
        sheet(**READ | {"floor_cover": "compost"}, mulch_depth="3 in"), "LEVELS BEFORE PLANTING"
    )
    assert re.search(r"Floor found: .* planned: 11 in down", told)


def test_once_the_levels_are_read_it_is_to_be_planted(sheet, located):
    answered = {**located, "plant_region": "midwest", "wetland_list_region": "mw"}
    assert "Once the levels are right plant it" in flat(part(sheet(**READ, **answered), "DO NEXT"))
    assert "Once the levels are right" not in sheet(levels_read="no", **answered)


@pytest.mark.parametrize("beds", [1, 2, 4])
def test_the_card_has_blanks_for_the_points_of_every_bed(plan_of, sized, level_spot, beds):
    card = card_text(plan_of({**sized, **level_spot, "beds": str(beds)}))
    lines = card.splitlines()
    (first,) = (line for line in lines if line.startswith(" Floor found"))
    # The middle, both ends, uphill and downhill: five, as the question asks.
    assert first.split("Inlet")[0].count("____") >= 5
    others = [line for line in lines if re.match(r" bed [2-9] floor ", line)]
    assert [line[5] for line in others] == [str(one) for one in range(2, beds + 1)]
    for line in others:
        assert len(re.findall("_{5,}", line)) == 8 and len(line) <= 76
        assert all(f" {one} _____" in line for one in ("floor", "notch", "rim", "inlet"))
    assert len(lines) <= 60


def test_each_of_several_beds_has_blanks_and_readings_of_its_own(sheet):
    two = {"beds": "2", "floor_cover_2": "finished", "floor_readings_2": "8 in"}
    told = part(sheet(**READ, **two, notch_reading_2="2 in"), "LEVELS BEFORE PLANTING")
    first, second = told.split("\nBed 2:\n")
    assert re.search(r"Floor found: +7 in; 7 1/2 in", first) and "Bed 1:" in first
    assert re.search(r"Floor found: +8 in +planned: 8 in down", second)
    assert "Water held as dug, all beds:" in second
    assert "all beds" not in part(sheet(**READ), "LEVELS BEFORE PLANTING")
