"""What to do next while a soak test runs, and how several holes are put together."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from enum import Enum
from statistics import median
from typing import Protocol

from interview.garden.soak.readings import Interval
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.units import Quantity, magnitude, quantity

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
    0.5, Source("one long reading tells enough of a marginal soil", Provenance.OURS)
)
NEXT_FALL_IN = Cited(0.75, Source("read again after about 3/4 in of fall", Provenance.OURS))
NEXT_AT_LEAST_H = 5 / 60
NEXT_AT_MOST_H = 1.0
SEVERAL_HOLES = Source(
    "the slowest of two holes, the middle value of three or more", Provenance.OURS
)


@dataclass(frozen=True)
class Advice:
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
    slow = (drop <= 0 and hours >= NO_FALL_HOURS - 1e-9) or (
        drop < SLOW_FALL_IN.value - 1e-9 and hours >= SLOW_FALL_HOURS - 1e-9
    )
    long_ones = [
        magnitude(row.drop_rate, "in/h")
        for row in rows
        if row.valid and magnitude(row.end - row.start, "h") >= OVERNIGHT_HOURS - 1e-9
    ]
    told_slow = bool(long_ones) and long_ones[-1] <= OVERNIGHT_SLOW_IN_H.value + 1e-9
    wait = NEXT_AT_MOST_H
    if rates and rates[-1] > 0:
        wait = min(max(NEXT_FALL_IN.value / rates[-1], NEXT_AT_LEAST_H), NEXT_AT_MOST_H)
    return Advice(
        enough_early=bool(rates) and min(rates) >= FAST_ENOUGH_IN_H.value - 1e-9,
        slow_branch=slow,
        slow_told=told_slow,
        next_interval=quantity(wait, "h"),
    )


class Rates(Protocol):
    """Anything with the rates of a test hole."""

    @property
    def drop_rate(self) -> Quantity: ...
    @property
    def mean_drop_rate(self) -> Quantity: ...
    @property
    def lower_drop_rate(self) -> Quantity: ...
    @property
    def corrected(self) -> Quantity: ...


class HolesRule(Enum):
    """Which hole's rate is taken."""

    ONLY = "the only hole"
    SLOWEST = "the slower of two holes"
    MIDDLE = "the middle value of the holes"


@dataclass(frozen=True)
class CombinedRate:
    """The rates that stand for all the holes of one spot."""

    rule: HolesRule
    drop_rate: Quantity
    mean_drop_rate: Quantity
    lower_drop_rate: Quantity
    corrected: Quantity
    slowest: Quantity
    fastest: Quantity
    """The corrected rates of the slowest and the fastest hole."""
    spread: float
    """The fastest as a multiple of the slowest; infinite when the slowest takes nothing."""


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
        raise ValueError("There is no finished test hole yet, so run one soak test first.")
    rates = [magnitude(test.corrected, "in/h") for test in tests]
    middle = median if len(tests) > 2 else min

    def over_holes(each: list[Quantity]) -> Quantity:
        return quantity(middle([magnitude(one, "in/h") for one in each]), "in/h")

    rule = [HolesRule.ONLY, HolesRule.SLOWEST, HolesRule.MIDDLE][min(len(tests), 3) - 1]
    low, high = min(rates), max(rates)
    return CombinedRate(
        rule=rule,
        drop_rate=over_holes([test.drop_rate for test in tests]),
        mean_drop_rate=over_holes([test.mean_drop_rate for test in tests]),
        lower_drop_rate=over_holes([test.lower_drop_rate for test in tests]),
        corrected=quantity(middle(rates), "in/h"),
        slowest=quantity(low, "in/h"),
        fastest=quantity(high, "in/h"),
        spread=_times(high, low),
    )
