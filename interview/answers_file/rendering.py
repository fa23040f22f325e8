"""A tree of answers as the text of a new file, and one answer as YAML."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Mapping

from interview.answers_file.nodes import compose, plain
from interview.answers_file.tree import (
    END,
    FORBIDDEN,
    KEY_LIMIT,
    SCALAR_LIMIT,
    SIZE_LIMIT,
    Node,
    Notes,
    Path,
    Unreadable,
    Unwritable,
    framed,
    same,
)
from interview.reading.foreign import code, replaced, shown

_SAFE = r"[A-Za-z0-9](?:[A-Za-z0-9 _./%+()'\"-]|:(?=[0-9A-Za-z]))*(?<! )"
_SAFE_KEY = r"[A-Za-z][A-Za-z0-9_-]*"
# what YAML 1.1 or 1.2 readers may take for a truth value, nothing, a number, a time or a date
_WORDS = r"(?i)y|yes|n|no|true|false|on|off|null|nan|inf|infinity"
_NUMBER = (
    r"(?i)0x[0-9a-f_]*|0o[0-7_]*|0b[01_]*"
    r"|[0-9][0-9_,.]*(?:e[-+]?[0-9_]*)?|[0-9][0-9_]*(?::[0-9][0-9_]*)+(?:\.[0-9_]*)?"
    r"|[0-9]{1,4}-[0-9]{1,2}-[0-9]{1,2}(?:[t ][0-9: .+z-]*)?"
)
_QUOTED = str.maketrans({'"': '\\"', "\\": "\\\\"})
_SHORT = {"\n": "\\n", "\t": "\\t", "\r": "\\r"}


def unwritable(text: str) -> str:
    """Why an answer cannot be kept in a file, as a sentence; empty when it can."""
    if found := re.search(FORBIDDEN, text):
        return (
            f"This holds a control character ({code(found.group())}) that cannot be kept; "
            "type it again without it."
        )
    if len(text) > SCALAR_LIMIT:
        return f"This is longer than {SCALAR_LIMIT} characters; shorten it."
    return ""


def double_quoted(text: str) -> str:
    """The text in double quotes, on one line, what cannot be seen written as an escape."""
    return f'"{replaced(text.translate(_QUOTED), _escape)}"'


def _escape(character: str) -> str:
    if "\ud800" <= character <= "\udfff":  # no escape of YAML stands for half a character
        return shown(character)
    number = ord(character)
    wide = f"\\u{number:04X}" if number <= 0xFFFF else f"\\U{number:08X}"
    return _SHORT.get(character, wide)


def written(text: str, *, quoted: bool = False) -> str:
    """An answer as YAML: bare when no reader can mistake it, else in double quotes.

    Raises Unwritable for a control character or a text that is too long.
    """
    if reason := unwritable(text):
        raise Unwritable(reason)
    bare = (
        re.fullmatch(_SAFE, text)
        and not re.fullmatch(_WORDS, text)
        and not re.fullmatch(_NUMBER, text)
    )
    return text if bare and not quoted else double_quoted(text)


def written_key(key: str) -> str:
    """A key as YAML; raises Unwritable for an empty or over-long one."""
    if not 0 < len(key) <= KEY_LIMIT:
        raise Unwritable("A name in the answers file is empty or too long.")
    if reason := unwritable(key):
        raise Unwritable(reason)
    return (
        key
        if re.fullmatch(_SAFE_KEY, key) and not re.fullmatch(_WORDS, key)
        else double_quoted(key)
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
