"""How one soak test stands at one instant: when a reading is due, when there are enough."""

from __future__ import annotations

import datetime as dt
from enum import Enum
from typing import NamedTuple

from interview.garden.soak.noted import Fills, Noted, RunRow, Timed
from interview.garden.soak.rates import READINGS_WANTED, SoakTest
from interview.garden.soak.reading_lines import EMPTIED, REFILLED, SoakEvent
from interview.garden.soak.readings import (
    NEXT_AT_LEAST_H,
    NEXT_FALL_IN,
    OVERNIGHT_HOURS,
    Advice,
    Interval,
)
from interview.garden.soak.times import clock, next_morning, span, span_up, utc
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.units import magnitude

BACK_BY = dt.timedelta(seconds=59)
"""A clock this little behind is not told."""


class RunState(Enum):
    """Where the run of one hole stands."""

    NOT_DUG = "not dug"
    WETTING_1 = "fill the hole the first time"
    DRAINING_1 = "first filling draining"
    WETTING_2 = "fill the hole the second time"
    DRAINING_2 = "second filling draining"
    READY = "ready for the timed test"
    RUNNING = "running"
    DUE = "a reading is due"
    OVERDUE = "a reading is overdue"
    REFILL = "fill the hole again"
    SLOW = "slow: read it in the morning"
    SLOW_TOLD = "slow, and read long enough"
    ENOUGH_EARLY = "very fast: enough"
    SETTLED = "settled: enough"
    ENOUGH = "not settled, but enough"
    DONE = "done"
    SET_ASIDE = "set aside"


ENOUGH_STATES = (RunState.SLOW_TOLD, RunState.ENOUGH_EARLY, RunState.SETTLED, RunState.ENOUGH)


class SoakRun(NamedTuple):
    """Everything there is to say about one hole at one instant."""

    now: dt.datetime
    state: RunState
    do_now: str
    """What is due now, one sentence."""
    and_then: str = ""
    """Why, or what comes after; may be empty."""
    due: dt.datetime | None = None
    """The instant of the next reading, or the next look at a filling; none where none is due."""
    began: dt.datetime | None = None
    """When the water stood at the mark."""
    since: dt.datetime | None = None
    """What the big clock counts from: the mark, or the filling that drains."""
    last: dt.datetime | None = None
    """The last thing noted that counts."""
    notices: tuple[str, ...] = ()
    """The clock that jumped, the zone that changed."""
    rows: tuple[RunRow, ...] = ()
    counted: int = 0
    """How many intervals count."""
    test: SoakTest | None = None
    waits: str = ""
    """What keeps the rates from being worked out."""

    @property
    def elapsed(self) -> dt.timedelta | None:
        """The true time since ``since``; nothing where none runs or the clock was set back."""
        if self.since is None or utc(self.now) < utc(self.since):
            return None
        return utc(self.now) - utc(self.since)

    @property
    def enough(self) -> bool:
        """Tell whether no more readings are wanted."""
        return self.state in (*ENOUGH_STATES, RunState.DONE, RunState.SET_ASIDE)

    @property
    def clock_back(self) -> bool:
        """Tell whether the clock stands before the last thing noted."""
        return is_back(self.now, self.last)

    @property
    def due_words(self) -> str:
        """When the next reading or look is due: the wait and the clock time; may be empty."""
        if self.due is None or self.clock_back:
            return ""
        at, left = clock(self.due, self.now), utc(self.due) - utc(self.now)
        if self.began is None:
            return f"Look again at {at}, in {span_up(left)}." if left > dt.timedelta() else ""
        if left > dt.timedelta():
            return f"Next reading at {at}, in {span_up(left)}."
        if self.state is RunState.OVERDUE:
            return f"Reading due since {at}, {span(left)} ago. Late is as good as on time."
        return f"Reading due now ({at})."

    @property
    def short(self) -> str:
        """The state for a window's title: a few words."""
        if self.due is None or self.clock_back:
            return self.state.value
        left = utc(self.due) - utc(self.now)
        if left <= dt.timedelta():
            return "READING DUE"
        return f"{'look' if self.began is None else 'reading'} in {span_up(left)}"


