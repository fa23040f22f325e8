"""The edges of what a rainfall file may hold, and what the years do without being followed."""

import datetime as dt
import itertools
import math

import pytest
from measures import cubic, ft, ft2, hours, inch, quantity

from interview.garden.pond.hyetographs import StormShape, triangle_storm, uniform_storm
from interview.garden.pond.routing import route
from interview.garden.pond.stage import StageCurve
from interview.garden.storms import day_by_day
from interview.garden.storms.beds import beds_of
from interview.garden.storms.day_by_day import Above, DayByDay, Part
from interview.garden.storms.rain_days import LONG_YEARS, RainDays
from interview.garden.storms.rainfall_record import replay
from interview.garden.storms.record_columns import (
    LONGEST_LINE,
    MOST_LINES,
    ColumnUnclear,
    cells_of,
    find_columns,
    says_something,
)
from interview.garden.storms.record_text import head_rows, read_record
from interview.garden.storms.wet_zones import zone_hours

FIRST = dt.date(2020, 1, 1)
STAGE = StageCurve(ft2(105), ft(44), 4, 3, inch(6))


def row_of(count, in_series, rate=0.25):
    return beds_of(STAGE, ft2(570), ft2(240), quantity(rate, "in/h"), count, in_series)


def days_of(rains):
    return [(FIRST + dt.timedelta(days=at), inch(rain)) for at, rain in enumerate(rains)]


# Columns and lines


@pytest.mark.parametrize(
    ("line", "says"),
    [("# by hand", False), (' "# by hand"', False), ("", False), (" ;\t,", False), ("1,2", True)],
)
def test_a_line_says_something_unless_it_is_empty_or_a_comment(line, says):
    assert says_something(line) is says


def test_a_line_may_be_as_long_as_the_longest_and_no_longer():
    longest = "a," + "b" * (LONGEST_LINE - 2)
    assert len(cells_of(longest, ",")) == 2
    assert cells_of(longest + "b", ",") == [""]


def test_a_file_may_have_as_many_lines_as_the_most_and_no_more():
    most = itertools.chain(itertools.repeat("", MOST_LINES - 2), ["date,rain", "2020-01-01,1"])
    assert len(read_record(most, "in").days) == 1
    with pytest.raises(ValueError, match="more than 120,000 lines"):
        head_rows(itertools.repeat("", MOST_LINES + 1))


@pytest.mark.parametrize(
    ("given", "place"), [("1", 0), ("2", 1), ("02", 1), (" 2 ", 1)]
)  # fmt: skip
def test_a_column_is_given_by_its_number_from_one(given, place):
    rows = head_rows("rain,when\n1,2020-01-01")
    other = "rain" if place else "when"
    dates, rains = (given, other) if place else (other, given)
    assert find_columns(rows, dates, rains) == (0, (1, 0))


@pytest.mark.parametrize("given", ["0", "3", "999", "1000", "9999", "12345", "²", "-1", "1.0"])
def test_a_number_that_no_column_has_is_refused(given):
    rows = head_rows("date,rain\n2020-01-01,1")
    with pytest.raises(ColumnUnclear):
        find_columns(rows, "date", given)
    with pytest.raises(ColumnUnclear):
        find_columns(rows, "1", given)


def test_a_column_of_three_digits_is_a_column():
    wide = ",".join(["x"] * 998 + ["date", "rain"])
    assert find_columns(head_rows(wide), "999", None) == (0, (998, 999))


def test_columns_not_named_are_told_by_the_first_160_characters_of_the_first_line():
    with pytest.raises(ColumnUnclear, match="No column is named date") as refused:
        find_columns(head_rows(",".join(["x" * 30] * 12)), None, None)
    told = str(refused.value).partition("has: ")[2].removesuffix(".")
    assert told == ", ".join(["x" * 30] * 12)[:160]


def test_the_unit_is_the_last_word_of_a_heading_of_several():
    found = read_record("date,daily rain mm\n2020-01-01,1", "mm")
    assert len(found.days) == 1
    with pytest.raises(ValueError, match="says millimeters"):
        read_record("date,daily rain mm\n2020-01-01,1", "in")


@pytest.mark.parametrize("name", ["in", "?"])
def test_a_heading_of_one_word_or_none_says_no_unit(name):
    assert len(read_record(f"date,{name}\n2020-01-01,1", "mm", "1", "2").days) == 1


def test_without_a_heading_no_line_of_data_is_held_for_one():
    found = read_record("2020-01-01,1\n2020-01-02,3 mm", "in", "1", "2")
    assert [one.line for one in found.bad_lines] == [2]


def test_a_title_shorter_than_the_columns_is_no_heading_of_them():
    assert len(read_record("Station 12\n2020-01-01,1", "in", "1", "2").days) == 1


def test_the_mark_that_begins_some_files_is_no_part_of_the_first_name():
    assert len(read_record("\ufeffdate,rain\n2020-01-01,1", "in", "date", "rain").days) == 1


