"""The outline pegged out from one string: offsets to both sides at stations along it, in feet."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from interview.garden.form.choices import FloorShape
from interview.garden.form.outline import Outline
from interview.garden.survey.rings import crossed


class Offset(NamedTuple):
    """Where a line of the outline lies at a station of the string: one peg each side."""

    along: float
    """From the middle of the bed, feet."""
    uphill: float
    downhill: float


def stations_along(outline: Outline, step: float, end: float) -> list[float]:
    """Return the stations every ``step`` feet from the middle to ``end``; an own outline's own."""
    if outline.shape is FloorShape.OWN:
        return [one.along - own_middle(outline) for one in outline.stations]
    return [step * n for n in range(int(end / step + 1e-9) + 1)]


def own_middle(outline: Outline) -> float:
    """Return how far along its string the middle of an outline of one's own lies, in feet."""
    return (outline.stations[0].along + outline.stations[-1].along) / 2


def offset_at(outline: Outline, q: float, x: float) -> Offset | None:
    """Return the pegs of the line ``q`` feet outside the floor at ``x``; nothing past its ends.

    The string lies along the contour through the middle of the bed, of a kidney through the middles
    of its two ends. The lines outside an oval are pegged as ovals too: of a bed twice as long as
    wide 0.06 ft off at the most and 0.8 % of the area.
    """
    if outline.shape is FloorShape.OWN:
        return ring_offset(outline.line_at(q), string_height(outline), x)
    end = _reach_along(outline, q)
    return None if x > end + 1e-9 else Offset(x, *_sides_at(outline, q, min(x, end)))


def ends_along(outline: Outline, q: float) -> tuple[float, float] | None:
    """Return where the line ``q`` feet outside the floor crosses the string, left and right."""
    if outline.shape is FloorShape.OWN:
        return ring_ends(outline.line_at(q), string_height(outline))
    end = _reach_along(outline, q)
    return -end, end


def ring_offset(ring: Sequence[tuple[float, float]], string: float, x: float) -> Offset | None:
    """Return the pegs at ``x`` of a ring of points; the string ``string`` over the floor's foot."""
    found = crossed(ring, x)
    return None if found is None else Offset(x, found[1] - string, string - found[0])


def ring_ends(ring: Sequence[tuple[float, float]], string: float) -> tuple[float, float] | None:
    """Return where a ring of points crosses the string, left and right, if it does."""
    return crossed([(y, x) for x, y in ring], string)


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
