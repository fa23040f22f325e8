"""The answers files at hand: in this folder, and those used lately."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from pathlib import Path
from typing import NamedTuple

from interview import answers_file as af
from interview.asking import own_fault
from interview.asking import path as short_way
from interview.asking.route import Step
from interview.asking.way import PathNow
from interview.garden import gate, soak_due, store
from interview.garden.due_words import Due, GardenState
from interview.garden.opening import plan_of
from interview.garden.place import questions as start
from interview.garden.soak.times import clock, utc
from interview.screens.palette import MARKS, SHUT

MOST = 12
"""How many files are offered."""
RUNNING = (GardenState.SOAKING, GardenState.TIMING)
MARK = af.FORMAT.encode()
"""Stands near the top of every answers file; other YAML files are passed over."""


class CardBadge(NamedTuple):
    """A state in a word or two, with its mark."""

    mark: str
    word: str
    ink: str
    """What colors it, by its meaning."""

    def __str__(self) -> str:
        return f" {self.mark} {self.word} "


FIX = CardBadge(MARKS["stop"], "FIX", "stop")
_SHUT = CardBadge(SHUT, "SHUT", "stop")
_STOP = CardBadge(MARKS["stop"], "STOP", "stop")
_DUE = CardBadge(MARKS["due"], "DUE", "due")
_LOOK = CardBadge(MARKS["look"], "LOOK", "look")
BADGES = {
    GardenState.PLANNED: CardBadge(MARKS["good"], "PLAN DONE", "good"),
    GardenState.MAY_DIG: CardBadge(MARKS["good"], "MAY DIG", "good"),
    GardenState.STORM: _DUE,
    GardenState.RENEW: _DUE,
    GardenState.FAULTS: FIX,
    GardenState.SMELL: _STOP,
    GardenState.STOP: _STOP,
    **dict.fromkeys(
        (
            GardenState.WAITING,
            GardenState.PRIVATE,
            GardenState.TOO_NEAR,
            GardenState.SHUT,
            GardenState.STALE,
        ),
        _SHUT,
    ),
}
"""The states that have a badge; one that runs has the time at which it is due, others none."""


class Shelved(NamedTuple):
    """One answers file: what it is called, how far it is, and what is due."""

    path: Path
    name: str
    done: int = 0
    total: int = 0
    """Pages done, of all that ask something; nought where the file cannot be read."""
    due: str = ""
    badge: CardBadge | None = None
    faulty: bool = False
    due_at: dt.datetime | None = None
    """When the soak test that runs in it is to be looked at."""

    @property
    def how_far(self) -> str:
        """How many of its pages are done, in words."""
        if self.total:
            return f"{self.done} of {self.total} pages"
        return "cannot be read" if self.faulty else ""


def shelf(folder: Path, lately: Iterable[Path], now: dt.datetime) -> list[Shelved]:
    """Return the answers files in ``folder`` and those used lately.

    What is due stands first, the earliest first of all, then the latest; those to be mended come
    last.
    """
    found: dict[str, Path] = {}
    for path in [*lately, *_in_folder(folder)]:
        if len(found) < MOST and _is_ours(path):
            found.setdefault(str(_real(path)), path)
    gardens = [summary(path, now) for path in found.values()]
    return sorted(gardens, key=lambda one: (one.faulty, _wait(one, now)))


def _wait(one: Shelved, now: dt.datetime) -> tuple[int, float]:
    """What is due at a time goes before what is due some time, and that before all else."""
    if one.due_at is not None:
        return 0, (utc(one.due_at) - utc(now)).total_seconds()
    return (1 if one.badge is _DUE else 2), 0.0


def _in_folder(folder: Path) -> list[Path]:
    try:
        return sorted(p for p in folder.iterdir() if p.suffix.lower() in (".yaml", ".yml"))
    except OSError:
        return []


def _real(path: Path) -> Path:
    try:
        return path.resolve()
    except (OSError, RuntimeError):
        return path.absolute()


def _is_ours(path: Path) -> bool:
    try:
        if not path.is_file():
            return False
        with path.open("rb") as file:
            return MARK in file.read(4096)
    except (OSError, ValueError, RuntimeError):
        return False


def summary(path: Path, now: dt.datetime) -> Shelved:
    """Return what the start page says of one file; never raises for a faulty one."""
    try:
        loaded, _ = store.load(path)
    except (af.NotLoaded, af.Unreadable) as trouble:
        return Shelved(path, path.name, due=str(trouble), badge=FIX, faulty=True)
    except (OSError, ValueError):
        return Shelved(path, path.name, due="It cannot be opened.", badge=FIX, faulty=True)
    answers = loaded.answers
    name = answers.get(start.GARDEN_NAME) or "no name yet"
    try:
        done, total = _pages(loaded, now)
        if loaded.troubles:
            count = len(loaded.troubles)
            lines = "1 line needs" if count == 1 else f"{count} lines need"
            return Shelved(path, name, done, total, f"{lines} mending.", FIX, True)
        found = due(loaded, path.parent, now)
        at = _due_at(loaded, now) if found.state in RUNNING else None
        return Shelved(path, name, done, total, found.says, _badge(found, at, now), False, at)
    except Exception as trouble:
        return Shelved(path, name, due=own_fault.note("what it waits for", trouble))


def _pages(loaded: store.Loaded, now: dt.datetime) -> tuple[int, int]:
    """Return how many pages are done, and how many there are."""
    answers, today = loaded.answers, now.date()
    way = PathNow(answers, loaded.taken, lambda step: bool(gate.shut(step, answers, today)))
    stages = way.progress()
    return sum(one.done for one in stages), sum(one.total for one in stages)


def _due_at(loaded: store.Loaded, now: dt.datetime) -> dt.datetime | None:
    first = soak_due.first(loaded.answers, now)
    return first.run.due if first else None


def _badge(found: Due, at: dt.datetime | None, now: dt.datetime) -> CardBadge | None:
    if found.state not in RUNNING:
        return BADGES.get(found.state)
    if at is None:
        return _LOOK
    word = "DUE NOW" if utc(at) <= utc(now) else f"DUE {clock(at, now)}"
    return CardBadge(MARKS["due"], word, "due")


def due(loaded: store.Loaded, folder: Path, now: dt.datetime) -> Due:
    """Return the one thing that this garden waits for: a reading, a day, or an answer."""
    from interview.garden.due import due as due_of  # these know every sum
    from interview.garden.summary import rough_line

    answers = loaded.answers
    plan = plan_of(answers, folder, now).without_record

    def title(step: Step) -> str:
        place = short_way.place_of(step.address, answers)
        return place.page.title if place else ""

    rough = rough_line(plan).partition(" (")[0]
    return due_of(plan, rough, loaded.taken, title, order=short_way.steps)
