"""Pieces as they are written, turned into pieces that can be reckoned with."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from interview.asking.question import Unanswered
from interview.garden.survey import outlines, shapes
from interview.garden.survey.pacing import Pace, paced
from interview.garden.survey.piece_lines import PieceLine
from interview.garden.survey.pieces import Piece, SideError, plan_area, side_error, taped
from interview.garden.survey.shapes import Shape
from interview.quantities.units import quantity

if TYPE_CHECKING:
    from interview.garden.survey.piece_layout import Placed

PaceFor = Callable[[str], tuple[str, Pace]]
"""Returns the name and the pace of the walker of that name, or of the only one."""


def shape_of(line: PieceLine, errors: Sequence[SideError] = ()) -> Shape:
    """Return the shape of one written line; raises ``ValueError`` where it cannot be built."""
    sides = [side.length for side in line.sides]
    match line.shape:
        case "rectangle":
            return shapes.Rectangle(sides[0], sides[1])
        case "triangle":
            return shapes.Triangle(sides[0], sides[1])
        case "three sides":
            return shapes.ThreeSides(sides[0], sides[1], sides[2])
        case "trapezoid":
            return shapes.Trapezoid(sides[0], sides[1], sides[2])
        case "trapezoid sides":
            return shapes.TrapezoidSides(sides[0], sides[1], sides[2], sides[3])
        case "circle":
            return shapes.circle(sides[0])
        case "half circle":
            return shapes.half_circle(sides[0])
        case "quarter circle":
            return shapes.CirclePart(2 * sides[0], quantity(90.0, "degree"))
        case "circle part":
            return shapes.CirclePart(sides[0], quantity(line.angle, "degree"))
        case "round":
            turns = tuple(quantity(turn, "degree") for turn in line.turns)
            return outlines.SidesRound(tuple(sides), turns, tuple(one.own for one in errors))
        case _:
            return outlines.Offsets(sides[0], tuple(sides[1:]))


def piece_of(line: PieceLine, pace_for: PaceFor | None = None) -> Piece:
    """Return the piece of one written line, with its errors where ``pace_for`` is given."""
    errors: tuple[SideError, ...] = ()
    if pace_for is not None:
        found = []
        for side in line.sides:
            if side.paces is None:
                found.append(taped())
            else:
                walker, pace = pace_for(side.walker)
                found.append(side_error(paced(side.paces, pace), walker))
        errors = tuple(found)
    shape = shape_of(line, errors)
    if line.shape == "quarter circle":
        # The radius is measured, and the piece goes by its diameter: twice the error.
        errors = tuple(SideError(2 * one.own, one.paced, one.walker) for one in errors)
    return Piece(shape, line.cut, line.count, errors)


def drawn_piece(line: PieceLine) -> Piece | Placed:
    """Return the piece of one written line, where it was put if it was."""
    piece = piece_of(line)
    if line.at is None:
        return piece
    from interview.garden.survey.piece_layout import Placed  # drawn, and not reckoned with

    return Placed(piece, line.at[0], line.at[1], line.turned)


def check_pieces(lines: Sequence[PieceLine], pace_for: PaceFor | None = None) -> None:
    """Raise ``ValueError`` where the pieces cannot be built or more is cut out than there is."""
    try:
        pieces = [piece_of(line, pace_for) for line in lines]
    except Unanswered:
        pieces = [piece_of(line) for line in lines]
    for piece in pieces:
        _ = piece.area
    if any(piece.cut for piece in pieces):
        plan_area(pieces)


def biggest_cut(lines: Sequence[PieceLine]) -> int | None:
    """Return the place, from 1, of a cut-out larger than every single piece; else nothing."""
    pieces = [piece_of(line) for line in lines]
    largest = max((piece.shape.area for piece in pieces if not piece.cut), default=None)
    for place, piece in enumerate(pieces, 1):
        if piece.cut and largest is not None and piece.shape.area > largest:
            return place
    return None
