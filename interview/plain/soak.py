"""The soak test on plain lines: what is due, the readings so far, and how to add one."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from contextlib import suppress
from typing import Any

from interview.asking.path import Place
from interview.asking.question import Question, Unanswered
from interview.asking.route import Step
from interview.garden.session import Session
from interview.garden.soak import edit as soak_edit
from interview.garden.soak import timing_questions as timing
from interview.garden.soak import words as soak_words
from interview.garden.soak.noted import HEADS, RunRow
from interview.garden.soak.reading_lines import said_line
from interview.garden.soak.run import soak_run
from interview.garden.soak.timed import SoakRun
from interview.garden.soak.times import utc
from interview.garden.summary import wrap
from interview.plain.lists import offer
from interview.quantities.shown import rate_words
from interview.reading import Refused

WET_QUESTIONS: tuple[Question[Any], ...] = (*soak_edit.MOMENTS, timing.READINGS)
"""The questions beside which the state of the run is told."""
COMMANDS = """  10:15 left {deep}    one more reading, at its own time; or now left {deep}
  :correct 2 10:20 left {deep}    correct reading 2
  :strike 2    take reading 2 out, or back in; it stays in the file
  :shift 1 h    the clock was 1 h ahead: move every time of this hole back; 1 h from 2: some"""
WIDTHS = (10, 7, 17, 7, 11, 11, 10)


def run_lines(run: SoakRun, metric: bool) -> Iterator[str]:
    """Yield everything there is to say about a run, in lines of 76 columns or fewer."""
    # What is overdue is to be done now, which says so.
    overdue = run.due is not None and utc(run.due) <= utc(run.now)
    due = "" if overdue else run.due_words
    for said in (*run.notices, f"NOW: {run.do_now} {run.and_then}".rstrip(), due):
        if said:
            yield from wrap(said, "  ")
    if run.rows:
        yield "  Drops in mm, rates in mm/h." if metric else "  Drops in inches, rates in in/h."
        yield _cells(("",), HEADS)
    for row in run.rows:
        yield _row(row)
    if run.waits and run.waits != run.do_now:
        yield from wrap(run.waits, "  ")
    if run.test is not None:
        yield from wrap(soak_words.why_narrow(run.test, metric))
        yield from wrap(soak_words.trend_words(run.test))


def _cells(lead: tuple[str, ...], cells: tuple[str, ...]) -> str:
    body = "".join(f"{cell:>{wide}}" for cell, wide in zip(cells, WIDTHS, strict=True))
    return f"{lead[0]:>3}{body}".rstrip()


def _row(row: RunRow) -> str:
    if not row.clock:
        return f"{row.place:>3} {row.line}"[:76]
    line = _cells((str(row.place),), row.cells)
    return f"{line}  struck out" if row.struck else line


def say_run(session: Session, step: Step, say: Callable[[str], None]) -> None:
    """Say how the run stands beside a question it belongs to."""
    if step.question not in WET_QUESTIONS or session.shut(step):
        return
    view = step.view(session.answers)
    run = soak_run(view, session.now)
    if step.question is not timing.READINGS:
        # The question itself says what is to be done now.
        for said in (*run.notices, run.due_words):
            for line in wrap(said, "  ") if said else ():
                say(f"  {line}")
        return
    for line in run_lines(run, view.metric):
        say(f"  {line}")
    if soak_edit.reading_lines(view):
        say(COMMANDS.format(deep="150 mm" if view.metric else "6 in"))


_SENTENCE = r"(?<=[.!?]) +"
MARK = "mark "
FILLED, GONE = ("filled", "full"), ("empty", "gone")
_FILLS = (timing.FILL_1_START, timing.FILL_2_START, timing.TEST_START)
_EMPTIES = (timing.FILL_1_EMPTY, timing.FILL_2_EMPTY)


def spoken(session: Session, place: Place, step: Step, text: str) -> tuple[Step, str]:
    """Return the question that a line beside the hole answers, and its answer.

    ``filled`` and ``empty`` are now; ``mark 8 in`` is the depth at the mark wherever it is typed;
    a depth alone is a reading now.
    """
    word = text.strip().casefold()
    if word.startswith(MARK):
        steps = place.steps((timing.WATER_AT_MARK.key,), session.answers)
        return (steps[0], text.strip()[len(MARK) :]) if steps else (step, text)
    question = step.question
    if (question in _FILLS and word in FILLED) or (question in _EMPTIES and word in GONE):
        return step, "now"
    if question is timing.READINGS:
        if word in GONE:
            return step, "now empty"
        with suppress(Refused, Unanswered):
            timing.WATER_AT_MARK.kind.take(text, step.view(session.answers))
            return step, f"now {text.strip()}"
    return step, text


def take(session: Session, step: Step, line: str) -> list[str]:
    """Keep one more reading, where its own time belongs; return what is to be said of it.

    A time of "now" is that of this call. Raises ``Refused`` or ``Doubt``.
    """
    return _kept(session, step, soak_edit.with_added(step.view(session.answers), line))


def _kept(session: Session, step: Step, text: str) -> list[str]:
    before, said = soak_edit.reading_lines(step.view(session.answers)), _now(session, step)
    offer(session, step, text)
    return [*_changed_lines(session, step, before), *_standing(session, step, said)]


def _changed_lines(session: Session, step: Step, before: list[str]) -> Iterator[str]:
    for place, line in enumerate(soak_edit.reading_lines(step.view(session.answers)), 1):
        if line not in before:
            yield f"= reading {place}: {said_line(line)}"


def _now(session: Session, step: Step) -> list[str]:
    """Return what is to be done now, sentence by sentence."""
    run = soak_run(step.view(session.answers), session.now)
    return [one for one in re.split(_SENTENCE, f"{run.do_now} {run.and_then}") if one]


def _standing(session: Session, step: Step, said: list[str]) -> Iterator[str]:
    """Yield what is due now less what was ``said``, and the rates so far or what they wait for."""
    view = step.view(session.answers)
    run = soak_run(view, session.now)
    if new := [one for one in _now(session, step) if one not in said]:
        lead = "NOW: " if run.do_now.startswith(new[0]) else ""
        yield from wrap(f"{lead}{' '.join(new)}", "  ")
    if run.test is not None:
        drop = rate_words(run.test.drop_rate, view.metric)
        yield f"So far: drop rate {drop}, corrected {rate_words(run.test.corrected, view.metric)}."
    elif run.waits and run.waits != run.do_now:
        yield from wrap(run.waits, "  ")


def change(session: Session, step: Step, word: str, rest: str) -> list[str]:
    """Do one of the commands about readings; return what is to be said.

    Raises ``Refused`` or ``Doubt``.
    """
    view = step.view(session.answers)
    if word == "add":
        return take(session, step, rest)
    if word == "shift":
        before, said = soak_edit.reading_lines(view), _now(session, step)
        session.offer_together(soak_edit.with_shift(view, rest))
        told = _changed_lines(session, step, before)
        return ["= the times are moved", *told, *_standing(session, step, said)]
    number, _, line = rest.partition(" ")
    if not number.isdecimal() or len(number) > 3:
        raise Refused("Write the number of the reading after the command, such as :strike 2.")
    if word == "strike":
        return _kept(session, step, soak_edit.with_struck(view, int(number)))
    return _kept(session, step, soak_edit.with_corrected(view, int(number), line.strip()))
