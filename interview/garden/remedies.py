"""Ways out where the garden does not fit its room or its soil, each with its numbers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import field, replace
from typing import Any

from interview.asking.answers import Answers
from interview.asking.question import Question, Unanswered
from interview.garden.form.basin import Basin
from interview.garden.form.choices import MOST_BEDS, FloorShape
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.site import questions as site
from interview.garden.site.surroundings import CHILDREN_IN
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.answered import floor_shape
from interview.garden.size.basin import SIDE_SLOPE
from interview.garden.soak.depth import DEPTH_STEP
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity, round_down

DEEPEST_IN, DEEPEST_MM = 12.0, 300.0
"""Deepest pond offered: more needs an engineer."""
WORTH_IN = 0.4
"""A deeper pond is offered where it gains more than this."""
HELD = 1 - 1e-9


@record
class WayOut:
    """One thing that could be done, and what the garden would then be."""

    label: str
    garden: Basin
    """One bed of it."""
    rain_held: Quantity
    """Rain that just fills it, with all the surfaces that then drain to it."""
    fits: bool
    """Whether each bed's rim fits the room; true where no room was given."""
    note: str = ""
    beds: int = 1
    storms_held: int = 0
    """Storms of the ladder of which nothing runs over."""
    over_all: tuple[Quantity, Quantity] = field(kw_only=True)
    """Toe to toe along the slope and across it, of one bed."""
    record_share: float | None = None
    """Share of the record's runoff held; nothing where there is no record."""
    takes: Mapping[str, str] | None = None
    """The words to be kept for it, by address; nothing where no answer alone does it."""


def ways_out(plan: Plan) -> list[WayOut]:
    """Return the ways out in the order they are worth trying; raises ``Unanswered``."""
    _ = plan.size.garden
    # A floor of one's own decides neither the ways nor, unasked, the shape of the floor.
    free = _without(plan.answers, bed.FLOOR_LENGTH, bed.FLOOR_WIDTH)
    if free[shaping.FLOOR_SHAPE] == FloorShape.OWN.value:
        free = _without(free, shaping.FLOOR_SHAPE)
    return list(_ways(plan.with_answers(free)))


def _ways(plan: Plan) -> Iterator[WayOut]:
    if plan.size.too_big:
        small = "a smaller garden still takes the small rains, which are most of the rainy days"
        yield from _tried(
            plan, ("Make it as large as the room allows"), plan.answers, small, in_room=True
        )
    yield from _tried(plan, "Let the pond be as deep as the soil allows", _deepest(plan))
    if plan.answers[shaping.SIDE_SLOPE] > SIDE_SLOPE.value:
        steeper = plan.answers.with_text(shaping.SIDE_SLOPE.key, "2:1")
        safer = "3:1 is safer where children play" if plan.answers[site.CHILDREN] else ""
        yield from _tried(plan, "Steeper sides, 2:1", steeper, safer)
    text = shaping.FREEBOARD.default(plan.answers.with_text(shaping.HOW_LARGE.key, "usual"))
    if text is not None:
        lower = plan.answers.with_text(shaping.FREEBOARD.key, text)
        if lower[shaping.FREEBOARD] < plan.answers[shaping.FREEBOARD]:
            yield from _tried(plan, f"A rim {text} above the full pond", lower)
    if plan.size.too_big and floor_shape(plan.answers) is not FloorShape.RECTANGLE:
        square = plan.answers.with_text(shaping.FLOOR_SHAPE.key, FloorShape.RECTANGLE.value)
        more = "square corners hold more in the same room"
        yield from _tried(plan, "A rectangle", square, more)
    if plan.answers[shaping.HOW_LARGE] != "lean":
        lean = plan.answers.with_text(shaping.HOW_LARGE.key, "lean")
        yield from _tried(
            plan, "A lean garden", lean, ("no margin: it counts on the soil to take the water")
        )
    yield from _more_beds(plan)
    yield from _half(plan)
    for part in (0.75, 0.5):
        text = _depth_text(plan.answers[start.RAIN_DEPTH] * part, plan.metric)
        answers = plan.answers.with_text(start.RAIN_DEPTH.key, text)
        yield from _tried(plan, f"Hold {text} of rain", answers)


