"""What storms do to the garden: how deep it stands, how long, and what runs over."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from interview.garden.storms.hyetographs import (
    STORM_HOURS,
    TYPE_II,
    TYPE_II_SOURCE,
    RainSpan,
    Storm,
    StormShape,
    again,
    storm,
    triangle_storm,
    type_ii_storm,
    uniform_storm,
)
from interview.garden.storms.pool import Pool, PoolPiece, pieces_of, pool
from interview.quantities.guards import not_negative
from interview.quantities.units import METRIC, US, Quantity, magnitude, quantity

__all__ = [
    "STORM_HOURS",
    "TYPE_II",
    "TYPE_II_SOURCE",
    "LadderRow",
    "Pool",
    "RainSpan",
    "RoutedStorm",
    "Storm",
    "StormShape",
    "again",
    "followed",
    "ladder",
    "pool",
    "route",
    "storm",
    "triangle_storm",
    "type_ii_storm",
    "uniform_storm",
]

LADDER = {
    US: ((0.25, 0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0), "in"),
    METRIC: ((5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 60.0, 75.0), "mm"),
}
_DRY_IN = 1e-12


@dataclass(frozen=True)
class RoutedStorm:
    """A storm carried through the garden; depths of pond and of spill are over its mid area."""

    storm: Storm
    pool: Pool
    pieces: tuple[PoolPiece, ...]
    """The exact balance, in bare hours and inches."""
    inflow: Quantity
    soaked: Quantity
    spill: Quantity
    standing: Quantity
    """Depth still standing at the end of what was followed; zero unless it was cut short."""
    peak: Quantity
    peak_time: Quantity

    @property
    def spill_volume(self) -> Quantity:
        """Volume that runs over."""
        cubic = magnitude(self.spill, "ft") * magnitude(self.pool.mid_area, "ft**2")
        return quantity(cubic, "ft**3")

    @property
    def share_caught(self) -> float:
        """Share of the water that did not run over, nought to one; one for no rain."""
        came = magnitude(self.inflow, "in")
        return 1 - magnitude(self.spill, "in") / came if came > 0 else 1.0

    @property
    def hours_on_floor(self) -> Quantity:
        """Time with water standing on the floor."""
        return self.time_above(quantity(0.0, "in"))

    @property
    def empty_at(self) -> Quantity:
        """Time, since the rain began, after which no water stands."""
        wet = [piece.end for piece in self.pieces if piece.hours_above(0.0) > 0]
        return quantity(max(wet, default=0.0), "h")

    def time_above(self, height: Quantity) -> Quantity:
        """Time with water above a height over the floor; raises ValueError below the floor."""
        level = not_negative(height, "in", "A height over the floor cannot be below zero.")
        return quantity(sum(piece.hours_above(level) for piece in self.pieces), "h")

    def depth_at(self, time: Quantity) -> Quantity:
        """Depth of the pond at a time since the rain began."""
        hours = magnitude(time, "h")
        for piece in self.pieces:
            if piece.start <= hours <= piece.end:
                return quantity(piece.depth_at(hours), "in")
        return quantity(0.0, "in")

    def breakpoints(self, between: int = 0) -> tuple[tuple[Quantity, Quantity], ...]:
        """Times and depths where the balance changes, for a chart.

        ``between`` adds that many points inside each part whose line is curved.
        """
        points: list[tuple[float, float]] = []
        for piece in self.pieces:
            steps = between + 1 if piece.rise != piece.last_rise else 1
            long = piece.end - piece.start
            for step in range(steps):
                time = piece.start + long * step / steps
                points.append((time, piece.depth_at(time)))
        points.append((self.pieces[-1].end, self.pieces[-1].last_depth))
        return tuple((quantity(time, "h"), quantity(depth, "in")) for time, depth in points)


def route(garden: Pool, rain: Storm, *, until: Quantity | None = None) -> RoutedStorm:
    """Return what a storm does to a garden that begins empty, followed until it is empty again.

    ``until`` cuts the account short at a time since the rain began. Exact within each part of the
    storm: no time step. Raises ValueError for a time that is not more than zero.
    """
    full, rate = magnitude(garden.full_depth, "in"), magnitude(garden.rate, "in/h")
    spans = rain.spans
    end = spans[-1].end
    if until is None:
        # No pond is deeper than the full depth, so this is dry time enough to empty it.
        spans = (*spans, RainSpan(end, end + full / rate, 0.0, 0.0))
    else:
        spans = _cut(spans, magnitude(until, "h"))
    pieces = tuple(pieces_of(spans, garden.gain, full, rate))
    inflow = garden.gain * sum(span.fall for span in spans)
    return followed(rain, garden, pieces, inflow, end if until is None else None)


def followed(
    rain: Storm, garden: Pool, pieces: tuple[PoolPiece, ...], inflow: float, end: float | None
) -> RoutedStorm:
    """Return the account of a balance that was solved: ``inflow`` in inches over the mid area.

    ``end`` is when the rain is over, after which dry time is left out; nothing keeps it all.
    """
    if end is not None:
        pieces = _trimmed(pieces, end)
    deepest = max(pieces, key=lambda piece: piece.last_depth)
    return RoutedStorm(
        storm=rain,
        pool=garden,
        pieces=pieces,
        inflow=quantity(inflow, "in"),
        soaked=quantity(sum(piece.soaked for piece in pieces), "in"),
        spill=quantity(sum(piece.spilled for piece in pieces), "in"),
        standing=quantity(_still(pieces[-1].last_depth), "in"),
        peak=quantity(deepest.last_depth, "in"),
        peak_time=quantity(deepest.end, "h"),
    )


def _still(depth: float) -> float:
    return depth if depth > _DRY_IN else 0.0


def _trimmed(pieces: tuple[PoolPiece, ...], end: float) -> tuple[PoolPiece, ...]:
    """Leave out the dry time after the pond has emptied."""
    kept = [piece for piece in pieces if piece.start < end or piece.hours_above(0.0) > 0]
    return tuple(kept)


def _cut(spans: tuple[RainSpan, ...], hours: float) -> tuple[RainSpan, ...]:
    """The spans up to a time, with dry time after the rain where it lies beyond."""
    if not 0 < hours < float("inf"):
        raise ValueError("The time to look at must be after the rain began.")
    kept = []
    for span in spans:
        if span.end <= hours:
            kept.append(span)
        elif span.start < hours:
            part = (hours - span.start) / (span.end - span.start)
            last = span.first + part * (span.last - span.first)
            kept.append(RainSpan(span.start, hours, span.first, last))
    if hours > spans[-1].end:
        kept.append(RainSpan(spans[-1].end, hours, 0.0, 0.0))
    return tuple(kept)


@dataclass(frozen=True)
class LadderRow:
    """One storm of the ladder."""

    rain: Quantity
    peak: Quantity
    hours_on_floor: Quantity
    spill: Quantity
    spill_volume: Quantity
    share_caught: float


def ladder(
    garden: Pool,
    *,
    shape: StormShape = StormShape.TRIANGLE,
    duration: Quantity | None = None,
    system: str = US,
    rains: Sequence[Quantity] = (),
) -> tuple[LadderRow, ...]:
    """Return what a row of storms does to a garden, from a sprinkle to a cloudburst.

    ``system`` chooses 0.25 to 3 in or 5 to 75 mm, ``rains`` gives other depths instead, and
    ``duration`` is six hours when not given. Raises ValueError as ``storm`` does.
    """
    numbers, unit = LADDER[system]
    rows = []
    for rain in rains or [quantity(number, unit) for number in numbers]:
        routed = route(garden, storm(shape, rain, duration))
        rows.append(
            LadderRow(
                rain=rain,
                peak=routed.peak,
                hours_on_floor=routed.hours_on_floor,
                spill=routed.spill,
                spill_volume=routed.spill_volume,
                share_caught=routed.share_caught,
            )
        )
    return tuple(rows)
