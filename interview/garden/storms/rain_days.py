"""Depths that so many percent of the rain days of a daily record do not pass."""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Mapping, Sequence
from datetime import date

from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity

PERCENTS = (80, 85, 90, 95)
"""The shares of rain days whose depths are told, in percent."""
METHOD = Source(
    "Center for Watershed Protection, Options for Water Quality Volumes, web page: depths of 24 "
    "hours, those under 0.1 in left out, share of the days and not of the year's water",
    Provenance.PUBLISHED,
)
LEAST_IN = Cited(0.1, METHOD)
"""A day of no more rain than this, in inches, is left out: hardly any water runs off."""
FEWEST_DAYS = Cited(20, Source("so that the 95 % depth rests on a day", Provenance.OURS))
"""With fewer rain days no depth is told."""
LONG_YEARS = Cited(
    30, Source("EPA 841-B-09-001, 2009: a record of about 30 years", Provenance.MEMORY)
)
_SAME_IN = 1e-9
"""Inches by which two depths may differ by rounding of the computer alone."""


@record
class RainDays:
    """The rain days of a record, and how deep their rain is."""

    years: float
    """How long the record tells of, in years of 365.25 days."""
    inches: tuple[float, ...]
    """The depth of each rain day in inches, the smallest first."""

    @property
    def count(self) -> int:
        """How many rain days there are."""
        return len(self.inches)

    @property
    def short(self) -> bool:
        """Whether the record is shorter than is asked for."""
        return self.years < LONG_YEARS.value

    def depth(self, percent: float) -> Quantity:
        """Return the depth of rain that ``percent`` of the rain days do not pass; a length.

        Between two days it is interpolated: the days are ranked from 0 to n - 1 by depth, and the
        depth is that at the rank (n - 1) percent / 100, as spreadsheets do it. Raises ValueError
        for a percent outside 0 to 100.
        """
        if not 0 <= percent <= 100:
            raise ValueError("A share of the rain days lies between 0 and 100 percent.")
        place = (self.count - 1) * percent / 100
        low = math.floor(place)
        high = min(low + 1, self.count - 1)
        part = place - low
        return quantity(self.inches[low] * (1 - part) + self.inches[high] * part, "in")

    def depths(self) -> Mapping[int, Quantity]:
        """Return the depth of each of ``PERCENTS``."""
        return {percent: self.depth(percent) for percent in PERCENTS}

    def share_within(self, depth: Quantity) -> float:
        """Return the share of the rain days that bring ``depth`` or less, nought to one."""
        return bisect_right(self.inches, magnitude(depth, "in") + _SAME_IN) / self.count


def rain_days(days: Sequence[tuple[date, Quantity]]) -> RainDays:
    """Return the rain days of a daily record: those with more than ``LEAST_IN`` of rain.

    ``days`` has one depth, a length, for each day; missing days are not in it. Raises ValueError
    where there are fewer than ``FEWEST_DAYS``.
    """
    # A record holds few different depths, and a conversion costs more than a lookup.
    known: dict[int, float] = {}
    found = []
    for _, rain in days:
        inches = known.get(id(rain))
        if inches is None:
            inches = known[id(rain)] = magnitude(rain, "in")
        if inches > LEAST_IN.value + _SAME_IN:
            found.append(inches)
    if len(found) < FEWEST_DAYS.value:
        raise ValueError(
            f"The rainfall file has {len(found)} days with more than 0.1 in (2.5 mm) of rain; "
            f"{FEWEST_DAYS.value} are needed to tell how deep most of them are."
        )
    return RainDays(len(days) / 365.25, tuple(sorted(found)))
