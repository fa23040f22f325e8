"""Days as people say them from today: Saturday, two days ago, in two weeks."""

from __future__ import annotations

import datetime as dt
import re
from enum import Enum
from typing import NamedTuple

from interview.reading.text import Refused, in_digits, taken
from interview.reading.times import MONTHS, WEEKDAYS, day_month_year, read_date

IT_HAPPENED = "Write the day it happened."
_EXAMPLE = "1 May 2026"
_AWAY = {"today": 0, "yesterday": -1, "tomorrow": 1}
_BEYOND = {"day before yesterday": -2, "day after tomorrow": 2}
_DAYS = {"day": 1, "week": 7}
_STEP = r"(?P<count>\d{1,3}) (?P<unit>day|week)s?(?P<end> ago| from (?:now|today))?"
_WEEKDAY = (
    r"(?:on )?(?:the )?(?:(?P<which>last|past|this|this coming|coming|next) )?"
    r"(?P<name>[a-z]{3,9})\.?"
)
_ONE = r"^(?:a|one)(?= (?:day|week)\b)|^a couple(?: of)?(?= (?:day|week)s\b)"


class When(Enum):
    """On which side of today the days lie that are asked for."""

    PAST = "past"
    COMING = "coming"
    EITHER = "either"


class SaidDay(NamedTuple):
    """A day, and how it was understood where its words count from today."""

    date: dt.date
    said: str = ""


def read_day(text: str, today: dt.date, when: When = When.PAST) -> SaidDay:
    """Return the day in ``text``: a date as ``read_date`` takes it, or told from ``today``.

    A weekday alone is the last one, or the coming one where coming days are asked for; where
    both sides are, or the weekday is today's, it is asked which. A day to come is refused where
    one that happened is asked for; a day ago is one anywhere. Raises ``Refused``.
    """
    clean = " ".join(taken(text, _EXAMPLE).casefold().split()).rstrip(".")
    away = _AWAY.get(clean, _BEYOND.get(clean.removeprefix("the ")))
    if away is None:
        away = _steps(clean)
    if away is not None:
        if away > 0 and when is When.PAST:
            raise Refused(IT_HAPPENED)
        return SaidDay(today + dt.timedelta(days=away))
    match = re.fullmatch(_WEEKDAY, clean)
    place = _weekday(match["name"]) if match else None
    if match is None or place is None:
        return SaidDay(read_date(text, today))
    return _of_week(match["which"] or "", place, today, when)


def _steps(clean: str) -> int | None:
    """Return how many days from today ``in two weeks`` or ``10 days ago`` is, or nothing."""
    words = clean.removeprefix("in ")
    digits = re.sub(_ONE, lambda one: "2" if "couple" in one[0] else "1", words)
    match = re.fullmatch(_STEP, in_digits(digits))
    # "In" stands before, or "ago" after: neither, or both, says no day.
    if match is None or (words != clean) == bool(match["end"]):
        return None
    days = int(match["count"]) * _DAYS[match["unit"]]
    return -days if match["end"] == " ago" else days


def _weekday(name: str) -> int | None:
    name = "wed" if name == "weds" else name
    return next((n for n, full in enumerate(WEEKDAYS) if full.casefold().startswith(name)), None)


def _of_week(which: str, place: int, today: dt.date, when: When) -> SaidDay:
    ahead = (place - today.weekday()) % 7
    back = (today.weekday() - place) % 7 or 7
    last = today - dt.timedelta(days=back)
    coming = today + dt.timedelta(days=ahead or 7)
    if which in ("last", "past"):
        return _last(last)
    if which == "next":
        if when is When.PAST:
            raise Refused(IT_HAPPENED)
        raise _which(coming, coming + dt.timedelta(days=7), today)
    if which:
        if when is When.PAST:
            raise Refused(IT_HAPPENED)
        if which == "this" and not ahead:
            raise _which(today, coming, today)
        return SaidDay(coming)
    if when is When.EITHER:
        raise _which(last, coming, today)
    if not ahead:
        raise _which(*((last, today) if when is When.PAST else (today, coming)), today)
    return SaidDay(coming) if when is When.COMING else _last(last)


def _last(date: dt.date) -> SaidDay:
    return SaidDay(date, f"last {WEEKDAYS[date.weekday()]}, {day_month_year(date)}")


def _which(one: dt.date, other: dt.date, today: dt.date) -> Refused:
    """Return the question which of two days is meant, each as it is read back today."""
    return Refused(f"Which: {_short(one, today)} or {_short(other, today)}?")


def _short(date: dt.date, today: dt.date) -> str:
    year = "" if date.year == today.year else f" {date.year}"
    return f"{WEEKDAYS[date.weekday()][:3]} {date.day} {MONTHS[date.month - 1][:3]}{year}"
