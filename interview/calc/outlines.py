"""Outlines of any form: by offsets from a line, or by walking round the sides."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeAlias

from interview.calc.guards import number_of, positive
from interview.calc.shapes import Shape
from interview.units import Quantity, magnitude

CLOSING_LIMIT = 0.05
"""Largest gap of sides walked round, as a part of their sum: a choice of this project."""


@dataclass(frozen=True)
class Offsets(Shape):
    """Any outline by equally spaced distances from a straight line to its far edge.

    The first and the last offset may be zero. Area by the trapezoidal rule.
    """

    spacing: Quantity
    offsets: tuple[Quantity, ...]

    def __post_init__(self) -> None:
        positive(self.spacing, "ft", "The spacing of the offsets must be more than zero.")
        sentence = "Give two or more offsets of zero or more, not all of them zero."
        feet = [number_of(offset, "ft", sentence) for offset in self.offsets]
        if len(feet) < 2 or min(feet) < 0 or max(feet) == 0:
            raise ValueError(sentence)

    @property
    def lengths(self) -> tuple[Quantity, ...]:
        return (self.spacing, *self.offsets)

    def _area(self, lengths: Sequence[float]) -> float:
        spacing, first, *rest = lengths
        return spacing * ((first + rest[-1]) / 2 + math.fsum(rest[:-1]))

    @property
    def elasticities(self) -> tuple[float, ...]:
        spacing, *feet = self._feet()
        area = self._area([spacing, *feet])
        ends = (0, len(feet) - 1)
        weights = (0.5 if place in ends else 1.0 for place in range(len(feet)))
        return (1.0, *(w * spacing * y / area for w, y in zip(weights, feet, strict=True)))

    def _points(self) -> Sequence[tuple[float, float]]:
        spacing, *feet = self._feet()
        far = [(spacing * place, offset) for place, offset in enumerate(feet)]
        # An end offset of zero is a corner already on the line.
        far = far[1:] if feet[0] == 0 else far
        far = far[:-1] if feet[-1] == 0 else far
        return [(0.0, 0.0), (spacing * (len(feet) - 1), 0.0), *reversed(far)]


@dataclass(frozen=True)
class SidesRound(Shape):
    """Any outline by walking round it: each side, and the turn to the next one.

    ``turns`` has one angle less than ``sides``; a left turn is more than zero, a right turn less.
    A small gap at the end is shared out along the sides, as surveyors do by the compass rule; a
    gap over 5 % of the way round is refused.
    """

    sides: tuple[Quantity, ...]
    turns: tuple[Quantity, ...]

    def __post_init__(self) -> None:
        if len(self.sides) < 3 or len(self.turns) != len(self.sides) - 1:
            raise ValueError("Give three or more sides, and the turn between each two of them.")
        super().__post_init__()
        way = math.fsum(self._feet())
        points = self._closed(self._feet())
        if _crosses(points) or abs(_shoelace(points)) <= 1e-9 * way * way:
            raise ValueError("These sides cross each other: check the lengths and the turns.")

    @property
    def lengths(self) -> tuple[Quantity, ...]:
        return self.sides

    def _closed(self, feet: Sequence[float]) -> list[tuple[float, float]]:
        heading, x, y = 0.0, 0.0, 0.0
        points = [(0.0, 0.0)]
        for length, turn in zip(
            feet, (*(magnitude(t, "degree") for t in self.turns), 0.0), strict=True
        ):
            x += length * math.cos(math.radians(heading))
            y += length * math.sin(math.radians(heading))
            heading += turn
            points.append((x, y))
        way = math.fsum(feet)
        if math.hypot(x, y) > CLOSING_LIMIT * way:
            raise ValueError(
                "These sides do not come back to where they started: check the lengths and turns."
            )
        gone, closed = 0.0, []
        for (px, py), length in zip(points, feet, strict=False):
            closed.append((px - x * gone / way, py - y * gone / way))
            gone += length
        return closed

    def _area(self, lengths: Sequence[float]) -> float:
        return abs(_shoelace(self._closed(lengths)))

    def _points(self) -> Sequence[tuple[float, float]]:
        return self._closed(self._feet())


def _shoelace(points: Sequence[tuple[float, float]]) -> float:
    ahead = [*points[1:], points[0]]
    return (
        math.fsum(x0 * y1 - x1 * y0 for (x0, y0), (x1, y1) in zip(points, ahead, strict=True)) / 2
    )


def _crosses(points: Sequence[tuple[float, float]]) -> bool:
    sides = list(zip(points, [*points[1:], points[0]], strict=True))
    for i, first in enumerate(sides):
        for j in range(i + 2, len(sides)):
            if (i, j) != (0, len(sides) - 1) and _cut_each_other(first, sides[j]):
                return True
    return False


_Segment: TypeAlias = tuple[tuple[float, float], tuple[float, float]]


def _cut_each_other(a: _Segment, b: _Segment) -> bool:
    def side(s: _Segment, p: tuple[float, float]) -> float:
        (x0, y0), (x1, y1) = s
        return (x1 - x0) * (p[1] - y0) - (y1 - y0) * (p[0] - x0)

    apart_a = side(a, b[0]) * side(a, b[1]) < 0
    return apart_a and side(b, a[0]) * side(b, a[1]) < 0
