"""Small files of the program's own, beside no garden: what they hold may be lost, not trusted."""

from __future__ import annotations

import os
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

from interview.answers_file import disk

_FAULTS = (OSError, ValueError, RuntimeError)


def place(name: str, base: str, at_home: str, environ: Mapping[str, str]) -> Path | None:
    """Return where the file ``name`` is kept, or nothing where this computer has no such place.

    ``base`` is the variable of the XDG Base Directory Specification that names the folder, and
    ``at_home`` the folder under the home folder where it names none.
    """
    with suppress(*_FAULTS):
        folder = environ.get(base, "")
        # A relative path there is to be ignored, says the specification.
        if not (folder and Path(folder).is_absolute()):
            home = environ.get("HOME", "")
            folder = str((Path(home) if home else Path.home()) / at_home)
        return Path(folder) / "rain-garden-interview" / name
    return None


def read(file: Path | None, limit: int) -> bytes:
    """Return what is in the file; nothing where it is missing, strange or over ``limit`` bytes."""
    with suppress(*_FAULTS):
        if file is not None:
            return b"".join(disk.pieces(file, limit))
    return b""


def write(file: Path | None, data: bytes) -> bool:
    """Put ``data`` in the place of the file, whole or not at all; tell whether that worked."""
    with suppress(*_FAULTS):
        if file is None or (file.exists() and not file.is_file()):
            return False
        file.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        new = file.with_name(f"{file.name}.{os.getpid()}.new")
        try:
            new.write_bytes(data)
            new.chmod(0o600)
            new.replace(file)
        except _FAULTS:
            with suppress(*_FAULTS):
                new.unlink()
            return False
        return True
    return False
