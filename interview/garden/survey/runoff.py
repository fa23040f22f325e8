"""How much of the rain on a surface runs off it to the garden."""

from __future__ import annotations

import math
from enum import Enum

from interview.quantities.evidence import Provenance, Source
from interview.quantities.units import Quantity, magnitude, quantity

TR55 = "Urban Hydrology for Small Watersheds, TR-55, 2nd ed., USDA-NRCS, 1986"
CURVE_NUMBER_EQUATION = Source(f"{TR55}, eq. 2-1 to 2-4", Provenance.PUBLISHED)
CURVE_NUMBER_TABLE = Source(f"{TR55}, Table 2-2a", Provenance.SECONDARY)
COEFFICIENTS = Source(
    "District of Columbia Municipal Regulations, title 21, section 520: 0.95 for impervious cover, "
    "0.25 for compacted cover, 0 for natural cover",
    Provenance.PUBLISHED,
)
GRAVEL = Source(
    "gravel counted with the compacted cover of that rule, which does not name gravel",
    Provenance.OURS,
)


class LawnSurface(Enum):
    """What the rain falls on."""

    ROOF = "roof"
    PAVED = "paved"
    GRAVEL = "gravel"
    COMPACTED = "compacted soil"
    LAWN = "lawn"


class HydrologicGroup(Enum):
    """Soil group of the curve number method, A the most open."""

    A = "A"
    B = "B"
    C = "C"
    D = "D"


class Cover(Enum):
    """Covers of the curve number table."""

    HARD = "roofs, paved drives, parking"
    LAWN_GOOD = "lawn, good, over 75 % grass"
    LAWN_FAIR = "lawn, fair, 50 to 75 % grass"
    LAWN_POOR = "lawn, poor, under 50 % grass"
    GRAVEL_STREET = "gravel street including right-of-way"
    DIRT_STREET = "dirt street including right-of-way"
    BARE = "newly graded, bare"


class RunoffMethod(Enum):
    """How the share that runs off is found."""

    COEFFICIENT = "coefficient"
    CURVE_NUMBER = "curve number"


CURVE_NUMBERS: dict[Cover, tuple[int, int, int, int]] = {
    Cover.HARD: (98, 98, 98, 98),
    Cover.LAWN_GOOD: (39, 61, 74, 80),
    Cover.LAWN_FAIR: (49, 69, 79, 84),
    Cover.LAWN_POOR: (68, 79, 86, 89),
    Cover.GRAVEL_STREET: (76, 85, 89, 91),
    Cover.DIRT_STREET: (72, 82, 87, 89),
    Cover.BARE: (77, 86, 91, 94),
}
"""Curve numbers for groups A to D. Source: ``CURVE_NUMBER_TABLE``."""

RUNOFF_COEFFICIENTS = {
    LawnSurface.ROOF: 0.95,
    LawnSurface.PAVED: 0.95,
    LawnSurface.GRAVEL: 0.25,
    LawnSurface.COMPACTED: 0.25,
}
"""Share of the rain that runs off; lawn goes by curve number.

Sources: ``COEFFICIENTS``, and for gravel ``GRAVEL``.
"""

USUAL_COVER = {
    LawnSurface.ROOF: Cover.HARD,
    LawnSurface.PAVED: Cover.HARD,
    LawnSurface.GRAVEL: Cover.GRAVEL_STREET,
    LawnSurface.COMPACTED: Cover.DIRT_STREET,
    LawnSurface.LAWN: Cover.LAWN_GOOD,
}
"""The table has no home drive of gravel or dirt, so its street rows stand in for them."""


def curve_number(cover: Cover, group: HydrologicGroup) -> int:
    """Return the curve number of a cover on a soil group. Source: ``CURVE_NUMBER_TABLE``."""
    return CURVE_NUMBERS[cover][list(HydrologicGroup).index(group)]


def runoff_depth(rain: Quantity, number: float) -> Quantity:
    """Return the depth that runs off from a depth of ``rain`` at a curve ``number``.

    Raises ValueError for a rain below zero or a number outside 0 to 100.
    Source: ``CURVE_NUMBER_EQUATION``.
    """
    inches = magnitude(rain, "in")
    if not 0 <= inches < math.inf:
        raise ValueError("The depth of rain cannot be less than zero, so check it.")
    if not 0 < number <= 100:
        raise ValueError("A curve number is more than 0 and at most 100, so check it.")
    storage = 1000 / number - 10
    excess = inches - 0.2 * storage
    if excess <= 0:
        return quantity(0.0, "in")
    return quantity(excess**2 / (inches + 0.8 * storage), "in")


def runoff_share(
    surface: LawnSurface,
    rain: Quantity,
    *,
    method: RunoffMethod = RunoffMethod.COEFFICIENT,
    group: HydrologicGroup | None = None,
    cover: Cover | None = None,
) -> float:
    """Return the share of a depth of ``rain`` that runs off a surface, nought to one.

    Lawn goes by curve number under either method, which gives nothing from 1 in on the open
    soils. A soil group that is not known counts as D, which gives the most water. ``cover``
    replaces the usual cover of the surface. Raises ValueError as ``runoff_depth`` does.
    Sources: ``COEFFICIENTS``, ``CURVE_NUMBER_TABLE``.
    """
    if method is RunoffMethod.COEFFICIENT and surface in RUNOFF_COEFFICIENTS:
        return RUNOFF_COEFFICIENTS[surface]
    number = curve_number(cover or USUAL_COVER[surface], group or HydrologicGroup.D)
    depth = magnitude(runoff_depth(rain, number), "in")
    return depth / magnitude(rain, "in") if depth else 0.0
