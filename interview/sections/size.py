"""Depth, size and the ways out, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from interview.model import Unanswered
from interview.plan import Plan
from interview.sections.common import figure_lines
from interview.summary import length, wrap
from interview.units import show
from interview.ways_out import ways_out


def size(plan: Plan) -> Iterator[str]:
    """Yield the depth, the area and the sizes of the garden."""
    _ = plan.garden
    yield from figure_lines(
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
    yield from figure_lines(plan, "pond_volume", "rain_held", "empty_soonest", "empty_latest")


def ways(plan: Plan) -> Iterator[str]:
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
