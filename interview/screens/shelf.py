"""The answers files at hand: in this folder, and those used lately."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from interview import answers_file as af
from interview.asking import own_fault, route
from interview.asking import path as short_way
from interview.asking.route import Step
from interview.garden import store
from interview.garden.due_words import Due, GardenState
from interview.garden.opening import plan_of
from interview.garden.place import questions as start

MOST = 12
"""How many files are offered."""
RUNNING = (GardenState.SOAKING, GardenState.TIMING)
MARK = af.FORMAT.encode()
"""Stands near the top of every answers file; other YAML files are passed over."""


@dataclass(frozen=True)
class Shelved:
    """One answers file: what it is called, how far it is, and what is due."""

    path: Path
    name: str
    how_far: str
    due: str
    faulty: bool = False
    running: bool = False
    """Whether a soak test runs in it."""


def shelf(folder: Path, lately: Iterable[Path], now: dt.datetime) -> list[Shelved]:
    """Return the answers files in ``folder`` and those used lately.

    A running soak test stands first, then the latest; those to be mended come last."""
    found: dict[str, Path] = {}
    for path in [*lately, *_in_folder(folder)]:
        if len(found) < MOST and _is_ours(path):
            found.setdefault(str(_real(path)), path)
    gardens = [summary(path, now) for path in found.values()]
    return sorted(gardens, key=lambda one: (one.faulty, not one.running))


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
        return Shelved(path, path.name, "cannot be read", str(trouble), True)
    except (OSError, ValueError):
        return Shelved(path, path.name, "cannot be read", "", True)
    answers = loaded.answers
    done = route.progress(answers)
    far = f"{sum(one.done for one in done)} of {sum(one.total for one in done)} answered"
    name = answers.get(start.GARDEN_NAME) or "no name yet"
    if loaded.troubles:
        count = len(loaded.troubles)
        lines = "1 line of it needs" if count == 1 else f"{count} lines of it need"
        return Shelved(path, name, far, f"{lines} mending", True)
    try:
        found = due(loaded, path.parent, now)
        return Shelved(path, name, far, found.says, running=found.state in RUNNING)
    except Exception as trouble:
        return Shelved(path, name, far, own_fault.note("what it waits for", trouble))


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
