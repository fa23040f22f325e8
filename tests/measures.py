"""Quantities in few letters, and bare numbers out of them, as the tests write them."""

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


def cubic(value: Quantity) -> float:
    return magnitude(value, "ft**3")
