"""The states a garden may be in, and how what is due is written."""

from __future__ import annotations

import datetime as dt
from enum import Enum
from typing import NamedTuple

from interview.quantities.evidence import OURS, Cited

WAITING_PAGE, PLAN_PAGE, MEND_PAGE = "waiting", "the_plan", "mend"
"""Pages that Enter leads to and that no answer names."""
FIRST_SITTING_MIN = Cited(40, OURS)
STORM_AFTER_DAYS = Cited(14, OURS)
"""Days after the dig day on which the first storm is asked about."""


class GardenState(Enum):
    """Where a garden stands, in a few words."""

    NEW = "new"
    FIRST_SIZE = "before the first size"
    SPOT = "looking at the spot"
    NOT_ASKED = "marks not asked for"
    WHILE_WAITING = "things to find out"
    WAITING = "waiting for the marks"
    MAY_OPEN = "the wait is over"
    PRIVATE = "own lines not known"
    MARKS = "marks to be measured"
    TOO_NEAR = "a mark too near"
    SHUT = "digging shut"
    MAY_DIG = "digging open"
    STALE = "marks stale"
    HOLE = "hole dug"
    SOAKING = "soaking"
    TIMING = "timing"
    LEAVE_HOLE = "hole to be left safe"
    SMELL = "STOP: a smell"
    STOP = "STOP at this spot"
    TESTED = "tested"
    PLANNED = "planned"
    RENEW = "new marks to be asked for"
    STORM = "a storm to tell of"
    FAULTS = "lines to mend"


LEADS = frozenset(
    {
        GardenState.WAITING, GardenState.MAY_OPEN, GardenState.PRIVATE, GardenState.TOO_NEAR,
        GardenState.STALE, GardenState.SMELL, GardenState.STOP, GardenState.SHUT,
        GardenState.RENEW, GardenState.STORM,
    }
)  # fmt: skip
"""What whoever comes back is led to from wherever they left."""
LEADS_FIRST = frozenset(
    {
        GardenState.NOT_ASKED, GardenState.MARKS, GardenState.MAY_DIG, GardenState.LEAVE_HOLE,
        GardenState.TESTED,
    }
)  # fmt: skip
"""What they are led to unless they meant to come back elsewhere."""


class Due(NamedTuple):
    """What a garden waits for."""

    state: GardenState
    says: str
    target: str
    """Where Enter leads: the address of a question, which may be shut, or one of the pages."""
    keys: tuple[str, ...] = ()
    """The addresses of the open questions it is about."""

    @property
    def leads(self) -> bool:
        """Whether whoever comes back is led to it from wherever they left."""
        return self.state in LEADS

    @property
    def short(self) -> str:
        """The state in a few words."""
        return self.state.value


def day_words(day: dt.date, today: dt.date, weekday: bool = True) -> str:
    """Write a day such as ``Thu 3 Dec``, with its year where that is not this one."""
    year = f" {day.year}" if day.year != today.year else ""
    return f"{f'{day:%a} ' if weekday else ''}{day.day} {day:%b}{year}"


def count_words(number: int, one: str) -> str:
    """Write a number of things, such as ``1 page`` or ``3 pages``."""
    return f"{number} {one}{'' if number == 1 else 's'}"
