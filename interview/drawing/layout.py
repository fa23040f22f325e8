"""A drawing fitted to a number of cells, its labels in free room or in a numbered legend."""

from __future__ import annotations

import math
from dataclasses import dataclass

from interview.drawing.grid import Frame, Grid, Look, draw, nearest
from interview.drawing.scene import XY, Drawing, Key, Label, Place
from interview.drawing.words import clean, column_width, cut_to, wrapped

LEAST_COLUMNS, LEAST_ROWS = 12, 6
"""Cells kept for the picture whatever the legend needs."""
SAMPLE = 3
"""Columns of a sample in the legend."""
_FAR, _HIGH = 12, 2
"""How far a label may be moved, columns and lines."""
_MARGIN = 0.32
"""Largest part of the columns or lines kept for labels on one side."""
_ARROWS = {
    (0, 1): ("↑", "^"), (1, 1): ("↗", "^>"), (1, 0): ("→", ">"), (1, -1): ("↘", "v>"),
    (0, -1): ("↓", "v"), (-1, -1): ("↙", "<v"), (-1, 0): ("←", "<"), (-1, 1): ("↖", "<^"),
}  # fmt: skip


@dataclass(frozen=True)
class Text:
    """A text set at a cell of the picture."""

    column: int
    row: int
    text: str
    label: Label | None = None

    @property
    def columns(self) -> int:
        """Columns it takes."""
        return column_width(self.text)


@dataclass(frozen=True)
class LegendEntry:
    """One entry of the legend, at a column of one of its lines."""

    column: int
    line: int
    key: Key | None
    text: str


@dataclass(frozen=True)
class Layout:
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


def label_text(label: Label, ascii_only: bool) -> str:
    """Return what is written for a label, its arrow before it."""
    text = clean(label.text, ascii_only)
    if label.arrow is None:
        return text
    return f"{_ARROWS[_eighth(label.arrow)][ascii_only]} {text}".rstrip()


def _eighth(arrow: XY) -> tuple[int, int]:
    turn = nearest(math.atan2(arrow[1], arrow[0]) / (math.pi / 4))
    return nearest(math.cos(turn * math.pi / 4)), nearest(math.sin(turn * math.pi / 4))


def lay_out(drawing: Drawing, columns: int, rows: int, look: Look) -> Layout:
    """Fit ``drawing`` into ``columns`` by ``rows``, title and legend included where they can be.

    The picture keeps ``LEAST_ROWS`` lines even when title and legend then need more than ``rows``.
    """
    columns = max(columns, LEAST_COLUMNS)
    title = tuple(wrapped(clean(drawing.title, look.ascii_only), columns))
    overflow: list[str] = []
    for _ in range(4):
        legend = _legend(drawing, overflow, columns, look)
        lines = max((entry.line + 1 for entry in legend), default=0)
        room = max(LEAST_ROWS, rows - len(title) - lines)
        frame = _fit(drawing, columns, drawing.lines or room, look)
        grid = draw(drawing, frame, look)
        texts, moved = _Placing(drawing, frame, grid, look).all()
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
    for _ in range(8):
        across = max(columns - 1 - left - right, 1) / max(wide, 1e-9)
        down = max(rows - 1 - top - bottom, 1) / max(high, 1e-9)
        if drawing.proportional:
            across = min(across, 2 * down)
            down = across / 2
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
    return frame


def _needs(
    drawing: Drawing, frame: Frame, right: float, bottom: int, look: Look
) -> tuple[int, int, int, int]:
    """Columns and lines that labels in their own places need beyond what is drawn."""
    need = [0, 0, 0, 0]
    for label in drawing.labels:
        size = column_width(label_text(label, look.ascii_only))
        column, row = _own_place(label, frame, size)
        need[0] = max(need[0], -column)
        need[1] = max(need[1], column + size - 1 - nearest(right))
        need[2] = max(need[2], -row)
        need[3] = max(need[3], row - bottom)
    return need[0], need[1], need[2], need[3]


