"""The care of the first year, of each size of plant and after a storm, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from interview.asking.lands import Half, land
from interview.garden.afterwards import questions as review
from interview.garden.plan import Plan
from interview.garden.planting.care import EARLY, SIGNS, after_storm_steps, first_year
from interview.garden.planting.stock import PlantSize
from interview.garden.summary import wrap
from interview.quantities.evidence import Provenance, Source
from interview.sheet.plants import MONTHS, month_words

STOCK_WORDS = {
    PlantSize.KINDS: "pots",
    PlantSize.POT: "small pots of 1 quart (1 L)",
    PlantSize.PLUG: "plugs",
    PlantSize.LARGE_POT: "large pots of 1 gallon (4 L)",
    PlantSize.SEED: "seed on the rim and plugs below it",
}
COLD_NORTH, COLD_SOUTH = (11, 12, 1, 2), (5, 6, 7, 8)
"""Months in which new plants are not set where winters freeze: common practice, no source."""


NORTHERN_MONTHS = (
    "Months are told for the northern half of the world; south of the equator add six months."
)


def care(plan: Plan) -> Iterator[str]:
    """Yield the work of the first year by month, signs of trouble, and what to do after a storm."""
    yield from _by_month(plan)
    size = plan.planting.planted
    yield ""
    yield from wrap(f"The first two years, {plan.answers.told(STOCK_WORDS[size])}:")
    for one in EARLY[size]:
        said = plan.answers.told(one.task)
        yield from wrap(f"- {one.when}: {said}{standing_words(one.source)}", "  ")
    yield ""
    yield "How a plant fares (from memory):"
    for sign in SIGNS:
        yield from wrap(f"- {sign.trouble}: {sign.look} {sign.remedy}", "  ")
    yield ""
    yield from _after_storms(plan)


def care_in_short(plan: Plan) -> Iterator[str]:
    """Yield the work of the first year by month, and what to do after a storm."""
    yield from _by_month(plan)
    yield ""
    yield from _after_storms(plan)


def _by_month(plan: Plan) -> Iterator[str]:
    lead, tasks = year_of_care(plan)
    for line in lead:
        yield from wrap(line, "  ")
    for when, task in tasks:
        yield from wrap(f"{when}: {task}", "  ")


def _after_storms(plan: Plan) -> Iterator[str]:
    yield "After a storm, when the water is"
    for said, change in after_storm_steps():
        yield from wrap(f"- {said}: {plan.answers.told(change)}", "  ")


def year_of_care(plan: Plan) -> tuple[list[str], list[tuple[str, str]]]:
    """Return what leads the work of the first year, and each task after its months."""
    lead = []
    day = plan.answers.get(review.DIG_DAY)
    half = land(plan.answers.country).half
    southern = half is Half.SOUTH
    month_planted = day.month if day else 11 if southern else 5
    if day is None:
        lead.append(f"If planted in {MONTHS.split()[month_planted - 1]}:")
    elif month_planted in (COLD_SOUTH if southern else COLD_NORTH):
        month_planted = 10 if southern else 4
        lead.append(
            "You mean to dig in the cold months: dig only in soil that is not frozen, mulch the "
            "bare floor, and plant in spring. The work below begins with planting in "
            f"{MONTHS.split()[month_planted - 1]}."
        )
    if half is Half.UNKNOWN:
        lead.append(NORTHERN_MONTHS)
    months: dict[str, list[int]] = {}
    for month in first_year(month_planted, southern):
        for task in month.tasks:
            months.setdefault(task.task, []).append(month.month)
    return lead, [(month_words(when), plan.answers.told(task)) for task, when in months.items()]


def standing_words(source: Source) -> str:
    """Say where a piece of advice was not read anywhere."""
    return "" if source.standing is Provenance.PUBLISHED else f" ({source})"
