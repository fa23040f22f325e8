"""The plan in a few lines: what is known so far, what it waits for, what is assumed."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from typing import Any, NamedTuple

from interview.asking import own_fault, route
from interview.asking.answers import Answers
from interview.asking.question import Question, Unanswered
from interview.garden import figures
from interview.garden.afterwards.levels_questions import LEVELS
from interview.garden.figures import BY_KEY, find
from interview.garden.form.choices import FloorShape
from interview.garden.plan import Plan
from interview.garden.planting.cheaper import fewest
from interview.garden.planting.costs import plant_count
from interview.garden.site import lines_questions as buried
from interview.garden.site import spot_questions as ground
from interview.garden.site.gate import dig_reasons
from interview.garden.size import questions as bed
from interview.garden.size import shape_questions as shaping
from interview.garden.size.answered import floor_shape
from interview.garden.size.rough_words import about
from interview.garden.soak import hole_questions as digging
from interview.garden.soak.hole_questions import BLOCKING_SMELLS
from interview.quantities.evidence import Grade
from interview.quantities.shown import depth_words, sides_words
from interview.quantities.units import magnitude
from interview.reading import said_day
from interview.reading.foreign import shown

VERDICT_WORDS = {
    Grade.GOOD: "No problems found.",
    Grade.FIX: "Some things must be changed or found out first.",
    Grade.STOP: "Not here, or not like this.",
}
"""What the verdict on a whole plan means."""

TOO_SMALL = "TOO SMALL"
"""How the line about the room begins where the garden does not fit it."""
WIDTH = 76
"""Columns of the sheet: it prints on letter and A4 paper."""
_UNFOLDED = 100_000
_columns = ContextVar("columns", default=WIDTH)  # a thread writes a sheet while a page folds one


@contextmanager
def folded_to(columns: int) -> Iterator[None]:
    """Fold the sheet to ``columns``, for a window narrower than paper; never to more than paper."""
    before = _columns.set(min(columns, WIDTH))
    try:
        yield
    finally:
        _columns.reset(before)


@contextmanager
def unfolded() -> Iterator[None]:
    """Leave every paragraph of the sheet on one line, for pages that fold by themselves."""
    before = _columns.set(_UNFOLDED)
    try:
        yield
    finally:
        _columns.reset(before)


_in_words = ContextVar("in words", default=False)


@contextmanager
def in_words(wanted: bool = True) -> Iterator[None]:
    """Have the drawings of the sheet told in words, for lines that are heard and not seen."""
    before = _in_words.set(wanted)
    try:
        yield
    finally:
        _in_words.reset(before)


def words_alone() -> bool:
    """Return whether the drawings of the sheet are told in words now."""
    return _in_words.get()


def width() -> int:
    """Return the columns that the sheet is folded to now."""
    return _columns.get()


class SoFar(NamedTuple):
    """One line of the plan so far: a value, or what it waits for."""

    label: str
    value: str
    waits_for: str = ""
    """The label of the question it waits for; empty when the value is known."""
    address: str = ""
    """Where that question is answered."""


def figure_words(plan: Plan, key: str) -> str:
    """Return one figure as the plan shows it; raises ``Unanswered``, or the fault it met."""
    found = find(BY_KEY[key], plan)
    if found.trouble is not None:
        raise found.trouble
    if found.waits_for:
        raise found.waits_for
    return found.shown(plan.metric)


def size_sentence(plan: Plan) -> str:
    """Return how large the garden is, in the one sentence that tells it; raises ``Unanswered``."""
    garden, count, metric = plan.size.garden, plan.size.bed_count, plan.metric
    what = f"{count} beds, each" if count > 1 else "A garden"
    # How far it reaches on a slope that is not measured is not known yet.
    whole = plan.size.ground is not None
    over_all = f" {sides_words(*plan.size.over_all, metric)} over all," if whole else ""
    floor = sides_words(garden.floor_length, garden.floor_width, metric)
    if whole and garden.floor_length > plan.size.over_all[0]:
        floor += ", measured along its bend"
    does = "together they do" if count > 1 else "it does"
    work = figure_words(plan, "work_area")
    an = "an" if re.match(_SPOKEN_WITH_A_VOWEL, work) else "a"
    return f"{what}{over_all} with a flat floor of {floor}; {does} the work of {an} {work} pond."


_SPOKEN_WITH_A_VOWEL = r"8|1[18]\b"
"""How the numbers begin that are spoken with a vowel first: eight, eleven, eighteen."""


def pond_line(plan: Plan) -> str:
    """Return pond, rain held and hours in one line; raises ``Unanswered``."""
    pond, held, empty = (value_of(one, plan) for one in ("Pond depth", "Rain it holds", "Empties"))
    return f"Pond {pond}, holds {held} of rain, empty {empty}"


def _empties(plan: Plan) -> str:
    if magnitude(plan.size.depth.depth, "in") <= 0:
        return "never: no pond in this soil"
    soonest = figure_words(plan, "empty_soonest")
    latest = figure_words(plan, "empty_latest")
    if plan.soak.soil.drop_rate is None:
        return f"in about {latest}"
    return f"in {soonest.removesuffix(' h')} to {latest}"


def _digging(plan: Plan) -> str:
    for hole in plan.answers.items("holes"):
        smell: str | None = hole.get(digging.HOLE_SMELL)
        if smell in BLOCKING_SMELLS:
            return f"STOP. {hole[digging.HOLE_NAME]} smells of {smell}"
    gate_now = plan.site.dig_gate
    if gate_now.earliest is None:
        gap = buried.wait_gap(plan.answers)
        raise Unanswered(gap, gap.key)
    reasons = dig_reasons(plan.answers, plan.now.date())
    if not reasons:
        return "open, lines located, owners answered"
    if plan.now.date() < gate_now.earliest:
        return f"SHUT, first day {said_day(gate_now.earliest)}"
    return f"SHUT. {reasons[0]}"


class MayDig(NamedTuple):
    """Whether a spade may go in today, and every reason why not."""

    word: str
    """``OPEN``, ``SHUT`` or ``STOP``."""
    reasons: tuple[str, ...]

    @property
    def open(self) -> bool:
        """Whether nothing speaks against digging today."""
        return self.word == "OPEN"


def may_dig(plan: Plan) -> MayDig:
    """Return whether digging may go on: no stop found, the lines located, the marks good.

    A spot that is to be left alone shuts the digging whatever is known of the lines.
    """
    shut = dig_reasons(plan.answers, plan.now.date())
    stops = tuple(one.said for one in plan.findings if one.grade is Grade.STOP)
    if stops:
        return MayDig("STOP", (*stops, *(one for one in shut if one not in " ".join(stops))))
    return MayDig("SHUT", tuple(shut)) if shut else MayDig("OPEN", ())


def _spot(plan: Plan) -> str:
    chosen = ground.chosen_spot(plan.answers)
    for spot in plan.checks.spots:
        if chosen.scope and spot.number == chosen.scope[1]:
            look = sum(1 for one in spot.findings if one.grade is not Grade.GOOD)
            more = f", {look} to look at in the plan" if look else ""
            # What was not asked yet is nothing to mend.
            unfinished = spot.grade is Grade.FIX and any(
                step.question.group == ground.SPOTS.key and step.number == spot.number
                for step in route.open_steps(plan.answers)
            )
            return f"{spot.name}: {'not finished' if unfinished else spot.grade.value}{more}"
    raise Unanswered(ground.STANDS, "spots.1.stands_after_rain")


def _room(plan: Plan) -> str:
    """Say that the room is too small; nothing where it is not, or none was given."""
    trouble = plan.size.room_trouble
    return f"{TOO_SMALL}. {trouble}" if trouble else ""


def rough_line(plan: Plan) -> str:
    """Say the first size in one line; nothing before there is one, or once the soil is tested."""
    if plan.rough.tested:
        return ""
    try:
        return about(plan.rough.sized, plan.metric, "–")
    except Unanswered:
        return ""


def _plants(plan: Plan) -> str:
    """Tell how many plants, and how few they may be."""
    parts = (figure_words(plan, "plants_total"), cheaper_words(plan))
    return "; ".join(one for one in parts if one)


def cheaper_words(plan: Plan) -> str:
    """Tell how few plants the cheaper ways leave; nothing where they leave no fewer."""
    least = fewest(plan.planting)
    return f"with cheaper ways from {least}" if least < plant_count(plan.planting) else ""


_SO_FAR: tuple[tuple[str, Callable[[Plan], str]], ...] = (
    ("Room", _room),
    ("Digging", _digging),
    ("Spot", _spot),
    ("Slope", lambda p: figure_words(p, "slope")),
    ("Drop rate", lambda p: figure_words(p, "drop_rate")),
    ("Corrected rate", lambda p: figure_words(p, "corrected_rate")),
    ("Area that drains here", lambda p: figure_words(p, "catchment_area")),
    ("First size", rough_line),
    ("Pond depth", lambda p: depth_words(p.size.depth.depth, p.metric)),
    ("Empties", _empties),
    ("Size", size_sentence),
    ("Rain it holds", lambda p: figure_words(p, "rain_held")),
    ("Soil to dig", lambda p: figure_words(p, "soil_dug_total")),
    ("Wheelbarrow loads", lambda p: figure_words(p, "barrow_loads")),
    ("Plants", _plants),
)


def value_of(label: str, plan: Plan) -> str:
    """Return the value of one line; raises ``Unanswered``, or the fault it met."""
    return dict(_SO_FAR)[label](plan)


def so_far(plan: Plan) -> list[SoFar]:
    """Return the plan so far: each line its value, or what it still waits for."""
    lines = []
    for label, get in _SO_FAR:
        try:
            value = get(plan)
            if value:
                lines.append(SoFar(label, value))
        except Unanswered as gap:
            waits = gap.said(plan.answers)
            lines.append(SoFar(label, "", waits, gap.address))
        except Exception as trouble:
            own_fault.note(f"the line {label}", trouble)
            lines.append(SoFar(label, own_fault.short(trouble)))
    return lines


def waiting(plan: Plan) -> list[tuple[Question[Any], str, str]]:
    """Return each question the plan waits for, once: question, address, and why if refused."""
    found: dict[str, tuple[Question[Any], str, str]] = {}
    if _refused_by_soil(plan):
        # Nothing that could be answered would make a pond here; the findings say what would.
        return []
    for figure in figures.found(plan):
        gap = figure.waits_for
        if gap is not None and not _optional(gap.question):
            question, why = gap.question.told(plan.answers), plan.answers.told(gap.why)
            found.setdefault(gap.address, (question, gap.address, why))
    return list(found.values())


def _refused_by_soil(plan: Plan) -> bool:
    try:
        return plan.size.depth.soil_refuses
    except Unanswered:
        return False


_OPTIONAL = (
    "rain_record",
    "rain_record_unit",
    "spout_distance",
    "lines_finished_on",
    *(one.key for one in LEVELS),
)


def _optional(question: Question[Any]) -> bool:
    return question.key in _OPTIONAL


def waiting_text(plan: Plan) -> str:
    """Return what the plan waits for and how to find each out, as plain lines.

    A soak test under way comes first, for it does not wait.
    """
    from interview.garden import soak_due

    found = waiting(plan)
    looks = soak_due.under_way(plan.answers, plan.now)
    if not found and not looks:
        return "The plan has every answer it needs."
    lines = ["The plan still waits for:"]
    for look in looks:
        lines += wrap(f"- {look.words(plan.answers)} ({look.address})", "  ")
    for question, address, why in found:
        lines += wrap(f"- {question.label} ({address}). {why or question.find_out}", "  ")
    return "\n".join(lines)


def wrap(text: str, indent: str = "") -> list[str]:
    """Return ``text`` folded to the width of the sheet, its other lines under ``indent``."""
    seen = shown(text.replace("\n", " "))
    # In a narrow window a deep indent would leave no room for the words.
    return textwrap.wrap(seen, width(), subsequent_indent=indent[: width() // 2]) or [""]


def assumed(answers: Answers) -> list[tuple[route.Step, str]]:
    """Return each question, at its place, whose default is in use, with what is assumed."""
    found = []
    for step in route.steps(answers):
        view = step.view(answers)
        default = view.assumed(step.question)
        if default is not None and step.question is shaping.FLOOR_SHAPE:
            default = floor_shape(answers).value
        if default is not None and not step.question.key.startswith("another_"):
            found.append((step, default))
    return found


_USUAL_BEFORE: tuple[tuple[Question[Any], str, str], ...] = (
    (shaping.SIDE_SLOPE, "3:1", "the sides (3:1 before)"),
    (shaping.FREEBOARD, "", "the rim above the pond, 4 to 6 in (100 to 150 mm) before"),
    (shaping.FLOOR_SHAPE, FloorShape.RECTANGLE.value, "the shape (a rectangle before)"),
)
"""Each question, what was assumed before where that may still be assumed, and how it is told."""


def changed_defaults(answers: Answers) -> str:
    """Say what is assumed otherwise than in version 0.1, for a garden begun with it; or nothing."""
    begun = answers.get(bed.DEEPEST_POND) is not None and answers.get(shaping.HOW_LARGE) is None
    now = {step.question.key: words for step, words in assumed(answers)}
    changed = [
        words
        for question, before, words in _USUAL_BEFORE
        if now.get(question.key) not in (None, before)
    ]
    if not begun or not changed:
        return ""
    return answers.told(
        "Some values that you did not answer differ from version 0.1, so that you dig less and "
        f"the plan is closer to the garden as built: {', '.join(changed)}. Answer them if you want "
        "the old ones; what you answered stays."
    )
