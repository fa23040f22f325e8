"""Where the water of a timed test stood, and about where it stands between two readings."""

from __future__ import annotations

import datetime as dt
from typing import NamedTuple

from interview.garden.soak.noted import Timed
from interview.garden.soak.reading_lines import REFILLED
from interview.garden.soak.times import utc
from interview.quantities.units import Quantity, magnitude, quantity

_REFILLED_IN = 1e-9
"""Inches by which a level is off the one before where the hole was filled again."""


class Stand(NamedTuple):
    """Where the water stood at one instant, as it was read or filled."""

    at: dt.datetime
    left: Quantity
    """Height of the water over the bottom, a length."""
    counts: bool = True
    """Whether the stretch before it is used for the rates."""


def fills(timed: Timed | None) -> tuple[tuple[Stand, ...], ...]:
    """Return what was read, each filling by itself: how full it was, then its readings.

    Nothing where no test runs or the depth of the mark is not known.
    """
    if timed is None or timed.mark is None:
        return ()
    found = [[Stand(timed.began, timed.mark)]]
    for row in timed.found:
        apart = magnitude(row.depth_before, "in") - magnitude(found[-1][-1].left, "in")
        if abs(apart) > _REFILLED_IN:
            found.append([Stand(_after(timed, row.start), row.depth_before)])
        found[-1].append(Stand(_after(timed, row.end), row.depth_after, row.valid))
    kept = [event for event in timed.events if not event.struck]
    if kept and kept[-1].what == REFILLED and kept[-1].depth is not None:
        found.append([Stand(kept[-1].at, kept[-1].depth)])
    return tuple(map(tuple, found))


def _after(timed: Timed, time: Quantity) -> dt.datetime:
    return utc(timed.began) + dt.timedelta(hours=magnitude(time, "h"))


def latest_rate(timed: Timed | None) -> Quantity | None:
    """Return how fast the water fell before the last reading that counts, a speed."""
    rows = timed.found if timed else ()
    return next((row.drop_rate for row in reversed(rows) if row.valid), None)


def estimated(timed: Timed | None, now: dt.datetime, step: Quantity | None = None) -> Stand | None:
    """Return about where the water stands at ``now``: fallen on as before the last reading.

    With a ``step``, a length, it is told at the nearest instant at which it has fallen by a whole
    number of steps, so that what is drawn from it changes no oftener. Nothing where no rate is
    known yet, the clock stands before the last reading, or the water has not fallen by as much.
    """
    rate, stands = latest_rate(timed), fills(timed)
    if rate is None or not stands:
        return None
    last = stands[-1][-1]
    left, fall = magnitude(last.left, "in"), magnitude(rate, "in/h")
    hours = (utc(now) - utc(last.at)).total_seconds() / 3600
    fallen = min(fall * hours, left)
    if step is not None:
        fallen = min(round(fallen / magnitude(step, "in")) * magnitude(step, "in"), left)
    if fallen <= 0:
        return None
    at = utc(last.at) + dt.timedelta(hours=fallen / fall)
    return Stand(at, quantity(left - fallen, "in"))
