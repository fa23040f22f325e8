"""The plain streams of the program: what it says, what is typed to it, and who ends it."""

from __future__ import annotations

import codecs
import errno
import os
import sys
from collections.abc import Callable, Iterator
from contextlib import AbstractContextManager, contextmanager, suppress
from types import FrameType
from typing import TypeVar

from interview.asking.long_work import LetGo
from interview.asking.statuses import NAME, UNREADABLE
from interview.reading.foreign import lines_shown, shown

T = TypeVar("T")

SIGNALS = ("SIGINT", "SIGTERM", "SIGHUP", "SIGQUIT")
"""Requests to end, as this system has them."""


STAND_INS = "stand-ins"
"""The way of writing what an output has no character for."""


class NotSaid(LetGo):
    """The words could not be written; the message says why."""


def mend() -> None:
    """Make the streams safe: none is missing, and no character is more than they can bear.

    A stream closed by whoever started the program would lend its number to the next file opened.
    """
    for name, mode in (("stdin", "r"), ("stdout", "w"), ("stderr", "w")):
        if getattr(sys, name) is None:
            setattr(sys, name, open(os.devnull, mode, encoding="utf-8"))  # noqa: PTH123, SIM115
    codecs.register_error(STAND_INS, _stand_in)
    for stream in (sys.stdout, sys.stderr):
        _set_up(stream, None, STAND_INS)
    # Bytes that are no text are read as half characters, which the questions refuse in words.
    with suppress(LookupError):
        ascii_only = codecs.lookup(sys.stdin.encoding or "ascii").name == "ascii"
        _set_up(sys.stdin, "utf-8" if ascii_only else None, "surrogateescape")


def _stand_in(trouble: UnicodeError) -> tuple[str | bytes, int]:
    from interview.plain.stand_ins import stand_in  # wanted by few outputs

    return stand_in(trouble)


def _set_up(stream: object, encoding: str | None, errors: str) -> None:
    reconfigure = getattr(stream, "reconfigure", None)
    if reconfigure is not None:
        with suppress(OSError, ValueError):
            reconfigure(encoding=encoding, errors=errors)


def say(text: str, end: str = "\n") -> None:
    """Write ``text`` at once, none of it able to steer a terminal.

    Raises ``BrokenPipeError`` or ``NotSaid``.
    """
    _write(lines_shown(text) + end)


def new_page() -> None:
    """Begin a new page on paper; a terminal has none. Raises as ``say`` does."""
    if not sys.stdout.isatty():
        _write("\f")


def errors_on_terminal() -> bool:
    """Tell whether somebody sees the errors as they come."""
    return sys.stderr is not None and sys.stderr.isatty()


def passing(words: str) -> None:
    """Show words on one line of the errors in place of those before; on a terminal alone."""
    if errors_on_terminal():
        with suppress(OSError, UnicodeError):
            print(f"\r\033[K{words}", end="", file=sys.stderr, flush=True)


def tell(line: str) -> None:
    """Write a line to the errors, where they still can be written to."""
    with suppress(OSError, ValueError):
        print(shown(line), file=sys.stderr, flush=True)


def refuse(sentence: str, status: int = UNREADABLE) -> int:
    """Tell why something is not done; return the exit status of it."""
    tell(f"{NAME}: {sentence}")
    return status


def _write(text: str) -> None:
    try:
        sys.stdout.write(text)
        sys.stdout.flush()
    except BrokenPipeError:
        raise
    except OSError as trouble:
        from interview.answers_file import reason  # slow to load, and wanted only here

        raise NotSaid(reason(trouble)) from trouble
    except ValueError as trouble:  # closed
        raise NotSaid("The output is closed.") from trouble


def hush() -> None:
    """Let what could not be written go, or it would be tried again at the very end."""
    with suppress(OSError, ValueError):
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


@contextmanager
def listening(heard: Callable[[int, FrameType | None], None]) -> Iterator[None]:
    """Have requests to end ``heard`` while this lasts; those that are ignored stay so."""
    import signal  # slow to load, and a report on one file hears none

    before = {}
    for name in SIGNALS:
        number = getattr(signal, name, None)
        with suppress(ValueError, OSError):  # not in the main thread
            # nohup and shells have hang-ups ignored so that the program goes on: that holds.
            if number is not None and signal.getsignal(number) is not signal.SIG_IGN:
                before[number] = signal.signal(number, heard)
    try:
        yield
    finally:
        for number, handler in before.items():
            signal.signal(number, handler)


class Typist:
    """Reads typed lines; a request to end is heard between two of them, never within a save.

    After the first request the typing is at its end; the second one does what it always does.
    """

    def __init__(self) -> None:
        self.ended_by = 0
        """The signal that asked to end; 0 for none."""
        self.at_end = False
        """Whether the input has ended by itself."""
        self._waiting = False

    def ask(self, prompt: str) -> str:
        """Return the next typed line; raises ``EOFError`` at the end, or once asked to end."""
        if self.ended_by:
            raise EOFError
        say(prompt, end="")
        line = ""
        try:
            line = self.waited(sys.stdin.readline)
        except EOFError:
            pass
        except OSError as trouble:  # the terminal has gone away
            if trouble.errno not in (errno.EIO, errno.EBADF):
                raise
        if not line:
            self.at_end = not self.ended_by
            raise EOFError
        return line.rstrip("\r\n")

    def waited(self, read: Callable[[], T]) -> T:
        """Return what is read from the input; raises ``EOFError`` where asked to end meanwhile."""
        try:
            self._waiting = True
            if self.ended_by:
                raise EOFError
            return read()
        except _EndAsked:
            raise EOFError from None
        finally:
            self._waiting = False

    def listening(self) -> AbstractContextManager[None]:
        """Hear the requests to end while this lasts."""
        return listening(self._heard)

    def _heard(self, number: int, frame: FrameType | None) -> None:
        import signal

        self.ended_by = number
        # A save may hang on a dead disk: whoever asks again is to be rid of the program.
        signal.signal(number, signal.SIG_DFL)
        # Python goes back to a read that a signal broke into, unless the handler raises; anywhere
        # else, as within a save, nothing may be raised.
        if self._waiting:
            raise _EndAsked


class _EndAsked(BaseException):
    """Somebody asked the program to end while it waited for a line."""
