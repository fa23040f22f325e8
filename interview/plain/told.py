"""What the plain lines say unasked: where a garden stands, what is due, what an answer does."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.route import Step
from interview.garden import soak_due
from interview.garden.afterwards import questions as review
from interview.garden.paced_lengths import changes_said
from interview.garden.place import questions as start
from interview.garden.session import Session
from interview.garden.site import gate as site_gate
from interview.garden.site import lines_questions as buried
from interview.garden.site import spot_questions as ground
from interview.garden.summary import wrap
from interview.quantities.evidence import Grade

Say = Callable[[str], None]


def standing(session: Session) -> str:
    """Say how far a garden is that was begun before."""
    done = route.progress(session.answers)
    put_off = sum(one.put_off for one in done)
    later = f", {put_off} of them put off (:waiting)" if put_off else ""
    name = session.answers.get(start.GARDEN_NAME) or "No name yet"
    far = f"{sum(one.done for one in done)} of {sum(one.total for one in done)} answered"
    return f"{name}: {far}{later}. :help lists the commands."


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


Found = dict[str, tuple[Grade, str]]
"""What is found of the yard, by what it is about."""


def found(session: Session, step: Step) -> Found:
    """Return what is found of the yard, for the questions that are asked to find it."""
    question, answers = step.question, session.answers
    if question.group == ground.SPOTS.key:
        try:
            spot = next(
                (one for one in session.plan.checks.spots if one.number == step.number), None
            )
        except Exception:  # a fault of the program is told where the plan is asked for
            return {}
        return {
            one.key: (one.grade, f"{one.said} {one.change}".strip())
            for one in (spot.findings if spot else ())
        }
    day = answers.get(review.DIG_DAY) if question is review.DIG_DAY else session.now.date()
    if day is None or question not in (review.DIG_DAY, buried.MARK_DISTANCE):
        return {}
    when = f"On {day:%A} {day} digging" if question is review.DIG_DAY else "Digging"
    return {
        why: (Grade.STOP, f"{when} is shut: {why}") for why in site_gate.dig_reasons(answers, day)
    }


def say_found(before: Found, after: Found, say: Say) -> None:
    """Say what an answer speaks against; not that more is to be found out about a new spot."""
    for key, (grade, said) in after.items():
        told = grade is Grade.STOP or (grade is Grade.FIX and key in before)
        if told and before.get(key) != (grade, said):
            say("\n".join(wrap(f"  ! {said}", "    ")))


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


def say_list(session: Session, say: Say) -> None:
    """Say every question with its answer, and what is kept but does not apply."""
    for step in route.steps(session.answers):
        text = step.view(session.answers).text(step.question)
        said = "" if text is None else text.replace("\n", "; ")
        say(f"  {step.address}: {said}")
    for address in route.set_aside(session.answers):
        said = session.answers.texts[address].replace("\n", "; ")
        say(f"  {address}: {said} (set aside: does not apply now)")
