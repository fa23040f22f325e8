"""Copies beside an answers file: the backup, the other version, what a broken-off save left."""

from __future__ import annotations

import os
import re
from contextlib import suppress
from pathlib import Path

from interview.answers_file.characters import shown
from interview.answers_file.loading import Fingerprint, NotLoaded, read
from interview.answers_file.names import backup_of, beside, free_name, real
from interview.answers_file.oslayer import REAL, OsLayer, is_regular
from interview.answers_file.saving import TEMP_TRIES, Changed, NotSaved, check_opens, put


def backup(path: str | Path, *, os_layer: OsLayer = REAL) -> Path:
    """Copy the file to its name with .bak, in place of an older copy; where the copy is.

    Called once in a session before the first change. Raises NotSaved when there can be no copy;
    then the file itself should not be rewritten.
    """
    copy = backup_of(path)
    try:
        data = read(path, os_layer=os_layer)
        old = Fingerprint.of(read(copy, os_layer=os_layer)) if os.path.lexists(copy) else None
    except NotLoaded as error:
        raise NotSaved(error.sentence) from error
    put(copy, data, expect=old, os_layer=os_layer)
    return copy


def save_beside(path: str | Path, data: bytes, label: str, *, os_layer: OsLayer = REAL) -> Path:
    """Write bytes to a new file such as ``garden.conflict.yaml`` next to the file; where it is."""
    target = real(path)
    for _ in range(TEMP_TRIES):
        place = free_name(target.parent, f"{target.stem[:60]}.{label}{target.suffix or '.yaml'}")
        try:
            put(place, data, expect=None, os_layer=os_layer)
        except Changed:
            continue
        return place
    raise NotSaved(f"No free name was found next to {shown(target)}.")


def remove_stray_temps(path: str | Path, *, os_layer: OsLayer = REAL) -> list[Path]:
    """Clear away what broken-off saves left next to the file; call it while holding the lock.

    What is newer than the file, whole, and not the same is left, and given back: it may hold an
    answer the file does not.
    """
    target = real(path)
    pattern = re.compile(re.escape(str(beside(target, ".", ".xxxxxxxx.part").name)[:-13]))
    worth: list[Path] = []
    try:
        mine = target.stat() if target.is_file() else None
        data = read(target, os_layer=os_layer) if mine else b""
        others = [p for p in target.parent.iterdir() if p.name.endswith(".part")]
    except (OSError, NotLoaded):
        return []
    for other in others:
        tail = pattern.match(other.name)
        if not tail or not re.fullmatch(r"[0-9a-f]{8}\.part", other.name[tail.end() :]):
            continue
        if _holds_more(other, data, mine):
            worth.append(other)
        else:
            with suppress(OSError):
                os_layer.unlink(str(other))
    return sorted(worth)


def _holds_more(stray: Path, data: bytes, mine: os.stat_result | None) -> bool:
    try:
        found = stray.lstat()
        if not is_regular(found):
            return False
        inside = read(stray)
        check_opens(inside)
    except (OSError, NotLoaded, NotSaved):
        return False
    return inside != data and (mine is None or found.st_mtime_ns > mine.st_mtime_ns)
