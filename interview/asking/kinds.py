"""Kinds of answer: how words become a value, and how the value is said back."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Generic, TypeVar

from interview import reading
from interview.asking.model import NO_CLOCK, Answers
from interview.asking.model import Kind as Kind
from interview.quantities.units import US, Quantity, magnitude, plain_number, quantity, unit_name
from interview.reading import Amount, Paces, Refused

T = TypeVar("T")

ANOTHER_NOW = dt.datetime(2040, 7, 9, 23, 59, tzinfo=dt.timezone(dt.timedelta(hours=-9)))
"""Words that mean something else at this instant are not written in full."""

NO_ITEMS = frozenset(("none", "no", "nothing"))
"""What stands for an empty list when it is written alone."""

Bound = tuple[float, str] | None
"""A hard limit as number and unit word, or none."""


class Simple(Generic[T]):
    """What most kinds share: the words are kept as typed, less stray spaces."""

    name = "words"
    many = False

    def read(self, text: str, answers: Answers) -> T:
        raise NotImplementedError

    def settle(self, text: str, answers: Answers) -> str:
        self.read(text, answers)
        return " ".join(text.split())

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

    def read(self, text: str, answers: Answers) -> bool:
        return reading.read_yes_no(text)

    def settle(self, text: str, answers: Answers) -> str:
        return "yes" if self.read(text, answers) else "no"

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


@dataclass(frozen=True)
class Choice(Simple[str]):
    """One of a few named options; the value is the option's id."""

    options: Options
    name = "one choice"

    def read(self, text: str, answers: Answers) -> str:
        return _named(reading.read_choice, text, self.options, answers)

    def worded(self, answers: Answers) -> Kind[str]:
        told = _told(self.options, answers)
        return self if told == self.options else replace(self, options=told)

    def settle(self, text: str, answers: Answers) -> str:
        return self.read(text, answers)

    def echo(self, value: str, answers: Answers) -> str:
        return answers.told(dict(self.options)[value])

    def hint(self, units: str) -> str:
        return "one of: " + ", ".join(one for one, _ in self.options)


@dataclass(frozen=True)
class Ticks(Simple[tuple[str, ...]]):
    """Any number of named options, or none of them."""

    options: Options
    name = "any of a list"

    def read(self, text: str, answers: Answers) -> tuple[str, ...]:
        return _named(reading.read_ticks, text, self.options, answers)

    def worded(self, answers: Answers) -> Kind[tuple[str, ...]]:
        told = _told(self.options, answers)
        return self if told == self.options else replace(self, options=told)

    def settle(self, text: str, answers: Answers) -> str:
        return ", ".join(self.read(text, answers)) or "none"

    def echo(self, value: tuple[str, ...], answers: Answers) -> str:
        labels = dict(_told(self.options, answers))
        return "; ".join(labels[one] for one in value) or "none of these"

    def hint(self, units: str) -> str:
        return "any of: " + ", ".join(one for one, _ in self.options) + "; or none"


@dataclass(frozen=True)
class Note(Simple[str]):
    """Free words, kept exactly."""

    longest: int = 200
    example: str = ""
    """An answer as it might be written."""
    name = "words"

    def read(self, text: str, answers: Answers) -> str:
        words = text.strip()
        if not words:
            raise Refused("Nothing was written. Write a few words, or say that you don't know yet.")
        if len(words) > self.longest:
            raise Refused(f"That is longer than {self.longest} characters. Make it shorter.")
        if any(not c.isprintable() and c != "\n" for c in words):
            raise Refused("That holds a character that cannot be shown. Type it again.")
        return words

    def settle(self, text: str, answers: Answers) -> str:
        return self.read(text, answers)

    def hint(self, units: str) -> str:
        return f"such as {self.example}" if self.example else "a few words"


@dataclass(frozen=True)
class Clearance(Simple[str]):
    """Whether the lines were clear: ``yes``, ``no``, or ``ticket`` and the number it was under."""

    name = "yes, no or a ticket"

    def read(self, text: str, answers: Answers) -> str:
        word, *number = Note(80).read(text, answers).split()
        # What says neither yes nor no must not be taken for a clearance.
        if word.casefold() == "ticket" and number:
            return " ".join(("ticket", *number))
        return "yes" if reading.read_yes_no(text) else "no"

    def settle(self, text: str, answers: Answers) -> str:
        return self.read(text, answers)

    def hint(self, units: str) -> str:
        return "yes, no, or ticket 2614-0399"


