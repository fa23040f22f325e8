"""Lean, usual and generous beside each other, and what a smaller garden would still catch."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple, TypeVar

from interview.asking.question import Unanswered
from interview.garden.earth.work import Span, hours_of
from interview.garden.form.basin import Basin
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.planting.cheaper import fewest
from interview.garden.planting.costs import costs, plant_count
from interview.garden.planting.labor import work_of
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.answered import resized
from interview.quantities.guards import times
from interview.quantities.units import Quantity, quantity

HALF_AGAIN = 1.5
"""The larger storm that the three are held against, as a multiple of the rain to hold."""
SMALLER = (0.75, 0.5)
"""Parts of the floor's area that are tried as a smaller garden."""
EASILY = 1.2
"""A garden that holds this many times its rain is easily enough: a choice of ours."""


class SizedGarden(NamedTuple):
    """One of the three, as it would be dug, planted and paid for; of all the beds together."""

    name: str
    garden: Basin
    """One bed of it."""
    over_all: tuple[Quantity, Quantity]
    """Toe to toe along the slope and across it, of one bed."""
    rain_held: Quantity
    """Rain that just fills it while nothing soaks in."""
    peak: Quantity
    """Deepest water in the storm of the rain to hold."""
    hours: Quantity
    """Hours with water on the floor in that storm."""
    spilled: Quantity
    """Volume that runs over in that storm."""
    caught: float
    """Share of a storm half as large again that does not run over."""
    dug: Quantity | None
    """Soil to dig; nothing while the ground is not measured."""
    left_over: Quantity | None
    mulch: Quantity
    compost: Quantity
    stone: Quantity
    """What is ordered of each, in a yard's steps."""
    plants: int | None
    fewest: int | None
    """The plants of the cheaper way that takes the fewest."""
    cost: float | None
    """Of what has a price; nothing where none was given."""
    work: Span | None
    """Hours of one person, all the work by hand."""


NAMES = ("lean", "usual", "generous")
"""What the three are called, the smallest first."""


def floor_is_own(plan: Plan) -> bool:
    """Tell whether the floor is one that the person gave, which none of the three is.

    One pegged out as it was worked out is none of his own. Raises ``Unanswered``.
    """
    if plan.answers[shaping.FLOOR_SHAPE] == "own":
        return True
    return bed.pegged(plan.answers) and not plan.size.as_worked_out


def yours(plan: Plan) -> str:
    """Return the name of the one of the three that the garden is; nothing where the floor is own.

    Raises ``Unanswered``.
    """
    return "" if floor_is_own(plan) else plan.answers[shaping.HOW_LARGE]


def three_plans(plan: Plan) -> tuple[Plan, ...]:
    """Return the plans of the lean, the usual and the generous garden.

    A floor that was pegged is left out of account; other answers go first in all three.
    """
    answers = plan.answers
    for question in (bed.FLOOR_LENGTH, bed.FLOOR_WIDTH):
        answers = answers.without(question.key)
    if answers[shaping.FLOOR_SHAPE] == "own":
        answers = answers.without(shaping.FLOOR_SHAPE.key)
    return tuple(
        plan.with_answers(answers.with_text(shaping.HOW_LARGE.key, name)) for name in NAMES
    )


def three_sizes(plan: Plan) -> tuple[SizedGarden, ...]:
    """Return the lean, the usual and the generous garden; raises ``Unanswered``."""
    return tuple(sized(name, one) for name, one in zip(NAMES, three_plans(plan), strict=True))


def sized(name: str, plan: Plan) -> SizedGarden:
    """Return the garden of a plan; raises ``Unanswered``."""
    rain = plan.answers[start.RAIN_DEPTH]
    held = plan.storms.garden_storm(rain)
    larger = plan.storms.garden_storm(times(rain, HALF_AGAIN))
    bought = {item.name: item.buy for item in plan.earth.shopping}
    none = quantity(0.0, "ft**3")
    return SizedGarden(
        name=name,
        garden=plan.size.garden,
        over_all=plan.size.over_all,
        rain_held=plan.size.rain_held,
        peak=held.wettest.peak,
        hours=held.wettest.hours_on_floor,
        spilled=held.spill_volume,
        caught=larger.share_caught,
        dug=_known(lambda: times(plan.earth.cut, plan.size.bed_count)),
        left_over=_known(lambda: plan.earth.left_over),
        mulch=bought.get("mulch", none),
        compost=bought.get("compost", none),
        stone=bought.get("stone", none),
        plants=_known(lambda: plant_count(plan.planting)),
        fewest=_known(lambda: fewest(plan.planting)),
        cost=_known(lambda: _cost(plan)),
        work=_known(lambda: hours_of(work_of(plan.planting))),
    )


T = TypeVar("T")


def _known(get: Callable[[], T]) -> T | None:
    """Return what is known; nothing where it waits for an answer."""
    try:
        return get()
    except Unanswered:
        return None


def _cost(plan: Plan) -> float | None:
    found = costs(plan.planting)
    return found.total if found.lines else None


class StillCaught(NamedTuple):
    """What a garden with less floor would still catch."""

    part: float
    """Of the floor's area."""
    garden: Basin
    caught: float
    """Share of the storm of the rain to hold that does not run over."""


def still_caught(plan: Plan) -> tuple[StillCaught, ...]:
    """Return what smaller gardens would catch of the rain to hold; raises ``Unanswered``."""
    found = []
    for part in SMALLER:
        garden = resized(plan.size.garden, part)
        caught = plan.storms.storm_through(garden, plan.answers[start.RAIN_DEPTH]).share_caught
        found.append(StillCaught(part, garden, caught))
    return tuple(found)


def easily_enough(plan: Plan) -> bool:
    """Tell whether the garden holds much more than it is asked to."""
    return plan.size.share_of_rain >= EASILY
