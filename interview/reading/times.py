"""Times of day and dates."""

from __future__ import annotations

import datetime as dt
import re

from interview.reading.text import Refused, shown, taken, two_ways

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
FIRST_YEAR = 2000
LAST_YEAR = 2099

_CLOCK_EXAMPLE = "10:15 am"
_DATE_EXAMPLE = "1 May 2026"

CLOCK = r"\d{1,2}[:.h]\d{2}(?::\d{2})?(?:\s*[ap]\.?\s?m\.?)?|\d{1,2}\s*[ap]\.?\s?m\.?"
"""A time of day that no date could be taken for."""

_CLOCK = (
    r"(?a)(?P<h>\d{1,2})(?:[:.h]?(?P<m>\d{2})(?::(?P<s>\d{2}))?)?\s*(?:(?P<half>[ap])\.?\s?m\.?)?"
)
_ISO_DATE = r"(?a)(\d{4})([-/.])(\d{1,2})\2(\d{1,2})|(\d{4})(\d{2})(\d{2})"
_NUMERIC = r"(?a)(\d{1,2})([-/.])(\d{1,2})\2(\d{2}|\d{4})"
_NO_YEAR = r"(?a)(\d{1,2})/(\d{1,2})"
_DAY_FIRST = r"(?a)(\d{1,2})(?:st|nd|rd|th)?[ -]?(?:of )?([a-z]{3,9})\.?(?:,? ?-?(\d+))?"
_MONTH_FIRST = r"(?a)([a-z]{3,9})\.?[ -]?(\d{1,2})(?:st|nd|rd|th)?(?:(?:, ?| |-)(\d+))?"
_WEEKDAY = r"([a-z]{3,9})\.?,? (?=.*\d)"


def read_clock(text: str, *, clock24: bool = False) -> dt.time:
    """Return the time of day in ``text``, such as ``10:15``, ``10.15am`` or ``noon``.

    A single-digit hour without am or pm has two readings and is refused, unless ``clock24`` says
    that the 24-hour clock is meant; ``07:30`` is morning. Raises ``Refused``.
    """
    clean = taken(text, _CLOCK_EXAMPLE).casefold()
    if clean in ("noon", "midday"):
        return dt.time(12)
    if clean == "midnight":
        return dt.time(0)
    match = re.fullmatch(_CLOCK, clean)
    if match is None:
        raise Refused(f"{shown(clean)} is not a time of day. Write it like {_CLOCK_EXAMPLE}.")
    hour, minute, second = (int(match[part] or 0) for part in ("h", "m", "s"))
    if minute > 59 or second > 59:
        raise Refused(f"{shown(clean)} has more than 59 minutes or seconds. Write it like 10:15.")
    if match["half"]:
        if not 1 <= hour <= 12:
            raise Refused(f"With am or pm the hour is 1 to 12, not {hour}. Write it like 10:15 pm.")
        return dt.time(hour % 12 + (12 if match["half"] == "p" else 0), minute, second)
    if hour > 23:
        raise Refused("A day runs from 00:00 to 23:59. For midnight write 00:00 of the new day.")
    written = f"{hour}:{minute:02}" + (f":{second:02}" if match["s"] else "")
    if match["m"] is None and hour > 12:
        raise Refused(f"Write the minutes too, such as {hour}:00.")
    if match["m"] is None or (len(match["h"]) == 1 and hour > 0 and not clock24):
        if hour == 0:
            raise Refused("Write the minutes too, such as 00:00.")
        raise two_ways(clean, f"{written} am", f"{written} pm")
    return dt.time(hour, minute, second)


def read_date(text: str, today: dt.date) -> dt.date:
    """Return the date in ``text``; a date without a year takes the year of ``today``.

    All-number dates such as ``5/6/2026`` are refused with both readings unless only one can be.
    The echo of a date reads back. Years run from 2000 to 2099. Raises ``Refused``.
    """
    clean = " ".join(taken(text, _DATE_EXAMPLE).casefold().split())
    if clean in ("today", "yesterday"):
        return today - dt.timedelta(days=clean == "yesterday")
    if clean == "tomorrow":
        raise Refused("That day is still to come. Write the day it happened, such as today.")
    clean, weekday = _without_weekday(clean)
    in_full = f"{clean}/{today.year}" if re.fullmatch(_NO_YEAR, clean) else clean
    found = _numbers_only(in_full) or _with_month_name(clean, today)
    if found is None:
        raise Refused(f"{shown(clean)} is not a date. Write it like {_DATE_EXAMPLE}.")
    date = _date(*found)
    if weekday is not None and date.weekday() != weekday:
        right, wrong = WEEKDAYS[date.weekday()], WEEKDAYS[weekday]
        raise Refused(f"{day_month_year(date)} is a {right}, not a {wrong}. Check the two.")
    return date


def day_month_year(date: dt.date) -> str:
    """Return a date such as ``1 May 2026``."""
    return f"{date.day} {MONTHS[date.month - 1]} {date.year}"


def _without_weekday(clean: str) -> tuple[str, int | None]:
    match = re.match(_WEEKDAY, clean)
    if match:
        for place, name in enumerate(WEEKDAYS):
            if name.casefold().startswith(match[1]):
                return clean[match.end() :], place
    return clean, None


def _numbers_only(clean: str) -> tuple[int, int, int] | None:
    if match := re.fullmatch(_ISO_DATE, clean):
        year, month, day = (int(part) for part in match.group(1, 3, 4) if part) if match[1] else (
            int(part) for part in match.group(5, 6, 7)
        )  # fmt: skip
        return year, month, day
    match = re.fullmatch(_NUMERIC, clean)
    if match is None:
        return None
    first, second = int(match[1]), int(match[3])
    year = int(match[4]) + (2000 if len(match[4]) == 2 else 0)
    if first <= 12 and second <= 12 and first != second and first and second:
        one, other = f"{first} {MONTHS[second - 1]}", f"{second} {MONTHS[first - 1]}"
        raise two_ways(clean, f"{one} {year}", f"{other} {year}")
    month, day = (second, first) if second <= 12 else (first, second)
    if len(match[4]) == 2:
        meant = f"{day} {MONTHS[month - 1]} {year}" if 1 <= month <= 12 else _DATE_EXAMPLE
        raise Refused(f"Write the year of {shown(clean)} in full, such as {meant}.")
    return year, month, day


def _with_month_name(clean: str, today: dt.date) -> tuple[int, int, int] | None:
    if match := re.fullmatch(_DAY_FIRST, clean):
        day, name, year = match.groups()
    elif match := re.fullmatch(_MONTH_FIRST, clean):
        name, day, year = match.groups()
    else:
        return None
    name = "sep" if name == "sept" else name
    month = next((n for n, full in enumerate(MONTHS, 1) if full.casefold().startswith(name)), None)
    if month is None:
        return None
    if year and len(year) != 4:
        raise Refused(f"Write the year of {shown(clean)} in full, such as {_DATE_EXAMPLE}.")
    return int(year) if year else today.year, month, int(day)


def _date(year: int, month: int, day: int) -> dt.date:
    if not FIRST_YEAR <= year <= LAST_YEAR:
        raise Refused(f"The year {year} is out of reach. Write one from {FIRST_YEAR} on.")
    try:
        return dt.date(year, month, day)
    except ValueError:
        pass
    if not 1 <= month <= 12:
        raise Refused(f"There is no month {month}. Write the date like {_DATE_EXAMPLE}.")
    name = MONTHS[month - 1]
    raise Refused(f"{name} {year} has no day {day}. Check the day, as in {_DATE_EXAMPLE}.")
