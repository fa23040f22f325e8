"""Which columns of a rainfall file hold the date and the depth."""

from __future__ import annotations

import csv
import re
from collections.abc import Iterator
from enum import Enum

from interview.foreign import shown

HEADER_WITHIN_LINES = 50
MOST_LINES = 120_000
"""Three hundred years of days: a longer file is not one line a day."""
_DATE_NAMES = ("date", "day", "obs date", "observation date", "datetime", "timestamp", "time")
_DEPTH_NAMES = (
    "precipitation", "precip", "prcp", "rain", "rainfall", "depth", "daily precipitation",
    "daily precip", "daily rainfall", "daily rain", "total precipitation", "total precip",
    "total rain", "rain depth",
)  # fmt: skip
UNIT_WORDS = {
    "in": "in", "inch": "in", "inches": "in", "mm": "mm", "millimeter": "mm",
    "millimeters": "mm", "millimetre": "mm", "millimetres": "mm",
}  # fmt: skip
_DELIMITERS = (",", ";", "\t")

Row = tuple[int, list[str]]
"""The number of a line, and its cells."""


class Column(Enum):
    """The two columns a rainfall file must have."""

    DATE = "date"
    DEPTH = "rain"


class ColumnUnclear(ValueError):
    """A column cannot be told from the file; the sentence says what to write."""

    def __init__(self, column: Column, said: str) -> None:
        super().__init__(said)
        self.column = column


class BrokenLine(ValueError):
    """A line that is not plain CSV text."""


def delimiter_of(lines: list[str]) -> str:
    """Return what parts the cells: the comma, semicolon or tab found most in the first lines."""
    head = "\n".join(one for one in lines[:HEADER_WITHIN_LINES] if not one.startswith("#"))
    return max(_DELIMITERS, key=head.count)


def rows_of(lines: list[str], delimiter: str) -> Iterator[Row]:
    """Yield the cells of each line that says something; a broken line has one empty cell.

    Each line is read by itself, so that a stray quotation mark spoils no other line.
    """
    for number, line in enumerate(lines, 1):
        if '"' in line:
            try:
                cells = next(csv.reader([line], delimiter=delimiter, strict=True), [])
            except csv.Error:
                cells = [""]
                yield number, cells
                continue
        else:
            cells = line.split(delimiter)
        cells = [cell.strip() for cell in cells]
        if any(cells) and not cells[0].startswith("#"):
            yield number, cells


def words_of(name: str) -> list[str]:
    """Return the words of a heading in small letters."""
    return re.sub(r"[^a-z0-9]+", " ", name.lower()).split()


def _named(name: str, known: tuple[str, ...]) -> bool:
    words = words_of(name)
    while len(words) > 1 and words[-1] in UNIT_WORDS:
        words.pop()
    return " ".join(words) in known


def find_columns(
    rows: list[Row], date_column: str | None, depth_column: str | None
) -> tuple[int, tuple[int, int]]:
    """Return the index of the heading row and of the date and depth columns.

    A column given by name or by number from 1 is taken; one not given is found by the usual names.
    The heading row is -1 where both are given by number and the file begins with data. Raises
    ``ColumnUnclear``.
    """
    if not rows:
        raise ValueError("The rain file is empty, so give a file with a date and a depth a day.")
    numbers = _number(date_column), _number(depth_column)
    if numbers[0] is not None and numbers[1] is not None:
        return _by_number(rows, (numbers[0], numbers[1]))
    for index, (line, cells) in enumerate(rows):
        if line > HEADER_WITHIN_LINES:
            break
        dates = _places(cells, date_column, _DATE_NAMES)
        depths = _places(cells, depth_column, _DEPTH_NAMES)
        if dates and depths:
            if len(depths) > 1:
                names = " and ".join(cells[place][:40] for place in depths)
                raise ColumnUnclear(
                    Column.DEPTH,
                    f"The columns {names} could all be the rain, so write which one it is.",
                )
            return index, (dates[0], depths[0])
    raise _not_found(rows, date_column, depth_column)


def _number(given: str | None) -> int | None:
    text = (given or "").strip()
    return int(text) - 1 if text.isascii() and text.isdigit() and 0 < int(text[:4]) < 1000 else None


def _places(cells: list[str], given: str | None, known: tuple[str, ...]) -> list[int]:
    number = _number(given)
    if number is not None:
        return [number] if number < len(cells) else []
    if given is not None:
        wanted = given.strip().casefold()
        return [place for place, name in enumerate(cells) if name.casefold() == wanted]
    if known is _DATE_NAMES:
        # The names are in order of trust: a date before a time of day.
        return [p for name in known for p, cell in enumerate(cells) if _named(cell, (name,))]
    return [place for place, name in enumerate(cells) if _named(name, known)]


def _by_number(rows: list[Row], places: tuple[int, int]) -> tuple[int, tuple[int, int]]:
    for place, column in zip(places, Column, strict=True):
        if all(len(cells) <= place for _, cells in rows[:HEADER_WITHIN_LINES]):
            raise ColumnUnclear(
                column, f"The rain file has no column {place + 1}, so count its columns again."
            )
    for index, (_, cells) in enumerate(rows[:HEADER_WITHIN_LINES]):
        if len(cells) > max(places) and re.search(r"\d", cells[places[0]]):
            return index - 1, places
    return 0, places


def _not_found(rows: list[Row], date_column: str | None, depth_column: str | None) -> ValueError:
    head = rows[0][1]
    named = ", ".join(cell[:30] for cell in head if cell)[:160]
    names = shown(named) or "nothing"
    for given, known, column in (
        (date_column, _DATE_NAMES, Column.DATE),
        (depth_column, _DEPTH_NAMES, Column.DEPTH),
    ):
        near = rows[:HEADER_WITHIN_LINES]
        if any(_places(cells, given, known) for _, cells in near):
            continue
        if given is not None:
            said = f"No column is named {given[:40]}. The first line has: {names}."
        else:
            said = (
                f"No column is named {column.value}, so write the name or the number of that "
                f"column. The first line has: {names}."
            )
        return ColumnUnclear(column, said)
    return ColumnUnclear(
        Column.DATE, "The date and the rain are not named in one line, so mend the heading."
    )
