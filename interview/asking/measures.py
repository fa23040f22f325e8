"""Kinds of answer that are numbers: with a unit, counted, or as a ratio."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Any, TypeVar

from interview import reading
from interview.asking.answers import Answers
from interview.asking.kinds import Simple, as_typed
from interview.asking.question import Taken, Unanswered
from interview.quantities.records import record
from interview.quantities.units import US, Quantity, magnitude, plain_number, quantity, unit_name
from interview.reading import (
    COUNT,
    MEASURE,
    MOST_CHARACTERS,
    SMALLER,
    Amount,
    Hearing,
    Paces,
    Refused,
    Spoken,
)

T = TypeVar("T")
Bound = tuple[float, str] | None
"""A hard limit as number and unit word, or none."""

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

_MOST_BELOW = {"ft": 20.0, "m": 6.0}
"""A bare number up to this may be meant in feet or meters: no garden asks how it is further down.
Our choice."""


_COMPARED_IN = {"length": "m", "duration": "min", "area": "m**2", "rate": "mm/h", "volume": "L"}


def _how(kind: Simple[T], spoken: Spoken[Any], value: T, answers: Answers) -> str:
    """Say how a least or a range was taken; nothing of what was one plain amount."""
    return f"{kind.echo(value, answers)}{spoken.how}" if spoken.how else ""


@record(eq=False)
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
    careful: str = ""
    """The end that is taken of a range: ``smaller``, ``larger``, or neither: it is asked which.

    Where it is the smaller, "at least" is taken too.
    """
    measured: bool = False
    """Whether no guess will do."""
    says_unit: bool = False
    """Whether who types a bare number is asked for its unit."""
    such: tuple[str, str] = ("", "")
    """Examples for the hint in US and in metric units, better than those of the dimension."""

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
            if isinstance(amount, Amount):
                amount = replace(amount, number=-amount.number)
            return amount
        return self._amount(text, units)

    def _amount(self, text: str, units: str) -> Amount | Paces:
        if self.dimension == "length":
            return reading.read_length(text, self.unit(units), self.paced)
        return _READERS[self.dimension](text, self.unit(units))

    def heard(self, text: str, units: str) -> Spoken[Amount | Paces]:
        """Return the amount that ``text`` says, also in obvious speech, and the words to keep."""
        across = self.dimension == "length" and self.unit(units) == "ft"
        return Hearing(
            lambda words: self.amount(words, units),
            self._size,
            self.careful,
            no_guess=MEASURE if self.measured else None,
            least=self.careful == SMALLER,
            feet=across,
        ).hear(text)

    def _size(self, amount: Amount | Paces) -> tuple[str, float]:
        """Return what an amount is counted in, and how much it is, so that two can be compared."""
        if isinstance(amount, Paces):
            return f"paces {amount.walker}", float(amount.count)
        value = quantity(float(amount.number), amount.unit)
        return "", magnitude(value, _COMPARED_IN[self.dimension])

    def take(self, text: str, answers: Answers) -> Taken[Quantity]:
        spoken = self.heard(text, answers.units)
        words, amount = spoken.words, spoken.value
        if isinstance(amount, Paces):
            try:
                value: Quantity = answers.pace(amount.walker) * float(amount.count)
            except Unanswered as gap:
                return Taken(words, gap, spoken.rough)
        else:
            value = quantity(float(amount.number), amount.unit)
        try:
            self._check(value, answers.units)
        except Refused as refused:
            raise Refused(f"{refused} {self._meant(words, amount)}".rstrip()) from None
        back = self._which_unit(amount, answers.units)
        kept = self.with_unit(words, amount, answers.units)
        return Taken(kept, value, spoken.rough, _how(self, spoken, value, answers), back)

    def _which_unit(self, amount: Amount | Paces, units: str) -> str:
        """Ask for the unit of a bare number that may be meant in a larger one, or return nothing.

        A number too large for it is told as the same length in it.
        """
        if not self.says_unit or isinstance(amount, Paces) or not amount.bare or amount.number == 0:
            return ""
        small, large = self.unit(units), "ft" if units == US else "m"
        number = float(amount.number)
        told = number
        if number > _MOST_BELOW[large]:
            told = magnitude(quantity(number, small), large)
        return f"Write {plain_number(number)} {small} or {plain_number(told, 3)} {large}."

    def with_unit(self, words: str, amount: Amount | Paces, units: str) -> str:
        """Return the words of ``amount`` with the unit that a bare number was taken in."""
        if isinstance(amount, Paces) or not amount.bare:
            return words
        words = f"{words} {unit_name(self.unit(units))}"
        if len(words) > MOST_CHARACTERS:
            self.amount(words, units)  # refuses what could not be read back
        return words

    def _meant(self, text: str, amount: Amount | Paces) -> str:
        """Say which smaller unit may be meant by a bare number that does not fit."""
        small = {"m": "mm", "ft": "in"}.get("" if isinstance(amount, Paces) else amount.unit)
        if small is None or isinstance(amount, Paces) or not reading.is_bare(text):
            return ""
        low, high = self.at_least, self.at_most
        value = quantity(float(amount.number), small)
        if high is None or not 0 < magnitude(value, high[1]) <= high[0]:
            return ""
        if low is not None and magnitude(value, low[1]) < low[0]:
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

    def echo(self, value: Quantity, answers: Answers) -> str:
        return say(value, self.dimension, answers.units, self.unit(answers.units))

    def hint(self, units: str) -> str:
        unit = "" if self.says_unit else f"; a bare number is {unit_name(self.unit(units))}"
        if such := self.such[units != US]:
            return f"such as {such}{unit}"
        keys = (self.unit(units), units, "")
        ways = next(ways for one in keys if (ways := _EXAMPLES.get((self.dimension, one))))
        firsts = (next((one for one in way if self._takes(one, units)), "") for way in ways)
        *before, last = (one for one in firsts if one)
        example = f"such as {', '.join(before)} or {last}" if before else f"such as {last}"
        if self.paced:
            example += ", or 15 paces"
        return f"{example}{unit}"

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


def _as_number(value: float) -> tuple[str, float]:
    return "", value


@record(eq=False)
class Number(Simple[float]):
    """A number without a unit, or a percentage."""

    at_least: float = 0.0
    at_most: float = 1e9
    percent: bool = False
    tail: tuple[str, ...] = ()
    """Words that may stand after the number; the first is the one it counts."""
    said: tuple[tuple[str, str], ...] = ()
    """Words that stand for a number here, such as ``all day``, and the number to keep."""
    careful: str = ""
    """The end that is taken of a range, as in ``Measure``; where there is one, a guess will do."""
    name = "number"

    def take(self, text: str, answers: Answers) -> Taken[float]:
        folded = " ".join(text.casefold().split()).rstrip(".")
        spoken = Hearing(
            self._number,
            _as_number,
            self.careful,
            no_guess=None if self.careful else "",
            few=COUNT,
        ).hear(dict(self.said).get(folded, text))
        if not self.at_least <= spoken.value <= self.at_most:
            raise Refused(f"That is outside the limits: {self.limits('')}.")
        value = float(spoken.value)
        return Taken(spoken.words, value, spoken.rough, _how(self, spoken, value, answers))

    def _number(self, text: str) -> float:
        if self.percent:
            return float(reading.read_percent(text))
        return float(reading.read_number(text, tail=self.tail))

    def echo(self, value: float, answers: Answers) -> str:
        counted = f" {self.tail[value == 1]}" if len(self.tail) > 1 else ""
        return plain_number(value, 6) + (" %" if self.percent else counted)

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


@record(eq=False)
class Count(Simple[int]):
    """A whole number."""

    at_least: int = 0
    at_most: int = 1000
    tail: tuple[str, ...] = ()
    """Words that may stand after the number; the first is the one it counts."""
    lead: tuple[str, ...] = ()
    """Words that may stand before it."""
    such: str = ""
    """Examples for the hint."""
    name = "whole number"

    def take(self, text: str, answers: Answers) -> Taken[int]:
        spoken = Hearing(
            lambda words: reading.read_count(words, self.lead, self.tail),
            _as_number,
            no_guess="",
            few=COUNT,
        ).hear(text)
        if not self.at_least <= spoken.value <= self.at_most:
            raise Refused(f"That is outside the limits: {self.limits('')}.")
        return Taken(spoken.words, spoken.value)

    def hint(self, units: str) -> str:
        return f"such as {self.such}" if self.such else "a whole number"

    def limits(self, units: str) -> str:
        return f"it must be from {self.at_least} to {self.at_most}"


@record(eq=False)
class Ratio(Simple[float]):
    """So much along for one up, as in 3:1."""

    at_least: float
    at_most: float
    name = "ratio"

    def take(self, text: str, answers: Answers) -> Taken[float]:
        value = float(reading.read_ratio(text))
        if 0 < value < self.at_least and 1 / value <= self.at_most:
            raise Refused(f"Write the longer side first, such as {plain_number(1 / value)}:1.")
        if not self.at_least <= value <= self.at_most:
            raise Refused(f"That is outside the limits: {self.limits('')}.")
        return as_typed(text, value)

    def echo(self, value: float, answers: Answers) -> str:
        return f"{plain_number(value)}:1"

    def hint(self, units: str) -> str:
        return "such as 3:1 or 2.5"

    def limits(self, units: str) -> str:
        return f"it must be from {plain_number(self.at_least)}:1 to {plain_number(self.at_most)}:1"


class Pitch(Simple[tuple[str, float]]):
    """How steep a roof is: rise in 12, degrees or percent."""

    name = "roof pitch"

    def take(self, text: str, answers: Answers) -> Taken[tuple[str, float]]:
        kind, number = reading.read_pitch(text)
        return as_typed(text, (kind, float(number)))

    def echo(self, value: tuple[str, float], answers: Answers) -> str:
        kind, number = value
        said = {"in 12": " in 12", "degrees": " degrees", "percent": " %"}
        return plain_number(number) + said.get(kind, f" {kind}")

    def hint(self, units: str) -> str:
        return "such as 6 in 12, 27 deg or 50 %"
