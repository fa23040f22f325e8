"""The levels as dug, and what a garden asks for beyond its plants, on the sheet."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from typing import Any

from interview.asking.question import Question, Unanswered
from interview.garden.afterwards import advice
from interview.garden.afterwards import levels_questions as asked
from interview.garden.afterwards.advice import Matter
from interview.garden.afterwards.levels_questions import BedLevels
from interview.garden.earth.profile import reading_words
from interview.garden.figures import BY_KEY, find
from interview.garden.plan import Plan
from interview.garden.summary import figure_words, wrap
from interview.quantities.evidence import Source
from interview.quantities.shown import depth_words
from interview.quantities.units import Quantity, quantity, total
from interview.sheet.common import figure_lines

Mark = Callable[[Source], str]
GAP = "________"
FOUND = (
    "built_depth",
    "built_volume",
    "built_share",
    "built_rain_held",
    "built_empty",
    "built_floor_spread",
    "built_rim",
)
OF_ALL = ("built_all_volume", "built_all_share")


def while_digging(plan: Plan, mark: Mark) -> Iterator[str]:
    """Yield what may be met on dig day; waits with the digging."""
    _ = plan.size.garden
    yield from _advice(plan, advice.WHILE_DIGGING, mark)


def levels(plan: Plan, mark: Mark) -> Iterator[str]:
    """Yield the levels to read before planting, or what the levels read come to."""
    if plan.answers[asked.LEVELS_READ]:
        yield from wrap(
            "Read below the level line; what was planned stands beside it, below the string:"
        )
    else:
        yield from wrap(
            "When it is dug and before you plant, read these from the same string and type them "
            f"in: answer yes to {asked.LEVELS_READ.label} ({asked.LEVELS_READ.key}). The plan then "
            "says what the garden holds as it is, and what to mend."
        )
    several = plan.size.bed_count > 1
    for bed in plan.built.asked:
        planned = _planned(plan, bed)
        if several:
            yield f"Bed {bed.number}:"
        for first, question in zip(asked.READINGS, bed.readings, strict=True):
            found = _found(plan, question) or GAP
            beside = f"planned: {planned[question.key]}"
            yield from wrap(f"[ ] {first.label + ':':<14}{found:<26}  {beside}", " " * 18)
    if find(BY_KEY["built_depth"], plan).waits_for is None:
        yield ""
        yield from (["Bed 1:"] if several else [])
        yield from figure_lines(plan, *FOUND)
        if several:
            yield from figure_lines(plan, *OF_ALL)
        yield from wrap("What they mean stands under WHAT WAS FOUND.")
    yield ""
    yield from _advice(plan, advice.BEFORE_PLANTING, mark)


def _planned(plan: Plan, bed: BedLevels) -> dict[str, str]:
    """Return what the string should read at each point of a bed, by the key of its question."""
    garden = plan.size.garden
    try:
        floor, when = total(garden.rim_height, plan.built.cover(bed)), ""
    except Unanswered:
        floor, when = garden.rim_height, ", finished"
    at: dict[str, Quantity] = {
        bed.floor.key: floor,
        bed.notch.key: garden.freeboard,
        bed.rim.key: quantity(0.0, "ft"),
    }
    said = {key: reading_words(below, plan.metric) for key, below in at.items()}
    said[bed.floor.key] += when
    said[bed.inlet.key] = "not below the notch"
    return said


def _found(plan: Plan, question: Question[Any]) -> str:
    """Return what was read at a point; nothing where it was not."""
    value: tuple[Quantity, ...] | Quantity | None = plan.answers.get(question)
    if value is None:
        return ""
    each = value if isinstance(value, tuple) else (value,)
    return "; ".join(depth_words(one, plan.metric) for one in each)


def every_year(plan: Plan, mark: Mark) -> Iterator[str]:
    """Yield what each year brings, with how long this pond stands."""
    _ = plan.size.garden
    yield from _advice(plan, advice.EVERY_YEAR, mark)
    try:
        hours = figure_words(plan, "storm_hours_on_floor")
    except Unanswered:
        return
    yield from wrap(f"This garden's floor is wet for {hours} in the storm that it holds.")


def call(plan: Plan, mark: Mark) -> Iterator[str]:
    """Yield what to see, and whom to call."""
    _ = plan.size.garden
    yield from _advice(plan, advice.CALL, mark)


def _advice(plan: Plan, matters: Iterable[Matter], mark: Mark) -> Iterator[str]:
    """Yield each matter: sentences, a mark after the last of those of one source."""
    for matter in matters:
        said = ""
        for place, (sentence, source) in enumerate(matter.says):
            after = matter.says[place + 1 : place + 2]
            stands = "" if after and after[0][1] == source else mark(source)
            said += f" {sentence} {stands}".rstrip()
        yield from wrap(plan.answers.told(f"- {matter.topic}:{said}"), "  ")
