"""The whole plan as a sheet of plain text, to read, print and take outside."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from interview import cautions
from interview.evidence import Finding, Grade
from interview.model import Unanswered
from interview.plan import Plan
from interview.questions import review, start
from interview.sections import dig, guides, plants, size, soil, storms, survey
from interview.summary import WIDTH, assumed, so_far, waiting, waiting_text, wrap
from interview.worksheet import worksheet

PARTS: tuple[tuple[str, Callable[[Plan], Iterator[str]]], ...] = (
    ("THE SOAK TEST", soil.soak),
    ("IF THE SOIL IS SLOW", soil.slow),
    ("WHAT DRAINS HERE", survey.survey),
    ("DEPTH AND SIZE", size.size),
    ("WAYS OUT", size.ways),
    ("STORMS", storms.storms),
    ("YEARS OF RAIN", storms.years),
    ("DIGGING", dig.dig),
    ("SHOPPING LIST", dig.shopping),
    ("PLANTS", plants.plants),
    ("PLANTING SKETCH", plants.sketches),
    ("FIRST YEAR", plants.care),
    ("WHERE GUIDES DISAGREE", guides.disagreements),
)
"""The parts of the sheet that are worked out, with their titles."""

VERDICT_WORDS = {
    Grade.GOOD: "GOOD: nothing found that speaks against it.",
    Grade.FIX: "FIX: some things must be mended or found out first.",
    Grade.STOP: "STOP: not here, or not like this.",
}


def finding_lines(finding: Finding) -> list[str]:
    """Return one finding as lines: what was found, the limit, the source, what would change it."""
    grade = "NOTE" if finding.grade is Grade.GOOD else finding.grade.value.upper()
    lines = wrap(f"[{grade}] {finding.said}", "    ")
    if finding.limit:
        lines += wrap(f"    limit: {finding.limit}", "      ")
    if finding.change:
        lines += wrap(f"    to do: {finding.change}", "      ")
    lines += wrap(f"    source: {finding.source}", "      ")
    return lines


def plan_text(plan: Plan) -> str:
    """Return the whole plan as plain text of 76 columns or fewer."""
    return "\n".join(line.rstrip() for part in _parts(plan) for line in part) + "\n"


def _parts(plan: Plan) -> Iterator[list[str]]:
    yield _head(plan)
    yield _summary(plan)
    yield _waiting_part(plan)
    yield _findings_part(plan)
    for title, part in PARTS:
        try:
            lines = list(part(plan))
        except Unanswered as gap:
            lines = wrap(f"Waits for: {gap.question.label}. {gap.why or gap.question.find_out}")
        if lines:
            yield _heading(title) + lines
    yield _assumed_part(plan)
    yield _notes_part(plan)
    yield _caution_part()


def _heading(title: str) -> list[str]:
    return ["", title, "-" * len(title)]


def _head(plan: Plan) -> list[str]:
    try:
        name = plan.answers[start.GARDEN_NAME]
    except Unanswered:
        name = "no name yet"
    title = f"RAIN GARDEN PLAN: {name}"
    lines = [*wrap(title), "=" * min(len(title), WIDTH)]
    if plan.now.year > 2000:
        lines.append(f"Made {plan.now:%A} {plan.now:%Y-%m-%d %H:%M}.")
    return lines + wrap(cautions.NOT_ENGINEERING)


def _summary(plan: Plan) -> list[str]:
    lines = [*_heading("IN SHORT"), *wrap(f"Verdict: {VERDICT_WORDS[plan.verdict]}", "  ")]
    for line in so_far(plan):
        value = line.value or f"waits for: {line.waits_for}"
        lines += wrap(f"{line.label + ':':<24}{value}", " " * 24)
    return lines


def _waiting_part(plan: Plan) -> list[str]:
    if not waiting(plan):
        return []
    return [*_heading("STILL TO FIND OUT"), *waiting_text(plan).splitlines()[1:]]


def _findings_part(plan: Plan) -> list[str]:
    lines = _heading("WHAT WAS FOUND")
    for finding in plan.findings:
        if finding.grade is not Grade.GOOD or finding.change:
            lines += finding_lines(finding)
    lines += ["", "Also looked at, nothing against it:"]
    for finding in plan.findings:
        if finding.grade is Grade.GOOD and not finding.change:
            lines += wrap(f"- {finding.said}", "  ")
    if len(plan.spots) > 1:
        lines += ["", "Spots compared:"]
        lines += [f"  {one.number}. {one.name}: {one.grade.value}" for one in plan.spots]
    return lines


def _assumed_part(plan: Plan) -> list[str]:
    found = assumed(plan.answers)
    if not found:
        return []
    lines = [*_heading("ASSUMED UNTIL YOU ANSWER")]
    for step, default in found:
        lines += wrap(f"{step.question.label}: {default}", "  ")
    return lines


def _notes_part(plan: Plan) -> list[str]:
    notes = plan.answers.get(review.NOTES)
    if not notes:
        return []
    lines = _heading("NOTES")
    for line in notes.splitlines():
        lines += wrap(line)
    return lines


def _caution_part() -> list[str]:
    lines = _heading("CAUTIONS")
    for line in cautions.ALL:
        lines += wrap(f"- {line}", "  ")
    return lines


__all__ = ["plan_text", "so_far", "waiting", "waiting_text", "worksheet"]
