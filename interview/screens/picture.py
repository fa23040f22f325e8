"""A drawing that fits itself to the room it is given, painted where the terminal has colors."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import replace
from itertools import groupby
from typing import Any, TypeAlias

from rich.segment import Segment
from rich.style import Style
from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.strip import Strip

from interview.drawing.canvas import cells, picture_cells
from interview.drawing.grid import Look
from interview.drawing.layout import lay_out
from interview.drawing.paint import SMALL, Cell, Row, paint
from interview.drawing.scene import Drawing, Ink, Label, Material, Path, Shape
from interview.drawing.words import column_width, in_cells
from interview.screens.materials import style_of
from interview.screens.outside import seen
from interview.screens.palette import Palette
from interview.screens.strips import Strips
from interview.screens.themes import OF

LEAST = 12
"""Columns under which nothing is drawn, and lines a drawing always gets."""


TINY = (36, 10)
"""Columns and rows under which a picture has no words."""


class Drawn(Strips):
    """As large as the rows it shows."""

    DEFAULT_CSS = "Drawn { width: auto; height: auto; }"

    def set_strips(self, strips: list[Strip]) -> None:
        """Show these rows."""
        if self.keep(strips):
            self.styles.height = max(1, len(strips))
            self.styles.width = max((strip.cell_length for strip in strips), default=1)


Made: TypeAlias = Callable[[int, int, Palette | None], list[Strip]]
"""Makes rows for so many columns, a window of so many rows, and a palette."""
Part: TypeAlias = Drawing | str | Made


class Picture(VerticalScroll):
    """Drawings and sentences one under the other, drawn anew whenever the room changes."""

    least = LEAST
    """Lines that a drawing gets at least."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._parts: tuple[Part, ...] = ()
        self._fitted: object = None

    def compose(self) -> ComposeResult:
        """Yield the one text that everything is drawn into."""
        yield Drawn(classes="drawn")

    def on_mount(self) -> None:
        """Paint anew in other colors when these change."""
        self.app.theme_changed_signal.subscribe(self, lambda _: self._draw())

    def show(self, *parts: Part) -> None:
        """Show ``parts``; a line of text that begins with a blank is kept as it is."""
        self._parts = parts
        self._draw()

    def on_resize(self) -> None:
        """Draw to the new size."""
        self._draw()

    def _draw(self) -> None:
        room = self.scrollable_content_region
        wanted = (self._parts, room.width, room.height, self.app.theme)
        if not self.is_mounted or wanted == self._fitted or room.width < LEAST:
            return
        self._fitted = wanted
        palette = None if self.app.no_color else OF[self.app.theme]
        strips: list[Strip] = []
        for part in self._parts:
            if isinstance(part, str):
                strips += plain_strips(_lines(part, room.width), palette)
            elif isinstance(part, Drawing):
                strips += fitted(part, room.width, max(room.height, self.least), palette)
            else:
                strips += part(room.width, room.height, palette)
        self.query_one(Drawn).set_strips(strips)


def _lines(text: str, width: int) -> Iterator[str]:
    for line in text.splitlines() or [""]:
        under = "  " if line.startswith("- ") else ""
        kept = line[:1] in ("", " ")
        yield from [line] if kept else textwrap.wrap(line, width, subsequent_indent=under)


def plain_strips(lines: Iterable[str], palette: Palette | None, bold: bool = False) -> list[Strip]:
    """Return lines of words as rows, in the color of text."""
    style = Style(bold=bold)
    if palette is not None:
        style = Style(color=palette.text, bgcolor=palette.ground, bold=bold)
    return [Strip([Segment(str(seen(line)), style)], column_width(line)) for line in lines]


def fitted(drawing: Drawing, columns: int, rows: int, palette: Palette | None) -> list[Strip]:
    """Return a drawing whose picture alone takes the room; its words are scrolled to.

    Without a palette it is drawn in characters alone.
    """
    if drawing.proportional:
        look = Look(braille=palette is None, painted=palette is not None)
        rows += lay_out(drawing, columns, rows, look).legend_lines
    if palette is None:
        return plain_strips(cells(drawing, columns, rows), None)
    painting = paint(drawing, columns, rows)
    return [
        *plain_strips(painting.title, palette, bold=True),
        *(strip_of(row, palette) for row in (*painting.picture, *painting.legend)),
    ]


def whole(drawing: Drawing) -> Made:
    """Return what paints a drawing with its words so that none is scrolled to, where it can be."""

    def make(columns: int, rows: int, palette: Palette | None) -> list[Strip]:
        tried = rows
        strips = fitted(drawing, columns, tried, palette)
        # A lower picture may have fewer words at its sides, and more under it.
        while (over := len(strips) - rows) > 0 and tried - over >= LEAST:
            tried -= over
            strips = fitted(drawing, columns, tried, palette)
        return strips

    return make


