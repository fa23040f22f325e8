"""Roof pitch factors, as carpenters' tables print them to four decimals.

Arithmetic: length along the roof for a level length of one, square root of 1 + (rise / 12) squared.
The factor for 6 in 12 is printed as 1.118 in several trade tables.
"""

import pytest

from interview.calc.pieces import Pitch, plan_length
from interview.units import magnitude, quantity

ROWS = [(4, 1.0541), (5, 1.0833), (6, 1.1180), (8, 1.2019), (9, 1.2500), (12, 1.4142)]


@pytest.mark.parametrize(("rise", "factor"), ROWS)
def test_roof_pitch_factor(rise, factor):
    assert Pitch(rise).factor == pytest.approx(factor, abs=5e-5)
    level = plan_length(quantity(factor, "m"), Pitch(rise))
    assert magnitude(level, "m") == pytest.approx(1, abs=1e-4)
