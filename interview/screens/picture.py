"""A drawing that fits itself to the room it is given."""

from __future__ import annotations

import textwrap
from typing import Any

from textual.app import ComposeResult
from textual.containers import VerticalScroll

from interview.drawing.canvas import cells
from interview.drawing.grid import Look
from interview.drawing.layout import lay_out
from interview.drawing.scene import Drawing
from interview.screens.parts import Words

LEAST = 12
"""Columns under which nothing is drawn, and lines a drawing always gets."""


class Picture(VerticalScroll):
    """Drawings and sentences one under the other, drawn anew whenever the room changes."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._parts: tuple[Drawing | str, ...] = ()
        self._fitted: object = None

    def compose(self) -> ComposeResult:
        """Yield the one text that everything is drawn into."""
        yield Words("", classes="drawn")

    def show(self, *parts: Drawing | str) -> None:
        """Show ``parts``; a line of text that begins with a blank is kept as it is."""
        self._parts = parts
        self._draw()

    def on_resize(self) -> None:
        """Draw to the new size."""
        self._draw()

    def _draw(self) -> None:
        room = self.scrollable_content_region
        wanted = (self._parts, room.width, room.height)
        if not self.is_mounted or wanted == self._fitted or room.width < LEAST:
            return
        self._fitted = wanted
        lines: list[str] = []
        for part in self._parts:
            if isinstance(part, str):
                lines += self._lines(part, room.width)
            else:
                lines += fitted(part, room.width, max(room.height, LEAST))
        self.query_one(".drawn", Words).update("\n".join(lines))

    def _lines(self, text: str, width: int) -> list[str]:
        found = []
        for line in text.splitlines() or [""]:
            under = "  " if line.startswith("- ") else ""
            kept = line[:1] in ("", " ")
            found += [line] if kept else textwrap.wrap(line, width, subsequent_indent=under)
        return found


def fitted(drawing: Drawing, columns: int, rows: int) -> list[str]:
    """Return a drawing whose picture alone takes the room; its words are scrolled to."""
    if drawing.proportional:
        rows += lay_out(drawing, columns, rows, Look(False, True)).legend_lines
    return cells(drawing, columns, rows)
