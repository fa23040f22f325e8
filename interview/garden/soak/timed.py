"""The timed part of a soak test: when the next reading is due, and when there are enough."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

from interview.asking.kinds import list_lines
from interview.asking.model import Answers, Unanswered
from interview.garden.soak import questions as soak
from interview.garden.soak.advice import (
    NEXT_AT_LEAST_H,
    NEXT_FALL_IN,
    OVERNIGHT_HOURS,
    Advice,
    advice,
)
from interview.garden.soak.hole import Hole, HoleShape
from interview.garden.soak.rates import READINGS_WANTED, SoakTest
from interview.garden.soak.reading_lines import EMPTIED, REFILLED, SoakEvent
from interview.garden.soak.readings import Interval, intervals
from interview.garden.soak.results import hole_of, readings_of, test_of
from interview.garden.soak.rows import RunRow, rows_of
from interview.garden.soak.state import RunState, SoakRun
from interview.garden.soak.times import clock, next_morning, span_up, utc
from interview.garden.soak.wetting import wetting
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.units import magnitude, quantity
from interview.reading import is_unknown

FIRST_WAIT_H = Cited(1.0, Source("hourly readings are the custom", Provenance.PRACTICE))
REFILL_BELOW_IN = Cited(2.0, Source("under 2 in a ruler tells little", Provenance.OURS))
MOST_READINGS = Cited(12, Source("twelve readings are enough of any hole", Provenance.OURS))
LOWER = "The lower of two means is used: of all the readings, or of the last three."
LATE_AFTER = dt.timedelta(minutes=10)
DEPTH_WANTED = "Say how deep the water is at the mark; every reading is measured against it."


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


def timed(view: Answers, now: dt.datetime) -> SoakRun:
    """Return how a timed test that has begun stands; ``view`` is read without a clock."""
    began = view[soak.TEST_START]
    base = SoakRun(now, RunState.RUNNING, "", began=began, since=began)
    kept = view.text(soak.READINGS) or ""
    lines = [] if is_unknown(kept) else list_lines(kept)
    events = view.get(soak.READINGS) or ()
    if len(events) != len(lines):
        fault = view.fault(soak.READINGS) or DEPTH_WANTED
        rows = tuple(RunRow(place, line) for place, line in enumerate(lines, 1))
        return replace(base, do_now=fault, waits=fault, rows=rows)
    if view.get(soak.WATER_AT_MARK) is None:
        return replace(base, do_now=DEPTH_WANTED, waits=DEPTH_WANTED)
    found, shape, wrong = _intervals(view) if events else ((), True, "")
    rows = rows_of(lines, events, found, view, shape)
    base = replace(base, rows=rows, counted=sum(row.valid for row in found))
    test, waits = _test(view, wrong)
    base = replace(base, test=test, waits=waits if events else "")
    return _judged(base, view, advice(found), found, events)


def _test(view: Answers, wrong: str) -> tuple[SoakTest | None, str]:
    try:
        return test_of(view), ""
    except Unanswered as gap:
        waits = gap.why or f"The corrected rate waits for: {gap.question.label}."
        return None, wrong or view.told(waits)


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
        return replace(run, state=RunState.DONE, do_now=done)
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


def _enough(run: SoakRun, told: Advice) -> tuple[RunState, str, str] | None:
    test, counted = run.test, run.counted
    if told.enough_early and counted:
        said = "The water falls 6 in/h (150 mm/h) or more: one or two such readings are enough."
        return RunState.ENOUGH_EARLY, said, "Very fast ground: choose plants that stand drought."
    if told.slow_told:
        said = "One long reading is enough of a hole as slow as this; fill or cover the hole."
        return RunState.SLOW_TOLD, said, "The plan says what can be done about slow soil."
    if test is None or counted < READINGS_WANTED.value:
        return None
    if test.steady:
        said = "The corrected rate has settled and the readings are enough; fill or cover the hole."
        easing = f"It is still easing slowly. {LOWER}"
        return RunState.SETTLED, said, easing if test.still_easing else ""
    if counted >= MOST_READINGS.value:
        said = (
            "The corrected rate never settled, but the readings are enough; fill or cover the hole."
        )
        return RunState.ENOUGH, said, LOWER
    return None


def _level(found: tuple[Interval, ...], kept: list[SoakEvent], view: Answers) -> float:
    """The depth of water at the last thing noted, in inches."""
    if kept and kept[-1].what == REFILLED and kept[-1].depth is not None:
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
        return replace(run, state=RunState.REFILL, do_now=said)
    said = f"The hole is empty: fill to the mark again, then read after about {wait}."
    seen = run.rows[-1].what == EMPTIED
    why = "The time it took to go counts." if seen else EMPTY_SAID
    return replace(run, state=RunState.REFILL, do_now=said, and_then=why)


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
        state=RunState.SLOW,
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
        return replace(run, state=RunState.RUNNING, do_now=_wait(run, at), and_then=_why(run))
    if late <= LATE_AFTER:
        said = "Read the water now."
        return replace(run, state=RunState.DUE, do_now=said, and_then=_why(run))
    said = "Read the water as soon as you can; the true time counts, so late is as good."
    rate = magnitude(found[-1].drop_rate, "in/h") if found else 0.0
    hours = (late.total_seconds() / 3600) + NEXT_FALL_IN.value / rate if rate > 0 else 0.0
    if rate * hours > level:
        said += " It may have run empty: if so, write empty, fill it again and read sooner."
    return replace(run, state=RunState.OVERDUE, do_now=said, and_then=_why(run))


def _wait(run: SoakRun, at: str) -> str:
    if not run.rows:
        return f"Cover the hole and take the first reading at {at}; set your phone's alarm."
    return f"Cover the hole and take the next reading at {at}."


def _why(run: SoakRun) -> str:
    test, wanted = run.test, READINGS_WANTED.value
    if test is not None and test.still_wetting:
        return "The corrected rate is still falling: the soil is still getting wet. Keep reading."
    if run.counted >= wanted and test is not None and test.still_easing:
        return "The corrected rate is still easing, reading by reading. Keep reading."
    if run.counted >= wanted:
        return "The last three corrected rates are not yet within 10 % of their mean. Keep reading."
    if test is not None and test.settled:
        more = wanted - run.counted
        return f"The last three corrected rates agree; {more} more make it sure."
    return f"{run.counted} of {wanted} readings so far." if run.counted else ""


def _first_wait(view: Answers, now: dt.datetime) -> float:
    """Hours to the first reading: an hour, sooner where the soaking went fast."""
    gone = wetting(view, now).last_gone
    if gone is None or gone <= dt.timedelta():
        return FIRST_WAIT_H.value
    mark = magnitude(view[soak.WATER_AT_MARK], "in")
    hours = gone.total_seconds() / 3600 * NEXT_FALL_IN.value / mark
    return min(max(hours, NEXT_AT_LEAST_H), FIRST_WAIT_H.value)
