"""Copies beside an answers file: the backup, the other version, what a broken-off save left."""

from __future__ import annotations

import os
import re
from contextlib import suppress
from pathlib import Path

from interview.answers_file.characters import shown
from interview.answers_file.loading import Fingerprint, NotLoaded, read
from interview.answers_file.names import NUMBERS, backup_of, beside, free_name, real, unfollowed
from interview.answers_file.oslayer import REAL, OsLayer, is_regular, reason
from interview.answers_file.saving import TEMP_TRIES, Changed, NotSaved, check_opens, put

_TEMP_END = re.compile(r"[0-9a-f]{8}\.part")


def backup(
    path: str | Path, expect: Fingerprint | None, ours: list[str], *, os_layer: OsLayer = REAL
) -> str:
    """Copy the file to its name with .bak, in place of an older copy of ours; what is to be told.

    ``ours`` are the SHA-256 of the copies this program is known to have made; the new one is
    added. Whatever else has the name is kept, and the copy takes another one. A file that is not
    as ``expect`` says is not copied: ``save`` will not write it over. Called once in a session
    before the first change. Raises NotSaved when the disk takes no copy; then the file itself
    should not be rewritten.
    """
    try:
        data, mine = read(path, os_layer=os_layer), os_layer.stat(str(path))
    except NotLoaded as error:
        if error.missing:
            return ""
        raise NotSaved(error.sentence) from error
    except OSError as error:
        raise NotSaved(f"{shown(path)}: {reason(error)}") from error
    now, first = Fingerprint.of(data), backup_of(path)
    if now != expect:
        return ""
    for number in range(1, NUMBERS + 1):
        copy = backup_of(path, number)
        there = os.path.lexists(copy)
        old = _plain(copy, os_layer) if there else None
        if old == now:
            return ""
        if there and (old is None or old.sha256 not in ours):
            continue
        try:
            put(copy, data, expect=old, copy_of=mine, os_layer=os_layer)
        except NotSaved as error:
            if old is None and not isinstance(error, Changed):
                raise
            continue  # another program was faster, or it is not to be changed
        ours.append(now.sha256)
        return "" if old or number == 1 else _kept(first, f"in {shown(copy.name)}")
    return _kept(first, "not copied: too many such names are taken")


def _plain(place: Path, os_layer: OsLayer) -> Fingerprint | None:
    """The fingerprint of a plain file; None for a link, and for what cannot be read."""
    try:
        found = place.lstat()
        return Fingerprint.of(read(place, os_layer=os_layer)) if is_regular(found) else None
    except (OSError, NotLoaded):
        return None


def _kept(first: Path, rest: str) -> str:
    return (
        f"{shown(first.name)} is not known to be a copy of this program's making, so it is kept. "
        f"The answers as they were before this session are {rest}."
    )


def save_beside(path: str | Path, data: bytes, label: str, *, os_layer: OsLayer = REAL) -> Path:
    """Write bytes to a new file such as ``garden.conflict.yaml`` next to the file; where it is.

    It may be read by those who may read the file; a link that has its name is not followed.
    """
    target = unfollowed(path)
    like = target.stat() if target.is_file() and not target.is_symlink() else None
    for _ in range(TEMP_TRIES):
        place = free_name(target.parent, f"{target.stem[:60]}.{label}{target.suffix or '.yaml'}")
        try:
            put(place, data, expect=None, copy_of=like, os_layer=os_layer)
        except Changed:
            continue
        return place
    raise NotSaved(f"No free name was found next to {shown(target)}.")


def remove_stray_temps(path: str | Path, *, os_layer: OsLayer = REAL) -> list[Path]:
    """Clear away what broken-off saves left next to the file; call it while holding the lock.

    What is newer than the file, whole, and not the same is left, and given back: it may hold an
    answer the file does not. What is no plain file is nothing of ours, and is left.
    """
    target = real(path)
    saved = [target, *(backup_of(path, number) for number in range(1, NUMBERS + 1))]
    begun = {beside(one, ".", ".xxxxxxxx.part").name[:-13] for one in saved}
    worth: list[Path] = []
    try:
        mine = target.stat() if target.is_file() else None
        data = read(target, os_layer=os_layer) if mine else b""
        others = [p for p in target.parent.iterdir() if p.name.endswith(".part")]
    except (OSError, NotLoaded):
        return []
    for other in others:
        if other.name[:-13] not in begun or not _TEMP_END.fullmatch(other.name[-13:]):
            continue
        with suppress(OSError):
            if not is_regular(other.lstat()):
                continue
            if _holds_more(other, data, mine):
                worth.append(other)
            else:
                os_layer.unlink(str(other))
    return sorted(worth)


def _holds_more(stray: Path, data: bytes, mine: os.stat_result | None) -> bool:
    try:
        inside = read(stray)
        check_opens(inside)
    except (NotLoaded, NotSaved):
        return False
    newer = mine is None or stray.lstat().st_mtime_ns > mine.st_mtime_ns
    return inside != data and newer