def rows_of(
    drawing: Drawing, columns: int, rows: int, palette: Palette | None, told: bool = True
) -> Sequence[Row]:
    """Return the picture of a drawing; without a palette it is drawn in characters alone.

    What could not stand in the characters is then told under them, where it is to be ``told``.
    """
    if palette is None:
        drawing = drawing.sized(columns < SMALL[0] or rows < SMALL[1])
        # What is told under it takes none of its rows.
        rows += lay_out(drawing, columns, rows, Look()).legend_lines
        lines = (cells if told else picture_cells)(drawing, columns, rows)
        return [text_row(line) for line in lines]
    return paint(drawing, columns, rows).picture


def text_row(words: str, ink: Ink = Ink.TEXT, bold: bool = False) -> Row:
    """Return words as a painted row."""
    return tuple(Cell(char, ink, None, bold) for char in in_cells(str(seen(words))))


def wordless(drawing: Drawing) -> Drawing:
    """Return a picture without its words, which would hide it where it is tiny."""
    shapes = tuple(one for one in drawing.shapes if not isinstance(one, Label))
    return replace(drawing.bare, shapes=shapes)


def painted(drawing: Drawing) -> Made:
    """Return what paints a picture alone, whole in any window."""

    def make(columns: int, rows: int, palette: Palette | None) -> list[Strip]:
        tiny = columns < TINY[0] or rows < TINY[1]
        one = wordless(drawing) if tiny else drawing.bare
        return [strip_of(row, palette) for row in rows_of(one, columns, rows, palette)]

    return make


def alone(make: Callable[[int], Drawing]) -> Made:
    """Return what paints a drawing without its words; it is made for the rows there are."""

    def made(columns: int, rows: int, palette: Palette | None) -> list[Strip]:
        drawn = rows_of(make(rows).bare, columns, rows, palette)
        return [strip_of(row, palette) for row in drawn]

    return made


def in_room(drawing: Drawing, columns: int, rows: int, palette: Palette | None) -> list[Strip]:
    """Return a drawing in so much room and no more, what is behind it carried on to its edges."""
    drawing = drawing.sized(columns < SMALL[0] or rows < SMALL[1])
    if palette is None:
        return plain_strips(cells(drawing, columns, rows)[:rows], None)
    grows = drawing.proportional and drawing.ground is not None
    left, low, right, high = drawing.bounds
    wanted = (right - left) * 2 * (rows - 1) / max(1, columns - 1)
    if grows and wanted > high - low:
        drawing = _higher(drawing, wanted - (high - low))
    painting = paint(drawing, columns, rows)
    for _ in range(_TRIES):
        # Words at its sides make it smaller than its room.
        short = rows - len(painting.picture) - len(painting.legend)
        if not grows or short <= 0:
            break
        _, low, _, high = drawing.bounds
        drawing = _higher(drawing, (high - low) * short / (rows - short))
        painting = paint(drawing, columns, rows)
    return [strip_of(row, palette) for row in (*painting.picture, *painting.legend)][:rows]


_TRIES = 3


def _higher(drawing: Drawing, more: float) -> Drawing:
    """Return a drawing with so much more of its ground, half above and half below.

    Under a sky it is soil that goes on below.
    """
    left, low, _, high = drawing.bounds
    ends = ((left, low - more / 2), (left, high + more / 2))
    shapes = drawing.shapes
    if drawing.ground is Material.SKY:
        shapes = tuple(_deeper(one, low, more / 2) for one in shapes)
    return replace(drawing, shapes=(*shapes, Path(ends, None)))


def _deeper(shape: Shape, low: float, more: float) -> Shape:
    """Return a shape, soil that reaches down to ``low`` so much deeper."""
    if not isinstance(shape, Path) or shape.material is not Material.SOIL:
        return shape
    return shape._replace(points=tuple((x, y - more * (y <= low)) for x, y in shape.points))


def strip_of(row: Iterable[Cell], palette: Palette | None) -> Strip:
    """Return a painted row as text and colors, those alike together; or as text alone."""
    if palette is None:
        return Strip(
            [
                Segment("".join(cell.char for cell in run), Style(bold=bold, reverse=badge))
                for (bold, badge), run in groupby(row, lambda one: (one.bold, bool(one.back)))
            ]
        )
    styled = [style_of(cell, palette) for cell in row if cell.char]
    return Strip(
        [
            Segment("".join(char for char, _ in run), style)
            for style, run in groupby(styled, key=lambda one: one[1])
        ]
    )
