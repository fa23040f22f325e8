"""How many plants fill an area, and how they are set out."""

from __future__ import annotations

from collections.abc import Sequence

from interview.garden.planting.record import Plant, PlantKind
from interview.quantities.evidence import OURS, PRACTICE, Cited, Provenance, Source
from interview.quantities.guards import whole_up, within
from interview.quantities.units import Quantity, magnitude

SPACING_SOURCE = Source(
    "Step 6: Choose the Right Time, Right Plant, Right Place, Alabama Cooperative Extension "
    "System, web page: spacing equations",
    Provenance.SECONDARY,
)

ROW_SHARE = Cited(0.866, SPACING_SOURCE)
"""Distance between rows over the distance between plants, when rows are shifted."""

FEWEST_OF_A_KIND = Cited(2, OURS)
"""No single plants of a kind, except shrubs."""

MOST_OF_A_KIND = Cited(30, OURS)
"""A kind that takes more plants than this to fill its share comes after larger ones."""

GROUPS = Cited((7, 5, 3), PRACTICE)
"""Plants of one kind are set in groups of these sizes."""


def plant_count(area: Quantity, spacing: Quantity) -> int:
    """Return the whole plants that fill ``area`` at ``spacing`` in shifted rows, rounded up.

    ``area`` is an area, zero or more; ``spacing`` the length between neighbors, above zero:
    area / (0.866 spacing squared). Source: ``SPACING_SOURCE``.
    """
    return whole_up(magnitude(area, "ft**2") / _footprint(magnitude(spacing, "ft")))


def _footprint(spacing_ft: float) -> float:
    return spacing_ft**2 * ROW_SHARE.value


def fewest(plant: Plant) -> int:
    """Return the fewest plants of this kind that are set together."""
    return 1 if plant.kind is PlantKind.SHRUB else FEWEST_OF_A_KIND.value


def crowds(plant: Plant, area_ft2: float) -> bool:
    """Tell whether the fewest plants of this kind need more than ``area_ft2``."""
    return not within(fewest(plant) * _footprint(plant.spacing_in / 12), area_ft2)


def swarms(plant: Plant, area_ft2: float) -> bool:
    """Tell whether it takes more than ``MOST_OF_A_KIND`` of this kind to fill ``area_ft2``."""
    return area_ft2 / _footprint(plant.spacing_in / 12) > MOST_OF_A_KIND.value


def shared_counts(plants: Sequence[Plant], area: Quantity) -> tuple[int, ...]:
    """Return how many of each plant fill ``area`` when each kind gets an equal share of it.

    Kinds of one spacing add up to ``plant_count``, unless a kind is raised to the
    fewest that are set together. ``area`` is an area; of none there are no plants.
    """
    ground = magnitude(area, "ft**2")
    counts = []
    total = 0.0
    for plant in plants:
        before = total
        total += ground / len(plants) / _footprint(plant.spacing_in / 12)
        counts.append(max(fewest(plant), whole_up(total) - whole_up(before)) if ground else 0)
    return tuple(counts)


def own_count(plant: Plant, share_ft2: float) -> int:
    """Return how many plants of one kind fill ``share_ft2``, its own share of a zone."""
    if share_ft2 <= 0:
        return 0
    return max(fewest(plant), whole_up(share_ft2 / _footprint(plant.spacing_in / 12)))


def drifts(count: int) -> tuple[int, ...]:
    """Return ``count`` split into groups of seven, five and three, as drifts are planted.

    One, two or four are left as one group; what cannot be split evenly makes the last group.
    """
    groups = []
    left = count
    for size in GROUPS.value:
        while left >= size and (left - size == 0 or left - size >= min(GROUPS.value)):
            groups.append(size)
            left -= size
    return (*groups, left) if left else tuple(groups)
