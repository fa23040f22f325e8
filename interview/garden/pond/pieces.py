"""A part of what a pond does, between two turns of its depth."""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right
from collections.abc import Callable
from typing import NamedTuple

from interview.garden.pond.roots import part_from


class PoolPiece(NamedTuple):
    """A part of the balance in which the depth never turns, in bare hours and feet.

    ``depths`` and ``speeds``, how fast the depth grows, are those at ``times``; between them the
    depth follows the cubic that has both (Hermite). ``soaked`` and ``spilled`` are cubic feet.
    """

    times: tuple[float, ...]
    depths: tuple[float, ...]
    speeds: tuple[float, ...]
    soaked: float
    spilled: float = 0.0

    @property
    def start(self) -> float:
        return self.times[0]

    @property
    def end(self) -> float:
        return self.times[-1]

    @property
    def last_depth(self) -> float:
        return self.depths[-1]

    def depth_at(self, time: float) -> float:
        """Depth at a time within the piece."""
        place = min(max(bisect_right(self.times, time), 1), len(self.times) - 1) - 1
        long = self.times[place + 1] - self.times[place]
        return self._cubic(place)((time - self.times[place]) / long if long > 0 else 0.0)

    def _cubic(self, place: int) -> Callable[[float], float]:
        """Return the depth after one of the times, by the part of the way to the next."""
        first, last = self.depths[place : place + 2]
        begins, ends = self.speeds[place : place + 2]
        long = self.times[place + 1] - self.times[place]
        linear, square, cube = hermite(last - first, long * begins, long * ends)
        return lambda part: max(0.0, first + part * (linear + part * (square + part * cube)))

    def time_at(self, height: float) -> float:
        """Time at which the depth passes ``height``, which must lie between the end depths."""
        up = math.copysign(1.0, self.last_depth - self.depths[0])
        inner = len(self.depths) - 1
        place = bisect_left(self.depths, up * height, 1, inner, key=lambda one: up * one) - 1
        depth, start = self._cubic(place), self.times[place]
        part = part_from(lambda part: up * depth(part) >= up * height)
        return start + part * (self.times[place + 1] - start)

    def wet_between(self, height: float) -> tuple[float, float] | None:
        """When ground ``height`` over the floor is under water, from and to; nothing if never.

        The edge of a full pond is under water while the pond is full; a floor with no depth of
        water over it is not.
        """
        first, last = self.depths[0], self.depths[-1]
        if min(first, last) >= height and max(first, last) > 0:
            return self.times[0], self.times[-1]
        if max(first, last) <= height:
            return None
        crossing = self.time_at(height)
        return (self.times[0], crossing) if first > last else (crossing, self.times[-1])

    def hours_above(self, height: float) -> float:
        """Hours of the piece in which ground ``height`` over the floor is under water."""
        wet = self.wet_between(height)
        return wet[1] - wet[0] if wet else 0.0


def hermite(rise: float, first: float, last: float) -> tuple[float, float, float]:
    """Return the terms of the cubic from nought to ``rise`` over one, all bare numbers.

    ``first`` and ``last`` are its slopes at the ends. Source: Hermite's interpolation, arithmetic.
    """
    return first, 3 * rise - 2 * first - last, first + last - 2 * rise
