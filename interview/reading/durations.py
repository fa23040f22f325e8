"""Durations: hours and minutes, days, seconds, and the clock form h:mm."""

from __future__ import annotations

import re
from fractions import Fraction
from itertools import pairwise

from interview.reading.numbers import unreadable
from interview.reading.terms import Amount, Term, terms_of
from interview.reading.text import Refused, in_digits, refuse_odd, shown, taken, two_ways

SECONDS = {"s": 1, "min": 60, "h": 3600, "day": 86400}

_SPELLINGS = {
    "s": "s sec secs second seconds",
    "min": "m min mins minute minutes",
    "h": "h hr hrs hour hours",
    "day": "d day days",
}
_WORDS = {word: unit for unit, words in _SPELLINGS.items() for word in words.split()}
_NAMES = "s, min, h or days"
_EXAMPLE = "1 h 45 min"

_CLOCK_FORM = r"(?a)(\d{1,3}):(\d{2})(?::(\d{2}))?(?:\s*(?:h|hrs?|hours?))?"
_ISO = r"(?a)p(?:(\d{1,4})d)?(?:t(?:(\d{1,4})h)?(?:(\d{1,5})m)?(?:(\d{1,6})s)?)?"
_SAID = {
    "half an hour": 30,
    "half hour": 30,
    "an hour": 60,
    "one hour": 60,
    "an hour and a half": 90,
    "a day": 1440,
    "a day and a half": 2160,
    "one day": 1440,
    "half a day": 720,
}


def read_duration(text: str, bare: str | None) -> Amount:
    """Return the duration written in ``text``, exact, in minutes, or in seconds where they count.

    ``1:45`` is hours and minutes, and ``m`` is minutes. ``bare`` is the unit of a number without
    one; none refuses it, showing minutes and hours. Raises ``Refused``.
    """
    clean = taken(text, _EXAMPLE)
    folded = " ".join(clean.casefold().split())
    if folded in _SAID:
        return Amount(Fraction(_SAID[folded]), "min")
    clean = in_digits(clean)
    refuse_odd(clean, _EXAMPLE)
    if match := re.fullmatch(_CLOCK_FORM, folded):
        return _clock_form(clean, match)
    if (match := re.fullmatch(_ISO, folded)) and any(match.groups()):
        parts = [int(part or 0) for part in match.groups()]
        total = sum(part * size for part, size in zip(parts, (86400, 3600, 60, 1), strict=True))
        return _amount(Fraction(total), bool(match[4]))
    if re.search(r"\d\s*['\"]", clean):
        raise Refused(f"The marks ' and \" mean feet and inches here. Write it like {_EXAMPLE}.")
    if not re.search(r"\d", clean):
        raise Refused(f"Write how long in digits, such as {_EXAMPLE}, from the start to the end.")
    return _from_terms(clean, terms_of(clean, _WORDS, _EXAMPLE, _NAMES), bare)


def _amount(seconds: Fraction, in_seconds: bool, bare: bool = False) -> Amount:
    return Amount(seconds, "s", bare) if in_seconds else Amount(seconds / 60, "min", bare)


def _clock_form(clean: str, match: re.Match[str]) -> Amount:
    hours, minutes, seconds = (int(part or 0) for part in match.groups())
    if minutes > 59 or seconds > 59:
        raise Refused(f"{shown(clean)} has more than 59 after a colon. Write it like {_EXAMPLE}.")
    if hours > 23:
        rest = f" {minutes} min" if minutes else ""
        small = f" {minutes} s" if minutes else ""
        raise two_ways(clean, f"{hours} h{rest}", f"{hours} min{small}")
    return _amount(Fraction(hours * 3600 + minutes * 60 + seconds), match[3] is not None)


def _from_terms(clean: str, terms: list[Term], bare: str | None) -> Amount:
    if len(terms) == 1:
        return _single(terms[0], bare)
    if any(term.glue == "-" for term in terms):
        raise Refused(f"Write one time and not a range, such as {_EXAMPLE}.")
    last = terms[-1]
    if last.unit is None and terms[-2].unit == "h" and last.whole:
        if len(last.digits) != 2:
            hours = terms[-2].digits
            raise two_ways(clean, f"{hours} h {last.digits} min", f"{hours}.{last.digits} h")
        terms = [*terms[:-1], Term(last.value, "min", "", last.digits, True, last.glue)]
    if any(term.unit is None for term in terms):
        raise unreadable(clean, _EXAMPLE)
    _refuse_overflow(clean, terms)
    total = sum((term.value * SECONDS[term.unit or "s"] for term in terms), Fraction(0))
    return _amount(total, any(term.unit == "s" for term in terms))


def _single(term: Term, bare: str | None) -> Amount:
    unit = term.unit or bare
    if unit is None:
        raise two_ways(term.digits, f"{term.digits} min", f"{term.digits} h")
    if term.word == "M":
        raise Refused(f"M could be a month. Write {term.digits} min for minutes.")
    return _amount(term.value * SECONDS[unit], unit == "s", bare=term.unit is None)


def _refuse_overflow(clean: str, terms: list[Term]) -> None:
    """Refuse a repeated unit, a part after a fraction, and a part that fills the next unit."""
    ordered = sorted(terms, key=lambda term: -SECONDS[term.unit or "s"])
    for large, small in pairwise(ordered):
        assert large.unit and small.unit
        if large.unit == small.unit:
            raise Refused(f"{shown(clean)} has one unit twice. Write it like {_EXAMPLE}.")
        times = SECONDS[large.unit] // SECONDS[small.unit]
        if not large.whole or small.value >= times:
            raise Refused(
                f"In {shown(clean)} the {small.unit} must be under {times} and the {large.unit} "
                f"whole. Write it like {_EXAMPLE}."
            )
