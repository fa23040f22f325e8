"""Change single answers in a hand-edited text and leave every other byte alone.

First where things stand in a text: its lines, and which comments are the program's own.
"""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Mapping as TreeMapping
from collections.abc import Sequence as TreeList

from interview.answers_file import rendering
from interview.answers_file.nodes import (
    Entry,
    Mapping,
    Part,
    Scalar,
    Sequence,
    compose,
    plain,
    scalars,
)
from interview.answers_file.rendering import comment, written
from interview.answers_file.tree import (
    END,
    FRAME_KEYS,
    LINE_END,
    Node,
    Notes,
    Order,
    Path,
    Tree,
    Unreadable,
    Unwritable,
    framed,
    normal,
)

_COMMENT = r"(?<![^\s])#[^\r\n]*"
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
            found += [
                m.span() for m in re.compile(_COMMENT).finditer(self.text, done, scalar.start)
            ]
            done = max(done, scalar.end)
            if scalar.style in ("|", ">"):
                found += [
                    m.span()
                    for m in re.compile(_COMMENT).finditer(
                        self.text, scalar.start, self._line_stop(scalar.start)
                    )
                ]
        return found + [m.span() for m in re.compile(_COMMENT).finditer(self.text, done)]

    def line_start(self, index: int) -> int:
        """The start of the line that holds the index."""
        return max(self.text.rfind("\n", 0, index), self.text.rfind("\r", 0, index)) + 1

    def _line_stop(self, index: int) -> int:
        found = re.compile(LINE_END).search(self.text, index)
        return found.start() if found else len(self.text)

    def next_line(self, index: int) -> int:
        """The start of the line after the one that holds the index."""
        found = re.compile(LINE_END).search(self.text, index)
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


_COLON = r"[ \t]*:"


class CannotSplice(Exception):
    """The text is laid out in a way that cannot be edited in place; write it whole instead."""


def splice(
    text: str, tree: TreeMapping[str, Node], notes: Notes, order: Order | None = None
) -> str:
    """The text edited so that it reads as the tree.

    Comments, order, quotes, line ends and unknown keys outside the changed answers stay as they
    are; of what is taken out, only comments equal to ``notes`` go. A new key is put after the
    nearest one before it by ``order`` of their paths (without one, by the tree's own order).
    The result has been read back. Raises CannotSplice, or Unwritable as ``render`` does.
    """
    try:
        root = compose(text)
        if not isinstance(root, Mapping):
            raise CannotSplice("The text is not a mapping.")
        old = plain(root)
        assert isinstance(old, dict)
        wanted = framed({key: old[key] for key in FRAME_KEYS if key in old} | dict(tree))
        end = _ends_well(text)
        edited = _Splicer(text + end, notes, order).edited(root, wanted)
        edited = edited.removesuffix(end) if end else edited
        rendering.check(edited, wanted)
    except (Unreadable, IndexError) as error:
        raise CannotSplice(str(error)) from error
    except Unwritable as error:
        rendering.render(tree, notes)  # raises the same if the answers themselves are at fault
        raise CannotSplice(str(error)) from error
    return edited


def _ends_well(text: str) -> str:
    return "" if text.endswith(("\n", "\r")) else TextLayout.line_end(text)


