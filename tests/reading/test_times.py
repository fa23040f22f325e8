"""Times of day, dates and instants as people type them."""

from __future__ import annotations

import datetime as dt
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.reading import (
    Refused,
    echo_date,
    echo_instant,
    read_clock,
    read_date,
    read_instant,
    write_instant,
)

CHICAGO = ZoneInfo("America/Chicago")
NOW = dt.datetime(2026, 5, 21, 15, 30, 20, 5, tzinfo=CHICAGO)
TODAY = NOW.date()


def at(*parts: int, hours: float = -5) -> dt.datetime:
    return dt.datetime(*parts, tzinfo=dt.timezone(dt.timedelta(hours=hours)))


def refusal(read, text, *rest) -> str:
    with pytest.raises(Refused) as caught:
        read(text, *rest)
    return caught.value.said


def test_times_of_day_are_read(subtests):
    for text, hour, minute in [
        ("10:30", 10, 30),
        ("10.30", 10, 30),
        ("1030", 10, 30),
        ("10h30", 10, 30),
        ("10:30am", 10, 30),
        ("10:30 a.m.", 10, 30),
        ("10:30 AM", 10, 30),
        ("10:30pm", 22, 30),
        ("22:30", 22, 30),
        ("22.30", 22, 30),
        ("2230", 22, 30),
        ("7 am", 7, 0),
        ("7:30 pm", 19, 30),
        ("07:30", 7, 30),
        ("0:30", 0, 30),
        ("12 am", 0, 0),
        ("12 pm", 12, 0),
        ("noon", 12, 0),
        ("midnight", 0, 0),
    ]:
        with subtests.test(text=text, hour=hour, minute=minute):
            assert read_clock(text) == dt.time(hour, minute)


def test_seconds_of_a_time_are_kept():
    assert read_clock("10:15:42") == dt.time(10, 15, 42)


def test_a_short_hour_is_refused_showing_morning_and_evening(subtests):
    for text, hour in [("7", "7:00"), ("7:30", "7:30"), ("730", "7:30")]:
        with subtests.test(text=text, hour=hour):
            assert refusal(read_clock, text).endswith(f"Write {hour} am or {hour} pm.")


def test_a_short_hour_is_morning_on_the_24_hour_clock():
    assert read_clock("7:30", clock24=True) == dt.time(7, 30)


def test_a_text_that_is_no_time_of_day_is_refused(subtests):
    for text, hint in [
        ("24:00", "midnight"), ("25:00", "23:59"), ("10:60", "59"), ("13 pm", "1 to 12"),
        ("0 am", "1 to 12"), ("13", "13:00"), ("soon", "time of day"), ("10:3", "time of day"),
        ("1 0:30", "time of day"), ("", "Nothing is written"),
    ]:  # fmt: skip
        with subtests.test(text=text, hint=hint):
            assert hint in refusal(read_clock, text)


def test_a_date_is_read_however_it_is_written(subtests):
    for text in [
        "2025-05-01", "2025-5-1", "1 May 2025", "May 1 2025", "May 1, 2025", "1st May 2025",
        "01may2025", "1-May-2025", "20250501", "2025/05/01", "Thursday 1 May 2025",
        "thu, 1 may 2025",
    ]:  # fmt: skip
        with subtests.test(text=text):
            assert read_date(text, TODAY) == dt.date(2025, 5, 1)


def test_dates_with_one_reading_are_read(subtests):
    for text, date in [
        ("13/5/2025", dt.date(2025, 5, 13)),
        ("5/13/2025", dt.date(2025, 5, 13)),
        ("5.5.2025", dt.date(2025, 5, 5)),
        ("May 1", dt.date(2026, 5, 1)),
        ("29 Feb 2024", dt.date(2024, 2, 29)),
        ("today", dt.date(2026, 5, 21)),
        ("yesterday", dt.date(2026, 5, 20)),
    ]:
        with subtests.test(text=text, date=date):
            assert read_date(text, TODAY) == date


def test_a_date_in_numbers_is_refused_showing_both_readings(subtests):
    for text in ["5/6/2025", "05/06/2025", "5.6.2025", "5-6-2025", "5/6/25"]:
        with subtests.test(text=text):
            assert refusal(read_date, text, TODAY).endswith("Write 5 June 2025 or 6 May 2025.")


def test_a_month_and_a_day_in_numbers_are_taken_where_only_one_date_can_be_meant():
    assert read_date("5/13", TODAY) == read_date("13/5", TODAY) == dt.date(2026, 5, 13)
    assert "Write 12 February 2026 or 2 December 2026" in refusal(read_date, "12/2", TODAY)
    assert "is not a date" in refusal(read_date, "5/6/7/8", TODAY)


