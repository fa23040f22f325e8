"""Years of daily rain, and the text they come in."""

from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from interview.garden.storms.routing import Pool, route, uniform_storm

from interview.garden.storms.rainfall_record import Gap, read_record, replay
from interview.quantities.units import magnitude, quantity

KAPPA = 810 / 140.25
FULL = quantity(70.5 / 140.25 * 12, "in")
RATE = quantity(0.25, "in/h")
AT_ONCE = quantity(0, "h")
TWELVE = [0, 0.30, 0.05, 1.40, 0.80, 0, 0, 2.10, 0.15, 0, 0.60, 1.10]
START = date(2020, 1, 1)


def inches(value):
    return magnitude(value, "in")


def hours(value):
    return magnitude(value, "h")


def in_a_row(depths, start=START, unit="in"):
    return [(start + timedelta(days=n), quantity(d, unit)) for n, d in enumerate(depths)]


def lines(*rows, head="date,rain"):
    return "\n".join([head, *rows])


def test_twelve_days_give_the_worked_share():
    found = replay(in_a_row(TWELVE), KAPPA, FULL, RATE, AT_ONCE)
    assert inches(found.inflow) == pytest.approx(37.54, abs=5e-3)
    assert inches(found.spill) == pytest.approx(8.471, abs=5e-4)
    assert found.share_held == pytest.approx(0.774, abs=5e-4)
    assert [day.day for day in found.overflow_days] == [4, 8, 12]
    assert [day.day for day in found.days_over] == [4, 8, 12]
    assert inches(found.rain) == pytest.approx(6.5)
    assert found.longest_rain_days == 4


def test_half_the_rate_holds_less():
    slow = replay(in_a_row(TWELVE), KAPPA, FULL, quantity(0.125, "in/h"), AT_ONCE)
    assert slow.share_held == pytest.approx(0.7188, abs=5e-5)


def test_rain_over_hours_lets_some_soak_in_meanwhile():
    spread = replay(in_a_row(TWELVE), KAPPA, FULL, RATE)
    assert spread.share_held > replay(in_a_row(TWELVE), KAPPA, FULL, RATE, AT_ONCE).share_held


def test_years_are_counted_apart():
    days = in_a_row([0, 3.0], date(2020, 12, 30)) + in_a_row([3.0, 3.0, 0], date(2021, 1, 1))
    found = replay(days, KAPPA, FULL, RATE)
    assert [(year.year, year.days, year.overflow_days) for year in found.years] == [
        (2020, 2, 1),
        (2021, 3, 2),
    ]
    assert sum(inches(year.rain) for year in found.years) == pytest.approx(9)
    assert found.years[0].share_held > found.years[1].share_held


def test_the_longest_wet_spell_crosses_midnight():
    days = in_a_row([0, 0.5, 0.5, 0, 0, 0.5, 0])
    found = replay(days, KAPPA, FULL, RATE, AT_ONCE, heights=[quantity(1, "in")])
    spell = found.longest_wet_spell
    assert spell.first_day == date(2020, 1, 2)
    # Each half inch of rain is 2.888 in of pond, gone in 11.55 h: two spells, not one.
    assert hours(spell.hours) == pytest.approx(0.5 * KAPPA / 0.25)
    assert hours(found.spells[1].hours) == pytest.approx((0.5 * KAPPA - 1) / 0.25)
    heavy = replay(in_a_row([1.04, 0, 0]), KAPPA, FULL, RATE, AT_ONCE)
    assert hours(heavy.longest_wet_spell.hours) == pytest.approx(1.04 * KAPPA / 0.25)
    two = replay(in_a_row([1.04, 0.5, 0, 0]), KAPPA, FULL, RATE, AT_ONCE)
    assert hours(two.longest_wet_spell.hours) == pytest.approx(1.54 * KAPPA / 0.25)


def test_a_record_without_rain_has_no_wet_spell():
    found = replay(in_a_row([0, 0]), KAPPA, FULL, RATE)
    assert found.longest_wet_spell.first_day is None
    assert found.share_held == 1
    assert found.longest_rain_days == 0


def test_water_standing_at_the_end_is_part_of_the_spell_and_of_the_account():
    found = replay(in_a_row([0, 1.04]), KAPPA, FULL, quantity(0.01, "in/h"), AT_ONCE)
    assert hours(found.longest_wet_spell.hours) == pytest.approx(24)
    assert inches(found.standing) == pytest.approx(1.04 * KAPPA - 0.24)


