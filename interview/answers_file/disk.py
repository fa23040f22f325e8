"""Files on the disk: the few system calls that touch them, and the names of what is kept."""

from __future__ import annotations

import errno
import fcntl
import os
import stat
from collections.abc import Iterator
from pathlib import Path

READ = os.O_RDONLY | os.O_NONBLOCK | os.O_CLOEXEC | os.O_NOCTTY
"""No wait for the other end of a pipe, no terminal taken over, no handle left to child programs."""
CREATE = os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_NOFOLLOW | os.O_CLOEXEC
FOLDER = os.O_RDONLY | os.O_DIRECTORY | os.O_CLOEXEC


class OsLayer:
    """The calls as the operating system makes them; a test hands in a subclass that fails."""

    def open(self, path: str, flags: int, mode: int = 0o644) -> int:
        return os.open(path, flags, mode)

    def read(self, fd: int, count: int) -> bytes:
        return os.read(fd, count)

    def write(self, fd: int, data: bytes) -> int:
        return os.write(fd, data)

    def fsync(self, fd: int) -> None:
        """Force the data out, through the drive's own memory where the system offers that."""
        full = getattr(fcntl, "F_FULLFSYNC", None)
        if full is not None:
            try:
                fcntl.fcntl(fd, full)
                return
            except OSError:  # not every file system on macOS knows it
                pass
        os.fsync(fd)

    def close(self, fd: int) -> None:
        os.close(fd)

    def fstat(self, fd: int) -> os.stat_result:
        return os.fstat(fd)

    def fchmod(self, fd: int, mode: int) -> None:
        os.fchmod(fd, mode)

    def fchown(self, fd: int, owner: int, group: int) -> None:
        os.fchown(fd, owner, group)

    def stat(self, path: str) -> os.stat_result:
        return os.stat(path)  # noqa: PTH116

    def access(self, path: str) -> bool:
        """Whether the user may write the file; a rename would not ask."""
        return os.access(path, os.W_OK)

    def replace(self, old: str, new: str) -> None:
        os.replace(old, new)  # noqa: PTH105

    def link(self, old: str, new: str) -> None:
        os.link(old, new)

    def unlink(self, path: str) -> None:
        os.unlink(path)  # noqa: PTH108

    def sync_folder(self, folder: str) -> None:
        """Make a rename in the folder permanent; raises OSError when that is not confirmed."""
        fd = self.open(folder, FOLDER)
        try:
            self.fsync(fd)
        finally:
            self.close(fd)


REAL = OsLayer()
_NO_LINKS = {errno.EPERM, errno.ENOSYS, errno.EOPNOTSUPP, errno.ENOTSUP, errno.EMLINK, errno.EACCES}


def has_no_links(error: OSError) -> bool:
    """Whether the file system may simply not know hard links."""
    return error.errno in _NO_LINKS


def is_regular(found: os.stat_result) -> bool:
    return stat.S_ISREG(found.st_mode)


_REASONS = {
    errno.ENOSPC: "The disk is full; free some space, or choose another place.",
    errno.EDQUOT: "Your share of the disk is used up; delete something, or choose another place.",
    errno.EFBIG: "The disk does not take a file of this size; choose another place.",
    errno.EIO: "The disk reported a fault; choose another disk, and make a copy of this one soon.",
    errno.EROFS: "This disk can only be read; choose another place.",
    errno.EACCES: "You are not allowed to use this file or folder; choose another place.",
    errno.EPERM: "The computer does not allow this file to be changed; choose another place.",
    errno.EMFILE: "Too many files are open; close other programs and try again.",
    errno.ENFILE: "Too many files are open; close other programs and try again.",
    errno.ENOENT: "There is no such file or folder; it may have been moved or deleted.",
    errno.ENOTDIR: "A part of this path is a file, not a folder; check the path.",
    errno.EISDIR: "This is a folder, not a file; name a file in it.",
    errno.ELOOP: "The link leads round in a circle; choose another file.",
    errno.ENAMETOOLONG: "The name is too long; choose a shorter one.",
    errno.EBUSY: "Another program is using the file; close it there and try again.",
    errno.EINTR: "The computer kept interrupting; try again.",
    errno.ENOMEM: "The computer has no memory left; close other programs and try again.",
    errno.ENXIO: "This is not a plain file; choose another one.",
    errno.ESTALE: "The network folder has gone away; connect to it again, or choose another place.",
}


def reason(error: OSError) -> str:
    """Why the operating system refused, with what to do, as a sentence."""
    known = _REASONS.get(error.errno or 0)
    return known or f"The computer refused ({error.strerror or 'unknown reason'}); try again."


PIECE = 1 << 16
"""Bytes read at a time."""


class NotRegular(ValueError):
    """The path leads to a folder, a pipe, a device or the like."""


class TooLarge(ValueError):
    """The file holds more than is read here."""

    def __init__(self, size: int) -> None:
        super().__init__(size)
        self.size = size
        """Its size in bytes."""


