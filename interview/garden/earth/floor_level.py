"""How far below the lawn the floor is dug, so that soil, pond and overflow all come out."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum

from interview.garden.earth.earthwork import SlopedBasin, cut_and_fill
from interview.garden.earth.level_berm import level_depth
from interview.quantities.units import Quantity, magnitude, quantity


class Sets(Enum):
    """What set the depth of the floor below the ground."""

    BERM = "the soil of the berm downhill"
    ALL_ROUND = "the soil of a berm level all round"
    UPHILL = "the lawn uphill, to stand as high as the full pond"
    OVERFLOW = "the lawn downhill, to lie no higher than the overflow"


@dataclass(frozen=True)
class FloorLevel:
    """The floor below the ground at its downhill edge, and each thing it was held against."""

    depth: Quantity
    sets: Sets
    by_berm: Quantity
    """Where the digging makes the berm downhill."""
    by_level_berm: Quantity
    """Where the digging, with what is dug for mulch, makes a berm level all round."""
    by_uphill: Quantity
    """Where the ground uphill stands as high as the full pond, so that no water leaves there."""
    most: Quantity
    """Where the lawn at the downhill crest is as high as the overflow: deeper, it has no way."""


def floor_level(basin: SlopedBasin, extra: Quantity) -> FloorLevel:
    """Return how deep the floor lies, the same rule on level ground as on any slope.

    The deepest of what the berm downhill, a berm level all round and the ground uphill ask for, but
    never so deep that the overflow lies under the lawn it runs out on. ``extra`` is the volume of
    undisturbed soil dug besides, as for mulch. Raises ValueError as ``cut_and_fill`` does.
    """
    section = basin.section()
    pond = magnitude(basin.pond_depth, "ft")
    least = {
        Sets.BERM: magnitude(cut_and_fill(basin).downhill_depth, "ft"),
        Sets.ALL_ROUND: magnitude(level_depth(basin, extra), "ft"),
        Sets.UPHILL: max(
            0.0, pond * (1 - section.inner * section.fall) - section.fall * section.width
        ),
    }
    most = pond + section.fall * section.inner * section.height
    sets = max(least, key=lambda one: least[one])
    if least[sets] > most:
        sets = Sets.OVERFLOW
    depth = min(max(least.values()), most, section.height)
    return FloorLevel(
        depth=quantity(depth, "ft"),
        sets=sets,
        by_berm=quantity(least[Sets.BERM], "ft"),
        by_level_berm=quantity(least[Sets.ALL_ROUND], "ft"),
        by_uphill=quantity(least[Sets.UPHILL], "ft"),
        most=quantity(most, "ft"),
    )
