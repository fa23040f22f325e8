"""Ways out where the garden does not fit its room or its soil, each with its numbers."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from interview.calc import basin
from interview.calc.basin import Basin
from interview.model import Answers, Unanswered
from interview.plan import Plan
from interview.questions import bed, start
from interview.units import Quantity, magnitude, quantity

STEEPEST = 2.0
"""Steepest side offered, run for a rise of one: common practice, and the publishers' limit."""
SHALLOWEST_IN, SHALLOWEST_MM = 3.0, 75.0


@dataclass(frozen=True)
class WayOut:
    """One thing that could be done, and what the garden would then be."""

    label: str
    garden: Basin
    rain_held: Quantity
    """Rain that just fills it, with all the surfaces that then drain to it."""
    fits: bool
    """Whether its rim fits the room; true where no room was given."""
    note: str = ""


def ways_out(plan: Plan) -> list[WayOut]:
    """Return the ways out in the order they are worth trying; raises ``Unanswered``."""
    _ = plan.garden
    return list(_ways(plan))


def _ways(plan: Plan) -> Iterator[WayOut]:
    if plan.room is not None and plan.too_big:
        yield WayOut(
            "Take what the room holds",
            plan.room,
            basin.rain_held(plan.room, plan.catchment.weighted),
            True,
            "a smaller garden still takes the small rains, which are most of the rainy days",
        )
    yield from _tried(plan, "Let the pond be as deep as the soil allows", _deepest(plan))
    if plan.answers[bed.SIDE_SLOPE] > STEEPEST:
        yield from _tried(
            plan, "Steeper sides, 2:1", plan.answers.with_text(bed.SIDE_SLOPE.key, "2:1")
        )
    yield from _half(plan)
    for rain in (0.75, 0.5):
        target = plan.answers[start.RAIN_DEPTH] * rain
        text = _depth_text(target, plan.metric)
        answers = plan.answers.with_text(start.RAIN_DEPTH.key, text)
        yield from _tried(plan, f"Hold {text} of rain", answers)
    yield from _two(plan)


def _depth_text(value: Quantity, metric: bool) -> str:
    if metric:
        return f"{magnitude(value, 'mm'):.0f} mm"
    return f"{magnitude(value, 'in'):.2f}".rstrip("0").rstrip(".") + " in"


def _deepest(plan: Plan) -> Answers | None:
    """Return the answers with the cap lifted to what the soil allows, up to 12 in (300 mm)."""
    soil = min(plan.depth.drop_limit, plan.depth.corrected_limit)
    most = quantity(300, "mm") if plan.metric else quantity(12, "in")
    allowed = min(soil, most)
    if magnitude(allowed, "in") <= magnitude(plan.depth.depth, "in") + 0.4:
        return None
    text = _depth_text(allowed, plan.metric)
    return plan.answers.with_text(bed.DEEPEST_POND.key, text)


def _tried(plan: Plan, label: str, answers: Answers | None) -> Iterator[WayOut]:
    if answers is None:
        return
    bare = answers.without(bed.FLOOR_LENGTH.key).without(bed.FLOOR_WIDTH.key)
    tried = replace(plan, answers=bare)
    try:
        garden = tried.needed_basin
        held = basin.rain_held(garden, tried.catchment.weighted)
        yield WayOut(label, garden, held, not tried.too_big)
    except Unanswered:
        return


def _half(plan: Plan) -> Iterator[WayOut]:
    """Yield the garden for half of what drains here: a second garden, or less roof."""
    try:
        required = basin.required_area(
            plan.catchment.weighted / 2,
            plan.answers[start.RAIN_DEPTH],
            plan.depth.depth,
            plan.answers[bed.SIDE_SLOPE],
            plan.answers[bed.FREEBOARD],
            length_to_width=plan.answers[bed.LENGTH_TO_WIDTH],
            system=plan.system,
        )
    except ValueError:
        return
    garden = basin.drawn(required, plan.system)
    yield WayOut(
        "Send half of it elsewhere, or to a second garden like this",
        garden,
        basin.rain_held(garden, plan.catchment.weighted / 2),
        _fits(plan, garden),
    )


def _two(plan: Plan) -> Iterator[WayOut]:
    """Yield two beds in a row, where one below the other takes what the first spills."""
    if plan.room is None or not plan.too_big:
        return
    volume = plan.room.volume * 2
    area = plan.catchment.weighted + plan.room.rim_area * 2
    yield WayOut(
        "Two beds of this room, the second taking what the first spills",
        plan.room,
        quantity(magnitude(volume / area, "in"), "in"),
        True,
        "each bed as large as the room that was given",
    )


def _fits(plan: Plan, garden: Basin) -> bool:
    room = plan.room
    if room is None:
        return True
    return bool(
        garden.floor_length <= room.floor_length * (1 + 1e-9)
        and garden.floor_width <= room.floor_width * (1 + 1e-9)
    )
