"""What the gardener wants of the planting, and which plants go against it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from interview.calc.plant_choice import Season
from interview.calc.plant_record import ListRegion, Plant, PlantRegion, Sun, Zone
from interview.units import Quantity, magnitude


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

    @property
    def home(self) -> tuple[PlantRegion, ListRegion]:
        """Return both regions; raises ValueError where one is not known."""
        if self.region is None or self.list_region is None:
            raise ValueError("Say which part of the country the garden is in.")
        return self.region, self.list_region

    def keep(self, plant: Plant) -> bool:
        """Tell whether ``plant`` is one of the favourites."""
        return any(plant.answers_to(name) for name in self.favourites)


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
