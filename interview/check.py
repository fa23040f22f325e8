"""The check of an answers file: its faults by line, and the questions still open."""

from __future__ import annotations

from collections.abc import Sequence

from interview import answers_file as af
from interview import route
from interview.model import Standing, Unanswered
from interview.plan import Plan
from interview.questions import start
from interview.store import Loaded


def check_text(name: str, loaded: Loaded, beside: Sequence[str] = ()) -> str:
    """Return the faults and the open questions of a file, one a line.

    ``beside`` are the faults of the files that the answers name.
    """
    shown = af.shown(name)
    lines = []
    for trouble in loaded.troubles:
        hint = f" Did you mean {trouble.suggestion}?" if trouble.suggestion else ""
        lines.append(f"{shown}:{trouble.line}: {trouble.key}: {trouble.sentence}{hint}")
    lines += beside
    answers = loaded.answers
    still = [step for step in route.steps(answers)
             if route.standing(step, answers) in (Standing.OPEN, Standing.UNKNOWN)]  # fmt: skip
    aside = route.set_aside(answers)
    count = len(lines)
    lines.append("No faults." if not count else f"{count} fault{'s' if count > 1 else ''}.")
    lines.append(f"{len(answers.texts)} answers; {len(still)} questions open.")
    for step in still:
        word = route.standing(step, answers).value
        label = step.question.told(answers).label
        lines.append(f"  open: {step.address}: {label} ({word})")
    lines += [f"  set aside: {address}: does not apply now" for address in aside]
    return "\n".join(lines) + "\n"


def faults_beside(plan: Plan) -> list[str]:
    """Return the faults of the plant file and the rainfall file that the answers name, by line."""
    return [*_plant_faults(plan), *_rain_faults(plan)]


def _rain_faults(plan: Plan) -> list[str]:
    if not plan.answers.get(start.HAS_RECORD) or plan.answers.get(start.RECORD_PATH) is None:
        return []
    path = af.shown(plan.answers[start.RECORD_PATH])
    try:
        return [f"{path}:{bad.line}: {bad.why}" for bad in plan.record.bad_lines]
    except Unanswered as gap:
        # What is merely not asked yet is listed among the open questions.
        return [f"{path}: {gap.why}"] if gap.why else []


def _plant_faults(plan: Plan) -> list[str]:
    own = plan.plant_file
    path = af.shown(own.path)
    if own.trouble:
        return [f"{path}: {own.trouble}"]
    return [f"{path}:{one.removeprefix('line ')}" for one in own.fault_lines()]
