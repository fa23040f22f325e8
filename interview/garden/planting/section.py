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
    Material,
    Path,
    Shape,
    Stroke,
    filled,
    line,
)
from interview.garden.earth.profile import CutSide, Profile
from interview.garden.form.lie import Lie, wing_length
from interview.garden.size.zones import Zone
from interview.garden.storms.wet_zones import ZoneHours
from interview.quantities.shown import PLAIN, length_words, slope_words
from interview.quantities.shown import depth_words as height_words
from interview.quantities.units import magnitude, quantity

_TALLER = (1, 2, 3, 4, 5, 6, 8, 10, 15, 20)
_HEIGHT_PART = 0.3
"""Height of the section over its width that the taller heights should reach."""
_GRASS, _SOIL = 0.06, 0.35
"""Height of the grass, and depth of the soil under the work, as parts of its height."""
_LAWN = 0.18
"""Ground drawn beyond either end, as a part of the width of the work."""
_PRINTED_PART, _PRINTED_LAWN = 0.4, 0.1
"""The same where the section is printed beside something else, half as wide as the page."""


def cross_section(
    lie: Lie, metric: bool = False, wet: ZoneHours | None = None, printed: bool = False
) -> Drawing:
    """Return the garden cut along the slope, uphill at the left, heights drawn taller as stated.

    Finished surface, dug surface, the layers between them and the berm. ``wet`` are the hours
    under water of the planting zones. It is drawn higher where it is to be ``printed`` small.
    """
    one = _Section(Profile(lie), metric, wet, printed)
    slope = slope_words(quantity(lie.ground.fall * 100, "percent"))
    return Drawing(
        title=f"SECTION along the slope ({slope}), uphill at the left",
        description=one.words(),
        shapes=tuple(one.shapes()),
        keys=one.keys(),
        notes=one.notes(),
        ground=Material.SKY,
    )


