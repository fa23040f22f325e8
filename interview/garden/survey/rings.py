"""Rings of points: the area within one, and where a line crosses it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import TypeAlias

_XY: TypeAlias = tuple[float, float]


def sides_of(ring: Sequence[_XY]) -> Iterator[tuple[_XY, _XY]]:
    """Return each side of a ring, from point to point; the last comes back to the first."""
    return pairwise([*ring, ring[0]])


def each_once(ring: Sequence[_XY]) -> tuple[_XY, ...]:
    """Return the points of a ring, of those that follow at one place the last alone."""
    return tuple(b for a, b in pairwise([ring[-1], *ring]) if math.dist(a, b) > 1e-9)


def shoelace(ring: Sequence[_XY]) -> float:
    """Return the area within a ring of points, counterclockwise; negative the other way."""
    return math.fsum(a[0] * b[1] - b[0] * a[1] for a, b in sides_of(ring)) / 2


def crossed(ring: Sequence[_XY], x: float) -> tuple[float, float] | None:
    """Return the lowest and the highest ``y`` at which a ring of points crosses ``x``, if it does.

    All are in one unit of length. Of a ring with ``x`` and ``y`` changed about it returns the least
    and the greatest ``x``.
    """
    found = []
    for a, b in sides_of(ring):
        if min(a[0], b[0]) <= x <= max(a[0], b[0]):
            # A side that runs along the line is met at its first end; the next side has the other.
            part = (x - a[0]) / (b[0] - a[0]) if abs(b[0] - a[0]) > 1e-12 else 0.0
            found += [a[1] + part * (b[1] - a[1])]
    return (min(found), max(found)) if found else None
