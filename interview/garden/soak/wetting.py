"""Wetting the soil before the timed test: two fillings, and when one or none will do."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import Enum

from interview.asking.model import Answers
from interview.garden.soak import questions as soak
from interview.garden.soak.times import clock, span, utc
from interview.quantities.evidence import Cited, Provenance, Source

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


class Wet(Enum):
    """How far the wetting is."""

    FILL_1 = "first soaking to be filled"
    DRAINING_1 = "first soaking draining"
    FILL_2 = "second soaking to be filled"
    DRAINING_2 = "second soaking draining"
    READY = "ready for the timed test"


@dataclass(frozen=True)
class Wetting:
    """How far the wetting is, in words."""

    state: Wet
    do_now: str
    and_then: str = ""
    look_at: dt.datetime | None = None
    """The next time to look at the hole."""
    since: dt.datetime | None = None
    """When the filling that is draining was made."""
    sandy: bool = False
    """Both fillings were gone within ten minutes."""
    slow: bool = False
    """A filling stood 12 hours or more."""
    last_gone: dt.timedelta | None = None
    """How long the last whole filling took."""


@dataclass(frozen=True)
class _Fills:
    start_1: dt.datetime | None
    gone_1: dt.timedelta | None
    start_2: dt.datetime | None
    gone_2: dt.timedelta | None
    last: dt.datetime | None
    """The last of the noted times."""


def _fills(view: Answers) -> _Fills:
    start_1, empty_1 = view.get(soak.FILL_1_START), view.get(soak.FILL_1_EMPTY)
    start_2, empty_2 = view.get(soak.FILL_2_START), view.get(soak.FILL_2_EMPTY)
    return _Fills(
        start_1,
        _took(start_1, empty_1),
        start_2,
        _took(start_2, empty_2),
        max((at for at in (start_1, empty_1, start_2, empty_2) if at), default=None),
    )


def _took(start: dt.datetime | None, end: dt.datetime | None) -> dt.timedelta | None:
    return utc(end) - utc(start) if start and end else None


def wetting(view: Answers, now: dt.datetime) -> Wetting:
    """Return how far the wetting of one hole is, and what to do now."""
    if view.get(soak.SOAKED_ALREADY) is True:
        return Wetting(
            Wet.READY,
            "The wet season has soaked this soil, so go straight to the timed test: fill to the "
            "mark and note the time.",
        )
    fills = _fills(view)
    if fills.start_2 is not None:
        return _second(fills, now)
    if fills.start_1 is None:
        return Wetting(
            Wet.FILL_1,
            "Scratch the walls, fill the hole with water for the first soaking, and note the time.",
            "Dry soil drinks fast at first. Two fillings wet it, so that the third one tells how "
            "fast it really takes water.",
        )
    if fills.gone_1 is None:
        return _draining(Wet.DRAINING_1, fills.start_1, now)
    if fills.gone_1 >= _hours(STANDS_H.value[0]):
        return _soaked_by_standing(fills.gone_1)
    return Wetting(
        Wet.FILL_2,
        "Fill the hole a second time and note the time.",
        f"The first filling took {span(fills.gone_1)}; the second usually takes longer.",
        last_gone=fills.gone_1,
    )


def _hours(number: float) -> dt.timedelta:
    return dt.timedelta(hours=number)


def _second(fills: _Fills, now: dt.datetime) -> Wetting:
    assert fills.start_2 is not None
    if fills.gone_2 is None:
        return _draining(Wet.DRAINING_2, fills.start_2, now)
    sand = dt.timedelta(minutes=SAND_MINUTES.value)
    if fills.gone_1 is not None and fills.gone_1 <= sand and fills.gone_2 <= sand:
        return Wetting(
            Wet.READY,
            "Both fillings were gone within 10 minutes, so this is sandy soil that needs no more "
            "wetting: fill to the mark at once and note the time.",
            "Stay beside the hole; the first reading is due in minutes.",
            sandy=True,
            last_gone=fills.gone_2,
        )
    if fills.gone_2 >= _hours(STANDS_H.value[0]):
        return _soaked_by_standing(fills.gone_2)
    if fills.last and utc(now) - utc(fills.last) > _hours(DRIES_AFTER_H.value):
        return Wetting(
            Wet.READY,
            "The soil has had more than a day to dry since the soaking: fill it once more, let it "
            "drain, then fill to the mark and note the time.",
            last_gone=fills.gone_2,
        )
    return Wetting(
        Wet.READY,
        "The soil is wet through: fill to the mark and note the time.",
        f"The second filling took {span(fills.gone_2)}.",
        last_gone=fills.gone_2,
    )


def _soaked_by_standing(time: dt.timedelta) -> Wetting:
    return Wetting(
        Wet.READY,
        f"The filling took {span(time)} to go: the soil is wet through, and slow. Fill to the "
        "mark and note the time.",
        "One filling is enough here. Expect to read it again only the next morning.",
        slow=True,
        last_gone=time,
    )


def _draining(state: Wet, start: dt.datetime, now: dt.datetime) -> Wetting:
    stood = utc(now) - utc(start)
    first, day = (_hours(one) for one in STANDS_H.value)
    if stood >= day:
        return Wetting(
            state,
            "If water still stands after a day, this soil is too slow as it is: top up to the "
            "mark, note the time, and read it once the next morning.",
            "A garden here needs the soil mended, or another spot. The reading gives the number "
            "for it. If the hole is empty by now, note when you think it went.",
            since=start,
            slow=True,
        )
    if stood >= first:
        return Wetting(
            state,
            "If water still stands after 12 hours, no second filling is needed: the soil is "
            "soaked, and slow. Top up to the mark and note the time.",
            "If the hole is empty by now, note when you think it went.",
            _next_look(start, now),
            start,
            slow=True,
        )
    look = _next_look(start, now)
    return Wetting(
        state,
        f"Let it drain; look again at {clock(look, now)}, and note when the last water is gone."
        if look
        else "Let it drain, and note when the last water is gone.",
        "Cover the hole when you leave it. If you miss the moment, write the time you think best.",
        look,
        start,
    )


def _next_look(start: dt.datetime, now: dt.datetime) -> dt.datetime | None:
    looks = (utc(start) + dt.timedelta(minutes=one) for one in LOOKS_MIN)
    return next((look for look in looks if look > utc(now)), None)
