"""One hole's soak test at one instant: how it stands, what is due, and what to do next.

Nothing is counted up: everything is worked out from the noted instants and the time now, so a
program closed, a sleeping computer, another time zone or summer time change nothing.
"""

from __future__ import annotations

import datetime as dt

from interview.asking.answers import Answers
from interview.garden.soak.noted import Fills, Noted, noted
from interview.garden.soak.timed import RunState, SoakRun, is_back, timed
from interview.garden.soak.times import clock, span, utc
from interview.quantities.evidence import Cited, Provenance, Source
from interview.reading.echo import word_list

TOO_LONG = Cited(14.0, Source("days after which a test is not gone on with", Provenance.OURS))


def soak_run(view: Answers, now: dt.datetime) -> SoakRun:
    """Return how the soak test of the hole that ``view`` is seen from stands at ``now``."""
    hole = noted(view)
    if hole.timed is not None:
        run = timed(hole, hole.timed, now)
    elif not hole.dug and hole.fills.start_1 is None:
        run = SoakRun(
            now,
            RunState.NOT_DUG,
            "Dig the test hole to where the garden's floor will be, once the lines are located.",
        )
    else:
        run = wetting(hole.fills, now)
    last = hole.last
    notices = _notices(hole, now, last) if not run.enough else ()
    if hole.aside:
        said = f"This hole is set aside: {hole.aside}."
        run = run._replace(state=RunState.SET_ASIDE, do_now=said, and_then="", due=None)
    elif notices and is_back(now, last):
        run = run._replace(do_now=notices[0], and_then="", due=None)
    elif last and run.began and not run.enough and _is_stale(now, last):
        run = run._replace(do_now=STALE, and_then="", due=None)
    do_now, and_then = view.told(run.do_now), view.told(run.and_then)
    return run._replace(do_now=do_now, and_then=and_then, last=last, notices=notices)


STALE = (
    "The soil has dried since then: soak the hole twice again and start a new test, as a new hole "
    "if you want to keep these readings."
)

# The clock

SHIFT = (
    "If the clock is wrong now, correct it. If it was ahead then, move the noted times back: "
    "press T on the timing page, or type :shift on plain lines."
)


def _ahead(hole: Noted, now: dt.datetime) -> str:
    """Name what is noted for later than ``now``, with its verb."""
    if hole.timed is None:
        return "a filling is"
    places = [
        str(at)
        for at, event in enumerate(hole.timed.events, 1)
        if not event.struck and is_back(now, event.at)
    ]
    if is_back(now, hole.timed.began):
        return "the start of the test is" if not places else "the start and the readings are"
    if not places:
        return "a filling is"
    if len(places) == 1:
        return f"reading {places[0]} is"
    return f"readings {word_list(places)} are"


def _is_stale(now: dt.datetime, last: dt.datetime) -> bool:
    return utc(now) - utc(last) > dt.timedelta(days=TOO_LONG.value)


def _notices(hole: Noted, now: dt.datetime, last: dt.datetime | None) -> tuple[str, ...]:
    if last is None:
        return ()
    if is_back(now, last):
        return (
            f"This computer's clock says {clock(now, now)}, but {_ahead(hole, now)} noted for "
            f"later, up to {clock(last, now)}. Nothing is lost. {SHIFT}",
        )
    if _is_stale(now, last):
        return (
            f"{span(utc(now) - utc(last))} have passed since the last noted time. Either the clock "
            "was set forward, or the test was left alone for a long time.",
        )
    if last.utcoffset() != now.utcoffset():
        return (
            f"The clock was changed since {last:%H:%M} was noted (summer time or another zone); "
            "times are shown by the clock as it is now, and every wait is still right.",
        )
    return ()


SAND_MINUTES = Cited(
    10.0,
    Source(
        "North Dakota Administrative Code 62-03.1-03-05: no soaking is needed in sandy soil where "
        "a filling seeps away in less than ten minutes; asked here of both fillings",
        Provenance.PUBLISHED,
    ),
)
STANDS_H = Cited(
    (12.0, 24.0),
    Source(
        "How to Build a Rain Garden, hand-out, undated: a hole empty within 12 h is well, within "
        "12 to 24 h the soil wants amending, after more than 24 h choose another place",
        Provenance.SECONDARY,
    ),
)
DRIES_AFTER_H = Cited(
    24.0,
    Source("percolation tests are run within a day of the soaking", Provenance.PRACTICE),
)
LOOKS_MIN = (10, 30, 60, 120, 240, 480, 720, 1440)
"""When to look whether a filling is gone, minutes after it: a choice of this project."""


