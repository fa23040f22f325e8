"""What the questions about the lines offer and say by state and country, and who stands behind."""

from __future__ import annotations

import datetime as dt
import re

import pytest

from interview.asking import route
from interview.garden import gate
from interview.garden.place import questions as start
from interview.garden.site import gate as site_gate
from interview.garden.site import lines_questions as buried
from interview.garden.site.locate import Counted
from interview.garden.site.locating import notice_for
from interview.garden.stages import QUESTIONS

STATES = [one[:2].lower() for one in start.STATES.split(",")]
LINES = (
    "lines_requested", "lines_business_days", "lines_holidays", "lines_valid_days",
    "lines_valid_kind", "mark_distance",
)  # fmt: skip


@pytest.fixture
def asked_in(given):
    """Return a maker of answers: a state or a country, the lines asked for on a Wednesday."""

    def make(place: str, **more: str):
        country = {"country": "us", "state": place} if place in STATES else {"country": place}
        return given(
            {
                "units": "us",
                **country,
                "lines_requested": "asked",
                "lines_asked_on": "2026-05-20",
                "lines_answered": "yes",
                "private_lines": "none",
                "mark_distance": "500 ft",
                **more,
            }
        )

    return make


def default(answers, key):
    return QUESTIONS[key].default(answers)


def test_what_is_offered_follows_the_table(subtests, asked_in):
    for place, wait, days, kind in [
        ("hi", "5", "14", "calendar"),
        ("dc", "4", "10", "calendar"),
        ("wi", "3", "10", "calendar"),
        ("mo", "3", "10", "calendar"),
        ("ms", "3", "14", "calendar"),
        ("mn", "3", "14", "calendar"),
        ("tx", "3", "14", "calendar"),
        ("ak", None, "14", "calendar"),
        ("la", "3", "7", "from_request"),
        ("fl", "3", "30", "calendar"),
        ("or", "3", "10", "from_request"),
        ("uk", "3", "10", "from_request"),
        ("canada", "5", "10", "from_request"),
    ]:
        with subtests.test(place=place, wait=wait, days=days, kind=kind):
            answers = asked_in(place)
            found = [default(answers, key) for key in ("lines_business_days", *LINES[3:5])]
            assert found == [wait, days, kind]


def test_an_answer_goes_before_the_table(asked_in):
    ticket = {"lines_business_days": "2", "lines_valid_days": "20", "lines_valid_kind": "working"}
    state = site_gate.locate_state(asked_in("hi", lines_holidays="none", **ticket))
    assert (state.business_days, state.valid_days) == (2, 20)
    assert state.counted is Counted.FROM_MARKING
    assert state.earliest == dt.date(2026, 5, 23)


def test_a_kind_of_days_without_a_number_decides_nothing(asked_in):
    state = site_gate.locate_state(asked_in("mn", lines_valid_kind="working"))
    assert (state.valid_days, state.counted) == (14, Counted.CALENDAR)


def test_the_wait_of_a_state_that_is_longer_in_places_must_be_answered(asked_in):
    answers = asked_in("ak", lines_holidays="none")
    for day in (dt.date(2026, 5, 28), dt.date(2026, 6, 1)):
        assert "your ticket says it" in " ".join(site_gate.dig_reasons(answers, day))
    answered = answers.with_text("lines_business_days", "2")
    assert site_gate.dig_reasons(answered, dt.date(2026, 5, 28)) == []


def test_a_federal_holiday_in_the_wait_is_offered_and_counts(asked_in):
    answers = asked_in("mn")
    assert default(answers, "lines_holidays") == "2026-05-25"
    assert site_gate.locate_state(answers).earliest == dt.date(2026, 5, 27)
    words = QUESTIONS["lines_holidays"].worded(answers)
    assert "Memorial Day on Mon 25 May 2026" in words.find_out and "6103" in words.more
    later = answers.with_text("lines_asked_on", "2026-05-26")
    assert default(later, "lines_holidays") == "none"


@pytest.mark.parametrize(("place", "asked"), [("ak", "2026-05-20"), ("mn", "don't know yet")])
def test_no_holidays_are_offered_while_the_wait_is_not_known(asked_in, place, asked):
    answers = asked_in(place).with_text("lines_asked_on", asked)
    assert default(answers, "lines_holidays") is None
    assert "are filled in once" in QUESTIONS["lines_holidays"].worded(answers).find_out


def test_what_was_said_of_holidays_before_stands(asked_in):
    state = site_gate.locate_state(asked_in("mn", lines_holidays="none"))
    assert state.earliest == dt.date(2026, 5, 26)


