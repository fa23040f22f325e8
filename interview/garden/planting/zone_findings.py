"""What is found about a planting: zones too wet, too few kinds, seasons without flowers."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from interview.garden.planting.choice import WANTED_KINDS, Bed, Season, in_bloom
from interview.garden.planting.record import Plant
from interview.garden.planting.swap import matching, stranger
from interview.garden.planting.wetness import LONGEST_HOURS, MATCH_SOURCE, USUAL_HOURS, ZoneSite
from interview.garden.planting.wishes import Wishes
from interview.garden.planting.words import FROM_MEMORY, OWN_ONLY
from interview.garden.size.zones import Zone
from interview.quantities.evidence import Finding, Grade
from interview.quantities.units import magnitude


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
        if magnitude(site.hours, "h") > USUAL_HOURS.value * (1 + 1e-9)
    )
    return usual + tuple(f for zone, site in sites.items() for f in _worst_findings(zone, site))


def _worst_findings(zone: Zone, site: ZoneSite) -> tuple[Finding, ...]:
    """Say where the worst case is longer than any plant is taken to stand; it can be lived with."""
    if site.longest is None or site.worst_hours <= LONGEST_HOURS.value * (1 + 1e-9):
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
            notes.append(f"No grass, sedge or rush in the list suits the {bed.zone.value}.")
    if wishes.road_salt:
        notes.append("The list says little about salt: ask a nursery which of these stand it.")
    for name in wishes.favourites:
        if not matching(plants, name):
            notes.append(stranger(name, plants))
    return tuple(notes)
