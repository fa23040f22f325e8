"""Runoff by curve number.

USDA Natural Resources Conservation Service, Urban Hydrology for Small Watersheds, Technical
Release 55, 2nd ed., June 1986: equations 2-1 to 2-4, Table 2-1 (runoff depth, inches, to two
decimals) and Table 2-2a (curve numbers). The tables were read in a second copy.
"""

import pytest

from interview.garden.survey.runoff import Cover, HydrologicGroup, curve_number, runoff_depth
from interview.quantities.units import magnitude, quantity

CURVE_NUMBERS = (80, 85, 90, 95, 98)
TABLE_2_1 = {
    1.0: (0.08, 0.17, 0.32, 0.56, 0.79),
    1.2: (0.15, 0.27, 0.46, 0.74, 0.99),
    1.4: (0.24, 0.39, 0.61, 0.92, 1.18),
    1.6: (0.34, 0.52, 0.76, 1.11, 1.38),
    1.8: (0.44, 0.65, 0.93, 1.29, 1.58),
    2.0: (0.56, 0.80, 1.09, 1.48, 1.77),
    3.0: (1.25, 1.59, 1.98, 2.45, 2.77),
}
TABLE_2_2A = {
    Cover.HARD: (98, 98, 98, 98),
    Cover.LAWN_GOOD: (39, 61, 74, 80),
    Cover.LAWN_FAIR: (49, 69, 79, 84),
    Cover.LAWN_POOR: (68, 79, 86, 89),
    Cover.GRAVEL_STREET: (76, 85, 89, 91),
    Cover.DIRT_STREET: (72, 82, 87, 89),
    Cover.BARE: (77, 86, 91, 94),
}


def test_the_equation_gives_the_printed_runoff(subtests):
    for rain, number, printed in [
        (rain, number, printed)
        for rain, row in TABLE_2_1.items()
        for number, printed in zip(CURVE_NUMBERS, row, strict=True)
    ]:
        with subtests.test(rain=rain, number=number, printed=printed):
            depth = magnitude(runoff_depth(quantity(rain, "in"), number), "in")
            assert round(depth, 2) == pytest.approx(printed)


def test_curve_numbers_are_as_printed(subtests):
    for cover, printed in TABLE_2_2A.items():
        with subtests.test(cover=cover, printed=printed):
            assert tuple(curve_number(cover, group) for group in HydrologicGroup) == printed


@pytest.mark.parametrize(("number", "rain"), [(61, 1.279), (39, 3.128)])
def test_nothing_runs_off_until_a_fifth_of_the_storage_is_wet(number, rain):
    """Arithmetic on equation 2-2: runoff begins at 0.2 (1000 / CN - 10)."""
    assert magnitude(runoff_depth(quantity(rain - 0.001, "in"), number), "in") == 0
    assert magnitude(runoff_depth(quantity(rain + 0.001, "in"), number), "in") > 0


def test_a_nine_inch_storm_from_a_textbook():
    """A published solution: 9 in at curve number 94.82 gives 8.38 in."""
    assert magnitude(runoff_depth(quantity(9, "in"), 94.82), "in") == pytest.approx(8.38, abs=5e-3)
