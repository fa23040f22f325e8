"""The ways out of a garden that does not fit, numbered."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress

from interview.asking.question import Unanswered
from interview.garden.remedies import ways_out
from interview.garden.session import Session
from interview.garden.verdict_rows import KEEP, WAYS_OUT
from interview.plain.turn import NumberedWay
from interview.sheet.size import way_words


def other_ways(session: Session, ways: Sequence[NumberedWay]) -> tuple[NumberedWay, ...]:
    """Return the ways out with their numbers in the place of the row that shows them."""
    found: list[NumberedWay] = []
    for way in ways:
        if way.target != WAYS_OUT:
            found.append(way)
            continue
        with suppress(Unanswered):
            for out in ways_out(session.plan):
                # What keeps every answer is what going on does.
                target = KEEP if out.takes is not None and not out.takes else ""
                label = way_words(session.plan, out)
                found.append(NumberedWay(label, target, out.takes))
    return tuple(found)
