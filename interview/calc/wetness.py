"""How long water stands on each part of the garden, and which plants that suits."""

from __future__ import annotations

import math
from dataclasses import dataclass

from interview.calc.plant_record import Indicator, ListRegion, Plant, Zone
from interview.evidence import OURS, Cited, Source, Standing
from interview.units import Quantity, magnitude, quantity

QUICK_HOURS = Cited(12.0, OURS)
"""A part that dries this soon is dry ground between rains."""

DAY_HOURS = Cited(
    24.0, Source("working hours drawn from published tables of planting zones", Standing.OURS)
)

USUAL_HOURS = Cited(
    48.0, Source("Rain gardens, Royal Horticultural Society, page on planting", Standing.PUBLISHED)
)

LONGEST_HOURS = Cited(
    72.0,
    Source("LID Plant Recommendations, Appendix G, Monterey Bay, 2007", Standing.PUBLISHED),
)

RIM_HOURS = Cited(6.0, OURS)

MATCH_SOURCE = Source("wetland indicators matched to planting zones by this project", Standing.OURS)

_WET = (Indicator.OBL, Indicator.FACW)

_SUITED: dict[Zone, tuple[tuple[float, tuple[Indicator, ...]], ...]] = {
    Zone.FLOOR: (
        (QUICK_HOURS.value, (*_WET, Indicator.FAC, Indicator.FACU)),
        (DAY_HOURS.value, (*_WET, Indicator.FAC)),
        (LONGEST_HOURS.value, _WET),
    ),
    Zone.SIDE: (
        (QUICK_HOURS.value, (Indicator.FACW, Indicator.FAC, Indicator.FACU)),
        (USUAL_HOURS.value, (Indicator.FACW, Indicator.FAC)),
        (LONGEST_HOURS.value, (Indicator.FACW,)),
    ),
    Zone.RIM: (
        (RIM_HOURS.value, (Indicator.FAC, Indicator.FACU, Indicator.UPL)),
        (DAY_HOURS.value, (Indicator.FAC,)),
    ),
}
"""For each zone, up to how many hours under water which ratings suit it."""


@dataclass(frozen=True)
class ZoneHours:
    """Hours under water after the rain the garden is built for."""

    floor: Quantity
    side: Quantity
    rim: Quantity

    def of(self, zone: Zone) -> Quantity:
        """Return the hours of ``zone``."""
        return {Zone.FLOOR: self.floor, Zone.SIDE: self.side, Zone.RIM: self.rim}[zone]


@dataclass(frozen=True)
class ZoneSite:
    """One zone: its area on the plan, and its hours under water."""

    area: Quantity
    hours: Quantity


@dataclass(frozen=True)
class Fit:
    """Whether a plant suits a zone, and why in one sentence."""

    ok: bool
    why: str


def zone_hours(
    depth: Quantity,
    rate: Quantity,
    side_height: Quantity | None = None,
    rim_height: Quantity | None = None,
) -> ZoneHours:
    """Return hours under water from pond ``depth`` and ``rate``, by ``(depth - height) / rate``.

    The side is judged half way up the pond and the rim at the full pond unless heights above the
    floor are given. Raises ValueError when the depth is negative or the rate is not above zero.
    """
    deep = magnitude(depth, "in")
    fall = magnitude(rate, "in/h")
    if not (math.isfinite(deep) and deep >= 0):
        raise ValueError("Give a pond depth of zero or more.")
    if not (math.isfinite(fall) and fall > 0):
        raise ValueError("Give a rate above zero; water that does not soak in never drains.")

    def wet(height: Quantity | None, usual: float) -> Quantity:
        up = usual if height is None else magnitude(height, "in")
        if not (math.isfinite(up) and up >= 0):
            raise ValueError("Give a height of zero or more above the floor.")
        return quantity(max(0.0, deep - up) / fall, "h")

    return ZoneHours(wet(None, 0.0), wet(side_height, deep / 2), wet(rim_height, deep))


def planting_zones(
    floor: Quantity, pond_edge: Quantity, rim: Quantity, hours: ZoneHours
) -> dict[Zone, ZoneSite]:
    """Return the three zones from the areas inside the floor, the full pond and the rim.

    Raises ValueError when an area is smaller than the one inside it.
    """
    inner, middle, outer = (magnitude(one, "ft**2") for one in (floor, pond_edge, rim))
    if not 0 <= inner <= middle * (1 + 1e-9) <= outer * (1 + 2e-9):
        raise ValueError("Make the full pond no smaller than the floor, and the rim no smaller.")
    areas = (inner, middle - inner, outer - middle)
    return {
        zone: ZoneSite(quantity(max(0.0, area), "ft**2"), hours.of(zone))
        for zone, area in zip(Zone, areas, strict=True)
    }


def rating(plant: Plant, region: ListRegion) -> Indicator | None:
    """Return the plant's rating in the gardener's own region of the wetland list.

    A species with no rating anywhere is taken as upland, as the list itself directs; one that is
    rated only elsewhere has none here.
    """
    if not plant.ratings:
        return Indicator.UPL
    return plant.indicator(region)


def suited(zone: Zone, hours: float) -> tuple[Indicator, ...]:
    """Return the ratings that suit ``zone`` when water stands on it for ``hours``."""
    for limit, ratings in _SUITED[zone]:
        if hours <= limit + 1e-9:
            return ratings
    return ()


def fits(plant: Plant, zone: Zone, hours: Quantity, region: ListRegion) -> Fit:
    """Tell whether ``plant`` suits ``zone`` with water on it for ``hours``, and why.

    Uses the zones the list gives it and its rating in ``region`` only. Raises ValueError when the
    hours are negative.
    """
    return fits_after(plant, zone, wet_hours(hours), region)


def wet_hours(hours: Quantity) -> float:
    """Return ``hours`` as a number of hours; raises ValueError when they are negative."""
    wet = magnitude(hours, "h")
    if not wet >= 0:
        raise ValueError("Give hours under water of zero or more.")
    return wet


def fits_after(plant: Plant, zone: Zone, wet: float, region: ListRegion) -> Fit:
    """Do the work of ``fits`` for ``wet`` hours under water, as a plain number."""
    if zone not in plant.zones:
        named = " and ".join(one.value for one in plant.zones)
        return Fit(False, f"The list gives it to the {named}, not the {zone.value}.")
    found = rating(plant, region)
    if found is None:
        return Fit(False, f"It has no wetness rating in your region ({region.value}).")
    allowed = suited(zone, wet)
    stands = "stays above the water" if wet < 0.05 else f"is under water about {wet:.0f} h"
    if not allowed:
        return Fit(False, f"The {zone.value} {stands}, too long for any plant in this list.")
    said = f"{found.name}: {found.value}" if plant.ratings else "on no wetland list: dry ground"
    if zone is Zone.FLOOR and plant.needs_long_wet and wet <= DAY_HOURS.value + 1e-9:
        return Fit(False, "It needs soil that stays wet for long; this floor dries within a day.")
    if found not in allowed:
        drier = list(Indicator).index(found) > list(Indicator).index(allowed[-1])
        trouble = "too wet for it" if drier else "too dry for it"
        return Fit(False, f"The {zone.value} {stands}, {trouble} ({said}).")
    return Fit(True, f"The {zone.value} {stands}, which suits it ({said}).")
