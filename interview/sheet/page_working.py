"""The working as pages after the garden: every part of the sheet, the answers' words, sources."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import groupby

from interview.asking import route
from interview.drawing.scene import Drawing
from interview.drawing.vector import inline
from interview.garden.plan import Plan
from interview.garden.summary import unfolded
from interview.sheet import report
from interview.sheet.common import DRAWN, drawings_apart
from interview.sheet.markup import Markup, items, joined, row, tag
from interview.sheet.page_parts import made

ON_THE_PAGES = ("DO NEXT",)
"""Parts that the pages of the garden tell whole."""
DRAWING_MM = 150.0
_PAIR = r"(\S.*?:) {2,}(\S.*)"
_COLUMNS = r"\S {2,}\S|^ *(\S )+\S$"


def working(plan: Plan) -> Iterator[Markup]:
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
