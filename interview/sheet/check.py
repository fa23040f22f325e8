"""The check of an answers file: its faults by line, and the questions still open."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from interview import answers_file as af
from interview.asking import own_fault, path, route
from interview.asking.answers import Answers
from interview.asking.question import Status, Unanswered
from interview.garden.due_words import count_words
from interview.garden.path import OPTIONAL
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.store import Loaded
from interview.garden.summary import assumed


def check_text(name: str, loaded: Loaded, beside: Sequence[str] = ()) -> str:
    """Return the faults and the open questions of a file, one a line.

    ``beside`` are the faults of the files that the answers name.
    """
    lines = []
    for trouble in loaded.troubles:
        hint = f" Did you mean {trouble.suggestion}?" if trouble.suggestion else ""
        lines.append(f"{name}:{trouble.line}: {trouble.key}: {trouble.sentence}{hint}")
    lines += beside
    count = len(lines)
    lines.append("No faults." if not count else f"{count_words(count, 'fault')}.")
    lines += _part("the open questions", lambda: _open(loaded.answers))
    lines += _part("what is set aside", lambda: _aside(loaded.answers))
    return "".join(f"{af.shown(line)}\n" for line in lines)


def _part(name: str, make: Callable[[], list[str]]) -> list[str]:
    try:
        return make()
    except Exception as trouble:
        return [own_fault.note(name, trouble)]


def still_open(answers: Answers) -> list[route.Step]:
    """Return each question that is asked and has no answer yet, in the order of asking."""
    return [
        step
        for step in path.steps(answers)
        if route.standing(step, answers) in (Status.OPEN, Status.UNKNOWN)
        and step.question.key not in OPTIONAL
    ]


def _open(answers: Answers) -> list[str]:
    still = still_open(answers)
    lines = [
        f"{count_words(len(answers.texts), 'answer')}; {count_words(len(still), 'question')} open."
    ]
    usual = {step.address: words for step, words in assumed(answers)}
    for step in still:
        word = route.standing(step, answers).value
        if step.address in usual:
            word = f"{word}; counts as {usual[step.address]}"
        label = step.question.told(answers).label
        lines.append(f"  open: {step.address}: {label} ({word})")
    return lines


def _aside(answers: Answers) -> list[str]:
    aside = route.set_aside(answers)
    return [f"  set aside: {address}: does not apply now" for address in aside]


def faults_beside(plan: Plan) -> list[str]:
    """Return the faults of the plant file and the rainfall file that the answers name, by line."""
    plants = _part("the plant file", lambda: _plant_faults(plan))
    return plants + _part("the rainfall file", lambda: _rain_faults(plan))


def _rain_faults(plan: Plan) -> list[str]:
    if not plan.answers.get(start.HAS_RECORD) or plan.answers.get(start.RECORD_PATH) is None:
        return []
    path = plan.answers[start.RECORD_PATH]
    try:
        return [f"{path}:{bad.line}: {bad.why}" for bad in plan.storms.record.bad_lines]
    except Unanswered as gap:
        # What is merely not asked yet is listed among the open questions.
        return [f"{path}: {gap.why}"] if gap.why else []


def _plant_faults(plan: Plan) -> list[str]:
    own = plan.planting.plant_file
    path = own.path
    if own.trouble:
        return [f"{path}: {own.trouble}"]
    return [f"{path}:{one.removeprefix('line ')}" for one in own.fault_lines()]
