"""The soak test on plain lines: what is due, the readings so far, and how to add one."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from interview.model import Question
from interview.questions import soak
from interview.reading import Refused
from interview.route import Step
from interview.session import Doubt, Session
from interview.soak import edit as soak_edit
from interview.soak import words as soak_words
from interview.soak.rows import HEADS, RunRow
from interview.soak.run import SoakRun, soak_run
from interview.summary import wrap

WET_QUESTIONS: tuple[Question[Any], ...] = (
    soak.FILL_1_START,
    soak.FILL_1_EMPTY,
    soak.FILL_2_START,
    soak.FILL_2_EMPTY,
    soak.TEST_START,
    soak.READINGS,
)
"""The questions beside which the state of the run is told."""
COMMANDS = """  :add 10:15 left 6 in    one more reading, at its own time; or :add now left 6 in
  :correct 2 10:20 left 6 in    write reading 2 anew
  :strike 2    take reading 2 out, or back in; it stays in the file
  :shift 1 h    the clock was 1 h ahead: set every time of this hole back; 1 h from 2: some"""
WIDTHS = (10, 7, 17, 7, 11, 11, 10)


def run_lines(run: SoakRun, metric: bool) -> Iterator[str]:
    """Yield everything there is to say about a run, in lines of 76 columns or fewer."""
    for said in (*run.notices, f"NOW: {run.do_now}", run.and_then, run.due_words):
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
    for line in run_lines(soak_run(view, session.now), view.metric):
        say(f"  {line}")
    if step.question is soak.READINGS and soak_edit.reading_lines(view):
        say(COMMANDS)


def command(
    session: Session, step: Step, word: str, rest: str, say: Callable[[str], None]
) -> bool:  # fmt: skip
    """Do one of the commands about readings; tell whether it was one."""
    if step.question is not soak.READINGS or word not in ("add", "correct", "strike", "shift"):
        return False
    try:
        if word == "shift":
            session.offer_together(soak_edit.with_shift(step.view(session.answers), rest))
            say("  = the times are shifted")
            return True
        heard = session.offer(step, _changed(session, step, word, rest.strip()))
    except (Refused, Doubt) as refused:
        say(f"  ! {refused}")
        return True
    say(f"  = {heard.echo}")
    if session.not_kept:
        say(f"  ! NOT SAVED: {session.not_kept}")
    return True


def _changed(session: Session, step: Step, word: str, rest: str) -> str:
    view = step.view(session.answers)
    if word == "add":
        return soak_edit.with_added(view, rest)
    number, _, line = rest.partition(" ")
    if not number.isdecimal() or len(number) > 3:
        raise Refused("Write the number of the reading after the command, such as :strike 2.")
    if word == "strike":
        return soak_edit.with_struck(view, int(number))
    return soak_edit.with_corrected(view, int(number), line.strip())
