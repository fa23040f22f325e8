"""The interview on plain lines: for pipes, screen readers and bare terminals."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial

from interview.asking import own_fault, route
from interview.asking.kinds import list_lines
from interview.asking.question import Status
from interview.asking.route import Step
from interview.asking.sitting import Doubt
from interview.garden import soak_due
from interview.garden.session import Session
from interview.garden.soak import timing_questions as timing
from interview.garden.summary import wrap
from interview.plain import lists as plain_lists
from interview.plain import soak as plain_soak
from interview.plain import told as plain_told
from interview.plain.commands import HELP, Quit, Turn, command
from interview.plain.read_out import Say, page, show
from interview.reading import Refused, Suggested, is_unknown, read_yes_no
from interview.reading.foreign import lines_shown
from interview.sheet.report import plan_text

Ask = Callable[[str], str]
"""Shows a prompt and returns one typed line; raises ``EOFError`` at the end of the input."""


def run(session: Session, ask: Ask, say: Say) -> bool:
    """Ask every open question on plain lines; tell whether the end was reached."""
    due = plain_told.DueTold()
    say = _seen(say)
    _guarded("where the garden stands", say, lambda: _begin(session, say))
    stage = ""
    asked: Turn | None = None
    while session.step is not None:
        _guarded("what is due", say, lambda: due.say(session, say))
        step = session.step
        if asked is None or asked.stale or asked.step.address != step.address:
            if step.stage.key != stage:
                stage = step.stage.key
                say(f"\n== {step.stage.letter}. {step.stage.title} ==\n{step.stage.intro}")
            _guarded(f"all of the question {step.address}", say, partial(show, session, step, say))
            asked = Turn(step, session.answers, plain_told.found(session, step))
        try:
            answered = _one(session, asked, ask, say)
            if answered:
                asked = None
                last = session.go_on_open() is None
                if session.passed_over and not last:
                    say(f"  ({session.passed_over})")
                if last:
                    break
        except (Quit, EOFError, KeyboardInterrupt):
            return False
        except Exception as trouble:
            # One line was read: a fault that stays cannot ask the same for ever.
            say(f"  ! {own_fault.note(f'what came of this line at {step.address}', trouble)}")
    say("\nThat was the last question.")
    _guarded("what was not asked", say, lambda: _closed(session, say))
    _guarded("the plan", say, lambda: say("\n" + page(plan_text, session, say)))
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


def _closed(session: Session, say: Say) -> None:
    """Say which questions were left out because their stage is shut."""
    for step in route.open_steps(session.answers):
        if reasons := session.shut(step):
            label = step.worded(session.answers).label
            say(f"\nNot asked yet, from '{label}' on: {' '.join(reasons)}")
            return


def _one(session: Session, asked: Turn, ask: Ask, say: Say) -> bool:
    """Hear one line; tell whether the question is done with."""
    step = asked.step
    text = ask(". " if asked.begun else "> ")
    meant, asked.meant = asked.meant, ""
    word = text.strip()
    if word.startswith(":") or word.casefold() == "help":
        return command(session, asked, word.removeprefix(":").strip(), say)
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


def _add(session: Session, asked: Turn, text: str, say: Say) -> bool:
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
