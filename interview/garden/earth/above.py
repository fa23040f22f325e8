"""The garden seen from above, downhill toward the bottom of the page."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from interview.drawing.scale import across, scale_bar, upright
from interview.drawing.scene import (
    XY,
    Drawing,
    Key,
    Label,
    LabelSpot,
    Mark,
    Shape,
    Stroke,
    Symbol,
    line,
    rectangle,
)
from interview.garden.form.basin import Basin
from interview.garden.site.setbacks import distance_words
from interview.quantities.shown import depth_words as height_words
from interview.quantities.shown import length_words
from interview.quantities.units import Quantity, magnitude

_BEARING = {"n": 0, "ne": 45, "e": 90, "se": 135, "s": 180, "sw": 225, "w": 270, "nw": 315}
_TOWARD = {
    "n": "north", "ne": "northeast", "e": "east", "se": "southeast",
    "s": "south", "sw": "southwest", "w": "west", "nw": "northwest",
}  # fmt: skip
_WAYS = {"pipe": "by a buried pipe", "channel": "by a stone channel", "lawn": "over the lawn"}
_OUTSIDE = 0.16
"""Longest piece of the way in that is drawn, as a part of the rim's length."""


def plan_view(
    basin: Basin,
    slope_direction: str,
    notch_width: Quantity,
    spout_distance: Quantity | None = None,
    water_by: str = "channel",
    setbacks: Sequence[tuple[str, Quantity]] = (),
    metric: bool = False,
) -> Drawing:
    """Return the plan of the garden, to scale, its long side across the slope.

    ``slope_direction`` is the compass point downhill (``n`` to ``nw``) or ``flat``; ``water_by``
    is ``pipe``, ``channel`` or ``lawn``. ``setbacks`` are named distances, written beside the plan
    as no direction is known for them. Raises ValueError for another direction or way.
    """
    if slope_direction not in (*_BEARING, "flat"):
        raise ValueError("Downhill must be one of the eight compass points, or flat.")
    if water_by not in _WAYS:
        raise ValueError("The water must come by pipe, by channel or over the lawn.")
    one = _Plan(basin, slope_direction, notch_width, spout_distance, water_by, metric)
    return Drawing(
        title="PLAN of the garden, seen from above",
        description=one.words(),
        shapes=tuple(one.shapes()),
        keys=one.keys(),
        notes=one.notes(setbacks),
    )


