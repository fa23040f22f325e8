"""Chooses a balanced set of plants for the floor, the side and the rim, and says why."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches

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
from interview.calc.plant_wishes import KeepOut, Wishes, objection
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
    ZoneSite,
    fits,
    fits_after,
    planting_zones,
    wet_hours,
    zone_hours,
)
from interview.evidence import Finding, Grade
from interview.units import magnitude, quantity

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
    favourites = [plant for plant in plants if wishes.keep(plant)]
    others = [plant for plant in plants if plant not in favourites]
    beds = {
        zone: Bed(zone, _ground(site), _places(site), wet_hours(site.hours))
        for zone, site in sites.items()
    }
    left_out = {zone: _sort(others, wishes, bed) for zone, bed in beds.items()}
    used = tuple(bed for bed in beds.values() if bed.places > 0)
    _keep_favourites(favourites, wishes, used)
    fill(used, wishes.bloom)
    planned = tuple(
        _zone_plan(
            zone, site, _picks(beds[zone], site, wishes), _reserve(beds[zone]), left_out[zone]
        )
        for zone, site in sites.items()
    )
    findings = (*_wet_findings(sites), *_thin_findings(used))
    return PlantingPlan(planned, findings, _notes(plants, wishes, used))


def _ground(site: ZoneSite) -> float:
    return magnitude(site.area, "ft**2")


def _places(site: ZoneSite) -> int:
    return plant_count(site.area, quantity(USUAL_SPACING_IN.value, "in"))


def _candidate(plant: Plant, wishes: Wishes, bed: Bed, favourite: bool = False) -> Candidate:
    region, list_region = wishes.home
    score = quality(plant, bed.zone, bed.hours, region, list_region)
    if wishes.road_salt and plant.salt_tolerant:
        score -= 2.0
    fit = fits_after(plant, bed.zone, bed.hours, list_region)
    said = ("" if fit.ok else fit.why, objection(plant, bed.zone, wishes))
    return Candidate(plant, fit.why, score, favourite, " ".join(one for one in said if one))


def _sort(plants: Sequence[Plant], wishes: Wishes, bed: Bed) -> tuple[LeftOut, ...]:
    """Give ``bed`` its candidates; return the plants of the region it does not take."""
    left_out = []
    for plant in plants:
        here = wishes.region in plant.regions
        if not here and wishes.natives_only:
            continue
        one = _candidate(plant, wishes, bed)
        if not one.against:
            bed.candidates.append(one)
        elif here:
            left_out.append(LeftOut(plant, one.against))
    return tuple(left_out)


def _keep_favourites(favourites: Sequence[Plant], wishes: Wishes, beds: Sequence[Bed]) -> None:
    """Put each favourite in the zone that least speaks against it."""
    for plant in favourites if beds else ():
        tried = [(bed, _candidate(plant, wishes, bed, True)) for bed in beds]
        bed, best = min(
            tried,
            key=lambda pair: (
                bool(pair[1].against),
                pair[0].zone not in plant.zones,
                pair[1].quality,
            ),
        )
        bed.picked.append(best)


def _picks(bed: Bed, site: ZoneSite, wishes: Wishes) -> tuple[Pick, ...]:
    counts = shared_counts([one.plant for one in bed.picked], site.area)
    picks = []
    for one, count in zip(bed.picked, counts, strict=True):
        known = cautions(one.plant, *wishes.home)
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
            f"Kinds of plant in the list that suit the {bed.zone.value}: {len(bed.picked)}.",
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
    return (*notes, *_strangers(plants, wishes))


def _strangers(plants: Sequence[Plant], wishes: Wishes) -> list[str]:
    """Name the favourites that the list does not know, with the nearest name it has."""
    known = [plant.common_name for plant in plants]
    notes = []
    for name in wishes.favourites:
        if not any(plant.answers_to(name) for plant in plants):
            near = get_close_matches(name, known, n=1)
            hint = f"did you mean {near[0]}?" if near else "look up how wet it likes to be."
            notes.append(f"“{name}” is not in the plant list: {hint}")
    return notes
