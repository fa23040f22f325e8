"""One session at a time on one answers file, by a lock file beside it."""

from __future__ import annotations

import errno
import os
import socket
from contextlib import suppress
from pathlib import Path
from types import TracebackType

from interview.answers_file.characters import shown
from interview.answers_file.names import lock_of, real
from interview.answers_file.oslayer import is_regular, reason

try:
    import fcntl
except ImportError:  # Windows
    fcntl = None  # type: ignore[assignment]

_FLAGS = (
    os.O_RDWR
    | os.O_CREAT
    | getattr(os, "O_NOFOLLOW", 0)
    | getattr(os, "O_CLOEXEC", 0)
    | getattr(os, "O_NONBLOCK", 0)
)
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

        ``since`` is the time now, in words, for the other session's message. Where there can be
        no lock, the result is not held and its notice says why. A note left by another computer
        raises AlreadyOpen that is not certain; ``ignore_elsewhere`` passes over it.
        """
        place = lock_of(path)
        if fcntl is None:
            return cls(-1, place, "This system has no locks; open this file only once.")
        for _ in range(_TRIES):
            try:
                fd = os.open(place, _FLAGS, 0o644)
            except OSError as error:
                return cls(-1, place, f"No lock could be made next to the file. {reason(error)}")
            keep = False
            try:
                if notice := cls._refused(fd, path):
                    return cls(-1, place, notice)
                if not _still_there(fd, place):
                    continue  # its last holder has just taken it away
                if not ignore_elsewhere:
                    _check_elsewhere(fd, path)
                _describe(fd, since)
                keep = True
                return cls(fd, place)
            finally:
                if not keep:
                    os.close(fd)
        raise AlreadyOpen(f"{shown(path)} is being opened by another session just now; try again.")

    @staticmethod
    def _refused(fd: int, path: str | Path) -> str:
        if not is_regular(os.fstat(fd)):
            return "Something else has the name of the lock file; open this file only once."
        try:
            fcntl.flock(fd, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError as error:
            if error.errno in _TAKEN:
                raise AlreadyOpen(_who(fd, path)) from error
            return "This folder knows no locks; open this file on one computer at a time."
        return ""

    def release(self) -> None:
        """Give the file free; a second call does nothing."""
        if self._fd < 0:
            return
        if _still_there(self._fd, self._place):
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


def _still_there(fd: int, place: Path) -> bool:
    try:
        there, ours = os.lstat(place), os.fstat(fd)
    except OSError:
        return False
    return (there.st_dev, there.st_ino) == (ours.st_dev, ours.st_ino)


def _describe(fd: int, since: str) -> None:
    """Write who holds the lock; the lock holds without it, so a full disk is no matter."""
    text = f"pid: {os.getpid()}\nhost: {_host()}\nuser: {_user()}\nsince: {since}\n"
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


def _check_elsewhere(fd: int, path: str | Path) -> None:
    facts = _facts(fd)
    host = facts.get("host", "")
    if host and host != shown(_host())[:80]:
        since = f" since {facts['since']}" if "since" in facts else ""
        raise AlreadyOpen(
            f"A note next to {shown(real(path))} says that it is open on the computer {host}"
            f"{since}. If it is not open there any more, go on.",
            certain=False,
        )
