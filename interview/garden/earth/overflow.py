"""Where the water goes when the garden is full, and how it gets in."""

from __future__ import annotations

import math
from typing import NamedTuple

from interview.quantities.evidence import (
    ARITHMETIC,
    OURS,
    Brief,
    Cited,
    Finding,
    Grade,
    Provenance,
    Source,
)
from interview.quantities.guards import not_negative, number_of, positive, reaches, within
from interview.quantities.records import record
from interview.quantities.shown import depth_words, length_words, water_words
from interview.quantities.units import (
    METRIC,
    US,
    Quantity,
    magnitude,
    plain_number,
    quantity,
    round_up,
    show,
)

WEIR_SOURCE = Source(
    "HEC-22, Urban Drainage Design Manual, FHWA: broad-crested weirs from 2.6", Provenance.MEMORY
)
WEIR_US = Cited(2.6, WEIR_SOURCE)
"""Broad-crested weir coefficient, square root of feet per second."""
WEIR_SI = Cited(1.44, WEIR_SOURCE)
"""Broad-crested weir coefficient, square root of meters per second."""
LIP_WIDTH_FT, LIP_WIDTH_M = 3.0, 0.9
"""Least width of a lip in level lawn: a choice of ours."""
WIDE_FT, WIDE_M = 4.0, 1.2
"""A notch over this is told with the rim that lets a narrower one do: a choice of ours."""
HIGHER_RIM = {US: (3.0, "in"), METRIC: (75.0, "mm")}
MOST_HEAD = {US: (2.0, "in"), METRIC: (50.0, "mm")}
"""Deepest that the peak flow may run over the notch: a choice of ours."""
LEAST_HEAD = {US: (0.5, "in"), METRIC: (12.0, "mm")}
"""Under a rim too low for any clearance the notch is made for this, and a finding asks for more."""
CLEARANCE = {US: (1.0, "in"), METRIC: (25.0, "mm")}
"""From the peak flow up to the crest of the berm: a choice of ours."""
LEAST_WIDTH_FT, LEAST_WIDTH_M = 1.0, 0.3
PIPE_FALL = Cited(
    1 / 96,
    Source(
        "Municipal Code of Chicago, section 18-29-1106.3, web page: 1/8 in of fall to the foot",
        Provenance.PUBLISHED,
    ),
)
"""Least fall of a pipe, part of its length."""
PIPE_COVER = {US: (6.0, "in"), METRIC: (150.0, "mm")}
PIPE_COVER_SOURCE = Source("six inches of soil over a pipe in a lawn", Provenance.PRACTICE)
MANNING_PIPE = Cited(
    0.015,
    Source(
        "a plumbing code, appendix D, table of storm drains, undated: 6 in at 1/8 in to the foot "
        "drains 21,400 ft² at 1 in an hour, which is Manning n 0.015; title not shown in the copy",
        Provenance.SECONDARY,
    ),
)
MANNING_CORRUGATED = Cited(0.024, Source("Manning n of corrugated pipe", Provenance.MEMORY))
PIPES = {
    US: {4.0: 4.2, 6.0: 6.3, 8.0: 8.4},
    METRIC: {100.0: 110.0, 150.0: 160.0, 200.0: 225.0},
}
"""Inner and outside widths of drain pipe sold, in or mm, from memory; narrower ones stop up."""


