"""The verdict at the moment of answering: the finding of the plan that an answer decides.

A verdict holds no limit of its own. It is the finding, made by the function that makes it for the
plan, in few words and with the ways on.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import NamedTuple

from interview.asking import own_fault, route
from interview.asking.answers import Answers
from interview.asking.question import Unanswered
from interview.asking.route import Step
from interview.garden.plan import Plan
from interview.garden.site import spot_questions as ground
from interview.garden.site.findings import permission_findings
from interview.garden.size import questions as bed
from interview.garden.soak import questions as soak
from interview.garden.stages import QUESTIONS
from interview.garden.verdict_rows import (
    DECIDED_AT,
    KEEP,
    LEARN,
    NEVER_TO_LEARN,
    TABLE,
    WAYS,
    WAYS_OUT,
    Find,
    result_words,
    soil_allows,
)
from interview.quantities.evidence import Brief, Finding, Grade, Source
from interview.reading import Refused, is_unknown


class WayOn(NamedTuple):
    """One thing that can be done about a verdict."""

    label: str
    target: str
    """The address to go to; ``KEEP``, ``WAYS_OUT`` or ``LEARN``."""


class Verdict(NamedTuple):
    """What an answer means, told at once."""

    key: str
    """The key of the finding that it is."""
    grade: Grade
    line: str
    """One short sentence, with the number and the limit."""
    limit: str
    """The limit as the finding has it, in words; may be empty."""
    source: Source
    near: bool = False
    """Whether it is good, but nearer than is cautious."""
    ways: tuple[WayOn, ...] = ()
    """What can be done, in the order that it is worth trying."""

    @property
    def stays(self) -> bool:
        """Whether the page stays to offer the ways; else it is told where one goes on to."""
        return self.grade is not Grade.GOOD and bool(self.ways)


def verdict(plan: Plan, step: Step) -> Verdict | None:
    """Return what the answer kept at ``step`` means; nothing where no limit stands for it yet."""
    found = _found(plan, step)
    return None if found is None else _verdict(found, _ways(plan, found, step.number))


def preview(plan: Plan, step: Step, text: str) -> Verdict | None:
    """Return what ``text`` would mean at ``step``, not kept and without its ways.

    ``plan`` is the plan of the answers so far. Nothing where the words cannot be read yet. Only
    what the answer decides is worked out; all else is taken over from ``plan``.
    """
    row = TABLE.get(step.question)
    if row is None or not row.live or is_unknown(text):
        return None
    try:
        taken = step.question.take(text, step.view(plan.answers))
    except (Refused, Unanswered):
        return None
    answers = plan.answers.with_text(step.address, taken.kept)
    found = _found(plan.with_answers(answers), step)
    return None if found is None else _verdict(found)


def stops(plan: Plan) -> tuple[Verdict, ...]:
    """Return what stops the garden at the spot chosen, to be told before a hole is dug there."""
    spot = ground.chosen_spot(plan.answers)
    number = spot.scope[1] if spot.scope else 1
    found = [one for each in plan.checks.spots if each.number == number for one in each.findings]
    found += [one.told(spot.told) for one in permission_findings(plan.site)]
    against = [one for one in found if one.grade is Grade.STOP]
    to_learn = all(one.key not in NEVER_TO_LEARN for one in against)
    return tuple(_stop(plan, one, number, to_learn) for one in against)


def _stop(plan: Plan, finding: Finding, number: int, to_learn: bool) -> Verdict:
    said = (finding.brief and finding.brief.stop) or f"STOP here. {finding.said}"
    ways = [way for way in _ways(plan, finding, number) if way.target != KEEP]
    own = _address(plan, DECIDED_AT[finding.key], number)
    if own not in [way.target for way in ways]:
        ways.insert(0, WayOn("Answer it again", own))
    if to_learn:
        ways.append(WayOn("Test it only to learn about the soil", LEARN))
    return _verdict(finding, tuple(ways))._replace(line=said)


def _found(plan: Plan, step: Step) -> Finding | None:
    """Return the worst that the answer kept at ``step`` decides, in the words to be told."""
    row = TABLE.get(step.question)
    if row is None or step.view(plan.answers).get(step.question) is None:
        return None
    view = step.view(plan.answers) if step.number else ground.chosen_spot(plan.answers)
    if any(view.get(question) is None for question in row.needs):
        return None
    keys = [key.format(n=step.number) for key in row.keys]
    found = [one for find in row.find for one in _known(find, plan, view) if one.key in keys]
    worst = min(found, key=lambda one: (-one.grade.trouble, keys.index(one.key)), default=None)
    if worst is None or worst.grade is Grade.GOOD:
        worst = worst or Finding(keys[0], Grade.GOOD, "", "", row.source)
        if words := _words(row.good, plan, view):
            worst = worst._replace(said=words, brief=None)
    elif worst.key == "room" and row.good is result_words:
        # What the test has found is told before what the room has to say to it.
        line = (worst.brief or Brief(worst.said)).line
        lead = _words(soil_allows, plan, view)
        worst = worst._replace(brief=Brief(f"{lead}. {line}" if lead else line))
    return worst.told(view.told) if worst.said else None


def _words(said: Callable[[Plan, Answers], str], plan: Plan, view: Answers) -> str:
    try:
        return said(plan, view)
    except Unanswered:
        return ""
    except Exception as trouble:  # told where the plan is asked for
        own_fault.note("a verdict", trouble)
        return ""


def _known(find: Find, plan: Plan, view: Answers) -> Iterator[Finding]:
    """Yield the findings up to one that waits for an answer."""
    try:
        yield from find(plan, view)
    except Unanswered:
        return
    except Exception as trouble:  # told where the plan is asked for
        own_fault.note("a verdict", trouble)


def _verdict(finding: Finding, ways: tuple[WayOn, ...] = ()) -> Verdict:
    stop = "STOP. " if finding.grade is Grade.STOP else ""
    brief = finding.brief or Brief(f"{stop}{finding.said}")
    return Verdict(
        finding.key, finding.grade, brief.line, finding.limit, finding.source, brief.near, ways
    )


def _ways(plan: Plan, found: Finding, number: int) -> tuple[WayOn, ...]:
    """Return what can be done about a verdict, as far as it is asked in this garden."""
    if found.grade is Grade.GOOD:
        return ()
    asked = {step.address for step in route.steps(plan.answers)} | {KEEP, WAYS_OUT}
    if found.key == "pond_depth" and plan.size.depth.soil_refuses:
        asked.remove(bed.DEEPEST_POND.key)  # the soil empties no deeper one
    found_ways = []
    key = re.sub(r"^hole_\d+_", "hole_{n}_", found.key)
    for place, (label, target) in enumerate(WAYS.get(key, ())):
        if target not in (KEEP, WAYS_OUT):
            target = _address(plan, target or DECIDED_AT[key], number)
        if target in asked:
            if place == 0 and found.brief is not None:
                label = found.brief.way or label
            found_ways.append(WayOn(plan.answers.told(label), target))
    return tuple(found_ways)


def _address(plan: Plan, key: str, number: int) -> str:
    """Return where the question of ``key`` is answered, for item ``number`` where it has items."""
    question = QUESTIONS[key]
    if question is ground.ANOTHER_SPOT:
        number = max(plan.answers.numbers("spots"), default=1)
        if number > 1:
            return ground.CHOSEN_SPOT.key
    elif question.group == "spots":
        chosen = ground.chosen_spot(plan.answers).scope
        number = number or (chosen[1] if chosen else 1)
    elif question is soak.ANOTHER_HOLE:
        number = max(plan.answers.numbers("holes"), default=1)
    return f"{question.group}.{number}.{key}" if question.group else key
