"""Splits CSV text into rows whose cells can be read, naming every fault by its line."""

from __future__ import annotations

import csv
import io
from enum import Enum
from functools import lru_cache
from typing import NamedTuple, TypeVar

from interview.reading.echo import word_list

E_ = TypeVar("E_", bound=Enum)

MOST_COLUMNS = 200
MOST_ROWS = 10_000
LONGEST_CELL = 1000
"""Bounds of a list of plants, with room: the packaged one has 47 columns and 318 rows. They keep
the time and the faults of any file within what can be waited for and read."""
SHOWN = 40
"""Characters of a strange word that are told back."""


class RowFault(NamedTuple):
    """One thing wrong in a list: the line, the column (empty for the whole line), what to do."""

    line: int
    column: str
    sentence: str


class Row:
    """The cells of one line, and the faults found while they are read.

    Each reader returns a stand-in after noting a fault, so that one pass finds every fault.
    """

    def __init__(self, line: int, cells: dict[str, str], needed: tuple[str, ...]) -> None:
        self.line = line
        self.cells = cells
        self.needed = needed
        self.faults: list[RowFault] = []

    def fault(self, column: str, sentence: str) -> None:
        """Note what is wrong in ``column`` and what to do."""
        self.faults.append(RowFault(self.line, column, sentence))

    def text(self, column: str) -> str:
        """Return the cell, empty where it is; a needed cell that is empty is a fault."""
        found = self.cells.get(column, "")
        if not found and column in self.needed:
            self.fault(column, f"Fill in {column}; every plant needs it.")
        return found

    def many(self, column: str) -> tuple[str, ...]:
        """Return the parts of a cell between semicolons."""
        found = self.text(column)
        return _parts(found) if found else ()

    def number(self, column: str, low: float, high: float, empty: float) -> float:
        """Return a number from ``low`` to ``high``, or ``empty`` where there is none."""
        words = self.text(column)
        if not words:
            return empty
        try:
            found = float(words)
        except ValueError:
            self.fault(column, f"Write a plain number for {column}, such as {low:g}.")
            return empty
        if not low <= found <= high:
            self.fault(column, f"Write a number from {low:g} to {high:g} for {column}.")
            return empty
        return found

    def word(self, column: str, allowed: tuple[str, ...], empty: str) -> str:
        """Return one of the ``allowed`` words, or ``empty`` where there is none."""
        found = self.text(column).lower()
        if not found:
            return empty
        if found not in allowed:
            self.fault(
                column, f"Write {word_list(allowed, 'or')} for {column}, not “{found[:SHOWN]}”."
            )
            return empty
        return found

    def yes(self, column: str) -> bool:
        """Tell whether the cell says yes; empty is no."""
        return self.word(column, ("yes", "no"), "no") == "yes"

    def members(self, column: str, kind: type[E_], by_name: bool) -> tuple[E_, ...]:
        """Return the members of ``kind`` that the cell lists, by their names or their values."""
        cell = self.text(column)
        if not cell:
            return ()
        found, wrong = _members(column, kind, by_name, cell)
        if wrong:
            self.fault(column, wrong)
        return found


# Many rows of a list have one and the same cell.
@lru_cache(maxsize=1000)
def _parts(cell: str) -> tuple[str, ...]:
    return tuple(filter(None, map(str.strip, cell.split(";"))))


@lru_cache(maxsize=1000)
def _members(column: str, kind: type[E_], by_name: bool, cell: str) -> tuple[tuple[E_, ...], str]:
    """Return the members that a cell lists, and its fault."""
    known = {(one.name if by_name else str(one.value)).lower(): one for one in kind}
    words = _parts(cell)
    found = dict.fromkeys([known.get(word.lower()) for word in words])
    wrong = ""
    if None in found:
        strange = next(word for word in words if word.lower() not in known)
        shown = tuple(name.upper() if by_name else name for name in known)
        wrong = f"Write {word_list(shown, 'or')} for {column}, not “{strange[:SHOWN]}”."
    return tuple(one for one in found if one is not None), wrong