def _depth_text(value: Quantity, metric: bool) -> str:
    if metric:
        return f"{magnitude(value, 'mm'):.0f} mm"
    return f"{magnitude(value, 'in'):.2f}".rstrip("0").rstrip(".") + " in"


def _deepest(plan: Plan) -> Answers | None:
    """Return the answers with the cap lifted to what the soil allows, up to 12 in (300 mm).

    Where small children play up to ``CHILDREN_IN``.
    """
    soil = min(plan.size.depth.drop_limit, plan.size.depth.corrected_limit)
    most = quantity(DEEPEST_MM, "mm") if plan.metric else quantity(DEEPEST_IN, "in")
    near_children = quantity(CHILDREN_IN, "in") if plan.answers[site.CHILDREN] else most
    allowed = min(soil, most, near_children)
    if magnitude(allowed, "in") <= magnitude(plan.size.depth.depth, "in") + WORTH_IN:
        return None
    text = _depth_text(round_down(allowed, *DEPTH_STEP[plan.system]), plan.metric)
    return plan.answers.with_text(bed.DEEPEST_POND.key, text)


def _more_beds(plan: Plan) -> Iterator[WayOut]:
    """Yield more beds, each within a room like the one given, until all the rain is held."""
    for count in range(plan.size.bed_count + 1, MOST_BEDS + 1):
        held = False
        for how, words in (
            ("side_by_side", "side by side, the water shared out"),
            ("in_a_row", "one below the other, the water to the first"),
        ):
            if how == "in_a_row" and plan.earth.notch.lip:
                # On level lawn no water runs on to the next.
                continue
            answers = _with_beds(plan.answers, count, how)
            for way in _tried(plan, f"{count} beds {words}", answers, in_room=True):
                held = held or way.rain_held >= plan.answers[start.RAIN_DEPTH] * HELD
                yield way
        if held:
            return


def _with_beds(answers: Answers, count: int, how: str) -> Answers:
    return answers.with_text(bed.BEDS.key, str(count)).with_text(bed.BEDS_HOW.key, how)


def _half(plan: Plan) -> Iterator[WayOut]:
    """Yield the garden for half of what drains here: the other half stays where it goes now."""
    if plan.size.bed_count * 2 > MOST_BEDS:
        return
    # A bed of twice as many, sharing the water, is a bed for half of the water.
    answers = _with_beds(plan.answers, plan.size.bed_count * 2, "side_by_side")
    for way in _tried(plan, "Send half of the water elsewhere", answers):
        yield replace(way, beds=plan.size.bed_count, takes=None)


def _tried(
    plan: Plan, label: str, answers: Answers | None, note: str = "", in_room: bool = False
) -> Iterator[WayOut]:
    """Yield the way that ``answers`` lead to: no larger than the room, or as large as is needed."""
    if answers is None:
        return
    within = plan.with_answers(answers)
    free = plan.with_answers(_without(answers, *_ROOM))
    try:
        fits = in_room or not within.size.too_big
        tried = within if fits else free
        yield WayOut(
            label,
            tried.size.garden,
            tried.size.rain_held,
            fits,
            note,
            tried.size.bed_count,
            sum(row.share_caught >= HELD for row in tried.storms.ladder),
            over_all=tried.size.over_all,
            record_share=_record_share(tried),
            takes={a: t for a, t in answers.texts.items() if plan.answers.texts.get(a) != t},
        )
    except Unanswered:
        return


_ROOM = (bed.ROOM_LENGTH, bed.ROOM_WIDTH, bed.ROOM_AREA)


def _without(answers: Answers, *questions: Question[Any]) -> Answers:
    for question in questions:
        answers = answers.without(question.key)
    return answers


def _record_share(plan: Plan) -> float | None:
    if not plan.answers[start.HAS_RECORD]:
        return None
    try:
        return plan.storms.real_years.share_held
    except Unanswered:
        return None
