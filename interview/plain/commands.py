"""The commands of the plain lines: whatever begins with a colon, and a few bare words."""

from __future__ import annotations

import textwrap

from interview.asking import route
from interview.asking.long_work import heard_by
from interview.asking.question import UNKNOWN_TEXT
from interview.asking.route import Step
from interview.asking.sitting import Doubt
from interview.garden import soak_due
from interview.garden.session import Session
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.reading_lines import typed_line
from interview.garden.summary import waiting_text, wrap
from interview.plain import lists as plain_lists
from interview.plain import soak as plain_soak
from interview.plain import told as plain_told
from interview.plain.read_out import Say, Teller, option_lines, page
from interview.plain.turn import Turn
from interview.reading import Refused
from interview.sheet.card import card_text
from interview.sheet.report import outside_text, plan_text

HELP = """Type an answer and press Enter. An empty line takes the value offered, keeps the answer
there is, or skips what may be skipped. In a list each line is kept at once, and an empty line
ends it. At numbered rows or ways a number takes one. These work without a colon too: back, list,
later, help, go NAME.
  :skip      I don't know yet
  :back      the page before
  :later     stop for today; everything is saved (:quit does the same)
  :list      what was put off, and how to find it out
  :go NAME   go to a question or page by its name; then you come back to where you were
  :why       why we ask
  :how       how to find out
  :options   every choice of a question
  :picture   the drawing of a question; :picture plan, the plan with its drawings
  :again     read the question again
  :plan      the plan so far; :plan working, how all of it was worked out too
  :card      the yard card, one page to take outside
  :waiting   what the plan still waits for
  :answers   every question with its answer
  :open      go to the first page that wants something
  :next      go on and leave this page as it is
  :clear     take this answer away
  :mend      go to the answer that keeps a page shut, and back
  :remove    take this whole item away (a hole, a surface, a spot)
  :every     put every question on a page of its own, or go back to the short way
  :help      this list"""
BARE = r"(?i)(?:back|list|later|help|more|go\s+\S.*)"
"""Words that are commands without a colon too."""


class Quit(Exception):
    """The person asked to stop."""


class Left(Exception):
    """The page is left for another; ``named`` is the address that was asked for by its name."""

    def __init__(self, named: str = "") -> None:
        super().__init__(named)
        self.named = named


class Skipped(Exception):
    """The question put was put off."""


def command(session: Session, turn: Turn, text: str, say: Say) -> None:
    """Do a command at the page held.

    Raises ``Quit``, ``Left`` where another page is reached, ``Skipped`` where the question put, or
    the whole page, is to be gone on from.
    """
    word, _, rest = text.partition(" ")
    word, rest = word.casefold(), rest.strip()
    step = turn.question(session)
    if step is not None and _about_question(session, turn, step, word, rest, say):
        return
    match word:
        case "again":
            turn.again()
            turn.told = False
        case "skip" | "next":
            raise Skipped
        case "back":
            if session.back_to is not None:
                session.mend()
            elif session.backward() is None:
                say("  ! This is the first page.")
                return
            raise Left
        case "open":
            if session.go_to_first_open() is None:
                say("  ! No page is open that may be answered now.")
                return
            raise Left
        case "more" if turn.behind(session):
            turn.more = True
            turn.again()
        case "plan":
            whole = rest.casefold() == "working"
            say(page(plan_text if whole else outside_text, session, say))
            _say_place(session, say)
        case "picture" if rest.casefold() == "plan":
            say(page(plan_text, session, say, pictures=True))
            _say_place(session, say)
        case "card":
            say(page(card_text, session, say))
            _say_place(session, say)
        case "waiting":
            with heard_by(Teller(say)):
                say(waiting_text(session.plan))
        case "list":
            plain_told.say_put_off(session, say)
        case "answers":
            plain_told.say_answers(session, say)
            _say_place(session, say)
        case "go":
            raise Left(_go(session, turn, rest, say))
        case "mend":
            if session.mend() is None:
                say("  ! Nothing is shut here that an answer would open.")
                return
            raise Left
        case "every":
            session.every_question = not session.every_question
            now = "is a page of its own" if session.every_question else "stands on its page again"
            say(f"  = every question {now}")
            raise Left
        case "later" | "quit":
            raise Quit
        case "why" | "how" | "clear" | "remove" | "options" | "picture":
            _about_row(session, turn, word, rest, say)
        case _:
            say(HELP)


