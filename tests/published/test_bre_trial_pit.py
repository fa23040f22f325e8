"""The trial-pit formula of another country against ours.

BRE Digest 365, Soakaway design (United Kingdom), as described by West Devon Borough Council:
rate = volume between three quarters and one quarter full / (bottom and half the walls x time).
Worked sheet: pit 1.000 x 0.750 x 1.000 m, slowest of 56, 55 and 56 minutes, 44.6 micrometers per
second, asserted to three figures (the sheet's own rounding moves the fourth). Weak provenance:
used for its arithmetic only.
"""

import pytest

from interview.garden.soak.hole import Hole, HoleShape, corrected_rate
from interview.quantities.units import magnitude, quantity

LENGTH, WIDTH, DEPTH, MINUTES = 1.000, 0.750, 1.000, 56


def test_the_sheet_is_reproduced():
    volume = LENGTH * WIDTH * DEPTH / 2
    soaking = LENGTH * WIDTH + (LENGTH + WIDTH) * 2 * DEPTH / 2
    assert soaking == pytest.approx(2.50)
    assert volume / (soaking * MINUTES * 60) == pytest.approx(44.6e-6, rel=5e-3)


def test_the_exact_integral_is_a_little_above_the_half_depth_form():
    """The pit's fixed half-depth area is a mean, so the exact rate is a few percent higher."""
    pit = Hole(HoleShape.RECTANGULAR, quantity(LENGTH, "m"), quantity(WIDTH, "m"))
    rate = corrected_rate(
        pit,
        quantity(0.75 * DEPTH, "m"),
        quantity(0.25 * DEPTH, "m"),
        quantity(MINUTES, "min"),
    )
    assert 1.0 < magnitude(rate, "m/s") / 44.6e-6 < 1.06
