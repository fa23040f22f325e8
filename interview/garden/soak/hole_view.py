"""The test hole cut through, with its water and what was read off it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from interview.drawing.scene import (
    Drawing,
    Ink,
    Label,
    LabelSpot,
    Mark,
    Material,
    Path,
    Shape,
    Stroke,
    Symbol,
    box,
    filled,
)
from interview.quantities.shown import depth_words
from interview.quantities.units import Quantity, magnitude, quantity

_USUAL_IN = (14.0, 8.0)
"""Depth and width of the hole that is drawn, dashed, while none is measured."""
_ABOVE, _BELOW, _SIDE = 0.3, 0.12, 1.3
"""Sky over the lawn, soil under the hole and ground beside it, as parts of its depth or width."""
_GRASS = 0.07
_FEW = 4
"""Levels told on a small picture, the last ones."""
_EIGHTHS = 8
"""Steps in a row of cells that a level is drawn by."""


def finest_step(depth: Quantity, rows: int) -> Quantity:
    """Return the height, a length, that is an eighth of a row of a picture of so many rows."""
    high = (1 + _ABOVE + _BELOW) * magnitude(depth, "in")
    return quantity(high / max(1, rows - 1) / _EIGHTHS, "in")


class Level(NamedTuple):
    """Where the water stood."""

    left: Quantity
    """Height of the water over the bottom."""
    words: str
    """The same as it was read."""
    when: str
    """The time in words."""
    estimated: bool = False
    """Whether it is worked out for now and not read."""


def hole_view(
    depth: Quantity | None,
    width: Quantity | None,
    levels: Sequence[Level] = (),
    metric: bool = False,
) -> Drawing:
    """Return the hole with the water of the last of ``levels``, each read one marked.

    ``depth`` and ``width`` of the hole; it is drawn dashed while they are not known. Heights are to
    scale with each other, and so are widths.
    """
    one = _Hole(depth, width, levels, metric)
    return Drawing(
        title="THE TEST HOLE, cut through",
        description=one.words(),
        shapes=tuple(one.shapes()),
        proportional=False,
        ground=Material.SKY,
    )


class _Hole:
    """The hole in inches, its bottom left at nought."""

    def __init__(
        self,
        depth: Quantity | None,
        width: Quantity | None,
        levels: Sequence[Level],
        metric: bool,
    ) -> None:
        self.known = depth is not None and width is not None
        self.depth = _USUAL_IN[0] if depth is None else magnitude(depth, "in")
        self.width = _USUAL_IN[1] if width is None else magnitude(width, "in")
        self.levels, self.metric = levels, metric
        self.measured = depth

    def shapes(self) -> Iterator[Shape]:
        deep, wide = self.depth, self.width
        left, right = -_SIDE * wide, (1 + _SIDE) * wide
        low, high, blades = -_BELOW * deep, (1 + _ABOVE) * deep, (1 + _GRASS) * deep
        yield filled(box(left, low, right, deep), Material.SOIL)
        for start, end in ((left, 0.0), (wide, right)):
            yield filled(box(start, deep, end, blades), Material.GRASS)
        yield filled(box(0.0, 0.0, wide, deep), Material.HOLE)
        stroke = Stroke.SOLID if self.known else Stroke.DASHED
        walls = ((left, deep), (0.0, deep), (0.0, 0.0), (wide, 0.0), (wide, deep), (right, deep))
        yield Path(walls, stroke, border=self.known)
        yield Path(((left, high), (right, high)), None)
        water = min(self._height(self.levels[-1]), deep) if self.levels else 0.0
        if water > 0:
            yield filled(box(0.0, 0.0, wide, water), Material.WATER)
            yield Path(((0.0, water), (wide, water)), Stroke.WATER, border=True)
        if self.levels:
            stick = ((wide / 2, _BELOW * deep), (wide / 2, (1 + _ABOVE / 2) * deep))
            yield Path(stick, Stroke.SOLID, ink=Ink.DUE)
        if self.measured is not None:
            text = f"{depth_words(self.measured, self.metric)} deep"
        else:
            text = "not measured yet"
        yield Label(text, wide / 2, high, LabelSpot.CENTER, ink=Ink.MUTED)
        yield from self._readings()

    def _readings(self) -> Iterator[Shape]:
        """Yield a mark for each level, its time at the left and its depth at the right.

        From the lowest up: those that lie too near are pushed up to a row each, in their order.
        """
        last = len(self.levels) - _FEW
        for level in self.levels:
            if not level.estimated:
                yield Mark(self.width / 2, self._height(level), Symbol.TICK, Ink.DUE)
        for place, level in reversed(list(enumerate(self.levels))):
            y, ink = self._height(level), Ink.WATER if level.estimated else Ink.TEXT
            brief = "" if place >= last else " "
            when, left = ("▸", "◂ ≈") if level.estimated else ("┤", "├")
            side = _SIDE * self.width
            yield Label(
                f"{level.when} {when}",
                0.0,
                y,
                LabelSpot.LEFT,
                shift=(1, 0),
                within=(-side, y, 0.0, (1 + _ABOVE) * self.depth),
                optional=True,
                ink=ink,
                stacked=True,
                brief=brief,
            )
            yield Label(
                f"{left} {level.words}",
                self.width,
                y,
                LabelSpot.RIGHT,
                shift=(-1, 0),
                within=(self.width, y, self.width + side, (1 + _ABOVE) * self.depth),
                optional=True,
                ink=ink,
                stacked=True,
                brief=brief,
            )

    def _height(self, level: Level) -> float:
        return max(0.0, magnitude(level.left, "in"))

    def words(self) -> str:
        if not self.levels:
            return "The test hole, without water so far."
        said = "; ".join(map(_said, self.levels))
        return f"The test hole with the water left in it: {said}."


def _said(level: Level) -> str:
    return f"{level.when} {'about ' if level.estimated else ''}{level.words}"