def look(path: Path) -> os.stat_result:
    """Return what the system tells of a regular file without opening it.

    Raises OSError where there is none, ``NotRegular`` where it is something else.
    """
    found = path.stat()
    if not stat.S_ISREG(found.st_mode):
        raise NotRegular(str(path))
    return found


def pieces(path: Path, limit: int) -> Iterator[bytes]:
    """Yield what is in a regular file, a piece at a time.

    It is looked at before it is opened, for opening a device may do something, and once more
    after. No more is read than its size: what grows meanwhile is let be, and what the system
    makes up as it is read (``/proc/kmsg``) has the size 0 and may wait for ever. Raises OSError,
    ``NotRegular``, or ``TooLarge`` above ``limit`` bytes.
    """
    look(path)
    number = os.open(path, READ)
    try:
        found = os.fstat(number)
        if not stat.S_ISREG(found.st_mode):
            raise NotRegular(str(path))
        if found.st_size > limit:
            raise TooLarge(found.st_size)
        left = found.st_size
        while left > 0 and (piece := os.read(number, min(PIECE, left))):
            left -= len(piece)
            yield piece
    finally:
        os.close(number)


NAME_LIMIT = 200
"""Longest name in bytes: 255 is what disks take, and copies add to the name."""
NUMBERS = 99
"""So many names are tried for a backup or a lock before it is given up."""
_JOINERS = "\u200d\ufe0e\ufe0f\u20e3"


def free_name(folder: Path, name: str) -> Path:
    """The path of a new file in the folder: ``name``, or with -2, -3 and so on before its ending.

    Names that differ only in capitals count as one. The file is not made: ``save`` with
    ``expect=None`` does that, and refuses when another program was faster.
    """
    taken = {other.name.casefold() for other in folder.iterdir()} if folder.is_dir() else set()
    stem, ending = Path(name).stem, Path(name).suffix
    candidate, number = name, 1
    while candidate.casefold() in taken:
        number += 1
        tail = f"-{number}{ending}"
        candidate = _cut(stem, NAME_LIMIT - len(tail.encode())) + tail
    return folder / candidate


def _cut(text: str, limit: int) -> str:
    """The start of the text in at most ``limit`` bytes, cut between whole characters."""
    if len(text.encode("utf-8", "surrogateescape")) <= limit:
        return text
    end = len(text.encode("utf-8", "surrogateescape")[:limit].decode("utf-8", "ignore"))
    while end > 0 and _clings(text, end):
        end -= 1
    return text[:end]


def _clings(text: str, end: int) -> bool:
    """Whether the character at ``end`` belongs to the one before it."""
    from unicodedata import combining

    after, before = text[end], text[end - 1]
    flag = "\U0001f1e6" <= after <= "\U0001f1ff" and "\U0001f1e6" <= before <= "\U0001f1ff"
    tone = "\U0001f3fb" <= after <= "\U0001f3ff"
    return (bool(combining(after)) or after in _JOINERS or before == "\u200d" or tone) or (
        flag and _flags_before(text, end) % 2 == 1
    )


def _flags_before(text: str, end: int) -> int:
    count = 0
    while count < end and "\U0001f1e6" <= text[end - 1 - count] <= "\U0001f1ff":
        count += 1
    return count


def real(path: str | Path) -> Path:
    """Where the path leads once links are followed; what is not there yet is left as named."""
    return Path(os.path.realpath(path))


def unfollowed(path: str | Path) -> Path:
    """As ``real``, but what has the name itself is not followed where it is a link."""
    path = Path(path)
    return real(path.parent) / path.name


def beside(path: Path, before: str, after: str) -> Path:
    """A companion of a file in the same folder, its name shortened if it would grow too long."""
    name, room = path.name, 255 - len(before) - len(after)
    raw = os.fsencode(name)
    if len(raw) > room:
        name = os.fsdecode(raw[:room]).encode("utf-8", "ignore").decode("utf-8")
    return path.with_name(f"{before}{name}{after}")


def backup_of(path: str | Path, number: int = 1) -> Path:
    """The copy that is kept of a file as it was when the session began.

    A higher ``number`` gives the name that is tried where the one before is somebody else's.
    """
    return beside(real(path), "", f"{_tail(number)}.bak")


def lock_of(path: str | Path, number: int = 1) -> Path:
    """The file that says who has the answers open; ``number`` as for a backup."""
    return beside(real(path), ".", f"{_tail(number)}.lock")


def _tail(number: int) -> str:
    return f".{number}" if number > 1 else ""


def belongs_to(answers: str | Path, other: str | Path) -> bool:
    """Whether ``other`` is the answers file, its backup or its lock: never to be written over."""
    numbers = range(1, NUMBERS + 1)
    ours = {real(answers), *(of(answers, n) for of in (backup_of, lock_of) for n in numbers)}
    there = real(other)
    folded = {str(path).casefold() for path in ours}
    same = there.exists() and any(path.exists() and path.samefile(there) for path in ours)
    return str(there).casefold() in folded or same
