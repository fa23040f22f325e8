"""What may be chosen of the form of a bed; its sums are elsewhere."""

from __future__ import annotations

from enum import Enum

LEVEL_BELOW_PERCENT = 1.0
"""Ground that falls less is dug into with the lawn as the rim: a choice of ours."""
MOST_BEDS = 4
"""Most beds of one garden: a choice of this project."""


class FloorShape(Enum):
    """The shape of the floor."""

    ROUNDED = "rounded"
    """Straight sides and half-round ends."""
    RECTANGLE = "rectangle"
    """Square corners, carried up the sides."""
    OVAL = "oval"
    KIDNEY = "kidney"
    """A rounded bed whose middle line is bent round, its hollow side uphill."""
    OWN = "own"
    """Measured off a string."""
