"""The plan in words: fit for paper, honest about what it waits for and what it assumes."""

from __future__ import annotations

import re

import pytest

from interview.asking import route
from interview.asking.question import UNKNOWN_TEXT
from interview.garden import figures
from interview.garden.site import cautions
from interview.garden.size.rough_figures import SETTLED
from interview.garden.summary import assumed, so_far, waiting, waiting_text
from interview.quantities.units import magnitude
from interview.sheet.card import card_text
from interview.sheet.common import STOPPED
from interview.sheet.report import outside_text, plan_text

PEGGED = {"floor_length": "15 ft", "floor_width": "7 ft"}


@pytest.fixture
def whole(sized, located, level_spot):
    """A garden with all that the sheet needs."""
    return {
        "garden_name": "Maple corner",
        "country": "us",
        "state": "vt",
        **located,
        **level_spot,
        **sized,
        **PEGGED,
        "sun": "full",
        "spout_distance": "20 ft",
        "spout_fall": "6 in",
    }


def flat(text: str) -> str:
    return " ".join(text.split())


def test_an_empty_plan_says_what_to_find_out_and_how(plan_of):
    plan = plan_of({})
    sheet = flat(plan_text(plan))
    assert sheet.startswith("RAIN GARDEN PLAN: My rain garden")
    for question, address, why in waiting(plan):
        assert f"{question.label} ({address})" in sheet
        assert flat(why or question.find_out) in sheet


def test_a_spot_is_to_be_mended_only_once_all_about_it_was_asked(plan_of, given, whole):
    def spot(answers):
        return next(one.value for one in so_far(plan_of(answers)) if one.label == "Spot")

    def all_asked(answers):
        for step in route.steps(answers):
            if step.question.group == "spots" and step.address not in answers.texts:
                answers = answers.with_text(step.address, UNKNOWN_TEXT)
        return answers

    begun = given({"spots.1.spot_name": "back lawn"})
    assert spot(begun).startswith("back lawn: not finished, ")
    assert spot(all_asked(begun)).startswith("back lawn: fix, ")
    assert "not finished" not in spot(all_asked(given(whole)))


def test_a_whole_plan_waits_for_nothing(plan_of, whole):
    plan = plan_of(whole)
    assert waiting(plan) == []
    assert waiting_text(plan) == "The plan has every answer it needs."
    assert "STILL TO FIND OUT" not in plan_text(plan)
    assert all(line.value and not line.waits_for for line in so_far(plan))


@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_sheet_fits_the_paper(plan_of, whole, units):
    sheet = plan_text(plan_of({**whole, "units": units, "notes": "word " * 90 + "\n" + "x" * 300}))
    assert [line for line in sheet.splitlines() if len(line) > 76] == []
    assert sheet.endswith("\n") and not sheet.endswith("\n\n")


@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_sheet_uses_only_the_units_chosen_for_its_sizes(plan_of, whole, units):
    sheet = plan_text(plan_of({**whole, "units": units}))
    sizes = sheet.partition("DEPTH AND SIZE")[2].partition("STORMS")[0]
    alien = r"\d (ft²|gal|in)\b" if units == "metric" else r"\d (m²|mm|L)\b"
    assert not re.search(alien, sizes), re.search(alien, sizes)


def test_every_part_has_its_heading_in_order(plan_of, whole):
    sheet = plan_text(plan_of(whole))
    parts = (
        "DO NEXT", "IN SHORT", "WHAT WAS FOUND", "CAUTIONS", "PEGGING OUT", "DIGGING",
        "SHOPPING LIST", "CHEAPER WAYS", "PLANTS", "FIRST YEAR", "THE SOAK TEST",
        "WHAT DRAINS HERE",
        "DEPTH AND SIZE", "STORMS", "YEARS OF RAIN", "WHERE GUIDES DISAGREE",
        "ASSUMED UNTIL YOU ANSWER", "FORMULAS", "SOURCES", "WORDS",
    )  # fmt: skip
    places = [sheet.index(f"\n{part}\n{'-' * len(part)}\n") for part in parts]
    assert places == sorted(places)


