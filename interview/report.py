"""The whole plan as a sheet of plain text, to read, print and take outside."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from interview import cautions
from interview.calc.plant_care import first_year
from interview.evidence import Finding, Grade
from interview.figure import find
from interview.figures import BY_KEY
from interview.model import Answers, Unanswered
from interview.plan import Plan
from interview.questions import bed, planting, review, site, start
from interview.slow_soil import remedies
from interview.summary import (
    WIDTH,
    assumed,
    depth_words,
    length,
    so_far,
    waiting,
    waiting_text,
    wrap,
)
from interview.units import (
    Quantity,
    magnitude,
    plain_number,
    same_dimension,
    show,
    significant,
    total,
    unit_name,
)
from interview.ways_out import ways_out
from interview.worksheet import worksheet

VERDICT_WORDS = {
    Grade.GOOD: "GOOD: nothing found that speaks against it.",
    Grade.FIX: "FIX: some things must be mended or found out first.",
    Grade.STOP: "STOP: not here, or not like this.",
}


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
        ("IF THE SOIL IS SLOW", _slow_part),
        ("WHAT DRAINS HERE", _survey_part),
        ("DEPTH AND SIZE", _size_part),
        ("WAYS OUT", _ways_part),
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
        if finding.grade is not Grade.GOOD or finding.change:
            lines += finding_lines(finding)
    lines += ["", "Also looked at, nothing against it:"]
    for finding in plan.findings:
        if finding.grade is Grade.GOOD and not finding.change:
            lines += wrap(f"- {finding.said}", "  ")
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
        heads = f"{'from':>8} {'to':>8} {'water ' + deep:>16} {'drop ' + unit:>11}"
        yield f"  {heads} {'corrected':>10}"
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


def _slow_part(plan: Plan) -> Iterator[str]:
    try:
        found = remedies(plan)
    except Unanswered:
        return
    for remedy in found:
        yield from wrap(f"- {remedy.label}: {remedy.words}", "  ")


def _ways_part(plan: Plan) -> Iterator[str]:
    """Write the ways out where the garden does not fit or does not hold the rain."""
    try:
        if not plan.too_big and plan.share_of_rain >= 1 - 1e-9:
            return
        found = ways_out(plan)
    except Unanswered:
        return
    unit = "mm" if plan.metric else "in"
    for way in found:
        one, two = way.garden.rim_length, way.garden.rim_width
        fits = "fits" if way.fits else "does not fit"
        note = f"; {way.note}" if way.note else ""
        yield from wrap(
            f"- {way.label}: rim {length(one, plan.metric)} by {length(two, plan.metric)} "
            f"({fits}), holds {show(way.rain_held, unit, 2, 'down')} of rain{note}",
            "  ",
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
        "hand_check_area",
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
        yield from wrap(f"{label + ':':<42}{length(one, metric)} by {length(two, metric)}")
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
        plan,
        "cut_volume",
        "berm_volume",
        "soil_to_keep",
        "soil_dug_total",
        "soil_loose",
        "barrow_loads",
        "hours_quick",
        "hours_slow",
        "peak_flow",
        "notch_head",
    )
    for place, line in enumerate(cautions.DIG_DAY, 1):
        yield from wrap(f"[ ] {place:>2}. {line}", "        ")


def _shopping_part(plan: Plan) -> Iterator[str]:
    for item in plan.shopping:
        note = f". {item.note}" if item.note else ""
        yield from wrap(f"[ ] {item.name}: {_buy(item.buy, plan.metric)}{note}", "      ")
    yield from wrap(f"[ ] plants: {plan.planting.total} in all, listed below", "      ")


def _buy(amount: Quantity, metric: bool) -> str:
    """Write an amount in the unit it is sold in: cubic yards from a half yard up, else feet."""
    if same_dimension(amount, "m"):
        unit = "m" if metric else "ft"
    elif metric:
        unit = "m**3"
    else:
        unit = "yd**3" if magnitude(amount, "yd**3") >= 0.5 else "ft**3"
    return f"{plain_number(magnitude(amount, unit), 4)} {unit_name(unit)}"


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
    if day is None:
        yield "If planted in May:"
    months: dict[str, list[int]] = {}
    for month in first_year(day.month if day else 5, _southern(plan.answers)):
        for task in month.tasks:
            months.setdefault(task.task, []).append(month.month)
    for words, when in months.items():
        yield from wrap(f"{_months(when)}: {words}", "  ")


def _months(when: list[int]) -> str:
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


__all__ = ["plan_text", "so_far", "waiting", "waiting_text", "worksheet"]
