"""One session at a time on one answers file, by a lock file beside it."""

from __future__ import annotations

import errno
import fcntl
import os
import re
import socket
from contextlib import suppress
from pathlib import Path
from types import TracebackType

from interview.answers_file.disk import NUMBERS, is_regular, lock_of, real, reason
from interview.reading.foreign import shown

_COMMON = os.O_NOFOLLOW | os.O_CLOEXEC | os.O_NONBLOCK
_NEW = os.O_RDWR | os.O_CREAT | os.O_EXCL | _COMMON
_OLD = os.O_RDWR | _COMMON
_SEEN = os.O_RDONLY | _COMMON
"""How a lock file is made, taken over, and taken where it may only be read.

No link is followed, since what it leads to would be written over; a pipe of that name keeps nobody
waiting; a child process does not hold the lock on after this one has ended.
"""
_NOTE = rb"(?:pid: \d+\n(?:host: .*\n(?:user: .*\n(?:since: .*\n)?)?)?)?\0*"
"""All that a lock file of this program holds; the rest may be missing where the disk was full."""
_TAKEN = {errno.EAGAIN, errno.EWOULDBLOCK, errno.EACCES}
_TRIES = 5
_TEXT_LIMIT = 4096


class AlreadyOpen(Exception):
    """Another session has the file; ``certain`` is False when only a note on another computer
    says so, and the user may know better."""

    def __init__(self, sentence: str, *, certain: bool = True) -> None:
        super().__init__(sentence)
        self.sentence = sentence
        self.certain = certain


class Lock:
    """A hold on an answers file, from ``take`` to ``release`` or to the end of the process.

    The answers file itself cannot carry the lock, since every save puts a new file in its place.
    """

    def __init__(self, fd: int, place: Path, notice: str = "") -> None:
        self._fd = fd
        self._place = place
        self.notice = notice
        """Why no lock could be had, as a sentence; empty when it is held."""

    @property
    def held(self) -> bool:
        """Whether other sessions on this computer are kept out."""
        return self._fd >= 0

    @classmethod
    def take(cls, path: str | Path, *, since: str = "", ignore_elsewhere: bool = False) -> Lock:
        """Take the lock, or raise AlreadyOpen saying who has it.

        ``since`` is the time now, in words, for the other session's message. What is no lock file
        of this program is left as it is, and the lock takes another name. Where there can be no
        lock, the result is not held and its notice says why. A note left by another computer
        raises AlreadyOpen that is not certain; ``ignore_elsewhere`` passes over it.
        """
        for number in range(1, NUMBERS + 1):
            place = lock_of(path, number)
            lock = cls._at(place, path, since, ignore_elsewhere)
            if lock is not None:
                if number > 1 and lock.held:
                    lock.notice = _in_the_way(lock_of(path), f"uses {shown(place.name)} instead")
                return lock
        return cls(-1, place, _in_the_way(lock_of(path), "has no lock; open this file only once"))

    @classmethod
    def _at(cls, place: Path, path: str | Path, since: str, ignore_elsewhere: bool) -> Lock | None:
        """The lock by the name ``place``; None where something else has that name."""
        for _ in range(_TRIES):
            try:
                fd, made = _opened(place)
            except FileNotFoundError:
                continue  # its last holder has just taken it away
            except OSError as error:
                return cls(-1, place, f"No lock could be made next to the file. {reason(error)}")
            if fd < 0:
                return None
            keep = False
            try:
                if not _locked(fd, path):
                    with suppress(OSError):
                        if made:
                            place.unlink()
                    said = "This folder knows no locks; open this file on one computer at a time."
                    return cls(-1, place, said)
                if not _still_there(fd, place):
                    continue  # its holder let go and took the name away: the lock is of no file
                if not _is_note(fd) or os.fstat(fd).st_nlink > 1:
                    return None
                if not ignore_elsewhere:
                    _check_elsewhere(fd, path, place)
                _describe(fd, since)
                keep = True
                return cls(fd, place)
            finally:
                if not keep:
                    os.close(fd)
        raise AlreadyOpen(f"{shown(path)} is being opened by another session just now; try again.")

    def release(self) -> None:
        """Give the file free; a second call does nothing."""
        if self._fd < 0:
            return
        if _still_there(self._fd, self._place) and _is_note(self._fd):
            with suppress(OSError):
                self._place.unlink()
        with suppress(OSError):
            os.close(self._fd)
        self._fd = -1

    def __enter__(self) -> Lock:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        tb: TracebackType | None,
    ) -> None:
        self.release()


