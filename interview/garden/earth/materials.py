"""How much to move, to buy and to bring, in amounts a yard store sells."""

from __future__ import annotations

import math
from enum import Enum
from typing import NamedTuple

from interview.quantities.evidence import ARITHMETIC, PRACTICE, Cited, Provenance, Source
from interview.quantities.guards import not_negative, positive, times, whole_up
from interview.quantities.records import record
from interview.quantities.units import (
    METRIC,
    US,
    Quantity,
    magnitude,
    quantity,
    ratio,
    round_up,
    same_dimension,
    total,
)
from interview.reading.echo import word_list

ORDER_STEP_YD3, ORDER_STEP_M3 = 0.5, 0.1
ORDER_STEP_TON = 0.25
"""Steps of what a yard loads, by volume, and by weight in tons or tonnes: common practice, no
source."""
STONE_LB_FT3 = Cited(
    100.0,
    Source(
        "loose washed stone of 2700 lb to the cubic yard: stone yards' web pages; aggregate is "
        "75 to 110 lb/ft³ (1200 to 1750 kg/m³) as tested by ASTM C29, title not shown in the copy",
        Provenance.SECONDARY,
    ),
)
"""What a stone yard weighs on its scale differs with the stone: a price by the ton is about."""
BAGS = {
    "mulch": ((2.0, "ft**3"), (50.0, "L")),
    "compost": ((1.0, "ft**3"), (50.0, "L")),
    "stone": ((0.5, "ft**3"), (15.0, "L")),
}
"""What a bag holds, US and metric: common sizes in yard stores, no source."""
STONE_SIZE = {US: ((2.0, "in"), (3.0, "in")), METRIC: ((50.0, "mm"), (75.0, "mm"))}
"""Washed stone, from and to: no more than half its layer, or it does not lie in it."""
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


class Bulking(NamedTuple):
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


def loosen(bank: Quantity, soil: Soil) -> Quantity:
    """Return the loose volume of undisturbed soil, the higher figure where there are two.

    ``bank`` is its volume in the ground. Raises ValueError below zero. Source: ``BULKING``.
    """
    dug = not_negative(bank, "ft**3", "The soil to dig must be zero or more.")
    return quantity(dug * BULKING[soil].high, "ft**3")


def layer(area: Quantity, depth: Quantity) -> Quantity:
    """Return the volume of a layer ``depth`` thick over ``area``; raises ValueError below zero."""
    wide = not_negative(area, "ft**2", "The area must be zero or more.")
    deep = not_negative(depth, "ft", "The depth of the layer must be zero or more.")
    return quantity(wide * deep, "ft**3")


def covers(volume: Quantity, depth: Quantity) -> Quantity:
    """Return the area that ``volume`` covers at ``depth``: one cubic yard, 162 ft² at 2 in.

    Raises ValueError below zero, and for no depth.
    """
    deep = positive(depth, "ft", "The depth of the layer must be more than zero.")
    held = not_negative(volume, "ft**3", "The volume must be zero or more.")
    return quantity(held / deep, "ft**2")


def sold_in(bought: Quantity, metric: bool) -> str:
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


def loaded(weight: Quantity, unit: str) -> Quantity:
    """Return ``weight`` raised to a quarter of a ``ton`` or ``t``, as a yard's scale is paid."""
    return round_up(weight, ORDER_STEP_TON, unit)


def stone(length: Quantity, width: Quantity, metric: bool = False) -> Quantity:
    """Return the volume of stone for a pad, an apron or a channel of that length and width.

    Raises ValueError where one is zero or less. Source: ``STONE_LAYER``.
    """
    deep = quantity(*STONE_LAYER[METRIC if metric else US].value)
    sentence = "The stone must cover more than nothing."
    feet = positive(length, "ft", sentence) * positive(width, "ft", sentence)
    return quantity(feet * magnitude(deep, "ft"), "ft**3")


@record
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
    piece: Quantity | None = None
    """What one piece of it measures, of what is counted 1; none where it is not sold by the piece.
    """
    weighs: Quantity | None = None
    """What the amount weighs; none where it is not sold by weight."""

    @property
    def bags(self) -> int | None:
        """Whole bags that hold the amount; none where it is not sold in bags."""
        return None if self.bag is None else whole_up(ratio(self.amount, self.bag))

    @property
    def pieces(self) -> int | None:
        """Whole pieces that make the amount; none where it is not sold by the piece."""
        return None if self.piece is None else whole_up(ratio(self.amount, self.piece))


