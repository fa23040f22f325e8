"""What speaks for and against: the years of rain."""

from __future__ import annotations

from collections.abc import Iterator

from interview.garden.place import questions as start
from interview.garden.storms.record_text import DOUBT
from interview.garden.storms.results import StormsResults
from interview.quantities.evidence import OURS, Finding, Grade


def record_findings(found: StormsResults) -> Iterator[Finding]:
    if not found.answers[start.HAS_RECORD]:
        return
    record = found.record
    if record.doubt:
        yield Finding(
            "record_unit",
            Grade.FIX,
            record.doubt,
            "a year of rain between 4 and 200 in (100 and 5000 mm)",
            DOUBT,
            "Look at the heading of the file and answer the unit again.",
        )
    if record.bad_lines:
        first, count = record.bad_lines[0], len(record.bad_lines)
        many = (
            f"{count} lines of the rainfall file are"
            if count > 1
            else ("1 line of the rainfall file is")
        )
        yield Finding(
            "record_lines",
            Grade.GOOD,
            f"{many} not used, the first on line {first.line}: {first.why}",
            "",
            OURS,
            "Correct the lines named under YEARS OF RAIN, or leave those days out.",
        )
