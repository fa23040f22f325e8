"""How large the garden must be for the rain it is to hold."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace

from interview.garden.form.basin import Basin
from interview.garden.form.choices import FloorShape
from interview.garden.form.lie import Ground, Lie, lie_of
from interview.garden.form.outline import Outline
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.guards import not_negative, positive, reaches, whole_up
from interview.quantities.records import record
from interview.quantities.units import (
    METRIC,
    US,
    Quantity,
    magnitude,
    quantity,
    ratio,
    round_up,
    significant,
)

TOO_SHALLOW = (
    "The pond must be deeper than the rain it is to hold, so hold less rain, or choose a deeper "
    "one if the soil takes it."
)
RULE_OF_THUMB = Source(
    "roof area x rain / depth, a tenth of the roof for 1 in of rain in a 10 in pond",
    Provenance.PRACTICE,
)
LENGTH_TO_WIDTH = Cited(
    2.0,
    Source(
        "University of Rhode Island and University of Connecticut rain garden design guide, "
        "undated: twice as long as wide, the long side across the slope",
        Provenance.PUBLISHED,
    ),
)
SIDE_SLOPE = Cited(
    2.0,
    Source(
        "Rain Garden Handbook for Western Washington, Washington State University Extension and "
        "Department of Ecology, 2013, pp. 37-39: sides no steeper than 2:1",
        Provenance.PUBLISHED,
    ),
)
GENTLE_SIDE_SLOPE = Cited(
    3.0,
    Source(
        "Low Impact Development sample design, City of Los Angeles, web page: at most 3:1",
        Provenance.PUBLISHED,
    ),
)
"""The cautious sides: where children play, on sand, and where they are mown."""
FREEBOARD_IN = Cited(
    2.0,
    Source(
        "Rain Garden Installation, Iowa Department of Agriculture and Land Stewardship, web page: "
        "a berm of 8 in for a pond of 6 in",
        Provenance.PUBLISHED,
    ),
)
GENEROUS_FREEBOARD_IN = Cited(
    6.0,
    Source(
        "Rain Garden Handbook for Western Washington, Washington State University Extension and "
        "Department of Ecology, 2013, p. 39",
        Provenance.PUBLISHED,
    ),
)
FAST_SOIL_IN_H = Cited(2.0, Source("soil that soaks two inches an hour is fast", Provenance.OURS))
GENEROUS_RAIN = Cited(
    1.25,
    Source(
        "Iowa Stormwater Education Partnership, web page: 1.25 in of rain", Provenance.PUBLISHED
    ),
)
SPLIT_ABOVE_FT2 = Cited(
    300.0,
    Source(
        "Step 1: Sizing and Siting the Rain Garden, University of Wisconsin-Extension, web page",
        Provenance.PUBLISHED,
    ),
)
NARROWEST_FLOOR = {US: (2.0, "ft"), METRIC: (600.0, "mm")}
NARROWEST_SOURCE = Source("a floor narrower than a rake cannot be leveled", Provenance.OURS)
DRAWN_STEP = {US: (0.5, "ft"), METRIC: (100.0, "mm")}


@record
class RequiredArea:
    """The basin that holds the rain exactly, before its sizes are rounded."""

    catchment: Quantity
    """Area that drains here weighted by runoff."""
    rain: Quantity
    mid_area: Quantity
    """Area at half the pond's depth."""
    recommended: Quantity
    """The same at two significant digits, up."""
    rule_of_thumb: Quantity
    """Weighted area x rain / depth, for comparison."""
    basin: Basin
    enlarged: bool
    """True when so little comes that the floor had to be made wide enough to dig."""


