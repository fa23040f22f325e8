"""Several equal beds: side by side, or one below the other taking what the one above spills."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from interview.garden.form.choices import MOST_BEDS
from interview.garden.pond.hyetographs import RainSpan, Storm
from interview.garden.pond.pieces import PoolPiece
from interview.garden.pond.pool import BarePool, FlowSpan, Pool, flows, pieces_of, pool
from interview.garden.pond.routing import RoutedStorm, caught, followed, route
from interview.garden.pond.stage import StageCurve
from interview.quantities.guards import not_negative
from interview.quantities.records import record
from interview.quantities.units import METRIC, US, Quantity, magnitude, quantity

LADDER = {
    US: ((0.25, 0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0), "in"),
    METRIC: ((5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 60.0, 75.0), "mm"),
}
"""The rains tried, by the units shown."""


@record
class LadderRow:
    """One storm of the ladder."""

    rain: Quantity
    peak: Quantity
    hours_on_floor: Quantity
    spill_volume: Quantity
    share_caught: float


class GardenStorm(NamedTuple):
    """One storm in all the beds."""

    beds: tuple[RoutedStorm, ...]
    """The beds in the order the water reaches them; for beds side by side one stands for all."""
    copies: int
    """How many beds each of them stands for."""

    @property
    def wettest(self) -> RoutedStorm:
        """The bed the water reaches first, or any of those side by side."""
        return self.beds[0]

    @property
    def spill_volume(self) -> Quantity:
        """Volume that leaves the whole garden."""
        return self._all(magnitude(self.beds[-1].spill_volume, "ft**3"))

    @property
    def inflow_volume(self) -> Quantity:
        """Volume that came: from the surfaces once, and the rain on every bed."""
        passed = sum(magnitude(bed.spill_volume, "ft**3") for bed in self.beds[:-1])
        return self._all(sum(magnitude(bed.inflow_volume, "ft**3") for bed in self.beds) - passed)

    def _all(self, cubic_feet: float) -> Quantity:
        return quantity(cubic_feet * self.copies, "ft**3")

    @property
    def share_caught(self) -> float:
        """Share of all the water that did not run over, nought to one; one for no rain."""
        return caught(self.inflow_volume, self.spill_volume)

    @property
    def row(self) -> LadderRow:
        """This storm as a row of the ladder: the wettest bed, and what leaves the garden."""
        first = self.wettest
        return LadderRow(
            rain=first.storm.rain,
            peak=first.peak,
            hours_on_floor=first.hours_on_floor,
            spill_volume=self.spill_volume,
            share_caught=self.share_caught,
        )


@record
class Beds:
    """Equal beds as the balance of a storm sees them."""

    count: int
    in_series: bool
    pool: Pool
    """The bed the water reaches first, or each of those side by side."""

    @property
    def below(self) -> int:
        """How many beds take what the one above them spills."""
        return self.count - 1 if self.in_series else 0

    def for_area(self, catchment: Quantity) -> Pool:
        """Return the first bed, were this the weighted area of the whole garden."""
        return replace(self.pool, catchment=_first_of(catchment, self.count, self.in_series))

    def route(self, rain: Storm, floor_only: bool = False) -> GardenStorm:
        """Return what a storm does to all the beds, each empty at first, as ``route`` does."""
        first = route(self.pool, rain, floor_only=floor_only)
        if not self.in_series:
            return GardenStorm((first,), self.count)
        bed = self.pool.floor_only if floor_only else self.pool.bare
        # The same dry time for every bed: no pond is deeper than the full one.
        end = rain.spans[-1].end
        spans: Sequence[RainSpan] = (
            *rain.spans,
            RainSpan(end, end + bed.hours_to_dry(bed.full), 0.0, 0.0),
        )
        came = flows(spans, magnitude(self.pool.sending_area, "ft**2"))
        own = flows(spans, magnitude(self.pool.inside, "ft**2"))
        found = [first]
        pieces = tuple(pieces_of(bed, came))
        below = replace(self.pool, catchment=quantity(0.0, "ft**2"))
        for _ in range(self.below):
            own, came = below_of(bed, own, came, pieces)
            pieces = tuple(pieces_of(bed, came))
            inflow = sum(span.volume for span in came)
            found.append(followed(rain, below, pieces, inflow, end))
        return GardenStorm(tuple(found), 1)


def beds_of(
    stage: StageCurve,
    catchment: Quantity,
    inside: Quantity,
    rate: Quantity,
    count: int,
    in_series: bool,
) -> Beds:
    """Return ``count`` equal beds for ``catchment``, the weighted area of the whole garden.

    ``inside`` is the area whose rain falls into one bed, ``rate`` how fast it soaks, a speed. Side
    by side each takes an even part of it; one below the other the first takes it all. Raises
    ValueError for fewer than one bed, and as ``pool`` does.
    """
    if not 1 <= count <= MOST_BEDS:
        raise ValueError(f"The garden may have from 1 to {MOST_BEDS} beds.")
    series = in_series and count > 1
    first = _first_of(catchment, count, series)
    return Beds(count, series, pool(stage, first, inside, rate))


def _first_of(catchment: Quantity, count: int, in_series: bool) -> Quantity:
    """Return the weighted area of the first bed: all of it in a row, an even part side by side."""
    area = not_negative(catchment, "ft**2", "The area that drains here cannot be below zero.")
    return quantity(area if in_series else area / count, "ft**2")


def below_of(
    bed: BarePool,
    own: Sequence[FlowSpan],
    came: Sequence[FlowSpan],
    pieces: Sequence[PoolPiece],
) -> tuple[list[FlowSpan], list[FlowSpan]]:
    """Return the rain on the bed below and its inflow, cut where the bed above turns its ways.

    ``came`` is the inflow of the bed above over the same spans as ``own``, ``pieces`` its balance.
    While it is full it spills its inflow less what a full pond soaks in, which changes evenly
    within a span too: nothing is lost in passing it on.
    """
    next_own, next_came = [], []
    place = 0
    soaks = bed.soak(bed.full)
    for piece in pieces:
        while own[place].end <= piece.start:
            place += 1
        wet, inflow = _cut(own[place], piece), _cut(came[place], piece)
        spills = piece.spilled > 0
        first = max(0.0, inflow.first - soaks) if spills else 0.0
        last = max(0.0, inflow.last - soaks) if spills else 0.0
        next_own.append(wet)
        next_came.append(wet._replace(first=wet.first + first, last=wet.last + last))
    return next_own, next_came


def _cut(span: FlowSpan, piece: PoolPiece) -> FlowSpan:
    slope = (span.last - span.first) / (span.end - span.start)
    first = span.first + slope * (piece.start - span.start)
    return FlowSpan(piece.start, piece.end, first, first + slope * (piece.end - piece.start))
