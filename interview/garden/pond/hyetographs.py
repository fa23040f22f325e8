"""How a storm's rain is spread over its hours."""

from __future__ import annotations

from enum import Enum
from itertools import pairwise
from typing import NamedTuple

from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.guards import not_negative, positive
from interview.quantities.units import Quantity, magnitude, quantity

STORM_HOURS = Cited(6.0, Source("a storm of six hours", Provenance.OURS))
TYPE_II_SOURCE = Source(
    "NRCS Type II 24 h rainfall, as tabled in Chow, Maidment and Mays, Applied Hydrology, 1988, "
    "Table 14.4.1",
    Provenance.SECONDARY,
)
TYPE_II: tuple[tuple[float, float], ...] = (
    (0.0, 0.0),
    (2.0, 0.022),
    (4.0, 0.048),
    (6.0, 0.080),
    (7.0, 0.098),
    (8.0, 0.120),
    (8.5, 0.133),
    (9.0, 0.147),
    (9.5, 0.163),
    (9.75, 0.172),
    (10.0, 0.181),
    (10.5, 0.204),
    (11.0, 0.235),
    (11.5, 0.283),
    (11.75, 0.357),
    (12.0, 0.663),
    (12.5, 0.735),
    (13.0, 0.772),
    (13.5, 0.799),
    (14.0, 0.820),
    (16.0, 0.880),
    (20.0, 0.952),
    (24.0, 1.000),
)
"""Hours and the share of the day's rain fallen by then. Source: ``TYPE_II_SOURCE``."""


class StormShape(Enum):
    """How the rain is spread."""

    UNIFORM = "even"
    TRIANGLE = "building to a peak and fading"
    TYPE_II = "NRCS Type II, 24 h"


class RainSpan(NamedTuple):
    """A part of a storm whose intensity changes evenly, in bare hours and inches per hour."""

    start: float
    end: float
    first: float
    last: float

    @property
    def fall(self) -> float:
        """Inches that fall in this part."""
        return (self.end - self.start) * (self.first + self.last) / 2


class Storm(NamedTuple):
    """A depth of rain over a time, and its parts in order."""

    shape: StormShape
    rain: Quantity
    duration: Quantity
    spans: tuple[RainSpan, ...]


def uniform_storm(rain: Quantity, duration: Quantity | None = None) -> Storm:
    """Return a storm of one intensity over ``duration``, six hours when not given.

    Raises ValueError for a rain below zero or a time that is not more than zero.
    """
    inches, hours = _checked(rain, duration)
    span = RainSpan(0.0, hours, inches / hours, inches / hours)
    return Storm(StormShape.UNIFORM, rain, quantity(hours, "h"), (span,))


def triangle_storm(rain: Quantity, duration: Quantity | None = None) -> Storm:
    """Return a storm that builds evenly to twice its mean intensity at half time, and fades so.

    ``rain`` is a depth, ``duration`` a time, six hours when not given.
    Raises ValueError for a rain below zero or a time that is not more than zero.
    """
    inches, hours = _checked(rain, duration)
    peak = 2 * inches / hours
    spans = (RainSpan(0.0, hours / 2, 0.0, peak), RainSpan(hours / 2, hours, peak, 0.0))
    return Storm(StormShape.TRIANGLE, rain, quantity(hours, "h"), spans)


def type_ii_storm(rain: Quantity) -> Storm:
    """Return the NRCS Type II storm of a day's ``rain``, even between the tabled hours.

    Raises ValueError for a rain below zero. Source: ``TYPE_II_SOURCE``.
    """
    inches, hours = _checked(rain, quantity(TYPE_II[-1][0], "h"))
    spans = []
    for (start, before), (end, after) in pairwise(TYPE_II):
        rate = (after - before) * inches / (end - start)
        spans.append(RainSpan(start, end, rate, rate))
    return Storm(StormShape.TYPE_II, rain, quantity(hours, "h"), tuple(spans))


def storm(shape: StormShape, rain: Quantity, duration: Quantity | None = None) -> Storm:
    """Return the storm of a shape: ``rain`` is its depth, ``duration`` a time as ``uniform_storm``.

    A Type II storm always takes a day. Raises ValueError as the storms do.
    """
    match shape:
        case StormShape.UNIFORM:
            return uniform_storm(rain, duration)
        case StormShape.TRIANGLE:
            return triangle_storm(rain, duration)
        case StormShape.TYPE_II:
            return type_ii_storm(rain)


def again(first: Storm, later: Quantity | None = None) -> Storm:
    """Return a storm followed by itself, beginning a time ``later``, a day if not given.

    Raises ValueError when the second would begin before the first is over.
    """
    shift = 24.0 if later is None else magnitude(later, "h")
    hours = magnitude(first.duration, "h")
    if shift < hours:
        raise ValueError("The second storm must begin after the first one is over.")
    between = (RainSpan(hours, shift, 0.0, 0.0),) if shift > hours else ()
    second = tuple(
        span._replace(start=span.start + shift, end=span.end + shift) for span in first.spans
    )
    rain = quantity(2 * magnitude(first.rain, "in"), "in")
    spans = first.spans + between + second
    return Storm(first.shape, rain, quantity(shift + hours, "h"), spans)


def _checked(rain: Quantity, duration: Quantity | None) -> tuple[float, float]:
    inches = not_negative(rain, "in", "The depth of rain cannot be below zero. Check it.")
    if duration is None:
        return inches, STORM_HOURS.value
    return inches, positive(duration, "h", "A storm must last more than zero hours.")
