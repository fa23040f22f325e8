"""A program in a pseudo-terminal, and what its screen shows."""

from __future__ import annotations

import contextlib
import fcntl
import os
import pty
import select
import signal
import struct
import subprocess
import sys
import termios
import time
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

import pyte

LIMIT = 20.0
"""Seconds after which a read from the terminal is given up."""
ROOT = Path(__file__).parents[2]


class Forked:
    """A program in a forked process, held as one that was started anew is."""

    def __init__(self, work: Callable[[], int], terminal: int) -> None:
        self.returncode: int | None = None
        self.pid = os.fork()
        if self.pid:
            return
        status = 99
        try:
            os.setsid()
            for number in (0, 1, 2):
                os.dup2(terminal, number)
            fcntl.ioctl(0, termios.TIOCSCTTY, 0)
            sys.stdin, sys.stdout, sys.stderr = sys.__stdin__, sys.__stdout__, sys.__stderr__
            status = work()
        finally:
            os._exit(status)

    def poll(self) -> int | None:
        if self.returncode is None:
            pid, status = os.waitpid(self.pid, os.WNOHANG)
            self.returncode = os.waitstatus_to_exitcode(status) if pid else None
        return self.returncode

    def wait(self, _limit: float = 0) -> int:
        if self.returncode is None:
            self.returncode = os.waitstatus_to_exitcode(os.waitpid(self.pid, 0)[1])
        return self.returncode

    def send_signal(self, number: int) -> None:
        os.kill(self.pid, number)

    def kill(self) -> None:
        os.kill(self.pid, signal.SIGKILL)


class Tube:
    """A program in a pseudo-terminal, and what its screen shows."""

    def __init__(
        self,
        *words: str,
        folder: Path,
        start: Sequence[str] = ("-m", "interview"),
        hears: Callable[[], None] | None = None,
        size: tuple[int, int] = (80, 24),
        environ: Mapping[str, str | None] | None = None,
        work: Callable[[], int] | None = None,
    ) -> None:
        """Start Python with ``start`` and ``words``, or ``work`` in a forked process.

        ``environ`` is set besides; what is None there is not set at all.
        """
        self.master, self.slave = pty.openpty()
        self.resize(*size)
        self.before = termios.tcgetattr(self.slave)
        self.sent = b""
        self.screen = pyte.Screen(*size)
        self.stream = pyte.ByteStream(self.screen)
        if work is not None:
            self.program: Forked | subprocess.Popen[bytes] = Forked(work, self.slave)
            return
        more = {"PYTHONPATH": str(ROOT), "TERM": "xterm-256color", **(environ or {})}
        self.program = subprocess.Popen(
            [sys.executable, *start, *words],
            stdin=self.slave,
            stdout=self.slave,
            stderr=self.slave,
            cwd=folder,
            env={name: text for name, text in {**os.environ, **more}.items() if text is not None},
            start_new_session=True,
            preexec_fn=hears,
        )

    def resize(self, columns: int, rows: int) -> None:
        """Give the window another size; the program is told by the caller where it must hear."""
        fcntl.ioctl(self.slave, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))
        if hasattr(self, "screen"):
            self.screen.resize(rows, columns)

    def read(self, until: str) -> str:
        """Read until ``until`` is on the screen; fails when that takes too long."""
        end = time.monotonic() + LIMIT
        while until not in self.shown():
            assert time.monotonic() < end, self.shown()
            self.take(0.1)
        return self.shown()

    def shown(self) -> str:
        return "\n".join(line.rstrip() for line in self.screen.display)

    def take(self, seconds: float) -> bool:
        """Read what comes within so many seconds; tell whether anything did."""
        if not select.select([self.master], [], [], seconds)[0]:
            return False
        try:
            data = os.read(self.master, 65536)
        except OSError:
            return False
        self.sent += data
        # The questions a program asks its terminal are not for the eye; pyte misreads some.
        with contextlib.suppress(Exception):
            self.stream.feed(data.replace(b"\x1b[>1u", b"").replace(b"\x1b[<u", b""))
        return bool(data)

    def type(self, keys: bytes) -> None:
        os.write(self.master, keys)

    def ended(self) -> int:
        """Return the exit status; everything it still wrote has been read."""
        end = time.monotonic() + LIMIT
        while self.program.poll() is None:
            assert time.monotonic() < end, self.shown()
            self.take(0.1)
        while self.take(0.1):
            pass
        assert self.program.returncode is not None
        return self.program.returncode

    def is_as_before(self) -> bool:
        """Tell whether the terminal is out of the second screen, and set as it was."""
        left = self.sent.rfind(b"\x1b[?1049l") > self.sent.rfind(b"\x1b[?1049h")
        cursor = self.sent.rfind(b"\x1b[?25h") > self.sent.rfind(b"\x1b[?25l")
        mouse = self.sent.rfind(b"\x1b[?1000l") > self.sent.rfind(b"\x1b[?1000h")
        paste = self.sent.rfind(b"\x1b[?2004l") > self.sent.rfind(b"\x1b[?2004h")
        same = termios.tcgetattr(self.slave) == self.before
        return left and cursor and mouse and paste and same

    def close(self) -> None:
        if self.program.poll() is None:
            self.program.kill()
            self.program.wait()
        for one in (self.master, self.slave):
            with contextlib.suppress(OSError):
                os.close(one)
