"""The soak test on the sheet, and what to do about slow soil."""

from __future__ import annotations

from collections.abc import Iterator

from interview.model import Unanswered
from interview.plan import Plan
from interview.sections.common import figure_lines
from interview.slow_soil import remedies
from interview.summary import wrap
from interview.units import magnitude


def soak(plan: Plan) -> Iterator[str]:
    """Yield each test hole with its intervals, and the rates that follow."""
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
    yield from figure_lines(plan, "drop_rate", "corrected_rate", "corrected_rate_error")
    _ = plan.soil
    yield from wrap(
        "The drop rate is how fast the water fell in the hole. Much of it left through the "
        "walls; a wide garden has almost none, so the corrected rate is what its floor can take."
    )


def slow(plan: Plan) -> Iterator[str]:
    """Yield what to do about slow soil; nothing where it is quick enough."""
    try:
        found = remedies(plan)
    except Unanswered:
        return
    for remedy in found:
        yield from wrap(f"- {remedy.label}: {remedy.words}", "  ")
