"""Years of daily rain, and the text they come in."""

from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from measures import cubic, hours, inches
from scipy.optimize import brentq

from interview.garden.pond.hyetographs import StormShape, storm
from interview.garden.pond.pool import pool
from interview.garden.pond.routing import route
from interview.garden.pond.stage import SQUARE_CORNERS, StageCurve
from interview.garden.storms.rainfall_record import replay
from interview.garden.storms.record_text import Gap, read_record
from interview.quantities.units import magnitude, quantity


def bed(rate=0.25, served=570, deep=6):
    """Floor 15 x 7 ft, 3:1, with 240 sq ft inside the rim."""
    stage = StageCurve(
        quantity(105, "ft**2"), quantity(44, "ft"), SQUARE_CORNERS, 3, quantity(deep, "in")
    )
    inside = quantity(240, "ft**2")
    return pool(stage, quantity(served, "ft**2"), inside, quantity(rate, "in/h"))


def volume(feet):
    """Water in it by depth: its area 105 + 132 h + 36 h^2 summed."""
    return feet * (105 + 66 * feet + 12 * feet**2)


def poured(rains, rate):
    """Return what came and what ran over, all of a day's rain at once; worked independently."""
    depth = came = spill = 0.0
    for rain in rains:
        held = volume(depth) + rain / 12 * 810
        came, spill = came + rain / 12 * 810, spill + max(0, held - 70.5)
        depth = brentq(lambda h, held=held: volume(h) - min(held, 70.5), 0, 1, xtol=1e-14)
        depth = max(0, depth - 24 * rate / 12)
    return came, spill


AT_ONCE = quantity(0, "h")
TWELVE = [0, 0.30, 0.05, 1.40, 0.80, 0, 0, 2.10, 0.15, 0, 0.60, 1.10]
START = date(2020, 1, 1)


def in_a_row(depths, start=START, unit="in"):
    return [(start + timedelta(days=n), quantity(d, unit)) for n, d in enumerate(depths)]


def lines(*rows, head="date,rain"):
    return "\n".join([head, *rows])


def test_twelve_days_give_the_worked_share():
    found = replay(in_a_row(TWELVE), bed(), AT_ONCE)
    came, spill = poured(TWELVE, 0.25)
    assert cubic(found.inflow_volume) == pytest.approx(438.75)
    assert came == pytest.approx(438.75)
    assert cubic(found.spill_volume) == pytest.approx(spill, rel=1e-9)
    assert found.share_held == pytest.approx(1 - spill / came, abs=1e-9)
    assert [day.day for day in found.overflow_days] == [4, 8, 12]
    assert [day.day for day in found.days_over] == [4, 8, 12]
    assert inches(found.rain) == pytest.approx(6.5)
    assert found.longest_rain_days == 4
    assert found.overflow_days_a_year == pytest.approx(3 * 365.25 / 12)


def test_half_the_rate_holds_less():
    slow = replay(in_a_row(TWELVE), bed(0.125), AT_ONCE)
    came, spill = poured(TWELVE, 0.125)
    assert slow.share_held == pytest.approx(1 - spill / came, abs=1e-9)
    assert slow.share_held < replay(in_a_row(TWELVE), bed(), AT_ONCE).share_held


def test_rain_over_hours_lets_some_soak_in_meanwhile():
    spread = replay(in_a_row(TWELVE), bed())
    assert spread.share_held > replay(in_a_row(TWELVE), bed(), AT_ONCE).share_held


def test_years_are_counted_apart():
    days = in_a_row([0, 3.0], date(2020, 12, 30)) + in_a_row([3.0, 3.0, 0], date(2021, 1, 1))
    found = replay(days, bed())
    assert [(year.year, year.days, year.overflow_days) for year in found.years] == [
        (2020, 2, 1),
        (2021, 3, 2),
    ]
    assert sum(inches(year.rain) for year in found.years) == pytest.approx(9)
    assert found.years[0].share_held > found.years[1].share_held
    # The first year holds what it would by itself; a year without rain holds all of it.
    alone = replay(days[:2], bed())
    assert found.years[0].share_held == pytest.approx(alone.share_held)
    assert replay(in_a_row([0.0, 0.0]), bed()).years[0].share_held == 1
    little = replay(in_a_row([0.001]), bed())
    assert little.years[0].share_held == pytest.approx(little.share_held) == 1


