"""What is said about a plant and about a zone: hazards, doubts, and traits to look for."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from interview.garden.planting.choice import HARD_TO_BUY
from interview.garden.planting.record import Plant, introduced_at
from interview.garden.planting.regions import ListRegion, PlantRegion
from interview.garden.planting.wishes import NOT_NATIVE
from interview.garden.size.zones import Zone
from interview.quantities.evidence import OURS, PRACTICE, Provenance, Source
from interview.quantities.units import plain_number
from interview.reading.echo import word_list


def short_name(plant: Plant) -> str:
    """Return the common name without the other one in brackets."""
    return plant.common_name.partition(" (")[0]


class ZoneGuidance(NamedTuple):
    """How wet a zone is, and what to look for where no species can be named."""

    wetness: str
    traits: tuple[str, ...]
    wetness_source: Source
    traits_source: Source = PRACTICE


ZONE_SOURCE = Source(
    "Rain Garden Handbook for Western Washington, WSU Extension and WA Ecology, 2013, p. A-2",
    Provenance.PUBLISHED,
)

GUIDANCE = {
    Zone.FLOOR: ZoneGuidance(
        "Stands in water after storms, and must also stand dry spells.",
        (
            "Sold for moist or wet ground, and said to stand drought once it has rooted.",
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
            "No plants that want wet roots.",
        ),
        ZONE_SOURCE,
    ),
}

DRY_GROUND = ZoneGuidance(
    "Is under water for a few hours after a storm, if at all, and then as dry as the lawn.",
    (
        "Sold for dry or average ground, and said to stand drought.",
        "Stands a wet day and a dry month.",
        "No plants that want wet roots.",
    ),
    OURS,
)
DRY_NOTES = {
    zone: f"The {zone.value} is under water for less than 6 hours in the storm it holds, so it is "
    "planted as dry ground: none of the plants of wet ground, which would dry out here."
    for zone in (Zone.FLOOR, Zone.SIDE)
}

ELSEWHERE = (
    "The plant list covers parts of the United States only, so no kinds are named here. Take what "
    "is said of each zone to a local nursery and ask for plants native near you, or give the "
    "interview a plant file of your own."
)

OWN_ONLY = (
    "The packaged plant list does not cover this place, so every kind named is of your own file."
)

FROM_MEMORY = (
    "What is marked * is from memory, and so are the warmest zone, thorns, and most of what grows "
    "on floor, side or rim: check each plant with a nursery before you buy. A local list of "
    "invasive plants overrules this one."
)


def salt_note(plants: Sequence[Plant]) -> str:
    """Say which of ``plants`` are not known to stand salt."""
    doubtful = dict.fromkeys(short_name(one) for one in plants if not one.salt_tolerant)
    if not doubtful:
        return "All these stand some salt in the soil; road salt on the leaves is another matter."
    return (
        f"Not known to stand road salt: {', '.join(doubtful)}. Set them farthest from where salted "
        "water comes in, or ask a nursery."
    )


_IMPLIED = frozenset(
    (
        "spreads",
        "self-seeds",
        "aggressive",
        "aggressive self-seeder",
        "tall",
        "large",
        "thorny",
        "toxic if eaten",
        "needs long-wet soil",
    )
)
"""Remarks that a mark of the same row has said already."""


def remarks(plant: Plant) -> str:
    """Return the remarks of its row that no mark has said."""
    parts = (one.strip() for part in plant.remarks.split(";") for one in part.split(", self-"))
    return "; ".join(one for one in parts if one and one not in _IMPLIED and one != "seeds")


def apart_words(inches: float, metric: bool) -> str:
    """Write a distance between plants, given in inches."""
    return f"{inches * 2.54:.0f} cm" if metric else f"{inches:g} in"


def tall_words(plant: Plant, metric: bool) -> str:
    """Write how tall a plant grows at the most."""
    feet = plant.height_max_ft
    return f"{plain_number(feet * 0.3048, 2)} m" if metric else f"{feet:g} ft"


_SHARE = {"slight": "mildly ", "moderate": "moderately ", "severe": "severely "}
"""How a toxicity of the USDA plant table is called."""


def stands_words(plant: Plant) -> str:
    """Say what it stands, what it wants, whom it feeds and how it is sold, as far as is known."""
    degrees = (
        ("drought", plant.drought),
        ("soil without air", plant.standing_water),
        ("salt in the soil", plant.salt),
    )
    said = [f"stands {what} {_HOW_WELL[degree]}" for what, degree in degrees if degree]
    if plant.moisture:
        said.append(f"wants {' to '.join(plant.moisture)} water")
    if plant.wildlife:
        said.append(f"for {', '.join(plant.wildlife)}")
    if plant.trade:
        said.append(_SOLD[plant.trade])
    return "; ".join(said)


_HOW_WELL = {"none": "not at all", "low": "badly", "medium": "fairly", "high": "well"}
_SOLD = {
    "routine": "sold widely",
    "listed": "on lists of what is sold",
    "contract": "grown on order",
    "collected": "gathered wild, seldom sold",
    "unknown": "no known seller",
}
"""How the degrees and the ways of sale of the plant list are called."""


def hazard_names(plant: Plant) -> str:
    """Name what may harm people or the planting in a word or two each; empty where nothing may."""
    said = []
    if plant.toxic or plant.usda_toxicity in _SHARE:
        said.append(f"{_SHARE.get(plant.usda_toxicity, '')}toxic")
    if plant.aggressive:
        said.append("spreads hard")
    if plant.thorny:
        said.append("thorny")
    return ", ".join(said)


def hazards(plant: Plant) -> tuple[str, ...]:
    """Return what may harm people or the planting, one sentence each."""
    memory = "" if plant.own else " (from memory)"
    said = []
    if plant.toxic:
        known = unless_read(plant, "toxicity")
        said.append(f"Can harm people or pets if eaten or touched{known}.")
    if plant.usda_toxicity not in ("", "none"):
        said.append(f"The USDA plant table calls its toxicity {plant.usda_toxicity}.")
    if plant.aggressive:
        known = unless_read(plant, "spread")
        said.append(f"Spreads hard and can crowd out its neighbors{known}.")
    if plant.thorny:
        said.append(f"Thorny or sharp{memory}.")
    if _tells_a_hazard(plant):
        said.append(remark_words(plant))
    return tuple(said)


def unless_read(plant: Plant, fact: str) -> str:
    """Return `` (from memory)`` where nothing that was read stands behind ``fact``."""
    return "" if plant.own or plant.rests(fact) else " (from memory)"


def _tells_a_hazard(plant: Plant) -> bool:
    """Tell whether its remark is of what is dangerous about it; one's own may be of anything."""
    marked = plant.toxic or plant.aggressive or plant.thorny
    return marked and not plant.own and bool(remarks(plant))


