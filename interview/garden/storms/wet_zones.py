"""How long water stands on each part of the garden."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from interview.garden.pond.pieces import PoolPiece
from interview.garden.size.zones import Zone
from interview.quantities.units import Quantity, magnitude, quantity


class ZoneHours(NamedTuple):
    """Hours under water after the rain the garden is built for."""

    floor: Quantity
    side: Quantity
    rim: Quantity

    def of(self, zone: Zone) -> Quantity:
        """Return the hours of ``zone``."""
        return {Zone.FLOOR: self.floor, Zone.SIDE: self.side, Zone.RIM: self.rim}[zone]


def zone_hours(
    depth: Quantity,
    rate: Quantity,
    side_height: Quantity | None = None,
    rim_height: Quantity | None = None,
) -> ZoneHours:
    """Return hours under water from pond ``depth`` and ``rate``, by ``(depth - height) / rate``.

    The side is judged half way up the pond and the rim at the full pond unless ``side_height`` and
    ``rim_height`` above the floor are given. Raises ValueError when the depth is negative or the
    rate is not above zero.
    """
    deep = magnitude(depth, "in")
    fall = magnitude(rate, "in/h")
    if not (math.isfinite(deep) and deep >= 0):
        raise ValueError("Give a pond depth of zero or more.")
    if not (math.isfinite(fall) and fall > 0):
        raise ValueError("Give a rate above zero; water that does not soak in never drains.")

    def wet(height: Quantity | None, usual: float) -> Quantity:
        up = usual if height is None else magnitude(height, "in")
        if not (math.isfinite(up) and up >= 0):
            raise ValueError("Give a height of zero or more above the floor.")
        return quantity(max(0.0, deep - up) / fall, "h")

    return ZoneHours(wet(None, 0.0), wet(side_height, deep / 2), wet(rim_height, deep))


def longest_wet(pieces: Sequence[PoolPiece], height: Quantity) -> Quantity:
    """Return the longest unbroken time that ground ``height`` over the floor is under water."""
    level = magnitude(height, "ft")
    longest = run = until = 0.0
    for piece in pieces:
        wet = piece.wet_between(level)
        if wet is None:
            continue
        begins, ends = wet
        # One that ends as the next begins is one spell: both were found by halving.
        run = (run if begins - until < 1e-9 else 0.0) + ends - begins
        until = ends
        longest = max(longest, run)
    return quantity(longest, "h")
