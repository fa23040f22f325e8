"""What the parts of the sheet share: figures as lines, and drawings or their words."""

from __future__ import annotations

from collections.abc import Iterator

from interview.drawing.canvas import cells
from interview.drawing.scene import Drawing
from interview.garden.figures import BY_KEY, find
from interview.garden.plan import Plan
from interview.garden.summary import width, words_alone, wrap


def figure_lines(plan: Plan, *keys: str) -> Iterator[str]:
    """Yield each figure that is known as a line: label, value."""
    for key in keys:
        found = find(BY_KEY[key], plan)
        if found.waits_for is None:
            label = f"{found.figure.label}:"
            yield from wrap(f"{label:<45} {found.shown(plan.metric)}", " " * 46)


def drawn(drawing: Drawing, rows: int) -> Iterator[str]:
    """Yield a drawing of at most ``rows`` lines, or where they are wanted its words alone."""
    if not words_alone():
        yield from cells(drawing, width(), rows, braille=False)
        return
    notes = [one for one in drawing.notes if one not in drawing.description]
    for part in (f"{drawing.title}:" if drawing.title else "", drawing.description, *notes):
        if part:
            yield from wrap(part)
