"""Numbers, slopes, areas, volumes and rates as people type them."""

from __future__ import annotations

from fractions import Fraction

import pytest

from interview.reading import (
    Amount,
    Refused,
    read_area,
    read_count,
    read_number,
    read_percent,
    read_pitch,
    read_rate,
    read_ratio,
    read_volume,
)

F = Fraction


def refusal(read, text, *rest) -> str:
    with pytest.raises(Refused) as caught:
        read(text, *rest)
    return caught.value.said


def test_numbers_are_exact(subtests):
    for text, number in [
        ("4.5", F(9, 2)), ("017", F(17)), ("08", F(8)), ("3,9", F("3.9")), ("1/3", F(1, 3)),
        ("2 1/2", F(5, 2)), ("2½", F(5, 2)), ("1,234,567", F(1234567)), ("0", F(0)),
    ]:  # fmt: skip
        with subtests.test(text=text, number=number):
            assert read_number(text) == number


def test_a_number_below_zero_is_refused():
    assert "below zero" in refusal(read_number, "-5")


def test_programmers_numerals_and_signs_are_refused(subtests):
    for text in [
        "1_000", "0x1F", "0o17", "0b101", "1e3", "+.5e", ".nan", ".inf", "-.inf", "nan", "1e999",
        "9" * 4301, "0x" + "f" * 1_000_000, "3,900", "$5", "70 F", "thirty", "³", "1/2/3", "5 5 5",
    ]:  # fmt: skip
        with subtests.test(text=text):
            assert refusal(read_number, text)


def test_a_count_is_a_whole_number():
    assert read_count("3") == 3
    assert read_count("017") == 17


def test_what_is_not_a_whole_number_is_refused(subtests):
    for text in ["3.5", "thirty", "³", "3 spouts", "-1", "1/2", "4/2", "1,234"]:
        with subtests.test(text=text):
            assert refusal(read_count, text)


def test_slopes_are_read_as_percent(subtests):
    for text, percent in [
        ("4.5%", F(9, 2)), ("4.5 %", F(9, 2)), ("4.5", F(9, 2)), ("4.5 percent", F(9, 2)),
        ("0.5%", F(1, 2)), ("1:20", F(5)), ("1 in 20", F(5)), ("½ in per ft", F(25, 6)),
        ('1/4"/ft', F(25, 12)), ("2 cm per m", F(2)), ("20 mm/m", F(2)), ("0", F(0)),
    ]:  # fmt: skip
        with subtests.test(text=text, percent=percent):
            assert read_percent(text) == percent


@pytest.mark.parametrize(
    ("text", "one", "other"), [("0.045", "0.045%", "4.5%"), ("1/20", "0.05%", "5%")]
)
def test_a_small_bare_slope_is_refused_showing_both_readings(text, one, other):
    said = refusal(read_percent, text)
    assert said.endswith(f"Write {one} or {other}.")
    assert read_percent(one) * 100 == read_percent(other)


def test_what_is_not_a_slope_is_refused(subtests):
    for text in ["5 deg", "-4%", "1:0", "4 ft", "%", "1 in", "5% 6%"]:
        with subtests.test(text=text):
            assert refusal(read_percent, text)


def test_roof_pitches_are_read_in_their_own_kind(subtests):
    for text, pitch in [
        ("6 in 12", ("in 12", F(6))),
        ("6/12", ("in 12", F(6))),
        ("6:12", ("in 12", F(6))),
        ("6-in-12", ("in 12", F(6))),
        ('6" in 12"', ("in 12", F(6))),
        ("4 1/2 in 12", ("in 12", F(9, 2))),
        ("1:4", ("in 12", F(3))),
        ("30 deg", ("degrees", F(30))),
        ("30°", ("degrees", F(30))),
        ("50%", ("percent", F(50))),
    ]:
        with subtests.test(text=text, pitch=pitch):
            assert read_pitch(text) == pitch


def test_a_pitch_with_two_readings_is_refused_showing_both():
    assert refusal(read_pitch, "6").endswith("Write 6 in 12 or 6 deg.")
    assert refusal(read_pitch, "1/3").endswith("Write 4 in 12 or 8 in 12.")


def test_what_is_not_a_pitch_is_refused(subtests):
    for text in ["steep", "6 12", "12/0", "6:0", "-6 in 12", ""]:
        with subtests.test(text=text):
            assert refusal(read_pitch, text)


