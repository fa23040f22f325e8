"""A planting chosen for the floor, the side and the rim: what is found about it, and why each."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from interview.garden.planting.choice import (
    USUAL_SPACING_IN,
    WANTED_KINDS,
    Bed,
    Candidate,
    Season,
    fill,
    in_bloom,
    quality,
    seasons_of,
    stand_in,
)
from interview.garden.planting.count import plant_count
from interview.garden.planting.record import Plant
from interview.garden.planting.swap import counts_of, make_changes, matching, stranger
from interview.garden.planting.wetness import (
    LONGEST_HOURS,
    MATCH_SOURCE,
    USUAL_HOURS,
    Fit,
    ZoneSite,
    dry_ground,
    fits_after,
)
from interview.garden.planting.wishes import (
    Wishes,
    eased_wishes,
    makeshift,
    objection,
    unsuited,
)
from interview.garden.planting.words import (
    DRY_GROUND,
    DRY_NOTES,
    ELSEWHERE,
    FROM_MEMORY,
    GUIDANCE,
    OWN_ONLY,
    ZoneGuidance,
    cautions,
    salt_note,
)
from interview.garden.size.zones import Zone
from interview.quantities.evidence import OURS, Cited, Finding, Grade
from interview.quantities.guards import within
from interview.quantities.records import record
from interview.quantities.units import magnitude, quantity


def wet_findings(sites: Mapping[Zone, ZoneSite]) -> tuple[Finding, ...]:
    """Return what is wrong with how long water stands on each zone."""
    usual = tuple(
        Finding(
            f"wet_{zone.value}",
            Grade.FIX,
            f"Water stands on the {zone.value} for about {magnitude(site.hours, 'h'):.0f} h.",
            f"{USUAL_HOURS.value:.0f} h",
            USUAL_HOURS.source,
            "Make the pond shallower, or send less water here, before you plant.",
        )
        for zone, site in sites.items()
        if not within(magnitude(site.hours, "h"), USUAL_HOURS.value)
    )
    return usual + tuple(f for zone, site in sites.items() for f in _worst_findings(zone, site))


def _worst_findings(zone: Zone, site: ZoneSite) -> tuple[Finding, ...]:
    """Say where the worst case is longer than any plant is taken to stand; it can be lived with."""
    if site.longest is None or within(site.worst_hours, LONGEST_HOURS.value):
        return ()
    return (
        Finding(
            f"worst_{zone.value}",
            Grade.GOOD,
            f"Water stands on the {zone.value} for {site.worst_hours:.0f} h {site.longest_when}.",
            f"{LONGEST_HOURS.value:.0f} h",
            LONGEST_HOURS.source,
            "Look at the plants there after such a time, and replace those that drowned.",
        ),
    )


def thin_findings(beds: Sequence[Bed]) -> tuple[Finding, ...]:
    """Return the zones for which the list has too few kinds."""
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


def notes_of(plants: Sequence[Plant], wishes: Wishes, beds: Sequence[Bed]) -> tuple[str, ...]:
    """Return what to know about the planting as a whole."""
    notes = [FROM_MEMORY] if wishes.region else [OWN_ONLY, FROM_MEMORY]
    picked = [one.plant for bed in beds for one in bed.picked]
    for season in Season:
        flowering = in_bloom(picked, season)
        if season in wishes.bloom and flowering < WANTED_KINDS.value:
            notes.append(f"Kinds in flower in {season.value}: {flowering}; three is the aim.")
    for bed in beds:
        if bed.picked and not any(one.plant.grasslike for one in bed.picked):
            more = any(one.plant.grasslike for one in bed.candidates)
            said = "is chosen for" if more else "in the list suits"
            notes.append(f"No grass, sedge or rush {said} the {bed.zone.value}.")
    if wishes.road_salt:
        notes.append(salt_note(picked))
    for name in wishes.favourites:
        if not matching(plants, name):
            notes.append(stranger(name, plants))
    return tuple(notes)


@record
class Pick:
    """A plant proposed for a zone."""

    plant: Plant
    count: int
    why: str
    cautions: tuple[str, ...]
    favourite: bool = False
    against: str = ""
    """Which wish it goes against, where it was asked for by name."""
    instead_of: Plant | None = None
    """The plant first proposed in its place."""
    makeshift: str = ""
    """Why it is second best, where the list has too few that suit."""
    substitute: Plant | None = None
    """What to buy where it is sold out; nothing where the list has none like it."""

    @property
    def role(self) -> str:
        """What it is there for, in a few words; empty for its flowers alone."""
        if self.instead_of is not None and self.instead_of is not self.plant:
            return f"in place of {self.instead_of.common_name}"
        if self.favourite:
            return "you asked for it"
        return "for structure" if self.plant.grasslike else ""


class ZonePlan(NamedTuple):
    """What is planted in one zone."""

    zone: Zone
    site: ZoneSite
    picks: tuple[Pick, ...]
    reserve: tuple[Plant, ...]
    """Plants that would do as well, best first."""
    guidance: ZoneGuidance
    places: int
    """Plants the zone takes ``apart_in`` of each other, for kinds of the gardener's own."""
    apart_in: float = USUAL_SPACING_IN.value
    sown: bool = False
    """Whether its kinds are sown as seed, so that none of them is counted."""


