"""The soak test on the sheet, and what to do about slow soil."""

from __future__ import annotations

from collections.abc import Iterator

from interview.asking.question import Unanswered
from interview.garden.plan import Plan
from interview.garden.size import questions as bed
from interview.garden.slow_soil import remedies
from interview.garden.soak import words as soak_words
from interview.garden.soak.depth import DepthRule
from interview.garden.soak.rates import SoakTest
from interview.garden.soak.results import HoleReport
from interview.garden.storms.charts import drop_chart
from interview.garden.summary import width, words_alone, wrap
from interview.quantities.units import magnitude
from interview.sheet.common import drawn, figure_lines

CHART_ROWS = 18


def soak(plan: Plan) -> Iterator[str]:
    """Yield each test hole with its readings and what they mean, and the rates that follow."""
    for hole in plan.soak.holes:
        yield from _hole(hole, plan)
    yield from figure_lines(
        plan,
        "drop_rate",
        "mean_drop_rate",
        "lower_drop_rate",
        "corrected_rate",
        "corrected_rate_error",
    )
    yield from _what_follows(plan)


def _waits(gap: Unanswered, plan: Plan) -> str:
    """Say what is waited for: a question by its name, or a sentence."""
    return f"waits for: {gap.said(plan.answers).removesuffix('.')}."


def result_lines(plan: Plan, number: int) -> Iterator[str]:
    """Yield what the result of hole ``number`` means and what follows, without its readings."""
    for hole in plan.soak.holes:
        if hole.number != number:
            continue
        if hole.test is None:
            gap = hole.waits_for
            waits = _waits(gap, plan) if gap else "is not finished."
            yield from wrap(f"{hole.name} {waits}")
            return
        band, why, *sure = _meaning(hole, hole.test, plan.metric)
        yield from (*wrap(band), "", *wrap(why), "")
        yield from () if words_alone() else soak_words.water_picture(hole.test)
        for words in sure:
            yield from ("", *wrap(words))
    try:
        yield from _what_follows(plan)
        advice = list(slow(plan))
    except Unanswered as gap:
        yield from wrap(f"The depth of the pond {_waits(gap, plan)}")
        return
    if advice:
        yield from ("", "What you can do about slow soil:", *advice)


def _what_follows(plan: Plan) -> Iterator[str]:
    """Yield the holes side by side, and the depth of pond that each check and rule allows."""
    soil = plan.soak.soil
    if soil.combined is not None and len(plan.soak.holes) > 1:
        yield ""
        for line in soak_words.holes_lines(plan.soak.holes, soil.combined, plan.metric):
            yield from wrap(line) if len(line) > width() else [line]
    if soil.lower_drop_rate is None:
        return
    yield ""
    cap, rule = plan.answers[bed.DEEPEST_POND], DepthRule(plan.answers[bed.DRAIN_RULE])
    yield from soak_words.depth_lines(soil.lower_drop_rate, soil.corrected, cap, plan.metric, rule)


def _hole(hole: HoleReport, plan: Plan) -> Iterator[str]:
    metric = plan.metric
    if hole.set_aside:
        yield from wrap(f"{hole.name} is set aside and not used: {hole.set_aside}.", "  ")
    if hole.test is None:
        if hole.waits_for:
            yield from wrap(f"{hole.name} {_waits(hole.waits_for, plan)}", "  ")
        return
    yield f"{hole.name}: {hole.test.band.value}"
    yield from _table(hole.test, metric)
    for note in hole.test.notes:
        yield from wrap(f"  {note}", "  ")
    yield ""
    yield from drawn(drop_chart(hole.test, metric), CHART_ROWS)
    yield ""
    yield from () if words_alone() else soak_words.water_picture(hole.test)
    yield ""
    for words in _meaning(hole, hole.test, metric):
        yield from wrap(words)
    yield ""


def _meaning(hole: HoleReport, test: SoakTest, metric: bool) -> Iterator[str]:
    yield soak_words.verdict(test, hole.texture, metric)
    yield soak_words.why_narrow(test, metric)
    yield soak_words.trend_words(test)
    yield soak_words.error_words(test, metric)
    if hole.texture is not None:
        yield soak_words.texture_words(hole.texture, metric)


def _table(test: SoakTest, metric: bool) -> Iterator[str]:
    unit, deep = ("mm/h", "mm") if metric else ("in/h", "in")
    heads = f"{'from':>8} {'to':>8} {'water ' + deep:>16} {'drop ' + unit:>11}"
    yield f"  {heads} {'since fill':>11} {'corrected':>10}"
    for row in test.intervals:
        before, after = (magnitude(x, deep) for x in (row.depth_before, row.depth_after))
        least = ">" if row.found_empty else ""
        drop, fill, corrected = (
            "-" if one is None else soak_words.reading_rate(one, metric)
            for one in (row.drop_rate, row.drop_rate_since_fill, row.corrected)
        )
        yield (
            f"  {magnitude(row.start, 'h'):>6.2f} h {magnitude(row.end, 'h'):>6.2f} h"
            f" {f'{before:.4g} to {after:.4g}':>16} {least + drop:>11} {fill:>11}"
            f" {(least if row.corrected is not None else '') + corrected:>10}"
        )
    yield from wrap(soak_words.CORRECTED_MEANS, "  ")


def slow(plan: Plan) -> Iterator[str]:
    """Yield what to do about slow soil; nothing where it is quick enough."""
    try:
        found = remedies(plan)
    except Unanswered:
        return
    for remedy in found:
        yield from wrap(f"- {remedy.label}: {remedy.words}", "  ")
