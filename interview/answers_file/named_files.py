"""A file that an answer names, such as a rainfall record: its text, and whether it has changed."""

from __future__ import annotations

import codecs
import io
import re
from collections.abc import Callable, Collection, Iterable, Iterator
from contextlib import suppress
from dataclasses import field
from itertools import chain
from pathlib import Path
from typing import NamedTuple

from interview.answers_file import disk, reason, shown
from interview.answers_file.disk import NotRegular, TooLarge
from interview.asking.results import Results
from interview.quantities.records import record

SIZE_LIMIT = 50_000_000
"""Largest file read, in bytes: a hundred years of days with 1300 characters a line."""


class NoFile(Exception):
    """A file that an answer names cannot be read; the message says why."""


class NamedFile(NamedTuple):
    """A file as it stood when it was looked at: equal only to itself unchanged.

    What is worked out of it can so be kept by it, and it is read once for each change.
    """

    path: Path
    mark: tuple[int, ...]
    """Device, number, size and times of change: what tells one state of a file from another."""

    def lines(self, longest: int) -> Iterator[str]:
        """Yield its lines as ``lines_of`` does; raises ``NoFile``."""
        try:
            yield from lines_of(disk.pieces(self.path, SIZE_LIMIT), longest)
        except (OSError, NotRegular, TooLarge) as trouble:
            raise NoFile(_why(self.path, trouble)) from None
        except ValueError:
            raise NoFile(f"{shown(self.path)} is not a text file. Save it as CSV.") from None

    def text(self, most: int) -> str:
        """Return its text; of a longer one no more than is needed to see that it is longer."""
        parts: list[str] = []
        size = 0
        for line in self.lines(most):
            parts.append(line + "\n")
            size += len(parts[-1])
            if size > most:
                break
        return "".join(parts)


def no_files(path: str) -> NamedFile:
    """Raise ``NoFile``: no file may be read here."""
    raise NoFile(f"{path} is not read here.")


def text_opener(folder: Path) -> Callable[[str], NamedFile]:
    """Return what looks up the files that answers name, beside the answers file."""

    def look(name: str) -> NamedFile:
        try:
            path = folder / Path(name).expanduser()
        except (OSError, ValueError, RuntimeError):  # no such person
            raise NoFile(f"{shown(name)} cannot be read. Check its path.") from None
        try:
            found = disk.look(path)
        except (OSError, ValueError) as trouble:
            raise NoFile(_why(path, trouble)) from None
        if found.st_size > SIZE_LIMIT:
            raise NoFile(_why(path, TooLarge(found.st_size)))
        times = (found.st_mtime_ns, found.st_ctime_ns)
        return NamedFile(path, (found.st_dev, found.st_ino, found.st_size, *times))

    return look


def _why(path: Path, trouble: Exception) -> str:
    name = shown(path)
    match trouble:
        case FileNotFoundError() | NotADirectoryError():
            return f"There is no file {name}. Check its path."
        case NotRegular():
            what = "folder" if path.is_dir() else "pipe or a device"
            return f"{name} is a {what}. Name a plain file, saved as CSV."
        case TooLarge(size=size):
            return (
                f"{name} holds {size / 1e6:.0f} MB, and no more than {SIZE_LIMIT / 1e6:.0f} MB "
                "are read. Keep the date and the rain alone, or fewer years."
            )
        case OSError():
            return f"{name} cannot be read. {reason(trouble)}"
    return f"{name} cannot be read. Check its path."


@record(eq=False)
class ReadsFiles(Results):
    """Results that come from files besides: they hold while those files stay as they are."""

    open_text: Callable[[str], NamedFile] = field(default=no_files, kw_only=True, compare=False)
    """Looks up a file that an answer names; raises ``NoFile``."""
    files: dict[str, NamedFile | str] = field(
        default_factory=dict, kw_only=True, compare=False, repr=False
    )
    """The files looked up so far, by name; the reason where one cannot be read."""

    def file_of(self, name: str) -> NamedFile:
        """Look up a file; raises ``NoFile``."""
        try:
            file = self.files[name] = self.open_text(name)
        except NoFile as trouble:
            self.files[name] = str(trouble)
            raise
        return file

    def holds_beside(self, new: Results, gone: Collection[str], taken: Collection[str]) -> bool:
        """Tell whether what was worked out holds for ``new``, and the files are as they were."""
        return super().holds_beside(new, gone, taken) and all(
            _looked_up(self.open_text, name) == file for name, file in dict(self.files).items()
        )


def _looked_up(open_text: Callable[[str], NamedFile], name: str) -> NamedFile | str:
    try:
        return open_text(name)
    except NoFile as trouble:
        return str(trouble)


_MARKS_16 = (codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)
_STEERING = "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x84\x86-\x9f\u202a-\u202e\u2066-\u2069]"
"""Control characters, and those that turn the direction of writing."""


def lines_of(pieces: Iterable[bytes], longest: int) -> Iterator[str]:
    """Yield the lines of a text that comes in ``pieces``, without what ends them.

    The text is UTF-8, UTF-16 with its mark, or else Latin-1, line by line. A line of more than
    ``longest`` characters (bytes, but for UTF-16) is cut to one more than that. What could steer
    a terminal is replaced. Raises ValueError for data that is no text.
    """
    found = iter(pieces)
    first = b""
    while len(first) < 2 and (piece := next(found, b"")):
        first += piece
    wide = first.startswith(_MARKS_16)
    decoder = codecs.getincrementaldecoder("utf-16" if wide else "latin-1")()
    held, lead = "", "" if wide else "\ufeff"
    for text in _texts(chain((first,), found), decoder):
        *whole, held = (held + text).split("\n")
        for line in whole:
            yield _clean(line, longest, wide).removeprefix(lead)
            lead = ""
        held = held[: longest + 1]
    if held:
        yield _clean(held, longest, wide).removeprefix(lead)


def _texts(pieces: Iterable[bytes], decoder: codecs.IncrementalDecoder) -> Iterator[str]:
    ends = io.IncrementalNewlineDecoder(decoder, translate=True)
    try:
        for piece in pieces:
            text = ends.decode(piece)
            if "\0" in text:
                raise ValueError("The file is not text. Save it as CSV.")
            yield text
        yield ends.decode(b"", final=True)
    except UnicodeDecodeError:
        raise ValueError("The file is not text. Save it as CSV.") from None


def _clean(line: str, longest: int, wide: bool) -> str:
    if len(line) > longest:
        # Cut, it may end within a character, and nothing of it is used but its beginning.
        return re.sub(_STEERING, "\ufffd", line[: longest + 1])
    if not wide and not line.isascii():
        with suppress(UnicodeDecodeError):
            line = line.encode("latin-1").decode("utf-8")
    return line if line.isprintable() else re.sub(_STEERING, "\ufffd", line)
