"""The plants of a plan as YAML: what is planted where, and where what is known comes from."""

from __future__ import annotations

from interview.answers_file import double_quoted as quoted
from interview.asking.question import Unanswered
from interview.garden.plan import Plan
from interview.garden.planting.choose import Pick
from interview.garden.planting.provenance import from_memory, provenance
from interview.garden.planting.record import RATING_LISTS
from interview.garden.planting.wetness import rating
from interview.garden.planting.wishes import Wishes
from interview.quantities.units import magnitude, unit_name

DIGITS = 8
"""Significant digits, as in the list of figures."""


def planting_lines(plan: Plan) -> list[str]:
    """Return the plants of each zone with what is known of them and from where."""
    area, apart = ("m**2", "cm") if plan.metric else ("ft**2", "in")
    try:
        zones = plan.planting.chosen.zones
    except Unanswered:
        return ["planting: {}"]
    wishes = plan.planting.wishes
    listed = quoted(wishes.list_region.value) if wishes.list_region else "null"
    lines = [f"planting: # areas in {unit_name(area)}, times in h, distances in {apart}"]
    lines += [
        f"  wetland_list: {listed}",
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
            lines.append(f"      {key}: {'null' if value is None else f'{value:.{DIGITS}g}'}")
        lines.append(f"      plants:{'' if zone.picks else ' []'}")
        for pick in zone.picks:
            lines += _pick(pick, wishes, apart)
    lists = {code for zone in zones for pick in zone.picks for code in pick.plant.indicator_source}
    known = sorted(code for code in lists if code in RATING_LISTS)
    lines.append(f"  rating_lists:{'' if known else ' {}'}")
    lines += [f"    {code}: {quoted(RATING_LISTS[code])}" for code in known]
    return lines


def _pick(pick: Pick, wishes: Wishes, apart: str) -> list[str]:
    plant = pick.plant
    code = rating(plant, wishes.list_region)
    told = provenance(plant, wishes.region, wishes.list_region)
    months = ", ".join(str(month) for month in plant.bloom_months)
    lines = [
        f"        - scientific_name: {quoted(plant.scientific_name)}",
        f"          common_name: {quoted(plant.common_name)}",
        f"          count: {pick.count}",
        f"          spacing: {magnitude(plant.spacing, apart):.{DIGITS}g}",
        f"          indicator: {code.name if code else 'null'}",
        f"          bloom_months: [{months}]",
        f"          why: {quoted(pick.why)}",
        "          sources:",
    ]
    lines += [f"            {fact}: {quoted(source)}" for fact, source in told.items()]
    memory = ", ".join(from_memory(plant, wishes.region, wishes.list_region))
    return [*lines, f"          from_memory: [{memory}]"]