class PlantingPlan(NamedTuple):
    """The planting of the whole garden."""

    zones: tuple[ZonePlan, ...]
    findings: tuple[Finding, ...]
    notes: tuple[str, ...]
    homeless: tuple[Plant, ...] = ()
    """Favourites that can grow in none of the zones."""

    @property
    def total(self) -> int:
        """The number of plants to buy."""
        return sum(pick.count for zone in self.zones for pick in zone.picks)

    def in_bloom(self, season: Season) -> tuple[Plant, ...]:
        """Return the proposed plants with flowers in ``season``, each once."""
        picks = [pick.plant for zone in self.zones for pick in zone.picks]
        return tuple(one for one in dict.fromkeys(picks) if season in seasons_of(one))


Suited = Mapping[Zone, Sequence[Candidate]]
"""The plants that each zone would take."""


def choose(
    plants: Sequence[Plant],
    wishes: Wishes,
    zones: Mapping[Zone, ZoneSite],
    suited: Suited | None = None,
) -> PlantingPlan:
    """Return a planting for ``zones``: the same for the same plants and wishes.

    Each zone gets three kinds or more where the list and its area allow, one of them a grass,
    sedge or rush, and the garden three kinds in flower in each wanted season. Swaps and favourites
    change what was so chosen and leave the rest. Where no plant is at home no species is named,
    only what to look for. ``suited`` is what ``suited_to`` returns of them, where it is known, at
    whatever distance. Raises ValueError for negative areas or hours.
    """
    sites = {zone: zones[zone] for zone in Zone if zone in zones}
    if not any(_known_here(plant, wishes) for plant in plants):
        bare = tuple(_zone_plan(zone, site, None, wishes, {}) for zone, site in sites.items())
        return PlantingPlan(bare, wet_findings(sites), (ELSEWHERE,))
    ordered = sorted(plants, key=lambda one: one.scientific_name)
    beds = {zone: bed_of(zone, site) for zone, site in sites.items()}
    suited = suited or suited_to(ordered, wishes, sites)
    named = {one.scientific_name: one for one in ordered}
    for bed in beds.values():
        for one in suited[bed.zone]:
            bed.candidates.append(one._replace(plant=named[one.plant.scientific_name]))
    used = tuple(bed for bed in beds.values() if bed.places > 0)
    fill(used, wishes.bloom)
    homeless, changes = make_changes(
        used, ordered, wishes, lambda plant, bed: candidate(plant, wishes, bed)
    )
    beside = _stand_ins(used, wishes)
    planned = tuple(
        _zone_plan(zone, site, beds[zone], wishes, beside) for zone, site in sites.items()
    )
    findings = (*wet_findings(sites), *thin_findings(used))
    dry = (DRY_NOTES[zone] for zone, site in sites.items() if is_dry(zone, site))
    notes = (*dry, *notes_of(ordered, wishes, used), *changes)
    return PlantingPlan(planned, findings, tuple(dict.fromkeys(notes)), tuple(homeless))


