"""The terminal itself: whether there is one, its title, and putting it back as it was."""

from __future__ import annotations

import os
import sys
from contextlib import suppress
from typing import Any

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
