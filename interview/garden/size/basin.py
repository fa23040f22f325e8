"""How large the garden must be for the rain it is to hold."""

from __future__ import annotations

import math
from dataclasses import dataclass

from interview.garden.form.basin import Basin
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.guards import not_negative, positive
from interview.quantities.units import (
    METRIC,
    US,
    Quantity,
    magnitude,
    quantity,
    ratio,
    round_down,
    round_up,
    significant,
)

__all__ = [
    "Basin",
    "RequiredArea",
    "catchment_served",
    "drawn",
    "fit_to_area",
    "fit_to_room",
    "rain_held",
    "recommended_area",
    "required_area",
    "rule_of_thumb_area",
    "shaped_to_room",
    "split_advised",
]

RULE_OF_THUMB = Source(
    "roof area x rain / depth, a tenth of the roof for 1 in of rain in a 10 in pond",
    Provenance.PRACTICE,
)
LENGTH_TO_WIDTH = Cited(
    2.0,
    Source(
        "University of Rhode Island and University of Connecticut rain garden design guide, "
        "undated: twice as long as wide, the long side across the slope",
        Provenance.PUBLISHED,
    ),
)
SIDE_SLOPE = Cited(3.0, Source("sides of three across to one up", Provenance.PRACTICE))
FREEBOARD_IN = Cited(4.0, Source("four inches from full pond to rim", Provenance.OURS))
BERM_FREEBOARD_IN = Cited(
    6.0,
    Source(
        "Rain Garden Handbook for Western Washington, Washington State University Extension and "
        "Department of Ecology, 2013, pp. 37-39",
        Provenance.PUBLISHED,
    ),
)
SPLIT_ABOVE_FT2 = Cited(
    300.0,
    Source(
        "Step 1: Sizing and Siting the Rain Garden, University of Wisconsin-Extension, web page",
        Provenance.PUBLISHED,
    ),
)
NARROWEST_FLOOR = {US: (2.0, "ft"), METRIC: (600.0, "mm")}
NARROWEST_SOURCE = Source("a floor narrower than a rake cannot be leveled", Provenance.OURS)
DRAWN_STEP = {US: (0.5, "ft"), METRIC: (100.0, "mm")}

MOST_BEDS = 4
"""Most beds of one garden: a choice of this project."""


@dataclass(frozen=True)
class RequiredArea:
    """The basin that holds the rain exactly, before its sizes are rounded."""

    catchment: Quantity
    """Area that drains here weighted by runoff."""
    rain: Quantity
    mid_area: Quantity
    """Area at half the pond's depth."""
    recommended: Quantity
    """The same at two significant digits, up."""
    rule_of_thumb: Quantity
    """Weighted area x rain / depth, for comparison."""
    basin: Basin
    enlarged: bool
    """True when so little comes that the floor had to be made wide enough to dig."""


def required_area(
    catchment: Quantity,
    rain: Quantity,
    depth: Quantity,
    side_slope: float,
    freeboard: Quantity,
    *,
    length_to_width: float = LENGTH_TO_WIDTH.value,
    system: str = US,
) -> RequiredArea:
    """Return the basin whose full pond equals the rain on the catchment and inside the rim.

    ``catchment`` is an area weighted by runoff; ``rain``, ``depth`` and ``freeboard`` are
    lengths; ``length_to_width`` is that of the area at half depth. ``system`` says in which
    steps areas are recommended. The balance is solved exactly, but a floor is never narrower
    than can be dug. Raises ValueError when nothing drains here or the pond is no deeper than the
    rain.
    """
    area = positive(catchment, "ft**2", "No surface drains here yet, so add one first.")
    p = positive(rain, "ft", "The rain to hold must be more than zero.")
    d = positive(depth, "ft", "The pond must be deeper than zero.")
    b = not_negative(freeboard, "ft", "The rim cannot be lower than the full pond.")
    if not (0 <= side_slope < math.inf and 0 < length_to_width < math.inf):
        raise ValueError("The side slope and the length to width must be plain numbers over zero.")
    if d <= p:
        raise ValueError(
            "The pond must be deeper than the rain it is to hold, "
            "so make the pond deeper or the rain less."
        )
    side = _mid_side(area, p, d, side_slope, b, length_to_width)
    width = side / math.sqrt(length_to_width) - side_slope * d
    length = side * math.sqrt(length_to_width) - side_slope * d
    least = magnitude(quantity(*NARROWEST_FLOOR[system]), "ft")
    floor = (quantity(max(length, least), "ft"), quantity(max(width, least), "ft"))
    basin = Basin(*floor, depth, side_slope, freeboard)
    return RequiredArea(
        catchment=catchment,
        rain=rain,
        mid_area=basin.mid_area,
        recommended=recommended_area(basin.mid_area, system),
        rule_of_thumb=rule_of_thumb_area(catchment, rain, depth),
        basin=basin,
        enlarged=min(length, width) < least,
    )


