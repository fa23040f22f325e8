"""The largest garden that a room takes, and a garden shaped to its room."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground
from interview.garden.size.basin import (
    DRAWN_STEP,
    LENGTH_TO_WIDTH,
    NARROWEST_FLOOR,
    SIDE_SLOPE,
    Enough,
    footprint_area,
    footprint_sides,
    narrowest_width,
)
from interview.quantities.guards import positive, reaches
from interview.quantities.units import US, Quantity, magnitude, quantity, round_down, round_up

_CLOSE_FT = 0.005
"""How near to the room the largest bed is sought: under a sixteenth of an inch."""

NARROWER = 0.95
"""How much narrower a bed is tried each time, while it grows by that."""


def fit_to_room(
    room_length: Quantity,
    room_width: Quantity,
    template: Basin,
    ground: Ground | None = None,
    *,
    system: str = US,
) -> Basin:
    """Return the largest basin like ``template`` that fits ``room_length`` by ``room_width``.

    The footprint is all that is dug or built, toe to toe; the inside of the rim while the ground is
    not known. Raises ValueError when that would leave a floor narrower than 2 ft.
    """
    room = (
        positive(room_length, "ft", "The room for the garden must be longer than zero."),
        positive(room_width, "ft", "The room for the garden must be wider than zero."),
    )
    least = magnitude(quantity(*NARROWEST_FLOOR[system]), "ft")
    if not _within(_sized(template, least, least), room, ground):
        raise ValueError(
            "The room is too narrow for the sloping sides and a floor, "
            f"so find more room or choose {_smaller(template)}."
        )
    kidney = template.shape is FloorShape.KIDNEY

    def fits(length: float, width: float) -> bool:
        return _within(_sized(template, length, width), room, ground)

    def longest(width: float) -> Basin:
        # A kidney is as long as wide at the least.
        shortest = max(least, width) if kidney else least
        length = _most(shortest, room[0], lambda one: fits(one, width))
        return _sized(template, length, width)

    width = _most(least, room[1], lambda one: fits(max(one, least) if kidney else least, one))
    best = longest(width)
    # The longer a bed on a slope the farther up and down it reaches: a narrower one may be larger.
    while (width := width * NARROWER) > least:
        tried = longest(width)
        if tried.floor_area <= best.floor_area:
            break
        best = tried
    return best


def _smaller(template: Basin) -> str:
    """Say what else takes less room than ``template``: sides of 2:1 are made no steeper."""
    steeper = " or steeper sides" if template.side_slope > SIDE_SLOPE.value else ""
    return f"a shallower pond{steeper}"


def _sized(template: Basin, length: float, width: float) -> Basin:
    return replace(template, floor_length=quantity(length, "ft"), floor_width=quantity(width, "ft"))


def _within(basin: Basin, room: tuple[float, float], ground: Ground | None) -> bool:
    length, width = footprint_sides(basin, ground)
    return reaches(room[0], magnitude(length, "ft")) and reaches(room[1], magnitude(width, "ft"))


def _most(low: float, high: float, fits: Callable[[float], bool]) -> float:
    """Return the largest length from ``low``, which fits, that still does, in feet."""
    if fits(high):
        return high
    while high - low > _CLOSE_FT:
        middle = (low + high) / 2
        low, high = (middle, high) if fits(middle) else (low, middle)
    return low


def shaped_to_room(
    wanted: Basin,
    room: tuple[Quantity, Quantity],
    enough: Enough,
    system: str = US,
    ground: Ground | None = None,
) -> Basin | None:
    """Return the basin that is ``enough`` within ``room`` where ``wanted`` is too long or wide.

    ``room`` is its length and width. The side that does not fit is as large as the room allows, in
    whole steps; the other is as much larger as is needed. Nothing where no such basin is enough.
    """
    step, unit = DRAWN_STEP[system]
    width = footprint_sides(wanted, ground)[1]
    along = not reaches(magnitude(room[1], "ft"), magnitude(width, "ft"))
    try:
        most = fit_to_room(*room, wanted, ground, system=system)
    except ValueError:
        return None
    tight = round_down(most.floor_width if along else most.floor_length, step, unit)
    if not reaches(magnitude(tight, unit), magnitude(quantity(*NARROWEST_FLOOR[system]), unit)):
        return None
    far = most.floor_length if along else most.floor_width
    other = magnitude(
        round_up(wanted.floor_length if along else wanted.floor_width, step, unit), unit
    )
    sides = (magnitude(room[0], "ft"), magnitude(room[1], "ft"))
    while reaches(magnitude(far, unit), other):
        free = quantity(other, unit)
        if wanted.shape is FloorShape.KIDNEY and not along and free > tight:
            return None
        tried = replace(
            wanted,
            floor_length=free if along else tight,
            floor_width=tight if along else free,
        )
        # A narrower floor is dug less deep, and its sides and berm may reach farther.
        if enough(tried) and _within(tried, sides, ground):
            return tried
        other += step
    return None


def fit_to_area(
    room: Quantity,
    template: Basin,
    ground: Ground | None = None,
    *,
    length_to_width: float = LENGTH_TO_WIDTH.value,
    system: str = US,
) -> Basin:
    """Return the largest basin like ``template`` whose footprint is ``room``, an area of any shape.

    It stands for a garden of that area laid out to the room; ``length_to_width`` is that of the
    floor. Raises ValueError when the sides would leave a floor narrower than 2 ft.
    """
    area = positive(room, "ft**2", "The room for the garden must be more than zero.")
    least = narrowest_width(length_to_width, system)

    def fits(width: float) -> bool:
        basin = _sized(template, width * length_to_width, width)
        return reaches(area, magnitude(footprint_area(basin, ground), "ft**2"))

    if not fits(least):
        raise ValueError(
            "The room is too small for the sloping sides and a floor, "
            f"so find more room or choose {_smaller(template)}."
        )
    width = _most(least, math.sqrt(area) + least, fits)
    return _sized(template, width * length_to_width, width)
