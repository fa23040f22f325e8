"""The kind of answer that lists the readings of a soak test, one short line each."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Callable
from typing import Any, NamedTuple

from interview import reading
from interview.asking.answers import NO_CLOCK, Answers
from interview.asking.kinds import Moment, Simple, list_lines
from interview.asking.measures import Measure
from interview.asking.question import Kind, Taken
from interview.quantities.records import record
from interview.quantities.units import Quantity
from interview.reading import Refused, write_instant

LEFT, DROP, REFILLED, EMPTY, EMPTIED = "left", "drop", "refilled", "empty", "emptied"
STRUCK = "struck"


class SoakEvent(NamedTuple):
    """One line of a soak test: what was seen at an instant."""

    at: dt.datetime
    what: str
    """``left``, ``drop``, ``refilled``, ``empty`` (found so) or ``emptied`` (seen to go)."""
    depth: Quantity | None
    """Depth of water left, or drop below the mark, or depth after a refill."""
    struck: bool = False
    """True for a reading that was taken out; it stays in the file."""


_WORDS = (
    r"(?i)^(?P<when>.*?)\s*\b(?P<what>left|drop(?:ped)?|refilled(?:\s+to)?|empt(?:y|ied))\b"
    r"\s*(?P<how>.*)$"
)
_MONTH = r"(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*\.?"
_DAY = rf"(?:{_MONTH}\s+\d{{1,2}}|\d{{1,2}}\s+{_MONTH}|\d{{4}}-\d\d-\d\d),?\s+"
_BARE = rf"(?i)^(?P<when>(?:{_DAY})?\S+(?:\s+[ap]\.?m\.?)?)[\s,]+(?P<how>.+)$"
_GOOD = "Write it as 10:15 left 6 7/8 in, or as +2h drop 1 1/8 in."


@record(eq=False)
class Readings(Simple[tuple[SoakEvent, ...]]):
    """Readings of a soak test, each with its own time."""

    start: Callable[[Answers], dt.datetime]
    """When the test began; raises ``Unanswered``."""
    word: Callable[[Answers], str]
    """What a depth without a word means: ``left`` or ``drop``."""
    check: Callable[[tuple[SoakEvent, ...], Answers], None]
    """Raises ``Refused`` where the readings cannot be so."""
    depth: Measure
    said: str = LEFT
    """The word that the hint gives a depth."""
    name = "list of readings"
    many = True

    def take(self, text: str, answers: Answers) -> Taken[tuple[SoakEvent, ...]]:
        kept: list[str] = []
        events: list[SoakEvent] = []
        began = self.start(answers)
        last = began
        for place, line in enumerate(list_lines(text), 1):
            try:
                words, event = self._line(line, answers, began, last)
            except Refused as refused:
                raise Refused(f"Reading {place}: {refused}") from None
            kept.append(words)
            events.append(event)
            if not event.struck:
                last = event.at
        found = tuple(events)
        self.check(found, answers)
        return Taken("\n".join(kept), found)

    def _line(
        self, line: str, answers: Answers, began: dt.datetime, last: dt.datetime
    ) -> tuple[str, SoakEvent]:
        """Return one reading as the file keeps it, and what it says."""
        struck = line.lower().startswith(STRUCK)
        words = line[len(STRUCK) :].strip() if struck else line
        match = re.match(_WORDS, words)
        if not match and self._is_depth(words, answers):
            raise _no_time(answers)
        if match:
            what = _plain_word(match["what"])
        elif match := re.match(_BARE, words):
            what = self.word(answers)
        else:
            raise Refused(f"Write a time and a depth. {_GOOD}")
        if not (when := match["when"].rstrip(" ,;")):
            raise _no_time(answers)
        at = self._when(when, answers, began, last)
        how = match["how"].strip()
        if what in (EMPTY, EMPTIED):
            # What stands after it in a file, such as a remark, says no depth and is left alone.
            loaded = answers.now == NO_CLOCK or re.fullmatch(_NOTED, when)
            how = how if loaded or not how else self.depth.settle(how, answers)
            event = SoakEvent(at, what, None, struck)
        elif how:
            depth = self.depth.take(how, answers)
            how, event = depth.kept, SoakEvent(at, what, depth.value, struck)
        else:
            raise Refused(f"The depth is missing. {_GOOD}")
        return write_event(event, how), event

    def _is_depth(self, words: str, answers: Answers) -> bool:
        """Tell whether the whole line is a depth, as somebody writes it who forgot the time."""
        try:
            self.depth.read(words, answers)
        except Refused:
            return False
        return True

    def _when(
        self, words: str, answers: Answers, began: dt.datetime, last: dt.datetime
    ) -> dt.datetime:
        if words.strip().lower() == "now":
            if answers.now == NO_CLOCK:
                raise Refused("Write the time in full, such as 2026-05-21 10:15 -05:00.")
            return answers.now.replace(microsecond=0)
        clock = answers.now if answers.now.year > NO_CLOCK.year else last
        after = began if words.startswith("+") else last
        return reading.read_instant(words, clock, after)

    def echo(self, value: tuple[SoakEvent, ...], answers: Answers) -> str:
        kept = [event for event in value if not event.struck]
        return f"{len(kept)} reading" + ("" if len(kept) == 1 else "s")

    def hint(self, units: str) -> str:
        depth = f"{self.said} {'6 7/8 in' if units == 'us' else '175 mm'}"
        return f"one per line: a time, then the depth, as 10:15 {depth} or +2h {depth}"


def _no_time(answers: Answers) -> Refused:
    deep = "100 mm" if answers.metric else "4 in"
    return Refused(f"Write the time first, such as 10:30, left {deep}.")


def _plain_word(word: str) -> str:
    start = word.lower()
    if start == EMPTIED:
        return EMPTIED
    return {"left": LEFT, "drop": DROP, "refi": REFILLED, "empt": EMPTY}[start[:4]]


_NOTED = r"(?a)\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d[+-]\d\d:\d\d"


def noted_instants(kept: str) -> tuple[dt.datetime, ...]:
    """Return the instants that stand in readings as the file keeps them, struck ones too."""
    found = []
    for text in re.findall(_NOTED, kept):
        try:
            found.append(dt.datetime.fromisoformat(text))
        except ValueError:  # edited by hand into a day that never was
            continue
    return tuple(found)


def said_line(line: str) -> str:
    """Return a reading as the file keeps it with its time as people say it, in its own zone."""

    def said(match: re.Match[str]) -> str:
        try:
            return f"{dt.datetime.fromisoformat(match[0]):%a %d %b, %H:%M}"
        except ValueError:
            return match[0]

    return re.sub(_NOTED, said, line, count=1)


def said_words(kind: Kind[Any], text: str) -> str:
    """Return an answer as the file keeps it on one line, with its times as people say them."""
    lines = [line.strip() for line in text.splitlines() if line.strip()]
    if isinstance(kind, (Readings, Moment)):
        lines = [said_line(line) for line in list_lines(text)]
    return "; ".join(lines)


def typed_line(line: str, now: dt.datetime) -> str:
    """Return a reading as the file keeps it with its time as one would type it here and now."""

    def typed(match: re.Match[str]) -> str:
        try:
            return typed_instant(dt.datetime.fromisoformat(match[0]), now)
        except ValueError:
            return match[0]

    return re.sub(_NOTED, typed, line, count=1)


def typed_instant(at: dt.datetime, now: dt.datetime) -> str:
    """Return an instant as one would type it here, with its offset where that is another one.

    It is read back as the same instant.
    """
    clock = f"{at:%Y-%m-%d %H:%M:%S}" if at.second else f"{at:%Y-%m-%d %H:%M}"
    here = at.replace(tzinfo=now.tzinfo).utcoffset() == at.utcoffset()
    return clock if here else f"{clock} {write_instant(at)[19:]}"


def shifted_instants(line: str, by: dt.timedelta) -> str:
    """Return a reading as the file keeps it with its time moved by ``by``."""

    def moved(match: re.Match[str]) -> str:
        return write_instant(dt.datetime.fromisoformat(match[0]) + by)

    return re.sub(_NOTED, moved, line, count=1)


def write_event(event: SoakEvent, how: str) -> str:
    """Write one reading as the file keeps it: a full instant, the word, and the words after it."""
    words = [STRUCK] if event.struck else []
    words += [write_instant(event.at), event.what]
    if event.what == REFILLED:
        words.append("to")
    if how:
        words.append(how)
    return " ".join(words)
