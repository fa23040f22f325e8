"""Names of the files the program makes: safe on every system, never somebody else's."""

from __future__ import annotations

import os
import unicodedata
from pathlib import Path

NAME_LIMIT = 200
"""Longest name in bytes: 255 is what disks take, and copies add to the name."""
NUMBERS = 99
"""So many names are tried for a backup or a lock before it is given up."""
_JOINERS = "\u200d\ufe0e\ufe0f\u20e3"


def free_name(folder: Path, name: str) -> Path:
    """The path of a new file in the folder: ``name``, or with -2, -3 and so on before its ending.

    Names that differ only in capitals count as one. The file is not made: ``save`` with
    ``expect=None`` does that, and refuses when another program was faster.
    """
    taken = {other.name.casefold() for other in folder.iterdir()} if folder.is_dir() else set()
    stem, ending = Path(name).stem, Path(name).suffix
    candidate, number = name, 1
    while candidate.casefold() in taken:
        number += 1
        tail = f"-{number}{ending}"
        candidate = _cut(stem, NAME_LIMIT - len(tail.encode())) + tail
    return folder / candidate


def _cut(text: str, limit: int) -> str:
    """The start of the text in at most ``limit`` bytes, cut between whole characters."""
    if len(text.encode("utf-8", "surrogateescape")) <= limit:
        return text
    end = len(text.encode("utf-8", "surrogateescape")[:limit].decode("utf-8", "ignore"))
    while end > 0 and _clings(text, end):
        end -= 1
    return text[:end]


def _clings(text: str, end: int) -> bool:
    """Whether the character at ``end`` belongs to the one before it."""
    after, before = text[end], text[end - 1]
    flag = "\U0001f1e6" <= after <= "\U0001f1ff" and "\U0001f1e6" <= before <= "\U0001f1ff"
    tone = "\U0001f3fb" <= after <= "\U0001f3ff"
    return (
        bool(unicodedata.combining(after)) or after in _JOINERS or before == "\u200d" or tone
    ) or (flag and _flags_before(text, end) % 2 == 1)


def _flags_before(text: str, end: int) -> int:
    count = 0
    while count < end and "\U0001f1e6" <= text[end - 1 - count] <= "\U0001f1ff":
        count += 1
    return count


def real(path: str | Path) -> Path:
    """Where the path leads once links are followed; what is not there yet is left as named."""
    return Path(os.path.realpath(path))


def unfollowed(path: str | Path) -> Path:
    """As ``real``, but what has the name itself is not followed where it is a link."""
    path = Path(path)
    return real(path.parent) / path.name


def beside(path: Path, before: str, after: str) -> Path:
    """A companion of a file in the same folder, its name shortened if it would grow too long."""
    name, room = path.name, 255 - len(before) - len(after)
    raw = os.fsencode(name)
    if len(raw) > room:
        name = os.fsdecode(raw[:room]).encode("utf-8", "ignore").decode("utf-8")
    return path.with_name(f"{before}{name}{after}")


def backup_of(path: str | Path, number: int = 1) -> Path:
    """The copy that is kept of a file as it was when the session began.

    A higher ``number`` gives the name that is tried where the one before is somebody else's.
    """
    return beside(real(path), "", f"{_tail(number)}.bak")


def lock_of(path: str | Path, number: int = 1) -> Path:
    """The file that says who has the answers open; ``number`` as for a backup."""
    return beside(real(path), ".", f"{_tail(number)}.lock")


def _tail(number: int) -> str:
    return f".{number}" if number > 1 else ""


def belongs_to(answers: str | Path, other: str | Path) -> bool:
    """Whether ``other`` is the answers file, its backup or its lock: never to be written over."""
    numbers = range(1, NUMBERS + 1)
    ours = {real(answers), *(of(answers, n) for of in (backup_of, lock_of) for n in numbers)}
    there = real(other)
    folded = {str(path).casefold() for path in ours}
    same = there.exists() and any(path.exists() and path.samefile(there) for path in ours)
    return str(there).casefold() in folded or same
