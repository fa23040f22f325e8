"""Open an answers file: only a plain file of sensible size, and never a wait."""

from __future__ import annotations

import errno
import hashlib
import os
from dataclasses import dataclass
from pathlib import Path

from interview.answers_file.characters import shown
from interview.answers_file.oslayer import READ, REAL, OsLayer, is_regular, reason
from interview.answers_file.parsing import Parsed, parse
from interview.answers_file.tree import SIZE_LIMIT


class NotLoaded(Exception):
    """The path leads to no file that can be read; ``missing`` when there is nothing there."""

    def __init__(self, sentence: str, *, missing: bool = False) -> None:
        super().__init__(sentence)
        self.sentence = sentence
        self.missing = missing


@dataclass(frozen=True)
class Fingerprint:
    """A file's content in short: two files with one fingerprint hold the same bytes."""

    size: int
    sha256: str

    @classmethod
    def of(cls, data: bytes) -> Fingerprint:
        """The fingerprint of some bytes."""
        return cls(len(data), hashlib.sha256(data).hexdigest())


def load(path: str | Path, *, os_layer: OsLayer = REAL) -> tuple[Parsed, Fingerprint]:
    """The parsed file and its fingerprint, to be handed to ``save`` later.

    Raises NotLoaded when the path is at fault and Unreadable when the content is.
    """
    data = read(path, os_layer=os_layer)
    return parse(data), Fingerprint.of(data)


def read(path: str | Path, *, os_layer: OsLayer = REAL) -> bytes:
    """The file's bytes; raises NotLoaded when there is no plain file that can be read."""
    name = str(path)
    if not name or "\0" in name:
        raise NotLoaded("This is not the name of a file; check the path.")
    try:
        return _read(name, os_layer)
    except OSError as error:
        if error.errno == errno.ENOENT:
            raise NotLoaded(_missing(name), missing=True) from error
        raise NotLoaded(f"{shown(name)}: {reason(error)}") from error
    except (ValueError, MemoryError) as error:
        raise NotLoaded(f"{shown(name)}: this file cannot be read; check the path.") from error


def _missing(name: str) -> str:
    here = Path(name)
    if here.is_symlink():
        target = shown(here.readlink())
        return f"{shown(name)} is a link to {target}, and there is no file there."
    if not here.parent.exists():
        return f"There is no folder {shown(here.parent)}; check the path."
    return f"There is no file {shown(name)}."


def _read(name: str, os_layer: OsLayer) -> bytes:
    if not is_regular(os_layer.stat(name)):
        raise NotLoaded(_not_a_file(name))
    fd = os_layer.open(name, READ)
    try:
        for _ in range(2):
            before = os_layer.fstat(fd)
            if not is_regular(before):
                raise NotLoaded(_not_a_file(name))
            if before.st_size > SIZE_LIMIT:
                raise NotLoaded(
                    f"{shown(name)} is larger than {SIZE_LIMIT // 1024} KiB; "
                    "an answers file is far smaller."
                )
            data = _all(fd, os_layer)
            after = os_layer.fstat(fd)
            if len(data) == after.st_size == before.st_size:
                return data
            os.lseek(fd, 0, os.SEEK_SET)
    finally:
        os_layer.close(fd)
    raise NotLoaded(f"{shown(name)} is being written just now by another program; try again.")


def _not_a_file(name: str) -> str:
    if os.path.isdir(name):  # noqa: PTH112
        return f"{shown(name)} is a folder; name an answers file in it."
    return f"{shown(name)} is not a plain file; choose another one."


def _all(fd: int, os_layer: OsLayer) -> bytes:
    parts: list[bytes] = []
    left = SIZE_LIMIT + 1
    while left > 0 and (part := os_layer.read(fd, left)):
        parts.append(part)
        left -= len(part)
    return b"".join(parts)
