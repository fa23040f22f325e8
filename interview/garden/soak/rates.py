"""The soak test: the rates of the hole and of its bottom, and the rate a table gives its soil."""

from __future__ import annotations

import math
from collections.abc import Sequence
from enum import Enum
from typing import NamedTuple

from interview.garden.soak.depth import (
    CORRECTED_RATE_HOURS,
    DEEPEST_IN,
    DROP_RATE_HOURS,
    SHALLOWEST_IN,
)
from interview.garden.soak.hole import BareHole, Hole
from interview.garden.soak.readings import (
    Advice,
    Interval,
    Reading,
    advice,
    intervals,
)
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.guards import reaches, within
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity, ratio

RAWLS_1982 = Source(
    "Rawls, Brakensiek and Saxton, Estimation of Soil Water Properties, Transactions of the ASAE "
    "25(5), 1982, pp. 1316-1320, saturated hydraulic conductivity",
    Provenance.SECONDARY,
)
FEEL_KEY = Source(
    "Thien, A flow diagram for teaching texture-by-feel analysis, Journal of Agronomic Education "
    "8, 1979",
    Provenance.MEMORY,
)
FAR_APART = 3.0
FAR_APART_SOURCE = Source("a factor of three is cause to look again", Provenance.OURS)


class Texture(Enum):
    """The eleven texture classes for which the table has a rate."""

    SAND = "sand"
    LOAMY_SAND = "loamy sand"
    SANDY_LOAM = "sandy loam"
    LOAM = "loam"
    SILT_LOAM = "silt loam"
    SANDY_CLAY_LOAM = "sandy clay loam"
    CLAY_LOAM = "clay loam"
    SILTY_CLAY_LOAM = "silty clay loam"
    SANDY_CLAY = "sandy clay"
    SILTY_CLAY = "silty clay"
    CLAY = "clay"


RAWLS_CM_PER_H: dict[Texture, float] = {
    Texture.SAND: 21.00,
    Texture.LOAMY_SAND: 6.11,
    Texture.SANDY_LOAM: 2.59,
    Texture.LOAM: 1.32,
    Texture.SILT_LOAM: 0.68,
    Texture.SANDY_CLAY_LOAM: 0.43,
    Texture.CLAY_LOAM: 0.23,
    Texture.SILTY_CLAY_LOAM: 0.15,
    Texture.SANDY_CLAY: 0.12,
    Texture.SILTY_CLAY: 0.09,
    Texture.CLAY: 0.06,
}
"""Saturated rates as printed, centimeters per hour. Source: ``RAWLS_1982``."""


def published_rate(texture: Texture) -> Quantity:
    """Return the saturated rate the table gives ``texture``, a speed. Source: ``RAWLS_1982``."""
    return quantity(RAWLS_CM_PER_H[texture], "cm/h")


class TextureCheck(NamedTuple):
    """The tested rate held against the rate of the texture that was felt."""

    texture: Texture
    published: Quantity
    times: float
    """The tested rate as a multiple of the published one."""
    far_apart: bool
    """True when one is more than three times the other: look again, nothing is changed."""


def texture_check(corrected: Quantity, texture: Texture) -> TextureCheck:
    """Compare the corrected rate of a test, a speed, with the rate of its texture."""
    published = published_rate(texture)
    times = ratio(corrected, published)
    near = reaches(times, 1 / FAR_APART) and within(times, FAR_APART)
    return TextureCheck(texture, published, times, not near)


SETTLED_WITHIN = Cited(
    0.10,
    Source(
        "Percolation test record sheets, Orono and Westwood, Minnesota, 1987 to 2003: "
        "three readings "
        "in a row within 10 percent",
        Provenance.PUBLISHED,
    ),
)
READING_ERROR_IN = Cited(1 / 8, Source("a ruler is read to an eighth of an inch", Provenance.OURS))
WIDTH_ERROR_IN = Cited(1 / 2, Source("a dug hole's width is good to half an inch", Provenance.OURS))
READINGS_WANTED = Cited(6, Source("an hourly reading for six hours", Provenance.PRACTICE))
VERY_FAST_IN_H = Cited(6.0, Source("a drop rate of sand", Provenance.PRACTICE))
_NUDGE = 1e-6
"""Share of a width by which it is moved to find the slope of the rate: far above the last digit of
a float, far below what bends the curve."""


class Band(Enum):
    """What a test says of the soil, by the pond that it empties in time."""

    VERY_FAST = "very fast"
    WELL_DRAINING = "well draining"
    WORKABLE = "workable"
    MARGINAL = "marginal"
    NO_FALL = "no measurable fall"