def test_where_no_calendar_is_held_christmas_is_no_working_day(subtests, asked_in):
    for place in ["uk", "canada", "australia", "new_zealand", "other"]:
        with subtests.test(place=place):
            answers = asked_in(place, lines_asked_on="2025-12-23", lines_business_days="3")
            assert default(answers, "lines_holidays") is None
            assert (
                "no calendar for this country"
                in QUESTIONS["lines_holidays"].worded(answers).find_out
            )
            assert site_gate.locate_state(answers).earliest is None
            day = dt.date(2025, 12, 29)
            assert "public holidays" in " ".join(site_gate.dig_reasons(answers, day))
            told = answers.with_text("lines_holidays", "2025-12-25; 2025-12-26")
            assert "have until Wed 31 Dec 2025 to answer" in " ".join(
                site_gate.dig_reasons(told, day)
            )
            assert site_gate.dig_reasons(told, dt.date(2025, 12, 31)) == []
            assert site_gate.dig_reasons(answers.with_text("lines_holidays", "none"), day) == []


def test_every_state_is_told_in_short_sentences_with_what_stands_behind(subtests, asked_in):
    for state in STATES:
        with subtests.test(state=state):
            answers, notice = asked_in(state), notice_for(state)
            for key in LINES:
                question = QUESTIONS[key].worded(answers)
                for text in (question.why, question.find_out):
                    assert text.rstrip()[-1] in ".?"
                    for sentence in re.split(r"(?<=[.?!:;])\s+", text):
                        assert len(sentence.split()) <= 30, sentence
                if key != "lines_holidays":
                    assert (
                        notice.pages in question.more
                        and notice.wait_standing.value in question.more
                    )
                assert question.more.startswith(QUESTIONS[key].more)
            for key in ("lines_business_days", "lines_valid_days"):
                assert "the ticket decides" in QUESTIONS[key].worded(answers).find_out


def test_the_number_and_the_page_of_the_state_are_given(subtests, asked_in):
    for state in STATES:
        with subtests.test(state=state):
            notice = notice_for(state)
            said = QUESTIONS["lines_requested"].worded(asked_in(state)).find_out
            assert "811" in said and notice.phone in said and notice.website in said
            assert buried.locating_service(asked_in(state)) == said
            assert re.fullmatch(r"|8\d\d-\d{3}-\d{4}", notice.phone)
            assert re.fullmatch(r"|[a-z0-9-]+\.(com|org|net)", notice.website)


def test_where_hand_digging_is_spared_the_marks_are_asked_for_all_the_same(subtests, asked_in):
    for state in STATES:
        with subtests.test(state=state):
            why = QUESTIONS["lines_requested"].worded(asked_in(state)).why
            assert ("may spare" in why and "all the same" in why) == (
                notice_for(state).hand == "spared"
            )
            shut = route.step_at("holes.1.hole_depth", asked_in(state))
            unasked = asked_in(state).with_text("lines_requested", "not_yet")
            assert gate.shut(shut, unasked, dt.date(2026, 5, 28))


def test_the_states_that_spare_hand_digging():
    spared = {state.upper() for state in STATES if notice_for(state).hand == "spared"}
    # The states whose text leaves it out, wholly or to a depth.
    expected = "AR CT GA ID KS MD ME MS NM NV PA SD TN WA WY"
    assert spared == set(expected.split())


def test_the_figures_name_the_state_or_the_ticket_as_their_source(asked_in, plan_of, printed):
    figures = printed(plan_of(asked_in("hi")))["figures"]
    assert "digsafelyhawaii.com" in figures["earliest_dig_day"]["source"]
    assert "practice 5.23" in figures["marks_stale_after"]["source"]
    texas = printed(plan_of(asked_in("tx")))["figures"]["marks_stale_after"]["source"]
    assert "texas811.org" in texas and "second copy" in texas
    ticket = asked_in("hi", lines_business_days="5", lines_valid_days="20")
    figures = printed(plan_of(ticket))["figures"]
    for key in ("earliest_dig_day", "marks_stale_after"):
        assert figures[key]["source"].startswith("your ticket")


def test_a_day_that_waits_for_the_ticket_or_the_holidays_says_so(asked_in, plan_of, printed):
    alaska = printed(plan_of(asked_in("ak")))["figures"]["earliest_dig_day"]
    assert (alaska["value"], alaska["waits_for"]) == (None, "lines_business_days")
    uk = printed(plan_of(asked_in("uk")))["figures"]["earliest_dig_day"]
    assert (uk["value"], uk["waits_for"]) == (None, "lines_holidays")
