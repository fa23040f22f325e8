"""The plan at a glance: the same verdict, figures and findings as the plan."""

import datetime as dt
from pathlib import Path

import pytest

from interview.garden.figures import BY_KEY, find
from interview.garden.opening import plan_of
from interview.garden.overview import overview
from interview.garden.planting.cheaper import fewest
from interview.garden.store import load
from interview.quantities.evidence import Grade

SAMPLES = Path(__file__).parents[2] / "sample_answers"
MAY = dt.datetime.fromisoformat("2026-05-30T09:00:00-05:00")


@pytest.fixture(scope="module", params=["finished_us", "usual_us", "finished_metric"])
def plan(request):
    answers = load(SAMPLES / f"{request.param}.yaml")[0].answers
    return plan_of(answers, SAMPLES, MAY)


def test_the_first_look_has_the_verdict_of_the_plan(plan):
    assert overview(plan).verdict is plan.verdict


def test_every_finding_that_asks_for_something_is_told_worst_first(plan):
    look = overview(plan)
    grades = [one.grade for one in look.badges]
    order = [Grade.STOP, Grade.FIX, Grade.GOOD]
    assert grades == sorted(grades, key=order.index)
    quiet = [one for one in plan.findings if one.grade is Grade.GOOD and not one.change]
    assert look.in_order == len(quiet)
    assert len(look.badges) + look.in_order == len(plan.findings)
    assert {one.word for one in look.badges} <= {"STOP", "FIX", "NOTE"}


def test_its_measures_are_the_figures_of_the_plan(plan):
    shown = {one.label: one.value for one in overview(plan).measures}
    keys = {
        "slope": "slope",
        "soil takes": "corrected_rate",
        "pond": "pond_depth",
        "rain held": "rain_held",
        "water stands": "storm_hours_on_floor",
    }
    for label, key in keys.items():
        assert shown[label] == find(BY_KEY[key], plan).shown(plan.metric), label


def test_the_count_of_plants_is_told_with_the_cheaper_ways_beside_it(plan):
    total, least = find(BY_KEY["plants_total"], plan).shown(plan.metric), fewest(plan.planting)
    assert least < 0.7 * int(total)
    said = " ".join(overview(plan).sentences)
    assert f"it takes {total} plants, with cheaper ways from {least}." in said


def test_a_share_is_the_figure_over_its_limit(plan):
    measures = {one.label: one for one in overview(plan).measures}
    # 12 percent is where the Rhode Island and Connecticut guide stops.
    slope = find(BY_KEY["slope"], plan).number(plan.metric)
    assert measures["slope"].share == pytest.approx(slope / 12, abs=0.01)
    assert all(one.share is None or 0 <= one.share <= 1 for one in measures.values())


def test_where_the_ground_may_slide_the_slope_is_held_against_its_lower_limit(plan_of, level_spot):
    look = overview(plan_of(level_spot, **{"spots.1.unstable_ground": "slides"}))
    measures = {one.label: one for one in look.measures}
    # 10 percent by the findings, where slides are known: see test_siting.
    assert measures["slope"].limit == "of 10 % at most"


def test_a_garden_without_a_size_says_what_is_wanted(plan_of):
    look = overview(plan_of({"garden_name": "Oak"}))
    assert look.sentences == ("There is no size yet: answer how big the roof is.",)
    assert "shut" in look.digging


def test_a_stop_is_told_as_no_digging(plan_of, level_spot):
    look = overview(plan_of(level_spot, **{"spots.1.unstable_ground": "slides"}))
    assert look.verdict is Grade.STOP and look.digging == "No digging"
    assert look.badges[0].word == "STOP"
