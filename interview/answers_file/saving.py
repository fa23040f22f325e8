"""Put a file on disk so that there is always a whole one, the old or the new; copies beside it."""

from __future__ import annotations

import errno
import os
import re
import secrets
import stat
from contextlib import suppress
from pathlib import Path
from typing import NamedTuple

from interview.answers_file.disk import (
    CREATE,
    NUMBERS,
    REAL,
    OsLayer,
    backup_of,
    beside,
    free_name,
    has_no_links,
    is_regular,
    real,
    reason,
    unfollowed,
)
from interview.answers_file.loading import Fingerprint, NotLoaded, Parsed, parse, read
from interview.answers_file.tree import END, Unreadable
from interview.reading.foreign import shown

TEMP_TRIES = 8
_INTERRUPTIONS = 100


class NotSaved(Exception):
    """Nothing was written; the file is as it was. The sentence says why and what to do."""

    def __init__(self, sentence: str) -> None:
        super().__init__(sentence)
        self.sentence = sentence


class Changed(NotSaved):
    """Another program has changed, made or removed the file since it was last read."""


class Removed(Changed):
    """The file is no longer where it was."""


class Saved(NamedTuple):
    """The file is there. ``durable`` is False when the disk did not confirm it is permanent."""

    fingerprint: Fingerprint
    durable: bool
    note: str = ""
    """Something to tell once; empty for nothing."""


def save(
    path: str | Path, text: str, *, expect: Fingerprint | None, os_layer: OsLayer = REAL
) -> Saved:
    """Write an answers file's text, after making sure that it can be opened again.

    ``expect`` is the fingerprint of what should be there now, None for a new file.
    Raises Changed or NotSaved; then the file is as it was.
    """
    try:
        data = text.encode("utf-8")
    except UnicodeEncodeError as error:
        raise NotSaved("An answer holds half a character; type it again.") from error
    check_opens(data)
    return put(path, data, expect=expect, os_layer=os_layer)


def check_opens(data: bytes) -> Parsed:
    """The parsed bytes; raises NotSaved unless they are a whole file this program may write."""
    try:
        parsed = parse(data)
    except Unreadable as error:
        raise NotSaved(f"These answers could not be opened again: {error.sentence}") from error
    if parsed.read_only:
        raise NotSaved("A newer program wrote this file; get that program to change it.")
    if parsed.tree.get(END) != "true":
        raise NotSaved("These answers are not whole; they were not written.")
    return parsed


def put(
    path: str | Path,
    data: bytes,
    *,
    expect: Fingerprint | None,
    copy_of: os.stat_result | None = None,
    os_layer: OsLayer = REAL,
) -> Saved:
    """Write any file whole or not at all: a new one for None, else in place of what is expected.

    A link to what is expected is followed, the mode is kept, and nothing is written when nothing
    changes. A new file and a copy never go through a link; a copy takes the owner and the mode of
    ``copy_of``. Once the new file has its name, a fault only makes it not durable. Raises Changed
    or NotSaved.
    """
    if not str(path) or "\0" in str(path):
        raise NotSaved("This is not the name of a file; check the path.")
    try:
        target = unfollowed(path) if expect is None or copy_of else real(path)
        return _Placing(os_layer, target, copy_of).placed(data, expect)
    except OSError as error:
        raise NotSaved(f"{shown(path)}: {reason(error)}") from error
    except MemoryError as error:
        said = "The computer has no memory left; close other programs and try again."
        raise NotSaved(said) from error


