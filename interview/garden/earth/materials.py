"""How much to move, to buy and to bring, in amounts a yard store sells."""

from __future__ import annotations

import math
from dataclasses import dataclass
from enum import Enum

from interview.quantities.evidence import ARITHMETIC, PRACTICE, Cited, Provenance, Source
from interview.quantities.guards import not_negative, positive, times
from interview.quantities.units import (
    METRIC,
    US,
    Quantity,
    magnitude,
    quantity,
    ratio,
    round_up,
    same_dimension,
)

BARROW_FT3 = 3.0
BARROW_L = 85.0
ORDER_STEP_YD3, ORDER_STEP_M3 = 0.5, 0.1
HOURS_YD3 = Cited((0.25, 0.5), PRACTICE)
"""Soil that one adult digs and moves by hand, cubic yards an hour, slow and quick."""
STONE_LB_FT3 = Cited(100.0, Source("loose stone, about", Provenance.MEMORY))
BAGS = {
    "mulch": ((2.0, "ft**3"), (50.0, "L")),
    "compost": ((1.0, "ft**3"), (50.0, "L")),
    "stone": ((0.5, "ft**3"), (15.0, "L")),
}
"""What a bag holds, US and metric: common sizes in yard stores, no source."""
STONE_LAYER = {
    US: Cited(
        (6.0, "in"),
        Source(
            "stone for inlets, washed 2 to 3 in, in a layer of 6 in (150 mm): EPCOR, Edmonton, "
            "web page on rain gardens",
            Provenance.SECONDARY,
        ),
    ),
    METRIC: Cited(
        (150.0, "mm"),
        Source("washed stone of 50 to 75 mm, no more than half its layer", Provenance.OURS),
    ),
}
INLET = {US: ((3.0, "ft"), (2.0, "ft")), METRIC: ((0.9, "m"), (0.6, "m"))}
"""Stone pad where the water comes in, length and width: custom of the trade."""
CHANNEL_WIDTH = {US: (18.0, "in"), METRIC: (450.0, "mm")}
"""Width of a channel of stone from the downspout: a choice of ours."""
BEYOND_TOE = {US: (1.0, "ft"), METRIC: (300.0, "mm")}
"""Stone below a notch beyond the toe of the berm: a choice of ours."""


class Soil(Enum):
    """The soil that is dug."""

    SAND = "sand"
    LOAM = "loam"
    CLAY = "clay"


@dataclass(frozen=True)
class Bulking:
    """Loose soil from one measure of undisturbed soil, least and most."""

    low: float
    high: float
    source: Source


BULKING = {
    Soil.SAND: Bulking(
        1.15,
        1.15,
        Source(
            "construction estimating text, example 9-3, title not shown in the copy: 15 % swell",
            Provenance.SECONDARY,
        ),
    ),
    Soil.LOAM: Bulking(
        1.25, 1.25, Source("FM 5-434 type table, US Army: common earth", Provenance.MEMORY)
    ),
    Soil.CLAY: Bulking(
        1.35,
        1.40,
        Source(
            "between 30 %, construction estimating text, example 9-2, and 43 %, US Army FM 5-434 "
            "from memory",
            Provenance.OURS,
        ),
    ),
}


@dataclass(frozen=True)
class Soilwork:
    """Soil to move by hand."""

    bank: Quantity
    """As it lies in the ground."""
    loose: Quantity
    """As it lies in a heap; for clay the higher figure."""
    loads: int
    """Wheelbarrow loads, up to a whole load."""
    hours_quick: float
    hours_slow: float


def loosen(bank: Quantity, soil: Soil) -> Quantity:
    """Return the loose volume of undisturbed soil, the higher figure where there are two."""
    dug = not_negative(bank, "ft**3", "The soil to dig must be zero or more.")
    return quantity(dug * BULKING[soil].high, "ft**3")


