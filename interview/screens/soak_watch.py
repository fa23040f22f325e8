"""The test holes of a garden as the screens look at them: which one runs, and what is due."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from typing import NamedTuple

from textual.content import Content

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.route import Step
from interview.garden import soak_due
from interview.garden.session import Session
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.rates import Band, SoakTest
from interview.garden.soak.results import as_felt
from interview.garden.soak.run import soak_run
from interview.garden.soak.timed import RunState, SoakRun
from interview.garden.soak.times import clock, elapsed_words, span, span_up, utc
from interview.garden.soak.words import BAND_WORDS, scale_lines, verdict
from interview.garden.soak_due import HoleTest
from interview.quantities.shown import rate_words
from interview.screens.palette import MARKS
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
    said = f"since {mark}\nat {clock(run.since, run.now)}"
    return said if short else f"{said}\nnow {run.now:%H:%M}"


class Wait(NamedTuple):
    """How far the wait for the next reading or look is."""

    before: str
    part: float
    """Nought to one."""
    after: str
    is_due: bool = False


def wait_of(run: SoakRun) -> Wait | None:
    """Return the wait for what is due next; nothing where nothing is, or the clock is behind."""
    since = run.last if run.began else run.since
    if run.due is None or run.clock_back or since is None:
        return None
    at, left = clock(run.due, run.now), utc(run.due) - utc(run.now)
    if left <= dt.timedelta():
        late = run.state is RunState.OVERDUE
        return Wait(f"due {at}", 1.0, f"{span(left)} ago" if late else "now", True)
    whole = max(utc(run.due) - utc(since), left)
    what = "next" if run.began else "look at"
    return Wait(f"{what} {at}", 1 - left / whole, span_up(left))


DUE_NOW = "○ READING DUE NOW"


def next_row(run: SoakRun) -> tuple[str, str, str] | None:
    """Return the row of the reading that is due next: clock, time since the mark, and that."""
    if run.due is None or run.began is None or run.clock_back:
        return None
    there = run.due.astimezone(run.now.tzinfo)
    same = there.date() == run.began.astimezone(run.now.tzinfo).date()
    at = f"{there:%H:%M}" if same else f"{there:%a %H:%M}"
    return f"○ {at}", elapsed_words(utc(run.due) - utc(run.began)), "due"


MARKED, UNUSED = "●", "×"
"""Before the time of a reading, and of one that is struck out or not used."""


class ReadingColumn(NamedTuple):
    """One column of the readings."""

    head: str
    keeps: int
    """The lower, the longer it stays where there is little room."""
    brief: str = ""
    """Its head where others have gone."""


def table_of(run: SoakRun, view: Answers) -> tuple[list[ReadingColumn], list[list[str]]]:
    """Return the columns of the readings, and a row for each of them."""
    rate, deep = ("mm/h", "mm") if view.metric else ("in/h", "in")
    columns = [
        ReadingColumn("  clock", 0),
        ReadingColumn("after", 4),
        ReadingColumn("water", 1),
        ReadingColumn(f"drop {deep}", 2, "drop"),
        ReadingColumn("since fill", 6),
        ReadingColumn(f"now {rate}", 3, rate),
        ReadingColumn("corrected", 5),
    ]
    clocks = clock_cells(view, run.now)
    rows = []
    for row in run.rows:
        at = clocks[row.place - 1] if row.place <= len(clocks) else row.line
        mark = UNUSED if row.struck or row.note else MARKED
        first = f"{mark} {'struck ' if row.struck else ''}{at}"
        rows.append([first, *row.cells[1:]])
    return columns, rows


def sentences(test: SoakTest, view: Answers) -> tuple[str, str]:
    """Return what a test says of the soil, and the same with its doubt in a few words."""
    full = verdict(test, as_felt(view, test), view.metric)
    plain = BAND_WORDS[test.band]
    return full, plain if full == plain else f"{plain} {DOUBTED}"


DOUBTED = "▲ It felt otherwise: M tells more."
BADGES = {
    Band.VERY_FAST: "good",
    Band.WELL_DRAINING: "good",
    Band.WORKABLE: "good",
    Band.MARGINAL: "look",
    Band.NO_FALL: "stop",
}
"""How the verdict on a soil is meant."""
_RATE_COLUMNS = 10


def verdict_of(run: SoakRun, view: Answers, columns: int, scale: bool) -> Content:
    """Return the verdict on the soil so far with its rates, and where it is on the scale."""
    test, metric = run.test, view.metric
    if test is None:
        return Content("")
    meant = BADGES[test.band]
    pieces: list[tuple[str, str]] = [
        (f" {MARKS[meant]} {test.band.value.upper()} ", f"$ground on ${meant} bold")
    ]
    rates = (
        ("Drop rate", test.drop_rate, "average", "the average of the rates since the fill"),
        ("corrected", test.corrected, "bottom only", "through the bottom alone, as in a garden"),
    )
    for name, rate, short, long in rates:
        said = rate_words(rate, metric)
        room = columns - _RATE_COLUMNS - len(said) - 2
        pieces += [("\n", ""), (f"{name:<{_RATE_COLUMNS}}", "$muted"), (said, "bold")]
        means = long if room >= len(long) else short if room >= len(short) else ""
        pieces += [(f"  {means}", "$muted")] if means else []
    if scale:
        line, under = scale_lines(test, columns, metric)
        at = line.index("●")
        pieces += [("\n\n" + line[:at], "$muted"), ("●", f"${meant} bold")]
        pieces += [(f"{line[at + 1 :]}\n{under}", "$muted")]
    return Content.assemble(*pieces)


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
