"""Every figure of a plan as YAML: key, value, unit, or what it waits for."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping

from interview.answers_file import double_quoted as quoted
from interview.asking import own_fault
from interview.asking.figure import Found
from interview.asking.question import Unanswered
from interview.garden.figures import found
from interview.garden.guides import guides
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.planting.choose import Pick
from interview.garden.planting.provenance import from_memory, provenance
from interview.garden.planting.record import RATING_LISTS
from interview.garden.planting.wetness import rating
from interview.garden.planting.wishes import Wishes
from interview.garden.pond.hyetographs import StormShape
from interview.garden.summary import assumed
from interview.garden.survey import questions as survey
from interview.garden.survey.catchment import Catchment
from interview.garden.survey.pacing import expected_error
from interview.garden.survey.results import runoff_ways
from interview.quantities.units import magnitude, quantity, show, unit_name
from interview.reading import Refused
from interview.reading.foreign import shown

DIGITS = 8
"""Significant digits of a figure in the list: more than any measurement, few enough to read."""


Value = float | str | bool | None


def _value(value: Value) -> str:
    """Write one value: a number with ``DIGITS``, words in quotes."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int):
        return str(value)
    if isinstance(value, float):
        return ".inf" if math.isinf(value) else f"{value:.{DIGITS}g}"
    return quoted(value)


def _figure(one: Found, metric: bool) -> list[str]:
    lines = [f"  {one.figure.key}:", f"    label: {quoted(one.figure.label)}"]
    if one.waits_for is not None:
        lines.append("    value: null")
        lines.append(f"    waits_for: {quoted(one.waits_for.address)}")
        if one.waits_for.why:
            lines.append(f"    why: {quoted(one.waits_for.why)}")
        return lines
    lines.append(f"    value: {_value(one.number(metric))}")
    unit = one.figure.unit(metric)
    if unit:
        lines.append(f"    unit: {quoted(unit_name(unit))}")
    if one.figure.formula:
        lines.append(f"    formula: {quoted(one.figure.formula)}")
    if one.figure.inputs:
        lines.append(f"    from: [{', '.join(one.figure.inputs)}]")
    lines.append(f"    source: {quoted(str(one.source))}")
    return lines


def _row(values: Mapping[str, Value]) -> str:
    return "{" + ", ".join(f"{key}: {_value(value)}" for key, value in values.items()) + "}"


def _holes(plan: Plan) -> list[str]:
    rate, deep = ("mm/h", "mm") if plan.metric else ("in/h", "in")
    lines = [f"holes: # rates in {rate}, depths in {deep}, times in h"]
    for hole in plan.soak.holes:
        lines.append(f"  - name: {quoted(hole.name)}")
        if hole.set_aside:
            lines.append(f"    set_aside: {quoted(hole.set_aside)}")
        test = hole.test
        if test is None:
            if hole.waits_for:
                lines.append(f"    waits_for: {quoted(hole.waits_for.address)}")
            continue
        for key, value in (
            ("shape_length", magnitude(test.hole.shape_length, deep)),
            ("drop_rate", magnitude(test.drop_rate, rate)),
            ("mean_drop_rate", magnitude(test.mean_drop_rate, rate)),
            ("corrected_all", magnitude(test.corrected_all, rate)),
            ("corrected_last_three", magnitude(test.corrected_last_three, rate)),
            ("corrected", magnitude(test.corrected, rate)),
            ("standard_error", magnitude(test.standard_error, rate)),
            ("side_share", test.side_share),
        ):
            lines.append(f"    {key}: {_value(value)}")
        if test.deviation is not None:
            lines.append(f"    deviation_of_last_three: {_value(test.deviation)}")
        lines.append(f"    settled: {_value(test.settled)}")
        lines.append(f"    trend: {quoted(test.trend.value)}")
        lines.append(f"    band: {quoted(test.band.value)}")
        lines.append("    intervals:")
        for row in test.intervals:
            since = row.drop_rate_since_fill
            corrected = row.corrected
            values: dict[str, Value] = {
                "start": magnitude(row.start, "h"),
                "end": magnitude(row.end, "h"),
                "depth_before": magnitude(row.depth_before, deep),
                "depth_after": magnitude(row.depth_after, deep),
                "drop_rate": magnitude(row.drop_rate, rate),
                "drop_rate_since_fill": None if since is None else magnitude(since, rate),
                "corrected": None if corrected is None else magnitude(corrected, rate),
                "valid": row.valid,
            }
            lines.append(f"      - {_row(values)}")
    return lines if len(lines) > 1 else ["holes: []"]


