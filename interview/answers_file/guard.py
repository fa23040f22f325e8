"""What the text of an answers file may hold, and what is wrong on a line, in words to act on."""

from __future__ import annotations

import re
from typing import Any

from interview.answers_file.tree import FORMAT, KEY_LIMIT, SIZE_LIMIT, Unreadable
from interview.reading.foreign import code, shown

_NONCHARACTERS = "\ufdd0-\ufdef" + "".join(
    chr(plane << 16 | 0xFFFE) + chr(plane << 16 | 0xFFFF) for plane in range(17)
)
FORBIDDEN = re.compile(
    f"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\x80-\x84\x86-\x9f\ud800-\udfff{_NONCHARACTERS}]"
)
"""Never in an answer, not even escaped: control characters, half characters, noncharacters."""
FORBIDDEN_RAW = re.compile(f"{FORBIDDEN.pattern[:-1]}\x85\u2028\u2029\ufeff]")
"""Never in the file's own text: as well, what other readers take for a line end or a file mark."""
LINE_END = re.compile(r"\r\n|\n|\r")


def place(text: str, index: int) -> tuple[int, int]:
    """Line and column, both from 1, of a position in the text."""
    line, start = 1, 0
    for end in LINE_END.finditer(text, 0, min(index + 1, len(text))):
        if end.end() > index:
            break
        line, start = line + 1, end.end()
    return line, index - start + 1


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


_OURS = re.compile(rf"""^\s*\{{?\s*["']?format["']?\s*:.*{FORMAT}""", re.MULTILINE)
_NO_SPACE = re.compile(r"\s*(?:- +)?([A-Za-z_][\w-]*):(?=[^\s:/])")
_VALUE = re.compile(r"\s*(?:- +)*(?:[\w.-]+:\s+)?(.*?)\s*")
_LONG_NAME = re.compile(rf"\s*[\w.-]{{{KEY_LIMIT + 1},}}")
_OPENED = re.compile(r"""\s*(?:- +)*(?:[\w.-]+: +)?(?:("[^"]*)|('[^']*))$""")
_LOOK = 100
_SIGNS = tuple("@`%*&!|>?[]{}\"',-#:")


def explain(text: str, error: Any) -> Unreadable:
    """The parser's error as a sentence with the line to look at; the line before a
    complaint is looked at too, because a missing colon shows itself one line late."""
    mark = error.problem_mark or error.context_mark
    line, column = (mark.line + 1, mark.column + 1) if mark else (0, 0)
    if not _OURS.search(text):
        return Unreadable(STRANGER, line, column)
    problem = f"{error.context} {error.problem}"
    lines = LINE_END.split(text)
    for number, written in enumerate(lines[:line], 1):
        if opened := _OPENED.match(written):
            said = "A quotation mark is opened here and never closed; close it."
            return Unreadable(said, number, opened.start(opened.lastindex or 0) + 1)
    if "escape" in problem:
        said = "There is a character number here that does not exist; delete it."
        return Unreadable(said, line, column)
    if "incompatible" in problem or "directive" in problem:
        return Unreadable("Lines that start with % cannot be used; delete them.", line, column)
    for number in _lines_to_look_at(lines, line):
        if found := _complaint(lines[number - 1]):
            return Unreadable(found, number, column if number == line else 1)
    return Unreadable(
        "This line does not fit the one before it; line it up with its neighbors, "
        "and put an answer with unusual signs in double quotes.",
        line,
        column,
    )


def _lines_to_look_at(lines: list[str], line: int) -> list[int]:
    written = [
        number
        for number in range(min(line, len(lines)), 0, -1)
        if lines[number - 1].strip() and not lines[number - 1].lstrip().startswith("#")
    ]
    return written[:2]


def _complaint(line: str) -> str:
    if found := _NO_SPACE.match(line):
        return f'Put a space after the colon: "{shown(found.group(1))}: ...".'
    if line.lstrip(" -").startswith(":"):
        return "There is no name before the colon."
    if _LONG_NAME.match(line):
        return f"This name is longer than {KEY_LIMIT} characters."
    value = _VALUE.fullmatch(line[:_LOOK])
    answer = value.group(1) if value else ""
    if ": " in answer or answer.startswith(_SIGNS):
        bare = answer.strip("\"'") if answer[:1] in "\"'" and answer[-1:] != '"' else answer
        if answer[:1] == "'" and answer[-1:] == '"':
            bare = answer[1:]
        if answer[:1] == '"':
            bare = answer
        quoted = '"' + bare.replace("\\", "\\\\").replace('"', '\\"') + '"'
        return f"Put this answer in double quotes: {shown(quoted)}."
    if ":" not in line and not line.lstrip().startswith("- "):
        return "There is no colon on this line; write: name, colon, space, answer."
    return ""
