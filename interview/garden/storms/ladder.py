"""A row of storms, from a sprinkle to a cloudburst."""

from __future__ import annotations

from dataclasses import dataclass

from interview.quantities.units import METRIC, US, Quantity

LADDER = {
    US: ((0.25, 0.5, 0.75, 1.0, 1.25, 1.5, 2.0, 3.0), "in"),
    METRIC: ((5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 60.0, 75.0), "mm"),
}
"""The rains tried, by the units shown."""


@dataclass(frozen=True)
class LadderRow:
    """One storm of the ladder."""

    rain: Quantity
    peak: Quantity
    hours_on_floor: Quantity
    spill_volume: Quantity
    share_caught: float
