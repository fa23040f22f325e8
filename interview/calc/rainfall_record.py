"""Years of daily rain carried through the garden."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from interview.calc.guards import not_negative, positive
from interview.calc.hyetographs import STORM_HOURS, RainSpan
from interview.calc.pool import Piece, pieces_of
from interview.calc.record_text import BadLine, Gap, Record, gaps_between, read_record
from interview.evidence import Source, Standing
from interview.units import Quantity, magnitude, quantity

__all__ = [
    "BadLine",
    "Gap",
    "Record",
    "RecordReplay",
    "RecordYear",
    "WetSpell",
    "gaps_between",
    "read_record",
    "replay",
]

GAP_SOURCE = Source(
    "over missing days the pond drains and no rain is counted, in or out", Standing.OURS
)
_DAY_H = 24.0


@dataclass(frozen=True)
class WetSpell:
    """The longest time that water stood above a height without a break."""

    height: Quantity
    hours: Quantity
    first_day: date | None
    """The day it began; None when water never stood so high."""


@dataclass(frozen=True)
class RecordYear:
    """One year of the record; a year not wholly in it has fewer days."""

    year: int
    days: int
    rain: Quantity
    share_held: float
    overflow_days: int


@dataclass(frozen=True)
class RecordReplay:
    """What the garden would have done; depths in and over are over its mid area."""

    first: date
    last: date
    days: int
    gaps: tuple[Gap, ...]
    rain: Quantity
    inflow: Quantity
    spill: Quantity
    soaked: Quantity
    standing: Quantity
    """Depth standing at the end of the last day."""
    share_held: float
    """Share of the record's water that did not run over, nought to one."""
    overflow_days: tuple[date, ...]
    years: tuple[RecordYear, ...]
    spells: tuple[WetSpell, ...]
    """One for the floor, then one for each height asked for."""
    days_over: tuple[date, ...]
    """Days with more rain than is to be held."""
    longest_rain_days: int
    """Most days in a row with rain."""

    @property
    def longest_wet_spell(self) -> WetSpell:
        """The longest time with water on the floor."""
        return self.spells[0]


@dataclass
class _Above:
    """Keeps the longest unbroken time above one height, in hours since the record began."""

    height: float
    began: float | None = None
    longest: float = 0.0
    longest_began: float = 0.0

    def watch(self, shift: float, piece: Piece) -> None:
        low, high = sorted((piece.depth, piece.last_depth))
        if low > self.height:
            if self.began is None:
                self.began = shift + piece.start
            return
        if high <= self.height:
            self.close(shift + piece.start)
            return
        crossing = shift + piece.time_at(self.height)
        if piece.last_depth > piece.depth:
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
class _Year:
    days: int = 0
    rain: float = 0.0
    spill: float = 0.0
    overflow_days: int = 0


def replay(
    days: Sequence[tuple[date, Quantity]],
    kappa: float,
    full_depth: Quantity,
    rate: Quantity,
    hours: Quantity | None = None,
    *,
    rain_to_hold: Quantity | None = None,
    heights: Sequence[Quantity] = (),
) -> RecordReplay:
    """Return what a record of daily rain would have done in a garden that begins empty.

    ``kappa`` is the area that sends water over the area at half depth, ``full_depth`` volume over
    that area, ``rate`` the speed of soaking. Each day's rain falls evenly over its first
    ``hours``: six when not given, and all at once for zero. Water left at night is carried into
    the next day. Days not in the sequence are missing: the pond drains over them, and they add
    nothing to the totals. ``rain_to_hold`` is what the garden holds when not given. Raises
    ValueError for days out of order, a negative depth, or a garden that takes no water.
    """
    full = positive(full_depth, "in", "The pond must be deeper than zero.")
    speed = positive(rate, "in/h", "No water soaks in here, so the pond would never empty.")
    long = STORM_HOURS.value
    if hours is not None:
        long = not_negative(hours, "h", "The hours of rain in a day cannot be less than zero.")
    if not (0 < kappa < float("inf") and long <= _DAY_H):
        raise ValueError("Water must come to the garden, and a day's rain within its 24 hours.")
    depths = _depths(days)
    target = full / kappa if rain_to_hold is None else magnitude(rain_to_hold, "in")
    above = [_Above(0.0)] + [_Above(magnitude(height, "in")) for height in heights]
    run = _Run(kappa, full, speed, long, above)
    for day, rain in depths:
        run.take(day, rain)
    return run.result(depths, target, heights)


def _depths(days: Sequence[tuple[date, Quantity]]) -> list[tuple[date, float]]:
    if not days:
        raise ValueError("The rain record has no days in it.")
    # A record holds few different depths, and a conversion costs more than a lookup.
    known: dict[int, float] = {}
    found: list[tuple[date, float]] = []
    for day, rain in days:
        inches = known.get(id(rain))
        if inches is None:
            inches = not_negative(
                rain, "in", f"The rain on {day.isoformat()} is less than nothing, so mend it."
            )
            known[id(rain)] = inches
        if found and day <= found[-1][0]:
            raise ValueError(f"The rain record has {day.isoformat()} twice or out of order.")
        found.append((day, inches))
    return found


