"""A file that an answer names, such as a rainfall record: its text, and whether it has changed."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass, field
from pathlib import Path
from typing import NamedTuple

from interview.answers_file import disk, reason, shown
from interview.answers_file.disk import NotRegular, TooLarge
from interview.asking.results import Results
from interview.reading.text_lines import lines_of

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


@dataclass(frozen=True, eq=False, repr=False)
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
