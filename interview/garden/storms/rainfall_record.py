"""Years of daily rain carried through the garden."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Sequence
from datetime import date
from functools import cache
from typing import NamedTuple

from interview.garden.pond.hyetographs import STORM_HOURS, RainSpan, StormShape, storm
from interview.garden.pond.pool import Pool
from interview.garden.storms.day_by_day import DAY_H, Above, DayByDay, Part
from interview.garden.storms.record_text import Gap, gaps_between
from interview.quantities.evidence import Provenance, Source
from interview.quantities.guards import not_negative, within
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity

GAP_SOURCE = Source(
    "over missing days the pond drains and no rain is counted, in or out", Provenance.OURS
)
_YEAR_D = 365.25
TELL_EVERY = 1000
"""Days between two words of how far the years are."""


class RecordPart(NamedTuple):
    """A part of the record: a year, or a month of the calendar over all the years."""

    number: int
    """The year, or the month from 1 to 12."""
    days: int
    """Days that the record tells of; a year not wholly in it has fewer."""
    rain: Quantity
    share_held: float
    overflow_days: int

    @property
    def year(self) -> int:
        """The number, of a year."""
        return self.number


@record
class RecordReplay:
    """What the garden would have done; volumes are of one bed, or of all the beds of a row."""

    first: date
    last: date
    days: int
    rain: Quantity
    inflow_volume: Quantity
    spill_volume: Quantity
    soaked_volume: Quantity
    standing_volume: Quantity
    """What stands at the end of the last day."""
    share_held: float
    """Share of the record's water that did not run over, nought to one."""
    overflow_days: tuple[date, ...]
    years: tuple[RecordPart, ...]
    months: tuple[RecordPart, ...]
    spells: tuple[Quantity, ...]
    """The longest unbroken time under water of the floor, then of each height asked for; nothing
    where none was."""
    depths: tuple[tuple[date, float], ...]
    """The days told, and the inches of each."""
    target: float
    """Inches to hold."""

    @property
    def gaps(self) -> tuple[Gap, ...]:
        """The days missing between the first and the last."""
        return gaps_between([day for day, _ in self.depths])

    @property
    def days_over(self) -> tuple[date, ...]:
        """Days with more rain than is to be held."""
        return tuple(day for day, depth in self.depths if not within(depth, self.target))

    @property
    def longest_rain_days(self) -> int:
        """Most days in a row with rain."""
        return _longest_run(self.depths)

    @property
    def overflow_days_a_year(self) -> float:
        """Days of overflow for each 365.25 days that the record tells of."""
        return len(self.overflow_days) * _YEAR_D / self.days

    @property
    def longest_wet_spell(self) -> Quantity:
        """The longest time with water on the floor."""
        return self.spells[0]


def replay(
    days: Sequence[tuple[date, Quantity]],
    pool: Pool,
    hours: Quantity | None = None,
    *,
    rain_to_hold: Quantity | None = None,
    heights: Sequence[Quantity] | None = (),
    beds_below: int = 0,
    shape: StormShape = StormShape.UNIFORM,
    pool_at: Callable[[Quantity], Pool] | None = None,
    tell: Callable[[int, int], None] | None = None,
) -> RecordReplay:
    """Return what a record of daily rain would have done in a garden that begins empty.

    ``pool`` is the bed the water reaches first. Each day's rain falls in the ``shape`` of a storm
    over its first ``hours``: six when not given, all at once for zero, the whole day for a Type II
    storm. ``pool_at`` gives the bed by the depth of the day's rain, where more runs off of a large
    one. Water left at night is carried into the next day. Days not in the sequence are missing: the
    pond drains over them, and they add nothing to the totals. ``rain_to_hold`` is what the garden
    holds when not given; ``heights`` are those over the floor whose wet spells are wanted, with the
    floor's own; none are where it is None. ``tell`` is called now and then with the days done, and
    all. ``beds_below`` is how many equal beds lie below the first, each taking what the one above
    it spills and the rain on itself; wet spells are those of the first. Raises ValueError for days
    out of order, a negative depth, or hours of rain that a day does not have.
    """
    long = STORM_HOURS.value
    if hours is not None:
        long = not_negative(hours, "h", "The hours of rain in a day cannot be less than zero.")
    if long > DAY_H:
        raise ValueError("A day's rain must fall within its 24 hours.")
    depths = _depths(days)
    target = magnitude(pool.rain_held if rain_to_hold is None else rain_to_hold, "in")
    above = [Above(0.0)] if heights is not None else []
    above += [Above(magnitude(height, "ft")) for height in heights or ()]
    own = magnitude(pool.inside, "ft**2")
    run = DayByDay(pool.bare, _areas(pool, pool_at), beds_below, own, _inch(shape, long), above)
    for done, (day, rain) in enumerate(depths):
        if tell is not None and done % TELL_EVERY == 0:
            tell(done, len(depths))
        if rain or day == depths[-1][0]:
            run.take(day, rain)
    return _result(run, depths, target)


