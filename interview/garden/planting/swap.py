"""Changes a proposed planting as the gardener asks, and leaves the rest as it was."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from interview.garden.planting.choice import MOST_KINDS, Bed, Candidate, substitute
from interview.garden.planting.count import own_count, shared_counts
from interview.garden.planting.record import Plant
from interview.garden.planting.wishes import Swap, Wishes
from interview.quantities.units import quantity

Judge = Callable[[Plant, Bed], Candidate]
"""How well a plant would do in a zone."""


def make_changes(
    beds: Sequence[Bed], plants: Sequence[Plant], wishes: Wishes, judge: Judge
) -> tuple[list[Plant], list[str]]:
    """Swap plants and place favourites; the favourites that found no place, and notes."""
    notes: list[str] = []
    for swap in wishes.swaps:
        notes += _swap(swap, beds, plants, wishes, judge)
    homeless = [] if not beds else _favourites(beds, plants, wishes, judge)
    return homeless, notes


def matching(plants: Sequence[Plant], name: str) -> list[Plant]:
    """Return the plants that answer to ``name``; a scientific name comes before other names."""
    found = [plant for plant in plants if plant.answers_to(name)]
    exact = [one for one in found if one.scientific_name.casefold() == name.strip().casefold()]
    return exact or found


def stranger(name: str, plants: Sequence[Plant]) -> str:
    """Say that the list does not know ``name``, with the nearest name it has."""
    from difflib import get_close_matches

    known = {one: one for plant in plants for one in sorted(plant.names)}
    near = get_close_matches(" ".join(name.split()).casefold(), known)
    hint = "look up how wet it likes to be."
    if near:
        owner = next(plant for plant in plants if near[0] in plant.names)
        same = owner.scientific_name.casefold() == near[0]
        hint = f"did you mean {owner.scientific_name if same else near[0]}?"
    return f"“{name}” is not in the plant list: {hint}"


def _swap(
    swap: Swap, beds: Sequence[Bed], plants: Sequence[Plant], wishes: Wishes, judge: Judge
) -> list[str]:
    """Take one plant out wherever it stands and put another in its place."""
    unwanted = matching(plants, swap.out)
    if not unwanted:
        return [stranger(swap.out, plants)]
    for bed in beds:
        bed.candidates = [one for one in bed.candidates if one.plant not in unwanted]
    wanted = next(iter(matching(plants, swap.into)), None)
    notes = [stranger(swap.into, plants)] if swap.into and not wanted else []
    found = False
    for bed in beds:
        for place, gone in enumerate(list(bed.picked)):
            if gone.plant in unwanted:
                found = True
                notes += _put_in(gone, place, bed, beds, wanted, judge)
    if not found and any(wishes.keep(one) for one in unwanted):
        notes.append(
            f"“{swap.out}” is asked for and swapped out, so it is not planted: take one of the "
            "two back."
        )
    elif not found and swap.into:
        notes.append(f"“{swap.out}” is not in the planting, so nothing was swapped for it.")
    return notes


def _put_in(
    gone: Candidate,
    place: int,
    bed: Bed,
    beds: Sequence[Bed],
    wanted: Plant | None,
    judge: Judge,
) -> list[str]:
    notes = []
    new = None
    if wanted and wanted not in [one.plant for one in bed.picked]:
        one = judge(wanted, bed)
        if one.unsuited:
            notes.append(f"{_named(wanted)} has no place on the {bed.zone.value}. {one.against}")
        else:
            new = one._replace(favourite=True)
    new = new or substitute(gone.plant, bed, beds)
    if new is None:
        bed.picked[place] = gone._replace(instead_of=gone.plant)
        notes.append(
            f"Nothing else in the list suits the {bed.zone.value}, so {gone.plant.common_name} "
            "stays until you find another."
        )
        return notes
    bed.candidates = [one for one in bed.candidates if one.plant is not new.plant]
    bed.picked[place] = new._replace(instead_of=gone.instead_of or gone.plant)
    return notes


def _named(plant: Plant) -> str:
    return plant.common_name[0].upper() + plant.common_name[1:]


def _favourites(
    beds: Sequence[Bed], plants: Sequence[Plant], wishes: Wishes, judge: Judge
) -> list[Plant]:
    homeless = []
    for plant in plants:
        if not wishes.keep(plant) or any(plant in matching(plants, s.out) for s in wishes.swaps):
            continue
        if not (_stands(plant, beds) or _take_swapped(plant, beds, judge)):
            suited = [(judge(plant, bed), bed) for bed in beds]
            suited = [pair for pair in suited if not pair[0].unsuited]
            if suited:
                _join(*min(suited, key=lambda pair: (bool(pair[0].against), pair[0].quality)))
            else:
                homeless.append(plant)
    return homeless


def _stands(plant: Plant, beds: Sequence[Bed]) -> bool:
    """Mark a favourite that stands in the garden already."""
    found = False
    for bed in beds:
        for place, one in enumerate(bed.picked):
            if one.plant is plant:
                bed.picked[place] = one._replace(favourite=True)
                found = True
    return found


def _take_swapped(plant: Plant, beds: Sequence[Bed], judge: Judge) -> bool:
    """Give a favourite the place of a plant that was left out, where one suits it."""
    for bed in beds:
        one = judge(plant, bed)
        for place, old in enumerate(bed.picked):
            if old.instead_of is not None and not old.favourite and not one.unsuited:
                bed.candidates.append(old)
                _drop(plant, bed)
                bed.picked[place] = one._replace(favourite=True, instead_of=old.instead_of)
                return True
    return False


def _join(one: Candidate, bed: Bed) -> None:
    """Add a favourite as one kind more, or where there is no room in the last one's place."""
    _drop(one.plant, bed)
    mine = one._replace(favourite=True)
    others = [place for place, old in enumerate(bed.picked) if not old.favourite]
    if len(bed.picked) >= min(MOST_KINDS.value + 2, bed.most) and others:
        bed.candidates.append(bed.picked[others[-1]])
        bed.picked[others[-1]] = mine
    else:
        bed.picked.append(mine)


def _drop(plant: Plant, bed: Bed) -> None:
    bed.candidates = [one for one in bed.candidates if one.plant is not plant]


def counts_of(bed: Bed) -> tuple[int, ...]:
    """Return how many of each picked plant; a swap changes no count but its own."""
    area = quantity(bed.area_ft2, "ft**2")
    first = [one.instead_of or one.plant for one in bed.picked]
    counts = shared_counts(first, area)
    share = bed.area_ft2 / max(1, len(first))
    return tuple(
        count if one.plant is plant else own_count(one.plant, share)
        for one, plant, count in zip(bed.picked, first, counts, strict=True)
    )
