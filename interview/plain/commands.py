"""The commands of the plain lines: whatever begins with a colon."""

from __future__ import annotations

import textwrap
from dataclasses import dataclass

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.long_work import heard_by
from interview.asking.question import UNKNOWN_TEXT, Status
from interview.asking.route import Step
from interview.asking.sitting import Doubt
from interview.garden import soak_due
from interview.garden.session import Session
from interview.garden.soak import timing_questions as timing
from interview.plain import lists as plain_lists
from interview.plain import soak as plain_soak
from interview.plain import told as plain_told
from interview.plain.read_out import Say, Teller, page, say_place, show
from interview.reading import Refused
from interview.sheet.card import card_text
from interview.sheet.report import plan_text, waiting_text

HELP = """Type an answer and press Enter. Lines that start with a colon are commands:
  :skip      I don't know yet
  :back      the question before
  :why       why we ask
  :how       how to find out
  :plan      the plan so far
  :card      the yard card, one page to take outside
  :waiting   what the plan still waits for
  :list      every question with its answer
  :go KEY    go to a question by its key; then you come back to where you were
  :open      go to the first question without an answer
  :next      go on and leave this answer as it is
  :clear     take this answer away
  :mend      go to the answer that keeps a question shut, and back
  :remove    take this whole item away (a hole, a surface, a spot)
  :again     read the question again
  :help      this list
  :quit      stop; everything is saved
An empty line takes the value offered, where one is. In a list each line is kept at once, and
an empty line ends it."""


class Quit(Exception):
    """The person asked to stop."""


@dataclass
class Turn:
    """The question that was read out last, and what has passed since."""

    step: Step
    before: Answers
    """The answers as they were then."""
    found: plain_told.Found
    """What was found against the yard by then, where this question may change it."""
    begun: bool = False
    """Whether a line was added to the list that answers it."""
    meant: str = ""
    """What "yes" stands for, after "Did you mean"."""
    stale: bool = False
    """Whether it is to be read again."""


def command(session: Session, asked: Turn, text: str, say: Say) -> bool:
    """Do a command about the question asked; tell whether the question is done with."""
    word, _, rest = text.partition(" ")
    step = asked.step
    question = step.worded(session.answers)
    match word.casefold():
        case "add" | "correct" | "strike" | "shift" if question.kind.many:
            _change(session, asked, word.casefold(), rest.strip(), say)
        case "again":
            show(session, step, say)
        case "skip":
            if reasons := session.shut(step):
                say("  ! " + reasons[0])
                return True
            if step.view(session.answers).standing(question) is Status.UNKNOWN:
                return True
            if step.view(session.answers).text(question) is not None:
                say("  ! There is an answer already. Type :clear to take it away, or :next.")
                return False
            session.put_off(step)
            say(f"  = {UNKNOWN_TEXT}. To find out: {question.find_out}")
            plain_told.say_saved(session, say)
            return True
        case "next":
            return True
        case "back":
            if session.go_back() is None:
                say("  ! This is the first question.")
        case "open":
            if session.go_to_open() is None:
                say("  ! No question is open that may be answered now.")
        case "why":
            say("  " + question.why + (f"\n  {question.more}" if question.more else ""))
        case "how":
            say("  " + session.find_out(step))
            if question.picture:
                say(textwrap.indent(question.picture, "  "))
        case "plan":
            say(page(plan_text, session, say))
            say_place(step, say)
        case "card":
            say(page(card_text, session, say))
            say_place(step, say)
        case "waiting":
            with heard_by(Teller(say)):
                say(waiting_text(session.plan))
        case "list":
            plain_told.say_list(session, say)
            say_place(step, say)
        case "go":
            _go(session, asked, rest.strip(), say)
        case "clear":
            _clear(session, asked, say)
        case "mend":
            if session.mend() is None:
                say("  ! Nothing is shut here that an answer would open.")
        case "remove":
            if step.number:
                item = route.item_name(step, session.answers)
                session.remove_item(question.group, step.number)
                say(f"  = taken away: {item}")
                plain_told.say_saved(session, say)
                asked.stale = True
            else:
                say("  ! This question is not part of a list of things.")
        case "quit":
            raise Quit
        case _:
            say(HELP)
    return False


def _change(session: Session, asked: Turn, word: str, rest: str, say: Say) -> None:
    """Do a command about one line of a list."""
    readings = asked.step.question is timing.READINGS
    if word in ("add", "shift") and not readings:
        say("  ! That command is for the readings of a soak test. :help lists the others.")
        return
    change = plain_soak.change if readings else plain_lists.change
    try:
        for said in change(session, asked.step, word, rest):
            say(f"  {said}")
    except (Refused, Doubt) as refused:
        say(f"  ! {refused}")
        return
    asked.begun = bool(plain_lists.lines_of(session, asked.step))
    plain_told.say_saved(session, say)


def _clear(session: Session, asked: Turn, say: Say) -> None:
    """Take an answer away, and say what it was, so that it can be typed again."""
    step = asked.step
    kept = step.view(session.answers).text(step.question)
    gone = plain_lists.lines_of(session, step) if step.question.kind.many else []
    gone = gone or ([] if kept is None else kept.splitlines())
    session.drafts.pop(step.address, None)
    session.clear(step)
    asked.begun = False
    said = "; ".join(gone)
    say(f"  = taken away: {said}" if said else "  ! There is no answer here to take away.")
    plain_told.say_saved(session, say)


def _go(session: Session, asked: Turn, name: str, say: Say) -> None:
    """Go to the question called ``name``: of several the one of this item, or the one due."""
    found = route.called(name, session.answers)
    here = [one for one in found if (one.question.group, one.number) == _item(asked.step)]
    look = soak_due.first(session.answers, session.now)
    due = [one for one in found if look and one.address == look.step.address]
    if len(found) > 1 and not (here or due):
        names = ", ".join(one.address for one in found)
        say(f"  ! There are {len(found)} of these. Write which one: {names}.")
    elif not found:
        say(f"  ! There is no question {name!r} that applies now. Try :list.")
    else:
        session.visit((due or here or found)[0].address)
        asked.stale = True


def _item(step: Step) -> tuple[str, int]:
    return (step.question.group, step.number) if step.number else ("", -1)
