"""The figures of the planting, and the working behind each."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking.figure import Figure, Value
from interview.garden.planting import cheaper, work_figures
from interview.garden.planting.costs import costs, plant_count
from interview.garden.planting.count import SPACING_SOURCE
from interview.garden.planting.results import PlantingResults
from interview.garden.planting.seed import GRASS, NATIVE, SeedRate
from interview.garden.planting.stock import SEED_SOURCE, SPACING, PlantSize
from interview.quantities.evidence import Source
from interview.quantities.shown import HIGH, LOW, Rounding


def _cost(found: PlantingResults) -> Value:
    """Return the sum of everything that has a price, or say that none was given."""
    priced = costs(found)
    return priced.total if priced.lines else "no prices given"


def _seed(
    name: str, said: str, rate: SeedRate, units: tuple[str, str], *inputs: str
) -> tuple[Figure[PlantingResults], ...]:
    """Return the least and the most seed of one kind."""

    def weight(most: bool) -> Callable[[PlantingResults], Value]:
        def found(results: PlantingResults) -> Value:
            one = next((one for one in results.sowings if one.name == name), None)
            return "none" if one is None else one.most if most else one.least

        return found

    def figure(word: str, most: bool, source: Source) -> Figure[PlantingResults]:
        key = f"{name.replace(' ', '_')}_{word}"
        word_of_rate = "thickest" if most else "thinnest"
        formula = f"{said} x the {word_of_rate} rate of sowing, from its source"
        label = f"{name.capitalize()} to sow, {word_of_rate}"
        rounding = HIGH if most else LOW
        return Figure(key, label, weight(most), *units, formula, inputs, source, rounding)

    return (
        figure("least", False, rate.least.source),
        figure("most", True, rate.most.source),
    )


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
        "berm_outside_area",
        "Top and outside of the berm",
        lambda p: p.berm_outside,
        "ft**2",
        "m**2",
        "footprint_area - inside_area, of one bed",
        ("footprint_area", "inside_area"),
    ),
    Figure(
        "planted_area",
        "Area planted or sown",
        lambda p: p.planted_area,
        "ft**2",
        "m**2",
        "inside_area of one bed, with berm_outside_area where that is planted",
        ("inside_area", "berm_outside_area", "berm_outside"),
    ),
    Figure(
        "plants_total",
        "Plants to buy",
        plant_count,
        "",
        "",
        "zone area / (0.866 x spacing²), up, x beds; a zone that is sown has none",
        ("floor_area", "planted_area", "beds", "plant_size"),
        SPACING_SOURCE,
    ),
    Figure(
        "plants_large_pots",
        "Plants, were all large pots",
        cheaper.as_large_pots,
        "",
        "",
        "plants_total for large pots, shrubs as far apart as the list has them",
        ("floor_area", "planted_area", "beds"),
        SPACING[PlantSize.LARGE_POT].source,
    ),
    Figure(
        "plants_pond_line",
        "Plants to the pond line",
        cheaper.to_pond_line,
        "",
        "",
        "plants_total without those of the rim",
        ("floor_area", "pond_length", "pond_width", "beds", "plant_size"),
        SPACING_SOURCE,
    ),
    Figure(
        "plants_large_pots_pond_line",
        "Plants to the pond line, were all large pots",
        cheaper.large_pots_to_pond_line,
        "",
        "",
        "plants_large_pots without those of the rim",
        ("floor_area", "pond_length", "pond_width", "beds"),
        SPACING[PlantSize.LARGE_POT].source,
    ),
    Figure(
        "plants_with_seed",
        "Plugs, were the rim sown",
        cheaper.with_seed,
        "",
        "",
        "plants_total for plugs, without those of the rim",
        ("floor_area", "pond_length", "pond_width", "beds"),
        SEED_SOURCE,
    ),
    Figure(
        "rim_planted_area",
        "Rim, planted or sown",
        lambda p: p.rim_area,
        "ft**2",
        "m**2",
        "(planted_area - area of the full pond) x beds",
        ("planted_area", "pond_length", "pond_width", "beds"),
    ),
    Figure(
        "plants_first_half",
        "Plants this year, half following next year",
        cheaper.first_half,
        "",
        "",
        "plants_total / 2, up",
        ("plants_total",),
    ),
    Figure(
        "clumps_to_divide",
        "Grown clumps that make the grasses and sedges",
        cheaper.clumps,
        "",
        "",
        "grasses, sedges and rushes of each kind x beds / 3, up",
        ("plants_total",),
        cheaper.PIECES.source,
    ),
    Figure(
        "cover_area",
        "Bare ground to cover until it is green",
        lambda p: p.bare_area,
        "ft**2",
        "m**2",
        "what is sown, and the top and outside of the berm where plants are set there, x beds",
        ("rim_planted_area", "berm_outside_area", "plant_size", "berm_outside", "beds"),
        rounding=HIGH,
    ),
    *_seed("seed", "rim sown", NATIVE, ("oz", "g"), "rim_planted_area", "plant_size"),
    *_seed(
        "grass seed",
        "berm_outside_area x beds",
        GRASS,
        ("lb", "kg"),
        "berm_outside_area",
        "berm_outside",
        "beds",
    ),
    *work_figures.FIGURES,
)
