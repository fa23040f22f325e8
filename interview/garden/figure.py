"""One computed figure of a plan: where it is found, its units, and how it is got."""

from __future__ import annotations

import datetime as dt
import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from interview.asking import own_fault
from interview.asking.model import Unanswered
from interview.garden.plan import Plan
from interview.quantities.evidence import ARITHMETIC, Source
from interview.quantities.shown import PLAIN, Rounding
from interview.quantities.units import Quantity, magnitude, unit_name

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
    source_of: Callable[[Plan], Source] | None = None
    """Finds the source where it hangs on the answers, such as the rule of a state."""

    def unit(self, metric: bool) -> str:
        """Return the unit shown."""
        return self.metric if metric else self.us


@dataclass(frozen=True)
class Found:
    """A figure with its value in one plan, with what it waits for, or at fault."""

    figure: Figure
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
    """Return a figure's value in ``plan``, what it waits for, or the fault it met.

    Label and formula are in the words of its country.
    """
    source = figure.source_of(plan) if figure.source_of else figure.source
    told = plan.answers.told
    figure = replace(figure, label=told(figure.label), formula=told(figure.formula))
    try:
        return Found(figure, figure.get(plan), None, source)
    except Unanswered as gap:
        return Found(figure, None, gap, source)
    except Exception as trouble:
        own_fault.note(f"the figure {figure.key}", trouble)
        return Found(figure, None, None, source, trouble)
