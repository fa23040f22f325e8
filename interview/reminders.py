"""How this person wants to be told that a reading is due, remembered on this computer."""

from __future__ import annotations

import os
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, fields, replace
from pathlib import Path

SIZE_LIMIT = 4096
"""A longer file is not ours, and is not read."""
_FAULTS = (OSError, ValueError, RuntimeError)


@dataclass(frozen=True)
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
    with suppress(*_FAULTS):
        base = environ.get("XDG_CONFIG_HOME", "")
        # A relative path there is to be ignored, says the XDG Base Directory Specification.
        if not (base and Path(base).is_absolute()):
            home = environ.get("HOME", "")
            base = str((Path(home) if home else Path.home()) / ".config")
        return Path(base) / "rain-garden-interview" / "reminders"
    return None


def kept(environ: Mapping[str, str] = os.environ) -> Reminders:
    """Return the choice; all on where there is none, or where it cannot be read."""
    with suppress(*_FAULTS):
        file = place(environ)
        # Only a regular file is opened: a pipe of that name would wait for ever.
        if file is not None and file.is_file() and file.stat().st_size <= SIZE_LIMIT:
            words = file.read_text(encoding="utf-8").split()
            return Reminders(**{name: f"{name}=off" not in words for name in NAMES})
    return Reminders()


def keep(chosen: Reminders, environ: Mapping[str, str] = os.environ) -> bool:
    """Keep the choice for the next time; tell whether that worked."""
    with suppress(*_FAULTS):
        file = place(environ)
        if file is None or (file.exists() and not file.is_file()):
            return False
        file.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        lines = [f"{name}={'on' if getattr(chosen, name) else 'off'}\n" for name in NAMES]
        new = file.with_name(f"reminders.{os.getpid()}.new")
        try:
            new.write_text("".join(lines), encoding="utf-8")
            new.replace(file)
        except _FAULTS:
            with suppress(*_FAULTS):
                new.unlink()
            return False
        return True
    return False
