"""What a storm does to one bed: how deep it stands, how long, and what runs over."""

from __future__ import annotations

from interview.garden.pond.hyetographs import RainSpan, Storm
from interview.garden.pond.pieces import PoolPiece
from interview.garden.pond.pool import Pool, flows, pieces_of
from interview.quantities.guards import not_negative
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity


@record
class RoutedStorm:
    """A storm carried through a bed: the volumes of its water, and the depth of its pond."""

    storm: Storm
    pool: Pool
    pieces: tuple[PoolPiece, ...]
    """The balance, in bare hours and feet."""
    inflow_volume: Quantity
    soaked_volume: Quantity
    spill_volume: Quantity
    peak: Quantity
    """Greatest depth of the pond."""

    @property
    def share_caught(self) -> float:
        """Share of the water that did not run over, nought to one; one for no rain."""
        return caught(self.inflow_volume, self.spill_volume)

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
        """Time with water over ground of a height over the floor, at the brim while it is full.

        Raises ValueError below the floor.
        """
        level = not_negative(height, "ft", "A height over the floor cannot be below zero.")
        return quantity(sum(piece.hours_above(level) for piece in self.pieces), "h")

    def breakpoints(self, between: int) -> tuple[tuple[Quantity, Quantity], ...]:
        """Times and depths where the balance changes, for a chart.

        ``between`` adds that many points inside each part whose line is curved.
        """
        points: list[tuple[float, float]] = []
        for piece in self.pieces:
            steps = between + 1 if len(piece.times) > 2 else 1
            long = piece.end - piece.start
            for step in range(steps):
                time = piece.start + long * step / steps
                points.append((time, piece.depth_at(time)))
        points.append((self.pieces[-1].end, self.pieces[-1].last_depth))
        return tuple((quantity(time, "h"), quantity(depth, "ft")) for time, depth in points)


def caught(came: Quantity, spill: Quantity) -> float:
    """Return the part of the volume ``came`` without ``spill``, nought to one; one of no water."""
    volume = magnitude(came, "ft**3")
    return 1 - magnitude(spill, "ft**3") / volume if volume > 0 else 1.0


def route(garden: Pool, rain: Storm, *, floor_only: bool = False) -> RoutedStorm:
    """Return what a storm does to a bed that begins empty, followed until it is empty again.

    ``floor_only`` lets water out through the level floor alone, which takes the longest.
    """
    bed = garden.floor_only if floor_only else garden.bare
    end = rain.spans[-1].end
    # No pond is deeper than the full one, so this is dry time enough to empty it.
    spans = (*rain.spans, RainSpan(end, end + bed.hours_to_dry(bed.full), 0.0, 0.0))
    came = flows(spans, magnitude(garden.sending_area, "ft**2"))
    return followed(rain, garden, tuple(pieces_of(bed, came)), sum(one.volume for one in came), end)


def followed(
    rain: Storm, garden: Pool, pieces: tuple[PoolPiece, ...], inflow: float, end: float
) -> RoutedStorm:
    """Return the account of a balance that was solved: ``inflow`` in cubic feet.

    ``end`` is when the rain is over, after which dry time is left out.
    """
    pieces = _trimmed(pieces, end)
    return RoutedStorm(
        storm=rain,
        pool=garden,
        pieces=pieces,
        inflow_volume=quantity(inflow, "ft**3"),
        soaked_volume=quantity(sum(piece.soaked for piece in pieces), "ft**3"),
        spill_volume=quantity(sum(piece.spilled for piece in pieces), "ft**3"),
        peak=quantity(max(piece.last_depth for piece in pieces), "ft"),
    )


def _trimmed(pieces: tuple[PoolPiece, ...], end: float) -> tuple[PoolPiece, ...]:
    """Leave out the dry time after the pond has emptied."""
    kept = [piece for piece in pieces if piece.start < end or piece.hours_above(0.0) > 0]
    return tuple(kept)
