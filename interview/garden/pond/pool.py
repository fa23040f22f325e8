"""Water standing in the garden: what comes in, what soaks away, what runs over.

Level-pool balance on the stage-area curve: A(h) dh/dt = Q - f A(h), where Q is all that flows in
and f the soaking rate over the area under water. A pond that is empty rests while Q is no more than
f times the floor, and one that is full spills the rest of what does not soak in.

Q changes evenly within each part of a storm. Each part is cut where Q is what the floor alone and
what the full pond takes; between the cuts the depth turns once at the most. Rest and drying are in
closed form, the rest by Runge and Kutta's fourth-order rule.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cached_property
from itertools import pairwise
from math import ceil
from typing import NamedTuple

from interview.garden.pond.hyetographs import RainSpan
from interview.garden.pond.pieces import PoolPiece, hermite
from interview.garden.pond.roots import part_from, root
from interview.garden.pond.stage import StageCurve
from interview.quantities.guards import not_negative, positive
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity

IN_A_FOOT = 12.0
STEPS = 32
"""Steps of each part at the least: what comes and goes then agrees to a millionth and better."""
YEARS_STEPS = 8
"""The same for years of rain, whose many parts are short: still to a millionth of the water."""
_SMALLEST = 1000.0
"""No step is smaller than this part of an even one, so that every storm comes to its end."""
_TRIES = 48
"""Of a rule that comes nearer each time, at the most: it takes a few."""
_WHOLE = 1 - 1e-9
"""Steps that reach so far into what is left take it whole."""


class FlowSpan(NamedTuple):
    """A part of the inflow that changes evenly, in bare hours and cubic feet an hour."""

    start: float
    end: float
    first: float
    last: float

    @property
    def volume(self) -> float:
        """Cubic feet that flow in."""
        return (self.end - self.start) * (self.first + self.last) / 2


def flows(spans: Sequence[RainSpan], area: float) -> list[FlowSpan]:
    """Return what rain brings that falls on a bare ``area`` in square feet and all runs off."""
    by = area / IN_A_FOOT
    return [FlowSpan(one.start, one.end, by * one.first, by * one.last) for one in spans]


class BarePool(NamedTuple):
    """A pool in bare feet and hours, for the sums.

    ``floor``, ``widening`` and ``bend`` are the terms of the area for a depth, ``full`` the depth
    of the full pond, ``rate`` the soaking rate. ``floor_only`` lets the water out through the
    level floor alone, however wide the pond.
    """

    floor: float
    widening: float
    bend: float
    full: float
    rate: float
    floor_only: bool = False

    def area(self, depth: float) -> float:
        return self.floor + depth * (self.widening + depth * self.bend)

    def volume(self, depth: float) -> float:
        return depth * (self.floor + depth * (self.widening / 2 + depth * self.bend / 3))

    def soak(self, depth: float) -> float:
        """Cubic feet an hour that soak away at a depth."""
        return self.rate * (self.floor if self.floor_only else self.area(depth))

    def depth_of(self, volume: float) -> float:
        """Depth at which the pond holds a volume, by Newton's rule: from above it never misses."""
        depth = volume / self.floor
        for _ in range(_TRIES):
            less = (self.volume(depth) - volume) / self.area(depth)
            depth -= less
            if less <= 1e-15 * depth:  # nothing that a float still tells
                break
        return max(0.0, depth)

    def hours_to_dry(self, depth: float) -> float:
        """Hours until a pond of this depth is empty when nothing flows in."""
        return self.volume(depth) / self.floor / self.rate if self.floor_only else depth / self.rate

    def dried(self, depth: float, hours: float) -> float:
        """Depth that is left of a depth after hours in which nothing flows in."""
        if self.floor_only:
            return self.depth_of(max(0.0, self.volume(depth) - hours * self.rate * self.floor))
        return max(0.0, depth - hours * self.rate)


