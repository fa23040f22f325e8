"""A first size, before the soil is tested: the balance of the plan over the depths still open.

The plan balances the rain on the catchment and in the garden with the full pond. Until the soak
test says how deep a pond the soil empties, the same balance at every depth that is still possible
gives the range, and the published size factors for the soil as it feels may widen it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from enum import Enum
from typing import NamedTuple

from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground
from interview.garden.size.basin import (
    LENGTH_TO_WIDTH,
    TOO_SHALLOW,
    RequiredArea,
    drawn,
    exact_width,
    footprint_sides,
    narrowest_width,
    required_area,
    smallest,
    unit_floor,
)
from interview.garden.size.size_factors import SIZE_FACTORS, DepthRow, SoilKind, published_size
from interview.garden.soak.depth import CORRECTED_RATE_HOURS, DEPTH_STEP, SHALLOWEST_IN
from interview.garden.soak.rates import FAR_APART, Texture, published_rate
from interview.quantities.evidence import Provenance, Source
from interview.quantities.guards import positive, reaches, times
from interview.quantities.units import (
    METRIC,
    US,
    Quantity,
    magnitude,
    quantity,
    round_down,
    round_up,
)

USUAL_POND = {US: (6.0, "in"), METRIC: (150.0, "mm")}
"""The pond that the middle of the range is worked out for, where one so deep is wanted."""
USUAL_POND_SOURCE = Source("ponds of 6 in are the usual ones", Provenance.PRACTICE)
ROOM_STEP = {US: (0.25, "ft"), METRIC: (0.1, "m")}
"""The room to look for is told up to whole steps: ours."""
OVER_RAIN = {US: (1.0, "in"), METRIC: (25.0, "mm")}
"""A pond hardly deeper than the rain has no end of a size: the range begins so much deeper."""
FACTOR_RAIN_IN = 1.0
FACTOR_SOURCE = Source(
    "the size factors taken in proportion to the rain, as they stand for 1 in of it",
    Provenance.OURS,
)


class Feel(Enum):
    """The soil as a wet pinch of it feels."""

    GRITTY = "gritty"
    FLOURY = "smooth, like flour"
    STICKY = "sticky"
    UNKNOWN = "not known yet"


class Settles(Enum):
    """What narrows the range or settles the size once it is answered."""

    SOIL = "the soil by feel"
    SLOPE = "the slope"
    CHILDREN = "whether small children play here"
    SOAK_TEST = "the soak test"


SLOWEST: dict[Feel, Texture] = {
    Feel.GRITTY: Texture.SANDY_LOAM,
    Feel.FLOURY: Texture.SILT_LOAM,
    Feel.STICKY: Texture.CLAY,
    Feel.UNKNOWN: Texture.CLAY,
}
"""The slowest soil that feels so, of those for which a rate is published."""
_SANDY = (Texture.SAND, Texture.LOAMY_SAND, Texture.SANDY_LOAM)
_FLOURY = (Texture.LOAM, Texture.SILT_LOAM)
_KINDS: dict[Feel, tuple[SoilKind, SoilKind]] = {
    Feel.GRITTY: (SoilKind.SANDY, SoilKind.SANDY),
    Feel.FLOURY: (SoilKind.SILTY, SoilKind.SILTY),
    Feel.STICKY: (SoilKind.CLAYEY, SoilKind.CLAYEY),
    Feel.UNKNOWN: (SoilKind.SANDY, SoilKind.CLAYEY),
}
"""The soils of the table that it may be, from the one with the least garden to that with most."""


class Outcome(NamedTuple):
    """One way the garden may still come to be built, by answers that are open; lengths."""

    shallowest: Quantity
    """The shallowest pond the soil may ask for, and the deepest that may be wanted."""
    deepest: Quantity
    side_slope: float
    freeboard: Quantity
    lowest_freeboard: Quantity | None = None
    """That of a level lawn, where the slope may yet make it the rim."""

    @property
    def freeboards(self) -> tuple[Quantity, ...]:
        """The rims that it may come to have."""
        lowest = self.lowest_freeboard
        return (self.freeboard,) if lowest is None else (self.freeboard, lowest)


class RoughSize(NamedTuple):
    """A first size with its range: of all the beds together, but for the outline of one."""

    drains_here: Quantity
    """Area times share of all surfaces so far."""
    rain: Quantity
    depth: Quantity
    """Depth of the pond that the middle is worked out for."""
    low: Quantity
    """Area at half depth, at its least."""
    middle: Quantity
    high: Quantity
    shallowest: Quantity
    """The shallowest pond of the range: the one that takes the most ground."""
    raised: bool
    """Whether it was taken deeper than the soil may ask for, to be deeper than the rain."""
    length: Quantity
    """Toe to toe along the level line and across it, of the largest bed that may be needed, up to
    the next step."""
    width: Quantity
    beds: int = 1
    on_slope: bool = False
    """Whether the outline is that on the slope as it was measured; else it is on level ground."""
    feel: Feel = Feel.UNKNOWN
    settles: tuple[Settles, ...] = ()
    """What is still open, in the order of the interview; nothing once the soil is tested."""


def feel_of(texture: Texture) -> Feel:
    """Return how soil of a texture feels."""
    if texture in _SANDY:
        return Feel.GRITTY
    return Feel.FLOURY if texture in _FLOURY else Feel.STICKY


def shallowest_pond(feel: Feel, system: str = US) -> Quantity:
    """Return the shallowest pond that soil which feels so is likely to ask for.

    What the slowest such soil empties in 48 h at a third of its published rate, for at less the
    plan itself would doubt the test; 3 to 6 in (80 to 150 mm), down to what can be measured.
    Sources: ``RAWLS_1982``, ``CORRECTED_RATE_HOURS``, ``SHALLOWEST_IN``.
    """
    step = DEPTH_STEP[system]
    rate = magnitude(published_rate(SLOWEST[feel]), "in/h") / FAR_APART
    empties = quantity(rate * CORRECTED_RATE_HOURS.value, "in")
    least = round_up(quantity(SHALLOWEST_IN.value, "in"), *step)
    return max(least, round_down(min(empties, quantity(*USUAL_POND[system])), *step))


def rough_size(
    drains_here: Quantity,
    weighted: Quantity,
    rain: Quantity,
    ways: Sequence[Outcome],
    *,
    feel: Feel = Feel.UNKNOWN,
    tested: bool = False,
    fast: bool = False,
    lean: bool = False,
    spout: Quantity | None = None,
    ground: Ground | None = None,
    beds: int = 1,
    shape: FloorShape = FloorShape.ROUNDED,
    length_to_width: float = LENGTH_TO_WIDTH.value,
    system: str = US,
) -> RoughSize:
    """Return the first size of a garden that holds ``rain``, a depth, and its range.

    ``drains_here`` is the area that drains here, ``weighted`` the same weighted by runoff. ``ways``
    are the ways it may be built, first the one that the answers stand for. ``tested`` leaves the
    size factors out; ``fast`` says that the soil may be so fast that the storm decides the size,
    ``lean`` that it does so anyway; ``spout`` is the way from the downspout, nothing while unknown.
    ``ground`` is the ground where its slope is known, ``length_to_width`` that of the floor. Raises
    ValueError when nothing drains here or no pond that is wanted is deeper than the rain. Sources:
    ``SIZE_FACTOR_TABLE``, ``FACTOR_SOURCE``.
    """
    positive(drains_here, "ft**2", "No surface drains here yet, so add one first.")
    ponds = _Ponds(times(weighted, 1 / beds), rain, shape, length_to_width, system)
    spans = [
        (way, *_span(way, rain, system))
        for place, way in enumerate(ways)
        if way not in ways[:place]
    ]
    usual, shallow, deep = spans[0]
    depth = max(shallow, min(deep, quantity(*USUAL_POND[system])))
    middle = ponds.mid_area(usual, magnitude(depth, "ft"), usual.freeboard)
    areas = [middle]
    sides = []
    for way, first, last in spans:
        areas += ponds.mid_areas(way, first, last)
        ends = [
            ponds.drawn(way, end, ground) for end in ((first, last) if first < last else (last,))
        ]
        sides += [footprint_sides(end, ground) for end in ends]
        # A size that the storm decides is that of the floor to peg out.
        if lean:
            areas.append(ponds.narrowest(way, first))
            areas += [magnitude(end.mid_area, "ft**2") for end in ends]
        elif fast:
            # Soil so fast empties the deepest pond there may be, and more than the slope adds.
            areas.append(magnitude(ponds.drawn(way, last, None).mid_area, "ft**2"))
            sandy = published_size(
                drains_here, last, spout or quantity(0.0, "ft"), system == METRIC
            ).sandy
            areas.append(ponds.by_table(way, last, times(sandy, 1 / beds)))
    low, high = beds * min(areas), beds * max(areas)
    if not tested:
        least, most = _by_factors(drains_here, rain, feel)
        low, high = min(low, least), max(high, most)
    shallowest = min(first for _, first, _ in spans)
    return RoughSize(
        drains_here=drains_here,
        rain=rain,
        depth=depth,
        low=quantity(low, "ft**2"),
        middle=quantity(beds * middle, "ft**2"),
        high=quantity(high, "ft**2"),
        shallowest=shallowest,
        raised=any(first > min(way.shallowest, last) for way, first, last in spans),
        length=round_up(max(length for length, _ in sides), *ROOM_STEP[system]),
        width=round_up(max(width for _, width in sides), *ROOM_STEP[system]),
        beds=beds,
        on_slope=ground is not None,
        feel=feel,
    )


def _span(way: Outcome, rain: Quantity, system: str) -> tuple[Quantity, Quantity]:
    """Return the shallowest and the deepest pond of a way, in the steps in which ponds are dug."""
    step = DEPTH_STEP[system]
    deep = round_down(way.deepest, *step)
    over = round_up(rain + quantity(*OVER_RAIN[system]), *step)
    return min(max(round_down(way.shallowest, *step), over), deep), deep


def _by_factors(drains_here: Quantity, rain: Quantity, feel: Feel) -> tuple[float, float]:
    """Return the least and the most that the size factors give, in square feet."""
    least, most = _KINDS[feel]
    area = magnitude(drains_here, "ft**2") * magnitude(rain, "in") / FACTOR_RAIN_IN
    return (
        area * SIZE_FACTORS[least][DepthRow.MIDDLE],
        area * SIZE_FACTORS[most][DepthRow.SHALLOW],
    )


class _Ponds(NamedTuple):
    """The beds that hold one rain, by the depth of their ponds; areas in square feet."""

    served: Quantity
    rain: Quantity
    shape: FloorShape
    length_to_width: float
    system: str

    def mid_area(self, way: Outcome, depth: float, freeboard: Quantity) -> float:
        """Return the area at half depth of the bed that holds the rain, its depth in feet."""
        rain = magnitude(self.rain, "ft")
        if depth <= rain:
            raise ValueError(TOO_SHALLOW)
        unit = unit_floor(self.shape, self.length_to_width)
        exact = exact_width(
            unit,
            magnitude(self.served, "ft**2"),
            rain,
            depth,
            way.side_slope,
            magnitude(freeboard, "ft"),
        )
        width = max(exact, narrowest_width(self.length_to_width, self.system))
        return unit.scaled(width).area_at(way.side_slope * depth / 2)

    def mid_areas(self, way: Outcome, first: Quantity, last: Quantity) -> Iterator[float]:
        """Yield the same at every step from one depth to another.

        It need not lie between those of the ends: sides of a deep pond take ground too.
        """
        step, unit = DEPTH_STEP[self.system]
        start = round(magnitude(first, unit) / step)
        for steps in range(start, round(magnitude(last, unit) / step) + 1):
            depth = magnitude(quantity(steps * step, unit), "ft")
            for freeboard in way.freeboards:
                yield self.mid_area(way, depth, freeboard)

    def _required(self, way: Outcome, depth: Quantity) -> RequiredArea:
        return required_area(
            self.served,
            self.rain,
            depth,
            way.side_slope,
            way.freeboard,
            shape=self.shape,
            length_to_width=self.length_to_width,
            system=self.system,
        )

    def drawn(self, way: Outcome, depth: Quantity, ground: Ground | None) -> Basin:
        """Return the bed to peg out at a depth."""
        return drawn(self._required(way, depth), self.system, ground)

    def by_table(self, way: Outcome, depth: Quantity, area: Quantity) -> float:
        """Return the area at half depth of the smallest bed whose full pond has ``area``."""
        least = magnitude(area, "ft**2")
        found = smallest(
            self._required(way, depth).basin,
            lambda one: reaches(magnitude(one.edge_area, "ft**2"), least),
            length_to_width=self.length_to_width,
            system=self.system,
        )
        return magnitude(found.mid_area, "ft**2")

    def narrowest(self, way: Outcome, depth: Quantity) -> float:
        """Return the area at half depth of the narrowest bed that can be dug."""
        width = narrowest_width(self.length_to_width, self.system)
        floor = unit_floor(self.shape, self.length_to_width).scaled(width)
        return floor.area_at(way.side_slope * magnitude(depth, "ft") / 2)
