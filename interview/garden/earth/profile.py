"""The line of the garden along the slope, and its levels from one string."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from interview.drawing.scene import XY
from interview.garden.earth.earthwork import OUTER_SLOPE, TOP_WIDTH_FT, TOP_WIDTH_M, Earthwork
from interview.garden.form.basin import Basin
from interview.quantities.guards import not_negative
from interview.quantities.shown import depth_words as height_words
from interview.quantities.units import Quantity, magnitude, quantity


@dataclass(frozen=True)
class Profile:
    """The cut in feet: x downhill from the uphill edge of the floor, z above the finished floor."""

    floor: float
    pond: float
    rim: float
    inner: float
    fall: float
    downhill: float
    """Floor below the ground at its downhill edge."""
    mulch: float
    top: float
    bermed: bool

    def ground(self, x: float) -> float:
        """Height of the old ground."""
        return self.downhill + self.fall * (self.floor - x)

    @property
    def uphill_rise(self) -> float:
        """Height at which the uphill side meets the ground."""
        return max(0.0, self.ground(0.0)) / (1 - self.fall * self.inner)

    @property
    def downhill_rise(self) -> float:
        """Height at which the downhill side ends: the rim, or the ground where it is dug in."""
        if self.bermed:
            return self.rim
        return max(0.0, self.downhill) / (1 + self.fall * self.inner)

    @property
    def crest(self) -> float:
        """Where the top of the berm, or the edge of the cut, begins."""
        return self.floor + self.inner * self.downhill_rise

    @property
    def toe(self) -> XY:
        """Where the outside of the berm meets the ground."""
        if not self.bermed:
            return self.crest, self.downhill_rise
        edge = self.crest + self.top
        drop = self.rim - self.ground(edge)
        x = edge + OUTER_SLOPE * drop / (1 - OUTER_SLOPE * self.fall)
        return x, self.ground(x)

    @property
    def surface(self) -> tuple[XY, ...]:
        """The finished surface from the uphill ground to the downhill ground."""
        start = (-self.inner * self.uphill_rise, self.uphill_rise)
        low = ((0.0, 0.0), (self.floor, 0.0))
        if not self.bermed:
            return (start, *low, self.toe)
        top = ((self.crest, self.rim), (self.crest + self.top, self.rim))
        return (start, *low, *top, self.toe)


def profile(
    basin: Basin,
    earthwork: Earthwork,
    slope: Quantity,
    mulch_depth: Quantity,
    metric: bool = False,
    top_width: Quantity | None = None,
) -> Profile:
    """Return the cut along the slope; ``top_width`` of the berm is 1 ft (0.3 m) if not given.

    Raises ValueError for mulch below zero, or ground that falls as steeply as the sides.
    """
    fall = magnitude(slope, "percent") / 100
    if not 0 <= fall * max(basin.side_slope, OUTER_SLOPE) < 1:
        raise ValueError("The ground is as steep as the sides: no berm can meet it here.")
    usual = quantity(TOP_WIDTH_M, "m") if metric else quantity(TOP_WIDTH_FT, "ft")
    return Profile(
        floor=magnitude(basin.floor_width, "ft"),
        pond=magnitude(basin.depth, "ft"),
        rim=magnitude(basin.rim_height, "ft"),
        inner=basin.side_slope,
        fall=fall,
        downhill=magnitude(earthwork.downhill_depth, "ft"),
        mulch=not_negative(mulch_depth, "ft", "The mulch must be zero or more deep."),
        top=magnitude(usual if top_width is None else top_width, "ft"),
        bermed=magnitude(earthwork.berm_height, "ft") > 0,
    )


@dataclass(frozen=True)
class LevelRow:
    """One point to set from a level string at the rim."""

    point: str
    above_floor: Quantity
    """Height above the finished floor; below zero under it."""
    below_string: Quantity
    """What a tape reads down from the string; below zero where the ground is above it."""


def level_table(
    basin: Basin,
    earthwork: Earthwork,
    slope: Quantity,
    mulch_depth: Quantity,
    metric: bool = False,
    top_width: Quantity | None = None,
) -> tuple[LevelRow, ...]:
    """Return every level of the garden, measured from one string set level at the rim.

    The rim is the top of the berm, the crest. Raises ValueError as ``profile`` does.
    """
    cut = profile(basin, earthwork, slope, mulch_depth, metric, top_width)
    points = [
        ("Ground at the uphill edge of the floor", cut.ground(0.0)),
        ("Top of the berm: the string" if cut.bermed else "Rim: the string", cut.rim),
        ("Overflow notch and full pond", cut.pond),
        ("Ground at the downhill edge of the floor", cut.downhill),
    ]
    if cut.bermed:
        points.append(("Ground at the outer foot of the berm", cut.toe[1]))
    points.append(("Finished floor", 0.0))
    if cut.mulch > 0:
        points.append(("Bottom of the digging, under the mulch", -cut.mulch))
    return tuple(
        LevelRow(point, quantity(height, "ft"), quantity(cut.rim - height, "ft"))
        for point, height in points
    )


def level_lines(rows: Sequence[LevelRow], metric: bool = False) -> list[str]:
    """Return the level table as lines of 76 characters or fewer."""
    lines = [f"{'Point':<40}  {'above floor':>11}  from the string"]
    for row in rows:
        above = height_words(row.above_floor, metric)
        lines.append(f"{row.point:<40}  {above:>11}  {reading_words(row.below_string, metric)}")
    return lines


def reading_words(below: Quantity, metric: bool) -> str:
    """Write a tape reading from the string: at it, so much down, or so much up."""
    words = height_words(below, metric)
    if words.startswith("0 "):
        return "at the string"
    return f"{words.removeprefix('-')} {'above it' if words.startswith('-') else 'down'}"