def test_a_text_that_is_no_date_is_refused_each_in_its_own_words(subtests):
    for text, hint in [
        ("13/5/25", "in full, such as 13 May 2025"),
        ("1 May 25", "in full"),
        ("31 Feb 2025", "no day 31"),
        ("2025-02-30", "no day 30"),
        ("2025-02-29", "no day 29"),
        ("2025-13-01", "no month 13"),
        ("13/13/2025", "no month 13"),
        ("tomorrow", "still to come"),
        ("2025", "not a date"),
        ("2025-W18-4", "not a date"),
        ("0000-01-01", "year 0"),
        ("1899-01-01", "1899"),
        ("9999-01-01", "9999"),
        ("10000-01-01", "not a date"),
        ("Friday 1 May 2025", "Thursday"),
        ("1 Maybe 2025", "not a date"),
    ]:
        with subtests.test(text=text, hint=hint):
            assert hint in refusal(read_date, text, TODAY)


def test_a_date_is_echoed_with_its_weekday():
    assert echo_date(dt.date(2025, 5, 1)) == "Thursday 1 May 2025"


@given(st.dates(dt.date(2000, 1, 1), dt.date(2099, 12, 31)))
def test_a_date_that_is_echoed_reads_back(date):
    assert read_date(echo_date(date), TODAY) == date


def test_instants_are_read_in_the_zone_of_now(subtests):
    for text, instant in [
        ("now", at(2026, 5, 21, 15, 30, 20)),
        ("10:15", at(2026, 5, 21, 10, 15)),
        ("10.15am", at(2026, 5, 21, 10, 15)),
        ("today 10:15", at(2026, 5, 21, 10, 15)),
        ("2026-05-21 10:15", at(2026, 5, 21, 10, 15)),
        ("2026-05-21 9:15", at(2026, 5, 21, 9, 15)),
        ("2026-05-21T10:15:30", at(2026, 5, 21, 10, 15, 30)),
        ("21 May 2026 10:15 am", at(2026, 5, 21, 10, 15)),
        ("May 1, 2025 10:30 pm", at(2025, 5, 1, 22, 30)),
        ("yesterday 18:30", at(2026, 5, 20, 18, 30)),
        ("18:30 yesterday", at(2026, 5, 20, 18, 30)),
        ("2025-05-01 10:00:00+02:00", at(2025, 5, 1, 10, hours=2)),
        ("2025-05-01T08:00Z", at(2025, 5, 1, 10, hours=2)),
        ("2025-05-01 10:00 +02:00", at(2025, 5, 1, 10, hours=2)),
        ("2025-05-01 10:00:00 -5", at(2025, 5, 1, 10)),
        ("2025-05-01T08:00:00.123456Z", at(2025, 5, 1, 8, hours=0)),
        ("2026-01-15 10:00", at(2026, 1, 15, 10, hours=-6)),
        ("first 2026-11-01 01:30", at(2026, 11, 1, 1, 30, hours=-5)),
        ("second 2026-11-01 01:30", at(2026, 11, 1, 1, 30, hours=-6)),
    ]:
        with subtests.test(text=text, instant=instant):
            found = read_instant(text, NOW)
            assert found == instant
            assert isinstance(found.tzinfo, dt.timezone)


def test_a_text_that_is_no_instant_is_refused(subtests):
    for text, hint in [
        ("16:00", "Write yesterday 16:00"),
        ("2026-03-08 02:30", "did not exist"),
        ("2026-11-01 01:30", "Write first 2026-11-01 01:30 or second 2026-11-01 01:30."),
        ("2025-05-01T25:00:00Z", "23:59"),
        ("2025-05-01T10:00:00+99:99", "No clock"),
        ("2026-05-21", "time of day too"),
        ("tomorrow 10:00", "still to come"),
        ("10:00-11:00", "one time"),
        ("5/6/2026 10:15", "5 June 2026 or 6 May 2026"),
        ("2:15", "2:15 am or 2:15 pm"),
        ("+1h", "start"),
        ("1:30 in the night", "not a date"),
    ]:
        with subtests.test(text=text, hint=hint):
            assert hint in refusal(read_instant, text, NOW)


def test_an_elapsed_time_counts_from_the_start():
    start = at(2026, 5, 21, 10, 15)
    assert read_instant("+1h 30m", NOW, start) == at(2026, 5, 21, 11, 45)
    assert read_instant("+0:45", NOW, start) == at(2026, 5, 21, 11, 0)


def test_an_elapsed_time_is_true_across_the_change_of_clocks():
    start = dt.datetime(2026, 11, 1, 0, 30, tzinfo=CHICAGO)
    assert read_instant("+2h", NOW, start) == at(2026, 11, 1, 1, 30, hours=-6)


def test_an_elapsed_time_of_ages_is_refused():
    assert "year" in refusal(read_instant, "+999999999 h", NOW, NOW)


