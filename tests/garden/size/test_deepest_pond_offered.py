"""The deepest pond offered is a pond that can be dug."""

from __future__ import annotations

import pytest

from interview.garden import remedies
from interview.garden.guidance import pond_depths
from interview.garden.site import questions as site
from interview.garden.site.surroundings import CHILDREN_IN
from interview.garden.size import findings
from interview.garden.size import questions as bed
from interview.garden.size.findings import depth_findings
from interview.quantities.units import magnitude, quantity


def offered(plan, monkeypatch):
    """Return the answers with the deepest pond that the ways out of a plan try."""
    tried = []
    keep = remedies._deepest

    def noted(plan):
        tried.append(keep(plan))
        return tried[-1]

    monkeypatch.setattr(remedies, "_deepest", noted)
    assert remedies.ways_out(plan)
    return tried


@pytest.mark.parametrize(
    ("units", "rate", "unit", "step", "deepest"),
    [("us", "0.18 in/h", "in", 0.5, 8.5), ("metric", "4.56 mm/h", "mm", 10, 210)],
)
def test_the_deepest_pond_offered_is_the_pond_that_is_dug(
    plan_of, sized, monkeypatch, units, rate, unit, step, deepest
):
    # 48 h at 0.18 in/h are 8.64 in, at 4.56 mm/h 218.9 mm: rounded down to the step.
    plan = plan_of(
        {**sized, "units": units, "known_rate": rate, "deepest_pond": "5 in"}, children="no"
    )
    (answers,) = offered(plan, monkeypatch)
    assert magnitude(answers[bed.DEEPEST_POND], unit) == pytest.approx(deepest)
    dug = plan_of(dict(answers.texts)).size.depth.depth
    assert magnitude(dug, unit) == pytest.approx(deepest)


@pytest.mark.parametrize(("units", "unit", "deepest"), [("us", "in", 6), ("metric", "mm", 150)])
def test_near_small_children_the_deepest_pond_offered_is_the_one_no_finding_faults(
    plan_of, sized, monkeypatch, units, unit, deepest
):
    # One inch less as the rule is one inch less as the offer: it is the same rule.
    for rule, rounded in ((CHILDREN_IN, deepest), (CHILDREN_IN - 1, {6: 5, 150: 120}[deepest])):
        with monkeypatch.context() as patch:
            for module in (remedies, findings):
                patch.setattr(module, "CHILDREN_IN", rule, raising=False)
            given = {**sized, "units": units, "known_rate": "1 in/h", "deepest_pond": "4 in"}
            plan = plan_of(given, children="yes")
            (answers,) = offered(plan, patch)
            assert magnitude(answers[bed.DEEPEST_POND], unit) == pytest.approx(rounded)
            dug = plan_of(dict(answers.texts))
            assert "pond_and_children" not in {one.key for one in depth_findings(dug.size)}
    assert dug.answers[site.CHILDREN]


def test_a_metric_pond_lies_within_the_depths_it_is_told_beside():
    said = [one.here for one in pond_depths(quantity(150, "mm"), metric=True).sayings]
    inches = [one.here for one in pond_depths(quantity(6, "in")).sayings]
    assert said == inches