def _own_place(label: Label, frame: Frame, size: int) -> tuple[int, int]:
    x, y = frame.at(label.x, label.y)
    column, row = nearest(x), nearest(y)
    centered = nearest(x - (size - 1) / 2)
    column, row = {
        Place.CENTER: (centered, row),
        Place.LEFT: (column - size - 1, row),
        Place.RIGHT: (column + 2, row),
        Place.ABOVE: (centered, row - 1),
        Place.BELOW: (centered, row + 1),
        Place.START: (column, row),
    }[label.place]
    return column + label.shift[0], row + label.shift[1]


_SHIFTS = sorted(
    ((dx, dy) for dx in range(-_FAR, _FAR + 1) for dy in range(-_HIGH, _HIGH + 1)),
    key=lambda shift: (abs(shift[0]) * 0.5 + abs(shift[1]) * 1.5, shift),
)


class _Placing:
    """Gives each label its cells, in order; what finds none is numbered."""

    def __init__(self, drawing: Drawing, frame: Frame, grid: Grid, look: Look) -> None:
        self.labels = drawing.labels
        self.frame, self.grid, self.look = frame, grid, look
        self.taken: set[tuple[int, int]] = set()
        self.texts: list[Text] = []

    def all(self) -> tuple[list[Text], list[str]]:
        moved: list[str] = []
        for label in self.labels:
            text = label_text(label, self.look.ascii_only)
            if not text or self._near(label, text) or label.optional:
                continue
            number = f"[{len(moved) + 1}]"
            marked = self._near(label, number) or self._anywhere(label, number)
            moved.append(f"{number} {text}" if marked else f"{number} (no room to mark it) {text}")
        return self.texts, moved

    def _near(self, label: Label, text: str) -> bool:
        size = column_width(text)
        column, row = _own_place(label, self.frame, size)
        for dx, dy in _SHIFTS[:1] if label.optional else _SHIFTS:
            spot = (column + dx, row + dy)
            if self._free(*spot, size, label.over_line) and self._within(label, *spot, size):
                self._set(*spot, text, label)
                return True
        return False

    def _anywhere(self, label: Label, number: str) -> bool:
        """Set a number as near as there is room, if need be on a line but never on a text."""
        size = len(number)
        column, row = _own_place(label, self.frame, size)
        spots = [
            (x, y) for x in range(self.grid.columns - size + 1) for y in range(self.grid.rows)
        ]
        spots.sort(key=lambda spot: (abs(spot[0] - column) + 2 * abs(spot[1] - row), spot))
        for over in (False, True):
            for spot in spots[: 60 if not over else len(spots)]:
                if self._free(*spot, size, over):
                    self._set(*spot, number, label)
                    return True
        return False

    def _free(self, column: int, row: int, size: int, over_line: bool) -> bool:
        if column < 0 or row < 0 or column + size > self.grid.columns or row >= self.grid.rows:
            return False
        if any((x, row) in self.taken for x in range(column - 1, column + size + 1)):
            return False
        return over_line or not any((x, row) in self.grid.ink for x in range(column, column + size))

    def _within(self, label: Label, column: int, row: int, size: int) -> bool:
        if label.within is None:
            return True
        left, bottom, right, top = label.within
        x0, y1 = self.frame.at(left, bottom)
        x1, y0 = self.frame.at(right, top)
        return x0 - 0.5 <= column and column + size - 1 <= x1 + 0.5 and y0 <= row <= y1

    def _set(self, column: int, row: int, text: str, label: Label) -> None:
        size = column_width(text)
        self.taken |= {(x, row) for x in range(column, column + size)}
        self.texts.append(Text(column, row, text, label))


def _legend(
    drawing: Drawing, moved: list[str], columns: int, look: Look
) -> tuple[LegendEntry, ...]:
    """Set keys side by side as far as they fit, then what was numbered, then the notes."""
    entries: list[LegendEntry] = []
    line, column = -1, columns
    for key in drawing.keys:
        text = clean(key.words, look.ascii_only)
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
        for text in wrapped(clean(note, look.ascii_only), columns, 2):
            line += 1
            indent = len(text) - len(text.lstrip())
            entries.append(LegendEntry(indent, line, None, text.lstrip()))
    return tuple(entries)
