"""The page of the plan, row by row: the first look, then every part of the sheet."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator, Sequence
from itertools import pairwise

from rich.segment import Segment
from rich.style import Style
from textual.strip import Strip

from interview.drawing.paint import BLANK, Cell, Row
from interview.drawing.scene import Drawing, Ink
from interview.drawing.words import column_width
from interview.garden.overview import Gauge, Overview
from interview.quantities.evidence import Finding
from interview.screens.palette import MARKS, Palette
from interview.screens.picture import fitted, plain_strips, rows_of, strip_of, text_row
from interview.sheet.common import DRAWN

BESIDE = 70
"""Columns from which on the figures stand beside the picture."""
_FIGURES = 28
"""Columns of the figures."""
_ROOMY = 26
"""Rows from which on figures and parts of the first look stand apart."""
_EDGE = 1
"""Columns that keep words off the bar at the side."""
_OTHERS = 12
"""Rows left for what stands above and under the picture."""
_BADGES = {"GOOD": (Ink.GOOD, "good"), "NOTE": (Ink.WATER, ""), "FIX": (Ink.LOOK, "look")}
_RULE = "─"
_GLANCE = "At a glance"
_NEXT = "Do next"


class Finale:
    """Makes the rows of the plan, and notes at which each part begins."""

    def __init__(
        self,
        first_look: Overview,
        picture: Drawing | None,
        sheet: str,
        drawings: Sequence[Drawing] = (),
        steps: Sequence[str] = (),
    ) -> None:
        """``steps`` are what to do next, told beside the picture as far as there is room."""
        self._look, self._picture, self._steps = first_look, picture, steps
        self._sheet, self._drawings = sheet.splitlines(), drawings
        self.places: dict[str, int] = {}
        """The row at which each part begins, by its title."""

    @property
    def titles(self) -> list[str]:
        """The titles of the parts, in order."""
        return [_GLANCE, *(title for _, title in _headings(self._sheet)[1:])]

    def __call__(self, columns: int, rows: int, palette: Palette | None) -> list[Strip]:
        """Return the rows for a window."""
        strips = [strip_of(row, palette) for row in self._first_look(columns, rows, palette)]
        self.places = {_GLANCE: 0}
        strips += self._parts(columns, rows, palette, len(strips))
        return strips

    # The first look

    def _first_look(self, columns: int, rows: int, palette: Palette | None) -> Iterator[Row]:
        look = self._look
        between: list[Row] = [()] if rows >= _ROOMY else []
        yield from _banner(look, columns)
        for sentence in look.sentences:
            yield from map(text_row, textwrap.wrap(sentence, columns - _EDGE))
        yield from between
        yield from self._drawn(columns, rows, palette)
        yield from between
        yield text_row("What was found", bold=True)
        for badge in look.badges:
            yield from _badge_rows(badge, columns)
        if look.in_order:
            yield (*_badge("GOOD"), *text_row(f" {look.in_order} things are in order", Ink.MUTED))

    def _drawn(self, columns: int, rows: int, palette: Palette | None) -> Iterator[Row]:
        """The picture, and the figures at its side or under it."""
        beside = columns >= BESIDE
        figures = list(
            _measure_rows(self._look.measures, _FIGURES if beside else columns, rows >= _ROOMY)
        )
        if self._picture is None:
            yield from figures
            return
        wide = columns - _FIGURES - 2 - _EDGE if beside else columns
        high = max(10, min(rows - _OTHERS, wide // 3))
        picture = rows_of(self._picture.bare, wide, high, palette)
        if not beside:
            yield from (*picture, (), *figures)
            return
        if rows >= _ROOMY:
            figures += _next_rows(self._steps, len(picture) - len(figures))
        for place in range(max(len(picture), len(figures))):
            left = picture[place] if place < len(picture) else ()
            right = figures[place] if place < len(figures) else ()
            yield (*left, *([BLANK] * (wide + 2 - len(left))), *right)

    # The sheet

    def _parts(
        self, columns: int, rows: int, palette: Palette | None, above: int
    ) -> Iterator[Strip]:
        titles = dict(_headings(self._sheet))
        marks = {f"{DRAWN}{place}": one for place, one in enumerate(self._drawings)}
        row = above
        for place, line in enumerate(self._sheet):
            if place - 1 in titles:  # the dashes under a title
                found = [_rule(columns, palette)]
            elif place in titles:
                self.places[titles[place]] = row
                found = plain_strips([titles[place]], palette, bold=True)
            elif line in marks:
                found = fitted(marks[line], columns, max(rows, 20), palette)
            else:
                found = plain_strips(_folded(line, columns), palette)
            row += len(found)
            yield from found


def _folded(line: str, columns: int) -> list[str]:
    """Return a row of a table folded where its window is narrower, so that none of it is hidden."""
    if column_width(line) <= columns:
        return [line]
    return textwrap.wrap(re.sub(" {3,}", "  ", line), columns, subsequent_indent="    ")


def _headings(lines: Sequence[str]) -> list[tuple[int, str]]:
    """Return the place and the title of each part of a sheet, that of the sheet first."""
    return [
        (place, line if place == 0 else line.capitalize())
        for place, (line, under) in enumerate(pairwise(lines))
        if line and re.fullmatch("-{3,}|={3,}", under) and len(under) <= len(line)
    ]


def _rule(columns: int, palette: Palette | None) -> Strip:
    style = Style() if palette is None else Style(color=palette.edge, bgcolor=palette.ground)
    return Strip([Segment(_RULE * columns, style)], columns)


def _badge(word: str) -> Row:
    ink, mark = _BADGES.get(word, (Ink.STOP, "stop"))
    said = f" {MARKS.get(mark, '·')} {word:<4} "
    return tuple(Cell(char, None, ink, True) for char in said)


def _banner(look: Overview, columns: int) -> Iterator[Row]:
    word = look.verdict.value.upper()
    right = text_row(look.digging, Ink.GOOD if "open" in look.digging else Ink.LOOK)
    left = (*_badge(word), BLANK, *text_row(look.says, bold=True))
    gap = columns - _EDGE - len(left) - len(right)
    if gap > 0:
        yield (*left, *([BLANK] * gap), *right)
    else:
        yield left
        yield right


def _badge_rows(badge: Finding, columns: int) -> Iterator[Row]:
    shown = _badge(badge.word)
    room = max(20, columns - len(shown) - 1 - _EDGE)
    lines = textwrap.wrap(badge.said, room)
    for place, line in enumerate(lines):
        lead = shown if place == 0 else tuple([BLANK] * len(shown))
        yield (*lead, BLANK, *text_row(line))


def _next_rows(steps: Sequence[str], room: int) -> list[Row]:
    """Return as many of the steps as stand whole in so many rows; nothing where not one does."""
    found: list[Row] = []
    for place, step in enumerate(steps, 1):
        lines = textwrap.wrap(f"{place} {step}", _FIGURES, subsequent_indent="  ")
        if len(found) + len(lines) + 1 > room:
            break
        found += [text_row(line) for line in lines]
    return [text_row(_NEXT, bold=True), *found] if found else []


def _measure_rows(measures: Sequence[Gauge], columns: int, apart: bool) -> Iterator[Row]:
    name = max((column_width(one.label) for one in measures), default=0)
    for one in measures:
        limit = f"  {one.limit}" if one.limit else ""
        label = f"{one.label}{' ' * (name - column_width(one.label))}  "
        yield (*text_row(label, Ink.MUTED), *text_row(one.value, bold=True))
        if one.share is None:
            continue
        bar = max(8, min(columns, _FIGURES) - len(limit))
        full = round(one.share * bar)
        yield (
            *text_row("━" * full, Ink.WATER),
            *text_row("─" * (bar - full), Ink.MUTED),
            *text_row(limit, Ink.MUTED),
        )
        if apart:
            yield ()