class _Placing:
    """One placing of one file; holds the temporary file until it has its name."""

    def __init__(
        self, os_layer: OsLayer, target: Path, copy_of: os.stat_result | None = None
    ) -> None:
        self.os = os_layer
        self.target = target
        self.copy_of = copy_of
        self.temp = ""

    def placed(self, data: bytes, expect: Fingerprint | None) -> Saved:
        new = Fingerprint.of(data)
        old = self.current()
        note = ""
        if old is not None:
            found = self.check(expect, new)
            if expect == new:
                return Saved(new, True)
            if found == new:  # a save that was broken off after the file had its name
                return Saved(new, self.confirmed())
            if old.st_nlink > 1:
                note = "The file had a second name (a hard link); that one keeps the old answers."
        elif expect is not None:
            raise Removed(f"{shown(self.target)} was removed by another program.")
        try:
            self.fill_temp(data, self.copy_of or old)
            self.name_it(new=old is None)
        except BaseException:
            self.drop_temp()
            raise
        return Saved(new, self.confirmed(), note)

    def current(self) -> os.stat_result | None:
        try:
            found = self.os.stat(str(self.target))
        except FileNotFoundError:
            return None
        if not is_regular(found):
            raise NotSaved(f"{shown(self.target)} is not a plain file; choose another place.")
        return found

    def check(self, expect: Fingerprint | None, new: Fingerprint) -> Fingerprint:
        if expect is None:
            raise Changed(f"There is already a file {shown(self.target)}.")
        if not self.os.access(str(self.target)):
            said = "is marked as not to be changed; choose another place."
            raise NotSaved(f"{shown(self.target)} {said}")
        try:
            found = Fingerprint.of(read(self.target, os_layer=self.os))
        except NotLoaded as error:
            raise NotSaved(error.sentence) from error
        if found not in (expect, new):
            raise Changed(f"{shown(self.target)} was changed by another program.")
        return found

    def fill_temp(self, data: bytes, like: os.stat_result | None) -> None:
        fd = self.open_temp()
        try:
            self.set_mode(fd, like)
            self.write_all(fd, data)
            self.os.fsync(fd)  # never tried again on the same file after a failure
        except BaseException:
            with suppress(OSError):
                self.os.close(fd)
            raise
        self.os.close(fd)

    def open_temp(self) -> int:
        for _ in range(TEMP_TRIES):
            name = str(beside(self.target, ".", f".{secrets.token_hex(4)}.part"))
            try:
                fd = self.os.open(name, CREATE, 0o644)
            except FileExistsError:
                continue
            self.temp = name
            return fd
        raise OSError(errno.EBUSY, "no free name")

    def set_mode(self, fd: int, like: os.stat_result | None) -> None:
        made = self.os.fstat(fd)
        if like is None:
            if made.st_mode & 0o600 != 0o600:
                self.os.fchmod(fd, stat.S_IMODE(made.st_mode) | 0o600)
            return
        if (made.st_uid, made.st_gid) != (like.st_uid, like.st_gid):
            with suppress(PermissionError):
                self.os.fchown(fd, like.st_uid, like.st_gid)
        self.os.fchmod(fd, stat.S_IMODE(like.st_mode))

    def write_all(self, fd: int, data: bytes) -> None:
        interruptions = 0
        while data:
            try:
                count = self.os.write(fd, data)
            except InterruptedError:
                interruptions += 1
                if interruptions > _INTERRUPTIONS:
                    raise
                continue
            if count <= 0:
                raise OSError(errno.EIO, "nothing was written")
            data = data[count:]

    def name_it(self, *, new: bool) -> None:
        if not new:
            self.os.replace(self.temp, str(self.target))
            self.temp = ""
            return
        try:
            self.os.link(self.temp, str(self.target))  # refuses a name that is taken
        except FileExistsError as error:
            raise Changed(f"There is already a file {shown(self.target)}.") from error
        except OSError as error:
            if not has_no_links(error):
                raise
            self.claim_name()
            return
        self.drop_temp()

    def claim_name(self) -> None:
        """Where there are no links: take the name with an empty file, then rename over it."""
        try:
            fd = self.os.open(str(self.target), CREATE, 0o644)
        except FileExistsError as error:
            raise Changed(f"There is already a file {shown(self.target)}.") from error
        try:
            self.os.close(fd)
            self.os.replace(self.temp, str(self.target))
            self.temp = ""
        except BaseException:
            with suppress(OSError):
                self.os.unlink(str(self.target))
            raise

    def drop_temp(self) -> None:
        if self.temp:
            with suppress(OSError):
                self.os.unlink(self.temp)
            self.temp = ""

    def confirmed(self) -> bool:
        try:
            self.os.sync_folder(str(self.target.parent))
        except OSError:
            return False
        return True


_TEMP_END = r"[0-9a-f]{8}\.part"


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
        if other.name[:-13] not in begun or not re.fullmatch(_TEMP_END, other.name[-13:]):
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
