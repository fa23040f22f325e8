"""The soil of a berm that stands level all round, uphill too, summed over the falling ground."""

from __future__ import annotations

import math
from dataclasses import dataclass

from interview.calc.earthwork import Basin
from interview.calc.ground import Section
from interview.calc.guards import not_negative
from interview.units import Quantity, magnitude, quantity

CELLS = 40
"""Cells along each side of the ground that is summed: within about half a percent."""
_STEPS = 12


@dataclass(frozen=True)
class LevelBerm:
    """What a berm as high as the rim all round takes, and what the digging gives."""

    cut: Quantity
    """Undisturbed soil dug inside the rim, without what is dug for mulch."""
    fill: Quantity
    """Tamped soil in the berm, with rounded corners."""
    spare: Quantity
    """Undisturbed soil left over, with what is dug for mulch; zero where some is lacking."""
    lacking: Quantity
    """Undisturbed soil that is lacking."""
    deeper: Quantity
    """How much deeper the whole floor must be dug for the digging to make the berm."""


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


def volumes(section: Section, depth: float) -> tuple[float, float]:
    """Return cut and fill in cubic feet, ``depth`` the floor below the ground downhill."""
    down, other = _reach(section, depth)
    half = section.length / 2 + other
    tall = down + section.width + other
    dx, dy = half / CELLS, tall / CELLS
    crest = section.inner * section.height
    cut = fill = 0.0
    for i in range(CELLS):
        across = max(0.0, (i + 0.5) * dx - section.length / 2)
        for j in range(CELLS):
            y = (j + 0.5) * dy - down
            along = max(0.0, -y, y - section.width)
            over = _surface(section, across, along) - (depth + section.fall * y)
            if over > 0:
                fill += over
            elif max(across, along) <= crest:
                cut -= over
    return 2 * cut * dx * dy, 2 * fill * dx * dy


def level_berm(basin: Basin, downhill_depth: Quantity, extra: Quantity) -> LevelBerm:
    """Return the soil of a berm level all round, for a floor dug to ``downhill_depth``.

    ``extra`` is the undisturbed soil dug besides, as for mulch. Lengths, but for the volume
    ``extra``. Raises ValueError as ``cut_and_fill`` does, and for a volume below zero.
    """
    section = basin.section()
    depth = magnitude(downhill_depth, "ft")
    more = not_negative(extra, "ft**3", "The extra soil must be zero or more.")
    cut, fill = volumes(section, depth)

    def short(at: float) -> float:
        dug, need = volumes(section, at)
        return need / basin.compaction - dug - more

    lacking = fill / basin.compaction - cut - more
    low, high = depth, max(depth, section.height)
    if lacking > 0:
        for _ in range(_STEPS):
            middle = (low + high) / 2
            low, high = (middle, high) if short(middle) > 0 else (low, middle)
    return LevelBerm(
        cut=quantity(cut, "ft**3"),
        fill=quantity(fill, "ft**3"),
        spare=quantity(max(0.0, -lacking), "ft**3"),
        lacking=quantity(max(0.0, lacking), "ft**3"),
        deeper=quantity(max(0.0, high - depth) if lacking > 0 else 0.0, "ft"),
    )
