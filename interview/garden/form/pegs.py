"""The outline pegged out from one string: offsets to both sides at stations along it, in feet."""

from __future__ import annotations

import math
from dataclasses import dataclass

from interview.garden.form.outline import FloorShape, Outline, crossed


@dataclass(frozen=True)
class Offset:
    """Where a line of the outline lies at a station of the string: one peg each side."""

    along: float
    """From the middle of the bed, feet."""
    uphill: float
    downhill: float


def string_offsets(outline: Outline, q: float, step: float) -> tuple[Offset, ...]:
    """Return the pegs of the line ``q`` outside the floor, every ``step`` feet from the middle out.

    The string lies along the contour through the middle of the bed, of a kidney through the middles
    of its two ends; the other half is its mirror. An outline of one's own has the stations it was
    measured at, over its whole length. The lines outside an oval are pegged as ovals too: of a bed
    twice as long as wide 0.06 ft off at the most and 0.8 % of the area.
    """
    if outline.shape is FloorShape.OWN:
        first, last = outline.stations[0].along, outline.stations[-1].along
        shift = (first + last) / 2
        places = [one.along - shift for one in outline.stations]
        found = [_crossings(outline, q, x) for x in places]
        return tuple(one for one in found if one is not None)
    end = _reach_along(outline, q)
    places = [step * n for n in range(int(end / step + 1e-9) + 1)]
    if end - places[-1] > 1e-6:
        places.append(end)
    return tuple(Offset(x, *_sides_at(outline, q, min(x, end))) for x in places)


def string_height(outline: Outline) -> float:
    """Return how far uphill of the floor's lowest point the string lies, in feet."""
    if outline.shape is FloorShape.OWN:
        return max(one.downhill for one in outline.stations)
    if outline.shape is FloorShape.KIDNEY:
        return _sides_at(outline, 0.0, 0.0)[1]
    return outline.width / 2


def _reach_along(outline: Outline, q: float) -> float:
    """Half the length of the line ``q`` outside the floor, along the string."""
    if outline.shape is FloorShape.KIDNEY:
        half = outline.straight / outline.radius_of_bend / 2
        return outline.radius_of_bend * math.sin(half) + outline.end_radius + q
    return outline.length / 2 + q


def _sides_at(outline: Outline, q: float, x: float) -> tuple[float, float]:
    """Offsets uphill and downhill of the string at ``x`` from the middle, at most its reach."""
    if outline.shape is FloorShape.RECTANGLE:
        return outline.width / 2 + q, outline.width / 2 + q
    if outline.shape is FloorShape.OVAL:
        part = max(0.0, 1 - (x / (outline.length / 2 + q)) ** 2)
        wide = (outline.width / 2 + q) * math.sqrt(part)
        return wide, wide
    radius = outline.end_radius + q
    if outline.shape is FloorShape.KIDNEY:
        bend = outline.radius_of_bend
        half = outline.straight / bend / 2
        string, middle = bend * math.cos(half), bend * math.sin(half)
        end = math.sqrt(max(0.0, radius**2 - (x - middle) ** 2))
        outer, inner = bend + radius, bend - radius
        down = math.sqrt(outer**2 - x**2) - string if x <= outer * math.sin(half) else end
        up = string - math.sqrt(inner**2 - x**2) if x <= inner * math.sin(half) else end
        return up, down
    if outline.length < outline.width:
        wide = outline.straight / 2 + math.sqrt(max(0.0, radius**2 - x**2))
        return wide, wide
    past = max(0.0, x - outline.straight / 2)
    wide = math.sqrt(max(0.0, radius**2 - past**2))
    return wide, wide


def _crossings(outline: Outline, q: float, x: float) -> Offset | None:
    """Where the line ``q`` outside an outline of one's own crosses a station."""
    found = crossed(outline.line_at(q), x)
    string = string_height(outline)
    return None if found is None else Offset(x, found[1] - string, string - found[0])
