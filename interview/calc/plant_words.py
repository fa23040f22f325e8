"""What is said about a plant and about a zone: cautions, and traits to look for."""

from __future__ import annotations

from dataclasses import dataclass

from interview.calc.plant_record import ListRegion, Plant, PlantRegion, Zone
from interview.evidence import PRACTICE, Source, Standing


@dataclass(frozen=True)
class ZoneGuidance:
    """How wet a zone is, and what to look for where no species can be named."""

    wetness: str
    traits: tuple[str, ...]
    wetness_source: Source
    traits_source: Source = PRACTICE


ZONE_SOURCE = Source(
    "Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013, p. A-2",
    Standing.PUBLISHED,
)

GUIDANCE = {
    Zone.FLOOR: ZoneGuidance(
        "Stands in water after storms, and must also stand dry spells.",
        (
            "Sold for moist or wet ground, and said to stand drought once it has taken.",
            "Wild home in wet meadows, ditches or stream banks; not pond plants.",
            "Clumps of sedge or rush, and flowers with stems that bend and rise again.",
        ),
        ZONE_SOURCE,
    ),
    Zone.SIDE: ZoneGuidance(
        "Is moist or soaked in larger storms, for hours and not for days.",
        (
            "Sold for average to moist ground.",
            "Thick roots that hold a slope; clumps that meet within two years.",
            "Stands a wet day and a dry month.",
        ),
        ZONE_SOURCE,
    ),
    Zone.RIM: ZoneGuidance(
        "Is rarely under water and dries first.",
        (
            "Sold for dry or average ground, and said to stand drought.",
            "Low enough to see over, with roots that knit the berm together.",
            "No plants that want wet feet.",
        ),
        ZONE_SOURCE,
    ),
}

ELSEWHERE = (
    "The plant list covers parts of the United States only, so no kinds are named here. "
    "Take the traits below to a local nursery, and ask for plants native near you."
)

FROM_MEMORY = (
    "Spacing, sun, hardiness and hazard marks in the plant list are from memory, and so are most "
    "zones: check each plant with a nursery before you buy."
)


def cautions(plant: Plant, region: PlantRegion, list_region: ListRegion) -> tuple[str, ...]:
    """Return what to know before planting it, one sentence each."""
    said = []
    if plant.toxic:
        said.append("Can upset people or pets if eaten or touched (from memory).")
    if plant.usda_toxicity not in ("", "none"):
        said.append(f"The USDA plant table calls its toxicity {plant.usda_toxicity}.")
    if plant.aggressive:
        said.append("Spreads hard and can crowd out its neighbours (from memory).")
    elif plant.spreads == "some":
        said.append("Spreads or seeds itself (from memory).")
    if plant.thorny:
        said.append("Thorny or sharp (from memory).")
    if plant.over_8ft:
        said.append("Grows over 8 ft.")
    if plant.needs_long_wet:
        said.append("Needs long-wet soil: water it in dry spells.")
    if plant.remarks:
        said.append(f"The list remarks: {plant.remarks}.")
    return (*said, *_standing(plant, region, list_region))


def _standing(plant: Plant, region: PlantRegion, list_region: ListRegion) -> list[str]:
    """Say what is shaky about its home and its rating."""
    said = []
    if introduced := plant.introduced_in(region):
        said.append(f"In part of your region it is {introduced}.")
    if region not in plant.regions:
        said.append("The list does not give it as native in your region.")
    elif region not in plant.native_checked:
        said.append("That it is native in your region is from memory.")
    if not plant.well_rated(list_region):
        standing = plant.rating_standing(list_region)
        said.append(f"{standing[0].upper()}{standing[1:]}.")
    return said
