"""The answers files used lately, so that the start page can offer them again."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path

from interview.answers_file import own_files

LIMIT = 20
"""How many files are remembered."""
SIZE_LIMIT = 64 * 1024
"""A longer list is not ours, and is not read."""


def place(environ: Mapping[str, str] = os.environ) -> Path | None:
    """Return where the list is kept, or nothing where this computer has no such place."""
    return own_files.place("recent", "XDG_STATE_HOME", ".local/state", environ)


def recent(environ: Mapping[str, str] = os.environ) -> list[Path]:
    """Return the files used lately, the latest first; nothing where the list cannot be read."""
    lines = own_files.read(place(environ), SIZE_LIMIT).split(b"\n")
    names = [os.fsdecode(line) for line in lines if line and b"\0" not in line]
    return [Path(name) for name in dict.fromkeys(names) if name.startswith("/")][:LIMIT]


def remember(path: str | Path, environ: Mapping[str, str] = os.environ) -> None:
    """Put a file at the head of the list; where that fails nothing is said, nothing is lost."""
    try:
        name = os.fsencode(Path(path).absolute())
    except (OSError, ValueError):
        return
    if b"\n" in name:
        return
    others = [os.fsencode(one) for one in recent(environ)]
    names = [name, *(one for one in others if one != name)][:LIMIT]
    own_files.write(place(environ), b"".join(one + b"\n" for one in names))
