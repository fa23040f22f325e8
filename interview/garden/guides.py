"""Where published guides disagree about this garden, as far as the plan knows it."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking.question import Unanswered
from interview.garden import build_guidance, guidance
from interview.garden.guidance import Guidance
from interview.garden.plan import Plan
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.size_factors import PublishedSize


def _published(plan: Plan) -> PublishedSize | None:
    try:
        return plan.size.published
    except Unanswered:
        return None


_TOPICS: tuple[Callable[[Plan], Guidance], ...] = (
    lambda p: guidance.drawdown(p.soak.soil.corrected, p.size.depth.rule, p.metric),
    lambda p: guidance.sizes(
        p.survey.catchment.drains_here, _published(p), p.size.recommended, p.metric
    ),
    lambda p: guidance.steepest(p.site.slope),
    lambda p: guidance.slope_depths(p.site.slope),
    lambda p: guidance.least_rates(p.soak.soil.corrected, p.soak.soil.drop_rate, p.metric),
    lambda p: guidance.pond_depths(p.size.depth.depth, p.metric),
    lambda p: build_guidance.side_slopes(p.answers[shaping.SIDE_SLOPE]),
    lambda p: build_guidance.rims(p.answers[shaping.FREEBOARD], p.metric),
    lambda p: build_guidance.mulches(p.answers[bed.MULCH_DEPTH], p.metric),
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
