"""The questions of a stage with their answers, as many as there is room for around where one is."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from textual.content import Content

from interview.asking.path import Place
from interview.asking.question import Status
from interview.asking.route import Step
from interview.asking.way import Standing
from interview.garden.session import Session
from interview.screens.palette import HERE, MARKS, OPEN
from interview.screens.usual_rows import value_words

LEAST = 4
"""Lines under which the list is left out."""
FEWEST = 2
"""Lines under which it would only say what the page says."""
LEAST_VALUE = 20
"""Columns kept for an answer."""


_SPELT = r"\b([MTWFS][a-z]{2})[a-z]*day (\d+ [A-Z][a-z]+) \d{4}\b(?:( \d[\d:]+) \([^)]*\))?"
"""A day in full: where room is short the weekday in short, the date and the hour tell enough."""


class Listed(NamedTuple):
    """One question, or a page of usual values as a whole."""

    mark: str
    name: str
    value: str
    here: bool


def stage_list(
    session: Session, place: Place, step: Step | None, width: int, room: int
) -> Content | str:
    """Return at most ``room`` lines of ``width`` columns; nothing where that is too few."""
    if room < LEAST:
        return ""
    lines = list(_lines(session, place, step))
    if len(lines) < FEWEST:
        return ""
    done = sum(one.mark == MARKS["good"] for one in lines)
    shown = _around(lines, room - 1)
    name = min(width - LEAST_VALUE - 5, max((len(one.name) for one in shown), default=0))
    pieces: list[tuple[str, str]] = [
        ("This stage", "bold $text"),
        (f"  {done} answered, {len(lines) - done} open", "$muted"),
    ]
    for one in shown:
        # A name without a value has the whole line.
        most = name if one.value else width - 5
        label = one.name if len(one.name) <= most else f"{one.name[: most - 1]}…"
        rest = width - max(name, len(label)) - 5
        value = one.value if len(one.value) <= rest else re.sub(_SPELT, r"\1 \2\3", one.value)
        value = value if len(value) <= rest else f"{value[: rest - 1]}…"
        ground = " on $cursor" if one.here else ""
        ink = {MARKS["good"]: "$good", HERE: "bold $focus", MARKS["stop"]: "$stop"}.get(one.mark)
        words = f"bold $text{ground}" if one.here else "$muted" if one.mark == OPEN else "$text"
        pieces += [
            ("\n", ""),
            (f" {one.mark} ", f"{ink or '$muted'}{ground}"),
            (f"{label.ljust(name)}  {value.ljust(rest) if one.here else value}", words),
        ]
    return Content.assemble(*pieces)


def _around(lines: list[Listed], room: int) -> list[Listed]:
    """Return ``room`` lines with the one that one is at among them, a third down."""
    at = next((place for place, one in enumerate(lines) if one.here), 0)
    first = max(0, min(at - room // 2, len(lines) - room))
    return lines[first : first + room]


def _lines(session: Session, here: Place, at: Step | None) -> Iterator[Listed]:
    way = session.way
    for place in way.places:
        if place.page.stage != here.page.stage or not place.page.wants:
            continue
        boxes = way.boxes(place)
        for step in boxes:
            is_here = place == here and at is not None and step.address == at.address
            yield _line(session, step, is_here)
        if not boxes:
            taken = way.standing(place) is Standing.DONE
            mark = HERE if place == here else MARKS["good"] if taken else OPEN
            yield Listed(mark, place.page.title, "as usual" if taken else "", place == here)


def _line(session: Session, step: Step, here: bool) -> Listed:
    status = session.way.status(step)
    mark = {Status.ANSWERED: MARKS["good"], Status.FAULTY: MARKS["stop"]}.get(status, OPEN)
    value = "" if status is Status.OPEN else value_words(session, step)
    label = step.worded(session.answers).label
    return Listed(HERE if here else mark, label, value, here)
