"""The runoff volume of a rule with printed coefficients.

District of Columbia Municipal Regulations, title 21, section 520: volume in gallons = P x (0.95 I +
0.25 C + 0 N) x 7.48 / 12, with P in inches, I hard, C compacted and N natural cover in square feet.
Tolerance: 7.48 is printed to three digits, the exact factor is 7.48052.
"""

import pytest

from interview.garden.survey.catchment import Surface, catchment
from interview.garden.survey.runoff import RUNOFF_COEFFICIENTS
from interview.garden.survey.runoff import LawnSurface as Kind
from interview.quantities.units import magnitude, quantity

GALLONS_PRINTED = 7.48


def test_the_volume_of_the_rule(subtests):
    for rain, hard, packed, natural in [(1.2, 1000, 0, 0), (1.0, 400, 250, 300), (0.5, 0, 640, 10)]:
        with subtests.test(rain=rain, hard=hard, packed=packed, natural=natural):
            parts = {"roof": (hard, Kind.ROOF), "drive": (packed, Kind.COMPACTED)}
            surfaces = [
                Surface(name, "roof", RUNOFF_COEFFICIENTS[kind], plan=quantity(area, "ft**2"))
                for name, (area, kind) in parts.items()
                if area
            ]
            surfaces.append(Surface("meadow", "lawn", 0.0, plan=quantity(natural or 1, "ft**2")))
            printed = rain * (0.95 * hard + 0.25 * packed) * GALLONS_PRINTED / 12
            found = catchment(surfaces).brings(quantity(rain, "in"))
            assert magnitude(found, "gal") == pytest.approx(printed, rel=1e-4)


def test_the_coefficients_are_as_printed():
    assert (RUNOFF_COEFFICIENTS[Kind.ROOF], RUNOFF_COEFFICIENTS[Kind.PAVED]) == (0.95, 0.95)
    assert (RUNOFF_COEFFICIENTS[Kind.GRAVEL], RUNOFF_COEFFICIENTS[Kind.COMPACTED]) == (0.25, 0.25)
