"""What is told of measures, words and services, by the units and the country of a garden."""

from __future__ import annotations

import re

import pytest

from interview import figures, route
from interview.card import card_text
from interview.reading import Refused
from interview.report import plan_text, so_far, waiting_text
from tests.test_any_garden import any_answers

GARDENS = 4
"""Gardens by chance; raised by hand now and then."""
US_MEASURE = re.compile(
    r"""(?<![\w.])\d[\d./]*(?:[ ]\d+/\d+)?[ -]?
        (?:in(?![ ](?:\d|z\b|all\b))|ft|feet|foot|yd|yards?|inch(?:es)?|gal|gallons?|acres?|lb)\b
      | \b(?:inch(?:es)?|feet|yards|gallons?|pounds?|(?:cu|sq|per)[ ](?:ft|in|yd))\b
      | \b(?:ft|yd)[²³23^]|\bin/h\b""",
    re.VERBOSE,
)
"""A measure in feet, inches, yards, gallons or pounds; not ``6 in 12``, the pitch of a roof."""


def us_measures(said):
    """Return each sentence of ``said`` that names a US measure."""
    return [line for line in said if US_MEASURE.search(line)]


NAMED_SOURCE = re.compile(r"\[[^\]]{12,}\]")
JUNK = (
    "", "?", "x 3", "-1", "0", "1e9", "999999999", "10 10", "left", "9:5 1", "10:30", "0.0001",
    "rectangle", "rectangle 3 by 4 by 5", "round 1", "circle 2 3", "offsets 1 2", "1/0", "3 by x",
    "mulch", "mulch 3", "edging 3", "edging 3 per x",
)  # fmt: skip
"""Texts that one question or another refuses."""


def sentences_of(step, session):
    """Yield all that the page of one question may say, but for what the person wrote.

    An answer is said back in both systems, so that a wrong unit shows; that is no sentence.
    """
    view, question = step.view(session.answers), step.worded(session.answers)
    if question.key in ("units", "rain_record_unit"):
        return
    yield from (question.label, question.text, question.why, question.find_out, question.more)
    yield session.find_out(step)
    yield question.caution_in(view)
    yield question.kind.hint(view.units)
    yield question.kind.limits(view.units)
    yield from (label for _, label in getattr(question.kind, "options", ()))
    yield step.question.default(view) or ""
    for junk in JUNK:
        try:
            session.read(step, junk)
        except Refused as refused:
            yield str(refused)


def sheet_sentences(sheet):
    """Yield the paragraphs of a plan but for the list of sources, which says what is printed."""
    kept, _, rest = sheet.partition("\nSOURCES\n")
    kept += rest.partition("\nWORDS\n")[2]
    paragraphs = re.split(r"\n(?=\S|  [-\[]|$)", kept)
    yield from (NAMED_SOURCE.sub("", " ".join(one.split())) for one in paragraphs)


def everything_told(session):
    """Yield all that plan, card, workings and the lines beside a question say."""
    plan = session.plan
    yield from sheet_sentences(plan_text(plan))
    yield from card_text(plan).splitlines()
    yield waiting_text(plan)
    yield from (f"{one.label} {one.value} {one.waits_for}" for one in so_far(plan))
    for figure in figures.FIGURES:
        yield from (one for one in figures.working(figure.key, plan) if "source:" not in one)


@pytest.mark.parametrize("country", ("us", "uk", "new_zealand"))
def test_no_sentence_of_a_metric_garden_has_us_measures(country, chance, given, session_of):
    found = set()
    for place in range(GARDENS):
        answers = any_answers(chance(50 + place), given(units="metric", country=country))
        session = session_of(answers)
        found.update(us_measures(everything_told(session)))
    for step in route.steps(answers):
        found.update(us_measures(sentences_of(step, session)))
    assert "\n".join(sorted(found)) == ""
