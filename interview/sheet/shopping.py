"""The shopping list, on the sheet."""

from __future__ import annotations

from collections.abc import Iterator

from interview.garden.earth.materials import BAG, EACH, TONS, Item, loaded
from interview.garden.plan import Plan
from interview.garden.planting.costs import Costs, costs, plant_count
from interview.garden.planting.seed import GRASS_SEED, SEED, Sowing
from interview.garden.summary import figure_words, wrap
from interview.quantities.shown import area_words, length_words
from interview.quantities.units import magnitude, same_dimension, show
from interview.sheet.common import order_words

SMALL = {SEED: ("oz", "g"), GRASS_SEED: ("lb", "kg")}
"""What seed is weighed in, US and metric."""


def shopping(plan: Plan) -> Iterator[str]:
    """Yield what to buy, in loads and in bags, and what it costs where prices were given."""
    yield from _list(plan, whole=True)


def in_short(plan: Plan) -> Iterator[str]:
    """Yield what to buy and what it costs together, without each price and what may be wished."""
    yield from _list(plan, whole=False)


def _list(plan: Plan, whole: bool) -> Iterator[str]:
    found = costs(plan.planting)

    def paid(thing: str) -> str:
        return _paid(found, thing) if whole else ""

    for item in plan.earth.shopping:
        cost = _cost(found, item) if whole else ""
        yield from wrap(f"[ ] {_line(plan, item)}{cost}", "      ")
    count = plant_count(plan.planting)
    each = f" ({count // plan.size.bed_count} a bed)" if plan.size.bed_count > 1 else ""
    listed = "listed below" if plan.planting.chosen.total else "by the places below"
    yield from wrap(f"[ ] plants: {count} in all{each}, {listed}{paid('plants')}", "      ")
    for sowing in plan.planting.sowings:
        yield from wrap(f"[ ] {_seed(plan, sowing)}{paid(sowing.name)}", "      ")
    missing = list(found.unpriced)
    if magnitude(plan.planting.bare_area, "ft**2") > 0:
        missing.append("straw or net")
        cover = figure_words(plan, "cover_area")
        yield from wrap(
            f"[ ] straw or a jute net: {cover}, over what is sown and what stays bare of the berm, "
            "until it is green",
            "      ",
        )
    for item in plan.earth.by_wish if whole else ():
        yield from wrap(f"( ) if you wish, {_line(plan, item)}", "      ")
    if found.lines:
        without = f"; no price given for {', '.join(missing)}" if missing else ""
        yield from wrap(f"Together: {found.sign}{found.total:.2f}{without}.", "      ")
    if found.unused:
        yield from wrap(f"Not on the list, though priced: {', '.join(found.unused)}.", "      ")


def _line(plan: Plan, item: Item) -> str:
    """Write one thing to buy: how much, in the ways it is sold, and what for."""
    return f"{item.name}: {_much(plan, item)}{_each(plan, item)}, {plan.answers.told(item.note)}"


def _much(plan: Plan, item: Item) -> str:
    if item.pieces is not None and item.piece is not None:
        if not same_dimension(item.piece, "m"):
            return str(item.pieces)
        pieces = "piece" if item.pieces == 1 else "pieces"
        return f"{item.pieces} {pieces} of {length_words(item.piece, plan.metric)}"
    loose = f"{order_words(item.buy, plan.metric)} loose"
    if item.bags is None or item.bag is None:
        return loose
    return f"{loose} or {_bags(item.bags)} of {show(item.bag, 'L' if plan.metric else 'ft**3', 2)}"


def _bags(count: int | None) -> str:
    return f"{count} {'bag' if count == 1 else 'bags'}"


def _seed(plan: Plan, sowing: Sowing) -> str:
    """Write what is sown, by weight; a packet knows its own seed better than any table."""
    unit = SMALL[sowing.name][plan.metric]
    low, high = (
        show(one, unit, 2, way) for one, way in ((sowing.least, "down"), (sowing.most, "up"))
    )
    area = area_words(sowing.area, plan.metric)
    much = f"{low.removesuffix(unit).strip()} to {high} for {area}"
    return f"{sowing.name}: {much}, {sowing.note}; where the packet says how thick, that goes first"


def _each(plan: Plan, item: Item) -> str:
    """Say how much of it goes to each of several beds; what comes from the spout to none."""
    whole = item.piece is not None or (item.name == "stone" and plan.earth.stone_way is not None)
    if plan.size.bed_count == 1 or whole:
        return ""
    unit = "m**3" if plan.metric else "ft**3"
    return f" for all the beds, {show(item.amount / plan.size.bed_count, unit, 2, 'up')} to each"


def _cost(found: Costs, item: Item) -> str:
    """Say what a thing costs, and how much of it that pays for."""
    line = found.of(item.name)
    if line is None:
        return ""
    counts = {BAG: f", {_bags(item.bags)}", EACH: f", {item.pieces}"}
    if item.weighs is not None and line.price.unit in TONS:
        tons = magnitude(loaded(item.weighs, line.price.unit), line.price.unit)
        counts[line.price.unit] = f", {tons:g} {'tonne' if line.price.unit == 't' else 'ton'}"
    return f"{_paid(found, item.name)}{counts.get(line.price.unit, '')}"


def _paid(found: Costs, thing: str) -> str:
    line = found.of(thing)
    if line is None:
        return ""
    price = line.price.words.removeprefix(f"{line.price.thing} ")
    return f". Costs {found.sign}{line.amount:.2f} at {price}"
