"""The parts of the plain sheet in short, to take outside; the whole of them is the working."""

from __future__ import annotations

from collections.abc import Iterator

from interview.garden.plan import Plan
from interview.garden.planting.choose import ZonePlan
from interview.garden.planting.words import short_name
from interview.garden.site import cautions
from interview.garden.site.setbacks import NEARER_THAN_CAUTIOUS
from interview.garden.summary import wrap
from interview.quantities.evidence import Finding, Grade
from interview.sheet import next_steps, plants

MORE = (
    "Every reason, formula and source, each year, whom to call, other sizes:",
    "  rain-garden-interview --plan FILE --working",
    "With drawings, to print: rain-garden-interview --sheet FILE --output PATH",
)


def found(plan: Plan) -> Iterator[str]:
    """Yield what was found that asks for something; of what DO NEXT mends the count alone."""
    above = list(next_steps.steps(plan))
    asks = [(one, f"{one.said} {one.change}".strip()) for one in plan.findings if one.asks]
    marks = any(one.startswith(next_steps.SHUT_TODAY) for one in above)
    told = [
        one
        for one, whole in asks
        if one.grade is Grade.FIX and (whole in above or (marks and one.key == "buried_lines"))
    ]
    if told:
        yield f"[{told[0].word}] {len(told)} to mend, told under DO NEXT."
    if near := [one for one, _ in asks if _is_near(one)]:
        first, *rest = (one.said.removesuffix(NEARER_THAN_CAUTIOUS) for one in near)
        said = "; ".join((first, *(f"{one[0].lower()}{one[1:]}" for one in rest)))
        yield from wrap(f"[{near[0].word}] {said}{NEARER_THAN_CAUTIOUS}", "    ")
    for one, whole in asks:
        if one not in told and not _is_near(one):
            said = one.said if one.grade is Grade.GOOD or whole in above else whole
            yield from wrap(f"[{one.word}] {said}", "    ")


def _is_near(found: Finding) -> bool:
    return found.said.endswith(NEARER_THAN_CAUTIOUS)


def planting(plan: Plan) -> Iterator[str]:
    """Yield the kinds of each zone, how many and how far apart, and the ways to fewer."""
    kinds: list[str] = []
    for zone in plan.planting.chosen.zones:
        wet = plants.wet_words(plan, zone.zone).split(";")[0]
        kinds += wrap(f"{plants.ZONE_WORDS[zone.zone]}; under water {wet}:", "  ")
        kinds += _kinds(plan, zone)
    if not any(zone.picks for zone in plan.planting.chosen.zones):
        for note in plan.planting.chosen.notes[:1]:  # why no kind is named
            yield from wrap(plan.answers.told(note))
    yield from kinds
    if any("*" in line for line in kinds):
        yield from wrap("What is marked * is from memory: ask a nursery.", "  ")
    yield from wrap(f"CAUTION: {cautions.PLANTS}", "  ")
    yield from plants.cheaper(plan, briefly=True)


def _kinds(plan: Plan, zone: ZonePlan) -> Iterator[str]:
    for pick in zone.picks:
        yield from plants.to_set(plan, pick, short_name(pick.plant), zone.sown)
        if said := plants.hazard_line(plan, pick.plant):
            yield from wrap(f"{plants.INDENT}{said}", plants.INDENT)
    if not zone.picks:
        for trait in (zone.guidance.wetness, *zone.guidance.traits):
            yield from wrap(f"- {plan.answers.told(trait)}", "  ")
