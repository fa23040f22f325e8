"""A depth to dig is written as a tape or a rule shows it, and reads back as what was meant."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from interview.quantities.shown import depth_words
from interview.quantities.units import feet_and_inches, quantity


@pytest.mark.parametrize(
    ("inches", "words"),
    [
        (15.25, "15 1/4 in"),
        (0.5, "1/2 in"),
        (12, "12 in"),
        (13.99, "14 in"),
        (0.1, "0 in"),
        (-0.1, "0 in"),
        (-5.25, "-5 1/4 in"),
    ],
)
def test_a_depth_is_told_to_the_quarter_inch(inches, words):
    assert depth_words(quantity(inches, "in"), metric=False) == words


@given(st.floats(-500, 500))
def test_a_depth_is_told_within_an_eighth_of_an_inch(inches):
    number = depth_words(quantity(inches, "in"), metric=False).removesuffix(" in")
    sign = -1 if number.startswith("-") else 1
    told = sign * sum(
        int(top) / int(under or 1)
        for top, _, under in (part.partition("/") for part in number.lstrip("-").split())
    )
    assert told == pytest.approx(inches, abs=0.125 + 1e-9)


def test_a_length_has_feet_and_a_depth_has_none():
    assert feet_and_inches(quantity(153.5, "in")) == "12 ft 9 1/2 in"
    assert depth_words(quantity(153.5, "in"), metric=False) == "153 1/2 in"
    assert depth_words(quantity(153.5, "in"), metric=True) == "3899 mm"