def test_the_longest_wet_spell_crosses_midnight():
    days = in_a_row([0, 0.5, 0.5, 0, 0, 0.5, 0])
    found = replay(days, bed(), AT_ONCE, heights=[quantity(1, "in")])
    spell = found.longest_wet_spell
    # Half an inch brings 33.75 cubic feet and is gone within a day: two spells, not one.
    half = deep(33.75)
    assert hours(spell) == pytest.approx(half / 0.25)
    assert hours(found.spells[1]) == pytest.approx((half - 1) / 0.25)
    heavy = replay(in_a_row([1.04, 0, 0]), bed(0.2), AT_ONCE)
    assert hours(heavy.longest_wet_spell) == pytest.approx(deep(1.04 * 67.5) / 0.2)
    two = replay(in_a_row([1.04, 0.3, 0, 0]), bed(0.2), AT_ONCE)
    left = deep(1.04 * 67.5) - 24 * 0.2
    again = deep(volume(left / 12) + 0.3 * 67.5)
    assert hours(two.longest_wet_spell) == pytest.approx(24 + again / 0.2)


def deep(water):
    """Depth in inches of so many cubic feet."""
    return 12 * brentq(lambda feet: volume(feet) - water, 0, 1, xtol=1e-14)


def test_a_record_without_rain_has_no_wet_spell():
    found = replay(in_a_row([0, 0]), bed())
    assert hours(found.longest_wet_spell) == 0
    assert found.share_held == 1
    assert found.longest_rain_days == 0


def test_water_standing_at_the_end_is_part_of_the_spell_and_of_the_account():
    found = replay(in_a_row([0, 1.04]), bed(0.01), AT_ONCE)
    assert hours(found.longest_wet_spell) == pytest.approx(24)
    left = deep(1.04 * 67.5) - 0.24
    assert cubic(found.standing_volume) == pytest.approx(volume(left / 12))


def test_missing_days_are_named_and_never_rain():
    days = in_a_row([1.0]) + in_a_row([1.0], date(2020, 1, 5))
    found = replay(days, bed())
    assert found.gaps == (Gap(date(2020, 1, 2), date(2020, 1, 4)),)
    assert found.gaps[0].days == 3
    assert found.days == 2
    assert inches(found.rain) == 2
    assert found.longest_rain_days == 1


def test_the_pond_drains_over_missing_days():
    together = replay(in_a_row([1.0, 1.0]), bed(0.1))
    apart = replay(in_a_row([1.0]) + in_a_row([1.0], date(2020, 1, 9)), bed(0.1))
    assert cubic(together.spill_volume) > 0
    assert cubic(apart.spill_volume) == 0


def test_the_target_may_be_given():
    found = replay(in_a_row(TWELVE), bed(), rain_to_hold=quantity(0.7, "in"))
    assert [day.day for day in found.days_over] == [4, 5, 8, 12]


@settings(deadline=None, max_examples=50)
@given(
    depths=st.lists(st.sampled_from([0.0, 0.0, 0.1, 0.7, 1.9]), min_size=1, max_size=12),
    served=st.floats(0, 3000),
    full=st.floats(1, 12),
    rate=st.floats(0.01, 2),
    rain_hours=st.sampled_from([0.0, 1.0, 6.0, 24.0]),
)
def test_no_water_is_lost(depths, served, full, rate, rain_hours):
    garden = bed(rate, served, full)
    found = replay(in_a_row(depths), garden, quantity(rain_hours, "h"))
    out = cubic(found.soaked_volume) + cubic(found.spill_volume) + cubic(found.standing_volume)
    came = (served + 240) / 12 * sum(depths)
    assert out == pytest.approx(came, rel=1e-5, abs=1e-9)
    assert cubic(found.standing_volume) <= cubic(garden.stage.volume) + 1e-9