def _surfaces(plan: Plan) -> list[str]:
    unit = "m**2" if plan.metric else "ft**2"
    try:
        catchment = plan.survey.catchment
    except Unanswered:
        return ["surfaces: []"]
    volume = "L" if plan.metric else "gal"
    rain = plan.answers[start.RAIN_DEPTH]
    lines = [f"surfaces: # areas in {unit_name(unit)}, volume in the rain to hold in {volume}"]
    for one, view in zip(catchment.surfaces, plan.answers.items("surfaces"), strict=True):
        ways = runoff_ways(view[survey.SURFACE_KIND], view)
        values: dict[str, Value] = {
            "name": one.name,
            "plan": magnitude(one.plan, unit),
            "share": one.share,
            "drains_here": magnitude(one.drains_here, unit),
            "coefficient": one.coefficient,
            "weighted": magnitude(one.weighted, unit),
            "brings": magnitude(one.brings(rain), volume),
            "usual_coefficient": ways.coefficient,
            "curve_number": float(ways.number),
            "by_curve_number": ways.by_number,
        }
        lines.append(f"  - {_row(values)}")
    return [*lines, *_errors(catchment), *_walkers(plan)]


def _errors(catchment: Catchment) -> list[str]:
    """Return the share of the variance of the weighted area by input, the widest first."""
    shares = sorted(catchment.shares.items(), key=lambda item: (-item[1], item[0]))
    lines = [f"  {quoted(name)}: {_value(part)}" for name, part in shares if part > 0]
    return ["variance_shares:", *lines] if lines else ["variance_shares: {}"]


def _walkers(plan: Plan) -> list[str]:
    """Return each calibrated pace."""
    unit, far = ("m", quantity(12.0, "m")) if plan.metric else ("ft", quantity(40.0, "ft"))
    lines = [f"walkers: # lengths in {unit}; the error is the one to expect over {show(far, unit)}"]
    for one in plan.answers.items("walkers"):
        name = str(one[survey.WALKER_NAME])
        try:
            pace = survey.walker_pace(plan.answers, name)
        except (Refused, Unanswered):
            continue
        values: dict[str, Value] = {
            "name": name,
            "pace": magnitude(pace.length, unit),
            "standard_error": magnitude(pace.standard_error, unit),
            "spread": pace.spread,
            "expected_error": magnitude(expected_error(pace, far), unit),
        }
        lines.append(f"  - {_row(values)}")
    return lines if len(lines) > 1 else ["walkers: []"]


def _ladder(plan: Plan) -> list[str]:
    """Return the ladder of storms, for each shape of rain."""
    deep, volume = ("mm", "L") if plan.metric else ("in", "ft**3")
    lines = [f"storms: # depths in {deep}, times in h, volumes in {unit_name(volume)}"]
    try:
        for shape in StormShape:
            lines.append(f"  {shape.name.lower()}:")
            for storm in plan.storms.ladder_of(shape):
                values: dict[str, Value] = {
                    "rain": magnitude(storm.rain, deep),
                    "peak": magnitude(storm.peak, deep),
                    "hours_on_floor": magnitude(storm.hours_on_floor, "h"),
                    "spill_volume": magnitude(storm.spill_volume, volume),
                    "share_caught": storm.share_caught,
                }
                lines.append(f"    - {_row(values)}")
    except Unanswered:
        return ["storms: {}"]
    return lines


def _record(plan: Plan) -> list[str]:
    """Return the years of the record by size of floor, by year and by month."""
    area, deep = ("m**2", "mm") if plan.metric else ("ft**2", "in")
    try:
        sizes = plan.storms.years_by_size
    except Unanswered:
        return ["record_by_size: []", "record_by_year: []", "record_by_month: []"]
    lines = [f"record_by_size: # areas in {unit_name(area)}"]
    for one in sizes:
        values: dict[str, Value] = {
            "part": one.part,
            "floor_area": magnitude(one.garden.floor_area, area) * plan.size.bed_count,
            "share_held": one.replay.share_held,
            "overflow_days": float(len(one.replay.overflow_days)),
            "overflow_days_a_year": one.replay.overflow_days_a_year,
        }
        lines.append(f"  - {_row(values)}")
    for name, parts in (
        ("year", plan.storms.real_years.years),
        ("month", plan.storms.real_years.months),
    ):
        lines.append(f"record_by_{name}: # rain in {deep}")
        for part in parts:
            values = {
                name: float(part.number),
                "days": float(part.days),
                "rain": magnitude(part.rain, deep),
                "share_held": part.share_held,
                "overflow_days": float(part.overflow_days),
            }
            lines.append(f"  - {_row(values)}")
    return lines


