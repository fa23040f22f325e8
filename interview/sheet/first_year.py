"""The care of the first year, of each size of plant and after a storm, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from interview.asking.lands import Half, land
from interview.garden.afterwards import questions as review
from interview.garden.plan import Plan
from interview.garden.planting.care import CARE, EARLY, SIGNS, WHEN_TO_PLANT, after_storm_steps
from interview.garden.planting.stock import PlantSize
from interview.garden.size import questions as bed
from interview.garden.summary import wrap
from interview.quantities.evidence import Provenance, Source
from interview.sheet.plants import month_words

STOCK_WORDS = {
    PlantSize.KINDS: "pots",
    PlantSize.POT: "small pots of 1 quart (1 L)",
    PlantSize.PLUG: "plugs",
    PlantSize.LARGE_POT: "large pots of 1 gallon (4 L)",
    PlantSize.SEED: "seed on the rim and plugs below it",
}
COLD = {Half.NORTH: (11, 12, 1, 2), Half.SOUTH: (5, 6, 7, 8)}
"""Months in which new plants are not set where winters freeze: common practice, no source."""


def care(plan: Plan) -> Iterator[str]:
    """Yield the work of the first year by month, signs of trouble, and what to do after a storm."""
    yield from _by_month(plan)
    yield ""
    yield from _two_years(plan)
    yield ""
    yield "How a plant fares (from memory):"
    for sign in SIGNS:
        yield from wrap(f"- {sign.trouble}: {sign.look} {sign.remedy}", "  ")
    yield ""
    yield from _after_storms(plan)


def care_in_short(plan: Plan) -> Iterator[str]:
    """Yield the work of the first year by month, and what to do after a storm."""
    yield from _by_month(plan)
    yield from _after_storms(plan)


def _by_month(plan: Plan) -> Iterator[str]:
    lead, tasks = year_of_care(plan)
    for line in lead:
        yield from wrap(line, "  ")
    for when, task in tasks:
        yield from wrap(f"{when}: {task}", "  ")


def _two_years(plan: Plan) -> Iterator[str]:
    size = plan.planting.planted
    yield from wrap(f"The first two years, {plan.answers.told(STOCK_WORDS[size])}:")
    for one in EARLY[size]:
        task = f"{plan.answers.told(one.task)}{standing_words(one.source)}"
        yield from wrap(f"- {one.when}: {task}", "  ")


def _after_storms(plan: Plan) -> Iterator[str]:
    yield "After a storm, when the water is"
    for said, change in after_storm_steps():
        yield from wrap(f"- {said}: {plan.answers.told(change)}", "  ")


def year_of_care(plan: Plan) -> tuple[list[str], list[tuple[str, str]]]:
    """Return what leads the work of the first year, and its tasks, each after when it falls.

    Months are named where they follow from the day of digging alone; seasons go by their frost.
    """
    lead = []
    day = plan.answers.get(review.DIG_DAY)
    cold = day is not None and day.month in COLD.get(land(plan.answers.country).half, ())
    if cold:
        lead.append(
            "You mean to dig in the cold months: where winters freeze, dig only in soil that is "
            "not frozen, mulch the bare floor, and plant after the last frost of spring."
        )
    planted = None if day is None or cold else day.month
    if planted is None:
        lead.append("Counted from the day of planting:")
    told: dict[str, list[str]] = {}
    bare = plan.answers[bed.MULCH_DEPTH].m <= 0
    for task in CARE:
        if task.mulched and bare:
            continue
        months = month_words(task.months(planted)) if planted and task.since_planting else ""
        told.setdefault(months or task.when, []).append(plan.answers.told(task.task))
    tasks = [(when, " ".join(several)) for when, several in told.items()]
    return lead, [*tasks, ("When to plant", plan.answers.told(WHEN_TO_PLANT))]


def standing_words(source: Source) -> str:
    """Say where a piece of advice was not read anywhere."""
    return "" if source.standing is Provenance.PUBLISHED else f" ({source})"
