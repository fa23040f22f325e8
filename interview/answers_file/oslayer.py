"""The few operating system calls that touch an answers file, in one place for tests to fail."""

from __future__ import annotations

import errno
import os
import stat
import time

try:
    import fcntl
except ImportError:  # Windows
    fcntl = None  # type: ignore[assignment]

READ = (
    os.O_RDONLY
    | getattr(os, "O_NONBLOCK", 0)
    | getattr(os, "O_CLOEXEC", 0)
    | getattr(os, "O_NOCTTY", 0)
    | getattr(os, "O_BINARY", 0)
)
CREATE = (
    os.O_WRONLY
    | os.O_CREAT
    | os.O_EXCL
    | getattr(os, "O_NOFOLLOW", 0)
    | getattr(os, "O_CLOEXEC", 0)
    | getattr(os, "O_BINARY", 0)
)
FOLDER = os.O_RDONLY | getattr(os, "O_DIRECTORY", 0) | getattr(os, "O_CLOEXEC", 0)
_BUSY_TRIES = 5


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
        if hasattr(os, "fchmod"):
            os.fchmod(fd, mode)

    def fchown(self, fd: int, owner: int, group: int) -> None:
        if hasattr(os, "fchown"):
            os.fchown(fd, owner, group)

    def stat(self, path: str) -> os.stat_result:
        return os.stat(path)  # noqa: PTH116

    def access(self, path: str) -> bool:
        """Whether the user may write the file; a rename would not ask."""
        return os.access(path, os.W_OK)

    def replace(self, old: str, new: str) -> None:
        for left in range(_BUSY_TRIES, -1, -1):
            try:
                os.replace(old, new)  # noqa: PTH105
                return
            except PermissionError:  # on Windows while another program reads the file
                if os.name != "nt" or not left:
                    raise
                time.sleep(0.05)

    def link(self, old: str, new: str) -> None:
        os.link(old, new)

    def unlink(self, path: str) -> None:
        os.unlink(path)  # noqa: PTH108

    def sync_folder(self, folder: str) -> None:
        """Make a rename in the folder permanent; raises OSError when that is not confirmed."""
        if os.name == "nt":  # a folder cannot be opened there
            return
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
