"""The yard card: one page to take outside, with blanks where an answer is open."""

from __future__ import annotations

import re
from pathlib import Path
from types import SimpleNamespace as Like

import pytest

from interview.__main__ import main
from interview.garden import store
from interview.garden.opening import plan_of as plan_from
from interview.quantities.units import quantity
from interview.sheet import card_soil
from interview.sheet.card import GAP, card_text
from interview.sheet.stakeout import peg_table, stakeout

SAMPLES = Path(__file__).parents[2] / "sample_answers"
NAMES = ("finished_us", "finished_metric", "usual_us", "halfway_soak_test", "not_here")


@pytest.fixture
def card_of_sample(clock):
    def make(name):
        path = SAMPLES / f"{name}.yaml"
        loaded, _ = store.load(path)
        return card_text(plan_from(loaded.answers, path.parent, clock.now))

    return make


@pytest.fixture
def whole(sized, located, level_spot):
    return {
        "garden_name": "Maple corner",
        "country": "us",
        "state": "vt",
        **located,
        **level_spot,
        **sized,
        "sun": "full",
        "children": "no",
        "permission": "own",
        "rules_checked": "not_needed",
        "spots.1.spot_name": "back lawn",
        "spots.1.downhill_direction": "s",
    }


def flat(text):
    return " ".join(text.split())


def fits_one_page(card):
    lines = card.splitlines()
    return len(lines) <= 60 and max(len(line) for line in lines) <= 76


@pytest.mark.parametrize("name", NAMES)
def test_the_card_of_every_sample_is_one_page(card_of_sample, name):
    assert fits_one_page(card_of_sample(name))


@pytest.mark.parametrize("shape", ["rounded", "kidney"])
@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_card_of_a_busy_yard_is_one_page(plan_of, whole, units, shape):
    near = "basement, slab, septic, well, property_line, pavement, retaining_wall, tree, water"
    busy = {
        **whole,
        "garden_name": "long " * 8,
        "units": units,
        "beds": "3",
        "lines_ticket": "x" * 60,
        "spots.1.spot_name": "behind the old shed by the heap",
        "spots.1.near_spot": near,
        **{f"spots.1.{one}_distance": "199 ft" for one in near.split(", ")},
        "spots.1.wall_height": "4 ft",
        "spots.1.drip_line": "12 ft",
        "spots.1.slope_drop": "8 in",
        "floor_shape": shape,
    }
    for wrong in ({}, {"lines_requested": "not_yet", "private_lines": "not_found"}):
        card = card_text(plan_of({**busy, **wrong}))
        assert fits_one_page(card)
        assert "pond gone" in card.splitlines()[-1]
        assert "ends at" in card and "Finished floor" in card


def test_where_every_kind_of_plant_is_too_much_for_the_page_the_zones_are_told_in_short(
    plan_of, whole, monkeypatch
):
    plan = plan_of({**whole, "spots.1.slope_drop": "6 in"})
    full = card_text(plan)
    kinds = sum(len(zone.picks) for zone in plan.planting.chosen.zones)
    assert kinds and "the sheet lists them" not in flat(full)
    monkeypatch.setattr("interview.sheet.card.ROWS", len(full.splitlines()) - 1)
    short = card_text(plan)
    assert flat(short).count("the sheet lists them") == 3
    assert len(short.splitlines()) < len(full.splitlines())
    assert "pond gone" in short.splitlines()[-1]


def test_the_card_of_an_empty_interview_is_blanks_and_no_error(plan_of):
    card = card_text(plan_of({}))
    assert fits_one_page(card)
    assert card.count(GAP) > 25
    assert "SHUT: DO NOT DIG. You have not yet asked" in card


def test_the_card_of_a_whole_plan_has_no_blank_but_those_to_write_what_was_found(plan_of, whole):
    card = card_text(plan_of({**whole, "dig_day": "2026-06-01"}))
    left = [line for line in card.splitlines() if GAP in line]
    assert all("found" in line or "pond gone" in line for line in left), left
    assert "OPEN today, Thu 28 May 2026" in card and "Mon 1 Jun 2026" in card


def test_the_card_shows_the_figures_of_the_plan(plan_of, whole):
    plan = plan_of({**whole, "spots.1.slope_drop": "6 in"})
    card = flat(card_text(plan))
    for words in (
        "811", "W-1174", "marks good until Fri 5 Jun 2026", "below the notch", "Notch 1 ft wide",
        f"{plan.earth.digging.loads} barrow-loads", "berm (low bank)", "mulch 3 in deep",
    ):  # fmt: skip
        assert words in card, words
    for zone in plan.planting.chosen.zones:
        assert zone.zone.value.upper() in card


