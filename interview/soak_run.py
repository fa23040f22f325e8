"""One hole's soak test at one instant: how it stands, what is due, and what to do next.

Nothing is counted up: everything is worked out anew from the noted instants and the time now, so
a program closed, a sleeping computer, another time zone or summer time change nothing.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, replace
from enum import Enum

from interview.calc.hole import Hole, HoleShape
from interview.calc.readings import Interval, intervals
from interview.calc.soak import READINGS_WANTED, SoakTest
from interview.calc.soak_advice import OVERNIGHT_HOURS, Advice, advice
from interview.evidence import Cited, Source, Standing
from interview.kinds import list_lines
from interview.lines import EMPTIED, SoakEvent
from interview.model import NO_CLOCK, Answers, Unanswered
from interview.questions import soak
from interview.said_times import clock, next_morning, span, span_up, utc
from interview.soak_plan import hole_of, readings_of, set_aside, test_of
from interview.soak_rows import RunRow, rows_of
from interview.soak_wetting import Wet, Wetting, wetting
from interview.units import magnitude, quantity

FIRST_WAIT_H = Cited(1.0, Source("hourly readings are the custom", Standing.PRACTICE))
SHORTEST_WAIT_H = 5 / 60
NEXT_FALL_IN = 0.75
REFILL_BELOW_IN = Cited(2.0, Source("under 2 in a ruler tells little", Standing.OURS))
MOST_READINGS = Cited(12, Source("twelve readings are enough of any hole", Standing.OURS))
LATE_AFTER = dt.timedelta(minutes=10)
BACK_BY = dt.timedelta(seconds=59)
TOO_LONG = Cited(14.0, Source("days after which a test is not gone on with", Standing.OURS))


class State(Enum):
    """Where the run of one hole stands."""

    NOT_DUG = "not dug"
    WETTING_1 = "first soaking to be filled"
    DRAINING_1 = "first soaking draining"
    WETTING_2 = "second soaking to be filled"
    DRAINING_2 = "second soaking draining"
    READY = "ready for the timed test"
    RUNNING = "running"
    DUE = "a reading is due"
    OVERDUE = "a reading is overdue"
    REFILL = "to be filled again"
    SLOW = "slow: read it in the morning"
    SLOW_TOLD = "slow, and read long enough"
    ENOUGH_EARLY = "very fast: enough"
    SETTLED = "settled: enough"
    ENOUGH = "not settled, but enough"
    DONE = "done"
    SET_ASIDE = "set aside"


ENOUGH_STATES = (State.SLOW_TOLD, State.ENOUGH_EARLY, State.SETTLED, State.ENOUGH)
_WET_STATES = {
    Wet.FILL_1: State.WETTING_1,
    Wet.DRAINING_1: State.DRAINING_1,
    Wet.FILL_2: State.WETTING_2,
    Wet.DRAINING_2: State.DRAINING_2,
    Wet.READY: State.READY,
}


@dataclass(frozen=True)
class SoakRun:
    """Everything there is to say about one hole at one instant."""

    now: dt.datetime
    state: State
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
        return self.state in (*ENOUGH_STATES, State.DONE, State.SET_ASIDE)

    @property
    def clock_back(self) -> bool:
        """Tell whether the clock stands before the last thing noted."""
        return _is_back(self.now, self.last)

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
        if self.state is State.OVERDUE:
            return f"Reading due since {at}, {span(left)} ago. Late is as good as punctual."
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


def soak_run(view: Answers, now: dt.datetime) -> SoakRun:
    """Return how the soak test of the hole that ``view`` is seen from stands at ``now``.

    The noted times are read without a clock, so a clock set back hides nothing.
    """
    view = replace(view, now=NO_CLOCK, _values={})
    if view.get(soak.TEST_START) is not None:
        run = _timed(view, now)
    elif view.get(soak.HOLE_DEPTH) is None and view.get(soak.FILL_1_START) is None:
        run = SoakRun(
            now,
            State.NOT_DUG,
            "Dig the test hole to where the garden's floor will be, once the lines are located.",
        )
    else:
        run = _wet(wetting(view, now), now)
    last = _last(view)
    notices = _notices(view, now, last) if not run.enough else ()
    aside = set_aside(view)
    if aside:
        said = f"This hole is set aside: {aside}."
        run = replace(run, state=State.SET_ASIDE, do_now=said, and_then="", due=None)
    elif notices and _is_back(now, last):
        run = replace(run, do_now=notices[0], and_then="", due=None)
    elif last and run.began and not run.enough and _is_stale(now, last):
        run = replace(run, do_now=STALE, and_then="", due=None)
    return replace(run, last=last, notices=notices)


STALE = (
    "The soil has dried since: soak the hole twice again and start a new test, as a new hole if "
    "you want to keep these readings."
)


def _wet(found: Wetting, now: dt.datetime) -> SoakRun:
    return SoakRun(
        now,
        _WET_STATES[found.state],
        found.do_now,
        found.and_then,
        due=found.look_at,
        since=found.since,
    )


# The clock


def _last(view: Answers) -> dt.datetime | None:
    """The latest instant noted for this hole."""
    moments = (
        soak.FILL_1_START,
        soak.FILL_1_EMPTY,
        soak.FILL_2_START,
        soak.FILL_2_EMPTY,
        soak.TEST_START,
    )
    noted = [at for question in moments if (at := view.get(question))]
    noted += [event.at for event in view.get(soak.READINGS) or () if not event.struck]
    return max(noted, default=None)


def _is_back(now: dt.datetime, last: dt.datetime | None) -> bool:
    return last is not None and utc(now) < utc(last) - BACK_BY


def _is_stale(now: dt.datetime, last: dt.datetime) -> bool:
    return utc(now) - utc(last) > dt.timedelta(days=TOO_LONG.value)


def _notices(view: Answers, now: dt.datetime, last: dt.datetime | None) -> tuple[str, ...]:
    if last is None:
        return ()
    if _is_back(now, last):
        return (
            f"This computer's clock says {clock(now, now)}, but {clock(last, now)} is noted "
            "already: set the clock right, or correct the time noted; nothing is lost.",
        )
    if _is_stale(now, last):
        return (
            f"{span(utc(now) - utc(last))} have passed since the last time noted: the clock was "
            "set forward, or the test was left for long.",
        )
    if last.utcoffset() != now.utcoffset():
        return (
            f"The clock's zone changed since {last:%H:%M} was noted ({last:%z}); times are shown "
            "by the clock of now, and the waits are true.",
        )
    return ()


# The timed test


def _intervals(view: Answers) -> tuple[tuple[Interval, ...], bool, str]:
    """The intervals so far, whether the shape of the hole is known, and what is wrong."""
    shape = True
    try:
        hole = hole_of(view)
    except Unanswered:
        # The drop needs no width; only the corrected rate does.
        hole, shape = Hole(HoleShape.ROUND, quantity(8.0, "in")), False
    try:
        return intervals(hole, view[soak.WATER_AT_MARK], readings_of(view)), shape, ""
    except ValueError as wrong:
        return (), shape, str(wrong)


def _timed(view: Answers, now: dt.datetime) -> SoakRun:
    began = view[soak.TEST_START]
    base = SoakRun(now, State.RUNNING, "", began=began, since=began)
    lines = list_lines(view.text(soak.READINGS) or "")
    events = view.get(soak.READINGS) or ()
    if len(events) != len(lines):
        fault = view.fault(soak.READINGS) or _depth_wanted(view)
        rows = tuple(RunRow(place, line) for place, line in enumerate(lines, 1))
        return replace(base, do_now=fault, waits=fault, rows=rows)
    if view.get(soak.WATER_AT_MARK) is None:
        return replace(base, do_now=_depth_wanted(view), waits=_depth_wanted(view))
    found, shape, wrong = _intervals(view)
    rows = rows_of(lines, events, found, view, shape)
    base = replace(base, rows=rows, counted=sum(row.valid for row in found))
    test, waits = _test(view, wrong)
    base = replace(base, test=test, waits=waits if events else "")
    return _judged(base, view, advice(found), found, events)


def _depth_wanted(_view: Answers) -> str:
    return "Say how deep the water is at the mark; every reading is measured against it."


def _test(view: Answers, wrong: str) -> tuple[SoakTest | None, str]:
    try:
        return test_of(view), ""
    except Unanswered as gap:
        return None, wrong or gap.why or f"The corrected rate waits for: {gap.question.label}."


def _judged(
    run: SoakRun,
    view: Answers,
    told: Advice,
    found: tuple[Interval, ...],
    events: tuple[SoakEvent, ...],
) -> SoakRun:
    """Say which state the readings are in and what to do."""
    enough = _enough(run, told)
    left = view.get(soak.HOLE_LEFT)
    if left == "filled" or (left == "covered" and enough):
        done = "This test is done; readings may still be added or corrected."
        return replace(run, state=State.DONE, do_now=done)
    if enough:
        return replace(run, state=enough[0], do_now=enough[1], and_then=enough[2])
    kept = [event for event in events if not event.struck]
    last = kept[-1].at if kept else view[soak.TEST_START]
    level = _level(found, kept, view)
    if kept and level < _refill_below(view):
        return _refill(run, told, level)
    if told.slow_branch:
        return _slow(run, last)
    wait = magnitude(told.next_interval, "h") if found else _first_wait(view, run.now)
    run = replace(run, due=utc(last) + dt.timedelta(hours=wait))
    return _running(run, found, level)


def _enough(run: SoakRun, told: Advice) -> tuple[State, str, str] | None:
    test, counted = run.test, run.counted
    if told.enough_early and counted:
        said = "The water falls 6 in/h (150 mm/h) or more: one or two such readings are enough."
        return State.ENOUGH_EARLY, said, "Very fast ground: choose plants that stand drought."
    if told.slow_told:
        said = "One long reading is enough of a hole as slow as this; fill or cover the hole."
        return State.SLOW_TOLD, said, "The plan says what can be done about slow soil."
    if test is None or counted < READINGS_WANTED.value:
        return None
    if test.settled or test.within_reading_error:
        said = "The rate has settled and the readings are enough; fill or cover the hole."
        easing = "It is still easing slowly, so the lower of the two means is used."
        return State.SETTLED, said, easing if test.still_easing else ""
    if counted >= MOST_READINGS.value:
        said = "The rate never settled, but the readings are enough; fill or cover the hole."
        return State.ENOUGH, said, "The lower of the two means is used."
    return None


def _level(found: tuple[Interval, ...], kept: list[SoakEvent], view: Answers) -> float:
    """The depth of water at the last thing noted, in inches."""
    if kept and kept[-1].what == "refilled" and kept[-1].depth is not None:
        return magnitude(kept[-1].depth, "in")
    if found:
        return magnitude(found[-1].depth_after, "in")
    return magnitude(view[soak.WATER_AT_MARK], "in")


def _refill_below(view: Answers) -> float:
    return min(REFILL_BELOW_IN.value, magnitude(view[soak.WATER_AT_MARK], "in") / 3)


def _refill(run: SoakRun, told: Advice, level: float) -> SoakRun:
    wait = span_up(dt.timedelta(hours=magnitude(told.next_interval, "h")))
    if level > 0:
        said = f"Little water is left: fill to the mark again, then read after about {wait}."
        return replace(run, state=State.REFILL, do_now=said)
    said = f"The hole is empty: fill to the mark again, then read after about {wait}."
    seen = run.rows[-1].what == EMPTIED
    why = "The time it took to go counts." if seen else EMPTY_SAID
    return replace(run, state=State.REFILL, do_now=said, and_then=why)


EMPTY_SAID = (
    "It went empty some time between two looks, so that stretch gives only a least rate, at least "
    "so fast, and is left out of the mean."
)


def _slow(run: SoakRun, last: dt.datetime) -> SoakRun:
    due = next_morning(last, run.now, OVERNIGHT_HOURS)
    if utc(run.now) >= due:
        run = replace(run, due=due)
        return _running(run, (), 1.0)
    return replace(
        run,
        state=State.SLOW,
        due=due,
        do_now=f"The water hardly falls: cover the hole and read it at {clock(due, run.now)}.",
        and_then="One reading after a night tells more of slow soil than one every hour. Keep "
        "rain out of the hole.",
    )


def _running(run: SoakRun, found: tuple[Interval, ...], level: float) -> SoakRun:
    assert run.due is not None
    late = utc(run.now) - run.due
    at = clock(run.due, run.now)
    if late < dt.timedelta():
        return replace(run, state=State.RUNNING, do_now=_wait(run, at), and_then=_why(run))
    if late <= LATE_AFTER:
        said = "Read the water now."
        return replace(run, state=State.DUE, do_now=said, and_then=_why(run))
    said = "Read the water as soon as you can; the true time counts, so late is as good."
    rate = magnitude(found[-1].drop_rate, "in/h") if found else 0.0
    hours = (late.total_seconds() / 3600) + NEXT_FALL_IN / rate if rate > 0 else 0.0
    if rate * hours > level:
        said += " It may have run empty: if so, write empty, fill it again and read sooner."
    return replace(run, state=State.OVERDUE, do_now=said, and_then=_why(run))


def _wait(run: SoakRun, at: str) -> str:
    if not run.rows:
        return f"Cover the hole and take the first reading at {at}; set your phone's alarm."
    return f"Cover the hole and take the next reading at {at}."


def _why(run: SoakRun) -> str:
    test, wanted = run.test, READINGS_WANTED.value
    if test is not None and test.still_wetting:
        return "The rate is still falling, because the soil is still getting wet. Keep reading."
    if run.counted >= wanted:
        return "The last three rates are not yet within 10 % of each other. Keep reading."
    if test is not None and test.settled:
        more = wanted - run.counted
        return f"The last three agree; {more} more make it sure."
    return f"{run.counted} of {wanted} readings so far." if run.counted else ""


def _first_wait(view: Answers, now: dt.datetime) -> float:
    """Hours to the first reading: an hour, sooner where the soaking went fast."""
    gone = wetting(view, now).last_gone
    if gone is None or gone <= dt.timedelta():
        return FIRST_WAIT_H.value
    mark = magnitude(view[soak.WATER_AT_MARK], "in")
    hours = gone.total_seconds() / 3600 * NEXT_FALL_IN / mark
    return min(max(hours, SHORTEST_WAIT_H), FIRST_WAIT_H.value)