@settings(deadline=None)
@given(st.sampled_from(StormShape), st.floats(0.1, 3), st.floats(0.2, 2))
def test_one_rainy_day_is_the_storm_of_that_shape(shape, rain, rate):
    garden = bed(rate)
    routed = route(garden, storm(shape, quantity(rain, "in")))
    inch = quantity(1, "in")
    day = replay(in_a_row([rain, 0, 0, 0, 0]), garden, heights=[inch], shape=shape)
    came = cubic(routed.inflow_volume)
    # The years take larger steps.
    assert cubic(day.spill_volume) == pytest.approx(cubic(routed.spill_volume), abs=3e-6 * came)
    if shape is not StormShape.TYPE_II:
        wet = hours(routed.hours_on_floor)
        assert hours(day.longest_wet_spell) == pytest.approx(wet, abs=1e-3)
        above = hours(routed.time_above(inch))
        assert hours(day.spells[1]) == pytest.approx(above, abs=1e-3)


def test_a_year_of_rain_is_the_storms_of_its_days_one_after_the_other():
    """Where each day's water is gone by night the years are so many storms."""
    rains = [n * 7919 % 13 / 4 for n in range(60)]
    garden = bed(1.0)
    found = replay(in_a_row(rains), garden, shape=StormShape.TRIANGLE)
    alone = [route(garden, storm(StormShape.TRIANGLE, quantity(rain, "in"))) for rain in rains]
    assert all(hours(one.empty_at) < 24 for one in alone)
    spilled = sum(cubic(one.spill_volume) for one in alone)
    assert cubic(found.spill_volume) == pytest.approx(spilled, rel=1e-5)
    longest = max(hours(one.hours_on_floor) for one in alone)
    assert hours(found.longest_wet_spell) == pytest.approx(longest, abs=1e-3)


def test_a_rain_that_comes_again_into_dry_beds_is_worked_out_once(calls_of):
    """Gauges count hundredths: years of rain have few depths that differ."""
    garden = bed(1.0)
    alike = [3, 0, 0, 0, 0] * 40
    otherwise = [one and one + place / 1000 for place, one in enumerate(alike)]
    again, anew = (
        calls_of(lambda rains=rains: replay(in_a_row(rains), garden, beds_below=3))
        for rains in (alike, otherwise)
    )
    assert 3 * again < 2 * anew, (again, anew)
    once = replay(in_a_row(alike[:5]), garden)
    years = replay(in_a_row(alike), garden)
    assert cubic(once.spill_volume) > 0
    assert cubic(years.spill_volume) == pytest.approx(40 * cubic(once.spill_volume))
    assert cubic(years.soaked_volume) == pytest.approx(40 * cubic(once.soaked_volume))
    assert hours(years.longest_wet_spell) == hours(once.longest_wet_spell)


def test_millimeters_give_the_same_replay():
    us = replay(in_a_row(TWELVE), bed())
    si = replay(in_a_row([25.4 * d for d in TWELVE], unit="mm"), bed())
    assert si.share_held == pytest.approx(us.share_held)


@pytest.mark.parametrize(
    ("days", "rate", "rain_hours"),
    [
        ([], 0.25, 6),
        (in_a_row([-1]), 0.25, 6),
        (in_a_row([1]) * 2, 0.25, 6),
        (in_a_row([1, 2])[::-1], 0.25, 6),
        (in_a_row([1]), 0, 6),
        (in_a_row([1]), 0.25, 25),
        (in_a_row([1]), 0.25, -1),
    ],
)
def test_records_and_gardens_that_cannot_be_are_refused(days, rate, rain_hours):
    with pytest.raises(ValueError, match=r"[a-z>]\.$"):
        replay(days, bed(rate), quantity(rain_hours, "h"))


def test_thirty_years_are_read_and_carried_whole():
    text = lines(*(f"{START + timedelta(days=n)},{n * 7919 % 13 / 10}" for n in range(10957)))
    record = read_record(text, "in")
    found = replay(record.days, bed(), heights=[quantity(3, "in")])
    assert found.days == 10957