@record
class Pool:
    """A garden as the storm balance sees it.

    ``stage`` is its curve, ``catchment`` the weighted area that sends it water, ``inside`` the area
    whose rain falls into it, and ``rate`` the speed at which water soaks into what is under water.
    Raises ValueError for an area below zero, none at all, or a rate that is not more than zero.
    """

    stage: StageCurve
    catchment: Quantity
    inside: Quantity
    rate: Quantity

    def __post_init__(self) -> None:
        positive(self.rate, "in/h", "No water soaks in here, so the pond would never empty.")
        below = "The area that drains here cannot be below zero."
        not_negative(self.catchment, "ft**2", below)
        not_negative(self.inside, "ft**2", below)
        positive(
            self.sending_area,
            "ft**2",
            "No water comes to the garden, so add a surface that drains here.",
        )

    @property
    def sending_area(self) -> Quantity:
        """All the area whose rain comes to the pond, by the part that runs off."""
        both = magnitude(self.catchment, "ft**2") + magnitude(self.inside, "ft**2")
        return quantity(both, "ft**2")

    @property
    def rain_held(self) -> Quantity:
        """Depth of rain that fills the pond while nothing soaks in."""
        feet = magnitude(self.stage.volume, "ft**3") / magnitude(self.sending_area, "ft**2")
        return quantity(feet * IN_A_FOOT, "in")

    @property
    def hours_to_empty_by_floor(self) -> Quantity:
        """Time in which the full pond soaks away through its level floor alone."""
        return quantity(self.floor_only.hours_to_dry(self.floor_only.full), "h")

    @cached_property
    def bare(self) -> BarePool:
        """Its numbers for the sums."""
        full, rate = magnitude(self.stage.depth, "ft"), magnitude(self.rate, "ft/h")
        return BarePool(*self.stage.terms, full, rate)

    @cached_property
    def floor_only(self) -> BarePool:
        """Its numbers where nothing but the level floor takes water."""
        full, rate = magnitude(self.stage.depth, "ft"), magnitude(self.rate, "ft/h")
        return BarePool(*self.stage.terms, full, rate, floor_only=True)


def pool(stage: StageCurve, catchment: Quantity, inside: Quantity, rate: Quantity) -> Pool:
    """Return the pool of a bed with the ``stage`` curve.

    ``catchment`` is the area that drains to it, weighted by runoff, ``inside`` the area whose rain
    falls into it, ``rate`` how fast the ground under water soaks, a speed. Raises ValueError as
    ``Pool`` does.
    """
    return Pool(stage, catchment, inside, rate)


def pieces_of(
    bed: BarePool, spans: Sequence[FlowSpan], depth: float = 0.0, steps: int = STEPS
) -> Iterator[PoolPiece]:
    """Yield the balance through ``spans`` of inflow, beginning at a ``depth``."""
    least, most = bed.soak(0.0), bed.soak(bed.full)
    for span in spans:
        begin, until, first, last = span
        if until <= begin:
            continue
        crossed = [one for one in (least, most) if (first - one) * (last - one) < 0]
        parts = [span] if not crossed else _cut(span, crossed)
        for part in parts:
            for piece in _part(bed, part, depth, steps):
                yield piece
                depth = piece.depths[-1]


def _cut(span: FlowSpan, levels: Sequence[float]) -> list[FlowSpan]:
    """Return a span of inflow in parts that cross none of ``levels``."""
    slope = (span.last - span.first) / (span.end - span.start)
    cuts = {span.start, span.end, *(span.start + (one - span.first) / slope for one in levels)}
    flow = [(time, span.first + slope * (time - span.start)) for time in sorted(cuts)]
    return [FlowSpan(a[0], b[0], a[1], b[1]) for a, b in pairwise(flow)]


def _part(bed: BarePool, part: FlowSpan, depth: float, steps: int) -> Iterator[PoolPiece]:
    """Yield the balance of a part whose inflow crosses neither limit."""
    long, middle = part.end - part.start, (part.first + part.last) / 2
    if depth <= 0 and middle <= bed.soak(0.0):
        yield _rest(part, 0.0, long * middle, 0.0)
    elif depth >= bed.full and middle >= bed.soak(bed.full):
        soaked = long * bed.soak(bed.full)
        yield _rest(part, bed.full, soaked, part.volume - soaked)
    elif part.first == part.last == 0:
        yield from _drying(bed, part, depth, steps)
    else:
        yield from _moving(bed, part, depth, steps)


def _rest(part: FlowSpan, depth: float, soaked: float, spilled: float) -> PoolPiece:
    return PoolPiece((part.start, part.end), (depth, depth), (0.0, 0.0), soaked, spilled)


def _drying(bed: BarePool, part: FlowSpan, depth: float, steps: int) -> Iterator[PoolPiece]:
    """Yield what stands as it soaks away while nothing comes, and then rests empty."""
    whole = bed.hours_to_dry(depth)
    until = min(part.start + whole, part.end)
    if until > part.start:
        last = bed.dried(depth, until - part.start)
        steps = steps if bed.floor_only else 1
        depths = [depth + (last - depth) * place / steps for place in range(steps)] + [last]
        between = [part.start + whole - bed.hours_to_dry(one) for one in depths[1:-1]]
        times = [part.start, *between, until]
        speeds = [-bed.soak(one) / bed.area(one) for one in depths]
        soaked = bed.volume(depth) - bed.volume(last)
        yield PoolPiece(tuple(times), tuple(depths), tuple(speeds), soaked)
    if until < part.end:
        yield _rest(part._replace(start=until), 0.0, 0.0, 0.0)


