"""Published examples of how deep a pond a soil empties in time.

1. Blue Thumb Guide to Raingardens, p. 12: a fall of 1 in in 4 h allows 6 in (over 24 h).
2. City of Lino Lakes, Minnesota, infiltration worksheet: greatest depth in ft is rate / 12 x hours;
   0.6 in/h over 48 h is 2.4 ft, 0.8 in/h over 48 h is 3.2 ft.
3. Missouri Botanical Garden, rainscaping guide: a hole of 6 in that is empty in 24 h takes
   0.25 in/h or more.
"""

import pytest

from interview.garden.guidance import LEAST_RATES_IN_H
from interview.garden.soak.depth import DepthRule, Governs, pond_depth
from interview.quantities.units import magnitude, quantity


def depth(drop, corrected, rule=DepthRule.BOTH):
    return pond_depth(
        quantity(drop, "in/h"), quantity(corrected, "in/h"), rule=rule, cap=quantity(48, "in")
    )


def test_an_inch_in_four_hours_allows_six_inches():
    found = depth(1 / 4, 1.0)
    assert found.governs is Governs.DROP_RATE
    assert magnitude(found.depth, "in") == pytest.approx(6)


@pytest.mark.parametrize(("rate", "feet"), [(0.6, 2.4), (0.8, 3.2)])
def test_the_depth_a_rate_takes_in_48_hours(rate, feet):
    found = depth(10.0, rate)
    assert magnitude(found.corrected_limit, "ft") == pytest.approx(feet)


def test_six_inches_in_a_day_is_the_least_rate():
    assert LEAST_RATES_IN_H[0].value == 6 / 24
    assert magnitude(depth(6 / 24, 1.0).depth, "in") == pytest.approx(6)
