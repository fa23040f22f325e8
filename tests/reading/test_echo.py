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


def test_a_length_is_said_both_ways_with_the_chosen_system_first(subtests):
    for amount, us, metric in [
        (Amount(F(153), "in"), "12 ft 9 in, 3.886 m", "3.886 m, 12 ft 9 in"),
        (Amount(F(307, 2), "in"), "12 ft 9 1/2 in, 3.899 m", "3.899 m, 12 ft 9 1/2 in"),
        (Amount(F("12.6"), "ft"), "12 ft 7 3/16 in, 3.84 m", "3.8405 m, 12 ft 7 3/16 in"),
        (Amount(F("3.9"), "m"), "12 ft 9 17/32 in, 3.9 m", "3.9 m, 12 ft 9 9/16 in"),
        (Amount(F(6), "in"), "6 in, 152 mm", "152.4 mm, 6 in"),
        (Amount(F(12), "ft"), "12 ft, 3.658 m", "3.6576 m, 12 ft"),
        (Amount(F(0), "m"), "0 in, 0 mm", "0 mm, 0 in"),
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


def test_areas_volumes_and_rates_are_said_both_ways():
    assert echo_area(Amount(F(120), "ft**2"), "us") == "120 ft², 11.15 m²"
    assert echo_area(Amount(F(1, 4), "acre"), "us") == "10890 ft², 1011.71 m²"
    assert echo_volume(Amount(F(1), "yd**3"), "metric") == "764.6 L, 27 ft³"
    assert echo_volume(Amount(F(1), "gal"), "us") == "0.13 ft³, 3.8 L"
    assert echo_rate(Amount(F(1, 2), "in/h"), "us") == "0.5 in/h, 12.7 mm/h"
    assert echo_rate(Amount(F(2), "in/day"), "metric") == "2.1 mm/h, 0.083 in/h"


def test_decimals_round_half_up_without_end_zeros():
    assert decimal_text(F("2.50"), 2) == "2.5"
    assert decimal_text(F("0.125"), 2) == "0.13"
    assert decimal_text(F("-0.001"), 2) == "0"
    assert decimal_text(F(7), 0) == "7"
