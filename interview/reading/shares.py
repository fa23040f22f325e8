"""A part of something in the words people use for it: all, half, 1/3, 60 %."""

from __future__ import annotations

import re
from fractions import Fraction

from interview.reading.numbers import split_number, unreadable
from interview.reading.slopes import read_percent
from interview.reading.text import refuse_odd, taken, two_ways

SHARE_EXAMPLE = "60 %, half, 1/3, all or none"
_WHOLE = {"all", "whole", "everything", "entire", "full", "total", "100"}
_NOTHING = {"none", "nothing", "no", "zero", "nil", "0"}
_COUNTS = {"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4}
_PARTS = {
    "half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4,
    "fourth": 4, "fourths": 4, "fifth": 5, "fifths": 5,
}  # fmt: skip
_TAIL = r"\s+of\s+(?:it|them|the\s+\w+)\.?$|\.$"
_WORDED = r"(?:(?P<count>[a-z]+)[\s-]+)?(?P<part>[a-z]+)"
_FRACTION = r"(?P<top>\d{1,3})\s*(?:/|\bof\b|\bout\s+of\b|\bin\b)\s*(?P<under>\d{1,3})"


def read_share(text: str) -> Fraction:
    """Return the share in ``text`` in percent: ``half`` is 50, ``1/3`` is 100/3, ``all`` is 100.

    A bare number is percent, but one of 1 or less has two readings. Raises ``Refused``.
    """
    clean = taken(text, SHARE_EXAMPLE)
    refuse_odd(clean, SHARE_EXAMPLE)
    words = re.sub(_TAIL, "", clean.casefold())
    if words in _WHOLE:
        return Fraction(100)
    if words in _NOTHING:
        return Fraction(0)
    if part := _worded(words) or _fraction(words):
        return part
    value, rest = split_number(clean, SHARE_EXAMPLE)
    if value == 1 and not rest:
        raise two_ways(clean, "1 %", "all")
    over = not rest and "/" in clean and value > 1
    if over or rest.startswith((":", "in", "per", "/")):
        # A proportion such as 1:2 may be meant as a half or as a third.
        raise unreadable(clean, SHARE_EXAMPLE)
    try:
        return read_percent(text)
    except ValueError as wrong:
        if "two things" in str(wrong):
            raise
        raise unreadable(clean, SHARE_EXAMPLE) from None


def _worded(words: str) -> Fraction | None:
    match = re.fullmatch(_WORDED, words)
    if match is None or match["part"] not in _PARTS:
        return None
    count = _COUNTS.get(match["count"] or "one")
    return None if count is None else 100 * Fraction(count, _PARTS[match["part"]])


def _fraction(words: str) -> Fraction | None:
    match = re.fullmatch(_FRACTION, words)
    if match is None or not 0 < int(match["top"]) <= int(match["under"]):
        return None
    return 100 * Fraction(int(match["top"]), int(match["under"]))
