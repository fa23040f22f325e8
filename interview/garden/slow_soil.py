"""What to do where the soil is slow: each way with the numbers that would follow."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from interview.asking.question import Unanswered
from interview.garden.plan import Plan
from interview.garden.site import questions as site
from interview.garden.size import basin
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.soak.depth import (
    CORRECTED_RATE_HOURS,
    NO_POND_HERE,
    STRICT_HOURS,
    DepthRule,
    Governs,
)
from interview.garden.soak.rates import Band
from interview.quantities.evidence import PRACTICE, Cited, Provenance, Source
from interview.quantities.shown import HIGH, area_words, rate_words
from interview.quantities.units import METRIC, US, Quantity, magnitude, plain_number, quantity, show

USEFUL_POND_IN, USEFUL_POND_MM = 6.0, 150.0
"""The pond a mended soil should allow: the middle of the published 4 to 8 in (100 to 200 mm)."""
MIX_DEPTH = {US: (12.0, "in"), METRIC: (300.0, "mm")}
MIX_DEPTH_SOURCE = Source("a foot of mended soil under the floor", Provenance.PRACTICE)
COMPOST_SHARE = Cited(
    0.35,
    Source(
        "Rain Garden Handbook for Western Washington, Washington State University Extension and "
        "Department of Ecology, 2013, p. 34: 65 % soil, 35 % compost",
        Provenance.PUBLISHED,
    ),
)
SAND_MIX = Cited(
    ("50 to 60 %", "20 to 30 %", "20 to 30 %"),
    Source(
        "Soil mix, raingardens.org, Rain Gardens of West Michigan, web page", Provenance.PUBLISHED
    ),
)
RETEST_AFTER_H = Cited(
    48.0, Source("a hole is left to drain two days before it is tested again", Provenance.OURS)
)
LONGEST_WET_H = Cited(
    72.0,
    Source(
        "LID Plant Recommendations, Appendix G, Monterey Bay, 2007: ponding of 3 days",
        Provenance.PUBLISHED,
    ),
)


class Remedy(NamedTuple):
    """One thing to do about slow soil."""

    label: str
    words: str
    source: Source = PRACTICE


WET_MEADOW_IN = 12.0
"""Water deeper than this makes no shallow meadow, however soon it is gone: ours."""


def is_slow(plan: Plan) -> bool:
    """Tell whether the soil, and not the wish, limits the pond; raises ``Unanswered``."""
    bands = {hole.test.band for hole in plan.soak.holes if hole.counts and hole.test is not None}
    limited = plan.size.depth.governs is not Governs.CAP
    return plan.size.depth.soil_refuses or limited or bool(bands & {Band.MARGINAL, Band.NO_FALL})


def remedies(plan: Plan) -> list[Remedy]:
    """Return what to do about slow soil, best first; none where the soil is quick enough."""
    if not is_slow(plan):
        return []
    tell = plan.answers.told
    return [one._replace(label=tell(one.label), words=tell(one.words)) for one in _remedies(plan)]


def takes_nothing(plan: Plan) -> bool:
    """Tell whether no water could be seen to leave by the bottom; raises ``Unanswered``."""
    return magnitude(plan.soak.soil.corrected, "in/h") <= 0


def _remedies(plan: Plan) -> Iterator[Remedy]:
    refuses = plan.size.depth.soil_refuses
    yield from _not_here(plan) if refuses else _shallower(plan)
    yield _again()
    faster = plan.soak.soil.corrected < rate_wanted(plan)
    if faster:
        yield _mend(plan)
        yield _sand()
        yield _test_the_mended()
    if not refuses:
        yield from _less_roof(plan)
    if magnitude(_gone_in_time(plan), "in") <= WET_MEADOW_IN:
        yield _wetland(plan)
    if faster:
        yield _move(plan)


def _deep(value: Quantity, plan: Plan, direction: str = "nearest") -> str:
    return show(value, "mm" if plan.metric else "in", 2, direction)


def _area(value: Quantity, plan: Plan) -> str:
    return area_words(value, plan.metric, HIGH)


def _hours(plan: Plan) -> float:
    """The hours in which the rule chosen wants the pond gone through the bottom."""
    strict = plan.size.depth.rule is DepthRule.STRICT
    return STRICT_HOURS.value if strict else CORRECTED_RATE_HOURS.value


def _useful(plan: Plan) -> Quantity:
    """The pond worth mending the soil for: a usual one, or what was wanted where that is had.

    Where small children may play it is a usual one at the most.
    """
    usual = quantity(USEFUL_POND_MM, "mm") if plan.metric else quantity(USEFUL_POND_IN, "in")
    cap = plan.answers[bed.DEEPEST_POND]
    had = plan.size.depth.depth >= usual and not plan.answers[site.CHILDREN]
    return cap if cap < usual or had else usual


def rate_wanted(plan: Plan) -> Quantity:
    """Return the corrected rate that empties a useful pond in time under the rule chosen."""
    per_hour = magnitude(_useful(plan), "in") / _hours(plan)
    return quantity(per_hour, "in/h")


def mix_layers(system: str) -> tuple[Quantity, Quantity, Quantity]:
    """Return the depth of the mended layer, of the soil loosened, and of the compost put on it.

    Sources: ``MIX_DEPTH_SOURCE``, ``COMPOST_SHARE``.
    """
    whole = quantity(*MIX_DEPTH[system])
    return whole, whole * (1 - COMPOST_SHARE.value), whole * COMPOST_SHARE.value


def _needed(plan: Plan, depth: Quantity, weighted: Quantity) -> Quantity:
    """The area a pond of ``depth`` needs; raises ``Unanswered`` or ValueError."""
    return basin.required_area(
        weighted,
        plan.size.rain_to_hold,
        depth,
        plan.answers[shaping.SIDE_SLOPE],
        plan.answers[shaping.FREEBOARD],
        length_to_width=plan.answers[shaping.LENGTH_TO_WIDTH],
        system=plan.system,
    ).recommended


def _useful_area(plan: Plan) -> str:
    try:
        area = _needed(plan, _useful(plan), plan.survey.catchment.weighted)
    except (Unanswered, ValueError):
        return ""
    return f", and such a pond needs {_area(area, plan)} at half its depth"


def _not_here(plan: Plan) -> Iterator[Remedy]:
    """Yield the one word on soil that empties less than the least pond."""
    if takes_nothing(plan):
        said = (
            "No water was seen to leave through the bottom, so no pond is shallow enough. Make "
            "sure with one reading after a night."
        )
    else:
        said = (
            f"This soil can empty only {_deep(plan.size.depth.limit, plan, 'down')} of pond in "
            "time, and under 3 in (75 mm) no floor can be dug level enough."
        )
    yield Remedy("Not in this soil", f"{said} {NO_POND_HERE}")


def _shallower(plan: Plan) -> Iterator[Remedy]:
    depth = plan.size.depth.depth
    try:
        area = plan.size.required.recommended
    except Unanswered as gap:
        if gap.why:
            yield Remedy(
                "Shallower and larger",
                f"This soil can empty only {_deep(plan.size.depth.limit, plan, 'down')} of pond in "
                "time, too little to hold the rain that falls on the garden itself.",
            )
        return
    yield Remedy(
        "Shallower and larger",
        f"A pond of {_deep(depth, plan)} empties in time; it needs {_area(area, plan)} at half "
        "its depth. Make the floor dead level: half an inch (10 mm) matters in a shallow pond.",
    )


def _again() -> Remedy:
    return Remedy(
        "Test again",
        "A smeared wall or a thin hard layer can make good soil look slow. Scratch the walls and "
        f"test the same hole again after {RETEST_AFTER_H.value:.0f} hours of draining, as a new "
        "hole in these answers. Or dig another about 10 ft (3 m) away, once the lines are "
        "located. If you dig deeper, that is a new hole too, with its own depth; a thin hard "
        "layer shows up as a faster test below it.",
        RETEST_AFTER_H.source,
    )


def _mend(plan: Plan) -> Remedy:
    unit = "mm/h" if plan.metric else "in/h"
    whole, soil, compost = mix_layers(plan.system)
    now = rate_words(plan.soak.soil.corrected, plan.metric)
    return Remedy(
        "Improve the soil",
        f"Dig {_deep(soil, plan)} of soil loose below the floor, spread {_deep(compost, plan)} of "
        f"compost on it and mix: {_deep(whole, plan)} of mix, 65 % soil and 35 % compost. "
        f"{show(rate_wanted(plan), unit, 2, 'up')} or more through the bottom (now {now}) would "
        f"empty a pond of {_deep(_useful(plan), plan)} in {plain_number(_hours(plan))} hours"
        f"{_useful_area(plan)}. The layer below stays as slow as it is: it decides unless you dig "
        "through it.",
        COMPOST_SHARE.source,
    )


def _sand() -> Remedy:
    sand, topsoil, compost = SAND_MIX.value
    return Remedy(
        "Sand only with compost",
        "Clay and sand alone set like brick and drain worse than before. If you use sand, take "
        f"the clay out and fill with {sand} sand, {topsoil} topsoil with little clay and {compost} "
        "compost.",
        SAND_MIX.source,
    )


def _test_the_mended() -> Remedy:
    return Remedy(
        "Test the improved soil",
        "Test the finished floor, not a pit of loose mix. Let it settle under two soakings. Dig "
        "the test hole through the mix into the soil below, and enter it as a new hole. Set the "
        "old hole aside and say why.",
    )


def _less_roof(plan: Plan) -> Iterator[Remedy]:
    try:
        half = _needed(plan, plan.size.depth.depth, plan.survey.catchment.weighted / 2)
    except (Unanswered, ValueError):
        return
    yield Remedy(
        "Take less roof",
        f"With half of what drains here the same pond needs {_area(half, plan)}.",
    )


def _gone_in_time(plan: Plan) -> Quantity:
    """The deepest water that is gone before plants and people have had too much of it."""
    most: Quantity = plan.soak.soil.corrected * quantity(LONGEST_WET_H.value, "h")
    return most


def _wetland(plan: Plan) -> Remedy:
    most, days = _gone_in_time(plan), LONGEST_WET_H.value
    if takes_nothing(plan):
        return Remedy(
            "Plant a shallow wet meadow",
            "Here water leaves only into the air, so let none stand. Make the ground no more than "
            "an inch (25 mm) lower in the middle, lead the overflow away, and plant what grows in "
            "wet soil.",
        )
    hours = magnitude(plan.size.depth.latest_empty, "h")
    stands = (
        "" if not 0 < hours < 1000 else (f"The pond of this plan stands for up to {hours:.0f} h. ")
    )
    return Remedy(
        "Plant a shallow wet meadow",
        f"{stands}Water of {_deep(most, plan, 'down')} is gone in {days:.0f} hours: plants of wet "
        "ground can take that. Deeper water would breed mosquitoes, which need about a week.",
        LONGEST_WET_H.source,
    )


def _move(plan: Plan) -> Remedy:
    unit = "mm/h" if plan.metric else "in/h"
    return Remedy(
        "Move",
        "Try a spot uphill or where the soil looked lighter. One that takes "
        f"{show(rate_wanted(plan), unit, 2, 'up')} through its bottom allows a pond of "
        f"{_deep(_useful(plan), plan)}{_useful_area(plan)}. Your other answers stay: only the soak "
        "test and the distances are new.",
    )
