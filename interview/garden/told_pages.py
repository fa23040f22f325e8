"""What the pages tell that ask nothing, or tell something first: the same on every front end.

Each function returns sentences or short lines, in the units and the words of the garden's country.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import suppress

from interview.asking import path, route
from interview.asking.path import Place
from interview.asking.question import UNKNOWN_TEXT, Status, Unanswered
from interview.asking.route import Step
from interview.garden.afterwards import levels_questions as levels
from interview.garden.afterwards import questions as review
from interview.garden.due import due
from interview.garden.due_words import Due, GardenState, day_words
from interview.garden.panel import distances_line, garden_lines, slope_line
from interview.garden.path import TODAY
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.session import Session
from interview.garden.site import lines_questions as buried
from interview.garden.site.cautions import LOCATE
from interview.garden.site.gate import dig_bars, gate_today
from interview.garden.size.rough_words import first_size
from interview.garden.soak import questions as soak
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.run import soak_run
from interview.garden.summary import rough_line
from interview.garden.verdicts import verdict
from interview.quantities.evidence import Grade
from interview.reading import Refused

END_OF_TODAY = "end_of_today"
MOST_TAKEN = 3
"""So many usual values are told at the end of a visit; a choice of ours."""
_LEFT_TODAY = frozenset(
    {
        GardenState.NEW, GardenState.FIRST_SIZE, GardenState.SPOT, GardenState.NOT_ASKED,
        GardenState.SMELL, GardenState.STOP, GardenState.FAULTS,
    }
)  # fmt: skip
"""What is due on the first day itself."""
_WAITS = (GardenState.WHILE_WAITING, GardenState.WAITING)
MOST_PROBLEMS = 3
"""So many stops, or things to mend, are told on a page; the plan tells all. A choice of ours."""


def told(session: Session, place: Place) -> list[str]:
    """Return what the page of ``place`` tells; nothing for the timer, which is a run of its own."""
    tells: dict[str, Callable[[], list[str]]] = {
        "rough_size": lambda: rough_size(session.plan),
        END_OF_TODAY: lambda: end_of_today(session),
        "waiting": lambda: waiting(session),
        "result": lambda: result(session.plan, place.number or 1),
        "the_plan": lambda: the_plan(session),
    }
    tell = tells.get(place.page.tells)
    return tell() if tell else []


def due_now(session: Session, faults: int = 0) -> Due:
    """Return what is due in the garden of ``session``; ``faults`` as ``due`` takes them."""
    plan = session.plan
    return due(
        plan,
        rough_line(plan),
        session.taken,
        lambda step: title(session, step),
        faults,
        path.steps,
    )


def title(session: Session, step: Step) -> str:
    """Return the title of the page that asks for ``step``; nothing off the path."""
    place = session.way.place_of(step.address)
    return session.answers.told(place.page.title) if place else ""


def said_at_once(plan: Plan, step: Step) -> str:
    """Return what the gate makes of an answer about the lines: the first day, the last good one.

    Nothing for other answers, and while it is not known.
    """
    today = plan.now.date()
    found = gate_today(plan.answers, today)
    if step.question in _WAIT and found.earliest is not None and found.earliest > today:
        return plan.answers.told(f"First day to dig: {day_words(found.earliest, today)}.")
    if step.question is buried.LINES_FINISHED_ON and found.stale_after is not None:
        return plan.answers.told(f"Marks good to {day_words(found.stale_after, today)}.")
    return ""


_WAIT = (buried.LINES_ASKED_ON, buried.LINES_BUSINESS_DAYS, buried.LINES_HOLIDAYS)


def rough_size(plan: Plan) -> list[str]:
    """Return the first size, or what it waits for."""
    try:
        size = first_size(plan.rough.sized, plan.rough.any_soil, plan.metric)
        return _all_told(plan, [*size, *start.rain_of_the_state(plan.answers)])
    except Unanswered as gap:
        return _all_told(plan, [f"A first size waits for: {gap.said(plan.answers)}."])


def end_of_today(session: Session) -> list[str]:
    """Return what was found today, what was taken as usual, what is still to be found out."""
    plan, next_due = session.plan, due_now(session)
    asked_on = plan.answers.get(buried.LINES_ASKED_ON)
    if next_due.state in _LEFT_TODAY:
        head, lead = "Not all of the first day's work is done yet.", ""
    elif session.came_back_to == END_OF_TODAY:
        head, lead = "The last visit ended here.", "Now: "
    elif next_due.state in _WAITS and asked_on in (None, plan.now.date()):
        head, lead = "That is all for today.", "Next time: "
    else:
        head, lead = "The first day's work is done.", "Now: "
    lines = [head, *_found(plan)]
    if taken := taken_as_usual(session):
        more = len(taken) - MOST_TAKEN
        rest = [f"{more} more, which the plan lists"] if more > 0 else []
        lines.append(f"Taken as usual: {'; '.join([*taken[:MOST_TAKEN], *rest])}.")
    return [*_all_told(plan, lines), *to_find_out(session), f"{lead}{next_due.says}"]


def waiting(session: Session) -> list[str]:
    """Return when digging opens, what else keeps it shut, and what can be found out meanwhile."""
    plan = session.plan
    today = plan.now.date()
    first = gate_today(plan.answers, today).earliest
    if first is not None and first > today:
        day = day_words(first, today)
        lines = [f"First day to dig: {day}, if all owners have answered by then."]
    elif first is not None:
        lines = ["The wait is over. Digging opens once every owner has answered."]
    else:
        lines = ["The first day to dig is not known yet."]
    lines += [bar.said for bar in dig_bars(plan.answers.whole(), today) if not bar.waits]
    off = to_find_out(session)
    over = first is not None and first <= today
    nothing = [] if off or over else ["Nothing else to do today."]
    return [*_all_told(plan, [*lines, *nothing]), *off, plan.answers.told(LOCATE)]


def result(plan: Plan, number: int = 1) -> list[str]:
    """Return what the soak test of hole ``number`` means for the garden, or what it waits for."""
    view = plan.answers.at(soak.HOLES.key, number)
    step = route.step_at(view.address(timing.READINGS), plan.answers)
    found = verdict(plan, step) if step else None
    if found is not None:
        return [found.line]
    waits = soak_run(view, plan.now).waits
    return _all_told(plan, [f"No rate yet. {waits}".strip()])


def the_plan(session: Session) -> list[str]:
    """Return the garden in a sentence, what stands against it, and the day meant for digging."""
    plan = session.plan
    lines = [f"{one.rstrip('.')}." for one in garden_lines(plan)] or _found(plan)[:1]
    against = [one for one in plan.findings if one.grade is not Grade.GOOD]
    worst = sorted(against, key=lambda one: one.grade is not Grade.STOP)
    lines += [f"{one.grade.value.upper()}: {one.said}" for one in worst[:MOST_PROBLEMS]]
    if len(worst) > MOST_PROBLEMS:
        lines.append(f"And {len(worst) - MOST_PROBLEMS} more in the plan.")
    day = plan.answers.get(review.DIG_DAY)
    if day is not None:
        lines.append(f"Dig day: {day_words(day, plan.now.date())}.")
    if plan.answers[levels.LEVELS_READ] and plan.answers.get(levels.FLOOR_READINGS) is None:
        lines.append("Levels: go on, and type in what you read.")
    return [*_all_told(plan, lines), *to_find_out(session)]


def taken_as_usual(session: Session, visit: str = TODAY) -> list[str]:
    """Return each row taken whole on the usual pages of ``visit``, as label and usual value."""
    answers, said = session.answers, list[str]()
    for place in session.way.places:
        if place.page.visit != visit or place.name not in session.taken:
            continue
        for step in session.way.rows(place):
            usual = session.offered(step)
            if session.way.status(step) is Status.OPEN and usual:
                said.append(f"{step.worded(answers).label}: {usual_words(session, step, usual)}")
    return list(dict.fromkeys(said))


def usual_words(session: Session, step: Step, usual: str) -> str:
    """Return the usual words of a row as they are understood, such as the labels of choices."""
    view = step.view(session.answers)
    question = step.worded(session.answers)
    if question.kind.name in ("date", "list of date") and usual != UNKNOWN_TEXT:
        with suppress(Refused, Unanswered):
            return question.kind.echo(question.kind.take(usual, view).value, view)
    labels = dict(getattr(question.kind, "options", ()))
    each = usual.split(", ")
    return ", ".join(labels[one] for one in each) if labels.keys() >= {*each} else view.told(usual)


def to_find_out(session: Session) -> list[str]:
    """Return each answer that was put off with how to find it out, the first few."""
    lines = []
    for step in session.put_off_list():
        label = step.worded(session.answers).label
        lines.append(f"To find out: {label}. {session.find_out(step)}")
    return lines


def _found(plan: Plan) -> list[str]:
    return list(_each_found(plan))


def _each_found(plan: Plan) -> Iterator[str]:
    stops = [one for one in plan.findings if one.grade is Grade.STOP]
    yield from (f"STOP: {one.said}" for one in stops[:MOST_PROBLEMS])
    if size := rough_line(plan):
        yield f"{size}."
    yield from (f"{one}." for one in (*distances_line(plan), *slope_line(plan)))
    asked = plan.answers.get(buried.LINES_REQUESTED) == "asked"
    first = plan.site.dig_gate.earliest
    if not asked:
        yield f"The marks are not asked for yet. {buried.locating_service(plan.answers)}"
    elif first is not None:
        day = day_words(first, plan.now.date())
        yield f"First day to dig: {day}, if all owners have answered."


def _all_told(plan: Plan, lines: list[str]) -> list[str]:
    return [plan.answers.told(one) for one in lines]
