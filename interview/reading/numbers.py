"""Numbers as people write them: decimals, commas, grouped thousands and fractions, kept exact."""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction
from typing import NamedTuple

from interview.reading.text import Refused, in_digits, refuse_odd, shown, taken, two_ways

MOST_WHOLE_DIGITS = 9
MOST_DECIMALS = 6
MOST_PARTS = 1000
"""The finest fraction that is read is a thousandth."""

_NUMBER = (
    r"(?a)(?:(?P<whole>\d+)(?:\s+(?:and\s+)?|-))?(?P<over>\d+)\s*/\s*(?P<under>\d+)(?![\d.,/])"
    r"|(?P<numeral>\d{1,3}(?: \d{3})+(?:[.,]\d*)?(?![\d/.,])|[.,]?\d[\d.,]*)"
)
_GROUPED = r"(?a)(\d{1,3}([., ])\d{3}(?:\2\d{3})*)(?:(?!\2)[.,](\d*))?"
_TWO_READINGS = r"(?a)[1-9]\d{0,2}[.,]\d{3}"
_EIGHTHS = {"125", "375", "625", "875"}


class ReadNumber(NamedTuple):
    """A number found in a text, and where it ended."""

    value: Fraction
    whole: bool
    """Whether it was written without a fraction and without decimals."""
    digits: str
    """The characters as written."""
    end: int


def take_number(clean: str, start: int, example: str, *, decimal: bool = False) -> ReadNumber:
    """Return the number that begins at ``start`` of a plain text.

    ``decimal`` says that a lone point or comma is known to be a decimal one. Raises ``Refused``.
    """
    match = re.compile(_NUMBER).match(clean, start)
    if match is None:
        if not re.search(r"\d", clean):
            raise Refused(f"Write the number in digits, such as {example}.")
        raise unreadable(clean, example)
    if match["numeral"] is None:
        return ReadNumber(_mixed(match), False, match[0], match.end())
    value = numeral(match["numeral"], decimal=decimal)
    return ReadNumber(value, match[0].isdigit(), match[0], match.end())


def unreadable(clean: str, example: str) -> Refused:
    """Return the refusal of a text that fits no known form."""
    return Refused(f"{shown(clean)} cannot be read here. Write it like {example}.")


def numeral(chunk: str, *, decimal: bool = False) -> Fraction:
    """Return the value of digits with points, commas or grouping spaces, such as ``1,234.5``.

    Raises ``Refused`` when there are too many digits, when the marks make no number, and when
    exactly three digits follow one mark (``3,900``), unless ``decimal`` settles that. Decimal
    eighths with a point (``7.125``) are settled too: they are how an inch rule is written.
    """
    marks = [char for char in chunk if char in "., "]
    if len(marks) <= 1 and " " not in marks:
        mark = marks[0] if marks else "."
        head, _, tail = chunk.partition(mark)
        if mark == "," and not tail:
            raise Refused(
                f"{shown(chunk)} ends with a comma. Write the number whole, such as {head}."
            )
        settled = decimal or (mark == "." and tail in _EIGHTHS)
        if not settled and re.fullmatch(_TWO_READINGS, chunk):
            raise two_ways(chunk, head + tail, _clearly_decimal(head, tail))
        return _joined(head, tail)
    match = re.fullmatch(_GROUPED, chunk)
    if match is None:
        raise Refused(f"{shown(chunk)} is not one number. Use one decimal point, such as 12.5.")
    return _joined(re.sub(r"[., ]", "", match[1]), match[3] or "")


def _clearly_decimal(head: str, tail: str) -> str:
    kept = tail.rstrip("0") or "0"
    return f"{head}.{kept}" if len(kept) < len(tail) else f"{head}.{tail}0"


def _joined(head: str, tail: str) -> Fraction:
    if len(head) > MOST_WHOLE_DIGITS or len(tail) > MOST_DECIMALS:
        raise Refused(
            f"That number has too many digits. Write at most {MOST_WHOLE_DIGITS} before the "
            f"point and {MOST_DECIMALS} after it."
        )
    return Fraction(int(head + tail), 10 ** len(tail))


def _mixed(match: re.Match[str]) -> Fraction:
    whole, over, under = match["whole"], match["over"], match["under"]
    if len(over) > MOST_WHOLE_DIGITS or not 2 <= _small(under) <= MOST_PARTS:
        raise Refused(
            f"The fraction in {shown(match[0])} cannot be read. The lower number can be "
            f"2 to {MOST_PARTS}, as in 3/8."
        )
    part = Fraction(int(over), int(under))
    if whole is None:
        return part
    if part >= 1:
        raise Refused(
            f"The fraction in {shown(match[0])} is one or more. After a whole number write a "
            "smaller one, as in 1 3/8."
        )
    return _joined(whole, "") + part


def _small(digits: str) -> int:
    return int(digits) if len(digits) <= 4 else MOST_PARTS + 1


def split_number(clean: str, example: str) -> tuple[Fraction, str]:
    """Return the number a plain text begins with, and the words after it, in lower case."""
    found = take_number(clean, 0, example)
    return found.value, clean[found.end :].strip().casefold()


def read_number(
    text: str,
    *,
    example: str = "4.5",
    lead: Sequence[str] = (),
    tail: Sequence[str] = (),
) -> Fraction:
    """Return the number written alone in ``text``; raises ``Refused``.

    Words of ``lead`` may stand before it and those of
    ``tail`` after it, such as ``zone`` and ``hours``.
    """
    clean = in_digits(_without_lead(taken(text, example), lead))
    refuse_odd(clean, example)
    found = take_number(clean, 0, example)
    rest = clean[found.end :].strip()
    if re.match(r"-\s*\d", rest):
        raise Refused(f"Write one number and not a range, such as {example}.")
    if rest and " ".join(rest.casefold().rstrip(".").split()) not in tail:
        only = f"a number of {tail[0]}" if tail and len(tail[0]) > 2 else "a number"
        raise Refused(f"Only {only} fits here: {shown(rest)} does not. Write it like {example}.")
    return found.value


def _without_lead(clean: str, lead: Sequence[str]) -> str:
    """Return ``clean`` less the words of ``lead`` it begins with."""
    begun = True
    while begun:
        begun = False
        for word in lead:
            rest = clean[len(word) :]
            if clean.casefold().startswith(word) and re.match(r"[\s.\d]", rest):
                clean, begun = rest.lstrip(" ."), True
    return clean


def read_count(text: str, lead: Sequence[str] = (), tail: Sequence[str] = ()) -> int:
    """Return the whole number written in ``text``; raises ``Refused``.

    ``lead`` and ``tail`` are the words that may stand around it.
    """
    value = read_number(text, example="3", lead=lead, tail=tail)
    digits = in_digits(_without_lead(taken(text, "3"), lead))
    if value.denominator != 1 or not re.match(r"[\d., ]+(?![\d/])", digits, re.ASCII):
        raise Refused(f"{shown(text.strip())} is not a whole number. Write one, such as 3.")
    return int(value)


def decimal_comma(text: str) -> bool:
    """Tell whether a comma in ``text`` was read as a decimal point, so an echo can say so."""
    if len(text) > 64 or re.search(r"\d{1,3},\d{3}(?!\d)", text):
        return bool(len(text) <= 64 and re.search(r"\.\d{3},\d", text))
    return re.search(r"(?:\d|^|\s),\d", plain_or_empty(text)) is not None


def plain_or_empty(text: str) -> str:
    """Return the plain form of ``text``, or nothing when it cannot be taken."""
    try:
        return taken(text, "4.5")
    except Refused:
        return ""
