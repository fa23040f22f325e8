"""The test hole: its shape, and how fast water must leave its bottom to explain a fall."""

from __future__ import annotations

import math
from collections.abc import Callable
from enum import Enum
from typing import NamedTuple

from interview.quantities.evidence import Provenance, Source
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity

INVERSE_AUGER_HOLE = Source(
    "Inverse auger-hole (Porchet) method, in Ritzema (ed.), Drainage Principles and Applications, "
    "ILRI Publication 16, 2nd ed., 1994, ch. 12; re-derived here for any upright hole",
    Provenance.MEMORY,
)
SIMPSON_PANELS = 64
"""Even parts, for a taper to agree to 1 in 30,000; a ruler tells no more than 1 in 100."""


class HoleShape(Enum):
    """The hole seen from above, or ``TAPERED`` for a round hole that widens upward."""

    ROUND = "round"
    SQUARE = "square"
    RECTANGULAR = "rectangular"
    TAPERED = "tapered"


class BareHole(NamedTuple):
    """A hole in bare inches; ``widths`` are what a tape was laid across, in a fixed order."""

    shape: HoleShape
    widths: tuple[float, ...]
    taper_height: float = 1.0

    @property
    def shape_length(self) -> float:
        first, *rest = self.widths
        if self.shape is HoleShape.RECTANGULAR:
            return first * rest[0] / (2 * (first + rest[0]))
        return first / 4

    @property
    def is_tapered(self) -> bool:
        return self.shape is HoleShape.TAPERED

    def radius(self, height: float) -> float:
        bottom, top = self.widths
        return bottom / 2 + (top - bottom) / 2 * height / self.taper_height

    def area(self, height: float) -> float:
        """Area of the water surface ``height`` above the bottom, as a multiple of the bottom."""
        if not self.is_tapered:
            return 1.0
        return (self.radius(height) / self.radius(0)) ** 2

    def area_over_wetted(self, height: float) -> float:
        """Plan area at ``height`` divided by the area of all the wet soil under it."""
        if not self.is_tapered:
            length = self.shape_length
            return length / (height + length)
        low, high = self.radius(0), self.radius(height)
        wall = (low + high) * math.hypot(height, high - low)
        return high**2 / (low**2 + wall)

    def soaked(self, above: float, below: float) -> float:
        """Depth that left through each part of the wet soil as water fell ``above`` to ``below``.

        Divided by the time it took this is the corrected rate.
        """
        if not self.is_tapered:
            length = self.shape_length
            return length * math.log((above + length) / (below + length))
        return _simpson(self.area_over_wetted, below, above)

    def volume(self, above: float, below: float) -> float:
        """Volume between two water depths, per unit of bottom area."""
        return _simpson(self.area, below, above)


def _simpson(curve: Callable[[float], float], start: float, end: float) -> float:
    step = (end - start) / SIMPSON_PANELS
    total = curve(start) + curve(end)
    for index in range(1, SIMPSON_PANELS):
        total += curve(start + index * step) * (4 if index % 2 else 2)
    return total * step / 3


@record
class Hole:
    """A test hole, measured across the water.

    ``width`` is the diameter, the side, or one side of a rectangle; for a tapered hole it is the
    diameter at the bottom. ``length`` is the other side of a rectangle. A tapered hole has its
    ``top_width``, the diameter at ``taper_height`` above the bottom. Raises ValueError when a
    measurement is missing or not more than zero.
    """

    shape: HoleShape
    width: Quantity
    length: Quantity | None = None
    top_width: Quantity | None = None
    taper_height: Quantity | None = None

    def __post_init__(self) -> None:
        needed: list[Quantity | None] = [self.width]
        if self.shape is HoleShape.RECTANGULAR:
            needed.append(self.length)
        if self.shape is HoleShape.TAPERED:
            needed += [self.top_width, self.taper_height]
        for value in needed:
            if value is None:
                raise ValueError(f"A {self.shape.value} hole needs one more measurement.")
            if not 0 < magnitude(value, "in") < math.inf:
                raise ValueError("The hole must be wider than zero, so measure it again.")

    @property
    def bare(self) -> BareHole:
        """The hole in bare inches, for the arithmetic of this package."""
        given = {
            HoleShape.RECTANGULAR: (self.width, self.length),
            HoleShape.TAPERED: (self.width, self.top_width),
        }.get(self.shape, (self.width,))
        widths = tuple(magnitude(value, "in") for value in given if value is not None)
        height = 1.0 if self.taper_height is None else magnitude(self.taper_height, "in")
        return BareHole(self.shape, widths, height)

    @property
    def shape_length(self) -> Quantity:
        """Area of the bottom divided by its outline, a length: a quarter of a round hole's width.

        The one number that says how much of the water leaves by the sides.
        """
        return quantity(self.bare.shape_length, "in")


def corrected_rate(hole: Hole, above: Quantity, below: Quantity, time: Quantity) -> Quantity:
    """Return the rate through the bottom alone when water fell ``above`` to ``below`` in ``time``.

    ``above`` and ``below`` are depths of water over the bottom, ``time`` a time; the result is a
    speed. Outflow is taken in proportion to the wet area of bottom and sides, and the falling depth
    is integrated exactly (a tapered hole by Simpson's rule). Raises ValueError when the time is not
    more than zero or the water rose. Source: ``INVERSE_AUGER_HOLE``.
    """
    hours = magnitude(time, "h")
    high, low = magnitude(above, "in"), magnitude(below, "in")
    if hours <= 0:
        raise ValueError("The time between two readings must be more than zero.")
    if not 0 <= low <= high:
        raise ValueError("The water cannot rise by itself, so check the two depths.")
    return quantity(hole.bare.soaked(high, low) / hours, "in/h")
