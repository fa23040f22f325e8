"""One computed figure of a plan: where it is found, its units, and how it is got."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable
from typing import Any, Generic, TypeVar

from interview.asking import own_fault
from interview.asking.question import Unanswered
from interview.quantities.evidence import ARITHMETIC, Source
from interview.quantities.records import record
from interview.quantities.shown import PLAIN, Rounding
from interview.quantities.units import Quantity, magnitude, unit_name
from interview.reading import said_day

Value = Quantity | float | int | str | dt.date | bool


DIST, RATE, AREA, VOLUME = ("in", "mm"), ("in/h", "mm/h"), ("ft**2", "m**2"), ("ft**3", "m**3")
SIDE, HOURS, PERCENT = ("ft", "m"), ("h", "h"), ("percent", "percent")
"""Units shown, US and metric, of each sort of figure."""

R = TypeVar("R")
"""The record that a figure is found in."""


@record
class Figure(Generic[R]):
    """One figure: how it is found in a record, its units, and how it is got."""

    key: str
    """The name in the list of figures; never changes once released."""
    label: str
    get: Callable[[R], Value]
    us: str = ""
    """The unit shown with US units; empty for pure numbers and words."""
    metric: str = ""
    formula: str = ""
    inputs: tuple[str, ...] = ()
    """Keys of the figures and questions it is got from."""
    source: Source = ARITHMETIC
    rounding: Rounding = PLAIN
    words: Callable[[Quantity, bool], str] | None = None
    """Writes the value where it is set out with a tape and not read as a number."""
    source_of: Callable[[R], Source] | None = None
    """Finds the source where it hangs on the answers, such as the rule of a state."""

    def unit(self, metric: bool) -> str:
        """Return the unit shown."""
        return self.metric if metric else self.us


@record
class Found:
    """A figure with its value in one plan, with what it waits for, or at fault."""

    figure: Figure[Any]
    value: Value | None
    waits_for: Unanswered | None
    source: Source
    trouble: Exception | None = None
    """The fault of the program that the figure met."""

    def number(self, metric: bool) -> float | int | str | bool | None:
        """Return the bare value in the unit shown; dates and words as text."""
        value = self.value
        if value is None or isinstance(value, (bool, int, float, str)):
            return value
        if isinstance(value, dt.date):
            return value.isoformat()
        return magnitude(value, self.figure.unit(metric))

    def shown(self, metric: bool) -> str:
        """Return the value as the plan shows it, rounded, with its unit."""
        if self.trouble is not None:
            return own_fault.short(self.trouble)
        number, value = self.number(metric), self.value
        if isinstance(value, dt.date):
            return said_day(value)
        if self.figure.words is not None and isinstance(number, float) and value is not number:
            return self.figure.words(value, metric)  # type: ignore[arg-type]
        if isinstance(number, bool):
            return "yes" if number else "no"
        if isinstance(number, (str, int)) or number is None:
            return "" if number is None else str(number)
        if not math.isfinite(number):
            return "never"
        unit = self.figure.unit(metric)
        text = self.figure.rounding.write(number)
        if unit == "percent":
            return f"{text} %"
        return f"{text} {unit_name(unit)}".strip()
