"""Slopes, pitches, ratios and shares."""

from __future__ import annotations

import re
from fractions import Fraction

from interview.reading.lengths import convert_length, read_taped_length
from interview.reading.numbers import split_number, take_number, unreadable
from interview.reading.text import Refused, in_digits, refuse_odd, shown, taken, two_ways

IN_12 = "in 12"
DEGREES = "degrees"
PERCENT = "percent"

_PERCENT_WORDS = ("%", "percent", "per cent", "pct")
_DEGREE_WORDS = ("°", "deg", "deg.", "degs", "degree", "degrees")
_PER_LENGTH = r"(?P<drop>.*\S)\s*(?:\bper\b|/|\ba\b|\bevery\b)\s*(?:1\s*)?(?P<run>[a-z]+|')\.?"
_OVER = r"(:|/|in(?![a-z])|on(?![a-z])|to(?![a-z]))\s*"
_PERCENT_EXAMPLE = "4.5% or 1:20"
_RATIO_WORDS = (
    r"^(?P<one>[\d.]+)\s*(?:h|horizontal|along)?\s*(?::|to)\s*(?P<other>[\d.]+)"
    r"\s*(?:v|vertical|up)?$"
)
_TIMES_WORDS = r"^([\d.]+)\s*(?:x|times)$"


def read_percent(text: str) -> Fraction:
    """Return the percentage in ``text`` as a number of percent: ``4.5%`` is 9/2.

    Also ``1:20`` and ``1 in 20`` (5), and a drop per length such as ``1/2 in per ft``. A bare
    number is percent, but one between 0 and 1 has two readings. Raises ``Refused``.
    """
    clean = taken(text, _PERCENT_EXAMPLE)
    refuse_odd(clean, _PERCENT_EXAMPLE)
    value, rest = split_number(clean, _PERCENT_EXAMPLE)
    if rest in _PERCENT_WORDS:
        return value
    if not rest:
        if 0 < value < 1:
            raise two_ways(clean, f"{_short(value)}%", f"{_short(value * 100)}%")
        return value
    ratio = _ratio(clean, _PERCENT_EXAMPLE, ("in", ":", "on"))
    if ratio is not None:
        return ratio[0] / ratio[1] * 100
    match = re.fullmatch(_PER_LENGTH, clean.casefold())
    if match is None:
        raise unreadable(clean, _PERCENT_EXAMPLE)
    drop = read_taped_length(match["drop"], None)
    run = read_taped_length(f"1 {match['run']}" if match["run"].isalpha() else "1 ft", None)
    return convert_length(drop, "mm") / convert_length(run, "mm") * 100


def _short(value: Fraction) -> str:
    return f"{float(value):.6g}"


def _ratio(clean: str, example: str, joins: tuple[str, ...]) -> tuple[Fraction, Fraction] | None:
    """Return the two sides of ``a : b`` for a join in ``joins``, or none."""
    folded = clean.casefold()
    first = take_number(folded, 0, example)
    at = first.end + len(folded[first.end :]) - len(folded[first.end :].lstrip(' "-'))
    join = re.compile(_OVER).match(folded, at)
    if join is None or join[1] not in joins:
        return None
    second_at = join.end() + len(folded[join.end() :]) - len(folded[join.end() :].lstrip(" -"))
    if not re.match(r"[\d.,]", folded[second_at:]):
        return None
    second = take_number(folded, second_at, example)
    if folded[second.end :].strip(' "'):
        return None
    if second.value == 0:
        raise Refused(f"{shown(clean)} ends in zero. Write it like {example}.")
    return first.value, second.value


def read_pitch(text: str) -> tuple[str, Fraction]:
    """Return how steep a roof is, as ``in 12``, ``degrees`` or ``percent`` and the number.

    ``6 in 12``, ``6/12`` and ``6:12`` are rise over run; another run is brought to 12. A fraction
    over another number is refused, because the trade also wrote rise over the whole span so.
    Raises ``Refused``.
    """
    example = "6 in 12 or 27 deg"
    clean = taken(text, example)
    refuse_odd(clean, example)
    if match := re.fullmatch(r"(\d+)\s*/\s*12", clean):
        return IN_12, take_number(match[1], 0, example).value
    value, rest = split_number(clean, example)
    if rest in _DEGREE_WORDS:
        return DEGREES, value
    if rest in _PERCENT_WORDS:
        return PERCENT, value
    if not rest:
        if "/" in clean:
            raise two_ways(clean, f"{_short(value * 12)} in 12", f"{_short(value * 24)} in 12")
        number = _short(value)
        raise two_ways(clean, f"{number} in 12", f"{number} deg")
    ratio = _ratio(clean, example, ("in", "on", ":", "/"))
    if ratio is None:
        raise unreadable(clean, example)
    return IN_12, ratio[0] / ratio[1] * 12


def read_ratio(text: str) -> Fraction:
    """Return the first side over the second of ``3:1``, ``3 to 1`` or ``3``; raises ``Refused``."""
    example = "3:1"
    clean = re.sub(r"^([\d.]+)\s*/\s*([\d.]+)$", r"\1:\2", in_digits(taken(text, example)))
    clean = re.sub(_RATIO_WORDS, r"\g<one>:\g<other>", clean.casefold())
    clean = re.sub(_TIMES_WORDS, r"\1", clean)
    refuse_odd(re.sub(r"\bto\b", ":", clean.casefold()), example)
    value, rest = split_number(clean, example)
    if not rest:
        return value
    ratio = _ratio(clean, example, (":", "to"))
    if ratio is None:
        raise unreadable(clean, example)
    return ratio[0] / ratio[1]


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