@pytest.mark.parametrize("units", ["us", "metric"])
def test_every_caution_is_on_the_sheet_even_of_an_empty_plan(plan_of, units):
    plan = plan_of({"units": units})
    sheet = flat(plan_text(plan))
    assert flat(cautions.NOT_ENGINEERING) in sheet
    for caution in cautions.every("0.61 m" if units == "metric" else "2 ft"):
        assert flat(plan.answers.told(caution)) in sheet


def test_each_danger_of_the_work_has_its_caution_on_the_sheet(plan_of, whole):
    said = flat(" ".join(cautions.every("2 ft")))
    for danger in (
        "buried line", "nick a line", "small child", "deeper than your waist", "ladder",
        "septic", "may slide", "pollution", "lead", "heat", "lift", "spade", "codes",
    ):  # fmt: skip
        assert danger in said or danger in cautions.NOT_ENGINEERING, danger


def test_the_strip_beside_a_mark_is_the_same_all_over_the_sheet(subtests, plan_of, whole):
    for place, words in [
        ({"country": "us", "state": "mi", "units": "us"}, "4 ft"),
        ({"country": "us", "state": "mi", "units": "metric"}, "1.22 m"),
        ({"country": "us", "state": "vt", "units": "us"}, "2 ft"),
        ({"country": "uk", "units": "metric"}, "0.6 m"),
        ({"country": "canada", "units": "metric"}, "1 m"),
    ]:
        with subtests.test(place=place, words=words):
            texts = {
                key: text for key, text in whole.items() if key not in ("country", "state", "units")
            }
            sheet = flat(plan_text(plan_of({**place, **texts})))
            told = re.findall(r"[Ww]ithin ([\d.]+ \w+) of (?:a|any) mark", sheet)
            assert len(told) >= 3 and set(told) == {words}
            assert "two feet" not in sheet


def test_the_sheet_leads_with_what_to_do(plan_of, whole):
    fresh = flat(plan_text(plan_of({"country": "us", "state": "wi"})))
    assert "DO NEXT ------- 1. Have the buried lines marked, and do not dig before." in fresh
    assert "call 811" in fresh.partition("IN SHORT")[0]
    stopped = plan_text(plan_of({**whole, "spots.1.stands_after_rain": "often"}))
    assert "1. STOP. Do not dig or build here as it is." in stopped
    assert "STOP: do not dig here." in stopped.partition("\nDIGGING\n")[2]


def test_the_test_hole_is_asked_for_only_once_digging_is_open(plan_of, located, level_spot):
    soak = {"units": "us", "country": "us", "state": "wi", **level_spot}
    shut = flat(plan_text(plan_of(soak)))
    assert "Find out, once digging is open: Depth of the hole." in shut
    assert "Once the lines are located, dig inside the hose" in shut
    opened = flat(plan_text(plan_of({**soak, **located})))
    assert "Find out: Depth of the hole." in opened
    stopped = flat(plan_text(plan_of({**soak, **located, "spots.1.stands_after_rain": "often"})))
    assert "Depth of the hole" not in stopped.partition("IN SHORT")[0]


def test_no_peg_goes_in_while_digging_is_shut(plan_of, whole, clock):
    texts = {**whole, "children": "no", "permission": "own", "rules_checked": "not_needed"}
    assert flat(cautions.PEGS) not in flat(plan_text(plan_of(texts)))
    assert "No pegs" not in card_text(plan_of(texts))
    clock.forward(days=30)
    sheet = plan_text(plan_of(texts))
    first = flat(sheet.partition("IN SHORT")[0])
    assert "without pegs; peg and dig only once digging is open" in first
    assert flat(cautions.PEGS) in flat(sheet.partition("PEGGING OUT")[2].partition("DIGGING")[0])
    assert "No pegs while digging is shut" in card_text(plan_of(texts))


