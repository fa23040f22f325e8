"""Kinds of answer: how words become a value, and how the value is said back."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Any, Generic, TypeVar

from interview import reading
from interview.asking.answers import NO_CLOCK, Answers
from interview.asking.question import Kind, Taken
from interview.quantities.records import record
from interview.reading import Refused, Suggested, When

T = TypeVar("T")

ANOTHER_NOW = dt.datetime(2040, 7, 9, 23, 59, tzinfo=dt.timezone(dt.timedelta(hours=-9)))
"""Words that mean something else at this instant are not written in full."""

NOTHING_WRITTEN = "Nothing was written. Write an answer, or say that you don't know yet."
NOTHING_TICKED = (
    "Nothing is chosen. Choose each one that is there, or none of these, or say that you don't "
    "know yet."
)

NO_ITEMS = frozenset(("none", "no", "nothing"))
"""What stands for an empty list when it is written alone."""


def as_typed(text: str, value: T) -> Taken[T]:
    """Keep the words as typed, less stray spaces, with their value."""
    return Taken(" ".join(text.split()), value)


class Simple(Generic[T]):
    """What most kinds share."""

    name = "words"
    many = False
    has_usual = True

    def take(self, text: str, answers: Answers) -> Taken[T]:
        raise NotImplementedError

    def read(self, text: str, answers: Answers) -> T:
        """Return the value of ``text``; raises ``Refused`` and ``Unanswered``."""
        return self.take(text, answers).value

    def settle(self, text: str, answers: Answers) -> str:
        """Return the words to keep of ``text``; raises ``Refused`` and ``Unanswered``."""
        return self.take(text, answers).kept

    def echo(self, value: T, answers: Answers) -> str:
        return str(value)

    def hint(self, units: str) -> str:
        return ""

    def limits(self, units: str) -> str:
        return ""

    def worded(self, answers: Answers) -> Kind[T]:
        return self


class YesNo(Simple[bool]):
    """Yes or no."""

    name = "yes or no"
    has_usual = False

    def take(self, text: str, answers: Answers) -> Taken[bool]:
        value = reading.read_yes_no(text)
        return Taken("yes" if value else "no", value)

    def echo(self, value: bool, answers: Answers) -> str:
        return "yes" if value else "no"

    def hint(self, units: str) -> str:
        return "yes or no"


Options = tuple[tuple[str, str], ...]


def _told(options: Options, answers: Answers) -> Options:
    return tuple((key, answers.told(label)) for key, label in options)


def _named(read: Callable[[str, Options], T], text: str, options: Options, answers: Answers) -> T:
    """Read ``text`` by the labels as they are written, or else as they are told here."""
    try:
        return read(text, options)
    except Refused:
        if (told := _told(options, answers)) == options:
            raise
    return read(text, told)


@record(eq=False)
class Choice(Simple[str]):
    """One of a few named options; the value is the option's id."""

    options: Options
    said: tuple[tuple[str, str], ...] = ()
    """Other words for an option, such as ``sometimes``, and its id."""
    beside: str = ""
    """What to write where none of the options fits; told where none is near."""
    name = "one choice"

    def take(self, text: str, answers: Answers) -> Taken[str]:
        folded = " ".join(reading.plain(text).casefold().split()).rstrip(".")
        if value := dict(self.said).get(folded):
            return Taken(value, value)
        try:
            value = _named(reading.read_choice, text, self.options, answers)
        except Suggested:
            raise
        except Refused as refused:
            raise Refused(f"{refused.said} {self.beside}".strip()) from None
        return Taken(value, value)

    def worded(self, answers: Answers) -> Kind[str]:
        told = _told(self.options, answers)
        return self if told == self.options else replace(self, options=told)

    def echo(self, value: str, answers: Answers) -> str:
        return answers.told(dict(self.options)[value])

    def hint(self, units: str) -> str:
        return "one of: " + ", ".join(one for one, _ in self.options)


