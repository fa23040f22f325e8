"""The yard card: one printed page of what is needed outside, with blanks for what is open."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator
from functools import partial

from interview.asking import own_fault
from interview.asking.question import Unanswered
from interview.garden.afterwards import questions as review
from interview.garden.afterwards.levels_questions import (
    FLOOR_READINGS,
    INLET_READING,
    NOTCH_READING,
    RIM_READING,
)
from interview.garden.due_words import count_words
from interview.garden.earth.materials import STONE_LAYER
from interview.garden.earth.profile import reading_words, string_height
from interview.garden.pictures import levels
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.planting.choose import ZonePlan
from interview.garden.planting.costs import plant_count
from interview.garden.planting.words import apart_words, short_name
from interview.garden.site import cautions
from interview.garden.site import lines_questions as buried
from interview.garden.site import nearby_questions as nearby
from interview.garden.site import questions as site
from interview.garden.site import spot_questions as ground
from interview.garden.site.results import SETBACK_OF
from interview.garden.site.setbacks import distance_words, left_of
from interview.garden.soak.hole_questions import HOLE_SMELL
from interview.garden.summary import WIDTH, cheaper_words, figure_words, may_dig, wrap
from interview.quantities.evidence import Grade
from interview.quantities.shown import (
    area_words,
    depth_words,
    length_words,
    sides_words,
)
from interview.quantities.units import quantity
from interview.reading import foreign, said_day
from interview.sheet.card_soil import GAP, flow, or_gap, soil
from interview.sheet.common import stopped
from interview.sheet.stakeout import MOST_ROWS, SHAPE_WORDS, peg_table

Part = Callable[[Plan], Iterator[str]]
Section = tuple[str, list[str]]
"""A title and the lines under it."""
ROWS = 60
"""Lines of a printed page."""
NO_PEGS = "No pegs while digging is shut: lay it out with a hose, string and stones."
PEG_ROWS = (MOST_ROWS, 5, 4)
"""Rows of pegs, fewer where the page has no room for more."""
MOST_WHY = 2
"""Reasons against digging that are told on the card; the sheet tells all."""
POINTS = 5
"""Blanks for the floor: the points that the question asks for."""
NARROW, NARROWER = "______", "_____"
"""Blanks where a line has room for no wider ones."""
_FOUND_AT = {
    "Crest of the berm": RIM_READING,
    "Lawn that is the rim": RIM_READING,
    "Overflow": NOTCH_READING,
}
"""How the row of a level begins beside which is written what is found there."""
MOST_WHY_LINES, MOST_WHERE_LINES, MOST_STOP_LINES = 3, 8, 30


def card_text(plan: Plan) -> str:
    """Return the yard card: one page of plain text, 76 columns by 60 lines at the most.

    What is not known yet is a blank to fill in by pen. Where every kind of plant would take more
    than the page the zones are told in short, and the sheet has the list; if need be so are the
    pegs and levels.
    """
    head, sections = card_parts(plan)
    lines = [*head, *(line for title, part in sections for line in (_title(title), *part))]
    return "".join(f"{foreign.shown(line.rstrip())}\n" for line in lines[:ROWS])


def card_parts(plan: Plan) -> tuple[list[str], list[Section]]:
    """Return the lines of the card's head and its sections, short enough for one page."""
    with own_fault.noting() as faults:
        for planting, brief in _WAYS:
            head, sections = _page(plan, planting, brief)
            if len(head) + sum(1 + len(lines) for _, lines in sections) <= ROWS:
                break
    if faults:
        head[1] = "A PART IS MISSING (an error in the program): do not dig or build by this."
    return head, sections


def _page(plan: Plan, planting: Part, brief: int) -> tuple[list[str], list[Section]]:
    head = _lines_of("the head", _head, plan)
    head += [""] * (2 - len(head))
    parts = _work(plan, planting, brief)
    if stopped(plan):
        # No measures to dig by are given where nothing should be dug.
        parts = (("3 WHAT STOPS IT, AND WHAT WOULD CHANGE THAT", _stops), ("4 TAKE CARE", _care))
    titled = (("1 MAY I DIG?", _gate), ("2 WHERE", _where), *parts)
    return head, [(title, _lines_of(title, part, plan)) for title, part in titled]


