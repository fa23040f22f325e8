"""What the garden costs, from the prices that were given."""

from __future__ import annotations

from typing import NamedTuple

from interview.asking.question import Unanswered
from interview.garden.earth.materials import Item, cost
from interview.garden.planting.results import PlantingResults
from interview.garden.size.price_lines import BY_PLANT, Price


class CostLine(NamedTuple):
    """What one thing on the list costs."""

    price: Price
    amount: float


class Costs(NamedTuple):
    """What everything that has a price costs."""

    lines: tuple[CostLine, ...]
    unpriced: tuple[str, ...]
    """Things on the list that have no price."""
    unused: tuple[str, ...]
    """Things that have a price and are not on the list."""

    @property
    def total(self) -> float:
        """The sum of all lines."""
        return sum(line.amount for line in self.lines)

    @property
    def sign(self) -> str:
        """The money sign, where one was written."""
        return next((line.price.sign for line in self.lines if line.price.sign), "")

    def of(self, thing: str) -> CostLine | None:
        """Return the line of one thing, or nothing where it has no price."""
        return next((line for line in self.lines if line.price.thing == thing), None)


def plant_count(found: PlantingResults) -> int:
    """Return the plants of all the beds; of a part with no species proposed its places to fill."""
    each = (sum(one.count for one in zone.picks) or zone.places for zone in found.chosen.zones)
    return sum(each) * found.size.bed_count


def bought(found: PlantingResults) -> tuple[Item, ...]:
    """Return everything on the list but the plants: materials, and seed once that is decided."""
    try:
        seed = tuple(one.item for one in found.sowings)
    except Unanswered:
        seed = ()
    return (*found.earth.shopping, *seed)


def costs(found: PlantingResults) -> Costs:
    """Return what the shopping list costs; raises ``Unanswered`` where there is no list yet."""
    prices = dict(found.earth.prices)
    lines, unpriced = [], []
    for item in bought(found):
        price = prices.pop(item.name, None)
        if price is None:
            unpriced.append(item.name)
        else:
            lines.append(CostLine(price, cost(item, price.amount, price.unit)))
    for thing in BY_PLANT:
        price = prices.pop(thing, None)
        try:
            count = plant_count(found)
        except Unanswered:
            count = 0
        if price is None or not count:
            unpriced.append(thing)
        else:
            lines.append(CostLine(price, price.amount * count))
    return Costs(tuple(lines), tuple(unpriced), tuple(prices))