def test_the_pegs_on_the_card_are_those_of_the_sheet(plan_of, whole):
    plan = plan_of({**whole, "spots.1.slope_drop": "6 in"})
    card = card_text(plan)
    table = peg_table(plan)
    for line in (*table.text(table.rows()), *stakeout(plan)):
        if line.startswith(("0 ", "from the middle", "ends at")):
            assert f" {line}" in card.splitlines(), line
    assert flat(table.reach()) in flat(card)


@pytest.mark.parametrize(
    ("shape", "words"),
    [
        ("rounded", "round ends"),
        ("oval", "an oval"),
        ("kidney", "a kidney"),
        ("rectangle", "square corners"),
    ],
)
def test_the_card_says_the_shape_and_how_to_lay_it(plan_of, whole, shape, words):
    card = flat(card_text(plan_of({**whole, "floor_shape": shape, "spots.1.slope_drop": "6 in"})))
    assert f", {words}, " in card
    assert ("With a hose: from a point" in card) == (shape == "kidney")
    assert ("diagonal" in card) == (shape == "rectangle")


def test_the_card_pegs_an_outline_of_ones_own_at_its_own_stations(plan_of, whole):
    outline = "0, 0, 0; 4 ft, 3 ft, 2 ft; 8 ft, 2 ft, 4 ft; 12 ft, 0, 0"
    plan = plan_of({**whole, "floor_shape": "own", "floor_outline": outline})
    card = card_text(plan)
    assert "along the string" in card and "left end" in card
    assert re.search(r"^ 8 ft +uphill +2 ft ", card, re.M)
    assert re.search(r"^ 8 ft +downhill +4 ft ", card, re.M)
    assert fits_one_page(card)


@pytest.mark.parametrize("units", ["us", "metric"])
def test_the_card_holds_to_the_units_chosen(plan_of, whole, units):
    card = card_text(plan_of({**whole, "units": units, "spots.1.slope_drop": "6 in"}))
    alien = r"\d (ft|in|ft²|ft³|yd³)\b" if units == "metric" else r"\d (m|mm|cm|m²|m³)\b"
    assert not re.search(alien, card), re.search(alien, card)


def test_a_slope_has_its_berm_on_the_card_and_level_lawn_has_none(subtests, plan_of, whole):
    for drop, bermed in [("0 in", False), ("1.1 in", False), ("1.3 in", True), ("6 in", True)]:
        with subtests.test(drop=drop, bermed=bermed):
            card = flat(card_text(plan_of({**whole, "spots.1.slope_drop": drop})))
            assert ("berm (low bank)" in card) == bermed
            assert ("no berm: the lawn is the rim" in card) != bermed
            assert ("Lip in the lawn" in card) != bermed


def test_while_a_stop_stands_the_card_gives_no_measures_to_dig_by(plan_of, whole):
    card = flat(card_text(plan_of({**whole, "spots.1.stands_after_rain": "often"})))
    assert "STOP: DO NOT DIG. Water stands here often" in card
    assert "Choose a higher spot." in card
    for words in ("PEG OUT", "DIG AND LEVEL", "barrow-loads", "ends at"):
        assert words not in card


def test_the_card_opens_with_shut_whatever_is_wrong_with_the_lines(subtests, given, plan_of, whole):
    for wrong in [
        {"lines_requested": "not_yet"},
        {"lines_answered": "no"},
        {"private_lines": "not_found"},
        {"mark_distance": "1 ft"},
        {"mark_distance": "don't know yet"},
    ]:
        with subtests.test(wrong=wrong):
            answers = given(whole)
            for key, text in wrong.items():
                answers = answers.with_text(key, text)
            assert "SHUT: DO NOT DIG." in card_text(plan_of(answers)).splitlines()[3]


def test_a_day_of_digging_after_the_marks_go_stale_is_told(plan_of, whole):
    card = flat(card_text(plan_of({**whole, "dig_day": "2026-08-01"})))
    assert "On Sat 1 Aug 2026, the day you mean to dig, digging will be shut" in card


def test_the_card_is_printed_by_its_option(capsys):
    assert main(["--card", str(SAMPLES / "finished_us.yaml")]) == 0
    assert capsys.readouterr().out.startswith("YARD CARD: Maple corner")


def test_the_option_wants_a_file(capsys):
    assert main(["--card"]) == 2
    assert "name the answers FILE" in capsys.readouterr().err


def test_a_day_that_is_past_is_no_day_to_dig(plan_of, whole):
    for day, said in (("2026-05-27", "Wed 27 May 2026 (past)"), ("2026-05-28", "Thu 28 May 2026")):
        line = next(
            one for one in card_text(plan_of(whole, dig_day=day)).splitlines() if "To be dug" in one
        )
        assert line == f" To be dug on: {said}"


def test_one_load_is_told_as_one():
    for loads, said in ((1, "compost 1 yd³, 1 load"), (2, "compost 1 yd³, 2 loads")):
        plan = Like(metric=False, earth=Like(loads_of=lambda _, loads=loads: loads))
        assert card_soil._item(plan, "compost", quantity(1, "yd**3")) == said
