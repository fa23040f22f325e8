"""Running the full screen: signals, a lost terminal, crashes, and what is said at the end."""

from __future__ import annotations

import asyncio
import datetime as dt
import gc
import os
import sys
from collections.abc import Callable
from contextlib import suppress
from functools import partial
from types import FrameType
from typing import TYPE_CHECKING, Any

from interview.asking.own_fault import where
from interview.asking.statuses import CRASHED, ENDED_BY, NAME, UNREADABLE, UNSAVED
from interview.plain.streams import listening
from interview.reading.foreign import lines_shown, shown

if TYPE_CHECKING:
    from interview.garden.opening import Opened
    from interview.screens.app import Door, InterviewApp


LEAVE = (
    "\x1b[?1049l\x1b[?25h\x1b[?7h\x1b[?1000l\x1b[?1002l\x1b[?1003l\x1b[?1004l\x1b[?1006l\x1b[?1015l"
    "\x1b[?2004l\x1b[?2048l\x1b[<u\x1b[0m"
)
"""Leaves the second screen, shows the cursor, wraps lines, switches all reports and pastes off."""
PUSH_TITLE, POP_TITLE = "\x1b[22;2t", "\x1b[23;2t"


def is_terminal() -> bool:
    """Tell whether the program is run in a terminal that can be typed into."""
    try:
        return os.isatty(sys.__stdin__.fileno()) and os.isatty(sys.__stdout__.fileno())  # type: ignore[union-attr]
    except (AttributeError, OSError, ValueError):
        return False


class Terminal:
    """Remembers how the terminal was set.

    Textual puts its own streams in the place of ``sys.stdout`` and ``sys.stdin``, so those the
    program was started with are used.
    """

    def __init__(self) -> None:
        self._fd = sys.__stdin__.fileno() if sys.__stdin__ else 0
        self._was: list[Any] | None = None
        with suppress(Exception):
            import termios

            self._was = termios.tcgetattr(self._fd)
        self._write(PUSH_TITLE)

    def lost(self) -> bool:
        """Tell whether the terminal has gone away."""
        return not os.isatty(self._fd)

    def restore(self, in_full: bool) -> None:
        """Put the title back, and after a crash or a second signal everything else too."""
        self._write((LEAVE if in_full else "") + POP_TITLE)
        if self._was is not None:
            with suppress(Exception):
                import termios

                termios.tcsetattr(self._fd, termios.TCSANOW, self._was)

    def _write(self, codes: str) -> None:
        with suppress(OSError, ValueError, AttributeError):
            os.write(sys.__stdout__.fileno(), codes.encode())  # type: ignore[union-attr]


def take_any_text() -> None:
    """Let Textual read keys from any bytes, and from a paste nothing but its text.

    Its input thread ends at the first byte that is not UTF-8, and the program with it.
    """
    with suppress(ImportError):
        from textual.drivers import linux_driver

        from interview.screens.outside import CleanTyping

        # The driver has no public way to hand it a decoder: it looks the maker up by this name.
        linux_driver.getincrementaldecoder = lambda _: CleanTyping  # type: ignore[attr-defined, assignment]


def go_on_after_any_stop() -> None:
    """Let Textual go on after a stop that it was not told of as after one that it was.

    By itself it begins anew beside what still runs: keys are lost, and the terminal stays raw.
    """
    with suppress(ImportError):
        from textual.drivers.linux_driver import LinuxDriver

        def going_on(driver: LinuxDriver, *_: object) -> None:
            if not driver._auto_restart:
                return
            if not driver._must_signal_resume:
                reader = driver._key_thread
                if reader is None or not reader.is_alive():  # not begun, or over
                    return
                driver.suspend_application_mode()
                driver._must_signal_resume = True
            driver.resume_application_mode()

        # A handler of its own has no public name.
        LinuxDriver._sigcont_application = going_on  # type: ignore[method-assign, assignment]


def write_into_nothing() -> None:
    """Let Textual write on where its terminal is gone.

    Its thread that writes ends there, what waits for it fills up, and leaving would wait for ever
    with the lock of the garden in hand.
    """
    with suppress(ImportError):
        from textual.drivers import linux_driver
        from textual.drivers._writer_thread import WriterThread

        class Writer(WriterThread):
            def run(self) -> None:
                try:
                    super().run()
                except (OSError, ValueError):
                    while self._queue.get() is not None:
                        pass

        linux_driver.WriterThread = Writer  # type: ignore[attr-defined]


HUNG_UP = ENDED_BY + 1
"""As by the signal of a terminal that is gone."""
LOOK_SECONDS = 1.0
"""How often it is checked that the terminal is still there."""
SWITCH_SECONDS = 0.001
"""How long a sum beside the keys runs on while a key waits; Python's own 5 ms can be felt. At a
tenth of this Enter and the timing page took longer, as measured."""
LOADED_SECONDS = 2.0
"""When the first page and its plan are long loaded."""


