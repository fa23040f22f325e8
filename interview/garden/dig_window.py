"""When digging may go on, and by which day new marks are asked for."""

from __future__ import annotations

import datetime as dt
from typing import NamedTuple

from interview.asking.answers import Answers
from interview.garden.afterwards import questions as review
from interview.garden.site import lines_questions as buried
from interview.garden.site.gate import locate_state
from interview.garden.site.locate import ONE_DAY, LocateState, federal_in_wait

LOOK_BACK_DAYS = 90
"""No wait is longer: 30 business days and the holidays in them are the most that is counted."""


class DigWindow(NamedTuple):
    """When digging may go on; nothing where that cannot be told yet."""

    first: dt.date | None
    """The first day to dig; as if the marks were asked for today while they are not."""
    good_until: dt.date | None
    """The last day on which the marks are good."""
    ask_by: dt.date | None
    """The last day on which to ask for marks that are there, and good, on the dig day."""
    covered: bool
    """Whether the marks there are cover the dig day; true where no day is named."""


def dig_window(answers: Answers, today: dt.date) -> DigWindow:
    """Return when digging may go on, by the marks there are and the day meant for digging."""
    whole = answers.whole()
    state = locate_state(whole)
    if state.asked is None:
        state = asked_on(whole, today)
    first, good = state.earliest, state.stale_after
    day = whole.get(review.DIG_DAY)
    covered = day is None or (first is not None and good is not None and first <= day <= good)
    return DigWindow(first, good, _ask_by(whole, day) if day else None, covered)


def asked_on(answers: Answers, day: dt.date) -> LocateState:
    """Return how it would stand if marks were asked for on ``day`` and nobody had answered."""
    whole = answers.whole()
    held = locate_state(whole)
    assumed: frozenset[dt.date] | None = None
    if whole.country == "us":
        assumed = frozenset(federal_in_wait(day, held.business_days or 1))
    elif whole.get(buried.LINES_HOLIDAYS) is not None:
        assumed = frozenset()
    return held._replace(asked=day, all_answered=None, finished=None, assumed_holidays=assumed)


def _ask_by(answers: Answers, dig_day: dt.date) -> dt.date | None:
    for back in range(1, LOOK_BACK_DAYS):
        state = asked_on(answers, dig_day - back * ONE_DAY)
        if state.earliest is None:
            return None
        if state.earliest <= dig_day:
            good = state.stale_after
            return state.asked if good is not None and dig_day <= good else None
    return None
