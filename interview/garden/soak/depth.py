"""How deep the pond may be, so that the soil has taken it in time."""

from __future__ import annotations

import math
from enum import Enum

from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.guards import reaches, within
from interview.quantities.records import record
from interview.quantities.units import METRIC, US, Quantity, magnitude, quantity, round_down

DROP_RATE_HOURS = Cited(
    24.0,
    Source(
        "Blue Thumb Guide to Raingardens, p. 12: the fall in the test hole in 24 h is the "
        "greatest depth; the custom of many home guides",
        Provenance.PUBLISHED,
    ),
)
CORRECTED_RATE_HOURS = Cited(
    48.0,
    Source(
        "NebGuide G1758, Stormwater Management: Rain Gardens, University of Nebraska-Lincoln "
        "Extension (Franti and Rodie), web page: a rain garden drains in less than 48 h",
        Provenance.PUBLISHED,
    ),
)
STRICT_HOURS = Cited(24.0, Source("gone within a day", Provenance.OURS))
DEEPEST_IN = Cited(10.0, Source("ponds of ten inches or less", Provenance.PRACTICE))
SHALLOWEST_IN = Cited(3.0, Source("shallower ponds cannot be dug level enough", Provenance.OURS))
NO_POND_HERE = (
    "Mix in compost and test again, move to faster soil, or plant a shallow wet meadow instead."
)
"""What is told, wherever it is told, of soil that empties less than the least pond in time."""
TOO_FAST_IN_H = Cited(
    8.3,
    Source(
        "Design infiltration rates, Minnesota Stormwater Manual, Minnesota Pollution Control "
        "Agency, web page: faster soil is mixed with slower",
        Provenance.PUBLISHED,
    ),
)
"""Soil that takes water faster is mended before a garden is made of it."""
DEPTH_STEP = {US: (0.5, "in"), METRIC: (10.0, "mm")}


class DepthRule(Enum):
    """Which customs the depth has to satisfy."""

    BOTH = "both"
    """The drop rate over 24 h and the corrected rate over 48 h."""
    STRICT = "strict"
    """The corrected rate over 24 h."""
    CUSTOM = "custom"
    """The drop rate over 24 h alone."""


class Governs(Enum):
    """What set the depth."""

    DROP_RATE = "drop rate"
    CORRECTED_RATE = "corrected rate"
    CAP = "deepest pond wanted"


@record
class PondDepth:
    """The pond depth and every limit it was held against, all lengths; times to empty."""

    rule: DepthRule
    drop_limit: Quantity
    """The fall in the hole over 24 h."""
    corrected_limit: Quantity
    """What the bottom alone takes in 48 h, or in 24 h under the strict rule."""
    cap: Quantity
    limit: Quantity
    """The smallest of the limits in force, before rounding."""
    governs: Governs
    depth: Quantity
    """The limit rounded down to what can be measured with a level."""
    too_shallow: bool
    """True under 3 in: no garden here unless the soil is mended."""
    soonest_empty: Quantity
    """Depth over the drop rate."""
    latest_empty: Quantity
    """Depth over the corrected rate; infinite when nothing leaves by the bottom."""
    caution: bool
    """True when the custom alone was followed and the corrected rate over 48 h does not agree."""

    @property
    def soil_refuses(self) -> bool:
        """Tell whether the soil, and not a wish, allows less than the least pond."""
        return self.too_shallow and self.governs is not Governs.CAP


def _time(depth: float, rate: float) -> Quantity:
    if depth == 0:
        return quantity(0.0, "h")
    return quantity(depth / rate if rate > 0 else math.inf, "h")


def pond_depth(
    drop_rate: Quantity,
    corrected_rate: Quantity,
    *,
    rule: DepthRule = DepthRule.BOTH,
    cap: Quantity | None = None,
    step: str = US,
) -> PondDepth:
    """Return the pond depth for a soil: what it takes in time, at most ``cap``, rounded down.

    ``drop_rate`` and ``corrected_rate``, both speeds, are how fast the water fell in the hole and
    how fast it goes through the bottom alone; ``rule`` says which of them count. ``cap`` is the
    deepest pond wanted (10 in when not given) and ``step`` is US for half inches or METRIC for 10
    mm. Each rate is zero or more, the cap above zero. Sources: ``DROP_RATE_HOURS``,
    ``CORRECTED_RATE_HOURS``, ``STRICT_HOURS``.
    """
    q, f = magnitude(drop_rate, "in/h"), magnitude(corrected_rate, "in/h")
    cap = quantity(DEEPEST_IN.value, "in") if cap is None else cap
    strict = rule is DepthRule.STRICT
    hours = STRICT_HOURS.value if strict else CORRECTED_RATE_HOURS.value
    limits = {
        Governs.DROP_RATE: q * DROP_RATE_HOURS.value,
        Governs.CORRECTED_RATE: f * hours,
        Governs.CAP: magnitude(cap, "in"),
    }
    left_out = {DepthRule.STRICT: Governs.DROP_RATE, DepthRule.CUSTOM: Governs.CORRECTED_RATE}
    in_force = {key: value for key, value in limits.items() if key is not left_out.get(rule)}
    governs = min(in_force, key=lambda key: in_force[key])
    limit = quantity(in_force[governs], "in")
    depth = round_down(limit, *DEPTH_STEP[step])
    inches = magnitude(depth, "in")
    return PondDepth(
        rule=rule,
        drop_limit=quantity(limits[Governs.DROP_RATE], "in"),
        corrected_limit=quantity(limits[Governs.CORRECTED_RATE], "in"),
        cap=cap,
        limit=limit,
        governs=governs,
        depth=depth,
        too_shallow=not reaches(inches, SHALLOWEST_IN.value),
        soonest_empty=_time(inches, q),
        latest_empty=_time(inches, f),
        caution=rule is DepthRule.CUSTOM and not within(inches, limits[Governs.CORRECTED_RATE]),
    )
