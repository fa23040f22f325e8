"""The dig gate: nothing is dug before the buried lines are located and answered."""

from __future__ import annotations

import datetime as dt
from typing import Any, NamedTuple

from interview.asking.answers import Answers
from interview.asking.question import Question
from interview.garden.site import lines_questions as buried
from interview.garden.site.locate import Cause, DigGate, LocateState, PrivateLines, dig_gate
from interview.garden.site.locating import ToleranceZone
from interview.garden.site.setbacks import distance_words
from interview.quantities.evidence import Brief, Finding, Grade
from interview.quantities.guards import reaches
from interview.quantities.units import Quantity, magnitude
from interview.reading import said_day

_PRIVATE = {
    "none": PrivateLines.NONE,
    "kept_clear": PrivateLines.KEPT_CLEAR,
    "not_found": PrivateLines.UNKNOWN,
}
MARK_UNKNOWN = "You have not said how far the nearest mark is: measure that first."
MARK_PACED = (
    "The distance to the nearest mark is in paces, and the length of the pace is not known yet: "
    "measure the distance with a tape."
)


class Way(NamedTuple):
    """One thing to do about a question that is shut."""

    label: str
    address: str | None = None
    """Where the answer to change is kept; nothing where it is no answer."""
    opens: dt.date | None = None
    """The first day on which waiting alone may open it."""
    prepares: bool = False
    """Whether it only makes ready for the way after it and by itself opens nothing."""


class Bar(NamedTuple):
    """One reason why a question is shut, and what to do about it."""

    said: str
    ways: tuple[Way, ...]
    """The likeliest first."""
    waits: bool = False
    """Whether time alone takes it away, unless a date is wrong."""

    @property
    def addresses(self) -> tuple[str, ...]:
        """Where the answers are kept that would have to change, the likeliest first."""
        return tuple(way.address for way in self.ways if way.address and not way.prepares)


def _to(label: str, question: Question[Any]) -> Way:
    return Way(label, question.key)


_REQUEST_DAY = _to("Correct the day of the request", buried.LINES_ASKED_ON)
_WAIT_DAYS = _to("Say how many business days your ticket gives", buried.LINES_BUSINESS_DAYS)
_HOLIDAYS = _to("Say which holidays fall in the wait", buried.LINES_HOLIDAYS)
_FINISHED_DAY = _to("Correct the day the marks were finished", buried.LINES_FINISHED_ON)
_NEW_MARKS = _to("Ask for new marks, then give the day you asked", buried.LINES_ASKED_ON)
_MEASURE_MARK = _to("Measure to the nearest mark", buried.MARK_DISTANCE)
ROOM = "room_length"
"""The key of the question of a later subject that the outline of the garden begins with."""
_MOVE = Way("Move the hose, and measure its room and distances again", ROOM, prepares=True)
_WAYS: dict[Cause, tuple[Way, ...]] = {
    Cause.NOT_ASKED: (_to("Ask for the lines to be marked", buried.LINES_REQUESTED),),
    Cause.REQUEST_TO_COME: (_REQUEST_DAY,),
    Cause.WAITING: (_REQUEST_DAY, _WAIT_DAYS, _HOLIDAYS),
    Cause.SILENT: (_to("Say when every owner has answered", buried.LINES_ANSWERED),),
    Cause.MARKED_TOO_SOON: (_FINISHED_DAY, _REQUEST_DAY),
    Cause.MARKED_TO_COME: (_FINISHED_DAY, _REQUEST_DAY),
    Cause.PRIVATE: (_to("Find out about your own lines", buried.PRIVATE_LINES),),
    Cause.STALE: (_NEW_MARKS,),
    Cause.WAIT_UNKNOWN: (_WAIT_DAYS,),
    Cause.HOLIDAYS_UNKNOWN: (_HOLIDAYS,),
    Cause.STALE_BEFORE_OPEN: (
        _to("Say how many days your ticket says the marks stay good", buried.LINES_VALID_DAYS),
        _WAIT_DAYS,
    ),
}
"""What to do about each cause; of a wait the day on which it ends comes before."""


def locate_state(answers: Answers) -> LocateState:
    """Return what has been done about the buried lines."""
    whole = answers.whole()
    asked = whole.get(buried.LINES_REQUESTED) == "asked"
    return LocateState(
        asked=whole.get(buried.LINES_ASKED_ON) if asked else None,
        all_answered=whole.get(buried.LINES_ANSWERED) if asked else None,
        finished=whole.get(buried.LINES_FINISHED_ON) if asked else None,
        private_lines=_PRIVATE.get(whole.get(buried.PRIVATE_LINES) or ""),
        business_days=buried.business_days(whole),
        valid_days=whole[buried.LINES_VALID_DAYS],
        counted=buried.counted(whole),
        holidays=buried.holidays(whole),
        assumed_holidays=buried.assumed_holidays(whole),
    )