def required_area(
    catchment: Quantity,
    rain: Quantity,
    depth: Quantity,
    side_slope: float,
    freeboard: Quantity,
    *,
    shape: FloorShape = FloorShape.ROUNDED,
    length_to_width: float = LENGTH_TO_WIDTH.value,
    system: str = US,
) -> RequiredArea:
    """Return the basin whose full pond equals the rain on the catchment and inside the rim.

    ``catchment`` is an area weighted by runoff; ``rain``, ``depth`` and ``freeboard`` are lengths,
    ``side_slope`` run for a rise of one; ``length_to_width`` is that of the floor. ``system`` says
    in which steps areas are recommended. The balance is solved exactly, but a floor is never
    narrower than can be dug. Raises ValueError when nothing drains here or the pond is no deeper
    than the rain.
    """
    area = positive(catchment, "ft**2", "No surface drains here yet, so add one first.")
    p = positive(rain, "ft", "The rain to hold must be more than zero.")
    d = positive(depth, "ft", "The pond must be deeper than zero.")
    b = not_negative(freeboard, "ft", "The rim cannot be lower than the full pond.")
    if not (0 <= side_slope < math.inf and 0 < length_to_width < math.inf):
        raise ValueError("The side slope and the length to width must be plain numbers over zero.")
    if d <= p:
        raise ValueError(TOO_SHALLOW)
    exact = exact_width(unit_floor(shape, length_to_width), area, p, d, side_slope, b)
    width = max(exact, narrowest_width(length_to_width, system))
    floor = (quantity(width * length_to_width, "ft"), quantity(width, "ft"))
    basin = Basin(*floor, depth, side_slope, freeboard, shape)
    return RequiredArea(
        catchment=catchment,
        rain=rain,
        mid_area=basin.mid_area,
        recommended=recommended_area(basin.mid_area, system),
        rule_of_thumb=rule_of_thumb_area(catchment, rain, depth),
        basin=basin,
        enlarged=exact < width,
    )


def unit_floor(shape: FloorShape, length_to_width: float) -> Outline:
    """Return the floor one wide and ``length_to_width`` long; its numbers grow with the width."""
    return Outline(shape, length_to_width, 1.0)


def narrowest_width(length_to_width: float, system: str) -> float:
    """Return the width in feet of the narrowest floor to be dug, with its ``length_to_width``."""
    least = magnitude(quantity(*NARROWEST_FLOOR[system]), "ft")
    # A floor that is longer up the slope than along it is narrowest along it.
    return least / min(1.0, length_to_width)


def exact_width(unit: Outline, s: float, p: float, d: float, z: float, b: float) -> float:
    """Return the width of the floor in feet: the root of ``V(d) = P (S + A(d + b))``.

    ``unit`` is the floor one wide, ``s`` the weighted area in square feet, ``p`` the rain, ``d``
    the pond's depth and ``b`` the freeboard in feet, ``z`` the run of the sides for a rise of one.
    With area ``a w^2``, perimeter ``c w`` and corner number ``k`` that is ``a (d - P) w^2 + c z
    (d^2 / 2 - P H) w + k z^2 (d^3 / 3 - P H^2) - P S = 0``, ``H = d + b``.
    """
    high = d + b
    square = unit.area * (d - p)
    linear = unit.perimeter * z * (d * d / 2 - p * high)
    constant = unit.corner * z * z * (d**3 / 3 - p * high * high) - p * s
    if constant >= 0:
        # The sloping sides alone would hold more than comes: any floor will do.
        return 0.0
    return (math.sqrt(linear**2 - 4 * square * constant) - linear) / (2 * square)


def lying(basin: Basin, ground: Ground | None) -> Lie | None:
    """Return how a basin lies in its ground; nothing where that is not known or too steep."""
    if ground is None:
        return None
    try:
        return lie_of(basin, ground)
    except ValueError:
        return None


def inside(basin: Basin, ground: Ground | None) -> Quantity:
    """Return the area whose rain falls into the garden: inside the crest and the cut edge.

    Where the ground is not known yet it is that inside a rim level all round.
    """
    lie = lying(basin, ground)
    return basin.rim_area if lie is None else quantity(lie.inside_area, "ft**2")