def _lines_of(name: str, part: Part, plan: Plan) -> list[str]:
    try:
        return list(part(plan))
    except Unanswered:
        raise
    except Exception as trouble:
        return wrap(f" {own_fault.note(name, trouble)}", "   ")


def _work(plan: Plan, planting: Part, brief: int) -> tuple[tuple[str, Part], ...]:
    return (
        ("3 PEG OUT, from one string along the middle, across the slope", partial(_pegs, brief)),
        (f"4 DIG AND LEVEL: a level string{_tied(plan)}", partial(_dig, brief)),
        ("5 SOIL AND STONE", soil),
        (f"6 PLANT{_in_all(plan)}", planting),
        ("7 TAKE CARE", _care),
        ("8 IN THE FIRST RAIN", _first_rain),
    )


def _tied(plan: Plan) -> str:
    """Say how high the string of the levels is tied, where that is known."""
    try:
        return f" {string_height(plan.earth.lie, plan.metric)} at the uphill edge"
    except Unanswered:
        return " at the height of the crest"
    except Exception as trouble:
        own_fault.note("the level string", trouble)
        return ""


def _title(title: str) -> str:
    return f"{title} ".ljust(WIDTH, "-")


def _cut(lines: list[str], most: int) -> list[str]:
    """Keep so many lines; say that there are more."""
    if len(lines) <= most:
        return lines
    return [*lines[: most - 1], *wrap(f"{lines[most - 1][: WIDTH - 20]} ... see the sheet")]


def _head(plan: Plan) -> Iterator[str]:
    name = foreign.shown(or_gap(lambda: plan.answers[start.GARDEN_NAME], GAP * 3))
    made = f"{plan.now:%Y-%m-%d}" if plan.now.year > 2000 else ""
    room = WIDTH - len(made) - 1
    yield f"{f'YARD CARD: {name}'[:room]:<{room}} {made}"
    yield "Made from your own measurements; local codes and licensed people decide."


def _gate(plan: Plan) -> Iterator[str]:
    now = may_dig(plan)
    if now.open:
        yield f" [ ] OPEN today, {said_day(plan.now.date())}: lines located, owners answered."
        if any(one.get(HOLE_SMELL) == "rotten_egg" for one in plan.answers.items("holes")):
            said = " ! A hole smelled of rotten eggs. If it may be gas, leave and call "
            yield from wrap(plan.answers.told(f"{said}the emergency number from upwind."), "   ")
    else:
        why = " ".join(now.reasons[:MOST_WHY])
        more = len(now.reasons) - MOST_WHY
        also = f" And {more} more: see the sheet." if more > 0 else ""
        yield from _cut(wrap(f" {now.word}: DO NOT DIG. {why}{also}", "   "), MOST_WHY_LINES)
    ticket = plan.answers.get(buried.LINES_TICKET) or GAP
    gate = plan.site.dig_gate
    yield from wrap(f" {buried.locating_service(plan.answers)} Ticket: {ticket}.", "   ")
    yield f" First day to dig: {_day(gate.earliest)}; marks good until {_day(gate.stale_after)}"
    day = plan.answers.get(review.DIG_DAY)
    past = " (past)" if day is not None and day < plan.now.date() else ""
    yield f" To be dug on: {_day(day)}{past}"
    for one in plan.findings:
        if one.key == "dig_day":
            yield from _cut(wrap(f" {one.said}", "   "), 2)
    yield " That morning:  [ ] all marks seen   [ ] photo taken   [ ] string is level"


def _day(day: dt.date | None) -> str:
    return GAP if day is None else said_day(day)


def _where(plan: Plan) -> Iterator[str]:
    spot = ground.chosen_spot(plan.answers)
    facing = spot.get(ground.DOWNHILL)
    downhill = GAP if facing is None else ground.DOWNHILL.kind.echo(facing, spot)
    fall = or_gap(lambda: figure_words(plan, "slope"))
    name = spot.get(ground.SPOT_NAME) or GAP
    asked: str | None = plan.answers.get(site.RULES_CHECKED)
    rules = GAP if asked is None else site.RULES_CHECKED.kind.echo(asked, plan.answers)
    said = f" {name}; downhill: {downhill}; slope {fall}; permits and rules: {rules}"
    yield from _cut(wrap(said, "   "), 2)
    kept = list(_distances(plan))
    lines = flow(kept) if kept else [" nothing near that needs a distance"]
    yield from _cut(lines, MOST_WHERE_LINES)


