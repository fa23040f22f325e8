"""Lengths measured in paces, and how far to trust them."""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from typing import NamedTuple

from interview.quantities.evidence import OURS, Finding, Grade
from interview.quantities.guards import positive, reaches, times, within
from interview.quantities.records import record
from interview.quantities.shown import length_words
from interview.quantities.units import Quantity, magnitude, quantity

LEAST_WALKS = 3
SPREAD_LIMIT = 0.06
"""Widest spread of the counts, as a part of their mean, that passes without another walk."""
SHORT_COURSE_FT = 30.0
COURSE_LIMITS_FT = (10.0, 2000.0)
PACE_LIMITS_FT = (1.5, 4.0)
COUNT_ERROR = 1 / math.sqrt(12)
"""Standard error, in paces, of a count good to the nearest whole pace.

It may lie anywhere in a width of one pace: that width over the root of 12 (JCGM 100:2008, 4.3.7).
"""


@record
class Pace:
    """How long one pace is, from walks over a known distance."""

    course: Quantity
    counts: tuple[float, ...]
    length: Quantity
    mean_count: float
    sd_count: float
    """Sample standard deviation of the counts."""
    relative_error: float
    """Standard error of the pace length as a part of it: the same for every paced length."""

    @property
    def standard_error(self) -> Quantity:
        """Standard error of the pace length."""
        return times(self.length, self.relative_error)

    @property
    def spread(self) -> float:
        """From the lowest to the highest count, as a part of their mean."""
        return (max(self.counts) - min(self.counts)) / self.mean_count

    @property
    def count_error(self) -> float:
        """Standard deviation used for a walk: never less than counting to a pace allows."""
        return max(self.sd_count, COUNT_ERROR)


class PacedLength(NamedTuple):
    """A length from a count of paces."""

    length: Quantity
    own_error: Quantity
    """Standard error of this length alone, from counting and from uneven steps."""
    calibration_error: Quantity
    """Standard error it shares with every other length in the same pace."""

    @property
    def standard_error(self) -> Quantity:
        """Both errors together, a length: independent, so their squares add."""
        own = magnitude(self.own_error, "ft")
        return quantity(math.hypot(own, magnitude(self.calibration_error, "ft")), "ft")


def calibrate(distance: Quantity, counts: Sequence[float]) -> Pace:
    """Return the pace from the counts of several walks over one known distance.

    Raises ValueError for fewer than three walks, a count that is not more than zero, or a course
    outside 10 to 2000 ft. The standard error of the mean count gives the error of the pace.
    """
    sentence = "The course must be from 10 ft to 2000 ft (3 m to 600 m) long."
    feet = positive(distance, "ft", sentence)
    shortest, longest = COURSE_LIMITS_FT
    if not (reaches(feet, shortest * 0.98) and within(feet, longest)):
        raise ValueError(sentence)
    if len(counts) < LEAST_WALKS:
        raise ValueError("Walk the course at least three times and give each count.")
    if not all(math.isfinite(count) and count > 0 for count in counts):
        raise ValueError("Each count of paces must be more than zero.")
    mean = statistics.fmean(counts)
    sd = statistics.stdev(counts)
    return Pace(
        course=distance,
        counts=tuple(float(count) for count in counts),
        length=times(distance, 1 / mean),
        mean_count=mean,
        sd_count=sd,
        relative_error=max(sd, COUNT_ERROR) / mean / math.sqrt(len(counts)),
    )


def paced(count: float, pace: Pace) -> PacedLength:
    """Return the length of ``count`` paces with its standard errors.

    The own error joins counting to the nearest pace with the unevenness of the steps, which grows
    with the root of the distance. Raises ValueError for a count that is not more than zero.
    """
    if not math.isfinite(count) or count <= 0:
        raise ValueError("The number of paces must be more than zero.")
    own = math.hypot(COUNT_ERROR, pace.count_error * math.sqrt(count / pace.mean_count))
    length = times(pace.length, count)
    return PacedLength(length, times(pace.length, own), times(length, pace.relative_error))


def expected_error(pace: Pace, length: Quantity | None = None) -> Quantity:
    """Return the standard error, a length, to expect when ``length`` is paced.

    ``length`` is 40 ft unless given. Raises ValueError where it is not more than zero.
    """
    target = quantity(40.0, "ft") if length is None else length
    feet = positive(target, "ft", "The length must be more than zero.")
    return paced(feet / magnitude(pace.length, "ft"), pace).standard_error


def pace_findings(pace: Pace, metric: bool = False) -> tuple[Finding, ...]:
    """Return what should be looked at again before the pace is used."""
    checks = (_length_finding(pace, metric), _spread_finding(pace), _course_finding(pace))
    return tuple(finding for finding in checks if finding is not None)


def _length_finding(pace: Pace, metric: bool) -> Finding | None:
    feet = magnitude(pace.length, "ft")
    low, high = PACE_LIMITS_FT
    if reaches(feet, low) and within(feet, high):
        return None
    return Finding(
        key="pace_length",
        grade=Grade.FIX,
        said=f"One pace comes out at {length_words(pace.length, metric)}; did you count every step,"
        " or every second step?",
        limit="a step is mostly 1.5 to 4 ft (0.45 to 1.2 m)",
        source=OURS,
        change="Either will do, if you count the same way here and when you measure.",
    )


def odd_walk(pace: Pace) -> int | None:
    """Return the place of the walk farthest from the others, from 0; ``None`` if all agree."""
    gaps = []
    for place, count in enumerate(pace.counts):
        others = pace.counts[:place] + pace.counts[place + 1 :]
        gaps.append(abs(count - statistics.median(others)) / statistics.median(others))
    worst = max(range(len(gaps)), key=gaps.__getitem__)
    return worst if not within(gaps[worst], SPREAD_LIMIT) else None


def _spread_finding(pace: Pace) -> Finding | None:
    spread = pace.spread
    if within(spread, SPREAD_LIMIT):
        return None
    odd = odd_walk(pace)
    which = (
        "" if odd is None else f" Walk {odd + 1}, with {pace.counts[odd]:g}, is far from the rest."
    )
    return Finding(
        key="pace_spread",
        grade=Grade.FIX,
        said=f"Your counts differ by {100 * spread:.0f} % of their average.{which}",
        limit="6 % between the highest and the lowest count",
        source=OURS,
        change="Walk the course once more at your usual step.",
    )


def _course_finding(pace: Pace) -> Finding | None:
    if reaches(magnitude(pace.course, "ft"), SHORT_COURSE_FT):
        return None
    return Finding(
        key="pace_course",
        grade=Grade.FIX,
        said="The course is short, so one miscounted step matters a lot.",
        limit="30 ft (10 m) or more; 50 to 200 ft is better",
        source=OURS,
        change="Lay out a longer course on level ground and walk it again.",
    )