def wetting(fills: Fills, now: dt.datetime) -> SoakRun:
    """Return how far the wetting of one hole is, and what to do now."""
    if fills.soaked_already:
        return SoakRun(
            now,
            RunState.READY,
            "The wet season has soaked this soil, so go straight to the timed test: fill the hole "
            "to the fill level and note the time.",
        )
    if fills.start_2 is not None:
        return _second(fills, now)
    if fills.start_1 is None:
        return SoakRun(
            now,
            RunState.WETTING_1,
            "Scratch the walls, fill the hole with water to soak the soil, and note the time.",
            "Dry soil drinks fast at first. Two fillings soak it, so that the third one shows how "
            "fast it really takes water.",
        )
    if fills.gone_1 is None:
        return _draining(RunState.DRAINING_1, fills.start_1, now)
    if fills.gone_1 >= _hours(STANDS_H.value[0]):
        return _soaked_by_standing(fills.gone_1, now)
    return SoakRun(
        now,
        RunState.WETTING_2,
        "Fill the hole a second time and note the time.",
        f"The first filling took {span(fills.gone_1)}; the second usually takes longer.",
    )


def _hours(number: float) -> dt.timedelta:
    return dt.timedelta(hours=number)


def _second(fills: Fills, now: dt.datetime) -> SoakRun:
    assert fills.start_2 is not None
    if fills.gone_2 is None:
        return _draining(RunState.DRAINING_2, fills.start_2, now)
    sand = dt.timedelta(minutes=SAND_MINUTES.value)
    if fills.gone_1 is not None and fills.gone_1 <= sand and fills.gone_2 <= sand:
        return SoakRun(
            now,
            RunState.READY,
            "Both fillings were gone within 10 minutes, so the soil is sandy and needs no more "
            "soaking: fill to the fill level at once and note the time.",
            "Stay beside the hole: the first reading is due in a few minutes.",
        )
    if fills.gone_2 >= _hours(STANDS_H.value[0]):
        return _soaked_by_standing(fills.gone_2, now)
    if utc(now) - utc(max(fills.times)) > _hours(DRIES_AFTER_H.value):
        return SoakRun(
            now,
            RunState.READY,
            "The soil has had more than a day to dry since you soaked it: fill the hole once "
            "more, let it drain, then fill to the fill level and note the time.",
        )
    return SoakRun(
        now,
        RunState.READY,
        "The soil is soaked: fill to the fill level and note the time.",
        f"The second filling took {span(fills.gone_2)}.",
    )


def _soaked_by_standing(time: dt.timedelta, now: dt.datetime) -> SoakRun:
    return SoakRun(
        now,
        RunState.READY,
        f"The water took {span(time)} to go, so the soil is soaked, and slow: fill to the fill "
        "level and note the time.",
        "One filling is enough here. The next reading will probably be tomorrow morning.",
    )


def _draining(state: RunState, start: dt.datetime, now: dt.datetime) -> SoakRun:
    stood = utc(now) - utc(start)
    first, day = (_hours(one) for one in STANDS_H.value)
    if stood >= day:
        return SoakRun(
            now,
            state,
            "If water still stands after a day, this soil is too slow as it is: fill up to the "
            "fill level, note the time, and read it once the next morning.",
            "A garden here needs better soil, or another spot. The reading shows how slow it is. "
            "If the hole is empty by now, note when you think the water was gone.",
            since=start,
        )
    if stood >= first:
        return SoakRun(
            now,
            state,
            "If water still stands after 12 hours, you need no second filling, for the soil is "
            "soaked, and slow: fill up to the fill level and note the time.",
            "If the hole is empty by now, note when you think the water was gone.",
            due=_next_look(start, now),
            since=start,
        )
    look = _next_look(start, now)
    return SoakRun(
        now,
        state,
        f"Let it drain; look again at {clock(look, now)}, and note when the last water is gone."
        if look
        else "Let it drain, and note when the last water is gone.",
        (
            "Cover the hole when you leave it. If you miss the moment, write your best guess of "
            "the time."
        ),
        due=look,
        since=start,
    )


def _next_look(start: dt.datetime, now: dt.datetime) -> dt.datetime | None:
    looks = (utc(start) + dt.timedelta(minutes=one) for one in LOOKS_MIN)
    return next((look for look in looks if look > utc(now)), None)
