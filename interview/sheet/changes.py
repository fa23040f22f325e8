"""Two gardens beside each other: which answers differ, and which figures follow, by how much."""

from __future__ import annotations

import difflib
import math
from collections.abc import Iterator
from typing import Any

from interview.asking import own_fault
from interview.asking.answers import Answers
from interview.asking.figure import Found
from interview.asking.kinds import list_lines
from interview.asking.question import UNKNOWN_TEXT
from interview.garden.figures import FIGURES, find
from interview.garden.opening import ReadGarden
from interview.garden.plan import Plan
from interview.quantities.units import magnitude, unit_name
from interview.reading import is_unknown
from interview.reading.foreign import shown
from interview.sheet.figures_file import exact


def changes_text(before: ReadGarden, after: ReadGarden) -> str:
    """Return the answers that differ and the figures that do; nothing where none does.

    Figures are told unrounded, in the units of the first garden; two are alike where
    ``--figures`` would write them alike.
    """
    parts = (
        ("ANSWERS", _answers(before.loaded.answers, after.loaded.answers)),
        ("FIGURES", _figures(before.plan, after.plan)),
    )
    lines = []
    for title, found in parts:
        told = [f"  {line}" for line in found]
        lines += [title, *told] if told else []
    return "".join(f"{shown(line)}\n" for line in lines)


def _answers(before: Answers, after: Answers) -> Iterator[str]:
    """Yield each answer that differs; of a list the lines that only one of the two holds.

    Words that are read as the same value are alike.
    """
    for address in dict.fromkeys((*before.texts, *after.texts)):
        old, new = before.texts.get(address), after.texts.get(address)
        was, now = _meaning(before, address), _meaning(after, address)
        if old == new or _same(was, now):
            continue
        if "\n" not in f"{old}{new}":
            yield f"{address}: {_words(old)} -> {_words(new)}"
            continue
        yield f"{address}:"
        gone, come = (list_lines(text or "") for text in (old, new))
        if isinstance(was, tuple) and isinstance(now, tuple):
            told = list(zip(was, gone, strict=True))
            for place, value in enumerate(now):
                come[place] = next((line for one, line in told if _same(one, value)), come[place])
        yield from (f"  {line}" for line in difflib.ndiff(gone, come) if line[0] in "-+")


def _meaning(answers: Answers, address: str) -> Any:
    """Return what the words of an answer are read as; words that say nothing as they stand."""
    text, found = answers.texts.get(address), answers.interview.question_at(address)
    if text is None or found is None:
        return text
    question, number = found
    value = (answers.at(question.group, number) if number else answers).get(question)
    if value is not None:
        return value
    return UNKNOWN_TEXT if is_unknown(text) else text


def _same(one: Any, other: Any) -> bool:
    """Tell whether two values are alike, a length in feet and one in inches too."""
    if one == other or not (hasattr(one, "units") and hasattr(other, "units")):
        return bool(one == other)
    return exact(one.m) == exact(magnitude(other, str(one.units)))


def _words(answer: str | None) -> str:
    return "no answer" if answer is None else answer


def _figures(before: Plan, after: Plan) -> Iterator[str]:
    try:
        old, new = before.verdict.value, after.verdict.value
        if old != new:
            yield f"verdict: {old} -> {new}"
    except Exception as trouble:
        own_fault.note("the verdict", trouble)
    for figure in FIGURES:
        one, other = find(figure, before), find(figure, after)
        if line := _change(one, other, before.metric):
            yield f"{figure.key}: {one.figure.label}: {line}"


def _change(one: Found, other: Found, metric: bool) -> str:
    """Return how a figure changes; nothing where it does not."""
    old, new = one.number(metric), other.number(metric)
    if _exact(old) == _exact(new):
        return ""
    unit = unit_name(one.figure.unit(metric))
    return f"{_told(one, metric)} -> {_told(other, metric)}{_by(old, new, unit)}"


def _told(found: Found, metric: bool) -> str:
    if found.waits_for is not None:
        return f"waits for {found.waits_for.address}"
    if found.trouble is not None:
        return found.shown(metric)
    value = found.number(metric)
    unit = "" if isinstance(value, str) else unit_name(found.figure.unit(metric))
    return f"{_exact(value)} {unit}".rstrip()


def _exact(value: float | str | None) -> str:
    """Return a value with the digits of the figures, so that the change is that of what is told."""
    return exact(value) if isinstance(value, float) else str(value)


def _by(old: float | str | None, new: float | str | None, unit: str) -> str:
    """Return by how much a number changes, in its unit and as a part of what it was."""
    if not isinstance(old, (int, float)) or not isinstance(new, (int, float)):
        return ""
    if isinstance(old, bool) or not math.isfinite(old) or not math.isfinite(new):
        return ""
    step = f"{new - old:+.3g}"
    if unit == "%":
        return f" ({step} points)"
    share = f", {100 * (new - old) / abs(old):+.3g} %" if old else ""
    return f" ({f'{step} {unit}'.rstrip()}{share})"