def suited_to(plants: Sequence[Plant], wishes: Wishes, zones: Mapping[Zone, ZoneSite]) -> Suited:
    """Return the plants that each zone would take, by name, however far apart they are set."""
    near = [
        plant
        for plant in sorted(plants, key=lambda one: one.scientific_name)
        if _known_here(plant, wishes) and (plant.at_home(wishes.region) or not wishes.natives_only)
    ]
    return {zone: _suited(near, wishes, bed_of(zone, site)) for zone, site in zones.items()}


def bed_of(zone: Zone, site: ZoneSite) -> Bed:
    """Return one zone with nothing planted yet."""
    ground, wet = magnitude(site.area, "ft**2"), magnitude(site.hours, "h")
    return Bed(zone, ground, _places(site), wet, site.worst_hours, site.longest_when)


def _known_here(plant: Plant, wishes: Wishes) -> bool:
    """Tell whether the list can say anything of ``plant`` in the gardener's region."""
    if plant.own:
        return True
    return wishes.region is not None and wishes.list_region is not None


def _places(site: ZoneSite) -> int:
    return plant_count(site.area, quantity(USUAL_SPACING_IN.value, "in"))


PREFERRED = Cited(2.0, OURS)
"""What a wish that a plant meets counts for, where a class of wetness counts for one."""


def candidate(plant: Plant, wishes: Wishes, bed: Bed) -> Candidate:
    """Judge ``plant`` for one zone: how well it suits, and what speaks against it."""
    region, list_region = wishes.region, wishes.list_region
    score = quality(plant, bed.zone, bed.hours, region, list_region)
    if wishes.road_salt:
        score += {True: -2.0, False: 1.0 * (plant.salt == "none"), None: 0.0}[plant.salt_tolerant]
    score -= PREFERRED.value * sum(one.met_by(plant) for one in wishes.prefer)
    fit = _fit(plant, wishes, bed)
    no_growth = ("" if fit.ok else fit.why, unsuited(plant, wishes))
    said = (*no_growth, objection(plant, bed.zone, wishes))
    return Candidate(
        plant,
        fit.why,
        score,
        against=" ".join(one for one in said if one),
        unsuited=any(no_growth),
        elsewhere=not plant.at_home(region)
        or bool(wishes.place and wishes.place.code in plant.absent_in),
    )


def _fit(plant: Plant, wishes: Wishes, bed: Bed) -> Fit:
    return fits_after(plant, bed.zone, bed.hours, wishes.list_region, bed.worst, bed.worst_when)


def _barred(plant: Plant, wishes: Wishes, bed: Bed) -> bool:
    """Tell whether anything speaks against ``plant``, as it does of most: they need no score."""
    said = unsuited(plant, wishes) or objection(plant, bed.zone, wishes)
    return bool(said) or not _fit(plant, wishes, bed).ok


def _suited(plants: Sequence[Plant], wishes: Wishes, bed: Bed) -> list[Candidate]:
    """Return the candidates of ``bed``; where those are too few, makeshifts as well."""
    found, against = [], []
    for plant in plants:
        if not _barred(plant, wishes, bed):
            found.append(candidate(plant, wishes, bed))
        elif plant.at_home(wishes.region):
            against.append(plant)
    for eased in eased_wishes(wishes):
        if len(found) >= WANTED_KINDS.value:
            break
        there = {one.plant.scientific_name for one in found}
        for plant in (one for one in against if one.scientific_name not in there):
            said = makeshift(plant, wishes)
            if said and not _barred(plant, eased, bed):
                found.append(candidate(plant, eased, bed)._replace(makeshift=said))
    return found


