"""The outline of the level floor, and every line that runs level outside it.

All in feet. ``x`` runs along the contour from the middle of the bed, ``y`` uphill from the lowest
point of the floor. A line ``q`` outside the floor is the parallel outline at that distance; its
area is ``A + P q + k q^2`` whatever the shape (Steiner's formula), with ``k`` four for square
corners and pi for every outline that closes round its corners.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import cached_property
from itertools import pairwise
from typing import NamedTuple

from interview.garden.form.choices import FloorShape
from interview.garden.pond.stage import ROUND_CORNERS, SQUARE_CORNERS
from interview.garden.survey.rings import each_once, shoelace, sides_of
from interview.quantities.records import record

ARC_STEPS = 48
"""Parts a half circle is cut into where the ground under it is summed: soil to 1 in 2000."""


class Ray(NamedTuple):
    """A direction out of the floor's edge: ``q`` outside the floor lies ``edge + q x out``.

    It stands for a strip of the sides ``width + spread q`` wide at the distance ``q``.
    """

    x: float
    y: float
    out_x: float
    out_y: float
    width: float
    spread: float

    def at(self, q: float) -> tuple[float, float]:
        """Return the point ``q`` outside the floor along this ray."""
        return self.x + q * self.out_x, self.y + q * self.out_y


class Station(NamedTuple):
    """One line of an outline measured off a string laid along the contour."""

    along: float
    """Distance along the string from its left end, looking downhill."""
    uphill: float
    """From the string to the floor's edge uphill."""
    downhill: float


