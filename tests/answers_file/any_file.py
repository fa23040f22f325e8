"""Answers files, rainfall files and plant files damaged by seeded chance, and what is read of them.

``test_parse.py`` damages the bytes of a small file; here whole gardens are damaged: their values,
their keys, their shape, what YAML can hide, and the files that they name.
"""

from __future__ import annotations

import codecs
import json
import random
from collections.abc import Iterator
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import yaml

from interview.answers_file import Unreadable, parse
from interview.garden import store
from interview.garden.figures import found
from interview.garden.opening import plan_of
from interview.garden.stages import QUESTIONS
from interview.sheet.card import card_text
from interview.sheet.check import check_text, faults_beside
from interview.sheet.figures_file import figures_text
from interview.sheet.page import card_html, page_html
from interview.sheet.report import outside_text, plan_text

HOSTILE = (
    "", " ", "?", "-", "0", "-1", "1/0", "0/0", "1e9999", "-1e309", "nan", "inf", "9" * 400,
    "1" + "0" * 300 + " ft", "0.0000001 in", "1e-300 in", "99999 ft", "1 ft 13 in", "8 in in",
    "12' 9\"", "½ in", "१२ ft", "1,5 m", "1.000.000", "0x10", "1_0", "don't know yet", "no", "yes",
    "null", "~", "true", "2026-02-30", "0000-00-00", "9999-12-31", "2026-05-27T10:00:00+99:99",
    "<script>alert(1)</script>", "\"><img src=x onerror=alert(1)>", "&amp;&lt;", "]]>", "{{7*7}}",
    "\x1b[2J", "\u202egnp", "\u200b", "🌧" * 60, "é" * 900, "x" * 9_999, "a\nb\n\n# c", "- a: b",
    "../../etc/passwd", "/dev/zero", "/dev/stdin", "=1+1", "%s%n", "C:\\x",
    "rectangle 1 ft by 1 ft", "circle across 1e400 ft", "+99999999 min left 8 in", "now",
    "tomorrow", "struck +5 min left 1 in",
)  # fmt: skip
"""What no question expects, or expects elsewhere."""
LINES = (
    b"a: &x [*x, *x]\n", b"<<: {a: b}\n", b"? [a]\n: b\n", b"--- !!python/object:os.system\n",
    b"%YAML 9.9\n", b"  " * 600 + b"a: b\n", b"[" * 3_000 + b"\n", b"{a: " * 500 + b"\n",
    b"a: &a [x,x]\nb: &b [*a,*a]\nc: &c [*b,*b]\nd: [*c,*c]\n", b"'", b"\"\\x", b"|+\n", b"\t- a\n",
    b"\xff\xfe", b"\x00" * 40, b"k: " + b"v" * 20_000 + b"\n", b"- " * 400 + b"a\n", b"... \n---\n",
    b"a: b\r", b"\xc2\x85", b"# " + b"\xe9\n", b"<<<<<<< HEAD\n", b"a" * 200 + b": b\n",
)  # fmt: skip
"""Lines that YAML gives another meaning, or none."""
TABLES = ("invented_rain.csv", "own_plants.csv")
"""The files beside it that a sample names."""
CODINGS = ("utf-16", "utf-16-le", "utf-32", "utf-7", "latin-1", "cp037", "utf-8-sig", "shift_jis")


