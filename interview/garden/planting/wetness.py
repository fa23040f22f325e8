"""How long water stands on each part of the garden, and which plants that suits."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from interview.garden.planting.record import Indicator, Plant
from interview.garden.planting.regions import ListRegion
from interview.garden.size.zones import Zone
from interview.garden.storms.wet_zones import ZoneHours
from interview.quantities.evidence import OURS, Cited, Provenance, Source
from interview.quantities.guards import reaches, within
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity

QUICK_HOURS = Cited(12.0, OURS)
"""A part that dries this soon is dry ground between rains."""

DAY_HOURS = Cited(
    24.0, Source("working hours drawn from published tables of planting zones", Provenance.OURS)
)

USUAL_HOURS = Cited(
    48.0, Source("Rain gardens, Royal Horticultural Society, web page", Provenance.PUBLISHED)
)

LONGEST_HOURS = Cited(
    72.0,
    Source("LID Plant Recommendations, Appendix G, Monterey Bay, 2007", Provenance.PUBLISHED),
)

RIM_HOURS = Cited(6.0, OURS)

MATCH_SOURCE = Source(
    "wetland indicators matched to planting zones by this project", Provenance.OURS
)

HOURS_SLACK = Cited(
    1.1, Source("hours under water are known no better than to a tenth", Provenance.OURS)
)
"""A limit of hours is taken as passed from so many times it on: the rate has two digits."""

_WET = (Indicator.OBL, Indicator.FACW)

STANDS_HOURS = Cited(
    {
        Indicator.OBL: LONGEST_HOURS.value,
        Indicator.FACW: LONGEST_HOURS.value,
        Indicator.FAC: USUAL_HOURS.value,
        Indicator.FACU: DAY_HOURS.value,
        Indicator.UPL: QUICK_HOURS.value,
    },
    Source("twice the usual wetness of its zones, 72 h at the most", Provenance.OURS),
)
"""Hours at a stretch that a grown plant of each rating is taken to live through now and then."""

AIRLESS_HOURS = Cited(
    {"none": DAY_HOURS.value, "low": USUAL_HOURS.value},
    Source("hours drawn from how roots stand soil without air, a day a step", Provenance.OURS),
)
"""Hours at a stretch that a plant is given which stands soil without air badly, or not at all."""

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


@record
class ZoneSite:
    """One zone: its area on the plan, and its hours under water."""

    area: Quantity
    hours: Quantity
    longest: Quantity | None = None
    """Hours at a stretch in the worst case looked at; None where only ``hours`` are known."""
    longest_when: str = ""
    """What that case is, such as ``when the same storm comes again next day``."""

    @property
    def worst_hours(self) -> float:
        """Hours at a stretch in the worst case, as a plain number."""
        known = [magnitude(one, "h") for one in (self.hours, self.longest) if one is not None]
        return max(known)


class Fit(NamedTuple):
    """Whether a plant suits a zone, and why in one sentence."""

    ok: bool
    why: str


Wettest = tuple[str, ZoneHours]
"""When water stands long, in words, and the hours at a stretch then."""


def planting_zones(
    floor: Quantity,
    pond_edge: Quantity,
    rim: Quantity,
    hours: ZoneHours,
    worse: Sequence[Wettest] = (),
) -> dict[Zone, ZoneSite]:
    """Return the three zones from the areas inside the floor, the full pond and the rim.

    ``floor``, ``pond_edge`` and ``rim`` are the areas inside those three lines. ``worse`` are cases
    that may keep a zone wet for longer; the longest of them is kept with each zone. Raises
    ValueError when an area is smaller than the one inside it.
    """
    inner, middle, outer = (magnitude(one, "ft**2") for one in (floor, pond_edge, rim))
    if inner < 0 or not (within(inner, middle) and within(middle, outer)):
        raise ValueError("Make the full pond no smaller than the floor, and the rim no smaller.")
    areas = (inner, middle - inner, outer - middle)
    return {
        zone: _site(zone, quantity(max(0.0, area), "ft**2"), hours, worse)
        for zone, area in zip(Zone, areas, strict=True)
    }


def _site(zone: Zone, area: Quantity, hours: ZoneHours, worse: Sequence[Wettest]) -> ZoneSite:
    usual = hours.of(zone)
    if not worse:
        return ZoneSite(area, usual)
    when, most = max(worse, key=lambda one: magnitude(one[1].of(zone), "h"))
    return ZoneSite(area, usual, most.of(zone), when)


def rating(plant: Plant, region: ListRegion | None) -> Indicator | None:
    """Return the plant's rating in the gardener's own region of the wetland list.

    A species with no rating anywhere is taken as upland, as the list itself directs; one that is
    rated only elsewhere has none here. A plant of the gardener's own file may have none.
    """
    if plant.own:
        return plant.indicator(region) or plant.any_rating
    return plant.indicator(region) if plant.ratings else Indicator.UPL


def _airless_hours(plant: Plant, zone: Zone) -> float:
    """Return the hours that the roots of ``plant`` are given without air.

    A published table that puts it into ``zone`` goes before that.
    """
    if zone in plant.zones and plant.rests("zones"):
        return LONGEST_HOURS.value
    return AIRLESS_HOURS.value.get(plant.standing_water, LONGEST_HOURS.value)


def dry_ground(zone: Zone, hours: float, worst: float = 0.0) -> bool:
    """Tell whether ``zone`` is a floor or a side to plant as dry ground, as the rim is.

    It is under water for ``hours``, less than ``RIM_HOURS``, and for ``worst`` hours now and then,
    no longer than plants stand that grow in wet and dry ground alike: plants of wet ground would
    dry out there.
    """
    quick = not reaches(hours, RIM_HOURS.value)
    return zone is not Zone.RIM and quick and within(worst, STANDS_HOURS.value[Indicator.FAC])


def suited(zone: Zone, hours: float, worst: float = 0.0) -> tuple[Indicator, ...]:
    """Return the ratings that suit ``zone`` when water stands on it for ``hours``.

    ``worst`` are the hours now and then: see ``dry_ground``.
    """
    zone = Zone.RIM if dry_ground(zone, hours, worst) else zone
    for limit, ratings in _SUITED[zone]:
        if within(hours, limit * HOURS_SLACK.value):
            return ratings
    return ()


def chosen_from(zone: Zone, hours: float, worst: float) -> tuple[Indicator, ...]:
    """Return the ratings that suit ``zone`` and are taken to live through the ``worst`` hours."""
    bounded = min(worst, LONGEST_HOURS.value) / HOURS_SLACK.value
    held = STANDS_HOURS.value
    return tuple(one for one in suited(zone, hours, worst) if reaches(held[one], bounded))


def fits(plant: Plant, zone: Zone, hours: Quantity, region: ListRegion | None) -> Fit:
    """Tell whether ``plant`` suits ``zone`` with water on it for ``hours``, and why.

    ``hours`` is a time. Uses the zones the list gives it and its rating in ``region`` only.
    """
    return fits_after(plant, zone, magnitude(hours, "h"), region)


def fits_after(
    plant: Plant,
    zone: Zone,
    wet: float,
    region: ListRegion | None,
    worst: float = 0.0,
    worst_when: str = "",
) -> Fit:
    """Do the work of ``fits`` for plain hours: ``wet`` usually, ``worst`` now and then.

    A worst case longer than any plant is taken to stand rules out none of those that stand the
    longest; it is a fault of the garden, not of the plant.
    """
    dry = dry_ground(zone, wet, worst)
    # A side takes in no plant of the floor alone, however dry it is.
    if zone not in plant.zones and not (dry and (zone is Zone.FLOOR or Zone.RIM in plant.zones)):
        named = " and ".join(one.value for one in plant.zones)
        return Fit(False, f"The list gives it to the {named}, not the {zone.value}.")
    found = rating(plant, region)
    if found is None and not plant.own:
        where = f" ({region.value})" if region else ""
        return Fit(False, f"It has no wetness rating in your region{where}.")
    allowed = suited(zone, wet, worst)
    stands = f"is under water {'for less than an hour' if wet < 1 else f'about {wet:.0f} h'}"
    stands = "stays above the water" if wet < 0.05 else stands
    if not allowed:
        return Fit(False, f"The {zone.value} {stands}, too long for any plant in this list.")
    brief = zone is Zone.FLOOR and within(wet, DAY_HOURS.value * HOURS_SLACK.value)
    if plant.needs_long_wet and (dry or brief):
        dries = "day" if zone is Zone.FLOOR else "few hours"
        return Fit(
            False,
            f"It needs soil that stays wet for long; this {zone.value} dries within a {dries}.",
        )
    if found is None:
        return Fit(True, f"Your own plant file gives it to the {zone.value}.")
    said = f"{found.name}: {found.value}"
    if not plant.ratings and not plant.own:
        said = "on no wetland list: dry ground"
    if found not in allowed:
        drier = list(Indicator).index(found) > list(Indicator).index(allowed[-1])
        trouble = "too wet for it" if drier else "too dry for it"
        return Fit(False, f"The {zone.value} {stands}, {trouble} ({said}).")
    limit = STANDS_HOURS.value[found]
    once = f"for {worst:.0f} h {worst_when}".rstrip()
    airless = _airless_hours(plant, zone)
    if not within(max(wet, min(worst, LONGEST_HOURS.value)), airless * HOURS_SLACK.value):
        under = once if worst > wet else f"about {wet:.0f} h"
        degree = {"none": "do not stand", "low": "stand badly"}[plant.standing_water]
        return Fit(
            False,
            f"The {zone.value} is under water {under}; its roots {degree} soil without air, so "
            f"it is given {airless:.0f} h.",
        )
    if not within(min(worst, LONGEST_HOURS.value), limit * HOURS_SLACK.value):
        return Fit(
            False,
            f"The {zone.value} is under water {once}; it stands about {limit:.0f} h ({said}).",
        )
    return Fit(True, f"The {zone.value} {stands}, which suits it ({said}).")
