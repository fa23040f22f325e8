"""The full screen in many terminals, through many ends: its status, and the terminal after it."""

from __future__ import annotations

import os
import random
import re
import shlex
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Callable, Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path

import tube

from interview.__main__ import main
from interview.garden import store
from interview.screens import app, question, run  # loaded before the forks

LIMIT = 120.0
"""Seconds after which a terminal is given up."""
NAME, NEXT = "Maple lane", "Which state"
QUIT = b"\x11"
CURSOR, WRAPS = 25, 7
"""The modes of a terminal that are on where nothing was changed."""
MODES = re.compile(rb"\x1b\[\?([\d;]+)([hl])")
PASTE, MEGABYTE = (b"\x1b[200~", b"\x1b[201~"), 1 << 20
RESIZES = 60
LOADED = (app, question, run)
Set = Mapping[str, str | None]


class Amiss(Exception):
    """The program did not end as it should, or left the terminal changed."""


@dataclass(frozen=True)
class Case:
    """A terminal, what is done in it, and how the program ends."""

    size: tuple[int, int] = (80, 24)
    environ: Set = field(default_factory=dict)
    does: Callable[[tube.Tube], None] = lambda _: None
    """What happens between the first answer and the end."""
    ends: Callable[[tube.Tube], None] = lambda window: window.type(QUIT)
    status: int = 0


def changed(sent: bytes) -> set[int]:
    """Return the modes of the terminal that were left other than they were found."""
    last = {
        int(one): on == b"h" for many, on in MODES.findall(sent) for one in many.split(b";") if one
    }
    return {mode for mode, on in last.items() if on != (mode in (CURSOR, WRAPS))}


def until(window: tube.Tube, words: str) -> None:
    """Read until ``words`` are on the screen."""
    end = time.monotonic() + LIMIT
    while words not in window.shown():
        if time.monotonic() > end or window.program.poll() is not None:
            raise Amiss(f"{words!r} never came:\n{window.shown()}")
        window.take(0.1)


def rest(window: tube.Tube, seconds: float = 0.3) -> None:
    """Read what comes meanwhile."""
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        window.take(0.05)


def tried(case: Case, folder: Path) -> None:
    """Go through one case. Raises ``Amiss``."""
    window = tube.Tube(folder=folder, size=case.size, work=lambda: _program(folder, case.environ))
    try:
        # One column shows no word of a page: there it is typed blind.
        blind = case.environ.get("COLUMNS") == "1"
        until(window, "" if blind else "What do you call")
        rest(window, 6 if blind else 0.3)
        window.type(f"{NAME}\r".encode())
        _until_kept(window, folder / "garden.yaml")
        if not blind:
            until(window, NEXT)
        case.does(window)
        rest(window)
        case.ends(window)
        status = _ended(window)
        if status != case.status:
            raise Amiss(f"it ended with {status} and not {case.status}:\n{window.shown()}")
        if os.isatty(window.slave):
            if left := changed(window.sent):
                raise Amiss(f"modes are left changed: {sorted(left)}")
            if not window.is_as_before():
                raise Amiss("the terminal is not set as it was")
        texts = store.load(folder / "garden.yaml")[0].answers.texts
        if texts.get("garden_name") != NAME:
            raise Amiss(f"the answer is lost: {texts}")
    finally:
        window.close()


def _program(folder: Path, environ: Set) -> int:
    """Run the program in this process, as it is started in a terminal."""
    for number in (signal.SIGINT, signal.SIGHUP, signal.SIGQUIT, signal.SIGTERM):
        signal.signal(number, signal.SIG_DFL)
    more = {"TERM": "xterm-256color", "COLORTERM": None, "NO_COLOR": None, **environ}
    for name, text in more.items():
        os.environ.pop(name, None)
        if text is not None:
            os.environ[name] = text
    os.chdir(folder)
    return main(["garden.yaml"])


def _until_kept(window: tube.Tube, file: Path) -> None:
    end = time.monotonic() + LIMIT
    while not file.exists():
        if time.monotonic() > end or window.program.poll() is not None:
            raise Amiss(f"nothing is kept:\n{window.shown()}")
        window.take(0.1)


