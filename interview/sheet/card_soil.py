"""Soil, stone and what else is brought, on the yard card; blanks for what is not known."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from interview.asking.question import Unanswered
from interview.garden.due_words import count_words
from interview.garden.earth.materials import sold_in
from interview.garden.plan import Plan
from interview.garden.size import questions as bed
from interview.garden.summary import figure_words, wrap
from interview.quantities.guards import times
from interview.quantities.shown import depth_words, length_words, volume_words
from interview.quantities.units import Quantity, magnitude, plain_number, quantity, unit_name

GAP = "________"
"""A blank to fill in by pen."""


def or_gap(get: Callable[[], str], gap: str = GAP) -> str:
    """Return what ``get`` gives, or a blank to fill in where it waits for an answer."""
    try:
        return get()
    except Unanswered:
        return gap


def flow(words: Iterable[str]) -> list[str]:
    return wrap(" " + "; ".join(words), " ")


def soil(plan: Plan) -> Iterator[str]:
    dug = or_gap(lambda: figure_words(plan, "soil_dug_total"))
    loads = or_gap(
        lambda: count_words(plan.earth.digging.loads, "barrow-load"), f"{GAP[:4]} barrow-loads"
    )
    said = [f"dig {dug}, {loads}"]
    try:
        said.append(_berm(plan))
    except Unanswered:
        said.append(f"berm {GAP} high")
    try:
        said += [
            _item(plan, item.name, item.buy)
            for item in plan.earth.shopping
            if item.piece is None or item.name == "pipe"
        ]
    except Unanswered:
        said += [f"{name} {GAP}" for name in ("mulch", "compost", "stone")]
    yield from flow(said)


def _berm(plan: Plan) -> str:
    lie = plan.earth.lie
    if lie.crest_to_toe <= 0:
        return "no berm: the lawn is the rim"
    high = depth_words(quantity(lie.crest_to_toe, "ft"), plan.metric)
    whole = times(plan.earth.fill, plan.size.bed_count)
    keep = volume_words(whole, plan.metric)
    soil = "keep that soil" if plan.earth.own_berm else "bring clay loam for it, not the sand"
    return f"berm (low bank) {high} from crest to outer foot, {keep} tamped: {soil}"


def _item(plan: Plan, name: str, buy: Quantity) -> str:
    """Write one thing to bring, in the unit it is sold in and in barrow-loads."""
    if name == "pipe":
        return f"{name} {length_words(buy, plan.metric)}"
    unit = sold_in(buy, plan.metric)
    loads = count_words(plan.earth.loads_of(name), "load")
    laid = ""
    if name == "mulch":
        to = " to the full pond" if plan.earth.mulch_to_pond else ""
        laid = f" {depth_words(plan.answers[bed.MULCH_DEPTH], plan.metric)} deep{to}"
    return f"{name}{laid} {plain_number(magnitude(buy, unit), 3)} {unit_name(unit)}, {loads}"
