"""How the errors of what was measured carry into what was worked out."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import NamedTuple

TAPE_ERROR_IN = 1.0
"""Standard error of a taped length: a choice of this project."""
COVERAGE = 2.0
"""A range reaches two standard errors either way."""


class Spread(NamedTuple):
    """A worked-out number, its standard error, and what the error comes from."""

    value: float
    standard_error: float
    shares: Mapping[str, float]
    """Share of the variance by input, adding to 1; empty when nothing is uncertain."""

    @property
    def driver(self) -> str | None:
        """The input that widens the range most; ``None`` when nothing is uncertain."""
        return biggest(self.shares)

    @property
    def low(self) -> float:
        """Two standard errors below the value."""
        return self.value - COVERAGE * self.standard_error

    @property
    def high(self) -> float:
        """Two standard errors above the value."""
        return self.value + COVERAGE * self.standard_error


def biggest(parts: Mapping[str, float]) -> str | None:
    """Return the name of the largest part; of equals the first by name, so order is no matter."""
    told = {name: part for name, part in parts.items() if part > 0}
    return min(told, key=lambda name: (-told[name], name)) if told else None


def combine(parts: Mapping[str, float]) -> tuple[float, dict[str, float]]:
    """Return the root of the summed squares of ``parts`` and each part's share of the sum."""
    variance = math.fsum(part * part for part in parts.values())
    if variance == 0:
        return 0.0, {}
    return math.sqrt(variance), {name: part * part / variance for name, part in parts.items()}


def propagate(
    f: Callable[[Mapping[str, float]], float], inputs: Mapping[str, tuple[float, float]]
) -> Spread:
    """Carry independent errors through ``f`` to first order, by central differences.

    ``inputs`` gives each input's value and standard error; ``f`` takes the values by name. Raises
    ValueError for an error below zero or a number that is not finite. Source: JCGM 100:2008,
    section 5.1.2.
    """
    for name, (value, error) in inputs.items():
        if not math.isfinite(value) or not math.isfinite(error) or error < 0:
            raise ValueError(f"The error of {name} must be zero or more.")
    middle = {name: value for name, (value, _) in inputs.items()}
    parts = {
        name: _slope(f, middle, name, error) * error
        for name, (_, error) in inputs.items()
        if error > 0
    }
    total, shares = combine(parts)
    return Spread(f(middle), total, shares)


def _slope(
    f: Callable[[Mapping[str, float]], float], at: Mapping[str, float], name: str, error: float
) -> float:
    # A step tied to the error keeps the slope local and clear of rounding noise.
    step = max(1e-3 * error, 1e-7 * abs(at[name]))
    above = f({**at, name: at[name] + step})
    below = f({**at, name: at[name] - step})
    return (above - below) / (2 * step)
