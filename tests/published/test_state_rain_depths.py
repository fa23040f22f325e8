"""Depths of rain by state, as each source prints them.

DC: 21 DCMR 520 and 524 (copies of 2024). Iowa: Iowa Stormwater Management Manual, section 2B-1
("about"). Utah: Guidance for Calculation of the 90th Percentile Storm Event, Division of Water
Quality, April 2016 (0.6 to 0.7 in). New Hampshire: N.H. Code Env-Wq 1504.10, not the summary that
the table was filled from first. Maryland: Stormwater Design Manual, 2000, table 2.1. Tennessee:
rule 0400-40-10-.04. West Virginia: DEP, Tools and Guidance, web page. The range of 0.8 to 1.2 in
for most of the US: Center for Watershed Protection, Sizing Criteria, web page.
"""

from __future__ import annotations

import pytest

from interview.garden.place.rain import CUSTOM, Basis, depths, usual_rain

PRINTED = [
    ("DC", Basis.PERCENTILE, 90, 1.2),
    ("DC", Basis.PERCENTILE, 95, 1.7),
    ("IA", Basis.PERCENTILE, 90, 1.25),
    ("NH", Basis.RULE, None, 1.0),
    ("MD", Basis.MANUAL, None, 1.0),
    ("TN", Basis.RULE, None, 1.0),
    ("WV", Basis.RULE, None, 1.0),
]
UTAH_IN = (0.6, 0.7)
MOST_OF_THE_US_IN = (0.8, 1.2)


@pytest.mark.parametrize(("state", "basis", "percent", "inches"), PRINTED)
def test_the_depth_is_the_one_printed(state, basis, percent, inches):
    found = [
        one.depth_in
        for one in depths()
        if (one.state, one.basis, one.percent) == (state, basis, percent)
    ]
    assert found == [inches]


def test_of_a_range_the_larger_end_is_taken():
    assert usual_rain("UT").depth_in == max(UTAH_IN)
    assert "0.6 to 0.7 in" in usual_rain("UT").note


def test_the_custom_lies_within_the_range_of_most_of_the_country():
    low, high = MOST_OF_THE_US_IN
    assert CUSTOM.depth_in == pytest.approx((low + high) / 2)
