"""The plants, the pond and the first year on the second page of the printed sheet."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from interview.asking.lands import Half, land
from interview.drawing.printed import sprig
from interview.drawing.vector import with_legend
from interview.garden.pictures import pond_pictures
from interview.garden.plan import Plan
from interview.garden.planting.choose import Pick, ZonePlan
from interview.garden.planting.laid_out import letters, mark_of
from interview.garden.planting.record import Plant
from interview.garden.planting.words import apart_words, hazards, short_name
from interview.garden.site import cautions
from interview.garden.summary import unfolded
from interview.quantities.shown import area_words
from interview.sheet.markup import Markup, items, joined, tag, text
from interview.sheet.page_parts import legend
from interview.sheet.plants import (
    NORTHERN_SEASONS,
    ZONE_WORDS,
    care,
    month_words,
    wet_words,
)

POND_MM, TALL = 70.0, 0.7
"""Width of the chart of a pond, and its height over that."""
_MONTHS = "JFMAMJJASOND"
_CELL_MM = 2.4
_STRIP_MM = _CELL_MM * len(_MONTHS)


def plants(plan: Plan) -> Markup:
    """List the kinds of each zone: letter, mark, name, how many, how far apart, months of bloom."""
    zones = plan.planting.chosen.zones
    named = letters(zones)
    beds = plan.size.bed_count
    many = "how many a bed, and to buy" if beds > 1 else "how many"
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
    many = "seed" if zone.sown else f"{total} plants"
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
        apart = apart_words(plant.spacing_in, plan.metric)
        count = f"{pick.count}; {pick.count * beds}" if beds > 1 else f"{pick.count}"
    name = [tag("b", short_name(plant)), Markup(" "), tag("i", plant.scientific_name)]
    if plant.flower_color:
        name.append(text(f", {plant.flower_color}"))
    if found := hazards(plant):
        said = plan.answers.told(" ".join(found)).replace(" (from memory)", "*")
        name.append(tag("span", f" ▲ CAUTION: {said}", class_="hazard"))
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


def pond(plan: Plan) -> Markup:
    """Draw the pond in the storm of the rain to hold."""
    parts: list[Markup] = []
    for place, one in enumerate(pond_pictures(plan)):
        bare = replace(one, notes=(), print_ratio=TALL)
        picture, keys = with_legend(bare, POND_MM, f"pond{place}")
        parts += (Markup(picture), legend(keys), tag("p", " ".join(one.notes), class_="note"))
    return joined(parts)


def first_year(plan: Plan) -> Markup:
    """Tell the work of the first year by month."""
    return _block(plan, lambda blocks: blocks[0])


def after_storms(plan: Plan) -> Markup:
    """Tell what the hours of standing water after a storm mean."""
    return _block(plan, lambda blocks: blocks[-1])


def _block(plan: Plan, which: Callable[[list[list[str]]], list[str]]) -> Markup:
    """Return one block of the year's work: a sentence that leads, and its lines."""
    with unfolded():
        blocks = "\n".join(care(plan)).split("\n\n")
    lines = which([block.split("\n") for block in blocks])
    lead = (tag("p", one) for one in lines if one.endswith(":"))
    by_when: dict[str, list[str]] = {}
    for line in lines:
        if not line.endswith(":"):
            when, _, what = line.removeprefix("- ").partition(": ")
            by_when.setdefault(when, []).append(what)
    told = (joined((tag("b", f"{one}: "), " ".join(what)), "") for one, what in by_when.items())
    return joined((*lead, items("ul", told, class_="check")))
