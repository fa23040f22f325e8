"""Four years of daily rain at Seattle, an open record that a package registry carries.

Data: seattle-weather.csv of the package vega_datasets 0.9 (Python Package Index), 2012-01-01 to
2015-12-31, depths in mm; a work of the US Government, source NOAA National Climatic Data Center.
The totals, counts and percentiles below were computed from that file with a spreadsheet's rules:
linear interpolation, days over 0.1 in only. The package itself is never imported: only its file
is read.
"""

from __future__ import annotations

import importlib.util
from datetime import date
from pathlib import Path

import numpy
import pytest

from interview.garden.form.basin import Basin
from interview.garden.pond.pool import pool
from interview.garden.storms.rain_days import rain_days
from interview.garden.storms.rainfall_record import replay
from interview.garden.storms.record_text import read_record
from interview.quantities.units import magnitude, quantity


@pytest.fixture(scope="module")
def text() -> str:
    found = importlib.util.find_spec("vega_datasets")
    if found is None or found.origin is None:
        pytest.skip("the package vega_datasets, which carries the record, is not installed")
    return (Path(found.origin).parent / "_data" / "seattle-weather.csv").read_text()


@pytest.fixture(scope="module")
def record(text):
    return read_record(text, "mm")


@pytest.fixture(scope="module")
def inches(record):
    return numpy.array([magnitude(depth, "in") for _, depth in record.days])


def test_every_day_is_read_and_none_is_missing(record):
    assert len(record.days) == 1461
    assert (record.days[0][0], record.days[-1][0]) == (date(2012, 1, 1), date(2015, 12, 31))
    assert record.gaps == () and record.bad_lines == () and record.traces == ()
    assert record.doubt == "" and record.disordered == ()


def test_the_totals_by_year(record):
    totals = dict.fromkeys(range(2012, 2016), 0.0)
    for day, depth in record.days:
        totals[day.year] += magnitude(depth, "mm")
    printed = {2012: 1226.0, 2013: 828.0, 2014: 1232.8, 2015: 1139.2}
    assert totals == pytest.approx(printed, abs=0.05)
    assert sum(totals.values()) == pytest.approx(4426.0, abs=0.05)


def test_the_wet_days_and_the_wettest(record, inches):
    assert int((inches > 0).sum()) == 623
    assert int((inches > 0.1).sum()) == 371
    wettest = max(record.days, key=lambda one: magnitude(one[1], "mm"))
    assert wettest[0] == date(2015, 3, 15)
    assert magnitude(wettest[1], "mm") == pytest.approx(55.9)


def test_the_percentiles_of_days_over_a_tenth_of_an_inch(subtests, record, inches):
    found = rain_days(record.days)
    assert found.count == 371 and found.short
    assert found.years == pytest.approx(4, abs=0.001)
    for percentile, printed in [(80, 0.66), (85, 0.76), (90, 0.89), (95, 1.19)]:
        with subtests.test(percentile=percentile, printed=printed):
            depth = magnitude(found.depths()[percentile], "in")
            assert depth == pytest.approx(printed, abs=0.005)
            reference = numpy.percentile(inches[inches > 0.1], percentile)
            assert depth == pytest.approx(reference, abs=1e-9)


def test_the_share_of_rain_days_within_an_inch(record, inches):
    """94.7 % of all wet days bring no more; of those over a tenth of an inch it is fewer."""
    assert (inches[inches > 0] <= 1).mean() == pytest.approx(0.947, abs=0.0005)
    found = rain_days(record.days).share_within(quantity(1, "in"))
    assert found == pytest.approx((inches[inches > 0.1] <= 1).mean(), abs=1e-12)
    assert found < 0.947


def test_an_inch_is_most_days_but_not_most_of_the_water(inches):
    """74.5 % of the water falls on days of an inch or less; their first inch is 93.5 %."""
    total = inches.sum()
    assert inches[inches <= 1].sum() / total == pytest.approx(0.745, abs=0.0005)
    assert numpy.minimum(inches, 1).sum() / total == pytest.approx(0.935, abs=0.0005)


def test_a_garden_for_an_inch_holds_more_than_the_first_inch_of_each_day(record):
    """It loses what each day brings over an inch at the most, and less as it drains by day."""
    garden = Basin(quantity(15, "ft"), quantity(7, "ft"), quantity(6, "in"), 3, quantity(4, "in"))
    fast, slow = (
        pool(garden.stage, quantity(570, "ft**2"), garden.rim_area, quantity(rate, "in/h"))
        for rate in (2, 0.1)
    )
    found = replay(record.days, fast, quantity(6, "h"))
    assert 0.935 < found.share_held <= 1
    assert [part.number for part in found.years] == [2012, 2013, 2014, 2015]
    assert sum(part.days for part in found.months) == 1461
    assert replay(record.days, slow, quantity(6, "h")).share_held < found.share_held
