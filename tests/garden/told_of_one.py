"""Everything that is told of one garden, and how its measures are read from the sheets."""

from __future__ import annotations

import html
import re
from collections.abc import Callable, Iterable, Iterator
from functools import cached_property
from itertools import pairwise
from typing import Any
from unittest.mock import patch

from interview.garden.figures import BY_KEY, found
from interview.garden.plan import Plan
from interview.sheet import report
from interview.sheet.card import card_text
from interview.sheet.figures_file import figures_text
from interview.sheet.page import page_html
from interview.sheet.report import outside_text, plan_text

Complaints = Iterator[str]
FOOT_M = 0.3048


class Told:
    """Everything that is told of one garden, each text made once."""

    def __init__(self, plan: Plan, whole: bool = True) -> None:
        self.plan = plan
        self.whole = whole
        """Whether the working is made too, which takes as long as all the rest."""
        self.metric = plan.metric

    @cached_property
    def numbers(self) -> dict[str, Any]:
        """Every figure that is known, bare, in the unit shown."""
        return {
            one.figure.key: one.number(self.metric)
            for one in found(self.plan)
            if one.waits_for is None and one.value is not None
        }

    @cached_property
    def feet(self) -> Callable[[str], float]:
        """A length among the figures in feet."""
        scale = {"in": 1 / 12, "ft": 1.0, "mm": 0.001 / FOOT_M, "m": 1 / FOOT_M}
        return lambda key: self.numbers[key] * scale[BY_KEY[key].unit(self.metric)]

    @cached_property
    def short(self) -> str:
        """The plain sheet, with what a stop keeps back, so that it is held too."""
        with patch.object(report, "stopped", return_value=False):
            return outside_text(self.plan)

    @cached_property
    def full(self) -> str:
        """The plain sheet with its working."""
        return plan_text(self.plan) if self.whole else self.short

    @cached_property
    def card(self) -> str:
        """The yard card."""
        return card_text(self.plan)

    @cached_property
    def page(self) -> str:
        """The printed sheet as HTML."""
        return page_html(self.plan)

    @cached_property
    def page_words(self) -> str:
        """Its words alone, those of its drawings too."""
        # These stand in the middle of a sentence.
        body = re.sub(r"</?(?:b|i|span)\b[^>]*>", "", self.page.split("</style>", 1)[1])
        return flat(html.unescape(re.sub(r"<[^>]*>", " ", body)))

    @cached_property
    def list_of_figures(self) -> str:
        """The list of figures."""
        return figures_text(self.plan)

    @property
    def texts(self) -> dict[str, str]:
        """The texts that a person reads, by name."""
        return {"sheet": self.short, "working": self.full, "card": self.card}

    def part(self, title: str, text: str | None = None) -> str:
        """A part of the sheet, without its heading; nothing where there is none."""
        lines = (self.full if text is None else text).splitlines()
        for at, line in enumerate(lines[:-1]):
            run_on = re.fullmatch(f"{re.escape(title)} -{{20,}}", line)
            if run_on or (line == title and lines[at + 1] == "-" * len(title)):
                rest = lines[at + (1 if run_on else 2) :]
                ends = [n for n, (a, b) in enumerate(pairwise(rest)) if _heading(a, b)]
                return "\n".join(rest[: ends[0]] if ends else rest)
        return ""

    def without(self, titles: Iterable[str], text: str) -> str:
        """A sheet without some of its parts."""
        for title in titles:
            part = self.part(title, text)
            text = text.replace(part, "") if part else text
        return text


def _heading(line: str, under: str) -> bool:
    run_on = re.fullmatch(r"[A-Z, ]+ -{20,}", line)
    return bool(run_on) or (bool(line) and under == "-" * len(line)) or line.startswith("=====")


def flat(text: str) -> str:
    """A text on one line."""
    return " ".join(text.split())


def near(one: float, two: float, part: float = 1e-6, by: float = 1e-6) -> bool:
    """Whether two numbers are the same but for rounding."""
    return abs(one - two) <= max(by, part * max(abs(one), abs(two)))


_LENGTH = re.compile(r"(-?)(?:([\d.]+) ft)? ?(?:(?:([\d.]+) )?(\d)/(\d) in|([\d.]+) in)?$")


def feet_of(words: str) -> float:
    """A length as the sheets write it, in feet."""
    words = words.strip()
    if words.endswith(" mm"):
        return float(words[:-3]) / 1000 / FOOT_M
    if words.endswith(" m"):
        return float(words[:-2]) / FOOT_M
    at = _LENGTH.match(words)
    assert at and words, words
    sign, ft, whole, top, low, inches = at.groups()
    more = float(inches or 0) + float(whole or 0) + (int(top) / int(low) if top else 0.0)
    return (-1 if sign else 1) * (float(ft or 0) + more / 12)


def rounded(metric: bool, feet: float) -> float:
    """How far off a length may be as written: half an inch at the most, or three digits."""
    return max(0.0165, 0.006 * abs(feet)) if metric else 0.0215
