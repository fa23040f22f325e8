"""Storms and years of rain, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from interview.plan import Plan
from interview.questions import bed, start
from interview.sections.common import figure_lines
from interview.summary import wrap
from interview.units import magnitude, significant


def storms(plan: Plan) -> Iterator[str]:
    """Yield what storms from small to large do to the garden."""
    deep, name = ("mm", "mm") if plan.metric else ("in", "in")
    shape = bed.STORM_SHAPE.kind.echo(plan.answers[bed.STORM_SHAPE], plan.answers)
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
    yield from figure_lines(plan, "side_hours")


def years(plan: Plan) -> Iterator[str]:
    """Yield what the years of the rainfall record would have brought."""
    if not plan.answers[start.HAS_RECORD]:
        yield from wrap("No rainfall record was given, so no year of real rain was tried.")
        return
    replay = plan.real_years
    missing = plan.record.missing_days
    yield f"{replay.first} to {replay.last}, {replay.days} days; missing: {missing}"
    yield from figure_lines(plan, "record_share_held", "record_overflow_days", "record_longest_wet")
    for trouble in plan.record.bad_lines[:5]:
        yield from wrap(f"line {trouble.line}: {trouble.why}")
