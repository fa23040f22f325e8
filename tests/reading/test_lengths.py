"""Lengths as people type them, each row what is typed and what it means."""

from __future__ import annotations

from fractions import Fraction

import pytest

from interview.reading import (
    Amount,
    Paces,
    Refused,
    convert_length,
    decimal_comma,
    plain,
    read_length,
    read_taped_length,
)

F = Fraction


def inches(text: str, bare: str | None = "ft") -> Fraction:
    return convert_length(read_taped_length(text, bare), "in")


def refusal(text: str, bare: str | None = "ft") -> str:
    with pytest.raises(Refused) as caught:
        read_length(text, bare)
    return caught.value.said


def test_feet_and_inches_are_read_however_they_are_written(subtests):
    for text in [
        "12' 9 1/2\"",
        "12'9-1/2\"",
        "12'-9 1/2\"",
        "12'9½\"",
        "12 ft 9.5 in",
        "12ft9.5in",
        "12 feet 9 1/2 inches",
        "12 feet and 9 1/2 inches",
        "12 ft, 9.5 in",
        "12 FT 9½ IN",
        "12′ 9½″",
        "12’ 9½”",
        "12' 9½''",
        "12' 9 1⁄2\"",
        "12' 91⁄2\"",
        "12\u00a0ft\u20099.5\u200b in\n",
        "\t12 ft 9.5 in\t",
        "１２ ft ９.５ in",
    ]:
        with subtests.test(text=text):
            assert read_length(text, "m") == Amount(F(307, 2), "in")


def test_feet_and_inches_in_metres_are_exact():
    assert convert_length(Amount(F(307, 2), "in"), "m") == F("3.8989")


def test_us_lengths_are_exact(subtests):
    for text, expected in [
        ("12'9\"", F(153)),
        ("12ft9", F(153)),
        ("12' 9", F(153)),
        ("12'", F(144)),
        ("12 ft", F(144)),
        ("12ft.", F(144)),
        ("12 foot", F(144)),
        ("12 feet", F(144)),
        ('9"', F(9)),
        ("9 in", F(9)),
        ("9in.", F(9)),
        ("9 inches", F(9)),
        ('1/2"', F(1, 2)),
        ("½ in", F(1, 2)),
        ('0.5"', F(1, 2)),
        (".5 in", F(1, 2)),
        ('1 1/2"', F(3, 2)),
        ("1-1/2 in", F(3, 2)),
        ('1½"', F(3, 2)),
        ("12½ in", F(25, 2)),
        ('7/8"', F(7, 8)),
        ('⅞"', F(7, 8)),
        ("3/16 in", F(3, 16)),
        ('5/4"', F(5, 4)),
        ('1/3"', F(1, 3)),
        ("5 yards", F(180)),
        ("5 yd", F(180)),
        ("1 yd 2 ft", F(60)),
        ("7.125 in", F(57, 8)),
        ("0.125 in", F(1, 8)),
        ("0/2", F(0)),
        ("0'", F(0)),
    ]:
        with subtests.test(text=text, expected=expected):
            assert inches(text) == expected


def test_metric_lengths_are_exact(subtests):
    for text, expected in [
        ("3.9m", F("3.9")),
        ("390 cm", F("3.9")),
        ("390cm", F("3.9")),
        ("3900 mm", F("3.9")),
        ("3 m 90 cm", F("3.9")),
        ("3m90", F("3.9")),
        ("3,9 m", F("3.9")),
        ("390,0 cm", F("3.9")),
        ("5 M", F(5)),
        ("5 CM", F("0.05")),
        ("٣ m", F(3)),
        ("५ m", F(5)),
        ("1.234,5 m", F("1234.5")),
        ("1,234.5 m", F("1234.5")),
        ("1 234.5 m", F("1234.5")),
        ("1 000 m", F(1000)),
        ("3 m 5 cm 2 mm", F("3.052")),
    ]:
        with subtests.test(text=text, expected=expected):
            assert convert_length(read_taped_length(text, "ft"), "m") == expected


def test_a_bare_number_takes_the_unit_shown(subtests):
    for unit in ["ft", "in", "m", "mm"]:
        for text, number in [("12.75", F("12.75")), ("5.", F(5)), (".5", F(1, 2)), (",5", F(1, 2))]:
            with subtests.test(text=text, number=number, unit=unit):
                assert read_length(text, unit) == Amount(number, unit)


def test_a_bare_number_without_a_unit_shown_is_refused_with_two_ways():
    assert refusal("12", None) == '"12" could mean two things. Write 12 ft or 12 m.'


def test_a_length_with_two_readings_is_refused_showing_both(subtests):
    for text, one, other in [
        ("12 9", "12 ft 9 in", "12.9 ft"),
        ("12-9", "12 ft 9 in", "12.9 ft"),
        ("3,900", "3900", "3.9"),
        ("3.900 m", "3900", "3.9"),
        ("1,234", "1234", "1.2340"),
        ("3,000", "3000", "3.0"),
        ("3m9", "3.9 m", "3 m 9 cm"),
        ("5 Mm", "5 mm", "5 m"),
        ("5 mM", "5 mm", "5 m"),
    ]:
        with subtests.test(text=text, one=one, other=other):
            said = refusal(text)
            assert "could mean two things" in said
            assert said.endswith(f"Write {one} or {other}.")
            if text != "3.900 m" and not text.startswith(("3,", "1,")):
                assert read_length(one, "ft") != read_length(other, "ft")


def test_what_a_refusal_of_grouped_digits_offers_is_read(subtests):
    for text in ["1.2340", "1234", "3900", "3.9", "3.0"]:
        with subtests.test(text=text):
            assert read_length(text, "m") == Amount(F(text), "m")


