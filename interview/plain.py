"""The interview on plain lines: for pipes, screen readers and bare terminals."""

from __future__ import annotations

import textwrap
from collections.abc import Callable

from interview import plain_soak, route
from interview.card import card_text
from interview.long_work import HowFar, heard_by
from interview.model import UNKNOWN_TEXT, Answers, Standing
from interview.paced_lengths import changes_said
from interview.reading import Refused
from interview.report import plan_text, waiting_text
from interview.route import Step
from interview.session import Doubt, Session

Ask = Callable[[str], str]
"""Shows a prompt and returns one typed line; raises ``EOFError`` at the end of the input."""
Say = Callable[[str], None]
LONG = 4000
"""Lines or days of a record from which on it is said how far the sums are."""

HELP = """Type an answer and press Enter. Lines that start with a colon are commands:
  :skip      I don't know yet
  :back      the question before
  :why       why we ask
  :how       how to find out
  :plan      the plan so far
  :card      the yard card, one page to take outside
  :waiting   what the plan still waits for
  :list      every question with its answer
  :go KEY    go to a question by its key
  :next      go on and leave this answer as it is
  :clear     take this answer away
  :remove    take this whole item away (a hole, a surface, a spot)
  :help      this list
  :quit      stop; everything is saved
An empty line takes the value offered, where one is. A list ends with an empty line."""


class _Quit(Exception):
    """The person asked to stop."""


def run(session: Session, ask: Ask, say: Say) -> bool:
    """Ask every open question on plain lines; tell whether the end was reached."""
    say(HELP)
    stage = ""
    while session.step is not None:
        step = session.step
        if step.stage.key != stage:
            stage = step.stage.key
            say(f"\n== {step.stage.letter}. {step.stage.title} ==\n{step.stage.intro}")
        try:
            answered = _one(session, step, ask, say)
        except (_Quit, EOFError, KeyboardInterrupt):
            return False
        if answered and session.step is step:
            last = session.go_on() is None
            if session.passed_over and not last:
                say(f"  ({session.passed_over})")
            if last:
                break
    say("\nThat was the last question.")
    _closed(session, say)
    say("\n" + _page(plan_text, session, say))
    return True


def _page(text: Callable[..., str], session: Session, say: Say) -> str:
    """Return a page of the plan; where years of rain take long, say meanwhile how far they are."""
    with heard_by(_Teller(say)):
        return text(session.plan)


class _Teller:
    """Says on plain lines how far a long sum is: when it begins, and at each quarter of it."""

    def __init__(self, say: Say) -> None:
        self._say = say
        self._last: tuple[str, int] = ("", 0)

    def __call__(self, far: HowFar) -> None:
        quarter = 4 * far.done // max(1, far.of)
        if far.of >= LONG and (far.what, quarter) != self._last:
            self._last = (far.what, quarter)
            self._say(f"  ({far.words})")


def _closed(session: Session, say: Say) -> None:
    """Say which questions were left out because their stage is shut."""
    for step in route.open_steps(session.answers):
        if reasons := session.shut(step):
            say(f"\nNot asked yet, from '{step.question.label}' on: {' '.join(reasons)}")
            return


def _one(session: Session, step: Step, ask: Ask, say: Say) -> bool:
    """Ask one question; tell whether it was answered."""
    _show(session, step, say)
    text = _typed(session, step, ask)
    if text.startswith(":"):
        return _command(session, step, text[1:].strip(), say)
    before = session.answers
    try:
        heard = session.offer(step, text)
    except (Refused, Doubt) as refused:
        say(f"  ! {refused}")
        return False
    session.drafts.pop(step.address, None)
    say(f"  = {heard.echo}")
    if remark := session.remark(step, heard.kept):
        say(f"  ! {remark}")
    if session.alarm:
        say(f"  !! {session.alarm}")
    _say_changes(before, session.answers, say)
    if session.not_kept:
        say(f"  ! NOT SAVED: {session.not_kept}")
    elif session.note:
        say(f"  ! Saved, but: {session.note}")
    return True


