"""Where things stand in a text: lines, comments, and which comments are the program's own."""

from __future__ import annotations

import re
from bisect import bisect_left

from interview.answers_file.characters import LINE_END
from interview.answers_file.nodes import Entry, Mapping, Part, Sequence, scalars
from interview.answers_file.rendering import comment
from interview.answers_file.tree import Notes, Path

_COMMENT = re.compile(r"(?<![^\s])#[^\r\n]*")
Span = tuple[int, int]


class TextLayout:
    """A text together with its nodes and comments; positions are offsets in the text."""

    def __init__(self, text: str, root: Part, notes: Notes) -> None:
        self.text = text
        self.notes = notes
        self.newline = self.line_end(text)
        self.comments = self._comments(root)
        self._starts = [start for start, _ in self.comments]

    @staticmethod
    def line_end(text: str) -> str:
        """The kind of line end the text uses most."""
        pairs = text.count("\r\n")
        alone = {"\n": text.count("\n") - pairs, "\r\n": pairs, "\r": text.count("\r") - pairs}
        return max(alone, key=lambda kind: alone[kind])

    def _comments(self, root: Part) -> list[Span]:
        """Every comment in the text: what starts with # outside the texts themselves."""
        found: list[Span] = []
        done = 0
        for scalar in scalars(root):
            found += [m.span() for m in _COMMENT.finditer(self.text, done, scalar.start)]
            done = max(done, scalar.end)
            if scalar.style in ("|", ">"):
                found += [
                    m.span()
                    for m in _COMMENT.finditer(
                        self.text, scalar.start, self._line_stop(scalar.start)
                    )
                ]
        return found + [m.span() for m in _COMMENT.finditer(self.text, done)]

    def line_start(self, index: int) -> int:
        """The start of the line that holds the index."""
        return max(self.text.rfind("\n", 0, index), self.text.rfind("\r", 0, index)) + 1

    def _line_stop(self, index: int) -> int:
        found = LINE_END.search(self.text, index)
        return found.start() if found else len(self.text)

    def next_line(self, index: int) -> int:
        """The start of the line after the one that holds the index."""
        found = LINE_END.search(self.text, index)
        return found.end() if found else len(self.text)

    def after(self, part: Part) -> int:
        """The start of the first line below a value."""
        end = self._end(part)
        at_start = end > 0 and self.text[end - 1] in "\r\n"
        return end if at_start else self.next_line(end)

    def _end(self, part: Part) -> int:
        if isinstance(part, Mapping) and not part.flow and part.entries:
            return self._end(part.entries[-1].value)
        if isinstance(part, Sequence) and not part.flow and part.items:
            return self._end(part.items[-1])
        return part.end

    def dash(self, node: Sequence, index: int) -> int:
        """The place of the dash of an item in a list."""
        if index == 0:
            return node.start
        pattern = re.compile(rf"^ {{{node.column - 1}}}-(?=\s)", re.MULTILINE)
        start = self.after(node.items[index - 1])
        # MULTILINE knows only \n as a line end
        found = pattern.search(self.text[start:].replace("\r", "\n"))
        return start + found.end() - 1 if found else -1

    def whole_line(self, start: int, end: int) -> Span:
        """A comment's span with its line when it stands alone there, else with the space before."""
        line = self.line_start(start)
        before = self.text[line:start]
        if before.strip():
            return line + len(before.rstrip()), end
        return line, self.next_line(end)

    def own_comment(self, entry: Entry, path: Path) -> list[Span]:
        """The comment right above a key, if it is word for word what the program writes there."""
        expected = [line.strip() for line in comment(self.notes(path), entry.key.column - 1)]
        last = bisect_left(self._starts, entry.key.start)
        found = self.comments[max(0, last - len(expected)) : last] if expected else []
        if [self.text[start:end].rstrip() for start, end in found] != expected:
            return []
        lines = [self.line_start(start) for start, _ in found] + [self.line_start(entry.key.start)]
        follow = [self.next_line(line) for line in lines[:-1]]
        return found if follow == lines[1:] else []

    def entry_start(self, entry: Entry, path: Path) -> int:
        """The line where a key starts, together with the program's own comment above it."""
        spans = self.own_comment(entry, path)
        return self.line_start(spans[0][0] if spans else entry.key.start)

    def ours_within(self, part: Part, path: Path) -> set[int]:
        """The starts of the program's own comments inside a value."""
        ours: set[int] = set()
        if isinstance(part, Mapping):
            for entry in part.entries:
                here = (*path, entry.key.text)
                ours |= {start for start, _ in self.own_comment(entry, here)}
                ours |= self.ours_within(entry.value, here)
        elif isinstance(part, Sequence):
            for number, item in enumerate(part.items):
                ours |= self.ours_within(item, (*path, number))
        return ours

    def said(self, start: int, end: int) -> list[str]:
        """The comments that start inside a stretch of text."""
        first, last = bisect_left(self._starts, start), bisect_left(self._starts, end)
        return [self.text[a:b] for a, b in self.comments[first:last]]

    def kept(self, start: int, end: int, indent: int, ours: set[int]) -> list[str]:
        """The comments of others in a stretch to be taken out, each as a line of its own."""
        first, last = bisect_left(self._starts, start), bisect_left(self._starts, end)
        inside = self.comments[first:last]
        return [" " * indent + self.text[a:b] for a, b in inside if a not in ours]
