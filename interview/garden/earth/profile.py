"""The garden cut along the slope through its middle, and its levels from one string."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cached_property
from typing import NamedTuple

from interview.drawing.scene import XY
from interview.garden.form.lie import Lie, Sets
from interview.garden.survey.rings import crossed
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.records import record
from interview.quantities.shown import depth_words as height_words
from interview.quantities.units import Quantity, quantity

SETTLING = Cited(
    0.1, Source("a berm is built one tenth of its height over its level string", Provenance.OURS)
)
_LEAST = 1e-9
"""Feet under which two lines of the cut are one."""


class CutSide(NamedTuple):
    """One side of the cut; each number is the distance from the floor's edge, in feet."""

    pond: float
    rim: float
    """To the crest, or to where the side comes out of the lawn."""
    top: float
    """To the outer edge of the berm's top; the rim where there is no berm."""
    toe: float
    """To the end of all that is dug or built."""
    rim_height: float
    """Height of the rim over the finished floor."""

    @property
    def bermed(self) -> bool:
        """Whether a berm stands on this side."""
        return self.toe > self.rim + _LEAST


@record
class Profile:
    """The cut in feet: x downhill from the uphill edge of the floor, z above the finished floor."""

    lie: Lie

    @cached_property
    def _edges(self) -> tuple[float, float]:
        """The floor's edges downhill and uphill, over the floor's lowest point."""
        return self._across(self.lie.outline.line_at(0.0))

    @staticmethod
    def _across(ring: Sequence[XY]) -> tuple[float, float]:
        found = crossed(ring, 0.0)
        if found is None:
            raise ValueError("The garden has no width in its middle.")
        return found

    @property
    def floor(self) -> float:
        """Length of the floor in the cut."""
        low, high = self._edges
        return high - low

    @cached_property
    def _sides(self) -> tuple[CutSide, CutSide]:
        lie, (low, high) = self.lie, self._edges
        rings = (
            lie.outline.line_at(lie.side_slope * lie.depth),
            lie.inside_line,
            lie.outline.line_at(lie.berm_edge),
            lie.footprint,
        )
        cuts = [self._across(ring) for ring in rings]
        return (
            self._side([cut[1] - high for cut in cuts], -1.0, self.open_uphill),
            self._side([low - cut[0] for cut in cuts], 1.0, False),
        )

    def _side(self, far: list[float], way: float, cut_in: bool) -> CutSide:
        pond, rim, edge, toe = far
        edge_x = 0.0 if way < 0 else self.floor
        if cut_in:
            rise = self.lie.ground.fall
            rim = toe = self.lie.side_slope * self.ground(0.0) / (1 - self.lie.side_slope * rise)
        bermed = toe > rim + _LEAST
        height = self.lie.height if bermed else self.ground(edge_x + way * rim)
        top = min(edge, toe) if bermed else rim
        return CutSide(min(pond, rim), rim, top, max(rim, toe), height)

    @property
    def open_uphill(self) -> bool:
        """Whether the lawn uphill closes the garden at the full pond only, with wings."""
        lie = self.lie
        return lie.sets is Sets.UPHILL and lie.uphill_cut < lie.height - 1e-6

    @property
    def uphill(self) -> CutSide:
        """The side uphill."""
        return self._sides[0]

    @property
    def downhill(self) -> CutSide:
        """The side downhill."""
        return self._sides[1]

    @property
    def bermed(self) -> bool:
        """Whether there is a berm downhill."""
        return self.downhill.bermed

    @property
    def dug_below(self) -> float:
        """What is dug below the finished floor: mulch and compost."""
        return self.lie.ground.mulch + self.lie.ground.compost

    def ground(self, x: float) -> float:
        """Height of the old ground."""
        return self.lie.floor_below + self.lie.ground.fall * (self._edges[1] - x)

    @property
    def toe(self) -> XY:
        """The end of all that is dug or built downhill."""
        x = self.floor + self.downhill.toe
        return x, self.ground(x)

    @property
    def surface(self) -> tuple[XY, ...]:
        """The finished surface from the uphill ground to the downhill ground."""
        up = self._outward(self.uphill)
        down = self._outward(self.downhill)
        return (
            *((-q, z) for q, z in reversed(up)),
            (0.0, 0.0),
            (self.floor, 0.0),
            *((self.floor + q, z) for q, z in down),
        )

    def _outward(self, side: CutSide) -> list[XY]:
        """Points of one side from its rim outward, by the distance from the floor's edge."""
        points = [(side.rim, side.rim_height)]
        if side.bermed:
            points.append((side.top, side.rim_height))
            x = -side.toe if side is self.uphill else self.floor + side.toe
            if side.toe > side.top + _LEAST:
                points.append((side.toe, self.ground(x)))
        return points

    @property
    def dug(self) -> tuple[XY, ...]:
        """The dug surface from rim to rim, with the spade-cut steps that hold the mulch."""
        up = self._under(self.uphill, 0.0, -1.0)
        down = self._under(self.downhill, self.floor, 1.0)
        return (*up[::-1], (0.0, -self.dug_below), (self.floor, -self.dug_below), *down)

    @property
    def mulch(self) -> tuple[XY, ...]:
        """The corners of the mulch: its top from step to step, and back along what is dug."""
        up = self._under(self.uphill, 0.0, -1.0)[:3]
        down = self._under(self.downhill, self.floor, 1.0)[:3]
        return (up[-1], (0.0, 0.0), (self.floor, 0.0), *down[::-1], *up[:-1])

    def _under(self, side: CutSide, edge: float, way: float) -> list[XY]:
        """Points of the dug side outward: the floor's edge, under the step, the step, the rim."""
        mulch, rim = self.lie.ground.mulch, (side.rim, side.rim_height)
        step = (side.pond, self.lie.depth) if self.lie.ground.bare_rim else rim
        found = [(0.0, -mulch), (step[0], step[1] - mulch), step]
        return [(edge + way * q, z) for q, z in (found if step == rim else [*found, rim])]

    @property
    def berms(self) -> tuple[tuple[XY, ...], ...]:
        """The corners of what is built over the old ground, downhill and where it is uphill too."""
        found = []
        for side, edge, way in ((self.downhill, self.floor, 1.0), (self.uphill, 0.0, -1.0)):
            if side.bermed:
                outward = [(edge + way * q, z) for q, z in self._outward(side)]
                found.append((*self._foot(side, edge, way), *outward))
        return tuple(found)

    def _foot(self, side: CutSide, edge: float, way: float) -> tuple[XY, ...]:
        """Where the soil dug of the inner face leaves the old ground, and on to below the rim."""
        soil = self._under(side, edge, way)
        over = [z - self.ground(x) for x, z in soil]
        # The floor is never on fill. The rim of a berm stands over the old ground, or on it where
        # a berm of nothing to the last bit is built.
        first = next((at for at, high in enumerate(over) if high > 0), None)
        if first is None:
            return (soil[-1],)
        (x, z), (far, high) = soil[first - 1 : first + 1]
        part = over[first - 1] / (over[first - 1] - over[first])
        return ((x + part * (far - x), z + part * (high - z)), *soil[first:-1])


