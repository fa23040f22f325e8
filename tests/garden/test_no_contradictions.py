"""Gardens that a yard may hold: no sheet of one says what another denies, or what is absurd.

``.ci/gardens`` does the same with many.
"""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path

GARDENS = 20
WHOLE_EVERY = 10
"""Of how many one has its working read too, which takes as long as the rest."""
SAMPLES = Path(__file__).parents[2] / "sample_answers"


def _beside(name):
    found = importlib.util.spec_from_file_location(name, Path(__file__).with_name(f"{name}.py"))
    module = importlib.util.module_from_spec(found)
    sys.modules[name] = module
    found.loader.exec_module(module)
    return module


# Each is imported by those after it.
_NAMES = ("any_yard", "told_of_one", "adds_up", "cross_statements", "never_together")
yards, _, _, crossed, apart = map(_beside, _NAMES)


def test_no_page_of_a_garden_denies_another(subtests, chance, given, clock):
    from interview.garden.opening import plan_of

    for seed in range(GARDENS):
        with subtests.test(garden=seed):
            answers = yards.Yard(seed, chance(seed)).answers(given())
            told = crossed.Told(plan_of(answers, SAMPLES, clock.now), seed % WHOLE_EVERY == 0)
            for check in (*crossed.CHECKS, *apart.CHECKS):
                assert list(check(told)) == [], check.__name__
