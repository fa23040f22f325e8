"""The clock and the bar of the soak page: what changes every second repaints itself alone."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, NamedTuple

from rich.segment import Segment
from rich.style import Style
from textual.app import ComposeResult
from textual.geometry import Region, Size
from textual.strip import Strip
from textual.widgets import DataTable

from interview.drawing.words import column_width
from interview.screens import themes
from interview.screens.palette import Palette
from interview.screens.parts import Laid, Stacked, Words
from interview.screens.picture import Picture

if TYPE_CHECKING:
    from interview.screens.soak_watch import ReadingColumn

# fmt: off
DOTS: dict[str, tuple[str, ...]] = {
    "0": ("###", "# #", "# #", "# #", "###"), "1": (" # ", "## ", " # ", " # ", "###"),
    "2": ("###", "  #", "###", "#  ", "###"), "3": ("###", "  #", " ##", "  #", "###"),
    "4": ("# #", "# #", "###", "  #", "  #"), "5": ("###", "#  ", "###", "  #", "###"),
    "6": ("###", "#  ", "###", "# #", "###"), "7": ("###", "  #", " # ", " # ", " # "),
    "8": ("###", "# #", "###", "# #", "###"), "9": ("###", "# #", "###", "  #", "###"),
    ":": (" ", "#", " ", "#", " "), "-": ("   ", "   ", "###", "   ", "   "),
}
# fmt: on
"""Each sign of the clock as three by five dots."""
_HALVES = {"  ": " ", "# ": "▀", " #": "▄", "##": "█"}
"""A cell by the dots of its upper and its lower half."""
LARGE, SMALL = 5, 3
"""Rows of the clock: a dot is two cells wide, or half a cell high."""


def sign(char: str, large: bool) -> tuple[str, ...]:
    """Return the rows of one sign of the clock."""
    rows = DOTS[char]
    if large:
        return tuple("".join({"#": "██", " ": "  "}[dot] for dot in row) for row in rows)
    pairs = [(rows[at], rows[at + 1] if at + 1 < len(rows) else " " * 3) for at in (0, 2, 4)]
    return tuple(
        "".join(_HALVES[upper + lower] for upper, lower in zip(*pair, strict=False))
        for pair in pairs
    )


class Clock(Laid):
    """Hours, minutes and seconds in dots; a second repaints the digits that change."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self.value = ""
        """What it shows, such as ``1:05:09``."""
        self._large = False

    def show(self, value: str, large: bool) -> None:
        """Show ``value``; nothing is laid out anew unless it takes more room or less."""
        before, self.value = self.value, value
        same_room = large == self._large and len(before) == len(value)
        self._large = large
        if not same_room:
            self.refresh(layout=True)
            return
        changed = [
            Region(start, 0, wide, self.rows)
            for (start, wide), old, new in zip(self._places(), before, value, strict=True)
            if old != new
        ]
        if changed:
            self.refresh(*changed)

    @property
    def rows(self) -> int:
        """How many rows it takes."""
        return LARGE if self._large else SMALL

    def _places(self) -> list[tuple[int, int]]:
        """Return the first column and the columns of each sign."""
        found, column = [], 0
        dot = 2 if self._large else 1
        for char in self.value:
            wide = len(DOTS[char][0]) * dot
            found.append((column, wide))
            column += wide + dot
        return found

    @property
    def columns(self) -> int:
        """How many columns it takes."""
        places = self._places()
        return sum(places[-1]) if places else 0

    def get_content_width(self, container: Size, viewport: Size) -> int:
        return self.columns

    def get_content_height(self, container: Size, viewport: Size, width: int) -> int:
        return self.rows

    def render_line(self, y: int) -> Strip:
        """Return one row of dots."""
        style, wide = self.rich_style, self.size.width
        if not self.value or y >= self.rows:
            return Strip.blank(wide, style)
        gap = "  " if self._large else " "
        row = gap.join(sign(char, self._large)[y] for char in self.value)
        return Strip([Segment(row[:wide].ljust(wide), style)], wide)


_PARTS = " ▏▎▍▌▋▊▉"
LEAST_BAR = 4
"""Columns without which the bar is left out beside its words."""


