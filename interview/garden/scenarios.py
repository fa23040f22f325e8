"""What if: other depths, rains and shapes tried out on the plan, nothing kept until asked."""

from __future__ import annotations

import math
from collections.abc import Callable
from enum import Enum
from typing import Any, NamedTuple

from interview.asking import route
from interview.asking.answers import Answers
from interview.asking.figure import Found
from interview.asking.question import Question, Unanswered
from interview.garden.figures import BY_KEY, find
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.planting.costs import costs
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.answered import floor_shape
from interview.garden.suggest import side_words
from interview.quantities.units import (
    Quantity,
    magnitude,
    plain_number,
    quantity,
    significant,
    unit_name,
)
from interview.reading import Refused

_SIDES = (bed.FLOOR_LENGTH, bed.FLOOR_WIDTH)


class Lever(NamedTuple):
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
            if value not in self.choices:
                # An outline of one's own is no step of a list.
                return plan.answers
            place = self.choices.index(value) + steps
            text = self.choices[place % len(self.choices)]
        else:
            text = self._stepped(value, steps, plan.metric)
        try:
            self.question.read(text, plan.answers)
        except (Refused, Unanswered):
            return plan.answers
        return self.taking(plan, text)

    def taking(self, plan: Plan, text: str) -> Answers:
        """Return the answers with this lever at ``text``, which its question takes."""
        moved = self._pegged_anew(plan, plan.answers.with_text(self.question.key, text))
        shape = floor_shape(plan.answers)
        if self.question is shaping.FLOOR_SHAPE or floor_shape(moved) is shape:
            return moved
        # A floor given without a word about its shape is a rectangle; one tried out keeps its own.
        return moved.with_text(shaping.FLOOR_SHAPE.key, shape.value)

    def _pegged_anew(self, plan: Plan, moved: Answers) -> Answers:
        """Return the answers with the floor that is now worked out, where the one pegged was."""
        if self.question in _SIDES or not bed.pegged(moved):
            return moved
        try:
            if not plan.size.as_worked_out:
                return moved
            free = moved.without(_SIDES[0].key).without(_SIDES[1].key)
            floor = plan.with_answers(free).size.worked_out
        except Unanswered:
            return moved
        for side, long in zip(_SIDES, (floor.floor_length, floor.floor_width), strict=True):
            if moved.text(side) is not None:
                free = free.with_text(side.key, side_words(long, plan.metric))
        return free

    def _stepped(self, value: float, steps: int, metric: bool) -> str:
        """Return the words of a value some steps away; between steps the first goes to a step."""
        size, unit = self.step(metric)
        whole = value / size
        if abs(whole - round(whole)) < 1e-6:
            target = round(whole) + steps
        else:
            target = math.floor(whole) + steps + (steps < 0)
        return f"{plain_number(target * size, 6)}{_written(unit)}"

    def reset(self, kept: Plan, tried: Plan) -> Answers:
        """Return the tried answers with this lever back where it was kept."""
        text = kept.answers.text(self.question)
        if text is not None:
            return tried.answers.with_text(self.question.key, text)
        back = tried.answers.without(self.question.key)
        bare = back.without(shaping.FLOOR_SHAPE.key)
        unasked = kept.answers.text(shaping.FLOOR_SHAPE) is None
        return bare if unasked and floor_shape(bare) is floor_shape(back) else back


def _written(unit: str) -> str:
    return ":1" if unit == ": 1" else f" {unit}" if unit else ""


def _in(question: Question[Quantity], us: str, metric: str) -> Callable[[Plan], float]:
    return lambda plan: magnitude(plan.answers[question], metric if plan.metric else us)


