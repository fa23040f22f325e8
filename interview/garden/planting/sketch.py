"""A planting sketch: each zone as a grid of letters, a letter a plant, in drifts of one kind."""

from __future__ import annotations

import math
from string import ascii_uppercase
from typing import NamedTuple

from interview.garden.planting.choose import ZonePlan
from interview.garden.planting.count import drifts
from interview.garden.planting.record import Plant
from interview.quantities.evidence import OURS, Cited

MOST_ACROSS = Cited(36, OURS)
"""Letters in a row: with a space between them they fill seventy-one columns."""

MOST_DOWN = Cited(12, OURS)

BAND = Cited(3, OURS)
"""Most rows that a drift is spread over, so that it is a clump and not a line."""


class Sketch(NamedTuple):
    """One zone drawn with letters."""

    rows: tuple[str, ...]
    """Letters with a space between, from left to right along the zone."""
    legend: tuple[str, ...]
    """For each letter its plant, how many, and the sizes of its drifts."""
    plants_a_letter: int
    order: tuple[tuple[str, int], ...] = ()
    """The drifts from one end of the zone to the other: letter, and how many letters."""


def sketch(zone: ZonePlan, length_to_width: float) -> Sketch | None:
    """Return ``zone`` as a grid about ``length_to_width`` as long as wide; None without plants.

    ``length_to_width`` is a ratio above zero. Drifts of seven, five and three are mixed evenly. In
    a large zone a letter stands for several plants.
    """
    picks = [pick for pick in zone.picks if pick.count]
    if not picks:
        return None
    most = MOST_ACROSS.value * MOST_DOWN.value
    each = max(1, -(-sum(pick.count for pick in picks) // (most - len(picks))))
    letters = [(letter, -(-pick.count // each)) for letter, pick in zip(_LETTERS, picks)]  # noqa: B905
    order = _mixed(letters)
    rows = _grid("".join(letter * size for letter, size in order), length_to_width)
    legend = tuple(
        f"{letter}  {pick.count} {_name(pick.plant)}: {_sizes(pick.count)}"
        for letter, pick in zip(_LETTERS, picks)  # noqa: B905
    )
    return Sketch(rows, legend, each, tuple(order))


_LETTERS = ascii_uppercase + ascii_uppercase.lower()


def _name(plant: Plant) -> str:
    return plant.common_name.partition(" (")[0]


def _mixed(letters: list[tuple[str, int]]) -> list[tuple[str, int]]:
    """Return the drifts of every kind spread evenly among each other."""
    placed = []
    for letter, count in letters:
        groups = drifts(count)
        placed += [((n + 0.5) / len(groups), letter, size) for n, size in enumerate(groups)]
    return [(letter, size) for _, letter, size in sorted(placed)]


def _grid(plants: str, length_to_width: float) -> tuple[str, ...]:
    """Lay plants out in bands of a few rows, each band column by column, there and back."""
    least = -(-len(plants) // MOST_ACROSS.value)
    down = max(least, round(math.sqrt(len(plants) / length_to_width)))
    down = min(down, MOST_DOWN.value, len(plants))
    across = -(-len(plants) // down)
    cells = [[" "] * across for _ in range(down)]
    rest = iter(plants)
    bands = -(-down // BAND.value)
    for number in range(bands):
        band = range(number * down // bands, (number + 1) * down // bands)
        columns = range(across) if number % 2 == 0 else range(across - 1, -1, -1)
        for turn, column in enumerate(columns):
            for row in band if turn % 2 == 0 else reversed(band):
                cells[row][column] = next(rest, " ")
    return tuple(" ".join(row).rstrip() for row in cells)


def _sizes(count: int) -> str:
    """Say the sizes of the drifts, such as ``2 drifts of 7, one of 3``."""
    groups = drifts(count)
    if len(groups) == 1:
        return "one group" if count > 1 else "by itself"
    sizes = sorted(set(groups), reverse=True)
    numbers = [(groups.count(size), size) for size in sizes]
    first, *others = [f"{'one' if many == 1 else many} of {size}" for many, size in numbers]
    many = numbers[0][0]
    first = first.replace(" of", " drifts of" if many > 1 else " drift of")
    return ", ".join((first, *others))
