"""An answers file's bytes, and the tree of text in them with the line of everything in it."""

from __future__ import annotations

import errno
import hashlib
import os
import pathlib
import re
from collections.abc import Iterator
from dataclasses import field
from typing import NamedTuple

from interview.answers_file.disk import READ, REAL, OsLayer, is_regular, reason
from interview.answers_file.nodes import GLUED, Mapping, Part, Scalar, Sequence, compose, plain
from interview.answers_file.rendering import double_quoted
from interview.answers_file.tree import (
    END,
    FORBIDDEN_RAW,
    FORMAT,
    SIZE_LIMIT,
    STRANGER,
    VERSION,
    Path,
    Tree,
    Trouble,
    Unreadable,
    place,
)
from interview.quantities.records import record
from interview.reading.foreign import code, shown

_BOMS = (b"\xff\xfe", b"\xfe\xff", b"\x00\x00\xfe\xff")
_CONFLICT = r"(?m)^(?:<<<<<<<|>>>>>>>)(?: |$)"
_TAB_INDENT = r"(?m)^ *\t"
_ODD_INDENT = r"(?m)^[ \t]*(?:(?![ \t\r\n])\s|\u3164|\u2800)"
_KNOWN = b"format"
BACKUP = "If there is a file with the same name and .bak at the end, open that one."


_VERSION = r"([0-9]{1,4})\.([0-9]{1,4})"
_COMMENT = r"( +)#([^\r\n]*)"


@record
class Parsed:
    """A file that could be opened, with what there is to say about it."""

    tree: Tree
    """Everything in the file, frame and unknown keys too; an unanswered key is empty text."""
    troubles: list[Trouble]
    version: tuple[int, int]
    text: str
    """The text as read, without a byte order mark."""
    read_only: bool = False
    """True for a file of a newer kind, which this program must not write."""
    lines: dict[Path, int] = field(default_factory=dict, repr=False)

    def line_of(self, path: Path) -> int:
        """The line, from 1, of the key or item at a path, or of the nearest one above it."""
        while path and path not in self.lines:
            path = path[:-1]
        return self.lines.get(path, 1)


def parse(data: bytes) -> Parsed:
    """Read an answers file.

    Raises Unreadable, and nothing else, when nothing can be used: not text, not YAML, not this
    program's file, or written in a way this program does not read. A doubt about a file that can
    be used is a Trouble.
    """
    try:
        return _parsed(text_of(data))
    except Unreadable:
        raise
    except Exception as error:  # whatever a parser may throw at a hostile file
        said = "This file could not be read. It has not been changed."
        raise Unreadable(said) from error


def _parsed(text: str) -> Parsed:
    root = compose(text)
    if root is None or (isinstance(root, Scalar) and root.empty):
        raise Unreadable(f"The file is empty. {BACKUP}", 1, 1)
    if not isinstance(root, Mapping):
        hint = ""
        if isinstance(root, Scalar) and re.match(r"[\w-]+:\S", root.text):
            hint = f" Is the space after the colon missing on line {root.line}?"
        raise Unreadable(STRANGER + hint, root.line, root.column)
    tree = plain(root)
    assert isinstance(tree, dict)
    lines = dict(_lines(root, ()))
    version = _version(tree, lines)
    troubles = [*_version_troubles(version, lines), *_notes(text, root)]
    if str(tree.get(END)).lower() != "true":
        last = text.rstrip().count("\n") + 1
        said = (
            f'The last line, "{END}: true", is missing: the file may have been cut off. '
            "Look whether every answer is still there."
        )
        troubles.append(Trouble(last, END, said))
    return Parsed(tree, troubles, version, text, version[0] > VERSION[0], lines)


def _lines(part: Part, path: Path) -> Iterator[tuple[Path, int]]:
    if isinstance(part, Mapping):
        for entry in part.entries:
            yield (*path, entry.key.text), entry.key.line
            yield from _lines(entry.value, (*path, entry.key.text))
    elif isinstance(part, Sequence):
        for number, item in enumerate(part.items):
            yield (*path, number), item.line
            yield from _lines(item, (*path, number))


def _version(tree: Tree, lines: dict[Path, int]) -> tuple[int, int]:
    if tree.get("format") != FORMAT:
        raise Unreadable(STRANGER, lines.get(("format",), 1), 1)
    said = tree.get("format_version")
    found = re.fullmatch(_VERSION, said) if isinstance(said, str) else None
    if not found or int(found[1]) < 1:
        raise Unreadable(
            f'The line "format_version" must say which version of the file this is, such as '
            f'"{VERSION[0]}.{VERSION[1]}".',
            lines.get(("format_version",), lines["format",]),
            1,
        )
    return int(found[1]), int(found[2])


def _version_troubles(version: tuple[int, int], lines: dict[Path, int]) -> Iterator[Trouble]:
    numbers = f"{version[0]}.{version[1]}"
    ours = f"{VERSION[0]}.{VERSION[1]}"
    if version[0] > VERSION[0]:
        said = (
            f"This file was written by a newer program (file version {numbers}; this program "
            f"knows {ours}). You can look at it here; to change it, get the newer program."
        )
    elif version > VERSION:
        said = (
            f"This file was written by a slightly newer program (file version {numbers}; this "
            f"program knows {ours}). What this program does not know is kept as it is."
        )
    else:
        return
    yield Trouble(lines["format_version",], "format_version", said)


