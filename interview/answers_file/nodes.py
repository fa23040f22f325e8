"""YAML text as plain nodes with their places in the text."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple, TypeAlias

from interview.answers_file.tree import Node
from interview.quantities.records import record

GLUED = r"([A-Za-z_][\w-]*):(?=[^\s:/])"
_NULLS = frozenset(("", "~", "null", "Null", "NULL"))


class Scalar(NamedTuple):
    """One text; ``style`` is empty for a plain one, else its quote or block sign."""

    text: str
    start: int
    end: int
    line: int
    column: int
    style: str
    last_line: int

    @property
    def empty(self) -> bool:
        """Whether it is written as nothing at all, ``~`` or ``null``: not answered."""
        return not self.style and self.text in _NULLS


class Entry(NamedTuple):
    """One key with its value."""

    key: Scalar
    value: Part


@record
class Block:
    """A mapping, holding entries, or a sequence, holding items."""

    start: int
    end: int
    line: int
    column: int
    flow: bool


@record
class Mapping(Block):
    entries: tuple[Entry, ...]


@record
class Sequence(Block):
    items: tuple[Part, ...]


Part: TypeAlias = "Scalar | Mapping | Sequence"


def plain(part: Part) -> Node:
    """The part as bare text, lists and dicts; an unanswered value is empty text."""
    if isinstance(part, Scalar):
        return "" if part.empty else part.text
    if isinstance(part, Sequence):
        return [plain(item) for item in part.items]
    return {entry.key.text: plain(entry.value) for entry in part.entries}


def scalars(part: Part) -> Iterator[Scalar]:
    """Every text in the part, keys too, in the order of the file."""
    if isinstance(part, Scalar):
        yield part
    elif isinstance(part, Sequence):
        for item in part.items:
            yield from scalars(item)
    else:
        for entry in part.entries:
            yield entry.key
            yield from scalars(entry.value)


@lru_cache(maxsize=4)
def compose(text: str) -> Part | None:
    """The text's one document, None when it holds none; raises Unreadable with the place.

    Nodes are immutable, so the last few texts are remembered: a save reads the same text
    several times.
    """
    from interview.answers_file.composing import Composer  # a new garden has no file to read yet

    return Composer(text).document()
