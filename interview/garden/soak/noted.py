"""What is noted of one hole, read without a clock and measured once: its rows and its rates.

Only a new answer changes it. What hangs on the time now is worked out from it, every second.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from interview.asking.answers import NO_CLOCK, Answers
from interview.asking.kinds import list_lines
from interview.asking.question import Unanswered
from interview.garden.soak import hole_questions as digging
from interview.garden.soak import questions as soak
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.hole import Hole, HoleShape
from interview.garden.soak.rates import SoakTest
from interview.garden.soak.reading_lines import DROP, EMPTIED, EMPTY, LEFT, REFILLED, SoakEvent
from interview.garden.soak.readings import Advice, Interval, advice, intervals
from interview.garden.soak.results import hole_of, readings_of, set_aside, test_of
from interview.garden.soak.times import elapsed_words, utc
from interview.garden.soak.words import READING_DIGITS, reading_rate
from interview.quantities.units import Quantity, magnitude, plain_number, quantity, significant
from interview.reading import is_unknown

HEADS = ("clock", "after", "water", "drop", "since fill", "since last", "corrected")
"""What the cells of a row are; rates in the unit shown."""


class RunRow(NamedTuple):
    """One line of the readings; every cell is ready to be shown."""

    place: int
    """Which line of the file, from 1."""
    line: str
    """The words kept in the file."""
    what: str = ""
    clock: str = ""
    elapsed: str = ""
    water: str = ""
    drop: str = ""
    """The fall since the reading or filling before."""
    since_fill: str = ""
    """Drop rate since the hole was last filled."""
    since_last: str = ""
    """Drop rate since the reading before."""
    corrected: str = ""
    struck: bool = False
    note: str = ""
    """Why the stretch before this reading is not used."""

    @property
    def cells(self) -> tuple[str, ...]:
        """The cells under ``HEADS``."""
        return (
            self.clock,
            self.elapsed,
            self.water,
            self.drop,
            self.since_fill,
            self.since_last,
            self.corrected,
        )


def rows_of(
    lines: Sequence[str],
    events: Sequence[SoakEvent],
    found: Sequence[Interval],
    view: Answers,
    shape_known: bool = True,
) -> tuple[RunRow, ...]:
    """Return a row for each reading, struck ones and refills too; ``found`` may be empty."""
    left = iter(found)
    rows = []
    for place, (line, event) in enumerate(zip(lines, events, strict=True), 1):
        row = _plain(place, line, event, view)
        if not event.struck and event.what != REFILLED:
            row = _rated(row, next(left, None), view, shape_known)
        rows.append(row)
    return tuple(rows)


def _plain(place: int, line: str, event: SoakEvent, view: Answers) -> RunRow:
    began = view[timing.TEST_START]
    at = event.at.astimezone(began.tzinfo)
    return RunRow(
        place,
        line,
        event.what,
        f"{at:%H:%M}" if at.date() == began.date() else f"{at:%a %H:%M}",
        elapsed_words(utc(event.at) - utc(began)),
        _water(event, view),
        struck=event.struck,
    )


def _rated(row: RunRow, match: Interval | None, view: Answers, shape_known: bool) -> RunRow:
    if match is None:
        return row
    deep, metric = "mm" if view.metric else "in", view.metric
    least = "≥ " if match.found_empty else ""
    corrected = match.corrected if shape_known else None
    fill = match.drop_rate_since_fill
    return RunRow(
        row.place,
        row.line,
        row.what,
        row.clock,
        row.elapsed,
        row.water,
        plain_number(significant(magnitude(match.drop, deep), READING_DIGITS)),
        "" if fill is None else reading_rate(fill, metric),
        least + reading_rate(match.drop_rate, metric),
        "" if corrected is None else least + reading_rate(corrected, metric),
        note=match.why_not,
    )


def _water(event: SoakEvent, view: Answers) -> str:
    """Write what was seen; a drop as the drop, because that is what was measured."""
    if event.depth is None:
        return {EMPTY: "empty", EMPTIED: "went empty"}[event.what]
    unit = "mm" if view.metric else "in"
    words = {LEFT: "", DROP: " down", REFILLED: " refilled"}[event.what]
    return f"{plain_number(round(magnitude(event.depth, unit), 3))} {unit}{words}"


class Fills(NamedTuple):
    """The two fillings that wet the soil, as far as they are noted."""

    start_1: dt.datetime | None
    empty_1: dt.datetime | None
    start_2: dt.datetime | None
    empty_2: dt.datetime | None
    soaked_already: bool
    """The wet season has done it."""

    @property
    def gone_1(self) -> dt.timedelta | None:
        """How long the first filling took to go."""
        return _took(self.start_1, self.empty_1)

    @property
    def gone_2(self) -> dt.timedelta | None:
        """How long the second filling took to go."""
        return _took(self.start_2, self.empty_2)

    @property
    def gone(self) -> dt.timedelta | None:
        """How long the last filling took; nothing while it drains or where none was wanted."""
        if self.soaked_already:
            return None
        return self.gone_1 if self.start_2 is None else self.gone_2

    @property
    def times(self) -> list[dt.datetime]:
        """The instants noted, in no order."""
        return [at for at in (self.start_1, self.empty_1, self.start_2, self.empty_2) if at]


def _took(start: dt.datetime | None, end: dt.datetime | None) -> dt.timedelta | None:
    return utc(end) - utc(start) if start and end else None


class Timed(NamedTuple):
    """The timed test of one hole, as far as it is noted."""

    began: dt.datetime
    """When the water stood at the mark."""
    mark: Quantity | None
    """How deep it was then."""
    events: tuple[SoakEvent, ...] = ()
    found: tuple[Interval, ...] = ()
    told: Advice | None = None
    """What the intervals advise; nothing where the readings cannot be measured yet."""
    rows: tuple[RunRow, ...] = ()
    test: SoakTest | None = None
    waits: str = ""
    """What keeps the rates from being worked out."""

    @property
    def counted(self) -> int:
        """How many intervals count."""
        return sum(row.valid for row in self.found)


class Noted(NamedTuple):
    """What is noted of one hole."""

    dug: bool
    fills: Fills
    timed: Timed | None
    """Nothing until the test has begun."""
    left: str | None
    """How the hole was left."""
    aside: str
    """Why the hole is not used; nothing where it counts."""

    @property
    def last(self) -> dt.datetime | None:
        """The latest instant noted that counts."""
        times = self.fills.times
        if self.timed:
            times.append(self.timed.began)
            times += [event.at for event in self.timed.events if not event.struck]
        return max(times, default=None)


def noted(view: Answers) -> Noted:
    """Return what is noted of the hole that ``view`` is seen from.

    It is read without a clock, so a clock set back hides nothing. Values already read with a
    clock are left out for that, and the result may be kept for every instant.
    """
    name = f"noted of {view.address(timing.READINGS)}"
    return view.once(name, lambda: _noted(replace(view, now=NO_CLOCK, _values={})))


def _noted(view: Answers) -> Noted:
    fills = Fills(
        view.get(timing.FILL_1_START),
        view.get(timing.FILL_1_EMPTY),
        view.get(timing.FILL_2_START),
        view.get(timing.FILL_2_EMPTY),
        view.get(timing.SOAKED_ALREADY) is True,
    )
    return Noted(
        view.get(digging.HOLE_DEPTH) is not None,
        fills,
        _timed(view),
        view.get(soak.HOLE_LEFT),
        set_aside(view),
    )


def _timed(view: Answers) -> Timed | None:
    began = view.get(timing.TEST_START)
    if began is None:
        return None
    kept = view.text(timing.READINGS) or ""
    lines = [] if is_unknown(kept) else list_lines(kept)
    events = view.get(timing.READINGS) or ()
    mark = view.get(timing.WATER_AT_MARK)
    if len(events) != len(lines):
        fault = view.fault(timing.READINGS) or timing.DEPTH_WANTED
        rows = tuple(RunRow(place, line) for place, line in enumerate(lines, 1))
        return Timed(began, mark, events, rows=rows, waits=fault)
    if mark is None:
        return Timed(began, None, events, waits=timing.DEPTH_WANTED)
    found, shape, wrong = _intervals(view) if events else ((), True, "")
    rows = rows_of(lines, events, found, view, shape)
    test, waits = _test(view, wrong)
    return Timed(began, mark, events, found, advice(found), rows, test, waits if events else "")


def _intervals(view: Answers) -> tuple[tuple[Interval, ...], bool, str]:
    """The intervals so far, whether the shape of the hole is known, and what is wrong."""
    shape = True
    try:
        hole = hole_of(view)
    except Unanswered:
        # The drop needs no width; only the corrected rate does.
        hole, shape = Hole(HoleShape.ROUND, quantity(8.0, "in")), False
    try:
        return intervals(hole, view[timing.WATER_AT_MARK], readings_of(view)), shape, ""
    except ValueError as wrong:
        return (), shape, str(wrong)


def _test(view: Answers, wrong: str) -> tuple[SoakTest | None, str]:
    try:
        return test_of(view), ""
    except Unanswered as gap:
        waits = gap.why or f"The corrected rate needs one more answer: {gap.question.label}."
        return None, wrong or view.told(waits)
