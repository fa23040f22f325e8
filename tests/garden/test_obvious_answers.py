"""The obvious ways to write an answer, question by question, and what is said where one fails."""

from __future__ import annotations

import pytest

from interview.garden.stages import QUESTIONS, new_answers
from interview.quantities.units import magnitude
from interview.reading import Refused

SPOTS = {"spots.1.spot_name": "a", "spots.1.another_spot": "yes", "spots.2.spot_name": "b"}


def value(key: str, text: str) -> object:
    """Return what ``text`` means as the answer to the question ``key``, as stored and read back."""
    question = QUESTIONS[key]
    answers = new_answers({"units": "us", **SPOTS})
    view = answers.at(question.group, 1) if question.group else answers
    kept = question.kind.settle(text, view)
    assert question.kind.read(kept, view) == question.kind.read(text, view)
    return question.read(kept, view)


def test_hours_of_sun_may_be_called_hours(subtests):
    for text in ["6", "6 hours", "6h", "6 hrs.", "six", "Six hours", "6 hours a day"]:
        with subtests.test(text=text):
            assert value("sun_hours", text) == 6


def test_a_soil_may_be_called_by_how_it_feels(subtests):
    for soil, words in {
        "sand": ["1", "sand", "Sandy", "gritty"],
        "loam": ["loam", "flour", "like flour", "Smooth"],
        "clay": ["3", "clay", "sticky", "ribbon"],
    }.items():
        for text in words:
            with subtests.test(text=text):
                assert value("soil_dug", text) == soil


def test_a_hardiness_zone_is_written_as_the_map_has_it(subtests):
    for text in ["6", "6b", "6 B", "Zone 6b", "zone 6", "USDA zone 6a", "z6", "six"]:
        with subtests.test(text=text):
            assert value("hardiness_zone", text) == 6


def test_a_count_may_be_followed_by_what_it_counts(subtests):
    for key, text, count in [
        ("lines_business_days", "2 business days", 2),
        ("lines_business_days", "two", 2),
        ("lines_valid_days", "14 days", 14),
        ("chosen_spot", "spot 2", 2),
        ("chosen_spot", "#2", 2),
        ("gutter_outlets", "2 downspouts", 2),
        ("beds", "one bed", 1),
    ]:
        with subtests.test(key=key, text=text, count=count):
            assert value(key, text) == count


def test_lengths_as_people_say_them(subtests):
    for key, text, inches in [
        ("rain_depth", "1 inch", 1),
        ("rain_depth", "an inch", 1),
        ("rain_depth", "half an inch", 0.5),
        ("rain_depth", "1 and a half inches", 1.5),
        ("rain_depth", "one and a half inches", 1.5),
        ("rain_depth", "1½″", 1.5),
        ("rain_depth", "2.54 cm", 1),
        ("well_distance", "12′ 9″", 153),
        ("well_distance", "a foot", 12),
        ("well_distance", "ten feet", 120),
        ("mark_distance", "no marks", 6000),
        ("mark_distance", "None", 6000),
        ("slope_drop", "level", 0),
        ("slope_drop", "flat", 0),
    ]:
        with subtests.test(key=key, text=text, inches=inches):
            assert magnitude(value(key, text), "in") == pytest.approx(inches)


def test_a_slope_of_three_along_for_one_up(subtests):
    for text in ["3", "3:1", "3 to 1", "3h:1v", "three", "3x"]:
        with subtests.test(text=text):
            assert value("side_slope", text) == 3


def test_an_empty_list_may_be_said_in_words(subtests):
    for text in ["none", "no", "Nothing", "NONE."]:
        with subtests.test(text=text):
            assert value("favourites", text) == ()


def test_what_cannot_be_taken_is_refused_with_what_to_do(subtests):
    for key, text, said in [
        ("lines_valid_days", "2 weeks", "Only a number of days fits here"),
        ("lines_business_days", "48 hours", "Only a number of days fits here"),
        ("hardiness_zone", "about 6", "Write one number, your best one"),
        ("well_distance", "almost 15 ft", "Write one number, your best one"),
        ("well_distance", "8-6", "8 ft 6 in"),
        ("hardiness_zone", "5-6", "Which: 5 or 6?"),
        ("side_slope", "1:3", "Write the longer side first, such as 3:1"),
        ("rain_depth", "1,250", "could mean two things"),
        ("slope_drop", "-3", "Swap the two ends"),
    ]:
        with subtests.test(key=key, text=text, said=said):
            with pytest.raises(Refused) as refused:
                value(key, text)
            assert said in str(refused.value)


def test_the_sides_of_a_house_may_be_written_close_together() -> None:
    assert magnitude(value("house_area", "40x30"), "ft**2") == pytest.approx(1200)
