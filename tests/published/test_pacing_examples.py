"""Published worked examples of pacing. Tolerances are half of the last digit printed.

1. Agricultural engineering textbook, chapter 12, "Pacing" (authors not shown in the excerpt read):
   one step is one pace.
2. AgEdWeb, agricultural mechanics, "Measuring by pacing": two steps are one pace.
3. "Map Reading and Land Navigation", US Army, TC 3-25.26, section 5-20, and soldier task
   071-329-1006: counts over 100 m.
4. FOR-47, Hill, University of Kentucky Cooperative Extension: paces in a course of 66 ft.
5. "Estimating Distances", a forest stewardship sheet: 13 paces of two steps in 66 ft, 20 in 100 ft.
"""

import pytest
from measures import ft

from interview.garden.survey.pacing import calibrate, pace_findings, paced
from interview.quantities.units import magnitude, quantity


def test_textbook_two_hundred_feet_in_62_60_and_64_steps():
    pace = calibrate(ft(200), [62, 60, 64])
    assert pace.mean_count == 62
    assert magnitude(pace.length, "ft") == pytest.approx(3.2, abs=0.05)
    # The book goes on with the factor rounded to 3.2: 375 steps, 1200 ft.
    assert magnitude(paced(375, pace).length, "ft") == pytest.approx(1200, rel=0.01)
    # It gives 2 ft in 100 ft as the error of a careful pacer: about our standard error.
    far = paced(375, pace)
    part = magnitude(far.standard_error, "ft") / magnitude(far.length, "ft")
    assert part == pytest.approx(0.02, abs=0.005)


def test_agedweb_four_walks_of_one_hundred_feet():
    pace = calibrate(ft(100), [20, 21, 20, 20])
    assert magnitude(pace.length, "ft") == pytest.approx(4.9, abs=0.05)
    # The page chains the rounded 4.9 to 167 ft; unrounded it is 167.9.
    assert magnitude(paced(34, pace).length, "ft") == pytest.approx(167, abs=1)
    # A pace of two steps is asked about, as it is longer than a step can be.
    assert [finding.key for finding in pace_findings(pace)] == ["pace_length"]


@pytest.mark.parametrize(("count", "inches"), [(116, 33.9), (148, 26.6)])
def test_army_counts_over_one_hundred_meters(count, inches):
    pace = calibrate(quantity(100, "m"), [count] * 3)
    assert magnitude(pace.length, "in") == pytest.approx(inches, abs=0.05)
    assert pace_findings(pace) == ()
    # A natural step is 30 in: TC 3-25.26, US Army, section 5-20.
    assert magnitude(pace.length, "in") == pytest.approx(30, rel=0.15)


def test_kentucky_course_of_66_feet(subtests):
    for count, printed in [(10, 6.60), (20, 3.30), (24, 2.75), (25.5, 2.59), (15.5, 4.26)]:
        with subtests.test(count=count, printed=printed):
            pace = calibrate(ft(66), [count] * 3)
            assert magnitude(pace.length, "ft") == pytest.approx(printed, abs=0.005)


def test_kentucky_ten_paces_of_4_26_feet():
    pace = calibrate(ft(66), [15.5] * 3)
    assert magnitude(paced(10, pace).length, "ft") == pytest.approx(42.6, abs=0.05)


@pytest.mark.parametrize(("feet", "count"), [(66, 13), (100, 20)])
def test_forest_sheet_of_two_step_paces(feet, count):
    """The two rules are for the same pace of about 5 ft; each count is a whole number."""
    pace = calibrate(ft(feet), [count] * 3)
    assert magnitude(pace.length, "ft") == pytest.approx(5, rel=0.5 / count)
    assert [finding.key for finding in pace_findings(pace)] == ["pace_length"]
