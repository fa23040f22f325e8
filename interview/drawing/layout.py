"""A drawing fitted to a number of cells, its labels in free room or in a numbered legend."""

from __future__ import annotations

import math
from typing import NamedTuple, TypeAlias

from interview.drawing.grid import Frame, Grid, Look, draw, nearest
from interview.drawing.scene import (
    XY,
    Drawing,
    Hatch,
    Key,
    Label,
    LabelSpot,
    Path,
    Sprig,
    Stroke,
    inside,
)
from interview.drawing.words import arrow_sign, clean, column_width, cut_to, wrapped

Box: TypeAlias = tuple[float, float, float, float]
"""Left, top, right and bottom, in columns and lines."""
LEAST_COLUMNS, LEAST_ROWS = 12, 6
"""Cells kept for the picture whatever the legend needs."""
SAMPLE = 3
"""Columns of a sample in the legend."""
_FAR, _HIGH = 8, 1
"""How far a label may be moved, columns and lines; farther, it might be read as another's."""
_FAR_WITHIN, _HIGH_WITHIN = 40, 8
"""The same for a label that stays in its own box."""
_HIDDEN = 6
"""Cells of one line under another from which it is told; fewer is a crossing."""
_TOO_NEAR = "Lines too near to show apart are drawn as one."
_MARGIN = 0.32
"""Largest part of the columns or lines kept for labels on one side."""


class Text(NamedTuple):
    """A text set at a cell of the picture."""

    column: int
    row: int
    text: str
    label: Label
    off: XY = (0.0, 0.0)
    """How far its true place lies from the cell, in cells; for print."""

    @property
    def columns(self) -> int:
        """Columns it takes."""
        return column_width(self.text)


class LegendEntry(NamedTuple):
    """One entry of the legend, at a column of one of its lines."""

    column: int
    line: int
    key: Key | None
    text: str


class Layout(NamedTuple):
    """A drawing fitted to cells, ready to be written as text or as SVG."""

    title: tuple[str, ...]
    frame: Frame
    grid: Grid
    texts: tuple[Text, ...]
    legend: tuple[LegendEntry, ...]

    @property
    def legend_lines(self) -> int:
        """Lines of the legend."""
        return max((entry.line + 1 for entry in self.legend), default=0)


def label_text(label: Label) -> str:
    """Return what is written for a label, its arrow before it."""
    text = clean(label.text)
    if label.over_line and text:
        return f" {text} "
    if label.arrow is None:
        return text
    return f"{arrow_sign(*label.arrow)} {text}".rstrip()


def lay_out(drawing: Drawing, columns: int, rows: int, look: Look) -> Layout:
    """Fit ``drawing`` into ``columns`` by ``rows``, title and legend included where they can be.

    The picture keeps ``LEAST_ROWS`` lines, or as many as there are, even when title and legend then
    need more than ``rows``.
    """
    drawing = drawing.sized(small=False) if drawing.detail else drawing
    columns = max(columns, LEAST_COLUMNS)
    title = tuple(wrapped(clean(drawing.title), columns)) if drawing.title else ()
    overflow: list[str] = []
    # A label that finds no room makes the legend longer and the picture lower, where another may
    # find none: a few rounds settle it, and what is left over stands in the legend.
    for _ in range(4):
        legend = _legend(drawing, overflow, columns, look)
        lines = max((entry.line + 1 for entry in legend), default=0)
        room = max(min(LEAST_ROWS, rows), rows - len(title) - lines)
        frame = _fit(drawing, columns, drawing.lines or room, look)
        grid = draw(drawing, frame, look)
        texts, moved = _LabelPlacing(drawing, frame, grid, look).all()
        if grid.covered >= _HIDDEN and not (look.printed or look.painted):
            moved.append(_TOO_NEAR)
        if len(moved) <= len(overflow):
            break
        overflow = moved
    legend = _legend(drawing, moved, columns, look)
    return Layout(title, frame, grid, tuple(texts), legend)


def _fit(drawing: Drawing, columns: int, rows: int, look: Look) -> Frame:
    x0, y0, x1, y1 = drawing.bounds
    wide, high = x1 - x0, y1 - y0
    left = right = top = bottom = 0
    frame = Frame(x0, y1, 0.0, 0.0, 1.0, 0.5, columns, rows)
    # The room for labels hangs on the scale, and the scale on the room: it settles in two or three.
    for _ in range(8):
        across = max(columns - 1 - left - right, 1) / max(wide, 1e-9)
        down = max(rows - 1 - top - bottom, 1) / max(high, 1e-9)
        if drawing.proportional:
            across = min(across, 2 * down)
            down = across / 2
        elif drawing.steps is not None:
            across, down = (
                max(1, math.floor(step * cells)) / step
                for step, cells in zip(drawing.steps, (across, down), strict=True)
            )
        if drawing.lines is not None:
            down, top, bottom = 1.0, 0, 0
        last = nearest(high * down)
        used = min(rows, top + last + 1 + bottom)
        frame = Frame(x0, y1, left, top, across, down, columns, used)
        need = _needs(drawing, frame, left + wide * across, top + last, look)
        side, story = int(columns * _MARGIN), int(rows * _MARGIN)
        wanted = (
            min(side, max(left, left + need[0])),
            min(side, max(right, need[1])),
            min(story, max(top, top + need[2])),
            min(story, max(bottom, need[3])),
        )
        if wanted == (left, right, top, bottom):
            break
        left, right, top, bottom = wanted
    if look.painted and drawing.proportional:
        spare = columns - 1 - right - (frame.left + wide * frame.across)
        frame = frame._replace(left=frame.left + max(0, int(spare / 2)))
    return frame


