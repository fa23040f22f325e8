"""One verdict on the soil, from the rate that governs, with the doubt of its feel beside it."""

from __future__ import annotations

import pytest

from interview.garden.soak.run import soak_run
from interview.quantities.units import magnitude
from interview.screens.soak_watch import meaning
from interview.sheet.report import plan_text

READ = "+1h left 173 mm; +2h left 149 mm; +3h left 128 mm"


@pytest.fixture
def tested(plan_of, hole):
    """Return a maker of plans of one metric hole whose soil felt like ``ribbon``."""

    def make(ribbon, width="200 mm", readings=READ):
        texts = hole("round", width, "200 mm", readings, ribbon=ribbon)
        return plan_of({"units": "metric", **texts})

    return make


def flat(plan):
    return " ".join(plan_text(plan).split())


def test_a_clay_ribbon_puts_its_doubt_beside_a_good_verdict(tested):
    plan = tested("long")
    assert 5.5 < magnitude(plan.soak.holes[0].test.corrected, "mm/h") < 6.0
    said = "The soil drains well: good ground for a rain garden. But it felt like clay, for which"
    assert said in flat(plan)
    assert "agrees with the test" not in flat(plan)
    assert any(one.key == "hole_1_texture" and one.grade.value == "fix" for one in plan.findings)


def test_a_feel_that_goes_with_the_test_puts_no_doubt_beside_it(tested):
    # Silt loam, 6.8 mm/h by the table of 1982.
    plan = tested("short_smooth")
    assert "But it felt like" not in flat(plan)
    assert "which agrees with the test" in flat(plan)
    assert not any(one.key == "hole_1_texture" for one in plan.findings)


def test_a_faster_bottom_is_not_called_worse_because_its_hole_is_wider(tested):
    # The wide hole drops more slowly, and yet its bottom takes more.
    narrow = tested("short", "200 mm").soak.holes[0].test
    wide = tested("short", "500 mm", "+1h left 185 mm; +2h left 171 mm; +3h left 158 mm")
    wide = wide.soak.holes[0].test
    assert wide.drop_rate < narrow.drop_rate and wide.corrected > narrow.corrected
    assert wide.band is narrow.band


def test_finding_heading_and_timing_page_give_the_same_verdict(tested, clock):
    plan = tested("long")
    band = plan.soak.holes[0].test.band.value
    rate = next(one for one in plan.findings if one.key == "hole_1_rate")
    assert rate.said.endswith(f": {band}.")
    view = plan.answers.at("holes", 1)
    said = meaning(soak_run(view, clock.now), view)
    assert "The soil drains well" in said and "But it felt like clay" in said
