"""Reading a daily rainfall record out of the lines of a CSV file."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from datetime import date, timedelta
from itertools import islice, pairwise
from typing import NamedTuple

from interview.garden.storms.record_columns import (
    BROKEN,
    HEAD_ROWS,
    LONGEST_LINE,
    MOST_LINES,
    UNIT_WORDS,
    Row,
    cells_of,
    delimiter_of,
    find_columns,
    says_something,
    words_of,
)
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity

UNITS = ("in", "mm")
DOUBT = Source("no home sees such a year, so the unit is asked again", Provenance.OURS)
WETTEST_YEAR_IN = Cited(200.0, DOUBT)
DRIEST_YEAR_IN = Cited(4.0, DOUBT)
WETTEST_DAY_MM = Cited(
    1825.0,
    Source(
        "World Meteorological Organization, archive of weather and climate extremes: greatest "
        "24-hour rainfall, Foc-Foc, La Réunion, 7 to 8 January 1966",
        Provenance.PUBLISHED,
    ),
)
_WETTEST_DAY_SAID = {"mm": "1825 mm", "in": "71.8 in"}
FIRST_YEAR, LAST_YEAR = 1600, 2399
"""Years a record may hold, a choice of this project: no gauge was read before, and reckonings of
the climate to come end before."""
LONGEST_CELL = 100
"""Most characters of a date or a depth."""
TELL_EVERY = 2000
"""Lines between two words of how far the reading is."""
_UNIT_NAMES = {"in": "inches", "mm": "millimeters"}
_MISSING = {"", "m", "na", "n/a", "nan", "null", "none", "missing", "-", "--"}
_MISSING_NUMBERS = {-9999.0, -999.0, -99.9, -99.99, -999.9, -9999.9, 9999.0, 99999.0}
_TRACE = {"t", "tr", "trace"}
_NUMBER = r"[+-]?(\d+(\.\d*)?|\.\d+)"
_ISO = r"(\d{4})([-/.]?)(\d{2})\2(\d{2})"
_SHORT = r"(\d{1,2})[/.-](\d{1,2})[/.-](\d{4})"


class BadLine(NamedTuple):
    """A line of the file that could not be used; its day counts as missing."""

    line: int
    why: str


class Gap(NamedTuple):
    """Days in a row of which the record says nothing."""

    first: date
    last: date

    @property
    def days(self) -> int:
        """Number of days missing."""
        return (self.last - self.first).days + 1


@record
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


def read_record(
    text: str | Iterable[str],
    unit: str,
    date_column: str | None = None,
    depth_column: str | None = None,
    tell: Callable[[int, int], None] | None = None,
) -> Record:
    """Return the daily record in a CSV file whose depths are in ``unit``.

    ``text`` is all of it or its lines, each gone through once. ``unit`` is ``in`` or ``mm`` and is
    never guessed. The date and depth columns are those given, a name or a number from 1, or else
    found by their names in the first lines. Lines that cannot be used are listed by number.
    ``tell`` is called now and then with the lines done, and all of them. Raises ``ColumnUnclear``
    where a column cannot be told, and ValueError when a heading names another unit, the file is
    too long, or no day can be read.
    """
    if unit not in UNITS:
        raise ValueError("Say whether the rain is in inches (in) or millimeters (mm).")
    lines = _numbered(text)
    rows, delimiter = _head(lines)
    header, columns = find_columns(rows, date_column, depth_column)
    if header >= 0 and len(rows[header][1]) > columns[1]:
        _check_unit(rows[header][1][columns[1]], unit)
    # Two cells are kept of each line, so that no file takes more memory than its days.
    body = [_used(number, cells, columns) for number, cells in rows[header + 1 :]]
    body += [_used(number, cells_of(line, delimiter), columns) for number, line in lines]
    reader = _RecordReader(unit, _day_first([one.date for one in body]), delimiter != ",")
    for one in body:
        if tell is not None and one.number % TELL_EVERY == 0:
            tell(one.number, body[-1].number)
        reader.take(one)
    return reader.record()


def head_rows(text: str | Iterable[str]) -> list[Row]:
    """Return the first rows of a rainfall file, which hold its headings; read no further."""
    return _head(_numbered(text))[0]


def _numbered(text: str | Iterable[str]) -> Iterator[tuple[int, str]]:
    """Yield the lines that say something, with their numbers."""
    lines = text.splitlines() if isinstance(text, str) else text
    for number, line in enumerate(lines, 1):
        if number > MOST_LINES:
            raise ValueError(
                f"The rain file has more than {MOST_LINES:,} lines, more than 300 years of days. "
                "Give one with one line for each day."
            )
        if says_something(line):
            yield number, line.removeprefix("\ufeff")


def _head(lines: Iterator[tuple[int, str]]) -> tuple[list[Row], str]:
    """Take the first lines, and return their cells and what parts them."""
    first = list(islice(lines, HEAD_ROWS))
    delimiter = delimiter_of([line for _, line in first])
    return [(number, cells_of(line, delimiter)) for number, line in first], delimiter


class _Used(NamedTuple):
    """What is used of a line: its date and its depth, or why it has none."""

    number: int
    date: str
    depth: str
    why: str = ""


def _used(number: int, cells: list[str], columns: tuple[int, int]) -> _Used:
    if cells == list(BROKEN):
        why = f"The line is not plain CSV text of at most {LONGEST_LINE:,} characters."
    elif len(cells) <= max(columns):
        why = "The line is shorter than the first one."
    elif len(cells[columns[0]]) > LONGEST_CELL or len(cells[columns[1]]) > LONGEST_CELL:
        why = f"A date or a depth has no more than {LONGEST_CELL} characters."
    else:
        return _Used(number, cells[columns[0]], cells[columns[1]])
    return _Used(number, "", "", why)


def _check_unit(name: str, unit: str) -> None:
    words = words_of(name)
    said = UNIT_WORDS.get(words[-1]) if len(words) > 1 else None
    if said is not None and said != unit:
        raise ValueError(
            f"The rain column says {_UNIT_NAMES[said]}, but you said {_UNIT_NAMES[unit]}. Change "
            "one of them."
        )


def _day_first(texts: list[str]) -> bool | None:
    """Whether dates such as 5/6/2020 begin with the day; None where no line tells."""
    answers = set()
    for text in texts:
        if found := re.match(_SHORT, text):
            first, second = int(found[1]), int(found[2])
            if first > 12 or second > 12:
                answers.add(first > 12)
    return answers.pop() if len(answers) == 1 else None


class _RecordReader:
    """Gathers days line by line."""

    def __init__(self, unit: str, day_first: bool | None, comma: bool) -> None:
        self.unit = unit
        self.deepest = magnitude(quantity(WETTEST_DAY_MM.value, "mm"), unit)
        self.day_first = day_first
        self.decimal_comma = comma
        self.depths: dict[date, float] = {}
        self.lines: dict[date, int] = {}
        self.traces: list[date] = []
        self.bad: list[BadLine] = []
        self.disordered: list[int] = []
        self.last = date.min

    def take(self, line: _Used) -> None:
        try:
            if line.why:
                raise ValueError(line.why)
            self._take(line)
        except ValueError as problem:
            self.bad.append(BadLine(line.number, str(problem)))

    def _take(self, line: _Used) -> None:
        day = self._day(line.date)
        if not FIRST_YEAR <= day.year <= LAST_YEAR:
            raise ValueError(f"{day.isoformat()} is not in the years {FIRST_YEAR} to {LAST_YEAR}.")
        if day in self.lines:
            raise ValueError(f"{day.isoformat()} is already on line {self.lines[day]}.")
        self.lines[day] = line.number
        if day < self.last:
            self.disordered.append(line.number)
        self.last = day
        word = line.depth.lower()
        if word in _TRACE:
            self.traces.append(day)
            self.depths[day] = 0.0
        elif word not in _MISSING:
            depth = self._depth(word)
            if depth is not None:
                self.depths[day] = depth

    def _day(self, text: str) -> date:
        try:
            return date.fromisoformat(text)
        except ValueError:
            pass
        if found := re.match(_ISO, text):
            year, month, day = found[1], found[3], found[4]
        elif found := re.match(_SHORT, text):
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
        if not re.fullmatch(_NUMBER, plain):
            raise ValueError(f"{word[:40]} is not a depth of rain.")
        depth = float(plain)
        if depth in _MISSING_NUMBERS:
            return None
        if depth < 0:
            raise ValueError(f"{word[:40]} is below zero.")
        if depth > self.deepest:
            raise ValueError(
                f"{word[:40]} {self.unit} is more rain than ever fell in a day "
                f"({_WETTEST_DAY_SAID[self.unit]})."
            )
        return depth

    def record(self) -> Record:
        if not self.depths:
            first = f" Line {self.bad[0].line}: {self.bad[0].why}" if self.bad else ""
            raise ValueError(f"No day with a depth of rain could be read from the file.{first}")
        shared: dict[float, Quantity] = {}
        days = sorted(self.depths)
        for depth in self.depths.values():
            if depth not in shared:
                shared[depth] = quantity(depth, self.unit)
        rain = tuple((day, shared[self.depths[day]]) for day in days)
        return Record(
            days=rain,
            gaps=gaps_between(days),
            traces=tuple(sorted(self.traces)),
            bad_lines=tuple(self.bad),
            disordered=tuple(self.disordered),
            doubt=_doubt(self.depths, self.unit),
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
        return (
            "A year of this record has more rain than any place gets: is the file in millimeters?"
        )
    whole = [totals[year] for year, count in counts.items() if count >= 365]
    if unit == "mm" and whole and max(whole) < DRIEST_YEAR_IN.value:
        return "Every year of this record is as dry as a desert: is the file in inches?"
    return ""
