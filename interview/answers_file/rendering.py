"""A whole answers file as text, each answer on a line of its own under its question."""

from __future__ import annotations

import textwrap
from collections.abc import Mapping

from interview.answers_file.characters import shown
from interview.answers_file.nodes import compose, plain
from interview.answers_file.scalars import written, written_key
from interview.answers_file.tree import (
    END,
    SIZE_LIMIT,
    Node,
    Notes,
    Path,
    Unreadable,
    Unwritable,
    framed,
    same,
)

WIDTH = 80
_NARROWEST = 30


def render(tree: Mapping[str, Node], notes: Notes) -> str:
    """The tree as a new file: deterministic, no flow style, comments up to column 80.

    ``notes`` gives the comment for a path, empty for none; the path ``()`` is the file's head.
    Raises Unwritable when the tree holds what no answers file can keep.
    """
    whole = framed(tree)
    text = "\n".join([*comment(notes(()), 0), *mapping(whole, (), 0, notes)]) + "\n"
    check(text, whole)
    return text


def check(text: str, tree: Mapping[str, Node]) -> None:
    """Raise Unwritable unless the text reads as exactly the tree."""
    try:
        root = compose(text)
    except Unreadable as error:
        raise Unwritable(f"These answers cannot be kept in a file: {error.sentence}") from error
    found = plain(root) if root else {}
    if not isinstance(found, dict) or not same(found, tree):
        raise Unwritable("These answers would not read back the same from the file.")
    if len(text.encode()) > SIZE_LIMIT:
        raise Unwritable("These answers are too long for one file; shorten the longest notes.")


def comment(note: str, indent: int) -> list[str]:
    """The note as comment lines, wrapped at column 80 where its words allow."""
    start = " " * indent + "# "
    lines: list[str] = []
    for line in note.splitlines():
        words = shown(" ".join(line.removeprefix("#").split()))
        lines += textwrap.wrap(
            words,
            max(WIDTH, indent + _NARROWEST),
            initial_indent=start,
            subsequent_indent=start,
            break_long_words=False,
            break_on_hyphens=False,
        )
    return lines


def mapping(tree: Mapping[str, Node], path: Path, indent: int, notes: Notes) -> list[str]:
    """The lines of a mapping, each key under its comment."""
    lines: list[str] = []
    for key, value in tree.items():
        lines += entry(key, value, (*path, key), indent, notes)
    return lines


def entry(key: str, value: Node, path: Path, indent: int, notes: Notes) -> list[str]:
    """The lines of one key with its comment and its value."""
    start = " " * indent + written_key(key) + ":"
    above = comment(notes(path), indent)
    if isinstance(value, str):
        return [*above, f"{start} {'true' if path == (END,) else written(value)}"]
    return [*above, start, *block(value, path, indent + 2, notes)]


def block(value: Node, path: Path, indent: int, notes: Notes) -> list[str]:
    """The lines of a list or mapping that stands under its key."""
    if isinstance(value, dict):
        return mapping(value, path, indent, notes)
    assert isinstance(value, list)
    lines: list[str] = []
    for number, one in enumerate(value):
        lines += item(one, (*path, number), indent, notes)
    return lines


def item(value: Node, path: Path, indent: int, notes: Notes) -> list[str]:
    """The lines of one list item; a mapping starts on the line of its dash."""
    above = comment(notes(path), indent)
    dash = " " * indent + "- "
    if isinstance(value, str):
        return [*above, dash + written(value)]
    if not value:
        return [*above, dash + ("{}" if isinstance(value, dict) else "[]")]
    lines = block(value, path, indent + 2, notes)
    return [*above, dash + lines[0][indent + 2 :], *lines[1:]]
