"""Text measured and written in terminal columns, and the lengths of a drawing in words."""

from __future__ import annotations

import math
import unicodedata

from interview.reading.foreign import shown


def clean(text: str) -> str:
    """Return ``text`` on one line with nothing hidden in it."""
    return shown(" ".join(text.split()))


def column_width(text: str) -> int:
    """Return how many terminal columns ``text`` takes."""
    return sum(_columns(one) for one in text)


def _columns(one: str) -> int:
    if unicodedata.combining(one) or unicodedata.category(one) in ("Mn", "Me"):
        return 0
    return 2 if unicodedata.east_asian_width(one) in "WF" else 1


def in_cells(text: str) -> list[str]:
    """Return the content of each column; a wide character leaves the one after it empty."""
    cells: list[str] = []
    for one in text:
        wide = _columns(one)
        if wide == 0:
            if cells:
                cells[-1] += one
        else:
            cells += [one] + [""] * (wide - 1)
    return cells


def cut_to(text: str, columns: int) -> tuple[str, str]:
    """Split ``text`` after its last word that ends within ``columns``, or in a word too long."""
    used, room, last_space = 0, 0, 0
    for place, one in enumerate(text):
        used += _columns(one)
        if used > columns:
            break
        room = place + 1
        if one == " ":
            last_space = place
    else:
        return text, ""
    end = room if text[room : room + 1] == " " else last_space or max(room, 1)
    return text[:end].rstrip(), text[end:].lstrip()


def wrapped(text: str, columns: int, indent: int = 0) -> list[str]:
    """Return ``text`` on lines of at most ``columns``, all but the first indented."""
    indent = min(indent, columns // 3)
    head, rest = cut_to(text, columns)
    lines = [head]
    while rest:
        head, rest = cut_to(rest, columns - indent)
        lines.append(" " * indent + head)
    return lines


_ARROWS = {
    (0, 1): "↑", (1, 1): "↗", (1, 0): "→", (1, -1): "↘",
    (0, -1): "↓", (-1, -1): "↙", (-1, 0): "←", (-1, 1): "↖",
}  # fmt: skip


def arrow_sign(x: float, y: float) -> str:
    """Return the arrow of the eight that is nearest to a direction, x right and y up."""
    turn = round(math.atan2(y, x) / (math.pi / 4)) * math.pi / 4
    return _ARROWS[round(math.cos(turn)), round(math.sin(turn))]
