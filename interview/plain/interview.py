"""The interview on plain lines: for pipes, screen readers and bare terminals."""

from __future__ import annotations

import textwrap
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial

from interview.asking import own_fault, route
from interview.asking.answers import Answers
from interview.asking.kinds import Ticks, list_lines
from interview.asking.long_work import HowFar, heard_by
from interview.asking.question import UNKNOWN_TEXT, Status
from interview.asking.route import Step
from interview.garden import soak_due
from interview.garden.session import Doubt, Session
from interview.garden.soak import timing_questions as timing
from interview.garden.soak.reading_lines import said_line
from interview.garden.summary import wrap
from interview.plain import lists as plain_lists
from interview.plain import soak as plain_soak
from interview.plain import told as plain_told
from interview.reading import Refused, Suggested, is_unknown, read_yes_no
from interview.reading.foreign import lines_shown
from interview.sheet.card import card_text
from interview.sheet.report import plan_text, waiting_text

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


class _Quit(Exception):
    """The person asked to stop."""


@dataclass
class _Question:
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


def run(session: Session, ask: Ask, say: Say) -> bool:
    """Ask every open question on plain lines; tell whether the end was reached."""
    due = plain_told.Due()
    say = _seen(say)
    _guarded("where the garden stands", say, lambda: _begin(session, say))
    stage = ""
    asked: _Question | None = None
    while session.step is not None:
        _guarded("what is due", say, lambda: due.say(session, say))
        step = session.step
        if asked is None or asked.stale or asked.step.address != step.address:
            if step.stage.key != stage:
                stage = step.stage.key
                say(f"\n== {step.stage.letter}. {step.stage.title} ==\n{step.stage.intro}")
            _guarded(f"all of the question {step.address}", say, partial(_show, session, step, say))
            asked = _Question(step, session.answers, plain_told.found(session, step))
        try:
            answered = _one(session, asked, ask, say)
            if answered:
                asked = None
                last = session.go_on_open() is None
                if session.passed_over and not last:
                    say(f"  ({session.passed_over})")
                if last:
                    break
        except (_Quit, EOFError, KeyboardInterrupt):
            return False
        except Exception as trouble:
            # One line was read: a fault that stays cannot ask the same for ever.
            say(f"  ! {own_fault.note(f'what came of this line at {step.address}', trouble)}")
    say("\nThat was the last question.")
    _guarded("what was not asked", say, lambda: _closed(session, say))
    _guarded("the plan", say, lambda: say("\n" + _page(plan_text, session, say)))
    return True


def _begin(session: Session, say: Say) -> None:
    """Say how to answer, or where a garden that was begun before stands; go where it waits."""
    if not session.answers.texts:
        say(HELP)
        return
    say(plain_told.standing(session))
    # A soak test does not wait: whoever comes back comes back to it.
    if look := soak_due.first(session.answers, session.now):
        session.visit(look.address)
        lead = "!! " if look.is_due else ""
        say("\n".join(wrap(f"{lead}{look.words(session.answers)}", "   ")))


def _guarded(part: str, say: Say, do: Callable[[], object]) -> None:
    """Do one part of what is said; where it meets a fault of the program, say so and go on."""
    try:
        do()
    except Exception as trouble:
        say(f"  ! {own_fault.note(part, trouble)}")


def _seen(say: Say) -> Say:
    """Return ``say`` with what answers and files hold shown so that it steers no terminal."""
    return lambda text: say(lines_shown(text))


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
            label = step.worded(session.answers).label
            say(f"\nNot asked yet, from '{label}' on: {' '.join(reasons)}")
            return


def _one(session: Session, asked: _Question, ask: Ask, say: Say) -> bool:
    """Hear one line; tell whether the question is done with."""
    step = asked.step
    text = ask(". " if asked.begun else "> ")
    meant, asked.meant = asked.meant, ""
    word = text.strip()
    if word.startswith(":") or word.casefold() == "help":
        return _command(session, asked, word.removeprefix(":").strip(), say)
    if meant and (yes := _yes_or_no(word)) is not None:
        if not yes:
            say("  Then write it another way; :again reads the question.")
            return False
        text = word = meant
    try:
        if step.question.kind.many and word and not _is_whole(session, step, word):
            return _add(session, asked, word, say)
        if step.question.kind.many and not word:
            heard = plain_lists.finish(session, step)
        elif not word and step.view(session.answers).standing(step.question) is not Status.OPEN:
            heard = None
        else:
            heard = plain_lists.offer(session, step, text)
    except Suggested as near:
        asked.meant = near.meant
        say(f"  ! {near}")
        return False
    except (Refused, Doubt) as refused:
        again = " An empty line gives it again." if isinstance(refused, Doubt) and not word else ""
        say(f"  ! {refused}{again}")
        return False
    if heard is not None:
        say(f"  = {heard.echo}")
        if remark := session.remark(step, heard.kept):
            say(f"  ! {remark}")
        if session.alarm:
            say(f"  !! {session.alarm}")
        plain_told.say_found(asked.found, plain_told.found(session, step), say)
        plain_told.say_changes(asked.before, session.answers, say)
        plain_told.say_saved(session, say)
    return True


def _yes_or_no(word: str) -> bool | None:
    try:
        return read_yes_no(word)
    except Refused:
        return None


def _is_whole(session: Session, step: Step, word: str) -> bool:
    """Tell whether a line answers a list as a whole: none at all, or not known yet."""
    if list_lines(word) and not is_unknown(word):
        return False
    if there := len(plain_lists.lines_of(session, step)):
        raise Refused(
            f"The list holds {there} already. An empty line keeps it and goes on; :clear takes it "
            "away."
        )
    return True


def _add(session: Session, asked: _Question, text: str, say: Say) -> bool:
    """Add each item of a typed line to the list; one that is refused keeps none of the others."""
    step = asked.step
    take = plain_soak.take if step.question is timing.READINGS else plain_lists.take
    for item in list_lines(text):
        try:
            for said in take(session, step, item):
                say(f"  {said}")
        except (Refused, Doubt) as refused:
            say(f"  ! {refused}")
            continue
        asked.begun = True
        if remark := session.remark(step, item):
            say(f"  ! {remark}")
        plain_told.say_saved(session, say)
    return False


def _show(session: Session, step: Step, say: Say) -> None:
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


def _command(session: Session, asked: _Question, command: str, say: Say) -> bool:
    word, _, rest = command.partition(" ")
    step = asked.step
    question = step.worded(session.answers)
    match word.casefold():
        case "add" | "correct" | "strike" | "shift" if question.kind.many:
            _change(session, asked, word.casefold(), rest.strip(), say)
        case "again":
            _show(session, step, say)
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
            say(_page(plan_text, session, say))
            _say_place(step, say)
        case "card":
            say(_page(card_text, session, say))
            _say_place(step, say)
        case "waiting":
            with heard_by(_Teller(say)):
                say(waiting_text(session.plan))
        case "list":
            plain_told.say_list(session, say)
            _say_place(step, say)
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
            raise _Quit
        case _:
            say(HELP)
    return False


def _change(session: Session, asked: _Question, word: str, rest: str, say: Say) -> None:
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


def _clear(session: Session, asked: _Question, say: Say) -> None:
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


def _go(session: Session, asked: _Question, name: str, say: Say) -> None:
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


def _say_place(step: Step, say: Say) -> None:
    """Say, after a long page, which question waits."""
    say(f"\n  Back at: {step.question.label} [{step.address}]. :again reads the question.")
