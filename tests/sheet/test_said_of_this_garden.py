"""What the sheet says of building fits what was answered, and is said of nothing that is not."""

from __future__ import annotations

import re
from types import SimpleNamespace

import pytest

from interview.asking.question import Unanswered
from interview.garden.site import cautions
from interview.garden.stages import question_at
from interview.sheet import soil as soil_sheet
from interview.sheet.next_steps import OWN_LINES, SHUT_TODAY, steps
from interview.sheet.report import outside_text, plan_text


@pytest.fixture
def sheets(plan_of, located, sized, level_spot):
    """Return a maker of the two sheets of a garden on a slope, on one line each."""

    def make(**more):
        texts = {**located, **level_spot, "spots.1.slope_drop": "8 in", **sized}
        texts = {**texts, "sun": "full", "plant_region": "outside", **more}
        plan = plan_of({**texts, "spots.1.downhill_direction": "s"})
        return " ".join(outside_text(plan).split()), " ".join(plan_text(plan).split())

    return make


def test_one_bag_or_piece_is_not_told_as_several(sheets):
    short, whole = sheets(
        compost_depth="0.5 in", amend="yes", floor_length="3 ft", floor_width="3 ft",
        spout_distance="5 ft", spout_fall="12 in", water_by="pipe", prices="compost 6 per bag",
    )  # fmt: skip
    for told in (short, whole):
        assert "or 1 bag of 1 ft³" in told and "pipe: 1 piece of" in told
        assert not re.search(r"\b1 (bags|pieces)\b", told)
    assert "for one bag, 1 bag " in whole


def test_no_service_is_named_for_lines_that_none_marks(plan_of, located, sized, level_spot):
    def first(**more):
        return next(steps(plan_of({**located, **level_spot, **sized, "state": "il", **more})))

    own = first(private_lines="not_found")
    assert own.startswith(SHUT_TODAY) and "In Illinois call" not in own
    assert own.endswith(OWN_LINES) and "private locator" in own
    silent = first(private_lines="not_found", lines_answered="no")
    assert silent.startswith(SHUT_TODAY) and "In Illinois call" in silent
    near = first(mark_distance="1 ft")
    assert near.startswith(SHUT_TODAY) and "call" not in near and not near.endswith(" ")


@pytest.mark.parametrize(
    "grows, said",
    [
        ("sod", "Lay the lifted sod on it the same day."),
        ("grass", "Sow grass on its top and its outside the same day."),
        ("plants", "Plant its top and its outside as the rim."),
    ],
)
def test_the_berm_is_covered_with_what_is_to_grow_there(grows, said, sheets):
    short, _ = sheets(berm_outside=grows)
    assert said in short
    assert ("stack it for the outside of the berm" in short) == (grows == "sod")


def test_sand_is_not_laid_where_the_berm_will_be(sheets):
    for soil, laid in (("loam", True), ("sand", False)):
        short, _ = sheets(soil_dug=soil)
        assert ("lay the soil where the berm will be" in short) == laid
        assert ("Do not build the berm of the sand" in short) != laid


def test_the_list_for_the_day_names_only_what_is_there(sheets):
    short, _ = sheets()
    assert "Connect the downspout last, from the ground: no ladder." in short
    assert "Plant, water, and mulch;" in short
    assert "test hole or cover it" not in short
    patio, _ = sheets(**{"surfaces.1.surface_kind": "paved", "surfaces.1.share_percent": "all"})
    assert "Let the water in last." in patio and "downspout last." not in patio
    assert "the water let in last" in patio and "the downspout last" not in patio
    assert "with the downspout left" in short and "with the downspout left" not in patio


def test_what_a_hole_waits_for_ends_with_one_point(given):
    question = question_at("holes.1.readings")[0]
    for why, said in (("", "."), ("The hole was empty.", "waits for: The hole was empty.")):
        words = soil_sheet._waits(
            Unanswered(question, "holes.1.readings", why=why), SimpleNamespace(answers=given())
        )
        assert words.endswith(said) and not words.endswith("..")


def test_the_list_for_the_day_follows_what_is_built():
    usual = cautions.DayCaution("2 ft", compost=True, piped=False, level_within="half an inch")
    assert "Fill the test hole or cover it." in cautions.dig_day(usual)
    bare = cautions.dig_day(usual._replace(mulch=False, hole=False))
    assert "Plant and water." in bare
    assert not any("mulch" in step or "test hole" in step for step in bare)


def test_the_list_for_the_day_goes_as_the_work_does():
    # Common practice, no source: the berm before the floor is loosened, since who builds it treads
    # there; the way in before the stone at its end; the levels before the plants.
    for way, channel, piped in (("channel", True, False), ("trench", False, True)):
        day = cautions.DayCaution("2 ft", True, piped, "half an inch", channel=channel)
        steps = cautions.dig_day(day)
        wanted = (
            "Roughen", "floor level", "lay the sod", f"Dig the {way}", "Loosen", "compost",
            "notch", "stone where", "Read the levels", "Plant", "Connect",
        )  # fmt: skip
        found = [next(i for i, step in enumerate(steps) if word in step) for word in wanted]
        assert found == sorted(found)
    over_lawn = cautions.dig_day(cautions.DayCaution("2 ft", True, False, "half an inch"))
    assert not any("Dig the" in step for step in over_lawn)


