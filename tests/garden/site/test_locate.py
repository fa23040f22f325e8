"""When digging may start, and why not yet."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.garden.site.locate import (
    Cause,
    LocateState,
    PrivateLines,
    dig_gate,
    earliest_dig_day,
    federal_in_wait,
    marks_stale_after,
    marks_stale_after_calendar,
)
from interview.garden.site.locating import Counted

ASKED = date(2026, 5, 20)
MEMORIAL_DAY = date(2026, 5, 25)
READY = LocateState(
    asked=ASKED,
    all_answered=True,
    finished=date(2026, 5, 22),
    private_lines=PrivateLines.KEPT_CLEAR,
)


def test_three_business_days_from_a_wednesday_end_on_the_next_tuesday():
    assert earliest_dig_day(ASKED, 3) == date(2026, 5, 26)


def test_a_holiday_puts_the_first_day_off():
    assert earliest_dig_day(ASKED, 3, [MEMORIAL_DAY]) == date(2026, 5, 27)


def test_a_request_on_a_saturday_counts_from_monday():
    assert earliest_dig_day(date(2026, 5, 23), 2) == date(2026, 5, 27)


def test_a_wait_that_ends_on_friday_lets_digging_start_on_saturday():
    assert earliest_dig_day(date(2026, 5, 19), 3) == date(2026, 5, 23)


def test_marks_of_ten_working_days_last_two_weeks():
    assert marks_stale_after(date(2026, 5, 22), 10) == date(2026, 6, 5)
    assert marks_stale_after(date(2026, 5, 22), 10, {MEMORIAL_DAY}) == date(2026, 6, 8)


def test_marks_of_fourteen_calendar_days():
    assert marks_stale_after_calendar(ASKED, 14) == date(2026, 6, 3)


@given(st.dates(date(2000, 1, 1), date(2090, 1, 1)), st.integers(1, 30))
def test_waiting_longer_never_digs_earlier(asked, days):
    first = earliest_dig_day(asked, days)
    assert first > asked + timedelta(days=days)
    if days < 30:
        assert earliest_dig_day(asked, days + 1) > first
    between = [asked + timedelta(days=n) for n in range(1, (first - asked).days)]
    assert sum(day.weekday() < 5 for day in between) == days


def test_the_gate_opens_when_everything_is_in_order():
    answer = dig_gate(READY, date(2026, 5, 26))
    assert answer.reasons == ()
    assert answer.reasons == ()
    assert answer.stale_after == date(2026, 6, 5)


def test_the_gate_counts_down_the_days():
    answer = dig_gate(READY, date(2026, 5, 23))
    assert answer.reasons
    assert answer.reasons == ("The owners have until Tue 26 May 2026 to answer: wait until then.",)


def test_each_lack_alone_keeps_the_gate_closed(subtests):
    for changed, today, word in [
        ({"asked": None}, 26, "not yet asked"),
        ({"asked": date(2026, 5, 28)}, 26, "has not come"),
        ({"all_answered": False}, 26, "Not all owners"),
        ({"all_answered": None}, 26, "Not all owners"),
        ({"private_lines": PrivateLines.UNKNOWN}, 26, "Where your own buried lines"),
        ({"private_lines": None}, 26, "Where your own buried lines"),
        ({"finished": date(2026, 5, 19)}, 26, "before you asked"),
        ({"finished": date(2026, 5, 27)}, 26, "not come yet"),
        ({"valid_days": 1}, 26, "the wait ends on Tue 26 May 2026"),
        ({"business_days": None}, 26, "your ticket says it"),
        ({"assumed_holidays": None}, 26, "look at a calendar"),
        ({"business_days": 5}, 26, "have until"),
    ]:
        with subtests.test(changed=changed, today=today, word=word):
            answer = dig_gate(READY._replace(**changed), date(2026, 5, today))
            assert answer.reasons
            assert any(word in reason for reason in answer.reasons)


def test_the_last_day_of_the_marks_still_counts():
    assert dig_gate(READY, date(2026, 6, 5)).reasons == ()
    assert dig_gate(READY, date(2026, 6, 6)).reasons


def test_the_day_of_the_request_stands_in_for_an_unknown_last_answer():
    state = READY._replace(finished=None)
    assert state.stale_after == marks_stale_after(ASKED, 10)


def test_calendar_days_run_from_the_request():
    state = READY._replace(valid_days=27, counted=Counted.CALENDAR)
    assert state.stale_after == date(2026, 6, 16)


def test_working_days_from_the_request_are_not_made_longer_by_holidays():
    state = READY._replace(counted=Counted.FROM_REQUEST, holidays=frozenset({MEMORIAL_DAY}))
    assert state.stale_after == date(2026, 6, 3)
    assert state.earliest == date(2026, 5, 27)


def test_an_assumed_holiday_lengthens_the_wait_and_not_the_life_of_the_marks():
    assumed = READY._replace(assumed_holidays=frozenset({MEMORIAL_DAY}))
    named = READY._replace(holidays=frozenset({MEMORIAL_DAY}))
    assert assumed.earliest == named.earliest == date(2026, 5, 27)
    assert assumed.stale_after == date(2026, 6, 5)
    assert named.stale_after == date(2026, 6, 8)


@pytest.mark.parametrize("unknown", [{"business_days": None}, {"assumed_holidays": None}])
def test_a_wait_that_is_not_known_gives_no_day(unknown):
    assert READY._replace(**unknown).earliest is None


def test_marks_that_would_end_before_the_wait_are_told_as_such():
    state = READY._replace(business_days=15, valid_days=14, counted=Counted.CALENDAR)
    (reason,) = dig_gate(state, date(2026, 6, 20)).reasons
    assert "until Wed 3 Jun 2026" in reason and "Thu 11 Jun 2026" in reason and "ticket" in reason


def test_marks_good_on_the_first_day_alone_open_the_gate_on_that_day():
    state = READY._replace(valid_days=6, counted=Counted.CALENDAR)
    assert state.stale_after == state.earliest == date(2026, 5, 26)
    assert dig_gate(state, date(2026, 5, 26)).causes == ()
    assert dig_gate(state, date(2026, 5, 27)).causes == (Cause.STALE,)


def test_the_first_day_is_never_before_the_last_owner_answered():
    late = date(2026, 5, 29)
    for finished, first in (
        (late, late),
        (date(2026, 5, 21), READY.earliest),
        (None, READY.earliest),
    ):
        assert dig_gate(READY._replace(finished=finished), late).earliest == first


def test_a_holiday_counts_only_within_the_wait():
    """Christmas 2026 is a Friday, Memorial Day 2026 May 25: 5 U.S.C. 6103."""
    christmas = date(2026, 12, 25)
    assert federal_in_wait(date(2026, 12, 22), 2) == {}
    assert list(federal_in_wait(date(2026, 12, 22), 3)) == [christmas]
    assert federal_in_wait(MEMORIAL_DAY, 3) == {}
    assert list(federal_in_wait(date(2026, 5, 24), 1)) == [MEMORIAL_DAY]


def test_nothing_answered_gives_every_reason_and_no_date():
    answer = dig_gate(LocateState(), ASKED)
    assert answer.reasons
    assert answer.earliest is None
    assert len(answer.reasons) == 2


def test_each_reason_is_one_sentence():
    worst = READY._replace(all_answered=False, private_lines=None, finished=date(2026, 1, 1))
    for reason in dig_gate(worst, date(2026, 5, 21)).reasons:
        assert reason.endswith(".")
        assert reason.count(". ") == 0


def test_each_reason_names_its_cause(subtests):
    for change, today, causes in [
        ({}, date(2026, 5, 28), []),
        ({"asked": None}, date(2026, 5, 28), [Cause.NOT_ASKED]),
        ({"asked": date(2026, 5, 30)}, date(2026, 5, 28),
         [Cause.REQUEST_TO_COME, Cause.MARKED_TOO_SOON]),
        ({}, date(2026, 5, 25), [Cause.WAITING]),
        ({"all_answered": False}, date(2026, 5, 28), [Cause.SILENT]),
        ({"finished": date(2026, 5, 29)}, date(2026, 5, 28), [Cause.MARKED_TO_COME]),
        # A day that is today has come, and marks may be made on the day of the request.
        ({"finished": date(2026, 5, 28)}, date(2026, 5, 28), []),
        ({"finished": ASKED}, date(2026, 5, 28), []),
        ({"finished": None}, ASKED, [Cause.WAITING]),
        ({"private_lines": None}, date(2026, 5, 28), [Cause.PRIVATE]),
        ({}, date(2026, 6, 6), [Cause.STALE]),
        ({"all_answered": None, "finished": None, "private_lines": None}, date(2026, 5, 21),
         [Cause.WAITING, Cause.SILENT, Cause.PRIVATE]),
    ]:  # fmt: skip
        with subtests.test(change=change, today=today, causes=causes):
            gate = dig_gate(READY._replace(**change), today)
            assert list(gate.causes) == causes
            assert len(gate.reasons) == len(causes)
