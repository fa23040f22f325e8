"""The plan of an answers file from code, such as a notebook: load, plan, figures.

    from interview.plain.from_code import figures, load

    garden = load("sample_answers/finished_us.yaml")
    plan = garden.plan
    rows = figures(plan)

``rows["pond_depth"].value`` is a number in ``rows["pond_depth"].unit``; with pandas,
``DataFrame(rows.values())`` is the table of them all. The file is only read.
"""

from __future__ import annotations

import datetime as dt
import os
from typing import NamedTuple

from interview.garden.figures import found
from interview.garden.opening import NotRead, ReadGarden, read_garden
from interview.garden.plan import Plan
from interview.plain import clock
from interview.quantities.units import unit_name

__all__ = ["FigureRow", "NotRead", "Plan", "ReadGarden", "figures", "load"]


class FigureRow(NamedTuple):
    """One figure of a plan, in the units that the garden shows."""

    key: str
    """Its name, which never changes."""
    label: str
    value: float | str | bool | None
    """A number, unrounded; a date or a word as text; nothing while it waits."""
    unit: str
    """The printed name of its unit, such as ``ft²``; empty for pure numbers and words."""
    waits_for: str
    """The address of the answer it waits for, such as ``holes.1.hole_width``; else empty."""


def load(
    file: str | os.PathLike[str], today: dt.date | None = None, plants: str = ""
) -> ReadGarden:
    """Return the garden of an answers file: its ``plan``, its ``loaded.troubles`` by line.

    ``today`` is the day for which gate, verdict and calendar are worked out, at noon. ``plants``
    is a plant file used in place of the one the answers name. Raises ``NotRead`` with a sentence.
    """
    now = clock.now() if today is None else clock.noon(today)
    return read_garden(os.fspath(file), now, plants)


def figures(plan: Plan) -> dict[str, FigureRow]:
    """Return every figure of a plan by its key, with the value and the unit of ``--figures``.

    A figure that meets an error in the program raises it.
    """
    rows = {}
    for one in found(plan):
        if one.trouble is not None:
            raise one.trouble
        gap, unit = one.waits_for, unit_name(one.figure.unit(plan.metric))
        rows[one.figure.key] = FigureRow(
            one.figure.key,
            one.figure.label,
            one.number(plan.metric),
            unit,
            gap.address if gap else "",
        )
    return rows
