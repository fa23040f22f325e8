"""How a basin lies in sloping ground: its floor, its berm, its outline on the lawn, its soil.

All lengths are in feet over the finished floor, ``y`` uphill from the floor's lowest point, so that
the ground stands at ``floor_below + fall y``. The finished sides rise from the floor's edge to the
crest of the berm, whose top is level and whose outer face falls to the ground; where the ground is
higher than the crest there is no berm, and the sides run up to the lawn.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from enum import Enum
from functools import cached_property, lru_cache
from typing import NamedTuple

from interview.garden.form.basin import Basin
from interview.garden.form.choices import LEVEL_BELOW_PERCENT
from interview.garden.form.outline import Outline, Ray
from interview.garden.form.prisms import parts, prism
from interview.garden.pond.roots import root
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.guards import within
from interview.quantities.records import record
from interview.quantities.units import METRIC, US, Quantity, magnitude, quantity

COMPACTION = Cited(
    0.9, Source("tamped fill from undisturbed soil: FM 5-434 type table", Provenance.MEMORY)
)
OUTER_SLOPE = Cited(
    3.0, Source("an outer face of three to one, its own sod laid back", Provenance.PRACTICE)
)
HIGHEST_BERM = {US: (12.0, "in"), METRIC: (300.0, "mm")}
HIGHEST_BERM_SOURCE = Source(
    "a berm of 12 in (300 mm) from crest to toe: more is a small dam", Provenance.OURS
)
LOW_BANK_PART = 0.25
"""A bank of this part of the highest berm, 3 in (75 mm), is shaped by hand with the rake: ours."""
WIDEST_RISE_FT, DEEPEST_UPHILL_FT = 1.0, 1.5
"""Ground rising more across the floor, or a deeper cut uphill, asks for a narrower bed: ours."""
KEPT = 128
"""Lies kept: one garden is asked about for every storm, and sizes that were tried come again."""
_NEAR = 1e-9
"""Feet of depth, or cubic feet of soil, that are as good as none."""


class Form(Enum):
    """The way a garden is set into its ground."""

    DUG_IN = "dug in, with the lawn as its rim"
    LOW_BANK = "dug in, with a low bank downhill"
    BERM = "cut into the slope, with a berm downhill"


class Sets(Enum):
    """What set the depth of the floor below the lawn downhill."""

    LAWN = "the lawn, which is the rim"
    SOIL = "the soil that the berm takes"
    UPHILL = "the lawn uphill, to stand as high as the crest"
    BERM = "the berm, to be no higher than may be"
    GROUND = "the ground: no floor lies on fill"


@record
class Ground:
    """The ground a garden is cut into, and how it is built; lengths in feet."""

    fall: float
    """Fall of the ground for a level run of one."""
    mulch: float = 0.0
    """Finished mulch on the floor and the sides: so much is dug deeper."""
    compost: float = 0.0
    """Compost that lifts the floor by all of its depth."""
    outer: float = OUTER_SLOPE.value
    """Level run of the berm's outer face for a fall of one."""
    top: float = 1.0
    """Width of the berm's level top."""
    highest_berm: float = 1.0
    bare_rim: bool = False
    """Whether the sides above the full pond are dug to what they are to be, and no deeper."""

    def __post_init__(self) -> None:
        if not 0 <= self.fall < 1:
            raise ValueError("The ground must fall from 0 to 100 %; measure down the hill.")
        if self.fall * self.outer >= 0.95:
            raise ValueError("The ground is as steep as the sides: no berm can meet it here.")
        if min(self.mulch, self.compost, self.top) < 0:
            raise ValueError("Mulch, compost and the berm's top cannot be less than nothing.")

    @cached_property
    def level(self) -> bool:
        """Whether the ground is level enough for the lawn to be the rim."""
        return self.fall * 100 < LEVEL_BELOW_PERCENT - 1e-9


def ground_of(
    slope: Quantity,
    mulch: Quantity,
    compost: Quantity | None,
    top: Quantity,
    *,
    bare_rim: bool = False,
    system: str = US,
) -> Ground:
    """Return the ground in feet: ``slope`` a ratio; ``mulch``, ``compost``, ``top`` lengths."""
    return Ground(
        fall=magnitude(slope, "percent") / 100,
        mulch=magnitude(mulch, "ft"),
        bare_rim=bare_rim,
        compost=0.0 if compost is None else magnitude(compost, "ft"),
        top=magnitude(top, "ft"),
        highest_berm=magnitude(quantity(*HIGHEST_BERM[system]), "ft"),
    )


class SoilMoved(NamedTuple):
    """Soil moved, cubic feet."""

    cut: float
    """Undisturbed soil dug, with the room for mulch and compost."""
    fill: float
    """Tamped soil in the berm."""

    @property
    def left_over(self) -> float:
        """Undisturbed soil the berm does not take; below nought what is lacking."""
        return self.cut - self.fill / COMPACTION.value