def test_a_plain_file_is_read_in_its_own_unit():
    record = read_record(lines("2020-01-01,12.7", "2020-01-02,0"), "mm")
    assert [(day.day, inches(depth)) for day, depth in record.days] == [
        (1, pytest.approx(0.5)),
        (2, 0),
    ]
    assert record.bad_lines == ()
    assert record.gaps == ()


@pytest.mark.parametrize("unit", ["", "cm", "inches"])
def test_the_unit_is_never_guessed(unit):
    with pytest.raises(ValueError, match="inches"):
        read_record(lines("2020-01-01,1"), unit)


@pytest.mark.parametrize(
    ("head", "unit", "said"),
    [
        ("date,rain_mm", "in", "millimeters"),
        ("Date,Precipitation (inches)", "mm", "inches"),
        ("DATE,PRCP [in]", "mm", "inches"),
    ],
)
def test_a_heading_that_names_another_unit_is_refused(head, unit, said):
    with pytest.raises(ValueError, match=f"rain column says {said}"):
        read_record(lines("2020-01-01,1", head=head), unit)
    other = "in" if unit == "mm" else "mm"
    assert len(read_record(lines("2020-01-01,1", head=head), other).days) == 1


@pytest.mark.parametrize(
    "head",
    [
        "station,DATE,PRCP,TMAX",
        "id;Date;Rainfall (mm);note",
        "name\tday\tDaily Rainfall\tflag",
    ],
)
def test_columns_are_found_by_name_wherever_they_stand(head):
    mark = next(mark for mark in ",;\t" if mark in head)
    text = lines(mark.join(["x", "2020/05/31", "2.5", "y"]), head=head)
    record = read_record(text, "mm")
    assert record.days[0][0] == date(2020, 5, 31)
    assert magnitude(record.days[0][1], "mm") == pytest.approx(2.5)


def test_lines_before_the_heading_are_passed_over():
    text = "# made by hand\nStation: garden gate\n\n" + lines("2020-01-01,1")
    assert len(read_record(text, "in").days) == 1
    late = read_record(text + "\n2020-01-02,wet", "in")
    assert [bad.line for bad in late.bad_lines] == [6]


def test_semicolon_files_may_write_a_decimal_comma():
    record = read_record(lines("2020-01-01;2,5", head="date;rain"), "mm")
    assert magnitude(record.days[0][1], "mm") == pytest.approx(2.5)


def test_a_decimal_comma_inside_a_comma_file_is_a_bad_line():
    record = read_record(lines('2020-01-01,"2,5"', "2020-01-02,1"), "mm")
    assert [bad.line for bad in record.bad_lines] == [2]


def test_missing_marks_are_gaps_and_traces_are_no_depth():
    record = read_record(
        lines("2020-01-01,0.1", "2020-01-02,M", "2020-01-03,", "2020-01-04,-9999", "2020-01-05,T"),
        "in",
    )
    assert record.gaps == (Gap(date(2020, 1, 2), date(2020, 1, 4)),)
    assert record.missing_days == 3
    assert record.traces == (date(2020, 1, 5),)
    assert inches(record.days[-1][1]) == 0
    assert record.bad_lines == ()


def test_bad_lines_are_listed_by_number_and_their_days_are_missing():
    record = read_record(
        lines(
            "2020-01-01,0.1",
            "2020-01-02,-0.5",
            "2020-02-30,1",
            "soon,1",
            "2020-01-03,lots",
            "2020-01-01,0.4",
            "2020-01-04",
            "2020-01-05,1e3",
            "2020-01-06,nan",
            "2020-01-07,0.2",
        ),
        "in",
    )
    assert [bad.line for bad in record.bad_lines] == [3, 4, 5, 6, 7, 8, 9]
    assert "below zero" in record.bad_lines[0].why
    assert "no such day" in record.bad_lines[1].why
    assert "already on line 2" in record.bad_lines[4].why
    assert [day.day for day, _ in record.days] == [1, 7]
    assert record.missing_days == 5


def test_days_out_of_order_are_put_in_order():
    record = read_record(lines("2020-01-03,3", "2020-01-01,1", "2020-01-02,2"), "in")
    assert [inches(depth) for _, depth in record.days] == [1, 2, 3]


