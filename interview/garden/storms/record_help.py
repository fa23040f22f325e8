"""From answers to the rainfall record: each file read once while it stays as it is."""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from interview.answers_file.named_files import NamedFile, NoFile
from interview.asking.answers import Answers
from interview.asking.long_work import telling
from interview.asking.question import Question
from interview.garden.place import questions as start
from interview.garden.storms.record_columns import (
    LONGEST_LINE,
    Column,
    ColumnUnclear,
    Row,
    find_columns,
    head_of,
)
from interview.garden.storms.record_text import Record, head_rows, read_record

KEPT = 4
"""Files whose days are kept while they do not change, so that no answer waits for them anew."""
COLUMNS = {start.RECORD_DATES.key: Column.DATE, start.RECORD_DEPTHS.key: Column.DEPTH}
"""Which column each question asks for, by the key of the question."""


_QUESTIONS = (start.RECORD_DATES, start.RECORD_DEPTHS)


def record_of(answers: Answers, file: NamedFile) -> Record:
    """Return the record in the file; raises ``NoFile``, ``ColumnUnclear`` or ValueError."""
    dates, depths = (start.column_named(one, answers) for one in _QUESTIONS)
    found = _read(file, answers[start.RECORD_UNIT], dates, depths)
    if isinstance(found, Exception):
        raise found.with_traceback(None)
    return found


@lru_cache(maxsize=KEPT)
def _read(
    file: NamedFile, unit: str, dates: str | None, depths: str | None
) -> Record | NoFile | ValueError:
    """Return the record or why there is none: that too is worked out once."""
    lines = file.lines(LONGEST_LINE)
    try:
        return read_record(lines, unit, dates, depths, telling("Reading the rainfall file"))
    except (NoFile, ValueError) as trouble:
        return trouble


@lru_cache(maxsize=KEPT)
def _first_rows(file: NamedFile) -> tuple[Row, ...] | NoFile | ValueError:
    try:
        return tuple(head_rows(file.lines(LONGEST_LINE)))
    except (NoFile, ValueError) as trouble:
        return trouble


def columns_told(question: Question[Any], file: NamedFile) -> str:
    """Return the columns of the file for a question that asks for one, and which is known by name.

    Empty for other questions, and where the file tells nothing.
    """
    rows, column = _first_rows(file), COLUMNS.get(question.key)
    if column is None or isinstance(rows, Exception):
        return ""
    head = head_of(rows)
    if not head.cells:
        return ""
    if not head.named:
        return f"The file has no headings; its first line holds: {head}. Write a number."
    known = head.named_so(column)
    if not known:
        return (
            f"The file's columns: {head}. None is named as the {column.value}: write which it is."
        )
    if len(known) > 1 and column is Column.DEPTH:
        return f"The file's columns: {head}. More than one may be the rain: write which it is."
    return f"The file's columns: {head}. By its name it is {head.told(known[0])}."


def columns_needed(file: NamedFile) -> tuple[str, ...]:
    """Return the key of each question for a column that the headings of the file do not tell."""
    rows = _first_rows(file)
    if isinstance(rows, Exception) or not (head := head_of(rows)).cells:
        return ()
    return tuple(
        key
        for key, column in COLUMNS.items()
        if not (known := head.named_so(column)) or (len(known) > 1 and column is Column.DEPTH)
    )


def trouble_with(question: Question[Any], answers: Answers, file: NamedFile) -> str:
    """Return why the answer to ``question`` does not fit the first lines of the file."""
    rows = _first_rows(file)
    if isinstance(rows, Exception):
        return str(rows)
    dates, depths = (start.column_named(one, answers) for one in _QUESTIONS)
    try:
        find_columns(rows, dates, depths)
    except ColumnUnclear as unclear:
        return str(unclear) if COLUMNS.get(question.key) is unclear.column else ""
    except ValueError as wrong:
        return str(wrong)
    return ""
