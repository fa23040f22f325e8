"""The whole plan as a sheet of plain text, to read, print and take outside."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import partial

from interview.asking import own_fault
from interview.asking.kinds import NO_ITEMS
from interview.asking.question import Unanswered
from interview.garden.afterwards import questions as review
from interview.garden.afterwards.levels_questions import LEVELS_READ
from interview.garden.guides import guides
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.site import cautions
from interview.garden.summary import (
    VERDICT_WORDS,
    WIDTH,
    assumed,
    changed_defaults,
    may_dig,
    so_far,
    waiting,
    waiting_text,
    width,
    words_alone,
    wrap,
)
from interview.quantities.evidence import Finding, Source
from interview.reading import plain
from interview.reading.foreign import shown
from interview.sheet import (
    dig,
    first_year,
    memory,
    next_steps,
    outside,
    plants,
    shopping,
    size,
    soil,
    storms,
    survey,
    upkeep,
    work,
)
from interview.sheet.appendix import Sources, formulas, glossary
from interview.sheet.common import DRAWN, STOPPED, stopped


def disagreements(plan: Plan, mark: Callable[[Source], str]) -> Iterator[str]:
    """Yield for each matter what each guide says, what it would mean here, and what is followed.

    ``mark`` gives the number of a source in the list at the end of the sheet.
    """
    for place, matter in enumerate(guides(plan)):
        if place:
            yield ""
        yield from wrap(f"{matter.topic}:")
        for saying in matter.sayings:
            here = saying.here.rstrip(".")
            yield from wrap(f"- {saying.says}: {here}. {mark(saying.source)}", "  ")
        yield from wrap(matter.followed, "  ")


Part = tuple[str, Callable[[Plan], Iterator[str]]]

REMEDIES: tuple[Part, ...] = (
    ("IF THE SOIL IS SLOW", soil.slow),
    ("OPTIONS", size.ways),
    ("LEAN, USUAL, GENEROUS", size.sizes),
)
Marked = tuple[str, Callable[[Plan, Callable[[Source], str]], Iterator[str]]]

OUTSIDE: tuple[Part, ...] = (
    ("PEGGING OUT", size.pegging),
    ("DIGGING", dig.dig),
    ("THE WORK", work.work),
)
LEVELS: tuple[Marked, ...] = (("LEVELS BEFORE PLANTING", upkeep.levels),)
AS_DUG: tuple[Marked, ...] = (("MET WHILE DIGGING", upkeep.while_digging), *LEVELS)
PLANTED: tuple[Part, ...] = (
    ("SHOPPING LIST", shopping.shopping),
    ("CHEAPER WAYS", plants.cheaper),
    ("PLANTS", plants.plants),
    ("PLANTING SKETCH", plants.sketches),
    ("FIRST YEAR", first_year.care),
)
AFTERWARDS: tuple[Marked, ...] = (
    ("EVERY YEAR", upkeep.every_year),
    ("WHEN TO CALL SOMEBODY", upkeep.call),
)
SHORT: tuple[Part, ...] = (
    ("PEGGING OUT", size.pegs),
    ("DIGGING", dig.in_short),
    ("THE WORK", work.in_short),
)
SHORT_PLANTED: tuple[Part, ...] = (
    ("SHOPPING LIST", shopping.in_short),
    ("PLANTS", outside.planting),
    ("FIRST YEAR", first_year.care_in_short),
)
"""The parts to take outside, where only those are wanted, with ``LEVELS`` between."""
WORKED_OUT: tuple[Part, ...] = (
    ("THE SOAK TEST", soil.soak),
    ("WHAT DRAINS HERE", survey.survey),
    ("DEPTH AND SIZE", size.size),
    ("STORMS", storms.storms),
    ("YEARS OF RAIN", storms.years),
)
"""The parts of the sheet that are worked out, with their titles, in groups.