def test_how_far_a_reading_is_is_told_every_two_thousand_lines():
    days = (FIRST + dt.timedelta(days=at) for at in range(4100))
    told = []
    lines = ["date,rain", *(f"{day},0" for day in days)]
    read_record(lines, "in", tell=lambda *now: told.append(now))
    assert told == [(2000, 4101), (4000, 4101)]


@pytest.mark.parametrize("line", ["{},1", "2020-01-01,{}"])
def test_a_date_or_a_depth_has_no_more_than_a_hundred_characters(line):
    for long, why in ((100, "is not a d"), (101, "no more than 100 characters")):
        with pytest.raises(ValueError, match="No day with a depth") as refused:
            read_record(["date,rain", line.format("x" * long)], "in")
        assert why in str(refused.value)
        assert "Line 2: " in str(refused.value)


@pytest.mark.parametrize(
    ("dates", "first"),
    [
        (["5/12/2020"], None),
        (["12/5/2020"], None),
        (["12/25/2020", "5/6/2020"], dt.date(2020, 5, 6)),
        (["25/12/2020", "5/6/2020"], dt.date(2020, 6, 5)),
        (["12/13/2020"], dt.date(2020, 12, 13)),
    ],
)
def test_day_and_month_are_told_apart_where_one_is_over_twelve(dates, first):
    lines = ["date,rain", *(f"{one},1" for one in dates)]
    if first is None:
        with pytest.raises(ValueError, match="could be two dates"):
            read_record(lines, "in")
    else:
        assert read_record(lines, "in").days[0][0] == first


@pytest.mark.parametrize(
    ("year", "kept"), [(1599, False), (1600, True), (2399, True), (2400, False)]
)
def test_the_years_of_a_record(year, kept):
    found = read_record(f"date,rain\n{year}-01-01,1\n2020-01-01,1", "in")
    assert len(found.days) == 1 + kept


def test_the_wettest_day_ever_is_a_day():
    found = read_record("date,rain\n2020-01-01,1825\n2020-01-02,1825.1", "mm")
    assert [one.line for one in found.bad_lines] == [3]


def test_a_year_is_doubted_above_two_hundred_inches():
    def doubt(last):
        lines = [f"2020-01-0{at},50" for at in (1, 2, 3)]
        return read_record("\n".join(["date,rain", *lines, f"2020-01-04,{last}"]), "in").doubt

    assert doubt("50") == ""
    assert "in millimeters?" in doubt("50.01")


# The years


def test_how_far_the_years_are_is_told_every_thousand_days():
    told = []
    replay(days_of([0] * 2100), row_of(1, False).pool, tell=lambda *now: told.append(now))
    assert told == [(0, 2100), (1000, 2100), (2000, 2100)]


def test_the_rain_of_a_day_falls_in_the_hours_asked_for():
    garden = row_of(1, False)
    for long in (1, 3, 12):
        day = replay(days_of([2]), garden.pool, quantity(long, "h"))
        alone = route(garden.pool, uniform_storm(inch(2), quantity(long, "h")))
        assert cubic(day.spill_volume) == pytest.approx(cubic(alone.spill_volume), rel=1e-4)
        assert cubic(alone.spill_volume) > 1


@pytest.mark.parametrize("gap", [0.2, 1.0, 3.0])
def test_a_pond_dries_over_missing_days_as_over_dry_ones(gap):
    """Twelve days of rain and dry days in a bed that takes a week to empty."""
    garden, rains = row_of(2, True, 0.03), [2.5, 0, 0, gap, 0, 0, 0, 1]
    days = days_of(rains)
    whole = replay(days, garden.pool, beds_below=1, heights=(inch(2),))
    some = replay([one for one in days if one[1] != inch(0)], garden.pool, beds_below=1)
    assert cubic(some.standing_volume) == pytest.approx(cubic(whole.standing_volume), rel=1e-6)
    assert cubic(some.spill_volume) == pytest.approx(cubic(whole.spill_volume), rel=1e-6)
    came = sum(rain / 12 * (570 + 240 + 240) for rain in rains)
    gone = (whole.soaked_volume, whole.spill_volume, whole.standing_volume)
    assert cubic(whole.inflow_volume) == pytest.approx(came)
    assert sum(map(cubic, gone)) == pytest.approx(came, rel=1e-5)


def test_a_little_rain_on_a_full_pond_is_not_lost():
    days = days_of([2.5, 0.01, 0.01])
    found = replay(days, row_of(1, False, 0.03).pool)
    gone = (found.soaked_volume, found.spill_volume, found.standing_volume)
    assert sum(map(cubic, gone)) == pytest.approx(2.52 / 12 * 810, rel=1e-5)


