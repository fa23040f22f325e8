"""The balance of the beds day by day, in bare hours since the first day and feet.

Rain is in inches, as records have it; volumes are cubic feet.
"""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Callable, Sequence
from datetime import date
from functools import lru_cache
from typing import NamedTuple

from interview.garden.pond.hyetographs import RainSpan
from interview.garden.pond.pieces import PoolPiece
from interview.garden.pond.pool import IN_A_FOOT, YEARS_STEPS, BarePool, FlowSpan, flows, pieces_of
from interview.garden.storms.beds import below_of
from interview.quantities.records import record

DAY_H = 24.0
OVER_FT3 = 1e-9
"""Less than this running over is rounding."""
ALIKE = 256
"""Rains kept with what became of them: gauges count hundredths, so one rain comes again and again
into beds as dry as before."""

SHORT = 8
"""Parts of a day's rain, at the least, in which is seen whether all of it soaks away."""


@record(frozen=False)
class Above:
    """Keeps the longest unbroken time above one height, in hours since the record began."""

    height: float
    began: float | None = None
    longest: float = 0.0

    def watch(self, shift: float, piece: PoolPiece) -> None:
        """Follow one piece of the balance."""
        wet = piece.wet_between(self.height)
        if wet is None:
            self.close(shift + piece.start)
            return
        begins, ends = wet
        if self.began is None:
            self.began = shift + begins
        if ends < piece.end:
            self.close(shift + ends)

    def may_be_longest(self, start: float, end: float) -> bool:
        """Tell whether what stands within these hours, or stood before, may last the longest."""
        return end - (start if self.began is None else self.began) > self.longest

    def close(self, now: float) -> None:
        if self.began is not None:
            self.longest = max(self.longest, now - self.began)
        self.began = None


@record(frozen=False)
class Part:
    """A part of the record, a year or a month of the calendar."""

    rain: float = 0.0
    came: float = 0.0
    spill: float = 0.0
    overflow_days: int = 0

    def take(self, rain: float, came: float, over: float) -> None:
        self.rain += rain
        self.came += came
        self.spill += over
        if over > OVER_FT3:
            self.overflow_days += 1

    @property
    def share_held(self) -> float:
        return 1 - self.spill / self.came if self.came > 0 else 1.0


class Passed(NamedTuple):
    """What became of a stretch of rain: the balance of the first bed, of all what soaked in, what
    ran over the last, and the depths that are left."""

    pieces: tuple[PoolPiece, ...]
    soaked: float
    over: float
    depths: tuple[float, ...]


class RoutedSpan(NamedTuple):
    """A short part of an inch of rain, in bare hours of its day and inches."""

    start: float
    end: float
    fall: float
    hardest: float
    """Inches an hour in it, at the most."""
    later: float
    """The same of all that falls after it."""


