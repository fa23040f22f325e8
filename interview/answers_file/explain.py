"""What is wrong on a line that YAML cannot read, in words a gardener can act on."""

from __future__ import annotations

import re
from typing import Any

from interview.answers_file.characters import LINE_END, shown
from interview.answers_file.guard import STRANGER
from interview.answers_file.tree import FORMAT, KEY_LIMIT, Unreadable

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
