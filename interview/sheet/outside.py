"""The parts of the plain sheet in short, to take outside; the whole of them is the working."""

from __future__ import annotations

from collections.abc import Iterator

from interview.garden.plan import Plan
from interview.garden.planting.choose import ZonePlan
from interview.garden.planting.words import hazards, short_name
from interview.garden.site import cautions
from interview.garden.summary import wrap
from interview.quantities.evidence import Grade
from interview.sheet import dig, plants, size, work

MORE = (
    "Every reason, formula and source, other sizes, the years of rain:",
    "  rain-garden-interview --plan FILE --working",
    "The garden on two pages with its drawings, for a browser to print:",
    "  rain-garden-interview --sheet FILE --output PATH",
)


def found(plan: Plan) -> Iterator[str]:
    """Yield what was found that asks for something, with what to do."""
    for one in plan.findings:
        if one.asks:
            change = "" if one.grade is Grade.GOOD else f" {one.change}".rstrip()
            yield from wrap(f"[{one.word}] {one.said}{change}", "    ")


def pegging(plan: Plan) -> Iterator[str]:
    """Yield the measures to peg out by."""
    lines = list(size.pegging(plan))
    # The drawing comes last, after a blank line.
    yield from lines[: lines.index("")] if "" in lines else lines


def digging(plan: Plan) -> Iterator[str]:
    """Yield how to dig, every level and the list for the day."""
    yield from dig.outside(plan)


def the_work(plan: Plan) -> Iterator[str]:
    """Yield the hours and what to heed, without what each step is made of."""
    yield from (line for line in work.work(plan) if not line.startswith("   - "))


def planting(plan: Plan) -> Iterator[str]:
    """Yield the kinds of each zone, how many and how far apart."""
    for zone in plan.planting.chosen.zones:
        wet = plants.wet_words(plan, zone.zone).split(";")[0]
        yield from wrap(f"{plants.ZONE_WORDS[zone.zone]}; under water {wet}:", "  ")
        yield from _kinds(plan, zone)
    yield from wrap(f"CAUTION: {cautions.PLANTS}", "  ")


def _kinds(plan: Plan, zone: ZonePlan) -> Iterator[str]:
    for pick in zone.picks:
        yield from plants.to_set(plan, pick, short_name(pick.plant), zone.sown)
        if said := hazards(pick.plant):
            yield from wrap(f"      CAUTION: {plan.answers.told(' '.join(said))}", "      ")
    if not zone.picks:
        for trait in (zone.guidance.wetness, *zone.guidance.traits):
            yield from wrap(f"- {plan.answers.told(trait)}", "  ")


def first_year(plan: Plan) -> Iterator[str]:
    """Yield the work of the first year by month, and what to do after a storm."""
    lines = list(plants.care(plan))
    gaps = [place for place, line in enumerate(lines) if not line]
    yield from [*lines[: gaps[0]], *lines[gaps[-1] :]] if gaps else lines