def _planting(plan: Plan) -> list[str]:
    """Return the plants of each zone with what is known of them and from where."""
    area, apart = ("m**2", "cm") if plan.metric else ("ft**2", "in")
    try:
        zones = plan.planting.chosen.zones
    except Unanswered:
        return ["planting: {}"]
    wishes = plan.planting.wishes
    listed = wishes.list_region.value if wishes.list_region else None
    lines = [f"planting: # areas in {unit_name(area)}, times in h, distances in {apart}"]
    lines += [
        f"  wetland_list: {_value(listed)}",
        f"  beds: {plan.size.bed_count}",
        "  zones: # of one bed",
    ]
    for zone in zones:
        record = plan.storms.zone_hours_record
        lines.append(f"    - zone: {zone.zone.value}")
        for key, value in (
            ("area", magnitude(zone.site.area, area)),
            ("hours_held", magnitude(plan.storms.zone_hours.of(zone.zone), "h")),
            ("hours_again", magnitude(plan.storms.zone_hours_again.of(zone.zone), "h")),
            ("hours_record", magnitude(record.of(zone.zone), "h") if record else None),
        ):
            lines.append(f"      {key}: {_value(value)}")
        lines.append(f"      plants:{'' if zone.picks else ' []'}")
        for pick in zone.picks:
            lines += _pick(pick, wishes, apart)
    lists = {code for zone in zones for pick in zone.picks for code in pick.plant.indicator_source}
    known = sorted(code for code in lists if code in RATING_LISTS)
    lines.append(f"  rating_lists:{'' if known else ' {}'}")
    lines += [f"    {code}: {quoted(RATING_LISTS[code])}" for code in known]
    return lines


def _pick(pick: Pick, wishes: Wishes, apart: str) -> list[str]:
    plant, other = pick.plant, pick.substitute
    code = rating(plant, wishes.list_region)
    told = provenance(plant, wishes.region, wishes.list_region)
    months = ", ".join(str(month) for month in plant.bloom_months)
    lines = [
        f"        - scientific_name: {quoted(plant.scientific_name)}",
        f"          common_name: {quoted(plant.common_name)}",
        f"          count: {pick.count}",
        f"          spacing: {_value(magnitude(plant.spacing, apart))}",
        f"          indicator: {code.name if code else 'null'}",
        f"          bloom_months: [{months}]",
        f"          why: {quoted(pick.why)}",
        f"          substitute: {_value(other.scientific_name if other else None)}",
        "          sources:",
    ]
    lines += [f"            {fact}: {quoted(source)}" for fact, source in told.items()]
    memory = ", ".join(from_memory(plant, wishes.region, wishes.list_region))
    return [*lines, f"          from_memory: [{memory}]"]


def _guides(plan: Plan) -> list[str]:
    """Return where guides disagree."""
    found = guides(plan)
    lines = ["guides_disagree:" if found else "guides_disagree: []"]
    for matter in found:
        lines += [f"  - key: {matter.key}", f"    followed: {quoted(matter.followed)}"]
        lines.append("    sayings:")
        for one in matter.sayings:
            source = str(one.source)
            row = _row({"says": one.says, "here": one.here, "source": source})
            lines.append(f"      - {row}")
    return lines


def _findings(plan: Plan) -> Iterator[str]:
    yield "findings:"
    for finding in plan.findings:
        yield f"  - key: {finding.key}"
        yield f"    grade: {finding.grade.value}"
        yield f"    said: {quoted(finding.said)}"


def _assumed(plan: Plan) -> Iterator[str]:
    yield "assumed:"
    for step, default in assumed(plan.answers):
        yield f"  {step.address}: {quoted(default)}"


_PARTS: tuple[tuple[tuple[str, ...], Callable[[Plan], Iterable[str]]], ...] = (
    (("holes",), _holes),
    (("surfaces", "variance_shares", "walkers"), _surfaces),
    (("storms",), _ladder),
    (("record_by_size", "record_by_year", "record_by_month"), _record),
    (("planting",), _planting),
    (("guides_disagree",), _guides),
    (("findings",), _findings),
    (("assumed",), _assumed),
)
"""The names that each part writes, and what writes it."""


def figures_text(plan: Plan) -> str:
    """Return every figure of ``plan`` as YAML text.

    A figure that meets a fault of the program has the value ``null`` and says so under ``fault``;
    other parts that do have ``null`` as well, and ``faults`` at the end names them all.
    """
    with own_fault.noting() as faults:
        lines = _part(("verdict",), lambda plan: [f"verdict: {plan.verdict.value}"], plan)
        lines += _part(("units",), lambda plan: [f"units: {plan.system}"], plan)
        lines.append("figures:")
        for one in found(plan):
            lines += _figure_or_fault(one, plan)
        for names, part in _PARTS:
            lines += _part(names, part, plan)
    if faults:
        lines.append("faults: # of the program itself")
        lines += [f"  - {{in: {quoted(one.part)}, at: {quoted(one.where)}}}" for one in faults]
    return "".join(f"{shown(line)}\n" for line in lines)


def _figure_or_fault(one: Found, plan: Plan) -> list[str]:
    trouble = one.trouble
    if trouble is None:
        try:
            return _figure(one, plan.metric)
        except Exception as found_now:
            trouble = found_now
    said = own_fault.note(f"the figure {one.figure.key}", trouble)
    return [f"  {one.figure.key}:", f"    label: {quoted(one.figure.label)}", "    value: null",
            f"    fault: {quoted(said)}"]  # fmt: skip


def _part(names: tuple[str, ...], part: Callable[[Plan], Iterable[str]], plan: Plan) -> list[str]:
    try:
        return list(part(plan))
    except Exception as trouble:
        own_fault.note(" and ".join(names), trouble)
        return [f"{name}: null" for name in names]
