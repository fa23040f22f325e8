"""Every figure of a plan for another program: as YAML, or the same tree as JSON, and its schema."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from importlib.resources import files
from typing import Any

from interview.answers_file import double_quoted
from interview.asking import lands, own_fault
from interview.asking.figure import Found
from interview.asking.statuses import NAME
from interview.garden.figures import FIGURES, found
from interview.garden.guides import guides
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.summary import assumed
from interview.quantities.units import unit_name
from interview.sheet import figures_blocks as blocks
from interview.sheet.figures_blocks import TableRow, Tree, Word

FORMAT = "rain-garden-figures"
FORMAT_VERSION = "1.0"
"""The second number grows with each new key, the first where one would change its meaning."""
DIGITS = 8
"""Significant digits of a figure in the list: more than any measurement, few enough to read."""
SCHEMA = "figures_schema.json"
WITHOUT_END = "inf"
"""What JSON, which has no number for it, holds for a time that never ends."""


def _guides(plan: Plan) -> Tree:
    """Return where guides disagree, what each says, and which is followed."""
    return {
        "guides_disagree": [
            {
                "key": Word(matter.key),
                "followed": matter.followed,
                "sayings": [
                    TableRow(says=one.says, here=one.here, source=str(one.source))
                    for one in matter.sayings
                ],
            }
            for matter in guides(plan)
        ]
    }


def _findings(plan: Plan) -> Tree:
    """Return everything found, the limit it was held against, and what would change it."""
    return {
        "findings": [
            {
                "key": Word(one.key),
                "grade": Word(one.grade.value),
                "said": one.said,
                "limit": one.limit or None,
                "change": one.change or None,
                "source": str(one.source),
            }
            for one in plan.findings
        ]
    }


def _assumed(plan: Plan) -> Tree:
    """Return the usual value that counts for each question without an answer."""
    return {"assumed": {step.address: default for step, default in assumed(plan.answers)}}


_PARTS: tuple[tuple[tuple[str, ...], Callable[[Plan], Tree]], ...] = (
    (("holes",), blocks.holes),
    (("surfaces", "variance_shares", "walkers"), blocks.surfaces),
    (("storms",), blocks.storms),
    (("record_by_size", "record_by_year", "record_by_month"), blocks.record),
    (("planting",), blocks.planting),
    (("plants",), blocks.plants),
    (("shopping", "costs"), blocks.shopping),
    (("guides_disagree",), _guides),
    (("findings",), _findings),
    (("assumed",), _assumed),
)
"""The names that each part gives, and what gives it."""


def exact(value: float) -> str:
    """Write a number with ``DIGITS``."""
    return f"{value:.{DIGITS}g}"


def figures_tree(plan: Plan, written_by: str = NAME) -> Tree:
    """Return everything computed of ``plan``, as ``SCHEMA`` tells.

    Numbers have ``DIGITS``. A figure that meets a fault of the program has no value and says so
    under ``fault``; other parts that do are nothing as well, and ``faults`` at the end names all.
    """
    with own_fault.noting() as faults:
        tree: Tree = {
            "format": Word(FORMAT),
            "format_version": FORMAT_VERSION,
            "written_by": written_by,
        }
        tree |= _part(("garden", "day"), _garden, plan)
        tree |= _part(("verdict",), lambda plan: {"verdict": Word(plan.verdict.value)}, plan)
        tree |= _part(("units",), lambda plan: {"units": Word(plan.system)}, plan)
        tree |= _part(("columns",), blocks.columns, plan)
        tree["figures"] = {one.figure.key: _figure_or_fault(one, plan) for one in found(plan)}
        for names, part in _PARTS:
            tree |= _part(names, part, plan)
    if faults:
        tree["faults"] = [TableRow({"in": one.part, "at": one.where}) for one in faults]
    return _rounded(tree)  # type: ignore[no-any-return]


def figures_text(plan: Plan, written_by: str = NAME) -> str:
    """Return the figures as YAML text."""
    return "".join(f"{line}\n" for line in _lines(figures_tree(plan, written_by), ""))


def figures_json(plan: Plan, written_by: str = NAME) -> str:
    """Return the same tree as JSON, in ASCII alone so that any output takes every character."""
    return json.dumps(_finite(figures_tree(plan, written_by)), indent=1, allow_nan=False) + "\n"


def schema_text() -> str:
    """Return the JSON Schema of the figures, with the name and the units of every figure."""
    schema = json.loads(files(__package__).joinpath(SCHEMA).read_text(encoding="utf-8"))
    figures = schema["properties"]["figures"]
    figures["required"] = [one.key for one in FIGURES]
    figures["properties"] = {
        one.key: {"$ref": "#/$defs/figure", "description": _told(one.label, one.us, one.metric)}
        for one in FIGURES
    }
    return json.dumps(schema, indent=1) + "\n"


def _told(label: str, us: str, metric: str) -> str:
    units = dict.fromkeys(unit_name(one) for one in (us, metric) if one)
    return f"{label}, in {' or '.join(units)}" if units else label


def _garden(plan: Plan) -> Tree:
    answers = plan.answers
    state = start.us_state(answers)
    country = answers.get(start.COUNTRY) or (lands.US if state else None)
    place = {
        "name": answers[start.GARDEN_NAME],
        "country": Word(country) if country else None,
        "state": Word(state) if state else None,
    }
    return {"garden": TableRow(place), "day": plan.now.date().isoformat()}


def _figure_or_fault(one: Found, plan: Plan) -> Tree:
    trouble = one.trouble
    if trouble is None:
        try:
            return _figure(one, plan.metric)
        except Exception as found_now:
            trouble = found_now
    said = own_fault.note(f"the figure {one.figure.key}", trouble)
    return {"label": one.figure.label, "value": None, "fault": said}


def _figure(one: Found, metric: bool) -> Tree:
    figure: Tree = {"label": one.figure.label}
    if one.waits_for is not None:
        figure |= {"value": None, "waits_for": one.waits_for.address}
        return figure | ({"why": one.waits_for.why} if one.waits_for.why else {})
    figure["value"] = one.number(metric)
    if unit := one.figure.unit(metric):
        figure["unit"] = unit_name(unit)
    if one.figure.formula:
        figure["formula"] = one.figure.formula
    if one.figure.inputs:
        figure["from"] = [Word(each) for each in one.figure.inputs]
    return figure | {"source": str(one.source)}


def _part(names: tuple[str, ...], part: Callable[[Plan], Tree], plan: Plan) -> Tree:
    try:
        return part(plan)
    except Exception as trouble:
        own_fault.note(" and ".join(names), trouble)
        return dict.fromkeys(names)


def _each(node: Any, leaf: Callable[[Any], Any]) -> Any:
    """Return the tree with ``leaf`` of every value in place of it."""
    if isinstance(node, dict):
        return type(node)({key: _each(value, leaf) for key, value in node.items()})
    return [_each(one, leaf) for one in node] if isinstance(node, list) else leaf(node)


def _rounded(node: Any) -> Any:
    """Return the tree with every number to ``DIGITS``, and whole where it then is."""

    def number(value: Any) -> Any:
        if not isinstance(value, float) or not math.isfinite(value):
            return value
        short = float(exact(value))
        return int(short) if short.is_integer() and abs(short) < 10**DIGITS else short

    return _each(node, number)


def _finite(node: Any) -> Any:
    return _each(node, lambda one: WITHOUT_END if one == math.inf else one)


# YAML. Another writer would do, but not with a table's row on one line.

_BARE = r"[A-Za-z][A-Za-z0-9_]*(?:\.[A-Za-z0-9_]+)*"
_TRUTHS = frozenset(("y", "n", "yes", "no", "on", "off", "true", "false", "null"))
"""Read as truth or nothing by one version of YAML or another."""


def _lines(tree: Mapping[str, Any], indent: str) -> Iterator[str]:
    for key, value in tree.items():
        start = f"{indent}{_key(key)}:"
        if not _is_block(value):
            yield f"{start} {_inline(value)}"
        elif isinstance(value, dict):
            yield start
            yield from _lines(value, f"{indent}  ")
        else:
            yield start
            for one in value:
                yield from _item(one, f"{indent}  ")


def _item(one: Any, indent: str) -> Iterator[str]:
    if not _is_block(one):
        yield f"{indent}- {_inline(one)}"
        return
    first, *rest = _lines(one, f"{indent}  ")
    yield f"{indent}- {first[len(indent) + 2 :]}"
    yield from rest


def _is_block(value: Any) -> bool:
    """Tell whether a value takes lines of its own."""
    if isinstance(value, list):
        return any(isinstance(one, (dict, list)) for one in value)
    return isinstance(value, dict) and not isinstance(value, TableRow) and bool(value)


def _inline(value: Any) -> str:
    if isinstance(value, dict):
        return "{" + ", ".join(f"{_key(key)}: {_inline(one)}" for key, one in value.items()) + "}"
    if isinstance(value, list):
        return f"[{', '.join(_inline(one) for one in value)}]"
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, float):
        return _float(value)
    return str(value) if isinstance(value, (Word, int)) else _quoted(value)


def _float(value: float) -> str:
    """Write a number; the old YAML takes one without a point for a text."""
    if math.isinf(value):
        return ".inf"
    text = exact(value)
    return text.replace("e", ".0e") if "e" in text and "." not in text else text


@lru_cache(maxsize=1000)
def _key(key: str) -> str:
    bare = re.fullmatch(_BARE, key) and key.casefold() not in _TRUTHS
    return key if bare else _quoted(key)


def _quoted(text: str) -> str:
    # The diagonal's stand-in on an ASCII output is a backslash, which would bend the quotes.
    return double_quoted(text).replace("╲", "\\u2572")
