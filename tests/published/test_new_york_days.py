"""Four years of daily rain at New York, beside a rule of thumb and its percentiles.

Data: the New York rows of weather.csv, package vega-datasets 2.7.0 (npm registry, sha256 of the
file 27219f1c…), 2012-01-01 to 2015-12-31, depths in mm, date and depth alone; a work of the US
Government, source NOAA National Climatic Data Center. Totals, counts, shares and percentiles were
computed from that file with a spreadsheet's rules: linear interpolation, days over 0.1 in only; the
shares twice, by different people.
"""

from __future__ import annotations

from datetime import date
from pathlib import Path

import numpy
import pytest

from interview.garden.storms.rain_days import rain_days
from interview.garden.storms.record_text import read_record
from interview.quantities.units import magnitude, quantity


@pytest.fixture(scope="module")
def record():
    return read_record((Path(__file__).parent / "new_york_days.csv").read_text(), "mm")


@pytest.fixture(scope="module")
def inches(record):
    return numpy.array([magnitude(depth, "in") for _, depth in record.days])


def test_every_day_is_read_with_the_totals_by_year(record, inches):
    assert len(record.days) == 1461 and record.gaps == () and record.bad_lines == ()
    totals = dict.fromkeys(range(2012, 2016), 0.0)
    for day, depth in record.days:
        totals[day.year] += magnitude(depth, "mm")
    assert totals == pytest.approx({2012: 1012.5, 2013: 902.7, 2014: 1289.8, 2015: 973.6}, abs=0.05)
    assert int((inches > 0).sum()) == 470
    wettest = max(record.days, key=lambda one: magnitude(one[1], "mm"))
    assert wettest[0] == date(2014, 4, 30)
    assert magnitude(wettest[1], "mm") == pytest.approx(118.9)


def test_the_percentiles_of_days_over_a_tenth_of_an_inch(subtests, record, inches):
    found = rain_days(record.days)
    assert found.count == 270 and found.short
    for percentile, printed in [(80, 0.82), (85, 1.01), (90, 1.18), (95, 1.60)]:
        with subtests.test(percentile=percentile, printed=printed):
            depth = magnitude(found.depths()[percentile], "in")
            assert depth == pytest.approx(printed, abs=0.005)
            reference = numpy.percentile(inches[inches > 0.1], percentile)
            assert depth == pytest.approx(reference, abs=1e-9)


def test_an_inch_is_nine_days_in_ten_of_all_and_less_of_those_that_count(record, inches):
    assert (inches[inches > 0] <= 1).mean() == pytest.approx(0.913, abs=0.0005)
    found = rain_days(record.days).share_within(quantity(1, "in"))
    assert found == pytest.approx((inches[inches > 0.1] <= 1).mean(), abs=1e-12)
    assert found < 0.85


def test_an_inch_is_less_of_the_water_than_at_seattle(inches):
    """58.8 % of the water falls on days of an inch or less; their first inch is 83.7 %."""
    total = inches.sum()
    assert inches[inches <= 1].sum() / total == pytest.approx(0.588, abs=0.0005)
    assert numpy.minimum(inches, 1).sum() / total == pytest.approx(0.837, abs=0.0005)