@record
class Outline:
    """The outline of a floor ``length`` along the contour and ``width`` up and down the slope.

    Of a kidney both are measured along and across its middle line, which is bent to the radius
    ``bend``. An outline of one's own is ``stations``, and ``length`` and ``width`` its extent.
    Raises ValueError where the measures make no outline.
    """

    shape: FloorShape
    length: float
    width: float
    bend: float | None = None
    stations: tuple[Station, ...] = ()

    def __post_init__(self) -> None:
        if not (0 < self.length < math.inf and 0 < self.width < math.inf):
            raise ValueError("The floor of the garden must be longer and wider than zero.")
        if self.shape is FloorShape.KIDNEY and self.radius_of_bend <= self.width / 2:
            raise ValueError("A kidney cannot be bent tighter than half its width.")
        if self.shape is FloorShape.KIDNEY and self.length < self.width - 1e-9:
            raise ValueError("A kidney is longer than wide: its bent middle line lies along it.")

    @property
    def radius_of_bend(self) -> float:
        """Radius of a kidney's middle line."""
        return self.bend if self.bend is not None else usual_bend(self.length, self.width)

    @property
    def _long_axis(self) -> bool:
        return self.length >= self.width

    @property
    def end_radius(self) -> float:
        """Radius of the rounded ends."""
        return min(self.length, self.width) / 2

    @property
    def straight(self) -> float:
        """Length of the straight sides between rounded ends."""
        return abs(self.length - self.width)

    @cached_property
    def area(self) -> float:
        """Area of the floor, square feet."""
        if self.shape is FloorShape.RECTANGLE:
            return self.length * self.width
        if self.shape is FloorShape.OVAL:
            return math.pi * self.length * self.width / 4
        if self.shape is FloorShape.OWN:
            return shoelace(self._vertices)
        return 2 * self.end_radius * self.straight + math.pi * self.end_radius**2

    @cached_property
    def perimeter(self) -> float:
        """Length of the floor's edge, feet."""
        if self.shape is FloorShape.RECTANGLE:
            return 2 * (self.length + self.width)
        if self.shape is FloorShape.OVAL:
            return ellipse_perimeter(self.length / 2, self.width / 2)
        if self.shape is FloorShape.OWN:
            return sum(ray.width for ray in self.rays)
        return 2 * self.straight + 2 * math.pi * self.end_radius

    @cached_property
    def corner(self) -> float:
        """The number ``k`` of the area ``A + P q + k q^2`` at ``q`` outside the floor."""
        if self.shape is FloorShape.RECTANGLE:
            return SQUARE_CORNERS
        if self.shape is FloorShape.OWN:
            return sum(ray.spread for ray in self.rays) / 2
        return ROUND_CORNERS

    def area_at(self, q: float) -> float:
        """Area inside the line ``q`` outside the floor, square feet."""
        return self.area + self.perimeter * q + self.corner * q * q

    def scaled(self, factor: float) -> Outline:
        """Return the same outline ``factor`` times as large in every length."""
        return replace(
            self,
            length=self.length * factor,
            width=self.width * factor,
            bend=None if self.bend is None else self.bend * factor,
            stations=tuple(
                Station(one.along * factor, one.uphill * factor, one.downhill * factor)
                for one in self.stations
            ),
        )

    @cached_property
    def rays(self) -> tuple[Ray, ...]:
        """Rays all round, counterclockwise from the right, with ``y`` nought at the lowest point.

        Their widths add up to the perimeter, and half their spreads to ``corner``.
        """
        made = list(
            {
                FloorShape.RECTANGLE: self._rectangle_rays,
                FloorShape.ROUNDED: self._rounded_rays,
                FloorShape.OVAL: self._oval_rays,
                FloorShape.KIDNEY: self._kidney_rays,
                FloorShape.OWN: self._own_rays,
            }[self.shape]()
        )
        low = min(ray.y for ray in made)
        return tuple(Ray(r.x, r.y - low, r.out_x, r.out_y, r.width, r.spread) for r in made)

    @cached_property
    def rise(self) -> float:
        """Extent of the floor up the slope: of a kidney more than its width."""
        return max(ray.y for ray in self.rays)

    @cached_property
    def middle(self) -> float:
        """Height of the middle of the floor's area over its lowest point."""
        ring = self.line_at(0.0)
        moment = sum((a[0] * b[1] - b[0] * a[1]) * (a[1] + b[1]) for a, b in sides_of(ring))
        return moment / (6 * shoelace(ring))

    def line_at(self, q: float) -> list[tuple[float, float]]:
        """Return points of the line ``q`` outside the floor, in order."""
        return [ray.at(q) for ray in self.rays]

    def _rectangle_rays(self) -> Iterator[Ray]:
        a, b = self.length / 2, self.width / 2
        sides = (
            ((a, -b), (a, b), (1.0, 0.0)),
            ((a, b), (-a, b), (0.0, 1.0)),
            ((-a, b), (-a, -b), (-1.0, 0.0)),
            ((-a, -b), (a, -b), (0.0, -1.0)),
        )
        for start, end, out in sides:
            along = (-out[1], out[0])
            yield from _mitre(start, out, (-along[0], -along[1]), inward=True)
            yield from _side(start, end, out)
            yield from _mitre(end, out, along, inward=False)

    def _rounded_rays(self) -> Iterator[Ray]:
        half, radius = self.straight / 2, self.end_radius
        if self._long_axis:
            yield from _arc((half, 0), radius, -math.pi / 2, math.pi / 2)
            yield from _side((half, radius), (-half, radius), (0.0, 1.0))
            yield from _arc((-half, 0), radius, math.pi / 2, 3 * math.pi / 2)
            yield from _side((-half, -radius), (half, -radius), (0.0, -1.0))
        else:
            yield from _side((radius, -half), (radius, half), (1.0, 0.0))
            yield from _arc((0, half), radius, 0, math.pi)
            yield from _side((-radius, half), (-radius, -half), (-1.0, 0.0))
            yield from _arc((0, -half), radius, math.pi, 2 * math.pi)

    def _oval_rays(self) -> Iterator[Ray]:
        a, b = self.length / 2, self.width / 2
        steps = 2 * ARC_STEPS
        turn = 2 * math.pi / steps
        made = []
        for step in range(steps + 1):
            angle = step * turn
            # The slope of the edge decides the way out; equal steps of the angle sum exactly.
            out_x, out_y = math.cos(angle) / a, math.sin(angle) / b
            far = math.hypot(out_x, out_y)
            speed = math.hypot(a * math.sin(angle), b * math.cos(angle))
            turning = a * b / speed**2
            part = turn * (0.5 if step in (0, steps) else 1.0)
            x, y = a * math.cos(angle), b * math.sin(angle)
            made.append(Ray(x, y, out_x / far, out_y / far, speed * part, turning * part))
        yield from made

    def _kidney_rays(self) -> Iterator[Ray]:
        radius, bend = self.end_radius, self.radius_of_bend
        half = self.straight / bend / 2
        # The middle of the bend lies uphill, so that the round side is the one with the berm.
        middle = (0.0, bend * math.cos(half))
        right = (bend * math.sin(half), 0.0)
        left = (-right[0], 0.0)
        down = -math.pi / 2
        yield from _arc(right, radius, down + half, math.pi / 2 + half)
        yield from _arc(middle, bend - radius, down + half, down - half, hollow=True)
        yield from _arc(left, radius, math.pi / 2 - half, 3 * math.pi / 2 - half)
        yield from _arc(middle, bend + radius, down - half, down + half)

    @cached_property
    def _vertices(self) -> tuple[tuple[float, float], ...]:
        """Corners of an outline of one's own, counterclockwise, its middle at nought."""
        first, last = self.stations[0].along, self.stations[-1].along
        shift = (first + last) / 2
        up = [(one.along - shift, one.uphill) for one in self.stations]
        down = [(one.along - shift, -one.downhill) for one in self.stations]
        # Two stations may meet at one corner.
        return each_once(down + up[::-1])

    def _own_rays(self) -> Iterator[Ray]:
        ring = self._vertices
        count = len(ring)
        for place in range(count):
            before, start, end = ring[place - 1], ring[place], ring[(place + 1) % count]
            first, second = _outward(before, start), _outward(start, end)
            yield from _corner(start, first, second)
            yield from _side(start, end, second)


