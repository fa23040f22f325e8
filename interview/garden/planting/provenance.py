"""Where each fact about a plant comes from: a published list, the gardener's own file, memory."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from functools import cache
from importlib.resources import files
from typing import NamedTuple

from interview.garden.planting.plant_list import OWN_SOURCE, UNSAID
from interview.garden.planting.plant_sources import PLANT_SOURCES
from interview.garden.planting.record import RATING_LISTS, Plant
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.quantities.evidence import Provenance
from interview.reading.csv_reader import split_rows

FACTS = {
    "indicator": "wetness rating",
    "native": "native here",
    "height": "height",
    "bloom": "months of bloom",
    "color": "flower color",
    "zones": "floor, side or rim",
    "spacing": "distance apart",
    "sun": "sun",
    "hardiness_min": "coldest zone",
    "hardiness_max": "warmest zone",
    "standing_water": "standing water",
    "moisture": "water it wants",
    "drought": "drought",
    "salt": "salt",
    "spread": "spread",
    "toxicity": "toxicity",
    "thorns": "thorns",
    "trade": "trade",
    "wildlife": "wildlife",
}
"""The facts whose source is told, with what each is called."""

HAZARDS = ("standing_water", "toxicity", "thorns")
"""Facts that hurt somebody or drown a planting where they are wrong: where one list alone carries
one, that is told."""
NOT_KNOWN = "not known: no list that was read carries it"

_DECISION_COLUMNS = ("scientific_name", "field", "published", "kept", "why")


class Decision(NamedTuple):
    """What was kept where a published source and the list, or two sources, differ."""

    scientific_name: str
    field: str
    """The column of the plant list; ``copies`` for copies of one source that differ."""
    published: str
    """What the sources say, each after its code of ``PLANT_SOURCES``."""
    kept: str
    why: str


@cache
def decisions() -> tuple[Decision, ...]:
    """Return every contradiction that was decided by hand."""
    path = files("interview.garden.planting") / "plant_decisions.csv"
    rows, _ = split_rows(path.read_text(encoding="utf-8"), _DECISION_COLUMNS, _DECISION_COLUMNS[:2])
    return tuple(Decision(*(row.text(one) for one in _DECISION_COLUMNS)) for row in rows)


def provenance(
    plant: Plant, region: PlantRegion | None, list_region: ListRegion | None
) -> dict[str, str]:
    """Return for each fact of ``FACTS`` where it comes from, in words."""
    if plant.own:
        own = dict.fromkeys(FACTS, OWN_SOURCE)
        apart = {"spacing": plant.set_by} if plant.set_by else {}
        hardy = plant.hardiness_source
        said = {"zones": plant.zone_source, "hardiness_min": hardy, "hardiness_max": hardy}
        return {**own, **said, **apart}
    told = {fact: _listed(plant, fact) for fact in FACTS}
    told["indicator"] = _indicator(plant, list_region)
    told["native"] = _native(plant, region)
    told["spacing"] = plant.set_by or told["spacing"]
    return told


def from_memory(
    plant: Plant, region: PlantRegion | None, list_region: ListRegion | None
) -> list[str]:
    """Return the facts that rest on memory alone."""
    told = provenance(plant, region, list_region)
    return [fact for fact, source in told.items() if "memory" in source]


def by_standing(plants: Iterable[Plant]) -> dict[str, Counter[str]]:
    """Return for each fact how many of ``plants`` rest on what.

    The kinds are the values of ``Provenance`` and ``NOT_KNOWN``. A rating or a region counts as
    published where a list or a flora gives one for every region that the plant is listed in.
    """
    counts: dict[str, Counter[str]] = {fact: Counter() for fact in FACTS}
    for plant in plants:
        for fact, count in counts.items():
            count[standing(plant, fact)] += 1
    return counts


def standing(plant: Plant, fact: str) -> str:
    """Return what ``fact`` of ``plant`` rests on: a value of ``Provenance``, or ``NOT_KNOWN``."""
    found = _standing(plant, fact)
    return NOT_KNOWN if found is None else str(found.value)


def _standing(plant: Plant, fact: str) -> Provenance | None:
    """Return how much stands behind ``fact``; None where the list does not say."""
    if plant.own:
        return Provenance.YOURS
    if fact == "native":
        checked = set(plant.regions) <= set(plant.native_checked)
        return Provenance.SECONDARY if checked else Provenance.MEMORY
    if fact == "indicator":
        listed = plant.rated_by_one or plant.rated_by_two or not plant.ratings
        return Provenance.SECONDARY if listed else Provenance.MEMORY
    codes = plant.rests(fact)
    if not codes:
        return Provenance.MEMORY if _known(plant, fact) else None
    found = {PLANT_SOURCES[code.partition(" ")[0]][1].standing for code in codes}
    return Provenance.PUBLISHED if Provenance.PUBLISHED in found else Provenance.SECONDARY


def _known(plant: Plant, fact: str) -> bool:
    """Tell whether the list says anything of ``fact``: what it leaves open rests on nothing."""
    may_lack = {
        "standing_water": plant.standing_water,
        "moisture": plant.moisture,
        "drought": plant.drought,
        "salt": plant.salt,
        "color": plant.flower_color,
        "trade": plant.trade,
        "wildlife": plant.wildlife,
        "bloom": plant.bloom_months,
    }
    return bool(may_lack.get(fact, True))


def _listed(plant: Plant, fact: str) -> str:
    """Say which lists carry a fact: those read themselves, then those read in a second copy."""
    codes = plant.rests(fact)
    if not codes:
        return UNSAID if _known(plant, fact) else NOT_KNOWN
    said = []
    for kind in (Provenance.PUBLISHED, Provenance.SECONDARY):
        names = [
            f"{short}, {page}" if page else short
            for code, _, page in (one.partition(" ") for one in codes)
            for short, source in (PLANT_SOURCES[code],)
            if source.standing is kind
        ]
        said += [f"{kind.value}: {', '.join(names)}"] if names else []
    alone = ", one list alone" if fact in HAZARDS and one_alone(plant, fact) else ""
    return f"{'; '.join(said)}{alone}"


def one_alone(plant: Plant, fact: str) -> bool:
    """Tell whether a single list stands behind ``fact``, with no other to hold it against."""
    return len(plant.rests(fact)) == 1


def rests_lines(
    plant: Plant, region: PlantRegion | None, list_region: ListRegion | None
) -> tuple[tuple[str, str], ...]:
    """Return what its facts rest on: each source in words, with the facts that rest on it."""
    facts: dict[str, list[str]] = {}
    for fact, source in provenance(plant, region, list_region).items():
        facts.setdefault(source, []).append(FACTS[fact])
    order = sorted(facts, key=lambda source: ("memory" in source, source == NOT_KNOWN))
    return tuple((source, ", ".join(facts[source])) for source in order)


def decided(plant: Plant) -> tuple[Decision, ...]:
    """Return what was decided by hand about ``plant``."""
    return tuple(one for one in decisions() if one.scientific_name == plant.scientific_name)


def _indicator(plant: Plant, list_region: ListRegion | None) -> str:
    rated = plant.rating_standing(list_region)
    named = ", ".join(one for one in plant.indicator_source if one in RATING_LISTS)
    if not named or "from memory" in rated:
        return rated
    return f"{rated}: {named}"


def _native(plant: Plant, region: PlantRegion | None) -> str:
    if not plant.at_home(region):
        return "the list does not give it as native in this region"
    if region is not None and region in plant.native_checked:
        return f"a published flora of the region {region.value}"
    return UNSAID
