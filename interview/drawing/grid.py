"""Lines, hatches and marks set into terminal cells."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import field
from itertools import pairwise
from typing import NamedTuple

from interview.drawing.scene import XY, Drawing, Mark, Material, Path, Sprig, Stroke, inside
from interview.quantities.records import record

_UP, _RIGHT, _DOWN, _LEFT = 1, 2, 4, 8
_BOX = " ╵╶└╷│┌├╴┘─┴┐┤┬┼".translate({ord("╵"): "│", ord("╷"): "│", ord("╶"): "─", ord("╴"): "─"})
_DOUBLE = " ║═╚║║╔╠═╝═╩╗╣╦╬"
_DOTS = ((0x01, 0x08), (0x02, 0x10), (0x04, 0x20), (0x40, 0x80))


class Look(NamedTuple):
    """How a drawing is put into cells."""

    braille: bool = True
    printed: bool = False
    """Whether lines are drawn exactly and the cells only place the texts."""
    painted: bool = False
    """Whether materials are told apart by color."""


class Frame(NamedTuple):
    """Where world units fall on cells; a whole number is the middle of a cell."""

    x0: float
    y1: float
    left: float
    top: float
    across: float
    """Columns in a world unit."""
    down: float
    """Lines in a world unit."""
    columns: int
    rows: int

    def at(self, x: float, y: float) -> XY:
        """Return the column and line of a point, not rounded."""
        return self.left + (x - self.x0) * self.across, self.top + (self.y1 - y) * self.down


def nearest(number: float) -> int:
    """Return the nearest whole number, halves always up."""
    return math.floor(number + 0.5)


@record(frozen=False)
class Grid:
    """The cells of a picture."""

    columns: int
    rows: int
    look: Look
    ink: dict[tuple[int, int], str] = field(default_factory=dict)
    hatched: dict[tuple[int, int], str] = field(default_factory=dict)
    filled: dict[tuple[int, int], str] = field(default_factory=dict)
    """Textures of materials, under all else; words may stand on them."""
    shapes: dict[tuple[int, int], Path | Mark | Sprig] = field(default_factory=dict)
    """What drew the ink of a cell."""
    covered: int = 0
    """Cells of one kind of line that another kind was drawn over."""
    drawing: Path | Mark | Sprig | None = None
    """What is being drawn."""
    _owner: dict[tuple[int, int], Stroke] = field(default_factory=dict)
    _arms: dict[tuple[int, int], tuple[Stroke, int]] = field(default_factory=dict)
    _dots: dict[tuple[int, int], int] = field(default_factory=dict)

    def put(self, column: int, row: int, char: str) -> None:
        """Set the character of a cell, where it lies in the picture."""
        if 0 <= column < self.columns and 0 <= row < self.rows:
            self._set(column, row, char)
            self._arms.pop((column, row), None)
            self._dots.pop((column, row), None)

    def _set(self, column: int, row: int, char: str) -> None:
        self.ink[column, row] = char
        if self.drawing is not None:
            self.shapes[column, row] = self.drawing

    def pen_put(self, column: int, row: int, char: str, stroke: Stroke) -> None:
        """Set a cell of a line, and count it where it hides another kind; a notch is meant to."""
        old = self._owner.get((column, row), stroke)
        if old is not stroke and stroke is not Stroke.NOTCH:
            self.covered += 1
        self._owner[column, row] = stroke
        self.put(column, row, char)

    def arm(self, column: int, row: int, stroke: Stroke, arms: int) -> None:
        """Add arms of a box-drawing character; another kind of line is drawn over."""
        if not (0 <= column < self.columns and 0 <= row < self.rows):
            return
        old_stroke, old = self._arms.get((column, row), (stroke, 0))
        merged = arms | old if old_stroke is stroke else arms
        self.pen_put(column, row, _box(stroke, merged), stroke)
        self._arms[column, row] = (stroke, merged)

    def dot(self, x: int, y: int) -> None:
        """Set one dot of the two by four of a cell."""
        column, row = x // 2, y // 4
        if 0 <= column < self.columns and 0 <= row < self.rows:
            if (column, row) in self._arms:
                return
            bits = self._dots.get((column, row), 0) | _DOTS[y % 4][x % 2]
            self._set(column, row, chr(0x2800 + bits))
            self._dots[column, row] = bits


def _box(stroke: Stroke, arms: int) -> str:
    if stroke is Stroke.DASHED and arms in (5, 10, 1, 2, 4, 8):
        return "╎" if arms in (5, 1, 4) else "╌"
    return (_DOUBLE if stroke.value.double else _BOX)[arms]


def draw(drawing: Drawing, frame: Frame, look: Look) -> Grid:
    """Return the cells of all that is not a label: hatches under lines under marks."""
    grid = Grid(frame.columns, frame.rows, look)
    paths = [shape for shape in drawing.shapes if isinstance(shape, Path)]
    for path in paths:
        if path.hatch is not None and not (look.painted and path.material):
            _fill(grid.hatched, grid, frame, path, path.hatch.value)
        if path.material is not None and path.hatch is None and not look.painted:
            _texture(grid, frame, path, path.material)
    for path in paths:
        if path.stroke is not None and not (look.painted and path.border):
            grid.drawing = path
            for start, end in _sides(path):
                _segment(grid, frame.at(*start), frame.at(*end), path.stroke)
    for one in drawing.shapes:
        if isinstance(one, Mark | Sprig):
            grid.drawing = one
            column, row = frame.at(one.x, one.y)
            letter = one.symbol.value if isinstance(one, Mark) else one.letter
            char = one.char if look.painted and isinstance(one, Sprig) else letter
            if isinstance(one, Mark) or (nearest(column), nearest(row)) not in grid.ink:
                grid.put(nearest(column), nearest(row), char)
    return grid


def _texture(grid: Grid, frame: Frame, path: Path, material: Material) -> None:
    """Fill an area with its texture; where that is sparse, by a rule that never flickers."""
    texture = material.value
    cells: dict[tuple[int, int], str] = {}
    _fill(cells, grid, frame, path, texture.char)
    for (column, row), char in cells.items():
        shown = (column * 7 + row * 13) % texture.every == 0
        grid.filled[column, row] = char if shown else " "


def _sides(path: Path) -> Iterator[tuple[XY, XY]]:
    points = (*path.points, path.points[0]) if path.closed else path.points
    return pairwise(points)


def _fill(
    into: dict[tuple[int, int], str], grid: Grid, frame: Frame, path: Path, char: str
) -> None:
    corners = tuple(frame.at(*point) for point in path.points)
    left, right = min(x for x, _ in corners), max(x for x, _ in corners)
    top, bottom = min(y for _, y in corners), max(y for _, y in corners)
    for row in range(max(0, nearest(top)), min(grid.rows - 1, nearest(bottom)) + 1):
        for column in range(max(0, nearest(left)), min(grid.columns - 1, nearest(right)) + 1):
            # Off the lines by a hair: a corner on the grid would count for two cells or for none.
            if inside((column + 1e-6, row + 1e-6), corners):
                into[column, row] = char


def _segment(grid: Grid, start: XY, end: XY, stroke: Stroke) -> None:
    level, upright = abs(start[1] - end[1]) < 1e-9, abs(start[0] - end[0]) < 1e-9
    pen = stroke.value
    if grid.look.braille and (pen.curve or (not pen.stamp and not level and not upright)):
        _dotted(grid, start, end, stroke)
    elif pen.stamp:
        for column, row, _ in _cells_along(start, end):
            grid.pen_put(column, row, pen.stamp, stroke)
    elif level or upright:
        _boxed(grid, start, end, stroke)
    else:
        _slanted(grid, start, end, stroke)


def _boxed(grid: Grid, start: XY, end: XY, stroke: Stroke) -> None:
    (c0, c1), (r0, r1) = (sorted((nearest(start[axis]), nearest(end[axis]))) for axis in (0, 1))
    c0, c1 = max(c0, -1), min(c1, grid.columns)
    r0, r1 = max(r0, -1), min(r1, grid.rows)
    for column in range(c0, c1):
        grid.arm(column, r0, stroke, _RIGHT)
        grid.arm(column + 1, r0, stroke, _LEFT)
    for row in range(r0, r1):
        grid.arm(c0, row, stroke, _DOWN)
        grid.arm(c0, row + 1, stroke, _UP)


def _dotted(grid: Grid, start: XY, end: XY, stroke: Stroke) -> None:
    x0, y0 = start[0] * 2 + 0.5, start[1] * 4 + 1.5
    x1, y1 = end[0] * 2 + 0.5, end[1] * 4 + 1.5
    steps = max(1, math.ceil(max(abs(x1 - x0), abs(y1 - y0))))
    for step in range(min(steps, 20_000) + 1):
        part = step / steps
        if stroke is Stroke.DASHED and step % 4 >= 2:
            continue
        x, y = nearest(x0 + part * (x1 - x0)), nearest(y0 + part * (y1 - y0))
        grid.dot(x, y)
        if stroke.value.double:
            grid.dot(x, y + 1)


def _cells_along(start: XY, end: XY) -> Iterator[tuple[int, int, float]]:
    """Yield each cell of a segment with how far down in its line the segment runs, 0 to 1."""
    steps = max(1, math.ceil(max(abs(end[0] - start[0]), abs(end[1] - start[1]))))
    for step in range(min(steps, 20_000) + 1):
        x = start[0] + step / steps * (end[0] - start[0])
        y = start[1] + step / steps * (end[1] - start[1])
        yield nearest(x), nearest(y), y + 0.5 - math.floor(y + 0.5)


def _slanted(grid: Grid, start: XY, end: XY, stroke: Stroke) -> None:
    across, down = end[0] - start[0], end[1] - start[1]
    steep = abs(down) / max(abs(across), 1e-9)
    rising = across * down < 0
    for place, (column, row, part) in enumerate(_cells_along(start, end)):
        if stroke is Stroke.DASHED and place % 3 == 2:
            continue
        if steep < 0.4:
            char = "‾─_"[min(2, int(part * 3))]
        elif steep > 2.5:
            char = "│"
        else:
            char = "╱" if rising else "╲"
        grid.pen_put(column, row, char, stroke)
