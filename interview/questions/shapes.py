"""Pieces as they are written, turned into pieces that can be reckoned with."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from interview.calc import outlines, shapes
from interview.calc.pacing import Pace, paced
from interview.calc.pieces import Piece, SideError, plan_area, side_error, taped
from interview.calc.shapes import Shape
from interview.piece_lines import PieceLine
from interview.units import Quantity, quantity


def shape_of(name: str, sides: Sequence[Quantity]) -> Shape:
    """Return the shape called ``name``; raises ``ValueError`` where it cannot be built."""
    match name:
        case "rectangle":
            return shapes.Rectangle(sides[0], sides[1])
        case "triangle":
            return shapes.Triangle(sides[0], sides[1])
        case "three sides":
            return shapes.ThreeSides(sides[0], sides[1], sides[2])
        case "trapezoid":
            long_side, short_side = sorted(sides[:2], reverse=True)
            return shapes.Trapezoid(long_side, short_side, sides[2])
        case "circle":
            return shapes.circle(sides[0])
        case "half circle":
            return shapes.half_circle(sides[0])
        case "quarter circle":
            return shapes.CirclePart(2 * sides[0], quantity(90.0, "degree"))
        case _:
            return outlines.Offsets(sides[0], tuple(sides[1:]))


def piece_of(line: PieceLine, pace_for: Callable[[str], Pace] | None = None) -> Piece:
    """Return the piece of one written line, with its errors where ``pace_for`` is given."""
    shape = shape_of(line.shape, [side.length for side in line.sides])
    errors: tuple[SideError, ...] = ()
    if pace_for is not None:
        errors = tuple(
            taped() if side.paces is None else side_error(paced(side.paces, pace_for(side.walker)))
            for side in line.sides
        )
    return Piece(shape, line.cut, line.count, errors)


def check_pieces(lines: Sequence[PieceLine]) -> None:
    """Raise ``ValueError`` where the pieces cannot be built or more is cut out than there is."""
    pieces = [piece_of(line) for line in lines]
    for piece in pieces:
        _ = piece.area
    if any(piece.cut for piece in pieces):
        plan_area(pieces)