def gate_today(answers: Answers, today: dt.date) -> DigGate:
    """Return whether digging may start on ``today``."""
    return dig_gate(locate_state(answers), today)


class Shut(NamedTuple):
    """What keeps digging shut on a day."""

    causes: tuple[Cause, ...]
    """Those of the request and its marks."""
    bars: list[Bar]
    """All reasons, each with its ways out."""
    unmeasured: bool
    """Whether the owners have answered and the distance to the nearest mark is not known."""


def shut_by(answers: Answers, today: dt.date) -> Shut:
    """Return what keeps digging shut on ``today``."""
    causes = gate_today(answers, today).causes
    unmeasured = answers.get(buried.MARK_DISTANCE) is None and Cause.SILENT not in causes
    return Shut(causes, dig_bars(answers, today), unmeasured)


def dig_reasons(answers: Answers, today: dt.date) -> list[str]:
    """Return every reason why no spade may go in today; none where it may."""
    return [bar.said for bar in dig_bars(answers.whole(), today)]


def dig_bars(whole: Answers, day: dt.date) -> list[Bar]:
    """Return every reason why no spade may go in on ``day``, with the answers to change."""
    found = gate_today(whole, day)
    bars = [
        _line_bar(whole, cause, said, found.earliest)
        for cause, said in zip(found.causes, found.reasons, strict=True)
    ]
    if whole.get(buried.LINES_REQUESTED) == "asked" and (
        fault := whole.fault(buried.LINES_FINISHED_ON)
    ):
        label = buried.LINES_FINISHED_ON.label
        bars.append(Bar(f"“{label}” needs attention: {fault}", (_FINISHED_DAY, _REQUEST_DAY)))
    near = whole.get(buried.MARK_DISTANCE)
    if near is None:
        if not bars:
            said = MARK_PACED if whole.waits(buried.MARK_DISTANCE) else MARK_UNKNOWN
            bars.append(Bar(whole.told(said), (_MEASURE_MARK,)))
        return bars
    found_near = mark_finding(near, buried.tolerance_zone(whole), whole.metric)
    if found_near.grade is not Grade.GOOD:
        said = f"{found_near.said} {found_near.change}"
        bars.append(Bar(whole.told(said), (_MOVE, _MEASURE_MARK)))
    return bars


def mark_finding(near: Quantity, zone: ToleranceZone, metric: bool = False) -> Finding:
    """Return whether the nearest mark, a distance, lies outside the strip that is not for digging.

    Source: that of ``zone``.
    """
    key, needed, found = "mark_distance", zone.words(metric), distance_words(near, metric)
    limit = f"{needed} from any mark"
    if reaches(magnitude(near, "m"), magnitude(zone.shown(metric), "m")):
        none = reaches(magnitude(near, "ft"), buried.NO_MARK_FT)
        brief = Brief("Fine: no marks." if none else f"Fine: {found}; {needed} needed.")
        said = f"No mark is within {needed} of where you will dig."
        return Finding(key, Grade.GOOD, said, limit, zone.source, brief=brief)
    short = distance_words(zone.shown(metric) - near, metric, up=True)
    brief = Brief(
        f"TOO NEAR: {found}, {needed} needed.",
        f"STOP here: {found} to a mark, {needed} needed.",
        f"Move the hole and the garden {short}, measure again",
    )
    said = f"A mark is within {needed} of where you will dig."
    change = "Move the hole and the garden, and measure again."
    return Finding(key, Grade.STOP, said, limit, zone.source, change, brief)


def _line_bar(whole: Answers, cause: Cause, said: str, earliest: dt.date | None) -> Bar:
    ways = _WAYS[cause]
    if cause is Cause.NOT_ASKED and whole.get(buried.LINES_REQUESTED) == "asked":
        ways = (_to("Say on which day you asked", buried.LINES_ASKED_ON),)
        said = (
            "You have not asked yet, or not said on which day you asked. The wait counts from "
            "that day."
        )
    waits = cause in (Cause.WAITING, Cause.REQUEST_TO_COME)
    if waits and earliest is not None:
        ways = (Way(f"Wait until {said_day(earliest)}", opens=earliest), *ways)
    return Bar(whole.told(said), ways, waits=cause is Cause.WAITING)
