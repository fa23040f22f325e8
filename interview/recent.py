"""The answers files used lately, so that the start page can offer them again."""

from __future__ import annotations

import os
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

LIMIT = 20
"""How many files are remembered."""
SIZE_LIMIT = 64 * 1024
"""A longer list is not ours, and is not read."""
_FAULTS = (OSError, ValueError, RuntimeError)


def place(environ: Mapping[str, str] = os.environ) -> Path | None:
    """Return where the list is kept, or nothing where this computer has no such place."""
    with suppress(*_FAULTS):
        base = environ.get("XDG_STATE_HOME", "")
        # A relative path there is to be ignored, says the XDG Base Directory Specification.
        folder = Path(base) if base and Path(base).is_absolute() else _home(environ)
        return folder / "rain-garden-interview" / "recent"
    return None


def _home(environ: Mapping[str, str]) -> Path:
    home = environ.get("HOME", "")
    return (Path(home) if home else Path.home()) / ".local" / "state"


def recent(environ: Mapping[str, str] = os.environ) -> list[Path]:
    """Return the files used lately, the latest first; nothing where the list cannot be read."""
    with suppress(*_FAULTS):
        kept = place(environ)
        # Only a regular file is opened: a pipe of that name would wait for ever.
        if kept is None or not kept.is_file() or kept.stat().st_size > SIZE_LIMIT:
            return []
        lines = kept.read_bytes().split(b"\n")
        names = [os.fsdecode(line) for line in lines if line and b"\0" not in line]
        return [Path(name) for name in dict.fromkeys(names) if name.startswith("/")][:LIMIT]
    return []


def remember(path: str | Path, environ: Mapping[str, str] = os.environ) -> None:
    """Put a file at the head of the list; where that fails nothing is said, nothing is lost."""
    with suppress(*_FAULTS):
        kept = place(environ)
        name = os.fsencode(Path(path).absolute())
        if kept is None or b"\n" in name or (kept.exists() and not kept.is_file()):
            return
        others = [os.fsencode(one) for one in recent(environ)]
        names = [name, *(one for one in others if one != name)][:LIMIT]
        kept.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        new = kept.with_name(f"recent.{os.getpid()}.new")
        try:
            new.write_bytes(b"".join(one + b"\n" for one in names))
            new.chmod(0o600)
            new.replace(kept)
        except _FAULTS:
            with suppress(*_FAULTS):
                new.unlink()
