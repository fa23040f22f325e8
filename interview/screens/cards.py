"""What the start page says of each garden, as rows of a list."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from textual.content import Content

from interview.drawing.words import column_width, cut_to
from interview.reading.foreign import shown

if TYPE_CHECKING:
    from interview.screens.shelf import Shelved

INDENT = 2
"""Columns before the second row of a card."""
LEAST_NAME, MOST_NAME = 16, 30
LEAST_BAR, MOST_BAR = 8, 24
FAR = len("100 of 100 pages")
USUAL_BADGE = len(" ○ PLAN DONE ")


def card(one: Shelved, columns: int, badges: int = USUAL_BADGE) -> Content:
    """Return a garden's card for so many columns: name, how far, badge; what is due, and the file.

    ``badges`` are the columns of the widest badge of the list.
    """
    name, bar = _widths(columns, badges)
    called = shown(one.name)
    first: list[tuple[str, str] | str] = [(_padded(called, name), "bold"), "  "]
    first += [*_bar(one, bar), "  "] if one.total else [" " * (bar + 2)]
    first.append((one.how_far.ljust(FAR), "$muted"))
    if one.badge is not None:
        first += ["  ", (str(one.badge), f"$ground on ${one.badge.ink} bold")]
    return Content.assemble(*first, "\n", *_second(one, columns))


def badge_columns(gardens: Sequence[Shelved]) -> int:
    """Return the columns of the widest badge."""
    return max([USUAL_BADGE, *(len(str(one.badge)) for one in gardens if one.badge)])


def _widths(columns: int, badges: int) -> tuple[int, int]:
    """Return the columns of the name and of the bar."""
    room = columns - FAR - badges - 6
    name = max(LEAST_NAME, min(MOST_NAME, room - LEAST_BAR, room * 3 // 5))
    return name, max(0, min(MOST_BAR, room - name))


def _padded(text: str, columns: int) -> str:
    if column_width(text) > columns:
        text = f"{cut_to(text, columns - 1)[0].rstrip()}…"
    return text + " " * (columns - column_width(text))


def _bar(one: Shelved, columns: int) -> list[tuple[str, str] | str]:
    full = columns * one.done // one.total
    ink = "$good" if one.done == one.total else "$water"
    return [("━" * full, ink), ("─" * (columns - full), "$edge")]


def _second(one: Shelved, columns: int) -> list[tuple[str, str] | str]:
    """What is due, whole, and behind it the file."""
    room = columns - INDENT
    said = textwrap.wrap(shown(one.due), room) or [""]
    left = room - column_width(said[-1]) - 2
    file = file_words(one.path, left) or file_words(one.path, room) or _padded(one.path.name, room)
    ink = f"${one.badge.ink}" if one.badge and one.badge.ink in ("due", "stop") else ""
    told = "\n".join(f"{' ' * INDENT}{line}" for line in said)
    if column_width(file) > left:
        return [(told, ink), "\n", " " * (columns - column_width(file)), (file, "$muted")]
    return [(told, ink), " " * (left + 2 - column_width(file)), (file, "$muted")]


def file_words(path: Path, columns: int) -> str:
    """Name a file by as much of its path as has room; nothing where its name has none."""
    names = [str(path), str(Path(path.parent.name) / path.name), path.name]
    if path.parent.absolute() == Path().absolute():
        names = names[-1:]
    return next((one for one in map(shown, names) if column_width(one) <= columns), "")
