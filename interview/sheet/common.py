"""What the parts of the sheet share: figures as lines, and drawings or their words."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from contextvars import ContextVar

from interview.asking import own_fault
from interview.drawing.canvas import cells
from interview.drawing.scene import Drawing
from interview.garden.earth.materials import sold_in
from interview.garden.figures import BY_KEY, find
from interview.garden.plan import Plan
from interview.garden.summary import may_dig, width, words_alone, wrap
from interview.quantities.units import Quantity, magnitude, plain_number, unit_name


def figure_lines(plan: Plan, *keys: str) -> Iterator[str]:
    """Yield each figure that is known as a line: label, value."""
    for key in keys:
        found = find(BY_KEY[key], plan)
        if found.waits_for is None:
            label = f"{found.figure.label}:"
            yield from wrap(f"{label:<45} {found.shown(plan.metric)}", " " * 46)


DRAWN = "\x00drawing "
"""How a line begins that stands for a drawing set apart; no text that is shown holds a NUL."""
_apart = ContextVar[list[Drawing] | None]("apart", default=None)


@contextmanager
def drawings_apart() -> Iterator[list[Drawing]]:
    """Gather the drawings of the sheet; in their place stands a line ``DRAWN`` and their number."""
    found: list[Drawing] = []
    before = _apart.set(found)
    try:
        yield found
    finally:
        _apart.reset(before)


def drawn(drawing: Drawing, rows: int) -> Iterator[str]:
    """Yield a drawing of at most ``rows`` lines, or where they are wanted its words alone."""
    apart = _apart.get()
    if apart is not None:
        apart.append(drawing)
        yield f"{DRAWN}{len(apart) - 1}"
        return
    if not words_alone():
        yield from cells(drawing, width(), rows, braille=False)
        return
    notes = [one for one in drawing.notes if one not in drawing.description]
    for part in (f"{drawing.title}:" if drawing.title else "", drawing.description, *notes):
        if part:
            yield from wrap(part)


def told_lines(plan: Plan, *keys: str) -> Iterator[str]:
    """Yield the figures that come to something: not nought, and not a word for nothing."""
    for key in keys:
        value = find(BY_KEY[key], plan).number(plan.metric)
        if isinstance(value, (int, float)) and value > 0:
            yield from figure_lines(plan, key)


def order_words(amount: Quantity, metric: bool) -> str:
    """Write a volume in the unit it is sold in: half cubic yards, else feet."""
    unit = sold_in(amount, metric)
    return f"{plain_number(magnitude(amount, unit), 4)} {unit_name(unit)}"


STOPPED = (
    "While a stop stands the sheet gives no measures to dig by. Local codes and licensed people "
    "decide."
)


def stopped(plan: Plan) -> bool:
    """Tell whether a stop was found, or none could be looked for."""
    try:
        return may_dig(plan).word == "STOP"
    except Exception as trouble:
        own_fault.note("whether a stop was found", trouble)
        return True
