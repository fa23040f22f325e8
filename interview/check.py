"""The check of an answers file: its faults by line, and the questions still open."""

from __future__ import annotations

from interview import answers_file as af
from interview import route
from interview.model import Standing
from interview.parts.plants import PlantFile
from interview.store import Loaded


def check_text(name: str, loaded: Loaded, own: PlantFile | None = None) -> str:
    """Return the faults and the open questions of a file, one a line.

    ``own`` is the gardener's own plant file, whose faults are told as well.
    """
    shown = af.shown(name)
    lines = []
    for trouble in loaded.troubles:
        hint = f" Did you mean {trouble.suggestion}?" if trouble.suggestion else ""
        lines.append(f"{shown}:{trouble.line}: {trouble.key}: {trouble.sentence}{hint}")
    lines += _plant_faults(own) if own else []
    answers = loaded.answers
    still = [step for step in route.steps(answers)
             if route.standing(step, answers) in (Standing.OPEN, Standing.UNKNOWN)]  # fmt: skip
    aside = route.set_aside(answers)
    count = len(lines)
    lines.append("No faults." if not count else f"{count} fault{'s' if count > 1 else ''}.")
    lines.append(f"{len(answers.texts)} answers; {len(still)} questions open.")
    for step in still:
        word = route.standing(step, answers).value
        lines.append(f"  open: {step.address}: {step.question.label} ({word})")
    lines += [f"  set aside: {address}: does not apply now" for address in aside]
    return "\n".join(lines) + "\n"


def _plant_faults(own: PlantFile) -> list[str]:
    path = af.shown(own.path)
    if own.trouble:
        return [f"{path}: {own.trouble}"]
    return [f"{path}:{one.removeprefix('line ')}" for one in own.fault_lines()]
