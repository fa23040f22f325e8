"""How long the garden takes to build by hand, task by task, at a slow and at a quick pace."""

from __future__ import annotations

import math
from collections.abc import Sequence
from enum import Enum
from typing import NamedTuple

from interview.garden.earth.materials import Soil, loosen
from interview.quantities.evidence import OURS, PRACTICE, Cited, Provenance, Source
from interview.quantities.guards import positive, whole_up
from interview.quantities.records import record
from interview.quantities.units import Quantity, magnitude, quantity, ratio

Pace = Cited[tuple[float, float]]
"""What one adult does in an hour, slow and quick."""

BARROW_FT3 = 3.0
DIG_YD3 = Cited((0.25, 0.5), PRACTICE)
"""Undisturbed soil dug and thrown or loaded, cubic yards an hour."""
BERM_YD3 = Cited((0.5, 1.0), OURS)
"""Undisturbed soil spread in thin layers, tamped and leveled, cubic yards an hour."""
SOD_FT2 = Cited((50.0, 100.0), OURS)
"""Sod lifted with a spade and part of it laid again, square feet lifted an hour."""
BARROWS = Cited((6.0, 12.0), OURS)
"""Barrows filled, wheeled across a yard and tipped or spread, an hour."""
TRENCH_FT = Cited((5.0, 10.0), OURS)
"""Trench for a buried pipe, dug, laid and filled, feet an hour."""
PLANTS = Cited((10.0, 20.0), OURS)
"""Plugs and small pots set out, planted and watered in, an hour."""
SPOUTS = Cited((1.0, 2.0), PRACTICE)
"""Downspouts cut, turned by an elbow or into a pipe, strapped and tried, an hour."""
DAY_HOURS = Cited(6.0, OURS)
"""Hours of heavy work that are a day."""
PLANNED_DAYS = Cited(3, OURS)
"""Days, one fair spell of weather, in which a garden is dug, laid with stone and planted."""
HEAT = Cited(
    (95.0, 45.0, 15.0),
    Source(
        "Heat Stress: Work/Rest Schedules, NIOSH Mining, US CDC, web page: heavy work at 95 °F, "
        "45 minutes of work and 15 of rest",
        Provenance.PUBLISHED,
    ),
)
"""The heat in degrees Fahrenheit in which heavy work has rests, its minutes of work and of rest."""


@record
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


def loads(loose: Quantity, barrow: Quantity) -> int:
    """Return the barrows that a heap, the volume ``loose``, fills; the last one may not be full.

    Raises ValueError for a barrow that holds nothing.
    """
    positive(barrow, "ft**3", "The wheelbarrow must hold more than zero.")
    return whole_up(ratio(loose, barrow))


def soilwork(bank: Quantity, soil: Soil = Soil.LOAM, barrow: Quantity | None = None) -> Soilwork:
    """Return the heap, the wheelbarrow loads and one person's hours to dig undisturbed ``bank``.

    ``barrow`` is 3 ft³ unless given. Raises ValueError for no barrow.
    """
    size = quantity(BARROW_FT3, "ft**3") if barrow is None else barrow
    loose = loosen(bank, soil)
    hours = span(magnitude(bank, "yd**3"), DIG_YD3)
    return Soilwork(bank, loose, loads(loose, size), hours.quick, hours.slow)


class Span(NamedTuple):
    """Hours of one person, at a quick and at a slow pace."""

    quick: float
    slow: float

    def shared(self, people: int) -> Span:
        """Return the hours of each of several people; raises ValueError for nobody."""
        if people < 1:
            raise ValueError("At least one person must work.")
        return Span(self.quick / people, self.slow / people)

    @property
    def in_heat(self) -> Span:
        """The same with rests, in the heat of ``HEAT``."""
        _, work, rest = HEAT.value
        return Span(self.quick * (work + rest) / work, self.slow * (work + rest) / work)

    @property
    def days(self) -> tuple[int, int]:
        """Whole days of ``DAY_HOURS``, quick and slow."""
        quick, slow = (whole_up(one / DAY_HOURS.value) for one in (self.quick, self.slow))
        return quick, slow


def span(amount: float, pace: Pace) -> Span:
    """Return the hours for ``amount`` of what ``pace`` counts; raises ValueError below nought."""
    if not amount >= 0:
        raise ValueError("The work must be zero or more.")
    slow, quick = pace.value
    return Span(amount / quick, amount / slow)


def together(spans: Sequence[Span]) -> Span:
    """Return the sum of several."""
    return Span(math.fsum(one.quick for one in spans), math.fsum(one.slow for one in spans))


def people_for(whole: Span) -> int:
    """Return how many people end at the slow pace within ``PLANNED_DAYS``."""
    return max(1, whole_up(whole.slow / (PLANNED_DAYS.value * DAY_HOURS.value)))


class Spell(Enum):
    """What is done in one fair spell: the floor never lies open to rain between two of them."""

    DIG = "dig and build"
    LAY = "lay the floor and the stone"
    PLANT = "plant and mulch"


class Amounts(NamedTuple):
    """What is moved, laid and planted for all the beds."""

    sod: Quantity
    """Area of lawn to lift."""
    dug: Quantity
    """Undisturbed soil."""
    berm: Quantity
    """Undisturbed soil that goes into the berm."""
    carried_off: int
    """Barrows of soil."""
    berm_brought: int
    """Barrows of soil brought for the berm."""
    laid: int
    """Barrows of compost and stone."""
    mulch: int
    """Barrows of mulch."""
    channel: Quantity
    """Undisturbed soil dug for a channel of stone."""
    trench: Quantity
    """Length of the trench for a pipe."""
    plants: int
    spouts: int
    """Downspouts to connect."""


class Task(NamedTuple):
    """One sort of work, and when it is done."""

    key: str
    spell: Spell
    hours: Span


def tasks(made: Amounts) -> tuple[Task, ...]:
    """Return the tasks in the order of the work, those without anything to do with no hours."""
    way = together(
        [
            span(magnitude(made.channel, "yd**3"), DIG_YD3),
            span(magnitude(made.trench, "ft"), TRENCH_FT),
        ]
    )
    return (
        Task("sod", Spell.DIG, span(magnitude(made.sod, "ft**2"), SOD_FT2)),
        Task("dig", Spell.DIG, span(magnitude(made.dug, "yd**3"), DIG_YD3)),
        Task("berm", Spell.DIG, span(magnitude(made.berm, "yd**3"), BERM_YD3)),
        Task("carry", Spell.DIG, span(made.carried_off + made.berm_brought, BARROWS)),
        Task("way", Spell.LAY, way),
        Task("lay", Spell.LAY, span(made.laid, BARROWS)),
        Task("planting", Spell.PLANT, span(made.plants, PLANTS)),
        Task("mulching", Spell.PLANT, span(made.mulch, BARROWS)),
        Task("spout", Spell.PLANT, span(made.spouts, SPOUTS)),
    )


def hours_of(done: Sequence[Task], spell: Spell | None = None) -> Span:
    """Return the hours of one step, or of all."""
    return together([one.hours for one in done if spell in (None, one.spell)])