def smallest(
    template: Basin,
    enough: Enough,
    *,
    length_to_width: float = LENGTH_TO_WIDTH.value,
    system: str = US,
    start: Quantity | None = None,
) -> Basin:
    """Return the smallest basin like ``template`` for which ``enough`` holds, as it is pegged out.

    Its floor is in steps of half a foot or 100 mm, 2 ft (600 mm) wide at least and as long by
    ``length_to_width``; ``start`` is a width to begin at. What is enough must stay so for a larger
    basin. Raises ValueError where no floor up to 200 ft (60 m) wide is.
    """
    step, unit = DRAWN_STEP[system]
    least = magnitude(quantity(narrowest_width(length_to_width, system), "ft"), unit)

    def sized(steps: int) -> Basin:
        width = quantity(steps * step, unit)
        length = round_up(width * length_to_width, step, unit)
        return replace(template, floor_length=length, floor_width=width)

    low = whole_up(least / step) - 1
    if start is not None:
        low = max(low, whole_up(magnitude(start, unit) / step) - 1)
    stride = 1
    while not enough(sized(low + stride)):
        low, stride = low + stride, stride * 2
        if low * step > magnitude(quantity(200, "ft"), unit):
            raise ValueError("No garden that can be dug by hand is large enough.")
    high = low + stride
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if enough(sized(middle)) else (middle, high)
    return sized(high)


Enough = Callable[[Basin], bool]
"""Tells whether a basin is large enough; what is enough stays so for a larger one."""


def drawn(required: RequiredArea, system: str = US, ground: Ground | None = None) -> Basin:
    """Return the basin to peg out: its floor rounded up to half feet or 100 mm, 2 ft at least.

    Where what rains inside the crest and the cut edge of ``ground`` takes more, it grows by a step
    until the rain is held.
    """
    basin = required.basin
    return smallest(
        basin,
        holds(required.catchment, required.rain, ground),
        length_to_width=ratio(basin.floor_length, basin.floor_width),
        system=system,
        start=basin.floor_width,
    )


def holds(catchment: Quantity, rain: Quantity, ground: Ground | None = None) -> Enough:
    """Return what tells whether a basin holds ``rain`` while nothing soaks in.

    ``catchment`` is the weighted area that drains to it.
    """
    return lambda one: reaches(ratio(rain_held(one, catchment, inside(one, ground)), rain), 1)


def footprint_sides(basin: Basin, ground: Ground | None) -> tuple[Quantity, Quantity]:
    """Return how long and wide all is that is dug or built; inside the rim where not known."""
    lie = lying(basin, ground)
    if lie is None:
        return basin.rim_length, basin.rim_width
    return quantity(lie.footprint_length, "ft"), quantity(lie.footprint_width, "ft")


def footprint_area(basin: Basin, ground: Ground | None) -> Quantity:
    """Return the area of all that is dug or built; inside the rim where that is not known."""
    lie = lying(basin, ground)
    return basin.rim_area if lie is None else quantity(lie.footprint_area, "ft**2")


def rain_held(basin: Basin, catchment: Quantity, within: Quantity | None = None) -> Quantity:
    """Return the depth of rain that just fills the pond, from ``catchment`` and ``within``.

    ``catchment`` is the area that drains here weighted by runoff, ``within`` the area whose rain
    falls into the garden: that inside the rim when not given. Raises ValueError below zero.
    """
    area = not_negative(catchment, "ft**2", "The area that drains here cannot be below zero.")
    own = magnitude(basin.rim_area if within is None else within, "ft**2")
    feet = magnitude(basin.volume, "ft**3") / (area + own)
    return quantity(feet * 12, "in")


def rule_of_thumb_area(roof_area: Quantity, rain: Quantity, depth: Quantity) -> Quantity:
    """Return roof area x rain / depth, for comparison only; the last two are depths.

    Raises ValueError for a pond of no depth. Source: ``RULE_OF_THUMB``.
    """
    positive(depth, "in", "The pond must be deeper than zero.")
    return quantity(magnitude(roof_area, "ft**2") * ratio(rain, depth), "ft**2")


def split_advised(area: Quantity) -> bool:
    """Tell whether a garden of an ``area`` should be made as two. Source: ``SPLIT_ABOVE_FT2``."""
    return magnitude(area, "ft**2") > SPLIT_ABOVE_FT2.value


def recommended_area(area: Quantity, system: str = US) -> Quantity:
    """Return ``area`` at two significant digits, up, in the square unit of ``system``."""
    unit = "m**2" if system == METRIC else "ft**2"
    return quantity(significant(magnitude(area, unit), 2, "up"), unit)
