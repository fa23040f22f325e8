"""How the answers stand in their file: under which names, in what order, with which comments."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from types import MappingProxyType
from typing import Any

from interview import answers_file as af
from interview.answers_file import Node, Tree
from interview.asking.answers import Answers
from interview.asking.kinds import Note, Several, Ticks, list_lines
from interview.asking.question import Group, Question
from interview.garden.stages import QUESTIONS, STAGE_OF, STAGES
from interview.reading import is_unknown

STOPPED_AT = "stopped_at"
USUAL_TAKEN = "usual_taken"
"""Under this name stand the pages whose usual values were taken whole."""
HALF_TYPED = "half_typed"
"""Under this name stands what was typed and not yet taken as an answer, by address."""
BESIDE = (*af.FRAME_KEYS, STOPPED_AT, USUAL_TAKEN, HALF_TYPED)
"""Names at the top of a file that are no stage."""
HEAD = (
    "Answers of a rain garden interview. You may edit this file by hand: change what stands after "
    "a colon, keep the names before it, and keep the last line. Anything you add is kept. To look "
    "for faults: rain-garden-interview --check THIS_FILE"
)
USUAL_TAKEN_HEAD = "Pages whose usual values were taken as they stand: see the plan for them."
HALF_TYPED_HEAD = (
    "Typed and not yet taken as answers: it comes back into the field of its question."
)


def _written_order() -> Iterator[str]:
    """Yield the name of every stage, question and group in the order of the interview."""
    for stage in STAGES:
        yield stage.key
        for part in stage.parts:
            yield part.key
            if isinstance(part, Group):
                yield from (question.key for question in part)


_ORDER: dict[str, int] = {name: place for place, name in enumerate(_written_order())}


def order(path: tuple[str | int, ...]) -> tuple[int, int]:
    """Return where a key belongs among its neighbours; unknown keys come last."""
    name = path[-1]
    if name == af.END:
        return (3, 0)
    if len(path) == 1 and name in BESIDE:
        return (0, max(0, BESIDE.index(str(name)) - len(af.FRAME_KEYS) + 1))
    return (1, _ORDER[str(name)]) if name in _ORDER else (2, 0)


def notes(path: tuple[str | int, ...]) -> str:
    """Return the comment that stands over a key of the file."""
    if not path:
        return HEAD
    name = str(path[-1])
    if len(path) == 1:
        if name == HALF_TYPED:
            return HALF_TYPED_HEAD
        if name == USUAL_TAKEN:
            return USUAL_TAKEN_HEAD
        stage = next((one for one in STAGES if one.key == name), None)
        return f"{stage.letter}. {stage.title}" if stage else ""
    question = QUESTIONS.get(name) if isinstance(path[-1], str) else None
    return question.text if question else ""


def tree_of(
    answers: Answers,
    base: Tree,
    known: set[str],
    stopped_at: str,
    drafts: Mapping[str, str] = MappingProxyType({}),
    taken: Sequence[str] = (),
) -> Tree:
    """Return ``base`` with every answer put where it belongs, and ``drafts`` beside them.

    ``taken`` are the pages whose usual values were taken; anything strange among them stays.

    ``known`` are the addresses that were answers before; those gone from ``answers`` are taken
    out. Whatever else ``base`` holds stays.
    """
    tree: Tree = _copy(base)  # type: ignore[assignment]
    for address in known - set(answers.texts):
        _take_out(tree, address)
    for address, text in answers.texts.items():
        _put(tree, address, text)
    if stopped_at:
        tree[STOPPED_AT] = stopped_at
    _put_taken(tree, taken)
    _put_drafts(tree, drafts)
    return _ordered(tree)


def _put_taken(tree: Tree, taken: Sequence[str]) -> None:
    there = tree.get(USUAL_TAKEN, [])
    if not isinstance(there, list):
        return
    new: list[Node] = [*taken, *(one for one in there if not isinstance(one, str))]
    if new:
        tree[USUAL_TAKEN] = new
    else:
        tree.pop(USUAL_TAKEN, None)


def _put_drafts(tree: Tree, drafts: Mapping[str, str]) -> None:
    """Put what is half typed in the place of what was; anything strange there stays."""
    there = tree.get(HALF_TYPED, {})
    if not isinstance(there, dict):
        return
    new: Tree = {a: node for a, node in there.items() if text_of(node) is None}
    for address, text in drafts.items():
        lines: Node = list(text.split("\n"))
        new[address] = lines if "\n" in text else text
    tree.pop(HALF_TYPED, None)
    if new:
        tree[HALF_TYPED] = new


def _copy(node: Node) -> Node:
    if isinstance(node, dict):
        return {key: _copy(value) for key, value in node.items()}
    return [_copy(one) for one in node] if isinstance(node, list) else node


def _ordered(tree: Tree) -> Tree:
    """Return a tree with known keys in the written order, for a whole rewrite."""

    def sort(node: Node, path: tuple[str | int, ...]) -> Node:
        if isinstance(node, dict):
            keys = sorted(node, key=lambda key: order((*path, key)))
            return {key: sort(node[key], (*path, key)) for key in keys}
        if isinstance(node, list):
            return [sort(one, (*path, place)) for place, one in enumerate(node)]
        return node

    ordered = sort(tree, ())
    assert isinstance(ordered, dict)
    return ordered


def _place(address: str) -> tuple[str, str, int, str]:
    """Return stage key, group key, item number and question key of an address."""
    parts = address.split(".")
    if len(parts) == 1:
        return STAGE_OF[parts[0]].key, "", 0, parts[0]
    return STAGE_OF[parts[0]].key, parts[0], int(parts[1]), parts[2]


def _put(tree: Tree, address: str, text: str) -> None:
    stage, group, number, key = _place(address)
    section = tree.get(stage)
    if not isinstance(section, dict):
        section = {}
        tree[stage] = section
    if group:
        items = section.get(group)
        if not isinstance(items, list):
            items = []
            section[group] = items
        while len(items) < number:
            items.append({})
        item = items[number - 1]
        if not isinstance(item, dict):
            item = {}
            items[number - 1] = item
        section = item
    question = QUESTIONS[key]
    many = question.kind.many and text.strip().lower() != "none"
    lines = text.splitlines() if many and len(list_lines(text)) else []
    new: Node = list(lines) if lines and not is_unknown(text) else text
    old = section.get(key)
    there = None if old is None else answer_of(question, old)
    if there is not None and question.kind.many and not _lists_names(question):
        # Parted otherwise by hand, its items are on lines in the answers: it stays as it is.
        there, text = re.sub(_PARTED, "\n", there), re.sub(_PARTED, "\n", text)
    if there != text:
        section[key] = new


_PARTED = r"\s*(?:\n|;|,\s)\s*"
"""What parts the items of a list that is written on one line."""


def answer_of(question: Question[Any], node: Node) -> str | None:
    """Return the words of an answer as it stands in a file; nothing where it can be none.

    A list stands for its items on lines, or for words parted by commas where several are chosen.
    The items of an item are parted by commas, as the sides of a piece are. Where one answer is
    wanted, a list may hold just that.
    """
    if isinstance(node, str):
        # Any words are a name: only here can it be told that they are several.
        return re.sub(_PARTED, "\n", node.strip()) if _lists_names(question) else node
    if isinstance(node, dict):
        return None
    if not question.kind.many and not isinstance(question.kind, Ticks):
        return text_of(node) if len(node) == 1 else None
    within = [text_of(one, ", ") for one in node]
    parts = "\n" if question.kind.many else ", "
    return None if None in within else parts.join(one for one in within if one)


def _lists_names(question: Question[Any]) -> bool:
    return isinstance(question.kind, Several) and isinstance(question.kind.each, Note)


def text_of(node: Node, parts: str = "\n") -> str | None:
    """Return the words of a scalar or of a list of scalars."""
    if isinstance(node, str):
        return node
    if isinstance(node, list) and all(isinstance(one, str) for one in node):
        return parts.join(str(one) for one in node)
    return None


def _take_out(tree: Tree, address: str) -> None:
    stage, group, number, key = _place(address)
    section = tree.get(stage)
    if not isinstance(section, dict):
        return
    if not group:
        section.pop(key, None)
        return
    items = section.get(group)
    if isinstance(items, list) and len(items) >= number:
        item = items[number - 1]
        if isinstance(item, dict):
            item.pop(key, None)
        while items and items[-1] == {}:
            items.pop()
        if not items:
            section.pop(group)
