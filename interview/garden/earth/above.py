"""The garden seen from above, downhill toward the bottom of the page."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cached_property
from itertools import groupby

from interview.drawing.scale import Dimension, across, scale_bar, upright
from interview.drawing.scene import (
    XY,
    Drawing,
    Hatch,
    Ink,
    Key,
    Label,
    LabelSpot,
    Mark,
    Material,
    Path,
    Shape,
    Stroke,
    Symbol,
    extent,
    filled,
    line,
    polygon,
)
from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Lie
from interview.garden.site.setbacks import distance_words
from interview.garden.survey.rings import crossed, each_once
from interview.quantities.shown import depth_words as height_words
from interview.quantities.shown import length_words
from interview.quantities.units import Quantity, magnitude, quantity

_BEARING = {"n": 0, "ne": 45, "e": 90, "se": 135, "s": 180, "sw": 225, "w": 270, "nw": 315}
_TOWARD = {
    "n": "north", "ne": "northeast", "e": "east", "se": "southeast",
    "s": "south", "sw": "southwest", "w": "west", "nw": "northwest",
}  # fmt: skip
_WAYS = {"pipe": "by a buried pipe", "channel": "by a stone channel", "lawn": "over the lawn"}
_OUTSIDE = 0.16
"""Longest piece of the way in that is drawn, as a part of the length over all."""
_CHANNEL_FT = 1.5
"""Width of the channel of stone as it is drawn."""
_NO_BERM = 0.01
"""Feet of berm under which none is drawn."""
_FOOT_M = 0.3048
_NOTCH_PARTS = 6


def plan_view(
    basin: Basin,
    lie: Lie | None,
    slope_direction: str,
    notch_width: Quantity,
    spout_distance: Quantity | None = None,
    water_by: str = "channel",
    setbacks: Sequence[tuple[str, Quantity]] = (),
    metric: bool = False,
    planting: Callable[[Sequence[XY], Sequence[XY], Sequence[XY]], Iterable[Shape]] | None = None,
    dimensioned: bool = True,
) -> Drawing:
    """Return the plan of the garden, to scale, as it lies in its ground, uphill at the top.

    Where ``lie`` is not known the lines of floor, full pond and rim are drawn, and no berm.
    ``notch_width`` and ``spout_distance`` are lengths, the way of the water the second.
    ``slope_direction`` is the compass point downhill (``n`` to ``nw``) or ``flat``; ``water_by``
    is ``pipe``, ``channel`` or ``lawn``. ``setbacks`` are named distances, written beside the plan
    as no direction is known for them. ``planting`` draws the plants between the lines of floor,
    full pond and rim. Its sizes stand on it unless it is not ``dimensioned``: ``plan_sizes`` has
    them then. Raises ValueError for another direction or way.
    """
    if slope_direction not in (*_BEARING, "flat"):
        raise ValueError("Downhill must be one of the eight compass points, or flat.")
    if water_by not in _WAYS:
        raise ValueError("The water must come by pipe, by channel or over the lawn.")
    one = _Plan(basin, lie, slope_direction, notch_width, spout_distance, water_by, metric)
    one.bare, one.told_on_it = planting is None, dimensioned
    plants = planting(one.floor, one.pond, one.rim) if planting is not None else ()
    return Drawing(
        title="PLAN of the garden, seen from above",
        description=one.words(),
        shapes=(*one.shapes(), *plants),
        keys=one.keys(),
        notes=one.notes(setbacks),
        ground=Material.LAWN,
        detail=tuple(one.detail() if dimensioned else one.marked()),
    )


def plan_sizes(
    basin: Basin, lie: Lie | None, notch_width: Quantity, metric: bool = False
) -> tuple[Dimension, ...]:
    """Return the sizes of the garden as dimension lines of ``plan_view``, the smallest first.

    ``notch_width`` is a length, as it is there.
    """
    one = _Plan(basin, lie, "flat", notch_width, None, "lawn", metric)
    return tuple(one.sizes())


class _Plan:
    """The plan in feet or metres, the middle of the floor at nought."""

    bare = True
    """Whether no plants are drawn."""
    told_on_it = True
    """Whether its sizes stand on it."""

    def __init__(
        self,
        basin: Basin,
        lie: Lie | None,
        direction: str,
        notch: Quantity,
        spout: Quantity | None,
        water_by: str,
        metric: bool,
    ) -> None:
        self.basin, self.lie, self.direction, self.water_by = basin, lie, direction, water_by
        self.notch, self.spout, self.metric = notch, spout, metric
        self.unit = "m" if metric else "ft"
        outline = basin.outline
        self.rise = outline.rise
        z = basin.side_slope
        self.floor = self.ring(outline.line_at(0.0))
        self.pond = self.ring(outline.line_at(z * magnitude(basin.depth, "ft")))
        rim = outline.line_at(z * magnitude(basin.rim_height, "ft"))
        self.rim = self.ring(rim if lie is None else lie.inside_line)
        self.whole = self.rim if lie is None else self.ring(lie.footprint)

    def placed(self, points: Iterable[XY]) -> tuple[XY, ...]:
        """Return points in the plan's unit, the middle of the floor at nought."""
        one = _FOOT_M if self.metric else 1.0
        return tuple((x * one, (y - self.rise / 2) * one) for x, y in points)

    def ring(self, points: Sequence[XY]) -> tuple[XY, ...]:
        """Return the same, each once, of an outline that comes back to its first point."""
        return each_once(self.placed(points))

    def length(self, value: Quantity) -> str:
        return length_words(value, self.metric)

    def long(self, number: float) -> str:
        return self.length(quantity(number, self.unit))

    def size(self, long: Quantity, wide: Quantity) -> str:
        return f"{self.length(long)} × {self.length(wide)}"

    def extent(self, ring: Sequence[XY]) -> str:
        left, low, right, high = extent(ring)
        return f"{self.long(right - left)} × {self.long(high - low)}"

    @property
    def bermed(self) -> bool:
        """Whether anything is built."""
        return bool(self.berms)

    @cached_property
    def berms(self) -> list[tuple[tuple[XY, ...], tuple[XY, ...]]]:
        """Return each stretch of berm: its inner edge, the crest, and its toe."""
        if self.lie is None:
            return []
        lie = self.lie
        rays = lie.outline.rays
        wide = [lie.reach(ray) - lie.inner(ray) > _NO_BERM for ray in rays]
        # It runs out to nothing at the next place, so that one is of it too.
        built = [any(three) for three in zip(wide, wide[1:] + wide, wide[-1:] + wide, strict=False)]
        start = built.index(False) if False in built else 0
        round_it = [*range(start, len(rays)), *range(start + 1)]
        runs = ([rays[at] for at in run] for on, run in groupby(round_it, built.__getitem__) if on)
        return [
            (
                self.placed(ray.at(lie.inner(ray)) for ray in run),
                self.placed(ray.at(lie.reach(ray)) for ray in run),
            )
            for run in runs
        ]

    def shapes(self) -> Iterator[Shape]:
        box = extent(self.whole)
        for crest, toe in self.berms:
            ring = (*toe, *crest[::-1])
            yield Path(ring, None, True, Hatch.FILL, Material.BERM)
            yield Path(toe, Stroke.DOTTED, border=True)
        yield filled(self.rim, Material.RIM)
        yield filled(self.pond, Material.SIDE, Stroke.WATER)
        yield filled(self.floor, Material.FLOOR, Stroke.SOLID)
        yield polygon(self.rim, Stroke.HEAVY, border=True)
        yield from self._notch()
        yield from self._way_in()
        if self.bare:
            yield self._floor_label()
        yield from self._directions(box)

    def detail(self) -> Iterator[Shape]:
        """What a small picture has no room for: sizes and scale."""
        box = extent(self.whole)
        step = max(0.05 * (box[2] - box[0]), 0.08 * (box[3] - box[1]))
        yield from self._sizes(box, step)
        yield from scale_bar(box[0], box[1] - 5.8 * step, box[2] - box[0], self.unit)

    def marked(self) -> Iterator[Shape]:
        """What is told on the picture where its sizes stand beside it: how wide the berm is."""
        if self.bermed:
            toe, crest = _lowest(self.whole, 0.0), _lowest(self.rim, 0.0)
            text = f"berm {self.long(crest - toe)}"
            yield Label(text, 0, (toe + crest) / 2, on_hatch=Hatch.FILL)

    def sizes(self) -> Iterator[Dimension]:
        """Yield the way to the notch, then the floor, the rim and all of it, along and across."""
        far = self._notch_middle
        yield Dimension(0.0, far, f"middle to {self._notch_name} {self.long(far)}")
        rings = [("floor", self.floor), ("rim", self.rim)]
        if self.lie is not None:
            rings.append(("over all", self.whole))
        for name, ring in rings:
            left, low, right, high = extent(ring)
            yield Dimension(left, right, f"{name} {self.long(right - left)}")
            yield Dimension(low, high, f"{name} {self.long(high - low)}", upright=True)

    def _floor_label(self) -> Label:
        low, high = _lowest(self.floor, 0.0), _highest(self.floor, 0.0)
        left, _, right, _ = extent(self.floor)
        room = (left, low, right, high)
        return Label("level floor", 0, (low + high) / 2, within=room, outline=self.floor)

    def _notch(self) -> Iterator[Shape]:
        left, _, right, _ = extent(self.rim)
        wide, middle = self._notch_wide, self._notch_middle
        places = [middle + wide * (n / _NOTCH_PARTS - 0.5) for n in range(_NOTCH_PARTS + 1)]
        foot, beyond = _lowest(self.whole, middle), 0.02 * (right - left)
        rim = tuple((x, _lowest(self.rim, x)) for x in places)
        # From the water, where it comes so far, over the rim and out beyond the berm.
        water = [(x, (crossed(self.pond, x) or (crest,))[0]) for x, crest in rim]
        out = [(x, _lowest(self.whole, x) - beyond) for x in places[::-1]]
        yield filled((*water, *out), Material.STONE)
        yield Path(rim, Stroke.NOTCH, border=True)
        text = f"overflow {self._notch_name} {self._notch_words()}"
        if self.told_on_it:
            yield Label(text, middle, foot, LabelSpot.BELOW, arrow=(0.0, -1.0), brief="overflow")
            return
        # At the left there is room under the garden, so that it need not be drawn smaller.
        yield Label("", middle, foot, LabelSpot.BELOW, arrow=(0.0, -1.0))
        yield Label(text, middle, foot, LabelSpot.LEFT, shift=(-1, 1))

    @property
    def _notch_wide(self) -> float:
        left, _, right, _ = extent(self.rim)
        return min(magnitude(self.notch, self.unit), 0.9 * (right - left))

    @property
    def _notch_middle(self) -> float:
        # Toward one end, so that water crosses the garden before it leaves.
        right = extent(self.rim)[2]
        return min(right / 2, right - self._notch_wide / 2)

    @property
    def _notch_name(self) -> str:
        return "notch" if self.lie is None or self.bermed else "lip"

    def _notch_words(self) -> str:
        if self.metric:
            return f"{height_words(self.notch, True)} wide"
        return f"{self.length(self.notch)} wide"

    def _way_in(self) -> Iterator[Shape]:
        inlet, far = _highest(self.rim, 0.0), self._drawn_way()
        if self.spout is not None:
            far = min(far, magnitude(self.spout, self.unit))
        low, half = _highest(self.floor, 0.0), self._channel / 2
        if self.water_by == "channel":
            way = ((-half, low), (half, low), (half, inlet + far), (-half, inlet + far))
            yield filled(way, Material.STONE)
        yield line(0, _highest(self.pond, 0.0), 0, inlet + far, Stroke.DASHED)
        yield Mark(0, inlet, Symbol.INLET)
        text = f"water in {_WAYS[self.water_by]}"
        beside = half if self.water_by == "channel" else 0.0
        yield Label(text, beside, inlet + far, LabelSpot.RIGHT, brief="water in", ink=Ink.WATER)
        if self.spout is not None:
            below = f"{self.length(self.spout)} from the downspout"
            yield Label(below, beside, inlet + far, LabelSpot.RIGHT, shift=(0, 1), brief=" ")

    @property
    def _channel(self) -> float:
        return _CHANNEL_FT * (_FOOT_M if self.metric else 1.0)

    def _drawn_way(self) -> float:
        left, _, right, _ = extent(self.whole)
        return _OUTSIDE * (right - left)

    def _sizes(self, box: tuple[float, float, float, float], step: float) -> Iterator[Shape]:
        left, low, right, high = box
        over = "over all" if self.lie is not None else "rim"
        x0, y0, x1, y1 = extent(self.floor)
        yield from across(left, right, low - 2.8 * step, f" {over} {self.long(right - left)} ")
        yield from across(x0, x1, low - 4.3 * step, f" floor {self.long(x1 - x0)} ")
        whole = f"{over} {self.long(high - low)}"
        yield from upright(left - 0.8 * step, low, high, whole, LabelSpot.LEFT)
        floor = f"floor {self.long(y1 - y0)}"
        yield from upright(right + 0.8 * step, y0, y1, floor, LabelSpot.RIGHT)

    def _directions(self, box: tuple[float, float, float, float]) -> Iterator[Shape]:
        if self.direction == "flat":
            return
        top = box[3] + self._drawn_way()
        turn = math.radians(180 - _BEARING[self.direction])
        north = (math.sin(turn), math.cos(turn))
        yield Label("north", box[0], top, LabelSpot.START, arrow=north)
        yield Label(
            "downhill", box[0], top, LabelSpot.START, shift=(0, 1), arrow=(0.0, -1.0), brief=" "
        )

    def keys(self) -> tuple[Key, ...]:
        whole = self.spout is not None and magnitude(self.spout, self.unit) <= self._drawn_way()
        berm = (Key(Stroke.DOTTED, "toe of the berm"), Key(Hatch.FILL, "berm", Material.BERM))
        keys = [
            *(berm if self.bermed else ()),
            Key(Stroke.HEAVY, f"{self._rim_name} {self.extent(self.rim)}", Material.RIM),
            Key(Stroke.WATER, f"full pond {self._pond_size}", Material.SIDE),
            Key(Stroke.SOLID, f"level floor {self._floor_size}", Material.FLOOR),
        ]
        if not self.told_on_it:
            return tuple(one for one in keys if one.material is not Material.BERM)
        return (
            *keys,
            Key(Stroke.NOTCH, f"overflow {self._notch_name}", Material.STONE),
            Key(Symbol.INLET, "inlet"),
            Key(Stroke.DASHED, "way in" if whole else "way in, cut short here"),
        )

    @property
    def _rim_name(self) -> str:
        return "rim (crest, and edge of the cut)" if self.bermed else "rim"

    @property
    def _floor_size(self) -> str:
        return self.size(self.basin.floor_length, self.basin.floor_width)

    @property
    def _pond_size(self) -> str:
        return self.size(self.basin.edge_length, self.basin.edge_width)

    def notes(self, setbacks: Sequence[tuple[str, Quantity]]) -> tuple[str, ...]:
        notes = []
        if self.direction == "flat" and self.lie is not None and self.lie.ground.fall > 0:
            notes.append("Downhill is at the foot of the drawing; no compass point was given.")
        elif self.direction == "flat":
            notes.append("The ground is level: put the notch where the overflow may run.")
        else:
            notes.append(f"Downhill is to the {_TOWARD[self.direction]}.")
        if self.lie is None:
            notes.append("The slope is not measured yet: no berm is drawn.")
        if self.basin.shape is FloorShape.KIDNEY:
            notes.append(
                "Full pond and floor are told along and across the bent middle line of the kidney."
            )
        if setbacks:
            told = "; ".join(
                f"{words} {distance_words(value, self.metric)}" for words, value in setbacks
            )
            notes.append(f"Distances from the garden: {told}.")
        return tuple(notes)

    def words(self) -> str:
        down = _TOWARD.get(self.direction)
        way = f" Downhill is to the {down}, toward the bottom of the page." if down else ""
        berm = (
            f" A berm stands downhill, outside the rim; with it all is {self.extent(self.whole)}."
            if self.bermed
            else ""
        )
        return (
            f"Three lines, one in the other: the rim {self.extent(self.rim)}, the full pond "
            f"{self._pond_size} and the level floor {self._floor_size}.{berm}{way} The water comes "
            f"in {_WAYS[self.water_by]} in the middle of the uphill side. The overflow "
            f"{self._notch_name}, {self._notch_words()}, is in the downhill side."
        )


def _lowest(ring: Sequence[XY], x: float) -> float:
    """Return where a ring crosses ``x`` downhill, or its end there where it reaches not so far."""
    return _across(ring, x)[0]


def _highest(ring: Sequence[XY], x: float) -> float:
    """Return where a ring crosses ``x`` uphill, or its end there where it reaches not so far."""
    return _across(ring, x)[1]


def _across(ring: Sequence[XY], x: float) -> tuple[float, float]:
    left, _, right, _ = extent(ring)
    found = crossed(ring, min(max(x, left), right))
    assert found, "a ring is crossed between its ends"
    return found
