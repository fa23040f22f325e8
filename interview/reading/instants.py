"""Instants: a date and a time of day with an offset from universal time."""

from __future__ import annotations

import datetime as dt
import re

from interview.reading.durations import SECONDS, read_duration
from interview.reading.text import Refused, taken, two_ways
from interview.reading.times import CLOCK, day_month_year, read_clock, read_date

_EXAMPLE = "10:15 am or 2026-05-21 10:15"
_DATED = "2026-05-21 10:15"
_LONGEST_STEP = dt.timedelta(days=366)

_OFFSET = (
    r"(?a)(?P<when>.*\d:\d{2}(?::\d{2}(?:\.\d{1,9})?)?(?:\s*[ap]\.?m\.?)?)"
    r"[\s,]*\(?(?:utc|gmt)?\s*(?P<offset>z|utc|gmt|[+-]\d{1,2}(?::?\d{2})?)\)?"
)
_SPLIT_SECONDS = r"(?a)(?<=\d:\d\d:\d\d)\.\d{1,9}"
_ISO_JOIN = r"(?a)(\d{4}-\d{1,2}-\d{1,2})t(?=\d)"
_DATE_THEN_CLOCK = rf"(?P<date>.+?)[ ,]+(?:at )?(?P<clock>{CLOCK}|noon|midnight)"
_CLOCK_THEN_DATE = rf"(?P<clock>{CLOCK}|noon|midnight)[ ,]+(?:on )?(?P<date>(?![ap]\.?\s?m\.?$).+)"
_HALF_DAY = r"(?a)[1-9][:.h]\d{2}(?::\d{2})?"
"""A time of day that may be of the morning or of the evening."""
_WHICH = r"\b(first|second)\b"
_YEAR_FIRST = r"(?a)\d{4}-"


def read_instant(
    text: str, now: dt.datetime, after: dt.datetime | None = None
) -> dt.datetime:  # fmt: skip
    """Return the instant written in ``text``, with a fixed offset, so instants subtract truly.

    Takes ``now``, a time of day, a date with a time, ISO 8601 with or without an offset, and
    ``+1h 30m`` counted from ``after``. Where no offset is written the zone is that of ``now``. A
    time of day alone is today's, and one still to come is refused; with ``after`` it is the first
    one at or after that minute. ``8:05`` without am or pm is taken where only one of the two lies
    between ``after`` and ``now``, or today before ``now``. A time that the clocks jumped over is
    refused; one that came twice wants ``first`` or ``second``. The answer to a relative text
    changes with ``now``: keep it with ``write_instant``.

    Raises ``Refused``, and ``ValueError`` when ``now`` or ``after`` has no offset.
    """
    _aware(now)
    clean = " ".join(taken(text, _EXAMPLE).casefold().split())
    if clean == "now":
        return _fixed(now.replace(microsecond=0))
    if clean.startswith("+"):
        return _later(clean[1:], now, after)
    if re.fullmatch(_HALF_DAY, clean) and len(found := _past(clean, now, after)) == 1:
        return found[0]
    if match := re.fullmatch(_OFFSET, clean):
        wall, dated = _wall(match["when"].strip(), now, after)
        # Without a date, 10:00-11:00 is far more likely a range than an offset.
        if not dated:
            raise Refused(f"Write one time, and the date before it, such as {_DATED}.")
        return wall.replace(tzinfo=_offset(match["offset"]))
    which = re.search(_WHICH, clean)
    if which:
        clean = " ".join(re.sub(_WHICH, " ", clean, count=1).split())
    wall, dated = _wall(clean, now, after)
    if dated:
        return _placed(wall, now, which[1] if which else "", clean)
    if after is None:
        today = _placed(wall, now, which[1] if which else "", clean)
        if today > now:
            yesterday = f"yesterday {wall:%H:%M}"
            raise Refused(f"{wall:%H:%M} today is still to come. Write {yesterday} or a date.")
        return today
    return _first_after(wall, now, after, which[1] if which else "", clean)


def _past(clean: str, now: dt.datetime, after: dt.datetime | None) -> list[dt.datetime]:
    """Return which of the two halves of a day a time may be of, so that it is not to come.

    Nothing where one of them came twice, when the clocks went back: that is to be asked.
    """
    found = []
    for half in ("am", "pm"):
        try:
            # With "first" only what is to come, or never was, is refused.
            first = read_instant(f"{clean} {half} first", now, after)
        except Refused:
            continue
        if first > now:
            continue
        try:
            found.append(read_instant(f"{clean} {half}", now, after))
        except Refused:
            return []
    return found