def test_a_time_of_day_after_a_start_falls_on_the_next_day_when_it_must():
    start = at(2026, 5, 20, 22, 0)
    assert read_instant("23:30", NOW, start) == at(2026, 5, 20, 23, 30)
    assert read_instant("00:30", NOW, start) == at(2026, 5, 21, 0, 30)
    assert read_instant("22:00", NOW, start) == start


def test_the_repeated_hour_can_be_told_apart_after_a_start():
    now = dt.datetime(2026, 11, 1, 6, 0, tzinfo=CHICAGO)
    start = at(2026, 11, 1, 0, 50)
    said = refusal(read_instant, "01:30", now, start)
    assert said.endswith("Write first 01:30 or second 01:30.")
    first, second = (read_instant(f"{which} 01:30", now, start) for which in ("first", "second"))
    assert second - first == dt.timedelta(hours=1)


def test_instants_of_one_zone_subtract_truly():
    evening = read_instant("2026-10-31 22:00", NOW)
    morning = read_instant("2026-11-01 06:00", NOW)
    assert morning - evening == dt.timedelta(hours=9)


def test_an_instant_is_written_with_seconds_and_offset():
    assert write_instant(at(2026, 5, 21, 10, 15)) == "2026-05-21T10:15:00-05:00"


def test_an_instant_is_echoed_with_weekday_and_offset():
    assert echo_instant(at(2026, 5, 21, 10, 15)) == "Thursday 21 May 2026 10:15 (UTC-05:00)"
    assert echo_instant(at(2026, 5, 21, 10, 15, 9)).endswith("10:15:09 (UTC-05:00)")


def test_a_time_without_an_offset_is_a_mistake_of_the_caller():
    for call in (write_instant, echo_instant, lambda naive: read_instant("now", naive)):
        with pytest.raises(ValueError, match="offset"):
            call(dt.datetime(2026, 5, 21))


_INSTANTS = st.datetimes(
    dt.datetime(2000, 1, 2), dt.datetime(2099, 12, 30), timezones=st.just(dt.UTC)
).map(lambda when: when.replace(microsecond=0))
_ZONES = st.sampled_from(
    ["America/Chicago", "Europe/Berlin", "Australia/Lord_Howe", "Asia/Kathmandu", "UTC"]
).map(ZoneInfo)


@given(_INSTANTS, _ZONES)
def test_an_instant_that_is_written_or_echoed_reads_back(when, zone):
    local = when.astimezone(zone)
    assert read_instant(write_instant(local), NOW) == when
    assert read_instant(echo_instant(local), NOW) == when


@given(_INSTANTS, _ZONES)
def test_every_wall_clock_time_is_read_or_told_apart(when, zone):
    """A local time that did happen is read as itself, or as one of the two it could be."""
    local = when.astimezone(zone)
    text = f"{local:%Y-%m-%d %H:%M:%S}"
    try:
        found = {read_instant(text, NOW.astimezone(zone))}
    except Refused:
        found = {read_instant(f"{w} {text}", NOW.astimezone(zone)) for w in ("first", "second")}
        assert len(found) == 2
    assert when in found


EVENING = at(2026, 5, 21, 20, 30)


def test_a_time_without_am_or_pm_is_taken_where_only_one_of_the_two_can_be(subtests):
    for text, now, after, found in [
        ("8:05", EVENING, at(2026, 5, 21, 19, 0), at(2026, 5, 21, 20, 5)),
        ("8.05", EVENING, at(2026, 5, 21, 19, 0), at(2026, 5, 21, 20, 5)),
        ("8:05", at(2026, 5, 21, 9, 0), None, at(2026, 5, 21, 8, 5)),
        ("8:05", at(2026, 5, 22, 9, 0), at(2026, 5, 21, 21, 0), at(2026, 5, 22, 8, 5)),
        ("8:05:30", EVENING, at(2026, 5, 21, 19, 0), at(2026, 5, 21, 20, 5, 30)),
    ]:
        with subtests.test(text=text, now=now, after=after, found=found):
            assert read_instant(text, now, after) == found


def test_a_time_without_am_or_pm_is_asked_back_where_both_or_neither_can_be(subtests):
    for now, after in [
        (EVENING, None),
        (EVENING, at(2026, 5, 21, 7, 0)),
        (at(2026, 5, 21, 19, 0), at(2026, 5, 21, 9, 0)),
        (dt.datetime(2000, 1, 1, tzinfo=dt.UTC), None),
    ]:
        with subtests.test(now=now, after=after):
            assert "8:05 am" in refusal(read_instant, "8:05", now, after)


def test_a_time_that_may_have_come_twice_is_not_guessed_to_be_of_the_afternoon():
    night = dt.datetime(2026, 11, 1, 18, 0, tzinfo=CHICAGO)
    assert "1:30 am" in refusal(read_instant, "1:30", night)
