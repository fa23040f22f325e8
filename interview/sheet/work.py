"""How long it takes to build, and in which fair spells of weather, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from interview.garden.earth.work import DAY_HOURS, PLANNED_DAYS
from interview.garden.figures import BY_KEY, find
from interview.garden.plan import Plan
from interview.garden.planting.labor import work_of
from interview.garden.site import cautions
from interview.garden.size import questions as bed
from interview.garden.size.answered import is_mulched
from interview.garden.summary import figure_words, wrap
from interview.quantities.shown import Rounding

MULCHED = ", the mulch down the same day"
LEFT, LAST = ", with the downspout left as it is", "the downspout last"
STEPS = (
    (
        "step_dig_hours",
        "Dig and build",
        f"while it stays dry to the end of the step{LEFT}",
        ("sod_hours", "hours", "berm_hours", "carry_hours"),
    ),
    (
        "step_lay_hours",
        "Lay",
        "floor loosened, compost, notch and stone, and the levels tried with a bucket of water",
        ("way_hours", "lay_hours"),
    ),
    (
        "step_plant_hours",
        "Plant",
        f"on a cool or cloudy day, each plant watered in{MULCHED}; {LAST}",
        ("planting_hours", "mulching_hours", "spout_hours"),
    ),
)
"""The steps: their hours, what they are called, how they go, the hours of their tasks."""


def work(plan: Plan) -> Iterator[str]:
    """Yield the hours task by task, of one and of two people, and the days by the forecast."""
    yield from _work(plan, by_task=True)


def in_short(plan: Plan) -> Iterator[str]:
    """Yield the hours step by step and in all, and what to heed; who plans has read the rest."""
    yield from _work(plan, by_task=False)


def _work(plan: Plan, by_task: bool) -> Iterator[str]:
    _ = work_of(plan.planting)
    barrow = Rounding(2).words(plan.answers[bed.BARROW], "L" if plan.metric else "ft**3")
    counted = (
        f"Hours of one person with a spade and a barrow of {barrow}, quick to slow; roots, stones "
        "and wet clay take longer."
    )
    if by_task:
        counted += (
            " Pegs, strings, levels and loosening the floor come on top. "
            f"A day is {DAY_HOURS.value:g} h of work."
        )
    yield from wrap(counted)
    mulched = is_mulched(plan.answers)
    other = {} if mulched else {MULCHED: ""}
    if not plan.earth.spouts_here:
        other |= {LEFT: "", LAST: "the water let in last"}
    for place, (key, name, how, parts) in enumerate(STEPS, 1):
        for words, instead in other.items():
            how = how.replace(words, instead)
        said = f"{place}. {name}, in all: {_span(plan, key)}; {plan.answers.told(how)}"
        yield from wrap(said, "   ")
        for part in parts if by_task else ():
            slow = find(BY_KEY[f"{part}_slow"], plan)
            if slow.number(plan.metric):
                label = slow.figure.label.removesuffix(", slow").removeprefix("Hours ")
                yield from _line(f"   - {label}:", _span(plan, part))
    for label, key, days in (
        ("All of it, one person", "work_hours", "days_one"),
        *([("All of it, two people", "work_hours_two", "days_two")] if by_task else ()),
    ):
        count = _span(plan, days)
        many = "day" if count == "1" else "days"
        yield from _line(f"{label}:", f"{_span(plan, key)}, {count} {many}")
    if by_task:
        yield from _line("In heat, one person:", _span(plan, "work_hours_heat"))
    heat = "35 °C" if plan.metric else "95 °F"
    yield from wrap(
        f"CAUTION: At {heat} rest 15 minutes of each hour, in shade and with water; when it is "
        "hotter rest longer, or wait. A full barrow of wet soil weighs more than most people "
        "should push: fill it less and go more often.",
        "  ",
    )
    if plan.earth.spouts_here:
        yield from wrap(f"CAUTION: {plan.answers.told(cautions.SPOUT)}", "  ")
    yield from wrap(
        "Do not leave the floor open to rain: it seals bare soil, and a step on wet soil packs it. "
        "Look at the forecast before each step. If rain comes before "
        f"{'the mulch is down' if mulched else 'it is planted'}, cover the floor and what is bare "
        "with a sheet held by stones, and go on when the soil crumbles in the hand again.",
        "  ",
    )
    people = find(BY_KEY["people_for_three_days"], plan).value
    if by_task and isinstance(people, int) and people > 2:
        yield from wrap(
            f"At the slow pace {people} people finish it in {PLANNED_DAYS.value} days. Fewer "
            "take it in two fair spells: step 1 and a cover over the floor, then steps 2 and 3.",
            "  ",
        )


def _span(plan: Plan, key: str) -> str:
    quick, slow = (figure_words(plan, f"{key}_{pace}") for pace in ("quick", "slow"))
    return slow if quick == slow else f"{quick.removesuffix(' h')} to {slow}"


def _line(label: str, value: str) -> Iterator[str]:
    yield from wrap(f"{label:<46}{value}", " " * 46)
