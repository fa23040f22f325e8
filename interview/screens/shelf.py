"""The answers files at hand: in this folder, and those used lately."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from pathlib import Path

from interview import answers_file as af
from interview.asking import own_fault, route
from interview.asking.answers import Answers
from interview.garden import store
from interview.garden.opening import plan_of
from interview.garden.place import questions as start
from interview.garden.site.gate import locate_state
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.run import soak_run
from interview.garden.soak.times import clock, utc
from interview.garden.summary import waiting

MOST = 12
"""How many files are offered."""
SOAK = "soak test:"
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


def shelf(folder: Path, lately: Iterable[Path], now: dt.datetime) -> list[Shelved]:
    """Return the answers files in ``folder`` and those used lately.

    A running soak test stands first, then the latest; those to be mended come last."""
    found: dict[str, Path] = {}
    for path in [*lately, *_in_folder(folder)]:
        if len(found) < MOST and _is_ours(path):
            found.setdefault(str(_real(path)), path)
    gardens = [summary(path, now) for path in found.values()]
    return sorted(gardens, key=lambda one: (one.faulty, not one.due.startswith(SOAK)))


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
        lines = "1 line needs" if count == 1 else f"{count} lines need"
        return Shelved(path, name, far, f"{lines} mending", True)
    try:
        return Shelved(path, name, far, due(answers, path.parent, now))
    except Exception as trouble:
        return Shelved(path, name, far, own_fault.note("what it waits for", trouble))


def due(answers: Answers, folder: Path, now: dt.datetime) -> str:
    """Say the one thing that this garden waits for: a reading, a day, or an answer."""
    tellers: tuple[Callable[[], str], ...] = (
        lambda: _soak_due(answers, now),
        lambda: _dig_day(answers, now.date()),
        lambda: _first_waiting(answers, folder, now),
    )
    still = len(route.open_steps(answers))
    last = f"{still} questions open" if still else "the plan is complete"
    return next((said for tell in tellers if (said := tell())), last)


def _soak_due(answers: Answers, now: dt.datetime) -> str:
    for view in answers.items("holes"):
        at = soak_run(view, now).due
        if at is None or view.get(timing.TEST_START) is None:
            continue
        word = "reading was due" if utc(at) <= utc(now) else "reading due"
        return f"{SOAK} {word} {clock(at, now)}"
    return ""


def _dig_day(answers: Answers, today: dt.date) -> str:
    first = locate_state(answers).earliest
    return f"first day to dig {first:%a %d %b}" if first and first > today else ""


def _first_waiting(answers: Answers, folder: Path, now: dt.datetime) -> str:
    found = waiting(plan_of(answers, folder, now))
    return f"waits for: {found[0][0].label.lower()}" if found else ""
