"""The plants, where they go and how to look after them, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from interview.asking.lands import Half, land
from interview.garden.plan import Plan
from interview.garden.planting import questions as planting
from interview.garden.planting.cheaper import CheaperWay, cheaper_ways
from interview.garden.planting.choice import as_tall, blooms_with
from interview.garden.planting.choose import Pick, ZonePlan
from interview.garden.planting.costs import costs, plant_count
from interview.garden.planting.plant_file import SHOWN_FAULTS
from interview.garden.planting.record import Indicator, Plant
from interview.garden.planting.sketch import sketch
from interview.garden.planting.wetness import chosen_from, rating
from interview.garden.planting.words import (
    apart_words,
    hazard_names,
    hazards,
    home_doubts,
    plain_remark,
    short_name,
    tall_words,
)
from interview.garden.site import cautions
from interview.garden.size.cover_questions import BERM_OUTSIDE
from interview.garden.size.zones import Zone
from interview.garden.summary import words_alone, wrap
from interview.quantities.shown import PLAIN, area_words
from interview.quantities.units import magnitude

ZONE_WORDS = {Zone.FLOOR: "FLOOR, the wettest", Zone.SIDE: "SIDE", Zone.RIM: "RIM, the driest"}

CODE_WORDS = {
    Indicator.OBL: "almost always",
    Indicator.FACW: "usually",
    Indicator.FAC: "half and half",
    Indicator.FACU: "seldom",
    Indicator.UPL: "almost never",
}

SHORT_HOURS = 1.0
"""Times under water shorter than this are not told case by case."""

INDENT = " " * 6


NORTHERN_SEASONS = (
    "as in the northern half of the world; this program does not know in which half your country "
    "lies."
)


def cheaper(plan: Plan, briefly: bool = False) -> Iterator[str]:
    """Yield the ways to fewer plants or less money beside what the plan counts on.

    ``briefly`` leaves out how each is done and its cost, and makes one paragraph of them.
    """
    ways = cheaper_ways(plan.planting)
    if not ways:
        return
    if briefly:
        fewer = "; ".join(plan.answers.told(f"{way.name}: {way.count}") for way in ways)
        yield from wrap(f"{counted_words(plan)} Or {fewer}. {MORE_ON_WAYS}")
        return
    yield from wrap(counted_words(plan))
    for way in ways:
        yield from wrap(f"- {way_words(plan, way)}", "  ")


MORE_ON_WAYS = "How each is done: CHEAPER WAYS, among the working."


def counted_words(plan: Plan) -> str:
    """Say how many plants the plan counts, at what cost where that is known, and where."""
    found = plan.planting
    priced = costs(found)
    line = priced.of("plants")
    cost = f", {priced.sign}{line.amount:.2f}" if line else ""
    rim = "the rim up to its crest"
    where = f"the floor, the sides and {rim}"
    if found.wishes.sown:
        where = f"the floor and the sides, and seed on {rim}"
    outside = ""
    if magnitude(found.berm_outside, "ft**2") > 0:
        outside = f" The outside of the berm {BERM_WORDS[plan.answers[BERM_OUTSIDE]]}."
    return f"The plan counts {plant_count(found)} plants{cost}: on {where}.{outside}"


def way_words(plan: Plan, way: CheaperWay) -> str:
    """Say one cheaper way: its name, its count, its cost where that is known, what to do."""
    return f"{way_count(plan, way)}. {plan.answers.told(way.how)}"


def way_count(plan: Plan, way: CheaperWay) -> str:
    """Say one cheaper way without what to do: its name, its count, its cost where known."""
    return plan.answers.told(f"{way.name}: {way.count}{way_cost(plan, way)}")


def way_cost(plan: Plan, way: CheaperWay) -> str:
    """Say what a cheaper way costs, or when it costs less; nothing where no price is known."""
    sign = costs(plan.planting).sign
    if way.cost is not None:
        return f", {sign}{way.cost:.2f}"
    if way.pays_below is not None:
        return f"; costs less while one is under {sign}{way.pays_below:.2f}"
    return ""


def plants(plan: Plan) -> Iterator[str]:
    """Yield the plants of each zone, or what to look for where none are listed."""
    region, listed = plan.planting.wishes.region, plan.planting.wishes.list_region
    if region and listed:
        home = planting.home_place(plan.answers)
        covers = f" ({home.list_standing(listed)})" if home else ""
        yield from wrap(f"Region: {region.value}; wetland list: {listed.value}{covers}")
    if plan.size.bed_count > 1:
        yield from wrap(
            f"{plan.size.bed_count} equal beds: plants, areas and sketches are of one bed, hours "
            "of the "
            "bed the water reaches first. Behind each plant is how many to buy for all of them."
        )
    picked = [pick for zone in plan.planting.chosen.zones for pick in zone.picks]
    if picked:
        codes = ", ".join(f"{one.name} {words}" for one, words in CODE_WORDS.items())
        yield from wrap(
            f"How often a plant of each code grows in wetlands: {codes}. * from memory."
        )
    for zone in plan.planting.chosen.zones:
        yield ""
        yield from _zone(plan, zone)
    yield ""
    for plant in plan.planting.chosen.homeless:
        yield from wrap(f"Not placed: {plant.common_name}", "  ")
        for why in plan.planting.why_plant(plant.scientific_name):
            yield from wrap(f"  {why}", "    ")
    yield from _own_file(plan)
    if picked and land(plan.answers.country).half is Half.UNKNOWN:
        yield from wrap(f"Note: Spring, summer and autumn: {NORTHERN_SEASONS}", "  ")
    for note in plan.planting.chosen.notes:
        yield from wrap(f"Note: {plan.answers.told(note)}", "  ")
    yield from wrap(f"CAUTION: {cautions.PLANTS}", "  ")


def _own_file(plan: Plan) -> Iterator[str]:
    own = plan.planting.plant_file
    if not own.path:
        return
    if own.trouble:
        yield from wrap(f"Your own plant file: {own.trouble}", "  ")
        return
    yield from wrap(f"Your own plant file, plants read: {len(own.plants)}.", "  ")
    for line in own.fault_lines(SHOWN_FAULTS):
        yield from wrap(f"  {line}", "    ")


def _zone(plan: Plan, zone: ZonePlan) -> Iterator[str]:
    yield f"{ZONE_WORDS[zone.zone]}: {area_words(zone.site.area, plan.metric)}"
    yield from wrap(f"  Under water: {wet_words(plan, zone.zone)}.", "  ")
    if not zone.picks:
        yield from wrap(f"  {zone.guidance.wetness}", "  ")
        for trait in zone.guidance.traits:
            yield from wrap(f"- {plan.answers.told(trait)}", "  ")
        return
    usual, worst = magnitude(zone.site.hours, "h"), zone.site.worst_hours
    codes = chosen_from(zone.zone, usual, worst)
    yield from wrap(f"  Codes that stand this: {', '.join(one.name for one in codes)}.", "  ")
    for pick in zone.picks:
        yield from _pick(plan, pick, zone.sown)
    if alone := [short_name(one.plant) for one in zone.picks if one.substitute is None]:
        yield from wrap(
            f"  Nothing in the list stands in for {', '.join(alone)}: where one is sold out, set "
            "more of the others.",
            "  ",
        )


def wet_words(plan: Plan, zone: Zone) -> str:
    """Say the hours under water of ``zone`` in each case looked at."""
    cases = [
        (plan.storms.zone_hours, "in the storm it holds"),
        (plan.storms.zone_hours_again, "at a stretch if it comes again next day"),
    ]
    if plan.storms.zone_hours_record is not None:
        cases.append((plan.storms.zone_hours_record, "at the longest in your rainfall record"))
    hours = [magnitude(case.of(zone), "h") for case, _ in cases]
    if max(hours) < SHORT_HOURS:
        return "hardly ever, an hour at the most" if max(hours) > 0.05 else "never"
    said = zip(hours, cases, strict=True)
    return "; ".join(f"{PLAIN.write(time)} h {words}" for time, (_, words) in said)


def to_set(plan: Plan, pick: Pick, common: str, sown: bool) -> Iterator[str]:
    """Yield a row of the list: how many of a kind and how far apart, or that it is sown."""
    plant, beds = pick.plant, plan.size.bed_count
    names = f"{common} ({plant.scientific_name})"
    if sown:
        yield from wrap(f"[ ] seed of {names}", INDENT)
        return
    apart = apart_words(plant.spacing_in, plan.metric) + apart_mark(plant)
    buy = f"; buy {pick.count * beds} for the {beds} beds" if beds > 1 else ""
    yield from wrap(f"[ ] {pick.count} x {names}, {apart} apart{buy}", INDENT)


def apart_mark(plant: Plant) -> str:
    """Return a star where the distance between plants of this kind is from memory."""
    return "" if plant.own or plant.set_by or plant.rests("spacing") else "*"


def _pick(plan: Plan, pick: Pick, sown: bool) -> Iterator[str]:
    plant = pick.plant
    common = plant.common_name.rstrip(")").replace(" (", " or ")
    yield from to_set(plan, pick, common, sown)
    role = f"; {pick.role}" if pick.role else ""
    yield from wrap(f"{INDENT}{', '.join(_facts(plan, plant))}{role}", INDENT)
    if said := hazard_line(plan, plant):
        yield from wrap(f"{INDENT}{said}", INDENT)
    notes = [pick.against, pick.makeshift, *home_doubts(plant, plan.planting.wishes.region)]
    if plant.needs_long_wet:
        notes.append("Water it in dry spells: it needs wet soil.")
    notes.append(plain_remark(plant))
    if said := " ".join(one for one in notes if one):
        yield from wrap(f"{INDENT}{plan.answers.told(said)}", INDENT)
    if pick.substitute:
        yield from wrap(f"{INDENT}{substitute_words(plan, pick)}", INDENT)


def hazard_line(plan: Plan, plant: Plant) -> str:
    """Name what may harm people or the planting in a word, and tell it; nothing where nothing."""
    if not (found := hazards(plant)):
        return ""
    said = plan.answers.told(" ".join(found)).replace(" (from memory)", "*")
    return f"{hazard_names(plant).upper()}: {said}"


def substitute_words(plan: Plan, pick: Pick) -> str:
    """Say what to buy where a plant is sold out, and how that is unlike it."""
    other = pick.substitute
    if other is None:
        return "If sold out: nothing in the list is like it."
    unlike = ""
    if not as_tall(pick.plant, other):
        unlike += f", to {tall_words(other, plan.metric)}"
    if not blooms_with(pick.plant, other):
        unlike += f", blooms {month_words(list(other.bloom_months))}"
    return f"If sold out: {short_name(other)} ({other.scientific_name}){unlike}."


def _facts(plan: Plan, plant: Plant) -> Iterator[str]:
    """Yield code and kind, height, bloom and habit in a few words, what is from memory marked."""

    def mark(checked: object) -> str:
        return "" if checked or plant.own else "*"

    listed = plan.planting.wishes.list_region
    code = rating(plant, listed)
    sure = listed is not None and (plant.well_rated(listed) or listed in plant.rated_by_one)
    yield f"{code.name}{mark(sure)} {plant.kind.value}" if code else plant.kind.value
    yield f"to {tall_words(plant, plan.metric)}{mark(plant.rests('height'))}"
    if plant.bloom_months:
        months = month_words(list(plant.bloom_months))
        color = f", {plant.flower_color}{mark(plant.rests('color'))}" if plant.flower_color else ""
        yield f"blooms {months}{mark(plant.rests('bloom'))}{color}"
    if plant.spreads == "some":
        yield f"spreads or seeds itself{mark(plant.rests('spread'))}"


def sketches(plan: Plan) -> Iterator[str]:
    """Yield each zone as a map of letters, a letter a plant."""
    drawn = False
    for zone in plan.planting.chosen.zones:
        found = sketch(zone, plan.planting.zone_shape(zone.zone))
        if found is None:
            continue
        if not drawn:
            yield from wrap(
                "Each letter is a plant, each block a drift of one kind. The floor is seen from "
                "above, its long side across the slope; side and rim are drawn unrolled, as you "
                "walk round. Not to scale: keep the distance each kind wants."
            )
        drawn = True
        each = found.plants_a_letter
        scale = f" (a letter is about {each} plants)" if each > 1 else ""
        yield ""
        yield f"{zone.zone.value.upper()}{scale}"
        if words_alone():
            order = ", ".join(f"{size} {letter}" for letter, size in found.order)
            yield from wrap(f"  From one end to the other, in drifts: {order}.", "    ")
        else:
            yield from (f"  {row}".rstrip() for row in found.rows)
        for line in found.legend:
            yield from wrap(f"  {line}", " " * 8)


BERM_WORDS = {
    "sod": "is not counted: its own sod is laid back there",
    "grass": "is not counted: grass is sown there",
    "plants": "is counted with the rim",
}

MONTHS = "January February March April May June July August September October November December"


def month_words(when: list[int]) -> str:
    """Write months in a row as a span, such as ``Jun to Aug, Nov``."""
    names = [name[:3] for name in MONTHS.split()]
    if len(when) == 12:
        return "all year"
    runs: list[list[int]] = []
    for month in when:
        if runs and month == runs[-1][-1] % 12 + 1:
            runs[-1].append(month)
        else:
            runs.append([month])
    return ", ".join(
        names[run[0] - 1] if len(run) == 1 else f"{names[run[0] - 1]} to {names[run[-1] - 1]}"
        for run in runs
    )
