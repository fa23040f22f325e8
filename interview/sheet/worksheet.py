"""The blank worksheet: every question in the order of asking, to print and take along."""

from __future__ import annotations

import textwrap
from typing import Any

from interview.asking import own_fault
from interview.asking.answers import Answers
from interview.asking.path import PathPage
from interview.asking.question import Question
from interview.garden.path import OFF_PATH, OPTIONAL, PATH, SAFETY
from interview.garden.stages import QUESTIONS, STAGES, new_answers
from interview.garden.summary import wrap


def worksheet() -> str:
    """Return the blank worksheet: every page in order, with what is usual on it."""
    lines, visit = list[str](), ""
    for page in PATH:
        if page.visit != visit:
            visit = page.visit
            title = f"{visit.capitalize()}"
            lines += ["", title, "=" * len(title)]
        lines += _page(page)
    lines += ["", "On no page", "=" * 10]
    for key, reason in OFF_PATH.items():
        lines += [*_question(key), *wrap(f"  left off: {reason}", "    ")]
    return "\n".join(lines).strip() + "\n"


def _page(page: PathPage) -> list[str]:
    if not page.keys:
        return []
    stage = next(one for one in STAGES if one.key == page.stage)
    lines = ["", f"{page.title} ({stage.key})", "-" * (len(page.title) + len(stage.key) + 3)]
    for key in page.asked:
        lines += _question(key)
    for key in page.usual + page.more:
        lines += [*_question(key), *_usual(key)]
    return lines


def _usual(key: str) -> list[str]:
    """Say what is taken unless the row is changed, in a US garden about which nothing is known."""
    question = QUESTIONS[key]
    view = new_answers().at(question.group, 1) if question.group else new_answers()
    return [f"  {usual(question, view) or 'usual: by the other answers'}"]


def usual(question: Question[Any], view: Answers) -> str:
    """Say what is taken without an answer; nothing where that is nothing yet."""
    if found := question.default(view):
        return f"usual: {found}"
    return "may be skipped" if question.key in OPTIONAL else ""


def _question(key: str) -> list[str]:
    try:
        return _asked(QUESTIONS[key])
    except Exception as trouble:
        return ["", *wrap(own_fault.note(f"the question {key}", trouble))]


def _asked(question: Question[Any]) -> list[str]:
    group = f" (for each of: {question.group})" if question.group else ""
    lines = ["", f"{question.key}{group}", *wrap(f"  {question.text}", "  ")]
    lines += wrap(f"  kind: {question.kind.name}; {question.kind.hint('us')}", "    ")
    if limits := question.kind.limits("us"):
        lines += wrap(f"  limits: {limits} (metric: {question.kind.limits('metric')})", "    ")
    for one, label in getattr(question.kind, "options", ()):
        lines += wrap(f"    {one}: {label}", "      ")
    lines += wrap(f"  asked: {question.when}", "    ")
    if question.picture:
        lines += textwrap.indent(question.picture, "    ").splitlines()
    if question.key in SAFETY:
        lines.append("  a safety question: never assumed, always asked")
    if question.digs:
        lines.append("  only after the lines are located")
    if question.caution:
        lines += wrap(f"  CAUTION: {question.caution}", "    ")
    return [*lines, "  answer: ________________"]
