"""The garden cut through along the slope, heights drawn taller than lengths."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from interview.drawing.scene import (
    XY,
    Drawing,
    Hatch,
    Key,
    Label,
    LabelSpot,
    Path,
    Shape,
    Stroke,
    line,
    polygon,
)
from interview.garden.earth.earthwork import Earthwork
from interview.garden.earth.profile import LevelRow, Profile, level_lines, level_table, profile
from interview.garden.size.basin_shape import Basin
from interview.garden.size.zones import Zone
from interview.garden.storms.wet_zones import ZoneHours
from interview.quantities.shown import PLAIN, slope_words
from interview.quantities.shown import depth_words as height_words
from interview.quantities.units import Quantity, magnitude, quantity

__all__ = ["LevelRow", "Profile", "cross_section", "level_lines", "level_table", "profile"]

_TALLER = (1, 2, 3, 4, 5, 6, 8, 10, 15, 20)
_HEIGHT_PART = 0.3
"""Height of the section over its width that the taller heights should reach."""
_LAWN = 0.18
"""Ground drawn beyond either end, as a part of the width of the work."""


def cross_section(
    basin: Basin,
    earthwork: Earthwork,
    slope: Quantity,
    mulch_depth: Quantity,
    metric: bool = False,
    top_width: Quantity | None = None,
    wet: ZoneHours | None = None,
) -> Drawing:
    """Return the garden cut along the slope, uphill at the left, heights drawn taller as stated.

    ``slope`` is the fall of the ground in percent; depths of ``earthwork`` are to the finished
    floor, and ``mulch_depth``, a length, is dug below it. ``top_width`` is the length across the
    top of the berm. ``wet`` are the hours under water of the planting zones.
    Raises ValueError as ``profile`` does.
    """
    cut = profile(basin, earthwork, slope, mulch_depth, metric, top_width)
    one = _Section(cut, metric, wet)
    return Drawing(
        title=f"SECTION along the slope ({slope_words(slope)}), uphill at the left",
        description=one.words(),
        shapes=tuple(one.shapes()),
        keys=one.keys(),
        notes=one.notes(),
    )


class _Section:
    """Draws a profile; x in feet, heights times ``taller``."""

    def __init__(self, cut: Profile, metric: bool, wet: ZoneHours | None = None) -> None:
        self.cut, self.metric, self.wet = cut, metric, wet
        self.left, self.right = cut.surface[0][0], cut.toe[0]
        lawn = _LAWN * (self.right - self.left)
        self.left, self.right = self.left - lawn, self.right + lawn
        high = max(cut.ground(self.left), cut.rim)
        low = min(cut.ground(self.right), -cut.mulch)
        wanted = _HEIGHT_PART * (self.right - self.left) / (high - low)
        self.taller = max((k for k in _TALLER if k <= wanted), default=1)
        self.low = low

    def at(self, x: float, z: float) -> XY:
        return x, z * self.taller

    def height(self, feet: float) -> str:
        return height_words(quantity(feet, "ft"), self.metric)

    def signed(self, feet: float) -> str:
        words = self.height(feet)
        return words if words.startswith(("-", "0 ")) else f"+{words}"

    def path(self, points: Sequence[XY], stroke: Stroke | None) -> Path:
        return Path(tuple(self.at(*point) for point in points), stroke)

    def shapes(self) -> Iterator[Shape]:
        cut = self.cut
        if cut.mulch > 0:
            under = ((0.0, 0.0), (cut.floor, 0.0), (cut.floor, -cut.mulch), (0.0, -cut.mulch))
            bed = tuple(self.at(*point) for point in under)
            yield polygon(bed, None, Hatch.MULCH)
            yield self.path((under[3], under[2]), Stroke.MULCH)
        if cut.bermed:
            yield self._berm()
        first, last = cut.surface[0], cut.toe
        yield self.path((first, last), Stroke.DASHED)
        yield self.path((*self._lawn(first, self.left), *cut.surface), Stroke.SOLID)
        yield self.path((last, *self._lawn(last, self.right)), Stroke.SOLID)
        up, down = self._pond()
        yield line(*self.at(up, cut.pond), *self.at(down, cut.pond), Stroke.WATER)
        yield from self._labels()

    def _pond(self) -> XY:
        """Where the full pond ends uphill and downhill."""
        cut = self.cut
        up = -cut.inner * min(cut.pond, cut.uphill_rise)
        return up, cut.floor + cut.inner * min(cut.pond, cut.downhill_rise)

    def _lawn(self, end: XY, far: float) -> tuple[XY, ...]:
        return ((far, self.cut.ground(far)),) if far != end[0] else ()

    def _berm(self) -> Path:
        cut = self.cut
        # The inner face leaves the old ground where the two meet.
        height = max(0.0, cut.downhill) / (1 + cut.fall * cut.inner)
        foot = (cut.floor + cut.inner * height, height)
        corners = (foot, *cut.surface[3:])
        return polygon(tuple(self.at(*point) for point in corners), None, Hatch.FILL)

    def _labels(self) -> Iterator[Shape]:
        cut = self.cut
        middle = cut.floor / 2
        crest = cut.crest + (cut.top / 2 if cut.bermed else 0.0)
        name = "top of berm" if cut.bermed else "rim"
        tall = cut.rim if cut.bermed else cut.downhill_rise
        floor, side, rim = (self._hours(zone) for zone in Zone)
        level = (
            f"floor {self.signed(0.0)}{floor}" if floor else f"finished floor {self.signed(0.0)}"
        )
        yield self._label(level, middle, 0.0, LabelSpot.ABOVE)
        yield self._label(f"{name} {self.signed(cut.rim)}{rim}", crest, tall, LabelSpot.ABOVE)
        if side:
            x = cut.floor + cut.inner * cut.pond / 2
            yield self._label(f"side{side}", x, cut.pond / 2, LabelSpot.BELOW)
        x, y = self.at(middle, cut.pond)
        up, down = self._pond()
        pond = f"full pond {self.signed(cut.pond)}"
        yield Label(pond, x, y, over_line=True, within=(up, y, down, y))
        ground = cut.ground(0.0)
        yield self._label(f"old ground {self.signed(ground)}", 0.0, ground, LabelSpot.ABOVE)
        if cut.mulch > 0:
            text = f"mulch {self.height(cut.mulch)}"
            yield self._label(text, middle, -cut.mulch, LabelSpot.BELOW)
        if cut.bermed:
            foot = cut.toe
            yield self._label(f"foot {self.signed(foot[1])}", foot[0], foot[1], LabelSpot.BELOW)

    def _hours(self, zone: Zone) -> str:
        """Return how long a zone is under water, to stand after its name."""
        if self.wet is None:
            return ""
        return f", wet {PLAIN.write(magnitude(self.wet.of(zone), 'h'))} h"

    def _label(self, text: str, x: float, z: float, place: LabelSpot = LabelSpot.ABOVE) -> Label:
        return Label(text, *self.at(x, z), place)

    def keys(self) -> tuple[Key, ...]:
        keys = [Key(Stroke.SOLID, "finished surface"), Key(Stroke.DASHED, "old ground")]
        keys.append(Key(Stroke.WATER, "full pond, level of the overflow"))
        if self.cut.bermed:
            keys.append(Key(Hatch.FILL, "berm of tamped soil"))
        if self.cut.mulch > 0:
            keys.append(Key(Hatch.MULCH, "mulch"))
        return tuple(keys)

    def notes(self) -> tuple[str, ...]:
        cut = self.cut
        notes = [
            f"Heights are drawn {self.taller} times as tall as lengths."
            if self.taller > 1
            else "Heights and lengths are drawn to one scale.",
            "Heights are above the finished floor, the top of the mulch.",
            f"Dig from the old ground: {self.height(cut.ground(0.0) + cut.mulch)} at the uphill "
            f"edge of the floor, {self.height(cut.downhill + cut.mulch)} at the downhill edge.",
        ]
        if cut.bermed:
            notes.append(f"The berm stands {self.height(cut.rim - cut.downhill)} above the ground.")
        if self.wet is not None:
            notes.append(
                "Wet: hours under water after the rain the garden holds, the side half way up; "
                "the list of plants is in the same three zones."
            )
        if cut.uphill_rise < cut.rim - 1e-6:
            under = "the full pond" if cut.uphill_rise < cut.pond - 1e-6 else "the rim"
            level = self.height(cut.pond if under == "the full pond" else cut.rim)
            spill = " Without it water leaves here first." if under == "the full pond" else ""
            notes.append(
                f"Uphill the side meets the ground {self.height(cut.uphill_rise)} above the floor, "
                f"under {under} ({level}): carry a bank as high as the rim round this side "
                f"too.{spill}"
            )
        return tuple(notes)

    def words(self) -> str:
        cut = self.cut
        berm = (
            f" Downhill a berm rises {self.height(cut.rim)} above the floor." if cut.bermed else ""
        )
        return (
            f"From left, uphill, to right: the ground, a side down to the level floor, and a side "
            f"up again.{berm} The full pond stands {self.height(cut.pond)} above the floor. "
            + " ".join(self.notes())
        )
