"""Readings of a soak test, the intervals between them, and what they say about going on."""

from __future__ import annotations

import math
from collections.abc import Sequence
from enum import Enum
from statistics import median
from typing import NamedTuple, Protocol

from interview.garden.soak.hole import BareHole, Hole
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.guards import reaches, within
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity

EMPTY_NOTE = (
    "The hole was empty when you looked, so the soil is at least this fast. Fill it again and "
    "read sooner."
)
ALREADY_EMPTY = "The hole was empty already."
_TINY_IN = 1e-9
"""By so much one depth written in two units may differ: what floats leave over."""


class Reading(NamedTuple):
    """One look at the hole.

    ``elapsed`` is the time since the test began and ``depth`` the depth of water then; leave
    ``depth`` out (None) when the hole was only filled again. ``refilled_to`` is the depth after a
    refill at that moment. A hole found empty (``emptied``, or a depth of zero) counts only when
    ``emptied_at``, the time since the test began at which it emptied, is known. ``spoiled`` says
    why the time before this reading is not to be used, such as rain.
    """

    elapsed: Quantity
    depth: Quantity | None
    refilled_to: Quantity | None = None
    emptied: bool = False
    emptied_at: Quantity | None = None
    spoiled: str = ""


@record
class Interval:
    """What happened between two readings of one fill."""

    start: Quantity
    end: Quantity
    """Times since the test began."""
    depth_before: Quantity
    depth_after: Quantity
    drop: Quantity
    drop_rate: Quantity
    """Drop over time in this interval."""
    drop_rate_since_fill: Quantity | None
    """Drop over time since the hole was last filled; None where the interval is not valid."""
    corrected: Quantity | None
    """Rate through the bottom alone; at least this where the hole was found empty."""
    valid: bool
    why_not: str = ""

    @property
    def found_empty(self) -> bool:
        """Tell whether the rates of this interval are only a lower bound."""
        return self.why_not == EMPTY_NOTE


@record(frozen=False)
class _Water:
    """Where the water stands while the readings are gone through, in hours and inches."""

    time: float
    depth: float
    fill_time: float
    fill_depth: float

    def start_over(self, time: float, depth: float) -> None:
        self.time = self.fill_time = time
        self.depth = self.fill_depth = depth


def intervals(
    hole: Hole, start_depth: Quantity, readings: Sequence[Reading]
) -> tuple[Interval, ...]:
    """Return the intervals of a soak test in order, valid or not.

    ``start_depth`` is the depth of water when the test began. A refill ends an interval and
    begins none of its own. Raises ValueError, naming the reading by its number, for a time that
    is not later than the one before, water that rose without a refill, or a depth below the
    bottom of the hole.
    """
    bare = hole.bare
    depth = magnitude(start_depth, "in")
    if not 0 < depth < float("inf"):
        raise ValueError(
            "Fill the hole first. The depth of water at the start must be more than zero."
        )
    _inside(bare, depth, 0)
    water = _Water(0.0, depth, 0.0, depth)
    rows = []
    for number, reading in enumerate(readings, 1):
        row = _interval(bare, water, reading, number)
        if row is not None:
            rows.append(row)
        _refill(bare, water, reading, number)
    return tuple(rows)


def _inside(bare: BareHole, depth: float, number: int) -> None:
    if bare.is_tapered and bare.radius(depth) <= 0:
        where = f"reading {number}" if number else "the start"
        raise ValueError(
            f"By these widths the hole would close before its bottom, as told at {where}. "
            "Measure the widths again."
        )


def _refill(bare: BareHole, water: _Water, reading: Reading, number: int) -> None:
    if reading.refilled_to is None:
        return
    new = magnitude(reading.refilled_to, "in")
    if not new > 0 or (new < water.depth - _TINY_IN and reading.depth is not None):
        raise ValueError(
            f"After the refill at reading {number} the water must be deeper than before. Check "
            "both depths."
        )
    _inside(bare, new, number)
    water.start_over(magnitude(reading.elapsed, "h"), new)