def _moving(bed: BarePool, part: FlowSpan, depth: float, steps: int) -> Iterator[PoolPiece]:
    """Yield a part step by step: to where the depth turns, on, and resting full or empty."""
    start, end, first, last = part
    long, middle = end - start, (first + last) / 2
    slope = (last - first) / long
    fills, empties = middle >= bed.soak(bed.full), middle <= bed.soak(0.0)
    busiest = max(first, last, bed.soak(0.0))
    # Bare names, and no call but the rule's: years of rain come here thousands of times.
    floor, widening, bend, full, rate, floor_only = bed
    area = floor + depth * (widening + depth * bend)  # of the depth reached, here and below
    times, depths, speeds = [start], [depth], [(first - bed.soak(depth)) / area]
    now, soaked, limit = 0.0, 0.0, None
    while now < long and limit is None:
        comes, left = first + slope * now, long - now
        # Shorter than an even step where the pond widens fast.
        quick = busiest * (widening + 2 * bend * depth) / area**2 * long
        quick = 1.0 if quick < 1.0 else quick if quick < _SMALLEST else _SMALLEST
        step = left / ceil(_WHOLE * steps * left / long * quick)
        deeper, gone = _runge_kutta(bed, depth, comes, slope, step)
        if fills and deeper > full:
            limit = full
        elif empties and deeper < 0:
            limit = 0.0
        if limit is not None:
            step = _reach(bed, depth, comes, slope, step, limit)
            _, gone = _runge_kutta(bed, depth, comes, slope, step)
            deeper = limit
        elif not 0.0 <= deeper <= full:
            deeper = 0.0 if deeper < 0 else full
        area = floor + deeper * (widening + deeper * bend)
        speed = (comes + slope * step - rate * (floor if floor_only else area)) / area
        then = start + (now + step) if now + step < long else end
        if speeds[-1] * speed < 0:
            turn, height = _turn(step, depth, deeper, speeds[-1], speed)
            if times[-1] < start + (now + turn) < then:
                _, before = _runge_kutta(bed, depth, comes, slope, turn)
                times.append(start + (now + turn))
                depths.append(height)
                speeds.append(0.0)
                yield PoolPiece(tuple(times), tuple(depths), tuple(speeds), soaked + before)
                times, depths, speeds, soaked = times[-1:], [height], [0.0], -before
        if then > times[-1]:
            times.append(then)
            depths.append(deeper)
            speeds.append(speed)
        now, depth, soaked = now + step, deeper, soaked + gone
    if len(times) > 1:
        yield PoolPiece(tuple(times), tuple(depths), tuple(speeds), soaked)
    if times[-1] < end:
        rest = FlowSpan(times[-1], end, first + slope * now, last)
        yield from _part(bed, rest, depth, steps)


def _runge_kutta(
    bed: BarePool, depth: float, flow: float, slope: float, step: float
) -> tuple[float, float]:
    """Return the depth a step later, and what soaked in meanwhile, by the same rule."""
    floor, widening, bend, _, rate, floor_only = bed
    half = step / 2
    # Soaking is ``still`` and, over all that is wet, ``rate`` of the area.
    still, rate = (rate * floor, 0.0) if floor_only else (0.0, rate)
    flow -= still
    later, last = flow + slope * half, flow + slope * step
    area1 = floor + depth * (widening + depth * bend)
    speed1 = flow / area1 - rate
    at = depth + half * speed1
    area2 = floor + at * (widening + at * bend)
    speed2 = later / area2 - rate
    at = depth + half * speed2
    area3 = floor + at * (widening + at * bend)
    speed3 = later / area3 - rate
    at = depth + step * speed3
    area4 = floor + at * (widening + at * bend)
    speed4 = last / area4 - rate
    area = (area1 + 2 * (area2 + area3) + area4) / 6
    return (
        depth + step * (speed1 + 2 * (speed2 + speed3) + speed4) / 6,
        step * (still + rate * area),
    )


def _reach(
    bed: BarePool, depth: float, flow: float, slope: float, step: float, limit: float
) -> float:
    """Return how long after the beginning of a step the pond is full, or empty."""
    return root(lambda time: _runge_kutta(bed, depth, flow, slope, time)[0] - limit, 0.0, step)


def _turn(
    long: float, depth: float, last: float, first_speed: float, last_speed: float
) -> tuple[float, float]:
    """Return when after the beginning of a step the depth turns, and that depth."""
    linear, square, cube = hermite(last - depth, long * first_speed, long * last_speed)
    part = part_from(lambda part: linear * (linear + part * (2 * square + part * 3 * cube)) <= 0)
    return long * part, depth + part * (linear + part * (square + part * cube))
