"""The corrected rate of a round hole against the mean-depth form of the same assumption.

Riverside County Flood Control and Water Conservation District, LID BMP Design Handbook, rev. 2011,
Appendix A: rate = drop x 60 r / (minutes x (r + 2 mean depth)). The formula and its worked
example (last row, 0.37 in/h) are from memory, not checked against the page; the other rows are
arithmetic. The mean-depth form is within 1.1 percent while the drop is under 38 percent of the
depth, and always low.
"""

import pytest

from interview.calc.soak import Hole, HoleShape, corrected_rate
from interview.units import magnitude, quantity

ROWS = [
    (3, 6, 2.25, 10, 3.1765, 3.2101),
    (3, 6, 3, 30, 1.5000, 1.5325),
    (4, 12, 1, 30, 0.2963, 0.2964),
    (4, 12, 6, 60, 1.0909, 1.1192),
    (6, 12, 11, 120, 1.7368, 1.9826),
    (4, 47.75, 1.5, 10, 0.3673, 0.3674),
]


@pytest.mark.parametrize(("radius", "depth", "drop", "minutes", "mean_depth", "exact"), ROWS)
def test_the_exact_form_is_as_computed_and_never_below_the_mean_depth_form(
    radius, depth, drop, minutes, mean_depth, exact
):
    rate = magnitude(
        corrected_rate(
            Hole(HoleShape.ROUND, quantity(2 * radius, "in")),
            quantity(depth, "in"),
            quantity(depth - drop, "in"),
            quantity(minutes, "min"),
        ),
        "in/h",
    )
    assert rate == pytest.approx(exact, abs=6e-5)
    form = drop * 60 * radius / (minutes * (radius + 2 * (depth - drop / 2)))
    assert form == pytest.approx(mean_depth, abs=6e-5)
    assert form <= rate
    if drop <= 0.38 * depth:
        assert rate / form - 1 < 0.011
