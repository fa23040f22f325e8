"""One computed figure of a plan: where it is found, its units, and how it is got."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from interview.evidence import ARITHMETIC, Source
from interview.model import Unanswered
from interview.plan import Plan
from interview.shown import PLAIN, Rounding
from interview.units import Quantity, magnitude, unit_name

Value = Quantity | float | int | str | dt.date | bool


@dataclass(frozen=True)
class Figure:
    """One figure: where it is found in the plan, its units, and how it is got."""

    key: str
    """The name in the list of figures; never changes once released."""
    label: str
    get: Callable[[Plan], Value]
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

    def unit(self, metric: bool) -> str:
        """Return the unit shown."""
        return self.metric if metric else self.us


@dataclass(frozen=True)
class Found:
    """A figure with its value in one plan, or with what it waits for."""

    figure: Figure
    value: Value | None
    waits_for: Unanswered | None

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
        number, value = self.number(metric), self.value
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


def find(figure: Figure, plan: Plan) -> Found:
    """Return a figure's value in ``plan``, or what it waits for, in the words of its country."""
    told = plan.answers.told
    figure = replace(figure, label=told(figure.label), formula=told(figure.formula))
    try:
        return Found(figure, figure.get(plan), None)
    except Unanswered as gap:
        return Found(figure, None, gap)
