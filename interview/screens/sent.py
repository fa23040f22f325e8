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


class _Inked(dict[str, Cell]):
    """The cell of each character in one look; a blank has no ink."""

    def __init__(self, look: Look) -> None:
        super().__init__()
        self._look = look
        self._blank = ("", "", look[2]) if look[0] in _INKLESS else look

    def __missing__(self, char: str) -> Cell:
        cell = self[char] = char, self._blank if char == " " else self._look
        return cell


class Sent:
    """Remembers the cells of the terminal as they were written to it."""

    def __init__(self) -> None:
        self._rows: dict[int, list[Cell | None]] = {}
        self._inked: dict[Style | None, _Inked] = {}

    def forget(self) -> None:
        """Take it that nothing is known to stand there: another size, or back from a shell."""
        self._rows = {}

    def changes(self, update: CompositorUpdate, console: Console) -> str:
        """Return what has the terminal show ``update``, and note each."""
        depth = console._color_system or ColorSystem.TRUECOLOR
        said: list[str] = []
        now = last = PLAIN
        for y, x, strip in _pieces(update):
            for column, cells in self._differing(y, x, self._cells(strip, depth)):
                said.append(f"\x1b[{y + 1};{column + 1}H")
                for char, look in cells:
                    if look is not last:
                        told, now = _turned(now, look)
                        said.append(told)
                        last = look
                    said.append(char)
        return "".join((*said, "" if now == PLAIN else "\x1b[0m"))

    def _differing(self, y: int, x: int, cells: list[Cell]) -> Iterator[tuple[int, list[Cell]]]:
        """Yield the column and cells of each run that does not stand there yet; note each."""
        row, end = self._rows.setdefault(y, []), x + len(cells)
        row += [None] * (end - len(row))
        stood = row[x:end]
        if stood == cells:
            return
        row[x:end] = cells
        pairs = enumerate(zip(stood, cells, strict=True))
        at = [place for place, (before, cell) in pairs if before != cell]
        gone = (one for one in map(stood.__getitem__, at) if one is not None)
        if any(len(char) != 1 for char, _ in (*cells, *gone)):  # half of a character is not written
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
            inked = self._inked_in(style, depth)
            if text.isascii() or cell_len(text) == len(text):
                found += map(inked.__getitem__, text)
                continue
            for char in text:
                size = get_character_cell_size(char)
                if size == 0 and found:  # goes with the one before it
                    found[-1] = (found[-1][0] + char, found[-1][1])
                    continue
                found.append(inked[char])
                found += [("", inked[char][1])] * (size - 1)
        return found

    def _inked_in(self, style: Style | None, depth: ColorSystem) -> _Inked:
        inked = self._inked.get(style)
        if inked is None:
            if len(self._inked) > MANY:
                self._inked.clear()
            inked = self._inked[style] = _Inked(PLAIN if style is None else _look(style, depth))
        return inked


def _look(style: Style, depth: ColorSystem) -> Look:
    bare = style.without_color.render("x", color_system=depth)
    attributes = bare.partition("x")[0].removeprefix("\x1b[").removesuffix("m")
    ink, ground = (
        ";".join(color.downgrade(depth).get_ansi_codes(fore)) if color else default
        for color, fore, default in (
            (style.color, True, PLAIN[1]),
            (style.bgcolor, False, PLAIN[2]),
        )
    )
    return attributes, ink, ground


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
