"""Kinds of answer: what is taken, what is kept, and how it is said back."""

from __future__ import annotations

import datetime as dt

import pytest

from interview.asking.kinds import (
    Choice,
    Day,
    Moment,
    Note,
    Several,
    Ticks,
    YesNo,
    list_lines,
    nothing_given,
)
from interview.asking.measures import Count, Measure, Number, Pitch, Ratio
from interview.asking.question import Unanswered
from interview.garden.site import nearby_questions as nearby
from interview.garden.stages import new_answers
from interview.garden.survey import pacing_questions as walking
from interview.quantities.units import magnitude
from interview.reading import Refused

COLOURS = (("red", "red as brick"), ("blue", "blue"), ("green", "green"))
DEPTH = Measure("length", "in", "mm", (1, "in"), (12, "in"))
WIDTH = Measure("length", "ft", "m", paced=True)


@pytest.fixture
def us(clock):
    return new_answers({"units": "us"}, clock.now)


@pytest.fixture
def metric(clock):
    return new_answers({"units": "metric"}, clock.now)


@pytest.mark.parametrize(
    ("kind", "text", "kept"),
    [
        (YesNo(), "Y", "yes"),
        (YesNo(), "No", "no"),
        (Choice(COLOURS), "2", "blue"),
        (Choice(COLOURS), "Red as brick", "red"),
        (Ticks(COLOURS), "green, 1", "red, green"),
        (Ticks(COLOURS), "none", "none"),
        (Note(), "  two words ", "two words"),
        (Note(), "1;  2", "1;  2"),
        (DEPTH, "7", "7 in"),
        (DEPTH, "6  7/8 in", "6 7/8 in"),
        (DEPTH, "150 mm", "150 mm"),
        (WIDTH, "12' 9\"", "12' 9\""),
        (Count(0, 9), "3", "3"),
        (Number(0, 16), "4.5", "4.5"),
        (Number(0, 100, percent=True), "50", "50"),
        (Ratio(1, 6), "3:1", "3:1"),
        (Pitch(), "6 in 12", "6 in 12"),
        (Day(), "today", "2026-05-28"),
        (Day(), "yesterday", "2026-05-27"),
        (Day(), "20 May", "2026-05-20"),
        (Moment(), "now", "2026-05-28T09:00:00-05:00"),
        (Moment(), "8:15 am", "2026-05-28T08:15:00-05:00"),
        (Several(Count(0, 9)), "1; 2;3", "1\n2\n3"),
        (Several(Day()), "none", "none"),
    ],
    ids=lambda value: value if isinstance(value, str) else type(value).__name__,
)
def test_what_is_kept_is_what_was_typed_made_explicit(us, kind, text, kept):
    assert kind.settle(text, us) == kept
    assert kind.read(kept, us) == kind.read(text, us)


def test_a_bare_number_is_kept_with_the_unit_of_the_day(us, metric):
    assert DEPTH.settle("7", us) == "7 in"
    assert DEPTH.settle("150", metric) == "150 mm"
    assert magnitude(DEPTH.read("7 in", metric), "mm") == pytest.approx(177.8)


@pytest.mark.parametrize(
    ("kind", "text", "words"),
    [
        (DEPTH, "1/2 in", "That is too small: it must be from 1 in to 12 in."),
        (DEPTH, "13 in", "That is too large: it must be from 1 in to 12 in."),
        (DEPTH, "3 paces", "cannot be paced"),
        (Count(1, 5), "6", "it must be from 1 to 5"),
        (Number(0, 16), "17", "it must be from 0 to 16"),
        (Ratio(1, 6), "7:1", "it must be from 1:1 to 6:1"),
        (Note(5), "longer", "longer than 5 characters"),
        (Note(), "a\x07b", "character that cannot be shown"),
        (Note(), "  ", "Nothing was written"),
        (YesNo(), "maybe", "not yes or no"),
        (Choice(COLOURS), "bleu", "Did you mean blue?"),
        (Several(Count(0, 9), 1), "none", "Write 1 or more"),
        (Several(Count(0, 9), 0, 2), "1;2;3", "more than 2 items"),
        (Several(Count(0, 9)), "1; x", "Item 2: "),
        (Moment(), "11:00", "still to come"),
    ],
    ids=lambda value: value if isinstance(value, str) else type(value).__name__,
)
def test_what_cannot_be_is_refused_with_the_reason(us, kind, text, words):
    with pytest.raises(Refused) as refused:
        kind.read(text, us)
    assert words in str(refused.value)


