"""The readings of one hole as the rows of a table."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from interview.asking.model import Answers
from interview.garden.soak import questions as soak
from interview.garden.soak.reading_lines import DROP, EMPTIED, EMPTY, LEFT, REFILLED, SoakEvent
from interview.garden.soak.readings import Interval
from interview.garden.soak.times import elapsed_words, utc
from interview.garden.soak.words import READING_DIGITS, reading_rate
from interview.quantities.units import magnitude, plain_number, significant

HEADS = ("clock", "after", "water", "drop", "since fill", "since last", "corrected")
"""What the cells of a row are; rates in the unit shown."""


@dataclass(frozen=True)
class RunRow:
    """One line of the readings; every cell is ready to be shown."""

    place: int
    """Which line of the file, from 1."""
    line: str
    """The words kept in the file."""
    what: str = ""
    clock: str = ""
    elapsed: str = ""
    water: str = ""
    drop: str = ""
    """The fall since the reading or filling before."""
    since_fill: str = ""
    """Drop rate since the hole was last filled."""
    since_last: str = ""
    """Drop rate since the reading before."""
    corrected: str = ""
    struck: bool = False
    note: str = ""
    """Why the stretch before this reading is not used."""

    @property
    def cells(self) -> tuple[str, ...]:
        """The cells under ``HEADS``."""
        return (
            self.clock,
            self.elapsed,
            self.water,
            self.drop,
            self.since_fill,
            self.since_last,
            self.corrected,
        )


def rows_of(
    lines: Sequence[str],
    events: Sequence[SoakEvent],
    found: Sequence[Interval],
    view: Answers,
    shape_known: bool = True,
) -> tuple[RunRow, ...]:
    """Return a row for each reading, struck ones and refills too; ``found`` may be empty."""
    left = iter(found)
    rows = []
    for place, (line, event) in enumerate(zip(lines, events, strict=True), 1):
        row = _plain(place, line, event, view)
        if not event.struck and event.what != REFILLED:
            row = _rated(row, next(left, None), view, shape_known)
        rows.append(row)
    return tuple(rows)


def _plain(place: int, line: str, event: SoakEvent, view: Answers) -> RunRow:
    began = view[soak.TEST_START]
    at = event.at.astimezone(began.tzinfo)
    return RunRow(
        place,
        line,
        event.what,
        f"{at:%H:%M}" if at.date() == began.date() else f"{at:%a %H:%M}",
        elapsed_words(utc(event.at) - utc(began)),
        _water(event, view),
        struck=event.struck,
    )


def _rated(row: RunRow, match: Interval | None, view: Answers, shape_known: bool) -> RunRow:
    if match is None:
        return row
    deep, metric = "mm" if view.metric else "in", view.metric
    least = "≥ " if match.found_empty else ""
    corrected = match.corrected if shape_known else None
    fill = match.drop_rate_since_fill
    return RunRow(
        row.place,
        row.line,
        row.what,
        row.clock,
        row.elapsed,
        row.water,
        plain_number(significant(magnitude(match.drop, deep), READING_DIGITS)),
        "" if fill is None else reading_rate(fill, metric),
        least + reading_rate(match.drop_rate, metric),
        "" if corrected is None else least + reading_rate(corrected, metric),
        note=match.why_not,
    )


def _water(event: SoakEvent, view: Answers) -> str:
    """Write what was seen; a drop as the drop, because that is what was measured."""
    if event.depth is None:
        return {EMPTY: "empty", EMPTIED: "went empty"}[event.what]
    unit = "mm" if view.metric else "in"
    words = {LEFT: "", DROP: " down", REFILLED: " refilled"}[event.what]
    return f"{plain_number(round(magnitude(event.depth, unit), 3))} {unit}{words}"