@record
class Lie:
    """A basin as it lies in the ground, its floor ``floor_below`` the lawn at its downhill edge."""

    outline: Outline
    depth: float
    freeboard: float
    side_slope: float
    ground: Ground
    floor_below: float
    sets: Sets

    @cached_property
    def height(self) -> float:
        """The crest, or the lawn that is the rim, over the floor."""
        return self.depth + self.freeboard

    @cached_property
    def crest(self) -> float:
        """From the floor's edge to the inner edge of the berm's top."""
        return self.side_slope * self.height

    @cached_property
    def berm_edge(self) -> float:
        """From the floor's edge to the outer edge of the berm's top."""
        return self.crest + self.ground.top

    @property
    def form(self) -> Form:
        """The way it is set into the ground."""
        if self.ground.level:
            return Form.DUG_IN
        low = self.ground.highest_berm * LOW_BANK_PART
        return Form.LOW_BANK if within(self.crest_to_toe, low) else Form.BERM

    @property
    def floor_rise(self) -> float:
        """How much the ground rises across the floor."""
        return self.ground.fall * self.outline.rise

    @property
    def below_for_crest(self) -> float:
        """Depth of the floor at which the lawn uphill stands as high as the crest."""
        return self._below_for(self.height)

    def _below_for(self, lawn: float) -> float:
        """Depth of the floor at which the lawn uphill comes out ``lawn`` over the floor."""
        return lawn * (1 - self.side_slope * self.ground.fall) - self.floor_rise

    @property
    def below_for_berm(self) -> float:
        """Depth of the floor at which the berm is as high as it may be, from crest to toe."""
        ground = self.ground
        most = ground.highest_berm * (1 - ground.outer * ground.fall)
        return self.height + ground.fall * self.berm_edge - most

    @cached_property
    def crest_to_toe(self) -> float:
        """Height of the crest over the outer toe at its greatest, downhill; none is nought."""
        fall = self.ground.fall
        if self._cut_in(self.floor_below, -fall):
            return 0.0
        high = self.height - self.floor_below + fall * self.berm_edge
        return max(0.0, high / (1 - self.ground.outer * fall))

    @property
    def uphill_cut(self) -> float:
        """Height of the lawn over the floor where the side uphill comes out."""
        return (self.floor_below + self.floor_rise) / (1 - self.side_slope * self.ground.fall)

    @property
    def deepest_dig(self) -> float:
        """Deepest digging below the lawn: at the floor's uphill edge, with mulch and compost."""
        return self.floor_below + self.floor_rise + self.ground.mulch + self.ground.compost

    @property
    def swale(self) -> float:
        """Length of the grass swale that brings the overflow out, where the lawn lies over it."""
        over = self.floor_below - self.depth - self.ground.fall * self.berm_edge
        if self.ground.level or over <= 1e-9:
            return 0.0
        return over / self.ground.fall

    def _at(self, ray: Ray) -> tuple[float, float]:
        """Height of the ground at the floor's edge on this ray, and its rise along it."""
        return self.floor_below + self.ground.fall * ray.y, self.ground.fall * ray.out_y

    def _cut_in(self, high: float, rise: float) -> bool:
        """Whether the side comes out in the lawn: as high as the crest, or level with it."""
        return self.ground.level or high + rise * self.crest >= self.height - 1e-12

    def inner(self, ray: Ray) -> float:
        """From the floor's edge to the crest, or to where the side comes out of higher ground."""
        high, rise = self._at(ray)
        if self._cut_in(high, rise):
            return self.side_slope * high / (1 - self.side_slope * rise)
        return self.crest

    def reach(self, ray: Ray) -> float:
        """From the floor's edge to the end of all that is dug or built."""
        high, rise = self._at(ray)
        inner = self.inner(ray)
        return inner if self._cut_in(high, rise) else self._toe(high, rise)

    def _toe(self, high: float, rise: float) -> float:
        """From the floor's edge to the end of the berm."""
        edge, outer = self.berm_edge, self.ground.outer
        toe = (edge + outer * (self.height - high)) / (1 + outer * rise)
        # Where the ground comes up to the crest within the berm's top it ends there.
        return toe if toe > edge else max(self.crest, (self.height - high) / rise)

    def _within(self, reach: Callable[[Ray], float]) -> float:
        return self.outline.area + sum(
            q * (ray.width + ray.spread * q / 2)
            for ray, q in ((ray, reach(ray)) for ray in self.outline.rays)
        )

    @cached_property
    def inside_area(self) -> float:
        """Area inside the crest and the cut edge: the rain on it falls into the garden."""
        return self._within(self.inner)

    @cached_property
    def footprint_area(self) -> float:
        """Area of everything that is dug or built, square feet."""
        return self._within(self.reach)

    @cached_property
    def footprint(self) -> tuple[tuple[float, float], ...]:
        """Points round everything that is dug or built, counterclockwise."""
        return tuple(ray.at(self.reach(ray)) for ray in self.outline.rays)

    @cached_property
    def inside_line(self) -> tuple[tuple[float, float], ...]:
        """Points round the crest and the cut edge."""
        return tuple(ray.at(self.inner(ray)) for ray in self.outline.rays)

    @property
    def footprint_length(self) -> float:
        """From toe to toe along the contour."""
        return max(x for x, _ in self.footprint) - min(x for x, _ in self.footprint)

    @property
    def footprint_width(self) -> float:
        """From the toe downhill to the cut edge uphill."""
        return max(y for _, y in self.footprint) - min(y for _, y in self.footprint)

    @property
    def beyond_crest(self) -> float:
        """How far what is built reaches beyond the crest, at the most."""
        return max(self.reach(ray) - self.inner(ray) for ray in self.outline.rays)

    @cached_property
    def soil(self) -> SoilMoved:
        """The soil to dig and to build with, summed exactly along every ray."""
        ground, height, crest, edge = self.ground, self.height, self.crest, self.berm_edge
        z, fall = self.side_slope, ground.fall
        mean = self.floor_below + fall * self.outline.middle + ground.mulch + ground.compost
        cut, fill = self.outline.area * mean, 0.0
        for ray in self.outline.rays:
            high, rise = self.floor_below + fall * ray.y, fall * ray.out_y
            width, spread = ray.width, ray.spread
            # Ground over the dug or built surface, at both ends of each straight part of it.
            for start, end, mulch in self._inner_parts(self.inner(ray)):
                first, last = (high + (rise - 1 / z) * q + mulch for q in (start, end))
                more, less = parts(start, end, first, last, width, spread)
                cut, fill = cut + more, fill + less
            if self._cut_in(high, rise):
                continue
            past = high + rise * crest - height
            toe = self._toe(high, rise)
            flat = min(edge, toe)
            fill -= prism(crest, flat, past, high + rise * flat - height, width, spread)
            if toe > edge:
                fill -= prism(edge, toe, high + rise * edge - height, 0.0, width, spread)
        return SoilMoved(cut, fill if fill > _NEAR else 0.0)

    def _inner_parts(self, inner: float) -> tuple[tuple[float, float, float], ...]:
        """Return the parts of a side up to ``inner``: start, end and the mulch on each."""
        mulch, pond = self.ground.mulch, min(self.side_slope * self.depth, inner)
        return (0.0, pond, mulch), (pond, inner, 0.0 if self.ground.bare_rim else mulch)

    def at_depth(self, floor_below: float) -> Lie:
        """Return the same basin with its floor at another depth."""
        return replace(self, floor_below=floor_below)