def test_digging_on_the_sheet_says_first_whether_it_is_shut(plan_of, whole, clock):
    def digging():
        return plan_text(plan_of(whole)).partition("\nDIGGING\n-------\n")[2]

    assert digging().startswith(
        "Digging is OPEN: the lines are located, and every owner has answered."
    )
    clock.forward(days=30)
    assert digging().startswith("Digging is SHUT today: The marks were good only until")


def test_a_slope_is_told_to_build_its_berm_and_level_lawn_that_it_is_the_rim(
    subtests, plan_of, whole
):
    for drop, bermed in [("0 in", False), ("1.1 in", False), ("1.3 in", True), ("6 in", True)]:
        with subtests.test(drop=drop, bermed=bermed):
            plan = plan_of({**whole, "spots.1.slope_drop": drop})
            dug = plan_text(plan).partition("\nDIGGING\n")[2].partition("\nFIRST YEAR\n")[0]
            assert len(re.findall(r"\[ \] +\d+\.", dug)) >= 14
            assert ("Build the berm, a low bank, on the downhill side" in flat(dug)) == bermed
            assert ("Build the berm in thin layers, tamp each one" in flat(dug)) == bermed
            assert ("No berm is needed: the lawn is the rim all round." in flat(dug)) != bermed
            assert (plan.earth.lie.crest_to_toe > 0) == bermed
            assert (magnitude(plan.earth.berm_bank, "ft**3") > 0) == bermed


def test_compost_is_worked_in_only_where_it_is_bought(plan_of, whole):
    assert "Work in the compost." in plan_text(plan_of(whole))
    assert "Work in the compost." not in plan_text(plan_of({**whole, "amend": "no"}))


def test_every_figure_on_the_sheet_has_its_formula_and_a_numbered_source(plan_of, whole):
    plan = plan_of(whole)
    sheet = plan_text(plan)
    formulas = flat(sheet.partition("\nFORMULAS\n")[2].partition("\nSOURCES\n")[0])
    listed = sheet.partition("\nSOURCES\n")[2].partition("\nWORDS\n")[0]
    for one in figures.found(plan):
        # The first size is no figure of the sheet once the soil is tested.
        if one.waits_for is None and one.value != SETTLED:
            assert flat(f"{one.figure.label}: {one.shown(False)}") in formulas
            assert flat(one.figure.formula) in formulas
            assert flat(one.figure.source.title) in flat(listed)
    used = {int(number) for number in re.findall(r"\[(\d+)\]", sheet)}
    assert used == set(range(1, max(used) + 1))
    for number in used:
        assert f"\n[{number}] " in listed


def test_no_trade_word_is_left_unexplained(plan_of, whole):
    sheet = plan_text(plan_of({**whole, "spots.1.slope_drop": "6 in"}))
    words = sheet.partition("\nWORDS\n")[2]
    for word in ("berm", "corrected rate", "drop rate", "runoff coefficient", "curve number",
                 "weighted area", "tamped", "notch", "freeboard"):  # fmt: skip
        assert f"\n{word}: " in words
    assert not re.search(r"reckon|\bverge", sheet)


def test_what_is_assumed_is_said_until_it_is_answered(plan_of, whole):
    plan = plan_of(whole)
    keys = {step.question.key for step, _ in assumed(plan.answers)}
    assert "mulch_depth" in keys and "side_slope" not in keys
    assert "Depth of mulch: 3 in" in flat(plan_text(plan))


def test_every_mark_of_the_short_plan_is_told_beside_it(plan_of, whole):
    sheet = outside_text(plan_of(whole))
    assert "in* apart" in sheet
    assert "What is marked * is from memory" in flat(sheet)
    assert not re.search(r"\[(?:c|o|m|\d+)\]", sheet)


