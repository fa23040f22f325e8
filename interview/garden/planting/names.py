"""Names of plants that somebody typed, held against the plants there are to choose from."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from difflib import SequenceMatcher

from interview.garden.planting.record import Plant
from interview.garden.planting.wishes import read_swap

NEAREST = 3
"""So many names are proposed for one that is not known."""
LIKE = 0.6
"""From this share of common letters on (0 to 1) a name is near another."""


def nearest(name: str, plants: Iterable[Plant]) -> tuple[str, ...]:
    """Return the names in the list that come nearest to ``name``, the nearest first.

    A name that holds every word typed comes before one that is only spelled like it.
    """
    wanted = " ".join(name.split()).casefold()
    words = wanted.split()
    found: list[tuple[bool, float, str]] = []
    for plant in plants:
        best = min(
            (
                (not all(word in one for word in words), -_likeness(wanted, one), one)
                for one in sorted(plant.names)
            ),
            default=(True, 0.0, ""),
        )
        if not best[0] or -best[1] >= LIKE:
            scientific = best[2] == plant.scientific_name.casefold()
            found.append((best[0], best[1], plant.scientific_name if scientific else best[2]))
    return tuple(dict.fromkeys(one for _, _, one in sorted(found)))[:NEAREST]


def _likeness(one: str, other: str) -> float:
    match = SequenceMatcher(None, one, other)
    if match.real_quick_ratio() < LIKE or match.quick_ratio() < LIKE:
        return 0.0
    return match.ratio()


def remark_on_wishes(names: Sequence[str], plants: Sequence[Plant]) -> str:
    """Say which of ``names`` no plant answers to, with the nearest names; empty where all do."""
    return " ".join(dict.fromkeys(_unknown(name, plants) for name in names)).strip()


def remark_on_swaps(
    lines: Sequence[str], plants: Sequence[Plant], planted: Sequence[Plant] | None
) -> str:
    """Say which plants to be swapped, or to come in, are unknown or not in the planting.

    ``planted`` are the plants of the planting as it is proposed, or none where that is not known.
    """
    said = []
    for swap in map(read_swap, lines):
        said += [_unknown(name, plants) for name in (swap.out, swap.into) if name]
        known = [plant for plant in plants if plant.answers_to(swap.out)]
        if known and planted is not None and not any(one in planted for one in known):
            said.append(f"“{swap.out}” is not in the planting, so there is nothing to swap.")
    return " ".join(dict.fromkeys(one for one in said if one))


def _unknown(name: str, plants: Sequence[Plant]) -> str:
    if not name.strip() or any(plant.answers_to(name) for plant in plants):
        return ""
    near = nearest(name, plants)
    hint = f"Nearest: {', '.join(near)}." if near else "Nothing there is spelled like it."
    return f"“{name.strip()}” is not in the plant list. {hint} It is kept as you typed it."