def is_back(now: dt.datetime, last: dt.datetime | None) -> bool:
    """Tell whether ``now`` is before the last time noted."""
    return last is not None and utc(now) < utc(last) - BACK_BY


FIRST_WAIT_H = Cited(1.0, Source("hourly readings are the custom", Provenance.PRACTICE))
REFILL_BELOW_IN = Cited(2.0, Source("under 2 in a ruler tells little", Provenance.OURS))
MOST_READINGS = Cited(12, Source("twelve readings are enough of any hole", Provenance.OURS))
LOWER = "The plan takes the lower of two averages: of all the readings, or of the last three."
LATE_AFTER = dt.timedelta(minutes=10)


def timed(hole: Noted, noted: Timed, now: dt.datetime) -> SoakRun:
    """Return how the timed test of ``hole`` stands."""
    run = SoakRun(
        now,
        RunState.RUNNING,
        noted.waits,
        began=noted.began,
        since=noted.began,
        rows=noted.rows,
        counted=noted.counted,
        test=noted.test,
        waits=noted.waits,
    )
    return run if noted.told is None else _judged(run, hole, noted, noted.told)


def _judged(run: SoakRun, hole: Noted, noted: Timed, told: Advice) -> SoakRun:
    """Say which state the readings are in and what to do."""
    assert noted.mark is not None
    enough = _enough(run, told)
    if hole.left == "filled" or (hole.left == "covered" and enough):
        done = "This test is done; you may still add or correct readings."
        return run._replace(state=RunState.DONE, do_now=done)
    if enough:
        return run._replace(state=enough[0], do_now=enough[1], and_then=enough[2])
    kept = [event for event in noted.events if not event.struck]
    last = kept[-1].at if kept else noted.began
    agreed = run.test is not None and run.test.settled
    if hole.left == "covered" and agreed and _on_a_later_day(run.now, last):
        # Nobody sits by it any more, and the plan has its rate.
        done = "This test is done: its last three corrected rates agree. You may still add more."
        return run._replace(state=RunState.DONE, do_now=done)
    mark = magnitude(noted.mark, "in")
    level = _level(noted.found, kept, mark)
    if kept and level < min(REFILL_BELOW_IN.value, mark / 3):
        return _refill(run, told, level)
    if told.slow_branch:
        return _slow(run, last)
    wait = magnitude(told.next_interval, "h") if noted.found else _first_wait(hole.fills, mark)
    run = run._replace(due=utc(last) + dt.timedelta(hours=wait))
    return _running(run, noted.found, level)


def _on_a_later_day(now: dt.datetime, last: dt.datetime) -> bool:
    return now.date() > last.astimezone(now.tzinfo).date()


def _enough(run: SoakRun, told: Advice) -> tuple[RunState, str, str] | None:
    test, counted = run.test, run.counted
    if told.enough_early and counted:
        said = "The water falls 6 in/h (150 mm/h) or more: one or two such readings are enough."
        return (
            RunState.ENOUGH_EARLY,
            said,
            ("The soil is very fast: choose plants that can stand drought."),
        )
    if told.slow_told:
        said = (
            "One long reading is enough for a hole as slow as this: fill in the hole or cover it."
        )
        return RunState.SLOW_TOLD, said, "The plan says what can be done about slow soil."
    if test is None or counted < READINGS_WANTED.value:
        return None
    if test.settled:
        said = (
            "The corrected rate has settled, so you have enough readings: fill in the hole or "
            "cover it."
        )
        return RunState.SETTLED, said, ""
    if counted >= MOST_READINGS.value:
        said = (
            "The corrected rate never settled, but you have enough readings: fill in the hole or "
            "cover it."
        )
        return RunState.ENOUGH, said, LOWER
    return None


