"""How this person wants to be told that a reading is due, remembered on this computer."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import fields, replace
from pathlib import Path

from interview.answers_file import own_files
from interview.quantities.records import record

SIZE_LIMIT = 4096
"""A longer file is not ours, and is not read."""


@record
class Reminders:
    """Which ways of telling are on. It is a choice of the person, so no garden's file holds it."""

    bell: bool = True
    notice: bool = True
    """The line on the screen that a reading is due."""
    title: bool = True
    """The time left, in the title of the window."""
    desktop: bool = True
    """A notification of the desktop, where the terminal can make one."""

    @property
    def any_on(self) -> bool:
        """Tell whether anything at all is on."""
        return any(getattr(self, name) for name in NAMES)

    def switched(self, name: str) -> Reminders:
        """Return the same with ``name`` on where it was off, or off."""
        return replace(self, **{name: not getattr(self, name)})

    def all_set(self, on: bool) -> Reminders:
        """Return all of them on, or off."""
        return replace(self, **dict.fromkeys(NAMES, on))


NAMES = tuple(one.name for one in fields(Reminders))


def place(environ: Mapping[str, str] = os.environ) -> Path | None:
    """Return where the choice is kept, or nothing where this computer has no such place."""
    return own_files.place("reminders", "XDG_CONFIG_HOME", ".config", environ)


def kept(environ: Mapping[str, str] = os.environ) -> Reminders:
    """Return the choice; all on where there is none, or where it cannot be read."""
    try:
        words = own_files.read(place(environ), SIZE_LIMIT).decode("utf-8").split()
    except UnicodeDecodeError:
        return Reminders()
    return Reminders(**{name: f"{name}=off" not in words for name in NAMES})


def keep(chosen: Reminders, environ: Mapping[str, str] = os.environ) -> bool:
    """Keep the choice for the next time; tell whether that worked."""
    lines = [f"{name}={'on' if getattr(chosen, name) else 'off'}\n" for name in NAMES]
    return own_files.write(place(environ), "".join(lines).encode())
