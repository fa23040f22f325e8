"""What the line at the foot of the soak page is for, and the line of the file it makes."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from dataclasses import dataclass

from interview.lines import DROP, LEFT, STRUCK
from interview.model import Answers
from interview.questions import soak
from interview.reading import write_instant

SAYS_WHAT = (LEFT, DROP, "empt", "refill")
"""Beginnings of the words that say what a depth is; without one it is what is measured here."""


@dataclass(frozen=True)
class Entry:
    """One use of the line."""

    title: str
    build: Callable[[str], str]
    """Makes the line of the file from what was typed."""
    place: int | None = None
    """The reading it stands in for; none adds one."""
    may_be_empty: bool = False


def reading(now: dt.datetime, view: Answers) -> Entry:
    """Return the entry of a reading whose moment is ``now``."""
    at = write_instant(now)
    word = view.get(soak.READ_AS) or LEFT
    asked = "How deep is the water now?" if word == LEFT else "How far below the mark is it?"

    def build(typed: str) -> str:
        says = any(typed.casefold().startswith(one) for one in SAYS_WHAT)
        return f"{at} {typed}" if says else f"{at} {word} {typed}"

    return Entry(f"Reading at {at[11:19]}. {asked} (or: empty)", build)


def refill(now: dt.datetime, view: Answers) -> Entry:
    """Return the entry of a refill at ``now``; without a depth it is to the mark."""
    at = write_instant(now)
    mark = view.text(soak.WATER_AT_MARK) or ""
    title = f"Refilled at {at[11:19]}. To what depth? Enter alone: the mark, {mark}"
    return Entry(title, lambda typed: f"{at} refilled to {typed or mark}", may_be_empty=True)


def earlier(view: Answers) -> Entry:
    """Return the entry of a reading taken earlier."""
    hint = soak.READINGS.kind.hint(view.units).removeprefix("one a line: ")
    return Entry(f"Add a reading: {hint}", _as_typed)


def correction(place: int) -> Entry:
    """Return the entry that changes the reading at ``place``."""
    return Entry(f"Correct reading {place + 1}", _as_typed, place)


def struck_or_back(line: str) -> str:
    """Return a reading struck out, or taken back in where it was struck."""
    if line.casefold().startswith(STRUCK):
        return line[len(STRUCK) :].strip()
    return f"{STRUCK} {line}"


def _as_typed(typed: str) -> str:
    return typed
