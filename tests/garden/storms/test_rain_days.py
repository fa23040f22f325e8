"""How deep the rain of most rain days of a record is, against numpy's percentiles and by hand."""

from __future__ import annotations

import datetime as dt

import numpy
import pytest
from hypothesis import given as sampled
from hypothesis import strategies as st

from interview.asking import route
from interview.garden.stages import QUESTIONS
from interview.garden.storms.rain_days import FEWEST_DAYS, PERCENTS, RainDays, rain_days
from interview.garden.suggest import beside
from interview.garden.verdicts import verdict
from interview.quantities.units import magnitude, quantity
from interview.sheet.report import plan_text

FIRST = dt.date(2021, 1, 1)


def days_of(inches):
    return [(FIRST + dt.timedelta(n), quantity(one, "in")) for n, one in enumerate(inches)]


def a_hundred_and_one():
    """0.20, 0.21 ... 1.20 in: so the depth at a rank is known by hand."""
    return [0.20 + n / 100 for n in range(101)]


def test_the_depth_of_a_share_is_at_its_rank():
    found = rain_days(days_of(a_hundred_and_one()))
    assert found.count == 101
    for percent, by_hand in [(0, 0.20), (80, 1.00), (85, 1.05), (90, 1.10), (95, 1.15), (100, 1.2)]:
        assert magnitude(found.depth(percent), "in") == pytest.approx(by_hand)
    assert list(found.depths()) == list(PERCENTS) == [80, 85, 90, 95]


def test_between_two_days_it_is_interpolated():
    found = RainDays(1, (0.2, 0.4))
    assert magnitude(found.depth(25), "in") == pytest.approx(0.25)
    with pytest.raises(ValueError, match="between 0 and 100"):
        found.depth(101)


def test_days_of_a_tenth_of_an_inch_or_less_are_left_out():
    small = [0, 0.01, 0.05, 0.1]
    assert rain_days(days_of(a_hundred_and_one() + small)).inches == pytest.approx(
        a_hundred_and_one()
    )
    millimeters = [(FIRST + dt.timedelta(n), quantity(2.54, "mm")) for n in range(30)]
    with pytest.raises(ValueError, match="has 0 days"):
        rain_days(millimeters)


def test_the_share_within_a_depth_counts_the_day_that_just_reaches_it():
    found = rain_days(days_of(a_hundred_and_one()))
    assert found.share_within(quantity(1.0, "in")) == pytest.approx(81 / 101)
    assert found.share_within(quantity(25.4, "mm")) == pytest.approx(81 / 101)
    assert found.share_within(quantity(0.1, "in")) == 0
    assert found.share_within(quantity(2, "in")) == 1


def test_too_few_rain_days_tell_nothing():
    enough = days_of([0.5] * FEWEST_DAYS.value)
    assert rain_days(enough).count == FEWEST_DAYS.value
    with pytest.raises(ValueError, match="are needed"):
        rain_days(enough[1:])


@sampled(st.lists(st.floats(0.11, 8), min_size=20, max_size=60), st.floats(0, 100))
def test_it_is_the_percentile_of_a_spreadsheet(inches, percent):
    found = magnitude(rain_days(days_of(inches)).depth(percent), "in")
    assert found == pytest.approx(numpy.percentile(inches, percent), abs=1e-9)


@pytest.fixture
def with_file(plan_of, sized, tmp_path):
    rows = [f"{day},{magnitude(rain, 'in'):.2f}" for day, rain in days_of(a_hundred_and_one())]
    (tmp_path / "rain.csv").write_text("\n".join(["date,rain_in", *rows]), encoding="utf-8")
    kept = {"has_rain_record": "yes", "rain_record": "rain.csv", "rain_record_unit": "in"}
    return lambda **more: plan_of({**sized, **kept, **more})


def test_the_figures_are_those_of_the_file(with_file, figure):
    plan = with_file(rain_depth="1 in")
    assert figure("record_rain_days", plan) == 101
    for percent, by_hand in [(80, 1.00), (85, 1.05), (90, 1.10), (95, 1.15)]:
        assert figure(f"record_depth_{percent}", plan) == pytest.approx(by_hand)
    assert figure("record_days_within", plan) == pytest.approx(100 * 81 / 101)


def test_the_question_offers_the_depths_of_the_file_and_says_the_share_held(with_file, plan_of):
    plan = with_file(rain_depth="1 in")
    asked = QUESTIONS["rain_depth"]
    said = beside(asked, plan)
    assert "101 days" in said and "80 % of them no more than 1 in fell; on 85 % 1.1 in" in said
    metric = beside(asked, with_file(rain_depth="25 mm", units="metric"))
    assert "2.5 mm" in metric and " in " not in metric.replace("in your", "")
    assert beside(asked, plan_of({"has_rain_record": "no"})) == ""
    assert beside(asked, plan_of({"has_rain_record": "yes", "rain_record": "none.csv"})) == ""


def test_the_sheet_calls_them_neither_published_nor_a_rule(with_file):
    said = " ".join(plan_text(with_file(rain_depth="1 in")).split())
    assert "worked out from your file: they are not published, and no rule" in said
    assert "0.28 years" in said and "about 30 are wanted" in said


def test_the_verdict_tells_it_when_the_file_and_the_rain_are_given(with_file, plan_of, sized):
    plan = with_file(rain_depth="1 in")
    for address, said in [
        ("rain_record_unit", "9 of 10 rain days in it bring 1.1 in or less: see Rain to hold."),
        ("rain_depth", "80 % of the rain days in your file bring no more."),
    ]:
        found = verdict(plan, route.step_at(address, plan.answers))
        assert found is not None and found.line == said
    without = plan_of({**sized, "rain_depth": "1 in"})
    told = verdict(without, route.step_at("rain_depth", without.answers))
    assert told is None or "rain days" not in told.line
