"""The sheet to print: one HTML file, the garden on two pages, on request the working after."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from functools import cache
from importlib.resources import files
from itertools import groupby

from interview.asking import own_fault, route
from interview.asking.statuses import NAME
from interview.drawing.scene import Drawing
from interview.drawing.vector import inline
from interview.garden.plan import Plan
from interview.garden.site import cautions
from interview.garden.summary import unfolded
from interview.sheet import page_parts, page_plants, report
from interview.sheet.card import card_parts
from interview.sheet.common import DRAWN, drawings_apart, stopped
from interview.sheet.markup import Markup, items, joined, row, tag, text
from interview.sheet.page_parts import made, name_of, section_of
from interview.sheet.page_room import NAME_LETTERS

ON_THE_PAGES = ("DO NEXT",)
"""Parts that the pages of the garden tell whole."""
DRAWING_MM = 150.0
_PAIR = r"(\S.*?:) {2,}(\S.*)"
_COLUMNS = r"\S {2,}\S|^ *(\S )+\S$"


def _working(plan: Plan) -> Iterator[Markup]:
    """Yield every part of the sheet that the pages of the garden do not tell whole."""
    with unfolded(), drawings_apart() as drawings:
        for lines in report.parts(plan):
            title = next((one for one in lines if one), "")
            if title.startswith("=") or len(lines) < 3 or set(lines[2]) != {"-"}:
                continue
            if title not in ON_THE_PAGES:
                body = tag("div", *_body(lines[3:], drawings))
                yield tag("section", tag("h2", title), body, class_="work")
    yield tag(
        "section",
        tag("h2", "YOUR ANSWERS, AS TYPED"),
        made("answers", _answers, plan),
        class_="work",
    )


def _answers(plan: Plan) -> Markup:
    """List every question that applies and has an answer, with the words that are kept."""
    rows = []
    for step in route.steps(plan.answers):
        words = step.view(plan.answers).text(step.question)
        if words is not None:
            rows.append(row((step.address, step.worded(plan.answers).label, words)))
    return tag("table", *rows, class_="answers") if rows else tag("p", "None yet.")


def _body(lines: Sequence[str], drawings: Sequence[Drawing]) -> Iterator[Markup]:
    """Yield lines of text as the elements that they look like."""
    for sort, group in groupby(lines, _sort):
        found = list(group)
        match sort:
            case "drawing":
                for line in found:
                    place = int(line.removeprefix(DRAWN))
                    yield Markup(inline(drawings[place], DRAWING_MM, f"working{place}"))
            case "pair":
                pairs = (pair for one in found if (pair := re.fullmatch(_PAIR, one)))
                yield tag("table", *(row(pair.groups()) for pair in pairs), class_="pairs")
            case "list":
                yield items("ul", (one.lstrip()[2:] for one in found))
            case "check":
                yield items("ul", (one.lstrip()[4:] for one in found), class_="check")
            case "table":
                yield tag("pre", "\n".join(found))
            case "text":
                yield joined(
                    tag("p", one, class_="in" if one.startswith(" ") else "") for one in found
                )


def _sort(line: str) -> str:
    if line.startswith(DRAWN):
        return "drawing"
    if not line.strip():
        return ""
    if re.fullmatch(_PAIR, line):
        return "pair"
    if line.lstrip().startswith(("[ ] ", "( ) ")):
        return "check"
    if line.lstrip().startswith("- "):
        return "list"
    return "table" if re.search(_COLUMNS, line) else "text"


REST = (
    (
        "DIGGING, LEVELS BEFORE PLANTING, SHOPPING LIST: J on the page of the plan, or ",
        f"{NAME} --plan FILE",
    ),
    ("each year, whom to call: ", "--sheet FILE --working"),
    ("card: ", "--card FILE"),
)
"""What else can be printed, and how; the steps on these pages send one there."""


def page_html(plan: Plan, working: bool = False) -> str:
    """Return the sheet as one HTML document, without script, and nothing in it from elsewhere.

    The garden stands on two pages of letter or A4 paper, a long planting on a third; with
    ``working`` what it rests on follows. A part that waits says so in its place, and so does one
    that meets a fault of the program.
    """
    with own_fault.noting() as faults:
        pages = _spilled(plan) if page_parts.spills(plan) else _garden(plan)
        if working:
            pages.append(tag("div", *_working(plan), class_="page working"))
    if faults:
        said = f"A PART IS MISSING (an error in the program): {own_fault.named(faults)}."
        pages.insert(0, tag("p", f"{said} Do not dig or build by this.", class_="fault"))
    return document(f"Rain garden: {name_of(plan)}", pages)


def card_html(plan: Plan) -> str:
    """Return the yard card as one HTML document of one page, line by line as its text."""
    (title, *lines), sections = card_parts(plan)
    parts = (
        tag("section", tag("h2", name), tag("pre", "\n".join(one)), class_="work")
        for name, one in sections
    )
    card = tag("div", head(" ".join(title.split()), [], "h2"), tag("p", *lines), *parts)
    return document(title, [tag("div", card, class_="card")])


def document(title: str, body: list[Markup]) -> str:
    """Return a whole HTML document with the style of the printed pages."""
    return (
        "<!doctype html>\n"
        f'<html lang="en"><head><meta charset="utf-8">'
        f'<meta name="generator" content="{NAME}">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{text(title)}</title>\n<style>\n{_style()}</style></head>\n"
        f"<body>\n{joined(body)}\n</body></html>\n"
    )


@cache
def _style() -> str:
    return (files("interview.sheet") / "page.css").read_text(encoding="utf-8")


def head(title: str, beside: Iterator[str] | list[str], rank: str = "h1") -> Markup:
    """Return the head of a page: what it is, and small lines beside it."""
    lines = joined((text(one) for one in beside), "<br>")
    kind = "long" if len(title) > NAME_LETTERS else ""
    return tag("header", tag(rank, title, class_=kind), tag("small", lines))


def _garden(plan: Plan) -> list[Markup]:
    """Return the garden on two pages; what finds no room under a long planting stays together."""
    under = tag("div", _flow(plan), _care(plan), class_="together")
    return [
        tag("div", *_first(plan), _footer(plan), class_="page"),
        tag("div", *_plants(plan), under, class_="page"),
    ]


def _spilled(plan: Plan) -> list[Markup]:
    """Return a garden of which much is still open: what is left of its second page is filled."""
    plants = tag("div", *_plants(plan), _care(plan), _footer(plan), class_="together")
    return [tag("div", *_first(plan), _flow(plan), plants, class_="page")]


def _first(plan: Plan) -> Iterator[Markup]:
    def part(make: page_parts.Part) -> Markup:
        return made(make.__name__.replace("_", " "), make, plan)

    beside = ["Rain garden plan"]
    if plan.now.year > 2000:
        beside.append(f"made {plan.now:%A} {plan.now:%Y-%m-%d %H:%M}")
    yield head(name_of(plan), beside)
    yield part(page_parts.verdict)
    yield part(page_parts.sentence)
    yield part(page_parts.figures)
    yield part(page_parts.front)
    yield tag(
        "div",
        section_of("Cut along the slope", page_parts.section, plan),
        section_of("Pegging out", page_parts.pegging, plan),
        class_="halves cut",
    )
    yield section_of("Still to find out", _open, plan)


def _footer(plan: Plan) -> Markup:
    # What is done outside is told nowhere while a stop stands.
    there = REST[1:] if stopped(plan) else REST
    rest = (tag("span", words, tag("code", command)) for words, command in there)
    return tag("footer", f"{cautions.NOT_ENGINEERING} ", *rest)


def _open(plan: Plan) -> Markup:
    """List what the plan waits for and how to find each out."""
    return items("ul", page_parts.still_open(plan), class_="check")


def _plants(plan: Plan) -> Iterator[Markup]:
    yield head("The plants", [name_of(plan)], "h2")
    yield made("the plants", page_plants.plants, plan)
    yield made("fewer plants", page_plants.cheaper, plan)


def _flow(plan: Plan) -> Markup:
    # Columns that the browser makes equally high, whatever is longest in this garden.
    return tag(
        "div",
        section_of("The pond in the storm it holds", page_plants.pond, plan, "long"),
        section_of("First year", page_plants.first_year, plan, "close long"),
        section_of("What was found", page_parts.findings, plan, "long"),
        class_="flow",
    )


def _care(plan: Plan) -> Markup:
    return section_of("Take care", _cautions, plan, "caution close")


def _cautions(plan: Plan) -> Markup:
    zone = plan.site.tolerance
    said = (cautions.LOCATE, *cautions.on_the_day(zone))
    return items("ul", map(plan.answers.told, said))
