"""Scale bars, dimension lines and round numbers of a drawing."""

from __future__ import annotations

import math
from collections.abc import Sequence
from html import escape
from typing import NamedTuple

from interview.drawing.scene import Label, LabelSpot, Mark, Path, Shape, Symbol, line
from interview.drawing.words import clean
from interview.quantities.units import plain_number


def round_step(span: float, parts: int) -> float:
    """Return 1, 2 or 5 times a power of ten that goes at most ``parts`` times into ``span``."""
    if not span > 0:
        return 1.0
    least = span / max(parts, 1)
    power = 10.0 ** math.floor(math.log10(least))
    for factor in (1, 2, 5, 10):
        if factor * power >= least * (1 - 1e-9):
            return factor * power
    return 10 * power


def ticks(top: float, parts: int) -> tuple[float, ...]:
    """Return nought and round numbers up to ``top``, about ``parts`` of them."""
    step = round_step(top, parts)
    return tuple(step * place for place in range(int(top / step + 1e-9) + 1))


def scale_bar(x: float, y: float, wide: float, unit: str) -> tuple[Shape, ...]:
    """Return a bar of a round length, a fifth to a half of ``wide``, from its left end."""
    long = round_step(wide, 5)
    return (
        line(x, y, x + long, y),
        Mark(x, y, Symbol.TICK),
        Mark(x + long, y, Symbol.TICK),
        Label(f"scale: {plain_number(long)} {unit}", x + long, y, LabelSpot.RIGHT),
    )


def across(x0: float, x1: float, y: float, text: str) -> tuple[Shape, ...]:
    """Return a level dimension line with its text."""
    middle = Label(text, (x0 + x1) / 2, y, over_line=True, within=(x0, y, x1, y))
    return (line(x0, y, x1, y), Mark(x0, y, Symbol.TICK), Mark(x1, y, Symbol.TICK), middle)


def upright(x: float, y0: float, y1: float, text: str, place: LabelSpot) -> tuple[Shape, ...]:
    """Return an upright dimension line with its text at one side."""
    ends: tuple[Shape, ...] = (Mark(x, y0, Symbol.TICK), Mark(x, y1, Symbol.TICK))
    path: Path = line(x, y0, x, y1)
    return (path, *ends, Label(text, x, (y0 + y1) / 2, place))


APART_MM = 5.0
"""From one dimension line to the next, and to the drawing."""
LETTER_MM = 3.5
"""Height of the letters: 10 points, to be read at arm's length."""
_NARROW, _WIDE = 0.28, 0.56
"""Width over height of the narrow letters, as Arial has them, and of the others."""
_THIN = frozenset(" .,/'fijlrt")
_TICK_MM = 1.1


class Dimension(NamedTuple):
    """How far it is from one place to another, along the drawing or upright."""

    start: float
    end: float
    """In the units of the drawing."""
    words: str
    upright: bool = False


def margins(sizes: Sequence[Dimension]) -> tuple[float, float]:
    """Return the room that dimension lines take at the left and under a drawing, in mm."""
    upright = sum(one.upright for one in sizes)
    return APART_MM * upright, APART_MM * (len(sizes) - upright)


def drawn(words: str, start: float, end: float, at: float, upright: bool, most: float) -> str:
    """Return a line from ``start`` to ``end`` with ticks and words, all in mm of the page.

    ``at`` is how far down the page it lies, or of an upright one how far right, ``most`` the width
    of the page, or its height. Words that are longer than the line stand beyond it: at its right or
    under it, else on its other side, else in its place.
    """
    # An upright line is a level one turned about the corner of the page, read from the right.
    low, high = sorted((-start, -end) if upright else (start, end))
    room = (-most, 0.0) if upright else (0.0, most)
    long = LETTER_MM * sum(_NARROW if one in _THIN else _WIDE for one in words)
    middle, off = (low + high) / 2, 2 * _TICK_MM
    parts: tuple[tuple[float, float], ...] = ((low, high),)
    if long + 3 * _TICK_MM <= high - low:
        parts = ((low, middle - long / 2 - 1), (middle + long / 2 + 1, high))
        place, anchor = middle, "middle"
    else:
        after, before = high + off + long <= room[1], low - off - long >= room[0]
        place, anchor = (high + off, "start") if after else (low - off, "end")
        if upright and before:
            place, anchor = low - off, "end"
        if not after and not before:
            # They take the place of the line.
            parts = ()
            place = min(max(middle, room[0] + long / 2), room[1] - long / 2)
            anchor = "middle"
    path = "".join(f"M{one:.2f} {at:.2f} H{two:.2f}" for one, two in parts)
    path += "".join(
        f"M{end - _TICK_MM:.2f} {at + _TICK_MM:.2f} l{off:g} {-off:g}M{end:.2f} {at - 1.6:.2f} v3.2"
        for end in (low, high)
    )
    turn = ' transform="rotate(-90)"' if upright else ""
    return (
        f'<g{turn}><path d="{path}" fill="none" stroke="black" stroke-width="0.2"/>'
        f'<text x="{place:.2f}" y="{at + 0.36 * LETTER_MM:.2f}" text-anchor="{anchor}" '
        f'font-size="{LETTER_MM:g}">{escape(clean(words))}</text></g>'
    )