_READERS: dict[str, Callable[[str, str | None], Amount | Paces]] = {
    "length": reading.read_length,
    "duration": reading.read_duration,
    "area": reading.read_area,
    "rate": reading.read_rate,
    "volume": reading.read_volume,
}
_EXAMPLES: dict[tuple[str, str], tuple[tuple[str, ...], ...]] = {
    ("length", US): (("12' 9\"", "1' 6\""), ("9 1/2 in", "40 ft"), ("3.9 m", "0.5 m")),
    ("length", "in"): (("1 in", "4 in"), ("9 1/2 in", "2 1/2 in", "1/8 in"), ("240 mm", "25 mm")),
    ("length", "mm"): (("25 mm", "90 mm", "240 mm"), ("24 cm", "5 cm", "0.5 cm")),
    ("length", "metric"): (("3.9 m", "0.5 m"), ("390 cm", "50 cm")),
    ("duration", ""): (("90 min",), ("1h 45m",), ("2 days", "3 h")),
    ("area", US): (("120 sq ft",),),
    ("area", "metric"): (("12 m2",),),
    ("rate", US): (("0.5 in/h",),),
    ("rate", "metric"): (("13 mm/h",),),
    ("volume", US): (("3 cu ft",),),
    ("volume", "metric"): (("85 L",),),
}
"""Ways to write an answer, by dimension and unit; of each way the first that is within limits."""


@dataclass(frozen=True)
class Measure(Simple[Quantity]):
    """A number with a unit: a length, a duration, an area, a rate or a volume."""

    dimension: str
    us: str
    """The unit of a bare number while US units are shown."""
    metric: str
    """The unit of a bare number while metric units are shown."""
    at_least: Bound = None
    at_most: Bound = None
    above_zero: bool = False
    paced: bool = False
    """Whether a length may be given in paces: across the yard, never a depth."""
    said: tuple[tuple[str, tuple[float, str]], ...] = ()
    """Words that stand for an amount here, such as ``level`` for no drop."""

    @property
    def name(self) -> str:  # type: ignore[override]
        return self.dimension

    def unit(self, units: str) -> str:
        """Return the unit a bare number is taken in."""
        return self.us if units == US else self.metric

    def amount(self, text: str, units: str) -> Amount | Paces:
        """Return the exact number and unit, or the count of paces, that ``text`` says."""
        folded = " ".join(text.casefold().split()).rstrip(".")
        for words, (number, unit) in self.said:
            if folded == words:
                return Amount(_exact(number), unit)
        low = self.at_least
        if low and low[0] < 0 and (clean := reading.plain(text)).startswith("-"):
            amount = self._amount(clean[1:].strip(), units)
            return Amount(-amount.number, amount.unit) if isinstance(amount, Amount) else amount
        return self._amount(text, units)

    def _amount(self, text: str, units: str) -> Amount | Paces:
        if self.dimension == "length":
            return reading.read_length(text, self.unit(units), self.paced)
        return _READERS[self.dimension](text, self.unit(units))

    def read(self, text: str, answers: Answers) -> Quantity:
        amount = self.amount(text, answers.units)
        if isinstance(amount, Paces):
            value: Quantity = answers.pace(amount.walker) * float(amount.count)
        else:
            value = quantity(float(amount.number), amount.unit)
        try:
            self._check(value, answers.units)
        except Refused as refused:
            raise Refused(f"{refused} {self._meant(text, amount)}".rstrip()) from None
        return value

    def _meant(self, text: str, amount: Amount | Paces) -> str:
        """Say which smaller unit may be meant by a bare number that is too large."""
        small = {"m": "mm", "ft": "in"}.get("" if isinstance(amount, Paces) else amount.unit)
        if small is None or isinstance(amount, Paces) or not reading.is_bare(text):
            return ""
        high = self.at_most
        value = quantity(float(amount.number), small)
        if high is None or not 0 < magnitude(value, high[1]) <= high[0]:
            return ""
        number = plain_number(float(amount.number))
        return f"If you mean {small}, write {number} {small}."

    def _check(self, value: Quantity, units: str) -> None:
        if self.above_zero and value.m <= 0:
            raise Refused(f"That is too small: {self.limits(units)}.")
        low, high = self.at_least, self.at_most
        if low and magnitude(value, low[1]) < low[0] - 1e-9:
            raise Refused(f"That is too small: {self.limits(units)}.")
        if high and magnitude(value, high[1]) > high[0] + 1e-9:
            raise Refused(f"That is too large: {self.limits(units)}.")

    def settle(self, text: str, answers: Answers) -> str:
        amount = self.amount(text, answers.units)
        words = " ".join(text.split())
        if isinstance(amount, Paces):
            return words
        self.read(text, answers)
        if any(" ".join(words.casefold().split()).rstrip(".") == said for said, _ in self.said):
            return words
        try:
            _READERS[self.dimension](reading.plain(text).removeprefix("-"), None)
        except Refused:
            words = f"{words} {unit_name(self.unit(answers.units))}"
        return words

    def echo(self, value: Quantity, answers: Answers) -> str:
        return say(value, self.dimension, answers.units, self.unit(answers.units))

    def hint(self, units: str) -> str:
        keys = (self.unit(units), units, "")
        ways = next(ways for one in keys if (ways := _EXAMPLES.get((self.dimension, one))))
        firsts = (next((one for one in way if self._takes(one, units)), "") for way in ways)
        *before, last = (one for one in firsts if one)
        example = f"such as {', '.join(before)} or {last}" if before else f"such as {last}"
        if self.paced:
            example += ", or 15 paces"
        return f"{example}; a bare number is {unit_name(self.unit(units))}"

    def _takes(self, example: str, units: str) -> bool:
        """Tell whether an example without paces is within the limits."""
        amount = self.amount(example, units)
        try:
            if isinstance(amount, Amount):
                self._check(quantity(float(amount.number), amount.unit), units)
        except Refused:
            return False
        return True

    def limits(self, units: str) -> str:
        unit = self.unit(units)

        def said(bound: tuple[float, str]) -> str:
            number = magnitude(quantity(*bound), unit)
            return f"{plain_number(number, 3)} {unit_name(unit)}"

        if self.above_zero and self.at_most:
            return f"it must be more than zero, and {said(self.at_most)} or less"
        if self.at_least and self.at_most:
            return f"it must be from {said(self.at_least)} to {said(self.at_most)}"
        if self.at_least:
            return f"it must be {said(self.at_least)} or more"
        if self.at_most:
            return f"it must be {said(self.at_most)} or less"
        return ""


