"""Where the water goes when the garden is full, and how it gets in."""

from __future__ import annotations

import math
from dataclasses import dataclass

from interview.quantities.evidence import OURS, PRACTICE, Cited, Finding, Grade, Provenance, Source
from interview.quantities.guards import not_negative, number_of, positive, reaches, within
from interview.quantities.shown import depth_words, water_words
from interview.quantities.units import Quantity, magnitude, quantity, round_up

WEIR_SOURCE = Source(
    "HEC-22, Urban Drainage Design Manual, FHWA: broad-crested weirs from 2.6", Provenance.MEMORY
)
WEIR_US = Cited(2.6, WEIR_SOURCE)
"""Broad-crested weir coefficient, square root of feet per second."""
WEIR_SI = Cited(1.44, WEIR_SOURCE)
"""Broad-crested weir coefficient, square root of meters per second."""
DEFAULT_INTENSITY = Cited(7.0, Source("cautious peak rain in in/h", Provenance.OURS))
DEFAULT_INTENSITY_MM_H = 180.0
HEAD_IN, HEAD_MM = 2.0, 50.0
LEAST_WIDTH_FT, LEAST_WIDTH_M = 1.0, 0.3
CLEARANCE_IN, CLEARANCE_MM = 1.0, 25.0
PIPE_FALL = 0.01
PIPE_START_IN = 3.0
MANNING_SMOOTH = Cited(0.011, Source("Manning n of smooth plastic pipe", Provenance.MEMORY))
MANNING_CORRUGATED = Cited(0.024, Source("Manning n of corrugated pipe", Provenance.MEMORY))
PIPES_IN, PIPES_MM = (4.0, 6.0, 8.0), (100.0, 150.0, 200.0)
"""Inner widths of drain pipe that are sold; narrower ones stop up with leaves."""
APRON_LONG_FT, APRON_LONG_M = 4.0, 1.2
"""Length of the stone below the notch: custom of the trade."""


def peak_flow(area: Quantity, coefficient: float, intensity: Quantity) -> Quantity:
    """Return the peak flow off ``area`` by the rational method.

    ``coefficient`` is the part of the rain that runs off; pass 1 with an area already weighted.
    Raises ValueError outside 0 to 1 or below zero. Source: rational method, Q = C i A.
    """
    if not 0 <= coefficient <= 1:
        raise ValueError("The part of the rain that runs off must be from 0 to 1.")
    feet = not_negative(area, "ft**2", "The area must be zero or more.")
    rate = positive(intensity, "ft/s", "The rain must fall at more than zero.")
    return quantity(coefficient * feet * rate, "ft**3/s")


def weir_width(flow: Quantity, head: Quantity, metric: bool = False) -> Quantity:
    """Return the width that passes ``flow`` at depth ``head`` over a level notch.

    ``metric`` takes the rounded metric coefficient, which is 0.3 % above the other.
    """
    q, h, c, unit = _weir_numbers(flow, head, metric)
    return quantity(q / (c * h**1.5), unit)


def weir_head(flow: Quantity, width: Quantity, metric: bool = False) -> Quantity:
    """Return how deep ``flow`` runs over a level notch of ``width``."""
    q, wide, c, unit = _weir_numbers(flow, width, metric)
    return quantity((q / (c * wide)) ** (2 / 3), unit)


def _weir_numbers(
    flow: Quantity, length: Quantity, metric: bool
) -> tuple[float, float, float, str]:
    unit = "m" if metric else "ft"
    q = not_negative(flow, f"{unit}**3/s", "The flow must be zero or more.")
    size = positive(length, unit, "The notch must be wider and deeper than zero.")
    return q, size, WEIR_SI.value if metric else WEIR_US.value, unit


@dataclass(frozen=True)
class Notch:
    """The overflow notch."""

    flow: Quantity
    width_needed: Quantity
    """Width at the full head."""
    width: Quantity
    """Width to build: at least 1 ft (0.3 m), rounded up to 1/2 ft (0.1 m)."""
    head: Quantity
    """How deep the peak flow runs over the width to build."""


def notch(
    flow: Quantity,
    head: Quantity | None = None,
    width: Quantity | None = None,
    metric: bool = False,
) -> Notch:
    """Return the notch for ``flow`` at a head of 2 in (50 mm) unless given, or of a given width.

    Raises ValueError for a head or width that is not more than zero.
    """
    unit = "m" if metric else "ft"
    target = head or quantity(HEAD_MM if metric else HEAD_IN, "mm" if metric else "in")
    needed = weir_width(flow, target, metric)
    if width is None:
        least = LEAST_WIDTH_M if metric else LEAST_WIDTH_FT
        wide = max(least, magnitude(needed, unit))
        width = round_up(quantity(wide, unit), 0.1 if metric else 0.5, unit)
    return Notch(flow, needed, width, weir_head(flow, width, metric))