def soilwork(
    bank: Quantity, soil: Soil = Soil.LOAM, barrow: Quantity | None = None, adults: int = 1
) -> Soilwork:
    """Return the heap, the wheelbarrow loads and the hours for undisturbed soil ``bank``.

    ``barrow`` is 3 ft³ unless given. Raises ValueError for no barrow or nobody to dig.
    """
    if adults < 1:
        raise ValueError("At least one person must dig.")
    size = quantity(BARROW_FT3, "ft**3") if barrow is None else barrow
    positive(size, "ft**3", "The wheelbarrow must hold more than zero.")
    loose = loosen(bank, soil)
    yards = magnitude(bank, "yd**3") / adults
    slow, quick = HOURS_YD3.value
    return Soilwork(
        bank=bank,
        loose=loose,
        loads=math.ceil(ratio(loose, size) - 1e-9),
        hours_quick=yards / quick,
        hours_slow=yards / slow,
    )


def layer(area: Quantity, depth: Quantity) -> Quantity:
    """Return the volume of an even layer: mulch, compost or mix over ``area``."""
    wide = not_negative(area, "ft**2", "The area must be zero or more.")
    deep = not_negative(depth, "ft", "The depth of the layer must be zero or more.")
    return quantity(wide * deep, "ft**3")


def covers(volume: Quantity, depth: Quantity) -> Quantity:
    """Return the area that ``volume`` covers at ``depth``: one cubic yard, 162 ft² at 2 in."""
    deep = positive(depth, "ft", "The depth of the layer must be more than zero.")
    held = not_negative(volume, "ft**3", "The volume must be zero or more.")
    return quantity(held / deep, "ft**2")


def sold_in(bought: Quantity, metric: bool = False) -> str:
    """Return the unit in which a volume bought is told: half cubic yards as such, else feet."""
    if metric:
        return "m**3"
    halves = magnitude(bought, "yd**3") * 2
    return "yd**3" if halves >= 1 - 1e-9 and abs(halves - round(halves)) < 1e-9 else "ft**3"


def order(volume: Quantity, metric: bool = False) -> Quantity:
    """Return ``volume`` raised to 1/2 yd³, or to 0.1 m³ with ``metric``."""
    if metric:
        return round_up(volume, ORDER_STEP_M3, "m**3")
    return round_up(volume, ORDER_STEP_YD3, "yd**3")


def stone(length: Quantity, width: Quantity, metric: bool = False) -> Quantity:
    """Return the stone for a pad, an apron or a channel, both lengths. Source: ``STONE_LAYER``."""
    deep = quantity(*STONE_LAYER[METRIC if metric else US].value)
    sentence = "The stone must cover more than nothing."
    feet = positive(length, "ft", sentence) * positive(width, "ft", sentence)
    return quantity(feet * magnitude(deep, "ft"), "ft**3")


@dataclass(frozen=True)
class Item:
    """One line of the shopping list."""

    name: str
    amount: Quantity
    """What the sum gives."""
    buy: Quantity
    """What to order: raised to what a store sells."""
    note: str
    source: Source
    bag: Quantity | None = None
    """What a bag of it holds; none where it is not sold in bags."""

    @property
    def bags(self) -> int | None:
        """Whole bags that hold the amount; none where it is not sold in bags."""
        if self.bag is None:
            return None
        return math.ceil(ratio(self.amount, self.bag) - 1e-9)


EACH, BAG = "each", "bag"


def cost(item: Item, price: float, unit: str) -> float:
    """Return what an item costs at ``price`` for one ``unit``.

    ``unit`` is ``bag`` or a unit of the item's own kind, such as ``yd**3`` or ``ft``; by volume or
    length the amount to order is paid. Raises ValueError for a unit the item is not sold in.
    """
    if unit == BAG and item.bags is not None:
        return price * item.bags
    if unit in (BAG, EACH) or not same_dimension(item.buy, unit):
        raise ValueError(f"The price of {item.name} is not for a unit it is sold in.")
    return price * magnitude(item.buy, unit)


