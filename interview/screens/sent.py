"""What the terminal shows: of each paint only the cells that differ are written, for slow lines.

Textual paints whole widgets, several times while a page is turned; most of it stands there already.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import TypeAlias

from rich.cells import cell_len, get_character_cell_size
from rich.color import ColorSystem
from rich.console import Console
from rich.style import Style
from textual._compositor import ChopsUpdate, CompositorUpdate, LayoutUpdate
from textual.strip import Strip

NEAR = 8
"""Cells that stand already and are written all the same: a jump over fewer takes more bytes."""
MANY = 4000
"""Looks kept in mind at once."""
PLAIN = ("", "39", "49")
Look: TypeAlias = tuple[str, str, str]
"""Attributes, ink and ground of a cell, as terminals are told them (ECMA-48, 8.3.117)."""
Cell: TypeAlias = tuple[str, Look]
"""What stands there, empty under the right half of a wide character, and how."""
_INKLESS = {"", "1", "2", "3", "1;3", "1;2", "2;3", "1;2;3"}
"""Attributes by which a blank looks no different: bold, dim, italic."""


class Sent:
    """Remembers the cells of the terminal as they were written to it."""

    def __init__(self) -> None:
        self._rows: dict[int, dict[int, Cell]] = {}
        self._looks: dict[Style, Look] = {}

    def forget(self) -> None:
        """Take it that nothing is known to stand there: another size, or back from a shell."""
        self._rows = {}

    def changes(self, update: CompositorUpdate, console: Console) -> str:
        """Return what has the terminal show ``update``, and note each."""
        depth = console._color_system or ColorSystem.TRUECOLOR
        said: list[str] = []
        now = PLAIN
        for y, x, strip in _pieces(update):
            for column, cells in self._differing(y, x, self._cells(strip, depth)):
                said.append(f"\x1b[{y + 1};{column + 1}H")
                for char, look in cells:
                    told, now = _turned(now, look)
                    said += (told, char)
        return "".join((*said, "" if now == PLAIN else "\x1b[0m"))

    def _differing(self, y: int, x: int, cells: list[Cell]) -> Iterator[tuple[int, list[Cell]]]:
        """Yield the column and cells of each run that does not stand there yet; note each."""
        row = self._rows.setdefault(y, {})
        at = [place for place, cell in enumerate(cells) if row.get(x + place) != cell]
        if not at:
            return
        wide = any(len(char) != 1 for char, _ in cells) or any(
            len(row.get(x + place, (" ", PLAIN))[0]) != 1 for place in at
        )
        row.update(enumerate(cells, x))
        if wide:  # half of a character is not written
            yield x, cells
            return
        begin = last = at[0]
        for place in at[1:]:
            if place - last > NEAR:
                yield x + begin, cells[begin : last + 1]
                begin = place
            last = place
        yield x + begin, cells[begin : last + 1]

    def _cells(self, strip: Strip, depth: ColorSystem) -> list[Cell]:
        found: list[Cell] = []
        for text, style, control in strip:
            if control:
                continue
            look = self._look(style, depth)
            blank = ("", "", look[2]) if look[0] in _INKLESS else look
            narrow = text.isascii() or cell_len(text) == len(text)
            for char in text:
                size = 1 if narrow else get_character_cell_size(char)
                if size == 0 and found:  # goes with the one before it
                    found[-1] = (found[-1][0] + char, found[-1][1])
                    continue
                found.append((char, blank if char == " " else look))
                found += [("", look)] * (size - 1)
        return found

    def _look(self, style: Style | None, depth: ColorSystem) -> Look:
        if style is None:
            return PLAIN
        if style not in self._looks:
            if len(self._looks) > MANY:
                self._looks.clear()
            bare = style.without_color.render("x", color_system=depth)
            attributes = bare.partition("x")[0].removeprefix("\x1b[").removesuffix("m")
            ink, ground = (
                ";".join(color.downgrade(depth).get_ansi_codes(fore)) if color else default
                for color, fore, default in (
                    (style.color, True, PLAIN[1]),
                    (style.bgcolor, False, PLAIN[2]),
                )
            )
            self._looks[style] = (attributes, ink, ground)
        return self._looks[style]


def _pieces(update: CompositorUpdate) -> Iterator[tuple[int, int, Strip]]:
    """Yield row, column and cells of each piece of a paint, as Textual would write them."""
    if isinstance(update, LayoutUpdate):
        for y, line in enumerate(update.strips, update.region.y):
            yield y, update.region.x, Strip.join(line)
    elif isinstance(update, ChopsUpdate):
        for y, left, right in update.spans:
            for end, (x, strip) in zip(update.chop_ends[y], update.chops[y].items(), strict=False):
                if strip is None or x > right or end <= left:
                    continue
                whole = left <= x < right and end <= right
                yield y, x, strip if whole else strip.crop(0, min(end, right) - x)


def _turned(now: Look, wanted: Look) -> tuple[str, Look]:
    """Return what turns one look into another, and the look that then is."""
    if now == wanted:
        return "", now
    attributes, ink, ground = wanted
    if not ink:  # a blank: any ink, and no line under or through it
        attributes, ink = (now[0], now[1]) if now[0] in _INKLESS else ("", now[1])
    codes: Iterable[str] = (ink if ink != now[1] else "", ground if ground != now[2] else "")
    if attributes != now[0]:
        codes = ("0", attributes, *(one for one in (ink, ground) if one not in PLAIN))
    said = ";".join(one for one in codes if one)
    return (f"\x1b[{said}m" if said else ""), (attributes, ink, ground)


class Changes(CompositorUpdate):
    """A paint of which only what differs is written."""

    def __init__(self, update: CompositorUpdate, sent: Sent) -> None:
        self._update, self._sent = update, sent

    def render_segments(self, console: Console) -> str:
        """Return what is written to the terminal."""
        return self._sent.changes(self._update, console)
