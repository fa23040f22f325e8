"""Conversion factors.

Thompson and Taylor, Guide for the Use of the International System of Units (SI), NIST Special
Publication 811, 2008 edition, Appendix B.8: factors in bold are exact; the others are printed to
seven significant digits. Typed here from memory of the table and checked against the exact
definitions (inch, pound, gallon), which fix every one of them.
"""

import pytest

from interview.quantities.units import magnitude, quantity

EXACT = [
    ("in", "m", 2.54e-2),
    ("in", "cm", 2.54),
    ("in", "mm", 25.4),
    ("ft", "m", 3.048e-1),
    ("yd", "m", 9.144e-1),
    ("in**2", "m**2", 6.4516e-4),
    ("ft**2", "m**2", 9.290304e-2),
    ("L", "m**3", 1.0e-3),
    ("ft/s", "m/s", 3.048e-1),
    ("in/s", "m/s", 2.54e-2),
    ("lb", "kg", 4.5359237e-1),
    ("t", "kg", 1.0e3),
    ("h", "s", 3600),
    ("day", "s", 86400),
    ("min", "s", 60),
]
TO_SEVEN_DIGITS = [
    ("yd**2", "m**2", 8.361274e-1),
    ("in**3", "m**3", 1.638706e-5),
    ("ft**3", "m**3", 2.831685e-2),
    ("yd**3", "m**3", 7.645549e-1),
    ("gal", "m**3", 3.785412e-3),
    ("gal", "L", 3.785412),
    ("gal/min", "m**3/s", 6.309020e-5),
    ("ft**3/s", "m**3/s", 2.831685e-2),
    ("ft**3/min", "m**3/s", 4.719474e-4),
    ("ft/h", "m/s", 8.466667e-5),
    ("ft/min", "m/s", 5.08e-3),
    ("lb/ft**3", "kg/m**3", 1.601846e1),
    ("oz", "kg", 2.834952e-2),
    ("oz", "g", 2.834952e1),
    ("ton", "kg", 9.071847e2),
    ("lb/acre", "kg/m**2", 1.120851e-4),
    ("degree", "radian", 1.745329e-2),
]


def test_exact_factors_are_exact(subtests):
    for unit, si, factor in EXACT:
        with subtests.test(unit=unit, si=si, factor=factor):
            assert magnitude(quantity(1, unit), si) == pytest.approx(factor, rel=1e-15)


def test_other_factors_agree_to_the_printed_digits(subtests):
    for unit, si, factor in TO_SEVEN_DIGITS:
        with subtests.test(unit=unit, si=si, factor=factor):
            assert magnitude(quantity(1, unit), si) == pytest.approx(factor, rel=5e-7)


def test_the_acre_is_the_international_one():
    """The guide prints 4.046 873 e3 for the acre of US survey feet; ours has 43 560 ft2."""
    acre = magnitude(quantity(1, "acre"), "m**2")
    assert acre == pytest.approx(43560 * 0.3048**2, rel=1e-12)
    assert acre == pytest.approx(4.046873e3, rel=5e-6)


def test_rates_of_rain_and_soaking_convert_both_ways():
    """Arithmetic on the exact inch and hour."""
    assert magnitude(quantity(1, "in/h"), "mm/h") == pytest.approx(25.4, rel=1e-14)
    assert magnitude(quantity(1, "in/h"), "m/s") == pytest.approx(0.0254 / 3600, rel=1e-14)
    assert magnitude(quantity(25.4, "mm/h"), "in/h") == pytest.approx(1, rel=1e-14)


def test_an_inch_of_rain_on_a_thousand_square_feet_in_gallons():
    """Arithmetic: 1000 ft2 x 1 in / 231 in3 = 623.4 gal; the rounded 630 often seen is high."""
    rain = quantity(1000, "ft**2") * quantity(1, "in")
    assert magnitude(rain, "gal") == pytest.approx(623.4, abs=0.05)
