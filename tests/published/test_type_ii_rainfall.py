"""NRCS Type II rainfall over 24 h.

Chow, Maidment and Mays, Applied Hydrology, McGraw-Hill, 1988, Table 14.4.1: share of the day's rain
fallen by the hour, to three decimals. Read in a second copy; the book's page is from memory.
"""

import pytest
from measures import fallen_by

from interview.garden.pond.hyetographs import TYPE_II, type_ii_storm
from interview.quantities.units import quantity

POINTS = {
    0: 0.0, 2: 0.022, 4: 0.048, 6: 0.080, 7: 0.098, 8: 0.120, 8.5: 0.133, 9: 0.147,
    9.5: 0.163, 9.75: 0.172, 10: 0.181, 10.5: 0.204, 11: 0.235, 11.5: 0.283, 11.75: 0.357,
    12: 0.663, 12.5: 0.735, 13: 0.772, 13.5: 0.799, 14: 0.820, 16: 0.880, 20: 0.952, 24: 1.000,
}  # fmt: skip


@pytest.mark.parametrize(("hour", "share"), POINTS.items())
def test_the_storm_passes_through_every_point(hour, share):
    fallen = fallen_by(type_ii_storm(quantity(4, "in")), hour)
    assert fallen == pytest.approx(4 * share, abs=1e-9)


def test_there_are_no_other_points():
    assert dict(TYPE_II) == POINTS


@pytest.mark.parametrize(
    ("start", "end", "share"), [(11.75, 12, 0.306), (11.5, 12, 0.380), (11.5, 12.5, 0.452)]
)
def test_the_peak_quarter_half_and_whole_hour(start, end, share):
    """Arithmetic on the points; a second text says 45 percent in the peak hour."""
    storm = type_ii_storm(quantity(1, "in"))
    fallen = fallen_by(storm, end) - fallen_by(storm, start)
    assert fallen == pytest.approx(share, abs=1e-9)