def _distances(plan: Plan) -> Iterator[str]:
    """Yield each thing near the spot with the distance measured and the one to keep."""
    spot = ground.chosen_spot(plan.answers)
    near = spot.get(nearby.NEAR)
    if near is None:
        yield f"near it: {GAP} {GAP}"
        return
    shown = {key: plan.answers.told(name) for key, name in nearby.NEAR.kind.options}  # type: ignore[attr-defined]
    number = spot.scope[1] if spot.scope else 1
    limits = {
        one.key: one.limit
        for report in plan.checks.spots
        if report.number == number
        for one in report.findings
    }
    for key in near:
        far = spot.get(nearby.DISTANCES[key])
        measured = GAP
        if far is not None:
            # What is left once the garden reaches beyond where it was measured.
            measured = distance_words(left_of(far, plan.size.reaches_out), plan.metric)
        item = SETBACK_OF[key]
        keep = limits.get(f"{item}_distance") or limits.get(f"{item}_uphill_distance")
        yield f"{shown[key]} {measured}{f' ({keep})' if keep else ''}"


def _stops(plan: Plan) -> Iterator[str]:
    lines: list[str] = []
    for one in plan.findings:
        if one.grade is Grade.STOP:
            lines += wrap(f" [ ] {one.said} {one.change}".rstrip(), "     ")
    yield from _cut(lines, MOST_STOP_LINES)
    yield from wrap(
        " While something says STOP, the card gives no measures to dig by. Local codes and "
        "licensed people decide.",
        " ",
    )


def _pegs(brief: int, plan: Plan) -> Iterator[str]:
    if not may_dig(plan).open:
        yield f" {NO_PEGS}"
    try:
        table = peg_table(plan)
    except Unanswered:
        yield f" {'from the middle':<17}{'to each side: floor':<26}{'full pond':<16}rim"
        for place in ("0", GAP, GAP, "ends at"):
            yield f" {place:<17}{GAP:<26}{GAP:<16}{GAP}"
        return
    for line in table.text(table.rows(PEG_ROWS[min(brief, len(PEG_ROWS) - 1)])):
        yield f" {line}"
    for words in () if brief > 1 else (table.hose(), table.kidney(), table.reach()):
        if words:
            yield from wrap(f" {words}", "   ")


def _dig(brief: int, plan: Plan) -> Iterator[str]:
    garden = or_gap(lambda: _floor(plan), f"{GAP} by {GAP}")
    deep = or_gap(lambda: depth_words(plan.size.depth.depth, plan.metric))
    beds = f"{plan.size.bed_count} beds, each: " if plan.size.bed_count > 1 else ""
    yield from wrap(f" {beds}floor {garden}, {deep} below the notch", "   ")
    try:
        rows = levels(plan)
    except Unanswered:
        for point in (
            "Crest of the berm: the level string",
            "Overflow notch",
            "Floor",
            "Bottom of digging",
        ):
            yield _level(point, GAP)
    else:
        for row in rows:
            if brief > 1 and row.point.startswith("Ground"):
                continue
            down = reading_words(row.below_string, plan.metric)
            yield _level(row.point, down)
    yield f" {FLOOR_READINGS.label} {' '.join([NARROW] * POINTS)}  {INLET_READING.label} {NARROW}"
    floor, one, count = " ".join([NARROWER] * POINTS), NARROWER, plan.size.bed_count
    if brief > 2 and count > 1:
        yield " The sheet has blanks for what is found in the other beds."
        count = 1
    for number in range(2, count + 1):
        yield f" bed {number} floor {floor} notch {one} rim {one} inlet {one}"
    yield from _notch(plan)


def _level(point: str, down: str) -> str:
    """Return a level with a blank for what is found there, where that is typed in."""
    found = next((one for start, one in _FOUND_AT.items() if point.startswith(start)), None)
    blank = f"{found.label} {GAP}" if found else ""
    return f" {point:<41}{down:<14}{blank}"


def _floor(plan: Plan) -> str:
    one = plan.size.garden
    sides = sides_words(one.floor_length, one.floor_width, plan.metric)
    return f"{sides}, {SHAPE_WORDS[one.shape]}"


