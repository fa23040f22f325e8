"""One hole's soak test at one instant: how it stands, what is due, and what to do next.

Nothing is counted up: everything is worked out anew from the noted instants and the time now, so
a program closed, a sleeping computer, another time zone or summer time change nothing.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import replace

from interview.asking.model import NO_CLOCK, Answers
from interview.garden.soak import questions as soak
from interview.garden.soak.results import set_aside
from interview.garden.soak.state import ENOUGH_STATES, RunState, SoakRun, is_back
from interview.garden.soak.timed import timed
from interview.garden.soak.times import clock, span, utc
from interview.garden.soak.wetting import Wet, Wetting, wetting
from interview.quantities.evidence import Cited, Provenance, Source

__all__ = ["ENOUGH_STATES", "RunState", "SoakRun", "soak_run"]

TOO_LONG = Cited(14.0, Source("days after which a test is not gone on with", Provenance.OURS))
_WET_STATES = {
    Wet.FILL_1: RunState.WETTING_1,
    Wet.DRAINING_1: RunState.DRAINING_1,
    Wet.FILL_2: RunState.WETTING_2,
    Wet.DRAINING_2: RunState.DRAINING_2,
    Wet.READY: RunState.READY,
}


def soak_run(view: Answers, now: dt.datetime) -> SoakRun:
    """Return how the soak test of the hole that ``view`` is seen from stands at ``now``.

    The noted times are read without a clock, so a clock set back hides nothing.
    """
    view = replace(view, now=NO_CLOCK, _values={})
    if view.get(soak.TEST_START) is not None:
        run = timed(view, now)
    elif view.get(soak.HOLE_DEPTH) is None and view.get(soak.FILL_1_START) is None:
        run = SoakRun(
            now,
            RunState.NOT_DUG,
            "Dig the test hole to where the garden's floor will be, once the lines are located.",
        )
    else:
        run = _wet(wetting(view, now), now)
    last = _last(view)
    notices = _notices(view, now, last) if not run.enough else ()
    aside = set_aside(view)
    if aside:
        said = f"This hole is set aside: {aside}."
        run = replace(run, state=RunState.SET_ASIDE, do_now=said, and_then="", due=None)
    elif notices and is_back(now, last):
        run = replace(run, do_now=notices[0], and_then="", due=None)
    elif last and run.began and not run.enough and _is_stale(now, last):
        run = replace(run, do_now=STALE, and_then="", due=None)
    do_now, and_then = view.told(run.do_now), view.told(run.and_then)
    return replace(run, do_now=do_now, and_then=and_then, last=last, notices=notices)


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


SHIFT = (
    "If it is wrong now, set the clock right. If it was ahead then, set the noted times back: T on "
    "the timing page, :shift on plain lines."
)


def _ahead(view: Answers, now: dt.datetime) -> str:
    """Name what is noted for later than ``now``, with its verb."""
    events = view.get(soak.READINGS)
    places = [
        str(at)
        for at, event in enumerate(events or (), 1)
        if not event.struck and is_back(now, event.at)
    ]
    if is_back(now, view.get(soak.TEST_START)):
        return "the start of the test is" if not places else "the start and the readings are"
    if not places:
        return "a filling is"
    if len(places) == 1:
        return f"reading {places[0]} is"
    return f"readings {', '.join(places[:-1])} and {places[-1]} are"


def _is_stale(now: dt.datetime, last: dt.datetime) -> bool:
    return utc(now) - utc(last) > dt.timedelta(days=TOO_LONG.value)


def _notices(view: Answers, now: dt.datetime, last: dt.datetime | None) -> tuple[str, ...]:
    if last is None:
        return ()
    if is_back(now, last):
        return (
            f"This computer's clock says {clock(now, now)}, but {_ahead(view, now)} noted for "
            f"later, up to {clock(last, now)}; nothing is lost. {SHIFT}",
        )
    if _is_stale(now, last):
        return (
            f"{span(utc(now) - utc(last))} have passed since the last time noted: the clock was "
            "set forward, or the test was left for long.",
        )
    if last.utcoffset() != now.utcoffset():
        return (
            f"The clock was moved since {last:%H:%M} was noted (summer time or another zone); "
            "times are shown by the clock of now, and every wait is true.",
        )
    return ()
