"""The soak tests of a garden that are under way: which to look at first, and what is noted."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from typing import NamedTuple

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.route import Step
from interview.garden import gate
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.run import soak_run
from interview.garden.soak.timed import RunState, SoakRun
from interview.garden.soak.times import clock, utc

FILLS = {
    RunState.WETTING_1: timing.FILL_1_START,
    RunState.DRAINING_1: timing.FILL_1_EMPTY,
    RunState.WETTING_2: timing.FILL_2_START,
    RunState.DRAINING_2: timing.FILL_2_EMPTY,
}
"""The time of wetting that is noted next, for the states that have one."""


class HoleTest(NamedTuple):
    """The test of one hole."""

    step: Step
    """The readings of the hole."""
    run: SoakRun

    @property
    def address(self) -> str:
        """Where that which is seen then is noted."""
        question = FILLS.get(self.run.state)
        if question is None:
            return self.step.address
        return f"{self.step.address.rsplit('.', 1)[0]}.{question.key}"

    @property
    def awaited(self) -> bool:
        """Tell whether a time is due, or would be but for a clock that was set back."""
        run = self.run
        back = run.clock_back and run.began is not None
        return (run.due is not None or back) and not run.enough

    @property
    def is_due(self) -> bool:
        """Tell whether its time has come."""
        due = self.run.due
        return due is not None and not self.run.clock_back and utc(due) <= utc(self.run.now)

    def words(self, answers: Answers) -> str:
        """Say which hole it is, what is to be done, and since when where that is past."""
        said = f"Soak test, {route.item_name(self.step, answers)}: {self.run.do_now}"
        if self.is_due and self.run.due is not None:
            said += f" It was due at {clock(self.run.due, self.run.now)}."
        return said


def holes(answers: Answers, now: dt.datetime) -> list[HoleTest]:
    """Return every hole that is asked of, in their written order, and how each stands at once."""
    return [
        HoleTest(step, soak_run(step.view(answers), now))
        for step in route.steps(answers)
        if step.question is timing.READINGS
    ]


def awaited(tests: Iterable[HoleTest], answers: Answers, today: dt.date) -> list[HoleTest]:
    """Return those of ``tests`` that are to be looked at some time and may be answered today."""
    return [one for one in tests if one.awaited and not gate.shut(one.step, answers, today)]


def under_way(answers: Answers, now: dt.datetime) -> list[HoleTest]:
    """Return the holes that are to be looked at some time, in their written order."""
    return awaited(holes(answers, now), answers, now.date())


def first(answers: Answers, now: dt.datetime) -> HoleTest | None:
    """Return the hole that is to be looked at first; nothing where no test is under way."""
    found = under_way(answers, now)
    return min(found, key=lambda one: utc(one.run.due or now), default=None)
