"""The corrected rate of a round hole against the mean-depth form of the same assumption.

Riverside County Flood Control and Water Conservation District, LID BMP Design Handbook, rev. 2011,
Appendix A: rate = drop x 60 r / (minutes x (r + 2 mean depth)). The formula and its worked
example (last row, 0.37 in/h) are from memory, not checked against the page; the other rows are
arithmetic. The mean-depth form is within 1.1 percent while the drop is under 38 percent of the
depth, and always low.

The last column is the reduction-factor form, drop rate / ((2 d1 - drop) / diameter + 1), as a
percolation report filed with the City of Santa Ana, California, cites it from the Orange County
Technical Guidance Document and the Los Angeles County LID manual. It counts half of the wall: from
the same readings it makes up to twice the rate. That report lists both for two holes, 0.842 and
2.043, 1.359 and 2.939 in/h, without its geometry, so it shows only the direction. The side chosen
here is the whole wall, which gives the lower rate.
"""

import pytest

from interview.garden.soak.hole import Hole, HoleShape, corrected_rate
from interview.quantities.units import magnitude, quantity

ROWS = [
    (3, 6, 2.25, 10, 3.1765, 3.2101, 5.1429),
    (3, 6, 3, 30, 1.5000, 1.5325, 2.4000),
    (4, 12, 1, 30, 0.2963, 0.2964, 0.5161),
    (4, 12, 6, 60, 1.0909, 1.1192, 1.8462),
    (6, 12, 11, 120, 1.7368, 1.9826, 2.6400),
    (4, 47.75, 1.5, 10, 0.3673, 0.3674, 0.7059),
]


COLUMNS = ("radius", "depth", "drop", "minutes", "mean_depth", "exact", "half_wall")


def exact_rate(radius, depth, drop, minutes):
    hole = Hole(HoleShape.ROUND, quantity(2 * radius, "in"))
    above, below = quantity(depth, "in"), quantity(depth - drop, "in")
    return magnitude(corrected_rate(hole, above, below, quantity(minutes, "min")), "in/h")


@pytest.mark.parametrize(COLUMNS, ROWS)
def test_the_exact_form_is_as_computed_and_never_below_the_mean_depth_form(
    radius, depth, drop, minutes, mean_depth, exact, half_wall
):
    rate = exact_rate(radius, depth, drop, minutes)
    assert rate == pytest.approx(exact, abs=6e-5)
    form = drop * 60 * radius / (minutes * (radius + 2 * (depth - drop / 2)))
    assert form == pytest.approx(mean_depth, abs=6e-5)
    assert form <= rate
    if drop <= 0.38 * depth:
        assert rate / form - 1 < 0.011


@pytest.mark.parametrize(COLUMNS, ROWS)
def test_the_reduction_factor_form_gives_up_to_twice_the_rate_and_is_not_used(
    radius, depth, drop, minutes, mean_depth, exact, half_wall
):
    factor = (2 * depth - drop) / (2 * radius) + 1
    form = drop * 60 / minutes / factor
    assert form == pytest.approx(half_wall, abs=6e-5)
    middle = depth - drop / 2
    assert form / mean_depth == pytest.approx((radius + 2 * middle) / (radius + middle), rel=2e-4)
    assert 1 < form / exact_rate(radius, depth, drop, minutes) < 2
