"""The first size in words."""

from __future__ import annotations

from interview.garden.size.rough import ROOM_STEP, Feel, RoughSize
from interview.quantities.shown import (
    HIGH,
    LOW,
    Rounding,
    area_range_words,
    depth_words,
    level_area_words,
    sides_words,
    water_words,
)
from interview.quantities.units import METRIC, Quantity, feet_and_inches, magnitude, unit_name

VERY_SLOW = "Very slow clay may allow no garden; the test tells."


def about(found: RoughSize, metric: bool, to: str = " to ") -> str:
    """Return the size and its range, such as ``About 110 sq ft (63 to 280)``."""
    return f"About {area_range_words(found.middle, found.low, found.high, metric, to)}"


def basis(found: RoughSize, metric: bool) -> str:
    """Return what it is for: ``for 1 in of rain from 420 sq ft, with a 6 in pond``."""
    rain = water_words(found.rain, metric, Rounding(3))
    area = level_area_words(found.drains_here, metric)
    beds = f", in {found.beds} beds" if found.beds > 1 else ""
    return f"for {rain} of rain from {area}, with a {depth_words(found.depth, metric)} pond{beds}"


def room(found: RoughSize, metric: bool) -> str:
    """Return the room to look for, as a sentence."""
    each = " for each bed" if found.beds > 1 else ""
    where = "" if found.on_slope else " on level ground; a slope takes some more"
    sides = sides_words(found.length, found.width, metric)
    return f"Look for room of {sides}{each}{where}."


def settling(found: RoughSize, any_soil: RoughSize, metric: bool) -> str:
    """Say that the test settles the size, and the range if it contradicts how the soil feels."""
    unit, name = ("m**2", unit_name("m**2")) if metric else ("ft**2", "sq ft")
    ends = [
        (LOW.write(magnitude(one.low, unit)), HIGH.write(magnitude(one.high, unit)))
        for one in (found, any_soil)
    ]
    if ends[0] == ends[1]:
        return "The soak test will settle it."
    return f"The soak test will settle it. If the feel misleads: {' to '.join(ends[1])} {name}."


def first_size(found: RoughSize, any_soil: RoughSize, metric: bool) -> list[str]:
    """Return the first size in sentences: how large, for what, what settles it, the room.

    ``any_soil`` is the first size if nothing is made of how the soil feels.
    """
    said = [f"{about(found, metric)} {basis(found, metric)}."]
    if found.raised:
        least = depth_words(found.shallowest, metric)
        said.append(f"A pond under {least} could not hold so much rain in a yard.")
    if found.settles:
        said.append(settling(found, any_soil, metric))
    if found.settles and found.feel in (Feel.STICKY, Feel.UNKNOWN):
        said.append(VERY_SLOW)
    return [*said, room(found, metric)]


def room_side(side: Quantity, metric: bool) -> str:
    """Write the length of a side of the room as an answer, exactly, for it is in whole steps."""
    if metric:
        step, unit = ROOM_STEP[METRIC]
        return f"{round(magnitude(side, unit) / step) * step:.1f} m"
    return feet_and_inches(side)
