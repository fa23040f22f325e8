"""Numbers followed by unit words, one after the other, such as ``12 ft 9 1/2 in``."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import field
from fractions import Fraction

from interview.quantities.records import record
from interview.reading.numbers import take_number, unreadable
from interview.reading.text import Refused, shown


@record
class Amount:
    """An exact number of one of this project's unit words, such as 3/4 and ``in/h``."""

    number: Fraction
    unit: str
    bare: bool = field(default=False, compare=False)
    """Whether no unit was written, so that ``unit`` is the one that was offered."""


@record
class Term:
    """One number of a text with the unit written after it."""

    value: Fraction
    unit: str | None
    """The project's unit word; none for a bare number."""
    word: str
    """The unit as typed."""
    digits: str
    """The number as typed."""
    whole: bool
    glue: str
    """What joins it to the term before: nothing, a space, a comma, ``and`` or a hyphen."""


_UNIT = r"\s*(?:(?P<word>[^\W\d_]+)(?:\.(?!\d))?|(?P<mark>['\"]))"
_GLUE = r"(?i)\s*(?:(?P<glue>,|-|&|and\b)\s*)?"


def terms_of(
    clean: str, units: Mapping[str, str], example: str, names: str, *, decimal: bool = False
) -> list[Term]:
    """Return the terms of a plain text in order; raises ``Refused``.

    ``units`` maps each spelling, in lower case, to a unit word; ``names`` lists the units for the
    refusal; ``decimal`` is passed on to the numbers.
    """
    found: list[Term] = []
    at = 0
    while at < len(clean):
        glue = ""
        if found:
            glue, at = _glue(clean, at, example)
        number = take_number(clean, at, example, decimal=decimal)
        if found and number.digits[0] in ".," and not clean[at - 1].isspace():
            raise unreadable(clean, example)
        match = re.compile(_UNIT).match(clean, number.end)
        word = ((match["word"] or match["mark"]) if match else "") or ""
        if match is None or word.casefold() == "and":
            found.append(Term(number.value, None, "", number.digits, number.whole, glue))
            at = _past_spaces(clean, number.end)
            continue
        unit = units.get(word.casefold())
        if unit is None:
            raise Refused(f"{shown(word)} is not a unit that fits here. Use {names}.")
        found.append(Term(number.value, unit, word, number.digits, number.whole, glue))
        at = match.end()
    return found


def _past_spaces(clean: str, at: int) -> int:
    """Return the end of the text when only spaces are left, else ``at``."""
    return len(clean) if not clean[at:].strip() else at


def _glue(clean: str, at: int, example: str) -> tuple[str, int]:
    match = re.compile(_GLUE).match(clean, at)
    if match is None or match.end() == len(clean):
        raise unreadable(clean, example)
    glue = match["glue"] or (" " if match.end() > at else "")
    # In 12' -3" the hyphen is a minus sign; in 12'-9" and 12' - 9" it only joins.
    if glue == "-" and clean[at].isspace() != clean[match.end() - 1].isspace():
        raise Refused(f"Take the minus sign out of {shown(clean)}, and write it like {example}.")
    return glue.casefold(), match.end()
