"""The figures of the planting, and the working behind each."""

from __future__ import annotations

from interview.asking.figure import Figure, Value
from interview.garden.planting import work_figures
from interview.garden.planting.costs import costs, plant_count
from interview.garden.planting.count import SPACING_SOURCE
from interview.garden.planting.results import PlantingResults
from interview.quantities.shown import Rounding


def _cost(found: PlantingResults) -> Value:
    """Return the sum of everything that has a price, or say that none was given."""
    priced = costs(found)
    return priced.total if priced.lines else "no prices given"


FIGURES: tuple[Figure[PlantingResults], ...] = (
    Figure(
        "cost_total",
        "Cost of what has a price",
        _cost,
        formula="sum of price x what is bought",
        inputs=("prices",),
        rounding=Rounding(places=2),
    ),
    Figure(
        "plants_total",
        "Plants to buy",
        plant_count,
        "",
        "",
        "zone area / (0.866 x spacing²), up, x beds",
        ("floor_area", "rim_area", "beds"),
        SPACING_SOURCE,
    ),
    *work_figures.FIGURES,
)
