"""What an answers file may hold, apart from how it is written: text only, nothing interpreted."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Any, NamedTuple, TypeAlias

Node: TypeAlias = "str | list[Node] | dict[str, Node]"
Tree: TypeAlias = dict[str, Node]
Path: TypeAlias = tuple[str | int, ...]
Notes: TypeAlias = Callable[[Path], str]
Order: TypeAlias = Callable[[Path], Any]

FORMAT = "rain-garden-interview"
VERSION = (1, 0)
END = "end_of_answers"
FRAME_KEYS = ("format", "format_version", "written_by", END)
"""Top level keys that belong to the file and not to the interview."""

SIZE_LIMIT = 256 * 1024
"""Largest file in bytes; a full interview takes a tenth of it."""
DEPTH_LIMIT = 12
EVENT_LIMIT = 20_000
SCALAR_LIMIT = 10_000
KEY_LIMIT = 128


STRANGER = (
    "This does not look like an answers file of this program. "
    "Choose another file, or start a new one under another name."
)
_NONCHARACTERS = "\ufdd0-\ufdef" + "".join(
    chr(plane << 16 | 0xFFFE) + chr(plane << 16 | 0xFFFF) for plane in range(17)
)
FORBIDDEN = f"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\x80-\x84\x86-\x9f\ud800-\udfff{_NONCHARACTERS}]"
"""Never in an answer, not even escaped: control characters, half characters, noncharacters."""
FORBIDDEN_RAW = f"{FORBIDDEN[:-1]}\x85\u2028\u2029\ufeff]"
"""Never in the file's own text: as well, what other readers take for a line end or a file mark."""
LINE_END = r"\r\n|\n|\r"


def place(text: str, index: int) -> tuple[int, int]:
    """Line and column, both from 1, of a position in the text."""
    line, start = 1, 0
    for end in re.compile(LINE_END).finditer(text, 0, min(index + 1, len(text))):
        if end.end() > index:
            break
        line, start = line + 1, end.end()
    return line, index - start + 1


class Unreadable(Exception):
    """The file cannot be used at all; it stays as it is.

    ``line`` and ``column`` count from 1; both are 0 when the whole file is meant.
    """

    def __init__(self, sentence: str, line: int = 0, column: int = 0) -> None:
        super().__init__(sentence)
        self.sentence = sentence
        self.line = line
        self.column = column

    def __str__(self) -> str:
        if not self.line:
            return self.sentence
        return f"line {self.line}, column {self.column}: {self.sentence}"


class Unwritable(ValueError):
    """These answers hold something no answers file can keep; the message says what."""


class Trouble(NamedTuple):
    """One thing to look at in a file that could be opened; ``line`` counts from 1."""

    line: int
    key: str
    sentence: str
    suggestion: str = ""


def normal(node: Node) -> Node:
    """The node without keys that hold nothing: an empty answer is a missing answer."""
    if isinstance(node, list):
        return [normal(item) for item in node]
    if isinstance(node, dict):
        kept = {key: normal(value) for key, value in node.items()}
        return {key: value for key, value in kept.items() if value}
    return node


def framed(tree: Mapping[str, Node]) -> Tree:
    """The tree as a file holds it: format first, nothing empty, the end marker last."""
    frame: Tree = {"format": FORMAT, "format_version": f"{VERSION[0]}.{VERSION[1]}"}
    whole = frame | {key: tree[key] for key in FRAME_KEYS if key in tree} | dict(tree)
    whole.pop(END, None)
    whole = {key: kept for key, value in whole.items() if (kept := normal(value))}
    return whole | {END: "true"}


def same(one: Mapping[str, Node], other: Mapping[str, Node]) -> bool:
    """Whether two trees hold the same answers, whatever their order."""
    return framed(one) == framed(other)
