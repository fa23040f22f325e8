"""What the plants page says of a zone and of a plant."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from textual.content import Content

from interview.garden.due_words import count_words
from interview.garden.plan import Plan
from interview.garden.planting.cheaper import cheaper_ways, fewest
from interview.garden.planting.choose import Pick, ZonePlan
from interview.garden.planting.costs import plant_count
from interview.garden.planting.provenance import decided, rests_lines
from interview.garden.planting.record import Plant
from interview.garden.planting.swap import matching
from interview.garden.planting.words import apart_words, hazards, stands_words, tall_words
from interview.quantities.units import magnitude, plain_number, show
from interview.screens.palette import MARKS
from interview.sheet.plants import ZONE_WORDS, month_words, substitute_words, way_words, wet_words

MOST_OTHERS = 6


def short(plant: Plant) -> str:
    """Return the common name without the other one in brackets."""
    return plant.common_name.partition(" (")[0]


def name_of(plant: Plant, plants: Sequence[Plant]) -> str:
    """Return the name to write into an answer: the common one where it means this plant alone."""
    common = short(plant)
    alone = [one.scientific_name for one in matching(plants, common)] == [plant.scientific_name]
    return common if alone and " for " not in f" {common} " else plant.scientific_name


def headings(plan: Plan, zone: ZonePlan) -> tuple[str, ...]:
    """Name a zone with its hours under water, its plants and its area, the longest name first."""
    area = show(zone.site.area, "m**2" if plan.metric else "ft**2", 3)
    total = sum(pick.count for pick in zone.picks) or zone.places
    planted = "seed" if zone.sown else count_words(total, "plant")
    hours = plain_number(round(magnitude(plan.storms.zone_hours.of(zone.zone), "h")))
    each = f" in each of {plan.size.bed_count} beds" if plan.size.bed_count > 1 else ""
    wet = f"{hours} h under water"
    return (
        f"{ZONE_WORDS[zone.zone]}: {wet}, {planted}, {area}{each}",
        f"{ZONE_WORDS[zone.zone]}: {wet}, {planted}",
        f"{zone.zone.value.upper()}: {wet}, {planted}",
    )


def cheaper_line(plan: Plan) -> str:
    """Name the plants of the plan, and the fewest that any cheaper way leaves."""
    found = plan.planting
    return f"{plant_count(found)} plants; cheaper ways from {fewest(found)}"


def cheaper(plan: Plan) -> Content | str:
    """Tell the cheaper ways, each with its count; nothing where there are none."""
    ways = cheaper_ways(plan.planting)
    if not ways:
        return ""
    told = [f"\n- {way_words(plan, way)}" for way in ways]
    return Content.assemble(("Cheaper ways", "bold"), *told)


def about(plan: Plan, zone: ZonePlan, pick: Pick) -> Content:
    """Tell everything of one plant: size, bloom, why it is in, cautions, what would do as well."""
    plant = pick.plant
    apart = apart_words(plant.spacing_in, plan.metric)
    facts = [plant.kind.value, f"to {tall_words(plant, plan.metric)}", f"{apart} apart"]
    if plant.bloom_months:
        facts.append(f"blooms {month_words(list(plant.bloom_months))}")
    told = plan.answers.told
    pieces: list[tuple[str, str] | str] = [
        (plant.common_name, "bold"),
        (f" ({plant.scientific_name})\n", "$muted italic"),
        f"{', '.join(facts)}.\n",
    ]
    if pick.role:
        pieces.append(f"{pick.role[:1].upper()}{pick.role[1:]}.\n")
    dangers = hazards(plant)
    pieces += [(f"{MARKS['look']} {told(said)}\n", "$look") for said in dangers]
    pieces += [("Why it is in: ", "bold"), f"{told(pick.why)}\n"] if pick.why else []
    pieces += [f"{told(said)}\n" for said in pick.cautions if said not in dangers]
    pieces += _labelled(substitute_words(plan, pick))
    if zone.reserve:
        others = ", ".join(short(one) for one in zone.reserve[:MOST_OTHERS])
        pieces += _labelled(f"Would do as well: {others}.")
    pieces += _labelled(f"What is known: {stands_words(plant)}.") if stands_words(plant) else []
    pieces.append(f"The {zone.zone.value} is under water: {wet_words(plan, zone.zone)}.\n")
    pieces += _rests(plan, plant)
    return Content.assemble(*pieces)


def _rests(plan: Plan, plant: Plant) -> Iterator[tuple[str, str] | str]:
    """Yield what every fact about a plant rests on, and what was decided by hand."""
    wishes = plan.planting.wishes
    yield "What this rests on\n", "bold"
    for source, facts in rests_lines(plant, wishes.region, wishes.list_region):
        yield f"- {facts}: {source}\n", "$look" if "memory" in source else ""
    for one in decided(plant):
        field = one.field.replace("_", " ")
        yield f"- {field}, {one.published}; kept: {one.kept or 'nothing'}. Why: {one.why}.\n"


def _labelled(said: str) -> list[tuple[str, str] | str]:
    """Return a sentence with what stands before its colon in bold."""
    label, colon, rest = said.partition(":")
    return [(f"{label}{colon}", "bold"), f"{rest}\n"]
