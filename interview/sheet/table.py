"""Many gardens as one table of comma-separated values: a line a garden, units in the head."""

from __future__ import annotations

import csv
import difflib
import io
import math
from collections.abc import Callable, Iterable

from interview.asking import own_fault
from interview.asking.question import Unanswered
from interview.garden.figures import BY_KEY, find
from interview.garden.opening import ReadGarden
from interview.garden.place import questions as start
from interview.garden.summary import may_dig
from interview.quantities.units import unit_name
from interview.reading.foreign import shown
from interview.sheet.check import faults_beside, still_open
from interview.sheet.figures_file import exact

Cell = float | str | bool | None

USUAL = (
    "file",
    "name",
    "place",
    "verdict",
    "digging",
    "drop_rate",
    "corrected_rate",
    "pond_depth",
    "catchment_area",
    "over_all_length",
    "over_all_width",
    "rain_held",
    "soil_dug_total",
    "plants_total",
    "cost_total",
    "faults",
    "open_questions",
)
"""The columns where none are named."""

_FORMULA = tuple("=+-@＝＋－＠")
"""What a spreadsheet takes for the start of a formula (OWASP ASVS 5.0, 1.2.10, read in a second
copy; that full-width signs count too is from memory). Tabs and the like are shown as numbers."""


class NoColumn(ValueError):
    """A column that there is not; the message says what there is."""


def _place(garden: ReadGarden) -> str:
    answers = garden.plan.answers
    asked = start.STATE if start.us_state(answers) else start.COUNTRY
    value = answers.get(asked)
    return asked.kind.echo(value, answers) if value else ""


_OWN: dict[str, Callable[[ReadGarden], Cell]] = {
    "file": lambda one: one.name,
    "name": lambda one: one.plan.answers[start.GARDEN_NAME],
    "place": _place,
    "verdict": lambda one: one.plan.verdict.value,
    "digging": lambda one: may_dig(one.plan).word.lower(),
    "faults": lambda one: len(one.loaded.troubles) + len(faults_beside(one.plan)),
    "open_questions": lambda one: len(still_open(one.loaded.answers)),
}
"""The columns that are no figure."""


def columns(named: str | None) -> tuple[str, ...]:
    """Return the columns named, parted by commas, or the usual ones; raises ``NoColumn``."""
    if named is None:
        return USUAL
    wanted = tuple(one.strip() for one in named.split(","))
    known = (*_OWN, *BY_KEY)
    for one in wanted:
        if one not in known:
            near = difflib.get_close_matches(one, known, 1, 0.6)
            hint = f" Did you mean {near[0]}?" if near else ""
            raise NoColumn(
                f'there is no column "{shown(one)}".{hint} There are '
                f"{', '.join(_OWN)}, and every key of --figures."
            )
        if wanted.count(one) > 1:
            raise NoColumn(f"the column {one} is named twice")
    return wanted


def head(wanted: Iterable[str], metric: bool) -> str:
    """Return the first line: each column, with its unit in square brackets."""
    return _line(_headed(one, metric) for one in wanted)


def _headed(key: str, metric: bool) -> str:
    unit = BY_KEY[key].unit(metric) if key in BY_KEY else ""
    return f"{key} [{unit_name(unit)}]" if unit else key


def row(garden: ReadGarden, wanted: Iterable[str], metric: bool) -> str:
    """Return the line of a garden, its figures in the units of the table.

    A cell is empty where its value waits for an answer, or met a fault of the program.
    """
    return _line(_cell(key, garden, metric) for key in wanted)


def lacking(name: str, wanted: Iterable[str]) -> str:
    """Return the line of a file that cannot be read: its name alone, with ``unreadable``."""
    cells = {"file": harmless(name), "verdict": "unreadable"}
    return _line(cells.get(key, "") for key in wanted)


def _cell(key: str, garden: ReadGarden, metric: bool) -> str:
    try:
        own = _OWN.get(key)
        return written(own(garden) if own else find(BY_KEY[key], garden.plan).number(metric))
    except Unanswered:
        return ""
    except Exception as trouble:
        own_fault.note(f"the column {key}", trouble)
        return ""


def written(value: Cell) -> str:
    """Return a cell: a number with as many digits as in the figures, words made harmless."""
    match value:
        case None:
            return ""
        case bool():
            return "true" if value else "false"
        case float() if math.isfinite(value):
            return exact(value)
        case float() | int():
            return str(value)
    return harmless(value)


def harmless(text: str) -> str:
    """Return words that a spreadsheet cannot take for a formula: such have a ``'`` before them."""
    text = shown(text)
    return f"'{text}" if text.lstrip().startswith(_FORMULA) else text


def _line(cells: Iterable[str]) -> str:
    out = io.StringIO()
    csv.writer(out, lineterminator="\n").writerow(cells)
    return out.getvalue()