class _Section:
    """Draws a profile; x in feet, heights times ``taller``."""

    def __init__(self, cut: Profile, metric: bool, wet: ZoneHours | None, printed: bool) -> None:
        self.cut, self.lie, self.metric, self.wet = cut, cut.lie, metric, wet
        self.printed = printed
        self.left, self.right = cut.surface[0][0], cut.surface[-1][0]
        part, lawn = (_PRINTED_PART, _PRINTED_LAWN) if printed else (_HEIGHT_PART, _LAWN)
        lawn *= self.right - self.left
        self.left, self.right = self.left - lawn, self.right + lawn
        high = max(cut.ground(self.left), cut.lie.height)
        low = min(cut.ground(self.right), -cut.dug_below)
        wanted = part * (self.right - self.left) / (high - low)
        self.taller = max((k for k in _TALLER if k <= wanted), default=1)

    def at(self, x: float, z: float) -> XY:
        return x, z * self.taller

    def height(self, feet: float) -> str:
        return height_words(quantity(feet, "ft"), self.metric)

    def signed(self, feet: float) -> str:
        words = self.height(feet)
        return words if words.startswith(("-", "0 ")) else f"+{words}"

    def path(self, points: Sequence[XY], stroke: Stroke | None) -> Path:
        return Path(tuple(self.at(*point) for point in points), stroke)

    def area(self, points: Sequence[XY], material: Material) -> Path:
        return filled(tuple(self.at(*point) for point in points), material)

    def filled(self, points: Sequence[XY], hatch: Hatch, material: Material) -> Path:
        return self.area(points, material)._replace(hatch=hatch)

    @property
    def _bottom(self) -> float:
        """Where the picture ends below, in feet above the floor."""
        low = min(self.cut.ground(self.right), -self.cut.dug_below)
        return low - _SOIL * (self.cut.lie.height - low)

    def raised(self, point: XY) -> XY:
        """Return a point of the lawn, the height of the grass over it."""
        return point[0], point[1] + _GRASS * (self.cut.lie.height + self.cut.dug_below)

    def shapes(self) -> Iterator[Shape]:
        cut, lie = self.cut, self.lie
        mulch, deep = lie.ground.mulch, cut.dug_below
        low = self._bottom
        lawn = ((self.left, cut.ground(self.left)), (self.right, cut.ground(self.right)))
        under = ((self.right, low), (self.left, low))
        yield self.area((lawn[0], *cut.surface, lawn[1], *under), Material.SOIL)
        for corners in cut.berms:
            yield self.filled(corners, Hatch.FILL, Material.BERM)
        for edge, end in ((lawn[0], cut.surface[0]), (cut.surface[-1], lawn[1])):
            yield self.area((edge, end, *(self.raised(one) for one in (end, edge))), Material.GRASS)
        if mulch > 0:
            yield self.filled(cut.mulch, Hatch.MULCH, Material.MULCH)
        if deep > mulch:
            bed = ((0.0, -mulch), (cut.floor, -mulch), (cut.floor, -deep), (0.0, -deep))
            yield self.filled(bed, Hatch.COMPOST, Material.COMPOST)
        pond_up, pond_down = self._pond()
        level = ((pond_up, lie.depth), (0.0, 0.0), (cut.floor, 0.0), (pond_down, lie.depth))
        yield self.area(level, Material.WATER)
        first, last = cut.surface[0], cut.surface[-1]
        yield self.path((first, last), Stroke.DASHED)
        if deep > 0:
            yield self.path(cut.dug, Stroke.DOTTED)._replace(border=True)
        yield self.path((lawn[0], *cut.surface, lawn[1]), Stroke.SOLID)._replace(border=True)
        yield line(*self.at(pond_up, lie.depth), *self.at(pond_down, lie.depth), Stroke.WATER)
        yield from self._labels()

    def _pond(self) -> XY:
        """Where the full pond ends uphill and downhill."""
        return -self.cut.uphill.pond, self.cut.floor + self.cut.downhill.pond

    def _labels(self) -> Iterator[Shape]:
        cut, lie = self.cut, self.lie
        middle, down = cut.floor / 2, cut.downhill
        crest = cut.floor + (down.rim + down.top) / 2
        name = "crest" if down.bermed else "lawn, the rim"
        floor, side, edge = (self._hours(zone) for zone in Zone)
        level = "floor" if self.printed or floor else "finished floor"
        yield self._label(f"{level} {self.signed(0.0)}{floor}", middle, 0.0, LabelSpot.ABOVE)
        top = f"{name} {self.signed(lie.height)}"
        yield self._label(top, crest, down.rim_height, LabelSpot.ABOVE)
        if side:
            x = cut.floor + down.pond / 2
            yield self._label(f"side{side}", x, lie.depth / 2, LabelSpot.BELOW)
        x, y = self.at(middle, lie.depth)
        pond_up, pond_down = self._pond()
        # The rim's plants stand from the edge of the full pond up, and no water reaches the crest.
        pond = f"full pond {self.signed(lie.depth)}"
        whole = f"{pond}{edge.replace('wet', 'its edge wet')}"
        yield Label(whole, x, y, over_line=True, within=(pond_up, y, pond_down, y), brief=pond)
        ground = cut.ground(0.0)
        yield self._label(f"old ground {self.signed(ground)}", 0.0, ground, LabelSpot.ABOVE)
        if cut.dug_below > 0:
            text = f"dug to {self.signed(-cut.dug_below)}"
            yield self._label(text, middle, -cut.dug_below, LabelSpot.BELOW)
        if cut.bermed:
            x, foot = cut.toe
            yield self._label(f"toe {self.signed(foot)}", x, foot, LabelSpot.BELOW)

    def _hours(self, zone: Zone) -> str:
        """Return how long a zone is under water, to stand after its name."""
        if self.wet is None:
            return ""
        return f", wet {PLAIN.write(magnitude(self.wet.of(zone), 'h'))} h"

    def _label(self, text: str, x: float, z: float, place: LabelSpot = LabelSpot.ABOVE) -> Label:
        return Label(text, *self.at(x, z), place)

    def keys(self) -> tuple[Key, ...]:
        ground = self.lie.ground
        keys = [Key(Stroke.SOLID, "finished surface"), Key(Stroke.DASHED, "old ground")]
        if self.cut.dug_below > 0:
            keys.append(Key(Stroke.DOTTED, "dug surface"))
        keys.append(Key(Stroke.WATER, "full pond, level of the overflow", Material.WATER))
        if self.cut.berms:
            keys.append(Key(Hatch.FILL, "berm of tamped soil", Material.BERM))
        if ground.mulch > 0:
            keys.append(Key(Hatch.MULCH, f"mulch {self.height(ground.mulch)}", Material.MULCH))
        if ground.compost > 0:
            keys.append(
                Key(Hatch.COMPOST, f"compost {self.height(ground.compost)}", Material.COMPOST)
            )
        return tuple(keys)

    def notes(self) -> tuple[str, ...]:
        cut, lie = self.cut, self.lie
        deep = cut.dug_below
        top = "the top of the mulch" if lie.ground.mulch > 0 else "as it is when all is laid in"
        notes = [
            f"Heights are drawn {self.taller} times as tall as lengths."
            if self.taller > 1
            else "Heights and lengths are drawn to one scale.",
            f"Heights are above the finished floor, {top}.",
            f"Dig from the old ground: {self.height(cut.ground(0.0) + deep)} at the uphill "
            f"edge of the floor, {self.height(cut.ground(cut.floor) + deep)} at the downhill edge.",
        ]
        if lie.ground.mulch > 0:
            notes.append(
                f"At the {'full pond' if lie.ground.bare_rim else 'rim'} the spade goes straight "
                f"down {self.height(lie.ground.mulch)}: that step holds the mulch."
            )
        if cut.bermed:
            notes.append(
                f"The berm stands {self.height(lie.crest_to_toe)} from toe to crest where it is "
                "highest; it is level on top and runs out where the lawn is as high."
            )
        notes.append(self._uphill(cut.uphill))
        if self.wet is not None:
            notes.append(
                "Wet: hours under water after the rain the garden holds, the side half way up; "
                "the list of plants is in the same three zones."
            )
        return tuple(notes)

    def _uphill(self, side: CutSide) -> str:
        lie = self.lie
        if not self.cut.bermed:
            return "The lawn is the rim all round: no berm is built."
        if self.cut.open_uphill:
            wing = length_words(quantity(wing_length(lie), "ft"), self.metric)
            return (
                "Uphill the lawn is only as high as the full pond: run both ends of the berm on "
                f"up the slope, {wing} each."
            )
        if side.bermed:
            low = self.height(lie.height - self.cut.ground(-side.rim))
            return f"Uphill the lawn lies {low} under the crest here: a low bank closes it."
        high = self.height(side.rim_height)
        same = high == self.height(lie.height)
        how = "as high as the crest" if same else f"higher than the crest ({high})"
        return f"Uphill there is no berm: the lawn there is {how}."

    def words(self) -> str:
        cut = self.cut
        berm = " that goes on as the berm" if cut.bermed else ""
        return (
            f"From left, uphill, to right: the lawn, a side down to the level floor, and a side "
            f"up again{berm}. The full pond stands {self.height(self.lie.depth)} above the floor. "
            + " ".join(self.notes())
        )
