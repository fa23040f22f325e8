"""The deepest pond offered is a pond that can be dug."""

from __future__ import annotations

import pytest

from interview.garden import remedies
from interview.garden.guidance import pond_depths
from interview.garden.size import questions as bed
from interview.quantities.units import magnitude, quantity


@pytest.mark.parametrize(
    ("units", "rate", "unit", "step", "deepest"),
    [("us", "0.18 in/h", "in", 0.5, 8.5), ("metric", "4.56 mm/h", "mm", 10, 210)],
)
def test_the_deepest_pond_offered_is_the_pond_that_is_dug(
    plan_of, sized, monkeypatch, units, rate, unit, step, deepest
):
    # 48 h at 0.18 in/h are 8.64 in, at 4.56 mm/h 218.9 mm: rounded down to the step.
    tried = []
    keep = remedies._deepest

    def noted(plan):
        tried.append(keep(plan))
        return tried[-1]

    monkeypatch.setattr(remedies, "_deepest", noted)
    plan = plan_of(
        {**sized, "units": units, "known_rate": rate, "deepest_pond": "5 in"}, children="no"
    )
    assert remedies.ways_out(plan)
    (answers,) = tried
    assert magnitude(answers[bed.DEEPEST_POND], unit) == pytest.approx(deepest)
    dug = plan_of(dict(answers.texts)).size.depth.depth
    assert magnitude(dug, unit) == pytest.approx(deepest)


def test_a_metric_pond_lies_within_the_depths_it_is_told_beside():
    said = [one.here for one in pond_depths(quantity(150, "mm"), metric=True).sayings]
    inches = [one.here for one in pond_depths(quantity(6, "in")).sayings]
    assert said == inches
