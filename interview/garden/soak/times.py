"""Times in words: a time of day, a length of time, the morning after."""

from __future__ import annotations

import datetime as dt

MORNING_HOUR = 8
_MINUTE = dt.timedelta(minutes=1)


def utc(at: dt.datetime) -> dt.datetime:
    """Return the same instant in universal time, so that instants subtract truly.

    Python subtracts two times of one changing zone by the wall clock.
    """
    return at.astimezone(dt.UTC)


def clock(at: dt.datetime, now: dt.datetime) -> str:
    """Write a time of day in the zone of ``now``, with its day where that is not today."""
    there = at.astimezone(now.tzinfo)
    return f"{there:%H:%M}" if there.date() == now.date() else f"{there:%a %d %b %H:%M}"


def span(time: dt.timedelta) -> str:
    """Write a length of time of either sign, such as ``1 h 05 min`` or ``3 days``."""
    hours, minutes = divmod(abs(time) // _MINUTE, 60)
    if hours >= 48:
        return f"{hours // 24} days"
    return f"{hours} h {minutes:02} min" if hours else f"{minutes} min"


def span_up(time: dt.timedelta) -> str:
    """Write a wait as ``span`` does, up to the whole minute, so that 0 min is never said."""
    return span(time + dt.timedelta(seconds=59))


def elapsed_words(time: dt.timedelta) -> str:
    """Write a length of time as hours and minutes, such as ``1:05``."""
    minutes = max(0, time // _MINUTE)
    return f"{minutes // 60}:{minutes % 60:02}"


def next_morning(after: dt.datetime, now: dt.datetime, hours: float) -> dt.datetime:
    """Return the first eight in the morning, by the clock of ``now``, ``hours`` after ``after``."""
    there = after.astimezone(now.tzinfo)
    found = there.replace(hour=MORNING_HOUR, minute=0, second=0, microsecond=0)
    while utc(found) < utc(after) + dt.timedelta(hours=hours):
        found += dt.timedelta(days=1)
    return utc(found)
