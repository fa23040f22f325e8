"""The plan in words: the lines beside a question, and the sheet to take outside."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

from interview import cautions, figures, route
from interview.calc.plant_care import first_year
from interview.evidence import Finding, Grade
from interview.figures import BY_KEY, find
from interview.model import Answers, Question, Unanswered
from interview.plan import Plan
from interview.questions import QUESTIONS, bed, planting, review, site, start
from interview.units import Quantity, feet_and_inches, magnitude, plain_number, significant

WIDTH = 76
"""Columns of the sheet: it prints on letter and A4 paper."""

VERDICT_WORDS = {
    Grade.GOOD: "GOOD: nothing found that speaks against it.",
    Grade.FIX: "FIX: some things must be mended or found out first.",
    Grade.STOP: "STOP: not here, or not like this.",
}


@dataclass(frozen=True)
class SoFar:
    """One line of the plan so far: a value, or what it waits for."""

    label: str
    value: str
    waits_for: str = ""
    """The label of the question it waits for; empty when the value is known."""
    address: str = ""
    """Where that question is answered."""


def length(value: Quantity, metric: bool) -> str:
    """Write a length of the garden: feet and inches, or metres."""
    if metric:
        return f"{plain_number(significant(magnitude(value, 'm'), 3))} m"
    return feet_and_inches(value, 2)


def depth_words(value: Quantity, metric: bool) -> str:
    """Write a depth: inches to the quarter, or millimetres."""
    if metric:
        return f"{magnitude(value, 'mm'):.0f} mm"
    return f"{plain_number(round(magnitude(value, 'in') * 4) / 4, 4)} in"


def figure_words(plan: Plan, key: str) -> str:
    """Return one figure as the plan shows it; raises ``Unanswered``."""
    found = find(BY_KEY[key], plan)
    if found.waits_for:
        raise found.waits_for
    return found.shown(plan.metric)


def _size(plan: Plan) -> str:
    garden, metric = plan.garden, plan.metric
    return f"{length(garden.floor_length, metric)} by {length(garden.floor_width, metric)}"


def _rim(plan: Plan) -> str:
    garden, metric = plan.garden, plan.metric
    return f"{length(garden.rim_length, metric)} by {length(garden.rim_width, metric)}"


def _empties(plan: Plan) -> str:
    soonest = find(BY_KEY["empty_soonest"], plan).shown(plan.metric)
    latest = figure_words(plan, "empty_latest")
    if plan.soil.drop_rate is None:
        return f"in about {latest}"
    return f"in {soonest.removesuffix(' h')} to {latest}"


def _digging(plan: Plan) -> str:
    gate_now = plan.dig_gate
    if gate_now.earliest is None:
        raise Unanswered(site.LINES_REQUESTED, "lines_requested")
    from interview.gate import dig_reasons

    reasons = dig_reasons(plan.answers, plan.now.date())
    if not reasons:
        return "open: lines located and answered"
    return f"SHUT; first day {gate_now.earliest:%a} {gate_now.earliest}"


def _spot(plan: Plan) -> str:
    chosen = site.chosen_spot(plan.answers)
    for spot in plan.spots:
        if chosen.scope and spot.number == chosen.scope[1]:
            return f"{spot.name}: {spot.grade.value}"
    raise Unanswered(site.STANDS, "spots.1.stands_after_rain")


_SO_FAR: tuple[tuple[str, Callable[[Plan], str]], ...] = (
    ("Digging", _digging),
    ("Spot", _spot),
    ("Slope", lambda p: figure_words(p, "slope")),
    ("Drop rate", lambda p: figure_words(p, "drop_rate")),
    ("Corrected rate", lambda p: figure_words(p, "corrected_rate")),
    ("Area that drains here", lambda p: figure_words(p, "catchment_area")),
    ("Pond depth", lambda p: depth_words(p.depth.depth, p.metric)),
    ("Empties", _empties),
    ("Area needed", lambda p: figure_words(p, "recommended_area")),
    ("Level floor", _size),
    ("Whole rim", _rim),
    ("Rain it holds", lambda p: figure_words(p, "rain_held")),
    ("Soil to dig", lambda p: figure_words(p, "soil_dug_total")),
    ("Wheelbarrow loads", lambda p: figure_words(p, "barrow_loads")),
    ("Plants", lambda p: figure_words(p, "plants_total")),
)


def so_far(plan: Plan) -> list[SoFar]:
    """Return the plan so far: each line its value, or what it still waits for."""
    lines = []
    for label, get in _SO_FAR:
        try:
            lines.append(SoFar(label, get(plan)))
        except Unanswered as gap:
            waits = gap.why or gap.question.label
            lines.append(SoFar(label, "", waits, gap.address))
    return lines


def waiting(plan: Plan) -> list[tuple[Question[Any], str, str]]:
    """Return each question the plan waits for, once: question, address, and why if refused."""
    found: dict[str, tuple[Question[Any], str, str]] = {}
    for figure in figures.found(plan):
        gap = figure.waits_for
        if gap is not None and not _optional(gap.question):
            found.setdefault(gap.address, (gap.question, gap.address, gap.why))
    return list(found.values())


_OPTIONAL = ("rain_record", "rain_record_unit", "spout_distance", "lines_finished_on")


def _optional(question: Question[Any]) -> bool:
    return question.key in _OPTIONAL


def waiting_text(plan: Plan) -> str:
    """Return what the plan waits for and how to find each out, as plain lines."""
    found = waiting(plan)
    if not found:
        return "The plan waits for nothing."
    lines = ["The plan still waits for:"]
    for question, address, why in found:
        lines += wrap(f"- {question.label} ({address}). {why or question.find_out}", "  ")
    return "\n".join(lines)


def wrap(text: str, indent: str = "") -> list[str]:
    """Return ``text`` folded to the width of the sheet."""
    return textwrap.wrap(text, WIDTH, subsequent_indent=indent) or [""]


def assumed(answers: Answers) -> list[tuple[Question[Any], str]]:
    """Return each question whose default is in use, with that default."""
    found = []
    for step in route.steps(answers):
        view = step.view(answers)
        default = view.assumed(step.question)
        if default is not None and not step.question.key.startswith("another_"):
            found.append((step.question, default))
    return found


def finding_lines(finding: Finding) -> list[str]:
    """Return one finding as lines: what was found, the limit, the source, what would change it."""
    lines = wrap(f"[{finding.grade.value.upper()}] {finding.said}", "    ")
    if finding.limit:
        lines += wrap(f"    limit: {finding.limit}", "      ")
    if finding.change:
        lines += wrap(f"    to do: {finding.change}", "      ")
    lines += wrap(f"    source: {finding.source}", "      ")
    return lines


def plan_text(plan: Plan) -> str:
    """Return the whole plan as plain text of 76 columns or fewer."""
    return "\n".join(line.rstrip() for part in _parts(plan) for line in part) + "\n"


def _parts(plan: Plan) -> Iterator[list[str]]:
    yield _head(plan)
    yield _summary(plan)
    yield _waiting_part(plan)
    yield _findings_part(plan)
    for title, part in (
        ("THE SOAK TEST", _soak_part),
        ("WHAT DRAINS HERE", _survey_part),
        ("DEPTH AND SIZE", _size_part),
        ("STORMS", _storm_part),
        ("YEARS OF RAIN", _record_part),
        ("DIGGING", _dig_part),
        ("SHOPPING LIST", _shopping_part),
        ("PLANTS", _plant_part),
        ("FIRST YEAR", _care_part),
    ):
        try:
            lines = list(part(plan))
        except Unanswered as gap:
            lines = wrap(f"Waits for: {gap.question.label}. {gap.why or gap.question.find_out}")
        if lines:
            yield _heading(title) + lines
    yield _assumed_part(plan)
    yield _notes_part(plan)
    yield _caution_part()


def _heading(title: str) -> list[str]:
    return ["", title, "-" * len(title)]


def _head(plan: Plan) -> list[str]:
    try:
        name = plan.answers[start.GARDEN_NAME]
    except Unanswered:
        name = "no name yet"
    title = f"RAIN GARDEN PLAN: {name}"
    lines = [*wrap(title), "=" * min(len(title), WIDTH)]
    if plan.now.year > 2000:
        lines.append(f"Made {plan.now:%A} {plan.now:%Y-%m-%d %H:%M}.")
    return lines + wrap(cautions.NOT_ENGINEERING)


def _summary(plan: Plan) -> list[str]:
    lines = [*_heading("IN SHORT"), *wrap(f"Verdict: {VERDICT_WORDS[plan.verdict]}", "  ")]
    for line in so_far(plan):
        value = line.value or f"waits for: {line.waits_for}"
        lines += wrap(f"{line.label + ':':<24}{value}", " " * 24)
    return lines


def _waiting_part(plan: Plan) -> list[str]:
    if not waiting(plan):
        return []
    return [*_heading("STILL TO FIND OUT"), *waiting_text(plan).splitlines()[1:]]


def _findings_part(plan: Plan) -> list[str]:
    lines = _heading("WHAT WAS FOUND")
    for finding in plan.findings:
        lines += finding_lines(finding)
    if len(plan.spots) > 1:
        lines += ["", "Spots compared:"]
        lines += [f"  {one.number}. {one.name}: {one.grade.value}" for one in plan.spots]
    return lines


def _lines_of(plan: Plan, *keys: str) -> Iterator[str]:
    for key in keys:
        found = find(BY_KEY[key], plan)
        if found.waits_for is None:
            yield from wrap(f"{found.figure.label + ':':<46}{found.shown(plan.metric)}", " " * 46)


def _soak_part(plan: Plan) -> Iterator[str]:
    unit = "mm/h" if plan.metric else "in/h"
    deep = "mm" if plan.metric else "in"
    for hole in plan.holes:
        if hole.test is None:
            if hole.waits_for:
                gap = hole.waits_for
                yield from wrap(f"{hole.name} waits for: {gap.why or gap.question.label}.", "  ")
            continue
        yield f"{hole.name}: {hole.test.band.value}"
        yield f"  {'from':>8} {'to':>8} {'water ' + deep:>16} {'drop ' + unit:>11} {'corrected':>10}"
        for row in hole.test.intervals:
            before, after = (magnitude(x, deep) for x in (row.depth_before, row.depth_after))
            corrected = "-" if row.corrected is None else f"{magnitude(row.corrected, unit):.4g}"
            water = f"{before:.4g} to {after:.4g}"
            yield (
                f"  {magnitude(row.start, 'h'):>6.2f} h {magnitude(row.end, 'h'):>6.2f} h"
                f" {water:>16} {magnitude(row.drop_rate, unit):>11.4g} {corrected:>10}"
            )
        settled = "settled" if hole.test.settled else "not settled yet"
        yield f"  {settled}; {100 * hole.test.side_share:.0f} % of the water left by the walls"
        for note in hole.test.notes:
            yield from wrap(f"  {note}", "  ")
    yield from _lines_of(plan, "drop_rate", "corrected_rate", "corrected_rate_error")
    _ = plan.soil
    yield from wrap(
        "The drop rate is how fast the water fell in the hole. Much of it left through the "
        "walls; a wide garden has almost none, so the corrected rate is what its floor can take."
    )


def _survey_part(plan: Plan) -> Iterator[str]:
    unit, name = ("m**2", "m²") if plan.metric else ("ft**2", "ft²")
    yield f"{'surface':<28}{'plan ' + name:>12}{'share':>8}{'drains here':>13}{'weighted':>11}"
    for one in plan.catchment.surfaces:
        yield (
            f"{one.name[:27]:<28}{magnitude(one.plan, unit):>12.1f}{100 * one.share:>7.0f}%"
            f"{magnitude(one.drains_here, unit):>13.1f}{magnitude(one.weighted, unit):>11.1f}"
        )
    yield from _lines_of(
        plan, "catchment_area", "weighted_area", "weighted_area_error", "widest_error"
    )


def _size_part(plan: Plan) -> Iterator[str]:
    _ = plan.garden
    yield from _lines_of(
        plan,
        "depth_by_drop",
        "depth_by_corrected",
        "pond_depth",
        "depth_governed_by",
        "rule_of_thumb_area",
        "mid_area",
        "recommended_area",
        "area_low",
        "area_high",
        "published_sandy",
        "published_silty",
        "published_clayey",
    )
    garden, metric = plan.garden, plan.metric
    for label, one, two in (
        ("Level floor", garden.floor_length, garden.floor_width),
        ("Full pond", garden.edge_length, garden.edge_width),
        ("Inside the rim", garden.rim_length, garden.rim_width),
    ):
        yield f"{label + ':':<46}{length(one, metric)} by {length(two, metric)}"
    yield from _lines_of(plan, "pond_volume", "rain_held", "empty_soonest", "empty_latest")


def _storm_part(plan: Plan) -> Iterator[str]:
    deep, name = ("mm", "mm") if plan.metric else ("in", "in")
    shape = dict(bed.STORM_SHAPE.kind.options)[plan.answers[bed.STORM_SHAPE]]  # type: ignore[attr-defined]
    hours = magnitude(plan.answers[bed.STORM_HOURS], "h")
    yield from wrap(f"Rain {shape}, over {hours:g} h, on an empty garden:")
    yield f"{'rain ' + name:>10}{'deepest pond':>15}{'hours wet':>12}{'caught':>10}{'spilled':>12}"
    volume, gallons = ("L", "L") if plan.metric else ("gal", "gal")
    for row in plan.ladder:
        spilled = magnitude(row.spill_volume, volume)
        caught = significant(100 * row.share_caught, 3, "down")
        yield (
            f"{magnitude(row.rain, deep):>10.4g}{magnitude(row.peak, deep):>12.3g} {name}"
            f"{magnitude(row.hours_on_floor, 'h'):>12.3g}{caught:>9.3g}%"
            f"{significant(spilled, 2):>8.6g} {gallons}"
        )
    yield from _lines_of(plan, "side_hours")


def _record_part(plan: Plan) -> Iterator[str]:
    if not plan.answers[start.HAS_RECORD]:
        yield from wrap("No rainfall record was given, so no year of real rain was tried.")
        return
    years = plan.real_years
    yield f"{years.first} to {years.last}, {years.days} days; missing: {plan.record.missing_days}"
    yield from _lines_of(plan, "record_share_held", "record_overflow_days", "record_longest_wet")
    for trouble in plan.record.bad_lines[:5]:
        yield from wrap(f"line {trouble.line}: {trouble.why}")


def _dig_part(plan: Plan) -> Iterator[str]:
    yield from wrap(f"CAUTION: {cautions.LINES}", "  ")
    ticket = plan.answers.get(site.LINES_TICKET)
    if ticket:
        yield f"Locate ticket: {ticket}"
    yield from _lines_of(plan, "earliest_dig_day", "marks_stale_after")
    day = plan.answers.get(review.DIG_DAY)
    if day:
        yield f"You mean to dig on: {day:%A} {day}"
    work, metric = plan.earth, plan.metric
    mulch = plan.answers[bed.MULCH_DEPTH]
    from interview.units import total

    up, down = total(work.uphill_depth, mulch), total(work.downhill_depth, mulch)
    yield from wrap(
        f"Dig the floor level: {depth_words(up, metric)} below the lawn at the uphill edge, "
        f"{depth_words(down, metric)} at the downhill edge (this leaves room for "
        f"{depth_words(mulch, metric)} of mulch).",
        "  ",
    )
    if not work.dug_in:
        yield from wrap(
            f"Build the berm {depth_words(work.berm_height, metric)} above the lawn, tamped in "
            "thin layers, its top level all round.",
            "  ",
        )
    yield from wrap(
        f"Cut the overflow notch {length(plan.notch.width, metric)} wide, its bottom "
        f"{depth_words(plan.garden.depth, metric)} above the finished floor, lined with stone.",
        "  ",
    )
    yield from _lines_of(
        plan, "cut_volume", "berm_volume", "soil_dug_total", "soil_loose", "barrow_loads",
        "hours_quick", "hours_slow", "peak_flow", "notch_head",
    )  # fmt: skip
    for place, line in enumerate(cautions.DIG_DAY, 1):
        yield from wrap(f"[ ] {place:>2}. {line}", "        ")


def _shopping_part(plan: Plan) -> Iterator[str]:
    for item in plan.shopping:
        unit = str(item.buy.units)
        yield from wrap(f"[ ] {item.name}: {_buy(item.buy, plan.metric)}. {item.note}", "      ")
        _ = unit
    yield from wrap(f"[ ] plants: {plan.planting.total} in all, listed below", "      ")


def _buy(amount: Quantity, metric: bool) -> str:
    for unit, name in (("yd**3", "yd³"), ("lb", "lb"), ("ft", "ft")) if not metric else (
        ("m**3", "m³"), ("kg", "kg"), ("m", "m"),
    ):  # fmt: skip
        if amount.is_compatible_with(unit):
            return f"{plain_number(magnitude(amount, unit), 4)} {name}"
    return str(amount)


def _plant_part(plan: Plan) -> Iterator[str]:
    words = {"floor": "FLOOR, the wettest", "side": "SIDE", "rim": "RIM, the driest"}
    region = planting.plant_region(plan.answers)
    if region:
        yield f"Region: {region.value}"
    for zone in plan.planting.zones:
        hours = magnitude(zone.site.hours, "h")
        unit, name = ("m**2", "m²") if plan.metric else ("ft**2", "ft²")
        area = magnitude(zone.site.area, unit)
        yield ""
        yield from wrap(
            f"{words[zone.zone.value]}: {area:.0f} {name}, under water {hours:.0f} h after the "
            "storm it holds"
        )
        for pick in zone.picks:
            plant = pick.plant
            yield from wrap(
                f"[ ] {pick.count} x {plant.common_name} ({plant.scientific_name}), "
                f"{plant.spacing_in:g} in apart. {pick.why}",
                "      ",
            )
            for caution in pick.cautions:
                yield from wrap(f"      CAUTION: {caution}", "      ")
        if not zone.picks:
            for trait in _guidance(zone.guidance):
                yield from wrap(f"- {trait}", "  ")
    for note in plan.planting.notes:
        yield from wrap(f"Note: {note}", "  ")
    yield from wrap(f"CAUTION: {cautions.PLANTS}", "  ")


def _guidance(guidance: Any) -> Iterator[str]:
    for value in vars(guidance).values():
        if isinstance(value, str):
            yield value
        elif isinstance(value, tuple):
            yield from (str(one) for one in value)


MONTHS = "January February March April May June July August September October November December"


def _southern(answers: Answers) -> bool:
    country: str | None = answers.get(start.COUNTRY)
    return country in ("australia", "new_zealand")


def _care_part(plan: Plan) -> Iterator[str]:
    day = plan.answers.get(review.DIG_DAY)
    planted = day.month if day else 5
    if day is None:
        yield "If planted in May:"
    for month in first_year(planted, _southern(plan.answers)):
        tasks = "; ".join(task.task for task in month.tasks)
        if tasks:
            yield from wrap(f"{MONTHS.split()[month.month - 1]}: {tasks}", "  ")


def _assumed_part(plan: Plan) -> list[str]:
    found = assumed(plan.answers)
    if not found:
        return []
    lines = [*_heading("ASSUMED UNTIL YOU ANSWER")]
    for question, default in found:
        lines += wrap(f"{question.label}: {default}", "  ")
    return lines


def _notes_part(plan: Plan) -> list[str]:
    notes = plan.answers.get(review.NOTES)
    if not notes:
        return []
    lines = _heading("NOTES")
    for line in notes.splitlines():
        lines += wrap(line)
    return lines


def _caution_part() -> list[str]:
    lines = _heading("CAUTIONS")
    for line in cautions.ALL:
        lines += wrap(f"- {line}", "  ")
    return lines


def worksheet() -> str:
    """Return the blank worksheet: every question in order."""
    from interview.questions import STAGES

    lines = []
    for stage in STAGES:
        lines += ["", f"{stage.letter}. {stage.title}", "=" * (len(stage.title) + 3)]
        lines += wrap(stage.intro)
        for question in stage.questions():
            lines += _asked(question)
    return "\n".join(lines).strip() + "\n"


def _asked(question: Question[Any]) -> list[str]:
    group = f" (for each of: {question.group})" if question.group else ""
    lines = ["", f"{question.key}{group}", *wrap(f"  {question.text}", "  ")]
    lines += wrap(f"  kind: {question.kind.name}; {question.kind.hint('us')}", "    ")
    if limits := question.kind.limits("us"):
        lines += wrap(f"  limits: {limits} (metric: {question.kind.limits('metric')})", "    ")
    for one, label in getattr(question.kind, "options", ()):
        lines += wrap(f"    {one}: {label}", "      ")
    lines += wrap(f"  asked: {question.when}", "    ")
    if question.digs:
        lines.append("  only after the lines are located")
    if question.caution:
        lines += wrap(f"  CAUTION: {question.caution}", "    ")
    return [*lines, "  answer: ________________"]


__all__ = [
    "QUESTIONS",
    "SoFar",
    "assumed",
    "plan_text",
    "so_far",
    "waiting",
    "waiting_text",
    "worksheet",
]
