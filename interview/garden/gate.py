"""Which questions are shut while nothing may be dug, and what must be said at once."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from typing import Any

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.question import Question, Status
from interview.asking.route import Step
from interview.garden.site import lines_questions as buried
from interview.garden.site import questions as site
from interview.garden.site import spot_questions as ground
from interview.garden.site.gate import Bar, Way, dig_bars, dig_reasons, locate_state
from interview.garden.site.results import STOPPED_BY
from interview.garden.soak import hole_questions as digging
from interview.garden.soak import questions as soak
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.hole_questions import BLOCKING_SMELLS
from interview.quantities.evidence import Finding
from interview.reading import said_day

_OF_ONE_REQUEST: tuple[Question[Any], ...] = (
    buried.LINES_TICKET,
    buried.LINES_ANSWERED,
    buried.LINES_FINISHED_ON,
    buried.MARK_DISTANCE,
)
"""Answers that speak of the marks of one request and say nothing of those of the next."""


def alarm(step: Step, answers: Answers) -> str:
    """Return what must be said at once after this answer, or nothing."""
    view = step.view(answers)
    if step.question is digging.HOLE_SMELL:
        smell: str | None = view.get(digging.HOLE_SMELL)
        said = f"STOP. {digging.HOLE_SMELL.caution_in(view)}"
        return said if smell in BLOCKING_SMELLS else ""
    if step.question is digging.HOLE_SEEPS and view.get(digging.HOLE_SEEPS):
        return (
            "STOP here: water that seeps in is groundwater, and a garden at this spot would fill "
            "from below. Fill the hole and choose a higher spot."
        )
    return ""


def shut(step: Step, answers: Answers, today: dt.date) -> list[str]:
    """Return why the question of ``step`` may not be answered yet; none where it may."""
    # It is asked of every question at each turn, and each second while a test runs.
    name = f"{step.address} is shut on {today}"
    return answers.once(name, lambda: [bar.said for bar in bars(step, answers, today)])


def bars(step: Step, answers: Answers, today: dt.date) -> list[Bar]:
    """Return what keeps the question of ``step`` shut, with the answers to change.

    A hole is held against the day it is dug, so its questions stay open when the marks go stale
    afterwards, or when new marks are asked for after it was dug with all lines clear. A day
    without a hole is held against today where it fails, so that it keeps nobody out.
    """
    view = step.view(answers)
    if step.question is digging.HOLE_DUG_ON:
        return _day_bars(view, today)
    if not step.question.digs:
        return []
    found = [*_hole_bars(view, today), *_stop_bars(view), *_pollution_bars(view)]
    smell: str | None = view.get(digging.HOLE_SMELL)
    if smell in BLOCKING_SMELLS and step.question is not digging.HOLE_SMELL:
        return [_smell_bar(view, smell), *found]
    return found


def ways_out(step: Step, answers: Answers, today: dt.date) -> list[Way]:
    """Return what can be done while ``step`` is shut, in the order of its reasons.

    Each leads to an answer that may be changed now, tells the day on which it may open, or whom to
    call. Where only the day kept of a hole without a depth is shut, what to do about that day.
    """
    asked = {one.address: one for one in route.steps(answers)}
    if beware(step, answers, today):
        return list(_day_ways(step.address))
    found: dict[tuple[str, str | None], Way] = {}
    for bar in bars(step, answers, today):
        for way in bar.ways:
            to = asked.get(way.address) if way.address else None
            if way.address and (to is None or to == step or shut(to, answers, today)):
                continue
            # A hole of a past day is held against it: that wait is over.
            if way.opens is not None and way.opens <= today:
                continue
            if not any(one.address == way.address for one in found.values() if way.address):
                found.setdefault((way.label, way.address), way)
    return list(found.values())


def _day_ways(address: str) -> tuple[Way, ...]:
    return (
        Way("Not dug yet: dig it today and give its depth", address),
        Way(
            "Dug then: do not use it. Look for damage and call if you see any, fill it, dig a new "
            "hole today and give its depth",
            address,
        ),
    )


_CALL = {
    "gas": "Go away from it and call the gas utility's emergency number",
    "fuel": "Stay away from it and call the health department",
    "sewage": "Stay away from it and call the health department",
}
"""Whom to call for each smell."""


def _smell_bar(view: Answers, smell: str) -> Bar:
    said = (
        f"The hole smells of {smell}. Stop, stay away from it, and call: the utility for gas, "
        "the health department for fuel or sewage."
    )
    ways = (
        Way(_CALL[smell]),
        Way("It smells of something else: say so", view.address(digging.HOLE_SMELL)),
        Way("Dig a new hole elsewhere", view.address(soak.ANOTHER_HOLE)),
    )
    return Bar(view.told(said), ways)


def _stop_bars(view: Answers) -> list[Bar]:
    """Return why no hole is to be dug where no garden can be; one that is dug stays open."""
    if any(view.text(one) is not None for one in _BROKEN):
        return []
    # Pollution has a bar of its own.
    found = [one for one in digging.spot_stops(view) if one.key != "contamination"]
    learn = digging.may_learn(view, digging.spot_stops(view))
    if not found or (learn and view.get(digging.TEST_TO_LEARN)):
        return []
    spot = ground.chosen_spot(view)
    ways = [_about(one, spot) for one in found]
    ways += _other_spot(spot)
    if learn:
        label = "Dig a hole here only to learn about the soil"
        ways.append(Way(label, view.address(digging.TEST_TO_LEARN)))
    said = " ".join(one.said for one in found)
    return [Bar(f"{said} No garden can be made at this spot as it stands.", tuple(ways))]


_BROKEN: tuple[Question[Any], ...] = (
    digging.HOLE_DEPTH,
    digging.HOLE_SMELL,
    digging.HOLE_WIDTH,
    timing.FILL_1_START,
    timing.TEST_START,
    timing.READINGS,
)
"""Answers that only a hole which is there can have."""


def _about(found: Finding, spot: Answers) -> Way:
    if found.key == "ownership":
        return Way("Say who owns the ground", site.PERMISSION.key)
    question = STOPPED_BY[found.key]
    return Way(f"Change “{question.told(spot).label}”", spot.address(question))


def _other_spot(spot: Answers) -> list[Way]:
    return [
        Way("Look at another spot", spot.address(ground.ANOTHER_SPOT)),
        Way("Choose another spot", ground.CHOSEN_SPOT.key),
    ]


def _day_bars(view: Answers, today: dt.date) -> list[Bar]:
    """Return why no day of digging may be named yet: none was fit for it up to today."""
    if view.get(digging.HOLE_DEPTH) is not None:
        return []
    last = locate_state(view).stale_after or today
    return dig_bars(view.whole(), min(today, last))


def _hole_bars(view: Answers, today: dt.date) -> list[Bar]:
    day = view.get(digging.HOLE_DUG_ON)
    whole, here = view.whole(), view.address(digging.HOLE_DUG_ON)
    if day is None:
        return dig_bars(whole, today)
    if cleared_before(view):
        return []
    if day > today:
        said = f"The hole is to be dug on {said_day(day)}; its questions open then."
        wait = Way(f"Wait until {said_day(day)}", opens=day)
        bar = Bar(said, (wait, Way("Name another day", here)), waits=True)
        return [*dig_bars(whole, day), bar]
    found = dig_bars(whole, day)
    if not found:
        return []
    other_day = Way("Correct the day of the hole", here)
    if view.get(digging.HOLE_DEPTH) is None:
        return [bar._replace(ways=(*bar.ways, other_day)) for bar in dig_bars(whole, today)]
    at = view.address(digging.HOLE_CLEARED)
    cleared = Way("Say whether every line was clear on that day", at)
    if view.get(digging.HOLE_CLEARED) == "no":
        said = (
            f"You said that not every line was clear when this hole was dug on {said_day(day)}. "
            "Do not use it. Look for damage and call if you see any, fill it, and dig another one "
            "once digging is open."
        )
        return [Bar(said, (cleared, Way("Dig another hole", view.address(soak.ANOTHER_HOLE))))]
    if digging.asked_after(view):
        said = (
            f"This hole was dug on {said_day(day)}, and the marks in your answers were asked for "
            "later. Say whether every line was clear on that day."
        )
        return [Bar(said, (cleared, other_day))]
    if day == today:
        return found
    first, *others = found
    said = f"For {said_day(day)}, the day of this hole: {first.said}"
    ways = (other_day, *first.ways) if first.waits else (*first.ways, other_day)
    return [first._replace(said=said, ways=ways, waits=False), *others]


def _pollution_bars(view: Answers) -> list[Bar]:
    """Return why water may not be soaked in where pollution is suspected; a test begun goes on."""
    spot = ground.chosen_spot(view)
    suspected, lab = spot.get(ground.CONTAMINATION), spot.get(ground.SOIL_LAB)
    if not suspected or lab == "clear" or view.text(timing.TEST_START) is not None:
        return []
    said = (
        "You named something that may have polluted the ground of this spot: do not dig and do "
        "not soak water in. A laboratory test that finds the soil clean opens it; so does another "
        "spot."
    )
    ways: tuple[Way, ...] = (
        Way("Say what a laboratory found", spot.address(ground.SOIL_LAB)),
        Way("Change what the ground has been", spot.address(ground.CONTAMINATION)),
        *_other_spot(spot),
    )
    return [Bar(said, ways)]


def cleared_before(view: Answers) -> bool:
    """Tell whether all lines were clear for this item's hole before the request there is now.

    While the request is the one the hole was dug under, its own answers tell.
    """
    day, asked = view.get(digging.HOLE_DUG_ON), locate_state(view).asked
    noted = view.get(digging.HOLE_CLEARED)
    return day is not None and (asked is None or asked > day) and noted not in (None, "no")


def beware(step: Step, answers: Answers, today: dt.date) -> str:
    """Return what is to be known before the depth of a hole is given, or nothing.

    The day kept was shut to digging and today is open: the hole is dug today, or not at all.
    """
    view = step.view(answers)
    if step.question is not digging.HOLE_DEPTH or not _moves_to(view, today):
        return ""
    day = view[digging.HOLE_DUG_ON]
    return (
        f"You named {said_day(day)} for this hole, and digging was shut on that day. If it is "
        "not dug yet, dig it today and give its depth: today is then its day. If it was dug then, "
        "do not use it: look for damage, fill it, and dig another."
    )


def _moves_to(view: Answers, today: dt.date) -> bool:
    """Tell whether a hole without a depth was named a day that was shut, while today is open."""
    day = view.get(digging.HOLE_DUG_ON)
    return (
        day is not None
        and day < today
        and view.get(digging.HOLE_DEPTH) is None
        and not cleared_before(view)
        and bool(dig_bars(view.whole(), day))
        and not dig_bars(view.whole(), today)
    )


def doubt(step: Step, day: Any, answers: Answers) -> str:
    """Return why a day given to ``step`` needs a second look, or nothing."""
    if step.question is buried.LINES_ASKED_ON and (old := _of_old_marks(answers, day)):
        labels = ", ".join(f"“{question.label}”" for question in old)
        return (
            "That is a later request, so your answers about the old marks are taken away and "
            f"asked again ({labels})."
        )
    if step.question is digging.HOLE_DUG_ON and day != step.view(answers).get(digging.HOLE_DUG_ON):
        reasons = dig_reasons(answers, day)
        return f"On {said_day(day)} digging is not open: {reasons[0]}" if reasons else ""
    return ""


def _of_old_marks(answers: Answers, day: dt.date) -> list[Question[Any]]:
    """Return the answers that a request made on ``day`` leaves without meaning."""
    whole = answers.whole()
    old, finished = whole.get(buried.LINES_ASKED_ON), whole.get(buried.LINES_FINISHED_ON)
    later = (old is not None and day > old) if finished is None else finished < day
    marked = any(whole.text(one) for one in (buried.LINES_FINISHED_ON, buried.MARK_DISTANCE))
    if not later or not (marked or whole.get(buried.LINES_ANSWERED)):
        return []
    holidays = (buried.LINES_HOLIDAYS,) if max(buried.holidays(whole), default=day) <= day else ()
    return [one for one in (*_OF_ONE_REQUEST, *holidays) if whole.text(one) is not None]


def follow(before: Answers, after: Answers, today: dt.date) -> Answers:
    """Return ``after`` with what an answer entails about marks and holes, ``before`` it given.

    A later request takes the answers about the old marks away. A hole whose day was shut gets
    today for its day with its depth. For each hole it is noted that all lines were clear, as long
    as the request is the one it was dug under; a note stands when a later request is made.
    """
    whole = after.whole()
    for number in whole.numbers(soak.HOLES.key):
        if note := _due(before.at(soak.HOLES.key, number), today):
            now = whole.at(soak.HOLES.key, number)
            if now.text(digging.HOLE_CLEARED) is None and _same_hole(before, now):
                whole = whole.with_text(now.address(digging.HOLE_CLEARED), note)
    day = whole.get(buried.LINES_ASKED_ON)
    if day is not None and day != before.whole().get(buried.LINES_ASKED_ON):
        for question in _of_old_marks(before, day):
            # What is given together with the new day, as its ticket, is of the new request.
            if whole.text(question) == before.whole().text(question):
                whole = whole.without(question.key)
    for number in whole.numbers(soak.HOLES.key):
        for address, text in _entailed(before, whole.at(soak.HOLES.key, number), today):
            whole = whole.without(address) if text is None else whole.with_text(address, text)
    return whole


def _same_hole(before: Answers, now: Answers) -> bool:
    was = before.at(*now.scope) if now.scope else before
    return was.get(digging.HOLE_DUG_ON) == now.get(digging.HOLE_DUG_ON)


def _due(view: Answers, today: dt.date) -> str | None:
    """Return what is to be noted of a hole that was dug with all lines clear, or nothing."""
    day, asked = view.get(digging.HOLE_DUG_ON), locate_state(view).asked
    if day is None or asked is None or not asked <= day <= today:
        return None
    if view.get(digging.HOLE_DEPTH) is None or dig_bars(view.whole(), day):
        return None
    ticket = view.whole().get(buried.LINES_TICKET)
    return f"ticket {' '.join(ticket.split())}" if ticket else "yes"


def _entailed(before: Answers, view: Answers, today: dt.date) -> Iterator[tuple[str, str | None]]:
    """Yield the addresses of one hole that change with the answer given, and their new words."""
    assert view.scope is not None
    was = before.at(*view.scope)
    newly = view.get(digging.HOLE_DEPTH) is not None and was.get(digging.HOLE_DEPTH) is None
    if newly and _moves_to(was, today):
        day_at = view.address(digging.HOLE_DUG_ON)
        yield day_at, today.isoformat()
        view = view.with_text(day_at, today.isoformat())
    day, asked = view.get(digging.HOLE_DUG_ON), locate_state(view).asked
    noted, due = view.get(digging.HOLE_CLEARED), _due(view, today)
    if due:
        if view.standing(digging.HOLE_CLEARED) in (Status.OPEN, Status.UNKNOWN):
            yield view.address(digging.HOLE_CLEARED), due
    elif noted not in (None, "no") and day is not None:
        own = asked is not None and asked <= day
        if not _same_hole(before, view) or (own and dig_bars(view.whole(), day)):
            yield view.address(digging.HOLE_CLEARED), None
