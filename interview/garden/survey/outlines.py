"""Outlines of any form: by offsets from a line, or by walking round the sides."""

from __future__ import annotations

import math
import operator
from collections.abc import Sequence
from itertools import accumulate
from typing import TypeAlias

from interview.garden.survey.rings import shoelace, sides_of
from interview.garden.survey.shapes import Shape
from interview.quantities.guards import number_of, positive
from interview.quantities.records import record
from interview.quantities.spread import COVERAGE, TAPE_ERROR_IN
from interview.quantities.units import Quantity, magnitude

TURN_ERROR_DEGREES = 2.0
"""Standard error of a turn judged by eye or by a square corner: a choice of this project."""


@record
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
        weights = (0.5, *[1.0] * (len(feet) - 2), 0.5)
        area = self._area([spacing, *feet])
        return (1.0, *(spacing * part / area for part in map(operator.mul, weights, feet)))

    def _points(self) -> Sequence[tuple[float, float]]:
        spacing, *feet = self._feet()
        far = [(spacing * place, offset) for place, offset in enumerate(feet)]
        # An end offset of zero is a corner already on the line.
        far = far[1:] if feet[0] == 0 else far
        far = far[:-1] if feet[-1] == 0 else far
        return [(0.0, 0.0), (spacing * (len(feet) - 1), 0.0), *reversed(far)]


@record
class SidesRound(Shape):
    """Any outline by walking round it: each side, and the turn to the next one.

    ``turns`` has one angle less than ``sides``; a left turn is more than zero, a right turn less.
    ``errors`` are the standard errors of the sides, all by tape when empty. A gap at the end that
    these and the turns explain is shared out along the sides, as surveyors do by the compass rule;
    a wider one is refused.
    """

    sides: tuple[Quantity, ...]
    turns: tuple[Quantity, ...]
    errors: tuple[Quantity, ...] = ()

    def __post_init__(self) -> None:
        if len(self.sides) < 3 or len(self.turns) != len(self.sides) - 1:
            raise ValueError("Give three or more sides, and the turn between each two of them.")
        if self.errors and len(self.errors) != len(self.sides):
            raise ValueError("Each side needs its own error, or none.")
        super().__post_init__()
        feet = self._feet()
        way = math.fsum(feet)
        x, y = self._walked(feet)[-1]
        gap = math.hypot(x, y)
        if gap > self._gap_allowed(feet):
            raise ValueError(
                "These sides do not come back to where they started, by"
                f" {100 * gap / way:.0f} % of the way round: check the lengths and turns."
            )
        points = self._closed(feet)
        # What floats leave over of a corner is no crossing, and of a line no area.
        if _crosses(points, 1e-9 * way) or abs(shoelace(points)) <= 1e-9 * way * way:
            raise ValueError("These sides cross each other: check the lengths and the turns.")

    @property
    def lengths(self) -> tuple[Quantity, ...]:
        return self.sides

    def _gap_allowed(self, feet: Sequence[float]) -> float:
        """Return two standard errors of where the walk ends, in feet."""
        points = self._walked(feet)
        own = [magnitude(error, "ft") for error in self.errors] or [TAPE_ERROR_IN / 12] * len(feet)
        # A turn that is off swings all that follows it: by its distance from the end.
        swung = [math.radians(TURN_ERROR_DEGREES) * math.dist(p, points[-1]) for p in points[1:-1]]
        return COVERAGE * math.hypot(*own, *swung)

    def _walked(self, feet: Sequence[float]) -> list[tuple[float, float]]:
        x, y = 0.0, 0.0
        points = [(x, y)]
        turns = (math.radians(magnitude(turn, "degree")) for turn in self.turns)
        for length, heading in zip(feet, accumulate(turns, initial=0.0), strict=True):
            x += length * math.cos(heading)
            y += length * math.sin(heading)
            points.append((x, y))
        return points

    def _closed(self, feet: Sequence[float]) -> list[tuple[float, float]]:
        *points, (x, y) = self._walked(feet)
        parts = [gone / math.fsum(feet) for gone in accumulate(feet[:-1], initial=0.0)]
        return [(a - x * part, b - y * part) for (a, b), part in zip(points, parts, strict=True)]

    def _area(self, lengths: Sequence[float]) -> float:
        return abs(shoelace(self._closed(lengths)))

    def _points(self) -> Sequence[tuple[float, float]]:
        return self._closed(self._feet())


def _crosses(points: Sequence[tuple[float, float]], near: float) -> bool:
    """Tell whether two sides that do not follow each other cross or touch."""
    around = list(sides_of(points))
    for i, first in enumerate(around):
        for j in range(i + 2, len(around)):
            if (i, j) != (0, len(around) - 1) and _meet(first, around[j], near):
                return True
    return False


_Segment: TypeAlias = tuple[tuple[float, float], tuple[float, float]]


def _meet(a: _Segment, b: _Segment, near: float) -> bool:
    def side(s: _Segment, p: tuple[float, float]) -> float:
        (x0, y0), (x1, y1) = s
        return (x1 - x0) * (p[1] - y0) - (y1 - y0) * (p[0] - x0)

    if side(a, b[0]) * side(a, b[1]) < 0 and side(b, a[0]) * side(b, a[1]) < 0:
        return True
    ends = [(a, point) for point in b] + [(b, point) for point in a]
    return any(_distance(segment, point) <= near for segment, point in ends)


def _distance(s: _Segment, p: tuple[float, float]) -> float:
    (x0, y0), (x1, y1) = s
    dx, dy = x1 - x0, y1 - y0
    along = ((p[0] - x0) * dx + (p[1] - y0) * dy) / (dx * dx + dy * dy or 1.0)
    along = min(1.0, max(0.0, along))
    return math.dist(p, (x0 + along * dx, y0 + along * dy))
