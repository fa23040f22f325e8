"""The blank worksheet: every question in order, to print and take along."""

from __future__ import annotations

import textwrap
from typing import Any

from interview.asking import own_fault
from interview.asking.question import Question
from interview.garden.stages import STAGES
from interview.garden.summary import wrap


def worksheet() -> str:
    """Return the blank worksheet: every question in order."""
    lines = []
    for stage in STAGES:
        lines += ["", f"{stage.letter}. {stage.title}", "=" * (len(stage.title) + 3)]
        lines += wrap(stage.intro)
        for question in stage.questions():
            try:
                lines += _asked(question)
            except Exception as trouble:
                lines += ["", *wrap(own_fault.note(f"the question {question.key}", trouble))]
    return "\n".join(lines).strip() + "\n"


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
    if question.digs:
        lines.append("  only after the lines are located")
    if question.caution:
        lines += wrap(f"  CAUTION: {question.caution}", "    ")
    return [*lines, "  answer: ________________"]
