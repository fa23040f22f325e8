"""Every length given in paces, and how a new calibration changes them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.kinds import list_lines
from interview.asking.measures import Measure
from interview.asking.question import Question, Unanswered
from interview.asking.route import Step
from interview.garden.stages import GROUPS
from interview.garden.survey import pacing_questions as walking
from interview.garden.survey.piece_lines import Pieces
from interview.garden.survey.results import catchment_of
from interview.quantities.records import record
from interview.quantities.shown import length_words
from interview.quantities.units import Quantity, plain_number, ratio, show, significant
from interview.reading import Paces, Refused


@record
class PacedAnswer:
    """One length of the answers in force that was counted in paces."""

    address: str
    label: str
    count: float
    walker: str
    """The name as it was written with the length; empty for the first walker."""
    length: Quantity | None
    """None where nobody of that name has a calibrated pace yet."""


class PacedChange(NamedTuple):
    """One paced length before and after a new calibration."""

    address: str
    label: str
    before: Quantity
    after: Quantity
    percent: float
    """Change as a percentage of the length before."""


def paced_lengths(answers: Answers) -> Iterator[PacedAnswer]:
    """Yield every paced length of the answers in force, in the written order."""
    for step in route.steps(answers):
        view = step.view(answers)
        text = view.text(step.question)
        if text is None:
            continue
        for label, paces in _paces_in(step.question, text, view):
            count = float(paces.count)
            named = f"{_item(step, view)}{label}, {plain_number(count)} paces"
            said = f"{named} {paces.walker}".strip()
            try:
                length: Quantity | None = view.pace(paces.walker) * count
            except (Refused, Unanswered):
                length = None
            yield PacedAnswer(step.address, said, count, paces.walker, length)


def _item(step: Step, view: Answers) -> str:
    """Return the name a person gave the thing, such as ``south roof, ``; else its number."""
    if not step.number:
        return ""
    group = GROUPS[step.question.group]
    given = view.text(group.questions[0])
    return f"{given or f'{group.label} {step.number}'}, "


def _paces_in(
    question: Question[object], text: str, answers: Answers
) -> Iterator[tuple[str, Paces]]:
    kind = question.kind
    if isinstance(kind, Measure) and kind.paced:
        try:
            amount = kind.heard(text, answers.units).value
        except Refused:
            return
        if isinstance(amount, Paces):
            yield question.label, amount
    elif isinstance(kind, Pieces):
        for place, line in enumerate(list_lines(text), 1):
            for paces in kind.paces_of(line, answers.units):
                yield f"piece {place}", paces


def whose_paces(step: Step, text: str, answers: Answers) -> str:
    """Say whose the paces without a name are, where several people walk; else nothing."""
    people = [one.get(walking.WALKER_NAME) for one in answers.items(walking.WALKERS.key)]
    named = [one for one in people if one]
    if len(named) < 2 or len(named) < len(people):
        return ""
    found = (paces for _, paces in _paces_in(step.question, text, step.view(answers)))
    if all(paces.walker for paces in found):
        return ""
    first, other, *_ = named
    return f"Paces without a name are taken as {first}'s. Write 15 paces {other} for {other}'s."


def paced_changes(before: Answers, after: Answers) -> list[PacedChange]:
    """Return each paced length that a new calibration changed, and by how much.

    A length is compared where its own words stayed the same.
    """
    old = {(one.address, place): one for place, one in _numbered(before)}
    found = []
    for place, now in _numbered(after):
        was = old.get((now.address, place))
        same = before.texts.get(now.address) == after.texts.get(now.address)
        if was is None or not same or was.length is None or now.length is None:
            continue
        percent = 100 * (ratio(now.length, was.length) - 1)
        if abs(percent) > 1e-9:
            found.append(PacedChange(now.address, now.label, was.length, now.length, percent))
    return found


def _numbered(answers: Answers) -> Iterator[tuple[int, PacedAnswer]]:
    """Yield each paced length with its place among those of its answer."""
    seen: dict[str, int] = {}
    for one in paced_lengths(answers):
        seen[one.address] = seen.get(one.address, 0) + 1
        yield seen[one.address], one


def changes_said(before: Answers, after: Answers) -> list[str]:
    """Say each paced length that a new calibration changed, then the area that drains here."""
    changes = paced_changes(before, after)
    said = [change_words(change, after) for change in changes]
    if changes and (area := _area_said(before, after)):
        said.append(area)
    return said


def _area_said(before: Answers, after: Answers) -> str:
    unit = after.by_units("ft**2", "m**2")
    try:
        was, now = (show(catchment_of(one.whole()).drains_here, unit) for one in (before, after))
    except (Unanswered, ValueError):
        return ""
    return f"the area that drains here: was {was}, now {now}" if was != now else ""


def change_words(change: PacedChange, answers: Answers) -> str:
    """Say one change: what, from what, to what, by how much."""
    before, after = (length_words(one, answers.metric) for one in (change.before, change.after))
    percent = plain_number(significant(abs(change.percent), 2))
    way = "longer" if change.percent > 0 else "shorter"
    return f"{change.label}: was {before}, now {after} ({percent} % {way})"
