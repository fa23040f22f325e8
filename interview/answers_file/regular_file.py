"""Reads files that somebody else made: regular ones alone, without a wait, up to a size."""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator
from pathlib import Path

PIECE = 1 << 16
"""Bytes read at a time."""
_READ = (
    os.O_RDONLY
    | getattr(os, "O_NONBLOCK", 0)
    | getattr(os, "O_NOCTTY", 0)
    | getattr(os, "O_CLOEXEC", 0)
    | getattr(os, "O_BINARY", 0)
)
"""No wait for the other end of a pipe, no terminal taken over, no handle left to child processes,
no line ends changed; a system without a flag needs none of it."""


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
    number = os.open(path, _READ)
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
