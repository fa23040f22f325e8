"""The test holes of a garden as the screens look at them: which one runs, and what is due."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.route import Step
from interview.garden import soak_due
from interview.garden.session import Session
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.results import as_felt
from interview.garden.soak.run import SoakRun, soak_run
from interview.garden.soak.times import clock, utc
from interview.garden.soak.words import verdict
from interview.garden.soak_due import HoleTest
from interview.quantities.shown import rate_words
from interview.screens.words import item_name

AHEAD = dt.timedelta(minutes=5)
"""So long before it is due a reading is told of on the other pages."""


def holes(session: Session) -> list[Step]:
    """Return the readings of every test hole that is asked of."""
    return [step for step in route.steps(session.answers) if step.question is timing.READINGS]


def run_of(session: Session, step: Step) -> SoakRun:
    """Return how the test of one hole stands now."""
    return soak_run(step.view(session.answers), session.now)


def tests_of(session: Session) -> list[HoleTest]:
    """Return every test hole that is asked of, and how each stands now."""
    return soak_due.holes(session.answers, session.now)


def under_way(session: Session, tests: Sequence[HoleTest] | None = None) -> list[HoleTest]:
    """Return the holes that are to be looked at some time, of ``tests`` where they are known."""
    of = tests_of(session) if tests is None else tests
    return soak_due.awaited(of, session.answers, session.now.date())


def to_go_on_with(session: Session) -> tuple[str, Step] | None:
    """Return the hole that is to be looked at first, and the address of what is noted then."""
    found = soak_due.first(session.answers, session.now)
    return (found.address, found.step) if found else None


def due_words(session: Session) -> str:
    """Say which hole is to be looked at now or in a few minutes, or nothing."""
    said = []
    for test in under_way(session):
        run = test.run
        if run.due is not None and utc(run.due) - utc(run.now) <= AHEAD:
            said.append(f"{item_name(session, test.step)}: {run.due_words}")
    if not said:
        return ""
    return f"SOAK TEST, {' '.join(said)} F3 on its questions opens the timing page."


def call_words(session: Session, step: Step, run: SoakRun) -> str:
    """Say in a few words which hole is to be looked at now."""
    what = "Read the water." if run.began else "Look whether the water is gone."
    return f"{item_name(session, step)}: {what}"


def wetting_step(step: Step, run: SoakRun) -> tuple[str, str] | None:
    """Return the address of the time of wetting that is next, and the words of its button."""
    question = soak_due.FILLS.get(run.state)
    if question is None:
        return None
    words = "Filled now" if question in (timing.FILL_1_START, timing.FILL_2_START) else "Empty now"
    return f"{step.address.rsplit('.', 1)[0]}.{question.key}", words


def clock_cells(view: Answers, now: dt.datetime) -> list[str]:
    """Return the clock time of each reading by this computer's own zone."""
    found = []
    began = view.get(timing.TEST_START)
    for event in view.get(timing.READINGS) or ():
        at = event.at.astimezone(now.tzinfo)
        same = began is not None and at.date() == began.astimezone(now.tzinfo).date()
        found.append(f"{at:%H:%M}" if same else f"{at:%a %H:%M}")
    return found


def zone_words(run: SoakRun) -> str:
    """Say whose times are shown where the file was written in another zone."""
    began = run.began
    if began is None:
        return ""
    here, there = began.astimezone(run.now.tzinfo).utcoffset(), began.utcoffset()
    if here == there or here is None or there is None:
        return ""
    return f"Times are this computer's, {_zone(here)}; the file has them as {_zone(there)}."


def _zone(offset: dt.timedelta) -> str:
    minutes = int(offset.total_seconds()) // 60
    hours, rest = divmod(abs(minutes), 60)
    return f"UTC{'-' if minutes < 0 else '+'}{hours}" + (f":{rest:02}" if rest else "")


def since_words(run: SoakRun, short: bool = False) -> str:
    """Say from when the big clock counts, and what time it is where there is room for it."""
    if run.since is None:
        return "The timed test has not begun." if run.began is None else ""
    mark = "the start" if run.began else "the filling"
    if utc(run.now) < utc(run.since):
        at = clock(run.since, run.now)
        return f"{mark.capitalize()} was at {at}, but it is {run.now:%H:%M} now."
    said = f"since {mark} at {clock(run.since, run.now)}"
    return said if short else f"{said}; now {run.now:%H:%M:%S}"


def meaning(run: SoakRun, view: Answers) -> str:
    """Say in a sentence what the rates of the hole of ``view`` mean so far."""
    metric = view.metric
    if run.test is None:
        return run.waits
    drop, corrected = (rate_words(one, metric) for one in (run.test.drop_rate, run.test.corrected))
    return (
        f"Drop rate {drop}: the average of the rates since you filled the hole. Corrected rate "
        f"{corrected}: through the bottom alone, as in a wide garden. "
        f"{verdict(run.test, as_felt(view, run.test), metric)}"
    )