def test_a_text_that_is_not_one_length_is_refused_with_what_to_do(subtests):
    for text, hint in [
        ("12' 12\"", "under 12"),
        ("12' 13\"", "under 12"),
        ("12.5' 6\"", "not whole"),
        ("12 1/2 ft 6 in", "not whole"),
        ("12' -3\"", "minus sign"),
        ("-12'", "below zero"),
        ("−5 m", "below zero"),
        ("--5", "below zero"),
        ("1/0", "2 to 1000"),
        ('1 5/4"', "one or more"),
        ('1/1001"', "2 to 1000"),
        ("12-14 ft", "more than one number"),
        ("12 1 1/2", "more than one number"),
        ("12 to 14 ft", "range"),
        ("about 12 ft", "don't know yet"),
        ("~12", "don't know yet"),
        ("<12", "don't know yet"),
        ("12+", "don't know yet"),
        ("12ish", "don't know yet"),
        ("12?", "don't know yet"),
        ("12x9", "Only one measure"),
        ("12 × 9", "Only one measure"),
        ("12 * 9", "Only one measure"),
        ("12 by 9", "Only one measure"),
        ("9**9**9", "plain digits"),
        ("1e999999", "plain digits"),
        ("1e3", "plain digits"),
        ("0x10", "plain digits"),
        ("1_000", "plain digits"),
        ("nan", "plain digits"),
        ("inf", "plain digits"),
        ("∞", "plain digits"),
        ("1" * 65, "too long"),
        ("1 ft " * 2000, "too long"),
        ("1" * 10, "too many digits"),
        ("1.1234567", "too many digits"),
        ("100001 m", "over 100 km"),
        ("m", "in digits"),
        ("ft", "in digits"),
        ("", "Nothing is written"),
        ("   ", "Nothing is written"),
        ("5 furlong", "Use ft, in, yd"),
        ("5 F", "Use ft, in, yd"),
        ("5.5.5", "not one number"),
        ("1..5", "range"),
        ("5,,", "not one number"),
        ("'12", "after the number"),
        ('"12', "after the number"),
        ("12\"'", "cannot be read"),
        ("9\" 12'", "larger unit first"),
        ("12 ft 9 m", "all metric"),
        ("3 m 9 in", "all metric"),
        ("12 ft 9 in, 4 m", "all metric"),
        ("thirty feet", "in digits"),
        ("some yards", "in digits"),
        ("12 ft.5 in", "cannot be read"),
        ("1\n2 ft", "one line"),
        ("12\u202e ft", "<U+202E>"),
        ("\x1b[2J5", "<U+001B>"),
    ]:
        with subtests.test(text=text, hint=hint):
            assert hint in refusal(text)


def test_paces_are_counted_with_their_walker(subtests):
    for text, count, walker in [
        ("15 paces", F(15), ""),
        ("15p", F(15), ""),
        ("1 pace", F(1), ""),
        ("15 1/2 paces", F(31, 2), ""),
        ("15½ paces", F(31, 2), ""),
        ("15 paces Ann", F(15), "Ann"),
        ("15 paces (Ann)", F(15), "Ann"),
        ("15 p, José Ortiz", F(15), "José Ortiz"),
    ]:
        with subtests.test(text=text, count=count, walker=walker):
            assert read_length(text, "ft") == Paces(count, walker)


def test_paces_are_refused_where_a_tape_is_needed():
    with pytest.raises(Refused, match="cannot be paced"):
        read_length("15 paces", "ft", paces=False)


def test_what_is_not_a_count_of_paces_is_refused(subtests):
    for text in ["15 paces 3 ft", "15 steps", "paces", "-3 paces"]:
        with subtests.test(text=text):
            refusal(text)


def test_a_decimal_comma_is_noticed_for_the_echo(subtests):
    for text, comma in [
        ("3,9 m", True), ("390,0 cm", True), (",5", True), ("1.234,5 m", True),
        ("1,234.5 ft", False), ("12 ft, 9 in", False), ("3.9 m", False), ("3,9" * 30, False),
    ]:  # fmt: skip
        with subtests.test(text=text, comma=comma):
            assert decimal_comma(text) is comma


def test_typographic_characters_become_those_of_the_keyboard(subtests):
    for text, clean in [
        ("12½", "12 1/2"), ("½5", "1/2 5"), ("12’ 9”", "12' 9\""), ("  3\u2009900 ", "3 900"),
        ("3\t900", "3  900"), ("−5", "-5"), ("²", "²"), ("5㎡", "5m2"), ("11⁄16", "11/16"),
    ]:  # fmt: skip
        with subtests.test(text=text, clean=clean):
            assert plain(text) == clean


@pytest.mark.parametrize(
    ("text", "bare", "inches"),
    [
        ("6.525 in", "in", "6 1/2 in"),
        ("6.525", "in", "6 1/2 in"),
        ('6.525"', "ft", "6 1/2 in"),
        ("6,525 inches", None, "6 1/2 in"),
        ("6.980 in", "in", "7 in"),
        ("6.620 in", "in", "6 5/8 in"),
    ],
)
def test_thousandths_of_an_inch_are_refused_with_the_eighth_to_write(text, bare, inches):
    said = refusal(text, bare)
    assert f"Write {inches} or " in said
    assert read_length(inches, bare).unit == "in"


def test_thousandths_that_a_rule_shows_and_those_of_feet_stay_as_they_were():
    assert read_length("6.125 in", "in").number == Fraction(49, 8)
    assert refusal("6.525", "ft").endswith("Write 6525 or 6.5250.")
