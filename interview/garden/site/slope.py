"""The slope of the ground by string and level."""

from __future__ import annotations

import math
from typing import NamedTuple

from interview.quantities.evidence import OURS, Cited, Finding, Grade, Provenance, Source
from interview.quantities.guards import number_of, positive, reaches, within
from interview.quantities.records import record
from interview.quantities.shown import slope_words, water_words
from interview.quantities.units import Quantity, magnitude, quantity

READING_IN = 0.125
"""Half width of a tape reading, taken as equally likely anywhere within."""
DISAGREE_IN = 0.5


@record
class Slope:
    """The fall of the ground between two stakes."""

    run: Quantity
    drop: Quantity
    """Mean of the two readings, or the one."""
    fall: Quantity
    """Drop for the run, in percent."""
    level_error: Quantity | None
    """What a crooked level adds to each reading; ``None`` when it was not turned."""
    standard_error: Quantity
    """Standard error of ``fall``, in percent."""

    @property
    def percent(self) -> float:
        """The fall in percent."""
        return magnitude(self.fall, "percent")


def ground_slope(run: Quantity, drop: Quantity, drop_turned: Quantity | None = None) -> Slope:
    """Return the slope from the run and the drop at the downhill stake.

    All are lengths. ``drop_turned`` is the drop with the level turned end for end: the mean of
    both is free of a crooked level. The standard error takes each reading as good to
    ``READING_IN`` either way. Raises ValueError for a run that is not more than zero, ground that
    rises, or a drop of more than twice the run.
    """
    inches = positive(run, "in", "The run between the stakes must be more than zero.")
    sentence = "Give the drop as a length."
    first = number_of(drop, "in", sentence)
    second = first if drop_turned is None else number_of(drop_turned, "in", sentence)
    mean = (first + second) / 2
    if mean < 0:
        raise ValueError("The ground rises to the downhill stake: swap the two stakes.")
    if mean > 2 * inches:
        raise ValueError("The drop is far more than the run: check the two measures.")
    # Two readings of two marks each average to the error of one mark.
    marks = math.sqrt(2) if drop_turned is None else 1.0
    return Slope(
        run=run,
        drop=quantity(mean, "in"),
        fall=quantity(100 * mean / inches, "percent"),
        level_error=None if drop_turned is None else quantity((first - second) / 2, "in"),
        standard_error=quantity(100 * marks * READING_IN / math.sqrt(3) / inches, "percent"),
    )


def level_finding(slope: Slope, metric: bool = False) -> Finding:
    """Return whether the two readings agree within 1/2 in; not turned is a reason to turn it."""
    limit = "readings within 1/2 in (12 mm) when the level is turned"
    if slope.level_error is None:
        change = "Turn the level end for end and read again."
        said = "The level was read one way only, so a crooked level would not show."
        return Finding("level", Grade.GOOD, said, limit, OURS, change)
    apart = abs(2 * magnitude(slope.level_error, "in"))
    if within(apart, DISAGREE_IN):
        return Finding("level", Grade.GOOD, "The two readings agree.", limit, OURS)
    differ = water_words(quantity(apart, "in"), metric)
    said = f"The two readings differ by {differ}."
    return Finding("level", Grade.FIX, said, limit, OURS, "Read both again with a tight string.")


class SlopeDepthRow(NamedTuple):
    """One row of the published slope-to-depth table."""

    low: float
    """Percent, from here."""
    high: float
    """Percent, to here; under 4 the row ends short of it."""
    depth: str
    """As printed."""
    in_mm: str
    """The same in round numbers of our own."""


DEPTH_ROWS = Cited(
    (
        SlopeDepthRow(0, 4, "3 to 5 in", "75 to 125 mm"),
        SlopeDepthRow(5, 7, "6 to 7 in", "150 to 175 mm"),
        SlopeDepthRow(8, 12, "8 in", "200 mm"),
    ),
    Source(
        "Rain garden design guide, University of Rhode Island and University of "
        "Connecticut, undated, slope table",
        Provenance.PUBLISHED,
    ),
)


def table_depth(slope: Slope) -> str:
    """Return what the published table says of the slope, in one sentence.

    The table runs under 4, 5 to 7 and 8 to 12 percent; between the rows it says nothing, and past
    12 it sends the garden elsewhere.
    """
    percent = slope.percent
    rows = DEPTH_ROWS.value
    for row in rows:
        inside = not reaches(percent, row.high) if row.low == 0 else within(percent, row.high)
        if inside and within(row.low, percent):
            return (
                f"The published table gives a depth of {row.depth} ({row.in_mm}) for "
                f"{slope_words(slope.fall)}."
            )
    if percent > rows[-1].high:
        return f"On {slope_words(slope.fall)} the published table says to choose another spot."
    before = max(row.high for row in rows if within(row.high, percent))
    after = min(row.low for row in rows if row.low > percent)
    return f"In the published table no row covers {before:g} to {after:g} %."
