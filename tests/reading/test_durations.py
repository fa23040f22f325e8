"""Durations as people type them."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.reading import Amount, Refused, echo_duration, read_duration

F = Fraction


def test_one_hour_and_three_quarters_is_read_however_it_is_written(subtests):
    for text in [
        "1h 45m", "1h45", "1h45m", "1 hr 45 mins", "1 hour 45 minutes", "105 min", "1.75 h",
        "1,75 h", "1 3/4 h", "1¾ h", "PT1H45M", "1:45", "01:45", "45m 1h", "1 hour and 45 minutes",
        "1H 45M",
    ]:  # fmt: skip
        with subtests.test(text=text):
            assert read_duration(text, None) == Amount(F(105), "min")


def test_durations_are_exact(subtests):
    for text, amount in [
        ("1:45:30", Amount(F(6330), "s")),
        ("5 s", Amount(F(5), "s")),
        ("90 min", Amount(F(90), "min")),
        ("90min", Amount(F(90), "min")),
        ("90 m", Amount(F(90), "min")),
        ("90 minutes", Amount(F(90), "min")),
        ("24h", Amount(F(1440), "min")),
        ("1d", Amount(F(1440), "min")),
        ("1d 2h", Amount(F(1560), "min")),
        ("2 days", Amount(F(2880), "min")),
        ("13 d 23 h 59 min", Amount(F(20159), "min")),
        ("14 d", Amount(F(20160), "min")),
        ("15 d", Amount(F(21600), "min")),
        ("half an hour", Amount(F(30), "min")),
        ("an hour", Amount(F(60), "min")),
        ("8:05", Amount(F(485), "min")),
        ("1:30", Amount(F(90), "min")),
        ("0 min", Amount(F(0), "min")),
        ("0:00", Amount(F(0), "min")),
        ("1/3 h", Amount(F(20), "min")),
    ]:
        with subtests.test(text=text, amount=amount):
            assert read_duration(text, None) == amount


def test_a_bare_number_takes_the_unit_shown():
    assert read_duration("90", "min") == Amount(F(90), "min")
    assert read_duration("2", "h") == Amount(F(120), "min")


def test_a_duration_with_two_readings_is_refused_showing_both(subtests):
    for text, one, other in [
        ("90", "90 min", "90 h"),
        ("25:00", "25 h", "25 min"),
        ("25:30", "25 h 30 min", "25 min 30 s"),
        ("1h5", "1 h 5 min", "1.5 h"),
    ]:
        with subtests.test(text=text, one=one, other=other):
            with pytest.raises(Refused) as caught:
                read_duration(text, None)
            assert caught.value.said.endswith(f"could mean two things. Write {one} or {other}.")
            assert read_duration(one, None) != read_duration(other, None)


def test_a_text_that_is_not_a_duration_is_refused_with_what_to_do(subtests):
    for text, hint in [
        ("1:75", "59"),
        ("1:60", "59"),
        ("1:99", "59"),
        ("1h 75m", "under 60"),
        ("1.5 h 10 min", "whole"),
        ("1d 26h", "under 24"),
        ("1h 1h", "twice"),
        ("90'", "feet and inches"),
        ('90"', "feet and inches"),
        ("-5 min", "below zero"),
        ("−5 min", "below zero"),
        ("overnight", "in digits"),
        ("a while", "in digits"),
        ("<5 min", "one number"),
        (">24 h", "one number"),
        ("1-2 h", "range"),
        ("1 to 2 h", "range"),
        ("1e9 h", "plain digits"),
        ("99999999999 h", "too many digits"),
        ("500 ms", "Use s, min"),
        ("1 month", "Use s, min"),
        ("1 M", "month"),
        ("1 mo", "Use s, min"),
        ("PT", "in digits"),
        ("1:5", "cannot be read"),
        ("", "Nothing is written"),
    ]:
        with subtests.test(text=text, hint=hint):
            with pytest.raises(Refused) as caught:
                read_duration(text, None)
            assert hint in caught.value.said


def test_a_duration_is_said_in_words(subtests):
    for amount, said in [
        (Amount(F(105), "min"), "1 hour 45 minutes"),
        (Amount(F(30), "s"), "30 seconds"),
        (Amount(F(1), "s"), "1 second"),
        (Amount(F(1560), "min"), "1 day 2 hours"),
        (Amount(F(1, 2), "h"), "30 minutes"),
        (Amount(F(0), "min"), "0 minutes"),
        (Amount(F(21, 4), "s"), "5.25 seconds"),
    ]:
        with subtests.test(amount=amount, said=said):
            assert echo_duration(amount) == said


@given(st.integers(0, 40 * 86400), st.sampled_from([1, 2, 4, 5, 8, 10]))
def test_a_duration_that_is_said_reads_back_the_same(seconds, parts):
    amount = Amount(F(seconds, parts), "s")
    back = read_duration(echo_duration(amount), None)
    assert back.number * {"s": 1, "min": 60}[back.unit] == amount.number
