"""The plants, the pond and the first year on the second page of the printed sheet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from interview.asking.lands import Half, land
from interview.asking.question import Unanswered
from interview.drawing.printed import sprig
from interview.drawing.vector import with_legend
from interview.garden.due_words import count_words
from interview.garden.pictures import pond_pictures
from interview.garden.plan import Plan
from interview.garden.planting.cheaper import CheaperWay, cheaper_ways
from interview.garden.planting.choose import Pick, ZonePlan
from interview.garden.planting.laid_out import letters, mark_of
from interview.garden.planting.record import Plant
from interview.garden.planting.words import apart_words, short_name
from interview.garden.site import cautions
from interview.quantities.shown import area_words
from interview.sheet.common import stopped
from interview.sheet.first_year import year_of_care
from interview.sheet.markup import Markup, items, joined, tag, text
from interview.sheet.plants import (
    MORE_ON_WAYS,
    NORTHERN_SEASONS,
    ZONE_WORDS,
    apart_mark,
    counted_words,
    hazard_line,
    month_words,
    way_cost,
    wet_words,
)

POND_MM, TALL = 80.0, 0.46
"""Width of the chart of a pond, and its height over that."""
_MONTHS = "JFMAMJJASOND"
_CELL_MM = 2.4
_STRIP_MM = _CELL_MM * len(_MONTHS)


def plants(plan: Plan) -> Markup:
    """List the kinds of each zone: letter, mark, name, how many, how far apart, months of bloom."""
    zones = plan.planting.chosen.zones
    named = letters(zones)
    beds = plan.size.bed_count
    many = "a bed; to buy" if beds > 1 else "how many"
    head = tag(
        "tr",
        *(tag("th", one) for one in ("", "", "plant")),
        *(tag("th", one, class_="n") for one in (many, "apart")),
        tag("th", _month_names(), class_="months"),
    )
    rows = [one for zone in zones for one in _zone(plan, zone, named)]
    table = tag("table", tag("thead", head), tag("tbody", *rows), class_="plants")
    return joined((table, tag("p", " ".join(_notes(plan)), class_="note")))


def _zone(plan: Plan, zone: ZonePlan, named: dict[str, str]) -> Iterator[Markup]:
    total = sum(pick.count for pick in zone.picks) or zone.places
    many = "seed" if zone.sown else count_words(total, "plant")
    wet = wet_words(plan, zone.zone).split(";")[0]
    said = f"{area_words(zone.site.area, plan.metric)}, {many}; under water {wet}"
    title = ZONE_WORDS[zone.zone].capitalize()
    yield tag("tr", tag("th", title, tag("span", f" {said}"), colspan="6"), class_="zone")
    order = list(named)
    for pick in zone.picks:
        name = pick.plant.scientific_name
        if pick.count:
            yield _pick(plan, pick, named[name], _mark(pick.plant, order.index(name)))
        elif zone.sown:
            yield _pick(plan, pick)
    if not zone.picks:
        traits = (zone.guidance.wetness, *map(plan.answers.told, zone.guidance.traits))
        yield tag("tr", tag("td", items("ul", traits), colspan="6"))


def _pick(plan: Plan, pick: Pick, letter: str = "", mark: str = "") -> Markup:
    """Return the row of a kind; one without letter and mark is sown, and not in the drawing."""
    plant, beds = pick.plant, plan.size.bed_count
    count, apart = "seed", ""
    if letter:
        apart = apart_words(plant.spacing_in, plan.metric) + apart_mark(plant)
        count = f"{pick.count}; {pick.count * beds}" if beds > 1 else f"{pick.count}"
    name = [tag("b", short_name(plant)), Markup(" "), tag("i", plant.scientific_name)]
    if plant.flower_color:
        name.append(text(f", {plant.flower_color}"))
    if said := hazard_line(plan, plant):
        name.append(tag("span", f" ▲ {said}", class_="hazard"))
    return tag(
        "tr",
        tag("td", letter, class_="l"),
        tag("td", mark),
        tag("td", *name),
        tag("td", count, class_="n"),
        tag("td", apart, class_="n"),
        tag("td", _bloom(plant), class_="months"),
    )


def _mark(plant: Plant, place: int) -> Markup:
    """Draw the mark that stands for a kind in the drawing."""
    inner = sprig(mark_of(plant, place)[0])
    return Markup(
        f'<svg width="3.4mm" height="3mm" viewBox="-1.7 -1.5 3.4 3" role="img" '
        f'aria-label="its mark"><title>its mark in the drawing: {text(plant.kind.value)}</title>'
        f"{inner}</svg>"
    )


def _bloom(plant: Plant) -> Markup:
    """Draw the twelve months, those in bloom filled."""
    months = plant.bloom_months
    said = f"blooms {month_words(list(months))}" if months else "no month of bloom is listed"
    boxes = "".join(
        f'<rect x="{(month - 1) * _CELL_MM + 0.15:.2f}" y="0.3" width="{_CELL_MM - 0.3:g}" '
        'height="2.2" fill="black"/>'
        if month in months
        else f'<path d="M{(month - 1) * _CELL_MM + 0.3:.2f} 1.4 h{_CELL_MM - 0.6:g}" '
        'stroke="black" stroke-width="0.15"/>'
        for month in range(1, 13)
    )
    return _strip(said, boxes)


def _month_names() -> Markup:
    names = "".join(
        f'<text x="{(place + 0.5) * _CELL_MM:.2f}" y="2.3" text-anchor="middle">{one}</text>'
        for place, one in enumerate(_MONTHS)
    )
    return _strip("the months, January to December", names)


def _strip(said: str, inner: str) -> Markup:
    return Markup(
        f'<svg width="{_STRIP_MM:g}mm" height="2.8mm" viewBox="0 0 {_STRIP_MM:g} 2.8" role="img" '
        f'aria-label="{text(said)}" font-size="2.3"><title>{text(said)}</title>{inner}</svg>'
    )


def _notes(plan: Plan) -> Iterator[str]:
    for plant in plan.planting.chosen.homeless:
        why = " ".join(plan.planting.why_plant(plant.scientific_name))
        yield f"Not placed: {plant.common_name}. {why}"
    if land(plan.answers.country).half is Half.UNKNOWN:
        yield f"Spring, summer and autumn: {NORTHERN_SEASONS}"
    yield from map(plan.answers.told, plan.planting.chosen.notes)
    yield f"CAUTION: {cautions.PLANTS}"


def cheaper(plan: Plan) -> Markup:
    """Tell the ways to fewer plants or less money, each with its count; nothing where none is."""
    try:
        ways = cheaper_ways(plan.planting)
    except Unanswered:
        ways = ()
    if not ways:
        return Markup()
    told = (joined((tag("b", str(one.count)), _named(plan, one)), " ") for one in ways)
    said = text(f" {counted_words(plan)} ")
    lead = joined((tag("b", "Fewer plants, or less money:"), said))
    return tag("p", lead, joined(told, "; "), text(f". {MORE_ON_WAYS}"), class_="note")


def _named(plan: Plan, way: CheaperWay) -> str:
    return plan.answers.told(f"{way.name}{way_cost(plan, way)}")


def pond(plan: Plan) -> Markup:
    """Draw the pond in the storm of the rain to hold."""
    parts: list[Markup] = []
    drawn = pond_pictures(plan)
    for place, one in enumerate(drawn):
        lead = Markup()
        if len(drawn) > 1:
            which = "the uppermost" if not place else "the one below"
            lead = tag("p", f"Bed {place + 1} of {len(drawn)}, {which}:", class_="note")
        bare = replace(one, notes=(), print_ratio=TALL)
        picture, _ = with_legend(bare, POND_MM, f"pond{place}")
        said = tag("p", " ".join(one.notes), class_="note")
        parts.append(tag("div", lead, Markup(picture), said, class_="together"))
    return joined(parts)


def first_year(plan: Plan) -> Markup:
    """Tell the work of the first year by month; nothing where no garden may be built."""
    if stopped(plan):
        return Markup()
    lead, tasks = year_of_care(plan)
    told = (joined((tag("b", f"{when}: "), what), "") for when, what in tasks)
    return joined((*(tag("p", one) for one in lead), items("ul", told, class_="check")))
