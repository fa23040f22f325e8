"""What the plan itself can say to a question: a value for Enter, a number for its help."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from interview.answers_file.named_files import NamedFile, NoFile
from interview.asking.answers import Answers
from interview.asking.lands import US as US_COUNTRY
from interview.asking.question import Question, Unanswered
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.planting import questions as planting
from interview.garden.site import spot_questions as ground
from interview.garden.site.gate import dig_reasons
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.soak import hole_questions as digging
from interview.quantities.shown import depth_words, water_words
from interview.quantities.units import (
    Quantity,
    feet_and_inches,
    magnitude,
    plain_number,
    quantity,
    round_down,
)

if TYPE_CHECKING:
    from interview.garden.form.basin import Basin
    from interview.garden.site.results import SpotReport
    from interview.garden.size.rough import RoughSize

COLUMNS = (start.RECORD_DATES, start.RECORD_DEPTHS)
_COLUMNS = tuple(one.key for one in COLUMNS)
_SIDES: dict[str, Callable[[Basin], Quantity]] = {
    bed.FLOOR_LENGTH.key: lambda basin: basin.floor_length,
    bed.FLOOR_WIDTH.key: lambda basin: basin.floor_width,
}


_ROOM: dict[str, Callable[[RoughSize], Quantity]] = {
    bed.ROOM_LENGTH.key: lambda rough: rough.length,
    bed.ROOM_WIDTH.key: lambda rough: rough.width,
}


def value_for(question: Question[Any], plan: Plan) -> str | None:
    """Return the words Enter alone takes where the plan has worked them out; else nothing."""
    if question.key == ground.CHOSEN_SPOT.key:
        return _best_spot(plan)
    if question.key in (start.COUNTRY.key, start.UNITS.key):
        return _of_the_place(question, plan)
    if question.key == digging.HOLE_DUG_ON.key:
        today = plan.now.date()
        return None if dig_reasons(plan.answers, today) else f"{today}"
    if question.key == digging.FLOOR_DEPTH.key:
        return _tested_depth(plan)
    if question.key == shaping.FLOOR_SHAPE.key and plan.answers.get(shaping.FLOOR_SHAPE) is None:
        from interview.garden.size.answered import floor_shape

        # A floor pegged without a word about its shape stays the rectangle it was.
        return floor_shape(plan.answers).value
    if question.key in _ROOM:
        return _room_side(question, plan)
    if question.key == planting.HARDINESS.key:
        return planting.usual_zone(plan.answers)
    side = _SIDES.get(question.key)
    if side is None:
        return None
    try:
        return side_words(side(plan.size.worked_out), plan.metric)
    except Unanswered:
        return None


def _of_the_place(question: Question[Any], plan: Plan) -> str | None:
    """Return the United States and its units until it is said that the garden is elsewhere."""
    no_country = plan.answers.get(start.COUNTRY) is None
    elsewhere = no_country and plan.answers.get(start.STATE) == start.NOT_US
    if question.key == start.COUNTRY.key:
        return None if elsewhere else US_COUNTRY
    return "us" if plan.answers.country == US_COUNTRY and not elsewhere else "metric"


def _tested_depth(plan: Plan) -> str:
    """Return how deep the test stands for the floor: the deepest digging, to a whole inch."""
    if plan.metric:
        return f"{plain_number(magnitude(round_down(plan.checks.dug_depth, 10, 'mm'), 'mm'), 4)} mm"
    return f"{plain_number(magnitude(round_down(plan.checks.dug_depth, 1, 'in'), 'in'), 3)} in"


def _room_side(question: Question[Any], plan: Plan) -> str | None:
    """Return the side of the room that the largest garden of the first size may take."""
    from interview.garden.size.rough_words import room_side

    try:
        return room_side(_ROOM[question.key](plan.rough.sized), plan.metric)
    except Unanswered:
        return None


def side_words(side: Quantity, metric: bool) -> str:
    """Write a side of the floor to be pegged out, down to a whole inch or 10 mm."""
    if metric:
        return f"{plain_number(magnitude(round_down(side, 0.01, 'm'), 'm'), 6)} m"
    return feet_and_inches(round_down(side, 1, "in"), 1)


def help_for(question: Question[Any], plan: Plan) -> str:
    """Return a sentence with numbers of this plan that helps with a question; mostly nothing."""
    if question.key == digging.FLOOR_DEPTH.key:
        return _floor_depth(plan)
    if question.key in _SIDES:
        return _floor_side(plan)
    return ""


def beside(question: Question[Any], plan: Plan) -> str:
    """Return what is shown with the question out of a file or this plan, as lines; mostly nothing.

    The columns of the rainfall file to choose from, how deep its rain is, or what was found of each
    spot.
    """
    if question.key == ground.CHOSEN_SPOT.key:
        return "\n".join(spot_words(spot) for spot in plan.checks.spots)
    if question.key == start.RAIN_DEPTH.key:
        return _rain_of_the_file(plan)
    if question.key not in _COLUMNS:
        return ""
    from interview.garden.storms import record_help as rain

    try:
        return rain.columns_told(question, plan.open_text(plan.answers[start.RECORD_PATH]))
    except (NoFile, Unanswered):
        return ""


def _rain_of_the_file(plan: Plan) -> str:
    """Say how deep the rain days of the person's own file are; nothing without one."""
    if not plan.answers.get(start.HAS_RECORD):
        return ""
    try:
        days = plan.storms.days_of_rain
    except Unanswered:
        return ""
    (first, least), *deeper = days.depths().items()
    more = "".join(f"; on {one} % {water_words(deep, plan.metric)}" for one, deep in deeper)
    return plan.answers.told(
        f"Your rainfall file has {days.count} days with more than 0.1 in (2.5 mm): on {first} % of "
        f"them no more than {water_words(least, plan.metric)} fell{more}."
    )