def test_limits_are_said_in_the_units_shown(us, metric):
    assert DEPTH.limits("us") == "it must be from 1 in to 12 in"
    assert DEPTH.limits("metric") == "it must be from 25.4 mm to 305 mm"
    some = Measure("length", "ft", "m", (0, "ft"), (50, "ft"), above_zero=True)
    assert some.limits("us") == "it must be more than zero, and 50 ft or less"
    with pytest.raises(Refused, match="more than zero"):
        some.read("0", us)


def test_a_limit_typed_in_the_other_units_is_still_within(us, metric):
    assert magnitude(DEPTH.read("25.4 mm", us), "in") == pytest.approx(1)
    assert magnitude(DEPTH.read("12 in", metric), "mm") == pytest.approx(304.8)
    assert magnitude(DEPTH.read("304.8 mm", us), "in") == pytest.approx(12)


@pytest.mark.parametrize(
    ("kind", "text", "echo"),
    [
        (YesNo(), "y", "yes"),
        (Choice(COLOURS), "red", "red as brick"),
        (Ticks(COLOURS), "none", "none of these"),
        (Ticks(COLOURS), "red, blue", "red as brick; blue"),
        (Number(0, 100, percent=True), "50 %", "50 %"),
        (Ratio(1, 6), "2.5", "2.5:1"),
        (Pitch(), "6/12", "6 in 12"),
        (Pitch(), "35°", "35 degrees"),
        (Several(Count(0, 9)), "none", "none"),
    ],
    ids=lambda value: value if isinstance(value, str) else type(value).__name__,
)
def test_how_it_was_understood_is_said_back(us, kind, text, echo):
    assert kind.echo(kind.read(text, us), us) == echo


def test_a_length_is_said_back_in_the_units_of_the_garden(us, metric):
    value = WIDTH.read("12 ft 9 in", us)
    assert WIDTH.echo(value, us) == "12 ft 9 in"
    assert WIDTH.echo(value, metric) == "3 m 886 mm"


def test_a_list_is_parted_by_lines_or_semicolons_and_none_is_empty():
    assert list_lines("a; b\n\n c ;") == ["a", "b", "c"]
    assert list_lines(" None ") == []
    assert list_lines("none\nb") == ["none", "b"]


def test_a_day_that_needs_a_clock_is_refused_in_a_file(subtests):
    for text in ["today", "yesterday", "20 May"]:
        with subtests.test(text=text):
            with pytest.raises(Refused, match="in full"):
                Day().read(text, new_answers())
            assert Day().read("2026-05-20", new_answers()) == dt.date(2026, 5, 20)


def test_a_length_in_paces_is_kept_before_the_pace_is_known(us):
    assert WIDTH.settle("15  paces", us) == "15 paces"
    with pytest.raises(Unanswered):
        WIDTH.read("15 paces", us)


def test_a_time_that_needs_a_clock_is_refused_in_a_file(subtests):
    for text in ["now", "yesterday 10:15", "2026-05-21 10:15", "00:00"]:
        with subtests.test(text=text):
            with pytest.raises(Refused, match="in full"):
                Moment().read(text, new_answers())
            told = Moment().read("2026-05-21T10:15:00-05:00", new_answers())
            assert told == dt.datetime(2026, 5, 21, 15, 15, tzinfo=dt.UTC)


def test_an_empty_answer_to_a_list_says_that_none_is_one():
    assert "or none if there is none" in nothing_given(Several(Day()))
    assert Several(Day()).read("none", new_answers()) == ()
    for kind in (Several(Day(), at_least=1), Day(), Ticks((("a", "a"),))):
        assert "if there is none" not in nothing_given(kind)


def test_a_smaller_unit_is_named_only_where_it_would_be_taken(given):
    view = given(units="us", measured_by="paces").at("walkers", 1)
    with pytest.raises(Refused) as refused:
        walking.PACE_LINE.read("1", view)
    assert str(refused.value) == "That is too small: it must be from 10 ft to 660 ft."


def test_a_bare_number_that_is_too_large_is_asked_about_in_the_smaller_unit(subtests, given):
    for units, text, meant in [
        ("metric", "3900", "If you mean mm, write 3900 mm."),
        ("metric", "3900 m", ""),
        ("us", "2000", "If you mean in, write 2000 in."),
        ("us", "2000 ft", ""),
    ]:
        with subtests.test(units=units, text=text, meant=meant):
            view = given(units=units).at("spots", 1)
            with pytest.raises(Refused) as refused:
                nearby.DISTANCES["tree"].read(text, view)
            said = str(refused.value)
            assert said.startswith("That is too large")
            assert said.partition(". ")[2] == meant
