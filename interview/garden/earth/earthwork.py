"""Cut and fill of a level-floored basin on sloping ground."""

from __future__ import annotations

from dataclasses import dataclass

from interview.garden.earth.ground import Section, ground_volumes
from interview.quantities.evidence import OURS, Finding, Grade, Provenance, Source
from interview.quantities.guards import not_negative, positive, within
from interview.quantities.shown import depth_words
from interview.quantities.units import Quantity, magnitude, plain_number, quantity, significant

COMPACTION = 0.9
"""Tamped fill from one measure of undisturbed soil."""
COMPACTION_SOURCE = Source("FM 5-434 type table, US Army: earth 0.90", Provenance.MEMORY)
OUTER_SLOPE = 3.0
TOP_WIDTH_FT = 1.0
TOP_WIDTH_M = 0.3
BERM_CAUTION_IN, BERM_STOP_IN = 12.0, 18.0
BERM_CAUTION_MM, BERM_STOP_MM = 300.0, 450.0
_HALVINGS = 80


@dataclass(frozen=True)
class SlopedBasin:
    """The basin to dig: its level floor, its sides, and the ground it lies in."""

    length: Quantity
    """Floor length, along the contour."""
    width: Quantity
    """Floor width, up and down the slope."""
    slope: Quantity
    """Fall of the ground, such as 5 percent."""
    pond_depth: Quantity
    freeboard: Quantity
    """From the full pond to the top of the berm."""
    side_slope: float = 3.0
    """Level run for a rise of one, inside."""
    outer_slope: float = OUTER_SLOPE
    """Level run for a fall of one, on the outside of the berm."""
    top_width: Quantity | None = None
    """Width of the top of the berm; 1 ft when not given."""
    over_dig: Quantity | None = None
    """Extra depth dug under the whole floor for mulch or mix; none when not given."""
    compaction: float = COMPACTION

    def section(self) -> Section:
        """Return the numbers in feet; raises ValueError for measures that make no basin."""
        size = "The floor length and width must be more than zero."
        tall = "The pond depth must be more than zero."
        wide = quantity(TOP_WIDTH_FT, "ft") if self.top_width is None else self.top_width
        fall = magnitude(self.slope, "percent") / 100
        if not 0 <= fall < 1:
            raise ValueError("The ground must fall from 0 to 100 %; measure down the hill.")
        if not 0.5 <= self.side_slope <= 10 or not 0.5 <= self.outer_slope <= 10:
            raise ValueError("The sides must run from 0.5 to 10 for each 1 of height.")
        if fall * max(self.side_slope, self.outer_slope) >= 0.95:
            raise ValueError("The ground is as steep as the sides: no berm can meet it here.")
        if not 0.5 <= self.compaction <= 1.2:
            raise ValueError("Tamped soil must be from 0.5 to 1.2 of the soil dug.")
        pond = positive(self.pond_depth, "ft", tall)
        return Section(
            length=positive(self.length, "ft", size),
            width=positive(self.width, "ft", size),
            fall=fall,
            height=pond + not_negative(self.freeboard, "ft", "The freeboard must be zero or more."),
            inner=self.side_slope,
            outer=self.outer_slope,
            top=not_negative(wide, "ft", "The top of the berm must be zero or more wide."),
        )

    def over_dig_volume(self) -> float:
        """Return the soil dug under the floor for mulch or mix, in cubic feet."""
        if self.over_dig is None:
            return 0.0
        deep = not_negative(self.over_dig, "ft", "The extra depth must be zero or more.")
        return magnitude(self.length, "ft") * magnitude(self.width, "ft") * deep


@dataclass(frozen=True)
class Earthwork:
    """What is dug, what the berm takes, and how deep it goes. Depths are to the bare floor."""

    downhill_depth: Quantity
    """Floor below the ground at the downhill edge of the floor."""
    uphill_depth: Quantity
    """Floor below the ground at the uphill edge of the floor."""
    deepest_cut: Quantity
    """Deepest digging, with what is dug for mulch or mix."""
    cut: Quantity
    """Undisturbed soil dug for the basin."""
    dug: Quantity
    """``cut`` and what is dug for mulch or mix."""
    berm_height: Quantity
    """Top of the berm above the ground at the downhill edge of the floor."""
    fill: Quantity
    """Tamped soil in the berm."""
    surplus: Quantity
    """Tamped soil left over."""
    shortfall: Quantity
    """Tamped soil that is lacking."""
    whole_ground: bool


def cut_and_fill(
    basin: SlopedBasin, downhill_depth: Quantity | None = None, whole_ground: bool = False
) -> Earthwork:
    """Return the earthwork at the downhill floor depth where cut and fill balance.

    The depth is sought between zero, as a floor is never set on fill, and the top of the berm;
    at zero with soil to spare the rest is ``surplus``. ``downhill_depth`` fixes the depth instead.

    Berm shape: one straight section at the downhill edge, its outer toe met on the sloping ground,
    as long as the floor and both end slopes, with a return at each end that tapers to nothing up
    the slope and so counts half. ``whole_ground`` instead sums the soil over the ground itself,
    with full square corners and the fall of the ground under the inner face: up to a tenth more cut
    and 45 % more fill, so it is the safe figure for how much soil to keep.
    Raises ValueError for measures that make no basin.
    """
    section = basin.section()
    extra = basin.over_dig_volume()
    if downhill_depth is not None:
        sentence = "The floor must not lie on fill: dig it into the ground at the downhill edge."
        depth = not_negative(downhill_depth, "ft", sentence)
        if not within(depth, section.height):
            raise ValueError("The floor cannot be dug deeper than the top of the berm is high.")
        return _earthwork(basin, section, depth, extra, whole_ground)
    return _earthwork(
        basin, section, _balance(basin, section, extra, whole_ground), extra, whole_ground
    )