@pytest.mark.parametrize(
    ("rows", "months"),
    [
        (["1/12/2020,1", "1/13/2020,1"], [1, 1]),
        (["12/1/2020,1", "13/1/2020,1"], [1, 1]),
    ],
)
def test_short_dates_are_read_one_way_when_the_file_tells_which(rows, months):
    record = read_record(lines(*rows), "in")
    assert [day.month for day, _ in record.days] == months
    assert [day.day for day, _ in record.days] == [12, 13]


def test_short_dates_that_could_be_either_are_not_guessed():
    with pytest.raises(ValueError, match="No day"):
        read_record(lines("1/2/2020,1"), "in")
    mixed = read_record(lines("1/2/2020,1", "13/1/2020,1", "1/13/2020,1", "2020-01-05,1"), "in")
    assert len(mixed.days) == 1


def test_times_of_day_after_the_date_are_passed_over():
    record = read_record(lines("2020-01-01T09:00,1", "2020-01-02 09:00,1", "20200103,1"), "in")
    assert [day.day for day, _ in record.days] == [1, 2, 3]


@pytest.mark.parametrize(
    ("head", "words"),
    [
        ("date,temperature", "No column is named rain. .* The first line has: date, temperature."),
        ("rain,snow", "No column is named date. .* The first line has: rain, snow."),
        ("date,rain,prcp", "could all be the rain"),
    ],
)
def test_files_without_the_two_columns_are_refused(head, words):
    with pytest.raises(ValueError, match=words):
        read_record(lines("2020-01-01,1,2", head=head), "in")


@pytest.mark.parametrize("text", ["", "\n\n", "\x00\x01", "date,rain"])
def test_files_with_nothing_in_them_are_refused(text):
    with pytest.raises(ValueError, match=r"[a-z>]\.$"):
        read_record(text, "in")


def test_a_year_beyond_belief_casts_doubt_on_the_unit():
    wet = lines(*(f"{START + timedelta(days=n)},4.0" for n in range(366)))
    assert "millimeters?" in read_record(wet, "in").doubt
    assert read_record(wet, "mm").doubt == ""
    dry = lines(*(f"{START + timedelta(days=n)},0.1" for n in range(366)))
    assert "inches?" in read_record(dry, "mm").doubt
    assert read_record(dry, "in").doubt == ""


def test_a_year_is_doubted_past_its_limits_and_only_when_it_is_whole(subtests):
    """By hand: over 200 in in any year, or under 4 in (101.6 mm) in every whole one."""
    wet, dry = "millimeters?", "inches?"

    def year(number, days, depth):
        first = date(number, 1, 1)
        return [f"{first + timedelta(days=n)},{depth}" for n in range(days)]

    for unit, rows, doubt in [
        ("in", year(2021, 105, 1.9), ""),
        ("in", year(2021, 106, 1.9), wet),
        ("in", [*year(2021, 106, 1.9), *year(2022, 10, 0.1)], wet),
        ("mm", year(2021, 364, 0.1), ""),
        ("mm", year(2021, 365, 0.1), dry),
        ("mm", year(2021, 365, 0.27), dry),
        ("mm", year(2021, 365, 0.28), ""),
        ("mm", [*year(2021, 365, 0.1), *year(2022, 365, 2.0)], ""),
        ("mm", [*year(2021, 365, 0.1), *year(2022, 300, 2.0)], dry),
    ]:
        with subtests.test(unit=unit, first=rows[0], rows=len(rows)):
            said = read_record(lines(*rows), unit).doubt
            assert said.endswith(doubt) and bool(said) == bool(doubt)


@given(st.text(max_size=200))
def test_any_text_is_read_or_refused_in_a_sentence(text):
    try:
        read_record("date,rain\n" + text, "in")
    except ValueError as refusal:
        assert str(refusal).endswith(".")


def test_the_byte_order_mark_of_a_spreadsheet_is_passed_over():
    assert len(read_record("\ufeff" + lines("2020-01-01,1"), "in").days) == 1
