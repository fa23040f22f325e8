"""The surfaces that drain to the garden, and how sure their sum is."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from interview.calc.guards import positive, times, within
from interview.calc.pacing import Pace
from interview.calc.pieces import Piece, own_error, pace_slope, plan_area
from interview.calc.spread import COVERAGE, biggest, combine
from interview.evidence import OURS, Finding, Grade
from interview.units import Quantity, magnitude, quantity, ratio

SHARE_MEASURED_ERROR = 0.05
SHARE_GUESSED_ERROR = 0.15
"""Relative standard errors of a share: choices of this project."""
FOOTPRINT_LIMIT = 0.6
"""A single downspout seldom takes more of the house than this: a choice of this project."""
CALIBRATION = "the length of your pace"


@dataclass(frozen=True)
class Share:
    """The part of a surface that drains here, and its relative standard error."""

    part: float
    error: float

    def __post_init__(self) -> None:
        if not (0 <= self.part <= 1 and 0 <= self.error < 1):
            raise ValueError("The share that drains here must be from 0 to 1.")


WHOLE = Share(1.0, 0.0)


def share_of_gutter(parts: Sequence[Quantity], whole: Quantity) -> Share:
    """Return the share of a gutter whose high point is known.

    ``parts`` are the lengths of gutter that fall to this downspout. Raises ValueError when they
    are together longer than the whole gutter.
    """
    run = positive(whole, "ft", "The whole gutter must be longer than zero.")
    sentence = "Each part of the gutter must be longer than zero."
    mine = math.fsum(positive(part, "ft", sentence) for part in parts)
    if not within(mine, run):
        raise ValueError("The part of the gutter cannot be longer than the whole gutter.")
    if within(run, mine):
        return WHOLE
    return Share(mine / run, SHARE_MEASURED_ERROR)


def equal_share(outlets: int) -> Share:
    """Return the share of one of several downspouts when the high point is not known."""
    if outlets < 1:
        raise ValueError("A gutter has at least one downspout.")
    return WHOLE if outlets == 1 else Share(1 / outlets, SHARE_GUESSED_ERROR)


@dataclass(frozen=True)
class Surface:
    """A surface that sheds rain toward the garden."""

    name: str
    kind: str
    coefficient: float
    """Part of the rain that runs off, from 0 to 1."""
    pieces: tuple[Piece, ...] = ()
    plan: Quantity | None = None
    """Plan area when it is known without pieces."""
    share: Share = WHOLE
    coefficient_error: float = 0.0
    """Relative standard error of the coefficient."""
    plan_error: float = 0.0
    """Relative standard error of ``plan``."""

    def __post_init__(self) -> None:
        if not 0 <= self.coefficient <= 1:
            raise ValueError("The part of the rain that runs off must be from 0 to 1.")
        if bool(self.pieces) == (self.plan is not None):
            raise ValueError("Give the surface either its pieces or its area.")

    @property
    def area(self) -> Quantity:
        """Plan area of the whole surface; raises ValueError as ``plan_area`` does."""
        if self.plan is None:
            return plan_area(self.pieces)
        positive(self.plan, "ft**2", "The area of the surface must be more than zero.")
        return self.plan

    @property
    def own_error(self) -> Quantity:
        """Standard error of the area, without the pace calibration."""
        return own_error(self.pieces) if self.plan is None else times(self.plan, self.plan_error)


@dataclass(frozen=True)
class SurfaceArea:
    """What one surface adds to the catchment."""

    name: str
    plan: Quantity
    share: float
    drains_here: Quantity
    """Plan area times share."""
    weighted: Quantity
    """Plan area times share times the part of the rain that runs off."""


@dataclass(frozen=True)
class Catchment:
    """The area that drains to the garden."""

    surfaces: tuple[SurfaceArea, ...]
    drains_here: Quantity
    weighted: Quantity
    """The sum of area times share times coefficient: what rain is multiplied by."""
    standard_error: Quantity
    """Standard error of ``weighted``."""
    shares: Mapping[str, float]
    """Share of the variance by input."""
    driver: str | None
    """The input that widens the range most: measure it again to narrow the range."""

    @property
    def relative_error(self) -> float:
        """Standard error as a part of the weighted area."""
        return (
            ratio(self.standard_error, self.weighted) if magnitude(self.weighted, "ft**2") else 0.0
        )

    @property
    def low(self) -> Quantity:
        """Two standard errors below the weighted area, never below zero."""
        return times(self.weighted, max(0.0, 1 - COVERAGE * self.relative_error))

    @property
    def high(self) -> Quantity:
        """Two standard errors above the weighted area."""
        return times(self.weighted, 1 + COVERAGE * self.relative_error)


def catchment(surfaces: Sequence[Surface], pace: Pace | None = None) -> Catchment:
    """Return the area that drains here, to first order in its errors.

    Errors are independent, except that every paced length moves with the one pace: its effect is
    added over all pieces before it is squared. Raises ValueError for no surface at all, for two
    of one name, or for paced pieces without ``pace``.
    """
    if not surfaces:
        raise ValueError("Add at least one surface that drains to the garden.")
    if len({surface.name for surface in surfaces}) < len(surfaces):
        raise ValueError("Two surfaces have the same name: give each its own.")
    areas = tuple(_surface_area(surface) for surface in surfaces)
    parts = _error_parts(surfaces, areas)
    moved = math.fsum(
        magnitude(pace_slope(surface.pieces), "ft**2") * surface.share.part * surface.coefficient
        for surface in surfaces
    )
    if pace is None and any(error.paced for s in surfaces for p in s.pieces for error in p.errors):
        raise ValueError("Some sides are in paces: walk a known distance first.")
    if pace is not None:
        parts[CALIBRATION] = moved * pace.relative_error
    total, shares = combine(parts)
    return Catchment(
        surfaces=areas,
        drains_here=_total(area.drains_here for area in areas),
        weighted=_total(area.weighted for area in areas),
        standard_error=quantity(total, "ft**2"),
        shares=shares,
        driver=biggest(shares),
    )


def _total(areas: Iterable[Quantity]) -> Quantity:
    return quantity(math.fsum(magnitude(area, "ft**2") for area in areas), "ft**2")


def _surface_area(surface: Surface) -> SurfaceArea:
    plan = surface.area
    here = times(plan, surface.share.part)
    return SurfaceArea(
        name=surface.name,
        plan=plan,
        share=surface.share.part,
        drains_here=here,
        weighted=times(here, surface.coefficient),
    )


def _error_parts(surfaces: Sequence[Surface], areas: Sequence[SurfaceArea]) -> dict[str, float]:
    parts: dict[str, float] = {}
    for surface, area in zip(surfaces, areas, strict=True):
        weighted = magnitude(area.weighted, "ft**2")
        per_area = surface.share.part * surface.coefficient
        own = magnitude(surface.own_error, "ft**2")
        parts[f"the measures of {surface.name}"] = per_area * own
        parts[f"the share of {surface.name}"] = weighted * surface.share.error
        parts[f"the runoff of {surface.name}"] = weighted * surface.coefficient_error
    return parts


def whole_roof_finding(roof: Quantity, footprint: Quantity) -> Finding | None:
    """Return a doubt when one downspout seems to drain most of the house; else ``None``."""
    positive(footprint, "ft**2", "The footprint of the house must be more than zero.")
    part = ratio(roof, footprint)
    if within(part, FOOTPRINT_LIMIT):
        return None
    return Finding(
        key="whole_roof",
        grade=Grade.FIX,
        said=f"The roof that drains here is {100 * part:.0f} % of the house: is that all of it?",
        limit="60 % of the house for one downspout",
        source=OURS,
        change="Count only the strip from the ridge down to this gutter.",
    )
