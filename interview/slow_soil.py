"""What to do where the soil is slow: each way with the numbers that would follow."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from interview.calc import basin
from interview.calc.depth import CORRECTED_RATE_HOURS, Governs
from interview.calc.soak import Band
from interview.evidence import PRACTICE, Cited, Source, Standing
from interview.model import Unanswered
from interview.plan import Plan
from interview.questions import bed, start
from interview.units import Quantity, magnitude, plain_number, quantity, show

USEFUL_POND_IN, USEFUL_POND_MM = 6.0, 150.0
"""The pond a mended soil should allow: the middle of the published 4 to 8 in (100 to 200 mm)."""
AMEND_DEPTH = Cited(
    (12.0, "in"), Source("the top foot is loosened when soil is amended", Standing.PRACTICE)
)
COMPOST_SHARE = Cited(
    0.35,
    Source(
        "Rain Garden Handbook for Western Washington, Washington State University Extension and "
        "Department of Ecology, 2013, p. 34: 65 % soil, 35 % compost",
        Standing.PUBLISHED,
    ),
)
LONGEST_WET_H = Cited(
    72.0, Source("Monterey Bay LID plant list, 2007; surface ponding of 3 days", Standing.PUBLISHED)
)


@dataclass(frozen=True)
class Remedy:
    """One thing to do about slow soil."""

    label: str
    words: str
    source: Source = PRACTICE


def is_slow(plan: Plan) -> bool:
    """Tell whether the soil, and not the wish, limits the pond; raises ``Unanswered``."""
    bands = {hole.test.band for hole in plan.holes if hole.test is not None}
    limited = plan.depth.governs is not Governs.CAP
    return plan.depth.too_shallow or limited or bool(bands & {Band.MARGINAL, Band.NO_FALL})


def remedies(plan: Plan) -> list[Remedy]:
    """Return what to do about slow soil, best first; none where the soil is quick enough."""
    if not is_slow(plan):
        return []
    return list(_remedies(plan))


def _remedies(plan: Plan) -> Iterator[Remedy]:
    yield from _shallower(plan)
    yield _again()
    yield _amend(plan)
    yield from _less_roof(plan)
    yield _wetland(plan)
    yield Remedy(
        "Move",
        "Try a spot uphill or where the soil looked lighter. Everything but the soak test and the "
        "distances stays as you answered it.",
    )


def _deep(value: Quantity, plan: Plan) -> str:
    return show(value, "mm" if plan.metric else "in", 2)


def _area(value: Quantity, plan: Plan) -> str:
    return show(value, "m**2" if plan.metric else "ft**2", 2, "up")


def _shallower(plan: Plan) -> Iterator[Remedy]:
    depth = plan.depth.depth
    try:
        area = plan.required.recommended
    except Unanswered as gap:
        if plan.depth.too_shallow or gap.why:
            yield Remedy(
                "Shallower and larger",
                f"This soil empties only {_deep(plan.depth.limit, plan)} of pond in time, too "
                "little to hold the rain that falls on the garden itself.",
            )
        return
    yield Remedy(
        "Shallower and larger",
        f"A pond of {_deep(depth, plan)} empties in time; it needs {_area(area, plan)} at half "
        "its depth. Make the floor dead level: half an inch matters in a shallow pond.",
    )


def _again() -> Remedy:
    return Remedy(
        "Test again",
        "Dig another hole about 10 ft (3 m) away, scratch its walls, and soak it overnight. A "
        "smeared wall or a thin hard layer can make good soil look slow.",
    )


def _amend(plan: Plan) -> Remedy:
    useful = quantity(USEFUL_POND_MM, "mm") if plan.metric else quantity(USEFUL_POND_IN, "in")
    rate = useful / quantity(CORRECTED_RATE_HOURS.value, "h")
    unit = "mm/h" if plan.metric else "in/h"
    now = show(plan.soil.corrected, unit, 2, "down")
    deep = quantity(*AMEND_DEPTH.value)
    compost = deep * COMPOST_SHARE.value
    hours = plain_number(CORRECTED_RATE_HOURS.value)
    return Remedy(
        "Mend the soil and test again",
        f"Loosen the top {_deep(deep, plan)} below the floor and mix in {_deep(compost, plan)} of "
        "compost, about a third by volume. Sand on its own sets clay like brick; use it only "
        "with compost, and more sand than clay. Then test the finished floor: with "
        f"{show(rate, unit, 2, 'up')} or more through the bottom (now {now}) a pond of "
        f"{_deep(useful, plan)} is gone in {hours} hours. Loosening the top does not change the "
        "layer below.",
        COMPOST_SHARE.source,
    )


def _less_roof(plan: Plan) -> Iterator[Remedy]:
    try:
        half = basin.required_area(
            plan.catchment.weighted / 2,
            plan.answers[start.RAIN_DEPTH],
            plan.depth.depth,
            plan.answers[bed.SIDE_SLOPE],
            plan.answers[bed.FREEBOARD],
            system=plan.system,
        )
    except (Unanswered, ValueError):
        return
    yield Remedy(
        "Take less roof",
        f"With half of what drains here the same pond needs {_area(half.recommended, plan)}.",
    )


def _wetland(plan: Plan) -> Remedy:
    rate = plan.soil.corrected
    most = rate * quantity(LONGEST_WET_H.value, "h")
    hours = magnitude(plan.depth.latest_empty, "h")
    stands = "" if hours > 1000 else f"The pond planned stands up to {hours:.0f} h. "
    return Remedy(
        "Plant it as a wet bed",
        f"{stands}Water of {_deep(most, plan)} is gone in {LONGEST_WET_H.value:.0f} hours: plants "
        "of wet ground stand that. Deeper water would breed mosquitoes, which need about a week.",
        LONGEST_WET_H.source,
    )
