"""Readings added, corrected, struck out, and times shifted: the words that are kept."""

from __future__ import annotations

import datetime as dt
import math
import re
from typing import Any

from interview.asking.answers import Answers
from interview.asking.kinds import list_lines
from interview.asking.question import Question, Status
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.reading_lines import STRUCK, shifted_instants
from interview.garden.soak.times import utc
from interview.reading import Refused, is_unknown, read_duration, write_instant

MOMENTS = (
    timing.FILL_1_START,
    timing.FILL_1_EMPTY,
    timing.FILL_2_START,
    timing.FILL_2_EMPTY,
    timing.TEST_START,
)
"""The questions of one hole that each note one instant, in their order."""
_SHIFT = (
    r"(?i)(?P<long>.+?)(?:\s+(?P<way>ahead|fast|behind|slow))?(?:\s+from\s+(?P<first>\d{1,3}))?"
)
NOT_BEGUN = "All readings are counted from the start of the timed test. Say first when that was."
SHIFT_GOOD = "Write how far the clock was off, such as 1 h ahead, or 20 min behind."


def reading_lines(view: Answers) -> list[str]:
    """Return the readings of one hole as the file keeps them, struck ones too."""
    kept = view.text(timing.READINGS) or ""
    return [] if is_unknown(kept) else list_lines(kept)


def with_added(view: Answers, line: str) -> str:
    """Return the readings with ``line`` put where its own time belongs; raises ``Refused``."""
    _check_begun(view)
    lines = reading_lines(view)
    refusals: list[Refused] = []
    for place in range(len(lines), -1, -1):
        try:
            return _settled(view, [*lines[:place], line, *lines[place:]])
        except Refused as refused:
            refusals.append(refused)
    if suggested_shift(view, view.now) and any(isinstance(r, timing.OutOfOrder) for r in refusals):
        raise NotedAhead(
            "Some noted times are ahead of this clock. Move them back first: press T on the "
            "timing page, or type :shift on plain lines."
        )
    raise _telling(refusals)


class NotedAhead(Refused):
    """A reading of now cannot stand before times that were noted while the clock was ahead."""


def _telling(refusals: list[Refused]) -> Refused:
    """The refusal that is about the reading and not about where it was tried."""
    for refused in refusals:
        if not isinstance(refused, (timing.OutOfOrder, timing.StillToCome)):
            return refused
    later = (one for one in refusals if isinstance(one, timing.StillToCome))
    return next(later, refusals[-1])


def with_corrected(view: Answers, place: int, line: str) -> str:
    """Return the readings with number ``place``, from 1, written anew; raises ``Refused``."""
    lines = reading_lines(view)
    lines[_index(lines, place)] = line
    return _settled(view, lines)


def with_struck(view: Answers, place: int) -> str:
    """Return the readings with number ``place`` struck out, or taken back in where it was struck.

    A struck reading stays in the file and counts for nothing. Raises ``Refused``.
    """
    lines = reading_lines(view)
    index = _index(lines, place)
    if lines[index].casefold().startswith(STRUCK):
        lines[index] = lines[index][len(STRUCK) :].strip()
    else:
        lines[index] = f"{STRUCK} {lines[index]}"
    return _settled(view, lines)


def _index(lines: list[str], place: int) -> int:
    if not 1 <= place <= len(lines):
        count = len(lines)
        raise Refused(
            f"There is no reading {place}. The readings are numbered from 1 to {count}."
            if count
            else "There is no reading yet. Add the first one."
        )
    return place - 1


def _settled(view: Answers, lines: list[str]) -> str:
    _check_begun(view)
    return timing.READINGS.kind.take("\n".join(lines), view).kept


class NotBegun(Refused):
    """A reading tells nothing yet; ``first`` is the question to be answered before it."""

    def __init__(self, said: str, first: Question[Any]) -> None:
        super().__init__(said)
        self.first = first


def _check_begun(view: Answers) -> None:
    for question, said in (
        (timing.TEST_START, NOT_BEGUN),
        (timing.WATER_AT_MARK, timing.DEPTH_WANTED),
    ):
        if view.standing(question) is not Status.ANSWERED:
            raise NotBegun(said, question)


# A clock that was wrong


def suggested_shift(view: Answers, now: dt.datetime) -> str:
    """Return how far the clock that noted the times was ahead at least, in whole hours.

    Mostly it is a time zone or summer time. Nothing where no noted time lies ahead of ``now``.
    """
    noted = [at for question in MOMENTS if (at := view.get(question))]
    noted += [event.at for event in view.get(timing.READINGS) or ()]
    ahead = max((utc(at) - utc(now) for at in noted), default=dt.timedelta())
    if ahead <= dt.timedelta(minutes=1):
        return ""
    return f"{math.ceil(ahead / dt.timedelta(hours=1))} h"


def with_shift(view: Answers, words: str) -> dict[str, str]:
    """Return the answers, by address, with the noted times set back by what ``words`` say.

    ``1 h`` and ``1 h ahead`` set every time of the hole back, ``20 min behind`` sets it on;
    ``1 h from 2`` sets back the second reading and those after it alone. The order is one in
    which no time comes before an earlier one meanwhile. Raises ``Refused``.
    """
    found = re.fullmatch(_SHIFT, " ".join(words.split()))
    if found is None:
        raise Refused(SHIFT_GOOD)
    amount = read_duration(found["long"], None)
    seconds = float(amount.number) * (60 if amount.unit == "min" else 1)
    if not 0 < seconds <= LONGEST_SHIFT_S:
        raise Refused(f"No clock is off by that much. {SHIFT_GOOD}")
    behind = (found["way"] or "").casefold() in ("behind", "slow")
    by = dt.timedelta(seconds=seconds if behind else -seconds)
    wanted = {view.address(timing.READINGS): text} if (text := _shifted(view, by, found)) else {}
    if not found["first"]:
        moments = {view.address(one): at for one in MOMENTS if (at := view.get(one))}
        wanted = {**{key: write_instant(at + by) for key, at in moments.items()}, **wanted}
    if not wanted:
        raise Refused("No time is noted for this hole yet, so there is nothing to move.")
    return dict(reversed(wanted.items())) if behind else wanted


LONGEST_SHIFT_S = 400 * 86400.0
"""A year and a little: a clock set to the wrong year is the worst there is."""


def _shifted(view: Answers, by: dt.timedelta, found: re.Match[str]) -> str:
    lines = reading_lines(view)
    first = int(found["first"] or 1)
    if found["first"]:
        _index(lines, first)
    if not lines:
        return ""
    full = list_lines(timing.READINGS.kind.take("\n".join(lines), view).kept)
    return "\n".join(
        [*full[: first - 1], *(shifted_instants(one, by) for one in full[first - 1 :])]
    )