Those that are ``Marked`` name the sources of what they say.
"""


def finding_lines(finding: Finding, mark: str) -> list[str]:
    """Return one finding as lines: what was found, the limit and its source, what would change it.

    ``mark`` is the number of the source in the list at the end of the sheet.
    """
    lines = wrap(f"[{finding.word}] {finding.said}", "    ")
    if finding.limit:
        lines += wrap(f"    limit: {finding.limit} {mark}".rstrip(), "      ")
    if finding.change:
        end = "" if finding.limit else f" {mark}"
        lines += wrap(f"    to do: {finding.change}{end}", "      ")
    return lines


def plan_text(plan: Plan) -> str:
    """Return the whole plan, its working too, as plain text of 76 columns or fewer.

    A part that meets a fault of the program says so in its place, and the head names it.
    """
    return _text(parts, plan)


def outside_text(plan: Plan) -> str:
    """Return what to take outside as plain text of 76 columns or fewer; else as ``plan_text``.

    A heading and the line under it are one line here, to save paper.
    """
    return _text(lambda told: map(_run_on, _short_parts(told)), plan)


def _run_on(part: list[str]) -> list[str]:
    if len(part) < len(_heading("")) or part[:3] != _heading(part[1]):
        return part
    return ["", f"{part[1]} {'-' * (width() - len(part[1]) - 1)}", *part[3:]]


def _text(make: Callable[[Plan], Iterable[list[str]]], plan: Plan) -> str:
    with own_fault.noting() as faults:
        found = list(make(plan))
    if faults:
        named = own_fault.named(faults)
        said = f"A PART IS MISSING (an error in the program): {named}. Do not dig or build by this."
        found.insert(1, ["", *wrap(said)])
    lines = (line for part in found for line in part)
    return "".join(f"{_safe(line)}\n" for line in lines)


def _safe(line: str) -> str:
    return line if line.startswith(DRAWN) else shown(line.rstrip())


def parts(plan: Plan) -> Iterator[list[str]]:
    """Yield every part of the sheet: a blank line, its heading and a line under it, its lines."""
    sources = Sources(plan)
    yield _whole("the head", lambda: _head(plan))
    yield _part("DO NEXT", lambda: next_steps.next_steps(plan))
    yield _part("IN SHORT", lambda: _summary(plan))
    yield _part("STILL TO FIND OUT", lambda: _waiting_part(plan))
    yield _part("WHAT WAS FOUND", lambda: _findings_part(plan, sources))
    yield from _worked(plan, REMEDIES)
    yield _banner("TO TAKE OUTSIDE")
    yield _part("CAUTIONS", lambda: _caution_part(plan))
    yield from _worked(plan, (*OUTSIDE, *_with(sources.mark, AS_DUG), *PLANTED))
    yield from _worked(plan, _with(sources.mark, AFTERWARDS))
    yield _part("NOTES", lambda: _notes_part(plan))
    yield _banner("HOW IT WAS WORKED OUT")
    yield from _worked(plan, WORKED_OUT)
    yield _part("WHERE GUIDES DISAGREE", lambda: disagreements(plan, sources.mark))
    yield _part("ASSUMED UNTIL YOU ANSWER", lambda: _assumed_part(plan))
    yield _part("FORMULAS", lambda: formulas(plan, sources))
    yield from _worked(plan, (("WHAT RESTS ON MEMORY", memory.memory),))
    yield _part("SOURCES", sources.lines)
    yield _part("WORDS", glossary)


def _with(mark: Callable[[Source], str], parts: tuple[Marked, ...]) -> tuple[Part, ...]:
    return tuple((title, partial(_marked, part, mark)) for title, part in parts)


def _marked(
    part: Callable[[Plan, Callable[[Source], str]], Iterator[str]],
    mark: Callable[[Source], str],
    plan: Plan,
) -> Iterator[str]:
    return part(plan, mark)


def _bare(_: Source) -> str:
    """Leave out the mark of a source: the short plan has no list of them."""
    return ""


def _short_parts(plan: Plan) -> Iterator[list[str]]:
    yield _whole("the head", lambda: _head(plan))
    yield _part("DO NEXT", lambda: next_steps.next_steps(plan))
    yield _part("IN SHORT", lambda: _summary(plan))
    yield _part("STILL TO FIND OUT", lambda: _waiting_part(plan))
    yield _part("WHAT WAS FOUND", lambda: outside.found(plan))
    yield from _worked(plan, REMEDIES[:2])
    yield _part("CAUTIONS", lambda: _caution_part(plan))
    if stopped(plan):
        yield _part("DIGGING", lambda: wrap(STOPPED))
        if plan.answers.get(LEVELS_READ):  # it is dug
            yield from _worked(plan, _with(_bare, LEVELS))
    else:
        yield from _worked(plan, (*SHORT, *_with(_bare, LEVELS), *SHORT_PLANTED))
    yield _part("NOTES", lambda: _notes_part(plan))
    yield ["", *outside.MORE]


def _worked(plan: Plan, parts: tuple[Part, ...]) -> Iterator[list[str]]:
    for title, part in parts:
        yield _part(title, partial(_worked_out, part, plan))


def _worked_out(part: Callable[[Plan], Iterator[str]], plan: Plan) -> list[str]:
    try:
        return list(part(plan))
    except Unanswered as gap:
        why = f" {gap.why}" if gap.why else " See STILL TO FIND OUT."
        return wrap(plan.answers.told(f"Waits for: {gap.question.label}.{why}"))


def _part(title: str, make: Callable[[], Iterable[str]]) -> list[str]:
    """Return a part under its heading; nothing where there is nothing to say."""
    lines = _whole(title, make)
    return _heading(title) + lines if lines else []


def _whole(name: str, make: Callable[[], Iterable[str]]) -> list[str]:
    """Return the lines of a part, or the ones that say that it met a fault of the program."""
    try:
        return list(make())
    except Exception as trouble:
        return wrap(own_fault.note(name, trouble))


def _banner(title: str) -> list[str]:
    """Return the head of a group of parts, where a new sheet of paper may begin."""
    return ["", "", f"{' ' + title + ' ':=^{width()}}"]


def _heading(title: str) -> list[str]:
    return ["", title, "-" * len(title)]


def _head(plan: Plan) -> list[str]:
    try:
        name = plan.answers[start.GARDEN_NAME]
    except Unanswered:
        name = "no name yet"
    title = f"RAIN GARDEN PLAN: {name}"
    lines = [*wrap(title), "=" * min(len(title), width())]
    if plan.now.year > 2000:
        lines.append(f"Made {plan.now:%A} {plan.now:%Y-%m-%d %H:%M}.")
    return lines + wrap(cautions.NOT_ENGINEERING)


def _summary(plan: Plan) -> list[str]:
    said = VERDICT_WORDS[plan.verdict]
    said = f"{plan.verdict.value.upper()}: {said[0].lower()}{said[1:]}"
    lines = wrap(f"Verdict: {said}", "  ")
    if may_dig(plan).word == "STOP":
        lines += wrap("No digging: something says STOP, even if the buried lines are clear.", "  ")
    told = []
    for line in so_far(plan):
        # What no answer is missing for says so itself, in a sentence.
        waits = line.waits_for if line.waits_for.endswith(".") else f"waits for: {line.waits_for}"
        told.append(f"{line.label + ':':<{_LABEL}}{line.value or waits}")
    return lines + list(_paired(told))


_LABEL, _HALF = 24, 38
"""Columns of a label of the summary, and of what may stand beside another."""


def _paired(told: list[str]) -> Iterator[str]:
    """Yield the lines two by two where both of a pair are short and the sheet is paper wide."""
    wide = width() == WIDTH and not words_alone()
    left = ""
    for line in told:
        if left and len(line) <= _HALF:
            yield f"{left:<{_HALF}}{line}"
            left = ""
            continue
        if left:
            yield left
        left = line if wide and len(line) < _HALF else ""
        if not left:
            yield from wrap(line, " " * _LABEL)
    if left:
        yield left


def _waiting_part(plan: Plan) -> list[str]:
    if not waiting(plan):
        return []
    return waiting_text(plan).splitlines()[1:]


def _findings_part(plan: Plan, sources: Sources) -> list[str]:
    lines = ["A number or letter in brackets names the source, in the list near the end."]
    for finding in plan.findings:
        if finding.asks:
            lines += finding_lines(finding, sources.mark(finding.source))
    lines += ["", "Also looked at, no problems found:"]
    for finding in plan.findings:
        if not finding.asks:
            lines += wrap(f"- {finding.said} {sources.mark(finding.source)}", "  ")
    return lines + _whole("the spots compared", lambda: _spots_part(plan))


def _spots_part(plan: Plan) -> list[str]:
    if len(plan.checks.spots) < 2:
        return []
    lines = ["", "Spots compared:"]
    for one in plan.checks.spots:
        lines += wrap(f"  {one.number}. {one.name}: {one.grade.value}", "     ")
        for reason in one.against:
            lines += wrap(f"     - {reason}", "       ")
    return lines


def _assumed_part(plan: Plan) -> list[str]:
    found = assumed(plan.answers)
    changed = changed_defaults(plan.answers)
    lines = wrap(changed, "  ") if changed else []
    # The same question about several things is told once.
    said = dict.fromkeys(f"{step.worded(plan.answers).label}: {default}" for step, default in found)
    for line in said:
        lines += wrap(line, "  ")
    return lines


def _notes_part(plan: Plan) -> list[str]:
    notes = plan.answers.get(review.NOTES)
    # Set in, so that no line of them looks like a part of the sheet.
    lines = (notes or "").splitlines()
    if len(lines) == 1 and plain(lines[0]).casefold() in NO_ITEMS:
        return []
    return [folded for line in lines for folded in wrap(f"  {line}", "  ")]


def _caution_part(plan: Plan) -> list[str]:
    lines: list[str] = []
    for line in cautions.every(plan.site.tolerance):
        lines += wrap(f"- {plan.answers.told(line)}", "  ")
    return lines