@record(eq=False)
class InSteps(Choice):
    """A choice that is put in two steps: one of a few, then of some of these which sort of it.

    The value is the id of one of ``options`` all the same, however it was come to.
    """

    first: Options = ()
    further: str = ""
    """What is asked second."""
    sorts: Options = ()
    """The second choice; an id is that of the first with that of the sort, if any, after ``_``."""

    def worded(self, answers: Answers) -> Kind[str]:
        told = replace(
            self,
            options=_told(self.options, answers),
            first=_told(self.first, answers),
            further=answers.told(self.further),
            sorts=_told(self.sorts, answers),
        )
        return self if told == self else told

    def joined(self, first: str, sort: str) -> str:
        """Return the id of a whole answer."""
        return "_".join(one for one in (first, sort) if one)

    def parted(self, key: str) -> tuple[str, str]:
        """Return the two choices that a whole answer is made of."""
        pairs = ((one, sort) for one, _ in self.first for sort, _ in self.sorts)
        return next(pair for pair in pairs if self.joined(*pair) == key)

    def has_sorts(self, first: str) -> bool:
        """Tell whether a second choice belongs to a first one."""
        keys = [key for key, _ in self.options]
        return all(self.joined(first, sort) in keys for sort, _ in self.sorts)

    def at_step(self, text: str, begun: str = "") -> tuple[str, bool]:
        """Return an id for what was typed at a step, and whether that is only the first half.

        ``begun`` is the first choice where that was made. Words that are no choice of the step are
        returned as they are: they may name a whole answer.
        """
        word = " ".join(text.casefold().split())
        if not word or (word in dict(self.options) and not word.isdecimal()):
            return text, False
        try:
            key = reading.read_choice(text, self.sorts if begun else self.first)
        except Refused:
            if word.isdecimal():
                raise
            return text, False
        return (self.joined(begun, key), False) if begun else (key, self.has_sorts(key))


@record(eq=False)
class Ticks(Simple[tuple[str, ...]]):
    """Any number of named options, or none of them."""

    options: Options
    name = "any of a list"

    def take(self, text: str, answers: Answers) -> Taken[tuple[str, ...]]:
        value = _named(reading.read_ticks, text, self.options, answers)
        return Taken(", ".join(value) or "none", value)

    def worded(self, answers: Answers) -> Kind[tuple[str, ...]]:
        told = _told(self.options, answers)
        return self if told == self.options else replace(self, options=told)

    def echo(self, value: tuple[str, ...], answers: Answers) -> str:
        labels = dict(_told(self.options, answers))
        return "; ".join(labels[one] for one in value) or "none of these"

    def hint(self, units: str) -> str:
        return "any of: " + ", ".join(one for one, _ in self.options) + "; or none"


NOTHING_LISTED = (
    "Nothing was written. Write an answer, or none if there is none, or say that you don't know "
    "yet."
)


def nothing_given(kind: Kind[Any]) -> str:
    """Say that an empty answer is none: to tick nothing is not to say none of these."""
    if isinstance(kind, Several) and not kind.at_least:
        return NOTHING_LISTED
    return NOTHING_TICKED if isinstance(kind, Ticks) else NOTHING_WRITTEN


@record(eq=False)
class Note(Simple[str]):
    """Free words, kept exactly."""

    longest: int = 200
    example: str = ""
    """An answer as it might be written."""
    name = "words"

    def take(self, text: str, answers: Answers) -> Taken[str]:
        words = text.strip()
        if not words:
            raise Refused("Nothing was written. Write a few words, or say that you don't know yet.")
        if len(words) > self.longest:
            raise Refused(f"That is longer than {self.longest} characters. Make it shorter.")
        if any(not c.isprintable() and c != "\n" for c in words):
            raise Refused("That holds a character that cannot be shown. Type it again.")
        return Taken(words, words)

    def hint(self, units: str) -> str:
        return f"such as {self.example}" if self.example else "a few words"


