"""One hole's soak test at one instant: its rows, what is due, and what to do. No screen here."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from interview import route
from interview.calc.soak import READINGS_WANTED, Band, Interval, SoakTest
from interview.kinds import list_lines
from interview.lines import DROP, EMPTIED, EMPTY, LEFT, REFILLED, SoakEvent
from interview.model import Answers, Unanswered
from interview.questions import soak
from interview.route import Step
from interview.screens.words import clock, hours_minutes, span
from interview.session import Session
from interview.soak_plan import test_of
from interview.units import Quantity, magnitude, plain_number, significant

FIRST_INTERVAL = dt.timedelta(hours=1)
"""The wait for the first reading: hourly readings are the custom."""
BAND_WORDS = {
    Band.VERY_FAST: "The water goes very fast: sandy ground. Water plants more in dry weeks.",
    Band.WELL_DRAINING: "The soil drains well: good ground for a rain garden.",
    Band.WORKABLE: "Workable: the pond will be shallower, and the garden wider.",
    Band.MARGINAL: "Marginal: slow soil. The plan will say whether it can do.",
    Band.NO_FALL: "No fall could be measured so far.",
}


@dataclass(frozen=True)
class Row:
    """One reading as the table shows it."""

    line: str
    """The words kept in the file."""
    clock: str
    elapsed: str
    water: str
    drop: str = ""
    rate: str = ""
    corrected: str = ""
    struck: bool = False


@dataclass(frozen=True)
class Watch:
    """Everything the page of one hole shows, worked out anew for each instant."""

    now: dt.datetime
    began: dt.datetime | None
    rows: tuple[Row, ...] = ()
    test: SoakTest | None = None
    last: dt.datetime | None = None
    """The last reading or refill that counts."""
    over: bool = False
    """True once the person has said how the hole was left."""
    waits: str = ""
    """What keeps the rates from being worked out."""

    @property
    def elapsed(self) -> dt.timedelta | None:
        """The time since the water stood at the mark."""
        return self.now - self.began if self.began else None

    @property
    def clock_back(self) -> bool:
        """Tell whether the clock stands before the last thing noted."""
        last = self.last or self.began
        return last is not None and self.now < last - dt.timedelta(seconds=59)

    @property
    def due(self) -> dt.datetime | None:
        """The instant of the next reading; nothing where none is wanted."""
        if self.began is None or self.over or self.finished:
            return None
        wait = FIRST_INTERVAL
        if self.test is not None:
            wait = dt.timedelta(hours=magnitude(self.test.advice.next_interval, "h"))
        return (self.last or self.began) + wait

    @property
    def counted(self) -> int:
        """How many intervals between readings count."""
        return sum(1 for row in self.test.intervals if row.valid) if self.test else 0

    @property
    def finished(self) -> bool:
        """Tell whether the readings are enough."""
        if self.test is None:
            return False
        enough = self.counted >= READINGS_WANTED.value and self.test.settled
        return enough or self.test.advice.enough_early

    def due_words(self) -> str:
        """Say when the next reading is due."""
        if self.clock_back:
            return (
                "This computer's clock stands before the last time noted, so it was set back. "
                "Check the clock; the readings are safe."
            )
        if self.due is None:
            return "No more readings are needed." if self.began else ""
        left = self.due - self.now
        if left.total_seconds() <= 0:
            return f"READING DUE since {clock(self.due, self.now)} ({span(left)} ago)."
        left += dt.timedelta(seconds=59)  # the minutes left are rounded up, so 0 min is never said
        return f"Next reading in {span(left)}, at {clock(self.due, self.now)}."

    def meaning(self, answers: Answers) -> str:
        """Say in a sentence what the rates mean."""
        if self.test is None:
            return self.waits
        unit = "mm/h" if answers.metric else "in/h"
        drop, corrected = (
            plain_number(significant(magnitude(one, unit), 2, "down"))
            for one in (self.test.drop_rate, self.test.corrected)
        )
        return (
            f"Drop rate {drop} {unit}; corrected rate, through the bottom alone, "
            f"{corrected} {unit}. {BAND_WORDS[self.test.band]}"
        )

    def advice(self) -> str:
        """Say what to do next."""
        if self.began is None:
            return "Fill to the mark, then press S at the moment the water stands there."
        if self.over:
            return "The hole is closed. Readings may still be corrected."
        if self.test is None:
            return (
                "Read the water in about an hour, or sooner if it has fallen 3/4 in (20 mm). "
                "Late is as good as punctual: the true time counts."
            )
        if self.test.advice.enough_early:
            return "So fast that one or two readings are enough. Escape, and go on."
        if self.finished:
            return "The rate has settled and the readings are enough. Escape, and go on."
        if self.test.advice.slow_branch:
            return "The water hardly falls. Cover the hole and read it again in the morning."
        if self.test.still_wetting:
            return "The rate is still falling as the soil gets wet. Keep reading."
        return f"Keep reading: {self.counted} of {READINGS_WANTED.value} so far."


def watch(view: Answers, now: dt.datetime) -> Watch:
    """Return the state of the hole that ``view`` is seen from."""
    began = view.get(soak.TEST_START)
    over = (view.get(soak.HOLE_LEFT) or "") in ("filled", "covered")
    lines = list_lines(view.text(soak.READINGS) or "")
    events = view.get(soak.READINGS) or ()
    if began is None:
        return Watch(now, None, over=over)
    if len(events) != len(lines):
        fault = view.fault(soak.READINGS) or ""
        rows = tuple(Row(line, "", "", line) for line in lines) if fault else ()
        return Watch(now, began, rows, over=over, waits=fault)
    test, waits = None, ""
    try:
        test = test_of(view)
    except Unanswered as gap:
        waits = gap.why if events and gap.why else ""
        if not waits and gap.question is not soak.READINGS:
            waits = f"The rates wait for: {gap.question.label.lower()}."
    found = test.intervals if test else ()
    rows = tuple(
        _row(line, event, began, found, view) for line, event in zip(lines, events, strict=True)
    )
    last = max((event.at for event in events if not event.struck), default=None)
    return Watch(now, began, rows, test, last, over, waits)


def running(session: Session) -> Step | None:
    """Return the readings of a soak test that is under way, or nothing."""
    answers = session.answers
    for step in route.steps(answers):
        if step.question is soak.READINGS and not session.shut(step):
            view = step.view(answers)
            if view.get(soak.HOLE_LEFT) is None and watch(view, session.now).due is not None:
                return step
    return None


def _row(
    line: str,
    event: SoakEvent,
    began: dt.datetime,
    found: tuple[Interval, ...],
    view: Answers,
) -> Row:
    at = event.at.astimezone(began.tzinfo)
    past = event.at - began
    time = f"{at:%H:%M}" if at.date() == began.date() else f"{at:%a %H:%M}"
    row = Row(line, time, hours_minutes(past), _water(event, view), struck=event.struck)
    hours = past.total_seconds() / 3600
    match = next((one for one in found if abs(magnitude(one.end, "h") - hours) < 1e-6), None)
    if event.struck or match is None or event.what == REFILLED:
        return row
    rate, deep = ("mm/h", "mm") if view.metric else ("in/h", "in")
    bound = "≥ " if match.found_empty else ""
    return Row(
        line,
        time,
        row.elapsed,
        row.water,
        _number(match.drop, deep),
        bound + _number(match.drop_rate, rate),
        "" if match.corrected is None else bound + _number(match.corrected, rate),
    )


def _number(value: Quantity, unit: str) -> str:
    return plain_number(significant(magnitude(value, unit), 3))


def _water(event: SoakEvent, view: Answers) -> str:
    """Write what was seen; a drop as the drop, because that is what was measured."""
    if event.what in (EMPTY, EMPTIED):
        return "empty" if event.what == EMPTY else "went empty"
    assert event.depth is not None
    unit = "mm" if view.metric else "in"
    words = {LEFT: "", DROP: " down", REFILLED: " refilled"}[event.what]
    return f"{plain_number(round(magnitude(event.depth, unit), 3))} {unit}{words}"
