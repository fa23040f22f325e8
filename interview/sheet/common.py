"""What the parts of the sheet share: figures as lines."""

from __future__ import annotations

from collections.abc import Iterator

from interview.garden.figures import BY_KEY, find
from interview.garden.plan import Plan
from interview.garden.summary import wrap


def figure_lines(plan: Plan, *keys: str) -> Iterator[str]:
    """Yield each figure that is known as a line: label, value."""
    for key in keys:
        found = find(BY_KEY[key], plan)
        if found.waits_for is None:
            label = f"{found.figure.label}:"
            yield from wrap(f"{label:<45} {found.shown(plan.metric)}", " " * 46)