class Damage:
    """Damages files by a seeded stream."""

    def __init__(self, seed: int) -> None:
        self.rng = random.Random(f"file {seed}")

    def answers(self, data: bytes) -> bytes:
        """Damage an answers file: mostly what it holds, else its lines, its bytes or its coding."""
        way = self.rng.choice((self._tree,) * 5 + (self._lines,) * 3 + (self._bytes,) * 2)
        data = way(data)
        return self._coded(data) if self.rng.random() < 0.03 else data

    def table(self, data: bytes) -> bytes:
        """Damage a rainfall file or a plant file."""
        rng, rows = self.rng, data.split(b"\n")
        for _ in range(rng.randint(1, 6)):
            at = rng.randrange(len(rows))
            cells = rows[at].split(b",")
            place = rng.randrange(len(cells))
            cells[place] = rng.choice(HOSTILE).encode("utf-8", "replace")
            rows[at] = rng.choice((b",", b",", b";", b"\t")).join(cells)
            if rng.random() < 0.2:
                rows.insert(at, rng.choice((b"", b'"', b"," * 5_000, b"\x00", rows[0], rows[-1])))
            if rng.random() < 0.1:
                del rows[: rng.randint(1, 3)]
                rows = rows or [b""]
        data = b"\n".join(rows)
        return self._coded(data) if rng.random() < 0.1 else data

    def _coded(self, data: bytes) -> bytes:
        return codecs.encode(data.decode("utf-8", "replace"), self.rng.choice(CODINGS), "replace")

    def _bytes(self, data: bytes) -> bytes:
        rng = self.rng
        for _ in range(rng.randint(1, 30)):
            at = rng.randrange(len(data) + 1)
            data = rng.choice(
                (
                    data[:at] + bytes([rng.randrange(256)]) + data[at + 1 :],
                    data[:at] + data[at + rng.randint(1, 300) :],
                    data[:at] + data[at : at + rng.randint(1, 300)] + data[at:],
                )
            )
        return data[: rng.randrange(len(data) + 1)] if rng.random() < 0.1 else data

    def _lines(self, data: bytes) -> bytes:
        rng, lines = self.rng, data.splitlines(keepends=True)
        for _ in range(rng.randint(1, 5)):
            at = rng.randrange(len(lines))
            case = rng.randrange(5)
            if case == 0:
                lines.insert(at, rng.choice(LINES))
            elif case == 1:
                lines[at] = lines[rng.randrange(len(lines))]
            elif case == 2:
                lines[at] = b" " * rng.randint(1, 5) + lines[at].lstrip()
            elif case == 3:
                lines[at:at] = [lines[at]] * rng.choice((1, 2, 300))
            elif len(lines) > 1:
                del lines[at]
        return b"".join(lines)

    def _tree(self, data: bytes) -> bytes:
        rng, tree = self.rng, yaml.load(data, Loader=yaml.CSafeLoader)
        for _ in range(rng.choice((1, 1, 2, 4, 12))):
            self._one(tree)
        form = rng.random()
        if form < 0.1:
            return json.dumps(tree).encode()
        flow = True if form < 0.2 else None
        text = yaml.dump(
            tree, Dumper=yaml.CSafeDumper, allow_unicode=form < 0.6, default_flow_style=flow
        )
        return text.encode()

    def _one(self, tree: Any) -> None:
        rng = self.rng
        spots = list(_places(tree))
        inside, key = rng.choice(spots)
        value = inside[key]
        case = rng.randrange(9)
        if case < 4:
            inside[key] = rng.choice(HOSTILE).replace("\x1b", "^")
        elif case == 4:
            other, there = rng.choice(spots)
            inside[key], other[there] = other[there], value
        elif case == 5:
            inside[key] = rng.choice(([value], {"a": value}, [], {}, None, 7, True, 1.5, [[value]]))
        elif case == 6 and isinstance(inside, dict):
            inside[rng.choice((*QUESTIONS, "kye", "0", "é", "a b"))] = inside.pop(key)
        elif case == 7 and isinstance(inside, list):
            inside.extend([value] * rng.choice((1, 3, 60)))
        else:
            deep: Any = value
            for _ in range(rng.choice((1, 5, 11, 40))):
                deep = [deep] if rng.random() < 0.5 else {"a": deep}
            inside[key] = deep


def _places(node: Any, depth: int = 0) -> Iterator[tuple[Any, Any]]:
    """Yield each place of a tree, as what holds it and its key there; no frame of the file."""
    if depth > 6:
        return
    for key in list(node if isinstance(node, dict) else range(len(node))):
        if depth or key not in ("format", "format_version", "end_of_answers"):
            yield node, key
        if isinstance(node[key], (dict, list)):
            yield from _places(node[key], depth + 1)


def read(data: bytes) -> store.Loaded | None:
    """Read a file and list what is wrong, as ``--check`` does; nothing where it is refused."""
    try:
        loaded = store.interpret(parse(data))
    except Unreadable as refused:
        assert refused.sentence.isprintable() and refused.line >= 0
        return None
    said = check_text("some.yaml", loaded)
    assert all(line.isprintable() for line in said.splitlines())
    return loaded


def tell(loaded: store.Loaded, folder: Path, now: Any, page: Page) -> None:
    """Make every sheet of it; the printed ones hold no other markup than those of a sound file."""
    plan = plan_of(loaded.answers, folder, now)
    list(found(plan))
    faults_beside(plan)
    yaml.load(figures_text(plan), Loader=yaml.CSafeLoader)
    for text in (plan_text(plan), outside_text(plan), card_text(plan)):
        assert all(line.isprintable() for line in text.splitlines())
    for text in (page_html(plan), card_html(plan)):
        strange = page.strange(text)
        assert not strange, strange


class Page(HTMLParser):
    """Learns the tags and attributes of sound pages, and names what others hold besides."""

    def __init__(self) -> None:
        super().__init__()
        # No sample has a name so long that it is set smaller, nor a zone that no plant suits.
        self.known: set[tuple[str, str]] = {("h1", "class"), ("td", "colspan")}
        self.seen: set[tuple[str, str]] = set()
        self.open: list[str] = []

    def learn(self, text: str) -> None:
        """Take a page as sound."""
        self.known |= self._of(text)

    def strange(self, text: str) -> set[tuple[str, str]]:
        """Return the tags and attributes that no sound page has."""
        return self._of(text) - self.known

    def _of(self, text: str) -> set[tuple[str, str]]:
        self.reset()
        self.seen, self.open = set(), []
        self.feed(text)
        self.close()
        assert not self.open, self.open
        return self.seen

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen |= {(tag, name) for name, _ in attrs} | {(tag, "")}
        for name, value in attrs:
            assert not name.startswith("on"), (tag, name)
            assert not (value or "").lower().lstrip().startswith(("javascript:", "http")), value
        if tag not in ("meta", "br"):
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.seen |= {(tag, name) for name, _ in attrs} | {(tag, "")}

    def handle_endtag(self, tag: str) -> None:
        assert self.open and self.open.pop() == tag, tag

    def handle_comment(self, data: str) -> None:
        self.seen.add(("!--", data))

    def handle_pi(self, data: str) -> None:
        self.seen.add(("?", data))