@dataclass(frozen=True)
class BedSizes:
    """The sizes that decide what is bought; lengths and areas of one bed."""

    floor_area: Quantity
    mulch_area: Quantity
    mulch_depth: Quantity
    compost_depth: Quantity | None = None
    """Compost dug into the floor; none when not given."""
    notch_width: Quantity | None = None
    apron_length: Quantity | None = None
    """Stone below the notch; none when not given."""
    channel_length: Quantity | None = None
    """Channel of stone from the downspout, one for all the beds."""
    pipe_length: Quantity | None = None
    beds: int = 1
    """How many beds of these sizes."""
    berm_soil: Quantity | None = None
    """Soil to bring for the berm; none where what is dug makes it."""


def shopping_list(bed: BedSizes, metric: bool = False) -> tuple[Item, ...]:
    """Return what to buy, in order sizes raised to a store's step; empty lines are left out.

    No edging: the step cut with the spade at the rim holds the mulch.
    """
    items = [
        _heap(
            "mulch",
            times(layer(bed.mulch_area, bed.mulch_depth), bed.beds),
            "shredded hardwood, not bark nuggets",
            metric,
        )
    ]
    if bed.compost_depth is not None:
        worked = times(layer(bed.floor_area, bed.compost_depth), bed.beds)
        items.append(_heap("compost", worked, "mixed into the floor", metric))
    items.append(_stone(stone_needed(bed, metric), metric))
    if bed.berm_soil is not None:
        brought = times(bed.berm_soil, bed.beds)
        note = "clay loam or silt that packs, for the berm"
        step, unit = (0.1, "m**3") if metric else (1.0, "ft**3")
        items.append(Item("berm soil", brought, round_up(brought, step, unit), note, PRACTICE))
    if bed.pipe_length is not None:
        items.append(_length("pipe", bed.pipe_length, "from the downspout", metric))
    return tuple(item for item in items if item.amount.m > 0)


def stone_needed(bed: BedSizes, metric: bool = False) -> Quantity:
    """Return the stone of the inlets, of the aprons below the notches and of the channel."""
    system = METRIC if metric else US
    long, across = INLET[system]
    inlet = stone(quantity(*long), quantity(*across), metric)
    each = magnitude(inlet, "ft**3")
    if bed.notch_width is not None and bed.apron_length is not None:
        each += magnitude(stone(bed.apron_length, bed.notch_width, metric), "ft**3")
    whole = each * bed.beds
    if bed.channel_length is not None and bed.channel_length.m > 0:
        wide = quantity(*CHANNEL_WIDTH[system])
        whole += magnitude(stone(bed.channel_length, wide, metric), "ft**3")
    return quantity(whole, "ft**3")


def _bag(name: str, metric: bool) -> Quantity:
    return quantity(*BAGS[name][metric])


def _heap(name: str, amount: Quantity, note: str, metric: bool) -> Item:
    return Item(name, amount, order(amount, metric), note, ARITHMETIC, _bag(name, metric))


def _stone(amount: Quantity, metric: bool) -> Item:
    unit, pounds = ("kg", 0.45359237) if metric else ("lb", 1.0)
    mass = magnitude(amount, "ft**3") * STONE_LB_FT3.value * pounds
    note = f"washed, 2 to 3 in, about {math.ceil(mass / 10) * 10} {unit}"
    if metric:
        note = note.replace("2 to 3 in", "50 to 75 mm")
    step, volume = (0.05, "m**3") if metric else (1.0, "ft**3")
    buy = round_up(amount, step, volume)
    return Item("stone", amount, buy, note, PRACTICE, _bag("stone", metric))


def _length(name: str, amount: Quantity, note: str, metric: bool) -> Item:
    step, unit = (0.5, "m") if metric else (1.0, "ft")
    return Item(name, amount, round_up(amount, step, unit), note, ARITHMETIC)
