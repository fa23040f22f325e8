"""The surfaces that drain to the garden, and how sure their sum is."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence

from interview.garden.survey.pacing import Pace
from interview.garden.survey.pieces import Piece, own_error, pace_slopes, plan_area
from interview.quantities.evidence import OURS, Cited, Finding, Grade, Provenance, Source
from interview.quantities.guards import not_negative, positive, times, within
from interview.quantities.records import record
from interview.quantities.spread import COVERAGE, biggest, combine
from interview.quantities.units import Quantity, magnitude, quantity, ratio

TYPICAL_PART = Cited(
    0.25,
    Source(
        "Rain Gardens: A How-to Manual for Homeowners, GWQ037, UW-Extension and Wisconsin DNR, "
        "2003, p. 8: four downspouts, a quarter of the house each",
        Provenance.PUBLISHED,
    ),
)
"""Part of the house that one downspout usually drains."""
SHARE_MEASURED_ERROR = 0.05
SHARE_GUESSED_ERROR = 0.15
"""Relative standard errors of a share: choices of this project."""
FOOTPRINT_LIMIT = 0.6
"""A single downspout seldom takes more of the house than this: a choice of this project."""
OVERHANG_LIMIT = 1.2
"""A roof with its overhangs is seldom more of the house than this: a choice of this project."""
CALIBRATION = "the length of your pace"
BARREL_GAL = 55.0
BARREL_L = 200.0
"""What a common drum holds: common practice, no source."""


@record
class Share:
    """The part of a surface that drains here, and its relative standard error."""

    part: float
    error: float

    def __post_init__(self) -> None:
        if not (0 <= self.part <= 1 and 0 <= self.error < 1):
            raise ValueError("The share that drains here must be from 0 to 1.")


WHOLE = Share(1.0, 0.0)
ONE_SIDE = Share(0.5, SHARE_MEASURED_ERROR)
"""One of the two like sides of a roof, from the ridge to its gutter."""


def joined_share(*shares: Share) -> Share:
    """Return the share that is left when water divides several times, one after another."""
    return Share(
        math.prod(share.part for share in shares), math.hypot(*(share.error for share in shares))
    )


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


def equal_share(outlets: int, here: int = 1) -> Share:
    """Return the share of ``here`` of a gutter's ``outlets`` when no high point is known.

    Its error, ``SHARE_GUESSED_ERROR``, is that of a guess. Raises ValueError for a count below 1
    or for more downspouts here than the gutter has.
    """
    if not 1 <= here <= outlets:
        raise ValueError("No more downspouts can come here than the gutter has.")
    return WHOLE if outlets == here else Share(here / outlets, SHARE_GUESSED_ERROR)


@record
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
    level: float = 1.0
    """Level length for a length of one as measured; below 1 for pieces along a slope."""
    falls_on: str = ""
    """The name of the surface its water falls on first; ``share`` is then what falls there."""

    def __post_init__(self) -> None:
        if not 0 <= self.coefficient <= 1:
            raise ValueError("The part of the rain that runs off must be from 0 to 1.")
        if bool(self.pieces) == (self.plan is not None):
            raise ValueError("Give the surface either its pieces or its area.")
        if not 0 < self.level <= 1:
            raise ValueError("A level length is never longer than the length along the slope.")

    @property
    def area(self) -> Quantity:
        """Plan area of the whole surface; raises ValueError as ``plan_area`` does."""
        if self.plan is None:
            return times(plan_area(self.pieces), self.level)
        positive(self.plan, "ft**2", "The area of the surface must be more than zero.")
        return self.plan

    @property
    def own_error(self) -> Quantity:
        """Standard error of the area, without the pace calibration."""
        if self.plan is None:
            return times(own_error(self.pieces), self.level)
        return times(self.plan, self.plan_error)


@record
class SurfaceArea:
    """What one surface adds to the catchment."""

    name: str
    plan: Quantity
    share: float
    drains_here: Quantity
    """Plan area times share."""
    coefficient: float
    """Part of the rain that runs off."""
    weighted: Quantity
    """Plan area times share times the part of the rain that runs off."""

    def brings(self, rain: Quantity) -> Quantity:
        """Return the volume that ``rain``, a depth, sends here; raises ValueError below zero."""
        inches = not_negative(rain, "in", "The depth of rain cannot be less than zero.")
        return quantity(magnitude(self.weighted, "ft**2") * inches / 12, "ft**3")


@record
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

    def brings(self, rain: Quantity) -> Quantity:
        """Return the volume that a depth of ``rain`` sends here from all surfaces."""
        return quantity(
            math.fsum(magnitude(one.brings(rain), "ft**3") for one in self.surfaces), "ft**3"
        )

    @property
    def low(self) -> Quantity:
        """Two standard errors below the weighted area, never below zero."""
        return times(self.weighted, max(0.0, 1 - COVERAGE * self.relative_error))

    @property
    def high(self) -> Quantity:
        """Two standard errors above the weighted area."""
        return times(self.weighted, 1 + COVERAGE * self.relative_error)


def catchment(
    surfaces: Sequence[Surface], pace: Pace | Mapping[str, Pace] | None = None
) -> Catchment:
    """Return the area that drains here, to first order in its errors.

    Errors are independent, except that every length in one walker's pace moves with that pace, and
    that a surface which falls on another shares that one's share: such effects are added before
    they are squared. ``pace`` is the only pace, or each walker's by name. Raises ValueError for no
    surface at all, for two of one name, for one that falls on none of the others, or for pieces
    paced by somebody whose pace is not given.
    """
    if not surfaces:
        raise ValueError("Add at least one surface that drains to the garden.")
    if len({surface.name for surface in surfaces}) < len(surfaces):
        raise ValueError("Two surfaces have the same name: give each its own.")
    paces = {"": pace} if isinstance(pace, Pace) else dict(pace or {})
    areas, parts = [], dict[str, float]()
    for surface in surfaces:
        way = _way_down(surface, surfaces)
        areas.append(_surface_area(way))
        for name, part in _error_parts(way, areas[-1], paces):
            parts[name] = parts.get(name, 0.0) + part
    total, shares = combine(parts)
    return Catchment(
        surfaces=tuple(areas),
        drains_here=_total(area.drains_here for area in areas),
        weighted=_total(area.weighted for area in areas),
        standard_error=quantity(total, "ft**2"),
        shares=shares,
        driver=biggest(shares),
    )


def calibration_of(walker: str) -> str:
    """Return the name of the error that all lengths paced by ``walker`` share."""
    return f"the length of the pace of {walker}" if walker else CALIBRATION


def _way_down(surface: Surface, surfaces: Sequence[Surface]) -> tuple[Surface, ...]:
    """Follow the water from surface to surface down to the one it leaves from."""
    by_name = {one.name: one for one in surfaces}
    way = [surface]
    while way[-1].falls_on:
        last = way[-1]
        below = by_name.get(last.falls_on)
        if below is None:
            raise ValueError(f"{last.name} falls on {last.falls_on}, which is not listed.")
        if below in way:
            raise ValueError(f"{last.name} and {below.name} cannot each fall on the other.")
        way.append(below)
    return tuple(way)


def _total(areas: Iterable[Quantity]) -> Quantity:
    return quantity(math.fsum(magnitude(area, "ft**2") for area in areas), "ft**2")


def _surface_area(way: Sequence[Surface]) -> SurfaceArea:
    surface = way[0]
    plan = surface.area
    share = math.prod(one.share.part for one in way)
    here = times(plan, share)
    return SurfaceArea(
        name=surface.name,
        plan=plan,
        share=share,
        drains_here=here,
        coefficient=surface.coefficient,
        weighted=times(here, surface.coefficient),
    )


def _error_parts(
    way: Sequence[Surface], area: SurfaceArea, paces: Mapping[str, Pace]
) -> Iterator[tuple[str, float]]:
    surface = way[0]
    weighted = magnitude(area.weighted, "ft**2")
    own = magnitude(surface.own_error, "ft**2")
    yield f"the measures of {surface.name}", area.share * area.coefficient * own
    for one in way:
        yield f"the share of {one.name}", weighted * one.share.error
    yield f"the runoff of {surface.name}", weighted * surface.coefficient_error
    for walker, slope in pace_slopes(surface.pieces).items():
        if walker not in paces:
            raise ValueError("Some sides are in paces: walk a known distance first.")
        moved = magnitude(slope, "ft**2") * surface.level * area.share * area.coefficient
        yield calibration_of(walker), moved * paces[walker].relative_error


def whole_roof_finding(roof: Quantity, footprint: Quantity, downspouts: int = 1) -> Finding | None:
    """Return a doubt when ``downspouts`` seem to drain too much of the house; else ``None``.

    ``roof`` and ``footprint`` are areas, the footprint above zero. One downspout seldom drains more
    than 60 % of the house; several may drain all of it, with its overhangs.
    """
    part = ratio(roof, footprint)
    several = downspouts > 1
    if within(part, OVERHANG_LIMIT if several else FOOTPRINT_LIMIT):
        return None
    said = f"The roof that drains here is {100 * part:.0f} % of the house"
    return Finding(
        key="whole_roof",
        grade=Grade.FIX,
        said=f"{said}: is that so?" if several else f"{said}: is that all of it?",
        limit="120 % of the house, overhangs included"
        if several
        else "60 % of the house for one downspout",
        source=OURS,
        change="Check the lengths of the pieces and the area of the house."
        if several
        else "Count only the strip from the ridge down to this gutter.",
    )
