"""The text that says back what was read, so that a misreading is seen at once."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Sequence
from fractions import Fraction

from interview.reading.durations import SECONDS
from interview.reading.lengths import MM, convert_length
from interview.reading.terms import Amount
from interview.reading.times import WEEKDAYS, day_month_year

_CLOSE_MM = MM["in"] / 64
"""An echo that is typed back gives the same length within 1/64 in."""

_LITRES_PER_FT3 = Fraction("28.316846592")
_AREAS = {"ft**2": Fraction(1), "yd**2": Fraction(9), "acre": Fraction(43560)}
_AREAS["m**2"] = 1 / Fraction("0.09290304")
_VOLUMES = {
    "ft**3": _LITRES_PER_FT3,
    "yd**3": 27 * _LITRES_PER_FT3,
    "gal": Fraction("3.785411784"),
    "m**3": Fraction(1000),
    "L": Fraction(1),
}
"""Square feet and litres in each unit, exact: NIST Special Publication 811, 2008, Appendix B."""


def decimal_text(number: Fraction, places: int) -> str:
    """Write an exact number with at most ``places`` decimals, halves up, without end zeros."""
    scaled = math.floor(abs(number) * 10**places + Fraction(1, 2))
    whole, part = divmod(scaled, 10**places)
    tail = f"{part:0{places}}".rstrip("0") if places else ""
    return ("-" if number < 0 and scaled else "") + (f"{whole}.{tail}" if tail else str(whole))


def _nearest(number: Fraction, step: Fraction) -> Fraction:
    return math.floor(number / step + Fraction(1, 2)) * step


def _stepped(mm: Fraction, coarse: Fraction, fine: Fraction) -> Fraction:
    """Round to ``coarse``, or to ``fine`` where that would move the length over 1/64 in."""
    rounded = _nearest(mm, coarse)
    return rounded if abs(rounded - mm) <= _CLOSE_MM else _nearest(mm, fine)


def _feet_and_inches(mm: Fraction) -> str:
    inches = mm / MM["in"]
    feet, rest = divmod(inches, 12)
    whole, part = divmod(rest, 1)
    words = [f"{feet} ft"] if feet else []
    if part:
        words.append(f"{whole} {part} in" if whole else f"{part} in")
    elif whole or not feet:
        words.append(f"{whole} in")
    return " ".join(words)


def _metric(mm: Fraction) -> str:
    if mm >= 1000 and mm % 10:  # 1.001 m might be a thousand and one
        return f"{mm // 1000} m {decimal_text(mm % 1000, 1)} mm"
    return f"{decimal_text(mm / 1000, 2)} m" if mm >= 1000 else f"{decimal_text(mm, 1)} mm"


def echo_length(amount: Amount, system: str) -> str:
    """Write a length in the session's ``system``: ``12 ft 9 in`` or ``3 m 886 mm``.

    Feet and inches go to 1/16 in and metric to 1 mm, or one finer step where that is needed to keep
    within 1/64 in, so that the echo reads back as the same length and is then echoed alike.
    """
    mm = convert_length(amount, "mm")
    inch = MM["in"]
    if system == "us":
        return _feet_and_inches(_stepped(mm, inch / 16, inch / 32))
    return _metric(_stepped(mm, Fraction(1), Fraction(1, 10)))


def echo_duration(amount: Amount) -> str:
    """Write a duration in words, such as ``1 hour 45 minutes``; seconds to a millionth."""
    left = _nearest(amount.number * SECONDS[amount.unit], Fraction(1, 10**6))
    words = []
    for name, size in (("day", 86400), ("hour", 3600), ("minute", 60)):
        count, left = divmod(left, size)
        if count:
            words.append(f"{count} {name}" + ("" if count == 1 else "s"))
    if left:
        words.append(f"{decimal_text(left, 6)} second" + ("" if left == 1 else "s"))
    return " ".join(words) or "0 minutes"


def echo_date(date: dt.date) -> str:
    """Write a date with its weekday, such as ``Friday 1 May 2026``."""
    return f"{WEEKDAYS[date.weekday()]} {day_month_year(date)}"


def said_day(date: dt.date) -> str:
    """Write a day as a sentence tells it, such as ``Fri 1 May 2026``."""
    return f"{WEEKDAYS[date.weekday()][:3]} {date.day} {date:%b %Y}"


def echo_instant(instant: dt.datetime) -> str:
    """Write an instant such as ``Thursday 21 May 2026 10:15 (UTC-05:00)``; it reads back.

    Raises ``ValueError`` when it has no offset.
    """
    if instant.utcoffset() is None:
        raise ValueError("An instant needs its offset from universal time.")
    clock = f"{instant:%H:%M:%S}" if instant.second else f"{instant:%H:%M}"
    offset = instant.isoformat(timespec="seconds")[19:]
    return f"{echo_date(instant)} {clock} (UTC{offset})"


def echo_area(amount: Amount, system: str) -> str:
    """Write an area in the session's ``system``: ``120 ft²`` or ``11.15 m²``."""
    feet = amount.number * _AREAS[amount.unit]
    if system == "us":
        return f"{decimal_text(feet, 1)} ft²"
    return f"{decimal_text(feet / _AREAS['m**2'], 2)} m²"


def echo_volume(amount: Amount, system: str) -> str:
    """Write a volume in the session's ``system``: ``3 ft³`` or ``85 L``."""
    litres = amount.number * _VOLUMES[amount.unit]
    if system == "us":
        return f"{decimal_text(litres / _LITRES_PER_FT3, 2)} ft³"
    return f"{decimal_text(litres, 1)} L"


def echo_rate(amount: Amount, system: str) -> str:
    """Write a rate of fall or of rain in the session's ``system``: ``0.5 in/h``, ``12.7 mm/h``."""
    depth, _, time = amount.unit.partition("/")
    mm = amount.number * MM[depth] * 3600 / SECONDS[time]
    return (
        f"{decimal_text(mm / MM['in'], 3)} in/h"
        if system == "us"
        else f"{decimal_text(mm, 1)} mm/h"
    )


def word_list(words: Sequence[str], last: str = "and") -> str:
    """Write words as they are spoken, such as ``a, b and c``; ``last`` stands before the last."""
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} {last} {words[-1]}"
