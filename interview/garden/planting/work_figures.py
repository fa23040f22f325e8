"""The figures of the work, and the working behind each."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking.figure import Figure, Value
from interview.garden.earth import work
from interview.garden.earth.work import Span, Spell, hours_of
from interview.garden.planting.labor import work_of
from interview.garden.planting.results import PlantingResults
from interview.quantities.evidence import OURS, PRACTICE, Source
from interview.quantities.units import quantity

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

FIGURES: tuple[Work, ...] = (
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
