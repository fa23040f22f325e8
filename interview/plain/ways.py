"""The ways out of a garden that does not fit, numbered: one that is chosen is kept."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from contextlib import suppress

from interview.asking import path
from interview.asking.question import Unanswered
from interview.asking.sitting import Doubt
from interview.garden.remedies import ways_out
from interview.garden.session import Session
from interview.garden.size import questions as bed
from interview.garden.verdict_rows import KEEP, WAYS_OUT
from interview.plain.turn import NumberedWay
from interview.sheet.size import way_words

_FLOOR = (bed.FLOOR_LENGTH.key, bed.FLOOR_WIDTH.key)


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


def take(session: Session, words: Mapping[str, str]) -> list[str]:
    """Keep the answers of a way out, and say what they are; stand where the floor is asked anew.

    A floor pegged before would keep its size, so it is taken away, and said. Raises ``Refused``.
    """
    said = []
    for key in _FLOOR:
        step = next((one for one in path.steps(session.answers) if one.address == key), None)
        if step is not None and (kept := session.answers.text_at(key)) is not None:
            session.clear(step)
            said.append(f"Asked anew: {step.worded(session.answers).label} (was {kept}).")
    left = dict(words)
    while step := next((o for o in path.steps(session.answers) if o.address in left), None):
        text = left.pop(step.address)
        try:
            heard = session.offer(step, text)
        except Doubt:
            heard = session.offer(step, text)
        said.insert(0, f"= {step.worded(session.answers).label}: {heard.echo}")
    session.go_to(_FLOOR[0])
    return said
