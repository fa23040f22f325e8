"""From answers to the size of the beds: the room there is, how many beds, and what governs."""

from __future__ import annotations

from dataclasses import dataclass

from interview.asking.model import Answers
from interview.garden.size import basin
from interview.garden.size import questions as bed
from interview.garden.size.basin import Basin
from interview.garden.storms.rainfall_record import RecordReplay
from interview.quantities.units import METRIC, US, Quantity, quantity, ratio

SIZES = (0.5, 0.75, 1.0, 1.5, 2.0)
"""Floor areas tried on a rainfall record, as parts of the floor that is drawn."""


@dataclass(frozen=True)
class SizedYears:
    """The years of the record in a garden with another floor."""

    part: float
    """Its floor area over that of the garden drawn."""
    garden: Basin
    """One bed of it."""
    replay: RecordReplay


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


def room_basin(answers: Answers, depth: Quantity, system: str) -> Basin | None:
    """Return the largest basin that fits the room; nothing where no room was given.

    Raises ValueError where the room is too small for any floor.
    """
    slope, freeboard = answers[bed.SIDE_SLOPE], answers[bed.FREEBOARD]
    length, width = answers.get(bed.ROOM_LENGTH), answers.get(bed.ROOM_WIDTH)
    if length is not None and width is not None:
        return basin.fit_to_room(length, width, depth, slope, freeboard, system=system)
    area = answers.get(bed.ROOM_AREA)
    if area is None:
        return None
    along = answers[bed.LENGTH_TO_WIDTH]
    return basin.fit_to_area(area, depth, slope, freeboard, length_to_width=along, system=system)


def outgrows(needed: Basin, room: Basin, answers: Answers) -> bool:
    """Tell whether a basin is larger than the room: in a side, or in its area inside the rim."""
    if answers.get(bed.ROOM_LENGTH) is None or answers.get(bed.ROOM_WIDTH) is None:
        return ratio(needed.rim_area, room.rim_area) > 1 + 1e-9
    return (
        ratio(needed.floor_length, room.floor_length) > 1 + 1e-9
        or ratio(needed.floor_width, room.floor_width) > 1 + 1e-9
    )


def resized(garden: Basin, part: float) -> Basin:
    """Return a basin whose floor has ``part`` times the area, its shape kept."""
    side = part**0.5
    return Basin(
        garden.floor_length * side,
        garden.floor_width * side,
        garden.depth,
        garden.side_slope,
        garden.freeboard,
    )
