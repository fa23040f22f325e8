"""The plan at a glance: its verdict, the garden in a sentence, figures against their limits."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import suppress
from typing import NamedTuple

from interview.asking.question import Unanswered
from interview.garden.place import questions as place
from interview.garden.plan import Plan
from interview.garden.planting.wetness import USUAL_HOURS
from interview.garden.size.zones import Zone
from interview.garden.summary import (
    VERDICT_WORDS,
    cheaper_words,
    figure_words,
    may_dig,
    size_sentence,
    value_of,
)
from interview.quantities.evidence import Finding, Grade
from interview.quantities.shown import depth_words, water_words
from interview.quantities.units import Quantity, magnitude, ratio


class Gauge(NamedTuple):
    """A figure against its limit."""

    label: str
    value: str
    limit: str = ""
    """The limit in words."""
    share: float | None = None
    """The figure as a part of its limit, nought to one."""


class Overview(NamedTuple):
    """What the first look at a plan shows."""

    verdict: Grade
    says: str
    digging: str
    """Whether digging is open, in a few words."""
    sentences: tuple[str, ...]
    """The garden in one sentence, and how long the water stands; what it waits for if not known."""
    measures: tuple[Gauge, ...]
    badges: tuple[Finding, ...]
    """Worst first; without the good ones that ask for nothing."""
    in_order: int
    """How many things were looked at and are in order."""


def overview(plan: Plan) -> Overview:
    """Return the plan at a glance, as far as it is known."""
    told = tuple(one for one in plan.findings if one.asks)
    return Overview(
        plan.verdict,
        VERDICT_WORDS[plan.verdict],
        _digging(plan),
        tuple(_sentences(plan)),
        tuple(_measures(plan)),
        told,
        len(plan.findings) - len(told),
    )


def _digging(plan: Plan) -> str:
    word = may_dig(plan).word
    if word != "OPEN":
        return {"SHUT": "Digging is shut today", "STOP": "No digging"}[word]
    last = plan.site.dig_gate.stale_after
    return f"Digging open until {last:%-d %B}" if last is not None else "Digging is open"


def _sentences(plan: Plan) -> Iterator[str]:
    try:
        yield size_sentence(plan)
    except Unanswered:
        first = dict(_known(plan, ("First size",)))
        yield first.get("First size", "There is no size yet: answer how big the roof is.")
        return
    labels = ("Rain it holds", "Area that drains here", "Pond depth", "Empties")
    known = dict(_known(plan, labels))
    said = f"The pond is {known['Pond depth']} deep, holds {known['Rain it holds']} of rain"
    if "Area that drains here" in known:
        said += f" from {known['Area that drains here']}"
    if "Empties" in known:
        said += f" and is empty {known['Empties']}"
    with suppress(Unanswered):
        said += f"; it takes {figure_words(plan, 'plants_total')} plants"
        said += f", {cheaper}" if (cheaper := cheaper_words(plan)) else ""
    yield f"{said}."


def _known(plan: Plan, labels: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    for label in labels:
        try:
            value = value_of(label, plan)
        except Unanswered:
            continue
        if value:
            yield label, value


def _measures(plan: Plan) -> Iterator[Gauge]:
    for make in (_rate, _slope, _wet, _pond, _held):
        try:
            yield make(plan)
        except Unanswered:
            continue


def _share(value: float, limit: float) -> float:
    return max(0.0, min(1.0, value / limit)) if limit > 0 else 0.0


def _rate(plan: Plan) -> Gauge:
    return Gauge("soil takes", value_of("Corrected rate", plan))


def _slope(plan: Plan) -> Gauge:
    words = value_of("Slope", plan)
    most = plan.site.steepest
    return Gauge("slope", words, f"of {most:g} % at most", _share(float(words.split()[0]), most))


def _wet(plan: Plan) -> Gauge:
    hours = magnitude(plan.storms.zone_hours.of(Zone.FLOOR), "h")
    most = USUAL_HOURS.value
    words = figure_words(plan, "storm_hours_on_floor")
    return Gauge("water stands", words, f"of {most:.0f} h at most", _share(hours, most))


def _pond(plan: Plan) -> Gauge:
    depth = plan.size.depth
    limit = depth_words(depth.cap, plan.metric)
    share = _share(ratio(depth.depth, depth.cap), 1.0)
    return Gauge("pond", depth_words(depth.depth, plan.metric), f"of {limit} at most", share)


def _held(plan: Plan) -> Gauge:
    held: Quantity = plan.size.rain_held
    wanted = plan.answers[place.RAIN_DEPTH]
    share = _share(ratio(held, wanted), 1.0)
    limit = f"of {water_words(wanted, plan.metric)} asked for"
    return Gauge("rain held", value_of("Rain it holds", plan), limit, share)
