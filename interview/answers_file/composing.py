"""Nodes made of YAML text; the only module that imports yaml.

Built from the parser's events, so that nothing is guessed (``no`` stays ``no``) and a hostile
file is refused at the first sign: anchors, tags, merge keys, second documents, depth, length.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any, NoReturn

import yaml

from interview.answers_file.nodes import GLUED, Entry, Mapping, Part, Scalar, Sequence
from interview.answers_file.tree import (
    DEPTH_LIMIT,
    EVENT_LIMIT,
    FORBIDDEN,
    FORMAT,
    KEY_LIMIT,
    LINE_END,
    SCALAR_LIMIT,
    STRANGER,
    Unreadable,
    place,
)
from interview.reading.foreign import code, shown

LOADER: Any = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
"""The parser in C where PyYAML was built with it, as it is many times faster on a large file; both
give the same events. The base loaders alone take every scalar for text."""
_TOO_HIGH_ESCAPE = r"\\U(?!000|0010)[0-9A-Fa-f]{8}"


class Composer:
    """Makes the nodes of one text; raises ``Unreadable``."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.events = self._events()
        self.count = 0

    def _events(self) -> Iterator[Any]:
        try:
            yield from yaml.parse(self.text, Loader=LOADER)
        except yaml.MarkedYAMLError as error:
            raise explain(self.text, error) from error
        except (ValueError, OverflowError) as error:
            found = re.search(_TOO_HIGH_ESCAPE, self.text)
            line, column = place(self.text, found.start()) if found else (0, 0)
            said = "There is a character number here that does not exist; delete it."
            raise Unreadable(said, line, column) from error

    def document(self) -> Part | None:
        root: Part | None = None
        for count, event in enumerate(self.events):
            if isinstance(event, yaml.DocumentStartEvent):
                if count > 1:
                    self.refuse(event, "A second document starts here; delete this line.")
                if event.tags:
                    self.refuse(event, "Lines that start with %TAG cannot be used; delete them.")
                root = self.part(next(self.events), 1)
        return root

    def part(self, event: Any, depth: int) -> Part:
        self.check(event, depth)
        mark: Any = event.start_mark
        flow = bool(getattr(event, "flow_style", False))
        if isinstance(event, yaml.ScalarEvent):
            return self.scalar(event)
        if isinstance(event, yaml.SequenceStartEvent):
            items: list[Part] = []
            while not isinstance(event := self.next(), yaml.SequenceEndEvent):
                items.append(self.part(event, depth + 1))
            return Sequence(*self.span(mark, event), flow, tuple(items))
        entries = []
        seen: dict[str, int] = {}
        while not isinstance(event := self.next(), yaml.MappingEndEvent):
            key = self.key(event, depth + 1, seen)
            entry = Entry(key, self.part(self.next(), depth + 1))
            self.check_space(entry)
            entries.append(entry)
        return Mapping(*self.span(mark, event), flow, tuple(entries))

    def check_space(self, entry: Entry) -> None:
        """A key glued to its answer below another key would be read as that key's answer."""
        value = entry.value
        if isinstance(value, Scalar) and not value.style and value.line > entry.key.line:
            found = re.match(GLUED, value.text)
            if found:
                said = f'Put a space after the colon: "{shown(found.group(1))}: ...".'
                raise Unreadable(said, value.line, value.column)

    def span(self, start: Any, event: Any) -> tuple[int, int, int, int]:
        return start.index, event.end_mark.index, start.line + 1, start.column + 1

    def next(self) -> Any:
        self.count += 1
        event = next(self.events)
        if self.count > EVENT_LIMIT:
            self.refuse(event, "This file holds far more lines than an interview has answers.")
        return event

    def check(self, event: Any, depth: int) -> None:
        if isinstance(event, yaml.AliasEvent):
            self.refuse(event, "An answer may not start with *; put it in double quotes.")
        if event.anchor is not None:
            self.refuse(event, "An answer may not start with &; put it in double quotes.")
        if event.tag is not None:
            self.refuse(event, "An answer may not start with !; put it in double quotes.")
        if depth > DEPTH_LIMIT:
            self.refuse(event, "Too many levels are nested inside each other here.")

    def scalar(self, event: Any) -> Scalar:
        start, end = event.start_mark, event.end_mark
        text, style = event.value, event.style or ""
        if len(text) > SCALAR_LIMIT:
            self.refuse(event, f"This answer is longer than {SCALAR_LIMIT} characters; shorten it.")
        if not text.isprintable() and (found := re.search(FORBIDDEN, text)):
            self.refuse(event, f"This answer holds a control character ({code(found.group())}).")
        if style in ("|", ">") and not text:
            self.refuse(event, f'Nothing follows the "{style}"; write the answer in double quotes.')
        return Scalar(
            text, start.index, end.index, start.line + 1, start.column + 1, style, end.line + 1
        )

    def key(self, event: Any, depth: int, seen: dict[str, int]) -> Scalar:
        self.check(event, depth)
        if not isinstance(event, yaml.ScalarEvent):
            self.refuse(event, "A list cannot be a name; write: name, colon, space, answer.")
        key = self.scalar(event)
        start = max(self.text.rfind("\n", 0, key.start), self.text.rfind("\r", 0, key.start)) + 1
        if self.text[start : key.start].rstrip().endswith("?"):
            self.refuse(event, 'A name may not start with "?"; write: name, colon, space, answer.')
        if not key.text:
            self.refuse(event, "There is no name before the colon.")
        if len(key.text) > KEY_LIMIT:
            self.refuse(event, f"This name is longer than {KEY_LIMIT} characters.")
        if key.text == "<<" and not key.style:
            self.refuse(event, 'The sign "<<" cannot be used in an answers file; delete the line.')
        if key.text in seen:
            self.refuse(
                event,
                f'"{shown(key.text)}" is here twice; it is first on line {seen[key.text]}. '
                "Delete one of the two lines.",
            )
        seen[key.text] = key.line
        return key

    def refuse(self, event: Any, said: str) -> NoReturn:
        raise Unreadable(said, event.start_mark.line + 1, event.start_mark.column + 1)


