"""Gardens by chance: whatever is answered, the plan can be written and no number is absurd."""

from __future__ import annotations

import math
import re

from interview.asking import route
from interview.garden.figures import found
from interview.garden.summary import so_far, waiting_text
from interview.sheet.figures_file import figures_text
from interview.sheet.report import plan_text

GARDENS = 45
"""Some hundred answers each; few enough to be quick, and raised by hand now and then."""


def test_every_garden_has_a_plan_and_figures(subtests, chance, given, plan_of):
    for place in range(GARDENS):
        with subtests.test(garden=place):
            luck = chance(place)
            answers = luck.answers(given())
            plan = plan_of(answers)
            sheet = plan_text(plan)
            assert [line for line in sheet.splitlines() if len(line) > 76] == []
            assert not re.search(r"\bnan\b|-inf\b", sheet)
            assert not re.search(r"\bnan\b|-\.inf", figures_text(plan))
            assert so_far(plan) and waiting_text(plan)
            # A figure that waited for a question which is not asked would wait for ever; only
            # the rainfall file may be left out.
            asked = {step.address for step in route.steps(plan.answers)} | {"rain_record"}
            for one in found(plan):
                if one.waits_for is not None:
                    assert one.waits_for.address in asked, (
                        one.figure.key,
                        one.waits_for.address,
                    )
                number = one.number(plan.metric)
                if isinstance(number, float):
                    assert not math.isnan(number), one.figure.key
                    # A floor may lie above the lawn on the downhill side of a steep slope, and a
                    # rim as it was built below the notch.
                    if one.figure.key not in ("downhill_floor_depth", "built_rim"):
                        assert number >= 0, (one.figure.key, number)
