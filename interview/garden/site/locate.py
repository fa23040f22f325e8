"""When the buried lines are marked and digging may start; holidays in the wait."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from datetime import date, timedelta
from enum import Enum
from typing import NamedTuple

from interview.garden.site.locating import (
    DEFAULT_BUSINESS_DAYS,
    DEFAULT_VALID_WORKING_DAYS,
    Counted,
)
from interview.quantities.evidence import Provenance, Source
from interview.reading import said_day

FEDERAL_SOURCE = Source(
    "5 United States Code 6103, as told on Federal Holidays, US Office of Personnel Management, "
    "web page: a Saturday's holiday is kept on Friday, a Sunday's on Monday",
    Provenance.SECONDARY,
)

_ON_A_DATE = {
    (1, 1): "New Year's Day",
    (6, 19): "Juneteenth",
    (7, 4): "Independence Day",
    (11, 11): "Veterans Day",
    (12, 25): "Christmas Day",
}
_ON_A_WEEKDAY = {
    (1, 0, 3): "the birthday of Martin Luther King, Jr.",
    (2, 0, 3): "Washington's Birthday",
    (5, 0, -1): "Memorial Day",
    (9, 0, 1): "Labor Day",
    (10, 0, 2): "Columbus Day",
    (11, 3, 4): "Thanksgiving Day",
}
"""Month, day of the week from Monday as 0, and which one of the month; -1 is the last."""


def _kept(day: date) -> date:
    """Return the working day on which a holiday that falls on ``day`` is kept."""
    return day + {5: -ONE_DAY, 6: ONE_DAY}.get(day.weekday(), timedelta(0))


def _nth(year: int, month: int, weekday: int, place: int) -> date:
    if place < 0:
        return _nth(year, month + 1, weekday, 1) - 7 * ONE_DAY
    first = date(year, month, 1)
    return first + timedelta((weekday - first.weekday()) % 7 + 7 * (place - 1))


def federal_holidays(first: date, last: date) -> Mapping[date, str]:
    """Return the federal holidays kept from ``first`` to ``last``, both counted, by their day.

    By the law in force since 2021, for those who work Monday to Friday. Holidays of the states and
    Inauguration Day are not among them.
    """
    found = {}
    for year in range(first.year, last.year + 2):
        for (month, day), name in _ON_A_DATE.items():
            found[_kept(date(year, month, day))] = name
        for (month, weekday, place), name in _ON_A_WEEKDAY.items():
            found[_nth(year, month, weekday, place)] = name
    return {day: found[day] for day in sorted(found) if first <= day <= last}


def federal_in_wait(asked: date, business_days: int) -> Mapping[date, str]:
    """Return the federal holidays that lengthen the wait for the marks, from the day after.

    Raises ValueError for a wait outside 1 to 30 days.
    """
    near = federal_holidays(asked + ONE_DAY, date(asked.year + 1, 12, 31))
    end = earliest_dig_day(asked, business_days, near)
    return {day: name for day, name in near.items() if day < end}


ONE_DAY = timedelta(days=1)


def _is_business_day(day: date, holidays: Collection[date]) -> bool:
    return day.weekday() < 5 and day not in holidays


def _business_day_after(start: date, count: int, holidays: Collection[date]) -> date:
    day = start
    while count > 0:
        day += ONE_DAY
        if _is_business_day(day, holidays):
            count -= 1
    return day


def earliest_dig_day(asked: date, business_days: int, holidays: Collection[date] = ()) -> date:
    """Return the first day digging may start.

    The day of the request is not counted. Digging may start the day after the last of the
    ``business_days`` full business days, Monday to Friday without ``holidays``; that first day
    may itself be a Saturday or a holiday.
    """
    return _business_day_after(asked, business_days, holidays) + ONE_DAY


def marks_stale_after(finished: date, working_days: int, holidays: Collection[date] = ()) -> date:
    """Return the last day the marks may be trusted, counted in working days after ``finished``.

    The day the marking was finished is not counted.
    """
    return _business_day_after(finished, working_days, holidays)


def marks_stale_after_calendar(start: date, days: int) -> date:
    """Return the last day the marks may be trusted, counted in calendar days after ``start``."""
    return start + days * ONE_DAY


class PrivateLines(Enum):
    """What is known of the lines the marking service does not mark."""

    NONE = "none"
    KEPT_CLEAR = "known and kept clear"
    UNKNOWN = "unknown"


class Cause(Enum):
    """What keeps the gate shut."""

    NOT_ASKED = "no request yet"
    REQUEST_TO_COME = "a request dated in the future"
    WAITING = "the waiting time"
    SILENT = "an owner who has not answered"
    MARKED_TOO_SOON = "marks dated before the request"
    MARKED_TO_COME = "marks dated in the future"
    PRIVATE = "private lines"
    STALE = "marks gone stale"
    WAIT_UNKNOWN = "a waiting time not known"
    HOLIDAYS_UNKNOWN = "holidays not known"
    STALE_BEFORE_OPEN = "marks that end before the wait"


class LocateState(NamedTuple):
    """What has been done about the buried lines so far; ``None`` where it is not known yet."""

    asked: date | None = None
    all_answered: bool | None = None
    finished: date | None = None
    """The day the last owner answered; the day of the request stands in when it is not known."""
    private_lines: PrivateLines | None = None
    business_days: int | None = DEFAULT_BUSINESS_DAYS
    """The full business days to wait; ``None`` where only the ticket can tell them."""
    valid_days: int = DEFAULT_VALID_WORKING_DAYS
    counted: Counted = Counted.FROM_MARKING
    """How ``valid_days`` are counted."""
    holidays: frozenset[date] = frozenset()
    """Days named that are no business days."""
    assumed_holidays: frozenset[date] | None = frozenset()
    """Further such days taken for the wait alone; ``None`` where it is not known which."""

    @property
    def earliest(self) -> date | None:
        """The first day digging may start.

        ``None`` before the request, and where the wait or its holidays are not known.
        """
        if self.asked is None or self.business_days is None or self.assumed_holidays is None:
            return None
        return earliest_dig_day(
            self.asked, self.business_days, self.holidays | self.assumed_holidays
        )

    @property
    def stale_after(self) -> date | None:
        """The last day the marks may be trusted; ``None`` before the request.

        The days run from the request or, by choice, from the day the marking was finished. Only
        then do holidays make them longer, and only named ones: the service may work on others.
        """
        start = self.finished or self.asked
        if start is None:
            return None
        if self.counted is Counted.FROM_MARKING:
            return marks_stale_after(start, self.valid_days, self.holidays)
        if self.counted is Counted.CALENDAR:
            return marks_stale_after_calendar(self.asked or start, self.valid_days)
        return marks_stale_after(self.asked or start, self.valid_days)


class DigGate(NamedTuple):
    """Whether digging may start today, and every reason why not."""

    reasons: tuple[str, ...]
    """One sentence each; empty when the gate is open."""
    causes: tuple[Cause, ...]
    """The cause of each reason."""
    earliest: date | None
    """The first day digging may start: after the wait, and not before the last owner's answer."""
    stale_after: date | None


