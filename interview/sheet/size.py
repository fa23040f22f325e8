"""Depth, size and the ways out, on the sheet."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import pairwise
from typing import Any, NamedTuple

from interview.asking.question import Unanswered
from interview.garden.earth.work import Span
from interview.garden.figures import BY_KEY, find
from interview.garden.pictures import plan_picture
from interview.garden.plan import Plan
from interview.garden.planting.costs import costs
from interview.garden.remedies import WayOut, ways_out
from interview.garden.scenarios import Worth, money, turn_of
from interview.garden.size.answered import has_room
from interview.garden.size.basin import split_advised
from interview.garden.summary import wrap
from interview.garden.three_sizes import (
    SizedGarden,
    easily_enough,
    still_caught,
    three_sizes,
    yours,
)
from interview.quantities.guards import times
from interview.quantities.shown import (
    LOW,
    PLAIN,
    length_words,
    sides_words,
    volume_words,
    water_words,
)
from interview.quantities.units import METRIC, US, Quantity, quantity, show
from interview.sheet.common import drawn, figure_lines, order_words
from interview.sheet.stakeout import stakeout

PLAN_ROWS = 30
BEDS_APART = {US: (2.0, "ft"), METRIC: (600.0, "mm")}
"""Least ground between the outer feet of two beds: room for a barrow, a choice of ours."""


def size(plan: Plan) -> Iterator[str]:
    """Yield the depth, the area and the sizes of the garden."""
    _ = plan.size.garden
    yield from figure_lines(
        plan, "depth_by_drop", "depth_by_corrected", "pond_depth", "depth_governed_by"
    )
    yield from _areas(plan)
    yield from _sizes(plan)
    yield from figure_lines(
        plan,
        "size_governed_by",
        "pond_volume",
        "work_area",
        "inside_area",
        "own_rain_share",
        "rain_held",
        "empty_soonest",
        "empty_latest",
    )


def pegging(plan: Plan) -> Iterator[str]:
    """Yield the garden from above and the measures to peg it out by."""
    yield from pegs(plan)
    yield from _drawing(plan)


def pegs(plan: Plan) -> Iterator[str]:
    """Yield the measures to peg the garden out by."""
    _ = plan.size.garden
    if plan.size.bed_count > 1:
        how = "one below the other" if plan.storms.beds.in_series else "side by side"
        yield from wrap(f"{plan.size.bed_count} equal beds {how}; each of them:")
        yield from wrap(beds_apart(plan), "  ")
    yield from stakeout(plan)


def beds_apart(plan: Plan) -> str:
    """Say how far apart the beds lie, and the ground they take together."""
    row, gap = plan.storms.beds.in_series, quantity(*BEDS_APART[plan.system])
    one = plan.size.over_all[1 if row else 0]
    count = plan.size.bed_count
    whole = times(one, count) + times(gap, count - 1)
    way = "up and down the slope" if row else "along the slope"
    what = "lip" if plan.earth.notch.lip else "notch"
    pours = f" Each {what} pours onto stone in the bed below." if row else ""
    return (
        f"Leave {length_words(gap, plan.metric)} or more from the outer foot of one bed to the "
        f"next: together they take {length_words(whole, plan.metric)} {way}. Each bed has its own "
        f"string, parallel to the others.{pours}"
    )


def _areas(plan: Plan) -> Iterator[str]:
    """Yield the recommended area beside the rule of thumb, and its range."""
    unit = "m**2" if plan.metric else "ft**2"
    yield from wrap(
        f"{'Recommended area, rule of thumb beside it:':<46}"
        f"{show(plan.size.recommended, unit, 2)}; {show(plan.size.rule_of_thumb, unit, 2)}",
        " " * 46,
    )
    yield from wrap(
        "The recommended area is needed half way up the sides; from it the floor is rounded up to "
        "be pegged. The size as built is the sentence under IN SHORT.",
        "  ",
    )
    yield from figure_lines(plan, "hand_check_area", "mid_area")
    if plan.size.by_storms:
        # The range is that of a pond that holds the rain while nothing soaks in.
        yield from figure_lines(plan, "published_sandy", "published_silty", "published_clayey")
        return
    told = [find(BY_KEY[key], plan) for key in ("area_low", "area_high", "widest_error")]
    if any(one.waits_for for one in told):
        return
    low, high, driver = (one.shown(plan.metric) for one in told)
    yield from wrap(
        f"{'Range of the area, from the survey:':<46}{low} to {high}; most of it from {driver}; "
        "measure that again to narrow it",
        " " * 46,
    )
    yield from figure_lines(plan, "published_sandy", "published_silty", "published_clayey")


def _sizes(plan: Plan) -> Iterator[str]:
    garden, metric = plan.size.garden, plan.metric
    if plan.size.bed_count > 1:
        how = "one below the other" if plan.storms.beds.in_series else "side by side"
        yield from wrap(f"{plan.size.bed_count} equal beds {how}; each of them:")
    for label, one, two in (
        ("Level floor", garden.floor_length, garden.floor_width),
        ("Full pond", garden.edge_length, garden.edge_width),
        ("Inside the rim", garden.rim_length, garden.rim_width),
    ):
        yield from wrap(f"{label + ':':<46}{sides_words(one, two, metric)}")
    yield from figure_lines(plan, "floor_shape_drawn")
    if plan.size.ground is None:
        return
    over_all = sides_words(*plan.size.over_all, metric)
    yield from wrap(f"{'Over all, toe to toe:':<46}{over_all}")


def _drawing(plan: Plan) -> Iterator[str]:
    """Yield the garden seen from above, where that is known."""
    try:
        drawing = plan_picture(plan)
    except Unanswered:
        return
    yield ""
    yield from drawn(drawing, PLAN_ROWS)


def ways_shown(plan: Plan) -> list[WayOut]:
    """Return the ways out where the garden does not fit, does not hold the rain, or is large.

    Those that fit come first.
    """
    try:
        large = split_advised(plan.size.garden.mid_area)
        if not plan.size.too_big and not large and plan.size.enough:
            return []
        return sorted(ways_out(plan), key=lambda way: not way.fits)
    except Unanswered:
        return []


def ways(plan: Plan) -> Iterator[str]:
    """Yield the ways out, a paragraph each."""
    for way in ways_shown(plan):
        yield from wrap(f"- {way_words(plan, way)}", "  ")


def way_words(plan: Plan, way: WayOut) -> str:
    """Return a way out with its size, what it holds, and whether it fits the room."""
    unit = "mm" if plan.metric else "in"
    one, two = way.over_all
    fits = " (fits)" if way.fits else " (does not fit)"
    if way.fits and way.beds > 1:
        fits = f" (fits where there is room for {way.beds} such beds)"
    if not has_room(plan.answers):
        fits = ""
    each = f"{way.beds} beds, each over all" if way.beds > 1 else "over all"
    record = ""
    if way.record_share is not None:
        record = f", {LOW.write(100 * way.record_share)} % of the record's runoff"
    note = f"; {way.note}" if way.note else ""
    return (
        f"{way.label}: {each} {sides_words(one, two, plan.metric)}{fits}, holds "
        f"{show(way.rain_held, unit, 2, 'down')} of rain, {way.storms_held} of the "
        f"{len(plan.storms.ladder)} storms of the table whole{record}{note}"
    )


class SizeRow(NamedTuple):
    """One measure of the three sizes: its name, and what it is of each."""

    label: str
    values: tuple[str, ...]
    turns: tuple[Worth | None, ...]
    """Whether each is better or worse than that of the size chosen; nothing where neither."""
    chief: bool = True
    """Whether it is among the few by which one chooses."""


def size_rows(plan: Plan, rows: Sequence[SizedGarden]) -> Iterator[SizeRow]:
    """Yield lean, usual and generous measure by measure."""
    metric, mine_is = plan.metric, yours(plan)
    at = next((place for place, row in enumerate(rows) if row.name == mine_is), None)

    def row(
        label: str,
        get: Callable[[SizedGarden], Any],
        words: Callable[[Any], str],
        more: bool | None = None,
        chief: bool = True,
        none: str = "not known yet",
    ) -> SizeRow:
        found = [get(one) for one in rows]
        said = [none if one is None else words(one) for one in found]
        mine, shown = (None, "") if at is None else (found[at], said[at])
        turns = [
            None
            if more is None or one is None or mine is None or text == shown
            else turn_of(bool(one > mine), more, not more)
            for one, text in zip(found, said, strict=True)
        ]
        return SizeRow(label, tuple(said), tuple(turns), chief)

    def length(value: Quantity) -> str:
        return length_words(value, metric)

    def volume(value: Quantity) -> str:
        return volume_words(value, metric)

    def order(value: Quantity) -> str:
        return order_words(value, metric)

    bed = "a bed's " if plan.size.bed_count > 1 else ""
    yield row(f"{bed}floor, long", lambda one: one.garden.floor_length, length)
    yield row(f"{bed}floor, wide", lambda one: one.garden.floor_width, length)
    yield row(f"{bed}over all, long", lambda one: one.over_all[0], length)
    yield row(f"{bed}over all, wide", lambda one: one.over_all[1], length)
    yield row(
        "holds, if none soaks in",
        lambda one: one.rain_held,
        lambda held: water_words(held, metric, LOW),
        more=True,
    )
    yield row("deepest in that storm", lambda one: one.peak, lambda it: water_words(it, metric))
    yield row("water on the floor", lambda one: one.hours, lambda it: show(it, "h", 2), more=False)
    yield row(
        "of 1 1/2 times the storm",
        lambda one: one.caught,
        lambda part: f"{LOW.write(100 * part)} % caught",
        more=True,
        chief=False,
    )
    yield row("soil to dig", lambda one: one.dug, volume, more=False)
    yield row("soil left over", lambda one: one.left_over, volume, more=False, chief=False)
    yield row("mulch, loose", lambda one: one.mulch, order, more=False)
    yield row("compost, loose", lambda one: one.compost, order, more=False, chief=False)
    yield row("stone, loose", lambda one: one.stone, order, more=False, chief=False)
    yield row("plants", lambda one: one.plants, str)
    yield row("or by cheaper ways", lambda one: one.fewest, str, chief=False, none="")
    if any(one.cost is not None for one in rows):
        sign = costs(plan.planting).sign
        yield row(
            "cost of what has a price",
            lambda one: one.cost or 0.0,
            lambda it: money(it, sign),
            False,
        )
    if any(one.work is not None for one in rows):
        yield row("hours of one person", lambda one: one.work, _hours, chief=False)


def sizes(plan: Plan) -> Iterator[str]:
    """Yield lean, usual and generous beside each other, and what less would still catch."""
    rows = three_sizes(plan)
    mine = yours(plan)

    def line(label: str, said: Iterable[str]) -> str:
        return f"{label:<25}" + "".join(f"{one:<17}" for one in said).rstrip()

    yield line("", (f"{row.name}{' (yours)' if row.name == mine else ''}" for row in rows))
    for one in size_rows(plan, rows):
        yield line(one.label, one.values)
    if not mine:
        yield from wrap(
            "You chose the floor yourself: your garden is none of these three. The rest of "
            "this sheet is about your own floor.",
            "  ",
        )
    yield from wrap(
        "Lean counts on the soil: it runs over if the soil takes water half as fast as tested, or "
        "if the storm is larger. It has mulch to the full pond only. What you answered about "
        "sides, rim, mulch and compost is the same in all three; what you left open goes by the "
        "size.",
        "  ",
    )
    if any(after.rain_held < before.rain_held for before, after in pairwise(rows)):
        yield from wrap(
            "The room takes no larger garden: gentler sides and a higher rim leave less of it for "
            "the floor, so a garden named larger holds less here.",
            "  ",
        )
    if easily_enough(plan):
        less = "; ".join(
            f"with {100 * one.part:.0f} % of the floor {LOW.write(100 * one.caught)} %"
            for one in still_caught(plan)
        )
        yield from wrap(
            "It holds more than you asked for. Of the rain you asked for, a smaller floor would "
            f"still catch: {less}."
        )


def _hours(work: Span) -> str:
    return f"{PLAIN.write(work.quick)} to {PLAIN.write(work.slow)} h"
