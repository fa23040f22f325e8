"""Lengths: feet and inches, inches, yards, metric, and paces."""

from __future__ import annotations

import re
from fractions import Fraction
from itertools import pairwise

from interview.quantities.records import record
from interview.reading.numbers import take_number, unreadable
from interview.reading.terms import Amount, Term, terms_of
from interview.reading.text import Refused, in_digits, refuse_odd, shown, taken, two_ways

MM = {
    "in": Fraction(254, 10),
    "ft": Fraction(3048, 10),
    "yd": Fraction(9144, 10),
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
}
"""Millimetres in each unit, exact: NIST Special Publication 811, 2008, Appendix B."""

US_UNITS = ("yd", "ft", "in")
METRIC_UNITS = ("m", "cm", "mm")

_SPELLINGS = {
    "ft": "ft foot feet '",
    "in": 'in ins inch inches "',
    "yd": "yd yds yard yards",
    "m": "m meter meters metre metres",
    "cm": "cm cms centimeter centimeters centimetre centimetres",
    "mm": "mm mms millimeter millimeters millimetre millimetres",
}
LENGTH_WORDS = {word: unit for unit, words in _SPELLINGS.items() for word in words.split()}
NAMES = "ft, in, yd, m, cm, mm"

_PACED = r"(?i)(?:paces?|p)(?![^\W\d_])\s*(?:[,(]\s*)?(?P<walker>[^\W\d_][\w .'-]{0,29})?\)?"
_THOUSANDTHS = r"(?P<whole>[1-9]\d{0,2})[.,](?P<part>\d{3})\s*(?P<unit>[a-z\"]*)\.?"
# Wider than half a sixteenth of an inch and than half a millimetre, the steps of an echo.
_ECHO_SLACK_MM = Fraction(1)

LONGEST_M = 100_000
"""No yard is longer; within it an echo in any unit has few enough digits to read back."""


@record
class Paces:
    """A length as a count of paces, with the walker's name where one was given."""

    count: Fraction
    walker: str = ""


def convert_length(amount: Amount, unit: str) -> Fraction:
    """Return the exact number of ``unit`` in a length."""
    return amount.number * MM[amount.unit] / MM[unit]


def read_length(text: str, bare: str | None, paces: bool = True) -> Amount | Paces:
    """Return the length written in ``text``, exact, in the unit it was written in.

    Feet and inches come back in inches, metres and centimetres in metres. ``bare`` is the unit of
    a number without one; none asks for a unit. The echo of a length reads back. Raises
    ``Refused``, also for paces when ``paces`` is false.
    """
    example = example_length(bare)
    clean = in_digits(taken(text, example))
    refuse_odd(clean, example)
    if re.match(r"[\d.,]", clean) and "p" in clean.casefold():
        paced = _paced(clean, example)
        if paced and paces:
            return paced
        if paced:
            raise Refused(f"This one cannot be paced. Measure it and write it like {example}.")
    _refuse_thousandths(clean, bare)
    names = ", ".join(METRIC_UNITS) if bare in METRIC_UNITS else NAMES
    found = _taped(clean, bare, example, f"{names}, or paces" if paces else names)
    if convert_length(found, "m") > LONGEST_M:
        raise Refused(f"That is over 100 km. Check the unit, and write it like {example}.")
    return found


def _refuse_thousandths(clean: str, bare: str | None) -> None:
    """Refuse thousandths of an inch with the eighth to write in their place.

    No rule shows them, and ``6.525 in`` may be meant as thousands too.
    """
    match = re.fullmatch(_THOUSANDTHS, clean.casefold())
    if match is None or LENGTH_WORDS.get(match["unit"] or bare or "") != "in":
        return
    if int(match["part"]) % 125 == 0:
        return
    eighths = round(Fraction(int(match["whole"] + match["part"]), 125))
    whole, over = divmod(eighths, 8)
    inches = f"{whole} {Fraction(over, 8)} in" if over else f"{whole} in"
    raise two_ways(clean, inches, f"{match['whole']}{match['part']} in")


def is_bare(text: str) -> bool:
    """Tell whether ``text`` is one number in digits and nothing else; raises ``Refused``."""
    return bool(re.fullmatch(r"[\d.,]+", in_digits(taken(text, example_length(None)))))


def read_taped_length(text: str, bare: str | None) -> Amount:
    """Return the length written in ``text``; paces are refused. Raises ``Refused``."""
    found = read_length(text, bare, paces=False)
    assert isinstance(found, Amount)
    return found


def example_length(unit: str | None) -> str:
    """Return a well-written length in the system of ``unit``."""
    if unit in ("in", "mm"):
        return "3 1/2 in" if unit == "in" else "90 mm"
    return "3.9 m" if unit in METRIC_UNITS else "12 ft 9 in"