def split_rows(
    text: str, known: tuple[str, ...], needed: tuple[str, ...]
) -> tuple[list[Row], list[RowFault]]:
    """Split ``text`` into rows by the names in its first line; lines after ``#`` are comments.

    Without the names it needs there are no rows, only the fault that says so.
    """
    lines = csv.reader(io.StringIO(_without_comments(text), newline=""))
    rows: list[Row] = []
    faults: list[RowFault] = []
    names: list[str] = []
    last = 0
    try:
        for cells in lines:
            line, last = last + 1, lines.line_num
            trimmed = _trimmed(cells)
            if not any(trimmed):
                continue
            if not names:
                if len(cells) > MOST_COLUMNS:
                    said = f"The first line names {len(cells):,} columns; {MOST_COLUMNS} are read."
                    return [], [*faults, RowFault(line, "", said)]
                names = trimmed
                faults += _heading_faults(names, known, line)
                if missing := _missing_faults(names, needed, line):
                    return [], missing + [one for one in faults if len(names) > 1]
            elif len(trimmed) > len(names) or (last > line and any("\n" in one for one in cells)):
                said = "This line has too many cells, or a quotation mark is not closed."
                faults.append(RowFault(line, "", said))
            elif max(map(len, trimmed)) > LONGEST_CELL:
                said = f"A cell of this line has more than {LONGEST_CELL} characters; shorten it."
                faults.append(RowFault(line, "", said))
            elif len(rows) + len(faults) >= MOST_ROWS:
                said = (
                    f"The list has more than {MOST_ROWS:,} lines; those from here on are not read."
                )
                faults.append(RowFault(line, "", said))
                break
            else:
                rows.append(Row(line, dict(zip(names, trimmed, strict=False)), needed))
    except csv.Error:
        said = "This line cannot be read as cells with commas between; write it again."
        faults.append(RowFault(last + 1, "", said))
    if not names and not faults:
        faults.append(RowFault(1, "", "The list is empty; its first line must name the columns."))
    return rows, faults


def _trimmed(cells: list[str]) -> list[str]:
    """Return cells with single gaps, and none at their ends."""
    whole = ",".join(cells)
    # Most lines have no other; to go through their cells takes far longer.
    if ", " not in whole and " ," not in whole and whole == " ".join(whole.split()):
        return cells
    return [" ".join(cell.split()) for cell in cells]


def _without_comments(text: str) -> str:
    """Empty the comment lines, so that every other line keeps its number."""
    lines = text.removeprefix("\ufeff").splitlines(keepends=True)
    return "".join("\n" if line.lstrip(' \t"').startswith("#") else line for line in lines)


def _missing_faults(names: list[str], needed: tuple[str, ...], line: int) -> list[RowFault]:
    """Say which needed columns the first line lacks, or that it is not parted by commas."""
    if len(names) == 1 and any(mark in names[0] for mark in ";|") and names[0] not in needed:
        said = "Put commas between the names in the first line: save the list as CSV with commas."
        return [RowFault(line, "", said)]
    return [
        RowFault(line, name, f"The first line must name a column “{name}”; every plant needs it.")
        for name in needed
        if name not in names
    ]


def _heading_faults(names: list[str], known: tuple[str, ...], line: int) -> list[RowFault]:
    faults = []
    for name in names:
        if name not in known:
            from difflib import get_close_matches

            near = get_close_matches(name, known, n=1)
            hint = f"did you mean {near[0]}?" if near else "it is not used."
            faults.append(
                RowFault(line, name[:SHOWN], f"The list has no column “{name[:SHOWN]}”; {hint}")
            )
    if len(set(names)) < len(names):
        faults.append(RowFault(line, "", "A column name is given twice; keep one of them."))
    return faults
