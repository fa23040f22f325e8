"""A blank answers file: every question with how to answer it, to be filled in by hand or a script.

It reads back as a garden with nothing answered but what was preset: a line that is left empty is no
answer, so nothing here answers a question for anybody.
"""

from __future__ import annotations

import textwrap
from collections.abc import Iterator
from typing import Any

from interview import answers_file as af
from interview.asking import own_fault
from interview.asking.answers import Answers
from interview.asking.question import Group, Question
from interview.garden.path import SAFETY
from interview.garden.place import questions as start
from interview.garden.stages import STAGES, new_answers
from interview.reading import Refused
from interview.sheet.worksheet import usual

WIDTH = 80
LABELS_MOST = 12
"""Of more options than that only the names are listed; a choice of this project."""
HEAD = (
    "A blank answers file of the rain garden interview. Write each answer after its colon, as you "
    "would say it; leave empty what you do not know yet, and what does not apply. Write days and "
    "times in full, such as 2026-05-20 or 2026-05-20 10:15 -05:00. Put an answer that begins with "
    'a quotation mark, or holds a colon and a space, in "double quotes". Keep the names and the '
    "last line. To look for faults: rain-garden-interview --check FILE. To be asked for what is "
    "left: rain-garden-interview FILE"
)
LIST = "a list: all after the colon, separated by semicolons, or a line below with a dash for each"
ITEM = "Leave all of it empty where there is none; for another {}, copy from the dash on."


def blank_text(units: str | None, country: str | None, state: str | None, written_by: str) -> str:
    """Return a file with every question, answered where an answer is given here.

    A state brings its country and its units with it. Raises ``Refused`` where what is given is no
    answer, or does not go together.
    """
    answers = _preset(units, country, state)
    lines = [
        *_comment(HEAD, ""),
        f"format: {af.FORMAT}",
        f'format_version: "{af.VERSION[0]}.{af.VERSION[1]}"',
        f"written_by: {written_by}",
    ]
    for stage in STAGES:
        lines += ["", f"# {stage.letter}. {stage.title}", f"{stage.key}:"]
        for part in stage.parts:
            lines += _group(part, answers) if isinstance(part, Group) else _line(part, answers, 2)
    return "\n".join([*lines, "", f"{af.END}: true", ""])


def _preset(units: str | None, country: str | None, state: str | None) -> Answers:
    answers = new_answers()
    given = ((start.UNITS, units), (start.COUNTRY, country), (start.STATE, state))
    for question, words in given:
        if words is None:
            continue
        if not question.asks(answers):
            raise Refused("--state can be used only with --country us.")
        try:
            kept = question.take(words, answers).kept
        except Refused as refused:
            raise Refused(f"--{question.key}: {refused}") from None
        if kept == start.NOT_US:
            raise Refused("For a garden outside the US use --country, without --state.")
        answers = start.placed(answers, answers.with_text(question.key, kept))
    return answers


def _group(group: Group, answers: Answers) -> Iterator[str]:
    yield from _comment(f"For each {group.label}. {ITEM.format(group.label)}", "  ")
    yield f"  {group.key}:"
    yield "    -"
    for question in group:
        yield from _line(question, answers.at(group.key, 1), 6)


def _line(question: Question[Any], view: Answers, indent: int) -> Iterator[str]:
    """Yield the name of a question under what there is to say of it, and its answer, if any."""
    start = " " * indent
    try:
        told = list(_told(question.worded(view), view))
    except Exception as trouble:
        told = [own_fault.note(f"the question {question.key}", trouble)]
    for sentence in told:
        yield from _comment(sentence, start)
    yield f"{start}{question.key}: {view.text(question) or ''}".rstrip()


def _told(question: Question[Any], view: Answers) -> Iterator[str]:
    kind, options = question.kind, getattr(question.kind, "options", ())
    yield question.text
    hint = kind.hint(view.units)
    form = hint if kind.name in hint else f"{kind.name}; {hint}"
    limits = kind.limits(view.units)
    yield f"- {form}; {limits}" if limits else f"- {form}"
    if kind.many:
        yield f"- {LIST}"
    if len(options) <= LABELS_MOST:
        yield from (f"- {one}: {label}" for one, label in options if label.casefold() != one)
    if question.when != "always":
        yield f"- only where {view.told(question.when)}"
    if question.digs:
        yield "- only after the lines are located"
    if question.key in SAFETY:
        yield "- a safety question: nothing is assumed; see for yourself"
    elif unless := usual(question, view):
        yield f"- {unless}"
    if caution := question.caution_in(view):
        yield f"- CAUTION: {caution}"


def _comment(text: str, indent: str) -> list[str]:
    return textwrap.wrap(
        af.shown(" ".join(text.split())),
        WIDTH,
        initial_indent=f"{indent}# ",
        subsequent_indent=f"{indent}# {'  ' if text.startswith('- ') else ''}",
        break_long_words=False,
        break_on_hyphens=False,
    )
