"""Quantities in few letters, and bare numbers out of them, as the tests write them."""

from interview.garden.form.outline import Station
from interview.quantities.units import Quantity, magnitude, quantity


def ft(number: float) -> Quantity:
    return quantity(number, "ft")


def inch(number: float) -> Quantity:
    return quantity(number, "in")


def mm(number: float) -> Quantity:
    return quantity(number, "mm")


def ft2(number: float) -> Quantity:
    return quantity(number, "ft**2")


def h(number: float) -> Quantity:
    return quantity(number, "h")


def feet(value: Quantity) -> float:
    return magnitude(value, "ft")


def inches(value: Quantity) -> float:
    return magnitude(value, "in")


def hours(value: Quantity) -> float:
    return magnitude(value, "h")


def square_feet(value: Quantity) -> float:
    return magnitude(value, "ft**2")


def cubic(value: Quantity) -> float:
    return magnitude(value, "ft**3")


OWN = tuple(
    Station(*one)
    for one in (
        (0, 0, 0), (2, 2, 1.5), (4, 3, 3), (6, 2.5, 3.5), (8, 3, 3.5), (10, 2, 2), (12, 0, 0),
    )
)  # fmt: skip
"""An invented outline of one's own, in feet."""
