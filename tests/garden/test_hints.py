"""Every hint is an answer: what stands after "such as" is taken by its own question."""

from __future__ import annotations

import datetime as dt
import re

import pytest

from interview.garden.soak.timing_questions import READ_AS, READINGS
from interview.garden.stages import QUESTIONS, every_question, new_answers
from interview.quantities.units import magnitude
from interview.reading import Refused

EVENING = dt.datetime(2026, 5, 28, 22, 0, tzinfo=dt.timezone(dt.timedelta(hours=-5)))
"""Late enough that the times of day in a hint are past."""
NO_EXAMPLE = re.compile(r"a (whole )?number( of \w+)?|a percentage|a few words|(one|any) of: .*")
LEADS = (
    "one per line: a time, then the depth, as ",
    "one per line, as ",
    "one per line, ",
    "such as ",
)

STATIONS = "along the string, uphill, downhill, such as "


def offered(hint: str) -> list[str]:
    """Return the answers that a hint offers, in the words that a person would type."""
    words = hint.partition("; a bare number is ")[0]
    for lead in LEADS:
        words = words.removeprefix(lead)
    # An item that has commas within it: there the items are parted by semicolons.
    if words.startswith(STATIONS):
        return words.removeprefix(STATIONS).split("; ")
    words = words.replace("or a number from 0 to 1", "0.5").replace(" for the first", "")
    found = [one.removeprefix("or ") for one in re.split(r", | or ", words.replace(", or ", ", "))]
    return [one.replace(" for the second", "") for one in found if not NO_EXAMPLE.fullmatch(one)]


def view_of(question, units: str, **more: str):
    """Return answers by which paces and times of a test can be told."""
    texts = {
        "units": units,
        "measured_by": "paces",
        "walkers.1.walker_name": "Ann",
        "walkers.1.pace_line": "50 ft",
        "walkers.1.pace_counts": "20\n20\n20",
        "holes.1.hole_depth": "20 in",
        "holes.1.water_at_mark": "8 in",
        "holes.1.test_start": "2026-05-28T09:00:00-05:00",
        **more,
    }
    answers = new_answers(texts, EVENING)
    return answers.at(question.group, 1) if question.group else answers


def test_every_answer_in_a_hint_is_taken_by_its_question(subtests):
    for question in list(every_question()):
        for units in ["us", "metric"]:
            with subtests.test(units=units, question=question):
                view = view_of(question, units)
                hint = question.worded(view).kind.hint(units)
                texts = offered(hint)
                for text in ["\n".join(texts)] if texts and question.kind.many else texts:
                    try:
                        taken = question.take(text, view)
                        question.read(taken.kept, view)
                        assert not taken.asks_back
                    except Refused as refused:
                        pytest.fail(f"{hint}: {text}: {refused}")


@pytest.mark.parametrize("units", ["us", "metric"])
def test_every_measure_has_an_answer_in_its_hint_that_begins_with_the_unit_shown(units):
    for question in every_question():
        if hasattr(question.kind, "dimension"):
            first = offered(question.kind.hint(units))[0]
            other = re.search(r"\bin\b|ft|'" if units == "metric" else r"\bc?m2?\b|mm|\bL\b", first)
            assert other is None, (question.key, first)


@pytest.mark.parametrize("word", ["left", "drop"])
def test_the_hint_of_the_readings_says_what_is_measured(word):
    view = view_of(READINGS, "metric", **{"holes.1.read_as": word})
    assert view[READ_AS] == word
    hint = READINGS.worded(view).kind.hint("metric")
    assert re.findall(r"\b(left|drop)\b", hint) == [word, word]


def test_the_examples_of_a_hole_are_those_of_a_hole_that_is_dug_as_asked():
    """The depth is asked to be 12 to 18 in, 300 to 450 mm."""
    for units, low, high in (("us", 12, 18), ("metric", 300, 450)):
        question = QUESTIONS["hole_depth"]
        view = view_of(question, units)
        for text in offered(question.kind.hint(units)):
            found = question.kind.read(text, view)
            assert low <= magnitude(found, "in" if units == "us" else "mm") <= high, text
