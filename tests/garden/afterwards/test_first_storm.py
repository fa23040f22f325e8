"""What the first storms showed, held against what the garden is made for."""

from __future__ import annotations

import pytest

from interview.garden.afterwards.findings import after_findings
from interview.quantities.evidence import Grade

STORM = {"units": "us", "rain_depth": "1 in", "storm_seen": "yes"}


@pytest.fixture
def told(given):
    def make(**texts):
        return {one.key: one for one in after_findings(given({**STORM, **texts}))}

    return make


def test_water_that_runs_over_in_less_than_the_rain_to_hold_is_told(told):
    """Both sides of the limit: a storm of all the rain to hold may run over at its notch."""
    soon = told(storm_rain="0.99 in", storm_overflow="notch")["overflow_soon"]
    assert soon.grade is Grade.FIX and "0.99 in of rain" in soon.said and "1 in" in soon.said
    assert "overflow_soon" not in told(storm_rain="1 in", storm_overflow="notch")
    assert "overflow_soon" not in told(storm_rain="0.5 in", storm_overflow="none")
    assert "overflow_soon" not in told(storm_overflow="notch")


def test_water_that_leaves_elsewhere_than_at_the_notch_is_told_whatever_fell(told):
    assert told(storm_rain="3 in", storm_overflow="elsewhere")["overflow_elsewhere"].asks
    assert told(storm_rain="3 in", storm_overflow="notch") == {}