def _ended(window: tube.Tube) -> int:
    end = time.monotonic() + LIMIT
    while window.program.poll() is None:
        if time.monotonic() > end:
            raise Amiss(f"it does not end:\n{window.shown()}")
        if os.isatty(window.slave):
            window.take(0.1)
        else:
            time.sleep(0.1)
    with suppress(OSError, ValueError):
        while window.take(0.1):
            pass
    assert window.program.returncode is not None
    return window.program.returncode


# What is done


def pasted(data: bytes) -> Callable[[tube.Tube], None]:
    """Have bytes arrive as fast as the program takes them, and leave nothing typed."""

    def paste(window: tube.Tube) -> None:
        os.set_blocking(window.master, False)
        left = data
        end = time.monotonic() + LIMIT
        while left and time.monotonic() < end:
            with suppress(BlockingIOError):
                left = left[os.write(window.master, left[:4096]) :]
            window.take(0)
        os.set_blocking(window.master, True)
        if left:
            raise Amiss(f"{len(left)} bytes are not taken")
        rest(window, 1)

    return paste


def resized(window: tube.Tube) -> None:
    """Give the window one size after another, down to a single cell."""
    luck = random.Random(1)
    sizes = [(luck.randint(1, 220), luck.randint(1, 70)) for _ in range(RESIZES - 3)]
    for columns, rows in [*sizes, (1, 1), (500, 200), (80, 24)]:
        window.resize(columns, rows)
        window.program.send_signal(signal.SIGWINCH)
        window.take(0.02)
    until(window, NEXT)


def suspended(window: tube.Tube) -> None:
    """Stop the program as Ctrl+Z of a shell does, look at the terminal, and go on.

    All of the page stands there again, not what changes next alone.
    """
    rest(window)
    stood = list(window.screen.display)
    window.program.send_signal(signal.SIGTSTP)
    _until_stopped(window)
    if left := changed(window.sent):
        raise Amiss(f"stopped, modes are left changed: {sorted(left)}")
    if not window.is_as_before():
        raise Amiss("stopped, the terminal is not set as it was")
    window.screen.reset()
    window.program.send_signal(signal.SIGCONT)
    for row in filter(str.strip, stood):
        until(window, row.strip())


def halted(window: tube.Tube) -> None:
    """Stop the program without its knowing, and let it go on in a window of another size."""
    window.program.send_signal(signal.SIGSTOP)
    _until_stopped(window)
    window.resize(100, 30)
    window.screen.reset()
    window.program.send_signal(signal.SIGCONT)
    window.program.send_signal(signal.SIGWINCH)
    until(window, NEXT)


def _until_stopped(window: tube.Tube) -> None:
    end = time.monotonic() + LIMIT
    state = Path(f"/proc/{window.program.pid}/stat")
    while state.read_text().rpartition(")")[2].split()[0] != "T":
        if time.monotonic() > end:
            raise Amiss("it does not stop")
        window.take(0.1)
    while window.take(0.1):
        pass


def slowly(window: tube.Tube) -> None:
    """Go to the list of all pages and back over a line of some 9,600 bits a second."""
    for keys in (b"\x07", b"\x1b"):
        window.type(keys)
        end = time.monotonic() + 3
        while time.monotonic() < end:
            with suppress(OSError):
                data = os.read(window.master, 48)
                window.sent += data
                window.stream.feed(data)
            time.sleep(0.04)
            if not tube.select.select([window.master], [], [], 0)[0]:
                break
    until(window, NEXT)


# How it ends


def by(*names: str) -> Callable[[tube.Tube], None]:
    """Send signals one straight after the other."""

    def end(window: tube.Tube) -> None:
        for name in names:
            with suppress(ProcessLookupError):
                window.program.send_signal(getattr(signal, name))

    return end


def gone(window: tube.Tube) -> None:
    """Take the terminal away."""
    os.close(window.slave)
    os.close(window.master)
    window.slave = window.master = os.open(os.devnull, os.O_RDWR)


