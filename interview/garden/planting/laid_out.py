"""Where each plant stands, seen from above, in drifts of one kind."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import islice, zip_longest
from string import ascii_lowercase

from interview.drawing.scene import XY, Label, Shape, Sprig, inside
from interview.garden.planting.choose import Pick, ZonePlan
from interview.garden.planting.count import drifts
from interview.garden.planting.record import Plant, PlantKind
from interview.garden.survey.rings import shoelace

_MARKS = {
    PlantKind.GRASS: "ψ",
    PlantKind.SEDGE: "ψ",
    PlantKind.RUSH: "ψ",
    PlantKind.FERN: "♠",
    PlantKind.SHRUB: "♣",
}
_FLOWERS = "✿✽✺✦●"
"""Marks of flowers, one after the other: kinds beside each other differ in mark and letter."""
_GRASS_BLOOM = "straw"
_FLOWER_BLOOMS = ("violet", "gold", "pink", "blue", "white")
_INKS = {
    "white": "white",
    "yellow": "gold",
    "orange": "gold",
    "red": "red",
    "pink": "pink",
    "purple": "violet",
    "blue": "blue",
    "green": "green",
    "brown": "straw",
}
"""The ink of each color of flower in the plant list."""
_TRIANGLE = math.sqrt(3) / 2
"""Height over side of a triangle of three plants equally far from each other."""


def letters(zones: Sequence[ZonePlan]) -> dict[str, str]:
    """Return the letter of each kind of a planting, by its scientific name, in the list's order."""
    names = dict.fromkeys(
        pick.plant.scientific_name for zone in zones for pick in zone.picks if pick.count
    )
    doubles = (f"{one}{one}" for one in ascii_lowercase)
    return dict(zip(names, (*ascii_lowercase, *doubles), strict=False))


def mark_of(plant: Plant, place: int) -> tuple[str, str]:
    """Return the mark of a kind and the color it is drawn in; ``place`` tells flowers apart.

    A flower has its own color, where the list knows it.
    """
    if plant.kind in _MARKS:
        return _MARKS[plant.kind], _GRASS_BLOOM if plant.grasslike else "green"
    return _FLOWERS[place % len(_FLOWERS)], _INKS.get(
        plant.flower_color, _FLOWER_BLOOMS[place % len(_FLOWER_BLOOMS)]
    )


def planted(
    zone: ZonePlan, outer: Sequence[XY], inner: Sequence[XY], names: dict[str, str], beds: int = 1
) -> Iterator[Shape]:
    """Yield every plant of one zone, between two outlines, and the letter of each kind once.

    ``inner`` has no points for the floor. The plants of a zone are shared by ``beds`` alike. They
    stand in a triangular grid, as far apart as brings their number into the area, one drift after
    the other on the way round.
    """
    picks = [pick for pick in zone.picks if pick.count]
    many = round(sum(pick.count for pick in picks) / beds)
    places = _places(tuple(outer), tuple(inner), many)
    rest = iter(places)
    order, told = list(names), set[str]()
    for pick, size in _drifts(picks):
        name = pick.plant.scientific_name
        letter = names[name]
        char, bloom = mark_of(pick.plant, order.index(name))
        drift = list(islice(rest, size))
        yield from (Sprig(x, y, letter, char, bloom) for x, y in drift)
        if drift and name not in told:
            told.add(name)
            middle = min(drift, key=lambda at: math.dist(at, _mean(drift)))
            yield Label(letter, *middle, optional=True)


def _mean(points: Sequence[XY]) -> XY:
    return sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)


def _drifts(picks: Sequence[Pick]) -> Iterator[tuple[Pick, int]]:
    """Yield a drift of each kind in turn, until all are planted."""
    by_kind = [[(pick, size) for size in drifts(pick.count)] for pick in picks]
    for turn in zip_longest(*by_kind):
        yield from (one for one in turn if one is not None)


def _places(outer: tuple[XY, ...], inner: tuple[XY, ...], many: int) -> list[XY]:
    """Return about ``many`` places of a triangular grid between two outlines, on the way round."""
    if not many:
        return []
    area = abs(shoelace(outer)) - (abs(shoelace(inner)) if inner else 0.0)
    apart = math.sqrt(area / many / _TRIANGLE)
    found: list[XY] = []
    for _ in range(_TRIES):
        found = [at for at in _grid(outer, apart) if not inner or not inside(at, inner)]
        if len(found) >= many:
            break
        apart *= _CLOSER
    # Those left over are taken out evenly, so that no part of the bed stays bare.
    found = [found[place * len(found) // many] for place in range(min(many, len(found)))]
    middle = _mean(outer)
    if inner:
        return sorted(found, key=lambda at: math.atan2(at[0] - middle[0], middle[1] - at[1]))
    return sorted(found, key=lambda at: (round((at[0] - middle[0]) / (2 * apart)), at[1]))


_TRIES, _CLOSER = 12, 0.97


def _grid(outline: tuple[XY, ...], apart: float) -> Iterator[XY]:
    left, right = min(x for x, _ in outline), max(x for x, _ in outline)
    low, high = min(y for _, y in outline), max(y for _, y in outline)
    y, row = low + apart / 2, 0
    while y < high:
        x = left + apart / 2 * (1 + row % 2)
        while x < right:
            if inside((x, y), outline):
                yield x, y
            x += apart
        y, row = y + apart * _TRIANGLE, row + 1