class Clearance(Simple[str]):
    """Whether the lines were clear: ``yes``, ``no``, or ``ticket`` and the number it was under."""

    name = "yes, no or a ticket"

    def take(self, text: str, answers: Answers) -> Taken[str]:
        word, *number = Note(80).read(text, answers).split()
        # What says neither yes nor no must not be taken for a clearance.
        if word.casefold() == "ticket" and number:
            said = " ".join(("ticket", *number))
        else:
            said = "yes" if reading.read_yes_no(text) else "no"
        return Taken(said, said)

    def hint(self, units: str) -> str:
        return "yes, no, or ticket 2614-0399"


@record(eq=False)
class Day(Simple[dt.date]):
    """A calendar day."""

    today: dt.date | None = None
    when: When = When.PAST
    """On which side of today it lies, so that ``Saturday`` can be told."""
    name = "date"

    def take(self, text: str, answers: Answers) -> Taken[dt.date]:
        if answers.now != NO_CLOCK:
            day, said = reading.read_day(text, self.today or answers.today, self.when)
            return Taken(day.isoformat(), day, said=said)
        day = reading.read_date(text, self.today or answers.today)
        full = day.isoformat()
        # Kept words are read without a clock, where "today" would mean nothing.
        if text != full and day != reading.read_date(text, ANOTHER_NOW.date()):
            raise Refused("Write the date in full, such as 2026-05-20.")
        return Taken(full, day)

    def echo(self, value: dt.date, answers: Answers) -> str:
        return reading.echo_date(value)

    def hint(self, units: str) -> str:
        return "such as 2026-05-20, 20 May 2026 or today"


class Moment(Simple[dt.datetime]):
    """An instant: a date and a time of day with its offset from universal time."""

    name = "date and time"

    def take(self, text: str, answers: Answers) -> Taken[dt.datetime]:
        at = reading.read_instant(text, answers.now, None).replace(microsecond=0)
        full = reading.write_instant(at)
        clockless = answers.now == NO_CLOCK and text != full
        if clockless and at != reading.read_instant(text, ANOTHER_NOW, None):
            raise Refused("Write the time in full, such as 2026-05-21 10:15 -05:00.")
        return Taken(full, at)

    def echo(self, value: dt.datetime, answers: Answers) -> str:
        return reading.echo_instant(value)

    def hint(self, units: str) -> str:
        return "now, 10:15, 10.15am, or 2026-05-21 10:15"


@record(eq=False)
class Several(Simple[tuple[T, ...]], Generic[T]):
    """A list, one item a line; on one line the items are parted by semicolons."""

    each: Simple[T]
    at_least: int = 0
    at_most: int = 60
    many = True

    @property
    def name(self) -> str:  # type: ignore[override]
        return f"list of {self.each.name}"

    def take(self, text: str, answers: Answers) -> Taken[tuple[T, ...]]:
        kept, found = [], []
        for place, line in enumerate(list_lines(text), 1):
            try:
                taken = self.each.take(line, answers)
                kept.append(taken.kept)
                found.append(taken.value)
            except Refused as refused:
                raise Refused(f"Item {place}: {refused}") from None
        if len(found) < self.at_least:
            raise Refused(f"Write {self.at_least} or more, one per line.")
        if len(found) > self.at_most:
            raise Refused(f"That is more than {self.at_most} items. Keep the ones that count.")
        return Taken("\n".join(kept) or "none", tuple(found))

    def echo(self, value: Sequence[T], answers: Answers) -> str:
        return "; ".join(self.each.echo(one, answers) for one in value) or "none"

    def hint(self, units: str) -> str:
        return f"one per line, {self.each.hint(units)}"

    def limits(self, units: str) -> str:
        return self.each.limits(units)


def list_lines(text: str) -> list[str]:
    """Return the items of a list, parted by line ends or semicolons; ``none`` is no item."""
    parts = [part.strip() for line in text.splitlines() for part in line.split(";")]
    items = [part for part in parts if part]
    empty = len(items) == 1 and items[0].casefold().rstrip(".") in NO_ITEMS
    return [] if empty else items