def _paced(clean: str, example: str) -> Paces | None:
    number = take_number(clean, 0, example)
    match = re.fullmatch(_PACED, clean[number.end :].strip())
    if match is None:
        return None
    return Paces(number.value, " ".join((match["walker"] or "").split()))


def _taped(clean: str, bare: str | None, example: str, names: str) -> Amount:
    if clean[0] in "'\"":
        raise Refused(f"The mark {clean[0]} goes after the number. Write it like {example}.")
    terms = terms_of(clean, LENGTH_WORDS, example, names, decimal=", " in clean)
    for term in terms:
        if term.unit == "mm" and term.word in ("Mm", "mM"):
            raise two_ways(clean, f"{term.digits} mm", f"{term.digits} m")
    if terms[0].unit is None and len(terms) > 1:
        raise _two_numbers(clean, terms, bare, example)
    if len(terms) == 1:
        return _single(terms[0], bare)
    terms = _with_last_unit(clean, terms, example)
    systems = [term.unit in US_UNITS for term in terms]
    turn = systems.index(not systems[0]) if len(set(systems)) > 1 else len(terms)
    if turn == len(terms):
        return _sum(terms, example)
    if terms[turn].glue != "," or len(set(systems[turn:])) > 1:
        raise _mixed(example)
    first, second = _sum(terms[:turn], example), _sum(terms[turn:], example)
    if abs(convert_length(first, "mm") - convert_length(second, "mm")) > _ECHO_SLACK_MM:
        raise _mixed(example)
    return first


def _mixed(example: str) -> Refused:
    return Refused(f"Write one length, all in feet and inches or all metric, such as {example}.")


def _single(term: Term, bare: str | None) -> Amount:
    unit = term.unit or bare
    if unit is None:
        raise two_ways(term.digits, f"{term.digits} ft", f"{term.digits} m")
    return Amount(term.value, unit, bare=term.unit is None)


def _two_numbers(clean: str, terms: list[Term], bare: str | None, example: str) -> Refused:
    first, second = terms[0], terms[1]
    if bare in METRIC_UNITS:
        return Refused(f"{shown(clean)} has more than one number. Write one, such as {example}.")
    unit = second.unit if second.unit not in (None, "in") else bare
    if len(terms) > 2 or not (first.whole and second.whole) or second.value >= 12:
        return Refused(f"{shown(clean)} has more than one number. Write one, such as {example}.")
    if unit in (None, "in"):
        unit = "ft"
    feet = f"{first.digits} ft {second.digits} in"
    return two_ways(clean, feet, f"{first.digits}.{second.digits} {unit}")


def _with_last_unit(clean: str, terms: list[Term], example: str) -> list[Term]:
    """Give a bare last number its unit: inches after feet, two digits of centimetres after m."""
    if any(term.unit is None for term in terms[:-1]):
        raise unreadable(clean, example)
    last, before = terms[-1], terms[-2]
    if last.unit is not None:
        return terms
    if before.unit == "m" and last.whole and before.whole:
        if len(last.digits) != 2:
            point, small = f"{before.digits}.{last.digits} m", f"{last.digits} cm"
            raise two_ways(clean, point, f"{before.digits} m {small}")
        unit = "cm"
    elif before.unit == "ft":
        unit = "in"
    else:
        raise Refused(f"The last number in {shown(clean)} has no unit. Write it like {example}.")
    done = Term(last.value, unit, "", last.digits, last.whole, last.glue)
    return [*terms[:-1], done]


def _sum(terms: list[Term], example: str) -> Amount:
    if len(terms) == 1:
        assert terms[0].unit
        return Amount(terms[0].value, terms[0].unit)
    for large, small in pairwise(terms):
        assert large.unit and small.unit
        times = MM[large.unit] / MM[small.unit]
        if times <= 1:
            raise Refused(f"Write the larger unit first and each unit once, such as {example}.")
        if not large.whole:
            raise Refused(
                f"{large.digits} {large.unit} is not whole, so nothing can follow it. "
                f"Write one length, such as {example}."
            )
        if small.value >= times:
            names = {"in": "Inches", "ft": "Feet", "cm": "Centimetres", "mm": "Millimetres"}
            raise Refused(
                f"{names[small.unit]} after {large.unit} must be under {times}. "
                f"Write it like {example}."
            )
    unit = "in" if terms[0].unit in US_UNITS else "m"
    total = sum((term.value * MM[term.unit or unit] for term in terms), Fraction(0))
    return Amount(total / MM[unit], unit)
