"""The balance of the beds day by day, in bare hours since the first day and inches."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from datetime import date

from interview.garden.storms.beds import below_of, scaled
from interview.garden.storms.hyetographs import RainSpan
from interview.garden.storms.pool import PoolPiece, pieces_of

DAY_H = 24.0
OVER_IN = 1e-9
"""Less than this running over is rounding."""


@dataclass
class Above:
    """Keeps the longest unbroken time above one height, in hours since the record began."""

    height: float
    began: float | None = None
    longest: float = 0.0
    longest_began: float = 0.0

    def watch(self, shift: float, piece: PoolPiece, last: float) -> None:
        """Follow one piece of the balance, whose ``last`` depth is at hand."""
        if piece.depth > self.height and last > self.height:
            if self.began is None:
                self.began = shift + piece.start
            return
        if piece.depth <= self.height and last <= self.height:
            self.close(shift + piece.start)
            return
        crossing = shift + piece.time_at(self.height)
        if last > piece.depth:
            if self.began is None:
                self.began = crossing
        else:
            if self.began is None:
                self.began = shift + piece.start
            self.close(crossing)

    def close(self, now: float) -> None:
        if self.began is not None and now - self.began > self.longest + 1e-9:
            self.longest, self.longest_began = now - self.began, self.began
        self.began = None


@dataclass
class Part:
    """A part of the record, a year or a month of the calendar."""

    days: int = 0
    rain: float = 0.0
    came: float = 0.0
    spill: float = 0.0
    overflow_days: int = 0

    def take(self, rain: float, came: float, over: float) -> None:
        self.days += 1
        self.rain += rain
        self.came += came
        self.spill += over
        if over > OVER_IN:
            self.overflow_days += 1

    @property
    def share_held(self) -> float:
        return 1 - self.spill / self.came if self.came > 0 else 1.0


class DayByDay:
    """Beds one below the other (or one bed) through days of rain, empty at first.

    ``gain_at`` gives the gain of the first bed for a depth of rain, ``below`` the gains of the
    others; ``inch`` is how an inch of rain is spread over its day, nothing for all of it at once.
    """

    def __init__(
        self,
        gain_at: Callable[[float], float],
        below: tuple[float, ...],
        full: float,
        rate: float,
        inch: Sequence[RainSpan],
        above: list[Above],
    ) -> None:
        self.gain_at, self.below, self.full, self.rate = gain_at, below, full, rate
        self.inch = tuple(inch)
        self.peak = max((max(span.first, span.last) for span in inch), default=0.0)
        self.above = above
        self.first: date | None = None
        self.next_day: int | None = None
        """The day after the last one, as an ordinal: the calendar may end before it."""
        self.depths = [0.0] * (1 + len(below))
        self.came = self.soaked = self.spill = 0.0
        self.overflow: list[date] = []
        self.years: dict[int, Part] = {}
        self.months: dict[int, Part] = {}

    def take(self, day: date, rain: float) -> None:
        if self.first is None or self.next_day is None:
            self.first, self.next_day = day, day.toordinal()
        gap = day.toordinal() - self.next_day
        if gap:
            before = date.fromordinal(self.next_day)
            self._pass(before, (RainSpan(0.0, gap * DAY_H, 0.0, 0.0),))
        gain = self.gain_at(rain) if rain else 0.0
        over = self._day(day, rain, gain)
        came = rain * (gain + sum(self.below))
        self.came += came
        self.next_day = day.toordinal() + 1
        self.years.setdefault(day.year, Part()).take(rain, came, over)
        self.months.setdefault(day.month, Part()).take(rain, came, over)
        if over > OVER_IN:
            self.overflow.append(day)

    def _day(self, day: date, rain: float, gain: float) -> float:
        if rain == 0 or not self.inch:
            over = self._at_once(rain, gain) if rain else 0.0
            return over + self._pass(day, (RainSpan(0.0, DAY_H, 0.0, 0.0),))
        if not any(self.depths) and max((gain, *self.below)) * self.peak * rain <= self.rate:
            # The soil takes even the hardest of it: nothing ever stands.
            self.soaked += rain * (gain + sum(self.below))
            self._all_dry(day)
            return 0.0
        spans = scaled(self.inch, rain)
        end = spans[-1].end
        if end < DAY_H:
            spans.append(RainSpan(end, DAY_H, 0.0, 0.0))
        return self._pass(day, spans, gain)

    def _at_once(self, rain: float, first: float) -> float:
        """Pour a rain in with no time to soak; the depth that runs over the last bed."""
        over = 0.0
        for place, gain in enumerate((first, *self.below)):
            depth = self.depths[place] + gain * rain + over
            over = max(0.0, depth - self.full)
            self.depths[place] = depth - over
        self.spill += over
        return over

    def _pass(self, day: date, spans: Sequence[RainSpan], gain: float = 0.0) -> float:
        """Follow the pond through spans that begin with ``day``; the depth that ran over."""
        if not any(self.depths) and len(spans) == 1 and spans[0].first == 0:
            self._all_dry(day)
            return 0.0
        over = 0.0
        came = spans
        for place in range(len(self.depths)):
            pieces = list(pieces_of(came, gain, self.full, self.rate, self.depths[place]))
            if place == 0:
                self._watch(day, pieces)
            self.soaked += sum(piece.soaked for piece in pieces)
            over = sum(piece.spilled for piece in pieces)
            self.depths[place] = pieces[-1].last_depth
            if place < len(self.below):
                inflow = scaled(came, gain)
                own = self.below[place]
                spans, came = below_of(spans, inflow, pieces, self.rate, own)
                gain = 1.0
        self.spill += over
        return over

    def _all_dry(self, day: date) -> None:
        for one in self.above:
            one.close(self.hours(day))

    def _watch(self, day: date, pieces: Sequence[PoolPiece]) -> None:
        shift = self.hours(day)
        for piece in pieces:
            last = piece.last_depth
            for one in self.above:
                one.watch(shift, piece, last)

    def hours(self, day: date) -> float:
        return (day - (self.first or day)).days * DAY_H
