"""The picture beside a question: what is being measured, from the answers so far."""

from __future__ import annotations

from collections.abc import Iterator

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.path import Place
from interview.asking.question import Unanswered
from interview.asking.route import Step
from interview.drawing.scene import Drawing
from interview.garden import pictures
from interview.garden.plan import Plan
from interview.garden.site import nearby_questions as nearby
from interview.garden.site.setbacks import distance_words
from interview.garden.site.yard import NAMES, Judged, Thing, yard
from interview.garden.size import questions as bed
from interview.garden.soak import hole_questions as digging
from interview.garden.soak import timing_questions as timing
from interview.garden.soak import water_level
from interview.garden.soak.hole_view import Level, hole_view
from interview.garden.soak.noted import noted
from interview.garden.soak.water_level import Stand
from interview.garden.survey.results import drawing_of
from interview.garden.verdicts import verdict
from interview.quantities.evidence import Grade
from interview.quantities.units import magnitude, plain_number

_NO_YARD = ("children", "permission", "rules", "ask_for_marks", "ticket", "answered", "soil_lab")
"""Pages of the spot that measure nothing in the yard."""
_GARDEN = ("peg_out", "dig_day", "pipe_fall", "over_twelve", "the_plan")


def live_picture(plan: Plan, place: Place, step: Step | None) -> Drawing | None:
    """Return what is measured at ``place`` as far as it is known; nothing where that is no thing.

    ``plan`` is that of the answers so far, what is just typed among them.
    """
    page = place.page
    try:
        if page.group == "surfaces":
            return drawing_of(place.view(plan.answers))
        if page.group == "holes":
            return hole_picture(place.view(plan.answers))
        if page.stage == "site" and page.key not in _NO_YARD:
            return _yard(plan, place.number or 1, step)
        if page.key in _GARDEN:
            if page.key == "pipe_fall":
                return pictures.section_picture(plan)
            return pictures.planted_picture(plan)
    except (Unanswered, ValueError):
        return None
    return None


def hole_picture(view: Answers, now: Stand | None = None) -> Drawing:
    """Return the test hole that ``view`` is seen from, with all that was read off it so far.

    ``now`` is about where the water stands since; it is told as an estimate.
    """
    depth, width = view.get(digging.HOLE_DEPTH), view.get(digging.HOLE_WIDTH)
    stands = water_level.fills(noted(view).timed)
    levels = [_level(one, view) for one in (stands[-1] if stands else ())]
    levels += [_level(now, view, ESTIMATE)] if now is not None else []
    return hole_view(depth, width, tuple(levels), view.metric)


ESTIMATE = "estimate"
"""Stands in the place of a time where a level is worked out and not read."""
_DIGITS = 1
"""Decimals of an estimated level: it is good to no more."""


def _level(stand: Stand, view: Answers, estimate: str = "") -> Level:
    unit = "mm" if view.metric else "in"
    digits = (0 if view.metric else _DIGITS) if estimate else 3
    words = f"{plain_number(round(magnitude(stand.left, unit), digits))} {unit}"
    began = view.get(timing.TEST_START)
    at = stand.at.astimezone(began.tzinfo if began else None)
    return Level(stand.left, words, estimate or f"{at:%H:%M}", bool(estimate))


def _yard(plan: Plan, number: int, step: Step | None) -> Drawing:
    spot = plan.answers.at("spots", number)
    long, wide = (spot.get(one) for one in (bed.ROOM_LENGTH, bed.ROOM_WIDTH))
    return yard(
        tuple(_things(plan, spot, number, step)),
        None if long is None else magnitude(long, "ft"),
        None if wide is None else magnitude(wide, "ft"),
    )


def _things(plan: Plan, spot: Answers, number: int, step: Step | None) -> Iterator[Thing]:
    for key in spot.get(nearby.NEAR) or ():
        question = nearby.DISTANCES[key]
        far = spot.get(question)
        address = f"spots.{number}.{question.key}"
        yield Thing(
            key,
            NAMES[key],
            None if far is None else magnitude(far, "ft"),
            "" if far is None else distance_words(far, plan.metric),
            Judged.OPEN if far is None else _standing(plan, address),
            step is not None and step.address == address,
        )


_JUDGED = {Grade.STOP: Judged.STOP, Grade.FIX: Judged.NEAR, Grade.GOOD: Judged.GOOD}


def _standing(plan: Plan, address: str) -> Judged:
    found = next((one for one in route.steps(plan.answers) if one.address == address), None)
    told = verdict(plan, found) if found is not None else None
    if told is None:
        return Judged.OPEN
    return Judged.NEAR if told.near else _JUDGED[told.grade]