LEVERS: tuple[Lever, ...] = (
    Lever(bed.DEEPEST_POND, "Deepest pond",
          lambda p: magnitude(p.size.depth.depth, "mm" if p.metric else "in"), (0.5, "in"),
          (10, "mm")),
    Lever(start.RAIN_DEPTH, "Rain to hold", _in(start.RAIN_DEPTH, "in", "mm"), (0.1, "in"),
          (2.5, "mm")),
    Lever(shaping.HOW_LARGE, "How large", lambda p: p.answers[shaping.HOW_LARGE], (1, ""), (1, ""),
          ("lean", "usual", "generous")),
    Lever(shaping.FLOOR_SHAPE, "Shape", lambda p: floor_shape(p.answers).value, (1, ""), (1, ""),
          ("rounded", "oval", "kidney", "rectangle")),
    Lever(shaping.SIDE_SLOPE, "Side slope", lambda p: p.answers[shaping.SIDE_SLOPE], (0.5, ": 1"),
          (0.5, ": 1")),
    Lever(bed.FLOOR_LENGTH, "Floor length",
          lambda p: magnitude(p.size.garden.floor_length, "m" if p.metric else "ft"), (0.5, "ft"),
          (0.1, "m")),
    Lever(bed.FLOOR_WIDTH, "Floor width",
          lambda p: magnitude(p.size.garden.floor_width, "m" if p.metric else "ft"), (0.5, "ft"),
          (0.1, "m")),
    Lever(shaping.FREEBOARD, "Rim above pond", _in(shaping.FREEBOARD, "in", "mm"), (1, "in"),
          (25, "mm")),
    Lever(bed.DRAIN_RULE, "Rule for the depth", lambda p: p.answers[bed.DRAIN_RULE], (1, ""),
          (1, ""), ("both", "strict", "custom")),
    Lever(shaping.LENGTH_TO_WIDTH, "Length to width", lambda p: p.answers[shaping.LENGTH_TO_WIDTH],
          (0.5, ": 1"), (0.5, ": 1")),
    Lever(bed.BEDS, "Number of beds", lambda p: float(p.answers[bed.BEDS]), (1, ""), (1, "")),
    Lever(bed.AMEND, "Compost worked in", lambda p: "yes" if p.answers[bed.AMEND] else "no",
          (1, ""), (1, ""), ("yes", "no")),
    Lever(bed.COMPOST_DEPTH, "Depth of compost", _in(bed.COMPOST_DEPTH, "in", "mm"), (0.5, "in"),
          (10, "mm")),
    Lever(bed.MULCH_DEPTH, "Depth of mulch", _in(bed.MULCH_DEPTH, "in", "mm"), (0.5, "in"),
          (10, "mm")),
)  # fmt: skip
"""What may be moved, in the order of the page."""

WATCHED = (
    "pond_depth", "depth_governed_by", "size_governed_by", "recommended_area", "floor_length_drawn",
    "floor_width_drawn", "over_all_length", "over_all_width", "rain_held", "empty_latest",
    "storm_hours_on_floor", "caught_at_one_and_a_half", "caught_at_twice", "record_share_held",
    "soil_dug_total", "barrow_loads", "mulch_bought", "crest_to_toe", "notch_width", "plants_total",
    "cost_total",
)  # fmt: skip
"""The figures that follow, in the order of the page."""
_COUNTED = {"barrow_loads": "loads", "plants_total": "plants"}
"""What figures without a unit count."""
_STEPS = {"in": 4, "ft": 24, "mm": 1}
"""Parts of a unit to which ``depth_words`` and ``length_words`` write it."""


class Worth(Enum):
    """Whether a change is for the better."""

    BETTER = "better"
    WORSE = "worse"


MORE_IS_BETTER = frozenset(
    {"rain_held", "caught_at_one_and_a_half", "caught_at_twice", "record_share_held"}
)
"""What a garden is made for: more water is held and less runs over."""
LESS_IS_BETTER = frozenset(
    {
        "empty_latest", "storm_hours_on_floor", "soil_dug_total", "barrow_loads", "mulch_bought",
        "cost_total",
    }
)  # fmt: skip
"""Hours of standing water, and what is dug, carried and paid. All other figures are neither."""
OF_THE_STORM = frozenset({"caught_at_one_and_a_half", "caught_at_twice", "storm_hours_on_floor"})
"""What is told of the rain to hold: of two different storms neither is the better."""


