"""Peak flow and weirs.

1. Rational units: 1 acre-inch an hour is 1.00833 ft3/s (University of Maryland, GISHydro note).
2. Rational example, engineeringprep.com problem 79: 0.11 x 1.25 in/h x 30 acres, printed 4.125 with
   the factor taken as 1; 4.159 with the factor.
3. Broad-crested weir theory: (2/3)^1.5 g^0.5 = 3.087 ft^0.5/s, 1.705 m^0.5/s (San Diego State
   University, CIVE 530; 3.0876 is printed cut off). The working coefficient must lie below it.
"""

import math

import pytest

from interview.garden.earth.overflow import WEIR_SI, WEIR_US, peak_flow, weir_head
from interview.quantities.units import magnitude, quantity


def test_one_acre_inch_an_hour():
    flow = peak_flow(quantity(1, "acre"), 1.0, quantity(1, "in/h"))
    assert magnitude(flow, "ft**3/s") == pytest.approx(1.00833, abs=5e-6)


def test_thirty_acres_in_light_rain():
    flow = magnitude(peak_flow(quantity(30, "acre"), 0.11, quantity(1.25, "in/h")), "ft**3/s")
    assert flow == pytest.approx(4.159, abs=5e-4)
    assert flow / 1.00833 == pytest.approx(4.125, abs=5e-4)


def test_the_weir_coefficients_are_one_number_below_the_theory():
    theory_us = (2 / 3) ** 1.5 * math.sqrt(32.174)
    theory_si = (2 / 3) ** 1.5 * math.sqrt(9.80665)
    assert (theory_us, theory_si) == pytest.approx((3.087, 1.705), abs=1e-3)
    assert WEIR_US.value < theory_us
    assert WEIR_SI.value / WEIR_US.value == pytest.approx(theory_si / theory_us, rel=0.005)


def test_a_notch_runs_deeper_than_over_an_ideal_weir():
    flow, width = quantity(0.1, "ft**3/s"), quantity(1.5, "ft")
    ideal = (0.1 / (3.087 * 1.5)) ** (2 / 3)
    assert magnitude(weir_head(flow, width), "ft") > ideal