def _depth(reading: Reading, number: int) -> float | None:
    """The depth read, in inches; None where the hole was only filled."""
    if reading.depth is None:
        if reading.emptied:
            return 0.0
        if reading.refilled_to is None:
            raise ValueError(
                f"Reading {number} has no depth of water. Type one, or leave the reading out."
            )
        return None
    depth = magnitude(reading.depth, "in")
    if not depth >= 0:
        raise ValueError(
            f"Reading {number} is a drop of more than all the water in the hole. Check it."
        )
    if reading.emptied and depth > 0:
        raise ValueError(f"Reading {number} says both empty and a depth. Keep one of them.")
    return depth


def _end_time(reading: Reading, water: _Water, now: float, empty: bool, number: int) -> float:
    """When the interval ends: the moment the hole emptied, where that is known."""
    if not empty or reading.emptied_at is None:
        return now
    emptied_at = magnitude(reading.emptied_at, "h")
    if emptied_at <= water.time or not within(emptied_at, now):
        raise ValueError(
            f"The hole must have become empty between the reading before and reading {number}. "
            "Check that time."
        )
    return emptied_at


def _interval(bare: BareHole, water: _Water, reading: Reading, number: int) -> Interval | None:
    now = magnitude(reading.elapsed, "h")
    if not water.time < now < float("inf"):
        raise ValueError(f"Reading {number} must be later than the one before it. Check its time.")
    depth = _depth(reading, number)
    if depth is None:
        return None
    if depth > water.depth + _TINY_IN and not reading.spoiled:
        raise ValueError(
            f"At reading {number} the water is deeper than before. Check it, or say that you "
            "filled the hole again."
        )
    empty = depth == 0
    end = _end_time(reading, water, now, empty, number)
    why_not = reading.spoiled
    if not why_not and water.depth == 0:
        why_not = ALREADY_EMPTY
    elif not why_not and empty and reading.emptied_at is None:
        why_not = EMPTY_NOTE
    row = _row(bare, water, end, min(depth, water.depth) if not why_not else depth, why_not)
    water.time, water.depth = now, depth
    if reading.spoiled:
        water.start_over(now, depth)
    return row


def _row(bare: BareHole, water: _Water, end: float, depth: float, why_not: str) -> Interval:
    hours, drop = end - water.time, water.depth - depth
    known = not why_not or why_not == EMPTY_NOTE
    since_fill = (water.fill_depth - depth) / (end - water.fill_time)
    return Interval(
        start=quantity(water.time, "h"),
        end=quantity(end, "h"),
        depth_before=quantity(water.depth, "in"),
        depth_after=quantity(depth, "in"),
        drop=quantity(drop, "in"),
        drop_rate=quantity(drop / hours, "in/h"),
        drop_rate_since_fill=None if why_not else quantity(since_fill, "in/h"),
        corrected=quantity(bare.soaked(water.depth, depth) / hours, "in/h") if known else None,
        valid=not why_not,
        why_not=why_not,
    )


FAST_ENOUGH_IN_H = Cited(
    6.0, Source("one or two readings at 6 in/h or more are enough", Provenance.PRACTICE)
)
SLOW_FALL_IN = Cited(
    0.25, Source("under a quarter inch by three hours is slow", Provenance.PRACTICE)
)
NO_FALL_HOURS = 1.0
SLOW_FALL_HOURS = 3.0
OVERNIGHT_HOURS = 6.0
OVERNIGHT_SLOW_IN_H = Cited(
    0.5, Source("one long reading tells enough about a marginal soil", Provenance.OURS)
)
NEXT_FALL_IN = Cited(0.75, Source("read again after about 3/4 in of fall", Provenance.OURS))
NEXT_AT_LEAST_H = 5 / 60
NEXT_AT_MOST_H = 1.0
SEVERAL_HOLES = Source(
    "the slowest of two holes, the middle value of three or more", Provenance.OURS
)


class Advice(NamedTuple):
    """What the readings so far say about going on."""

    enough_early: bool
    """Every fall so far was 6 in/h or more: one or two such readings are enough."""
    slow_branch: bool
    """No fall in an hour, or under a quarter inch by three hours."""
    slow_told: bool
    """One interval of six hours or more at 0.5 in/h or less: the soil is slow, and that is all."""
    next_interval: Quantity
    """Time until the next reading is worth taking."""


