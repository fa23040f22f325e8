"""What to do next, which leads the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from interview.garden import soak_due
from interview.garden.afterwards import questions as review
from interview.garden.afterwards.levels_questions import LEVELS_READ
from interview.garden.plan import Plan
from interview.garden.site import lines_questions as buried
from interview.garden.site.gate import gate_today
from interview.garden.site.locate import Cause
from interview.garden.summary import may_dig, waiting, wrap
from interview.quantities.evidence import Finding, Grade
from interview.reading import said_day

MOST_FIXES, MOST_WAITS = 5, 4
"""How many of each are told here; the rest stand under their own headings."""

PRINT_CARD = (
    "Print the yard card, one page to take outside (C on the page of the plan, or "
    "rain-garden-interview --card FILE)."
)
LOCATE_KEYS = ("buried_lines", "dig_day")


def next_steps(plan: Plan) -> Iterator[str]:
    """Yield the steps to take next, most pressing first, numbered."""
    for place, step in enumerate(steps(plan), 1):
        yield from wrap(f"{place}. {step}", "   ")


SHUT_TODAY = "Digging is shut today, the test hole too"
"""How the step begins that says why, and whom to ask."""
OWN_LINES = (
    "The service does not mark those: look at old drawings, or pay a private locator to find them."
)


def steps(plan: Plan) -> Iterator[str]:
    """Yield the steps to take next, most pressing first, each whole."""
    now, service = may_dig(plan), buried.locating_service(plan.answers)
    stops = [one for one in plan.findings if one.grade is Grade.STOP]
    if stops:
        yield "STOP. Do not dig or build here as it is."
        yield from _told(stops)
    for look in soak_due.under_way(plan.answers, plan.now):
        yield look.words(plan.answers)
    if plan.answers.get(buried.LINES_REQUESTED) != "asked":
        yield f"Have the buried lines marked, and do not dig before. {service}"
    elif not now.open:
        reasons = [one for one in now.reasons if not any(one == stop.said for stop in stops)]
        if reasons:
            causes = set(gate_today(plan.answers, plan.now.date()).causes)
            whom = service if causes - {Cause.PRIVATE} else OWN_LINES if causes else ""
            yield f"{SHUT_TODAY}: {' '.join([*reasons, whom])}".rstrip()
    yield from _told(
        [
            one
            for one in plan.findings
            if one.grade is Grade.FIX and one.key not in LOCATE_KEYS and one.change
        ]
    )
    waits = [] if stops else waiting(plan)
    for question, _, why in waits[:MOST_WAITS]:
        once = ", once digging is open" if question.digs and not now.open else ""
        yield f"Find out{once}: {question.label}.{f' {why}' if why else ''}"
    if len(waits) > MOST_WAITS:
        more = len(waits) - MOST_WAITS
        yield f"Find out {more} more {'thing' if more == 1 else 'things'}: STILL TO FIND OUT."
    if stops or waits:
        return
    if plan.answers[LEVELS_READ]:
        yield "Once the levels are right plant it, water it in and mulch: PLANTS; then FIRST YEAR."
        return
    day = plan.answers.get(review.DIG_DAY)
    shut = [one for one in plan.findings if one.key == "dig_day"]
    if shut:
        if now.open:
            yield f"{shut[0].said} {shut[0].change}"
    elif day is not None and day > plan.now.date():
        yield f"You mean to dig on {said_day(day)}: the marks must still be good on that day."
    yield PRINT_CARD
    if not now.open:
        yield (
            "Lay the garden out with a hose or string, without pegs; peg and dig only once digging "
            "is open. Then follow DIGGING, LEVELS BEFORE PLANTING, PLANTS and FIRST YEAR in order."
        )
    else:
        yield (
            plan.answers.told(
                "Peg out, dig, plant and connect the downspout in the order of DIGGING; before you "
                "plant read the levels: LEVELS BEFORE PLANTING; then FIRST YEAR."
            )
        )


def _told(findings: list[Finding]) -> Iterator[str]:
    for one in findings[:MOST_FIXES]:
        yield f"{one.said} {one.change}".strip()
    if len(findings) > MOST_FIXES:
        yield f"See to {len(findings) - MOST_FIXES} more, under WHAT WAS FOUND."