def _volumes(section: Section, depth: float, whole_ground: bool) -> tuple[float, float]:
    if whole_ground:
        return ground_volumes(section, depth)
    return section.cut(depth), section.fill(depth)


def _balance(basin: SlopedBasin, section: Section, extra: float, whole_ground: bool) -> float:
    low, high = 0.0, section.height
    for _ in range(_HALVINGS if not whole_ground else 30):
        middle = (low + high) / 2
        cut, fill = _volumes(section, middle, whole_ground)
        if basin.compaction * (cut + extra) >= fill:
            high = middle
        else:
            low = middle
    # Exactly zero says that the floor stays at ground level and soil is left over.
    return 0.0 if high < 1e-6 * section.height else high


def _earthwork(
    basin: SlopedBasin, section: Section, depth: float, extra: float, whole_ground: bool
) -> Earthwork:
    cut, fill = _volumes(section, depth, whole_ground)
    left = basin.compaction * (cut + extra) - fill
    # What the search leaves over is not soil.
    left = 0.0 if abs(left) <= 1e-6 * max(cut, fill) else left
    uphill = depth + section.fall * section.width
    over = 0.0 if basin.over_dig is None else magnitude(basin.over_dig, "ft")
    return Earthwork(
        downhill_depth=quantity(depth, "ft"),
        uphill_depth=quantity(uphill, "ft"),
        deepest_cut=quantity(uphill + over, "ft"),
        cut=quantity(cut, "ft**3"),
        dug=quantity(cut + extra, "ft**3"),
        berm_height=quantity(section.berm_height(depth), "ft"),
        fill=quantity(fill, "ft**3"),
        surplus=quantity(max(0.0, left), "ft**3"),
        shortfall=quantity(max(0.0, -left), "ft**3"),
        whole_ground=whole_ground,
    )


def berm_finding(work: Earthwork, metric: bool = False) -> Finding:
    """Return whether the berm is low enough: over 12 in (300 mm) fix, over 18 in (450 mm) stop."""
    unit = "mm" if metric else "in"
    caution = BERM_CAUTION_MM if metric else BERM_CAUTION_IN
    stop = BERM_STOP_MM if metric else BERM_STOP_IN
    height = magnitude(work.berm_height, unit)
    grade = Grade.GOOD
    if not within(height, caution):
        grade = Grade.FIX if within(height, stop) else Grade.STOP
    changes = {
        Grade.GOOD: "",
        Grade.FIX: "Make the pond shallower or the floor narrower.",
        Grade.STOP: "Ask an engineer: a bank this high is a small dam.",
    }
    return Finding(
        key="berm_height",
        grade=grade,
        said=f"The berm stands {depth_words(work.berm_height, metric)} above the ground.",
        limit=f"over {caution:g} {unit} take care, over {stop:g} {unit} stop",
        source=OURS,
        change=changes[grade],
    )


def soil_finding(work: Earthwork, metric: bool = False) -> Finding:
    """Return whether the soil dug is enough for the berm, and what to do with the rest."""
    unit, name = ("m**3", "m³") if metric else ("ft**3", "ft³")
    lacking, spare = magnitude(work.shortfall, unit), magnitude(work.surplus, unit)
    amount = f"{plain_number(significant(max(lacking, spare)))} {name}"
    if lacking > 0:
        said, grade = f"The berm lacks {amount} of tamped soil.", Grade.FIX
        change = "Dig the floor a little deeper, or bring soil in."
    elif spare > 0:
        said, grade = f"About {amount} of tamped soil is left over.", Grade.GOOD
        change = "Plan where it goes: not against trunks, walls or the overflow path."
    else:
        said, grade, change = "The soil you dig makes the berm.", Grade.GOOD, ""
    return Finding("berm_soil", grade, said, "", COMPACTION_SOURCE, change)


def average_end_area(first: Quantity, last: Quantity, length: Quantity) -> Quantity:
    """Return the volume between two cross-sections by the mean of their areas.

    Exact only where the area changes in a straight line. Raises ValueError below zero.
    """
    a, c, run = _ends(first, last, length)
    return quantity((a + c) / 2 * run, "ft**3")


def prismoidal(first: Quantity, middle: Quantity, last: Quantity, length: Quantity) -> Quantity:
    """Return the volume between two cross-sections with one half way, by the prismoidal rule."""
    a, c, run = _ends(first, last, length)
    b = not_negative(middle, "ft**2", "A cross-section must be zero or more.")
    return quantity((a + 4 * b + c) / 6 * run, "ft**3")


def _ends(first: Quantity, last: Quantity, length: Quantity) -> tuple[float, float, float]:
    sentence = "A cross-section must be zero or more."
    run = not_negative(length, "ft", "The length between cross-sections must be zero or more.")
    return not_negative(first, "ft**2", sentence), not_negative(last, "ft**2", sentence), run
