"""What a garden holds as it was dug, from levels read down from one level line.

A reading is how far a point lies below the line; one above it is less than zero. Only differences
of readings count, so that any level line will do.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cached_property

from interview.garden.pond.stage import StageCurve
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.guards import not_negative, number_of
from interview.quantities.records import record
from interview.quantities.units import METRIC, US, Quantity, magnitude, quantity, ratio

LEVEL_WITHIN = {
    US: Cited((0.5, "in"), Source("a floor level within half an inch", Provenance.PRACTICE)),
    METRIC: Cited((10.0, "mm"), Source("a floor level within 10 mm", Provenance.PRACTICE)),
}
"""How far apart the readings of one floor may be, and how far off its depth: the same care."""


@record
class Levels:
    """The readings of one bed, lengths below the level line.

    ``floor`` are those of several points spread evenly over the floor, ``cover`` the depth of
    compost and mulch that is still to lie on them. Raises ValueError without a reading of the
    floor, for a cover below zero, or for what is no number.
    """

    floor: tuple[Quantity, ...]
    cover: Quantity
    notch: Quantity
    rim: Quantity | None = None
    """The lowest place of the rim away from the notch, where it was read."""
    inlet: Quantity | None = None
    """The top of the stone where the water comes in, where it was read."""

    def __post_init__(self) -> None:
        if not self.floor:
            raise ValueError("Read the floor in one place or more.")
        not_negative(self.cover, "ft", "What lies on the floor cannot be less than nothing.")
        for one in (*self.floor, self.notch, self.rim, self.inlet):
            if one is not None:
                number_of(one, "ft", "A reading must be a number.")

    @property
    def finished_floor(self) -> Quantity:
        """The reading of the finished floor: the mean of its points, less what is to lie on it."""
        bare = sum(_feet(self.floor)) / len(self.floor)
        return quantity(bare - magnitude(self.cover, "ft"), "ft")

    @property
    def lowest_floor(self) -> Quantity:
        """The reading of the lowest point of the finished floor."""
        return quantity(max(_feet(self.floor)) - magnitude(self.cover, "ft"), "ft")

    @property
    def floor_spread(self) -> Quantity:
        """How far the highest and the lowest point of the floor are apart."""
        return spread(self.floor)

    @property
    def over_rim(self) -> bool:
        """Whether the rim is lower than the notch, so that the pond runs over there."""
        return self.rim is not None and _feet_above(self.rim, self.notch) < 0

    @property
    def spills_at(self) -> Quantity:
        """The reading of the lowest way out: the notch, or the rim where that is lower."""
        return self.rim if self.over_rim and self.rim is not None else self.notch


def _feet_above(reading: Quantity, other: Quantity) -> float:
    """Return how far, in feet, the point of ``reading`` lies above that of ``other``."""
    return magnitude(other, "ft") - magnitude(reading, "ft")


def above(reading: Quantity, other: Quantity) -> Quantity:
    """Return how far the point of one reading lies above that of another; below it is negative."""
    return quantity(_feet_above(reading, other), "ft")


def spread(readings: Sequence[Quantity]) -> Quantity:
    """Return how far the highest and the lowest of one or more readings are apart."""
    return quantity(max(_feet(readings)) - min(_feet(readings)), "ft")


def _feet(readings: Sequence[Quantity]) -> list[float]:
    return [magnitude(one, "ft") for one in readings]


@record
class AsBuilt:
    """One bed as it was dug: its floor pegged and its sides cut as planned, its levels as read.

    ``planned`` is the curve of area by depth of the plan, with the pond's planned depth.
    """

    levels: Levels
    planned: StageCurve

    @cached_property
    def depth(self) -> Quantity:
        """The pond from the finished floor, on average, to the lowest way out; nought if none."""
        return _nought_or(above(self.levels.spills_at, self.levels.finished_floor))

    @property
    def deepest(self) -> Quantity:
        """The same over the lowest point of the floor."""
        return _nought_or(above(self.levels.spills_at, self.levels.lowest_floor))

    @cached_property
    def volume(self) -> Quantity:
        """Water held up to the lowest way out, by the planned curve over the floor found.

        Over a floor that is uneven it is that of its mean level, as long as all of it lies under
        water.
        """
        return self.planned.volume_to(self.depth)

    @property
    def share(self) -> float:
        """That volume over the one that was planned."""
        return ratio(self.volume, self.planned.volume)

    @property
    def shallower(self) -> Quantity:
        """How much less deep the pond is than planned; below zero where it is deeper."""
        return quantity(magnitude(self.planned.depth, "ft") - magnitude(self.depth, "ft"), "ft")

    def rain_held(self, sending: Quantity) -> Quantity:
        """Return the rain that just fills it, from an area that all runs here, nothing soaking."""
        feet = magnitude(self.volume, "ft**3") / magnitude(sending, "ft**2")
        return quantity(feet, "ft")

    def hours_to_empty(self, rate: Quantity) -> Quantity:
        """Return how long the full pond stands over the lowest point of the floor."""
        deepest, fast = magnitude(self.deepest, "ft"), magnitude(rate, "ft/h")
        if deepest == 0:
            return quantity(0.0, "h")
        return quantity(deepest / fast if fast > 0 else math.inf, "h")


def _nought_or(length: Quantity) -> Quantity:
    return quantity(max(0.0, magnitude(length, "ft")), "ft")
