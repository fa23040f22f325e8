"""A part of what a pond does, between two turns of its depth."""

from __future__ import annotations

from bisect import bisect_right
from typing import NamedTuple

HALVINGS = 48
"""Of a step, to find when the pond is full or empty: the last bits of an hour."""


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
        place = min(max(bisect_right(self.times, time), 1), len(self.times) - 1)
        return self._between(place - 1, time)

    def _between(self, place: int, time: float) -> float:
        long = self.times[place + 1] - self.times[place]
        if long <= 0:
            return self.depths[place]
        part = (time - self.times[place]) / long
        linear, square, cube = self._cubic(place)
        return max(0.0, self.depths[place] + part * (linear + part * (square + part * cube)))

    def _cubic(self, place: int) -> tuple[float, float, float]:
        """Return the terms of the cubic that the depth follows after one of the times."""
        depths, speeds = self.depths, self.speeds
        long = self.times[place + 1] - self.times[place]
        rise = depths[place + 1] - depths[place]
        return hermite(rise, long * speeds[place], long * speeds[place + 1])

    def time_at(self, height: float) -> float:
        """Time at which the depth passes ``height``, which must lie between the end depths."""
        rising = self.last_depth > self.depths[0]
        place = 0
        while place < len(self.times) - 2 and (self.depths[place + 1] < height) == rising:
            place += 1
        start, end = self.times[place], self.times[place + 1]
        first, long = self.depths[place], end - start
        linear, square, cube = self._cubic(place)
        low, high = start, end
        for _ in range(HALVINGS if long > 0 else 0):
            middle = (low + high) / 2
            part = (middle - start) / long
            depth = first + part * (linear + part * (square + part * cube))
            if (max(0.0, depth) < height) == rising:
                low = middle
            else:
                high = middle
        return (low + high) / 2

    def wet_between(self, height: float) -> tuple[float, float] | None:
        """When ground ``height`` over the floor is under water, from and to; nothing if never.

        The edge of a full pond is under water while the pond is full; a floor with no depth of
        water over it is not.
        """
        first, last = self.depths[0], self.depths[-1]
        if first >= height and last >= height and (first > 0 or last > 0):
            return self.times[0], self.times[-1]
        if first <= height and last <= height:
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