def _areas(pool: Pool, pool_at: Callable[[Quantity], Pool] | None) -> Callable[[float], float]:
    """Return the area that sends water by a bare depth in inches, each depth worked out once."""
    if pool_at is None:
        always = magnitude(pool.sending_area, "ft**2")
        return lambda _: always
    return cache(lambda inches: magnitude(pool_at(quantity(inches, "in")).sending_area, "ft**2"))


def _inch(shape: StormShape, hours: float) -> tuple[RainSpan, ...]:
    """Return how an inch of rain is spread over its day; nothing for all at once."""
    if hours == 0:
        return ()
    return storm(shape, quantity(1.0, "in"), quantity(hours, "h")).spans


def _result(run: DayByDay, depths: list[tuple[date, float]], target: float) -> RecordReplay:
    days = [day for day, _ in depths]
    rain = sum(depth for _, depth in depths)
    for one in run.above:
        one.close(run.hours(days[-1]) + DAY_H)
    inflow = run.came
    return RecordReplay(
        first=days[0],
        last=days[-1],
        days=len(days),
        rain=quantity(rain, "in"),
        inflow_volume=quantity(inflow, "ft**3"),
        spill_volume=quantity(run.spill, "ft**3"),
        soaked_volume=quantity(run.soaked, "ft**3"),
        standing_volume=quantity(sum(map(run.bed.volume, run.depths)), "ft**3"),
        share_held=1 - run.spill / inflow if inflow > 0 else 1.0,
        overflow_days=tuple(run.overflow),
        years=_parts(Counter(day.year for day in days), run.years),
        months=_parts(Counter(day.month for day in days), run.months),
        spells=tuple(quantity(one.longest, "h") for one in run.above),
        depths=tuple(depths),
        target=target,
    )


def _parts(days: dict[int, int], found: dict[int, Part]) -> tuple[RecordPart, ...]:
    """Return what was found in each part of the record by its number; ``days`` are those told."""
    return tuple(
        RecordPart(
            number,
            days[number],
            quantity(part.rain, "in"),
            part.share_held,
            part.overflow_days,
        )
        for number in sorted(days)
        for part in (found[number],)
    )


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
                rain, "in", f"The rain on {day.isoformat()} is below zero. Correct it."
            )
            known[id(rain)] = inches
        if found and day <= found[-1][0]:
            raise ValueError(f"The rain record has {day.isoformat()} twice or out of order.")
        found.append((day, inches))
    return found


def _longest_run(depths: Sequence[tuple[date, float]]) -> int:
    longest = run = 0
    before: date | None = None
    for day, depth in depths:
        together = before is not None and (day - before).days == 1
        run = (run + 1 if together else 1) if depth > 0 else 0
        longest, before = max(longest, run), day
    return longest
