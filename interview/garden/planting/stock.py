"""What is planted: plugs, pots or seed, how far apart each is set, and where seed may lie."""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum

from interview.garden.planting.choice import USUAL_SPACING_IN
from interview.garden.planting.record import Plant, PlantKind
from interview.garden.size.zones import Zone
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.units import METRIC, US, Quantity, quantity

UW_STEP_3 = Source(
    "Step 3: Planting and Maintaining the Rain Garden, University of Wisconsin-Extension, web page",
    Provenance.PUBLISHED,
)


class PlantSize(Enum):
    """What is planted."""

    KINDS = "kinds"
    """Whatever is for sale, each kind at the distance that the list gives it."""
    PLUG = "plug"
    POT = "pot"
    LARGE_POT = "large_pot"
    SEED = "seed"
    """Seed on the rim, and plugs where water stands."""


Apart = dict[str, tuple[float, str]]
"""A distance between neighbors for each system of units, in round numbers of its own."""

_FOOT: Apart = {US: (12.0, "in"), METRIC: (300.0, "mm")}
_FOOT_AND_HALF: Apart = {US: (18.0, "in"), METRIC: (450.0, "mm")}

SPACING: dict[PlantSize, Cited[Apart]] = {
    PlantSize.PLUG: Cited(_FOOT, UW_STEP_3),
    PlantSize.POT: Cited(
        _FOOT,
        Source(
            "Plant Spacing, Low Impact Development Center, web page: quart perennials 12 in",
            Provenance.PUBLISHED,
        ),
    ),
    PlantSize.LARGE_POT: Cited(_FOOT_AND_HALF, USUAL_SPACING_IN.source),
    PlantSize.SEED: Cited(_FOOT, UW_STEP_3),
}
"""Between neighbors of one size; shrubs keep the distance that the list gives them."""

SEED_SOURCE = Source(
    "Rain garden brochure, Winnebago County, Wisconsin, undated: seed washes out of the floor",
    Provenance.PUBLISHED,
)


def apart(size: PlantSize, system: str = US) -> Quantity:
    """Return the length between neighbors, of plants whose kind is not known yet."""
    if size is PlantSize.KINDS:
        return quantity(USUAL_SPACING_IN.value, "in")
    return quantity(*SPACING[size].value[system])


def at_size(plants: Sequence[Plant], size: PlantSize, system: str = US) -> tuple[Plant, ...]:
    """Return ``plants`` as far apart as plants of ``size`` are set; shrubs as the list has it."""
    if size is PlantSize.KINDS:
        return tuple(plants)
    inches = float(apart(size, system).to("in").magnitude)
    source = str(SPACING[size].source)
    return tuple(
        one if one.kind is PlantKind.SHRUB else one._replace(spacing_in=inches, set_by=source)
        for one in plants
    )


def sown(size: PlantSize) -> frozenset[Zone]:
    """Return the zones that are sown: the rim alone, for water washes seed out below it."""
    return frozenset({Zone.RIM}) if size is PlantSize.SEED else frozenset()
