"""Plane shapes that a roof, a patio or a lawn is made of."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TypeAlias

from interview.quantities.guards import number_of, positive
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity

Points: TypeAlias = tuple[tuple[float, float], ...]

CURVE_POINTS = 72
"""Straight pieces a full circle is drawn with."""
_FLAT = 1e-9
"""Part of a length under which what is left of it, or its height, is what floats leave over."""
_MORE = "Each measure must be more than zero."


@record
class Shape:
    """A plane shape given by lengths, each more than zero."""

    def __post_init__(self) -> None:
        self._area([positive(length, "ft", _MORE) for length in self.lengths])

    @property
    def lengths(self) -> tuple[Quantity, ...]:
        """The measured lengths, in the order of the fields."""
        raise NotImplementedError

    def _area(self, lengths: Sequence[float]) -> float:
        raise NotImplementedError

    def _points(self) -> Sequence[tuple[float, float]]:
        raise NotImplementedError

    def _feet(self) -> list[float]:
        return [magnitude(length, "ft") for length in self.lengths]

    @property
    def area(self) -> Quantity:
        """Plane area, more than zero."""
        return quantity(self._area(self._feet()), "ft**2")

    @property
    def elasticities(self) -> tuple[float, ...]:
        """Relative change of the area for a relative change of each length."""
        feet = self._feet()
        area = self._area(feet)
        found = []
        for place, length in enumerate(feet):
            # Far above the last digit of a float, far below what bends the area's curve.
            step = 1e-6 * length
            above = self._moved(feet, place, step)
            below = self._moved(feet, place, -step)
            found.append((above - below) / (2e-6 * area))
        return tuple(found)

    def _moved(self, feet: Sequence[float], place: int, step: float) -> float:
        changed = list(feet)
        changed[place] += step
        try:
            return self._area(changed)
        except ValueError:
            return self._area(feet)

    def outline(self, unit: str) -> Points:
        """Return the corners for a drawing, in ``unit``; the first is not repeated at the end."""
        factor = magnitude(quantity(1.0, "ft"), unit)
        return tuple((x * factor, y * factor) for x, y in self._points())


@record
class Rectangle(Shape):
    """A rectangle."""

    length: Quantity
    width: Quantity

    @property
    def lengths(self) -> tuple[Quantity, ...]:
        return (self.length, self.width)

    def _area(self, lengths: Sequence[float]) -> float:
        return lengths[0] * lengths[1]

    def _points(self) -> Sequence[tuple[float, float]]:
        a, b = self._feet()
        return [(0, 0), (a, 0), (a, b), (0, b)]


@record
class Triangle(Shape):
    """A triangle by its base and its height square to the base; drawn with even sides."""

    base: Quantity
    height: Quantity

    @property
    def lengths(self) -> tuple[Quantity, ...]:
        return (self.base, self.height)

    def _area(self, lengths: Sequence[float]) -> float:
        return lengths[0] * lengths[1] / 2

    def _points(self) -> Sequence[tuple[float, float]]:
        base, height = self._feet()
        return [(0, 0), (base, 0), (base / 2, height)]


class RightTriangle(Triangle):
    """A triangle with a square corner between its base and its height."""

    def _points(self) -> Sequence[tuple[float, float]]:
        base, height = self._feet()
        return [(0, 0), (base, 0), (0, height)]


@record
class ThreeSides(Shape):
    """A triangle by its three sides; area by Heron's formula."""

    a: Quantity
    b: Quantity
    c: Quantity

    @property
    def lengths(self) -> tuple[Quantity, ...]:
        return (self.a, self.b, self.c)

    def _area(self, lengths: Sequence[float]) -> float:
        # Kahan's arrangement keeps a needle-thin triangle exact.
        c, b, a = sorted(lengths)
        if c - (a - b) <= _FLAT * a:
            raise ValueError(
                "These three sides make no triangle: the longest must be shorter than the other"
                " two together, so measure again."
            )
        return math.sqrt((a + (b + c)) * (c - (a - b)) * (c + (a - b)) * (a + (b - c))) / 4

    def _points(self) -> Sequence[tuple[float, float]]:
        a, b, c = self._feet()
        x = (a * a + b * b - c * c) / (2 * a)
        return [(0, 0), (a, 0), (x, 2 * self._area([a, b, c]) / a)]


