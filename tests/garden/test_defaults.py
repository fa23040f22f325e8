"""Defaults that follow earlier answers, and what several stages make of one answer."""

from __future__ import annotations

import pytest

from interview.garden.planting import questions as planting
from interview.garden.site import spot_questions as ground
from interview.garden.size import questions as bed
from interview.garden.stages import QUESTIONS
from interview.garden.survey import questions as survey
from interview.quantities.units import magnitude


def default(answers, key):
    return QUESTIONS[key].default(answers)


def test_defaults_are_round_in_the_units_shown(subtests, given):
    for key, us, metric in [
        ("rain_depth", "1 in", "25 mm"),
        ("deepest_pond", "10 in", "250 mm"),
        ("mulch_depth", "3 in", "75 mm"),
        ("compost_depth", "2 in", "50 mm"),
        ("peak_intensity", "7 in/h", "180 mm/h"),
        ("berm_top", "12 in", "300 mm"),
        ("freeboard", "4 in", "100 mm"),
        ("barrow", "3 cu ft", "85 L"),
    ]:
        with subtests.test(key=key, us=us, metric=metric):
            assert default(given({"units": "us"}), key) == us
            assert default(given({"units": "metric"}), key) == metric


def test_units_are_us_until_they_are_known(given):
    assert given().units == "us"
    assert given({"units": "metric"}).metric


def test_a_berm_on_a_slope_stands_higher(subtests, given):
    for drop, freeboard in [("0 in", "4 in"), ("1 in", "4 in"), ("2 in", "6 in")]:
        with subtests.test(drop=drop, freeboard=freeboard):
            slope = {"spots.1.slope_run": "10 ft", "spots.1.slope_drop": drop}
            assert default(given({"units": "us", **slope}), "freeboard") == freeboard


def test_the_sun_at_the_bed_follows_the_hours_at_the_spot(subtests, given):
    for hours, sun in [("6", "full"), ("5.9", "part"), ("3", "part"), ("2", "shade")]:
        with subtests.test(hours=hours, sun=sun):
            assert default(given({"spots.1.sun_hours": hours}), "sun") == sun


def test_the_sun_follows_the_spot_that_was_chosen(given):
    two = {"spots.1.sun_hours": "8", "spots.2.sun_hours": "1"}
    assert default(given(two), "sun") == "full"
    assert default(given({**two, "chosen_spot": "2"}), "sun") == "shade"


def test_the_plant_region_follows_the_state(subtests, given):
    for texts, region in [
        ({"country": "us", "state": "vt"}, "ne"),
        ({"country": "us", "state": "ak"}, "outside"),
        ({"country": "uk"}, "outside"),
        ({"country": "us"}, None),
        ({}, None),
    ]:
        with subtests.test(texts=texts, region=region):
            assert default(given(texts), "plant_region") == region


def test_poisonous_plants_are_kept_out_where_children_may_come(given):
    assert "toxic" in default(given(), "keep_out")
    assert "toxic" in default(given({"children": "yes"}), "keep_out")
    assert "toxic" not in default(given({"children": "no"}), "keep_out")


def test_the_wait_is_never_shorter_than_three_days_by_default(subtests, given):
    for state, days in [("va", "3"), ("fl", "3"), ("mn", "3")]:
        with subtests.test(state=state, days=days):
            answers = given({"country": "us", "state": state, "lines_requested": "asked"})
            assert default(answers, "lines_business_days") == days


def test_the_spot_in_use_is_the_chosen_one_or_the_first(given):
    two = {"spots.1.spot_name": "a", "spots.2.spot_name": "b"}
    assert ground.chosen_spot(given()).scope == ("spots", 1)
    assert ground.chosen_spot(given(two)).scope == ("spots", 1)
    assert ground.chosen_spot(given({**two, "chosen_spot": "2"})).scope == ("spots", 2)
    second_only = given({"spots.2.spot_name": "b"})
    assert ground.chosen_spot(second_only).scope == ("spots", 2)


def test_names_of_items_have_a_default_of_their_number(given):
    for key, group in (("spot_name", "spots"), ("hole_name", "holes"), ("walker_name", "walkers")):
        view = given().at(group, 2)
        assert QUESTIONS[key].default(view).endswith(" 2")


def test_a_second_walker_has_a_pace_of_their_own(given):
    answers = given(
        {
            "units": "us",
            "measured_by": "paces",
            "walkers.1.walker_name": "Ann",
            "walkers.1.pace_line": "50 ft",
            "walkers.1.pace_counts": "20; 20; 20",
            "walkers.1.another_walker": "yes",
            "walkers.2.walker_name": "Ben",
            "walkers.2.pace_line": "50 ft",
            "walkers.2.pace_counts": "25; 25; 25",
        }
    )
    lengths = [magnitude(survey.pace_of(answers, name), "ft") for name in ("", "ann", "Ben")]
    assert lengths == pytest.approx([2.5, 2.5, 2.0])


def test_the_region_outside_the_lists_is_none(given):
    assert planting.plant_region(given({"plant_region": "outside"})) is None
    assert planting.list_region(given({"country": "uk"})) is None


def test_a_state_in_one_list_needs_no_further_answer(given):
    answers = given({"country": "us", "state": "vt"})
    assert planting.list_region(answers).name == "NCNE"


def test_engineer_default_is_no(given):
    assert given()[bed.ENGINEER] is False
