"""Times in words, and waits that no summer time changes."""

from __future__ import annotations

import datetime as dt

from interview.garden.soak.times import clock, elapsed_words, next_morning, span, span_up, utc
from interview.plain.clock import LOCAL


def minutes(number: float) -> dt.timedelta:
    return dt.timedelta(minutes=number)


def test_a_length_of_time_in_words(subtests):
    for time, words in [
        (0, "0 min"), (59.9, "59 min"), (60, "1 h 00 min"), (-65, "1 h 05 min"),
        (47 * 60 + 59, "47 h 59 min"), (48 * 60, "2 days"), (15.9 * 1440, "15 days"),
    ]:  # fmt: skip
        with subtests.test(time=time, words=words):
            assert span(minutes(time)) == words


def test_a_wait_is_never_no_minutes():
    assert span_up(dt.timedelta(seconds=1)) == "1 min"
    assert span_up(minutes(35)) == "35 min"


def test_elapsed_is_hours_and_minutes_and_never_below_nothing():
    assert elapsed_words(minutes(125)) == "2:05"
    assert elapsed_words(minutes(60 * 60 + 5)) == "60:05"
    assert elapsed_words(minutes(-5)) == "0:00"


def test_a_time_of_day_says_its_day_where_that_is_not_today():
    now = dt.datetime(2026, 5, 28, 9, 0, tzinfo=LOCAL)
    assert clock(dt.datetime(2026, 5, 28, 13, 5, tzinfo=dt.UTC), now) == "08:05"
    assert clock(dt.datetime(2026, 5, 29, 2, 0, tzinfo=dt.UTC), now) == "21:00"
    assert clock(dt.datetime(2026, 5, 29, 12, 0, tzinfo=dt.UTC), now) == "Fri 29 May 07:00"


def test_a_night_is_as_long_as_it_is(subtests):
    for day, hours in [((2026, 3, 7), 11), ((2026, 10, 31), 13), ((2026, 5, 27), 12)]:
        with subtests.test(day=day, hours=hours):
            evening = dt.datetime(*day, 20, 0, tzinfo=LOCAL)
            morning = evening.replace(hour=8) + dt.timedelta(days=1)
            assert utc(morning) - utc(evening) == dt.timedelta(hours=hours)
            assert next_morning(evening, evening, 6) == utc(morning)


def test_the_morning_is_the_one_after_where_the_night_is_too_short():
    late = dt.datetime(2026, 5, 28, 2, 1, tzinfo=LOCAL)
    assert next_morning(late, late, 6) == utc(late.replace(day=29, hour=8, minute=0))
    soon = late.replace(minute=0)
    assert next_morning(soon, soon, 6) == utc(late.replace(hour=8, minute=0))
    then = soon.replace(second=1, microsecond=1)
    assert next_morning(then, then, 5) == utc(late.replace(hour=8, minute=0))