def test_the_plan_so_far_names_the_question_that_each_line_waits_for(plan_of):
    lines = {line.label: line for line in so_far(plan_of({}))}
    assert lines["Slope"].address == "spots.1.slope_run"
    assert lines["Slope"].value == ""
    assert lines["Digging"].address == "lines_requested"
    assert lines["Area that drains here"].waits_for == "Kind of surface"


def test_the_sheet_says_that_digging_is_shut_until_it_is_open(plan_of, whole):
    shut = {key: text for key, text in whole.items() if not key.startswith(("lines_", "mark_"))}
    shut.pop("private_lines")
    assert "Nothing may be dug today" in flat(plan_text(plan_of(shut)))
    assert "open, lines located, owners answered" in plan_text(plan_of(whole))


def test_a_worse_garden_has_a_worse_verdict(plan_of, whole):
    good = plan_of({**whole, "children": "no", "permission": "own", "rules_checked": "not_needed"})
    stopped = plan_of({**whole, "spots.1.stands_after_rain": "often"})
    assert good.verdict.value in ("good", "fix")
    assert stopped.verdict.value in ("fix", "stop")
    assert stopped.findings[0].grade.value == stopped.verdict.value


def test_every_finding_that_is_not_good_says_what_to_do(plan_of, whole):
    bad = {
        "spots.1.near_spot": "basement, septic, well, property_line",
        "spots.1.basement_distance": "2 ft",
        "spots.1.septic_distance": "10 ft",
        "spots.1.well_distance": "20 ft",
        "spots.1.property_line_distance": "1 ft",
        "spots.1.slope_drop": "20 in",
        "spots.1.wet_season_depth": "12 in",
        "spots.1.unstable_ground": "slides",
        "spots.1.contamination": "fuel",
        "spots.1.soil_lab": "above",
        "spots.1.overflow_to": "neighbour",
        "children": "yes",
        "permission": "no",
        "rules_checked": "pending",
    }
    texts = {key: text for key, text in {**whole, **bad}.items() if key not in PEGGED}
    plan = plan_of(texts)
    assert plan.verdict.value == "stop"
    keys = [finding.key for finding in plan.findings]
    assert len(keys) == len(set(keys)), [key for key in keys if keys.count(key) > 1]
    for finding in plan.findings:
        assert finding.said.endswith(".")
        assert finding.grade.value == "good" or finding.change, finding.key
        assert finding.said.split()[0][0].isupper() or finding.said[0].isdigit()


def test_the_order_of_findings_is_worst_first(plan_of, whole):
    grades = [one.grade.value for one in plan_of({**whole, "permission": "no"}).findings]
    assert grades == sorted(grades, key=["stop", "fix", "good"].index)


def test_notes_close_the_sheet_as_they_were_written(plan_of, whole):
    sheet = plan_text(plan_of({**whole, "notes": "Call Ann.\nGate code: ask"}))
    assert "\nNOTES\n-----\n  Call Ann.\n  Gate code: ask\n" in sheet


def test_a_dig_day_after_the_marks_go_stale_is_not_passed_over(plan_of, whole):
    sheet = flat(plan_text(plan_of({**whole, "dig_day": "2026-08-01"})))
    assert "Sat 1 Aug 2026" in sheet
    assert "were good only until" in sheet


def test_what_is_taken_outside_gives_no_measures_to_dig_by_while_a_stop_stands(plan_of, whole):
    """Nor any to build and plant by; those who study it find them among the working."""
    stop = {**plan_of(whole).answers.texts, "spots.1.slope_drop": "5 ft"}
    told = outside_text(plan_of(stop))
    assert "[STOP]" in told and flat(STOPPED) in flat(told)
    for title in ("PEGGING OUT", "THE WORK", "SHOPPING LIST", "PLANTS", "FIRST YEAR"):
        assert f"\n{title} -" not in told and f"\n{title}\n" in plan_text(plan_of(stop))
    assert "level string" not in told and "[ ]" not in told
