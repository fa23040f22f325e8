"""Chooses a balanced set of plants for the floor, the side and the rim, and says why."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import Enum

from interview.calc.plant_choice import (
    USUAL_SPACING_IN,
    WANTED_KINDS,
    Bed,
    Candidate,
    Season,
    fill,
    in_bloom,
    quality,
    seasons_of,
)
from interview.calc.plant_count import Pattern, drifts, plant_count, shared_counts
from interview.calc.plant_record import ListRegion, Plant, PlantRegion, Sun, Zone
from interview.calc.plant_words import (
    ELSEWHERE,
    FROM_MEMORY,
    GUIDANCE,
    ZoneGuidance,
    cautions,
)
from interview.calc.wetness import (
    MATCH_SOURCE,
    USUAL_HOURS,
    Fit,
    ZoneHours,
    fits,
    zone_hours,
)
from interview.evidence import Finding, Grade
from interview.units import Quantity, magnitude, quantity

__all__ = [
    "Fit",
    "KeepOut",
    "LeftOut",
    "ListRegion",
    "Pattern",
    "Pick",
    "PlantRegion",
    "PlantingPlan",
    "Season",
    "Sun",
    "Wishes",
    "Zone",
    "ZoneHours",
    "ZonePlan",
    "ZoneSite",
    "choose",
    "drifts",
    "fits",
    "plant_count",
    "planting_zones",
    "zone_hours",
]


class KeepOut(Enum):
    """What a gardener may ask to have kept out."""

    TOXIC = "toxic"
    THORNY = "thorny"
    AGGRESSIVE = "aggressive"
    LARGE = "over 8 ft"


@dataclass(frozen=True)
class Wishes:
    """What the gardener wants of the planting."""

    region: PlantRegion | None
    """None outside the plant list: no species is proposed."""
    list_region: ListRegion | None
    sun: Sun = Sun.FULL
    floor_height: Quantity | None = None
    """Greatest height on the floor and the side; None for no limit."""
    rim_height: Quantity | None = None
    natives_only: bool = True
    keep_out: frozenset[KeepOut] = frozenset()
    bloom: frozenset[Season] = frozenset(Season)
    road_salt: bool = False
    favourites: tuple[str, ...] = ()
    """Scientific or common names, kept whatever the other wishes say."""


@dataclass(frozen=True)
class ZoneSite:
    """One zone: its area on the plan, and its hours under water."""

    area: Quantity
    hours: Quantity


@dataclass(frozen=True)
class Pick:
    """A plant proposed for a zone."""

    plant: Plant
    count: int
    why: str
    cautions: tuple[str, ...]
    favourite: bool = False


@dataclass(frozen=True)
class LeftOut:
    """A plant of the region that a zone does not take, and the first reason."""

    plant: Plant
    why: str


@dataclass(frozen=True)
class ZonePlan:
    """What is planted in one zone."""

    zone: Zone
    site: ZoneSite
    picks: tuple[Pick, ...]
    reserve: tuple[Plant, ...]
    """Plants that would do as well, best first."""
    left_out: tuple[LeftOut, ...]
    guidance: ZoneGuidance
    places: int
    """Plants the zone takes at the usual 18 in spacing, for kinds of the gardener's own."""


@dataclass(frozen=True)
class PlantingPlan:
    """The planting of the whole garden."""

    zones: tuple[ZonePlan, ...]
    findings: tuple[Finding, ...]
    notes: tuple[str, ...]

    @property
    def total(self) -> int:
        """The number of plants to buy."""
        return sum(pick.count for zone in self.zones for pick in zone.picks)

    def in_bloom(self, season: Season) -> tuple[Plant, ...]:
        """Return the proposed plants with flowers in ``season``, each once."""
        picks = [pick.plant for zone in self.zones for pick in zone.picks]
        return tuple(one for one in dict.fromkeys(picks) if season in seasons_of(one))


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