def peak_flow(area: Quantity, coefficient: float, intensity: Quantity) -> Quantity:
    """Return the peak flow off ``area`` by the rational method, at a speed of rain ``intensity``.

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


@record
class Notch:
    """The overflow: a notch in a berm, or a lip in the level lawn that is the rim."""

    flow: Quantity
    width_needed: Quantity
    """Width at the head the rim allows."""
    width: Quantity
    """Width to build, rounded up to 1/2 ft (0.1 m): at least 1 ft (0.3 m), a lip 3 ft (0.9 m)."""
    head: Quantity
    """How deep the peak flow runs over the width to build."""
    lip: bool = False
    """Whether it is a lip in the lawn, and not a notch in a berm."""


def allowed_head(freeboard: Quantity, lip: bool, metric: bool = False) -> Quantity:
    """Return how deep the peak flow may run under a rim a ``freeboard`` above the full pond.

    Over a lip in level lawn it may fill the freeboard; in a berm it stays ``CLEARANCE`` under the
    crest. It is ``MOST_HEAD`` at the most. Raises ValueError for a freeboard that is not above 0.
    """
    system, unit = (METRIC, "mm") if metric else (US, "in")
    room = positive(freeboard, unit, "The rim must stand above the full pond.")
    under = room if lip else max(room - CLEARANCE[system][0], LEAST_HEAD[system][0])
    return quantity(min(under, MOST_HEAD[system][0]), unit)


def notch(flow: Quantity, freeboard: Quantity, *, lip: bool = False, metric: bool = False) -> Notch:
    """Return the notch, or the ``lip``, that passes ``flow`` under a rim of ``freeboard``.

    ``flow`` is a volume by time, ``freeboard`` a height. Raises ValueError for a freeboard that is
    not more than zero.
    """
    unit = "m" if metric else "ft"
    needed = weir_width(flow, allowed_head(freeboard, lip, metric), metric)
    if lip:
        least = LIP_WIDTH_M if metric else LIP_WIDTH_FT
    else:
        least = LEAST_WIDTH_M if metric else LEAST_WIDTH_FT
    wide = quantity(max(least, magnitude(needed, unit)), unit)
    width = round_up(wide, 0.1 if metric else 0.5, unit)
    return Notch(flow, needed, width, weir_head(flow, width, metric), lip)


def head_finding(notch: Notch, freeboard: Quantity, metric: bool = False) -> Finding:
    """Return whether the peak flow stays under the rim, by 1 in (25 mm) or more where it is a berm.

    Over the lip of a level lawn the water may rise as high as the lawn. ``freeboard`` is the height
    of the rim over the full pond; raises ValueError below zero.
    """
    system, unit = (METRIC, "mm") if metric else (US, "in")
    spare = 0.0 if notch.lip else CLEARANCE[system][0]
    room = not_negative(freeboard, unit, "The freeboard must be zero or more.")
    good = reaches(room, magnitude(notch.head, unit) + spare)
    what = "lip" if notch.lip else "notch"
    runs, stands = water_words(notch.head, metric), depth_words(freeboard, metric)
    return Finding(
        key="overflow_head",
        grade=Grade.GOOD if good else Grade.FIX,
        said=f"At the peak the overflow runs {runs} deep; the rim stands {stands} above the "
        f"{what}.",
        limit="no deeper than the lawn is high"
        if notch.lip
        else f"{spare:g} {unit} or more to spare",
        source=OURS,
        change="" if good else f"Make the {what} wider or the rim higher.",
        brief=Brief(
            f"{'Fine' if good else 'TOO LOW'}: a rim of {stands}, the overflow {runs} deep."
        ),
    )


def wide_finding(made: Notch, freeboard: Quantity, metric: bool = False) -> Finding | None:
    """Return what a higher rim would save where the notch is wider than 4 ft (1.2 m).

    ``freeboard`` is the height of the rim over the full pond.
    """
    unit, wide = ("m", WIDE_M) if metric else ("ft", WIDE_FT)
    rim = quantity(*HIGHER_RIM[METRIC if metric else US])
    if made.lip or within(magnitude(made.width, unit), wide) or freeboard >= rim:
        return None
    narrow = notch(made.flow, rim, metric=metric).width
    return Finding(
        key="wide_notch",
        grade=Grade.GOOD,
        said=f"With this rim the notch must be {length_words(made.width, metric)} wide.",
        limit="4 ft (1.2 m) or less is easy to keep level",
        source=OURS,
        change=f"With a rim {depth_words(rim, metric)} above the full pond a notch of "
        f"{length_words(narrow, metric)} is enough.",
    )


def swale_finding(length: Quantity, metric: bool = False) -> Finding:
    """Return the swale, of that ``length``, that leads the overflow out under a higher lawn."""
    return Finding(
        key="overflow_swale",
        grade=Grade.GOOD,
        said="The lawn downhill lies higher than the bottom of the notch.",
        limit="the overflow runs downhill all the way",
        source=ARITHMETIC,
        change=f"Shape a grass swale {length_words(length, metric)} long, falling from the bottom "
        "of the notch until it comes out on the lawn.",
    )


class PipeFall(NamedTuple):
    """The fall of the ground that a buried pipe needs, and the fall there is."""

    needed: Quantity
    available: Quantity

    @property
    def enough(self) -> bool:
        """Whether the pipe can stay covered and come out in the open."""
        return reaches(magnitude(self.available, "in"), magnitude(self.needed, "in"))


def pipe_fall(
    length: Quantity, ground_fall: Quantity, width: Quantity, metric: bool = False
) -> PipeFall:
    """Return whether the ground falls enough for a covered pipe of inner ``width``.

    From the spout to where the pipe comes out the ground must fall by the soil over the pipe, its
    outside and its own fall over ``length``. Raises ValueError for a length below zero, or a width
    that is not sold. Sources: ``PIPE_COVER_SOURCE``, ``PIPE_FALL``; outside widths from memory.
    """
    system, unit = (METRIC, "mm") if metric else (US, "in")
    run = not_negative(length, unit, "The pipe cannot be shorter than zero.")
    fall = number_of(ground_fall, unit, "Give the fall of the ground as a length.")
    inner = min(PIPES[system], key=lambda one: abs(one - magnitude(width, unit)))
    if abs(inner - magnitude(width, unit)) > 1e-6 * inner:
        raise ValueError("No pipe of that width is sold.")
    needed = PIPE_COVER[system][0] + PIPES[system][inner] + PIPE_FALL.value * run
    return PipeFall(quantity(needed, unit), quantity(fall, unit))


def no_pipe_words(fall: PipeFall, metric: bool) -> str:
    """Say in one sentence why there can be no pipe, and what to take in its place."""
    unit, places = ("mm", 0) if metric else ("in", 1)
    there = plain_number(round(magnitude(fall.available, unit), places))
    wanted = plain_number(round(magnitude(fall.needed, unit), places))
    return (
        f"No pipe here, because the ground falls only {there} {unit} and a pipe needs {wanted} "
        f"{unit}: use a grass or stone channel."
    )


def pipe_finding(fall: PipeFall, metric: bool = False) -> Finding:
    """Return whether a covered pipe is possible, and what to do when it is not."""
    limit = "6 in (150 mm) of soil over the pipe, its own width, and a fall of 1.04 %"
    if not fall.enough:
        said, change = no_pipe_words(fall, metric).split(": ")
        return Finding(
            "pipe_fall", Grade.FIX, f"{said}.", limit, PIPE_FALL.source, f"{change.capitalize()}"
        )
    unit = "mm" if metric else "in"
    return Finding(
        "pipe_fall",
        Grade.GOOD,
        f"A covered pipe needs the ground to fall {show(fall.needed, unit, 3, 'up')}; it falls "
        f"{depth_words(fall.available, metric)}.",
        limit,
        PIPE_FALL.source,
    )


def no_pipe_sold_finding(flow: Quantity, metric: bool = False) -> Finding:
    """Return what to do where not even the widest pipe sold carries ``flow``."""
    came = show(flow, "L/s" if metric else "ft**3/s", 3, "up")
    return Finding(
        "pipe_flow",
        Grade.FIX,
        f"No pipe you can buy carries the peak flow of {came}.",
        "the widest drain pipe sold, just full",
        MANNING_PIPE.source,
        "Use a grass or stone channel.",
    )


def pipe_full_flow(diameter: Quantity, fall: float, roughness: float) -> Quantity:
    """Return the flow of a pipe running just full, by Manning's formula.

    ``diameter`` is a length, ``fall`` a part of the length, such as 0.01, ``roughness`` Manning's
    n. Raises ValueError for numbers not above zero.
    """
    if not (fall > 0 and roughness > 0 and within(fall, 1.0)):
        raise ValueError("The pipe must fall, and its roughness must be more than zero.")
    wide = positive(diameter, "m", "The pipe must be wider than zero.")
    speed = (wide / 4) ** (2 / 3) * math.sqrt(fall) / roughness
    return quantity(speed * math.pi * wide**2 / 4, "m**3/s")


class PipeChoice(NamedTuple):
    """The pipe that carries a flow at a fall; both flows are of it running full."""

    width: Quantity | None
    """Inner width; none where the widest sold is too small."""
    smooth: Quantity
    """What it carries when smooth inside; of the widest, where none is enough."""
    corrugated: Quantity
    four: Quantity
    """What a smooth pipe of 4 in (100 mm) carries."""


def pipe_choice(flow: Quantity, fall: float = PIPE_FALL.value, metric: bool = False) -> PipeChoice:
    """Return the narrowest smooth pipe sold that carries ``flow`` at ``fall``, part of its length.

    Raises ValueError for a flow below zero. Source: Manning's formula with ``MANNING_PIPE`` and
    ``MANNING_CORRUGATED``.
    """
    q = not_negative(flow, "ft**3/s", "The flow must be zero or more.")
    system, unit = (METRIC, "mm") if metric else (US, "in")
    sizes = [quantity(width, unit) for width in PIPES[system]]
    full = [pipe_full_flow(size, fall, MANNING_PIPE.value) for size in sizes]
    enough = [place for place, one in enumerate(full) if magnitude(one, "ft**3/s") >= q]
    place = enough[0] if enough else len(sizes) - 1
    return PipeChoice(
        sizes[place] if enough else None,
        full[place],
        pipe_full_flow(sizes[place], fall, MANNING_CORRUGATED.value),
        full[0],
    )


def widest_pipe(metric: bool) -> Quantity:
    """Return the inner width of the widest pipe sold."""
    system, unit = (METRIC, "mm") if metric else (US, "in")
    return quantity(max(PIPES[system]), unit)
