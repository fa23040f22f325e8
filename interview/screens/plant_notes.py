"""What the plants page says of a zone and of a plant."""

from __future__ import annotations

from collections.abc import Sequence

from textual.content import Content

from interview.garden.plan import Plan
from interview.garden.planting.cheaper import cheaper_ways, fewest
from interview.garden.planting.choose import Pick, ZonePlan
from interview.garden.planting.costs import plant_count
from interview.garden.planting.record import Plant
from interview.garden.planting.swap import matching
from interview.garden.planting.words import hazard_names, hazards
from interview.quantities.units import magnitude, plain_number, show
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


def heading(plan: Plan, zone: ZonePlan) -> str:
    """Name a zone with its area, its hours under water and the number of its plants."""
    area = show(zone.site.area, "m**2" if plan.metric else "ft**2", 3)
    planted = f"{sum(pick.count for pick in zone.picks)} plants" if not zone.sown else "seed"
    hours = plain_number(round(magnitude(plan.storms.zone_hours.of(zone.zone), "h")))
    each = f", each of {plan.size.bed_count} beds" if plan.size.bed_count > 1 else ""
    return f"{ZONE_WORDS[zone.zone]}: {area}, {planted}{each}, {hours} h under water"


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


def line(pick: Pick) -> Content:
    """Return one plant as a line of the list."""
    role = f"  [{pick.role}]" if pick.role else ""
    named = hazard_names(pick.plant)
    care = f"  ({named})" if named else ""
    return Content.assemble(
        f"{pick.count:>4} × " if pick.count else "seed   ",
        (short(pick.plant), "bold"),
        role,
        care,
    )


def about(plan: Plan, zone: ZonePlan, pick: Pick) -> Content:
    """Tell everything of one plant: size, bloom, why it is in, cautions, what would do as well."""
    plant = pick.plant
    apart = f"{plant.spacing_in * 2.54:.0f} cm" if plan.metric else f"{plant.spacing_in:g} in"
    feet = plant.height_max_ft
    tall = f"{plain_number(feet * 0.3048, 2)} m" if plan.metric else f"{feet:g} ft"
    facts = [plant.kind.value, f"to {tall}", f"{apart} apart"]
    if plant.bloom_months:
        facts.append(f"blooms {month_words(list(plant.bloom_months))}")
    pieces: list[tuple[str, str] | str] = [
        (plant.common_name, "bold"),
        f" ({plant.scientific_name})\n{', '.join(facts)}.\n",
        f"Why it is in: {plan.answers.told(pick.why)}\n" if pick.why else "",
    ]
    told = plan.answers.told
    dangers = hazards(plant)
    pieces += [(f"{told(said)}\n", "$look") for said in dangers]
    pieces += [f"{told(said)}\n" for said in pick.cautions if said not in dangers]
    pieces.append(f"{substitute_words(plan, pick)}\n")
    wet = wet_words(plan, zone.zone)
    pieces.append(f"The {zone.zone.value} is under water: {wet}.\n")
    if zone.reserve:
        others = ", ".join(short(one) for one in zone.reserve[:MOST_OTHERS])
        pieces.append(f"Would do as well: {others}.\n")
    return Content.assemble(*pieces)
