"""Water standing in the garden: what comes in, what soaks away, what runs over.

Level-pool balance in depth over the area at half the pond's depth: the depth changes by the
rain's intensity times ``gain`` less the soaking rate, never below nothing, and what would stand
above the full depth runs over. Solved part by part in closed form.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from interview.garden.form.basin import Basin
from interview.garden.storms.hyetographs import RainSpan
from interview.quantities.guards import not_negative, positive
from interview.quantities.units import Quantity, magnitude, quantity, ratio


@dataclass(frozen=True)
class Pool:
    """A garden as the storm balance sees it.

    ``gain`` is the area that sends water (weighted catchment and all inside the rim) over the area
    at half depth; ``full_depth`` is volume over that area; ``rate`` is the speed at which the
    pond soaks away. Raises ValueError where one of them is not more than zero.
    """

    gain: float
    full_depth: Quantity
    rate: Quantity
    mid_area: Quantity

    def __post_init__(self) -> None:
        positive(self.full_depth, "in", "The pond must be deeper than zero.")
        positive(self.rate, "in/h", "No water soaks in here, so the pond would never empty.")
        positive(self.mid_area, "ft**2", "The garden must have an area.")
        if not 0 < self.gain < math.inf:
            raise ValueError("No water comes to the garden, so add a surface that drains here.")

    @property
    def rain_held(self) -> Quantity:
        """Depth of rain that fills the pond while nothing soaks in."""
        return quantity(magnitude(self.full_depth, "in") / self.gain, "in")


def pool(basin: Basin, catchment: Quantity, rate: Quantity) -> Pool:
    """Return the pool of a basin, the weighted area that drains to it, and a soaking rate.

    Raises ValueError for a catchment below zero or a rate that is not more than zero.
    """
    area = not_negative(catchment, "ft**2", "The area that drains here cannot be below zero.")
    mid = basin.mid_area
    comes = quantity(area + magnitude(basin.rim_area, "ft**2"), "ft**2")
    feet = magnitude(basin.volume, "ft**3") / magnitude(mid, "ft**2")
    return Pool(ratio(comes, mid), quantity(feet * 12, "in"), rate, mid)


@dataclass(frozen=True)
class PoolPiece:
    """A part of the balance with one law, in bare hours and inches; the depth never turns in it.

    ``depth`` is at the start and ``rise``, ``last_rise`` are the speeds at both ends, already
    nought where the pond is empty or full. ``soaked`` and ``spilled`` are depths.
    """

    start: float
    end: float
    depth: float
    rise: float
    last_rise: float
    soaked: float
    spilled: float

    def depth_at(self, time: float) -> float:
        """Depth at a time within the piece."""
        past = time - self.start
        curve = (self.last_rise - self.rise) / (self.end - self.start) / 2
        return max(0.0, self.depth + past * (self.rise + curve * past))

    @property
    def last_depth(self) -> float:
        return self.depth_at(self.end)

    def time_at(self, height: float) -> float:
        """Time at which the depth passes ``height``, which must lie between the end depths."""
        curve = (self.last_rise - self.rise) / (self.end - self.start) / 2
        past = first_crossing(curve, self.rise, height - self.depth, self.end - self.start)
        return self.start + past

    def hours_above(self, height: float) -> float:
        """Hours of the piece with water above ``height``."""
        first, last = self.depth, self.last_depth
        if first <= height and last <= height:
            return 0.0
        if first >= height and last >= height:
            return self.end - self.start
        crossing = self.time_at(height)
        return crossing - self.start if first > height else self.end - crossing


def first_crossing(curve: float, slope: float, level: float, long: float) -> float:
    """Return the first ``t`` in 0 to ``long`` with ``curve t^2 + slope t = level``.

    There must be one; rounding outside the ends is brought back to them.
    """
    root = math.sqrt(max(0.0, slope**2 + 4 * curve * level))
    # The root in the direction of the level, in the form that keeps its digits on a straight line.
    divisor = slope + math.copysign(root, level)
    past = 2 * level / divisor if divisor else 0.0
    return min(max(past, 0.0), long)


def pieces_of(
    spans: Sequence[RainSpan], gain: float, full: float, rate: float, depth: float = 0.0
) -> Iterator[PoolPiece]:
    """Yield the balance through ``spans``, beginning at a ``depth``; all in hours and inches."""
    for span in spans:
        first, last = gain * span.first - rate, gain * span.last - rate
        cuts = [span.start, span.end]
        if first * last < 0:
            cuts.insert(1, span.start + (span.end - span.start) * first / (first - last))
        slope = (last - first) / (span.end - span.start)
        for start, end in pairwise(cuts):
            if end <= start:
                continue
            begin = first + slope * (start - span.start)
            finish = first + slope * (end - span.start)
            # The middle tells the sign: at the cut itself rounding may leave either.
            rising = begin + finish > 0
            for piece in _one_way(start, end, depth, begin, finish, rising, full, rate):
                yield piece
                depth = piece.last_depth


def _one_way(
    start: float,
    end: float,
    depth: float,
    rise: float,
    last_rise: float,
    rising: bool,
    full: float,
    rate: float,
) -> Iterator[PoolPiece]:
    """Yield at most two pieces: moving, and then resting full or empty."""
    long = end - start
    curve = (last_rise - rise) / long / 2
    moved = long * (rise + last_rise) / 2
    bound = full if rising else 0.0
    rests = depth + moved > full if rising else depth + moved < 0
    turn = end
    if rests:
        turn = start + first_crossing(curve, rise, bound - depth, long)
    turn_rise = rise + 2 * curve * (turn - start)
    if turn > start:
        yield PoolPiece(start, turn, depth, rise, turn_rise, rate * (turn - start), 0.0)
    if turn < end:
        over = (end - turn) * (turn_rise + last_rise) / 2
        resting = rate * (end - turn)
        if rising:
            yield PoolPiece(turn, end, full, 0.0, 0.0, resting, over)
        else:
            # Empty: all that comes soaks in, which is less than the soil could take.
            yield PoolPiece(turn, end, 0.0, 0.0, 0.0, resting + over, 0.0)
