"""Where each piece of a surface is drawn; the measures alone never say."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple, TypeAlias

from interview.drawing.scene import XY, extent, inside
from interview.garden.survey.pieces import Piece
from interview.garden.survey.rings import sides_of
from interview.quantities.guards import within
from interview.quantities.units import Quantity, magnitude

GAP = 0.3
"""Room between pieces, as a part of the longest of them, for the measures of their sides."""
_WIDE = 3.0
"""Width over height that the rows of pieces aim at."""
_TRIES = 9
"""Places tried each way within a piece for one that is cut out of it."""
_SHRINK = 1e-6
"""Part of a piece by which it is drawn in, so that pieces that only touch do not overlap."""
_SLACK = 0.02
"""How far pieces may lie over each other before it is told: a part of their size."""
Corners: TypeAlias = tuple[XY, ...]


class Placed(NamedTuple):
    """A piece where a person put it: ``x`` and ``y`` of its lower left, turned left by degrees."""

    piece: Piece
    x: Quantity
    y: Quantity
    turned: float = 0.0


class Spot(NamedTuple):
    """A piece on the drawing, in drawing units; the shape is turned, then moved."""

    piece: Piece
    number: int
    """Place in the list, from 1."""
    outline: Corners
    turned: float = 0.0
    moved: XY = (0.0, 0.0)
    fixed: bool = False
    host: int | None = None
    """Number of the piece that a cut-out is drawn in."""

    def at(self, point: XY) -> XY:
        """Return where a point of the shape itself falls."""
        turn = math.radians(self.turned)
        cos, sin = math.cos(turn), math.sin(turn)
        x, y = point
        return x * cos - y * sin + self.moved[0], x * sin + y * cos + self.moved[1]

    @property
    def corners(self) -> Corners:
        """The outline as it is drawn."""
        return tuple(self.at(point) for point in self.outline)

    @property
    def box(self) -> tuple[float, float, float, float]:
        """Left, bottom, right and top of the outline."""
        return extent(self.corners)

    def to(self, left: float, bottom: float) -> Spot:
        """Return the piece moved so that its lower left is there."""
        box = self.box
        moved = (self.moved[0] + left - box[0], self.moved[1] + bottom - box[1])
        return self._replace(moved=moved)


def lay_pieces(items: Sequence[Piece | Placed], unit: str) -> tuple[Spot, ...]:
    """Return every piece with its place, in the order given.

    What is ``Placed`` stays there. The rest is laid in rows, none over another; a cut-out goes into
    a piece that has room for it, the one before it first, else into the rows too.
    """
    spots = [_start(item, place, unit) for place, item in enumerate(items, 1)]
    longest = max((max(_size(spot)) for spot in spots), default=1.0)
    gap = GAP * longest
    bodies = [spot for spot in spots if not spot.piece.cut]
    laid = {spot.number: spot for spot in spots if spot.fixed}
    for spot in _rows([spot for spot in bodies if not spot.fixed], _floor_of(laid, gap), gap):
        laid[spot.number] = spot
    homeless = []
    for spot in spots:
        if spot.piece.cut and not spot.fixed:
            put = _into_host(spot, laid)
            if put is None:
                homeless.append(spot)
            else:
                laid[spot.number] = put
    for spot in _rows(homeless, _floor_of(laid, gap), gap):
        laid[spot.number] = spot
    return tuple(laid[spot.number] for spot in spots)


def _start(item: Piece | Placed, number: int, unit: str) -> Spot:
    if isinstance(item, Placed):
        spot = Spot(item.piece, number, item.piece.shape.outline(unit), item.turned, fixed=True)
        return spot.to(magnitude(item.x, unit), magnitude(item.y, unit))
    return Spot(item, number, item.shape.outline(unit)).to(0.0, 0.0)


def _size(spot: Spot) -> XY:
    left, bottom, right, top = spot.box
    return right - left, top - bottom


def _floor_of(laid: dict[int, Spot], gap: float) -> float:
    """Under what is laid already, or nought."""
    return min((spot.box[1] for spot in laid.values()), default=gap) - gap


def _rows(spots: Sequence[Spot], top: float, gap: float) -> list[Spot]:
    """Lay pieces side by side from ``top`` down, in rows of about one width."""
    if not spots:
        return []
    sizes = [_size(spot) for spot in spots]
    room = sum((wide + gap) * (high + gap) for wide, high in sizes)
    limit = max(max(wide for wide, _ in sizes), math.sqrt(room * _WIDE))
    done: list[Spot] = []
    row: list[Spot] = []
    x = 0.0
    for spot, (wide, _) in zip(spots, sizes, strict=True):
        if row and not within(x + wide, limit):
            done += _standing(row, top)
            top -= max(_size(one)[1] for one in row) + gap
            row, x = [], 0.0
        row.append(spot.to(x, 0.0))
        x += wide + gap
    return done + _standing(row, top)


def _standing(row: Sequence[Spot], top: float) -> list[Spot]:
    """Let the pieces of a row stand on one line, the highest reaching ``top``."""
    bottom = top - max(_size(one)[1] for one in row)
    return [one.to(one.box[0], bottom) for one in row]


def _into_host(cut: Spot, laid: dict[int, Spot]) -> Spot | None:
    hosts = [spot for spot in laid.values() if not spot.piece.cut]
    hosts.sort(key=lambda host: (host.number > cut.number, abs(cut.number - host.number)))
    for host in hosts:
        others = [spot for spot in laid.values() if spot.host == host.number]
        others += [spot for spot in laid.values() if spot.piece.cut and spot.fixed]
        for left, bottom in _tries(cut, host):
            put = cut.to(left, bottom)._replace(host=host.number)
            if fits_in(put.corners, host.corners) and not any(
                _touch(put.box, other.box) for other in others
            ):
                return put
    return None


def _tries(cut: Spot, host: Spot) -> list[XY]:
    """Places in the box of the host, those right of its middle first."""
    wide, high = _size(cut)
    left, bottom, right, top = host.box
    spare_x, spare_y = right - left - wide, top - bottom - high
    # A piece as large as its host fits: by the last bits of a float it may seem larger.
    slack = 1e-9 * (right - left + top - bottom)
    if spare_x < -slack or spare_y < -slack:
        return []
    parts = [step / (_TRIES - 1) for step in range(_TRIES)]
    grid = sorted((abs(p - 0.75) + abs(q - 0.5), p, q) for p in parts for q in parts)
    return [(left + p * spare_x, bottom + q * spare_y) for _, p, q in grid]


def _touch(a: tuple[float, float, float, float], b: tuple[float, float, float, float]) -> bool:
    return a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]


def fits_in(inner: Corners, outer: Corners) -> bool:
    """Tell whether one outline lies in another; touching from inside is allowed."""
    cx = sum(x for x, _ in inner) / len(inner)
    cy = sum(y for _, y in inner) / len(inner)
    small = [(x + (cx - x) * _SHRINK, y + (cy - y) * _SHRINK) for x, y in inner]
    if not all(inside(point, outer) for point in small):
        return False
    return not _sides_cross(small, outer)


def lie_over(one: Corners, other: Corners) -> bool:
    """Tell whether two outlines cover some of the same ground; touching does not count."""
    a, b = _drawn_in(one), _drawn_in(other)
    if any(inside(point, b) for point in a) or any(inside(point, a) for point in b):
        return True
    return _sides_cross(a, b)


def _sides_cross(one: Sequence[XY], other: Sequence[XY]) -> bool:
    walls = list(sides_of(other))
    return any(_cross(a, b, c, d) for a, b in sides_of(one) for c, d in walls)


def _drawn_in(corners: Corners) -> Corners:
    cx = sum(x for x, _ in corners) / len(corners)
    cy = sum(y for _, y in corners) / len(corners)
    return tuple((x + (cx - x) * _SLACK, y + (cy - y) * _SLACK) for x, y in corners)


def _cross(a: XY, b: XY, c: XY, d: XY) -> bool:
    def side(p: XY, q: XY, r: XY) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) < 0 and side(c, d, a) * side(c, d, b) < 0
