"""How one soak test stands at one instant."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from enum import Enum

from interview.garden.soak.noted import RunRow
from interview.garden.soak.rates import SoakTest
from interview.garden.soak.times import clock, span, span_up, utc

BACK_BY = dt.timedelta(seconds=59)
"""A clock this little behind is not told."""


class RunState(Enum):
    """Where the run of one hole stands."""

    NOT_DUG = "not dug"
    WETTING_1 = "first soaking to be filled"
    DRAINING_1 = "first soaking draining"
    WETTING_2 = "second soaking to be filled"
    DRAINING_2 = "second soaking draining"
    READY = "ready for the timed test"
    RUNNING = "running"
    DUE = "a reading is due"
    OVERDUE = "a reading is overdue"
    REFILL = "to be filled again"
    SLOW = "slow: read it in the morning"
    SLOW_TOLD = "slow, and read long enough"
    ENOUGH_EARLY = "very fast: enough"
    SETTLED = "settled: enough"
    ENOUGH = "not settled, but enough"
    DONE = "done"
    SET_ASIDE = "set aside"


ENOUGH_STATES = (RunState.SLOW_TOLD, RunState.ENOUGH_EARLY, RunState.SETTLED, RunState.ENOUGH)


@dataclass(frozen=True)
class SoakRun:
    """Everything there is to say about one hole at one instant."""

    now: dt.datetime
    state: RunState
    do_now: str
    """What is due now, one sentence."""
    and_then: str = ""
    """Why, or what comes after; may be empty."""
    due: dt.datetime | None = None
    """The instant of the next reading, or the next look at a filling; none where none is due."""
    began: dt.datetime | None = None
    """When the water stood at the mark."""
    since: dt.datetime | None = None
    """What the big clock counts from: the mark, or the filling that drains."""
    last: dt.datetime | None = None
    """The last thing noted that counts."""
    notices: tuple[str, ...] = ()
    """The clock that jumped, the zone that changed."""
    rows: tuple[RunRow, ...] = ()
    counted: int = 0
    """How many intervals count."""
    test: SoakTest | None = None
    waits: str = ""
    """What keeps the rates from being worked out."""

    @property
    def elapsed(self) -> dt.timedelta | None:
        """The true time since ``since``; nothing where none runs or the clock was set back."""
        if self.since is None or utc(self.now) < utc(self.since):
            return None
        return utc(self.now) - utc(self.since)

    @property
    def enough(self) -> bool:
        """Tell whether no more readings are wanted."""
        return self.state in (*ENOUGH_STATES, RunState.DONE, RunState.SET_ASIDE)

    @property
    def clock_back(self) -> bool:
        """Tell whether the clock stands before the last thing noted."""
        return is_back(self.now, self.last)

    @property
    def due_words(self) -> str:
        """When the next reading or look is due: the wait and the clock time; may be empty."""
        if self.due is None or self.clock_back:
            return ""
        at, left = clock(self.due, self.now), utc(self.due) - utc(self.now)
        if self.began is None:
            return f"Look again at {at}, in {span_up(left)}." if left > dt.timedelta() else ""
        if left > dt.timedelta():
            return f"Next reading at {at}, in {span_up(left)}."
        if self.state is RunState.OVERDUE:
            return f"Reading due since {at}, {span(left)} ago. Late is as good as punctual."
        return f"Reading due now ({at})."

    @property
    def short(self) -> str:
        """The state for a window's title: a few words."""
        if self.due is None or self.clock_back:
            return self.state.value
        left = utc(self.due) - utc(self.now)
        if left <= dt.timedelta():
            return "READING DUE"
        return f"{'look' if self.began is None else 'reading'} in {span_up(left)}"


def is_back(now: dt.datetime, last: dt.datetime | None) -> bool:
    """Tell whether ``now`` is before the last time noted."""
    return last is not None and utc(now) < utc(last) - BACK_BY