def test_missing_days_are_named_and_never_rain():
    days = in_a_row([1.0]) + in_a_row([1.0], date(2020, 1, 5))
    found = replay(days, KAPPA, FULL, RATE)
    assert found.gaps == (Gap(date(2020, 1, 2), date(2020, 1, 4)),)
    assert found.gaps[0].days == 3
    assert found.days == 2
    assert inches(found.rain) == 2
    assert found.longest_rain_days == 1


def test_the_pond_drains_over_missing_days():
    together = replay(in_a_row([1.0, 1.0]), KAPPA, FULL, quantity(0.1, "in/h"))
    apart = replay(
        in_a_row([1.0]) + in_a_row([1.0], date(2020, 1, 9)), KAPPA, FULL, quantity(0.1, "in/h")
    )
    assert inches(together.spill) > 0
    assert inches(apart.spill) == 0


def test_the_target_may_be_given():
    found = replay(in_a_row(TWELVE), KAPPA, FULL, RATE, rain_to_hold=quantity(0.7, "in"))
    assert [day.day for day in found.days_over] == [4, 5, 8, 12]


@settings(deadline=None, max_examples=50)
@given(
    depths=st.lists(st.sampled_from([0.0, 0.0, 0.1, 0.7, 1.9]), min_size=1, max_size=12),
    kappa=st.floats(1, 12),
    full=st.floats(1, 12),
    rate=st.floats(0.01, 2),
    rain_hours=st.sampled_from([0.0, 1.0, 6.0, 24.0]),
)
def test_no_water_is_lost(depths, kappa, full, rate, rain_hours):
    found = replay(
        in_a_row(depths),
        kappa,
        quantity(full, "in"),
        quantity(rate, "in/h"),
        quantity(rain_hours, "h"),
    )
    out = inches(found.soaked) + inches(found.spill) + inches(found.standing)
    assert out == pytest.approx(kappa * sum(depths), rel=1e-9, abs=1e-9)
    assert inches(found.standing) <= full + 1e-9


@settings(deadline=None)
@given(st.floats(0.1, 3), st.floats(0.2, 2))
def test_one_rainy_day_is_an_even_storm(rain, rate):
    speed = quantity(rate, "in/h")
    garden = Pool(KAPPA, FULL, speed, quantity(140.25, "ft**2"))
    storm = route(garden, uniform_storm(quantity(rain, "in")))
    inch = quantity(1, "in")
    day = replay(in_a_row([rain, 0, 0]), KAPPA, FULL, speed, heights=[inch])
    assert inches(day.spill) == pytest.approx(inches(storm.spill), abs=1e-9)
    assert hours(day.longest_wet_spell.hours) == pytest.approx(
        hours(storm.hours_on_floor), abs=1e-6
    )
    assert hours(day.spells[1].hours) == pytest.approx(hours(storm.time_above(inch)), abs=1e-6)


def test_millimeters_give_the_same_replay():
    us = replay(in_a_row(TWELVE), KAPPA, FULL, RATE)
    si = replay(in_a_row([25.4 * d for d in TWELVE], unit="mm"), KAPPA, FULL, RATE)
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
        replay(days, KAPPA, FULL, quantity(rate, "in/h"), quantity(rain_hours, "h"))


def test_thirty_years_are_read_and_carried_whole():
    text = lines(*(f"{START + timedelta(days=n)},{n * 7919 % 13 / 10}" for n in range(10957)))
    record = read_record(text, "in")
    found = replay(record.days, KAPPA, FULL, RATE, heights=[quantity(3, "in")])
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
    assert "less than no rain" in record.bad_lines[0].why
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
        ("date,temperature", "No column is named rain, .* The first line has: date, temperature."),
        ("rain,snow", "No column is named date, .* The first line has: rain, snow."),
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


@given(st.text(max_size=200))
def test_any_text_is_read_or_refused_in_a_sentence(text):
    try:
        read_record("date,rain\n" + text, "in")
    except ValueError as refusal:
        assert str(refusal).endswith(".")


def test_the_byte_order_mark_of_a_spreadsheet_is_passed_over():
    assert len(read_record("\ufeff" + lines("2020-01-01,1"), "in").days) == 1
