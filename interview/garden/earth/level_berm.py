"""The soil of a berm that stands level all round, uphill too, summed over the falling ground."""

from __future__ import annotations

import math
from dataclasses import dataclass

from interview.garden.earth.earthwork import SlopedBasin
from interview.garden.earth.ground import Section, ground_cut
from interview.quantities.guards import not_negative
from interview.quantities.units import Quantity, magnitude, quantity

CELLS = 40
"""Cells along each side of the ground that is summed: within about half a percent."""
_STEPS = 16


@dataclass(frozen=True)
class LevelBerm:
    """What a berm as high as the rim all round takes, and what the digging gives."""

    cut: Quantity
    """Undisturbed soil dug, faces and corners too, without what is dug for mulch."""
    fill: Quantity
    """Tamped soil in the berm, with rounded corners."""
    spare: Quantity
    """Undisturbed soil left over, with what is dug for mulch; zero where some is lacking."""
    lacking: Quantity
    """Undisturbed soil that is lacking."""


def _reach(section: Section, depth: float) -> tuple[float, float]:
    """Return how far the berm may reach beyond the floor, downhill and to the other sides."""
    edge = section.inner * section.height + section.top
    drop = max(0.0, section.height - depth + section.fall * edge)
    slack = max(0.05, 1 - section.outer * section.fall)
    return edge + section.outer * drop / slack, edge + section.outer * section.height


def _surface(section: Section, across: float, along: float) -> float:
    """Return the height of the finished surface beyond the floor by these two distances."""
    crest = section.inner * section.height
    if max(across, along) <= crest:
        return max(across, along) / section.inner
    beyond = math.hypot(max(0.0, across - crest), max(0.0, along - crest)) - section.top
    return section.height - max(0.0, beyond) / section.outer


def level_fill(section: Section, depth: float) -> float:
    """Return the fill in cubic feet, ``depth`` the floor below the ground downhill, in feet."""
    down, other = _reach(section, depth)
    half = section.length / 2 + other
    tall = down + section.width + other
    dx, dy = half / CELLS, tall / CELLS
    fill = 0.0
    for i in range(CELLS):
        across = max(0.0, (i + 0.5) * dx - section.length / 2)
        for j in range(CELLS):
            y = (j + 0.5) * dy - down
            along = max(0.0, -y, y - section.width)
            over = _surface(section, across, along) - (depth + section.fall * y)
            fill += max(0.0, over)
    return 2 * fill * dx * dy


def level_berm(basin: SlopedBasin, downhill_depth: Quantity, extra: Quantity) -> LevelBerm:
    """Return the soil of a berm level all round, for a floor dug to ``downhill_depth``.

    ``extra`` is the undisturbed soil dug besides, as for mulch. Lengths, but for the volume
    ``extra``. Raises ValueError as ``cut_and_fill`` does, and for a volume below zero.
    """
    section = basin.section()
    depth = magnitude(downhill_depth, "ft")
    more = _extra(extra)
    cut, fill = ground_cut(section, depth), level_fill(section, depth)
    lacking = fill / basin.compaction - cut - more
    return LevelBerm(
        cut=quantity(cut, "ft**3"),
        fill=quantity(fill, "ft**3"),
        spare=quantity(max(0.0, -lacking), "ft**3"),
        lacking=quantity(max(0.0, lacking), "ft**3"),
    )


def level_depth(basin: SlopedBasin, extra: Quantity) -> Quantity:
    """Return the least downhill floor depth whose digging makes a berm level all round.

    Zero where the digging at ground level gives enough. Dimensions and errors as ``level_berm``.
    """
    section, more = basin.section(), _extra(extra)

    def enough(depth: float) -> bool:
        dug = ground_cut(section, depth) + more
        return basin.compaction * dug >= level_fill(section, depth)

    low, high = 0.0, section.height
    if enough(low):
        return quantity(0.0, "ft")
    for _ in range(_STEPS):
        middle = (low + high) / 2
        low, high = (low, middle) if enough(middle) else (middle, high)
    return quantity(high, "ft")


def _extra(extra: Quantity) -> float:
    return not_negative(extra, "ft**3", "The extra soil must be zero or more.")
