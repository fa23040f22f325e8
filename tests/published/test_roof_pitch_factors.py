"""Roof pitch factors, as carpenters' tables print them to four decimals.

Arithmetic: length along the roof for a level length of one, square root of 1 + (rise / 12) squared.
The factor for 6 in 12 is printed as 1.118 in several trade tables. The same tables print the angle
of each pitch to two decimals; in percent a pitch is its rise over a level 100.
"""

import pytest

from interview.garden.survey.pieces import PitchGiven, RoofPitch, plan_length
from interview.quantities.units import magnitude, quantity

ROWS = [(4, 1.0541), (5, 1.0833), (6, 1.1180), (8, 1.2019), (9, 1.2500), (12, 1.4142)]


def test_roof_pitch_factor(subtests):
    for rise, factor in ROWS:
        with subtests.test(rise=rise, factor=factor):
            assert RoofPitch(rise).factor == pytest.approx(factor, abs=5e-5)
            level = plan_length(quantity(factor, "m"), RoofPitch(rise))
            assert magnitude(level, "m") == pytest.approx(1, abs=1e-4)


ANGLES = [(4, 18.43, 1.0541), (5, 22.62, 1.0833), (6, 26.57, 1.1180), (8, 33.69, 1.2019),
          (9, 36.87, 1.2500), (12, 45.00, 1.4142)]  # fmt: skip


def test_the_same_pitch_in_degrees_and_in_percent(subtests):
    for rise, angle, factor in ANGLES:
        with subtests.test(rise=rise, angle=angle, factor=factor):
            assert RoofPitch(angle, PitchGiven.DEGREES).factor == pytest.approx(factor, abs=2e-4)
            assert RoofPitch(100 * rise / 12, PitchGiven.PERCENT).factor == pytest.approx(
                factor, abs=5e-5
            )
