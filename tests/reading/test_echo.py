"""What is said back, and that it reads back as the same length."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from interview.reading import (
    Amount,
    convert_length,
    decimal_text,
    echo_area,
    echo_length,
    echo_rate,
    echo_volume,
    read_taped_length,
)

F = Fraction


def test_a_length_is_said_in_the_chosen_system(subtests):
    for amount, us, metric in [
        (Amount(F(153), "in"), "12 ft 9 in", "3 m 886 mm"),
        (Amount(F(307, 2), "in"), "12 ft 9 1/2 in", "3 m 899 mm"),
        (Amount(F("12.6"), "ft"), "12 ft 7 3/16 in", "3 m 840.5 mm"),
        (Amount(F("3.9"), "m"), "12 ft 9 17/32 in", "3.9 m"),
        (Amount(F(6), "in"), "6 in", "152.4 mm"),
        (Amount(F(12), "ft"), "12 ft", "3 m 657.6 mm"),
        (Amount(F(0), "m"), "0 in", "0 mm"),
    ]:
        with subtests.test(amount=amount, us=us, metric=metric):
            assert echo_length(amount, "us") == us
            assert echo_length(amount, "metric") == metric


_LENGTHS = st.builds(
    Amount,
    st.fractions(0, 1000, max_denominator=1000),
    st.sampled_from(["in", "ft", "yd", "m", "cm", "mm"]),
)


@given(_LENGTHS, st.sampled_from(["us", "metric"]))
def test_an_echoed_length_reads_back_within_a_64th_and_is_echoed_alike(amount, system):
    said = echo_length(amount, system)
    back = read_taped_length(said, None)
    off = abs(convert_length(back, "in") - convert_length(amount, "in"))
    assert off <= F(1, 64)
    assert echo_length(back, system) == said


@given(st.integers(0, 16 * 12 * 500))
def test_a_length_on_the_marks_of_a_tape_comes_back_exactly(sixteenths):
    amount = Amount(F(sixteenths, 16), "in")
    back = read_taped_length(echo_length(amount, "us"), None)
    assert convert_length(back, "in") == amount.number


@given(st.integers(0, 200_000))
def test_a_whole_number_of_millimetres_comes_back_exactly(mm):
    back = read_taped_length(echo_length(Amount(F(mm), "mm"), "metric"), None)
    assert convert_length(back, "mm") == mm


def test_areas_volumes_and_rates_are_said_in_the_chosen_system():
    assert echo_area(Amount(F(120), "ft**2"), "us") == "120 ft²"
    assert echo_area(Amount(F(1, 4), "acre"), "us") == "10890 ft²"
    assert echo_volume(Amount(F(1), "yd**3"), "metric") == "764.6 L"
    assert echo_volume(Amount(F(1), "gal"), "us") == "0.13 ft³"
    assert echo_rate(Amount(F(1, 2), "in/h"), "us") == "0.5 in/h"
    assert echo_rate(Amount(F(2), "in/day"), "metric") == "2.1 mm/h"


def test_decimals_round_half_up_without_end_zeros():
    assert decimal_text(F("2.50"), 2) == "2.5"
    assert decimal_text(F("0.125"), 2) == "0.13"
    assert decimal_text(F("-0.001"), 2) == "0"
    assert decimal_text(F(7), 0) == "7"
