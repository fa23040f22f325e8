"""The first page of the printed sheet: verdict, figures, the garden drawn, what to do, the pegs."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace

from interview.asking import own_fault
from interview.asking.question import Unanswered
from interview.drawing.scene import Drawing
from interview.drawing.vector import with_legend
from interview.garden.figures import BY_KEY, find
from interview.garden.pictures import picture_sizes, planted_picture, printed_section
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.summary import (
    VERDICT_WORDS,
    figure_words,
    may_dig,
    rough_line,
    size_sentence,
    value_of,
    waiting,
)
from interview.quantities.evidence import Finding, Grade
from interview.sheet import next_steps, page_room
from interview.sheet.card import NO_PEGS
from interview.sheet.common import STOPPED, stopped
from interview.sheet.markup import Markup, items, joined, row, tag
from interview.sheet.size import beds_apart
from interview.sheet.stakeout import LINES, MOST_ROWS, PegTable, peg_table

Part = Callable[[Plan], Markup]

FIGURES = (
    ("pond_depth", "pond depth"),
    ("rain_held", "rain it holds"),
    ("corrected_rate", "corrected rate"),
    ("soil_dug_total", "soil to dig"),
    ("barrow_loads", "wheelbarrow loads"),
    ("plants_total", "plants"),
)
"""The six figures of the head, each with its words under it."""
BADGES = {
    Grade.GOOD: ("✓", "GOOD"),
    Grade.FIX: ("▲", "FIX"),
    Grade.STOP: ("■", "STOP"),
}
OPENNESS = {"OPEN": "✓", "SHUT": "✕", "STOP": "■"}


def made(title: str, part: Part, plan: Plan) -> Markup:
    """Return a part, or what it waits for, or that it met a fault of the program."""
    try:
        return part(plan)
    except Unanswered as gap:
        why = f" {gap.why}" if gap.why else ""
        said = plan.answers.told(f"Waits for: {gap.question.label}.{why}")
        return tag("p", said, class_="waits")
    except Exception as trouble:
        return tag("p", own_fault.note(title, trouble), class_="fault")


def section_of(title: str, part: Part, plan: Plan, kind: str = "") -> Markup:
    """Return a part under its heading; nothing where there is nothing to say."""
    found = made(title, part, plan)
    return tag("section", tag("h2", title), found, class_=kind) if found else Markup()


def badge(mark: str, word: str) -> Markup:
    """Return a mark with its word in a box."""
    return tag("span", f"{mark} {word}", class_="badge")


def name_of(plan: Plan) -> str:
    """Return the name of the garden as the person gave it."""
    try:
        return plan.answers[start.GARDEN_NAME]
    except Unanswered:
        return "no name yet"


def verdict(plan: Plan) -> Markup:
    """Say whether the garden is good as planned, and whether a spade may go in today."""
    said = VERDICT_WORDS[plan.verdict]
    now = may_dig(plan)
    digging = (
        "Digging is open: lines located, owners answered."
        if now.open
        else f"No digging today: {now.reasons[0] if now.reasons else ''}"
    )
    lines = (
        (badge(*BADGES[plan.verdict]), said),
        (badge(OPENNESS[now.word], now.word), digging),
    )
    return tag("div", *(tag("p", *line) for line in lines), class_="verdict")


def sentence(plan: Plan) -> Markup:
    """Tell the size of the garden in one sentence; nothing while none is known."""
    try:
        said = size_sentence(plan)
    except Unanswered:
        said = rough_line(plan)
    if not said:
        return Markup()
    try:
        brings = figure_words(plan, "catchment_area")
        whom, empty = ("them", "they empty") if plan.size.bed_count > 1 else ("it", "it empties")
        said += f" {brings} drains to {whom}, and {empty} {value_of('Empties', plan)}."
    except Unanswered:
        pass
    # A number and its unit stay on one line.
    words = enumerate(re.split(_MEASURE, said))
    parts = (tag("span", one, class_="whole") if place % 2 else one for place, one in words)
    return tag("p", *parts, class_="one")


_MEASURE = r"(\d\S* [^\s.,;]+)"


def figures(plan: Plan) -> Markup:
    """Tell the six figures; those that are not known yet say what they wait for."""
    return tag("div", *(_figure(key, words, plan) for key, words in FIGURES), class_="figures")


def _figure(key: str, words: str, plan: Plan) -> Markup:
    found = find(BY_KEY[key], plan)
    if found.waits_for is not None:
        value, words = "–", f"{words}: waits for {found.waits_for.said(plan.answers)}"
    else:
        value = found.shown(plan.metric)
    return tag("div", tag("b", value), tag("span", words), data_figure=key)


def front(plan: Plan) -> Markup:
    """Draw the garden from above, downhill toward the bottom of the page; beside it what to do."""
    told = Markup()
    apart = False

    def do_next(plan: Plan) -> Markup:
        return items("ol", _steps(plan))

    def above(plan: Plan) -> Markup:
        nonlocal told, apart
        drawing = planted_picture(plan, dimensioned=False)
        room = _room(plan, drawing)
        bare = replace(drawing, notes=())
        sizes = () if stopped(plan) else picture_sizes(plan)
        picture, keys = with_legend(
            bare, page_room.WIDE, "above", room.high / page_room.WIDE, sizes
        )
        said = (legend(keys), tag("p", " ".join(drawing.notes), class_="note"))
        there = (room.legend_apart, room.notes_apart)
        apart = room.steps_apart
        told = joined(one for one, beside in zip(said, there, strict=True) if beside)
        under = (one for one, beside in zip(said, there, strict=True) if not beside)
        return joined((Markup(picture), *under))

    first = section_of("From above", above, plan)
    second = section_of("Do next", do_next, plan)
    if not told:
        return tag("div", first, second, class_="beside" if "<svg" in first else "stacked")
    if apart:
        return joined(
            (
                tag("div", first, tag("div", told, class_="apart"), class_="beside"),
                tag("div", second, class_="stacked"),
            )
        )
    return tag("div", first, tag("div", second, told), class_="beside")


def _room(plan: Plan, above: Drawing) -> page_room.FrontRoom:
    def guess(part: Callable[[Plan], list[str]]) -> list[str]:
        """Return the lines for the room they take; a fault in them costs no picture."""
        try:
            return part(plan)
        except Exception as trouble:
            own_fault.note("do next", trouble)
            return []

    try:
        cut = printed_section(plan)
    except Unanswered:
        cut = None
    return page_room.FrontRoom(
        page_room.FrontPage(
            guess(_steps),
            len(above.keys),
            [" ".join(above.notes)],
            guess(_peg_words),
            _peg_count(plan),
            [" ".join(_section_notes(cut))] if cut else [],
            len(cut.keys) if cut else 0,
            name_of(plan),
            1 if may_dig(plan).open else 2,
            guess(still_open),
        )
    )


def spills(plan: Plan) -> bool:
    """Tell whether the first page has more than a page has room for."""
    try:
        return _room(plan, planted_picture(plan, dimensioned=False)).spills
    except Exception:
        return False  # without a picture there is room; a fault is told in its place


def still_open(plan: Plan) -> list[str]:
    """Return what the plan waits for, and how to find each out."""
    return [f"{question.label}. {why or question.find_out}" for question, _, why in waiting(plan)]


def _steps(plan: Plan) -> list[str]:
    return [one for one in next_steps.steps(plan) if one != next_steps.PRINT_CARD]


def section(plan: Plan) -> Markup:
    """Draw the garden cut along the slope, its notes under it."""
    drawing = printed_section(plan)
    bare = replace(drawing, notes=())
    tall = page_room.SECTION_MM / page_room.HALF
    picture, keys = with_legend(bare, page_room.HALF, "section", tall)
    said = tag("p", " ".join(_section_notes(drawing)), class_="note")
    return joined((Markup(picture), legend(keys), said))


def _section_notes(drawing: Drawing) -> list[str]:
    return [one for one in drawing.notes if one.startswith(_MEASURES)]


_MEASURES = ("Heights are drawn", "Heights and", "Dig from")
"""Notes of the section that are printed with it; the others are told where it is dug."""


def legend(keys: Iterable[tuple[str, str]]) -> Markup:
    """Return the legend of a drawing: samples, each with its words."""
    return items("ul", (joined((Markup(one), words), " ") for one, words in keys), class_="legend")


def pegging(plan: Plan) -> Markup:
    """Tell the pegs of one bed from one string; none while a stop stands."""
    if stopped(plan):
        return tag("p", STOPPED)
    table = peg_table(plan)
    where = "along the string" if table.own else "from the middle"
    head = row((where, "to", *LINES), "th")
    rows = (row(one) for one in table.rows(_most_pegs(table)))
    words = (tag("p", one, class_="note") for one in _peg_words(plan))
    return joined((tag("table", head, *rows, class_="pegs"), *words))


def _most_pegs(table: PegTable) -> int:
    return 4 * len(table.basin.stations) + MOST_ROWS if table.own else MOST_ROWS


def _peg_count(plan: Plan) -> int:
    table = peg_table(plan)
    return 0 if stopped(plan) else len(table.rows(_most_pegs(table)))


def _peg_words(plan: Plan) -> list[str]:
    """Return the sentences beside the pegs."""
    if stopped(plan):
        return [STOPPED]
    table = peg_table(plan)
    shut = "" if may_dig(plan).open else f"CAUTION: {NO_PEGS}"
    count = plan.size.bed_count
    apart = f"Measures and drawings are of one of {count} beds. {beds_apart(plan)}"
    beds = apart if count > 1 else ""
    said = (beds, table.string(), shut, table.hose(), table.kidney(), table.reach())
    return [one for one in said if one]


def findings(plan: Plan) -> Markup:
    """List what was found that asks for something, worst first; what to do where it is no note."""
    asked = [one for one in plan.findings if one.asks and one.key != _TOLD_ABOVE]
    rows = (tag("tr", tag("td", _grade(one)), tag("td", *_said(one))) for one in asked)
    return tag("table", *rows, class_="found") if asked else tag("p", "No problems found.")


_TOLD_ABOVE = "buried_lines"
"""The finding that is told beside the verdict, and among the steps."""


def _grade(finding: Finding) -> Markup:
    if finding.grade is Grade.GOOD:
        return badge("●", "NOTE")
    return badge(*BADGES[finding.grade])


def _said(finding: Finding) -> Iterator[Markup | str]:
    if finding.grade is Grade.GOOD:
        yield finding.said
    else:
        yield tag("b", finding.said)
        yield f" {finding.change}"