def remark_words(plant: Plant) -> str:
    """Return its remark as a sentence that says whose it is; nothing where there is none."""
    whose = "Your plant file" if plant.own else "The list"
    return f"{whose} remarks: {remarks(plant)}." if remarks(plant) else ""


def plain_remark(plant: Plant) -> str:
    """Return its remark as a sentence where it tells no hazard; else nothing."""
    return "" if _tells_a_hazard(plant) else remark_words(plant)


def doubts(
    plant: Plant, region: PlantRegion | None, list_region: ListRegion | None
) -> tuple[str, ...]:
    """Return what else to know before planting it, one sentence each, the weightiest first."""
    said = home_doubts(plant, region)
    standing = plant.rating_standing(list_region)
    if not plant.well_rated(list_region) and not plant.own:
        said.append(f"{standing[0].upper()}{standing[1:]}.")
    if plant.regulated_in:
        where = " and ".join(plant.regulated_in)
        said.append(
            f"The list of noxious weeds of {where} named it in 2015: ask before you plant it."
        )
    if plant.spreads == "some":
        said.append(f"Spreads or seeds itself{unless_read(plant, 'spread')}.")
    if plant.trade in HARD_TO_BUY:
        said.append("The USDA plant table knows nobody who grows it for sale: ask early.")
    if plant.over_8ft:
        said.append("Grows over 8 ft (2.4 m).")
    if plant.needs_long_wet:
        said.append("Needs long-wet soil: water it in dry spells.")
    if remark := plain_remark(plant):
        said.append(remark)
    return tuple(said)


def cautions(
    plant: Plant, region: PlantRegion | None, list_region: ListRegion | None
) -> tuple[str, ...]:
    """Return all there is to know before planting it, one sentence each."""
    return (*hazards(plant), *doubts(plant, region, list_region))


def home_doubts(plant: Plant, region: PlantRegion | None) -> list[str]:
    """Return what is shaky about its being native here."""
    said = []
    if places := introduced_at(plant, region):
        lists, calls = ("Plant lists", "call") if places[1:] else ("A plant list", "calls")
        said.append(f"{lists} of {word_list(places)} {calls} it introduced, not native.")
    if not plant.at_home(region):
        said.append(NOT_NATIVE)
    elif region not in plant.native_checked and not plant.own:
        said.append("That it is native in your region is from memory.")
    return said