class _Plan:
    """The plan in feet or metres, the middle of the garden at nought."""

    def __init__(
        self,
        basin: Basin,
        direction: str,
        notch: Quantity,
        spout: Quantity | None,
        water_by: str,
        metric: bool,
    ) -> None:
        self.basin, self.direction, self.water_by = basin, direction, water_by
        self.notch, self.spout, self.metric = notch, spout, metric
        self.unit = "m" if metric else "ft"

    def length(self, value: Quantity) -> str:
        return length_words(value, self.metric)

    def half(self, long: Quantity, wide: Quantity) -> XY:
        return magnitude(long, self.unit) / 2, magnitude(wide, self.unit) / 2

    def size(self, long: Quantity, wide: Quantity) -> str:
        return f"{self.length(long)} × {self.length(wide)}"

    def shapes(self) -> Iterator[Shape]:
        basin = self.basin
        floor = self.half(basin.floor_length, basin.floor_width)
        edge = self.half(basin.edge_length, basin.edge_width)
        rim = self.half(basin.rim_length, basin.rim_width)
        for (x, y), stroke in (
            (floor, Stroke.SOLID),
            (edge, Stroke.DOTTED),
            (rim, Stroke.HEAVY),
        ):
            yield rectangle(-x, -y, x, y, stroke)
        step = max(0.05 * rim[0] * 2, 0.08 * rim[1] * 2)
        yield from self._notch(rim)
        yield from self._way_in(edge, rim)
        yield from self._sizes(floor, rim, step)
        room = (-floor[0], -floor[1], floor[0], floor[1])
        yield Label("level floor", 0, 0, within=room)
        yield from self._directions(rim, step)
        yield from scale_bar(-rim[0], -rim[1] - 5.8 * step, rim[0] * 2, self.unit)

    def _notch(self, rim: XY) -> Iterator[Shape]:
        wide = min(magnitude(self.notch, self.unit), 2 * rim[0])
        # Toward one end, so that water crosses the garden before it leaves.
        middle = min(rim[0] / 2, rim[0] - wide / 2)
        yield line(middle - wide / 2, -rim[1], middle + wide / 2, -rim[1], Stroke.NOTCH)
        text = f"overflow notch {self._notch_words()}"
        yield Label(text, middle, -rim[1], LabelSpot.BELOW, arrow=(0.0, -1.0))

    def _notch_words(self) -> str:
        if self.metric:
            return f"{height_words(self.notch, True)} wide"
        return f"{self.length(self.notch)} wide"

    def _way_in(self, edge: XY, rim: XY) -> Iterator[Shape]:
        far = self._drawn_way()
        if self.spout is not None:
            far = min(far, magnitude(self.spout, self.unit))
        yield line(0, edge[1], 0, rim[1] + far, Stroke.DASHED)
        yield Mark(0, rim[1], Symbol.INLET)
        text = f"water in {_WAYS[self.water_by]}"
        yield Label(text, 0, rim[1] + far, LabelSpot.RIGHT)
        if self.spout is not None:
            below = f"{self.length(self.spout)} from the downspout"
            yield Label(below, 0, rim[1] + far, LabelSpot.RIGHT, shift=(0, 1))

    def _drawn_way(self) -> float:
        return _OUTSIDE * magnitude(self.basin.rim_length, self.unit)

    def _sizes(self, floor: XY, rim: XY, step: float) -> Iterator[Shape]:
        basin = self.basin
        yield from across(
            -rim[0], rim[0], -rim[1] - 2.8 * step, f" rim {self.length(basin.rim_length)} "
        )
        yield from across(
            -floor[0], floor[0], -rim[1] - 4.3 * step, f" floor {self.length(basin.floor_length)} "
        )
        left, right = -rim[0] - 0.8 * step, rim[0] + 0.8 * step
        yield from upright(
            left, -rim[1], rim[1], f"rim {self.length(basin.rim_width)}", LabelSpot.LEFT
        )
        yield from upright(
            right, -floor[1], floor[1], f"floor {self.length(basin.floor_width)}", LabelSpot.RIGHT
        )

    def _directions(self, rim: XY, step: float) -> Iterator[Shape]:
        if self.direction == "flat":
            return
        top = rim[1] + _OUTSIDE * 2 * rim[0]
        turn = math.radians(180 - _BEARING[self.direction])
        north = (math.sin(turn), math.cos(turn))
        yield Label("north", -rim[0], top, LabelSpot.START, arrow=north)
        yield Label("downhill", -rim[0], top, LabelSpot.START, shift=(0, 1), arrow=(0.0, -1.0))

    def keys(self) -> tuple[Key, ...]:
        basin = self.basin
        whole = self.spout is not None and magnitude(self.spout, self.unit) <= self._drawn_way()
        return (
            Key(Stroke.HEAVY, f"rim {self.size(basin.rim_length, basin.rim_width)}"),
            Key(Stroke.DOTTED, f"full pond {self.size(basin.edge_length, basin.edge_width)}"),
            Key(Stroke.SOLID, f"level floor {self.size(basin.floor_length, basin.floor_width)}"),
            Key(Stroke.NOTCH, "overflow notch"),
            Key(Symbol.INLET, "inlet"),
            Key(Stroke.DASHED, "way in" if whole else "way in, cut short here"),
        )

    def notes(self, setbacks: Sequence[tuple[str, Quantity]]) -> tuple[str, ...]:
        notes = []
        if self.direction == "flat":
            notes.append("The ground is level: put the notch where the overflow may run.")
        else:
            notes.append(f"Downhill is to the {_TOWARD[self.direction]}.")
        if setbacks:
            told = "; ".join(
                f"{words} {distance_words(value, self.metric)}" for words, value in setbacks
            )
            notes.append(f"Distances from the garden: {told}.")
        return tuple(notes)

    def words(self) -> str:
        basin = self.basin
        down = _TOWARD.get(self.direction)
        way = f" Downhill is to the {down}, toward the bottom of the page." if down else ""
        return (
            f"Three rectangles, one in the other: the rim {self.size(*self._rim)}, the full pond "
            f"{self.size(basin.edge_length, basin.edge_width)} and the level floor "
            f"{self.size(basin.floor_length, basin.floor_width)}.{way} The water comes in "
            f"{_WAYS[self.water_by]} in the middle of the uphill side. The overflow notch, "
            f"{self._notch_words()}, is in the downhill side."
        )

    @property
    def _rim(self) -> tuple[Quantity, Quantity]:
        return self.basin.rim_length, self.basin.rim_width