def dig_gate(state: LocateState, today: date) -> DigGate:
    """Return whether digging may start on ``today``.

    Open only when the request was made, the waiting time is over, every owner has answered,
    private lines are known or absent, and the marks are not stale.
    """
    found = _request_reasons(state, today) + _ground_reasons(state, today)
    earliest, stale = state.earliest, state.stale_after
    return DigGate(
        reasons=tuple(said for _, said in found),
        causes=tuple(cause for cause, _ in found),
        earliest=None if earliest is None else max(earliest, state.finished or earliest),
        stale_after=stale,
    )


_Reasons = list[tuple[Cause, str]]


def _request_reasons(state: LocateState, today: date) -> _Reasons:
    if state.asked is None:
        return [(Cause.NOT_ASKED, "You have not yet asked for the buried lines to be marked.")]
    if state.asked > today:
        said = (
            f"The day of your request, {said_day(state.asked)}, has not come yet: check the date."
        )
        return [(Cause.REQUEST_TO_COME, said)]
    reasons: _Reasons = []
    if state.business_days is None:
        said = "How many business days to wait is not known: your ticket says it."
        reasons.append((Cause.WAIT_UNKNOWN, said))
    if state.assumed_holidays is None:
        said = (
            "Which public holidays fall in the wait is not known: look at a calendar and write "
            "them, or none."
        )
        reasons.append((Cause.HOLIDAYS_UNKNOWN, said))
    earliest = state.earliest
    if earliest is not None and today < earliest:
        said = f"The owners have until {said_day(earliest)} to answer: wait until then."
        reasons.append((Cause.WAITING, said))
    if not state.all_answered:
        said = (
            "Not all owners of buried lines have answered, and no answer does not mean that the "
            "ground is clear."
        )
        reasons.append((Cause.SILENT, said))
    return reasons


def _ground_reasons(state: LocateState, today: date) -> _Reasons:
    reasons: _Reasons = []
    if state.finished is not None:
        if state.asked is not None and state.finished < state.asked:
            said = "The lines cannot be marked before you asked: check the two dates."
            reasons.append((Cause.MARKED_TOO_SOON, said))
        elif state.finished > today:
            said = (
                f"The marks were finished on {said_day(state.finished)}, which has not come yet: "
                "check the date."
            )
            reasons.append((Cause.MARKED_TO_COME, said))
    if state.private_lines in (None, PrivateLines.UNKNOWN):
        said = "Where your own buried lines run is not known: find out before you dig."
        reasons.append((Cause.PRIVATE, said))
    stale, earliest = state.stale_after, state.earliest
    if stale is not None and earliest is not None and stale < earliest:
        said = (
            f"The marks are taken as good until {said_day(stale)} and the wait ends on "
            f"{said_day(earliest)}: write how long they stay good by your ticket."
        )
        reasons.append((Cause.STALE_BEFORE_OPEN, said))
    elif stale is not None and today > stale:
        reasons.append(
            (Cause.STALE, f"The marks were good only until {said_day(stale)}: ask for new marks.")
        )
    return reasons