def _aware(instant: dt.datetime) -> None:
    if instant.utcoffset() is None:
        raise ValueError("An instant needs its offset from universal time.")


def _fixed(instant: dt.datetime) -> dt.datetime:
    """Freeze the offset: Python subtracts two times of one changing zone by the wall clock."""
    return instant.replace(tzinfo=dt.timezone(instant.utcoffset() or dt.timedelta(0)), fold=0)


def _later(words: str, now: dt.datetime, after: dt.datetime | None) -> dt.datetime:
    if after is None:
        raise Refused(
            f"A time with + counts from a start, and there is none yet. Write {_EXAMPLE}."
        )
    _aware(after)
    amount = read_duration(words, None)
    seconds = amount.number * SECONDS[amount.unit]
    if seconds > _LONGEST_STEP.total_seconds():
        raise Refused("That is more than a year after the start. Check the hours and days.")
    step = dt.timedelta(microseconds=round(seconds * 1_000_000))
    return _fixed((after.astimezone(dt.UTC) + step).astimezone(now.tzinfo))


def _wall(clean: str, now: dt.datetime, after: dt.datetime | None) -> tuple[dt.datetime, bool]:
    """Return the wall-clock time, and whether its date was written."""
    clean = re.sub(_SPLIT_SECONDS, "", re.sub(_ISO_JOIN, r"\1 ", clean))
    match = re.fullmatch(_DATE_THEN_CLOCK, clean) or re.fullmatch(_CLOCK_THEN_DATE, clean)
    if match:
        date = read_date(match["date"], now.date())
        clock24 = bool(re.match(_YEAR_FIRST, match["date"]))
        return dt.datetime.combine(date, read_clock(match["clock"], clock24=clock24)), True
    try:
        clock = read_clock(clean)
    except Refused as refused:
        raise _no_clock(clean, now.date()) or refused from None
    date = now.date() if after is None else after.astimezone(now.tzinfo).date()
    return dt.datetime.combine(date, clock), False


def _no_clock(clean: str, today: dt.date) -> Refused | None:
    try:
        date = read_date(clean, today)
    except Refused:
        return None
    return Refused(f"Write the time of day too, such as {date.isoformat()} 10:15.")


def _offset(written: str) -> dt.timezone:
    if written in ("z", "utc", "gmt"):
        return dt.UTC
    digits = written[1:].replace(":", "")
    hours, minutes = (int(digits[:-2]), int(digits[-2:])) if len(digits) > 2 else (int(digits), 0)
    # No place has kept a clock further than 14 h from universal time.
    if hours > 14 or minutes > 59:
        raise Refused(f"No clock is {written} from UTC. Write it like 2026-05-21 10:15 -05:00.")
    sign = -1 if written[0] == "-" else 1
    return dt.timezone(sign * dt.timedelta(hours=hours, minutes=minutes))


def _placed(wall: dt.datetime, now: dt.datetime, which: str, clean: str) -> dt.datetime:
    """Give a wall-clock time the offset that ``now``'s zone had then."""
    one = wall.replace(tzinfo=now.tzinfo, fold=0)
    other = wall.replace(tzinfo=now.tzinfo, fold=1)
    if one.utcoffset() == other.utcoffset():
        return _fixed(one)
    if one.astimezone(dt.UTC).astimezone(now.tzinfo).replace(tzinfo=None, fold=0) != wall:
        raise Refused(
            f"{wall:%H:%M} did not exist on {day_month_year(wall)}: the clocks went forward. "
            "Write the time the clock showed."
        )
    if which:
        return _fixed(one if which == "first" else other)
    raise two_ways(clean, f"first {clean}", f"second {clean}")


def _first_after(
    wall: dt.datetime, now: dt.datetime, after: dt.datetime, which: str, clean: str
) -> dt.datetime:
    found = _placed(wall, now, which, clean)
    if found < after.replace(second=0, microsecond=0):
        found = _placed(wall + dt.timedelta(days=1), now, which, clean)
    return found


def write_instant(instant: dt.datetime) -> str:
    """Return an instant in ISO 8601 with seconds and a numeric offset.

    Raises ``ValueError`` when it has no offset.
    """
    _aware(instant)
    return instant.isoformat(timespec="seconds")