class Followed(NamedTuple):
    """One figure as it is kept and as it would be."""

    label: str
    kept: str
    tried: str
    change: str
    """The difference of what is shown, as ``+0.5 in``; ``changed`` for words; empty if none."""
    turn: Worth | None = None
    """Whether it is for the better; nothing where it is neither, or none."""


def followed(kept: Plan, tried: Plan) -> list[Followed]:
    """Return every watched figure of the kept plan beside that of the tried one."""
    rows = []
    same_rain = kept.answers.get(start.RAIN_DEPTH) == tried.answers.get(start.RAIN_DEPTH)
    for key in WATCHED:
        figure = BY_KEY[key]
        before, after = find(figure, kept), find(figure, tried)
        was, now = _written_as(before, kept), _written_as(after, tried)
        change, up = _change(before, after, kept) if was != now else ("", None)
        better = turn_of(up, key in MORE_IS_BETTER, key in LESS_IS_BETTER)
        if key in OF_THE_STORM and not same_rain:
            better = None
        rows.append(Followed(figure.label, was, now, change, better))
    return rows


def turn_of(up: bool | None, more: bool, less: bool) -> Worth | None:
    """Tell whether going ``up`` is better, where ``more`` of a figure is, or ``less`` of it."""
    if up is None or not (more or less):
        return None
    return Worth.BETTER if up is more else Worth.WORSE


def money(amount: float, sign: str) -> str:
    """Write an amount of money, in whole units: prices are no nearer than that."""
    return f"{sign}{amount:.0f}"


def _written_as(found: Found, plan: Plan) -> str:
    if found.figure.key == "cost_total" and isinstance(found.value, float):
        return money(found.value, costs(plan.planting).sign)
    return found.shown(plan.metric) or "not known yet"


def _change(before: Found, after: Found, plan: Plan) -> tuple[str, bool | None]:
    """Return the difference in words, and whether it is upward, of figures shown unlike."""
    first, last = _as_shown(before, plan), _as_shown(after, plan)
    if first is None or last is None:
        known = before.value is not None and after.value is not None
        return ("changed" if known else ""), None
    figure, by = before.figure, abs(last - first)
    unit = figure.unit(plan.metric)
    if figure.key == "cost_total":
        said = money(by, costs(plan.planting).sign)
    elif figure.words is not None:
        said = figure.words(quantity(by, unit), plan.metric)
    else:
        of = "points" if unit == "percent" else unit_name(unit) or _COUNTED.get(figure.key, "")
        said = f"{plain_number(significant(by, 6))} {of}".strip()
        said = said.removesuffix("s") if said in ("1 points", "1 loads", "1 plants") else said
    return f"{'+' if last > first else '-'}{said}", last > first


def _as_shown(found: Found, plan: Plan) -> float | None:
    """Return a number as it is rounded where it is shown; nothing of words and what has no end."""
    number = found.number(plan.metric)
    if isinstance(number, (str, bool)) or number is None or not math.isfinite(number):
        return None
    figure = found.figure
    if figure.key == "cost_total":
        return float(round(number))
    if isinstance(number, int):
        return float(number)
    if figure.words is None:
        return figure.rounding.number(number)
    parts = _STEPS.get(figure.unit(plan.metric))
    return round(number * parts) / parts if parts else significant(number, 3)


def tried_plan(kept: Plan, answers: Answers) -> Plan:
    """Return the plan of other answers, with the same clock and files."""
    return kept.with_answers(answers)


def changed(kept: Answers, tried: Answers) -> dict[str, str]:
    """Return the answers that differ, by address, for keeping them."""
    return {a: t for a, t in tried.texts.items() if kept.texts.get(a) != t}


def keep(kept: Answers, tried: Answers) -> dict[str, str]:
    """Return what to offer, by address, in the order the questions are asked.

    Nothing is written by trying things out: the caller offers these one by one.
    """
    wanted = changed(kept, tried)
    order = [step.address for step in route.steps(tried)]
    return {address: wanted[address] for address in order if address in wanted}