def _about_question(
    session: Session, turn: Turn, step: Step, word: str, rest: str, say: Say
) -> bool:
    """Do a command that is about the question put; tell whether it was one."""
    question = step.worded(session.answers)
    match word:
        case "add" | "correct" | "strike" | "shift" if question.kind.many:
            _change(session, turn, step, word, rest, say)
        case "skip":
            _skip(session, turn, step, say)
        case "why":
            _lines(f"{question.why}\n{question.more}".strip(), say)
        case "how":
            _lines(session.find_out(step), say)
        case "options":
            for line in option_lines(question):
                say(f"  {line}")
        case "picture" if not rest:
            say(textwrap.indent(question.picture or "There is no drawing for this.", "  "))
        case "clear":
            _clear(session, turn, step, say)
        case "remove":
            _remove(session, step, say)
        case _:
            return False
    return True


def _about_row(session: Session, turn: Turn, word: str, rest: str, say: Say) -> None:
    """Tell about one of the rows, named by its number."""
    rows = turn.rows(session)
    if not rest.isdecimal() or not 1 <= int(rest[:3]) <= len(rows):
        say(f"  ! Write the number of a row after it, such as :{word} 1.")
        return
    row, turn.row = turn.row, rows[int(rest[:3]) - 1]
    if not _about_question(session, turn, turn.row, word, "", say):
        say(HELP)
    turn.row = row


def _lines(text: str, say: Say) -> None:
    for line in text.splitlines():
        say("  " + "\n".join(wrap(line, "  ")))


def _skip(session: Session, turn: Turn, step: Step, say: Say) -> None:
    """Put a question off; raise ``Skipped`` where it needs no more."""
    if reasons := session.shut(step):
        say("  ! " + reasons[0])
        raise Skipped
    kept = step.view(session.answers).text(step.question)
    if kept == UNKNOWN_TEXT:
        raise Skipped
    if kept is not None:
        say("  ! There is an answer already. Type :clear to take it away, or :next.")
        return
    found_out = session.find_out(step)
    if turn.row is not None or turn.at_once:
        session.put_off(step)
        turn.row = None
        turn.past.add(step.address)
    else:
        turn.words[step.address] = session.drafts[step.address] = UNKNOWN_TEXT
        session.save()
    plain_told.say_saved(session, say)
    turn.again()
    say(f"  = {UNKNOWN_TEXT}. To find out: {found_out}")


def _change(session: Session, turn: Turn, step: Step, word: str, rest: str, say: Say) -> None:
    """Do a command about one line of a list."""
    readings = step.question is timing.READINGS
    if word in ("add", "shift") and not readings:
        say("  ! That command is for the readings of a soak test. :help lists the others.")
        return
    change = plain_soak.change if readings else plain_lists.change
    try:
        for said in change(session, step, word, rest):
            say(f"  {said}")
    except (Refused, Doubt) as refused:
        say(f"  ! {refused}")
        return
    turn.begun = bool(plain_lists.lines_of(session, step))
    plain_told.say_saved(session, say)


def _clear(session: Session, turn: Turn, step: Step, say: Say) -> None:
    """Take an answer away, and say what it was, so that it can be typed again."""
    kept = step.view(session.answers).text(step.question)
    gone = plain_lists.lines_of(session, step) if step.question.kind.many else []
    gone = gone or ([] if kept is None else kept.splitlines())
    session.drafts.pop(step.address, None)
    session.clear(step)
    turn.begun = False
    said = "; ".join(typed_line(line, session.now) for line in gone)
    say(f"  = taken away: {said}" if said else "  ! There is no answer here to take away.")
    plain_told.say_saved(session, say)


def _remove(session: Session, step: Step, say: Say) -> None:
    if not step.number:
        say("  ! This question is not part of a list of things.")
        return
    item = route.item_name(step, session.answers)
    session.remove_item(step.question.group, step.number)
    say(f"  = taken away: {item}")
    plain_told.say_saved(session, say)
    raise Left


def _go(session: Session, turn: Turn, name: str, say: Say) -> str:
    """Go to the question called ``name``: of several the one of this item, or the one due.

    Return its address; raises ``Refused`` where there is none.
    """
    found = route.called(name, session.answers)
    item = (turn.place.page.group, turn.place.number)
    here = [one for one in found if (one.question.group, one.number) == item]
    look = soak_due.first(session.answers, session.now)
    due = [one for one in found if look and one.address == look.step.address]
    wanted = name.casefold().strip()
    if len(found) > 1 and not (here or due):
        names = ", ".join(one.address for one in found)
        raise Refused(f"There are {len(found)} of these. Write which one: {names}.")
    if not found:
        titled = [
            one
            for one in session.way.places
            if wanted in (one.name, session.answers.told(one.page.title).casefold())
        ]
        if not titled or session.go_to(titled[0].name) is None:
            raise Refused(f"There is no question {name!r} that applies now. Try :answers.")
        return ""
    address = (due or here or found)[0].address
    if session.go_to(address) is None:
        session.visit(address)
    return address


def _say_place(session: Session, say: Say) -> None:
    """Say, after a long page, which page waits."""
    say(f"\n  Back at: {plain_told.where(session)}. :again reads it.")
