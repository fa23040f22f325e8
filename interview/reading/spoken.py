"""Obvious speech around an amount: a guess, a least, a range, a dozen, steps for paces."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Generic, NamedTuple, TypeVar

from interview.reading.numbers import take_number
from interview.reading.text import Refused, in_digits, taken

T = TypeVar("T")

SMALLER, LARGER = "smaller", "larger"
"""Which end of a range is the careful one."""

MEASURE = "Measure it."
COUNT = "Count them."
ONE_NUMBER = "Write one number."
ITSELF = "Write the number itself."

_EXAMPLE = "12"
_JUST = r"(?:well |just |only |a (?:little|bit) )?"
_ROUGH = (
    r"(?i)^(?:[~≈]|(?:about|around|roughly|approximately|approx\.?|circa|maybe|perhaps)(?![a-z]))\s*"
    r"|,?\s+(?:or so|more or less|give or take|approximately|approx\.?|roughly)$"
    r"|(?<=\d)\s*-?ish(?![a-z])|(?<=[a-z'\"])(?:\s+|-)ish$|(?<=[^?\s])\s*\?$"
)
_LEAST = (
    rf"(?i)^{_JUST}(?:over|above|more than)(?![a-z])\s*"
    r"|^(?:at least|no less than|not less than|(?:greater|longer|deeper|farther|further) than"
    r"|upwards? of)(?![a-z])\s*|^(?:>=?|≥)\s*"
    r"|\s+or (?:more|over|longer|deeper|farther|further)\b|\s+and (?:more|up|over)$"
    r"|(?<=[\da-z'\"])\s*\+$"
)
_PLUS_UNIT = r"(?i)^([\d\s./,]*\d)\s*\+\s*([a-z'\"][a-z .'\"²]*)$"
_MOST = (
    rf"(?i)^{_JUST}(?:under|below|less than)(?![a-z])\s*"
    r"|^(?:up to|at (?:the )?most|fewer than|no more than|not (?:more than|over)"
    r"|(?:smaller|shorter) than)(?![a-z])\s*|^(?:<=?|≤)\s*|\s+(?:or (?:less|under|fewer)|at most)$"
)
_FEW = r"(?i)(?:only |just )?(?:a few|few|several)(?![a-z])"
# What follows must be a unit: "a dozen and a half" is 18 and not 12 1/2.
_WORDED = (
    r"(?i)^(?:(?P<six>half a|a half) dozen|(?P<dozen>(?:a |one )?dozen)|(?P<two>a couple))"
    r"(?:\s+of)?(?=\s+(?!and\b|or\b|to\b)[a-z]|$)"
)
_NUMBERS = {"six": "6", "dozen": "12", "two": "2"}
_STEPS = r"(?i)(?<![a-z])(?:foot)?steps?(?![a-z])"
_BETWEEN = r"(?i)^(?:between|from)\s+"
_JOIN = r"(?i)\s*(?:(?<![a-z])(?P<word>or|to)(?![a-z])|(?P<dash>-)|(?P<dots>\.\.+))\s*"
_AND = r"(?i)\s+(?P<word>and)\s+(?!a\b|half\b|one\b)"
_MOST_JOINS = 4
"""As many as may stand in one range, as in ``5-1/2 - 6-1/2``, and one more."""
_ANOTHER_NUMBER = r"(?i)(?<![a-z])\d"
_INCHES = r"(?i)\s*(?:in|ins|inch|inches|\")\.?"


class Spoken(NamedTuple, Generic[T]):
    """What was read, and the words that say it as plainly as any reader takes it."""

    words: str
    value: T
    rough: bool = False
    """Whether it was said to be a guess."""
    how: str = ""
    """What stands after the amount to say how it was taken."""


class Hearing(NamedTuple, Generic[T]):
    """How the words around one kind of amount are taken."""

    read: Callable[[str], T]
    """Reads the amount alone; raises ``Refused``."""
    size: Callable[[T], tuple[str, float]]
    """What the amount is counted in, and how large it is: only alike ones make a range."""
    careful: str = ""
    """The end of a range that is taken: ``SMALLER``, ``LARGER``, or neither."""
    no_guess: str | None = None
    """What is said to a guess where none is taken; empty for what the reader says."""
    least: bool = False
    """Whether the least that it may be is taken for it."""
    few: str = MEASURE
    """What is said to "a few"."""
    feet: bool = False
    """Whether ``5-6 in`` could be five feet six."""

    def hear(self, text: str) -> Spoken[T]:
        """Return what ``text`` says; raises ``Refused``.

        What the reader takes as it is stays as typed. "About", "at least" and the like are taken
        off; of a range the careful end is taken, and where neither is, it is asked which.
        """
        try:
            return Spoken(" ".join(text.split()), self.read(text))
        except Refused as refused:
            try:
                clean = taken(text, _EXAMPLE)
            except Refused:
                raise refused from None
            heard = self._around(clean, refused)
            if heard is None:
                raise
            return heard

    def _around(self, clean: str, refused: Refused) -> Spoken[T] | None:
        words, rough = _without(_ROUGH, re.sub(_PLUS_UNIT, r"\1 \2+", clean))
        words, most = _without(_MOST, words)
        words, least = _without(_LEAST, words)
        words, rough_too = _without(_ROUGH, words)
        rough = rough or rough_too
        if re.match(_FEW, words):
            raise Refused(COUNT if re.search(r"\b(?:pace|step)s?\b", words) else self.few)
        words = _known(words)
        plainly = self._plainly(words, clean)
        found = plainly or self._range(words)
        if found is None:
            return None
        if most:
            raise Refused(ITSELF)
        if least and not self.least:
            raise Refused(ONE_NUMBER)
        if rough and self.no_guess is not None:
            raise Refused(self.no_guess) if self.no_guess else refused
        how = ": the least that it may be" if least else ""
        how = f": the {self.careful} of the two" if len(found) > 1 else how
        return Spoken(*self._end(found), rough, how)

    def _plainly(self, words: str, before: str) -> list[tuple[str, T]] | None:
        if words == before:
            return None
        try:
            return [(words, self.read(words))]
        except Refused:
            return None

    def _range(self, words: str) -> list[tuple[str, T]] | None:
        """Return the two ends of the one range that ``words`` can be, with the words of each."""
        between = re.match(_BETWEEN, words)
        words = re.sub(_BETWEEN, "", words)
        joins = [*re.finditer(_JOIN, words), *(re.finditer(_AND, words) if between else ())]
        if len(joins) > _MOST_JOINS:
            return None
        pairs = [pair for join in joins if (pair := self._pair(words, join)) is not None]
        return pairs[0] if len(pairs) == 1 else None

    def _pair(self, words: str, join: re.Match[str]) -> list[tuple[str, T]] | None:
        sides = _with_one_unit(words[: join.start()], words[join.end() :], bool(join["word"]))
        if sides is None:
            return None
        if join["word"] is None and self.feet and self._feet_and_inches(*sides):
            return None
        try:
            found = [(side, self.read(side)) for side in sides]
        except Refused:
            return None
        (unit, one), (other_unit, other) = (self.size(value) for _, value in found)
        if unit != other_unit:
            return None
        backwards = one > other or one == other
        return None if backwards and (join["word"] or "").casefold() != "or" else found

    def _feet_and_inches(self, one: str, other: str) -> bool:
        """Tell whether what a dash joins may be feet and inches, by an end that does not cover it.

        Without a unit both are feet: the smaller is then no more than it, and the larger no less.
        """
        numbers = [re.fullmatch(r"(\d+)(.*)", side) for side in (one, other)]
        if not all(numbers):
            return False
        _, second = (match[1] for match in numbers if match)
        tail = numbers[1][2] if numbers[1] else ""
        return int(second[:4]) < 12 and bool(
            re.fullmatch(_INCHES, tail) or not (tail or self.careful)
        )

    def _end(self, found: list[tuple[str, T]]) -> tuple[str, T]:
        """Return the careful one of two ends; raises ``Refused`` where neither is."""
        if len(found) == 1:
            return found[0]
        if not self.careful:
            (one, _), (other, _) = found
            tail = other[take_number(in_digits(other), 0, _EXAMPLE).end :]
            raise Refused(f"Which: {one.removesuffix(tail) if tail else one} or {other}?")
        ends = sorted(found, key=lambda end: self.size(end[1]))
        return ends[0] if self.careful == SMALLER else ends[-1]


def begins_speech(text: str) -> bool:
    """Tell whether a text begins as obvious speech around an amount does."""
    return any(re.match(one, text) for one in (_ROUGH, _LEAST, _MOST, _WORDED, _FEW))


def _without(pattern: str, words: str) -> tuple[str, bool]:
    """Return ``words`` less what ``pattern`` finds, and whether it found any."""
    left, times = re.subn(pattern, "", words)
    return left.strip(), times > 0


def _known(words: str) -> str:
    """Put numbers for a dozen and a couple, and paces for steps."""
    words = re.sub(_WORDED, lambda match: _NUMBERS[match.lastgroup or ""], words)
    return re.sub(_STEPS, "paces", words)


def _with_one_unit(one: str, other: str, worded: bool) -> tuple[str, str] | None:
    """Return both sides of a range with a unit, which one may lend to the other.

    Nothing where a side is no number, or where it cannot be told which unit is lent. After a dash
    the first lends none: ``5 ft - 6`` is a length in feet and inches.
    """
    sides = [in_digits(_known(side.strip())) for side in (one, other)]
    tails = []
    for side in sides:
        try:
            tails.append(side[take_number(side, 0, _EXAMPLE).end :])
        except Refused:
            return None
    lent = [bool(tail.strip()) and not re.search(_ANOTHER_NUMBER, tail) for tail in tails]
    if tails[0].strip() and tails[1].strip():
        return sides[0], sides[1]
    if tails[1].strip():
        return (sides[0].strip() + tails[1], sides[1]) if lent[1] else None
    if tails[0].strip():
        return (sides[0], sides[1].strip() + tails[0]) if lent[0] and worded else None
    return sides[0], sides[1]
