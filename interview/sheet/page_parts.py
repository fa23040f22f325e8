"""The first page of the printed sheet: verdict, figures, the garden drawn, what to do, the pegs."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace

from interview.asking import own_fault
from interview.asking.question import Unanswered
from interview.drawing.scene import Drawing
from interview.drawing.vector import inline
from interview.garden.figures import BY_KEY, find
from interview.garden.pictures import planted_picture, section_picture
from interview.garden.place import questions as start
from interview.garden.plan import Plan
from interview.garden.site import cautions
from interview.garden.summary import figure_words, may_dig, rough_line, value_of
from interview.quantities.evidence import Finding, Grade
from interview.sheet import next_steps, size
from interview.sheet.markup import Markup, items, joined, row, tag
from interview.sheet.report import VERDICT_WORDS
from interview.sheet.stakeout import LINES, MOST_ROWS, peg_table

Part = Callable[[Plan], Markup]

WIDE_MM = 184.0
"""Width of the page's text: letter and A4 paper have room for it."""
ABOVE_MM, ABOVE_TALL = 120.0, 0.72
SECTION_TALL = 0.27
"""Width of the garden from above, and heights over widths of it and of the section at most."""
FIGURES = (
    ("pond_depth", "deep, the pond"),
    ("rain_held", "of rain it holds"),
    ("corrected_rate", "into the soil"),
    ("soil_dug_total", "of soil to dig"),
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
STOPPED = (
    "While a stop stands the sheet gives no measures to dig by. Local codes and licensed people "
    "decide."
)


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
    said = VERDICT_WORDS[plan.verdict].partition(": ")[2]
    now = may_dig(plan)
    digging = (
        "Digging is open: the lines are located and answered."
        if now.open
        else f"No digging today: {now.reasons[0] if now.reasons else ''}"
    )
    lines = (
        (badge(*BADGES[plan.verdict]), f"{said[:1].upper()}{said[1:]}"),
        (badge(OPENNESS[now.word], now.word), digging),
    )
    return joined(tag("p", mark, words, class_="verdict") for mark, words in lines)


def sentence(plan: Plan) -> Markup:
    """Tell the size of the garden in one sentence; nothing while none is known."""
    said = " ".join(size.in_one_sentence(plan)) or rough_line(plan)
    if not said:
        return Markup()
    try:
        brings = figure_words(plan, "catchment_area")
        said += f" {brings} drains to it, and it empties {value_of('Empties', plan)}."
    except Unanswered:
        pass
    return tag("p", said, class_="one")


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


def above(plan: Plan) -> Markup:
    """Draw the garden from above with its plants, downhill toward the bottom of the page."""
    drawing = planted_picture(plan)
    picture = inline(replace(drawing, notes=()), ABOVE_MM, "above", ABOVE_TALL)
    return joined((Markup(picture), _notes(drawing)))


def section(plan: Plan) -> Markup:
    """Draw the garden cut along the slope."""
    drawing = section_picture(plan)
    notes = tuple(one for one in drawing.notes if one.startswith(_HEIGHTS))
    picture = inline(replace(drawing, notes=()), WIDE_MM, "section", SECTION_TALL)
    return joined((Markup(picture), _notes(replace(drawing, notes=notes))))


_HEIGHTS = ("Heights", "Dig from", "At the rim")
"""Notes of the section that stand under it; the others are told where it is dug."""


def _notes(drawing: Drawing) -> Markup:
    return tag("p", " ".join(drawing.notes), class_="note") if drawing.notes else Markup()


def do_next(plan: Plan) -> Markup:
    """Tell the steps to take next, most pressing first."""
    return items("ol", next_steps.steps(plan))


def pegging(plan: Plan) -> Markup:
    """Tell the pegs of one bed from one string; none while a stop stands."""
    if may_dig(plan).word == "STOP":
        return tag("p", STOPPED)
    table = peg_table(plan)
    most = 4 * len(table.basin.stations) + MOST_ROWS if table.own else MOST_ROWS
    where = "along the string" if table.own else "from the middle"
    head = row((where, "to", *LINES), "th")
    rows = (row(one) for one in table.rows(most))
    shut = () if may_dig(plan).open else (f"CAUTION: {cautions.PEGS}",)
    said = (table.string(), *shut, table.round_words(), table.kidney(), table.reach())
    words = (tag("p", one) for one in said if one)
    return tag(
        "div", tag("table", head, *rows, class_="pegs"), tag("div", *words), class_="pegging"
    )


def findings(plan: Plan) -> Markup:
    """List what was found that asks for something, worst first."""
    asked = [one for one in plan.findings if one.grade is not Grade.GOOD or one.change]
    rows = (tag("tr", tag("td", _grade(one)), tag("td", *_said(one))) for one in asked)
    return tag("table", *rows, class_="found") if asked else tag("p", "No problems found.")


def _grade(finding: Finding) -> Markup:
    if finding.grade is Grade.GOOD:
        return badge("●", "NOTE")
    return badge(*BADGES[finding.grade])


def _said(finding: Finding) -> Iterator[Markup | str]:
    yield tag("b", finding.said)
    if finding.change:
        yield f" {finding.change}"