def _exact(number: float) -> Fraction:
    """Return the fraction that a float stands for, free of its last bits."""
    return Fraction(number).limit_denominator(10**9)


def say(value: Quantity, dimension: str, units: str, unit: str) -> str:
    """Write a quantity of ``dimension`` the way the echo shows it."""
    if dimension == "length":
        return reading.echo_length(Amount(_exact(magnitude(value, "m")), "m"), units)
    if dimension == "duration":
        return reading.echo_duration(Amount(_exact(magnitude(value, "min")), "min"))
    amount = Amount(_exact(magnitude(value, unit)), unit)
    return _ECHOES[dimension](amount, units)


_ECHOES = {
    "area": reading.echo_area,
    "volume": reading.echo_volume,
    "rate": reading.echo_rate,
}


@dataclass(frozen=True)
class Number(Simple[float]):
    """A number without a unit, or a percentage."""

    at_least: float = 0.0
    at_most: float = 1e9
    percent: bool = False
    tail: tuple[str, ...] = ()
    """Words that may stand after the number; the first is the one it counts."""
    name = "number"

    def read(self, text: str, answers: Answers) -> float:
        if self.percent:
            value = float(reading.read_percent(text))
        else:
            value = float(reading.read_number(text, tail=self.tail))
        if not self.at_least <= value <= self.at_most:
            raise Refused(f"That is outside the limits: {self.limits('')}.")
        return value

    def echo(self, value: float, answers: Answers) -> str:
        return plain_number(value, 6) + (" %" if self.percent else "")

    def hint(self, units: str) -> str:
        if self.percent:
            return "a percentage"
        return f"a number of {self.tail[0]}" if self.tail else "a number"

    def limits(self, units: str) -> str:
        mark = " %" if self.percent else ""
        if self.at_most >= 1e9:
            return f"it must be {plain_number(self.at_least)}{mark} or more"
        return (
            f"it must be from {plain_number(self.at_least)} to {plain_number(self.at_most)}{mark}"
        )


@dataclass(frozen=True)
class Count(Simple[int]):
    """A whole number."""

    at_least: int = 0
    at_most: int = 1000
    tail: tuple[str, ...] = ()
    """Words that may stand after the number; the first is the one it counts."""
    lead: tuple[str, ...] = ()
    """Words that may stand before it."""
    name = "whole number"

    def read(self, text: str, answers: Answers) -> int:
        value = reading.read_count(text, self.lead, self.tail)
        if not self.at_least <= value <= self.at_most:
            raise Refused(f"That is outside the limits: {self.limits('')}.")
        return value

    def hint(self, units: str) -> str:
        return "a whole number"

    def limits(self, units: str) -> str:
        return f"it must be from {self.at_least} to {self.at_most}"