def _say_changes(before: Answers, after: Answers, say: Say) -> None:
    """Say which paced lengths a new calibration changed, and by how much."""
    changes = changes_said(before, after)
    if changes:
        say("  Lengths in paces that this changes:")
    for change in changes:
        say(f"    {change}")


def _show(session: Session, step: Step, say: Say) -> None:
    question = step.worded(session.answers)
    view = step.view(session.answers)
    item = f" ({question.group} {step.number})" if step.number else ""
    say(f"\n[{step.address}]{item} {question.text}")
    if caution := question.caution_in(view):
        say(f"  CAUTION: {caution}")
    say(f"  {question.kind.hint(view.units)}")
    for one, label in getattr(question.kind, "options", ()):
        say(f"    {one}: {label}")
    if told := session.beside(step):
        say(f"  {told}")
    if reasons := session.shut(step):
        say("  SHUT: " + " ".join(reasons))
    plain_soak.say_run(session, step, say)
    kept = view.text(question)
    default = session.offered(step)
    if kept is not None:
        say("  kept: " + kept.replace("\n", "; "))
    elif default:
        say(f"  Enter alone takes: {default}")
    if begun := session.drafts.get(step.address, "").strip():
        say("  half typed before, not kept: " + begun.replace("\n", "; "))


def _typed(session: Session, step: Step, ask: Ask) -> str:
    first = ask("> ")
    view = step.view(session.answers)
    if not first.strip() and view.standing(step.question) is not Standing.OPEN:
        return ":next"
    alone = not first.strip() or first.startswith(":") or first.strip().lower() == "none"
    if alone or not step.question.kind.many:
        return first
    lines = [first]
    while True:
        try:
            line = ask(". ")
        except EOFError:
            break
        if not line.strip() or line.startswith(":"):
            break
        lines.append(line)
    return "\n".join(lines)


def _command(session: Session, step: Step, command: str, say: Say) -> bool:
    word, _, rest = command.partition(" ")
    question = step.worded(session.answers)
    if plain_soak.command(session, step, word, rest, say):
        return False
    match word:
        case "skip":
            if reasons := session.shut(step):
                say("  ! " + reasons[0])
                return True
            if step.view(session.answers).text(question) is not None:
                say("  ! There is an answer already. Type :clear to take it away, or :next.")
                return False
            session.put_off(step)
            say(f"  = {UNKNOWN_TEXT}. To find out: {question.find_out}")
            return True
        case "next":
            return True
        case "back":
            session.go_back()
        case "why":
            say("  " + question.why + (f"\n  {question.more}" if question.more else ""))
        case "how":
            say("  " + session.find_out(step))
            if question.picture:
                say(textwrap.indent(question.picture, "  "))
        case "plan":
            say(_page(plan_text, session, say))
        case "card":
            say(_page(card_text, session, say))
        case "waiting":
            with heard_by(_Teller(say)):
                say(waiting_text(session.plan))
        case "list":
            _list(session, say)
        case "go":
            if session.jump(rest.strip()) is None:
                say(f"  ! There is no question {rest.strip()!r} that applies now. Try :list.")
        case "clear":
            session.clear(step)
        case "remove":
            if step.number:
                session.remove_item(question.group, step.number)
            else:
                say("  ! This question is not part of a list of things.")
        case "quit":
            raise _Quit
        case _:
            say(HELP)
    return False


def _list(session: Session, say: Say) -> None:
    for step in route.steps(session.answers):
        text = step.view(session.answers).text(step.question)
        said = "" if text is None else text.replace("\n", "; ")
        say(f"  {step.address}: {said}")
    for address in route.set_aside(session.answers):
        said = session.answers.texts[address].replace("\n", "; ")
        say(f"  {address}: {said} (set aside: does not apply now)")
