"""Where something begins to hold, and where a sum is nought; all bare numbers."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Callable

_PARTS = 2**48
"""Of one, to find where something begins: the last bits of an hour."""
_TRIES = 60
"""More are never taken: halving alone would be down to the last bit of a float by then."""


def part_from(holds: Callable[[float], bool]) -> float:
    """Return the part of one from which something ``holds``, and did not before, by halving."""
    return bisect_left(range(_PARTS), True, key=lambda count: holds(count / _PARTS)) / _PARTS


def root(sum_at: Callable[[float], float], low: float, high: float, near: float = 0.0) -> float:
    """Return where ``sum_at`` is nought, or no farther from it than ``near``.

    At ``low`` it is on one side of nought, at ``high`` on the other. By the Illinois rule: between
    two places the sum is taken for a straight line, and an end that stays counts for half.
    """
    far, at = low, high
    before, after = sum_at(far), sum_at(at)
    for _ in range(_TRIES):
        place = at - after * (at - far) / (after - before)
        if place == at:  # nothing that a float still tells
            break
        found = sum_at(place)
        if (found > 0) == (after > 0):
            before /= 2
        else:
            far, before = at, after
        at, after = place, found
        if abs(found) <= near:
            break
    return at