_OURS = rf"""(?m)^\s*\{{?\s*["']?format["']?\s*:.*{FORMAT}"""
_NO_SPACE = r"\s*(?:- +)?([A-Za-z_][\w-]*):(?=[^\s:/])"
_VALUE = r"\s*(?:- +)*(?:[\w.-]+:\s+)?(.*?)\s*"
_LONG_NAME = rf"\s*[\w.-]{{{KEY_LIMIT + 1},}}"
_OPENED = r"""\s*(?:- +)*(?:[\w.-]+: +)?(?:("[^"]*)|('[^']*))$"""
_LOOK = 100
_SIGNS = tuple("@`%*&!|>?[]{}\"',-#:")


def explain(text: str, error: Any) -> Unreadable:
    """The parser's error as a sentence with the line to look at; the line before a
    complaint is looked at too, because a missing colon shows itself one line late."""
    mark = error.problem_mark or error.context_mark
    line, column = (mark.line + 1, mark.column + 1) if mark else (0, 0)
    if not re.search(_OURS, text):
        return Unreadable(STRANGER, line, column)
    problem = f"{error.context} {error.problem}"
    lines = re.split(LINE_END, text)
    for number, written in enumerate(lines[:line], 1):
        if opened := re.match(_OPENED, written):
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
    if found := re.match(_NO_SPACE, line):
        return f'Put a space after the colon: "{shown(found.group(1))}: ...".'
    if line.lstrip(" -").startswith(":"):
        return "There is no name before the colon."
    if re.match(_LONG_NAME, line):
        return f"This name is longer than {KEY_LIMIT} characters."
    value = re.fullmatch(_VALUE, line[:_LOOK])
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
