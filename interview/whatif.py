"""What if: other depths, rains and shapes tried out on the plan, nothing kept until asked."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

from interview.figure import find
from interview.figures import BY_KEY
from interview.model import Answers, Question, Unanswered
from interview.plan import Plan
from interview.questions import bed, start
from interview.reading import Refused
from interview.units import Quantity, magnitude, plain_number


@dataclass(frozen=True)
class Lever:
    """One thing that can be moved up and down a step at a time."""

    question: Question[Any]
    label: str
    get: Callable[[Plan], float | str]
    """The value in force, as a number of the unit shown, or as the id of a choice."""
    us: tuple[float, str]
    """A step, and its unit, while US units are shown."""
    metric: tuple[float, str]
    choices: tuple[str, ...] = ()
    """For a choice, its ids in order."""

    def step(self, metric: bool) -> tuple[float, str]:
        """Return the step and its unit."""
        return self.metric if metric else self.us

    def shown(self, plan: Plan) -> str:
        """Return the value in force in words."""
        try:
            value = self.get(plan)
        except Unanswered:
            return "not known yet"
        if isinstance(value, str):
            return value
        return f"{plain_number(value, 4)} {self.step(plan.metric)[1]}".strip()

    def moved(self, plan: Plan, steps: int) -> Answers:
        """Return the answers with this lever moved; unchanged where it can go no further."""
        try:
            value = self.get(plan)
        except Unanswered:
            return plan.answers
        if isinstance(value, str):
            place = self.choices.index(value) + steps
            text = self.choices[place % len(self.choices)]
        else:
            size, unit = self.step(plan.metric)
            # From a value between steps the first move goes to the next whole step.
            whole = value / size
            target = (
                round(whole + steps, 6)
                if abs(whole - round(whole)) < 1e-6
                else (float(int(whole) + (1 if steps > 0 else 0)))
            )
            text = f"{plain_number(target * size, 6)}{_written(unit)}"
        try:
            self.question.read(text, plan.answers)
        except (Refused, Unanswered):
            return plan.answers
        return plan.answers.with_text(self.question.key, text)


def _written(unit: str) -> str:
    return ":1" if unit == ": 1" else f" {unit}" if unit else ""


def _in(question: Question[Quantity], us: str, metric: str) -> Callable[[Plan], float]:
    return lambda plan: magnitude(plan.answers[question], metric if plan.metric else us)


LEVERS: tuple[Lever, ...] = (
    Lever(
        bed.DEEPEST_POND,
        "Deepest pond",
        lambda p: magnitude(p.depth.depth, "mm" if p.metric else "in"),
        (0.5, "in"),
        (10, "mm"),
    ),
    Lever(
        start.RAIN_DEPTH,
        "Rain to hold",
        _in(start.RAIN_DEPTH, "in", "mm"),
        (0.1, "in"),
        (2.5, "mm"),
    ),
    Lever(
        bed.SIDE_SLOPE,
        "Side slope",
        lambda p: p.answers[bed.SIDE_SLOPE],
        (0.5, ": 1"),
        (0.5, ": 1"),
    ),
    Lever(
        bed.FLOOR_LENGTH,
        "Floor length",
        lambda p: magnitude(p.garden.floor_length, "m" if p.metric else "ft"),
        (0.5, "ft"),
        (0.1, "m"),
    ),
    Lever(
        bed.FLOOR_WIDTH,
        "Floor width",
        lambda p: magnitude(p.garden.floor_width, "m" if p.metric else "ft"),
        (0.5, "ft"),
        (0.1, "m"),
    ),
    Lever(bed.FREEBOARD, "Rim above pond", _in(bed.FREEBOARD, "in", "mm"), (1, "in"), (25, "mm")),
    Lever(
        bed.DRAIN_RULE,
        "Rule for the depth",
        lambda p: p.answers[bed.DRAIN_RULE],
        (1, ""),
        (1, ""),
        ("both", "strict", "custom"),
    ),
    Lever(
        bed.AMEND,
        "Compost worked in",
        lambda p: "yes" if p.answers[bed.AMEND] else "no",
        (1, ""),
        (1, ""),
        ("yes", "no"),
    ),
)
"""What may be moved, in the order of the page."""

WATCHED = (
    "pond_depth",
    "recommended_area",
    "floor_length_drawn",
    "floor_width_drawn",
    "rim_length",
    "rim_width",
    "rain_held",
    "empty_latest",
    "storm_hours_on_floor",
    "caught_at_one_and_a_half",
    "caught_at_twice",
    "soil_dug_total",
    "barrow_loads",
    "berm_height",
    "notch_width",
    "plants_total",
)
"""The figures that follow, in the order of the page."""


@dataclass(frozen=True)
class Followed:
    """One figure as it is kept and as it would be."""

    label: str
    kept: str
    tried: str
    change: str
    """The difference in words, such as ``+0.5 in``; empty where nothing changed."""


def followed(kept: Plan, tried: Plan) -> list[Followed]:
    """Return every watched figure of the kept plan beside that of the tried one."""
    rows = []
    for key in WATCHED:
        figure = BY_KEY[key]
        before, after = find(figure, kept), find(figure, tried)
        rows.append(
            Followed(
                figure.label,
                before.shown(kept.metric) or "not known yet",
                after.shown(tried.metric) or "not known yet",
                _change(before.number(kept.metric), after.number(tried.metric)),
            )
        )
    return rows


def _change(before: object, after: object) -> str:
    numbers = (int, float)
    if not isinstance(before, numbers) or not isinstance(after, numbers):
        return ""
    difference = float(after) - float(before)
    if abs(difference) < 1e-9 * max(1.0, abs(float(before))):
        return ""
    return f"{'+' if difference > 0 else '-'}{plain_number(abs(difference), 2)}"


def tried_plan(kept: Plan, answers: Answers) -> Plan:
    """Return the plan of other answers, with the same clock and files."""
    return replace(kept, answers=answers)


def changed(kept: Answers, tried: Answers) -> dict[str, str]:
    """Return the answers that differ, by address, for keeping them."""
    return {a: t for a, t in tried.texts.items() if kept.texts.get(a) != t}