def own_outline(stations: Sequence[Station]) -> Outline:
    """Return the outline through ``stations``, in order along the string, two at least.

    Chords join them, so a round edge comes out a little small: by 3.5 % of its volume with
    stations 2 ft apart on a bed 15 ft long, by 0.6 % with stations 6 in apart. In a hollow far
    narrower than the sides around it the sides meet: the full pond is right to 0.1 %, the rim on
    steep ground small, by 9 % with a hollow 2 ft deep and 4 ft wide under a cut 18 ft wide. Raises
    ValueError where they are not in order or hold no area.
    """
    if len(stations) < 2 or any(b.along <= a.along for a, b in pairwise(stations)):
        raise ValueError("Give two stations or more, each farther along the string.")
    if any(one.uphill + one.downhill < 0 for one in stations):
        raise ValueError("The edge uphill cannot lie below the edge downhill.")
    long = stations[-1].along - stations[0].along
    wide = max(one.uphill for one in stations) + max(one.downhill for one in stations)
    # So that a line without any width is refused below, for its area.
    made = Outline(FloorShape.OWN, long, max(wide, 1e-9), None, tuple(stations))
    if made.area <= 0:
        raise ValueError("These stations hold no area.")
    return made


def usual_bend(length: float, width: float) -> float:
    """Return the radius of a kidney's middle line: two thirds of the bed's length.

    A choice of ours: a bend that a garden hose takes and that leaves the hollow side open, so
    never under 1.2 widths.
    """
    return max(length * 2 / 3, width * 1.2)


def ellipse_perimeter(a: float, b: float) -> float:
    """Return the perimeter of an ellipse of half axes ``a`` and ``b``, in their unit.

    The trapezoidal sum of a smooth periodic function converges at once: exact to twelve digits
    here.
    """
    steps = 512
    turn = 2 * math.pi / steps
    return turn * sum(
        math.hypot(a * math.sin(step * turn), b * math.cos(step * turn)) for step in range(steps)
    )


def _outward(start: tuple[float, float], end: tuple[float, float]) -> tuple[float, float]:
    run = math.dist(start, end)
    return (end[1] - start[1]) / run, -(end[0] - start[0]) / run


def _side(
    start: tuple[float, float], end: tuple[float, float], out: tuple[float, float]
) -> Iterator[Ray]:
    """Yield the rays of a straight side; one along the contour needs its two ends alone."""
    run = math.dist(start, end)
    if run < 1e-12:  # no side at all
        return
    steps = 1 if abs(start[1] - end[1]) < 1e-12 else ARC_STEPS // 2
    for step in range(steps + 1):
        part = step / steps
        x = start[0] + part * (end[0] - start[0])
        y = start[1] + part * (end[1] - start[1])
        width = run / steps * (0.5 if step in (0, steps) else 1.0)
        yield Ray(x, y, *out, width, 0.0)


def _arc(
    middle: tuple[float, float], radius: float, first: float, last: float, hollow: bool = False
) -> Iterator[Ray]:
    """Yield the rays of an arc about ``middle``; of a hollow one they run toward it."""
    steps = max(4, round(ARC_STEPS * abs(last - first) / math.pi))
    turn = abs(last - first) / steps
    sign = -1.0 if hollow else 1.0
    for step in range(steps + 1):
        angle = first + (last - first) * step / steps
        part = turn * (0.5 if step in (0, steps) else 1.0)
        out = (math.cos(angle), math.sin(angle))
        x, y = middle[0] + radius * out[0], middle[1] + radius * out[1]
        yield Ray(x, y, sign * out[0], sign * out[1], radius * part, sign * part)


def _mitre(
    corner: tuple[float, float], out: tuple[float, float], along: tuple[float, float], inward: bool
) -> Iterator[Ray]:
    """Yield the rays of half a square corner, from the side's own way out to the mitre.

    ``inward`` runs from the mitre to the side.
    """
    steps = ARC_STEPS // 6
    order = range(steps, -1, -1) if inward else range(steps + 1)
    for step in order:
        part = step / steps
        spread = 1 / steps * (0.5 if step in (0, steps) else 1.0)
        yield Ray(*corner, out[0] + part * along[0], out[1] + part * along[1], 0.0, spread)


def _corner(
    at: tuple[float, float], first: tuple[float, float], second: tuple[float, float]
) -> Iterator[Ray]:
    """Yield the rays of a corner: an arc outside a convex one, less of both sides at a hollow."""
    turn = math.atan2(
        first[0] * second[1] - first[1] * second[0], first[0] * second[0] + first[1] * second[1]
    )
    if turn > 0:
        yield from _arc(
            at, 0.0, math.atan2(first[1], first[0]), math.atan2(first[1], first[0]) + turn
        )
        return
    lost = math.tan(-turn / 2)
    steps = 4
    # Along each side, away from the hollow corner.
    for out, along in ((first, (first[1], -first[0])), (second, (-second[1], second[0]))):
        for step in range(steps):
            part = lost * (step + 0.5) / steps
            ray = (out[0] + part * along[0], out[1] + part * along[1])
            yield Ray(*at, *ray, 0.0, -lost / steps)
