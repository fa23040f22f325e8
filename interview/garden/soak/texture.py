"""Soil texture by feel, and the rate a published table gives that texture."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from interview.quantities.evidence import Provenance, Source
from interview.quantities.units import Quantity, magnitude, quantity, ratio

RAWLS_1982 = Source(
    "Rawls, Brakensiek and Saxton, Estimation of Soil Water Properties, Transactions of the ASAE "
    "25(5), 1982, pp. 1316-1320, saturated hydraulic conductivity",
    Provenance.SECONDARY,
)
FEEL_KEY = Source(
    "Thien, A flow diagram for teaching texture-by-feel analysis, Journal of Agronomic Education "
    "8, 1979",
    Provenance.MEMORY,
)
FAR_APART = 3.0
FAR_APART_SOURCE = Source("a factor of three is cause to look again", Provenance.OURS)
SHORT_RIBBON_IN = 1.0
LONG_RIBBON_IN = 2.0


class Texture(Enum):
    """The eleven texture classes for which the table has a rate."""

    SAND = "sand"
    LOAMY_SAND = "loamy sand"
    SANDY_LOAM = "sandy loam"
    LOAM = "loam"
    SILT_LOAM = "silt loam"
    SANDY_CLAY_LOAM = "sandy clay loam"
    CLAY_LOAM = "clay loam"
    SILTY_CLAY_LOAM = "silty clay loam"
    SANDY_CLAY = "sandy clay"
    SILTY_CLAY = "silty clay"
    CLAY = "clay"


class Ball(Enum):
    """What a squeezed, moist handful does."""

    FALLS_APART = "falls apart"
    NO_RIBBON = "ball, no ribbon"
    RIBBON = "ribbon"


class Rub(Enum):
    """How a wet pinch feels between the fingers."""

    GRITTY = "gritty"
    SMOOTH = "smooth"
    NEITHER = "neither"


RAWLS_CM_PER_H: dict[Texture, float] = {
    Texture.SAND: 21.00,
    Texture.LOAMY_SAND: 6.11,
    Texture.SANDY_LOAM: 2.59,
    Texture.LOAM: 1.32,
    Texture.SILT_LOAM: 0.68,
    Texture.SANDY_CLAY_LOAM: 0.43,
    Texture.CLAY_LOAM: 0.23,
    Texture.SILTY_CLAY_LOAM: 0.15,
    Texture.SANDY_CLAY: 0.12,
    Texture.SILTY_CLAY: 0.09,
    Texture.CLAY: 0.06,
}
"""Saturated rates as printed, centimeters per hour. Source: ``RAWLS_1982``."""

_BY_RIBBON = {
    "short": {
        Rub.GRITTY: Texture.SANDY_LOAM,
        Rub.SMOOTH: Texture.SILT_LOAM,
        Rub.NEITHER: Texture.LOAM,
    },
    "middle": {
        Rub.GRITTY: Texture.SANDY_CLAY_LOAM,
        Rub.SMOOTH: Texture.SILTY_CLAY_LOAM,
        Rub.NEITHER: Texture.CLAY_LOAM,
    },
    "long": {
        Rub.GRITTY: Texture.SANDY_CLAY,
        Rub.SMOOTH: Texture.SILTY_CLAY,
        Rub.NEITHER: Texture.CLAY,
    },
}


def texture_by_feel(ball: Ball, ribbon: Quantity | None = None, rub: Rub = Rub.NEITHER) -> Texture:
    """Return the texture class of a handful from the ball and ribbon test.

    ``ribbon`` is the longest ribbon before it breaks, a length, wanted only when there is one.
    Raises ValueError when it is missing or not more than zero. Source: ``FEEL_KEY``.
    """
    if ball is Ball.FALLS_APART:
        return Texture.SAND
    if ball is Ball.NO_RIBBON:
        return Texture.LOAMY_SAND
    if ribbon is None or magnitude(ribbon, "in") <= 0:
        raise ValueError("Give the length of the longest ribbon you could press out.")
    inches = magnitude(ribbon, "in")
    kind = "short" if inches < SHORT_RIBBON_IN else "middle"
    return _BY_RIBBON["long" if inches > LONG_RIBBON_IN else kind][rub]


def published_rate(texture: Texture) -> Quantity:
    """Return the saturated rate the table gives ``texture``, a speed. Source: ``RAWLS_1982``."""
    return quantity(RAWLS_CM_PER_H[texture], "cm/h")


@dataclass(frozen=True)
class TextureCheck:
    """The tested rate held against the rate of the texture that was felt."""

    texture: Texture
    published: Quantity
    times: float
    """The tested rate as a multiple of the published one."""
    far_apart: bool
    """True when one is more than three times the other: look again, nothing is changed."""


def texture_check(corrected: Quantity, texture: Texture) -> TextureCheck:
    """Compare the corrected rate of a test, a speed, with the rate of its texture."""
    published = published_rate(texture)
    times = ratio(corrected, published)
    return TextureCheck(texture, published, times, times > FAR_APART or times < 1 / FAR_APART)
