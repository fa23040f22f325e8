"""Pegging the garden out from one string, on the sheet and the yard card."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from interview.garden.plan import Plan
from interview.garden.site import cautions
from interview.garden.size import questions as bed
from interview.garden.summary import may_dig, wrap
from interview.quantities.shown import length_words
from interview.quantities.units import Quantity, magnitude, quantity


@dataclass(frozen=True)
class Outline:
    """One outline of a bed, measured from a string along its middle, across the slope."""

    name: str
    first: Quantity
    """Along the string, from the peg at its end to the near side of the outline."""
    last: Quantity
    """The same, to the far side."""
    offset: Quantity
    """Square off the string to each side."""
    diagonal: Quantity
    """From corner to corner; both must be equal."""


def outlines(plan: Plan) -> tuple[Outline, ...]:
    """Return rim, full pond and floor as offsets from one string; raises ``Unanswered``."""
    garden = plan.size.garden
    whole = magnitude(garden.rim_length, "ft")
    found = []
    for name, length, width in (
        ("rim", garden.rim_length, garden.rim_width),
        ("full pond", garden.edge_length, garden.edge_width),
        ("level floor", garden.floor_length, garden.floor_width),
    ):
        long, wide = magnitude(length, "ft"), magnitude(width, "ft")
        first = (whole - long) / 2
        ends = (first, first + long, wide / 2, math.hypot(long, wide))
        found.append(Outline(name, *(quantity(one, "ft") for one in ends)))
    return tuple(found)


def peg_rows(plan: Plan) -> Iterator[tuple[str, str, str, str]]:
    """Yield each outline in words: its name, where along the string, to each side, corners."""
    rows = outlines(plan)
    for row in rows:
        first, last, offset, diagonal = (
            length_words(one, plan.metric)
            for one in (row.first, row.last, row.offset, row.diagonal)
        )
        yield row.name, f"{'0' if row is rows[0] else first} and {last}", offset, diagonal


def stakeout(plan: Plan) -> Iterator[str]:
    """Yield the outlines as a table of 76 columns or fewer, and how to use it."""
    yield from wrap(
        f"Stretch a string {length_words(plan.size.garden.rim_length, plan.metric)} long level "
        "across "
        "the slope, where the middle of the bed will be. Peg along it, then square off to both "
        "sides.",
        "  ",
    )
    if not may_dig(plan).open:
        yield from wrap(f"CAUTION: {cautions.PEGS}", "  ")
    yield f"  {'outline':<12}{'along the string, at':<27}{'each side':<13}corner to corner"
    for name, along, offset, diagonal in peg_rows(plan):
        yield f"  {name:<12}{along:<27}{offset:<13}{diagonal}"
    if plan.answers.get(bed.ROOM_AREA) is not None:
        yield from wrap(
            "The room was given as an area: any shape will do whose floor, full pond and rim have "
            "the areas of these rectangles, with the same slope of the sides.",
            "  ",
        )
