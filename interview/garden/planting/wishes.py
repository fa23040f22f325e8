"""What the gardener wants of the planting, and which plants go against it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from enum import Enum
from typing import NamedTuple

from interview.garden.planting.choice import USUAL_SPACING_IN, Season
from interview.garden.planting.record import INSECTS, Plant, Sun, introduced_in_state
from interview.garden.planting.regions import ListRegion, PlantRegion, State
from interview.garden.size.zones import Zone
from interview.quantities.guards import within
from interview.quantities.units import Quantity, magnitude, plain_number


class KeepOut(Enum):
    """What a gardener may ask to have kept out."""

    TOXIC = "toxic"
    THORNY = "thorny"
    AGGRESSIVE = "aggressive"
    LARGE = "over 8 ft"


class Prefer(Enum):
    """What a gardener may ask to have first, where several plants suit alike."""

    INSECTS = "insects"
    BIRDS = "birds"
    TRADE = "trade"

    def met_by(self, plant: Plant) -> bool:
        """Tell whether the plant list says it of ``plant``."""
        if self is Prefer.TRADE:
            return plant.trade in ("routine", "listed")
        named = INSECTS if self is Prefer.INSECTS else ("birds", "hummingbirds")
        return not set(named).isdisjoint(plant.wildlife)


class Swap(NamedTuple):
    """A proposed plant that is not wanted, and the one to take its place."""

    out: str
    into: str = ""
    """Empty where the best of the others is to be taken."""


def read_swap(words: str) -> Swap:
    """Return the swap that ``this for that`` or ``this`` alone asks for."""
    out, *into = re.split(r"\s+for\s+", " ".join(words.split()), maxsplit=1, flags=re.IGNORECASE)
    return Swap(out, into[0] if into else "")


class Wishes(NamedTuple):
    """What the gardener wants of the planting."""

    region: PlantRegion | None
    """None outside the plant list: only plants of the gardener's own file are proposed."""
    list_region: ListRegion | None
    sun: Sun = Sun.FULL
    floor_height: Quantity | None = None
    """Greatest height on the floor and the side; None for no limit."""
    rim_height: Quantity | None = None
    natives_only: bool = True
    keep_out: frozenset[KeepOut] = frozenset()
    bloom: frozenset[Season] = frozenset(Season)
    road_salt: bool = False
    prefer: frozenset[Prefer] = frozenset()
    favourites: tuple[str, ...] = ()
    """Scientific or common names, placed where they can grow whatever the other wishes say."""
    swaps: tuple[Swap, ...] = ()
    """Proposed plants to be changed for others, in order; the rest of the planting stays."""
    hardiness_zone: int | None = None
    """USDA plant hardiness zone, 1 to 13; None where it is not known."""
    place: State | None = None
    """The gardener's own state."""
    apart_in: float = USUAL_SPACING_IN.value
    """Distance between plants whose kind is the gardener's to find."""
    sown: frozenset[Zone] = frozenset()
    """Zones that are sown, not planted."""

    def keep(self, plant: Plant) -> bool:
        """Tell whether ``plant`` is one of the favourites."""
        return any(plant.answers_to(name) for name in self.favourites)


NOT_NATIVE = "The list does not give it as native in your region."


def unsuited(plant: Plant, wishes: Wishes) -> str:
    """Return why ``plant`` cannot thrive in this bed; empty where it can."""
    if wishes.sun not in plant.sun:
        return f"It wants {sun_words(plant.sun)}."
    if wishes.place and wishes.place.code in plant.regulated_in:
        return f"The list of noxious weeds of {wishes.place.name} named it in 2015."
    zone = wishes.hardiness_zone
    return "" if zone is None or not plant.hardiness else _frozen(plant, plant.hardiness, zone)


def _frozen(plant: Plant, span: tuple[int, int], zone: int) -> str:
    """Return why ``plant`` stands the winters or the summers of ``zone`` badly, or nothing."""
    low, high = span
    if low <= zone <= high:
        return ""
    cold, warm = ("hardiness_min", low, "warmer"), ("hardiness_max", high, "colder")
    fact, limit, way = cold if zone < low else warm
    known = "by a list read in a second copy" if plant.rests(fact) else "from memory"
    known = "by your own file" if plant.own else known
    return f"It grows in zone {limit} and {way} ({known}), and you are in zone {zone}."


def sun_words(sun: tuple[Sun, ...]) -> str:
    """Say how much sun is wanted, such as ``full sun or part sun``."""
    words = {Sun.FULL: "full sun", Sun.PART: "part sun", Sun.SHADE: "shade"}
    return " or ".join(words[one] for one in sun)


def objection(plant: Plant, zone: Zone, wishes: Wishes) -> str:
    """Return why ``plant`` goes against the wishes in ``zone``; empty where it does not.

    What spreads hard goes against them always: it is planted only where it is asked for by name.
    """
    if wishes.natives_only and not plant.at_home(wishes.region):
        return NOT_NATIVE
    if wishes.natives_only and wishes.place and introduced_in_state(plant, wishes.place):
        return f"A plant list of {wishes.place.name} calls it introduced, not native."
    if wishes.natives_only and wishes.place and wishes.place.code in plant.absent_in:
        return f"It does not grow wild in {wishes.place.name} (from memory)."
    limit = wishes.rim_height if zone is Zone.RIM else wishes.floor_height
    if limit is not None and not within(plant.height_max_ft, magnitude(limit, "ft")):
        tall = f"{plant.height_max_ft:g} ft ({plain_number(plant.height_max_ft * 0.3048, 2)} m)"
        return f"It grows to {tall}, taller than you want here."
    marks = (
        (KeepOut.TOXIC, plant.toxic, "It is toxic or can irritate."),
        (KeepOut.THORNY, plant.thorny, "It is thorny or sharp."),
        (KeepOut.LARGE, plant.over_8ft, "It grows over 8 ft (2.4 m)."),
    )
    unasked = KeepOut.AGGRESSIVE in wishes.keep_out or not plant.own
    if plant.aggressive and unasked:
        return "It spreads hard: it is planted only where you ask for it by name."
    return next((said for mark, has, said in marks if has and mark in wishes.keep_out), "")


SHADE_FALLBACK = "The list gives it part sun: try it at the brightest edge, with fewer flowers."
WARM_FALLBACK = (
    "The list gives the next colder zone as its warmest, from memory: ask a nursery near you."
)


def eased_wishes(wishes: Wishes) -> Iterator[Wishes]:
    """Yield the wishes eased step by step: in shade for part sun, then by a hardiness zone."""
    if wishes.sun is Sun.SHADE:
        wishes = wishes._replace(sun=Sun.PART)
        yield wishes
    if wishes.hardiness_zone is not None:
        yield wishes._replace(hardiness_zone=wishes.hardiness_zone - 1)


def makeshift(plant: Plant, wishes: Wishes) -> str:
    """Say what must be eased for ``plant``; nothing where a source, not memory, forbids it."""
    zone = wishes.hardiness_zone
    warm = bool(zone and plant.hardiness and zone > plant.hardiness[1])
    if warm and (plant.own or plant.rests("hardiness_max")):
        return ""
    eased = ((wishes.sun not in plant.sun, SHADE_FALLBACK), (warm, WARM_FALLBACK))
    return " ".join(said for so, said in eased if so)
