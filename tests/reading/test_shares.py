"""A part of something, in the words people type for it."""

from __future__ import annotations

from fractions import Fraction

import pytest

from interview.reading import Refused, read_share

F = Fraction


def test_shares_are_read_as_people_say_them(subtests):
    for text, percent in [
        ("all", F(100)), ("All of it", F(100)), ("whole", F(100)), ("100 %", F(100)),
        ("none", F(0)), ("nothing", F(0)), ("0", F(0)), ("half", F(50)), ("a half", F(50)),
        ("half of the water", F(50)), ("1/2", F(50)), ("½", F(50)), ("50 %", F(50)), ("50", F(50)),
        ("1/3", F(100, 3)), ("two thirds", F(200, 3)), ("a quarter", F(25)), ("3/4 of it", F(75)),
        ("1 of 2", F(50)), ("2 out of 3", F(200, 3)), ("1 in 4", F(25)), ("12.5", F("12.5")),
        ("0.5 %", F("0.5")), ("33 1/3 %", F(100, 3)),
    ]:  # fmt: skip
        with subtests.test(text=text, percent=percent):
            assert read_share(text) == percent


def test_a_bare_number_of_one_or_less_has_two_readings(subtests):
    for text in ["1", "0.5", ".25"]:
        with subtests.test(text=text), pytest.raises(Refused, match="two things"):
            read_share(text)


def test_what_is_no_share_is_refused_in_one_sentence(subtests):
    for text in ["", "most", "3/2", "1:2", "some of it", "-5", "5 ft", "1/0", "x"]:
        with subtests.test(text=text), pytest.raises(Refused, match=r"\.$"):
            read_share(text)


def test_no_more_than_all_of_it_can_come(subtests, given):
    for text in ["101", "150 %"]:
        for key in ["share_percent", "spout_percent"]:
            with subtests.test(key=key, text=text):
                from interview.garden.stages import question_at

                question, _ = question_at(f"surfaces.1.{key}")
                with pytest.raises(Refused, match="from 0 to 100 %"):
                    question.read(text, given({}).at("surfaces", 1))
