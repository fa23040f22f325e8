"""What drains to the garden, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from interview.plan import Plan
from interview.sections.common import figure_lines
from interview.units import magnitude


def survey(plan: Plan) -> Iterator[str]:
    """Yield the table of surfaces and what they add up to."""
    unit, name = ("m**2", "m²") if plan.metric else ("ft**2", "ft²")
    yield f"{'surface':<28}{'plan ' + name:>12}{'share':>8}{'drains here':>13}{'weighted':>11}"
    for one in plan.catchment.surfaces:
        yield (
            f"{one.name[:27]:<28}{magnitude(one.plan, unit):>12.1f}{100 * one.share:>7.0f}%"
            f"{magnitude(one.drains_here, unit):>13.1f}{magnitude(one.weighted, unit):>11.1f}"
        )
    yield from figure_lines(
        plan, "catchment_area", "weighted_area", "weighted_area_error", "widest_error"
    )
