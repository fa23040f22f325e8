"""The figures of the planting and of all the work, and the working behind each."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking.figure import Figure, Value
from interview.garden.earth import work
from interview.garden.earth.work import Span, Spell, hours_of
from interview.garden.planting import cheaper
from interview.garden.planting.costs import costs, plant_count
from interview.garden.planting.count import SPACING_SOURCE
from interview.garden.planting.labor import work_of
from interview.garden.planting.results import PlantingResults
from interview.garden.planting.seed import GRASS, NATIVE, SeedRate
from interview.garden.planting.stock import SEED_SOURCE, SPACING, PlantSize
from interview.quantities.evidence import OURS, PRACTICE, Source
from interview.quantities.shown import HIGH, LOW, Rounding
from interview.quantities.units import quantity


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


Work = Figure[PlantingResults]


def _whole(found: PlantingResults) -> Span:
    return hours_of(work_of(found))


def _task(key: str) -> Callable[[PlantingResults], Span]:
    return lambda found: next(one.hours for one in work_of(found) if one.key == key)


def _pair(
    key: str,
    label: str,
    get: Callable[[PlantingResults], Span],
    formula: tuple[str, str],
    inputs: tuple[str, ...],
    source: Source = OURS,
) -> tuple[Work, Work]:
    """Return the hours at the quick and at the slow pace."""

    def side(pace: str) -> Callable[[PlantingResults], Value]:
        return lambda found: quantity(getattr(get(found), pace), "h")

    return (
        Figure(f"{key}_quick", f"{label}, quick", side("quick"), "h", "h", formula[0], inputs,
               source),
        Figure(f"{key}_slow", f"{label}, slow", side("slow"), "h", "h", formula[1], inputs, source),
    )  # fmt: skip


def _step(spell: Spell) -> Callable[[PlantingResults], Span]:
    return lambda found: hours_of(work_of(found), spell)


def _days(people: int, pace: int) -> Callable[[PlantingResults], Value]:
    return lambda found: _whole(found).shared(people).days[pace]


_BARROWS = ("barrows / 12 an hour", "barrows / 6 an hour")
_ALL = ("sod_hours_slow", "hours_slow", "berm_hours_slow", "carry_hours_slow", "way_hours_slow",
        "lay_hours_slow", "planting_hours_slow", "mulching_hours_slow",
        "spout_hours_slow")  # fmt: skip


FIGURES: tuple[Figure[PlantingResults], ...] = (
    Figure("cost_total", "Cost of what has a price", _cost, formula="sum of price x what is bought",
           inputs=("prices",), rounding=Rounding(places=2)),
    Figure("berm_outside_area", "Top and outside of the berm", lambda p: p.berm_outside, "ft**2",
           "m**2", "footprint_area - inside_area, of one bed", ("footprint_area", "inside_area")),
    Figure("planted_area", "Area planted or sown", lambda p: p.planted_area, "ft**2", "m**2",
           "inside_area of one bed, with berm_outside_area where that is planted",
           ("inside_area", "berm_outside_area", "berm_outside")),
    Figure("plants_total", "Plants to buy", plant_count, "", "",
           "zone area / (0.866 x spacing²), up, x beds; a zone that is sown has none",
           ("floor_area", "planted_area", "beds", "plant_size"), SPACING_SOURCE),
    Figure("plants_large_pots", "Plants, were all large pots", cheaper.as_large_pots, "", "",
           "plants_total for large pots, shrubs as far apart as the list has them",
           ("floor_area", "planted_area", "beds"), SPACING[PlantSize.LARGE_POT].source),
    Figure("plants_pond_line", "Plants to the pond line", cheaper.to_pond_line, "", "",
           "plants_total without those of the rim",
           ("floor_area", "pond_length", "pond_width", "beds", "plant_size"), SPACING_SOURCE),
    Figure("plants_large_pots_pond_line", "Plants to the pond line, were all large pots",
           cheaper.large_pots_to_pond_line, "", "", "plants_large_pots without those of the rim",
           ("floor_area", "pond_length", "pond_width", "beds"),
           SPACING[PlantSize.LARGE_POT].source),
    Figure("plants_with_seed", "Plugs, were the rim sown", cheaper.with_seed, "", "",
           "plants_total for plugs, without those of the rim",
           ("floor_area", "pond_length", "pond_width", "beds"), SEED_SOURCE),
    Figure("rim_planted_area", "Rim, planted or sown", lambda p: p.rim_area, "ft**2", "m**2",
           "(planted_area - area of the full pond) x beds",
           ("planted_area", "pond_length", "pond_width", "beds")),
    Figure("plants_first_half", "Plants this year, half following next year", cheaper.first_half,
           "", "", "plants_total / 2, up", ("plants_total",)),
    Figure("clumps_to_divide", "Grown clumps that make the grasses and sedges", cheaper.clumps, "",
           "", "grasses, sedges and rushes of each kind x beds / 3, up", ("plants_total",),
           cheaper.PIECES.source),
    Figure("cover_area", "Bare ground to cover until it is green", lambda p: p.bare_area, "ft**2",
           "m**2",
           "what is sown, and the top and outside of the berm where plants are set there, x beds",
           ("rim_planted_area", "berm_outside_area", "plant_size", "berm_outside", "beds"),
           rounding=HIGH),
    *_seed("seed", "rim sown", NATIVE, ("oz", "g"), "rim_planted_area", "plant_size"),
    *_seed("grass seed", "berm_outside_area x beds", GRASS, ("lb", "kg"), "berm_outside_area",
           "berm_outside", "beds"),
    *_pair("sod_hours", "Hours to lift the sod and lay it", _task("sod"),
           ("sod to lift / 100 ft² (9.3 m²) an hour", "sod to lift / 50 ft² (4.6 m²) an hour"),
           ("sod_lifted",)),
    *_pair("berm_hours", "Hours to build the berm", _task("berm"),
           ("undisturbed soil of it / 1 yd³ (0.76 m³) an hour",
            "undisturbed soil of it / 0.5 yd³ (0.38 m³) an hour"),
           ("berm_bank_soil",)),
    *_pair("carry_hours", "Hours to wheel soil off, or in for the berm", _task("carry"),
           _BARROWS, ("barrows_off", "berm_soil_volume", "barrow")),
    *_pair("way_hours", "Hours for the channel or the trench", _task("way"),
           ("soil of the channel / 0.5 yd³ (0.38 m³), or trench / 10 ft (3 m), an hour",
            "soil of the channel / 0.25 yd³ (0.19 m³), or trench / 5 ft (1.5 m), an hour"),
           ("channel_soil", "spout_distance", "water_by"), PRACTICE),
    *_pair("lay_hours", "Hours to bring in compost and stone", _task("lay"), _BARROWS,
           ("compost_volume", "stone_volume", "barrow")),
    *_pair("planting_hours", "Hours to plant and water in", _task("planting"),
           ("plants / 20 an hour", "plants / 10 an hour"), ("plants_total",)),
    *_pair("mulching_hours", "Hours to bring in and spread mulch", _task("mulching"), _BARROWS,
           ("mulch_volume", "barrow")),
    *_pair("spout_hours", "Hours to connect the downspouts", _task("spout"),
           ("downspouts / 2 an hour", "downspouts / 1 an hour"), ("spouts_here",), PRACTICE),
    *_pair("step_dig_hours", "Hours to dig and build", _step(Spell.DIG),
           ("sum over sod, digging, berm and soil wheeled, quick",
            "sum over sod, digging, berm and soil wheeled, slow"), _ALL[:4]),
    *_pair("step_lay_hours", "Hours to lay the floor and the stone", _step(Spell.LAY),
           ("sum over channel or trench, compost and stone, quick",
            "sum over channel or trench, compost and stone, slow"), _ALL[4:6]),
    *_pair("step_plant_hours", "Hours to plant and mulch", _step(Spell.PLANT),
           ("sum over planting, mulch and downspouts, quick",
            "sum over planting, mulch and downspouts, slow"), _ALL[6:]),
    *_pair("work_hours", "Hours of all the work, one person", _whole,
           ("sum of all the hours, quick", "sum of all the hours, slow"), _ALL),
    *_pair("work_hours_two", "Hours of all the work, two people",
           lambda found: _whole(found).shared(2), ("half of that", "half of that"),
           ("work_hours_quick", "work_hours_slow")),
    *_pair("work_hours_heat", "Hours of all the work in heat, one person",
           lambda found: _whole(found).in_heat,
           ("quick x 60 / 45: in heat 15 minutes of each hour are rest",
            "slow x 60 / 45: in heat 15 minutes of each hour are rest"),
           ("work_hours_quick", "work_hours_slow"), work.HEAT.source),
    Figure("days_one_quick", "Days of one person, quick", _days(1, 0),
           formula="hours / 6 a day, up", inputs=("work_hours_quick",), source=OURS),
    Figure("days_one_slow", "Days of one person, slow", _days(1, 1),
           formula="hours / 6 a day, up", inputs=("work_hours_slow",), source=OURS),
    Figure("days_two_quick", "Days of two people, quick", _days(2, 0),
           formula="hours / 6 a day, up", inputs=("work_hours_two_quick",), source=OURS),
    Figure("days_two_slow", "Days of two people, slow", _days(2, 1),
           formula="hours / 6 a day, up", inputs=("work_hours_two_slow",), source=OURS),
    Figure("people_for_three_days", "People who end in three days, slow",
           lambda found: work.people_for(_whole(found)),
           formula="hours / (3 days x 6), up", inputs=("work_hours_slow",), source=OURS),
)  # fmt: skip