def _opened(place: Path) -> tuple[int, bool]:
    """The lock file, and whether it was made just now; -1 where something else has its name."""
    try:
        return os.open(place, _NEW, 0o644), True
    except FileExistsError:
        if not is_regular(place.lstat()):
            return -1, False
    try:
        return os.open(place, _OLD), False
    except PermissionError:  # another person's: whether it is held can still be seen
        with suppress(PermissionError):
            return os.open(place, _SEEN), False
    return -1, False


def _locked(fd: int, path: str | Path) -> bool:
    """Lock the open file; False where that is not known here. Raises AlreadyOpen."""
    try:
        # Not lockf: that lock would go with the first close of any other handle of the file, and
        # would not keep a second session of the same process out.
        fcntl.flock(fd, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError as error:
        if error.errno in _TAKEN:
            raise AlreadyOpen(_who(fd, path)) from error
        return False
    return True


def _in_the_way(place: Path, rest: str) -> str:
    said = f"{shown(place)} is no lock file that this session can use, and is left as it is."
    return f"{said} This session {rest}."


def _is_note(fd: int) -> bool:
    try:
        return bool(re.fullmatch(_NOTE, os.pread(fd, _TEXT_LIMIT, 0)))
    except OSError:
        return False


def _still_there(fd: int, place: Path) -> bool:
    try:
        there, ours = os.lstat(place), os.fstat(fd)
    except OSError:
        return False
    return (there.st_dev, there.st_ino) == (ours.st_dev, ours.st_ino)


def _describe(fd: int, since: str) -> None:
    """Write who holds the lock; the lock holds without it, so a full disk is no matter."""
    facts = {"pid": str(os.getpid()), "host": _host(), "user": _user(), "since": since}
    text = "".join(f"{name}: {' '.join(fact.split())}\n" for name, fact in facts.items())
    with suppress(OSError):
        os.ftruncate(fd, 0)
        os.pwrite(fd, text.encode("utf-8", "replace"), 0)


def _host() -> str:
    try:
        return socket.gethostname()
    except OSError:
        return ""


def _user() -> str:
    return os.environ.get("USER") or os.environ.get("LOGNAME") or ""


def _facts(fd: int) -> dict[str, str]:
    """What a lock file says of its holder; nothing for one that is empty or garbled."""
    try:
        text = os.pread(fd, _TEXT_LIMIT, 0).decode("utf-8", "replace")
    except OSError:
        return {}
    pairs = (line.partition(":") for line in text.splitlines())
    return {name.strip(): shown(value.strip())[:80] for name, _, value in pairs if value.strip()}


def _who(fd: int, path: str | Path) -> str:
    facts = _facts(fd)
    said = f"{shown(real(path))} is already open in another session"
    if "pid" in facts:
        said += f" (process {facts['pid']}"
        said += f" of {facts['user']}" if "user" in facts else ""
        said += f" on {facts['host']}" if "host" in facts else ""
        said += f" since {facts['since']}" if "since" in facts else ""
        said += ")"
    if _paused(facts.get("pid", "")):
        return f"{said}. That session is paused; go on with it there (type fg), or end it."
    return f"{said}. Go on with it there, or end it first."


def _paused(pid: str) -> bool:
    """Whether the process is stopped; False wherever that cannot be seen."""
    if not pid.isascii() or not pid.isdigit() or len(pid) > 10:
        return False
    try:
        text = Path(f"/proc/{pid}/stat").read_text(encoding="utf-8", errors="replace")
    except OSError:
        return False
    return text.rpartition(")")[2].split()[:1] in (["T"], ["t"])


def _check_elsewhere(fd: int, path: str | Path, place: Path) -> None:
    facts = _facts(fd)
    host = facts.get("host", "")
    if host and host != shown(" ".join(_host().split()))[:80]:
        since = f" since {facts['since']}" if "since" in facts else ""
        raise AlreadyOpen(
            f"{shown(real(path))} may be open on another computer, {host}{since}: so says the lock "
            f"file {shown(place.name)} beside it. If it is not open there any more, go on.",
            certain=False,
        )
