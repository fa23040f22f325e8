"""Quantities in few letters, and bare numbers out of them, as the tests write them."""

from interview.garden.form.outline import Station
from interview.garden.pond.hyetographs import Storm
from interview.garden.pond.routing import RoutedStorm
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


def depth_at(found: RoutedStorm, time: float) -> Quantity:
    """The depth of the pond so many hours after the rain began."""
    depths = [one.depth_at(time) for one in found.pieces if one.start <= time <= one.end]
    return ft(depths[0] if depths else 0.0)


OWN = tuple(
    Station(*one)
    for one in (
        (0, 0, 0), (2, 2, 1.5), (4, 3, 3), (6, 2.5, 3.5), (8, 3, 3.5), (10, 2, 2), (12, 0, 0),
    )
)  # fmt: skip
"""An invented outline of one's own, in feet."""


def intensity_at(storm: Storm, hour: float) -> float:
    """Return the rain of a storm at an hour, in inches an hour; at a jump, what begins there."""
    for span in storm.spans:
        if span.start <= hour < span.end:
            part = (hour - span.start) / (span.end - span.start)
            return span.first + part * (span.last - span.first)
    return 0.0


def fallen_by(storm: Storm, hour: float) -> float:
    """Return the inches of a storm that have fallen by an hour."""
    fallen = 0.0
    for span in storm.spans:
        long = min(max(hour - span.start, 0.0), span.end - span.start)
        fallen += long * intensity_at(storm, span.start + long / 2)
    return fallen