def test_beds_side_by_side_are_told_how_the_water_is_shared_out(subtests, sheets):
    for texts, shared in (
        ({}, False),
        ({"beds": "2", "beds_how": "side_by_side"}, True),
        ({"beds": "2", "beds_how": "in_a_row"}, False),
    ):
        for text in sheets(**texts):
            with subtests.test(**texts):
                assert ("Share the water out evenly" in text) == shared
    for text in sheets(beds="2", beds_how="side_by_side", country="uk", units="metric"):
        assert "or lead a downpipe to each bed" in text


def test_a_channel_is_dug_only_where_the_water_comes_in_one(sheets):
    for way, dug in (("channel", True), ("lawn", False)):
        short, _ = sheets(water_by=way, spout_distance="12 ft")
        assert ("Dig the channel, falling all the way" in short) == dug


def test_no_room_is_left_for_mulch_or_compost_that_is_not_laid(sheets):
    both, _ = sheets(mulch_depth="3 in", amend="yes", compost_depth="2 in")
    assert "room for 3 in of mulch and 2 in of compost)" in both and "holds the mulch" in both
    bare, _ = sheets(mulch_depth="0 in", amend="yes", compost_depth="2 in")
    assert "room for 2 in of compost)" in bare and "holds the mulch" not in bare
    none, _ = sheets(mulch_depth="0 in", amend="no")
    assert "leaves room" not in none and "of mulch" not in none


def test_no_mulch_is_waited_for_that_is_not_laid(sheets):
    short, _ = sheets()
    assert "the mulch down the same day" in short and "before the mulch is down" in short
    bare, _ = sheets(mulch_depth="0 in")
    assert "the mulch down" not in bare and "mulch is down" not in bare


def test_beds_in_a_row_want_ground_that_falls(sheets):
    row = {"beds": "2", "beds_how": "in_a_row"}
    said = "On level lawn no water runs on by itself from one bed to the next."
    level, whole = sheets(**row, **{"spots.1.slope_drop": "0 in"})
    assert said in level and "Each lip pours onto stone" in whole
    falls, whole = sheets(**row)
    assert said not in falls and "Each notch pours onto stone" in whole
    side, _ = sheets(beds="2", **{"spots.1.slope_drop": "0 in"})
    assert said not in side


def test_a_note_that_there_is_none_is_no_note(sheets):
    assert "NOTES ---" not in sheets(notes="none")[0]
    told = sheets(notes="none of the neighbors mind")[0]
    assert re.search("NOTES -+ none of the neighbors mind", told)


def test_what_no_answer_is_missing_for_says_so_in_a_sentence(sheets):
    """A pond no deeper than the rain on it never holds the roof's water too."""
    short, _ = sheets(rain_depth="4 in", deepest_pond="3 in")
    assert "Size: The pond must be deeper than the rain it is to hold, so" in short
    assert "waits for: The pond" not in short


def test_a_pipe_that_lacks_fall_is_neither_drawn_nor_connected(sheets):
    pipe = {"water_by": "pipe", "spout_distance": "20 ft"}
    fits, whole = sheets(**pipe, spout_fall="24 in")
    assert "Connect the pipe last, from the ground" in fits and "by a buried pipe" in whole
    lacks, whole = sheets(**pipe, spout_fall="2 in")
    assert "No pipe here" in lacks and "Connect the downspout last," in lacks
    assert "by a buried pipe" not in whole


def test_a_day_on_which_digging_is_shut_is_not_told_as_one_to_dig(sheets):
    open_then, _ = sheets(dig_day="2026-05-30")
    assert "Sat 30 May 2026: the marks must still be good on that day." in open_then
    shut, _ = sheets(dig_day="2026-11-14")
    steps = shut.split("IN SHORT")[0]
    assert "must still be good" not in steps and "digging will be shut" in steps


def test_the_outside_of_a_berm_is_told_only_where_there_is_a_berm(sheets, plan_of):
    for drop, berm in (("8 in", True), ("0 in", False)):
        _, whole = sheets(**{"spots.1.slope_drop": drop})
        assert "The plan counts " in whole
        assert ("The outside of the berm is not counted" in whole) == berm
        assert ("No berm is needed" in whole) != berm


def test_a_floor_of_ones_own_is_none_of_the_three_sizes(sheets):
    _, whole = sheets()
    assert "usual (yours)" in whole and "none of these three" not in whole
    _, own = sheets(floor_length="20 ft", floor_width="9 ft")
    assert "(yours)" not in own and "your garden is none of these three" in own


def test_a_floor_longer_than_the_whole_garden_is_said_to_be_measured_along_its_bend(sheets):
    bent = {"floor_shape": "kidney", "floor_length": "40 ft", "floor_width": "8 ft"}
    short, _ = sheets(**bent, kidney_bend="12 ft")
    assert "floor of 40 ft by 8 ft, measured along its bend; it does" in short
    short, _ = sheets(**bent)
    assert "floor of 40 ft by 8 ft; it does" in short
