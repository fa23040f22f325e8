"""Reading a daily rainfall record out of the text of a CSV file."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import pairwise

from interview.calc.record_columns import (
    MOST_LINES,
    UNIT_WORDS,
    Column,
    ColumnUnclear,
    delimiter_of,
    find_columns,
    rows_of,
    words_of,
)
from interview.evidence import Cited, Source, Standing
from interview.units import Quantity, magnitude, quantity

__all__ = [
    "BadLine",
    "Column",
    "ColumnUnclear",
    "Gap",
    "Record",
    "decoded",
    "gaps_between",
    "read_record",
]

UNITS = ("in", "mm")
DOUBT = Source("no home sees such a year, so the unit is asked again", Standing.OURS)
WETTEST_YEAR_IN = Cited(200.0, DOUBT)
DRIEST_YEAR_IN = Cited(4.0, DOUBT)
TELL_EVERY = 2000
"""Lines between two words of how far the reading is."""
_UNIT_NAMES = {"in": "inches", "mm": "millimeters"}
_MISSING = {"", "m", "na", "n/a", "nan", "null", "none", "missing", "-", "--"}
_MISSING_NUMBERS = {-9999.0, -999.0, -99.9, -99.99, -999.9, -9999.9, 9999.0, 99999.0}
_TRACE = {"t", "tr", "trace"}
_NUMBER = re.compile(r"[+-]?(\d+(\.\d*)?|\.\d+)")
_ISO = re.compile(r"(\d{4})([-/.]?)(\d{2})\2(\d{2})")
_SHORT = re.compile(r"(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})")


@dataclass(frozen=True)
class BadLine:
    """A line of the file that could not be used; its day counts as missing."""

    line: int
    why: str


@dataclass(frozen=True)
class Gap:
    """Days in a row of which the record says nothing."""

    first: date
    last: date

    @property
    def days(self) -> int:
        """Number of days missing."""
        return (self.last - self.first).days + 1


@dataclass(frozen=True)
class Record:
    """Daily depths of rain, in order of date, and all that was wrong with the file."""

    days: tuple[tuple[date, Quantity], ...]
    gaps: tuple[Gap, ...]
    """Missing days; never read as no rain."""
    traces: tuple[date, ...]
    """Days marked as a trace, counted as no depth."""
    bad_lines: tuple[BadLine, ...]
    disordered: tuple[int, ...]
    """Numbers of lines whose day comes before that of the line above; they are used."""
    doubt: str
    """A sentence when the unit looks wrong, else empty."""

    @property
    def missing_days(self) -> int:
        """Number of days missing between the first and the last."""
        return sum(gap.days for gap in self.gaps)


def gaps_between(days: list[date]) -> tuple[Gap, ...]:
    """Return the gaps in a list of days in order."""
    one = timedelta(days=1)
    return tuple(
        Gap(before + one, after - one) for before, after in pairwise(days) if after - before > one
    )


def decoded(data: bytes) -> str:
    """Return the text of a file: UTF-8, UTF-16 with its mark, or else Latin-1.

    Raises ValueError for data that is no text.
    """
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        try:
            return data.decode("utf-16")
        except UnicodeDecodeError:
            raise ValueError("The file is not text. Save it as CSV.") from None
    if b"\0" in data:
        raise ValueError("The file is not text. Save it as CSV.")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("latin-1")


def read_record(
    text: str,
    unit: str,
    date_column: str | None = None,
    depth_column: str | None = None,
    tell: Callable[[int, int], None] | None = None,
) -> Record:
    """Return the daily record in the text of a CSV file whose depths are in ``unit``.

    ``unit`` is ``in`` or ``mm`` and is never guessed. The date and depth columns are those given, a
    name or a number from 1, or else found by their names in the first lines. Lines that cannot be
    used are listed by number. ``tell`` is called now and then with the lines done, and all of them.
    Raises ``ColumnUnclear`` where a column cannot be told, and ValueError when a heading names
    another unit, the file is too long, or no day can be read.
    """
    if unit not in UNITS:
        raise ValueError("Say whether the rain is in inches (in) or millimeters (mm).")
    lines = text.removeprefix("\ufeff").splitlines()
    if len(lines) > MOST_LINES:
        raise ValueError(
            f"The rain file has {len(lines)} lines, more than 300 years of days, so give one with "
            "one line a day."
        )
    delimiter = delimiter_of(lines)
    rows = list(rows_of(lines, delimiter))
    header, columns = find_columns(rows, date_column, depth_column)
    if header >= 0 and len(rows[header][1]) > columns[1]:
        _check_unit(rows[header][1][columns[1]], unit)
    body = rows[header + 1 :]
    day_first = _day_first([cells[columns[0]] for _, cells in body if len(cells) > columns[0]])
    reader = _Reader(columns, day_first, delimiter != ",")
    for line, cells in body:
        if tell is not None and line % TELL_EVERY == 0:
            tell(line, len(lines))
        reader.take(line, cells)
    return reader.record(unit)


def _check_unit(name: str, unit: str) -> None:
    words = words_of(name)
    said = UNIT_WORDS.get(words[-1]) if len(words) > 1 else None
    if said is not None and said != unit:
        raise ValueError(
            f"The rain column says {_UNIT_NAMES[said]} but you said {_UNIT_NAMES[unit]}, "
            "so change one of them."
        )


def _day_first(texts: list[str]) -> bool | None:
    """Whether dates such as 5/6/2020 begin with the day; None where no line tells."""
    answers = set()
    for text in texts:
        if found := _SHORT.match(text):
            first, second = int(found[1]), int(found[2])
            if first > 12 or second > 12:
                answers.add(first > 12)
    return answers.pop() if len(answers) == 1 else None


class _Reader:
    """Gathers days line by line."""

    def __init__(self, columns: tuple[int, int], day_first: bool | None, comma: bool) -> None:
        self.date_column, self.depth_column = columns
        self.day_first = day_first
        self.decimal_comma = comma
        self.depths: dict[date, float] = {}
        self.lines: dict[date, int] = {}
        self.traces: list[date] = []
        self.bad: list[BadLine] = []
        self.disordered: list[int] = []
        self.last = date.min

    def take(self, line: int, cells: list[str]) -> None:
        try:
            self._take(line, cells)
        except ValueError as problem:
            self.bad.append(BadLine(line, str(problem)))

    def _take(self, line: int, cells: list[str]) -> None:
        if len(cells) <= max(self.date_column, self.depth_column):
            raise ValueError(
                "The line is not plain CSV text."
                if cells == [""]
                else "The line is shorter than the first one."
            )
        day = self._day(cells[self.date_column])
        if day in self.lines:
            raise ValueError(f"{day.isoformat()} is already on line {self.lines[day]}.")
        self.lines[day] = line
        if day < self.last:
            self.disordered.append(line)
        self.last = day
        word = cells[self.depth_column].lower()
        if word in _TRACE:
            self.traces.append(day)
            self.depths[day] = 0.0
        elif word not in _MISSING:
            depth = self._depth(word)
            if depth is not None:
                self.depths[day] = depth

    def _day(self, text: str) -> date:
        if len(text) == 10 and text[4] == "-" and text[7] == "-" and text.isascii():
            try:
                return date.fromisoformat(text)
            except ValueError:
                pass
        if found := _ISO.match(text):
            year, month, day = found[1], found[3], found[4]
        elif found := _SHORT.match(text):
            if self.day_first is None:
                raise ValueError(f"{text} could be two dates: write it as 2020-05-31.")
            day, month, year = found[1], found[2], found[3]
            if not self.day_first:
                day, month = month, day
        else:
            raise ValueError(f"{text[:40] or 'Nothing'} is not a date such as 2020-05-31.")
        rest = text[found.end() :]
        if rest and not rest.startswith(("T", " ")):
            raise ValueError(f"{text[:40]} is not a date such as 2020-05-31.")
        try:
            return date(int(year), int(month), int(day))
        except ValueError:
            raise ValueError(f"There is no such day as {text[:40]}.") from None

    def _depth(self, word: str) -> float | None:
        """A depth in the unit of the file; None for a number that stands for missing."""
        plain = word.replace(",", ".") if self.decimal_comma and word.count(",") == 1 else word
        if not _NUMBER.fullmatch(plain):
            raise ValueError(f"{word[:40]} is not a depth of rain.")
        depth = float(plain)
        if depth in _MISSING_NUMBERS:
            return None
        if depth < 0:
            raise ValueError(f"{word[:40]} is less than no rain.")
        return depth

    def record(self, unit: str) -> Record:
        if not self.depths:
            raise ValueError("No day with a depth of rain could be read from the file.")
        shared: dict[float, Quantity] = {}
        days = sorted(self.depths)
        for depth in self.depths.values():
            if depth not in shared:
                shared[depth] = quantity(depth, unit)
        rain = tuple((day, shared[self.depths[day]]) for day in days)
        return Record(
            days=rain,
            gaps=gaps_between(days),
            traces=tuple(sorted(self.traces)),
            bad_lines=tuple(self.bad),
            disordered=tuple(self.disordered),
            doubt=_doubt(self.depths, unit),
        )


def _doubt(depths: dict[date, float], unit: str) -> str:
    """Say when a whole year's rain is beyond belief in this unit."""
    scale = magnitude(quantity(1.0, unit), "in")
    totals: dict[int, float] = {}
    counts: dict[int, int] = {}
    for day, depth in depths.items():
        totals[day.year] = totals.get(day.year, 0.0) + depth * scale
        counts[day.year] = counts.get(day.year, 0) + 1
    if any(total > WETTEST_YEAR_IN.value for total in totals.values()):
        return "A year of this record has more rain than anywhere: is the file in millimeters?"
    whole = [totals[year] for year, count in counts.items() if count >= 365]
    if unit == "mm" and whole and max(whole) < DRIEST_YEAR_IN.value:
        return "Every year of this record is as dry as a desert: is the file in inches?"
    return ""
