"""What rests on memory and was not checked, by field, on the sheet: what to verify first."""

from __future__ import annotations

from collections.abc import Iterator

from interview.asking.question import Unanswered
from interview.garden import figures
from interview.garden.due_words import count_words
from interview.garden.plan import Plan
from interview.garden.planting.plant_sources import PLANT_SOURCES
from interview.garden.planting.provenance import (
    FACTS,
    HAZARDS,
    decided,
    from_memory,
    one_alone,
)
from interview.garden.planting.words import short_name
from interview.garden.summary import wrap
from interview.quantities.evidence import Provenance

MOST_NAMES = 6
"""So many names of plants are told for a fact."""


def memory(plan: Plan) -> Iterator[str]:
    """Yield the figures, limits and facts of plants of this plan that nobody checked."""
    yield from _numbers(plan)
    try:
        wishes, zones = plan.planting.wishes, plan.planting.chosen.zones
    except Unanswered:
        return
    picked = {pick.plant.scientific_name: pick.plant for zone in zones for pick in zone.picks}
    plants = [one for one in picked.values() if not one.own]
    if not plants:
        return
    yield ""
    yield from wrap(
        f"Facts about the {count_words(len(plants), 'kind')} of the plant list planted here:"
    )
    called = {fact: plan.answers.told(name) for fact, name in FACTS.items()}
    rest: dict[str, list[str]] = {fact: [] for fact in FACTS}
    for plant in plants:
        for fact in from_memory(plant, wishes.region, wishes.list_region):
            rest[fact].append(short_name(plant))
    for fact, names in rest.items():
        if names:
            yield from wrap(f"- {called[fact]}: {_named(names, len(plants))}", "  ")
    sound = [called[fact] for fact, names in rest.items() if not names]
    yield from wrap(f"Read in a list, or not told at all, for every kind: {', '.join(sound)}.")
    for fact in HAZARDS:
        alone = [short_name(one) for one in plants if one_alone(one, fact)]
        if alone:
            yield from wrap(
                f"One list alone, held against no other, for {called[fact]}: "
                f"{_named(alone, len(plants))}.",
                "  ",
            )
    codes = {
        code.partition(" ")[0] for plant in plants for fact in FACTS for code in plant.rests(fact)
    }
    yield from wrap("The lists behind what was read:")
    for code, (short, source) in PLANT_SOURCES.items():
        if code in codes:
            yield from wrap(f"- {short}: {source}", "  ")
    found = [one for plant in plants for one in decided(plant) if one.field != "copies"]
    if found:
        yield from wrap("Where the sources differ, and what was kept:")
    for one in found:
        name = short_name(picked[one.scientific_name])
        field, why = (plan.answers.told(words) for words in (one.field.replace("_", " "), one.why))
        said = f"- {name}, {field}: {one.published}; kept {one.kept or 'nothing'}: {why}."
        yield from wrap(said, "  ")


def _numbers(plan: Plan) -> Iterator[str]:
    """Yield the figures and the limits whose source is memory."""
    known = {
        one.figure.label: one.source
        for one in figures.found(plan)
        if one.waits_for is None and one.source.standing is Provenance.MEMORY
    }
    known |= {
        f"{one.said.rstrip('.')}, held against {one.limit}": one.source
        for one in plan.findings
        if one.limit and one.source.standing is Provenance.MEMORY
    }
    yield from wrap("Figures and limits:" if known else "Figures and limits: none.")
    for label, source in known.items():
        title = f" ({source.title})" if source.title else ""
        yield from wrap(f"- {label}{title}", "  ")


def _named(names: list[str], most: int) -> str:
    """Name the plants, or say that it is every one of ``most``."""
    if len(names) == most:
        return "every kind"
    more = f" and {len(names) - MOST_NAMES} more" if len(names) > MOST_NAMES else ""
    return f"{len(names)} of {most}: {', '.join(names[:MOST_NAMES])}{more}"
