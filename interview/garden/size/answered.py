"""What the answers on the bed come to, before anything is worked out."""

from __future__ import annotations

from dataclasses import replace

from interview.asking.answers import Answers
from interview.asking.question import Unanswered
from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground, ground_of
from interview.garden.site import spot_questions
from interview.garden.site.results import spot_slope
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.cover_questions import rim_sown
from interview.quantities.units import METRIC, US, Quantity, magnitude, quantity

DEEPEST_UNASKED = {US: (12.0, "in"), METRIC: (300.0, "mm")}
"""Deepest pond without an engineer's word: a choice of this project."""


def deepest(answers: Answers) -> Quantity:
    """Return the deepest pond wanted, or the deepest there may be without an engineer's word."""
    wanted = answers[bed.DEEPEST_POND]
    if not bed.wants_over_twelve(answers) or answers[bed.ENGINEER]:
        return wanted
    return min(wanted, quantity(*DEEPEST_UNASKED[METRIC if answers.metric else US]))


def bed_count(answers: Answers) -> int:
    """Return how many beds the garden is made as."""
    return answers[bed.BEDS]


def in_a_row(answers: Answers) -> bool:
    """Tell whether each bed takes what the one above it spills."""
    return bed_count(answers) > 1 and answers[bed.BEDS_HOW] == "in_a_row"


def has_room(answers: Answers) -> bool:
    """Tell whether the room was given, as a rectangle or as an area."""
    sides = (answers.get(bed.ROOM_LENGTH), answers.get(bed.ROOM_WIDTH))
    return None not in sides or answers.get(bed.ROOM_AREA) is not None


def floor_shape(answers: Answers) -> FloorShape:
    """Return the shape of the floor; one pegged without a word about it is a rectangle.

    So a file of version 0.1, which asked for no shape, keeps its floor. The default of the
    question cannot say it: it is asked before the floor is pegged.
    """
    if bed.pegged(answers) and answers.get(shaping.FLOOR_SHAPE) is None:
        return FloorShape.RECTANGLE
    return FloorShape(answers[shaping.FLOOR_SHAPE])


def is_mulched(answers: Answers) -> bool:
    """Tell whether any mulch is laid."""
    return magnitude(answers[bed.MULCH_DEPTH], "in") > 0


def ground_of_spot(answers: Answers, system: str) -> Ground | None:
    """Return the ground of the chosen spot and how it is built on; nothing while not measured."""
    try:
        fall = spot_slope(spot_questions.chosen_spot(answers)).fall
    except Unanswered:
        return None
    compost = answers[bed.COMPOST_DEPTH] if answers[bed.AMEND] else None
    try:
        return ground_of(
            fall,
            answers[bed.MULCH_DEPTH],
            compost,
            answers[shaping.BERM_TOP],
            bare_rim=rim_sown(answers),
            system=system,
        )
    except ValueError:
        # Ground too steep for a berm is told where the lie itself is asked for.
        return None


def resized(garden: Basin, part: float) -> Basin:
    """Return a basin whose floor has ``part`` times the area, its shape kept."""
    side = part**0.5
    one = garden.outline.scaled(side)
    return replace(
        garden,
        floor_length=garden.floor_length * side,
        floor_width=garden.floor_width * side,
        bend=None if garden.bend is None else garden.bend * side,
        stations=one.stations,
    )
