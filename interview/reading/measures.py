"""Areas, volumes and rates: a number and a unit from a closed list."""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction

from interview.reading.lengths import US_UNITS, convert_length, read_taped_length
from interview.reading.numbers import split_number, unreadable
from interview.reading.terms import Amount
from interview.reading.text import Refused, in_digits, refuse_odd, shown, taken, two_ways

_FEET = ("ft", "foot", "feet")
_YARDS = ("yd", "yds", "yard", "yards")
_METRES = ("m", "meter", "meters", "metre", "metres")


def _powers(words: tuple[str, ...], names: tuple[str, ...], power: str) -> set[str]:
    """Return every way to write a unit to ``power``, without spaces, points and carets."""
    return {name + word for name in names for word in words} | {
        word + mark for word in words for mark in (power, "²" if power == "2" else "³")
    }


def _table(*rows: tuple[str, set[str]]) -> dict[str, str]:
    return {word: unit for unit, words in rows for word in words}


_SQUARE = ("sq", "square")
_CUBIC = ("cu", "cubic")
_AREAS = _table(
    ("ft**2", _powers(_FEET, _SQUARE, "2") | {"sf", "sqfts"}),
    ("yd**2", _powers(_YARDS, _SQUARE, "2") | {"sy"}),
    ("m**2", _powers(_METRES, _SQUARE, "2") | {"sqms"}),
    ("acre", {"ac", "acre", "acres"}),
)
_VOLUMES = _table(
    ("ft**3", _powers(_FEET, _CUBIC, "3") | {"cf"}),
    ("yd**3", _powers(_YARDS, _CUBIC, "3") | {"cy"}),
    ("m**3", _powers(_METRES, _CUBIC, "3") | {"cum", "cbm"}),
    ("L", {"l", "liter", "liters", "litre", "litres"}),
    ("gal", {"gal", "gals", "gallon", "gallons"}),
)
_DEPTHS = {
    "in": "in", "inch": "in", "inches": "in", '"': "in", "mm": "mm", "millimeters": "mm",
    "millimetres": "mm", "cm": "cm", "ft": "ft", "feet": "ft", "'": "ft", "m": "m",
}  # fmt: skip
_TIMES = {
    "h": "h", "hr": "h", "hrs": "h", "hour": "h", "hours": "h",
    "min": "min", "minute": "min", "d": "day", "day": "day",
}  # fmt: skip
_CARET = r"(?<=[A-Za-z])\^(?=[23]$)"
_SIDES = r"(?P<one>.*\S)\s*(?<![^\W\d_])(?:x|by)(?![^\W\d_])\s*(?P<other>\S.*)"
_RATE = r"(?P<depth>[a-z]+|['\"])\.?\s*(?:/|\bper\b|\ban?\b)\s*(?P<time>[a-z]+)\.?"
_SLOWNESS = r"(?P<time>[a-z]+)\.?\s*(?:/|\bper\b)\s*(?P<depth>[a-z]+|['\"])\.?"


def read_area(text: str, bare: str | None) -> Amount:
    """Return the area written in ``text``, or the product of two lengths such as ``12 x 10 ft``.

    ``bare`` is the unit of a number without one. Raises ``Refused``.
    """
    example = "12 m2" if bare == "m**2" else "120 sq ft"
    clean = re.sub(_CARET, "", taken(text, example))
    refuse_odd(clean, example, product=True)
    sides = re.fullmatch(_SIDES, clean.casefold())
    if sides:
        return _product(sides["one"], sides["other"], bare, example)
    return _with_unit(clean, bare, example, _AREAS, _named(bare, "sq ft, acre or m2", "m2"))


def read_volume(text: str, bare: str | None) -> Amount:
    """Return the volume written in ``text``, ``bare`` giving the unit; raises ``Refused``."""
    example = "85 L" if bare in ("L", "m**3") else "3 cu ft"
    clean = re.sub(_CARET, "", taken(text, example))
    refuse_odd(clean, example)
    return _with_unit(
        clean, bare, example, _VOLUMES, _named(bare, "cu ft, cu yd, gal, m3 or L", "m3 or L")
    )


def _named(bare: str | None, every: str, metric: str) -> str:
    """Return the units to name where bare numbers are in ``bare``: all, or the metric ones."""
    return metric if bare in ("m**2", "m**3", "L") else every


def _with_unit(
    clean: str, bare: str | None, example: str, units: Mapping[str, str], names: str
) -> Amount:
    value, rest = split_number(clean, example)
    unit = units.get(re.sub(r"[\s.]", "", rest)) if rest else bare
    if unit is None and not rest:
        raise Refused(f"Write the unit after {shown(clean)}: {names}.")
    if unit is None:
        raise Refused(f"{shown(rest)} is not a unit that fits here. Use {names}.")
    return Amount(value, unit, bare=not rest)


def _product(one: str, other: str, bare: str | None, example: str) -> Amount:
    """Multiply two sides; a side without a unit takes that of the other, then that of ``bare``."""
    value, rest = split_number(other, example)
    squared = _AREAS.get(re.sub(r"[\s.]", "", rest)) if rest else bare
    if squared and squared.endswith("**2"):
        width, leftover = split_number(one, example)
        if not leftover:
            return Amount(width * value, squared, bare=not rest)
        bare = squared
    unit = bare.removesuffix("**2") if bare and bare.endswith("**2") else None
    second = read_taped_length(other if rest else one, unit)
    first = read_taped_length(one if rest else other, second.unit)
    if (first.unit in US_UNITS) != (second.unit in US_UNITS):
        raise Refused(f"Write both sides in one unit, or the area, such as {example}.")
    side = "ft" if first.unit in US_UNITS else "m"
    return Amount(convert_length(first, side) * convert_length(second, side), f"{side}**2")


def read_rate(text: str, bare: str | None) -> Amount:
    """Return a fall or a rain intensity such as ``0.5 in/h``; ``bare`` gives the unit of a number.

    Minutes per inch (``60 min/in``) are turned into inches per hour, because that is how some
    soil reports have it; hours per inch are refused with both right ways to write them. Raises
    ``Refused``.
    """
    example = "13 mm/h" if bare == "mm/h" else "0.5 in/h"
    clean = in_digits(taken(text, example))
    refuse_odd(clean, example)
    value, rest = split_number(clean, example)
    if not rest and bare is not None:
        return Amount(value, bare, bare=True)
    if rest == "iph":
        return Amount(value, "in/h")
    if (
        (match := re.fullmatch(_RATE, rest))
        and match["depth"] in _DEPTHS
        and match["time"] in _TIMES
    ):
        return Amount(value, f"{_DEPTHS[match['depth']]}/{_TIMES[match['time']]}")
    if match := re.fullmatch(_SLOWNESS, rest):
        return _from_slowness(clean, value, match["time"], match["depth"], example)
    raise Refused(f"A rate needs a depth and a time. Write it like {example}, not {shown(clean)}.")


def _from_slowness(clean: str, value: Fraction, time: str, depth: str, example: str) -> Amount:
    if _DEPTHS.get(depth) != "in" or _TIMES.get(time) not in ("min", "h"):
        raise unreadable(clean, example)
    if value == 0:
        raise Refused(f"{shown(clean)} has no time in it. Write a rate, such as {example}.")
    if _TIMES[time] == "h":
        inches = Fraction(1) / value
        rate = inches if inches.denominator in (1, 2, 4, 8) else inches.limit_denominator(1000)
        raise two_ways(clean, f"{rate} in/h", f"{float(value * 60):.6g} min/in")
    return Amount(60 / value, "in/h")
