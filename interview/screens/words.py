"""Words that several pages say: stage strip, times, the plan so far."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from pathlib import Path

from interview.answers_file import shown
from interview.asking import path, route
from interview.asking.own_fault import where
from interview.asking.question import Status
from interview.asking.route import Step
from interview.garden.plan import Plan
from interview.garden.session import Session
from interview.garden.summary import SoFar, so_far
from interview.screens import palette


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


def place_in_stage(session: Session, step: Step) -> str:
    """Say where in its stage a question stands, such as ``4 of 12``."""
    order = path.steps(session.answers)
    addresses = [one.address for one in order if one.stage is step.stage]
    if step.address not in addresses:
        return "does not apply now"
    return f"{addresses.index(step.address) + 1} of {len(addresses)}"


STAGE_NAMES = {
    "start": "Start",
    "site": "Siting",
    "soak": "Soak test",
    "survey": "Survey",
    "bed": "Size",
    "plants": "Plants",
    "review": "Review",
}
"""Names of the stages that are short enough for the strip."""
_STAGE_MARKS = {
    "done": palette.MARKS["good"],
    "in progress": palette.BEGUN,
    "needs attention": palette.MARKS["stop"],
    "shut": palette.SHUT,
    "not started": palette.OPEN,
}


@dataclass(frozen=True)
class StageShare:
    """How far one stage is, and whether one is in it."""

    name: str
    word: str
    done: int
    total: int
    here: bool = False

    @property
    def mark(self) -> str:
        """The mark before its name."""
        return palette.HERE if self.here else _STAGE_MARKS[self.word]


def stage_shares(session: Session | None, here: str) -> list[StageShare]:
    """Return how far each stage is; with no garden open all are still to come.

    A stage with a question that is shut is ``shut`` until it is done.
    """
    if session is None:
        return [StageShare(name, "not started", 0, 0) for name in STAGE_NAMES.values()]
    found = []
    shut = _shut_stages(session)
    for one in route.progress(session.answers):
        word, key = one.word, one.stage.key
        if word in ("not started", "in progress") and key in shut:
            word = "shut"
        name = STAGE_NAMES.get(key, one.stage.title)
        found.append(StageShare(name, word, one.done, one.total, key == here))
    return found


def _shut_stages(session: Session) -> set[str]:
    """Return the stages in which a question that would dig is open and shut."""
    found: set[str] = set()
    for step in route.steps(session.answers):
        if (
            step.question.digs
            and step.stage.key not in found
            and route.standing(step, session.answers) is Status.OPEN
            and session.shut(step)
        ):
            found.add(step.stage.key)
    return found


PlanLines = tuple[list[SoFar], list[tuple[str, str]]]
"""Lines that are known; then, for each answer waited for, the labels of the lines that wait."""


def plan_lines(plan: Plan) -> PlanLines:
    """Return the lines of the plan so far that are known, and what the others wait for.

    Lines that wait for one and the same answer are put together: the answer, then their labels.
    """
    lines = so_far(plan)
    waiting: dict[str, list[str]] = {}
    for line in lines:
        if not line.value:
            gap = line.waits_for[:1].lower() + line.waits_for[1:]
            label = line.label if gap not in waiting else line.label[:1].lower() + line.label[1:]
            waiting.setdefault(gap, []).append(label)
    known = [line for line in lines if line.value]
    return known, [(gap, ", ".join(labels)) for gap, labels in waiting.items()]


def counted(session: Session) -> str:
    """Say how far the whole interview is, such as ``12 of 80 answered``."""
    done = route.progress(session.answers)
    return f"{sum(one.done for one in done)} of {sum(one.total for one in done)} answered"


def fault(trouble: Exception) -> str:
    """Say that the plan cannot be shown for a fault of the program."""
    return (
        f"The plan met a fault of the program ({where(trouble)}). Your answers are safe; "
        "go on, or change the answer given last."
    )


def shut(session: Session, step: Step) -> str:
    """Say why a question is shut, which answer would open it, and what can be done meanwhile."""
    reasons = session.shut(step)
    if not reasons:
        return ""
    ways = session.ways_said(step, "F6 goes there and comes back.")
    return f"SHUT: {' '.join(reasons)} {ways} Meanwhile go on: the other questions are open."


def then_back(session: Session) -> str:
    """Say to which shut question the way leads back, or nothing."""
    back = session.back_to
    return f"Then back to “{back.question.label}” (F6 goes back now)." if back else ""


def at_the_end(session: Session) -> str:
    """Say that the last question is done, and which were left out because they are shut."""
    said = "That was the last question."
    for step in route.open_steps(session.answers):
        if reasons := session.shut(step):
            label = step.worded(session.answers).label
            return f"{said} Not asked yet, from '{label}' on: {' '.join(reasons)}"
    return said