def test_ratios_are_the_first_side_over_the_second(subtests):
    for text, ratio in [
        ("3:1", F(3)), ("3", F(3)), ("3 to 1", F(3)), ("2.5:1", F(5, 2)), ("3/1", F(3)),
        ("2½", F(5, 2)), ("1:3", F(1, 3)),
    ]:  # fmt: skip
        with subtests.test(text=text, ratio=ratio):
            assert read_ratio(text) == ratio


def test_what_is_not_a_ratio_is_refused(subtests):
    for text in ["3:0", "3:1:1", "a:b", "-3:1", "3:"]:
        with subtests.test(text=text):
            assert refusal(read_ratio, text)


def test_one_area_in_feet_is_read_however_it_is_written(subtests):
    for text in [
        "120 sq ft", "120 sqft", "120 ft2", "120 ft²", "120 ft^2", "120 sf", "120 sq. ft.", "120",
        "120 square feet", "12 x 10 ft", "12' x 10'", "12×10 ft", "12 by 10", "12 x 10 ft²",
    ]:  # fmt: skip
        with subtests.test(text=text):
            assert read_area(text, "ft**2") == Amount(F(120), "ft**2")


def test_one_area_in_metres_is_read_however_it_is_written(subtests):
    for text in ["12 m²", "12 m2", "12 sqm", "12㎡", "12 sq m", "4 m x 300 cm"]:
        with subtests.test(text=text):
            assert read_area(text, "ft**2") == Amount(F(12), "m**2")


def test_a_quarter_acre_is_read(subtests):
    for text in ["1/4 acre", "0.25 ac", "¼ acres"]:
        with subtests.test(text=text):
            assert read_area(text, "ft**2") == Amount(F(1, 4), "acre")


def test_sides_in_feet_and_inches_make_an_area():
    assert read_area("2 ft 6 in by 4 ft", None) == Amount(F(10), "ft**2")


def test_what_is_not_an_area_is_refused(subtests):
    for text in [
        "120 ft",
        "12 m x 10 ft",
        "12 * 10 ft",
        "2 x 3 x 4 ft",
        "12^2 ft",
        "-1 sf",
        "1 a",
        "x",
    ]:
        with subtests.test(text=text):
            assert refusal(read_area, text, "ft**2")


def test_a_bare_area_without_a_unit_shown_is_refused():
    assert "sq ft" in refusal(read_area, "120", None)


def test_volumes_are_read(subtests):
    for text, amount in [("3 cu ft", Amount(F(3), "ft**3")), ("85 L", Amount(F(85), "L")),
     ("85 l", Amount(F(85), "L")), ("2 yd3", Amount(F(2), "yd**3")),
     ("2 cubic yards", Amount(F(2), "yd**3")), ("0.5 m³", Amount(F(1, 2), "m**3")),
     ("5 gal", Amount(F(5), "gal")), ("3", Amount(F(3), "ft**3"))]:  # fmt: skip
        with subtests.test(text=text, amount=amount):
            assert read_volume(text, "ft**3") == amount


def test_what_is_not_a_volume_is_refused(subtests):
    for text in ["2 yards", "3 ft", "3 buckets", "1 x 1 x 1 ft"]:
        with subtests.test(text=text):
            assert refusal(read_volume, text, "ft**3")


def test_half_an_inch_an_hour_is_read_however_it_is_written(subtests):
    for text in ["0.5 in/hr", '0.5"/hr', "0.5 in per hour", "½ inch an hour", "0.5", "0.5 in/h"]:
        with subtests.test(text=text):
            assert read_rate(text, "in/h") == Amount(F(1, 2), "in/h")


def test_rates_are_exact(subtests):
    for text, amount in [("13 mm/h", Amount(F(13), "mm/h")), ("13 mm/hr", Amount(F(13), "mm/h")),
     ("60 min/in", Amount(F(1), "in/h")), ("7 min / inch", Amount(F(60, 7), "in/h")),
     ("2 in/day", Amount(F(2), "in/day"))]:  # fmt: skip
        with subtests.test(text=text, amount=amount):
            assert read_rate(text, "in/h") == amount


def test_hours_per_inch_are_never_taken_for_inches_per_hour():
    assert refusal(read_rate, "2 hr/in", "in/h").endswith("Write 1/2 in/h or 120 min/in.")


def test_both_ways_offered_for_hours_per_inch_are_one_rate():
    assert read_rate("1/2 in/h", None) == read_rate("120 min/in", None)


def test_what_is_not_a_rate_is_refused(subtests):
    for text in ["0.5 in", "0 min/in", "5 mm/m", "60 min/mm", "5 ft**3/s", "h/in"]:
        with subtests.test(text=text):
            assert refusal(read_rate, text, "in/h")
