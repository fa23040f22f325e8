"""Every figure of a plan, from the tables of its subjects, and the working behind each."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

from interview.asking import own_fault
from interview.asking.figure import Figure, Found
from interview.asking.question import Unanswered
from interview.garden.afterwards import figures as built
from interview.garden.earth import figures as earth
from interview.garden.plan import Plan
from interview.garden.planting import figures as planting
from interview.garden.site import figures as site
from interview.garden.size import figures as size
from interview.garden.size import rough_figures as rough
from interview.garden.soak import figures as soak
from interview.garden.storms import figures as storms
from interview.garden.survey import figures as survey
from interview.quantities.units import unit_name

TABLES: dict[str, tuple[Figure[Any], ...]] = {
    "site": site.FIGURES,
    "soak": soak.FIGURES,
    "survey": survey.FIGURES,
    "rough": rough.FIGURES,
    "size": size.FIGURES,
    "storms": storms.FIGURES,
    "earth": earth.FIGURES,
    "planting": planting.FIGURES,
    "built": built.FIGURES,
}
"""The tables, by the record of the plan that their figures are found in."""

FIGURES = tuple(figure for table in TABLES.values() for figure in table)
BY_KEY = {figure.key: figure for figure in FIGURES}
_RECORD = {figure.key: name for name, table in TABLES.items() for figure in table}


def find(figure: Figure[Any], plan: Plan) -> Found:
    """Return a figure's value in ``plan``, what it waits for, or the fault it met.

    Label and formula are in the words of its country.
    """
    record = getattr(plan, _RECORD[figure.key])
    source = figure.source_of(record) if figure.source_of else figure.source
    told = plan.answers.told
    label, formula = told(figure.label), told(figure.formula)
    if (label, formula) != (figure.label, figure.formula):
        figure = replace(figure, label=label, formula=formula)
    try:
        return Found(figure, figure.get(record), None, source)
    except Unanswered as gap:
        return Found(figure, None, gap, source)
    except Exception as trouble:
        own_fault.note(f"the figure {figure.key}", trouble)
        return Found(figure, None, None, source, trouble)


def found(plan: Plan) -> Iterator[Found]:
    """Yield every figure of ``plan`` in order."""
    for figure in FIGURES:
        yield find(figure, plan)


def working(key: str, plan: Plan) -> list[str]:
    """Return how one figure was got: formula, inputs, unrounded value, source."""
    one = find(BY_KEY[key], plan)
    figure = one.figure
    lines = [f"{figure.label}: {one.shown(plan.metric) or 'not known yet'}"]
    if figure.formula:
        lines.append(f"  how: {figure.formula}")
    for name in figure.inputs:
        if name in BY_KEY:
            inner = find(BY_KEY[name], plan)
            lines.append(f"  with {inner.figure.label.lower()}: {inner.shown(plan.metric) or '?'}")
        else:
            asked = plan.answers.interview.questions.get(name)
            label = f" ({plan.answers.told(asked.label)})" if asked is not None else ""
            lines.append(f"  with your answer: {name}{label}")
    number = one.number(plan.metric)
    if isinstance(number, float):
        lines.append(f"  unrounded: {number:.6g} {unit_name(figure.unit(plan.metric))}".rstrip())
    lines.append(f"  source: {one.source}")
    return lines
