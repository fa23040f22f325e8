"""How quantities are written: one way for each kind, wherever it is told.

Two significant digits are what measurements in a yard can carry; the exact value of a figure is
with its working and in the list of figures.
"""

from __future__ import annotations

import math
import re
from typing import NamedTuple

from interview.quantities.units import (
    Quantity,
    feet_and_inches,
    inches,
    magnitude,
    plain_number,
    significant,
    unit_name,
)


class Rounding(NamedTuple):
    """How a number is cut short: to so many digits, or to so many places after the point."""

    digits: int = 2
    direction: str = "nearest"
    """``nearest``, ``up`` or ``down``: the side on which an error does no harm."""
    places: int | None = None

    def number(self, exact: float) -> float:
        """Return ``exact`` cut short."""
        if self.places is not None and math.isfinite(exact):
            # A last bit of a float must not decide which way a half goes.
            return round(exact + math.copysign(1e-9, exact), self.places)
        return significant(exact, self.digits, self.direction)

    def write(self, exact: float) -> str:
        """Write ``exact`` cut short, or ``never`` where it has no end."""
        return plain_number(self.number(exact)) if math.isfinite(exact) else "never"

    def words(self, value: Quantity, unit: str) -> str:
        """Write a quantity in ``unit`` with the unit's name."""
        text, name = self.write(magnitude(value, unit)), unit_name(unit)
        return text if text == "never" else f"{text} {name}".strip()


PLAIN = Rounding()
"""Areas, volumes, flows, hours: what is neither safe nor unsafe to round up."""
LOW = Rounding(2, "down")
"""Rates of the soil, depths of rain held: never told larger than they are."""
HIGH = Rounding(2, "up")
"""Times to empty, what is to be bought or built: never told smaller than they are."""
SLOPE = Rounding(places=1)
"""Percent of slope: the limits are whole percents, so a tenth is told at any size."""


def slope_words(fall: Quantity) -> str:
    """Write a fall of the ground, such as ``5.1 %``."""
    return SLOPE.words(fall, "percent")


def rate_words(rate: Quantity, metric: bool) -> str:
    """Write a rate of the soil, rounded down."""
    return LOW.words(rate, "mm/h" if metric else "in/h")


def water_words(depth: Quantity, metric: bool, rounding: Rounding = PLAIN) -> str:
    """Write a depth of water or rain: a result, not a level to set out."""
    return rounding.words(depth, "mm" if metric else "in")


def area_words(area: Quantity, metric: bool, rounding: Rounding = PLAIN) -> str:
    """Write an area."""
    return rounding.words(area, "m**2" if metric else "ft**2")


def level_area_words(area: Quantity, metric: bool) -> str:
    """Write an area in a sentence for a first reader, such as ``420 sq ft``."""
    return PLAIN.words(area, "m**2") if metric else f"{PLAIN.write(magnitude(area, 'ft**2'))} sq ft"


def area_range_words(
    middle: Quantity, low: Quantity, high: Quantity, metric: bool, to: str = " to "
) -> str:
    """Write an area with its range, low down and the rest up, such as ``110 sq ft (63 to 280)``."""
    unit, name = ("m**2", unit_name("m**2")) if metric else ("ft**2", "sq ft")
    ends = LOW.write(magnitude(low, unit)), HIGH.write(magnitude(high, unit))
    said = f"{HIGH.write(magnitude(middle, unit))} {name}"
    return said if ends[0] == ends[1] else f"{said} ({ends[0]}{to}{ends[1]})"


def volume_words(volume: Quantity, metric: bool) -> str:
    """Write a volume of soil or of the pond."""
    return PLAIN.words(volume, "m**3" if metric else "ft**3")


def length_words(value: Quantity, metric: bool) -> str:
    """Write a length to peg out: feet and inches to the half inch, or metres."""
    if metric:
        return f"{plain_number(significant(magnitude(value, 'm'), 3))} m"
    return feet_and_inches(value, 2)


def sides_words(length: Quantity, width: Quantity, metric: bool) -> str:
    """Write two sides of one outline, such as ``15 ft by 7 ft``."""
    return f"{length_words(length, metric)} by {length_words(width, metric)}"


def depth_words(value: Quantity, metric: bool) -> str:
    """Write a level to set out or a depth to dig as a tape shows it: to the quarter inch, or in
    whole millimetres.
    """
    if metric:
        return f"{magnitude(value, 'mm') + 0.0:.0f} mm".replace("-0 mm", "0 mm")
    return inches(value)


_US_UNIT = r"(?:ft\^0\.5/s|in/h|inch(?:es)?|in|feet|ft²|ft³|ft|yd³|cu ft|sq ft|gallons?|quarts?)"
_METRIC_UNIT = r"(?:m\^0\.5/s|mm/h|mm|cm|m²|m³|m|L)"
_NUMBER = r"\d+(?:[./]\d+)?(?: \d+/\d+)?"
_PAIR = (
    rf"\b(?:{_NUMBER}(?: {_US_UNIT})?(?: to| and| or| x|,) )*(?:{_NUMBER}|an|half an) {_US_UNIT} "
    rf"\((\d[^()]* {_METRIC_UNIT})\)"
)
_WRITTEN = {
    "rectangle 24 ft by 13 ft": "rectangle 7.2 m by 3.9 m",
    "triangle 6 ft by 4 ft": "triangle 1.8 m by 1.2 m",
    "round 20 ft right 30 ft right 20 ft right 30 ft": "round 6 m right 9 m right 6 m right 9 m",
    "20 ft right 8 ft": "6 m right 2.4 m",
    "offsets 5 ft, 0, 3 ft, 4 ft": "offsets 1.5 m, 0, 0.9 m, 1.2 m",
    "at 3 ft, 2 ft": "at 0.9 m, 0.6 m",
    "such as 12 ft": "such as 3.6 m",
    "left 6 7/8 in": "left 175 mm",
    "drop 1 1/8 in": "drop 30 mm",
    "38 per yd3": "50 per m3",
    "2 per ft": "6 per m",
    "45 per ton": "50 per tonne",
    "8 per oz": "0.3 per g",
}
"""Answers as they may be written, in US units, and what is told in their place."""
_EXAMPLE = "|".join(map(re.escape, sorted(_WRITTEN, key=len, reverse=True)))


def in_metric(words: str) -> str:
    """Return a sentence with ``2 ft (0.6 m)`` told as ``0.6 m``, and examples in metric units.

    The metric number is a round one of its own.
    """
    words = re.sub(_EXAMPLE, lambda example: _WRITTEN[example[0]], words)
    return re.sub(_PAIR, r"\1", words)