def advice(rows: Sequence[Interval]) -> Advice:
    """Return what to do next, from the intervals so far; there may be none yet.

    An interval that found the hole empty is a lower bound, so it can show that the soil is fast.
    Sources: ``FAST_ENOUGH_IN_H``, ``SLOW_FALL_IN``, ``OVERNIGHT_SLOW_IN_H``, ``NEXT_FALL_IN``.
    """
    told = [row for row in rows if row.valid or row.found_empty]
    rates = [magnitude(row.drop_rate, "in/h") for row in told]
    drop = sum(magnitude(row.drop, "in") for row in told)
    hours = sum(magnitude(row.end, "h") - magnitude(row.start, "h") for row in told)
    slow = (drop <= 0 and reaches(hours, NO_FALL_HOURS)) or (
        not reaches(drop, SLOW_FALL_IN.value) and reaches(hours, SLOW_FALL_HOURS)
    )
    long_ones = [
        magnitude(row.drop_rate, "in/h")
        for row in rows
        if row.valid and reaches(magnitude(row.end - row.start, "h"), OVERNIGHT_HOURS)
    ]
    told_slow = bool(long_ones) and within(long_ones[-1], OVERNIGHT_SLOW_IN_H.value)
    wait = NEXT_AT_MOST_H
    if rates and rates[-1] > 0:
        wait = min(max(NEXT_FALL_IN.value / rates[-1], NEXT_AT_LEAST_H), NEXT_AT_MOST_H)
    return Advice(
        enough_early=bool(rates) and reaches(min(rates), FAST_ENOUGH_IN_H.value),
        slow_branch=slow,
        slow_told=told_slow,
        next_interval=quantity(wait, "h"),
    )


class Rates(Protocol):
    """Anything with the rates of a test hole."""

    @property
    def drop_rate(self) -> Quantity:
        """How fast the water fell in the hole, a speed."""

    @property
    def mean_drop_rate(self) -> Quantity:
        """All the drop over all the time, a speed."""

    @property
    def lower_drop_rate(self) -> Quantity:
        """The lower of the two, a speed."""

    @property
    def corrected(self) -> Quantity:
        """The rate through the bottom alone, a speed."""


class HolesRule(Enum):
    """Which hole's rate is taken."""

    ONLY = "the only hole"
    SLOWEST = "the slower of two holes"
    MIDDLE = "the middle value of the holes"


@record
class CombinedRate:
    """The rates that stand for all the holes of one spot."""

    rule: HolesRule
    drop_rate: Quantity
    mean_drop_rate: Quantity
    lower_drop_rate: Quantity
    corrected: Quantity
    spread: float
    """The corrected rate of the fastest hole as a multiple of the slowest; infinite where the
    slowest takes nothing."""


def _times(high: float, low: float) -> float:
    if low > 0:
        return high / low
    return math.inf if high > 0 else 1.0


def combine(tests: Sequence[Rates]) -> CombinedRate:
    """Return the rate that governs several holes: the slower of two, the middle of three or more.

    With an even number of holes the middle value is halfway between the two in the middle.
    Raises ValueError when there is no test. Source: ``SEVERAL_HOLES``.
    """
    if not tests:
        raise ValueError("There is no finished test hole yet. Run one soak test first.")
    rates = [magnitude(test.corrected, "in/h") for test in tests]
    middle = median if len(tests) > 2 else min

    def over_holes(each: list[Quantity]) -> Quantity:
        return quantity(middle([magnitude(one, "in/h") for one in each]), "in/h")

    rule = [HolesRule.ONLY, HolesRule.SLOWEST, HolesRule.MIDDLE][min(len(tests), 3) - 1]
    return CombinedRate(
        rule=rule,
        drop_rate=over_holes([test.drop_rate for test in tests]),
        mean_drop_rate=over_holes([test.mean_drop_rate for test in tests]),
        lower_drop_rate=over_holes([test.lower_drop_rate for test in tests]),
        corrected=quantity(middle(rates), "in/h"),
        spread=_times(max(rates), min(rates)),
    )
