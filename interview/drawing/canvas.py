"""Drawings written as terminal cells or as SVG; both come from one layout."""

from __future__ import annotations

from collections.abc import Sequence

from interview.drawing.grid import Look
from interview.drawing.layout import SAMPLE, Layout, LegendEntry, Text, lay_out
from interview.drawing.scene import (
    Drawing,
    Hatch,
    Stroke,
    Symbol,
)
from interview.drawing.words import in_cells


def cells(drawing: Drawing, columns: int, rows: int, braille: bool = True) -> list[str]:
    """Return ``drawing`` as lines of at most ``columns`` (12 or more) characters.

    A proportional drawing keeps its proportions, a cell being twice as tall as wide. Title, picture
    and legend together take at most ``rows`` lines, unless that would leave the picture under six:
    then there are more. A label without room is numbered and told in the legend. No meaning is in
    colour. ``braille`` dots, smoother, draw slanted lines where they may.
    """
    layout = lay_out(drawing, columns, rows, Look(braille))
    lines = [*layout.title, *_picture(layout), *_legend(layout)]
    return [line.rstrip() for line in lines]


def picture_cells(drawing: Drawing, columns: int, rows: int) -> list[str]:
    """Return the picture that ``cells`` makes, without its title and what is told under it."""
    return [line.rstrip() for line in _picture(lay_out(drawing, columns, rows, Look(True)))]


def _picture(layout: Layout) -> Sequence[str]:
    grid = layout.grid
    rows = [[" "] * grid.columns for _ in range(grid.rows)]
    for ink in (grid.filled, grid.hatched, grid.ink):
        for (column, row), char in ink.items():
            rows[row][column] = char
    for text in layout.texts:
        for column in (text.column - 1, text.column + text.columns):
            # A word on a texture stands apart from it by a blank.
            if (column, text.row) in grid.filled and (column, text.row) not in grid.ink:
                rows[text.row][column] = " "
        _write(rows[text.row], text)
    return ["".join(row) for row in rows]


def _write(row: list[str], text: Text) -> None:
    for place, char in enumerate(in_cells(text.text)):
        row[text.column + place] = char


def _legend(layout: Layout) -> list[str]:
    lines = [""] * layout.legend_lines
    columns = [0] * layout.legend_lines
    for entry in layout.legend:
        words = f"{_sample(entry)}{entry.text}"
        lines[entry.line] += " " * (entry.column - columns[entry.line]) + words
        columns[entry.line] = entry.column + len(in_cells(words))
    return lines


def _sample(entry: LegendEntry) -> str:
    if entry.key is None:
        return ""
    match entry.key.sample:
        case Stroke() as stroke:
            return stroke_sample(stroke) + " "
        case Hatch() | Symbol() as sign:
            char = sign.value
            return (char * SAMPLE if isinstance(sign, Hatch) else f" {char} ") + " "


def stroke_sample(stroke: Stroke) -> str:
    """Return a line as it stands in a legend."""
    pen = stroke.value
    if pen.curve:
        return "⠤" * SAMPLE
    if pen.stamp:
        return pen.stamp * SAMPLE
    if stroke is Stroke.DASHED:
        return "╌" * SAMPLE
    return ("═" if pen.double else "─") * SAMPLE
