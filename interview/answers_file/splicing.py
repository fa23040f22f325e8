"""Change single answers in a hand-edited text and leave every other byte alone."""

from __future__ import annotations

import re
from collections.abc import Mapping as TreeMapping
from collections.abc import Sequence as TreeList

from interview.answers_file import rendering
from interview.answers_file.layout import TextLayout
from interview.answers_file.nodes import Entry, Mapping, Part, Scalar, Sequence, compose, plain
from interview.answers_file.scalars import written
from interview.answers_file.tree import (
    END,
    FRAME_KEYS,
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

_COLON = re.compile(r"[ \t]*:")


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
        colon = _COLON.match(self.text, entry.key.end)
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