def _mid_side(s: float, p: float, d: float, z: float, b: float, k: float) -> float:
    """Side of the square with the area at half depth, in feet: the root of the water balance.

    Volume is ``d A + z^2 d^3 / 3``; the area inside the rim is ``A + g (L + W) + g^2`` with
    ``g = z (d + 2 b)``.
    """
    g = z * (d + 2 * b)
    square = d - p
    linear = p * g * (k + 1) / math.sqrt(k)
    constant = p * (s + g**2) - z**2 * d**3 / 3
    if constant <= 0:
        # The sloping sides alone would hold more than comes: any floor will do.
        return 0.0
    return (linear + math.sqrt(linear**2 + 4 * square * constant)) / (2 * square)


def drawn(required: RequiredArea, system: str = US) -> Basin:
    """Return the basin to peg out: its floor rounded up to half feet or 100 mm, 2 ft at least.

    Where rounding one side only adds rim and the rain is no longer held, both sides grow by a
    step until it is.
    """
    step, unit = DRAWN_STEP[system]
    least = magnitude(quantity(*NARROWEST_FLOOR[system]), unit)
    whole = [
        max(magnitude(round_up(side, step, unit), unit), least)
        for side in (required.basin.floor_length, required.basin.floor_width)
    ]
    while True:
        basin = Basin(
            quantity(whole[0], unit),
            quantity(whole[1], unit),
            required.basin.depth,
            required.basin.side_slope,
            required.basin.freeboard,
        )
        if ratio(rain_held(basin, required.catchment), required.rain) >= 1 - 1e-9:
            return basin
        whole = [side + step for side in whole]


def fit_to_room(
    room_length: Quantity,
    room_width: Quantity,
    depth: Quantity,
    side_slope: float,
    freeboard: Quantity,
    *,
    system: str = US,
) -> Basin:
    """Return the largest basin whose rim fits a room, both lengths.

    Raises ValueError when the sides would leave a floor narrower than 2 ft.
    """
    length = positive(room_length, "ft", "The room for the garden must be longer than zero.")
    width = positive(room_width, "ft", "The room for the garden must be wider than zero.")
    rise = magnitude(depth, "ft") + magnitude(freeboard, "ft")
    taken = 2 * side_slope * rise
    least = magnitude(quantity(*NARROWEST_FLOOR[system]), "ft")
    if min(length, width) - taken < least - 1e-9:
        raise ValueError(
            "The room is too narrow for the sloping sides and a floor, "
            "so find more room or choose a shallower pond or steeper sides."
        )
    floor = (quantity(length - taken, "ft"), quantity(width - taken, "ft"))
    return Basin(*floor, depth, side_slope, freeboard)