class DayByDay:
    """Beds one below the other (or one bed) through days of rain, empty at first.

    Days without rain need not be told: the next one that is, or the last, dries the beds up to it.

    ``area_at`` gives the area whose rain comes to the first bed for a depth of rain, ``own`` is
    that of each of the beds ``below``; ``inch`` is how an inch of rain is spread over its day,
    nothing for all of it at once.
    """

    def __init__(
        self,
        bed: BarePool,
        area_at: Callable[[float], float],
        below: int,
        own: float,
        inch: Sequence[RainSpan],
        above: list[Above],
    ) -> None:
        self.bed, self.area_at, self.below, self.own = bed, area_at, below, own
        self.inch = tuple(inch)
        self.steps = _steps(self.inch)
        self.above = above
        self.holds = bed.volume(bed.full)
        self.holds_below = [bed.volume(one.height) for one in above]
        self.first: date | None = None
        self.next_day: int | None = None
        """The day after the last one, as an ordinal: the calendar may end before it."""
        self.depths = [0.0] * (1 + below)
        self.came = self.soaked = self.spill = 0.0
        self.overflow: list[date] = []
        self.years: defaultdict[int, Part] = defaultdict(Part)
        self.months: defaultdict[int, Part] = defaultdict(Part)
        self._passed = lru_cache(maxsize=ALIKE)(self._through)
        self._stands = lru_cache(maxsize=ALIKE)(self._standing)

    def take(self, day: date, rain: float) -> None:
        if self.next_day is None:
            self.first, self.next_day = day, day.toordinal()
        gap = day.toordinal() - self.next_day
        if gap:
            self._drain(date.fromordinal(self.next_day), gap * DAY_H)
        area = self.area_at(rain) if rain else 0.0
        over = self._day(day, rain, area)
        came = rain / IN_A_FOOT * (area + self.below * self.own)
        self.came += came
        self.next_day = day.toordinal() + 1
        self.years[day.year].take(rain, came, over)
        self.months[day.month].take(rain, came, over)
        if over > OVER_FT3:
            self.overflow.append(day)

    def _day(self, day: date, rain: float, area: float) -> float:
        if rain == 0 or not self.inch:
            over = self._at_once(rain, area) if rain else 0.0
            self._drain(day, DAY_H)
            return over
        if self._soaks_away(day, rain, area):
            self.soaked += sum(map(self.bed.volume, self.depths))
            self.soaked += rain / IN_A_FOOT * (area + self.below * self.own)
            self.depths = [0.0] * len(self.depths)
            return 0.0
        spans = [
            RainSpan(one.start, one.end, rain * one.first, rain * one.last) for one in self.inch
        ]
        end = spans[-1].end
        if end < DAY_H:
            spans.append(RainSpan(end, DAY_H, 0.0, 0.0))
        return self._pass(day, spans, area)

    def _soaks_away(self, day: date, rain: float, area: float) -> bool:
        """Tell whether a rain is surely gone by night, and nothing of it is to be told.

        Nothing runs over, nor stands longer than water stood before. That is seen of the first bed:
        no more comes to those below, and none of them is ever deeper.
        """
        held = self.bed.volume(self.depths[0])
        wet, dry, most = self._stands(area * rain / IN_A_FOOT, held)
        if not most:
            self._all_dry(day)
            return True
        if dry > DAY_H or most > self.holds:
            return False
        start = self.hours(day)
        gone = [
            (one, start + dry if most > below else start)
            for one, below in zip(self.above, self.holds_below, strict=True)
        ]
        if any(one.may_be_longest(start + wet, at) for one, at in gone):
            return False
        for one, at in gone:
            one.close(at)
        return True

    def _standing(self, by: float, held: float) -> tuple[float, float, float]:
        """Return from when till when water comes to stand at the most, and the most of it.

        ``by`` is what an inch of rain brings, ``held`` what stands before. Only the floor counts as
        taking water, and in a step that may bring more than that not what falls in it.
        """
        takes, most = self.bed.soak(0.0), held
        wet, dry = DAY_H, math.inf
        for begins, ends, fall, hardest, later in self.steps:
            held -= takes * (ends - begins)
            if by * hardest > takes:
                wet = min(wet, begins)
                held = max(0.0, held) + by * fall
                most = max(most, held)
            else:
                held = max(0.0, held + by * fall)
            if by * later < takes:
                dry = min(dry, ends + held / (takes - by * later))
        return wet, min(dry, ends + self.bed.depth_of(held) / self.bed.rate), most

    def _at_once(self, rain: float, first: float) -> float:
        """Pour a rain in with no time to soak; the volume that runs over the last bed."""
        over = 0.0
        for place, depth in enumerate(self.depths):
            area = self.own if place else first
            holds = self.bed.volume(depth) + rain / IN_A_FOOT * area + over
            over = max(0.0, holds - self.holds)
            self.depths[place] = self.bed.full if over else self.bed.depth_of(holds)
        self.spill += over
        return over

    def _drain(self, day: date, hours: float) -> None:
        """Follow the pond through dry hours that begin with ``day``."""
        if any(self.depths):
            self._pass(day, (RainSpan(0.0, hours, 0.0, 0.0),), 0.0)
        else:
            self._all_dry(day)

    def _pass(self, day: date, spans: Sequence[RainSpan], area: float) -> float:
        """Follow the pond through spans that begin with ``day``; the volume that ran over."""
        passed = self._passed(tuple(spans), area, tuple(self.depths))
        self._watch(day, passed.pieces)
        self.depths = list(passed.depths)
        self.soaked += passed.soaked
        self.spill += passed.over
        return passed.over

    def _through(
        self, spans: tuple[RainSpan, ...], area: float, depths: tuple[float, ...]
    ) -> Passed:
        """Follow the beds through spans of rain, from ``depths`` on."""
        over = soaked = 0.0
        left: list[float] = []
        came: Sequence[FlowSpan] = flows(spans, area)
        own: Sequence[FlowSpan] = flows(spans, self.own)
        first: tuple[PoolPiece, ...] = ()
        for place, depth in enumerate(depths):
            pieces = tuple(pieces_of(self.bed, came, depth, YEARS_STEPS))
            first = first or pieces
            soaked += sum(piece.soaked for piece in pieces)
            over = sum(piece.spilled for piece in pieces)
            left.append(pieces[-1].last_depth)
            if place < self.below:
                own, came = below_of(self.bed, own, came, pieces)
        return Passed(first, soaked, over, tuple(left))

    def _all_dry(self, day: date) -> None:
        for one in self.above:
            one.close(self.hours(day))

    def _watch(self, day: date, pieces: Sequence[PoolPiece]) -> None:
        shift = self.hours(day)
        for piece in pieces:
            for one in self.above:
                one.watch(shift, piece)

    def hours(self, day: date) -> float:
        return (day - (self.first or day)).days * DAY_H


def _steps(inch: Sequence[RainSpan]) -> list[RoutedSpan]:
    """Return an inch of rain in short parts of its day."""
    found: list[RoutedSpan] = []
    parts = math.ceil(SHORT / max(1, len(inch)))
    for span in reversed(inch):
        long, more = (span.end - span.start) / parts, (span.last - span.first) / parts
        for place in reversed(range(parts)):
            start, first = span.start + place * long, span.first + place * more
            fall, hardest = long * (first + more / 2), first + max(0.0, more)
            later = max(found[-1].hardest, found[-1].later) if found else 0.0
            found.append(RoutedSpan(start, start + long, fall, hardest, later))
    return found[::-1]