def _needs(
    drawing: Drawing, frame: Frame, right: float, bottom: int, look: Look
) -> tuple[int, int, int, int]:
    """Columns and lines that labels in their own places need beyond what is drawn."""
    need = [0, 0, 0, 0]
    for label in drawing.labels:
        size = column_width(label_text(label))
        column, row = _own_place(label, frame, size)
        blank = int(look.painted and size > 1)
        need[0] = max(need[0], blank - column)
        need[1] = max(need[1], column + size - 1 + blank - nearest(right))
        need[2] = max(need[2], -row)
        need[3] = max(need[3], row - bottom)
    return need[0], need[1], need[2], need[3]


def _own_place(label: Label, frame: Frame, size: int) -> tuple[int, int]:
    x, y = frame.at(label.x, label.y)
    column, row = nearest(x), nearest(y)
    centered = nearest(x - (size - 1) / 2)
    if _points(label):
        centered = column
    column, row = {
        LabelSpot.CENTER: (centered, row),
        LabelSpot.LEFT: (column - size - 1, row),
        LabelSpot.RIGHT: (column + 2, row),
        LabelSpot.ABOVE: (centered, row - 1),
        LabelSpot.BELOW: (centered, row + 1),
        LabelSpot.START: (column, row),
    }[label.place]
    return column + label.shift[0], row + label.shift[1]


def _points(label: Label) -> bool:
    """Tell whether the arrow before a label is to stand at its point."""
    return label.arrow is not None and label.place in (LabelSpot.ABOVE, LabelSpot.BELOW)


def _shifts(far: int, high: int) -> list[tuple[int, int]]:
    """Every move of a label, the smallest first."""
    moves = [(dx, dy) for dx in range(-far, far + 1) for dy in range(-high, high + 1)]
    return sorted(moves, key=lambda move: (abs(move[0]) * 0.5 + abs(move[1]) * 1.5, move))


_SHIFTS, _SHIFTS_WITHIN = _shifts(_FAR, _HIGH), _shifts(_FAR_WITHIN, _HIGH_WITHIN)
_SHIFTS_POINTING = _shifts(1, _HIGH)
_SHIFTS_STACKED = _shifts(0, 2 * _HIGH_WITHIN)