EACH, BAG = "each", "bag"
TONS = ("ton", "t")
BY_THE_YARD = ("yd**3", "m**3")
"""Units of a price at which a yard's whole steps are paid; in a smaller one, whole units of it."""


def cost(item: Item, price: float, unit: str) -> float:
    """Return what an item costs at ``price`` for one ``unit``.

    ``unit`` is ``bag``, ``each`` or a unit of the item's own kind, such as ``yd**3`` or ``ft``, or
    of its weight, such as ``ton``. What is paid is what must be taken home: whole bags, whole
    pieces, the steps a yard loads, by weight too.
    Raises ValueError for a unit the item is not sold in.
    """
    if unit == BAG and item.bags is not None:
        return price * item.bags
    if unit == EACH and item.pieces is not None:
        return price * item.pieces
    if item.weighs is not None and unit in TONS:
        return price * magnitude(loaded(item.weighs, unit), unit)
    if unit in (BAG, EACH) or not same_dimension(item.buy, unit):
        raise ValueError(f"The price of {item.name} is not for a unit it is sold in.")
    if unit in BY_THE_YARD or not same_dimension(item.buy, "ft**3"):
        return price * magnitude(item.buy, unit)
    return price * whole_up(magnitude(item.amount, unit))


class BedSizes(NamedTuple):
    """The sizes that decide what is bought; lengths and areas of one bed."""

    floor_area: Quantity
    mulch_area: Quantity
    mulch_depth: Quantity
    mulch_to: str = "rim"
    """What the mulch ends at, up the sides."""
    compost_depth: Quantity | None = None
    """Compost dug into the floor; none when not given."""
    notch_width: Quantity | None = None
    apron_length: Quantity | None = None
    """Stone below the notch; none when not given."""
    channel_length: Quantity | None = None
    """Channel of stone from a downspout to the beds."""
    channels: int = 1
    """How many such channels, for all the beds together."""
    beds: int = 1
    """How many beds of these sizes."""
    berm_soil: Quantity | None = None
    """Undisturbed soil to bring for the berm; none where what is dug makes it."""


def shopping_list(bed: BedSizes, metric: bool = False) -> tuple[Item, ...]:
    """Return what is bought by the heap, in a yard's steps; empty lines are left out.

    No edging: the step cut with the spade at the rim holds the mulch.
    """
    items = [
        _heap(
            "mulch",
            times(layer(bed.mulch_area, bed.mulch_depth), bed.beds),
            f"for the floor and the sides up to the {bed.mulch_to}: shredded hardwood, not bark "
            "nuggets",
            metric,
        )
    ]
    if bed.compost_depth is not None:
        worked = times(layer(bed.floor_area, bed.compost_depth), bed.beds)
        items.append(_heap("compost", worked, "mixed into the floor", metric))
    items.append(_stone(bed, metric))
    if bed.berm_soil is not None:
        # It comes loose on the truck; of soil not seen yet the most it may have swollen is bought.
        brought = loosen(times(bed.berm_soil, bed.beds), Soil.CLAY)
        note = "clay loam or silt that packs, for the berm; it is measured loose"
        buy = order(brought, metric)
        items.append(Item("berm soil", brought, buy, note, BULKING[Soil.CLAY].source))
    return tuple(item for item in items if item.amount.m > 0)


def stone_weight(volume: Quantity) -> Quantity:
    """Return what a volume of loose stone weighs, about. Source: ``STONE_LB_FT3``."""
    return quantity(magnitude(volume, "ft**3") * STONE_LB_FT3.value, "lb")


def stone_uses(bed: BedSizes, metric: bool = False) -> dict[str, Quantity]:
    """Return the stone by what it is for: inlets, aprons below the notches, the channel."""
    system = METRIC if metric else US
    long, across = INLET[system]
    uses = {"inlet": times(stone(quantity(*long), quantity(*across), metric), bed.beds)}
    if bed.notch_width is not None and bed.apron_length is not None:
        uses["apron"] = times(stone(bed.apron_length, bed.notch_width, metric), bed.beds)
    if bed.channel_length is not None and bed.channel_length.m > 0:
        wide = quantity(*CHANNEL_WIDTH[system])
        uses["channel"] = times(stone(bed.channel_length, wide, metric), bed.channels)
    return uses


def stone_size_words(metric: bool) -> str:
    """Write the stone to ask for, such as ``washed, 2 to 3 in``."""
    (low, unit), (high, _) = STONE_SIZE[METRIC if metric else US]
    return f"washed, {low:g} to {high:g} {unit}"


def _bag(name: str, metric: bool) -> Quantity:
    return quantity(*BAGS[name][metric])