def bar_cells(part: float, columns: int) -> tuple[str, int]:
    """Return what is full of a bar, in eighths of a cell, and how many cells stay empty."""
    eighths = round(min(max(part, 0.0), 1.0) * columns * 8)
    full = "█" * (eighths // 8) + (_PARTS[eighths % 8] if eighths % 8 else "")
    return full, columns - len(full)


class WaitBar(Laid):
    """How far the wait is for what is due next, with its words at both ends."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(**kwargs)
        self._shown = ("", 0.0, "")
        self._strip: tuple[object, Strip] | None = None

    def show(self, before: str, part: float, after: str) -> None:
        """Show ``part`` of the whole, nought to one, between two words."""
        self._shown = (before, part, after)
        # Most seconds move it by less than an eighth of a cell: then nothing is painted.
        if self._strip is None or self._looks() != self._strip[0]:
            self.refresh()

    @property
    def text(self) -> str:
        """The words at its ends."""
        before, _, after = self._shown
        return f"{before} {after}".strip()

    def _looks(self) -> tuple[object, ...]:
        before, part, after = self._shown
        room = self.size.width - column_width(before) - column_width(after) - 2
        cells = bar_cells(part, room) if room >= LEAST_BAR else ("", max(0, room))
        return before, cells, after, self.size.width, self.app.theme, self.app.no_color

    def render_line(self, y: int) -> Strip:
        """Return the bar; where its ground has no shade of its own, the rest is dotted."""
        looks = self._looks()
        if self._strip is None or self._strip[0] != looks:
            self._strip = (looks, self._made())
        return self._strip[1]

    def _made(self) -> Strip:
        before, part, after = self._shown
        width = self.size.width
        palette = None if self.app.no_color else themes.OF[self.app.theme]
        room = width - column_width(before) - column_width(after) - 2
        muted, due, track, shadeless = _inks(palette)
        segments = [Segment(f"{before} ", muted)]
        if room >= LEAST_BAR:
            full, rest = bar_cells(part, room)
            segments += [Segment(full, track), Segment(("·" if shadeless else " ") * rest, track)]
        segments.append(Segment(f" {after}", due))
        return Strip(segments).adjust_cell_length(width, self.rich_style)


def _inks(palette: Palette | None) -> tuple[Style, Style, Style, bool]:
    """Return the styles of the words before, the words after, and the bar; if it has no ground."""
    if palette is None:
        return Style(), Style(bold=True), Style(), True
    shadeless = palette.panel == palette.ground
    return (
        Style(color=palette.muted, bgcolor=palette.ground),
        Style(color=palette.due, bgcolor=palette.ground, bold=True),
        Style(color=palette.due, bgcolor=palette.panel),
        shadeless,
    )


class Pane(Picture):
    """A picture that takes the room it has, however low, and is not scrolled."""

    least = 6


LEAST_COLUMNS, LEAST_ROWS = 80, 22
"""Below these the page has one column, without pictures."""
LARGE_LEFT, LARGE_ROWS = 60, 36
"""From these on the clock is large, and the chart stays while one types."""
_FRAME = 5
"""Rows of the frame and of the caution."""
_RIGHT, _MORE = 36, 38 / 80
"""Columns of the right half at the least width, and its part of each further one."""


class Room(NamedTuple):
    """How the soak page is parted: clock and table, hole; under them chart, words."""

    width: int
    left: int
    """Columns of the clock and the table."""
    right: int
    """Columns of the hole and the words."""
    upper: int
    """Rows of the hole."""
    lower: int
    """Rows of the chart and the words."""
    small: bool
    """Whether there is one column alone."""
    large: bool

    @classmethod
    def of(cls, width: int, height: int) -> Room:
        """Return the parts of a window of so many columns and rows."""
        body = height - _FRAME
        small = width < LEAST_COLUMNS or height < LEAST_ROWS
        right = width if small else round(_RIGHT + (width - LEAST_COLUMNS) * _MORE)
        left = width if small else width - right
        lower = body if small else (body - 4) // 2
        large = left >= LARGE_LEFT and height >= LARGE_ROWS and not small
        return cls(width, left, right, body - lower, lower, small, large)

    @property
    def words(self) -> int:
        """Columns of the words beside the chart."""
        return self.right - (4 if self.large else 2)

    @staticmethod
    def lines(text: str, columns: int) -> int:
        """Return how many rows a text takes in so many columns."""
        wide = max(columns, 8)
        return sum(max(1, len(textwrap.wrap(line, wide))) for line in text.splitlines())


class ReadingRows(Stacked):
    """The readings in a table, and under the last one what is due next."""

    def compose(self) -> ComposeResult:
        """Yield the table and the row of what is due."""
        yield DataTable(id="readings", cursor_type="row", zebra_stripes=True)
        yield Words(id="next")

    @property
    def table(self) -> DataTable[str]:
        """The table itself."""
        return self.query_one(DataTable)

    def fill(
        self,
        columns: Sequence[ReadingColumn],
        rows: Sequence[Sequence[str]],
        coming: Sequence[str] | None,
        room: int,
    ) -> None:
        """Show ``rows`` in the columns that find room, and the one that is ``coming``."""
        table = self.table
        every = [*rows, *([coming] if coming else [])]
        heads = [column.head for column in columns]

        def widths() -> list[int]:
            return [
                max(len(head), *(len(row[at]) for row in every if at < len(row)), 0)
                for at, head in enumerate(heads)
            ]

        kept = sorted(range(len(columns)), key=lambda at: columns[at].keeps)
        while sum(widths()[at] + 2 for at in kept) > room:
            heads = [column.brief or column.head for column in columns]
            if sum(widths()[at] + 2 for at in kept) > room:
                kept.pop()
        kept.sort()
        wide = widths()
        table.clear(columns=True)
        for at in kept:
            table.add_column(heads[at], width=wide[at])
        for row in rows:
            table.add_row(*(row[at] for at in kept))
        said = [f" {coming[at]:<{wide[at]}} " for at in kept if at < len(coming)] if coming else []
        self.query_one("#next", Words).say("".join(said).rstrip())
        self._heighten()

    def mark(self, place: int) -> None:
        """Put the cursor on a row, so that it is seen."""
        self.table.move_cursor(row=place)

    def on_resize(self) -> None:
        """Leave a row under the table for what is due."""
        self._heighten()

    def _heighten(self) -> None:
        rows = self.size.height - self.query_one("#next").display
        self.table.styles.max_height = max(2, rows)