def objection(plant: Plant, zone: Zone, wishes: Wishes) -> str:
    """Return why ``plant`` goes against the wishes in ``zone``; empty where it does not."""
    if wishes.natives_only and wishes.region not in plant.regions:
        return "The list does not give it as native in your region."
    if wishes.sun not in plant.sun:
        return f"It wants {' or '.join(one.value for one in plant.sun)} sun."
    limit = wishes.rim_height if zone is Zone.RIM else wishes.floor_height
    if limit is not None and plant.height_max_ft > magnitude(limit, "ft") * (1 + 1e-9):
        return f"It grows to {plant.height_max_ft:g} ft, taller than you want here."
    marks = (
        (KeepOut.TOXIC, plant.toxic, "It is toxic or can irritate."),
        (KeepOut.THORNY, plant.thorny, "It is thorny or sharp."),
        (KeepOut.AGGRESSIVE, plant.aggressive, "It spreads hard."),
        (KeepOut.LARGE, plant.over_8ft, "It grows over 8 ft."),
    )
    return next((said for mark, has, said in marks if has and mark in wishes.keep_out), "")


def choose(plants: Sequence[Plant], wishes: Wishes, zones: Mapping[Zone, ZoneSite]) -> PlantingPlan:
    """Return a planting for ``zones``: the same for the same plants and wishes.

    Each zone gets three kinds or more where the list and its area allow, one of them a grass,
    sedge or rush, and the garden three kinds in flower in each wanted season. Without a region no
    species is named, only what to look for. Raises ValueError for negative areas or hours.
    """
    sites = {zone: zones[zone] for zone in Zone if zone in zones}
    if wishes.region is None or wishes.list_region is None:
        bare = tuple(_zone_plan(zone, site, (), (), ()) for zone, site in sites.items())
        return PlantingPlan(bare, _wet_findings(sites), (ELSEWHERE,))
    beds = {}
    left_out = {}
    for zone, site in sites.items():
        bed = Bed(zone, magnitude(site.area, "ft**2"), _places(site))
        left_out[zone] = _sort(plants, wishes, site, bed)
        if bed.area_ft2 > 0:
            beds[zone] = bed
    _keep_favourites(plants, wishes, sites, beds)
    fill(tuple(beds.values()), wishes.bloom)
    planned = tuple(
        _zone_plan(
            zone,
            site,
            _picks(beds[zone], site, wishes) if zone in beds else (),
            _reserve(beds[zone]) if zone in beds else (),
            left_out[zone],
        )
        for zone, site in sites.items()
    )
    findings = (*_wet_findings(sites), *_thin_findings(tuple(beds.values())))
    return PlantingPlan(planned, findings, _notes(plants, wishes, tuple(beds.values())))


def _places(site: ZoneSite) -> int:
    return plant_count(site.area, quantity(USUAL_SPACING_IN.value, "in"))


def _candidate(plant: Plant, wishes: Wishes, zone: Zone, site: ZoneSite) -> Candidate:
    assert wishes.region is not None and wishes.list_region is not None
    hours = magnitude(site.hours, "h")
    score = quality(plant, zone, hours, wishes.region, wishes.list_region)
    if wishes.road_salt and plant.salt_tolerant:
        score -= 2.0
    fit = fits(plant, zone, site.hours, wishes.list_region)
    said = "" if fit.ok else fit.why
    against = " ".join(one for one in (said, objection(plant, zone, wishes)) if one)
    return Candidate(plant, fit.why, score, _is_favourite(plant, wishes), against)


def _is_favourite(plant: Plant, wishes: Wishes) -> bool:
    return any(plant.answers_to(name) for name in wishes.favourites)


def _sort(plants: Sequence[Plant], wishes: Wishes, site: ZoneSite, bed: Bed) -> tuple[LeftOut, ...]:
    """Give ``bed`` its candidates; return the plants of the region it does not take."""
    left_out = []
    for plant in plants:
        if _is_favourite(plant, wishes):
            continue
        here = wishes.region in plant.regions
        if not here and wishes.natives_only:
            continue
        one = _candidate(plant, wishes, bed.zone, site)
        if not one.against:
            bed.candidates.append(one)
        elif here:
            left_out.append(LeftOut(plant, one.against))
    return tuple(left_out)


