"""Dig day and the shopping list, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from interview import cautions
from interview.plan import Plan
from interview.questions import bed, review, site
from interview.sections.common import figure_lines
from interview.summary import depth_words, length, wrap
from interview.units import Quantity, magnitude, plain_number, same_dimension, total, unit_name


def dig(plan: Plan) -> Iterator[str]:
    """Yield what to dig and the list for dig day."""
    yield from wrap(f"CAUTION: {cautions.LINES}", "  ")
    ticket = plan.answers.get(site.LINES_TICKET)
    if ticket:
        yield f"Locate ticket: {ticket}"
    yield from figure_lines(plan, "earliest_dig_day", "marks_stale_after")
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
    yield from figure_lines(
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


def shopping(plan: Plan) -> Iterator[str]:
    """Yield what to buy."""
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