class _Splicer:
    def __init__(self, text: str, notes: Notes, order: Order | None) -> None:
        self.text = text
        self.notes = notes
        self.order = order
        self.edits: list[tuple[int, int, str]] = []

    def edited(self, root: Mapping, wanted: Tree) -> str:
        self.layout = TextLayout(self.text, root, self.notes)
        self.mapping(root, wanted, ())
        out, done = [], 0
        # at one place insertions go first: they belong to the key above
        for start, end, new in sorted(self.edits, key=lambda edit: (edit[0], edit[1] > edit[0])):
            if start < done:
                raise CannotSplice("Two changes meet.")
            out += [self.text[done:start], new]
            done = end
        return "".join([*out, self.text[done:]])

    def put(self, start: int, end: int, new: str) -> None:
        self.edits.append((start, end, new))

    def lines(self, lines: TreeList[str]) -> str:
        return "".join(line + self.layout.newline for line in lines)

    def mapping(self, node: Mapping, wanted: Tree, path: Path) -> None:
        kept: dict[str, Entry] = {}
        for entry in node.entries:
            key, value = entry.key.text, entry.value
            here = (*path, key)
            if key in wanted:
                kept[key] = entry
                if normal(plain(value)) != wanted[key]:
                    self.value(entry, wanted[key], here, node.flow)
            elif normal(plain(value)):  # a key left empty by hand says the same as no key
                if node.flow:
                    raise CannotSplice("A key in braces cannot be taken out.")
                self.delete(entry, here)
        for key in wanted:
            if key not in kept:
                if node.flow:
                    raise CannotSplice("A key cannot be put between braces.")
                at = self.place(node, kept, (*path, key), list(wanted))
                new = rendering.entry(key, wanted[key], (*path, key), node.column - 1, self.notes)
                self.put(at, at, self.lines(new))

    def place(self, node: Mapping, kept: dict[str, Entry], new: Path, keys: list[str]) -> int:
        """Where a new key goes: after the nearest key before it, else at the mapping's end."""

        def rank(key: str) -> object:
            return self.order((*new[:-1], key)) if self.order else keys.index(key)

        key = str(new[-1])
        before = [
            other
            for other in kept
            if (other, len(new)) != (END, 1) and rank(other) < rank(key)  # type: ignore[operator]
        ]
        if (key, len(new)) == (END, 1):
            before = []
        if before:
            # the latest added of equals is the last in the file
            nearest = max(before, key=lambda other: (rank(other), kept[other].key.start))
            return self.layout.after(kept[nearest].value)
        if len(new) == 1 and END in kept:
            return self.layout.entry_start(kept[END], (END,))
        return self.layout.after(node.entries[-1].value)

    def value(self, entry: Entry, new: Node, path: Path, flow: bool) -> None:
        old = entry.value
        if isinstance(old, Scalar) and isinstance(new, str):
            self.scalar(old, "true" if path == (END,) else new, bare=path == (END,))
        elif isinstance(old, Mapping) and isinstance(new, dict) and _fits(old, new):
            self.mapping(old, new, path)
        elif isinstance(old, Sequence) and isinstance(new, list) and _fits(old, new):
            self.sequence(old, new, path)
        elif flow:
            raise CannotSplice("A list cannot be put between braces.")
        else:
            self.rewrite(entry, new, path)

    def scalar(self, old: Scalar, new: str, *, bare: bool = False) -> None:
        text = new if bare else written(new, quoted=old.style in ("'", '"') and bool(old.style))
        if old.start == old.end:
            text = " " + text
        if old.style in ("|", ">"):
            header = "".join("  " + said for said in self.layout.said(old.start, old.end))
            text += header + self.layout.newline
        self.put(old.start, old.end, text)

    def rewrite(self, entry: Entry, new: Node, path: Path) -> None:
        """Another kind of value under the same key: its lines anew, comments of others kept."""
        colon = re.compile(_COLON).match(self.text, entry.key.end)
        if not colon:
            raise CannotSplice("A key without its colon.")
        indent = entry.key.column + 1
        ours = self.layout.ours_within(entry.value, path)
        kept = self.layout.kept(colon.end(), self.layout.after(entry.value), indent, ours)
        first = f" {written(new)}" if isinstance(new, str) else ""
        block = [] if isinstance(new, str) else rendering.block(new, path, indent, self.notes)
        text = first + self.layout.newline + self.lines([*kept, *block])
        self.put(colon.end(), self.layout.after(entry.value), text)

    def delete(self, entry: Entry, path: Path) -> None:
        for start, end in self.layout.own_comment(entry, path):
            self.put(*self.layout.whole_line(start, end), "")
        ours = self.layout.ours_within(entry.value, path)
        start, end = entry.key.start, self.layout.after(entry.value)
        kept = self.lines(self.layout.kept(start, end, entry.key.column - 1, ours))
        line = self.layout.line_start(start)
        before = self.text[line:start]
        if before.strip():  # the key stands on the line of a dash, which stays
            self.put(line + len(before.rstrip()), end, self.layout.newline + kept)
        else:
            self.put(line, end, kept)

    def sequence(self, node: Sequence, wanted: list[Node], path: Path) -> None:
        old = [normal(plain(item)) for item in node.items]
        shortest = min(len(old), len(wanted))
        head = next((i for i in range(shortest) if old[i] != wanted[i]), shortest)
        tail = 0
        while tail < shortest - head and old[-1 - tail] == wanted[-1 - tail]:
            tail += 1
        pairs = shortest - tail
        for index in range(head, pairs):
            self.item(node, index, wanted[index], path)
        for index in range(pairs, len(old) - tail):
            self.replace_item(node, index, [], path)
        new = [
            line
            for index in range(pairs, len(wanted) - tail)
            for line in rendering.item(wanted[index], (*path, index), node.column - 1, self.notes)
        ]
        if new:
            start = self.layout.line_start(self.layout.dash(node, 0))
            at = self.layout.after(node.items[pairs - 1]) if pairs else start
            self.put(at, at, self.lines(new))

    def item(self, node: Sequence, index: int, new: Node, path: Path) -> None:
        old, here = node.items[index], (*path, index)
        if isinstance(old, Scalar) and isinstance(new, str):
            self.scalar(old, new)
        elif isinstance(old, Mapping) and isinstance(new, dict) and new and _fits(old, new):
            self.mapping(old, new, here)
        elif isinstance(old, Sequence) and isinstance(new, list) and self.alone(old, new):
            self.sequence(old, new, here)
        else:
            lines = rendering.item(new, here, node.column - 1, lambda at: self.item_notes(at, here))
            self.replace_item(node, index, lines, path)

    def alone(self, old: Sequence, new: list[Node]) -> bool:
        """Whether a list inside a list can be edited: its first dash has a line of its own."""
        before = self.text[self.layout.line_start(old.start) : old.start]
        return bool(new) and _fits(old, new) and not before.strip()

    def item_notes(self, at: Path, item: Path) -> str:
        return "" if at == item else self.notes(at)

    def replace_item(self, node: Sequence, index: int, new: list[str], path: Path) -> None:
        old: Part = node.items[index]
        dash, end = self.layout.dash(node, index), self.layout.after(old)
        start = self.layout.line_start(dash)
        if self.text[start:dash].strip():
            raise CannotSplice("A list inside the line of another list.")
        ours = self.layout.ours_within(old, (*path, index))
        kept = self.layout.kept(dash, end, node.column - 1, ours)
        self.put(start, end, self.lines([*kept, *new]))


def _fits(old: Part, new: Node) -> bool:
    """Whether a part in braces or brackets differs from the new value only in single texts;
    a part on lines of its own always fits."""
    if isinstance(old, Scalar):
        return isinstance(new, str)
    if not old.flow:
        return bool(old.entries if isinstance(old, Mapping) else old.items)
    if isinstance(old, Mapping):
        if not isinstance(new, dict) or {entry.key.text for entry in old.entries} != new.keys():
            return False
        return all(_fits(entry.value, new[entry.key.text]) for entry in old.entries)
    if not isinstance(new, list) or len(old.items) != len(new):
        return False
    return all(_fits(item, one) for item, one in zip(old.items, new, strict=True))
