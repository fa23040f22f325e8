"""The spot and how far each thing is from it: directions are not asked, so they spread in a fan."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from enum import Enum
from typing import NamedTuple

from interview.drawing.scene import (
    XY,
    Drawing,
    Ink,
    Label,
    LabelSpot,
    Mark,
    Material,
    Path,
    Shape,
    Stroke,
    Symbol,
    box,
    filled,
)

_FARTHEST = 60.0
"""Feet beyond which a thing is drawn no farther away; its distance says so."""
_GUESSED = 25.0
"""Feet at which a thing is drawn, dashed, while its distance is not known."""
_SPREAD = math.radians(75)
"""Half of the fan."""
_BED = (10.0, 5.0)
"""Half length and half width in feet of the spot while the room is not measured."""
_ROUND = 24
_LAWN = 7.0
"""Feet of lawn around what is drawn."""
NAMES = {
    "basement": "house",
    "slab": "building",
    "septic": "septic",
    "well": "well",
    "property_line": "property line",
    "pavement": "paving",
    "retaining_wall": "wall",
    "tree": "tree",
    "slope_crest": "bank",
    "water": "water",
    "spout": "downspout",
    "mark": "painted mark",
}
"""What stands in the yard, in a word or two; keys are those of the question."""


class Judged(Enum):
    """How a distance stands against its limit."""

    GOOD = ("✓", Ink.GOOD)
    NEAR = ("▲", Ink.LOOK)
    STOP = ("■", Ink.STOP)
    OPEN = ("?", Ink.MUTED)
    PLAIN = ("", Ink.TEXT)
    """There is no limit that it is held against."""


class Thing(NamedTuple):
    """One thing in the yard that the garden keeps away from."""

    key: str
    name: str
    far_ft: float | None
    far: str
    """Its distance in words; empty while it is not known."""
    standing: Judged
    here: bool = False
    """Whether it is the one asked for now."""

    @property
    def ink(self) -> Ink:
        """What it is drawn in: its verdict, and what is asked for now as a thing that is due."""
        due = self.here and self.standing is Judged.OPEN
        return Ink.DUE if due else self.standing.value[1]


class RoomSide(NamedTuple):
    """How long the room is one way, in words; dashed and with a mark while it is not known."""

    said: str = ""
    here: bool = False
    """Whether it is asked for now."""

    @property
    def label(self) -> str:
        """What stands at it."""
        return self.said or "how far?"

    @property
    def ink(self) -> Ink:
        """What it is written in."""
        return Ink.DUE if self.here else Ink.TEXT if self.said else Ink.MUTED


def yard(
    things: Sequence[Thing],
    long_ft: float | None,
    wide_ft: float | None,
    sides: tuple[RoomSide, RoomSide] | None = None,
) -> Drawing:
    """Return the spot with a line to each thing, distances to one scale, directions spread out.

    ``long_ft`` and ``wide_ft`` are the room of the garden, drawn dashed while it is not measured;
    ``sides`` are the same in words where they are asked for.
    """
    return Drawing(
        title="THE SPOT, and what is near it",
        description=_words(things),
        shapes=tuple(_shapes(things, long_ft, wide_ft, sides)),
        notes=("Distances are to scale. Directions are not: nobody asked for them.",),
        ground=Material.LAWN,
    )


def _words(things: Sequence[Thing]) -> str:
    said = "; ".join(f"{one.name} {one.far or 'not measured yet'}" for one in things)
    return f"The spot, and how far it is from each thing: {said}." if said else "The spot."


_AROUND = 1.5
"""Feet from a spot to the dashes that say that its size is not measured."""


def _shapes(
    things: Sequence[Thing],
    long_ft: float | None,
    wide_ft: float | None,
    sides: tuple[RoomSide, RoomSide] | None,
) -> Iterator[Shape]:
    half_long = _BED[0] if long_ft is None else long_ft / 2
    half_wide = _BED[1] if wide_ft is None else wide_ft / 2
    measured = long_ft is not None and wide_ft is not None
    bed = _oval(0.0, 0.0, half_long, half_wide)
    ends = []
    for place, thing in enumerate(things):
        turn = _turn(place, len(things))
        toward = (math.sin(turn), math.cos(turn))
        start = _edge(toward, half_long, half_wide)
        far = min(_GUESSED if thing.far_ft is None else thing.far_ft, _FARTHEST)
        end = (start[0] + toward[0] * far, start[1] + toward[1] * far)
        ends.append((thing, start, end))
        yield from _thing(thing, end, toward)
    yield filled(bed, Material.RIM)
    yield filled(_oval(0.0, 0.0, 0.7 * half_long, 0.6 * half_wide), Material.FLOOR)
    if measured:
        yield Path(bed, Stroke.SOLID, True, border=True)
    else:  # on the lawn around it: on its own edge the dashes would eat its colors
        around = _oval(0.0, 0.0, half_long + _AROUND, half_wide + _AROUND)
        yield Path(around, Stroke.DASHED, True)
    for thing, start, end in ends:
        solid = Stroke.HEAVY if thing.here else Stroke.SOLID
        stroke = Stroke.DASHED if thing.far_ft is None else solid
        yield Path((start, end), stroke, ink=thing.ink)
    # The one asked for now is written first: it gets the best place.
    for place, (thing, _, end) in sorted(enumerate(ends), key=lambda one: not one[1][0].here):
        mark = thing.standing.value[0]
        said = f"{thing.far} {mark}".rstrip() if thing.far else mark
        above = abs(end[0]) < half_long
        # Neighbors a line apart: side by side their words would be read as one.
        shift = (0, -(place % 2)) if above else (0, 0)
        spot = LabelSpot.ABOVE if above else LabelSpot.CENTER
        brief = "" if thing.here else said
        yield Label(f"{thing.name} {said}", *end, spot, shift, ink=thing.ink, brief=brief)
    if sides is not None:
        long, wide = sides
        yield Label(f"↔ {long.label}", 0.0, -half_wide, LabelSpot.BELOW, ink=long.ink)
        yield Label(f"↕ {wide.label}", half_long, 0.0, LabelSpot.RIGHT, ink=wide.ink)
    yield Label("the spot", 0.0, 0.0, brief=" ")
    xs = [0.0, *(x for _, _, (x, _) in ends)]
    ys = [0.0, *(y for _, _, (_, y) in ends)]
    # Lawn all round, so that nothing at the edge is cut off.
    low, high = min(ys) - 1.4 * half_wide, max(ys) + _LAWN
    yield Path(((min(xs) - _LAWN - half_long, low), (max(xs) + _LAWN + half_long, high)), None)


def _turn(place: int, many: int) -> float:
    return 0.0 if many < 2 else -_SPREAD + 2 * _SPREAD * place / (many - 1)


def _edge(toward: XY, half_long: float, half_wide: float) -> XY:
    """Return where a ray from the middle of an oval leaves it."""
    far = 1 / math.hypot(toward[0] / half_long, toward[1] / half_wide)
    return far * toward[0], far * toward[1]


def _oval(x: float, y: float, across: float, up: float) -> tuple[XY, ...]:
    turns = (2 * math.pi * n / _ROUND for n in range(_ROUND))
    return tuple((x + across * math.cos(turn), y + up * math.sin(turn)) for turn in turns)


_BUILT = ("basement", "slab", "retaining_wall", "pavement")


def _thing(thing: Thing, at: XY, toward: XY) -> Iterator[Shape]:
    """Yield what stands at the far end of a distance, its near side at ``at``."""
    x, y = at[0] + 3 * toward[0], at[1] + 3 * toward[1]
    match thing.key:
        case "tree":
            yield filled(_oval(x, y, 3.0, 3.0), Material.GRASS)
        case "water":
            yield filled(_oval(x, y, 5.0, 2.5), Material.WATER)
        case "spout":
            yield Mark(*at, Symbol.INLET)
        case "mark":
            yield Mark(*at, Symbol.CROSS, Ink.DUE)
        case "well" | "septic":
            yield filled(_oval(x, y, 2.5, 2.5), Material.STONE)
        case "property_line":
            side = (-toward[1], toward[0])
            ends = [(at[0] + far * side[0], at[1] + far * side[1]) for far in (-8.0, 8.0)]
            yield Path(tuple(ends), Stroke.DASHED, ink=Ink.TEXT)
        case key if key in _BUILT:
            material = Material.STONE if key == "pavement" else Material.ROOF
            yield filled(box(x - 6, y - 2, x + 6, y + 3), material)