def _notch(plan: Plan) -> Iterator[str]:
    metric = plan.metric
    thick = quantity(*STONE_LAYER[plan.system].value)
    try:
        long, wide = plan.earth.apron_length, plan.earth.notch.width
    except Unanswered:
        yield f" Notch {GAP} wide; stone below it {GAP} by {GAP}."
        return
    if plan.earth.notch.lip:
        across = length_words(plan.earth.notch.width, metric)
        yield from wrap(f" Lip in the lawn {across} wide, level, of sod or stone.", "   ")
        return
    yield from wrap(
        f" Notch {length_words(plan.earth.notch.width, metric)} wide, stone in it and "
        f"{sides_words(long, wide, metric)} below, {depth_words(thick, metric)} thick.",
        "   ",
    )


def _plants_in_full(plan: Plan) -> Iterator[str]:
    yield from _plants(plan, _kinds)


def _plants_in_short(plan: Plan) -> Iterator[str]:
    yield from _plants(plan, _count)


def _plants(plan: Plan, tell: Callable[[Plan, ZonePlan], str]) -> Iterator[str]:
    try:
        zones = plan.planting.chosen.zones
    except Unanswered:
        for name in ("floor", "side", "rim"):
            yield f" {name.upper():<6} {GAP} plants, {GAP} apart: {GAP * 3}"
        return
    for zone in zones:
        area = area_words(zone.site.area, plan.metric)
        each = ", each bed" if plan.size.bed_count > 1 else ""
        yield from wrap(f" {zone.zone.value.upper()} ({area}{each}): {tell(plan, zone)}", "   ")


def _in_all(plan: Plan) -> str:
    """Say how many plants it takes and how few the cheaper ways leave; nothing where not known."""
    try:
        count, cheaper = plant_count(plan.planting), cheaper_words(plan)
    except Unanswered:
        return ""
    except Exception as trouble:
        own_fault.note("the plants", trouble)
        return ""
    return f": {count} plants, {cheaper}" if cheaper else ""


def _kinds(plan: Plan, zone: ZonePlan) -> str:
    if zone.sown:
        return f"seed of {', '.join(short_name(one.plant) for one in zone.picks) or GAP * 3}"
    if not zone.picks:
        apart = apart_words(zone.apart_in, plan.metric)
        return f"{count_words(zone.places, 'plant')} {apart} apart: {GAP * 3}"
    return ", ".join(
        f"{one.count} {short_name(one.plant)} {apart_words(one.plant.spacing_in, plan.metric)}"
        for one in zone.picks
    )


def _count(plan: Plan, zone: ZonePlan) -> str:
    if zone.sown or not zone.picks:
        return _kinds(plan, zone)
    spacing = sorted(one.plant.spacing_in for one in zone.picks)
    near, far = (apart_words(spacing[end], plan.metric) for end in (0, -1))
    span = near if near == far else f"{near} to {far}"
    total = count_words(sum(one.count for one in zone.picks), "plant")
    kinds = count_words(len(zone.picks), "kind")
    return f"{total} of {kinds}, {span} apart; the sheet lists them"


def _care(plan: Plan) -> Iterator[str]:
    for line in cautions.on_the_day(plan.site.tolerance):
        yield from wrap(f" {plan.answers.told(line)}", "   ")


def _first_rain(plan: Plan) -> Iterator[str]:
    spot = ground.chosen_spot(plan.answers)
    goes = spot.get(ground.OVERFLOW_TO)
    where = GAP if goes is None else ground.OVERFLOW_TO.kind.echo(goes, spot)
    yield from wrap(f" [ ] in over the stone   [ ] out at the notch alone, {where}", "     ")
    yield " [ ] walls, basements dry   [ ] no bank washed out   [ ] children kept off"
    yield f" Rain {GAP}   pond gone {GAP} h after (24 aimed at, 48 the most)"


_WAYS: tuple[tuple[Part, int], ...] = (
    (_plants_in_full, 0),
    (_plants_in_short, 0),
    (_plants_in_short, 1),
    (_plants_in_short, 2),
    (_plants_in_short, 3),
)
"""Ever shorter pages: the plants in short, then fewer pegs, then only what cannot be left out."""
