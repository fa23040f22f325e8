"""Several equal beds: side by side, or one below the other taking what the one above spills."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from interview.garden.form.basin import Basin
from interview.garden.size.basin import MOST_BEDS
from interview.garden.storms.hyetographs import RainSpan, Storm
from interview.garden.storms.pool import Pool, PoolPiece, pieces_of, pool
from interview.garden.storms.routing import LadderRow, RoutedStorm, followed, route
from interview.quantities.guards import not_negative
from interview.quantities.units import Quantity, magnitude, quantity, ratio


@dataclass(frozen=True)
class GardenStorm:
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
    def spill(self) -> Quantity:
        """Depth over one bed that leaves the whole garden, for each bed that it leaves from."""
        return self.beds[-1].spill

    @property
    def spill_volume(self) -> Quantity:
        """Volume that leaves the whole garden."""
        return quantity(magnitude(self.beds[-1].spill_volume, "ft**3") * self.copies, "ft**3")

    @property
    def inflow(self) -> Quantity:
        """Depth that came over one bed: from the surfaces once, and the rain on every bed."""
        passed = sum(magnitude(bed.spill, "in") for bed in self.beds[:-1])
        return quantity(sum(magnitude(bed.inflow, "in") for bed in self.beds) - passed, "in")

    @property
    def share_caught(self) -> float:
        """Share of all the water that did not run over, nought to one; one for no rain."""
        came = magnitude(self.inflow, "in")
        return 1 - magnitude(self.spill, "in") / came if came > 0 else 1.0

    @property
    def row(self) -> LadderRow:
        """This storm as a row of the ladder: the wettest bed, and what leaves the garden."""
        first = self.wettest
        return LadderRow(
            rain=first.storm.rain,
            peak=first.peak,
            hours_on_floor=first.hours_on_floor,
            spill=self.spill,
            spill_volume=self.spill_volume,
            share_caught=self.share_caught,
        )


@dataclass(frozen=True)
class Beds:
    """Equal beds as the balance of a storm sees them; ``own`` and ``pool.gain`` are ratios."""

    count: int
    in_series: bool
    pool: Pool
    """The bed the water reaches first, or each of those side by side."""
    own: float
    """Area inside a bed's rim over its area at half depth: what rain on the bed itself brings."""

    def gain_for(self, catchment: Quantity) -> float:
        """Return the gain of the first bed, were this the weighted area of the whole garden."""
        shared = magnitude(catchment, "ft**2") / (1 if self.in_series else self.count)
        return shared / magnitude(self.pool.mid_area, "ft**2") + self.own

    def route(self, rain: Storm) -> GardenStorm:
        """Return what a storm does to all the beds, each empty at first; exact as ``route`` is."""
        first = route(self.pool, rain)
        if not self.in_series:
            return GardenStorm((first,), self.count)
        # The same dry time for every bed: no pond is deeper than the full depth.
        full, rate = magnitude(self.pool.full_depth, "in"), magnitude(self.pool.rate, "in/h")
        end = rain.spans[-1].end
        spans: Sequence[RainSpan] = (*rain.spans, RainSpan(end, end + full / rate, 0.0, 0.0))
        came = scaled(spans, self.pool.gain)
        found = [first]
        pieces = tuple(pieces_of(came, 1.0, full, rate))
        below = replace(self.pool, gain=self.own)
        for _ in range(self.count - 1):
            spans, came = below_of(spans, came, pieces, rate, self.own)
            pieces = tuple(pieces_of(came, 1.0, full, rate))
            inflow = sum(span.fall for span in came)
            found.append(followed(rain, below, pieces, inflow, end))
        return GardenStorm(tuple(found), 1)


def beds_of(basin: Basin, catchment: Quantity, rate: Quantity, count: int, in_series: bool) -> Beds:
    """Return ``count`` equal beds for the weighted area that drains to the whole garden.

    Side by side each takes an even part of it; one below the other the first takes it all. Raises
    ValueError for fewer than one bed, and as ``pool`` does.
    """
    if not 1 <= count <= MOST_BEDS:
        raise ValueError(f"The garden may have from 1 to {MOST_BEDS} beds.")
    area = not_negative(catchment, "ft**2", "The area that drains here cannot be below zero.")
    series = in_series and count > 1
    first = quantity(area if series else area / count, "ft**2")
    return Beds(count, series, pool(basin, first, rate), ratio(basin.rim_area, basin.mid_area))


def scaled(spans: Sequence[RainSpan], gain: float) -> list[RainSpan]:
    """Return spans of inflow, in depth an hour, from spans of rain."""
    return [RainSpan(one.start, one.end, gain * one.first, gain * one.last) for one in spans]


def below_of(
    rain: Sequence[RainSpan],
    came: Sequence[RainSpan],
    pieces: Sequence[PoolPiece],
    rate: float,
    own: float,
) -> tuple[list[RainSpan], list[RainSpan]]:
    """Return rain and inflow of the bed below, cut where the bed above begins or stops to spill.

    ``came`` is the inflow of the bed above over the same spans as ``rain``, ``pieces`` its balance.
    """
    next_rain, next_came = [], []
    place = 0
    for piece in pieces:
        while rain[place].end <= piece.start:
            place += 1
        wet, inflow = _cut(rain[place], piece), _cut(came[place], piece)
        spills = piece.spilled > 0
        first = max(0.0, inflow.first - rate) if spills else 0.0
        last = max(0.0, inflow.last - rate) if spills else 0.0
        next_rain.append(wet)
        next_came.append(replace(wet, first=own * wet.first + first, last=own * wet.last + last))
    return next_rain, next_came


def _cut(span: RainSpan, piece: PoolPiece) -> RainSpan:
    slope = (span.last - span.first) / (span.end - span.start)
    first = span.first + slope * (piece.start - span.start)
    return RainSpan(piece.start, piece.end, first, first + slope * (piece.end - piece.start))