LETTERS = bytes(range(128, 256)) * 20
LINES = b"x y\r" * (MEGABYTE // 4)
CASES: Mapping[str, Case] = {
    **{f"{size[0]} by {size[1]}": Case(size=size)
       for size in ((60, 20), (80, 24), (100, 30), (120, 40), (160, 45), (200, 60))},
    "no TERM": Case(environ={"TERM": None}),
    "vt100": Case(environ={"TERM": "vt100"}),
    "linux": Case(environ={"TERM": "linux"}),
    "16 colors": Case(environ={"TERM": "xterm-16color"}),
    "256 colors": Case(environ={"TERM": "xterm-256color"}),
    "all colors": Case(environ={"COLORTERM": "truecolor"}),
    "no color": Case(environ={"NO_COLOR": "1"}),
    "one column": Case(environ={"COLUMNS": "1"}),
    "as in tmux": Case(environ={"TERM": "screen-256color", "TMUX": "/tmp/none,1,0"}),
    "a slow line": Case(does=slowly),
    "a megabyte pasted": Case(does=pasted(PASTE[0] + b"x" * MEGABYTE + PASTE[1])),
    "a megabyte of lines pasted": Case(does=pasted(PASTE[0] + LINES + PASTE[1])),
    "invalid bytes": Case(does=pasted(LETTERS)),
    "invalid bytes pasted": Case(does=pasted(PASTE[0] + LETTERS + PASTE[1])),
    "codes cut off": Case(does=pasted(b"\x1b[<0;5000;5000M\x1b]52;c;AAAA\x07\x1b[200~x\x1b[201~")),
    "60 resizes": Case(does=resized),
    "suspended": Case(does=suspended),
    "halted": Case(does=halted),
    "suspended, then ended": Case(does=suspended, ends=by("SIGTERM"), status=143),
    **{f"ended by {name}": Case(ends=by(name), status=128 + getattr(signal, name))
       for name in ("SIGTERM", "SIGINT", "SIGHUP", "SIGQUIT")},
    "ended by two signals": Case(ends=by("SIGTERM", "SIGHUP"), status=143),
    "the terminal gone": Case(ends=gone, status=129),
    "60 resizes, then ended": Case(does=resized, ends=by("SIGHUP"), status=129),
}  # fmt: skip
"""Each kind of terminal, of trouble in it, and of end."""


def in_tmux(folder: Path) -> None:
    """Answer in a window of tmux, leave, and read what stands there after. Raises ``Amiss``."""
    mux = ["tmux", "-L", f"garden{os.getpid()}", "-f", os.devnull]
    if shutil.which(mux[0]) is None:
        raise Amiss("there is no tmux here")
    command = shlex.join([sys.executable, "-m", "interview", "garden.yaml"])
    line = f"echo before; {command}; echo status $?; exec cat"

    def shown() -> str:
        return subprocess.run([*mux, "capture-pane", "-p"], capture_output=True, text=True).stdout

    def seen(words: str) -> str:
        end = time.monotonic() + LIMIT
        while words not in (text := shown()):
            if time.monotonic() > end:
                raise Amiss(f"{words!r} never came:\n{text}")
            time.sleep(0.3)
        return text

    environ = {**os.environ, "PYTHONPATH": str(tube.ROOT), "TERM": "xterm-256color"}
    window = ["new-session", "-d", "-x", "80", "-y", "24", "-c", str(folder), "sh", "-c", line]
    try:
        subprocess.run([*mux, *window], check=True, env=environ)
        seen("What do you call")
        subprocess.run([*mux, "send-keys", "-l", NAME], check=True)
        time.sleep(0.3)
        subprocess.run([*mux, "send-keys", "Enter"], check=True)
        seen(NEXT)
        subprocess.run([*mux, "send-keys", "C-q"], check=True)
        text = seen("status 0")
        flags = "#{alternate_on}#{mouse_any_flag}#{cursor_flag}"
        state = subprocess.run([*mux, "display", "-p", flags], capture_output=True, text=True)
        if state.stdout.strip() != "001" or "before" not in text:
            raise Amiss(f"it left {state.stdout.strip()}:\n{text}")
    finally:
        subprocess.run([*mux, "kill-server"], check=False)
