"""Pieces added and cut out, and the plan of a sloping roof."""

from __future__ import annotations

import math
from collections.abc import Iterable
from enum import Enum
from typing import NamedTuple

from interview.garden.survey.pacing import PacedLength
from interview.garden.survey.shapes import Shape
from interview.quantities.guards import positive, times
from interview.quantities.records import record
from interview.quantities.spread import TAPE_ERROR_IN
from interview.quantities.units import Quantity, magnitude, quantity


class SideError(NamedTuple):
    """How far one measured length may be off."""

    own: Quantity
    """Standard error of this length alone."""
    paced: bool = False
    """Whether the length also carries the error of the pace calibration."""
    walker: str = ""
    """Whose pace it is, where several people pace."""


def taped() -> SideError:
    """Return the error of a length measured by tape."""
    return SideError(quantity(TAPE_ERROR_IN, "in"))


def side_error(length: PacedLength, walker: str = "") -> SideError:
    """Return the error of a length measured in paces by ``walker``."""
    return SideError(length.own_error, paced=True, walker=walker)


@record
class Piece:
    """One shape that is added to a surface, or cut out of it."""

    shape: Shape
    cut: bool = False
    count: int = 1
    """How many pieces like this there are."""
    errors: tuple[SideError, ...] = ()
    """One for each of ``shape.lengths``; all by tape when empty."""

    def __post_init__(self) -> None:
        if self.count < 1:
            raise ValueError("There must be at least one piece like this.")
        if self.errors and len(self.errors) != len(self.shape.lengths):
            raise ValueError("Each measure of the piece needs its own error, or none.")

    @property
    def area(self) -> Quantity:
        """Area of all pieces like this; below zero for a cut-out."""
        return times(self.shape.area, -self.count if self.cut else self.count)

    @property
    def relative_error(self) -> float:
        """Standard error of the area as a part of it, without the pace calibration."""
        terms = []
        for length, slope, error in self._sides():
            feet = magnitude(length, "ft")
            # An offset of zero is where two edges meet: it carries no area and no error.
            terms.append(slope * magnitude(error.own, "ft") / feet if feet > 0 else 0.0)
        return math.hypot(*terms)

    @property
    def pace_powers(self) -> dict[str, float]:
        """Relative change of the area for a relative change of each walker's pace."""
        powers: dict[str, float] = {}
        for _, slope, error in self._sides():
            if error.paced:
                powers[error.walker] = powers.get(error.walker, 0.0) + slope
        return powers

    def _sides(self) -> Iterable[tuple[Quantity, float, SideError]]:
        errors = self.errors or tuple(taped() for _ in self.shape.lengths)
        return zip(self.shape.lengths, self.shape.elasticities, errors, strict=True)


def plan_area(pieces: Iterable[Piece]) -> Quantity:
    """Return the area of all pieces together, cut-outs taken away.

    Raises ValueError when nothing is left: the cut-outs are as big as what they are cut from.
    """
    areas = [magnitude(piece.area, "ft**2") for piece in pieces]
    added, left = math.fsum(area for area in areas if area > 0), math.fsum(areas)
    if added == 0:
        raise ValueError("Add a piece first, then cut from it.")
    if left <= added * 1e-9:
        raise ValueError("The cut-out is as big as what it is cut from: check its measures.")
    return quantity(left, "ft**2")


def own_error(pieces: Iterable[Piece]) -> Quantity:
    """Return the standard error of the plan area, without the pace calibration."""
    parts = [magnitude(piece.area, "ft**2") * piece.relative_error for piece in pieces]
    return quantity(math.hypot(*parts), "ft**2")


def pace_slopes(pieces: Iterable[Piece]) -> dict[str, Quantity]:
    """Return the change of the plan area for a relative change of one in each walker's pace."""
    slopes: dict[str, float] = {}
    for piece in pieces:
        area = magnitude(piece.area, "ft**2")
        for walker, power in piece.pace_powers.items():
            slopes[walker] = slopes.get(walker, 0.0) + area * power
    return {walker: quantity(slope, "ft**2") for walker, slope in slopes.items()}


class PitchGiven(Enum):
    """How the steepness of a roof is given."""

    RISE_IN_12 = "rise in a level 12"
    DEGREES = "degrees"
    PERCENT = "percent"


@record
class RoofPitch:
    """The steepness of a roof, up to 24 in 12."""

    number: float
    given: PitchGiven = PitchGiven.RISE_IN_12

    def __post_init__(self) -> None:
        if not 0 <= self.number < math.inf or self.rise_per_run > 2 + 1e-9:
            raise ValueError("The roof pitch must be from 0 to 24 in 12 (0 to 63 degrees).")

    @property
    def rise_per_run(self) -> float:
        """Rise for a level run of one."""
        match self.given:
            case PitchGiven.RISE_IN_12:
                return self.number / 12
            case PitchGiven.PERCENT:
                return self.number / 100
            case PitchGiven.DEGREES:
                return math.tan(math.radians(min(self.number, 90.0)))

    @property
    def factor(self) -> float:
        """Length along the roof for a level length of one."""
        return math.hypot(1.0, self.rise_per_run)


def plan_length(slope_length: Quantity, pitch: RoofPitch) -> Quantity:
    """Return the level length under a length measured along the roof slope.

    Rain falls on the plan, so ``slope_length``, a length, is divided by the pitch factor, the
    length of slope over a level length of one. Raises ValueError where it is not more than zero.
    """
    positive(slope_length, "ft", "The length along the roof must be more than zero.")
    return times(slope_length, 1 / pitch.factor)
