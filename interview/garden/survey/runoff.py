"""How much of the rain on a surface runs off it to the garden."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from enum import Enum

from interview.garden.soak.texture import Texture
from interview.quantities.evidence import Provenance, Source
from interview.quantities.units import Quantity, magnitude, quantity

TR55 = "Urban Hydrology for Small Watersheds, TR-55, 2nd ed., USDA-NRCS, 1986"
CURVE_NUMBER_EQUATION = Source(f"{TR55}, eq. 2-1 to 2-4", Provenance.PUBLISHED)
CURVE_NUMBER_TABLE = Source(f"{TR55}, Table 2-2a", Provenance.SECONDARY)
SOIL_GROUPS = Source(f"{TR55}, Appendix A", Provenance.SECONDARY)
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

_GROUP_TEXTURES = {
    HydrologicGroup.A: (Texture.SAND, Texture.LOAMY_SAND, Texture.SANDY_LOAM),
    HydrologicGroup.B: (Texture.SILT_LOAM, Texture.LOAM),
    HydrologicGroup.C: (Texture.SANDY_CLAY_LOAM,),
}
_GROUP_RATES_IN_H = (
    (0.30, HydrologicGroup.A),
    (0.15, HydrologicGroup.B),
    (0.05, HydrologicGroup.C),
)


def group_of_texture(texture: Texture) -> HydrologicGroup:
    """Return the soil group of a texture. Source: ``SOIL_GROUPS``."""
    for group, textures in _GROUP_TEXTURES.items():
        if texture in textures:
            return group
    return HydrologicGroup.D


def group_of_rate(corrected_rate: Quantity) -> HydrologicGroup:
    """Return the soil group of a wet soil's rate, a speed. Source: ``SOIL_GROUPS``."""
    rate = magnitude(corrected_rate, "in/h")
    for limit, group in _GROUP_RATES_IN_H:
        if rate > limit:
            return group
    return HydrologicGroup.D


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


@dataclass(frozen=True)
class DrainingSurface:
    """A surface, its plan area, and the share of it that drains here, nought to one."""

    surface: LawnSurface
    area: Quantity
    share: float = 1.0
    local_coefficient: float | None = None
    """A runoff coefficient from a local rule, in place of the usual one."""
    cover: Cover | None = None


def weighted_area(
    surfaces: Iterable[DrainingSurface],
    rain: Quantity,
    *,
    method: RunoffMethod = RunoffMethod.COEFFICIENT,
    group: HydrologicGroup | None = None,
) -> Quantity:
    """Return the area that drains here weighted by runoff: the sum of area x share x coefficient.

    Times a depth of rain it is the volume that comes. Raises ValueError for an area below zero, or
    a share or coefficient outside nought to one.
    """
    total = 0.0
    for one in surfaces:
        area = magnitude(one.area, "ft**2")
        coefficient = one.local_coefficient
        if coefficient is None:
            coefficient = runoff_share(
                one.surface, rain, method=method, group=group, cover=one.cover
            )
        if not 0 <= area < math.inf:
            raise ValueError("The area of a surface cannot be less than zero, so check its pieces.")
        if not 0 <= one.share <= 1:
            raise ValueError("The share that comes here must be between nothing and all of it.")
        if not 0 <= coefficient <= 1:
            raise ValueError("A runoff coefficient must be between 0 and 1.")
        total += area * one.share * coefficient
    return quantity(total, "ft**2")
