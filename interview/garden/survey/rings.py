"""Rings of points: the area within one, and where a line crosses it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise


def shoelace(ring: Sequence[tuple[float, float]]) -> float:
    """Return the area within a ring of points, counterclockwise; negative the other way."""
    return math.fsum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*ring, ring[0]])) / 2


def crossed(ring: Sequence[tuple[float, float]], x: float) -> tuple[float, float] | None:
    """Return the lowest and the highest ``y`` at which a ring of points crosses ``x``, if it does.

    All are in one unit of length. Of a ring with ``x`` and ``y`` changed about it returns the least
    and the greatest ``x``.
    """
    found = []
    for a, b in pairwise([*ring, ring[0]]):
        if min(a[0], b[0]) <= x <= max(a[0], b[0]):
            # A side that runs along the line is met at its first end; the next side has the other.
            part = (x - a[0]) / (b[0] - a[0]) if abs(b[0] - a[0]) > 1e-12 else 0.0
            found += [a[1] + part * (b[1] - a[1])]
    return (min(found), max(found)) if found else None
