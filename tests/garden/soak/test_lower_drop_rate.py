"""The depth goes by the lower of two drop rates, and both are told."""

from __future__ import annotations

import pytest

from interview.quantities.units import magnitude
from interview.sheet.report import plan_text


@pytest.fixture
def slowing(plan_of, hole):
    """A hole of 8 in whose water falls 1 1/8, 1 1/8, 7/8 and 3/4 in in four hours."""
    return plan_of(
        {
            "units": "us",
            **hole(
                "round",
                "8 in",
                "8 in",
                "+1h left 6 7/8 in; +2h left 5 3/4 in; +3h left 4 7/8 in; +4h left 4 1/8 in",
            ),
        }
    )


def test_both_rates_are_figures_and_the_lower_sets_the_depth(slowing, figure):
    # By hand: (1.125 + 1.125 + 3.125/3 + 3.875/4) / 4 and 3.875 / 4.
    mean = (1.125 + 1.125 + 3.125 / 3 + 3.875 / 4) / 4
    assert figure("drop_rate", slowing) == pytest.approx(mean)
    assert figure("mean_drop_rate", slowing) == pytest.approx(3.875 / 4)
    assert figure("lower_drop_rate", slowing) == pytest.approx(3.875 / 4)
    assert figure("depth_by_drop", slowing) == pytest.approx(24 * 3.875 / 4)
    assert 1.09 < mean / (3.875 / 4) < 1.15
    said = " ".join(plan_text(slowing).split())
    assert "Whole drop divided by the whole time: 0.96 in/h" in said
    assert "Check 1, drop in the hole in 24 h: 23 in of pond" in said


def test_soil_that_speeds_up_keeps_the_average_of_its_readings(plan_of, hole, figure):
    faster = plan_of(
        {"units": "us", **hole("round", "8 in", "8 in", "+1h left 7 in; +2h left 5 in")}
    )
    # (1 + 3/2) / 2 is less than 3 / 2.
    assert figure("lower_drop_rate", faster) == pytest.approx(1.25)
    assert figure("mean_drop_rate", faster) == pytest.approx(1.5)


def test_each_hole_gives_its_lower_rate(plan_of, hole):
    texts = hole("round", "8 in", "8 in", "+1h left 7 in; +2h left 6 1/4 in")
    texts |= hole("round", "8 in", "8 in", "+1h left 7 in; +2h left 5 in", 2)
    soil = plan_of({"units": "us", **texts}).soak.soil
    assert magnitude(soil.lower_drop_rate, "in/h") == pytest.approx(0.875)
