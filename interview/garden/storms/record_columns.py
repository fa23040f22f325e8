"""Which columns of a rainfall file hold the date and the depth."""

from __future__ import annotations

import csv
import re
from collections.abc import Sequence
from enum import Enum
from typing import NamedTuple

from interview.reading.foreign import shown

HEAD_ROWS = 50
"""The headings are looked for in so many lines that say something."""
MOST_LINES = 120_000
"""Three hundred years of days: a longer file is not one line a day."""
LONGEST_LINE = 10_000
"""Most characters of a line: a few hundred columns."""
SHOWN_COLUMNS = 12
"""Columns of a file that are named one by one."""
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
_BLANK = "".join(_DELIMITERS) + ' "'

Row = tuple[int, list[str]]
"""The number of a line, and its cells."""
BROKEN = ("",)
"""The cells of a line that cannot be parted."""
_DATE_LIKE = r"\d{4}([-/.]?)\d{2}\1\d{2}|\d{1,2}[/.-]\d{1,2}[/.-]\d{4}"


class Column(Enum):
    """The two columns a rainfall file must have."""

    DATE = "date"
    DEPTH = "rain"


class ColumnUnclear(ValueError):
    """A column cannot be told from the file; the sentence says what to write."""

    def __init__(self, column: Column, said: str) -> None:
        super().__init__(said)
        self.column = column


def says_something(line: str) -> bool:
    """Tell whether a line is neither empty nor a comment."""
    bare = line.strip(_BLANK)
    return bool(bare) and not bare.startswith("#")


def delimiter_of(head: Sequence[str]) -> str:
    """Return what parts the cells: the comma, semicolon or tab found most in the first lines."""
    counts = {one: sum(line.count(one) for line in head) for one in _DELIMITERS}
    return max(_DELIMITERS, key=counts.__getitem__)


def cells_of(line: str, delimiter: str) -> list[str]:
    """Return the cells of a line, one empty cell where it is broken or longer than a line may be.

    Each line is read by itself, so that a stray quotation mark spoils no other line.
    """
    if len(line) > LONGEST_LINE:
        return list(BROKEN)
    if '"' not in line:
        return [cell.strip() for cell in line.split(delimiter)]
    try:
        cells = next(csv.reader([line], delimiter=delimiter, strict=True))
    except csv.Error:
        return list(BROKEN)
    return [cell.strip() for cell in cells]


class Head(NamedTuple):
    """The columns of a rainfall file by its first lines."""

    cells: tuple[str, ...]
    """The headings, or the first line of data where there are none."""
    named: bool
    """Whether they are headings."""

    def __str__(self) -> str:
        """The columns by number and name, such as ``1 date, 2 rain_in``."""
        told = ", ".join(map(self.told, range(min(len(self.cells), SHOWN_COLUMNS))))
        more = len(self.cells) - SHOWN_COLUMNS
        return f"{told} and {more} more" if more > 0 else told

    def named_so(self, column: Column) -> list[int]:
        """Return the places of the columns known by their names as the date, or as the rain."""
        known = _DATE_NAMES if column is Column.DATE else _DEPTH_NAMES
        return _places(list(self.cells), None, known) if self.named else []

    def told(self, place: int) -> str:
        """Return number and name of the column at ``place``, such as ``2 rain_in``."""
        return f"{place + 1} {_shown(self.cells[place])}"


def head_of(rows: Sequence[Row]) -> Head:
    """Return the columns by the first rows: the headings are the row above the first date."""
    whole = [cells for _, cells in rows if cells != list(BROKEN)]
    for place, cells in enumerate(whole):
        if any(re.match(_DATE_LIKE, cell) for cell in cells):
            return Head(tuple(whole[place - 1] if place else cells), place > 0)
    return Head(tuple(whole[0]) if whole else (), True)


def _shown(cell: str) -> str:
    return "".join(char for char in cell[:30] if char.isprintable()) or "without a name"


def words_of(name: str) -> list[str]:
    """Return the words of a heading in small letters."""
    return re.sub(r"[^a-z0-9]+", " ", name.lower()).split()


