"""What the line at the foot of the soak page is for, and the line of the file it makes."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from enum import Enum
from typing import NamedTuple

from interview.asking.answers import Answers
from interview.garden.soak import edit as soak_edit
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.reading_lines import DROP, LEFT
from interview.reading import write_instant

SAYS_WHAT = (LEFT, DROP, "empt", "refill")
"""Beginnings of the words that say what a depth is; without one it is what is measured here."""


class Does(Enum):
    """What is done with what was typed."""

    ADD = "adds a reading"
    CORRECT = "writes a reading anew"
    SHIFT = "moves the times"
    MARK = "says how deep the water is at the fill level"


class SoakEntry(NamedTuple):
    """One use of the line."""

    title: str
    build: Callable[[str], str]
    """Makes the words that are kept from what was typed."""
    does: Does = Does.ADD
    place: int = 0
    """The number of the reading that is corrected."""
    may_be_empty: bool = False


def reading(now: dt.datetime, view: Answers) -> SoakEntry:
    """Return the entry of a reading whose moment is ``now``."""
    at = write_instant(now)
    word = view.get(timing.READ_AS) or LEFT
    asked = "How deep is the water now?" if word == LEFT else "How far below the fill level is it?"

    def build(typed: str) -> str:
        says = any(typed.casefold().startswith(one) for one in SAYS_WHAT)
        return f"{at} {typed}" if says else f"{at} {word} {typed}"

    return SoakEntry(f"Reading at {at[11:19]}. {asked} (or: empty)", build)


def refill(now: dt.datetime, view: Answers) -> SoakEntry:
    """Return the entry of a refill at ``now``; without a depth it is to the mark."""
    at = write_instant(now)
    mark = view.text(timing.WATER_AT_MARK) or ""
    title = f"Refilled at {at[11:19]}. To what depth? Enter alone: the fill level, {mark}"
    return SoakEntry(title, lambda typed: f"{at} refilled to {typed or mark}", may_be_empty=True)


def earlier(view: Answers) -> SoakEntry:
    """Return the entry of a reading taken earlier."""
    hint = timing.READINGS.worded(view).kind.hint(view.units).removeprefix("one per line: ")
    return SoakEntry(f"Add a reading: {hint}", _as_typed)


def correction(place: int) -> SoakEntry:
    """Return the entry that changes reading number ``place``, from 1."""
    return SoakEntry(f"Correct reading {place}", _as_typed, Does.CORRECT, place)


def shift(now: dt.datetime, view: Answers) -> SoakEntry:
    """Return the entry that shifts times noted with a wrong clock."""
    likely = soak_edit.suggested_shift(view, now)
    some = "Every time of this hole moves; “1 h from 2” moves reading 2 and those after it."
    if likely:
        title = f"How far ahead was the clock? Enter alone: {likely}. {some}"
    else:
        title = f"How far off was the clock? Such as 1 h ahead or 20 min behind. {some}"
    return SoakEntry(title, lambda typed: typed or likely, Does.SHIFT, may_be_empty=bool(likely))


def mark(view: Answers) -> SoakEntry:
    """Return the entry of the depth of water at the mark."""
    hint = timing.WATER_AT_MARK.kind.hint(view.units)
    return SoakEntry(f"How deep is the water at the fill level? ({hint})", _as_typed, Does.MARK)


def _as_typed(typed: str) -> str:
    return typed