@record
class Trapezoid(Shape):
    """Two parallel sides and the distance between them; drawn with even slants."""

    long_side: Quantity
    short_side: Quantity
    height: Quantity

    def __post_init__(self) -> None:
        sentence = "A trapezoid needs two parallel sides and the distance between, above zero."
        for length in self.lengths:
            positive(length, "ft", sentence)

    @property
    def lengths(self) -> tuple[Quantity, ...]:
        return (self.long_side, self.short_side, self.height)

    def _area(self, lengths: Sequence[float]) -> float:
        return (lengths[0] + lengths[1]) / 2 * lengths[2]

    def _points(self) -> Sequence[tuple[float, float]]:
        a, b, height = self._feet()
        inset = (a - b) / 2
        return [(0, 0), (a, 0), (a - inset, height), (inset, height)]


@record
class TrapezoidSides(Shape):
    """A trapezoid by its four sides: the two parallel ones, then the two slanted ones."""

    long_side: Quantity
    short_side: Quantity
    slant: Quantity
    other_slant: Quantity

    @property
    def lengths(self) -> tuple[Quantity, ...]:
        return (self.long_side, self.short_side, self.slant, self.other_slant)

    def _corner(self, lengths: Sequence[float]) -> tuple[float, float]:
        """Where the short side starts: the slants make a triangle with what is left of the long."""
        a, b, c, d = lengths
        left = a - b
        if abs(left) <= _FLAT * a:
            raise ValueError(
                "With both parallel sides of one length the slanted ones do not say how far"
                " apart they are: write a trapezoid with the distance between."
            )
        along = (left * left + c * c - d * d) / (2 * left)
        square = c * c - along * along
        if square <= _FLAT * c * c:
            raise ValueError(
                "These four sides make no trapezoid: the slanted sides do not meet the parallel"
                " ones, so measure again."
            )
        return along, math.sqrt(square)

    def _area(self, lengths: Sequence[float]) -> float:
        return (lengths[0] + lengths[1]) / 2 * self._corner(lengths)[1]

    def _points(self) -> Sequence[tuple[float, float]]:
        feet = self._feet()
        x, height = self._corner(feet)
        return [(0, 0), (feet[0], 0), (x + feet[1], height), (x, height)]


@record
class CirclePart(Shape):
    """A part of a circle like a slice of pie, by the diameter and the angle at the middle."""

    diameter: Quantity
    angle: Quantity

    def __post_init__(self) -> None:
        super().__post_init__()
        degrees = number_of(self.angle, "degree", "Give the angle in degrees.")
        if not 0 < degrees <= 360:
            raise ValueError("The angle of a part of a circle must be from 0 to 360 degrees.")

    @property
    def lengths(self) -> tuple[Quantity, ...]:
        return (self.diameter,)

    def _area(self, lengths: Sequence[float]) -> float:
        return math.pi * lengths[0] ** 2 / 4 * magnitude(self.angle, "degree") / 360

    def _points(self) -> Sequence[tuple[float, float]]:
        radius = self._feet()[0] / 2
        degrees = magnitude(self.angle, "degree")
        steps = max(3, math.ceil(CURVE_POINTS * degrees / 360))
        whole = degrees >= 360
        turns = [math.radians(degrees) * i / steps for i in range(steps + (0 if whole else 1))]
        rim = [(radius * math.cos(turn), radius * math.sin(turn)) for turn in turns]
        return rim if whole else [(0.0, 0.0), *rim]


def circle(diameter: Quantity) -> CirclePart:
    """Return a whole circle of ``diameter``, a length above zero."""
    return CirclePart(diameter, quantity(360.0, "degree"))


def half_circle(diameter: Quantity) -> CirclePart:
    """Return half a circle of ``diameter``, a length above zero, cut along it."""
    return CirclePart(diameter, quantity(180.0, "degree"))
