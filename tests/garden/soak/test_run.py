"""A soak test at any instant: how it stands, what is due, and what to do next."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given as every
from hypothesis import strategies as st

from interview.garden.soak import results
from interview.garden.soak.run import soak_run
from interview.garden.soak.timed import RunState
from interview.garden.stages import new_answers
from interview.plain.clock import LOCAL
from interview.quantities.units import magnitude

CENTRAL = dt.timezone(dt.timedelta(hours=-5))
TEN = dt.datetime(2026, 5, 27, 10, 0, tzinfo=CENTRAL)

DUG = {"units": "us", "holes.1.hole_depth": "20 in"}
ROUND = {**DUG, "holes.1.hole_shape": "round", "holes.1.hole_width": "8 in"}
SOAKED = {**ROUND, "holes.1.soaked_already": "yes"}
BEGUN = {
    **SOAKED,
    "holes.1.water_at_mark": "8 in",
    "holes.1.test_start": "2026-05-27T10:00:00-05:00",
}


def after(**by: float) -> dt.datetime:
    return TEN + dt.timedelta(**by)


def at(hours: float, words: str) -> str:
    return f"{after(hours=hours).isoformat(timespec='seconds')} {words}"


def run(texts, now: dt.datetime, **more: str):
    kept = {**texts, **{f"holes.1.{key}": text for key, text in more.items()}}
    return soak_run(new_answers(kept).at("holes", 1), now)


def read(now: dt.datetime, *lines: str, **more: str):
    return run(BEGUN, now, readings="\n".join(lines), **more)


def hourly(*depths: float) -> list[str]:
    return [at(hour, f"left {depth} in") for hour, depth in enumerate(depths, 1)]


# Wetting


def test_a_hole_that_is_not_dug_waits_for_the_spade():
    found = run({"units": "us"}, TEN)
    assert found.state is RunState.NOT_DUG
    assert found.due is None and found.elapsed is None and found.due_words == ""


def test_a_dug_hole_is_to_be_filled_for_the_first_soaking():
    found = run(ROUND, TEN)
    assert found.state is RunState.WETTING_1
    assert "to soak the soil" in found.do_now


def test_a_filling_that_drains_is_looked_at_again(subtests):
    for minutes, look in [(0, 10), (9, 10), (10, 30), (31, 60), (100, 120), (250, 480), (600, 720)]:
        with subtests.test(minutes=minutes, look=look):
            found = run(ROUND, after(minutes=minutes), first_fill_start=TEN.isoformat())
            assert found.state is RunState.DRAINING_1
            assert found.due == after(minutes=look)
            assert found.elapsed == dt.timedelta(minutes=minutes)
            clock = f"{after(minutes=look):%H:%M}"
            assert clock in found.do_now and clock in found.due_words


def test_a_first_filling_that_still_stands_opens_the_slow_branch(subtests):
    for hours, words in [
        (11.9, "look again at"),
        (12, "you need no second filling"),
        (24, "too slow as it is"),
    ]:
        with subtests.test(hours=hours, words=words):
            found = run(ROUND, after(hours=hours), first_fill_start=TEN.isoformat())
            assert found.state is RunState.DRAINING_1
            assert words in found.do_now


def fills(first: float, second: float | None = None) -> dict[str, str]:
    """Return fillings that took so many minutes, an hour between them."""
    texts = {"first_fill_start": TEN, "first_fill_empty": after(minutes=first)}
    if second is not None:
        start = after(minutes=first + 60)
        texts |= {
            "second_fill_start": start,
            "second_fill_empty": start + dt.timedelta(minutes=second),
        }
    return {key: when.isoformat() for key, when in texts.items()}


def test_the_second_filling_follows_the_first():
    found = run(ROUND, after(hours=2), **fills(90))
    assert found.state is RunState.WETTING_2
    assert "1 h 30 min" in found.and_then
    later = run(ROUND, after(hours=3), **fills(90), second_fill_start=after(hours=2).isoformat())
    assert later.state is RunState.DRAINING_2
    assert later.since == after(hours=2)


def test_both_fillings_gone_in_ten_minutes_mean_sand_and_no_more_wetting(subtests):
    for first, second, sandy in [(10, 10, True), (10, 11, False), (11, 10, False)]:
        with subtests.test(first=first, second=second, sandy=sandy):
            found = run(ROUND, after(hours=2), **fills(first, second))
            assert found.state is RunState.READY
            assert ("sandy" in found.do_now) is sandy


def test_a_filling_that_took_half_a_day_needs_no_second_one():
    assert run(ROUND, after(hours=13), **fills(719)).state is RunState.WETTING_2
    found = run(ROUND, after(hours=13), **fills(720))
    assert found.state is RunState.READY
    assert "slow" in found.do_now


def test_soil_that_dried_for_a_day_is_filled_once_more():
    assert "soaked" in run(ROUND, after(hours=5), **fills(60, 90)).do_now
    assert "once more" in run(ROUND, after(hours=30), **fills(60, 90)).do_now


def test_a_wet_season_leaves_the_soaking_out():
    assert run(SOAKED, TEN).state is RunState.READY
    assert "wet season" in run(SOAKED, TEN).do_now


# Due times


def test_the_first_reading_is_due_in_an_hour_by_the_clock():
    found = run(BEGUN, after(minutes=25))
    assert found.state is RunState.RUNNING
    assert found.due == after(hours=1)
    assert found.due_words == "Next reading at 11:00, in 35 min."
    assert "alarm" in found.do_now
    assert found.short == "reading in 35 min"


def test_the_first_reading_comes_sooner_where_the_soaking_went_fast():
    fast = {**BEGUN, "holes.1.soaked_already": "no"}
    began = after(hours=3)
    found = run(fast, began, **fills(20, 40), test_start=began.isoformat())
    assert found.due - began == dt.timedelta(minutes=5)
    slower = run(fast, after(hours=5), **fills(60, 120), test_start=after(hours=5).isoformat())
    assert slower.due - slower.began == dt.timedelta(minutes=120 * 0.75 / 8)


def test_a_reading_is_due_then_overdue(subtests):
    for minutes, state in [
        (59, RunState.RUNNING),
        (60, RunState.DUE),
        (70, RunState.DUE),
        (71, RunState.OVERDUE),
    ]:
        with subtests.test(minutes=minutes, state=state):
            found = run(BEGUN, after(minutes=minutes))
            assert found.state is state
            if state is RunState.OVERDUE:
                assert "since 11:00" in found.due_words and "Late is as good" in found.due_words
                assert found.short == "READING DUE"


def test_the_next_reading_follows_the_rate():
    found = read(after(minutes=61), at(1, "left 6.5 in"))
    assert found.due == after(minutes=90)
    assert "11:30" in found.do_now


def test_a_late_reading_is_told_that_the_hole_may_be_empty():
    found = read(after(hours=6), at(1, "left 5 in"))
    assert found.state is RunState.OVERDUE
    assert "may be empty" in found.do_now
    assert "be empty" not in read(after(hours=2), at(1, "left 5 in")).do_now


# When it is enough


def test_one_very_fast_reading_is_enough():
    found = read(after(minutes=21), at(1 / 3, "left 6 in"))
    assert found.state is RunState.ENOUGH_EARLY
    assert found.enough and found.due is None
    assert read(after(minutes=21), at(1 / 3, "left 6.1 in")).state is RunState.RUNNING


SETTLING = (7.25, 6.55, 5.9, 5.3, 4.75, 4.25)


def test_six_readings_that_agree_are_enough_and_five_are_not():
    six = read(after(hours=6.1), *hourly(*SETTLING))
    assert six.state is RunState.SETTLED and six.counted == 6
    five = read(after(hours=5.1), *hourly(*SETTLING[:5]))
    assert five.state is RunState.RUNNING
    assert "1 more" in five.and_then


def test_falling_rates_want_more_readings_and_twelve_are_enough_of_any_hole():
    lines = []
    for hour in range(12):
        lines.append(at(hour + 1, f"left {8 - 5.5 * 0.8**hour:.2f} in"))
        lines.append(at(hour + 1.01, "refilled to 8 in"))
    six = read(after(hours=6.1), *lines[:12])
    assert six.state is RunState.RUNNING
    assert "still getting wet" in six.and_then
    assert read(after(hours=11.1), *lines[:22]).state is RunState.RUNNING
    twelve = read(after(hours=12.1), *lines)
    assert twelve.state is RunState.ENOUGH and "lower" in twelve.and_then


def test_six_rates_that_ease_one_by_one_want_more_readings():
    found = read(after(hours=6.1), *hourly(7.125, 6.375, 5.75, 5.25, 4.75, 4.375))
    assert found.state is RunState.RUNNING and not found.enough
    assert "still falling" in found.and_then


def test_no_fall_in_an_hour_means_one_reading_after_the_night():
    found = read(after(hours=1.1), at(1, "left 8 in"))
    assert found.state is RunState.SLOW
    assert found.due == dt.datetime(2026, 5, 28, 8, 0, tzinfo=CENTRAL)
    assert "Thu 28 May 08:00" in found.do_now
    morning = read(after(hours=22.5), at(1, "left 8 in"))
    assert morning.state is RunState.OVERDUE
    told = read(after(hours=23), at(1, "left 8 in"), at(22.5, "left 7 3/4 in"))
    assert told.state is RunState.SLOW_TOLD
    assert magnitude(told.test.drop_rate, "in/h") > 0


def test_a_slow_hole_found_at_four_in_the_morning_waits_until_the_next_day():
    found = read(after(hours=18.1), at(17, "left 8 in"), at(18, "left 8 in"))
    assert found.state is RunState.SLOW_TOLD
    early = dt.datetime(2026, 5, 27, 3, 0, tzinfo=CENTRAL)
    texts = {**BEGUN, "holes.1.test_start": early.isoformat()}
    one = f"{(early + dt.timedelta(hours=1)).isoformat()} left 8 in"
    later = run(texts, early + dt.timedelta(hours=1.1), readings=one)
    assert later.due == dt.datetime(2026, 5, 28, 8, 0, tzinfo=CENTRAL)


def test_a_hole_found_empty_is_filled_again_and_the_least_rate_told():
    found = read(after(hours=1.1), at(1, "empty"))
    assert found.state in (RunState.REFILL, RunState.ENOUGH_EARLY)
    assert found.test is None and "empty at every reading" in found.waits
    row = found.rows[0]
    assert row.since_last == "≥ 8" and row.corrected.startswith("≥ ")
    assert "at least this fast" in row.note
    slower = read(after(hours=5), at(1, "left 5 in"), at(4, "empty"))
    assert slower.state is RunState.REFILL
    assert "left out" in slower.and_then and "read after about" in slower.do_now
    assert slower.test is not None and slower.counted == 1


def test_an_instant_seen_to_empty_counts():
    found = read(after(hours=3), at(1, "left 5 in"), at(2.5, "emptied"))
    assert found.state is RunState.REFILL and found.counted == 2
    assert "is used" in found.and_then


def test_little_water_is_filled_up_and_a_refill_starts_the_wait_again():
    low = read(after(hours=3.1), *hourly(5, 3, 1.5))
    assert low.state is RunState.REFILL and "Little water" in low.do_now
    full = read(after(hours=3.2), *hourly(5, 3, 1.5), at(3.15, "refilled to 8 in"))
    assert full.state is RunState.RUNNING
    assert full.due == after(hours=3.15) + dt.timedelta(minutes=30)
    assert full.rows[-1].water == "8 in refilled"


# Rows


def test_a_row_has_every_number_of_its_reading():
    found = read(after(hours=2.1), *hourly(7, 6.25))
    assert found.rows[1].cells == ("12:00", "2:00", "6.25 in", "0.75", "0.875", "0.75", "0.174")


def test_without_the_width_the_drop_is_told_and_the_corrected_rate_waits():
    texts = {key: text for key, text in BEGUN.items() if "width" not in key}
    found = run(texts, after(hours=1.1), readings=at(1, "left 7 in"))
    assert found.rows[0].since_last == "1" and found.rows[0].corrected == ""
    assert "Width of the hole" in found.waits
    assert found.due is not None


def test_a_struck_reading_is_shown_and_not_used():
    with_it = read(after(hours=2.1), at(1, "left 7 in"), "struck " + at(1.5, "left 2 in"))
    assert with_it.rows[1].struck and with_it.rows[1].since_last == ""
    plain = read(after(hours=2.1), at(1, "left 7 in"))
    assert (with_it.due, with_it.counted, with_it.test) == (plain.due, 1, plain.test)


def test_a_reading_added_between_and_one_corrected_are_worked_out_anew():
    two = read(after(hours=2.1), *hourly(7, 6.25))
    between = read(
        after(hours=2.1), at(1, "left 7 in"), at(1.5, "left 6.6 in"), at(2, "left 6.25 in")
    )
    assert between.counted == 3
    same = magnitude(between.test.corrected_all, "in/h")
    assert same == pytest.approx(magnitude(two.test.corrected_all, "in/h"))
    corrected = read(after(hours=2.1), *hourly(7, 6.5))
    assert corrected.rows[1].since_last == "0.5"


def test_readings_that_cannot_be_are_shown_as_written_with_the_reason():
    found = read(after(hours=3), at(1, "left 7 in"), at(2, "left 7.5 in"))
    assert "Reading 2" in found.waits and found.do_now == found.waits
    assert [row.line for row in found.rows] == [at(1, "left 7 in"), at(2, "left 7.5 in")]


def test_the_depth_at_the_mark_is_asked_for_first():
    texts = {key: text for key, text in BEGUN.items() if "mark" not in key}
    assert "at the fill level" in run(texts, after(hours=1)).do_now
    lost = run(texts, after(hours=1), readings=at(1, "left 7 in"))
    assert lost.rows[0].line == at(1, "left 7 in")


def test_readings_put_off_are_no_readings():
    found = run(BEGUN, after(minutes=30), readings="don't know yet")
    assert (found.state, found.rows, found.due) == (RunState.RUNNING, (), after(hours=1))


# Closed and set aside


def test_a_covered_hole_whose_three_rates_agree_is_done_the_next_day(subtests):
    even, uneven = hourly(7.5, 7, 6.6), hourly(7, 6.6, 6.5)
    for lines, hours, left, done in (
        (even, 5, "covered", False),
        (even, 13.9, "covered", False),  # of the same day still
        (even, 14.1, "covered", True),
        (even, 14.1, "open", False),
        (uneven, 14.1, "covered", False),
    ):
        with subtests.test(hours=hours, left=left, done=done, lines=lines):
            found = read(after(hours=hours), *lines, hole_left=left)
            assert (found.state is RunState.DONE) is done
            assert (found.due is None) is done


def test_a_filled_hole_is_done_and_a_covered_one_only_when_it_is_enough():
    assert read(after(hours=2), *hourly(7), hole_left="filled").state is RunState.DONE
    assert read(after(hours=2), *hourly(7), hole_left="covered").state is RunState.OVERDUE
    six = read(after(hours=7), *hourly(*SETTLING), hole_left="covered")
    assert six.state is RunState.DONE
    assert six.due is None and six.notices == ()
    assert read(after(days=40), *hourly(7), hole_left="filled").notices == ()


def test_a_hole_set_aside_says_why_and_is_due_nothing():
    found = read(
        after(hours=2), *hourly(7), hole_counts="no", hole_set_aside_why="roots ran through it"
    )
    assert found.state is RunState.SET_ASIDE
    assert "roots ran through it" in found.do_now and found.due is None
    assert found.rows[0].since_last == "1"


# The clock


def test_a_clock_set_back_is_told_and_nothing_is_lost():
    found = read(TEN - dt.timedelta(days=2), *hourly(7, 6.25))
    assert found.clock_back and found.due is None and found.elapsed is None
    assert "Nothing is lost" in found.do_now and "Wed 27 May 12:00" in found.do_now
    assert found.counted == 2 and len(found.rows) == 2
    assert found.due_words == ""


def test_a_clock_behind_by_less_than_a_minute_is_not_told():
    assert not read(after(hours=2, seconds=-58), *hourly(7, 6.25)).clock_back
    assert read(after(hours=2, seconds=-60), *hourly(7, 6.25)).clock_back


def test_a_test_left_for_over_a_fortnight_is_not_gone_on_with():
    fresh = read(after(days=14), at(1, "left 7 in"))
    assert fresh.state is RunState.OVERDUE and fresh.notices == ()
    old = read(after(days=14, hours=1.1), at(1, "left 7 in"))
    assert "set forward" in old.notices[0] and "soak the hole twice again" in old.do_now
    assert old.due is None and old.counted == 1


ZONES = ("America/Chicago", "Asia/Kathmandu", "Australia/Lord_Howe", "UTC")


def test_another_zone_changes_no_wait_and_no_rate(subtests):
    for zone in ZONES:
        with subtests.test(zone=zone):
            here = read(after(hours=2.1), *hourly(7, 6.25))
            there = read(after(hours=2.1).astimezone(ZoneInfo(zone)), *hourly(7, 6.25))
            assert (there.due, there.elapsed, there.test) == (here.due, here.elapsed, here.test)
            assert there.state is here.state
            if zone != "America/Chicago":
                assert "every wait is still right" in there.notices[0]


@pytest.mark.parametrize(
    ("began", "hours", "shown"),
    [("2026-03-07T22:00:00-06:00", 5.0, "04:00"), ("2026-10-31T22:00:00-05:00", 5.0, "02:00")],
)
def test_summer_time_in_the_night_changes_no_elapsed_time(began, hours, shown):
    start = dt.datetime.fromisoformat(began)
    texts = {**BEGUN, "holes.1.test_start": began}
    now = (start + dt.timedelta(hours=hours)).astimezone(dt.UTC).astimezone(LOCAL)
    found = run(texts, now)
    assert found.elapsed == dt.timedelta(hours=hours)
    assert f"{now:%H:%M}" == shown
    assert found.due == start + dt.timedelta(hours=1)
    assert "4 h 00 min ago" in found.due_words
    assert "summer time" in found.notices[0]


def test_the_morning_after_is_eight_by_the_clock_of_that_morning():
    texts = {**BEGUN, "holes.1.test_start": "2026-03-07T20:00:00-06:00"}
    now = dt.datetime(2026, 3, 7, 21, 5, tzinfo=LOCAL)
    found = run(texts, now, readings="2026-03-07T21:00:00-06:00 left 8 in")
    assert found.due == dt.datetime(2026, 3, 8, 13, 0, tzinfo=dt.UTC)
    assert "Sun 08 Mar 08:00" in found.do_now


@every(st.integers(0, 40), st.sampled_from(ZONES))
def test_the_state_depends_on_the_instant_and_never_on_the_zone(half_hours, zone):
    now = after(hours=half_hours / 2)
    lines = [line for hour, line in enumerate(hourly(7, 6.25, 5.6), 1) if hour <= half_hours / 2]
    here = read(now, *lines) if lines else run(BEGUN, now)
    moved = now.astimezone(ZoneInfo(zone))
    there = read(moved, *lines) if lines else run(BEGUN, moved)
    assert (here.state, here.due, here.elapsed) == (there.state, there.due, there.elapsed)


def test_every_state_says_what_to_do_in_one_sentence_of_plain_words():
    seen = [
        run({"units": "us"}, TEN),
        run(ROUND, TEN),
        run(ROUND, after(hours=1), first_fill_start=TEN.isoformat()),
        run(ROUND, after(hours=2), **fills(90)),
        run(SOAKED, TEN),
        run(BEGUN, TEN),
        run(BEGUN, after(hours=1)),
        read(after(hours=1.1), at(1, "left 8 in")),
        read(after(hours=3.1), *hourly(5, 3, 1.5)),
        read(after(hours=6.1), *hourly(*SETTLING)),
        read(after(minutes=21), at(1 / 3, "left 6 in")),
        read(after(hours=2), *hourly(7), hole_left="filled"),
    ]
    for one in seen:
        assert one.do_now.endswith(".") and one.do_now.count(". ") == 0, one.do_now
        assert "infiltration" not in one.do_now
        assert len(one.short) <= 40
    assert len({one.state for one in seen}) == len(seen)


# Measured once


@pytest.fixture
def measured(monkeypatch) -> list[int]:
    """Grows with every time the rates of a test are worked out."""
    times: list[int] = []
    work = results.soak_test

    def counted(*args, **more):
        times.append(1)
        return work(*args, **more)

    monkeypatch.setattr(results, "soak_test", counted)
    return times


def test_the_rates_are_worked_out_once_while_only_the_clock_goes_on(measured):
    answers = new_answers({**BEGUN, "holes.1.readings": at(1, "left 7 in")})
    view = answers.at("holes", 1)
    first = soak_run(view, after(hours=1.5))
    later = soak_run(replace(view, now=after(hours=3)), after(hours=3))
    assert len(measured) == 1
    assert later.test is first.test
    assert (first.state, later.state) == (RunState.RUNNING, RunState.OVERDUE)
    assert soak_run(view, after(hours=0.5)).clock_back


@pytest.mark.parametrize(
    ("key", "text"),
    [("readings", at(1, "left 6 in")), ("hole_width", "12 in"), ("water_at_mark", "7.5 in")],
)
def test_an_answer_about_the_hole_has_them_worked_out_anew(measured, key, text):
    answers = new_answers({**BEGUN, "holes.1.readings": at(1, "left 7 in")})
    now = after(hours=1.5)
    before = soak_run(answers.at("holes", 1), now)
    changed = answers.with_text(f"holes.1.{key}", text)
    found = soak_run(changed.at("holes", 1), now)
    assert len(measured) == 2
    assert found.test.corrected != before.test.corrected
    assert found == soak_run(new_answers(changed.texts).at("holes", 1), now)
    other = answers.with_text("garden_name", "Backyard")
    assert soak_run(other.at("holes", 1), now).test is before.test


def test_each_hole_has_its_own_rates():
    second = {address.replace(".1.", ".2."): text for address, text in BEGUN.items()}
    answers = new_answers(
        {**second, **BEGUN, "holes.1.readings": at(1, "left 7 in"),
         "holes.2.readings": at(1, "left 5 in")}
    )  # fmt: skip
    drops = [soak_run(one, after(hours=2)).test.drop_rate for one in answers.items("holes")]
    assert [round(magnitude(drop, "in/h"), 6) for drop in drops] == [1, 3]
