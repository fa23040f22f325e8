"""Where published guides disagree about this garden, as far as the plan knows it."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking.question import Unanswered
from interview.garden import guidance
from interview.garden.guidance import MM_AN_INCH, Guidance, Saying
from interview.garden.plan import Plan
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.basin import (
    FREEBOARD_IN,
    GENEROUS_FREEBOARD_IN,
    GENTLE_SIDE_SLOPE,
    SIDE_SLOPE,
)
from interview.garden.size.size_factors import PublishedSize
from interview.quantities.evidence import Cited, Provenance, Source
from interview.quantities.guards import not_negative, reaches, within
from interview.quantities.units import Quantity, magnitude, plain_number, quantity, show


def _published(title: str) -> Source:
    return Source(title, Provenance.PUBLISHED)


SIDES: tuple[Cited[float], ...] = (SIDE_SLOPE, GENTLE_SIDE_SLOPE)
"""Steepest sides, run for a rise of one."""

RIMS_IN: tuple[Cited[float], ...] = (
    FREEBOARD_IN,
    Cited(
        4.0,
        _published("Rain garden guide, Gloucestershire Wildlife Trust, undated: 100 mm or more"),
    ),
    GENEROUS_FREEBOARD_IN,
)
"""Height of the rim over the full pond."""

MULCH_IN: tuple[Cited[tuple[float, float]], ...] = (
    Cited((2.0, 2.0), _published("Plant spacing, Low Impact Development Center, web page")),
    Cited((3.0, 3.0), _published("Respect Our Waters, southeastern Wisconsin, web page")),
    Cited(
        (2.0, 4.0),
        _published(
            "Low impact development guide, Toronto region, wiki, web page: 75 mm, 25 mm more or "
            "less"
        ),
    ),
)
"""Depth of mulch, from and to."""


def side_slopes(side_slope: float) -> Guidance:
    """Return whether the sides are within each published limit of steepness."""
    sayings = tuple(
        Saying(
            f"{plain_number(limit.value)}:1 or gentler",
            "these sides are gentle enough"
            if reaches(side_slope, limit.value)
            else "these sides are steeper",
            limit.source,
        )
        for limit in SIDES
    )
    return Guidance(
        "side_slope",
        "How steep the sides may be",
        sayings,
        "The plan takes the first as usual. Answer the gentler one where children play, in sand, "
        "and where you will mow.",
    )


def rims(freeboard: Quantity, metric: bool = False) -> Guidance:
    """Return whether the rim is as high over the full pond as each guide has it."""
    sentence = "The rim cannot be lower than the full pond."
    found = not_negative(freeboard, "in", sentence)
    if metric:
        found = magnitude(freeboard, "mm") / MM_AN_INCH
    unit = "mm" if metric else "in"
    sayings = tuple(
        Saying(
            f"{show(quantity(least.value * (MM_AN_INCH if metric else 1), unit), unit, 3)} or more",
            "this rim is as high" if reaches(found, least.value) else "this rim is lower",
            least.source,
        )
        for least in RIMS_IN
    )
    return Guidance(
        "rim",
        "How high the rim stands over the full pond",
        sayings,
        "The plan takes the first as usual and makes the notch so wide that 1 in (25 mm) is to "
        "spare in the heaviest rain; where level lawn is the rim, 1 in (25 mm) is enough.",
    )


def mulches(mulch: Quantity, metric: bool = False) -> Guidance:
    """Return whether the mulch is as deep as each guide has it."""
    found = not_negative(mulch, "in", "The depth of mulch cannot be below zero.")
    if metric:
        found = magnitude(mulch, "mm") / MM_AN_INCH
    by, unit = (MM_AN_INCH, "mm") if metric else (1.0, "in")
    sayings = []
    for span in MULCH_IN:
        low, high = (show(quantity(end * by, unit), unit, 3) for end in span.value)
        thin, deep = not reaches(found, span.value[0]), not within(found, span.value[1])
        here = "this mulch is thinner" if thin else "this mulch is deeper" if deep else "so it is"
        sayings.append(
            Saying(
                low if low == high else f"{low} to {high}",
                here,
                span.source,
            )
        )
    return Guidance(
        "mulch",
        "How deep the mulch should be",
        tuple(sayings),
        "The plan takes the second as usual, and the first for a lean garden.",
    )


def _factors(plan: Plan) -> PublishedSize | None:
    try:
        return plan.size.published
    except Unanswered:
        return None


_TOPICS: tuple[Callable[[Plan], Guidance], ...] = (
    lambda p: guidance.drawdown(p.soak.soil.corrected, p.size.depth.rule, p.metric),
    lambda p: guidance.sizes(
        p.survey.catchment.drains_here, _factors(p), p.size.recommended, p.metric
    ),
    lambda p: guidance.steepest(p.site.slope),
    lambda p: guidance.slope_depths(p.site.slope),
    lambda p: guidance.least_rates(p.soak.soil.corrected, p.soak.soil.drop_rate, p.metric),
    lambda p: guidance.pond_depths(p.size.depth.depth, p.metric),
    lambda p: side_slopes(p.answers[shaping.SIDE_SLOPE]),
    lambda p: rims(p.answers[shaping.FREEBOARD], p.metric),
    lambda p: mulches(p.answers[bed.MULCH_DEPTH], p.metric),
)


def guides(plan: Plan) -> tuple[Guidance, ...]:
    """Return each matter on which guides disagree, of those the plan can judge so far."""
    found = []
    for topic in _TOPICS:
        try:
            found.append(topic(plan).told(plan.answers.told))
        except (Unanswered, ValueError):
            continue
    return tuple(found)