def _notes(text: str, part: Part, name: str = "") -> Iterator[Trouble]:
    """Doubts about single answers: words lost to a ``#``, a line swallowed by the one above."""
    if isinstance(part, Mapping):
        for entry in part.entries:
            yield from _notes(text, entry.value, entry.key.text)
    elif isinstance(part, Sequence):
        for item in part.items:
            if isinstance(item, Scalar) and not item.style and re.match(GLUED, item.text):
                said = "Is the space after the colon missing here?"
                yield Trouble(item.line, name, said, item.text.replace(":", ": ", 1))
            yield from _notes(text, item, name)
    elif not part.style and part.text:
        yield from _comment_note(text, part, name)
        if part.last_line > part.line:
            said = (
                f'The lines after "{shown(name)}" were read as part of its answer; '
                "check the colon and the spaces at their start."
            )
            yield Trouble(part.line, name, said, double_quoted(part.text))


def _comment_note(text: str, scalar: Scalar, name: str) -> Iterator[Trouble]:
    found = re.compile(_COMMENT).match(text, scalar.end)
    # two spaces before and one after are how a comment is meant; anything else is a doubt
    if found and not (len(found[1]) > 1 and found[2][:1] in ("", " ")):
        lost = shown(found[2].strip())
        said = f'The text after # was taken as a comment, not as part of the answer: "{lost}".'
        yield Trouble(scalar.line, name, said, double_quoted(scalar.text + found[0].rstrip()))


class NotLoaded(Exception):
    """The path leads to no file that can be read; ``missing`` when there is nothing there."""

    def __init__(self, sentence: str, *, missing: bool = False) -> None:
        super().__init__(sentence)
        self.sentence = sentence
        self.missing = missing


class Fingerprint(NamedTuple):
    """A file's content in short: two files with one fingerprint hold the same bytes."""

    size: int
    sha256: str

    @classmethod
    def of(cls, data: bytes) -> Fingerprint:
        """The fingerprint of some bytes."""
        return cls(len(data), hashlib.sha256(data).hexdigest())


def load(path: str | pathlib.Path, *, os_layer: OsLayer = REAL) -> tuple[Parsed, Fingerprint]:
    """The parsed file and its fingerprint, to be handed to ``save`` later.

    Raises NotLoaded when the path is at fault and Unreadable when the content is.
    """
    data = read(path, os_layer=os_layer)
    return parse(data), Fingerprint.of(data)


def read(path: str | pathlib.Path, *, os_layer: OsLayer = REAL) -> bytes:
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
    here = pathlib.Path(name)
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
        # Once more where another program is just writing it.
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


def text_of(data: bytes) -> str:
    """The file's text without a leading byte order mark; line ends are left as they are.

    Raises Unreadable for a file that is too large, empty, not UTF-8, or holds characters
    that a text file does not hold.
    """
    if len(data) > SIZE_LIMIT:
        raise Unreadable(
            f"This file is larger than {SIZE_LIMIT // 1024} KiB; an answers file is far smaller."
        )
    if not data.strip(b" \t\r\n"):
        raise Unreadable(f"The file is empty. {BACKUP}")
    if not data.strip(b"\0"):
        raise Unreadable(
            f"The content of this file is gone: it holds only zero bytes. {BACKUP}", 1, 1
        )
    if data.startswith(_BOMS) or _looks_wide(data):
        raise Unreadable("This file was saved as UTF-16 or UTF-32; save it again as UTF-8.", 1, 1)
    text = _decoded(data.removeprefix(b"\xef\xbb\xbf"))
    if not text.strip():
        raise Unreadable(f"The file is empty. {BACKUP}")
    _check_characters(text)
    _check_lines(text)
    return text


def _looks_wide(data: bytes) -> bool:
    head = data[:400]
    return max(head[0::2].count(0), head[1::2].count(0)) * 3 > len(head) // 2 * 2


def _decoded(data: bytes) -> str:
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8")
        line, column = place(before + "x", len(before))
        if _KNOWN not in data:
            raise Unreadable(STRANGER, line, column) from error
        raise Unreadable(
            "There is a letter here that was not saved as UTF-8. "
            "Type it again, and save the file as UTF-8.",
            line,
            column,
        ) from error


_LAYOUT = str.maketrans("", "", "\t\n\r")


def _check_characters(text: str) -> None:
    # None of these can be printed, which is seen sooner than what each character is.
    plain = text.translate(_LAYOUT).isprintable()
    found = None if plain else re.search(FORBIDDEN_RAW, text)
    if not found:
        return
    line, column = place(text, found.start())
    character = found.group()
    if character == "\0":
        said = f"From here on the content of the file is gone (zero bytes). {BACKUP}"
    elif character in "\x85\u2028\u2029\ufeff":
        said = f"There is a hidden mark here ({code(character)}) that breaks lines; delete it."
    else:
        said = f"There is a control character here ({code(character)}); delete it."
    raise Unreadable(said, line, column)


def _check_lines(text: str) -> None:
    lines = text.replace("\r\n", " \n").replace("\r", "\n")
    if found := re.search(_CONFLICT, lines):
        said = (
            "There is an unsettled merge here, made by git. "
            "Keep one of the two versions and delete the lines with <<<<<<<, ======= and >>>>>>>."
        )
    elif found := re.search(_TAB_INDENT, lines):
        said = "This line starts with a Tab; use spaces instead."
    elif found := re.search(_ODD_INDENT, lines):
        said = (
            f"This line starts with a space that is not a plain space ({code(found.group()[-1])}); "
            "delete it and use the space bar."
        )
    else:
        return
    raise Unreadable(said, *place(text, found.start()))