def _keep_favourites(
    plants: Sequence[Plant],
    wishes: Wishes,
    sites: Mapping[Zone, ZoneSite],
    beds: Mapping[Zone, Bed],
) -> None:
    """Put each favourite in the zone that least speaks against it."""
    for plant in plants:
        if not _is_favourite(plant, wishes) or not beds:
            continue
        tried = {zone: _candidate(plant, wishes, zone, sites[zone]) for zone in beds}
        best = min(
            tried,
            key=lambda zone: (
                bool(tried[zone].against),
                zone not in plant.zones,
                tried[zone].quality,
            ),
        )
        beds[best].picked.append(tried[best])


def _picks(bed: Bed, site: ZoneSite, wishes: Wishes) -> tuple[Pick, ...]:
    assert wishes.region is not None and wishes.list_region is not None
    counts = shared_counts([one.plant for one in bed.picked], site.area)
    picks = []
    for one, count in zip(bed.picked, counts, strict=True):
        known = cautions(one.plant, wishes.region, wishes.list_region)
        why = "You asked for it." if one.against else one.why
        said = (one.against, *known) if one.against else known
        picks.append(Pick(one.plant, count, why, said, one.favourite))
    return tuple(picks)


def _reserve(bed: Bed) -> tuple[Plant, ...]:
    ordered = sorted(bed.candidates, key=lambda one: (one.quality, one.plant.scientific_name))
    return tuple(one.plant for one in ordered)


def _zone_plan(
    zone: Zone,
    site: ZoneSite,
    picks: tuple[Pick, ...],
    reserve: tuple[Plant, ...],
    left_out: tuple[LeftOut, ...],
) -> ZonePlan:
    return ZonePlan(zone, site, picks, reserve, left_out, GUIDANCE[zone], _places(site))


def _wet_findings(sites: Mapping[Zone, ZoneSite]) -> tuple[Finding, ...]:
    return tuple(
        Finding(
            f"wet_{zone.value}",
            Grade.FIX,
            f"Water stands on the {zone.value} for about {magnitude(site.hours, 'h'):.0f} h.",
            f"{USUAL_HOURS.value:.0f} h",
            USUAL_HOURS.source,
            "Make the pond shallower, or send less water here, before you plant.",
        )
        for zone, site in sites.items()
        if magnitude(site.hours, "h") > USUAL_HOURS.value * (1 + 1e-9)
    )


def _thin_findings(beds: Sequence[Bed]) -> tuple[Finding, ...]:
    return tuple(
        Finding(
            f"few_kinds_{bed.zone.value}",
            Grade.FIX,
            f"Only {len(bed.picked)} kinds of plant in the list suit the {bed.zone.value}.",
            f"{WANTED_KINDS.value} kinds",
            MATCH_SOURCE,
            "Allow taller plants, or some you kept out, or add local plants to the list.",
        )
        for bed in beds
        if len(bed.picked) < min(WANTED_KINDS.value, bed.most)
    )


def _notes(plants: Sequence[Plant], wishes: Wishes, beds: Sequence[Bed]) -> tuple[str, ...]:
    notes = [FROM_MEMORY]
    picked = [one.plant for bed in beds for one in bed.picked]
    for season in Season:
        flowering = in_bloom(picked, season)
        if season in wishes.bloom and flowering < WANTED_KINDS.value:
            notes.append(f"Kinds in flower in {season.value}: {flowering}; three is the aim.")
    for bed in beds:
        if bed.picked and not any(one.plant.grasslike for one in bed.picked):
            notes.append(f"No grass, sedge or rush in the list suits the {bed.zone.value}.")
    if wishes.road_salt:
        notes.append("The list says little about salt: ask a nursery which of these stand it.")
    for name in wishes.favourites:
        if not any(plant.answers_to(name) for plant in plants):
            notes.append(f"“{name}” is not in the plant list: look up how wet it likes to be.")
    return tuple(notes)