def columns_needed(answers: Answers, open_text: Callable[[str], NamedFile]) -> tuple[str, ...]:
    """Return the keys of the columns of the rainfall file that its headings do not tell."""
    path = answers.get(start.RECORD_PATH)
    if path is None:
        return ()
    from interview.garden.storms import record_help as rain

    try:
        return rain.columns_needed(open_text(path))
    except NoFile:
        return ()


def trouble_with(question: Question[Any], plan: Plan) -> str:
    """Return why an answer about the rainfall file does not fit that file; or nothing."""
    if question.key not in (start.RECORD_PATH.key, *_COLUMNS):
        return ""
    if plan.answers.get(question) is None:
        return ""
    try:
        file = plan.open_text(plan.answers[start.RECORD_PATH])
    except NoFile as trouble:
        return str(trouble)
    except Unanswered:
        return ""
    from interview.garden.storms import record_help as rain

    return rain.trouble_with(question, plan.answers, file)


MOST_REASONS = 3
"""Reasons told of a spot beside the question; the sheet tells them all."""


def spot_words(spot: SpotReport) -> str:
    """Say the number and name of a spot, its verdict, and what speaks against it."""
    against = spot.against
    reasons = " ".join(against[:MOST_REASONS])
    more = len(against) - MOST_REASONS
    said = f"{spot.number} {spot.name}: {spot.grade.value}. {reasons}".rstrip()
    return f"{said} And {more} more." if more > 0 else said


def _best_spot(plan: Plan) -> str | None:
    """Return the number of the spot with the least against it; the first of those alike."""
    return (
        str(min(plan.checks.spots, key=lambda one: one.standing()).number)
        if plan.checks.spots
        else None
    )


def _floor_depth(plan: Plan) -> str:
    metric = plan.metric
    deepest = depth_words(plan.checks.dug_depth, metric)
    try:
        lie = plan.earth.lie
        laid = lie.ground.mulch + lie.ground.compost
        downhill = depth_words(quantity(lie.floor_below + laid, "ft"), metric)
    except Unanswered:
        return (
            f"Until the plan knows your pond, take {deepest}: the deepest pond you want, the mulch "
            "and the compost."
        )
    return (
        f"By the plan so far it is {deepest} at the uphill edge and {downhill} at the downhill "
        "edge, with room for mulch and compost."
    )


def _floor_side(plan: Plan) -> str:
    try:
        basin = plan.size.worked_out
    except Unanswered:
        return ""
    by = f"{side_words(basin.floor_length, plan.metric)} by "
    by += side_words(basin.floor_width, plan.metric)
    return f"The plan has worked out {by}."