class Trend(Enum):
    """Which way the corrected rate is going: the one verdict on whether the readings may end."""

    FALLING = "falling"
    STEADY = "steady"
    RISING = "rising"
    UP_AND_DOWN = "up and down"
    TOO_FEW = "too few readings"


@record
class SoakTest:
    """The result of one test hole; rates are speeds."""

    hole: Hole
    intervals: tuple[Interval, ...]
    drop_rate: Quantity
    """Mean over the readings of the drop since the last fill over the time since then."""
    mean_drop_rate: Quantity
    """All the drops together over all the time together."""
    lower_drop_rate: Quantity
    """The lower of the two: the rate that the depth goes by, as soil slows while it wets."""
    corrected_all: Quantity
    """Mean corrected rate of all valid intervals, weighted by time."""
    corrected_last_three: Quantity
    corrected: Quantity
    """The lower of the two: the rate of the test."""
    deviation: float | None
    """Largest distance of the last three from their mean, as a share of it; None under three."""
    trend: Trend
    standard_error: Quantity
    """Of the corrected rate, from the readings and the width of the hole."""
    side_share: float
    """Share of the water that left by the sides, nought to one."""
    band: Band
    advice: Advice
    notes: tuple[str, ...]
    """Sentences on intervals that were not used."""

    @property
    def still_wetting(self) -> bool:
        """Tell whether the rate is still falling, so that more readings are wanted."""
        return self.trend is Trend.FALLING

    @property
    def settled(self) -> bool:
        """Tell whether the readings may end."""
        return self.trend is Trend.STEADY

    @property
    def settled_by_ruler(self) -> bool:
        """Tell whether they may end only because the ruler cannot tell the rates apart."""
        return self.settled and not _agree(self.deviation)


class _Span(NamedTuple):
    """A valid interval in bare hours and inches."""

    start: float
    end: float
    above: float
    below: float

    @property
    def hours(self) -> float:
        return self.end - self.start


def soil_band(drop_rate: Quantity, corrected: Quantity) -> Band:
    """Return the band of a soil from the two rates of its test, both speeds of zero or more.

    ``drop_rate`` is the fall in the hole, ``corrected`` the rate through the bottom alone. The rate
    that allows the shallower pond governs: one that it empties from 10 in on is good ground, one
    under 3 in is marginal. Sources: those of the two checks and depths in ``depth``.
    """
    q, f = magnitude(drop_rate, "in/h"), magnitude(corrected, "in/h")
    pond = min(q * DROP_RATE_HOURS.value, f * CORRECTED_RATE_HOURS.value)
    if q <= 0:
        return Band.NO_FALL
    if not reaches(pond, SHALLOWEST_IN.value):
        return Band.MARGINAL
    if not reaches(pond, DEEPEST_IN.value):
        return Band.WORKABLE
    return Band.VERY_FAST if q >= VERY_FAST_IN_H.value else Band.WELL_DRAINING


def _rate(hole: BareHole, spans: Sequence[_Span]) -> float:
    hours = sum(span.hours for span in spans)
    return sum(hole.soaked(span.above, span.below) for span in spans) / hours


def _reading_part(hole: BareHole, spans: Sequence[_Span], error: float) -> float:
    """Standard error of the mean rate from the readings.

    A depth shared by two intervals of one fill is one reading, so its two parts cancel.
    """
    slopes: dict[tuple[float, float], float] = {}
    for span in spans:
        for key, sign in (((span.start, span.above), 1.0), ((span.end, span.below), -1.0)):
            slopes[key] = slopes.get(key, 0.0) + sign * hole.area_over_wetted(key[1])
    hours = sum(span.hours for span in spans)
    return error * math.sqrt(sum(slope**2 for slope in slopes.values())) / hours


def _width_part(hole: BareHole, spans: Sequence[_Span], error: float) -> float:
    """Standard error of the mean rate from the widths, each measured apart from the others."""
    total = 0.0
    for index, width in enumerate(hole.widths):
        nudge = width * _NUDGE
        sides = []
        for sign in (1, -1):
            widths = list(hole.widths)
            widths[index] += sign * nudge
            sides.append(_rate(BareHole(hole.shape, tuple(widths), hole.taper_height), spans))
        total += ((sides[0] - sides[1]) / (2 * nudge) * error) ** 2
    return math.sqrt(total)


def _agree(deviation: float | None) -> bool:
    return deviation is not None and within(deviation, SETTLED_WITHIN.value)


