"""Scale bars, dimension lines and round numbers of a drawing."""

from __future__ import annotations

import math

from interview.drawing.scene import Label, LabelSpot, Mark, Path, Shape, Symbol, line
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
