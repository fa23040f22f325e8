"""Says of one plant, zone by zone, why it is in the planting or why it is out."""

from __future__ import annotations

from collections.abc import Sequence

from interview.garden.planting.choose import PlantingPlan, ZonePlan, bed_of, candidate
from interview.garden.planting.record import Plant
from interview.garden.planting.swap import matching, stranger
from interview.garden.planting.wishes import Wishes


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
            return f"{pick.count} planted. {pick.why}{against}"
    if not zone.places:
        return "There is no ground to plant."
    if any(matching([plant], swap.out) for swap in wishes.swaps):
        return "You left it out."
    one = candidate(plant, wishes, bed_of(zone.zone, zone.site))
    return one.against or f"It would do as well; others were placed first. {one.why}"
