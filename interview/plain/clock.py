"""The clock of this computer, with the rules of its own time zone."""

from __future__ import annotations

import datetime as dt

NOON = dt.time(12)
"""The time of a day that is named without one: work goes on, and no day is near its end."""


class LocalZone(dt.tzinfo):
    """The zone this computer is set to, with its summer time, on any day."""

    def utcoffset(self, when: dt.datetime | None) -> dt.timedelta | None:
        """Return the offset on the day and at the time of ``when``."""
        if when is None:
            return None
        return when.replace(tzinfo=None).astimezone().utcoffset()

    def dst(self, when: dt.datetime | None) -> dt.timedelta | None:
        """Return nothing: only the whole offset is known."""
        return None

    def tzname(self, when: dt.datetime | None) -> str | None:
        """Return the name this computer gives the zone then."""
        return None if when is None else when.replace(tzinfo=None).astimezone().tzname()

    def fromutc(self, when: dt.datetime) -> dt.datetime:
        """Return universal time ``when`` as the time here, first or second pass of an hour."""
        there = when.replace(tzinfo=dt.UTC).astimezone()
        local = there.replace(tzinfo=self, fold=0)
        if local.utcoffset() != there.utcoffset():
            local = local.replace(fold=1)
        return local


LOCAL = LocalZone()


def now() -> dt.datetime:
    """Return the time now in this computer's zone."""
    return dt.datetime.now(LOCAL)


def noon(date: dt.date) -> dt.datetime:
    """Return noon of a day in this computer's zone."""
    return dt.datetime.combine(date, NOON, LOCAL)


def on(day: str) -> dt.datetime:
    """Return noon of a day, told as a date or from today; raises ``Refused``."""
    from interview.reading.days import When, read_day

    return noon(read_day(day, now().date(), When.EITHER).date)