def _trend(hole: BareHole, spans: Sequence[_Span], error: float) -> tuple[float | None, Trend]:
    """Deviation of the last three rates, and which way the rates go.

    Three rates further apart than 10 percent are settled too where the ruler cannot tell any of
    the last six apart. Six, because a slow fall hides in three: each step is within the error of
    the ruler, and only the sum of the steps is not.
    """
    if len(spans) < 3:
        return None, Trend.TOO_FEW
    rates = [_rate(hole, [span]) for span in spans[-3:]]
    mean = sum(rates) / 3
    deviation = max(abs(rate - mean) for rate in rates) / mean if mean > 0 else 0.0
    if _agree(deviation) or not _told_apart(hole, spans[-READINGS_WANTED.value :], error):
        return deviation, Trend.STEADY
    change = (rates[-1] - rates[0]) / mean
    if within(abs(change), SETTLED_WITHIN.value):
        return deviation, Trend.UP_AND_DOWN
    return deviation, Trend.RISING if change > 0 else Trend.FALLING


def _told_apart(hole: BareHole, spans: Sequence[_Span], error: float) -> bool:
    """Tell whether the rates differ by more than twice the error of the least sure of them."""
    rates = [_rate(hole, [span]) for span in spans]
    return max(rates) - min(rates) > 2 * max(_reading_part(hole, [span], error) for span in spans)


def _notes(rows: Sequence[Interval]) -> tuple[str, ...]:
    """The reasons, each once, in the order they came up."""
    return tuple(dict.fromkeys(row.why_not for row in rows if row.why_not))


def _spans(rows: Sequence[Interval]) -> list[_Span]:
    spans = [
        _Span(
            magnitude(row.start, "h"),
            magnitude(row.end, "h"),
            magnitude(row.depth_before, "in"),
            magnitude(row.depth_after, "in"),
        )
        for row in rows
        if row.valid
    ]
    if spans:
        return spans
    if any(row.found_empty for row in rows):
        raise ValueError(
            "The hole was empty at every reading. Fill it again and read before it is empty."
        )
    raise ValueError("There is no usable reading yet. Read the water at least once more.")


def soak_test(
    hole: Hole,
    start_depth: Quantity,
    readings: Sequence[Reading],
    *,
    reading_error: Quantity | None = None,
    width_error: Quantity | None = None,
) -> SoakTest:
    """Return the rates of one test hole.

    ``start_depth`` is the depth of water when the test began; times in ``readings`` count from
    then. ``reading_error`` (1/8 in) and ``width_error`` (1/2 in) are half-widths of a uniform
    error. Raises ValueError as ``intervals`` does, and when no interval can be used.
    Source of the corrected rate: ``INVERSE_AUGER_HOLE``; of settling: ``SETTLED_WITHIN``.
    """
    rows = intervals(hole, start_depth, readings)
    bare, spans = hole.bare, _spans(rows)
    ruler = READING_ERROR_IN.value if reading_error is None else magnitude(reading_error, "in")
    tape = WIDTH_ERROR_IN.value if width_error is None else magnitude(width_error, "in")
    u_ruler, u_tape = ruler / math.sqrt(3), tape / math.sqrt(3)
    every, last = _rate(bare, spans), _rate(bare, spans[-3:])
    used = spans if every <= last else spans[-3:]
    error = math.hypot(_reading_part(bare, used, u_ruler), _width_part(bare, used, u_tape))
    deviation, trend = _trend(bare, spans, u_ruler)
    hours = sum(span.hours for span in spans)
    drop = sum(span.above - span.below for span in spans)
    left = sum(bare.volume(span.above, span.below) for span in spans)
    since_fill = [
        magnitude(row.drop_rate_since_fill, "in/h")
        for row in rows
        if row.drop_rate_since_fill is not None
    ]
    drop_rate = quantity(sum(since_fill) / len(since_fill), "in/h")
    mean_drop_rate = quantity(drop / hours, "in/h")
    lower_drop_rate = min(drop_rate, mean_drop_rate)
    corrected = quantity(min(every, last), "in/h")
    return SoakTest(
        hole=hole,
        intervals=rows,
        drop_rate=drop_rate,
        mean_drop_rate=mean_drop_rate,
        lower_drop_rate=lower_drop_rate,
        corrected_all=quantity(every, "in/h"),
        corrected_last_three=quantity(last, "in/h"),
        corrected=corrected,
        deviation=deviation,
        trend=trend,
        standard_error=quantity(error, "in/h"),
        side_share=1 - every * hours / left if left > 0 else 0.0,
        band=Band.NO_FALL if drop < ruler else soil_band(lower_drop_rate, corrected),
        advice=advice(rows),
        notes=_notes(rows),
    )
