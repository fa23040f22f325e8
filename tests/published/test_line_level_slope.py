"""Slope by stakes and a line level, and the published slope tables.

1. Three Rivers Rain Garden Alliance, "Slope": 15 ft (180 in) and 11 in, 6.1 %, "about 6", so 6 in.
2. Step 1: Sizing and Siting, UW-Extension: 10 ft wide on a 10 % slope is 12 in deep to be level.
3. Rhode Island and UConn rain garden design guide: under 4 %, 3 to 5 in; 5 to 7 %, 6 to 7 in; 8 to
   12 %, 8 in; over 12 %, elsewhere. Nothing is printed for 4 to 5 and 7 to 8 %.
"""

import pytest

from interview.garden.form.basin import Basin
from interview.garden.form.lie import Ground, lie_of
from interview.garden.site.slope import ground_slope, table_depth
from interview.quantities.units import quantity


def test_alliance_example():
    slope = ground_slope(quantity(15, "ft"), quantity(11, "in"))
    assert slope.percent == pytest.approx(6.1, abs=0.05)
    assert "6 to 7 in" in table_depth(slope)


def test_ten_feet_on_ten_percent_is_a_foot_deeper_uphill():
    basin = Basin(quantity(20, "ft"), quantity(10, "ft"), quantity(6, "in"), 2, quantity(4, "in"))
    lie = lie_of(basin, Ground(fall=0.1))
    deeper = lie.deepest_dig - lie.floor_below
    assert deeper * 12 == pytest.approx(12)


def test_slope_table(subtests):
    for percent, printed in [
        (3, "3 to 5 in"),
        (6, "6 to 7 in"),
        (10, "8 in"),
        (13, "elsewhere"),
        (4.5, "no row"),
    ]:
        with subtests.test(percent=percent, printed=printed):
            slope = ground_slope(quantity(100, "in"), quantity(percent, "in"))
            assert {"elsewhere": "another spot"}.get(printed, printed) in table_depth(slope)
