"""The federal holidays of the United States, and those that fall in a waiting time."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date, timedelta

from interview.garden.site.locate import ONE_DAY, earliest_dig_day
from interview.quantities.evidence import Provenance, Source

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
    if place > 0:
        first = date(year, month, 1)
        return first + timedelta((weekday - first.weekday()) % 7 + 7 * (place - 1))
    last = date(year, month + 1, 1) - ONE_DAY
    return last - timedelta((last.weekday() - weekday) % 7)


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
    # Twice the days and a month hold the weekends and the holidays of any wait.
    near = federal_holidays(asked + ONE_DAY, asked + timedelta(2 * business_days + 30))
    end = earliest_dig_day(asked, business_days, near)
    return {day: name for day, name in near.items() if day < end}
