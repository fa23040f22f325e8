"""Plain refusals for numbers that cannot be right."""

from __future__ import annotations

import math
from typing import cast

from interview.quantities.units import Quantity, magnitude


def number_of(value: Quantity, unit: str, sentence: str) -> float:
    """Return the finite number of ``unit`` in ``value``; raises ValueError with ``sentence``."""
    number = magnitude(value, unit)
    if not math.isfinite(number):
        raise ValueError(sentence)
    return number


def positive(value: Quantity, unit: str, sentence: str) -> float:
    """Return the number of ``unit`` in ``value``, more than zero.

    Raises ValueError with ``sentence`` when it is zero, below zero or not a number.
    """
    number = number_of(value, unit, sentence)
    if number <= 0:
        raise ValueError(sentence)
    return number


def not_negative(value: Quantity, unit: str, sentence: str) -> float:
    """Return the number of ``unit`` in ``value``, zero or more; raises ValueError otherwise."""
    number = number_of(value, unit, sentence)
    if number < 0:
        raise ValueError(sentence)
    return number


def reaches(number: float, limit: float) -> bool:
    """Tell whether ``number`` is at or past ``limit``, forgiving the last bits of a float."""
    return number >= limit - 1e-9 * max(1.0, abs(limit))


def within(number: float, limit: float) -> bool:
    """Tell whether ``number`` is at or under ``limit``, forgiving the last bits of a float."""
    return number <= limit + 1e-9 * max(1.0, abs(limit))


def whole_up(number: float) -> int:
    """Return the whole number at or above ``number``, forgiving the last bits of a float."""
    return math.ceil(number - 1e-9 * max(1.0, number))


def times(value: Quantity, factor: float) -> Quantity:
    """Return ``value`` taken ``factor`` times, in its own unit."""
    return cast(Quantity, value * factor)
