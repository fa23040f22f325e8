"""What the pages of the simple way ask, word for word: the words that were weighed one by one.

What is said of an answer stands in ``test_verdicts``, of speech in ``test_obvious_speech``, of a
state in ``test_due``, of a page that only tells in ``test_told_pages``.
"""

from __future__ import annotations

import re

import pytest

from interview.garden.stages import QUESTIONS, new_answers

GARDEN = {
    "country": "us",
    "state": "wi",
    "units": "us",
    "surfaces.1.surface_kind": "roof",
    "spots.1.near_spot": "basement",
    "lines_requested": "asked",
}
ASKED = {
    "garden_name": "What do you call this garden?",
    "state": r"Which state is the garden in\? Name or two letters. Not in the US: type no.",
    "surface_kind": "What brings the water?",
    "pieces": "How big is this side of the roof? Measure it on the ground, .*",
    "soil_dug": r"Rub a pinch of wet soil from a flower bed\. How does it feel\?",
    "room_length": "Lay a hose where the garden may lie, its long side level. How long .*",
    "basement_distance": "How far is the nearest wall with a basement .* from the hose?",
    "slope_run": "Stretch a level string between two chairs, .*",
    "lines_requested": "Have you asked for the buried lines to be marked?",
    "lines_asked_on": "On which day did you ask for the marks?",
    "wet_season_depth": "How deep is it to water in the wet season, or to .*rust-spotted soil?",
    "rock_depth": "How deep is it to rock, .*",
    "hole_depth": "How deep is the test hole?",
    "hole_left": "How have you left the hole?",
}
"""The beginning of a page is its question; what may vary is left open."""
FOUND_OUT = {
    "state": "Type the state's name or its two letters",
    "pieces": "overhang",
    "soil_dug": "No spade is needed",
    "room_length": "Use no pegs yet",
    "basement_distance": "to the nearest part of the hose",
    "slope_run": "a line level",
    "slope_drop": "On flat ground write level",
    "lines_requested": r"call 811\b.*; it is free",
    "hole_depth": r"often \d+ to \d+ in",
}
HINTS = {
    "garden_name": ("such as Maple corner", "such as Maple corner"),
    "rain_depth": ("such as 1 in, 3/4 in or 25 mm", "such as 25 mm or 2.5 cm"),
    "deepest_pond": ("such as 6 in or 150 mm", "such as 150 mm or 15 cm"),
    "hardiness_zone": ("such as 5b or 6", "such as 5b or 6"),
    "slope_drop": ("such as 7 in, or level", "such as 180 mm, or level"),
    "wet_season_depth": ("such as 5 ft, or over 4 ft", "such as 1.5 m, or over 1.2 m"),
    "rock_depth": ("such as 5 ft, or over 4 ft", "such as 1.5 m, or over 1.2 m"),
}
OPTIONS = {
    "surface_kind": ("roof", "paving", "gravel", "hard-packed soil", "lawn"),
    "soil_dug": ("gritty", "smooth, like flour", "sticky, makes a ribbon"),
    "stands_after_rain": ("never",),
}


def worded(key, **more):
    answers = new_answers({**GARDEN, **more})
    question = QUESTIONS[key]
    return question.worded(answers.at(question.group, 1) if question.group else answers)


@pytest.mark.parametrize("key", ASKED)
def test_the_question_is_put_in_the_words_that_were_weighed(key):
    pattern = ASKED[key].replace("?", r"\?") if "\\" not in ASKED[key] else ASKED[key]
    assert re.fullmatch(pattern, worded(key).text), worded(key).text


@pytest.mark.parametrize("key", FOUND_OUT)
def test_how_to_find_it_out_says_the_one_thing_that_matters(key):
    assert re.search(FOUND_OUT[key], worded(key).find_out), worded(key).find_out


@pytest.mark.parametrize("key", HINTS)
def test_the_hint_offers_what_a_first_timer_would_write(key):
    for units, hint in zip(("us", "metric"), HINTS[key], strict=True):
        assert worded(key).kind.hint(units).partition(";")[0] == hint


@pytest.mark.parametrize("key", OPTIONS)
def test_the_choices_stand_in_the_order_of_what_is_nearest_to_hand(key):
    told = [label for _, label in worded(key).kind.options]
    assert len(told) >= len(OPTIONS[key])
    for label, word in zip(told, OPTIONS[key], strict=False):
        assert word in label


def test_water_from_paving_alone_is_asked_for_without_a_downspout():
    paved = {"surfaces.1.surface_kind": "paving"}
    for key in ("spout_distance", "water_by", "spout_fall"):
        assert "downspout" in worded(key).text
        assert "downspout" not in worded(key, **paved).text
        both = worded(key, **paved, **{"surfaces.2.surface_kind": "roof"})
        assert "downspout" in both.text


def test_what_to_outline_in_white_is_told_where_the_marks_are_asked_for():
    said = worded("lines_requested").more
    for part in ("white", "the garden", "the berm", "the test hole", "pipe route"):
        assert part in said