def _heap(name: str, amount: Quantity, note: str, metric: bool) -> Item:
    return Item(name, amount, order(amount, metric), note, ARITHMETIC, _bag(name, metric))


_STONE_FOR = {
    "inlet": "the pad where the water comes in",
    "apron": "the apron below the notch",
    "channel": "the channel from the downspout",
}
_CHANNELS = "{} channels, one a downspout, each as long as the one that was measured"


def _stone(bed: BedSizes, metric: bool) -> Item:
    uses = stone_uses(bed, metric)
    amount = total(*uses.values())
    unit = "kg" if metric else "lb"
    buy = order(amount, metric)
    mass, loose = (
        f"{math.ceil(magnitude(stone_weight(one), unit) / 10) * 10} {unit}" for one in (amount, buy)
    )
    places = [
        _CHANNELS.format(bed.channels) if use == "channel" and bed.channels > 1 else _STONE_FOR[use]
        for use in uses
    ]
    told = f"for {word_list(places)}: {stone_size_words(metric)}"
    note = f"{told}, about {mass}, or {loose} as ordered loose"
    bag = _bag("stone", metric)
    return Item("stone", amount, buy, note, PRACTICE, bag, weighs=stone_weight(amount))


DISCONNECTING = Source(
    "Water Wise Tip: Disconnecting Your Downspout, Global Green, web page: cut about 9 in above "
    "the old drain, cap that, elbow over the downspout, secure it, splash block",
    Provenance.PUBLISHED,
)
PIPE_PIECE = {US: (10.0, "ft"), METRIC: (3.0, "m")}
"""Length of a piece of drain pipe as it is sold: common practice, no source."""
PIPED = Source(
    "an adapter, a bend and a strap for each downspout, a wye to join each further one, a guard "
    "at the outlet",
    Provenance.PRACTICE,
)
BY_WISH = Source(
    "a diverter for each downspout, to turn the water away in winter", Provenance.PRACTICE
)


def spout_parts(spouts: int, pipe: Quantity | None, metric: bool = False) -> tuple[Item, ...]:
    """Return the parts for ``spouts`` downspouts, and for a buried pipe of the length ``pipe``.

    A roof without a gutter has none. The pipe is bought in whole pieces; of what comes in a pipe
    nothing falls on a splash stone.
    """
    counts: list[tuple[str, int, str, Source]]
    if pipe is None:
        counts = [
            ("elbow", spouts, "slid over the downspout where it is cut, to turn it away from the "
             "wall; cut it with a hacksaw about 9 in (230 mm) above the ground", DISCONNECTING),
            ("strap", spouts, "holds the downspout to the wall above the cut", DISCONNECTING),
            ("splash stone", spouts, "a slab or block under the elbow, at the head of the way to "
             "the garden", DISCONNECTING),
        ]  # fmt: skip
    else:
        counts = [
            ("adapter", spouts, "from the downspout, where it is cut, to the pipe", PIPED),
            ("strap", spouts, "holds the downspout to the wall above the cut", PIPED),
            ("bend", spouts, "turns the pipe along its trench", PIPED),
            ("wye", max(0, spouts - 1), "joins a further downspout to the pipe", PIPED),
            ("guard", 1, "a grate at the end of the pipe that keeps animals out", PIPED),
        ]
    items = [_counted(*one) for one in counts if one[1] > 0]
    if pipe is not None and pipe.m > 0:
        items.insert(0, _pipe(pipe, spouts, metric))
    return tuple(items)


def wished_parts(spouts: int) -> tuple[Item, ...]:
    """Return the parts that not everybody wants, bought only where a price is given for them."""
    counts: list[tuple[str, int, str, Source]] = [
        ("diverter", spouts, "in the downspout: turns the water back to the old drain, or onto "
         "the lawn, while ice, salt or work keeps the garden shut", BY_WISH),
        ("cap", spouts, "shuts the old drain, where the downspout went into one", DISCONNECTING),
    ]  # fmt: skip
    return tuple(_counted(*one) for one in counts if one[1] > 0)


def _counted(name: str, count: int, note: str, source: Source) -> Item:
    pieces = quantity(float(count), "")
    return Item(name, pieces, pieces, note, source, piece=quantity(1.0, ""))


def _pipe(length: Quantity, spouts: int, metric: bool) -> Item:
    step, unit = PIPE_PIECE[METRIC if metric else US]
    note = "smooth drain pipe, from the downspout to the stone before the bed"
    if spouts > 1:
        note += "; what leads each further downspout to its wye comes on top: measure it"
    whole = round_up(length, step, unit)
    return Item("pipe", length, whole, note, PIPED, piece=quantity(step, unit))
