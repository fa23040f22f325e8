"""The reports of the command line over one or many answers files, and how they end."""

from __future__ import annotations

import argparse
import datetime as dt
import gc
import sys
from collections.abc import Callable
from contextlib import suppress
from functools import partial
from typing import TYPE_CHECKING

from interview.asking import own_fault
from interview.asking.long_work import HowFar, heard_by
from interview.asking.statuses import (
    CLEAN,
    CRASHED,
    ENDED_BY,
    FAULTS,
    INPUT,
    NAME,
    UNWRITTEN,
    written_by,
)
from interview.plain.report_kinds import ReportKind, kind_of, tell_troubles
from interview.plain.streams import Typist, errors_on_terminal, passing, refuse, say, tell

if TYPE_CHECKING:
    from interview.garden.opening import ReadGarden

INPUT_NAME = "standard input"
TOLD_EACH = 100
"""Where the errors are no terminal, how far a run over many files is, is told after so many."""


def report(given: argparse.Namespace, now: dt.datetime, plants: str) -> int:
    """Print what was asked for; a part at fault is told, and the rest is given.

    The exit status is the worst one of the files.
    """
    if given.questions or given.blank or given.schema:
        return _told(partial(_without_file, given))
    read = _Reader(now, plants, len(given.files))
    if given.diff:
        return _told(partial(_diff, given, read))
    kind = kind_of(given)
    if isinstance(kind, str):
        return refuse(kind)
    if len(given.files) == 1:
        return _told(partial(_one, kind, given, read, given.files[0]))
    gc.enable()
    worst, done, faults = CLEAN, 0, list[own_fault.Fault]()
    with read.typist.listening(), suppress(EOFError):
        for name in given.files:
            # A request to end is heard between two files, so that none is reported on by half.
            if read.typist.ended_by:
                break
            read.at(done)
            with own_fault.noting() as found:
                status = _one_of_many(kind, given, read, name)
            for line in own_fault.told(found)[:-1]:
                tell(f"{NAME}: {shown_name(name)}: {line}")
            faults += found
            worst = max(worst, status, CRASHED if found else CLEAN)
            done += 1
    read.ended()
    kind.end()
    for line in own_fault.told(faults)[-1:]:
        tell(f"{NAME}: {line}")
    if read.typist.ended_by:
        said = f"stopped after {done} of {len(given.files)} files; what is given of them is whole"
        return refuse(said, ENDED_BY + read.typist.ended_by)
    return worst


def _told(make: Callable[[], int]) -> int:
    with own_fault.noting() as faults:
        status = make()
    for line in own_fault.told(faults):
        tell(f"{NAME}: {line}")
    return CRASHED if faults else status


def _without_file(given: argparse.Namespace) -> int:
    """Print what is told of every garden; what has an output goes to a new file."""
    from interview import answers_file as af

    try:
        text = _told_of_all(given)
        if given.output is not None:
            af.put(given.output, text.encode(), expect=None)
            return CLEAN
    except af.NotSaved as trouble:
        return refuse(f"not written: {trouble}", UNWRITTEN)
    except ValueError as refused:
        return refuse(str(refused))
    say(text, end="")
    return CLEAN


def _told_of_all(given: argparse.Namespace) -> str:
    if given.schema:
        from interview.sheet.figures_file import schema_text

        return schema_text()
    if given.questions:
        from interview.sheet.worksheet import worksheet

        return worksheet()
    from interview.sheet.blank import blank_text

    return blank_text(given.units, given.country, given.state, written_by())


def shown_name(name: str) -> str:
    """Return what a FILE is called where it is told of."""
    return INPUT_NAME if name == INPUT else name


class _Reader:
    """Reads the gardens of one run, and shows how far it is."""

    def __init__(self, now: dt.datetime, plants: str, count: int) -> None:
        self._now = now
        self._plants = plants
        self._count = count
        self._done = 0
        self.typist = Typist()

    def read(self, name: str) -> ReadGarden:
        """Return the garden of a FILE; raises ``NotRead``, or ``EOFError`` where asked to end."""
        from interview.garden.opening import read_garden

        data = self._typed() if name == INPUT else None
        return read_garden(shown_name(name), self._now, self._plants, data)

    def _typed(self) -> bytes:
        """Return what stands in the standard input, no more than a file may hold and a byte."""
        from interview.answers_file import reason
        from interview.answers_file.tree import SIZE_LIMIT
        from interview.garden.opening import NotRead

        try:
            return self.typist.waited(lambda: sys.stdin.buffer.read(SIZE_LIMIT + 1))
        except OSError as trouble:
            raise NotRead(f"{INPUT_NAME}: {reason(trouble)}") from trouble

    def at(self, done: int) -> None:
        """Show that so many files are done."""
        self._done = done
        if errors_on_terminal():
            self.far(None)
        elif done and done % TOLD_EACH == 0:
            tell(f"{NAME}: {done} of {self._count} files are done")

    def far(self, far: HowFar | None) -> None:
        """Show on one line of a terminal how far a long sum is, and which file it is of."""
        of = f"{self._done + 1} of {self._count}" if self._count > 1 else ""
        passing(": ".join(part for part in (of, far.words if far else "") if part))

    def ended(self) -> None:
        """Take that line away."""
        passing("")


def _one(kind: ReportKind, given: argparse.Namespace, read: _Reader, name: str) -> int:
    from interview.garden.opening import NotRead

    try:
        garden = read.read(name)
    except NotRead as trouble:
        if len(given.files) > 1:
            kind.lack(shown_name(name), str(trouble))
        return refuse(str(trouble))
    with heard_by(read.far):
        status = kind.give(garden)
        strict = _strict(garden) if given.strict else CLEAN
    passing("")
    return max(status, strict)


def _one_of_many(kind: ReportKind, given: argparse.Namespace, read: _Reader, name: str) -> int:
    """Report on one file; a fault of the program leaves the others as they are."""
    try:
        return _one(kind, given, read, name)
    except Exception as trouble:
        if isinstance(trouble, EOFError) and read.typist.ended_by:
            raise
        kind.lack(shown_name(name), own_fault.note("the whole report", trouble))
        return CRASHED


def _strict(garden: ReadGarden) -> int:
    """Return the status of a garden for whoever wants no fault and a plan that is finished."""
    from interview.garden.summary import waiting
    from interview.sheet.check import faults_beside

    waits = [address for _, address, _ in waiting(garden.plan)]
    if waits:
        more = f" and {len(waits) - 1} more" if len(waits) > 1 else ""
        tell(f"{NAME}: {garden.name}: not finished: the plan waits for {waits[0]}{more}")
    return FAULTS if waits or garden.loaded.troubles or faults_beside(garden.plan) else CLEAN


def _diff(given: argparse.Namespace, read: _Reader) -> int:
    from interview.garden.opening import NotRead
    from interview.sheet.changes import changes_text

    gardens, status = [], CLEAN
    for name in given.files:
        try:
            gardens.append(read.read(name))
        except NotRead as trouble:
            status = refuse(str(trouble))
    if status:
        return status
    for garden in gardens:
        tell_troubles(garden, several=True)
    with heard_by(read.far):
        text = changes_text(*gardens)
        status = max(_strict(one) for one in gardens) if given.strict else CLEAN
    read.ended()
    say(text, end="")
    return status