def lie_of(basin: Basin, ground: Ground) -> Lie:
    """Return how ``basin`` lies in ``ground``: its floor as deep as the deepest rule asks.

    On level ground the lawn is the rim. Else the floor is never on fill; the soil dug makes the
    berm; the lawn uphill stands as high as the crest; and the berm is no higher than
    ``ground.highest_berm`` from crest to toe. Raises ValueError where the ground is as steep as the
    sides.
    """
    if ground.fall * basin.side_slope >= 0.95:
        raise ValueError("The ground is as steep as the sides: no berm can meet it here.")
    depth, freeboard = magnitude(basin.depth, "ft"), magnitude(basin.freeboard, "ft")
    return _lie_of(basin.outline, depth, freeboard, basin.side_slope, ground)


@lru_cache(maxsize=KEPT)
def _lie_of(outline: Outline, depth: float, freeboard: float, z: float, ground: Ground) -> Lie:
    start = Lie(outline, depth, freeboard, z, ground, depth + freeboard, Sets.LAWN)
    if ground.level:
        return start
    return _deep_enough(start, start.below_for_crest)


def winged(lie: Lie) -> Lie | None:
    """Return the same garden with the lawn uphill at the full pond only, where that digs less.

    Its berm then runs on up the slope at both ends, by ``wing_length``. Nothing where the depth of
    the floor is set by another rule.
    """
    if lie.sets is not Sets.UPHILL:
        return None
    made = _deep_enough(lie, lie._below_for(lie.depth))
    return made if made.floor_below < lie.floor_below - 1e-6 else None


def wing_length(lie: Lie) -> float:
    """Return how far each end of a winged berm runs on up the slope, in feet."""
    return lie.freeboard / lie.ground.fall


def _deep_enough(lie: Lie, uphill: float) -> Lie:
    rules = ((Sets.GROUND, 0.0), (Sets.UPHILL, uphill), (Sets.BERM, lie.below_for_berm))
    sets, below = max(rules, key=lambda rule: rule[1])
    tried = replace(lie, floor_below=below, sets=sets)
    if tried.soil.left_over >= 0:
        return tried
    # There every side comes out in the lawn: no berm takes any soil.
    high = lie.height + lie.ground.fall * lie.crest + lie.ground.fall
    found = root(lambda below: lie.at_depth(below).soil.left_over, below, high, _NEAR)
    return replace(lie, floor_below=found, sets=Sets.SOIL)


def too_wide(lie: Lie) -> bool:
    """Tell whether the slope asks for a narrower bed, or for two on the contour."""
    return not (
        within(lie.floor_rise, WIDEST_RISE_FT) and within(lie.uphill_cut, DEEPEST_UPHILL_FT)
    )