def _named(name: str, known: tuple[str, ...]) -> bool:
    words = words_of(name)
    while words and words[-1] in UNIT_WORDS:
        words.pop()
    return " ".join(words) in known


def find_columns(
    rows: Sequence[Row], date_column: str | None, depth_column: str | None
) -> tuple[int, tuple[int, int]]:
    """Return the index of the heading row and of the date and depth columns.

    A column given by name or by number from 1 is taken; one not given is found by the usual names.
    The heading row is -1 where both are given by number and the file begins with data. Raises
    ``ColumnUnclear`` where a column cannot be told, or one is given for both.
    """
    header, columns = _find(rows, date_column, depth_column)
    if columns[0] == columns[1]:
        raise ColumnUnclear(
            Column.DEPTH,
            f"Column {columns[0] + 1} is given for the date and for the rain. Write which one "
            f"holds the rain. {_first_line(rows)}",
        )
    return header, columns


def _find(
    rows: Sequence[Row], date_column: str | None, depth_column: str | None
) -> tuple[int, tuple[int, int]]:
    if not rows:
        raise ValueError(
            "The rain file is empty. Give a file with a date and a depth for each day."
        )
    numbers = _number(date_column), _number(depth_column)
    if numbers[0] is not None and numbers[1] is not None:
        return _by_number(rows, (numbers[0], numbers[1]))
    if all(cells == list(BROKEN) for _, cells in rows):
        raise ValueError(
            "The first lines of the rain file cannot be split into columns. Give a file with a "
            "date and a depth for each day."
        )
    for index, (_, cells) in enumerate(rows):
        dates = _places(cells, date_column, _DATE_NAMES)
        depths = _places(cells, depth_column, _DEPTH_NAMES)
        if dates and depths:
            if len(depths) > 1:
                names = " and ".join(_shown(cells[place]) for place in depths[:SHOWN_COLUMNS])
                raise ColumnUnclear(
                    Column.DEPTH,
                    f"The columns {names} could all be the rain. Write which one it is.",
                )
            return index, (dates[0], depths[0])
    raise _not_found(rows, date_column, depth_column)


def _number(given: str | None) -> int | None:
    text = (given or "").strip()
    return int(text) - 1 if re.fullmatch("0{0,3}[1-9][0-9]{0,2}", text) else None


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


def _by_number(rows: Sequence[Row], places: tuple[int, int]) -> tuple[int, tuple[int, int]]:
    for at, column in enumerate(Column):
        if all(len(cells) <= places[at] for _, cells in rows):
            raise ColumnUnclear(
                column, f"The rain file has no column {places[at] + 1}. Count its columns again."
            )
    for index, (_, cells) in enumerate(rows):
        if len(cells) > max(places) and re.search(r"\d", cells[places[0]]):
            return index - 1, places
    return 0, places


def _first_line(rows: Sequence[Row]) -> str:
    place, cells = next((row for row in rows if row[1] != list(BROKEN)), rows[0])
    named = ", ".join(cell[:30] for cell in cells[:SHOWN_COLUMNS] if cell)[:160]
    names = shown(named) or "nothing"
    return f"{'The first line' if rows[0][1] == cells else f'Line {place}'} has: {names}."


def _not_found(
    rows: Sequence[Row], date_column: str | None, depth_column: str | None
) -> ValueError:
    for given, known, column in (
        (date_column, _DATE_NAMES, Column.DATE),
        (depth_column, _DEPTH_NAMES, Column.DEPTH),
    ):
        if any(_places(cells, given, known) for _, cells in rows):
            continue
        if given is not None:
            said = f"No column is named {given[:40]}. {_first_line(rows)}"
        else:
            said = (
                f"No column is named {column.value}. Write the name or the number of that column. "
                f"{_first_line(rows)}"
            )
        return ColumnUnclear(column, said)
    return ColumnUnclear(
        Column.DATE, "The date and the rain are not named in the same line. Correct the heading."
    )
