"""The picture of the first page: a rain garden cut through beside its house, of no garden at all.

It stands before any garden is known and is measured by none: its heights and lengths are ours, in
cells of a window of 80 columns.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from interview.drawing.scene import (
    XY,
    Drawing,
    Ink,
    Material,
    Path,
    Shape,
    Sprig,
    Stroke,
    box,
    filled,
)

WIDE, HIGH = 79.0, 5.0
"""From the middle of the first cell to that of the last, in a window of 80 columns and 6 rows."""
_LAWN, _FULL, _FLOOR, _LOWER = 2.5, 2.0, 0.9, 1.5
"""Heights of the lawn uphill, the full pond, the finished floor and the lawn downhill."""
_EDGE, _FOOT, _END, _INNER, _CREST, _OUTER, _TOE = 26.0, 32.0, 53.0, 56.5, (60.0, 65.5), 73.0, 3.2
_BLADES, _MULCH = 0.36, 0.4
"""How high the grass stands, and how thick the mulch lies."""
_PLANTS = (
    # where it stands, how high its flower is, its mark and its color; what stands under water of
    # it is not seen
    (28.5, 3, "✺", "gold"),
    (32.0, 4, "ψ", "straw"),
    (35.0, 5, "✿", "violet"),
    (38.0, 3, "✦", "blue"),
    (41.0, 4, "✺", "pink"),
    (44.0, 4, "ψ", "straw"),
    (47.0, 5, "✽", "gold"),
    (50.0, 4, "●", "violet"),
    (53.0, 3, "ψ", "straw"),
    (56.0, 4, "✿", "blue"),
    (61.0, 5, "✽", "gold"),
    (64.5, 4, "✺", "pink"),
    (68.0, 3, "✦", "white"),
)


@cache
def front(rows: int = 6) -> Drawing:
    """Return the picture for so many rows, as wide as the room it is given."""
    return Drawing(
        title="",
        description=(
            "A rain garden cut through: water runs from the roof of a house over the lawn into a "
            "shallow planted bowl with a low bank of soil on its far side."
        ),
        shapes=tuple(_shapes(HIGH / max(1, rows - 1))),
        proportional=False,
        ground=Material.SKY,
    )


def _shapes(row: float) -> Iterator[Shape]:
    """Yield what is drawn; ``row`` is the height of a row."""
    left, right = _CREST
    bowl: tuple[XY, ...] = ((_EDGE, _LAWN), (_FOOT, _FLOOR), (_END, _FLOOR), (_INNER, _LOWER))
    surface = ((0, _LAWN), *bowl, (left, _TOE), (right, _TOE), (_OUTER, _LOWER), (WIDE, _LOWER))
    yield filled((*surface, (WIDE, 0), (0, 0)), Material.SOIL)
    yield Path(surface, Stroke.SOLID, border=True)
    yield filled(((_INNER, _LOWER), (left, _TOE), (right, _TOE), (_OUTER, _LOWER)), Material.BERM)
    yield _level(_FOOT, _END, _FLOOR - _MULCH, _FLOOR, Material.MULCH)
    yield filled(
        ((_EDGE + 2, _FULL), (_FOOT, _FLOOR), (_END, _FLOOR), (_INNER + 1, _FULL)), Material.WATER
    )
    yield _level(0, _EDGE, _LAWN, _LAWN + _BLADES, Material.GRASS)
    yield _level(_OUTER - 0.5, WIDE, _LOWER, _LOWER + _BLADES, Material.GRASS)
    yield _level(12, _EDGE + 0.5, _LAWN, _LAWN + _BLADES, Material.WATER)
    yield _level(3, 10, _LAWN, 3.75, Material.WALL)
    roof = ((1.5, 3.7), (11.5, 3.7), (8.5, 5.1), (4.5, 5.1))
    yield filled(roof, Material.ROOF)
    # Paint shows both without a line; in characters a house is its roof, and a pond its level.
    yield Path(roof, Stroke.SOLID, closed=True, border=True)
    yield Path(((_EDGE + 2, _FULL), (_INNER + 1, _FULL)), Stroke.WATER, border=True)
    yield Path(((11, 3), (11, 3)), Stroke.SOLID, ink=Ink.WATER)
    # What the picture ends with above and at the sides, whatever else stands in it.
    yield Path(((0, 0), (WIDE, HIGH)), None)
    for x, head, char, bloom in _PLANTS:
        yield Sprig(x, head, "*", char, bloom)
        foot = _FULL if x < left else _TOE
        for place in range(1, int((head - foot) / row + 0.5)):
            yield Sprig(x, head - place * row, "|", "│", "green")


def _level(left: float, right: float, low: float, high: float, material: Material) -> Path:
    return filled(box(left, low, right, high), material)
