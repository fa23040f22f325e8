"""From bytes to text: refuses what no text editor saves, naming the line."""

from __future__ import annotations

import re

from interview.answers_file.characters import FORBIDDEN_RAW, code, place
from interview.answers_file.tree import SIZE_LIMIT, Unreadable

_BOMS = (b"\xff\xfe", b"\xfe\xff", b"\x00\x00\xfe\xff")
_CONFLICT = re.compile(r"^(?:<<<<<<<|>>>>>>>)(?: |$)", re.MULTILINE)
_TAB_INDENT = re.compile(r"^ *\t", re.MULTILINE)
_ODD_INDENT = re.compile(r"^[ \t]*(?:(?![ \t\r\n])\s|\u3164|\u2800)", re.MULTILINE)
_KNOWN = b"format"
STRANGER = (
    "This does not look like an answers file of this program. "
    "Choose another file, or start a new one under another name."
)
BACKUP = "If there is a file with the same name and .bak at the end, open that one."


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


def _check_characters(text: str) -> None:
    found = FORBIDDEN_RAW.search(text)
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
    if found := _CONFLICT.search(lines):
        said = (
            "There is an unsettled merge here, made by git. "
            "Keep one of the two versions and delete the lines with <<<<<<<, ======= and >>>>>>>."
        )
    elif found := _TAB_INDENT.search(lines):
        said = "This line starts with a Tab; use spaces instead."
    elif found := _ODD_INDENT.search(lines):
        said = (
            f"This line starts with a space that is not a plain space ({code(found.group()[-1])}); "
            "delete it and use the space bar."
        )
    else:
        return
    raise Unreadable(said, *place(text, found.start()))
