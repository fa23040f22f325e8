"""A question and a page of the plan, read out on plain lines."""

from __future__ import annotations

from collections.abc import Callable

from interview.asking import route
from interview.asking.kinds import Ticks
from interview.asking.long_work import HowFar, heard_by
from interview.asking.route import Step
from interview.garden.session import Session
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.reading_lines import said_line
from interview.plain import lists as plain_lists
from interview.plain import soak as plain_soak

Say = Callable[[str], None]
LONG = 4000
"""Lines or days of a record from which on it is said how far the sums are."""


def show(session: Session, step: Step, say: Say) -> None:
    """Read a question out, with what is kept for it and what shuts it."""
    question = session.worded(step)
    view = step.view(session.answers)
    item = route.item_name(step, session.answers)
    lead = f"{item[0].upper()}{item[1:]}: " if item else ""
    say(f"\n{lead}{question.text} [{step.address}]")
    if caution := f"{session.beware(step)} {question.caution_in(view)}".strip():
        say(f"  CAUTION: {caution}")
    options = getattr(question.kind, "options", ())
    several = "Any of these, parted by commas, or none:"
    if options:
        say(f"  {several if isinstance(question.kind, Ticks) else 'One of these:'}")
    else:
        say(f"  {question.kind.hint(view.units)}")
    for one, label in options:
        say(f"    {one}: {label}")
    if reasons := session.shut(step):
        say("  SHUT: " + " ".join(reasons))
        if ways := session.ways_said(step, "Type :mend to go there and come back."):
            say(f"  {ways}")
    if back := session.back_to:
        say(f"  (Then back to '{back.question.label}'.)")
    plain_soak.say_run(session, step, say)
    if question.kind.many:
        _show_list(session, step, say)
        return
    kept = view.text(question)
    default = session.offered(step)
    if kept is not None:
        say("  kept: " + kept.replace("\n", "; "))
    elif default:
        say(f"  Enter alone takes: {default}")
    if begun := session.drafts.get(step.address, "").strip():
        say("  half typed before, not kept: " + begun.replace("\n", "; "))


def _show_list(session: Session, step: Step, say: Say) -> None:
    """Say the lines of a list so far, and what was half typed."""
    lines = plain_lists.lines_of(session, step)
    readings = step.question is timing.READINGS
    if not readings or session.shut(step):
        for place, line in enumerate(lines, 1):
            say(f"  kept {place}. {said_line(line)}")
    if lines and not readings:
        say(plain_lists.COMMANDS)
    if not lines and (kept := step.view(session.answers).text(step.question)) is not None:
        say(f"  kept: {kept or 'none'}")
    elif not lines and (default := session.offered(step)):
        say(f"  Enter alone takes: {default}")
    if begun := plain_lists.half_typed(session, step):
        say(f"  half typed before, not kept: {begun}")


def page(text: Callable[..., str], session: Session, say: Say) -> str:
    """Return a page of the plan; where years of rain take long, say meanwhile how far they are."""
    with heard_by(Teller(say)):
        return text(session.plan)


class Teller:
    """Says on plain lines how far a long sum is: when it begins, and at each quarter of it."""

    def __init__(self, say: Say) -> None:
        self._say = say
        self._last: tuple[str, int] = ("", 0)

    def __call__(self, far: HowFar) -> None:
        quarter = 4 * far.done // max(1, far.of)
        if far.of >= LONG and (far.what, quarter) != self._last:
            self._last = (far.what, quarter)
            self._say(f"  ({far.words})")


def say_place(step: Step, say: Say) -> None:
    """Say, after a long page, which question waits."""
    say(f"\n  Back at: {step.question.label} [{step.address}]. :again reads the question.")
