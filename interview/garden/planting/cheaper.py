"""Ways to fewer plants or less money, each with its count, beside what the plan counts on."""

from __future__ import annotations

import math
from collections.abc import Iterator

from interview.garden.planting.choose import PlantingPlan
from interview.garden.planting.costs import costs, plant_count
from interview.garden.planting.results import PlantingResults
from interview.garden.planting.stock import PlantSize
from interview.garden.size.zones import Zone
from interview.quantities.evidence import PRACTICE, Cited
from interview.quantities.records import record

PIECES = Cited(3, PRACTICE)
"""Pieces that a grown clump of a grass or a sedge is cut into, and more of an old one."""

BELOW_POND_LINE = (Zone.FLOOR, Zone.SIDE)


@record
class CheaperWay:
    """One way to plant for less; of all the beds together."""

    name: str
    count: int
    """Plants to buy; where they are bought over two years, in the first."""
    how: str
    """What to do, in whole sentences."""
    cost: float | None = None
    """Of these plants at the price that was given; nothing where none was, or it is not theirs."""
    pays_below: float | None = None
    """The price of one plant of the other size below which this way costs less."""


def set_in(found: PlantingResults, chosen: PlantingPlan, *zones: Zone) -> int:
    """Return the plants to set in ``zones`` of all the beds, or the places where none is named."""
    parts = [one for one in chosen.zones if one.zone in zones]
    each = sum(pick.count for one in parts for pick in one.picks)
    if not chosen.total:
        each = sum(one.places for one in parts)
    return each * found.size.bed_count


def as_large_pots(found: PlantingResults) -> int:
    """Return the plants of the whole garden, were they all of large pots."""
    return set_in(found, found.of_large_pots, *Zone)


def to_pond_line(found: PlantingResults) -> int:
    """Return the plants of floor and side alone, of the size that is planted."""
    return set_in(found, found.chosen, *BELOW_POND_LINE)


def large_pots_to_pond_line(found: PlantingResults) -> int:
    """Return the large pots of floor and side alone: the fewest."""
    return set_in(found, found.of_large_pots, *BELOW_POND_LINE)


def with_seed(found: PlantingResults) -> int:
    """Return the plugs of floor and side, where the rim is sown."""
    return set_in(found, found.of_seed, *BELOW_POND_LINE)


def first_half(found: PlantingResults) -> int:
    """Return the plants of this year where the other half follows in a year."""
    return math.ceil(plant_count(found) / 2)


def divided(found: PlantingResults) -> int:
    """Return the grasses, sedges and rushes in the planting: clumps that a spade divides."""
    picks = (pick for zone in found.chosen.zones for pick in zone.picks)
    return sum(pick.count for pick in picks if pick.plant.grasslike) * found.size.bed_count


def clumps(found: PlantingResults) -> int:
    """Return the grown clumps, each cut into ``PIECES``, that make the plants of ``divided``."""
    beds = found.size.bed_count
    picks = (pick for zone in found.chosen.zones for pick in zone.picks if pick.plant.grasslike)
    return sum(math.ceil(pick.count * beds / PIECES.value) for pick in picks)


def cheaper_ways(found: PlantingResults) -> tuple[CheaperWay, ...]:
    """Return the ways that buy fewer plants than the plan counts on, or less costly ones.

    Raises ``Unanswered`` while the planting waits for an answer.
    """
    now = plant_count(found)
    return tuple(way for way in _ways(found, now) if 0 < way.count < now)


def fewest(found: PlantingResults) -> int:
    """Return the fewest plants that any of the ways leaves, those of friends counted as well."""
    return min(plant_count(found), to_pond_line(found), large_pots_to_pond_line(found))


def _ways(found: PlantingResults, now: int) -> Iterator[CheaperWay]:
    line = costs(found).of("plants")
    price = line.price.amount if line else None

    def same(name: str, count: int, how: str) -> CheaperWay:
        return CheaperWay(name, count, how, None if price is None else price * count)

    def other(name: str, count: int, how: str) -> CheaperWay:
        below = None if price is None or not count else price * now / count
        return CheaperWay(name, count, how, pays_below=below)

    size = found.planted
    if size is not PlantSize.LARGE_POT:
        yield other(
            "large pots of 1 gallon (4 L), 18 in (450 mm) apart",
            as_large_pots(found),
            "They look full sooner, and the ground between them stays open longer: keep it "
            "mulched. Choose large pots where you are asked what is planted.",
        )
    if size is not PlantSize.SEED:
        yield same(
            "plants to the pond line only",
            to_pond_line(found),
            "Leave the rim to the lawn: lay its sod back there, or sow grass, and do not mow "
            "below the pond line.",
        )
    if size is not PlantSize.LARGE_POT:
        yield other(
            "large pots to the pond line only",
            large_pots_to_pond_line(found),
            "Both ways at once: the fewest plants.",
        )
    if size is not PlantSize.SEED:
        yield other(
            "seed on the rim, plugs below it",
            with_seed(found),
            "Sow native seed of dry ground as thick as the packet says, on bare raked soil "
            "without mulch; not on the floor or the sides, where the water washes it out. Choose "
            "seed where you are asked what is planted, and the list says how much to buy: the seed "
            "is paid for on top.",
        )
    yield same(
        "half now, half next year",
        first_half(found),
        "Set whole groups at their full distance, the floor first, then the sides; do not set "
        "them twice as far apart. Mulch the gaps 3 in (75 mm) deep and pull weeds there every "
        "week of the first summer, before they seed. Next year fill the gaps, or set pieces of "
        "what has grown.",
    )
    if many := divided(found):
        yield same(
            "grasses and sedges from friends",
            now - many,
            f"{many} of the plants are grasses, sedges or rushes. {clumps(found)} grown clumps "
            "make them: lift each in spring or autumn and cut it with a spade into "
            f"{PIECES.value} pieces with roots. Take only the kinds named here, never from the "
            "wild; shake and wash the old soil off, it carries weeds and worms.",
        )