class _LabelPlacing:
    """Gives each label its cells, in order; what finds none goes to the legend."""

    def __init__(self, drawing: Drawing, frame: Frame, grid: Grid, look: Look) -> None:
        self.labels = drawing.labels
        self.frame, self.grid, self.look = frame, grid, look
        self.taken: set[tuple[int, int]] = set()
        self.texts: list[Text] = []

    def all(self) -> tuple[list[Text], list[str]]:
        moved: list[str] = []
        for label in self.labels:
            text = label_text(label)
            if not text or self._near(label, text) or label.optional:
                continue
            brief = label_text(label._replace(text=label.brief.strip()))
            if brief.strip() and self.look.painted and self._near(label, brief):
                continue
            marker = label.marker or _letter(sum(not one.startswith("[") for one in moved))
            marked = self._near(label, marker) or self._anywhere(label, marker)
            words = text.strip().removeprefix(marker).strip()
            moved.append(f"{marker} {words}" if marked else f"(no room to mark it) {words}")
        return [self._exact(text) for text in self.texts], moved

    def _exact(self, text: Text) -> Text:
        """Note how far off the cell the text's own place is, where nothing stands in the way."""
        x, y = self.frame.at(text.label.x, text.label.y)
        off = (x - nearest(x), y - nearest(y))
        spots = {
            (column, text.row + (1 if off[1] > 0 else -1))
            for column in range(text.column - 1, text.column + text.columns + 1)
        }
        if spots & self.taken or not 0 <= text.row + off[1] <= self.grid.rows - 1:
            return text
        return text._replace(off=off)

    def _near(self, label: Label, text: str) -> bool:
        size = column_width(text)
        column, row = _own_place(label, self.frame, size)
        shifts = _SHIFTS if label.within is None else _SHIFTS_WITHIN
        if _points(label):
            shifts = _SHIFTS_POINTING
        if label.stacked:
            shifts = _SHIFTS_STACKED
        corners = tuple(self.frame.at(*corner) for corner in label.outline)
        box = self._box(label)
        for dx, dy in shifts[:1] if label.optional and not label.stacked else shifts:
            spot = (column + dx, row + dy)
            if (
                (box is None or _in_box(box, *spot, size))
                and self._free(*spot, size, label.over_line, label.on_hatch)
                and _in_outline(corners, *spot, size)
            ):
                self._set(*spot, text, label)
                return True
        return False

    def _anywhere(self, label: Label, marker: str) -> bool:
        """Set a marker as near as there is room, if need be on a line but never on a text."""
        size = len(marker)
        column, row = _own_place(label, self.frame, size)
        spots = [(x, y) for x in range(self.grid.columns - size + 1) for y in range(self.grid.rows)]
        spots.sort(key=lambda spot: (abs(spot[0] - column) + 2 * abs(spot[1] - row), spot))
        for over in (False, True):
            for spot in spots[: 60 if not over else len(spots)]:
                if self._free(*spot, size, over, label.on_hatch, any_hatch=over):
                    self._set(*spot, marker, label)
                    return True
        return False

    def _free(
        self,
        column: int,
        row: int,
        size: int,
        over_line: bool,
        on_hatch: Hatch | None,
        any_hatch: bool = False,
    ) -> bool:
        if column < 0 or row < 0 or column + size > self.grid.columns or row >= self.grid.rows:
            return False
        # Painted, words take a blank at either end themselves.
        apart = 2 if self.look.painted and size > 1 else 1
        if any((x, row) in self.taken for x in range(column - apart, column + size + apart)):
            return False
        spots = [(x, row) for x in range(column, column + size)]
        allowed = {None, on_hatch and on_hatch.value}
        if not any_hatch and any(self.grid.hatched.get(spot) not in allowed for spot in spots):
            return False
        # A word may take the place of a plant: there are others of its kind beside it.
        lines = (spot for spot in spots if spot in self.grid.ink)
        return over_line or all(isinstance(self.grid.shapes.get(spot), Sprig) for spot in lines)

    def _box(self, label: Label) -> Box | None:
        """Return the columns and lines that a label may not leave."""
        if label.within is None:
            return None
        left, bottom, right, top = label.within
        x0, y1 = self.frame.at(left, bottom)
        x1, y0 = self.frame.at(right, top)
        return x0 - 0.5, y0 - 0.5, x1 + 0.5, y1 + 0.5

    def _set(self, column: int, row: int, text: str, label: Label) -> None:
        size = column_width(text)
        self.taken |= {(x, row) for x in range(column, column + size)}
        self.texts.append(Text(column, row, text, label))


def _in_box(box: Box, column: int, row: int, size: int) -> bool:
    return box[0] <= column and column + size - 1 <= box[2] and box[1] <= row <= box[3]


def _in_outline(corners: tuple[XY, ...], column: int, row: int, size: int) -> bool:
    ends = (column - 0.4, column + size - 0.6)
    spots = [(x, y) for x in ends for y in (row - 0.4, row + 0.4)]
    return not corners or all(inside(spot, corners) for spot in spots)


def _letter(place: int) -> str:
    """Return (a), (b) and so on; after (z), (a2)."""
    turn, letter = divmod(place, 26)
    return f"({chr(ord('a') + letter)}{turn + 1 if turn else ''})"


def _legend(
    drawing: Drawing, moved: list[str], columns: int, look: Look
) -> tuple[LegendEntry, ...]:
    """Set keys side by side as far as they fit, then what was numbered, then the notes."""
    entries: list[LegendEntry] = []
    line, column = -1, columns
    lines = {
        path.stroke
        for path in drawing.shapes
        if isinstance(path, Path) and not (look.painted and path.border)
    }
    for key in drawing.keys:
        of_line = isinstance(key.sample, Stroke) and key.material is None
        if look.painted and of_line and key.sample not in lines:
            continue
        text = clean(key.words)
        size = SAMPLE + 1 + column_width(text)
        if column + size > columns:
            line, column = line + 1, 0
        head, rest = cut_to(text, columns - column - SAMPLE - 1)
        entries.append(LegendEntry(column, line, key, head))
        while rest:
            head, rest = cut_to(rest, columns - SAMPLE - 1)
            line += 1
            entries.append(LegendEntry(SAMPLE + 1, line, None, head))
            size = SAMPLE + 1 + column_width(head)
            column = 0
        column += size + 2
    for note in [*moved, *drawing.notes]:
        for text in wrapped(clean(note), columns, 2):
            line += 1
            indent = len(text) - len(text.lstrip())
            entries.append(LegendEntry(indent, line, None, text.lstrip()))
    return tuple(entries)