def test_what_the_soil_takes_at_once_and_dry_days_are_not_followed(monkeypatch):
    """A tenth of an inch on 810 sq ft in 6 h is 1.125 cu ft an hour; a floor of 105 sq ft takes
    2.19 at a quarter inch."""
    followed, rule = [], day_by_day.pieces_of
    monkeypatch.setattr(
        day_by_day, "pieces_of", lambda *given: (followed.append(given), rule(*given))[1]
    )
    garden = row_of(1, False)
    for rain, times in ((0.1, 0), (0.19, 0), (0.2, 1), (0.0, 0)):
        followed.clear()
        replay(days_of([rain, 0, 0]), garden.pool)
        assert len(followed) == times
    assert all(steps == day_by_day.YEARS_STEPS for *_, steps in followed)
    # Six inches soak away in a day; less after them stands no longer, more may stand longer.
    for rains, times in (((1.0, 0, 0.4, 0, 0.7), 1), ((0.9, 0, 0.95, 0, 0.99, 0, 1.0), 4)):
        followed.clear()
        replay(days_of(rains), row_of(1, False, 0.5).pool)
        assert len(followed) == times
    followed.clear()
    replay(days_of([1.0]), garden.pool, shape=StormShape.TRIANGLE)
    (given,) = followed
    assert given[-1] == 8


def test_an_inch_is_seen_in_short_parts():
    """An inch in 6 h that rises to 1/3 in/h and fades; eight parts of 3/4 h."""
    spans = triangle_storm(inch(1)).spans
    steps = DayByDay(row_of(1, False).pool.bare, lambda _: 810.0, 0, 240.0, spans, []).steps
    assert [one.start for one in steps] == [0, 0.75, 1.5, 2.25, 3, 3.75, 4.5, 5.25]
    assert [one.end for one in steps] == [0.75, 1.5, 2.25, 3, 3.75, 4.5, 5.25, 6]
    falls = [one / 32 for one in (1, 3, 5, 7, 7, 5, 3, 1)]
    assert [one.fall for one in steps] == pytest.approx(falls)
    hardest = [one / 12 for one in (1, 2, 3, 4, 4, 3, 2, 1)]
    assert [one.hardest for one in steps] == pytest.approx(hardest)
    later = [one / 12 for one in (4, 4, 4, 4, 3, 2, 1, 0)]
    assert [one.later for one in steps] == pytest.approx(later)


def test_a_dry_day_asks_for_no_area():
    areas = []
    run = DayByDay(
        row_of(1, False).pool.bare, lambda rain: areas.append(rain) or 810.0, 0, 240.0,
        uniform_storm(inch(1)).spans, [Above(0.0)],
    )  # fmt: skip
    for at, rain in enumerate((0.0, 0.5, 0.0)):
        run.take(FIRST + dt.timedelta(days=at), rain)
    assert areas == [0.5]


def test_the_share_held_of_less_than_a_cubic_foot():
    assert Part(came=0.5, spill=0.1).share_held == pytest.approx(0.8)
    garden = beds_of(STAGE, ft2(2), ft2(1), quantity(0.001, "in/h"), 1, False)
    deep = replay(days_of([3.9]), garden.pool)
    assert deep.share_held == 1
    little = StageCurve(ft2(1), ft(4), 4, 0, inch(1))
    over = beds_of(little, ft2(1), ft2(1), quantity(0.001, "in/h"), 1, False)
    found = replay(days_of([2]), over.pool)
    assert cubic(found.inflow_volume) == pytest.approx(4 / 12)
    held = 1 - cubic(found.spill_volume) / (4 / 12)
    assert found.share_held == pytest.approx(held)
    assert 0.2 < held < 0.3


def test_beds_side_by_side_have_none_below():
    assert [row_of(3, True).below, row_of(3, False).below, row_of(1, True).below] == [2, 0, 0]


def test_the_beds_of_a_row_soak_by_their_floors_alone_where_that_is_asked():
    garden, rain = row_of(2, True), triangle_storm(inch(2))
    first, below = garden.route(rain, floor_only=True).beds
    alone = route(garden.pool, rain, floor_only=True)
    assert first.hours_on_floor == alone.hours_on_floor
    assert below.pool.catchment == ft2(0)
    wetted = garden.route(rain).beds[1]
    assert below.hours_on_floor > wetted.hours_on_floor
    gone = cubic(below.soaked_volume) + cubic(below.spill_volume)
    assert gone == pytest.approx(cubic(alone.spill_volume) + 2 / 12 * 240, rel=1e-6)


def test_a_record_of_just_long_enough_is_not_short():
    assert not RainDays(LONG_YEARS.value, (1.0,)).short
    assert RainDays(LONG_YEARS.value - 0.1, (1.0,)).short


@pytest.mark.parametrize("deep", [-1, math.inf, math.nan])
def test_a_depth_that_no_pond_has_is_refused(deep):
    with pytest.raises(ValueError, match="pond depth"):
        zone_hours(inch(deep), quantity(1, "in/h"))


@pytest.mark.parametrize("rain", [0.0, 0.01])
def test_a_bed_above_a_dry_one_dries_on_the_next_day(rain):
    """1.3 in stand in the first bed a little over a night; the second is dry long before."""
    garden = row_of(2, True, 0.3)
    night = replay(days_of([1.3]), garden.pool, beds_below=1)
    assert 0 < cubic(night.standing_volume) < 5
    assert cubic(replay(days_of([1.3]), garden.pool).standing_volume) == cubic(
        night.standing_volume
    )
    after = replay(days_of([1.3, rain]), garden.pool, beds_below=1)
    assert cubic(after.standing_volume) == 0
    assert hours(after.longest_wet_spell) > 24