@dataclass(frozen=True)
class Ratio(Simple[float]):
    """So much along for one up, as in 3:1."""

    at_least: float
    at_most: float
    name = "ratio"

    def read(self, text: str, answers: Answers) -> float:
        value = float(reading.read_ratio(text))
        if 0 < value < self.at_least and 1 / value <= self.at_most:
            raise Refused(f"Write the longer side first, such as {plain_number(1 / value)}:1.")
        if not self.at_least <= value <= self.at_most:
            raise Refused(f"That is outside the limits: {self.limits('')}.")
        return value

    def echo(self, value: float, answers: Answers) -> str:
        return f"{plain_number(value)}:1"

    def hint(self, units: str) -> str:
        return "such as 3:1 or 2.5"

    def limits(self, units: str) -> str:
        return f"it must be from {plain_number(self.at_least)}:1 to {plain_number(self.at_most)}:1"


class Pitch(Simple[tuple[str, float]]):
    """How steep a roof is: rise in 12, degrees or percent."""

    name = "roof pitch"

    def read(self, text: str, answers: Answers) -> tuple[str, float]:
        kind, number = reading.read_pitch(text)
        return kind, float(number)

    def echo(self, value: tuple[str, float], answers: Answers) -> str:
        kind, number = value
        said = {"in 12": " in 12", "degrees": " degrees", "percent": " %"}
        return plain_number(number) + said.get(kind, f" {kind}")

    def hint(self, units: str) -> str:
        return "such as 6 in 12, 27 deg or 50 %"


@dataclass(frozen=True)
class Day(Simple[dt.date]):
    """A calendar day."""

    today: dt.date | None = None
    name = "date"

    def read(self, text: str, answers: Answers) -> dt.date:
        day = reading.read_date(text, self.today or answers.today)
        # Kept words are read without a clock, where "today" would mean nothing.
        if answers.now == NO_CLOCK and day != reading.read_date(text, ANOTHER_NOW.date()):
            raise Refused("Write the date in full, such as 2026-05-20.")
        return day

    def settle(self, text: str, answers: Answers) -> str:
        return self.read(text, answers).isoformat()

    def echo(self, value: dt.date, answers: Answers) -> str:
        return reading.echo_date(value)

    def hint(self, units: str) -> str:
        return "such as 2026-05-20, 20 May 2026 or today"


class Moment(Simple[dt.datetime]):
    """An instant: a date and a time of day with its offset from universal time."""

    name = "date and time"

    def read(self, text: str, answers: Answers) -> dt.datetime:
        at = reading.read_instant(text, answers.now, None)
        if answers.now == NO_CLOCK and at != reading.read_instant(text, ANOTHER_NOW, None):
            raise Refused("Write the time in full, such as 2026-05-21 10:15 -05:00.")
        return at

    def settle(self, text: str, answers: Answers) -> str:
        return reading.write_instant(self.read(text, answers))

    def echo(self, value: dt.datetime, answers: Answers) -> str:
        return reading.echo_instant(value)

    def hint(self, units: str) -> str:
        return "now, 10:15, 10.15am, or 2026-05-21 10:15"


@dataclass(frozen=True)
class Several(Simple[tuple[T, ...]], Generic[T]):
    """A list, one item a line; on one line the items are parted by semicolons."""

    each: Simple[T]
    at_least: int = 0
    at_most: int = 60
    many = True

    @property
    def name(self) -> str:  # type: ignore[override]
        return f"list of {self.each.name}"

    def lines(self, text: str) -> list[str]:
        """Return the items of a list as it was typed or kept."""
        return list_lines(text)

    def read(self, text: str, answers: Answers) -> tuple[T, ...]:
        found = []
        for place, line in enumerate(self.lines(text), 1):
            try:
                found.append(self.each.read(line, answers))
            except Refused as refused:
                raise Refused(f"Item {place}: {refused}") from None
        if len(found) < self.at_least:
            raise Refused(f"Write {self.at_least} or more, one a line.")
        if len(found) > self.at_most:
            raise Refused(f"That is more than {self.at_most} items. Keep the ones that count.")
        return tuple(found)

    def settle(self, text: str, answers: Answers) -> str:
        self.read(text, answers)
        return "\n".join(self.each.settle(line, answers) for line in self.lines(text)) or "none"

    def echo(self, value: Sequence[T], answers: Answers) -> str:
        return "; ".join(self.each.echo(one, answers) for one in value) or "none"

    def hint(self, units: str) -> str:
        return f"one a line, {self.each.hint(units)}"

    def limits(self, units: str) -> str:
        return self.each.limits(units)


def list_lines(text: str) -> list[str]:
    """Return the items of a list, parted by line ends or semicolons; ``none`` is no item."""
    parts = [part.strip() for line in text.splitlines() for part in line.split(";")]
    items = [part for part in parts if part]
    empty = len(items) == 1 and items[0].casefold().rstrip(".") in NO_ITEMS
    return [] if empty else items