def _level(found: tuple[Interval, ...], kept: list[SoakEvent], mark: float) -> float:
    """The depth of water at the last thing noted, in inches."""
    if kept and kept[-1].what == REFILLED and kept[-1].depth is not None:
        return magnitude(kept[-1].depth, "in")
    if found:
        return magnitude(found[-1].depth_after, "in")
    return mark


def _refill(run: SoakRun, told: Advice, level: float) -> SoakRun:
    wait = span_up(dt.timedelta(hours=magnitude(told.next_interval, "h")))
    if level > 0:
        said = f"Little water is left: fill to the fill level again, then read after about {wait}."
        return run._replace(state=RunState.REFILL, do_now=said)
    said = f"The hole is empty: fill to the fill level again, then read after about {wait}."
    seen = run.rows[-1].what == EMPTIED
    why = "The time the water took to go is used." if seen else EMPTY_SAID
    return run._replace(state=RunState.REFILL, do_now=said, and_then=why)


EMPTY_SAID = (
    "It went empty some time between two readings. So the soil is at least that fast, but how "
    "much faster is not known, and this reading is left out of the average."
)


def _slow(run: SoakRun, last: dt.datetime) -> SoakRun:
    due = next_morning(last, run.now, OVERNIGHT_HOURS)
    if utc(run.now) >= due:
        run = run._replace(due=due)
        return _running(run, (), 1.0)
    return run._replace(
        state=RunState.SLOW,
        due=due,
        do_now=f"The water hardly falls: cover the hole and read it at {clock(due, run.now)}.",
        and_then="With slow soil one reading after a night tells more than one every hour. Keep "
        "rain out of the hole.",
    )


def _running(run: SoakRun, found: tuple[Interval, ...], level: float) -> SoakRun:
    assert run.due is not None
    late = utc(run.now) - run.due
    at = clock(run.due, run.now)
    if late < dt.timedelta():
        return run._replace(state=RunState.RUNNING, do_now=_wait(run, at), and_then=_why(run))
    if late <= LATE_AFTER:
        said = "Read the water now."
        return run._replace(state=RunState.DUE, do_now=said, and_then=_why(run))
    said = "Read the water as soon as you can; late is as good, because the true time is used."
    rate = magnitude(found[-1].drop_rate, "in/h") if found else 0.0
    hours = (late.total_seconds() / 3600) + NEXT_FALL_IN.value / rate if rate > 0 else 0.0
    if rate * hours > level:
        said += " The hole may be empty. If so, write empty, fill it again and read sooner."
    return run._replace(state=RunState.OVERDUE, do_now=said, and_then=_why(run))


def _wait(run: SoakRun, at: str) -> str:
    if not run.rows:
        return f"Cover the hole and take the first reading at {at}; set your phone's alarm."
    return f"Cover the hole and take the next reading at {at}."


def _why(run: SoakRun) -> str:
    test, wanted = run.test, READINGS_WANTED.value
    if test is not None and test.still_wetting:
        return "The corrected rate is still falling: the soil is still getting wet. Keep reading."
    if run.counted >= wanted:
        return (
            "The last three corrected rates are not yet within 10 % of their average. Keep reading."
        )
    if test is not None and test.settled:
        more = wanted - run.counted
        return f"The last three corrected rates agree. {more} more will make sure."
    return f"{run.counted} of {wanted} readings so far." if run.counted else ""


def _first_wait(fills: Fills, mark: float) -> float:
    """Hours to the first reading: an hour, sooner where the soaking went fast."""
    gone = fills.gone
    if gone is None or gone <= dt.timedelta():
        return FIRST_WAIT_H.value
    hours = gone.total_seconds() / 3600 * NEXT_FALL_IN.value / mark
    return min(max(hours, NEXT_AT_LEAST_H), FIRST_WAIT_H.value)
