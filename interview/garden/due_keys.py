"""Keys of questions by when they are due, what leads to them, and what was put off."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import NamedTuple

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.question import Status
from interview.asking.route import Step
from interview.garden.due_words import LEADS_FIRST, Due
from interview.garden.path import OPTIONAL, PATH, SITING, SURVEY
from interview.garden.site import lines_questions as buried
from interview.garden.site import questions as site
from interview.garden.site import spot_questions as ground
from interview.quantities.evidence import OURS, Cited

MOST_PUT_OFF = Cited(5, OURS)
"""How many of the questions put off are told at once."""


_PAGES = {page.key: page for page in PATH}


def _boxes(*pages: str) -> frozenset[str]:
    """Return what must be answered on ``pages``, by their names."""
    return frozenset(key for page in pages for key in _PAGES[page].asked) - OPTIONAL


FIRST_SIZE = (
    _boxes("name"),
    _boxes("place", "abroad"),
    _boxes("water_from"),
    _boxes("spouts_here"),
    _boxes("roof_size"),
    _boxes("soil_feel"),
)
"""The pages before the first size, of the first surface."""
ASK, ANSWERED = _boxes("ask_for_marks"), frozenset({"lines_answered"})
SPOT = _boxes("another_surface", *(page.key for page in SITING)) - ASK
"""What is looked at in the yard before the marks are asked for."""
SURVEYED = _boxes(*(page.key for page in SURVEY)) - {"chosen_spot"}
"""What can be gone on with while digging is shut."""
WHILE_WAITING = _boxes("ticket", "below", "sun_hours", "private_lines")
"""What is found out while the marks are waited for; of a spot, of the one chosen."""
MARKS = _boxes("answered", "marks") - ANSWERED
REPORT = _boxes("report")
HOLE = _boxes("hole", "hole_cleared", "smell", "seeping", "hole_shape", "hole_taper")
TIMER = _boxes("timer")
AFTER_TEST = _boxes("hole_left", "set_aside")
PLAN_PAGES: Mapping[str, frozenset[str]] = {
    "usual_bed": frozenset(_PAGES["usual_bed"].keys) - {"prices"} | _boxes("over_twelve"),
    "peg_out": _boxes("peg_out"),
    "usual_plants": frozenset(
        {
            "keep_out", "bloom", "tallest_floor", "tallest_rim", "natives_only", "road_salt",
            "plant_region", "wetland_list_region", "own_plants",
        }
    ),
    "dig_day": frozenset({"dig_day"}),
}  # fmt: skip
"""The pages of the plan day before the plan, by name, with what leads to them while it is open."""
AT_THE_PLAN = frozenset(_PAGES["the_plan"].keys)
STORM = _boxes("storm", "storm_overflow", "storm_plants")
MUSTS = (
    frozenset().union(*FIRST_SIZE)
    | SPOT
    | SURVEYED
    | WHILE_WAITING
    | ASK
    | ANSWERED
    | MARKS
    | REPORT
    | HOLE
    | TIMER
    | AFTER_TEST
    | PLAN_PAGES["peg_out"]
)
"""What must be known for the plan; the rest has a usual value, or may be skipped."""
NOT_FOUND_OUT = {
    site.RULES_CHECKED.key: ("not_checked", "pending"),
    buried.PRIVATE_LINES.key: ("not_found",),
}
"""Answers by which a question is still to be found out."""


class PutOff(NamedTuple):
    """A question that was put off."""

    step: Step
    label: str
    how: str
    """How to find it out."""

    @property
    def address(self) -> str:
        """Where it is answered."""
        return self.step.address


def put_off(answers: Answers) -> list[PutOff]:
    """Return what must be known and was put off, in the order of the interview, five at most."""
    found = [step for step in route.steps(answers) if is_put_off(step, answers)]
    told = [(step, step.worded(answers)) for step in found[: int(MOST_PUT_OFF.value)]]
    return [PutOff(step, words.label, words.find_out) for step, words in told]


def is_put_off(step: Step, answers: Answers) -> bool:
    """Tell whether ``step`` asks for something that must be known and was put off."""
    if not concerns(step, answers) or step.question.key not in MUSTS:
        return False
    if route.standing(step, answers) is Status.UNKNOWN:
        return True
    return step.view(answers).get(step.question) in NOT_FOUND_OUT.get(step.question.key, ())


def concerns(step: Step, answers: Answers) -> bool:
    """Tell whether ``step`` is not about a spot that was not chosen."""
    if step.question.group != ground.SPOTS.key:
        return True
    return (step.question.group, step.number) == ground.chosen_spot(answers).scope


def leads_from(found: Due, here: Collection[str], meant: bool = False) -> bool:
    """Tell whether whoever comes back is led to what is due from a page that asks for ``here``.

    Where nothing presses, not from a page ``meant`` to be left open, nor from one that it is about;
    to what the way leads to by itself only from the page of the plan, which came too early.
    """
    if found.leads or meant:
        return found.leads
    if set(here) & {found.target, *found.keys}:
        return False
    at_plan = any(one.rpartition(".")[2] in AT_THE_PLAN for one in here)
    return at_plan or found.state in LEADS_FIRST
