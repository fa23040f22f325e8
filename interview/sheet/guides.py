"""Where published guides disagree, on the sheet."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from interview.garden.guides import guides
from interview.garden.plan import Plan
from interview.garden.summary import wrap
from interview.quantities.evidence import Source


def disagreements(plan: Plan, mark: Callable[[Source], str]) -> Iterator[str]:
    """Yield for each matter what each guide says, what it would mean here, and what is followed.

    ``mark`` gives the number of a source in the list at the end of the sheet.
    """
    for place, matter in enumerate(guides(plan)):
        if place:
            yield ""
        yield from wrap(f"{matter.topic}:")
        for saying in matter.sayings:
            here = saying.here.rstrip(".")
            yield from wrap(f"- {saying.says}: {here}. {mark(saying.source)}", "  ")
        yield from wrap(matter.followed, "  ")
