"""How the area and the water of a pond grow with its depth: the stage-area curve."""

from __future__ import annotations

import math

from interview.quantities.guards import not_negative, positive
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity

SQUARE_CORNERS = 4.0
ROUND_CORNERS = math.pi
"""What the corners of an outline add as it grows outward evenly, over the growth squared.

A square corner adds a square: 4 together. A round one adds a part of a circle, and all of them
together a whole one: pi (Steiner's formula, exact for every outline without a corner).
"""


@record
class StageCurve:
    """A level floor with sides of one slope all round, by the numbers its curve needs.

    ``floor_area`` and ``floor_perimeter`` are those of the floor's outline, ``corners`` is what its
    corners add, ``side_slope`` the run over the rise, and ``depth`` the full pond. A pond of depth
    h covers A(h) = floor area + perimeter x (slope h) + corners x (slope h)^2, exactly while
    the outline can grow so. Raises ValueError for an area, outline or depth that is not more than
    zero, or a slope or corners below zero.
    """

    floor_area: Quantity
    floor_perimeter: Quantity
    corners: float
    side_slope: float
    depth: Quantity

    def __post_init__(self) -> None:
        positive(self.floor_area, "ft**2", "The floor of the garden must have an area.")
        positive(self.floor_perimeter, "ft", "The floor of the garden must have an outline.")
        positive(self.depth, "ft", "The pond must be deeper than zero.")
        if not (0 <= self.side_slope < math.inf and 0 <= self.corners < math.inf):
            raise ValueError("The sides cannot lean inward, so use a slope of zero or more.")

    def area_at(self, height: Quantity) -> Quantity:
        """Area that a pond of this depth covers; raises ValueError below the floor."""
        h = not_negative(height, "ft", "A height over the floor cannot be below zero.")
        floor, widening, bend = self.terms
        return quantity(floor + h * (widening + h * bend), "ft**2")

    def volume_to(self, height: Quantity) -> Quantity:
        """Water held by a pond of this depth, the area summed; raises ValueError as above."""
        h = not_negative(height, "ft", "A height over the floor cannot be below zero.")
        floor, widening, bend = self.terms
        return quantity(h * (floor + h * (widening / 2 + h * bend / 3)), "ft**3")

    @property
    def volume(self) -> Quantity:
        """Water held by the full pond."""
        return self.volume_to(self.depth)

    @property
    def terms(self) -> tuple[float, float, float]:
        """The area in bare square feet for a depth in feet: constant, linear and square term."""
        z = self.side_slope
        outline = magnitude(self.floor_perimeter, "ft")
        return magnitude(self.floor_area, "ft**2"), outline * z, self.corners * z**2