def run(
    name: str | None, clock: Callable[[], dt.datetime], written_by: str = "", plants: str = ""
) -> int:
    """Run the interview on the full screen; return the exit status.

    ``plants`` is a plant file used in place of the one the answers name.
    """
    if not is_terminal():
        print(f"{NAME}: a terminal is needed; use --plain here", file=sys.stderr)
        return UNREADABLE
    from interview.screens.app import Door, InterviewApp

    door = Door(clock, written_by, plants=plants)
    terminal = Terminal()
    asked = _EndHeard(door, terminal)
    with listening(asked.heard):  # from before the lock until after it, so that none is left behind
        app = InterviewApp(door, name)
        take_any_text()
        go_on_after_any_stop()
        write_into_nothing()
        status, crash = CRASHED, ""
        try:
            status = asyncio.run(_run(app, terminal, asked))
            # Textual prints a crash of its own accord and returns; no public name tells of it.
            if app._exception is not None:
                crash = where(app._exception)
        except Exception as trouble:
            crash = where(trouble)
        finally:
            terminal.restore(in_full=status == CRASHED)
        if app.refusal is not None and not asked.status:
            print(f"{NAME}: {shown(app.refusal.sentence)}", file=sys.stderr)
            return app.refusal.status
        return _end(door.opened, _all_saved(door), asked.status or status, crash)


class _EndHeard:
    """Hears requests to end: the first one ends the program in order, the second one at once."""

    def __init__(self, door: Door, terminal: Terminal) -> None:
        self._door = door
        self._terminal = terminal
        self.status = 0
        """What to end with; 0 until somebody asked."""
        self.tell: Callable[[], object] = int
        """Called at the first request."""

    def heard(self, number: int, frame: FrameType | None) -> None:
        if self.status:
            self._terminal.restore(in_full=True)
            self._door.leave()
            # Not sys.exit: the thread of a save that hangs would be waited for.
            os._exit(128 + number)
        self.status = 128 + number
        self.tell()


async def _run(app: InterviewApp, terminal: Terminal, asked: _EndHeard) -> int:
    loop = asyncio.get_running_loop()

    def end() -> None:
        app.exit(return_code=asked.status)

    # A handler runs between any two steps of the program; the application is ended between events.
    asked.tell = partial(loop.call_soon_threadsafe, end)
    if asked.status:
        return asked.status

    async def look() -> None:
        # Where hang-ups are ignored (nohup) no signal comes, and reading keys would spin for ever.
        while not terminal.lost():
            await asyncio.sleep(LOOK_SECONDS)
        app.exit(return_code=HUNG_UP)

    sys.setswitchinterval(SWITCH_SECONDS)
    loop.call_later(LOADED_SECONDS, _look_for_rings)
    looking = loop.create_task(look())
    try:
        await app.run_async()
    finally:
        looking.cancel()
        asked.tell = int
    if asked.status:
        return asked.status
    if app.refusal is not None:
        return app.refusal.status
    # Textual gives 1 after a fault, and nothing where its reader of keys has stopped.
    return app.return_code if app.return_code in (0, HUNG_UP) else CRASHED


def _look_for_rings() -> None:
    """Look for rings of objects from here on, but not among what is loaded: that stays."""
    gc.freeze()
    gc.enable()


def _all_saved(door: Door) -> bool:
    """Finish saving; tell whether every answer is in the file, and the file where it was."""
    if door.opened is None or door.saver is None:
        return True
    if door.opened.session.answers.texts and not door.opened.keeper.there:
        door.opened.session.save()
    return door.saver.close()


def _end(opened: Opened | None, saved: bool, status: int, crash: str) -> int:
    """Say where the answers are and how to go on; return the exit status."""
    lines = []
    if status == CRASHED:
        lines.append(f"An error in the program stopped it ({crash or 'keys lost'}).")
    if opened is not None:
        # The one written last: a file changed from outside was left, for another beside it.
        there = opened.keeper.there
        safe = " up to the last one saved" if status == CRASHED else ""
        if not saved:
            lines.append(f"NOT SAVED: the latest answers are not in {opened.shown_path}.")
            lines += [rescued] if (rescued := opened.rescue()) else []
            status = status if status else UNSAVED
        elif there:
            lines.append(f"Your answers are in {opened.shown_path}{safe}.")
        else:
            lines.append("Nothing was answered, so no file was made.")
        if opened.rescued or there:
            lines.append(f"To go on: {opened.resume_command(NAME)}")
        opened.lock.release()
    if not lines:
        return status
    with suppress(OSError):  # the terminal may be gone
        print(lines_shown("\n".join(lines)), file=sys.stderr if status else sys.stdout, flush=True)
    return status
