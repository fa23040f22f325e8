"""The measures of a piece, written at the sides they belong to."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from interview.drawing.scene import XY, Hatch, Label, LabelSpot, Path, Shape, Stroke, inside
from interview.garden.survey.outlines import Offsets, SidesRound
from interview.garden.survey.piece_layout import Spot
from interview.garden.survey.pieces import Piece
from interview.garden.survey.shapes import (
    CirclePart,
    Rectangle,
    RightTriangle,
    ThreeSides,
    Trapezoid,
    TrapezoidSides,
)
from interview.garden.survey.shapes import Triangle as AnyTriangle
from interview.quantities.shown import length_words
from interview.quantities.units import Quantity, magnitude, plain_number


def measures(piece: Piece, metric: bool) -> str:
    """Return the shape and measures of a piece in words."""
    sizes = [length_words(length, metric) for length in piece.shape.lengths]
    match piece.shape:
        case Rectangle():
            words = f"rectangle {sizes[0]} × {sizes[1]}"
        case AnyTriangle():
            words = f"triangle, base {sizes[0]}, height {sizes[1]}"
        case ThreeSides():
            words = f"triangle, sides {', '.join(sizes)}"
        case Trapezoid():
            words = f"trapezoid {sizes[0]} and {sizes[1]}, {sizes[2]} apart"
        case TrapezoidSides():
            words = f"trapezoid {sizes[0]} and {sizes[1]}, slants {sizes[2]} and {sizes[3]}"
        case CirclePart(angle=angle):
            words = f"{_round(magnitude(angle, 'degree'))} {sizes[0]} across"
        case Offsets():
            words = f"outline by offsets every {sizes[0]}: {', '.join(sizes[1:])}"
        case _:
            words = f"outline of sides {', '.join(sizes)}"
    return words if piece.count == 1 else f"{words}, {piece.count} times"


def _round(degrees: float) -> str:
    names = {360.0: "circle", 180.0: "half circle", 90.0: "quarter circle"}
    return names.get(degrees, f"{plain_number(degrees)} degrees of a circle")


def side_shapes(spot: Spot, metric: bool, others: Sequence[Spot] = ()) -> Iterator[Shape]:
    """Yield the texts at the sides of a piece, and the dashed lines of inner measures.

    Of two like sides the one that does not lie against one of ``others`` is written at.
    """
    sizes = [length_words(length, metric) for length in spot.piece.shape.lengths]
    corners = spot.outline
    match spot.piece.shape:
        case Rectangle():
            yield _at_side(spot, _clear(spot, (0, 2), others), sizes[0])
            yield _at_side(spot, _clear(spot, (1, 3), others), sizes[1])
        case RightTriangle():
            yield _at_side(spot, 0, sizes[0])
            yield _at_side(spot, 2, sizes[1])
        case AnyTriangle():
            yield _at_side(spot, 0, sizes[0])
            yield from _inner(spot, (corners[2][0], 0.0), corners[2], sizes[1])
        case ThreeSides():
            # The outline runs a, c, b.
            for side, size in zip((0, 2, 1), sizes, strict=True):
                yield _at_side(spot, side, size)
        case Trapezoid():
            yield _at_side(spot, 0, sizes[0])
            yield _at_side(spot, 2, sizes[1])
            middle = (corners[2][0] + corners[3][0]) / 2
            yield from _inner(spot, (middle, 0.0), (middle, corners[2][1]), sizes[2])
        case TrapezoidSides():
            # The outline runs along the long side, up one slant, back, and down the other.
            for side, size in zip((0, 2, 3, 1), sizes, strict=True):
                yield _at_side(spot, side, size)
        case CirclePart(angle=angle):
            yield from _circle(spot, magnitude(angle, "degree"), sizes[0], metric)
        case Offsets():
            yield from _offsets(spot, sizes)
        case SidesRound():
            for side, size in enumerate(sizes):
                yield _at_side(spot, side, size)


_NEXT_TO = 0.05
"""How far outside a side is looked for a neighbour, as a part of the piece."""


def _clear(spot: Spot, sides: tuple[int, int], others: Sequence[Spot]) -> int:
    """Return the first of two sides with nothing against it, or the first."""
    left, bottom, right, top = spot.box
    far = _NEXT_TO * max(right - left, top - bottom)
    for side in sides:
        (x, y), (dx, dy) = _middle_and_out(spot, side)
        size = math.hypot(dx, dy) or 1.0
        point = (x + far * dx / size, y + far * dy / size)
        if not any(inside(point, other.corners) for other in others):
            return side
    return sides[0]


def _middle_and_out(spot: Spot, side: int) -> tuple[XY, XY]:
    """Return the middle of a side and the direction that leads out of the piece there."""
    corners = spot.corners
    (x0, y0), (x1, y1) = corners[side], corners[(side + 1) % len(corners)]
    left_turning = sum(a * d - b * c for (a, b), (c, d) in pairwise([*corners, corners[0]])) > 0
    out = (y1 - y0, x0 - x1) if left_turning else (y0 - y1, x1 - x0)
    return ((x0 + x1) / 2, (y0 + y1) / 2), out


def _at_side(spot: Spot, side: int, text: str) -> Label:
    """Write ``text`` outside the middle of a side."""
    middle, out = _middle_and_out(spot, side)
    return Label(text, *middle, _toward(out))


def _toward(out: XY) -> LabelSpot:
    if abs(out[0]) >= abs(out[1]):
        return LabelSpot.RIGHT if out[0] > 0 else LabelSpot.LEFT
    return LabelSpot.ABOVE if out[1] > 0 else LabelSpot.BELOW


def _inner(spot: Spot, start: XY, end: XY, text: str) -> Iterator[Shape]:
    a, b = spot.at(start), spot.at(end)
    yield Path((a, b), Stroke.DASHED)
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    yield Label(text, *middle, LabelSpot.RIGHT, within=spot.box, on_hatch=Hatch.DRAINS)


def _circle(spot: Spot, degrees: float, size: str, metric: bool) -> Iterator[Shape]:
    radius = math.hypot(*spot.outline[1 if degrees < 360 else 0])
    if degrees >= 180:
        a, b = spot.at((-radius, 0.0)), spot.at((radius, 0.0))
        middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
        if degrees > 180:
            yield Path((a, b), Stroke.DASHED)
        whole = degrees > 180
        box = spot.box if whole else None
        yield Label(f"{size} across", *middle, LabelSpot.BELOW, within=box, on_hatch=Hatch.DRAINS)
        return
    half = _half(spot.piece.shape.lengths[0])
    yield _at_side(spot, 0, f"radius {length_words(half, metric)}")


def _half(value: Quantity) -> Quantity:
    half: Quantity = value / 2
    return half


def _offsets(spot: Spot, sizes: list[str]) -> Iterator[Shape]:
    shape = spot.piece.shape
    base = spot.outline[1][0]
    steps = len(sizes) - 2
    corners = dict.fromkeys(spot.outline[2:])
    for place, (size, length) in enumerate(zip(sizes[1:], shape.lengths[1:], strict=True)):
        x = base * place / steps
        tall = next((y for px, y in corners if abs(px - x) < 1e-9 * max(base, 1.0)), 0.0)
        a, b = spot.at((x, 0.0)), spot.at((x, tall))
        if 0 < place < steps:
            yield Path((a, b), Stroke.DASHED)
        if magnitude(length, "ft") > 0:
            yield Label(size, *b, LabelSpot.ABOVE)
    first, second = spot.at((0.0, 0.0)), spot.at((base / steps, 0.0))
    middle = ((first[0] + second[0]) / 2, (first[1] + second[1]) / 2)
    yield Label(f"every {sizes[0]}", *middle, LabelSpot.BELOW)
