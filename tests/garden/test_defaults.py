"""Defaults that follow earlier answers, and what several stages make of one answer."""

from __future__ import annotations

import pytest

from interview.garden.planting import questions as planting
from interview.garden.site import spot_questions as ground
from interview.garden.size import questions as bed
from interview.garden.size.answered import floor_shape
from interview.garden.stages import QUESTIONS
from interview.garden.summary import assumed
from interview.garden.survey import pacing_questions as walking
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
        ("freeboard", "2 in", "50 mm"),
        ("barrow", "3 cu ft", "85 L"),
    ]:
        with subtests.test(key=key, us=us, metric=metric):
            assert default(given({"units": "us"}), key) == us
            assert default(given({"units": "metric"}), key) == metric


def test_units_are_us_until_they_are_known(given):
    assert given().units == "us"
    assert given({"units": "metric"}).metric


def test_level_lawn_that_is_the_rim_needs_an_inch_and_a_berm_two(subtests, given):
    """Values: choices of this project. 1.2 in over 10 ft is the 1 % where lawn is not level."""
    for drop, us, metric in [
        ("0 in", "1 in", "25 mm"),
        ("1.125 in", "1 in", "25 mm"),
        ("1.25 in", "2 in", "50 mm"),
        ("9 in", "2 in", "50 mm"),
    ]:
        with subtests.test(drop=drop, us=us, metric=metric):
            slope = {"spots.1.slope_run": "10 ft", "spots.1.slope_drop": drop}
            assert default(given({"units": "us", **slope}), "freeboard") == us
            assert default(given({"units": "metric", **slope}), "freeboard") == metric
            large = {**slope, "how_large": "generous"}
            assert default(given({"units": "us", **large}), "freeboard") == "6 in"


def test_the_sides_are_gentle_where_children_play_and_in_a_generous_garden(subtests, given):
    for texts, sides in [
        ({}, "2:1"),
        ({"children": "no"}, "2:1"),
        ({"children": "yes"}, "3:1"),
        ({"how_large": "lean"}, "2:1"),
        ({"how_large": "generous"}, "3:1"),
    ]:
        with subtests.test(texts=texts, sides=sides):
            assert default(given(texts), "side_slope") == sides


def test_a_lean_garden_takes_less_mulch_and_no_compost(subtests, given):
    for texts, mulch, amend in [
        ({}, "3 in", "yes"),
        ({"how_large": "lean"}, "2 in", "no"),
        ({"how_large": "generous"}, "3 in", "yes"),
        ({"soil_dug": "sand"}, "3 in", "no"),
        ({"soil_dug": "clay"}, "3 in", "yes"),
    ]:
        with subtests.test(texts=texts, mulch=mulch, amend=amend):
            answers = given({"units": "us", **texts})
            assert default(answers, "mulch_depth") == mulch
            assert default(answers, "amend") == amend


def test_a_floor_pegged_without_a_word_about_its_shape_is_a_rectangle(subtests, given):
    """As in version 0.1, which knew no other; the plan names the shape as assumed."""
    for texts, shape, told in [
        ({}, "rounded", ["rounded"]),
        ({"floor_length": "15 ft"}, "rectangle", ["rectangle"]),
        ({"floor_width": "7 ft"}, "rectangle", ["rectangle"]),
        ({"floor_width": "7 ft", "floor_shape": "oval"}, "oval", []),
    ]:
        with subtests.test(texts=texts, shape=shape, told=told):
            answers = given({"units": "us", **texts})
            assert floor_shape(answers).value == shape
            said = [words for step, words in assumed(answers) if step.address == "floor_shape"]
            assert said == told


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
    lengths = [magnitude(walking.pace_of(answers, name), "ft") for name in ("", "ann", "Ben")]
    assert lengths == pytest.approx([2.5, 2.5, 2.0])


def test_the_region_outside_the_lists_is_none(given):
    assert planting.plant_region(given({"plant_region": "outside"})) is None
    assert planting.list_region(given({"country": "uk"})) is None


def test_a_state_in_one_list_needs_no_further_answer(given):
    answers = given({"country": "us", "state": "vt"})
    assert planting.list_region(answers).name == "NCNE"


def test_engineer_default_is_no(given):
    assert given()[bed.ENGINEER] is False
