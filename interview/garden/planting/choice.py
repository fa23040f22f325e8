"""Picks a few kinds for each zone: a grass or sedge first, then flowers for every season."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import field
from enum import Enum
from functools import cache
from typing import NamedTuple

from interview.garden.planting.count import crowds, swarms
from interview.garden.planting.record import Indicator, Plant, PlantKind
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.wetness import (
    DAY_HOURS,
    HOURS_SLACK,
    QUICK_HOURS,
    dry_ground,
    rating,
)
from interview.garden.size.zones import Zone
from interview.quantities.evidence import OURS, Cited, Provenance, Source
from interview.quantities.guards import within
from interview.quantities.records import record


class Season(Enum):
    """A season of flower."""

    SPRING = "spring"
    SUMMER = "summer"
    AUTUMN = "autumn"


MONTHS_OF = {
    Season.SPRING: (3, 4, 5),
    Season.SUMMER: (6, 7, 8),
    Season.AUTUMN: (9, 10, 11),
}
"""The months of each season in the northern half of the world; the southern is half a year on."""

WANTED_KINDS = Cited(3, OURS)
"""Kinds in a zone, and kinds in flower in a season, where the list allows."""

MOST_KINDS = Cited(5, OURS)
"""Kinds first proposed in a zone, and two more when a season lacks flowers."""

ALIKE = Cited(2.0, OURS)
"""A stand-in is no more than so many times as tall as the plant it stands in for, or as low."""

HARD_TO_BUY = ("collected", "unknown")
"""How a plant is sold that few nurseries have: it comes after others, and is not left out."""

PLANTS_A_KIND = Cited(8, OURS)
"""A larger zone gets one kind for about this many plants."""

USUAL_SPACING_IN = Cited(
    18.0,
    Source(
        "Plant Spacing, Low Impact Development Center, web page: one-gallon perennials",
        Provenance.PUBLISHED,
    ),
)


def seasons_of(plant: Plant) -> frozenset[Season]:
    """Return the seasons a plant has flowers to see in: forbs and shrubs only."""
    if plant.kind not in (PlantKind.FORB, PlantKind.SHRUB):
        return frozenset()
    return _seasons_of(plant.bloom_months, plant.southern)


@cache
def _seasons_of(months: tuple[int, ...], southern: bool) -> frozenset[Season]:
    later = 6 if southern else 0
    shifted = {(month + later - 1) % 12 + 1 for month in months}
    return frozenset(season for season, own in MONTHS_OF.items() if shifted & set(own))


class Candidate(NamedTuple):
    """A plant that a zone would take."""

    plant: Plant
    why: str
    quality: float
    """Lower is better."""
    favourite: bool = False
    against: str = ""
    """What speaks against it; a favourite is kept all the same."""
    unsuited: bool = False
    """Whether it could not thrive here, so that even a favourite is not placed."""
    instead_of: Plant | None = None
    """The plant whose place it took."""
    makeshift: str = ""
    """Why it is second best, taken only where the list has too few that suit."""
    elsewhere: bool = False
    """Whether it is at home in other regions alone: taken after the natives."""


@record(frozen=False)
class Bed:
    """One zone while its kinds are being picked."""

    zone: Zone
    area_ft2: float
    places: int
    """Plants it takes at the usual spacing."""
    hours: float
    """Hours under water after the rain to hold."""
    worst: float = 0.0
    """Hours under water at a stretch in the worst case looked at."""
    worst_when: str = ""
    candidates: list[Candidate] = field(default_factory=list)
    picked: list[Candidate] = field(default_factory=list)

    @property
    def most(self) -> int:
        """The most kinds that leave two plants of each."""
        return max(1, self.places // 2)

    @property
    def kinds(self) -> int:
        """The kinds first aimed at."""
        wanted = max(WANTED_KINDS.value, self.places // PLANTS_A_KIND.value)
        return min(wanted, MOST_KINDS.value, self.most)


def quality(
    plant: Plant,
    zone: Zone,
    hours: float,
    region: PlantRegion | None,
    list_region: ListRegion | None,
) -> float:
    """Return how good a choice it is for a zone under water for ``hours``; lower is better.

    The weights are this project's own.
    """
    found = rating(plant, list_region)
    score = 0.0 if found is None and plant.own else _distance(found, zone, hours)
    arid = list_region is ListRegion.AW
    parched = zone is Zone.RIM or dry_ground(zone, hours)
    score += 1.0 * ((parched or (arid and not _long_wet(zone, hours))) and thirsty(plant))
    # Months pass there without rain.
    score += 0.5 * (arid and parched and plant.drought != "high")
    score += 0.5 * (_long_wet(zone, hours) and plant.standing_water in ("none", "low"))
    # A person who wrote down a plant of their own knows the place.
    score += 1.0 * (region not in plant.native_checked and not plant.own)
    score += 1.0 * bool(plant.introduced_in(region))
    # The ground is dry again days before the next storm.
    score += 1.0 * plant.needs_long_wet
    score += 1.0 * plant.toxic + 0.5 * (plant.spreads == "some")
    score += 0.5 * (not plant.well_rated(list_region) and not plant.own)
    score += 1.0 * (plant.kind is PlantKind.SHRUB)
    score += 0.5 * (plant.trade in HARD_TO_BUY)
    # Plants of many regions are the ones nurseries grow.
    return score - 0.1 * len(plant.regions) - 0.5 * bool(plant.rests("zones"))


def thirsty(plant: Plant) -> bool:
    """Tell whether ``plant`` stands drought badly; where that is unknown, whether it wants wet."""
    if plant.drought:
        return plant.drought in ("none", "low")
    return plant.moisture == ("high",)


def _distance(found: Indicator | None, zone: Zone, hours: float) -> float:
    """Return how far a rating is from the one that suits the zone best."""
    best = {Zone.FLOOR: 1.0, Zone.SIDE: 2.0, Zone.RIM: 3.5}[zone]
    if dry_ground(zone, hours):
        # Ground that dries within hours wants what stands drought.
        best = 3.0
    elif zone is Zone.FLOOR and hours <= QUICK_HOURS.value:
        best = 1.5
    elif _long_wet(zone, hours):
        best = 0.5
    place = list(Indicator).index(found) if found else len(Indicator)
    return abs(place - best)


def _long_wet(zone: Zone, hours: float) -> bool:
    """Tell whether ``zone`` is a floor under water for more than a day."""
    return zone is Zone.FLOOR and hours > DAY_HOURS.value * HOURS_SLACK.value


def in_bloom(plants: Iterable[Plant], season: Season) -> int:
    """Return how many different plants flower in ``season``."""
    return len({one.scientific_name for one in plants if season in seasons_of(one)})


def substitute(gone: Plant, bed: Bed, beds: Sequence[Bed]) -> Candidate | None:
    """Return the candidate most like ``gone`` in what it does: structure, then season, then kind.

    A plant that stands elsewhere in the garden is taken only where no other is left.
    """
    garden = {picked.plant.scientific_name for each in beds for picked in each.picked}
    seasons = seasons_of(gone)

    def order(one: Candidate) -> tuple[bool, bool, bool, bool, bool, int, bool, bool, float, str]:
        plant = one.plant
        return (
            bool(one.makeshift),
            plant.grasslike != gone.grasslike,
            one.elsewhere,
            plant.scientific_name in garden,
            crowds(plant, bed.area_ft2 / max(1, len(bed.picked))),
            -len(seasons_of(plant) & seasons),
            plant.aggressive or plant.thorny,
            plant.kind is not gone.kind,
            one.quality,
            plant.scientific_name,
        )

    here = {picked.plant.scientific_name for picked in bed.picked}
    pool = [one for one in bed.candidates if one.plant.scientific_name not in here]
    return min(pool, key=order, default=None)


def blooms_with(gone: Plant, other: Plant) -> bool:
    """Tell whether ``other`` flowers in some of the months of ``gone``, where those count."""
    months = set(gone.bloom_months) if seasons_of(gone) else set()
    return not months or bool(months & set(other.bloom_months))


def as_tall(gone: Plant, other: Plant) -> bool:
    """Tell whether neither grows more than ``ALIKE`` times as tall as the other."""
    low, high = sorted((gone.height_max_ft, other.height_max_ft))
    return within(high, low * ALIKE.value)


def stand_in(
    gone: Plant, bed: Bed, taken: Iterable[Plant], region: PlantRegion | None, near: bool = True
) -> Plant | None:
    """Return the plant to buy where ``gone`` is sold out; nothing where the list has none.

    It suits the same zone and sun, and is a grass or sedge for a grass or sedge, a shrub for a
    shrub; if ``near`` it is about as tall and flowers in some of the same months. None that
    carries a warning, is regulated in any state, is called introduced in ``region``, or is one of
    ``taken``.
    """
    barred = {one.scientific_name for one in taken}

    def like(one: Candidate) -> bool:
        plant = one.plant
        shunned = plant.warned or plant.regulated_in or plant.introduced_in(region)
        return (
            not (shunned or one.makeshift)
            and plant.scientific_name not in barred
            and plant.grasslike == gone.grasslike
            and (plant.kind is PlantKind.SHRUB) == (gone.kind is PlantKind.SHRUB)
            and (not near or (blooms_with(gone, plant) and as_tall(gone, plant)))
        )

    def order(one: Candidate) -> tuple[bool, bool, bool, bool, int, bool, float, str]:
        plant = one.plant
        return (
            not blooms_with(gone, plant),
            not as_tall(gone, plant),
            one.elsewhere,
            plant.kind is not gone.kind,
            -len(set(gone.bloom_months) & set(plant.bloom_months)),
            plant.spreads == "some",
            one.quality,
            plant.scientific_name,
        )

    best = min(filter(like, bed.candidates), key=order, default=None)
    return best.plant if best else None


def _take_best(
    bed: Bed, pool: Sequence[Candidate], beds: Sequence[Bed], seasons: frozenset[Season]
) -> None:
    """Pick the next kind: balance first, then quality, then the name."""
    here = [picked.plant for picked in bed.picked]
    garden = [picked.plant for each in beds for picked in each.picked]
    has_grass = any(other.grasslike for other in here)
    has_shrub = any(other.kind is PlantKind.SHRUB for other in here)
    in_flower = frozenset(season for other in here for season in seasons_of(other))
    thin = {one for one in seasons if in_bloom(garden, one) < WANTED_KINDS.value}

    def order(one: Candidate) -> tuple[bool | int | float | str, ...]:
        plant = one.plant
        flowers = seasons_of(plant) & seasons
        return (
            bool(one.makeshift),
            plant.grasslike == has_grass,
            one.elsewhere,
            plant in garden,
            crowds(plant, bed.area_ft2 / bed.kinds),
            plant.aggressive or plant.thorny,
            has_shrub and plant.kind is PlantKind.SHRUB,
            _too_many(plant, bed.area_ft2 / bed.kinds),
            -len(flowers - in_flower),
            -len(flowers & thin),
            one.quality,
            plant.scientific_name,
        )

    best = min(pool, key=order)
    bed.picked.append(best)
    bed.candidates.remove(best)


def _too_many(plant: Plant, share: float) -> bool:
    """Tell whether a small plant swarms in its share; not where a size of plant sets all alike."""
    small = not plant.set_by and plant.spacing_in < USUAL_SPACING_IN.value
    return small and swarms(plant, share)


def fill(beds: Sequence[Bed], seasons: frozenset[Season]) -> None:
    """Pick the kinds of every bed, then add kinds for a season that lacks flowers."""
    for bed in beds:
        while bed.candidates and len(bed.picked) < bed.kinds:
            _take_best(bed, bed.candidates, beds, seasons)
    for season in Season:
        while season in seasons and _add_flower(beds, season):
            pass


def _add_flower(beds: Sequence[Bed], season: Season) -> bool:
    """Add one kind that flowers in ``season`` where it is wanted and there is room."""
    garden = [picked.plant for bed in beds for picked in bed.picked]
    if in_bloom(garden, season) >= WANTED_KINDS.value:
        return False
    for bed in beds:
        pool = [
            one
            for one in bed.candidates
            if season in seasons_of(one.plant) and one.plant not in garden
        ]
        if pool and len(bed.picked) < min(MOST_KINDS.value + 2, bed.most):
            _take_best(bed, pool, beds, frozenset({season}))
            return True
    return False
