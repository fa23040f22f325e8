"""The dig gate: nothing is dug before the buried lines are located and answered."""

from __future__ import annotations

import datetime as dt

from interview.calc.guards import reaches
from interview.calc.locate import DigGate, Gate, LocateState, PrivateLines, dig_gate
from interview.model import Answers
from interview.questions import site, soak
from interview.route import Step
from interview.units import magnitude

_PRIVATE = {
    "none": PrivateLines.NONE,
    "kept_clear": PrivateLines.KEPT_CLEAR,
    "not_found": PrivateLines.UNKNOWN,
}
MARK_UNKNOWN = "You have not said how far the nearest mark is: measure that first."
MARK_PACED = (
    "The distance to the nearest mark is in paces, and the length of the pace is not known yet: "
    "measure the distance with a tape."
)
BLOCKING_SMELLS = ("gas", "fuel", "sewage")


def locate_state(answers: Answers) -> LocateState:
    """Return what has been done about the buried lines."""
    whole = answers.whole()
    asked = whole.get(site.LINES_REQUESTED) == "asked"
    return LocateState(
        asked=whole.get(site.LINES_ASKED_ON) if asked else None,
        all_answered=whole.get(site.LINES_ANSWERED) if asked else None,
        finished=whole.get(site.LINES_FINISHED_ON) if asked else None,
        private_lines=_PRIVATE.get(whole.get(site.PRIVATE_LINES) or ""),
        business_days=whole[site.LINES_BUSINESS_DAYS],
        valid_days=whole[site.LINES_VALID_DAYS],
        valid_calendar=whole[site.LINES_VALID_KIND] == "calendar",
        holidays=site.holidays(whole),
    )


def gate_today(answers: Answers, today: dt.date) -> DigGate:
    """Return whether digging may start on ``today``."""
    return dig_gate(locate_state(answers), today)


def dig_reasons(answers: Answers, today: dt.date) -> list[str]:
    """Return every reason why no spade may go in today; none where it may."""
    whole = answers.whole()
    found = gate_today(whole, today)
    reasons = list(found.reasons) if found.gate is Gate.CLOSED else []
    near = whole.get(site.MARK_DISTANCE)
    zone = site.tolerance_zone(whole)
    if near is None:
        if not reasons:
            paced = whole.waits(site.MARK_DISTANCE)
            reasons.append(MARK_PACED if paced else MARK_UNKNOWN)
    elif not reaches(magnitude(near, "m"), magnitude(zone.shown(whole.metric), "m")):
        reasons.append(
            f"A mark is within {zone.words(whole.metric)} of where you will dig. Move the hole and "
            "the garden, and measure again."
        )
    return [whole.told(one) for one in reasons]


def alarm(step: Step, answers: Answers) -> str:
    """Return what must be said at once after this answer, or nothing."""
    view = step.view(answers)
    if step.question is soak.HOLE_SMELL:
        smell: str | None = view.get(soak.HOLE_SMELL)
        said = f"STOP. {soak.HOLE_SMELL.caution_in(view)}"
        return said if smell in BLOCKING_SMELLS else ""
    if step.question is soak.HOLE_SEEPS and view.get(soak.HOLE_SEEPS):
        return (
            "STOP here: water that seeps in is groundwater, and a garden at this spot would fill "
            "from below. Fill the hole and choose a higher spot."
        )
    return ""


def shut(step: Step, answers: Answers, today: dt.date) -> list[str]:
    """Return why the question of ``step`` may not be answered yet; none where it may.

    A hole is held against the day it is dug, so its questions stay open when the marks go stale
    afterwards.
    """
    if not step.question.digs:
        return []
    view = step.view(answers)
    smell = view.get(soak.HOLE_SMELL)
    if smell in BLOCKING_SMELLS and step.question is not soak.HOLE_SMELL:
        said = (
            f"The hole smells of {smell}. Stop, stay away from it, and call: the utility for gas, "
            "the health department for fuel or sewage."
        )
        return [view.told(said)]
    day = view.get(soak.HOLE_DUG_ON) or today
    reasons = dig_reasons(answers, day)
    if day > today:
        reasons.append(f"The hole is to be dug on {day:%A} {day}; its questions open then.")
    return reasons