class _Run:
    """The balance day by day, in hours since the first day and inches."""

    def __init__(
        self, kappa: float, full: float, rate: float, rain_hours: float, above: list[_Above]
    ) -> None:
        self.kappa, self.full, self.rate, self.rain_hours = kappa, full, rate, rain_hours
        self.above = above
        self.first: date | None = None
        self.next_day: date | None = None
        self.depth = self.soaked = self.spill = 0.0
        self.overflow: list[date] = []
        self.years: dict[int, _Year] = {}

    def take(self, day: date, rain: float) -> None:
        if self.first is None or self.next_day is None:
            self.first = self.next_day = day
        gap = (day - self.next_day).days
        if gap:
            self._pass(self.next_day, (RainSpan(0.0, gap * _DAY_H, 0.0, 0.0),))
        over = self._day(day, rain)
        self.next_day = day + timedelta(days=1)
        year = self.years.setdefault(day.year, _Year())
        year.days += 1
        year.rain += rain
        year.spill += over
        if over > 1e-9:
            year.overflow_days += 1
            self.overflow.append(day)

    def _day(self, day: date, rain: float) -> float:
        dry = RainSpan(self.rain_hours, _DAY_H, 0.0, 0.0)
        if rain == 0 or self.rain_hours == 0:
            over = max(0.0, self.depth + self.kappa * rain - self.full)
            self.depth += self.kappa * rain - over
            self.spill += over
            return over + self._pass(day, (RainSpan(0.0, _DAY_H, 0.0, 0.0),))
        per_hour = rain / self.rain_hours
        wet = RainSpan(0.0, self.rain_hours, per_hour, per_hour)
        return self._pass(day, (wet, dry) if self.rain_hours < _DAY_H else (wet,))

    def _pass(self, day: date, spans: tuple[RainSpan, ...]) -> float:
        """Follow the pond through spans that begin with ``day``; the depth that ran over."""
        if self.depth == 0 and len(spans) == 1 and spans[0].first == 0:
            for one in self.above:
                one.close(self._hours(day))
            return 0.0
        shift, over = self._hours(day), 0.0
        for piece in pieces_of(spans, self.kappa, self.full, self.rate, self.depth):
            for one in self.above:
                one.watch(shift, piece)
            self.soaked += piece.soaked
            over += piece.spilled
            self.depth = piece.last_depth
        self.spill += over
        return over

    def _hours(self, day: date) -> float:
        return (day - (self.first or day)).days * _DAY_H

    def _spell(self, one: _Above, height: Quantity) -> WetSpell:
        began = None
        if one.longest > 0 and self.first is not None:
            began = self.first + timedelta(hours=one.longest_began)
        return WetSpell(height, quantity(one.longest, "h"), began)

    def result(
        self, depths: list[tuple[date, float]], target: float, heights: Sequence[Quantity]
    ) -> RecordReplay:
        days = [day for day, _ in depths]
        rain = sum(depth for _, depth in depths)
        for one in self.above:
            one.close(self._hours(days[-1]) + _DAY_H)
        inflow = rain * self.kappa
        return RecordReplay(
            first=days[0],
            last=days[-1],
            days=len(days),
            gaps=gaps_between(days),
            rain=quantity(rain, "in"),
            inflow=quantity(inflow, "in"),
            spill=quantity(self.spill, "in"),
            soaked=quantity(self.soaked, "in"),
            standing=quantity(self.depth, "in"),
            share_held=1 - self.spill / inflow if inflow > 0 else 1.0,
            overflow_days=tuple(self.overflow),
            years=tuple(self._year(year, found) for year, found in self.years.items()),
            spells=tuple(
                self._spell(one, height)
                for one, height in zip(self.above, (quantity(0.0, "in"), *heights), strict=True)
            ),
            days_over=tuple(day for day, depth in depths if depth > target + 1e-9),
            longest_rain_days=_longest_run(depths),
        )

    def _year(self, year: int, found: _Year) -> RecordYear:
        came = found.rain * self.kappa
        return RecordYear(
            year=year,
            days=found.days,
            rain=quantity(found.rain, "in"),
            share_held=1 - found.spill / came if came > 0 else 1.0,
            overflow_days=found.overflow_days,
        )


def _longest_run(depths: list[tuple[date, float]]) -> int:
    longest = run = 0
    before: date | None = None
    for day, depth in depths:
        together = before is not None and (day - before).days == 1
        run = (run + 1 if together else 1) if depth > 0 else 0
        longest, before = max(longest, run), day
    return longest
