"""The level string over the spot: its length, and how far the ground falls below it."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from interview.drawing.scene import (
    Drawing,
    Ink,
    Label,
    LabelSpot,
    Material,
    Path,
    Shape,
    Stroke,
    box,
    filled,
)

_STRING = 0.34
"""Height of the string over the uphill ground; all measures here are parts of its length."""
_FALL_PER_SLOPE, _LEAST_FALL, _MOST_FALL = 4.0, 0.05, 0.66
"""How much steeper than it is the ground is drawn, and the fall that is drawn at least and at most
where there is one."""
_GUESSED_FALL = 0.2
"""The fall that is drawn, dashed, while none is measured."""
_BESIDE, _BELOW, _SKY = 0.2, 0.2, 0.2
_POST, _GRASS = 0.012, 0.045
_DIMENSION = 0.07
"""How far beyond the downhill chair the drop is marked."""


class Fall(NamedTuple):
    """What was measured along the string, in words; each is empty while it is not known."""

    run: str = ""
    drop: str = ""
    share: float | None = None
    """Drop by length, both in the same unit; nothing while one is not known."""
    slope: str = ""
    """The slope in words, with its mark."""
    ink: Ink = Ink.TEXT
    """The color of the verdict on it."""
    toward: str = ""
    """Which way is downhill."""
    here: str = ""
    """``run`` or ``drop``: what is asked for now."""


def level_string(fall: Fall) -> Drawing:
    """Return the string between two chairs and the ground below it, dashed where not measured."""
    return Drawing(
        title="THE LEVEL STRING, and how far the ground falls",
        description=_words(fall),
        shapes=tuple(_shapes(fall)),
        notes=("The ground is drawn steeper than it is.",),
        proportional=False,
        ground=Material.SKY,
    )


def _words(fall: Fall) -> str:
    run = fall.run or "not measured yet"
    drop = fall.drop or "not measured yet"
    slope = f" Slope: {fall.slope}." if fall.slope else ""
    return f"The level string, length {run}; drop at its downhill end, {drop}.{slope}"


def drawn_fall(share: float | None) -> float:
    """Return how far the ground falls in the picture, as a part of the string's length."""
    if share is None:
        return _GUESSED_FALL
    return 0.0 if share <= 0 else min(_MOST_FALL, max(_LEAST_FALL, _FALL_PER_SLOPE * share))


def _shapes(fall: Fall) -> Iterator[Shape]:
    down = drawn_fall(fall.share)
    known = fall.share is not None
    left, right = -_BESIDE, 1 + _BESIDE
    # Level beyond the ends: what is there was not measured.
    ground = ((left, 0.0), (0.0, 0.0), (1.0, -down), (right, -down))
    low = -down - _BELOW
    yield filled((*ground, (right, low), (left, low)), Material.SOIL)
    if known:
        turf = tuple((x, y + _GRASS) for x, y in reversed(ground))
        yield filled((*ground, *turf), Material.GRASS)
    yield Path(ground, Stroke.SOLID if known else Stroke.DASHED, border=known)
    for x, foot in ((0.0, 0.0), (1.0, -down)):
        yield filled(box(x - _POST, foot, x + _POST, _STRING), Material.WALL, Stroke.SOLID)
    yield Path(((left, _STRING + _SKY), (right, _STRING + _SKY)), None)
    yield from _string(fall)
    yield from _drop(fall, down)


def _string(fall: Fall) -> Iterator[Shape]:
    ink = Ink.DUE if fall.here == "run" else Ink.TEXT
    yield Path(((0.0, _STRING), (1.0, _STRING)), _stroke(fall.run), ink=ink)
    run = fall.run or "how long?"
    yield Label(run, 0.5, _STRING, LabelSpot.ABOVE, ink=ink)


def _drop(fall: Fall, down: float) -> Iterator[Shape]:
    x = 1 + _DIMENSION
    ink = fall.ink if fall.share is not None else Ink.DUE if fall.here == "drop" else Ink.MUTED
    yield Path(((0.0, 0.0), (x, 0.0)), Stroke.DASHED, ink=Ink.MUTED)
    if down:
        yield Path(((x, 0.0), (x, -down)), _stroke(fall.drop), ink=ink)
    yield Label(fall.drop or "how much lower?", x, -down, LabelSpot.BELOW, ink=ink)
    if fall.slope:
        yield Label(fall.slope, 0.42, -0.42 * down - _BELOW / 2, ink=fall.ink)
    if fall.toward:
        yield Label(f"{fall.toward} →", 0.98, _STRING, LabelSpot.ABOVE, ink=Ink.MUTED, brief=" ")


def _stroke(measured: str) -> Stroke:
    return Stroke.SOLID if measured else Stroke.DASHED
