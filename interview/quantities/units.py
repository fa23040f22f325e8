"""Quantities with units: the registry, exact conversions, and how quantities are shown."""

from __future__ import annotations

import math
from fractions import Fraction
from functools import cache
from importlib.resources import files
from threading import Lock
from typing import TYPE_CHECKING, Any, TypeAlias, cast

if TYPE_CHECKING:
    import pint
    from pint.util import UnitsContainer

    Quantity: TypeAlias = pint.Quantity[float]
    """A number with a unit. Length, area, volume, rate, time and slope are all of this one type."""
else:
    Quantity = Any  # Pint is loaded with the first quantity that is made, not with this module.

US = "us"
METRIC = "metric"


_made: list[pint.UnitRegistry[Any]] = []
_making = Lock()


def _registry() -> pint.UnitRegistry[Any]:
    """Return the one registry, whichever threads ask first: two cannot be reckoned with together.

    A cache alone would let each of two threads make one.
    """
    if not _made:
        with _making:
            if not _made:
                import pint

                path = files("interview.quantities") / "units.txt"
                _made.append(pint.UnitRegistry(str(path), cache_folder=None))
    return _made[0]


def quantity(number: float, unit: str) -> Quantity:
    """Return ``number`` in ``unit``.

    ``unit`` is one of this project's own unit words (``in``, ``ft**2``, ``in/h``), never text that
    a person typed.
    """
    return cast(Quantity, _registry().Quantity(float(number), _unit(unit)))


@cache
def _unit(word: str) -> pint.Unit:
    """Return the unit of a word of ours; Pint would read the word anew for every quantity."""
    return _registry().Unit(word)


def magnitude(value: Quantity, unit: str) -> float:
    """Return the number of ``unit`` in ``value``; raises ``pint.DimensionalityError``."""
    # The public ``units`` makes an object at each call, which is compared slowly.
    return float(value.magnitude * _factor(value._units, unit))


@cache
def _factor(units: UnitsContainer, unit: str) -> float:
    """Return how many of ``unit`` one of ``units`` is; none of ours begins but at zero."""
    return float(_registry().Quantity(1.0, units).m_as(unit))


def ratio(a: Quantity, b: Quantity) -> float:
    """Return ``a / b`` as a pure number; both must have one dimension."""
    return float((a / b).m_as(""))


def total(*values: Quantity) -> Quantity:
    """Return the sum of quantities of one dimension."""
    return sum(values[1:], values[0])


def same_dimension(value: Quantity, unit: str) -> bool:
    """Tell whether ``value`` could be expressed in ``unit``."""
    return bool(value.is_compatible_with(unit))


def _guarded(number: float, step: float, up: bool) -> float:
    """Divide by ``step`` and round, forgiving the last bit of a float."""
    exact = number / step
    return math.ceil(exact - 1e-9) if up else math.floor(exact + 1e-9)


def round_up(value: Quantity, step: float, unit: str) -> Quantity:
    """Return ``value`` raised to the next whole ``step`` of ``unit``."""
    return quantity(_guarded(magnitude(value, unit), step, True) * step, unit)


def round_down(value: Quantity, step: float, unit: str) -> Quantity:
    """Return ``value`` lowered to a whole ``step`` of ``unit``."""
    return quantity(_guarded(magnitude(value, unit), step, False) * step, unit)


def significant(number: float, digits: int = 2, direction: str = "nearest") -> float:
    """Return ``number`` at ``digits`` significant digits, ``nearest``, ``up`` or ``down``."""
    if number == 0 or not math.isfinite(number):
        return number
    power = digits - 1 - math.floor(math.log10(abs(number)))
    scaled = Fraction(number) * Fraction(10) ** power
    if direction == "up":
        whole = math.ceil(scaled - Fraction(1, 10**9))
    elif direction == "down":
        whole = math.floor(scaled + Fraction(1, 10**9))
    else:
        whole = math.floor(scaled + Fraction(1, 2))
    return float(whole / Fraction(10) ** power)


def plain_number(number: float, digits: int = 6) -> str:
    """Write ``number`` without an exponent and without trailing zeros."""
    if number == 0:
        return "0"
    places = max(0, digits - 1 - math.floor(math.log10(abs(number))))
    text = f"{number:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def feet_and_inches(value: Quantity, denominator: int = 16) -> str:
    """Write a length as a tape shows it, such as ``12 ft 9 1/2 in``, to 1/16 inch."""
    return _on_a_tape(value, denominator, 12 * denominator)


def inches(value: Quantity, denominator: int = 4) -> str:
    """Write a length as a rule shows it, such as ``15 1/4 in``, to a quarter inch."""
    return _on_a_tape(value, denominator, 0)


def _on_a_tape(value: Quantity, denominator: int, foot: int) -> str:
    """Write a length in whole parts of an inch; ``foot`` of them are told as a foot."""
    parts = round(magnitude(value, "in") * denominator)
    feet, rest = divmod(abs(parts), foot) if foot else (0, abs(parts))
    whole, over = divmod(rest, denominator)
    words = [f"{feet} ft"] if feet else []
    if over:
        part = Fraction(over, denominator)
        words.append(f"{f'{whole} ' if whole else ''}{part} in")
    elif whole or not feet:
        words.append(f"{whole} in")
    return ("-" if parts < 0 else "") + " ".join(words)


_NAMES = {
    "ft**2": "ft²",
    "m**2": "m²",
    "ft**3": "ft³",
    "m**3": "m³",
    "yd**3": "yd³",
    "ton": "ton of 2000 lb",
    "t": "tonne",
    "ft**3/s": "ft³/s",
    "percent": "%",
    "": "",
}


def unit_name(unit: str) -> str:
    """Return the printed name of one of this project's unit words."""
    return _NAMES.get(unit, unit)


def show(value: Quantity, unit: str, digits: int = 2, direction: str = "nearest") -> str:
    """Write ``value`` in ``unit`` with ``digits`` significant digits, such as ``140 ft²``."""
    number = significant(magnitude(value, unit), digits, direction)
    name = unit_name(unit)
    space = "" if name in ("", "%") else " "
    return f"{plain_number(number)}{space}{name}"