def head_finding(notch: Notch, freeboard: Quantity, metric: bool = False) -> Finding:
    """Return whether the top of the berm stays 1 in (25 mm) or more above the overflowing water."""
    unit = "mm" if metric else "in"
    spare = CLEARANCE_MM if metric else CLEARANCE_IN
    head = magnitude(notch.head, unit)
    room = not_negative(freeboard, unit, "The freeboard must be zero or more.")
    good = reaches(room, head + spare)
    return Finding(
        key="overflow_head",
        grade=Grade.GOOD if good else Grade.FIX,
        said=f"At the peak the overflow runs {water_words(notch.head, metric)} deep; the rim "
        f"stands {depth_words(freeboard, metric)} above the notch.",
        limit=f"{spare:g} {unit} or more to spare",
        source=OURS,
        change="" if good else "Make the notch wider or the rim higher.",
    )


@dataclass(frozen=True)
class PipeFall:
    """The fall a buried pipe has and the fall it needs."""

    needed: Quantity
    available: Quantity

    @property
    def enough(self) -> bool:
        """Whether the pipe can run down all the way."""
        return reaches(magnitude(self.available, "in"), magnitude(self.needed, "in"))


def pipe_fall(
    length: Quantity,
    ground_fall: Quantity,
    uphill_depth: Quantity,
    pond_depth: Quantity,
    start_depth: Quantity | None = None,
) -> PipeFall:
    """Return whether a pipe to the bed falls 1 % and comes out above the full pond.

    ``ground_fall`` is from the downspout to the bed, ``uphill_depth`` the floor below the ground
    there, ``start_depth`` how deep the pipe begins: 3 in unless given.
    """
    run = not_negative(length, "in", "The pipe cannot be shorter than zero.")
    start = quantity(PIPE_START_IN, "in") if start_depth is None else start_depth
    begin = not_negative(start, "in", "The pipe cannot begin above the ground.")
    fall = number_of(ground_fall, "in", "Give the fall of the ground as a length.")
    available = fall + magnitude(uphill_depth, "in") - magnitude(pond_depth, "in")
    return PipeFall(quantity(begin + PIPE_FALL * run, "in"), quantity(available, "in"))


def pipe_finding(fall: PipeFall, metric: bool = False) -> Finding:
    """Return whether the pipe falls enough, and what to do when it does not."""
    unit, places = ("mm", 0) if metric else ("in", 1)
    needed, available = magnitude(fall.needed, unit), magnitude(fall.available, unit)
    lacks = f"{needed - available:.{places}f} {unit}"
    change = f"It lacks {lacks}: start it shallower or use an open channel."
    return Finding(
        key="pipe_fall",
        grade=Grade.GOOD if fall.enough else Grade.FIX,
        said=f"The pipe needs {needed:.{places}f} {unit} of fall and has"
        f" {available:.{places}f} {unit}.",
        limit="1 in 100 (1 %), and its end above the full pond",
        source=PRACTICE,
        change="" if fall.enough else change,
    )


def pipe_full_flow(diameter: Quantity, fall: float, roughness: float) -> Quantity:
    """Return the flow of a pipe running just full, by Manning's formula.

    ``fall`` is a part of the length, such as 0.01. Raises ValueError for numbers not above zero.
    """
    if not (fall > 0 and roughness > 0 and within(fall, 1.0)):
        raise ValueError("The pipe must fall, and its roughness must be more than zero.")
    wide = positive(diameter, "m", "The pipe must be wider than zero.")
    speed = (wide / 4) ** (2 / 3) * math.sqrt(fall) / roughness
    return quantity(speed * math.pi * wide**2 / 4, "m**3/s")


@dataclass(frozen=True)
class PipeChoice:
    """The pipe that carries a flow at a fall; both flows are of it running full."""

    width: Quantity | None
    """Inner width; none where the widest sold is too small."""
    smooth: Quantity
    """What it carries when smooth inside; of the widest, where none is enough."""
    corrugated: Quantity
    four: Quantity
    """What a smooth pipe of 4 in (100 mm) carries."""


def pipe_choice(flow: Quantity, fall: float = PIPE_FALL, metric: bool = False) -> PipeChoice:
    """Return the narrowest smooth pipe sold that carries ``flow`` at ``fall``, part of its length.

    Raises ValueError for a flow below zero. Source: Manning's formula with ``MANNING_SMOOTH`` and
    ``MANNING_CORRUGATED``.
    """
    q = not_negative(flow, "ft**3/s", "The flow must be zero or more.")
    widths, unit = (PIPES_MM, "mm") if metric else (PIPES_IN, "in")
    sizes = [quantity(width, unit) for width in widths]
    full = [pipe_full_flow(size, fall, MANNING_SMOOTH.value) for size in sizes]
    enough = [place for place, one in enumerate(full) if magnitude(one, "ft**3/s") >= q]
    place = enough[0] if enough else len(sizes) - 1
    return PipeChoice(
        sizes[place] if enough else None,
        full[place],
        pipe_full_flow(sizes[place], fall, MANNING_CORRUGATED.value),
        full[0],
    )


def apron(notch_width: Quantity, metric: bool = False) -> tuple[Quantity, Quantity]:
    """Return length and width of the stone apron below a notch: as wide as the notch."""
    long = quantity(APRON_LONG_M, "m") if metric else quantity(APRON_LONG_FT, "ft")
    positive(notch_width, "ft", "The notch must be wider than zero.")
    return long, notch_width
