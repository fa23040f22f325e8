"""Short ways to say what several stages of questions need to say."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking.answers import Answers
from interview.asking.measures import Bound, Measure
from interview.asking.question import Question


def by_units(us: str, metric: str) -> Callable[[Answers], str | None]:
    """Return a default that differs between US and metric units."""
    return lambda answers: answers.by_units(us, metric)


def always_this(text: str) -> Callable[[Answers], str | None]:
    """Return a default that is the same for everyone."""
    return lambda _answers: text


def chosen(question: Question[str], *options: str) -> Callable[[Answers], bool]:
    """Return a condition: ``question`` was answered with one of ``options``."""

    def condition(answers: Answers) -> bool:
        answer: str | None = answers.get(question)
        return answer is not None and answer in options

    return condition


def ticked(question: Question[tuple[str, ...]], option: str) -> Callable[[Answers], bool]:
    """Return a condition: ``option`` is among the ticks of ``question``."""

    def condition(answers: Answers) -> bool:
        ticks: tuple[str, ...] | None = answers.get(question)
        return ticks is not None and option in ticks

    return condition


def said_yes(question: Question[bool]) -> Callable[[Answers], bool]:
    """Return a condition: ``question`` was answered with yes."""
    return lambda answers: answers.get(question) is True


def both(*conditions: Callable[[Answers], bool]) -> Callable[[Answers], bool]:
    """Return a condition that holds where all of ``conditions`` hold."""
    return lambda answers: all(condition(answers) for condition in conditions)


def distance(at_most_ft: float = 1000.0, above_zero: bool = False, careful: str = "") -> Measure:
    """Return the kind of a distance across the yard, in feet or metres.

    ``careful`` is the end that is taken of a range.
    """
    low, high = (0, "ft"), (at_most_ft, "ft")
    return Measure("length", "ft", "m", low, high, above_zero, paced=True, careful=careful)


def depth(at_least: Bound = (0, "in"), at_most: Bound = (120, "in"), careful: str = "") -> Measure:
    """Return the kind of a depth, in inches or millimetres.

    ``careful`` is the end that is taken of a range.
    """
    return Measure("length", "in", "mm", at_least, at_most, careful=careful)