def shaped_to_room(
    wanted: Basin, room: Basin, catchment: Quantity, rain: Quantity, system: str = US
) -> Basin | None:
    """Return the basin that holds ``rain`` within ``room`` where ``wanted`` is too long or wide.

    The side that does not fit is as large as the room allows, in whole steps where they are enough;
    the other is as much larger as is needed. Nothing where the room holds less. ``catchment`` is
    the weighted area that drains here.
    """
    step, unit = DRAWN_STEP[system]
    along = ratio(wanted.floor_width, room.floor_width) > 1 + 1e-9
    most, least = (
        (room.floor_length, wanted.floor_length)
        if along
        else (room.floor_width, wanted.floor_width)
    )
    tight = room.floor_width if along else room.floor_length
    whole = round_down(tight, step, unit)
    for side in (whole, tight) if magnitude(whole, unit) > 0 else (tight,):
        other = magnitude(round_up(least, step, unit), unit)
        while other <= magnitude(most, unit) + 1e-9:
            sides = (quantity(other, unit), side) if along else (side, quantity(other, unit))
            tried = Basin(*sides, wanted.depth, wanted.side_slope, wanted.freeboard)
            if ratio(rain_held(tried, catchment), rain) >= 1 - 1e-9:
                return tried
            other += step
    return None


def fit_to_area(
    room: Quantity,
    depth: Quantity,
    side_slope: float,
    freeboard: Quantity,
    *,
    length_to_width: float = LENGTH_TO_WIDTH.value,
    system: str = US,
) -> Basin:
    """Return the basin whose area inside the rim is ``room``, an area of any shape.

    It stands for a garden of that area laid out to the room: a rounder one has a little more floor,
    a longer one less. ``length_to_width`` is that of the area at half depth. Raises ValueError when
    the sides would leave a floor narrower than 2 ft.
    """
    area = positive(room, "ft**2", "The room for the garden must be more than zero.")
    root = math.sqrt(length_to_width)
    d, b = magnitude(depth, "ft"), magnitude(freeboard, "ft")
    grown = side_slope * (d + 2 * b)
    half = grown * (root + 1 / root) / 2
    side = math.sqrt(max(0.0, half**2 + area - grown**2)) - half
    least = magnitude(quantity(*NARROWEST_FLOOR[system]), "ft")
    length, width = side * root - side_slope * d, side / root - side_slope * d
    if min(length, width) < least - 1e-9:
        raise ValueError(
            "The room is too small for the sloping sides and a floor, "
            "so find more room or choose a shallower pond or steeper sides."
        )
    return Basin(quantity(length, "ft"), quantity(width, "ft"), depth, side_slope, freeboard)


def rain_held(basin: Basin, catchment: Quantity) -> Quantity:
    """Return the depth of rain that just fills the pond, from ``catchment`` and inside the rim.

    ``catchment`` is the area that drains here weighted by runoff. Raises ValueError below zero.
    """
    area = not_negative(catchment, "ft**2", "The area that drains here cannot be below zero.")
    feet = magnitude(basin.volume, "ft**3") / (area + magnitude(basin.rim_area, "ft**2"))
    return quantity(feet * 12, "in")


def catchment_served(basin: Basin, rain: Quantity) -> Quantity:
    """Return the weighted area whose ``rain`` this basin can hold with its own; zero if none."""
    feet = positive(rain, "ft", "The rain to hold must be more than zero.")
    area = magnitude(basin.volume, "ft**3") / feet - magnitude(basin.rim_area, "ft**2")
    return quantity(max(area, 0.0), "ft**2")


def rule_of_thumb_area(roof_area: Quantity, rain: Quantity, depth: Quantity) -> Quantity:
    """Return roof area x rain / depth, for comparison only. Source: ``RULE_OF_THUMB``."""
    positive(depth, "in", "The pond must be deeper than zero.")
    return quantity(magnitude(roof_area, "ft**2") * ratio(rain, depth), "ft**2")


def split_advised(area: Quantity) -> bool:
    """Tell whether a garden is large enough to be made as two. Source: ``SPLIT_ABOVE_FT2``."""
    return magnitude(area, "ft**2") > SPLIT_ABOVE_FT2.value


def recommended_area(area: Quantity, system: str = US) -> Quantity:
    """Return ``area`` at two significant digits, up, in the square unit of ``system``."""
    unit = "m**2" if system == METRIC else "ft**2"
    return quantity(significant(magnitude(area, unit), 2, "up"), unit)
