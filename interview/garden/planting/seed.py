"""How much seed is sown on the rim and on the berm, by weight."""

from __future__ import annotations

from typing import NamedTuple

from interview.garden.earth.materials import Item
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.guards import not_negative
from interview.quantities.units import Quantity, magnitude, quantity

SEED, GRASS_SEED = "seed", "grass seed"
"""As they are listed and priced."""
Rate = tuple[tuple[float, str], tuple[float, str]]
"""A weight that is sown on an area: the number and unit of each."""


class SeedRate(NamedTuple):
    """The least and the most seed sown by hand on an area, as published."""

    least: Cited[Rate]
    most: Cited[Rate]


NATIVE = SeedRate(
    Cited(
        ((10.0, "kg"), (10_000.0, "m**2")),
        Source(
            "Seed Mix, Tallgrass Ontario, web page: about 10 kg to the hectare, broadcast",
            Provenance.PUBLISHED,
        ),
    ),
    Cited(
        ((23.0, "lb"), (1.0, "acre")),
        Source(
            "seeding plan in the records of Orono, Minnesota, page 132, undated, broadcast: "
            "grasses 16 to 18 lb and wildflowers 3 to 5 lb an acre, here 18 + 5",
            Provenance.PUBLISHED,
        ),
    ),
)
"""Mixes of native grasses and flowers; what the packet says goes first."""
GRASS = SeedRate(
    Cited(
        ((2.0, "lb"), (1000.0, "ft**2")),
        Source(
            "Seeding Rates and Planting Methods, University of Minnesota Extension, web page, "
            "table 5.7: Kentucky bluegrass 2 to 3 lb on 1000 ft²",
            Provenance.PUBLISHED,
        ),
    ),
    Cited(
        ((8.0, "lb"), (1000.0, "ft**2")),
        Source(
            "Seeding rates, Safe Sports Fields, Cornell University, web page: tall fescue 6 to 8 "
            "lb on 1000 ft²",
            Provenance.PUBLISHED,
        ),
    ),
)
"""Lawn grass, from the finest seed to the coarsest."""


def to_sow(area: Quantity, rate: Rate) -> Quantity:
    """Return the weight sown on ``area`` at ``rate``; raises ValueError for less than nothing."""
    ground = not_negative(area, "ft**2", "The area to sow must be zero or more.")
    weight, on = (quantity(*one) for one in rate)
    return quantity(magnitude(weight, "lb") * ground / magnitude(on, "ft**2"), "lb")


class Sowing(NamedTuple):
    """One kind of seed to buy for an area."""

    name: str
    area: Quantity
    rate: SeedRate
    note: str

    @property
    def least(self) -> Quantity:
        """The weight at the thinnest rate."""
        return to_sow(self.area, self.rate.least.value)

    @property
    def most(self) -> Quantity:
        """The weight at the thickest rate: what is bought."""
        return to_sow(self.area, self.rate.most.value)

    @property
    def item(self) -> Item:
        """The seed as a line of what is bought."""
        return Item(self.name, self.most, self.most, self.note, self.rate.most.source)


def native_seed(rim: Quantity) -> Sowing:
    """Return the seed of a rim of that area."""
    return Sowing(SEED, rim, NATIVE, "native kinds of dry ground, listed below")


def grass_seed(berm: Quantity) -> Sowing:
    """Return the grass seed of the top and outside of a berm of that area."""
    return Sowing(GRASS_SEED, berm, GRASS, "for the top and the outside of the berm")