class LevelRow(NamedTuple):
    """One point to set from a level string at the rim."""

    point: str
    above_floor: Quantity
    """Height above the finished floor; below zero under it."""
    below_string: Quantity
    """What a tape reads down from the string; below zero where the ground is above it."""


def level_table(lie: Lie) -> tuple[LevelRow, ...]:
    """Return every level of the garden, measured from one string set level at its rim.

    The string is at the crest of the berm, or at the lawn where that is the rim.
    """
    cut = Profile(lie)
    points = [("Ground at the uphill edge of the floor", cut.ground(0.0))]
    if cut.bermed:
        fresh = lie.height + SETTLING.value * lie.crest_to_toe
        points += [
            ("Crest where highest, before it settles", fresh),
            ("Crest of the berm: the level string", lie.height),
            ("Overflow: full pond, top of its stone", lie.depth),
        ]
    else:
        points += [
            ("Lawn that is the rim: the level string", lie.height),
            ("Overflow, a low lip: the full pond", lie.depth),
        ]
    points.append(("Ground at the downhill edge of the floor", cut.ground(cut.floor)))
    if cut.bermed:
        points.append(("Ground at the outer foot of the berm", cut.toe[1]))
    points.append(("Finished floor", 0.0))
    if lie.ground.mulch > 0:
        points.append(("Dig to here, at the foot of the sides", -lie.ground.mulch))
    if cut.dug_below > 0:
        points.append(("Dig to here, under the floor", -cut.dug_below))
    return tuple(
        LevelRow(point, quantity(height, "ft"), quantity(lie.height - height, "ft"))
        for point, height in points
    )


def level_lines(rows: Sequence[LevelRow], metric: bool = False) -> list[str]:
    """Return the level table as lines of 76 characters or fewer."""
    lines = [f"{'Point':<40}  {'above floor':>11}  from level string"]
    for row in rows:
        above = height_words(row.above_floor, metric)
        lines.append(f"{row.point:<40}  {above:>11}  {reading_words(row.below_string, metric)}")
    return lines


def string_height(lie: Lie, metric: bool) -> str:
    """Say how high over the lawn at the uphill edge of the floor the level string is tied."""
    words = height_words(quantity(lie.height - lie.floor_below - lie.floor_rise, "ft"), metric)
    if words.startswith("0 "):
        return "at the lawn"
    return f"{words.removeprefix('-')} {'below' if words.startswith('-') else 'above'} the lawn"


def reading_words(below: Quantity, metric: bool) -> str:
    """Write a length ``below`` the string as a tape reads it: at it, down, or above it."""
    words = height_words(below, metric)
    if words.startswith("0 "):
        return "at the string"
    return f"{words.removeprefix('-')} {'above it' if words.startswith('-') else 'down'}"
