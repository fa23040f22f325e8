"""Where each fact about a plant comes from: a published list, the gardener's own file, memory."""

from __future__ import annotations

from interview.garden.planting.plant_list import OWN_SOURCE, UNSAID
from interview.garden.planting.record import RATING_LISTS, ListRegion, Plant, PlantRegion

USDA = "agrees with the USDA PLANTS database, read in a second copy"

FACTS = (
    "indicator",
    "native",
    "height",
    "bloom",
    "zones",
    "spacing",
    "sun",
    "hardiness",
    "hazards",
)
"""The facts whose source is told."""


def provenance(
    plant: Plant, region: PlantRegion | None, list_region: ListRegion | None
) -> dict[str, str]:
    """Return for each fact of ``FACTS`` where it comes from, in words."""
    if plant.own:
        own = dict.fromkeys(FACTS, OWN_SOURCE)
        apart = {"spacing": plant.set_by} if plant.set_by else {}
        return {
            **own,
            "zones": plant.zone_source,
            "hardiness": plant.hardiness_source,
            **apart,
        }
    toxicity = "; toxicity from the USDA PLANTS database" if plant.usda_toxicity else ""
    return {
        "indicator": _indicator(plant, list_region),
        "native": _native(plant, region),
        "height": USDA if plant.checked("height") else UNSAID,
        "bloom": USDA if plant.checked("bloom") else UNSAID,
        "zones": plant.zone_source,
        "spacing": plant.set_by or UNSAID,
        "sun": UNSAID,
        "hardiness": plant.hardiness_source,
        "hazards": UNSAID + toxicity,
    }


def from_memory(
    plant: Plant, region: PlantRegion | None, list_region: ListRegion | None
) -> list[str]:
    """Return the facts that rest on memory alone."""
    told = provenance(plant, region, list_region)
    return [fact for fact, source in told.items() if "memory" in source]


def _indicator(plant: Plant, list_region: ListRegion | None) -> str:
    standing = plant.rating_standing(list_region)
    named = ", ".join(one for one in plant.indicator_source if one in RATING_LISTS)
    if not named or "from memory" in standing:
        return standing
    return f"{standing}: {named}"


def _native(plant: Plant, region: PlantRegion | None) -> str:
    if not plant.at_home(region):
        return "the list does not give it as native in this region"
    if region in plant.native_checked:
        return f"a published flora of the region {region.value if region else ''}".strip()
    return UNSAID
