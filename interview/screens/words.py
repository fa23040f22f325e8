"""Words that several pages say: stage strip, times, the plan so far."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Collection
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from interview.asking import path, route
from interview.asking.own_fault import where
from interview.asking.path import Place
from interview.asking.question import Status, Unanswered
from interview.asking.route import Step
from interview.asking.way import Standing
from interview.garden.gate import ways_out
from interview.garden.session import Session
from interview.reading.foreign import shown
from interview.screens.stages import NOT_STARTED, STAGE_NAMES, StageShare

if TYPE_CHECKING:
    from interview.garden.plan import Plan


def ticking(time: dt.timedelta) -> str:
    """Write a length of time as hours, minutes and seconds, such as ``1:05:09``."""
    seconds = max(0, int(time.total_seconds()))
    return f"{seconds // 3600}:{seconds // 60 % 60:02}:{seconds % 60:02}"


def one_line(text: str) -> str:
    """Write the words of an answer on one line, lists parted by semicolons."""
    return "; ".join(line.strip() for line in text.splitlines() if line.strip())


LONGEST_FILE = 20


def short_name(path: str) -> str:
    """Return the name of a file without its folder, cut in its middle where it is long."""
    name = shown(Path(path).name)
    return name if len(name) <= LONGEST_FILE else f"{name[:10]}…{name[-9:]}"


def item_name(session: Session, step: Step) -> str:
    """Name the thing a question of a group is about, such as ``test hole 2, north end``."""
    return route.item_name(step, session.answers)


def place_in_stage(session: Session, place: Place | None) -> str:
    """Say where in its stage a page stands, such as ``4 of 12``; its title where it only tells."""
    if place is None:
        return "on no page"
    answers = session.answers
    if not place.page.wants:
        return answers.told(place.page.title)
    of = [p for p in session.way.places if p.page.wants and p.page.stage == place.page.stage]
    if place not in of:
        return "does not apply now"
    return f"{of.index(place) + 1} of {len(of)}"


def page_title(session: Session, step: Step) -> str:
    """Return the title of the page that asks for ``step``; nothing off the path."""
    place = session.way.place_of(step.address)
    return place.page.title if place else ""


def stage_shares(session: Session | None, here: str) -> list[StageShare]:
    """Return how far each stage is, by its pages; with no garden open all are still to come."""
    if session is None:
        return list(NOT_STARTED)
    faulty = {
        one.page.stage
        for one in session.way.places
        if one.page.wants and session.way.standing(one) is Standing.FAULTY
    }
    found = []
    for one in session.way.progress():
        key, word = one.stage.key, one.word
        if key in faulty:
            word = "needs attention"
        elif word not in ("done", "shut"):
            word = "in progress" if one.done else "not started"
        name = STAGE_NAMES.get(key, one.stage.title)
        found.append(StageShare(name, word, one.done, one.total, key == here))
    return found


class Beside(NamedTuple):
    """What stands beside a question."""

    lines: tuple[str, ...]
    due: str
    """What is due, in a sentence or two."""
    leads_to: str = ""
    """Where whoever comes back is led to; empty where that is asked for on this page."""
    presses: bool = False
    """Whether they are led there also from a page that was meant to be left open."""

    @property
    def too_small(self) -> bool:
        """Whether the garden does not fit its room."""
        return any(one.startswith(TOO_SMALL) for one in self.lines)


TOO_SMALL = "TOO SMALL"
"""How the line about the room begins where the garden does not fit it."""


def plan_lines(
    plan: Plan, taken: Collection[str], title: Callable[[Step], str], here: Collection[str]
) -> Beside:
    """Return what is known of the garden, and what is due.

    ``taken`` are the names of the usual pages taken, ``title`` names the page of a question;
    ``here`` are the addresses that this page asks for.
    """
    from interview.garden.due import due  # it knows every sum
    from interview.garden.due_keys import leads_from
    from interview.garden.panel import is_told_there, panel_lines
    from interview.garden.summary import rough_line

    try:
        rough = rough_line(plan)
    except Unanswered:
        rough = ""
    size = rough.partition(" (")[0]
    found = due(plan, size, taken, title, order=path.steps, here=here)
    lines = tuple(panel_lines(plan, found, rough, here))
    leads_to = found.target if leads_from(found, here) else ""
    says = "" if is_told_there(found, here) else found.says
    return Beside(lines, says, leads_to, found.leads)


def counted(session: Session) -> str:
    """Say how far the whole interview is, such as ``12 of 60 pages done``."""
    done = session.way.progress()
    return f"{sum(one.done for one in done)} of {sum(one.total for one in done)} pages done"


def fault(trouble: Exception) -> str:
    """Say that the plan cannot be shown for a fault of the program."""
    return (
        f"The plan cannot be shown because of an error in the program ({where(trouble)}). Your "
        "answers are safe; go on, or change the answer given last."
    )


def shut(session: Session, step: Step) -> str:
    """Say why a question is shut, and what can be done that is no answer."""
    reasons = session.shut(step)
    if not reasons:
        return ""
    today = session.now.date()
    others = [one.label for one in ways_out(step, session.answers, today) if one.address is None]
    # To wait for a day that the reason names already is no news.
    told = " ".join(reasons)
    others = [one for one in others if one.removeprefix("Wait until ") not in told]
    return f"SHUT: {' '.join([told, *(f'{one}.' for one in others)])}"


def meanwhile(session: Session) -> str:
    """Say where Enter leads from a shut page."""
    after = session.way.after(session.place)
    where_to = session.answers.told(after.page.title) if after else "the plan"
    return f"A number or the arrows choose a way, Enter goes there. Enter alone: {where_to}."


WAITED_FOR = "The answer you just gave counts once this is known. Esc: give it otherwise."
"""Said on the page that an answer leads to at once, such as that of the pace."""


def then_back(session: Session) -> str:
    """Say to which shut question the way leads back, or nothing."""
    back = session.back_to
    return f"Then back to “{back.question.label}” (F6 goes back now)." if back else ""


def at_the_end(session: Session) -> str:
    """Say that the last question is done, and which were left out because they are shut."""
    said = "That was the last question."
    for step in path.steps(session.answers):
        if route.standing(step, session.answers) is not Status.OPEN:
            continue
        if reasons := session.shut(step):
            label = step.worded(session.answers).label
            return f"{said} Not asked yet, from '{label}' on: {' '.join(reasons)}"
    return said
