"""What the plain lines say unasked: where a garden stands, what is due, what an answer does."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Mapping

from interview.asking import path, route
from interview.asking.answers import Answers
from interview.asking.route import Step
from interview.garden import soak_due
from interview.garden.due_words import Due, count_words
from interview.garden.paced_lengths import changes_said
from interview.garden.place import questions as start
from interview.garden.session import Session
from interview.garden.soak.reading_lines import said_words
from interview.garden.summary import wrap
from interview.garden.told_pages import due_now

Say = Callable[[str], None]


GREETING = """Type an answer and press Enter; an empty line takes what is offered.
:skip I don't know yet   back the page before   later stop for today, all is saved
:why and :how tell more of a question; :help lists the rest."""


def say_greeting(session: Session, say: Say) -> None:
    """Say how to answer, and what is done today."""
    say(GREETING)
    say("\n".join(wrap(due_now(session).says)))


def say_standing(session: Session, say: Say) -> Due:
    """Say of a garden begun before what is due, how far it is, and what is open; return that."""
    due = due_now(session)
    name = session.answers.get(start.GARDEN_NAME) or "No name yet"
    say("\n".join(wrap(f"{name}: {due.says}", "  ")))
    far = session.way.progress()
    done = [one for one in far if one.total]
    parts = ", ".join(f"{session.answers.told(one.stage.title)} {one.word}" for one in done)
    say("\n".join(wrap(f"Pages: {parts}.", "  ")))
    if off := len(session.put_off_list()):
        say(f"{count_words(off, 'answer')} to find out: list. :help lists the commands.")
    return due


def where(session: Session) -> str:
    """Say at which page one is, and how far the garden is."""
    place, far = session.place, session.way.progress()
    title = session.answers.told(place.page.title) if place else "the end"
    if place and place.number > 1:
        title += f" {place.number}"
    return f"{title} ({sum(one.done for one in far)} of {sum(one.total for one in far)} pages done)"


class DueTold:
    """Says once of each reading that its time has come; beside its own hole that is no news."""

    def __init__(self) -> None:
        self._told: set[tuple[str, dt.datetime | None]] = set()

    def say(self, session: Session, say: Say) -> None:
        """Say which holes have come due since."""
        for look in soak_due.under_way(session.answers, session.now):
            here = session.step is not None and _item(session.step) == _item(look.step)
            if look.is_due and not here and (look.address, look.run.due) not in self._told:
                self._told.add((look.address, look.run.due))
                go = f":go {look.address} takes you there."
                say("\n".join(wrap(f"!! {look.words(session.answers)} {go}", "   ")))


def _item(step: Step) -> tuple[str, int]:
    return step.question.group, step.number


def say_changes(before: Answers, after: Answers, say: Say) -> None:
    """Say which paced lengths a new calibration changed, and by how much."""
    changes = changes_said(before, after)
    if changes:
        say("  Lengths in paces that this changes:")
    for change in changes:
        say(f"    {change}")


def say_saved(session: Session, say: Say) -> None:
    """Say that the last save failed, or what is to be told of it."""
    if session.not_kept:
        say(f"  ! NOT SAVED: {session.not_kept}")
    elif session.note:
        say(f"  ! Saved, but: {session.note}")


def keep_half(session: Session, words: Mapping[str, str], say: Say) -> None:
    """Keep words that are no answer yet, by address, and say where that failed."""
    session.drafts.update(words)
    session.save()
    say_saved(session, say)


def say_put_off(session: Session, say: Say) -> None:
    """Say what was put off, each with how to find it out."""
    found = session.put_off_list()
    for number, step in enumerate(found, 1):
        label = step.worded(session.answers).label
        lead = f"{number:>2} {label} (go {step.question.key}). "
        say("\n".join(wrap(f"{lead}{session.find_out(step)}", "     ")))
    if not found:
        say("  Nothing was put off.")


def say_answers(session: Session, say: Say) -> None:
    """Say every question with its answer, and what is kept but does not apply."""
    for step in path.steps(session.answers):
        text = step.view(session.answers).text(step.question)
        said = "" if text is None else said_words(step.question.kind, text)
        say(f"  {step.address}: {said}")
    for address in route.set_aside(session.answers):
        said, one = session.answers.texts[address], route.step_at(address, session.answers)
        said = said_words(one.question.kind, said) if one else said.replace("\n", "; ")
        say(f"  {address}: {said} (set aside: does not apply now)")