StandIns = Mapping[tuple[Zone, str], Plant | None]
"""For each zone and scientific name of a plant in it, what to buy where that is sold out."""


def _stand_ins(beds: Sequence[Bed], wishes: Wishes) -> StandIns:
    """Find a stand-in from outside the garden for every plant, a new one where there is one."""
    garden = [one.plant for bed in beds for one in bed.picked]
    taken = list(garden)
    found: dict[tuple[Zone, str], Plant | None] = {}
    for bed in beds:
        for one in bed.picked:
            plant = (
                stand_in(one.plant, bed, taken, wishes.region)
                or stand_in(one.plant, bed, garden, wishes.region)
                or stand_in(one.plant, bed, garden, wishes.region, near=False)
            )
            found[bed.zone, one.plant.scientific_name] = plant
            taken += [plant] if plant else []
    return found


def _picks(bed: Bed, wishes: Wishes, beside: StandIns) -> tuple[Pick, ...]:
    picks = []
    counts = (0,) * len(bed.picked) if bed.zone in wishes.sown else counts_of(bed)
    for one, count in zip(bed.picked, counts, strict=True):
        plant = one.plant
        known = cautions(plant, wishes.region, wishes.list_region)
        why = "You asked for it." if one.against else one.why
        said = tuple(text for text in (one.against, one.makeshift, *known) if text)
        buy = beside.get((bed.zone, plant.scientific_name))
        pick = Pick(
            plant, count, why, said, one.favourite, one.against, one.instead_of, one.makeshift, buy
        )
        picks.append(pick)
    return tuple(picks)


def _reserve(bed: Bed) -> tuple[Plant, ...]:
    ordered = sorted(bed.candidates, key=lambda one: (one.quality, one.plant.scientific_name))
    return tuple(one.plant for one in ordered)


def _zone_plan(
    zone: Zone, site: ZoneSite, bed: Bed | None, wishes: Wishes, beside: StandIns
) -> ZonePlan:
    picks, reserve = (_picks(bed, wishes, beside), _reserve(bed)) if bed else ((), ())
    guidance = DRY_GROUND if is_dry(zone, site) else GUIDANCE[zone]
    is_sown = zone in wishes.sown
    places = 0 if is_sown else plant_count(site.area, quantity(wishes.apart_in, "in"))
    return ZonePlan(zone, site, picks, reserve, guidance, places, wishes.apart_in, is_sown)


def is_dry(zone: Zone, site: ZoneSite) -> bool:
    """Tell whether ``site`` is a floor or a side that is planted as dry ground."""
    return dry_ground(zone, magnitude(site.hours, "h"), site.worst_hours)


def why_plant(
    name: str, plan: PlantingPlan, plants: Sequence[Plant], wishes: Wishes
) -> tuple[str, ...]:
    """Return one sentence or two for each zone, or one that says the list does not know it."""
    found = matching(plants, name)
    if not found:
        return (stranger(name, plants),)
    return tuple(
        f"{zone.zone.value.title()}: {_why(found[0], zone, wishes)}" for zone in plan.zones
    )


def _why(plant: Plant, zone: ZonePlan, wishes: Wishes) -> str:
    for pick in zone.picks:
        if pick.plant.scientific_name == plant.scientific_name:
            against = f" {pick.against}" if pick.against else ""
            done = "Sown" if zone.sown else f"{pick.count} planted"
            return f"{done}. {pick.why}{against}"
    if not zone.places and not zone.sown:
        return "There is no ground to plant."
    if any(matching([plant], swap.out) for swap in wishes.swaps):
        return "You left it out."
    one = candidate(plant, wishes, bed_of(zone.zone, zone.site))
    return one.against or f"It would do as well; others were placed first. {one.why}"
